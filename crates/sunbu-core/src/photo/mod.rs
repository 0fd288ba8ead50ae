//! Photos: marks, camera, and the reading of a dressing in centimetres.
//!
//! Pictures themselves come in elsewhere; here are only their sizes and the places marked on them.

mod mark;
mod shot;

pub use mark::{Mark, Marks, Pixel, Placed, Trust, View};
pub use shot::{Known, Line, References, Shot, Tape};
