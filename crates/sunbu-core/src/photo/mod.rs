//! Photos: marks, camera, and the reading of a dressing in centimetres.
//!
//! Pictures themselves come in elsewhere; here are only their sizes and the places marked on them.

pub mod edge;

mod camera;
mod check;
mod expect;
mod film;
mod fit;
mod form;
mod forms;
mod gray;
mod hidden;
mod mark;
mod marking;
mod marks_file;
mod overlay;
mod picture_error;
mod placing;
mod reading;
mod room;
mod rows;
mod shot;
mod sitting;
mod skews;
mod spot;
mod spots;
mod way;

pub use camera::{CAMERA, Camera, Place};
pub use check::{FOCAL_RANGE, LENS_HEIGHT_CM, SIDE_PX, TAPE_CM};
pub use expect::{Edge, Expected, FIRST, SIDES, expect};
pub use film::share_of_film;
pub use gray::Gray;
pub use hidden::Hidden;
pub use mark::{Mark, Marks, Pixel, Placed, Trust, View};
pub use marking::{Marking, TypedTape};
pub use marks_file::{FOCAL_MM, MAX_MARKS_BYTES, MarkedTape, MarksFile};
pub use overlay::{Moved, Overlay, overlay};
pub use picture_error::{FileKind, PictureError, PictureFormat};
pub use placing::Placing;
pub use reading::{Reading, Skew, Unseen, read};
pub use shot::{Known, Line, References, Shot, Tape};
pub use sitting::Subject;
pub use way::{Wrap, wrap};
