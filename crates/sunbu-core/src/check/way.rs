//! Right over left: which photos show it, and whether they were said to come from a mirror.
//!
//! A photo from a mirror shows right over left and is well. One that was said to come from a mirror
//! and shows it all the same is another matter, and needs another sentence.

use crate::photo::{Mark, Reading, View, Wrap};

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
    wrong
        .map(|reading| WrongWay {
            view: reading.view,
            mirrored: said_mirrored(reading),
        })
        .collect()
}

/// Pairs of marks by the wearer's left and right.
const PAIRS: [[Mark; 2]; 6] = [
    [Mark::HemLeft, Mark::HemRight],
    [Mark::SkirtLeft, Mark::SkirtRight],
    [Mark::HipLeft, Mark::HipRight],
    [Mark::FoldLeft, Mark::FoldRight],
    [Mark::ObiLowerLeft, Mark::ObiLowerRight],
    [Mark::ObiUpperLeft, Mark::ObiUpperRight],
];

/// Whether a photo from the front that shows right over left was said to come from a mirror.
///
/// A reading doesn't say so itself, but its marks do, as they were given: whoever marks a photo from
/// a mirror puts the marks of her left at the picture's left. Without a pair of marks the edges of
/// the outer panel tell: what is taken for right over left has them on her left, which is the
/// picture's left in a photo from a mirror.
fn said_mirrored(reading: &Reading) -> bool {
    let at = |mark: Mark| reading.fitted.get(&mark).copied();
    // Above zero where her left is at the picture's left.
    let apart = PAIRS.iter().filter_map(|[left, right]| {
        let (left, right) = at(*left).zip(at(*right))?;
        Some(right[0] - left[0])
    });
    let apart: Vec<f64> = apart.collect();
    if !apart.is_empty() {
        return apart.iter().sum::<f64>() > 0.0;
    }
    let Some((floor, crown)) = at(Mark::Floor).zip(at(Mark::Crown)) else {
        return false;
    };
    let edges = [Mark::UwamaeCorner, Mark::EdgeAtFold, Mark::CollarEnd];
    let beside = edges.into_iter().filter_map(at).map(|edge| {
        let share = (floor[1] - edge[1]) / (floor[1] - crown[1]);
        floor[0] + share * (crown[0] - floor[0]) - edge[0]
    });
    beside.sum::<f64>() > 0.0
}
