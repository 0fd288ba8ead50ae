//! One photo as the model takes it: its side, its size, its lens, its marks, and what else in it
//! has a known size or direction.

use serde::{Deserialize, Serialize};

use super::mark::{Marks, Pixel, View};

/// Two ends of a line in a picture.
pub type Line = [Pixel; 2];

/// A value with its standard deviation, both in the unit that the field names.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Known {
    /// The value.
    pub value: f64,
    /// Its standard deviation.
    pub sd: f64,
}

/// Things of known size or direction in the picture.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct References {
    /// The corners of an A4 sheet (21.0 by 29.7 cm, ISO 216) stood upright on the floor at the
    /// feet, long side up: upper left, upper right, lower right, lower left as the picture shows
    /// them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sheet: Option<[Pixel; 4]>,
    /// A tape held upright with its zero on the floor at the feet: both marked ends, the lower
    /// one first, and how much it reads between them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tape: Option<Tape>,
    /// Edges that stand upright: door frames, corners of a room.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub uprights: Vec<Line>,
    /// Pairs of level edges that run side by side: skirting boards, tatami borders.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub levels: Vec<[Line; 2]>,
}

/// A tape in the picture.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tape {
    /// Its lower and its upper marked end.
    pub ends: Line,
    /// How much it reads between them, in centimetres.
    pub length_cm: f64,
}

/// One photo with its marks.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shot {
    /// From which side.
    pub view: View,
    /// Width and height of the upright picture, in pixels.
    pub size: [u32; 2],
    /// Focal length, as a share of the longer side of the whole picture that the lens made; none
    /// when the photo does not say. See [`super::share_of_film`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub focal: Option<f64>,
    /// How high the lens stood above the floor, in centimetres.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lens_height_cm: Option<Known>,
    /// Whether the picture was taken in a mirror, so that left and right are exchanged.
    #[serde(default)]
    pub mirrored: bool,
    /// What else is known in it.
    #[serde(default)]
    pub references: References,
    /// The marks.
    pub marks: Marks,
}
