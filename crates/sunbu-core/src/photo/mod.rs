//! Photos: marks, camera, and the reading of a dressing in centimetres.
//!
//! Pictures themselves come in elsewhere; here are only their sizes and the places marked on them.

mod gray;
mod mark;
mod picture_error;
mod shot;

pub use gray::Gray;
pub use mark::{Mark, Marks, Pixel, Placed, Trust, View};
pub use picture_error::{FileKind, PictureError, PictureFormat};
pub use shot::{Known, Line, References, Shot, Tape};
