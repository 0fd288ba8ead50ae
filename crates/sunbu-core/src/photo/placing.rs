//! One move of a hand on a photo: what it set goes to its edge, everything else follows.

use std::collections::BTreeMap;

use super::edge::to_edge;
use super::expect::{Edge, Expected, expect};
use super::gray::Gray;
use super::mark::Mark;
use super::marking::Marking;
use super::sitting::Subject;
use crate::problem::Problem;

/// How far a mark that a hand has set is moved to its edge at most, over the height of the figure:
/// 10 px of 1,500 (chosen: it suits a hand that errs by up to 8).
const HAND_REACH: f64 = 10.0 / 1500.0;
/// How far a mark that follows is moved to its edge at most: 2 cm of somebody of 160, and 3 cm
/// where the edge is her outline, beyond which there is only the room. Chosen on rendered photos of
/// dressings that were 2 cm off everywhere: with 1 cm hands had to move up to three marks more.
const FOLLOW_REACH: f64 = 2.0 / 160.0;
const OUTLINE_REACH: f64 = 3.0 / 160.0;
/// Parts of a pixel that places are kept in: a hundredth is far below what any eye or edge is exact
/// to, and is written and read back as the same number.
const PARTS: f64 = 100.0;

/// What came of a move.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Placing {
    /// Where each mark is expected, also those that are not in sight; nothing before floor and crown
    /// are set, or where no lens sees the marks so.
    pub expected: BTreeMap<Mark, Expected>,
    /// What is wrong, each at its place: texts that cannot be read, marks that contradict one
    /// another.
    pub problems: Vec<Problem>,
}

impl Marking {
    /// Brings everything in line after a move: lengths are read, what hands have just set is
    /// brought to its edge if marks are to go to edges, and all others follow.
    ///
    /// Whatever is wrong is told, and what was set stays.
    pub fn place(&mut self, subject: &Subject<'_>, gray: &Gray, hands: &[Mark]) -> Placing {
        let mut problems = self.settle();
        if self.snapping {
            for &mark in hands {
                self.snap_hand(subject, gray, mark);
            }
        }
        let tall = self.tall().unwrap_or(0.0);
        let followed = self.follow(subject, |at, edge| {
            let reach = match edge {
                Edge::Across([x, y]) if x.abs() > y.abs() => OUTLINE_REACH,
                _ => FOLLOW_REACH,
            };
            to_edge(gray, at, edge, reach * tall)
        });
        for placed in self.shot.marks.values_mut() {
            placed.at = placed.at.map(rounded);
        }
        let expected = followed.unwrap_or_else(|found| {
            problems.extend(found);
            BTreeMap::new()
        });
        Placing { expected, problems }
    }

    /// What a move that changes nothing would come to: where each mark is expected, and what is
    /// wrong.
    pub fn foresee(&self, subject: &Subject<'_>) -> Placing {
        let mut settled = self.clone();
        let mut problems = settled.settle();
        if !settled.begun() {
            return Placing {
                expected: BTreeMap::new(),
                problems,
            };
        }
        let expected = expect(subject, &settled.shot).unwrap_or_else(|found| {
            problems.extend(found);
            BTreeMap::new()
        });
        Placing { expected, problems }
    }

    /// From floor to crown on the picture, in pixels; none before both are set.
    fn tall(&self) -> Option<f64> {
        let at = |mark| self.shot.marks.get(&mark).map(|placed| placed.at);
        let ([x, y], [u, v]) = (at(Mark::Floor)?, at(Mark::Crown)?);
        Some((x - u).hypot(y - v))
    }

    /// Moves a mark that a hand has set to the edge near it, if there is one.
    fn snap_hand(&mut self, subject: &Subject<'_>, gray: &Gray, mark: Mark) {
        let Some(placed) = self.shot.marks.get(&mark).copied() else {
            return;
        };
        // Before floor and crown are set the figure is as tall as the picture, at most.
        let tall = self.tall().unwrap_or(0.7 * f64::from(self.shot.size[1]));
        let edge = match mark {
            Mark::Crown => Some(Edge::Across([0.0, 1.0])),
            _ => expect(subject, &self.shot)
                .ok()
                .and_then(|expected| Some(expected.get(&mark)?.edge)),
        };
        let found = edge.and_then(|edge| to_edge(gray, placed.at, edge, HAND_REACH * tall));
        let (at, kept) = (found, self.shot.marks.get_mut(&mark));
        if let Some((at, kept)) = at.zip(kept) {
            kept.at = at;
        }
    }
}

/// A coordinate in whole [`PARTS`] of a pixel; as it is where it is too large for that.
fn rounded(px: f64) -> f64 {
    let parts = (px * PARTS).round();
    if parts.is_finite() { parts / PARTS } else { px }
}
