//! Right over left: which photos show it, and whether they were said to come from a mirror.
//!
//! A photo from a mirror shows right over left and is well. One that was said to come from a mirror
//! and shows it all the same is another matter, and needs another sentence.

use crate::photo::{Reading, View, Wrap};

/// A photo that shows right over left.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WrongWay {
    /// From which side.
    pub view: View,
    /// Whether it was said to come from a mirror. It was then read as if it came from none, and
    /// as from a mirror otherwise.
    pub mirrored: bool,
}

/// The photos that show right over left, in the order of the readings.
pub(super) fn wrong_way(readings: &[Reading]) -> Vec<WrongWay> {
    let wrong = readings.iter().filter(|r| r.wrap == Wrap::RightOverLeft);
    let wrong = wrong.map(|reading| WrongWay {
        view: reading.view,
        mirrored: reading.mirrored,
    });
    wrong.collect()
}
