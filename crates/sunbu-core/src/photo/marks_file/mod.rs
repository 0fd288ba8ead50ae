//! The marks file: one photo's marks as text, for those who mark without the studio.
//!
//! It is TOML. Pixels count from the upper left corner of the upright picture, x to the right and
//! y down; left and right in the names of marks are the wearer's:
//!
//! ```toml
//! view = "front"                # front, back, right, left
//! size = [3024, 4032]           # the picture its pixels belong to; else the photo's own size
//! mirrored = false              # taken in a mirror
//! lens_height = "130 cm"        # height of the lens above the floor, if it was taped
//! focal_35mm = 26               # focal length as on 35 mm film, if the photo does not say
//! seen = ["fold_wrinkled"]      # faults seen by eye
//!
//! [references]                  # what else in the picture has a known size or direction
//! sheet = [[700, 3500], [900, 3500], [900, 3785], [700, 3785]]   # an upright A4 sheet
//! tape = { ends = [[700, 3800], [702, 2900]], length = 90 }      # lower end first
//! uprights = [[[200, 300], [205, 3600]]]                         # door frames
//! levels = [[[[0, 3300], [3000, 3310]], [[0, 3400], [3000, 3412]]]]  # pairs side by side
//!
//! [marks]
//! floor = [1510, 3830]
//! crown = { at = [1500, 310], unsure = true }
//! hem_left = [1712.5, 3722]
//! ```
//!
//! Everything is checked where it comes in, and every problem is told at once.

mod read;
mod shot;
mod write;

use super::mark::{Marks, View};
use super::shot::{Line, References};
use crate::fault::Ticks;
use crate::measure::Reading;

/// Most bytes of a marks file that are read: a hundred times the longest real one. Chosen.
pub const MAX_MARKS_BYTES: usize = 1024 * 1024;

/// Focal lengths on 35 mm film that a marks file may tell, in mm: a very wide lens to a long one.
pub const FOCAL_MM: (f64, f64) = (11.0, 270.0);

/// A tape in the picture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MarkedTape {
    /// Its lower and its upper marked end.
    pub ends: Line,
    /// How much it reads between them, as it was written.
    pub length: Reading,
}

/// The marks of one photo, as they were written.
#[derive(Debug, Clone, PartialEq)]
pub struct MarksFile {
    /// From which side the photo shows her.
    pub view: View,
    /// Width and height of the picture that the pixels belong to; none when it is the photo as it
    /// is.
    pub size: Option<[u32; 2]>,
    /// Whether the picture was taken in a mirror.
    pub mirrored: bool,
    /// How high the lens stood above the floor; none when nobody knows.
    pub lens_height: Option<Reading>,
    /// Focal length as on 35 mm film, in millimetres; none when the photo itself is to say.
    pub focal_mm: Option<f64>,
    /// What else is known in the picture; its tape is [`MarksFile::tape`].
    pub references: References,
    /// A tape in the picture; none when there is none.
    pub tape: Option<MarkedTape>,
    /// The marks.
    pub marks: Marks,
    /// Faults seen by eye.
    pub seen: Ticks,
}

impl MarksFile {
    /// A file without marks.
    pub fn new(view: View) -> Self {
        MarksFile {
            view,
            size: None,
            mirrored: false,
            lens_height: None,
            focal_mm: None,
            references: References::default(),
            tape: None,
            marks: Marks::new(),
            seen: Ticks::new(),
        }
    }
}
