//! Which way round: pictures from a mirror, and a garment wrapped right over left.

use super::mark::{Mark, Marks, Pixel, View};
use super::shot::{References, Shot};

/// How far beside the middle, over the half breadth there, an edge must lie to tell the way.
const CLEARLY: f64 = 0.15;

/// Which panel the picture shows on top.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wrap {
    /// The wearer's left over her right, as the living wear it.
    LeftOverRight,
    /// Her right over her left: a picture from a mirror, or wrongly wrapped.
    RightOverLeft,
    /// No mark tells.
    Untold,
}

/// Which panel lies on top as the marks of a front view have it.
pub fn wrap(shot: &Shot) -> Wrap {
    let off = edges_off(shot);
    match () {
        () if off.is_empty() => Wrap::Untold,
        () if off.iter().all(|(_, o)| *o > CLEARLY) => Wrap::RightOverLeft,
        () if off.iter().all(|(_, o)| *o < -CLEARLY) => Wrap::LeftOverRight,
        () => Wrap::Untold,
    }
}

/// The marks of the front edge, where some lie clearly at her right and others clearly at her left:
/// no edge runs so, and one of the two is wrong.
pub(super) fn torn(shot: &Shot) -> Vec<Mark> {
    let off = edges_off(shot);
    let both = off.iter().any(|(_, o)| *o > CLEARLY) && off.iter().any(|(_, o)| *o < -CLEARLY);
    let marks = off.into_iter().map(|(mark, _)| mark);
    if both { marks.collect() } else { Vec::new() }
}

/// Each mark of the outer front edge and how far to her left of the middle it lies, over the half
/// breadth there.
fn edges_off(shot: &Shot) -> Vec<(Mark, f64)> {
    if shot.view != View::Front {
        return Vec::new();
    }
    let at = |mark: Mark| shot.marks.get(&mark).map(|placed| placed.at);
    let pairs = [
        (Mark::HemLeft, Mark::HemRight),
        (Mark::HipLeft, Mark::HipRight),
        (Mark::FoldLeft, Mark::FoldRight),
        (Mark::ObiLowerLeft, Mark::ObiLowerRight),
    ];
    let sides: Vec<(Pixel, Pixel)> = pairs
        .into_iter()
        .filter_map(|(a, b)| at(a).zip(at(b)))
        .collect();
    let tall = at(Mark::Floor)
        .zip(at(Mark::Crown))
        .map_or(1.0, |(floor, crown)| (floor[1] - crown[1]).abs());
    // The middle and the half breadth beside an edge: of the nearest pair of outlines, else of the
    // line from floor to crown, with the half breadth of a person of that height.
    let beside = |edge: Pixel| -> Option<(f64, f64)> {
        let near = |pair: &(Pixel, Pixel)| (0.5 * (pair.0[1] + pair.1[1]) - edge[1]).abs();
        if let Some((a, b)) = sides.iter().min_by(|a, b| near(a).total_cmp(&near(b))) {
            return Some((0.5 * (a[0] + b[0]), 0.5 * (a[0] - b[0]).abs()));
        }
        let (floor, crown) = at(Mark::Floor).zip(at(Mark::Crown))?;
        let share = (floor[1] - edge[1]) / (floor[1] - crown[1]);
        Some((floor[0] + share * (crown[0] - floor[0]), 0.1 * tall))
    };
    let edges = [Mark::UwamaeCorner, Mark::EdgeAtFold, Mark::CollarEnd];
    let off = edges.into_iter().filter_map(|mark| {
        let edge = at(mark)?;
        let (middle, half) = beside(edge)?;
        // Her right is at the picture's left, unless the picture comes from a mirror.
        let off = (edge[0] - middle) / half.max(1.0);
        Some((mark, if shot.mirrored { -off } else { off }))
    });
    off.collect()
}

/// A shot as it is read: never from a mirror, never right over left.
pub(super) struct Straight {
    /// Which panel lies on top in the shot as it was given.
    pub way: Wrap,
    /// The shot to read.
    pub shot: Shot,
    /// The width of the picture, where it had to be turned.
    turned: Option<f64>,
}

/// The shot as it is read.
pub(super) fn straight(shot: &Shot) -> Straight {
    let way = wrap(shot);
    let (straight, is_turned) = match (way, shot.mirrored) {
        (Wrap::RightOverLeft, false) => (exchanged(shot), true),
        // Turned twice: the picture stays, and the marks' names are exchanged.
        (Wrap::RightOverLeft, true) => {
            let turned = turned(shot);
            let marks = exchanged(&turned).marks;
            (
                Shot {
                    marks,
                    ..shot.clone()
                },
                false,
            )
        }
        (_, true) => (turned(shot), true),
        (_, false) => (shot.clone(), false),
    };
    Straight {
        way,
        shot: straight,
        turned: is_turned.then(|| f64::from(shot.size[0])),
    }
}

impl Straight {
    /// A pixel of the shot that is read, in the shot as it was given.
    pub fn back(&self, [x, y]: Pixel) -> Pixel {
        [self.turned.map_or(x, |width| width - x), y]
    }

    /// A direction on the shot that is read, in the shot as it was given.
    pub fn back_along(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [if self.turned.is_some() { -x } else { x }, y]
    }

    /// A mark of the shot that is read, as it was given.
    pub fn name(&self, mark: Mark) -> Mark {
        match self.way {
            Wrap::RightOverLeft => mark.mirrored(),
            Wrap::LeftOverRight | Wrap::Untold => mark,
        }
    }
}

/// The shot as a lens without a mirror would have it: left and right of the picture exchanged.
/// The names of the marks are the wearer's own and stay.
fn turned(shot: &Shot) -> Shot {
    let width = f64::from(shot.size[0]);
    let flip = |[x, y]: Pixel| [width - x, y];
    let line = |[a, b]: [Pixel; 2]| [flip(a), flip(b)];
    let references = &shot.references;
    Shot {
        mirrored: false,
        marks: flipped(&shot.marks, width),
        references: References {
            sheet: references
                .sheet
                .map(|[a, b, c, d]| [flip(b), flip(a), flip(d), flip(c)]),
            tape: references.tape.map(|tape| super::shot::Tape {
                ends: line(tape.ends),
                ..tape
            }),
            uprights: references.uprights.iter().copied().map(line).collect(),
            levels: references
                .levels
                .iter()
                .map(|pair| pair.map(line))
                .collect(),
        },
        ..shot.clone()
    }
}

/// A shot of right over left read as one from a mirror: what was taken for her left is her right.
fn exchanged(shot: &Shot) -> Shot {
    let turned = turned(shot);
    let marks = turned
        .marks
        .iter()
        .map(|(mark, placed)| (mark.mirrored(), *placed));
    Shot {
        marks: marks.collect(),
        ..turned
    }
}

fn flipped(marks: &Marks, width: f64) -> Marks {
    let flip = |(mark, placed): (&Mark, &super::mark::Placed)| {
        let at = [width - placed.at[0], placed.at[1]];
        (*mark, super::mark::Placed { at, ..*placed })
    };
    marks.iter().map(flip).collect()
}
