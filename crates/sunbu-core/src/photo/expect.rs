//! Where the marks that were not set yet are expected, given those that were.

use std::collections::BTreeMap;

use super::camera::Place;
use super::mark::{Mark, Pixel, View};
use super::shot::Shot;
use super::sitting::{Sitting, Subject};
use super::spot::Where;
use super::way::straight;
use crate::problem::Problem;

/// What a mark lies on: which way to look for its edge in the picture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Edge {
    /// An edge; the direction across it on the picture, of length one.
    Across([f64; 2]),
    /// Two edges that meet.
    Corner,
    /// Nothing sharp.
    Soft,
}

/// Where a mark is expected.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Expected {
    /// On the picture.
    pub at: Pixel,
    /// What it lies on.
    pub edge: Edge,
    /// Whether it should be in sight: not turned away from the lens, not under cloth, inside the
    /// picture.
    pub in_sight: bool,
}

/// Where each mark of this side is expected, once floor and crown are set. Every further mark that
/// is set moves the others: the lens is found anew, and a hem that lies higher at one end is
/// expected higher at the other, too. A front edge set at her left takes all that belongs to it along:
/// a picture from a mirror, or right over left.
///
/// # Errors
/// As [`super::read`].
pub fn expect(
    subject: &Subject<'_>,
    shot: &Shot,
) -> Result<BTreeMap<Mark, Expected>, Vec<Problem>> {
    let straight = straight(shot);
    let sitting = Sitting::new(subject, &straight.shot)?;
    let camera = &sitting.fit.camera;
    let [width, height] = shot.size.map(f64::from);
    let mut all = BTreeMap::new();
    for (i, spot) in sitting.spots().iter().enumerate() {
        let place = drawn_along(&sitting, i, shot);
        let Some(at) = camera.project(place) else {
            continue;
        };
        let inside = (0.0..=width).contains(&at[0]) && (0.0..=height).contains(&at[1]);
        let in_sight = inside && !covered(&sitting, spot.mark) && faces(&sitting, i, place);
        let edge = match edge(&sitting, i, at) {
            Edge::Across(way) => Edge::Across(straight.back_along(way)),
            other => other,
        };
        let expected = Expected {
            at: straight.back(at),
            edge,
            in_sight,
        };
        all.insert(straight.name(spot.mark), expected);
    }
    Ok(all)
}

/// Where a mark is expected that no hand has set, when its neighbours are not where they were
/// foretold: the sleeve goes with the wrist, the front edge runs on as it was found, a collar goes in
/// where obiage or the other collar now is. What was set stays as it was fitted.
fn drawn_along(sitting: &Sitting<'_>, spot: usize, shot: &Shot) -> Place {
    use Mark as M;
    let place = sitting.place(spot);
    let mark = sitting.spots()[spot].mark;
    if shot.marks.contains_key(&mark) {
        return place;
    }
    let of = |other: Mark| {
        let spots = sitting.spots();
        let found = spots.iter().position(|spot| spot.mark == other)?;
        Some((found, sitting.own(found)))
    };
    let set = |marks: &[Mark]| {
        let found = marks.iter().find(|mark| shot.marks.contains_key(mark));
        found.and_then(|&mark| of(mark)).map(|(_, own)| own)
    };
    let by = |[x, y, z]: [f64; 3]| [place[0] + x, place[1] + y, place[2] + z];
    // How a collar runs from the shoulder, for each centimetre that it comes down.
    let along_collar = |left: bool, end: Mark, down: f64| {
        let shoulder = if left {
            M::CollarShoulderLeft
        } else {
            M::CollarShoulderRight
        };
        let ends = of(shoulder).zip(of(end));
        let Some(((from, _), (to, _))) = ends else {
            return place;
        };
        let (from, to) = (sitting.place(from), sitting.place(to));
        let fall = (to[2] - from[2]).min(-1.0);
        by([0, 1, 2].map(|k| (to[k] - from[k]) / fall * down))
    };
    let arm = |other: Mark| match set(&[other]) {
        Some(&[x, y, z]) => by([x, y, z]),
        _ => place,
    };
    let edge = |others: &[Mark]| match set(others) {
        Some(&[arc, _]) => sitting.moved_place(spot, arc),
        _ => place,
    };
    let height = |other: Mark| of(other).and_then(|(_, own)| own.last().copied());
    match mark {
        M::SleeveEndLeft => arm(M::WristLeft),
        M::SleeveEndRight => arm(M::WristRight),
        M::WristLeft => arm(M::SleeveEndLeft),
        M::WristRight => arm(M::SleeveEndRight),
        M::UwamaeCorner => edge(&[M::EdgeAtFold, M::CollarEnd]),
        M::EdgeAtFold => edge(&[M::CollarEnd, M::UwamaeCorner]),
        M::CollarEnd => edge(&[M::EdgeAtFold, M::UwamaeCorner]),
        M::CollarTieLeft => along_collar(true, mark, height(M::ObiageTop).unwrap_or(0.0)),
        M::CollarTieRight => along_collar(false, mark, height(M::KimonoCrossing).unwrap_or(0.0)),
        _ => place,
    }
}

/// Whether cloth lies over a mark where the plan has it.
fn covered(sitting: &Sitting<'_>, mark: Mark) -> bool {
    let drape = &sitting.drape;
    let end_shows = drape.fold.right > drape.collar_end;
    match mark {
        Mark::CollarEnd => !end_shows,
        // Above its end there is no edge but the collar's.
        Mark::EdgeAtFold => end_shows,
        Mark::AnkleLeft | Mark::AnkleRight => {
            let bone = sitting.subject.body.shape().figure().ankle;
            bone > drape.hem
        }
        Mark::SeamHip => drape.drum.tail < sitting.subject.body.shape().figure().stature * 0.5,
        _ => false,
    }
}

fn faces(sitting: &Sitting<'_>, spot: usize, place: Place) -> bool {
    match sitting.spots()[spot].at {
        Where::Lying { s, z, .. } => {
            let own = sitting.fit.own(spot);
            let moved = s + sitting.fit.theta[own];
            sitting
                .drape
                .surface
                .faces(moved, z, sitting.fit.camera.eye)
        }
        Where::Outline { .. } => true,
        // The far arm of a side view is hidden; everything else free faces its side.
        Where::Free(_) => place.iter().all(|v| v.is_finite()),
    }
}

/// What a mark lies on, at the pixel where it is expected.
fn edge(sitting: &Sitting<'_>, spot: usize, at: Pixel) -> Edge {
    let camera = &sitting.fit.camera;
    let up = unit(camera.runs([0.0, 0.0, 1.0], at));
    let level = [-up[1], up[0]];
    let between = |a: Mark, b: Mark| -> Option<[f64; 2]> {
        let at = |mark: Mark| {
            let i = sitting.spots().iter().position(|spot| spot.mark == mark)?;
            camera.project(sitting.place(i))
        };
        let (a, b) = at(a).zip(at(b))?;
        Some(unit([b[0] - a[0], b[1] - a[1]]))
    };
    let across = |way: Option<[f64; 2]>| match way {
        Some([x, y]) => Edge::Across([-y, x]),
        None => Edge::Soft,
    };
    match sitting.spots()[spot].mark {
        // Feet, wrists and shoulders have no edge of their own there; sleeves and a collar's end have
        // several.
        Mark::Floor
        | Mark::AnkleLeft
        | Mark::AnkleRight
        | Mark::WristLeft
        | Mark::WristRight
        | Mark::SleeveEndLeft
        | Mark::SleeveEndRight
        | Mark::CollarShoulderLeft
        | Mark::CollarShoulderRight
        | Mark::CollarEnd => Edge::Soft,
        Mark::Crown
        | Mark::HemLeft
        | Mark::HemCentre
        | Mark::HemRight
        | Mark::FoldLeft
        | Mark::FoldCentre
        | Mark::FoldRight
        | Mark::ObiLowerLeft
        | Mark::ObiLowerCentre
        | Mark::ObiLowerRight
        | Mark::ObiUpperLeft
        | Mark::ObiUpperCentre
        | Mark::ObiUpperRight
        | Mark::ObiageTop
        | Mark::Nape
        | Mark::DrumTop
        | Mark::DrumBottom
        | Mark::TareEnd => Edge::Across(up),
        Mark::SkirtLeft
        | Mark::SkirtRight
        | Mark::ObiSideLeft
        | Mark::ObiSideRight
        | Mark::HipLeft
        | Mark::HipRight
        | Mark::EdgeAtFold
        | Mark::SeamNape
        | Mark::SeamWaist
        | Mark::SeamHip
        | Mark::SeamHem => Edge::Across(level),
        Mark::UwamaeCorner | Mark::KimonoCrossing | Mark::JubanCrossing => Edge::Corner,
        Mark::CollarTieLeft | Mark::JubanEdgeLeft => {
            across(between(Mark::CollarShoulderLeft, Mark::CollarTieLeft))
        }
        Mark::CollarTieRight | Mark::JubanEdgeRight => {
            across(between(Mark::CollarShoulderRight, Mark::CollarTieRight))
        }
    }
}

fn unit([x, y]: [f64; 2]) -> [f64; 2] {
    let length = x.hypot(y).max(1e-12);
    [x / length, y / length]
}

/// The marks to set first: with both, all others are expected.
pub const FIRST: [Mark; 2] = [Mark::Floor, Mark::Crown];

/// The sides that help most, in order: the front, then the back, then her right.
pub const SIDES: [View; 3] = [View::Front, View::Back, View::Right];
