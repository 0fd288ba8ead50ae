//! The places of a dressing as a photo shows them, and as they would lie on the same photo if it were
//! dressed otherwise.
//!
//! A mark's place is its expected place under the dressing as it was done, and what body, cloth and
//! marking add to it. Dressed otherwise the expected place moves and what was added stays: so what is
//! not changed falls where it is seen, to the pixel, and what is changed moves by as much as the
//! model says.

use std::collections::BTreeMap;

use super::camera::Place;
use super::mark::{Mark, Pixel};
use super::reading::Skew;
use super::shot::Shot;
use super::sitting::{Sitting, Subject};
use super::spot::{Bent, Spot, Where};
use super::spots::Spots;
use super::way::straight;
use crate::drape::Drape;
use crate::dressing::{Dressing, Given, predict};
use crate::problem::Problem;

/// One place on a photo, as it is and as it would be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moved {
    /// Where it is seen, as all marks together have it.
    pub seen: Pixel,
    /// Where it would be seen.
    pub wanted: Pixel,
    /// How far it would move, in centimetres: to the wearer's left, ahead of her, up.
    pub by_cm: Place,
}

/// The places of one photo.
#[derive(Debug, Clone, PartialEq)]
pub struct Overlay {
    /// Every mark that was set.
    pub places: BTreeMap<Mark, Moved>,
    /// How many pixels a centimetre across the view makes at the wearer's middle, at half her
    /// height.
    pub pixels_per_cm: f64,
}

/// The places of a photo of `done`, and where they would be with `wanted`; what `level` names is
/// alike on both sides in it.
///
/// # Errors
/// As [`super::read`].
pub fn overlay(
    subject: &Subject<'_>,
    shot: &Shot,
    (done, wanted): (&Dressing, &Dressing),
    level: &[Skew],
) -> Result<Overlay, Vec<Problem>> {
    let straight = straight(shot);
    let sitting = Sitting::new(subject, &straight.shot)?;
    let camera = &sitting.fit.camera;
    let dressed = |dressing: &Dressing| {
        let Subject { body, fitting, .. } = *subject;
        let drape = Drape::new(body, fitting, dressing, &predict(fitting, dressing));
        let yuki = fitting.value(Given::Yuki);
        let spots = Spots {
            body,
            drape: &drape,
            yuki,
        }
        .of(shot.view);
        // The surface bends between its own hem and its own obi.
        let (hem, obi) = (drape.hem, drape.obi.front);
        (spots, hem, obi)
    };
    let (done, wanted) = (dressed(done), dressed(wanted));
    let shape = sitting.shape_found();
    let mut own: BTreeMap<Mark, (usize, Vec<f64>)> = BTreeMap::new();
    for spot in sitting.seen_spots() {
        let Spot { mark, at, .. } = sitting.spots()[spot];
        let added = coordinates(&at)
            .iter()
            .zip(sitting.own(spot))
            .zip(coordinates(&done.0[spot].at))
            .map(|((planned, own), done)| planned + own - done)
            .collect();
        own.insert(mark, (spot, added));
    }
    let seen: Vec<(Mark, usize)> = own.iter().map(|(mark, (spot, _))| (*mark, *spot)).collect();
    for pair in level.iter().flat_map(|skew| sides(*skew)) {
        even(&mut own, *pair);
    }
    let bent = |hem: f64, obi: f64| Bent {
        surface: &sitting.drape.surface,
        hem,
        obi,
    };
    let mut places = BTreeMap::new();
    for (mark, spot) in seen {
        let at = sitting.place(spot);
        let added = &own[&mark].1;
        let to = bent(wanted.1, wanted.2).placed(&wanted.0[spot].at, added, shape, camera.eye);
        let Some((seen, wanted)) = camera.project(at).zip(camera.project(to)) else {
            continue;
        };
        let moved = Moved {
            seen: straight.back(seen),
            wanted: straight.back(wanted),
            by_cm: std::array::from_fn(|i| to[i] - at[i]),
        };
        places.insert(straight.name(mark), moved);
    }
    let middle = [0.0, 0.0, 0.5 * subject.body.shape().figure().stature];
    Ok(Overlay {
        places,
        pixels_per_cm: camera.pixels_per_cm(middle),
    })
}

/// A place's own coordinates where it is expected, in their order; an outline's arc is the lens's.
fn coordinates(at: &Where) -> Vec<f64> {
    match *at {
        Where::Free(place) => place.to_vec(),
        Where::Lying { s, z, .. } => vec![s, z],
        Where::Outline { z, .. } => vec![z],
    }
}

/// The marks at both sides whose difference a skew is.
fn sides(skew: Skew) -> &'static [[Mark; 2]] {
    match skew {
        Skew::HemSlant => &[[Mark::HemLeft, Mark::HemRight]],
        Skew::FoldLean => &[[Mark::FoldLeft, Mark::FoldRight]],
        Skew::ObiSlant => &[
            [Mark::ObiLowerLeft, Mark::ObiLowerRight],
            [Mark::ObiUpperLeft, Mark::ObiUpperRight],
        ],
        Skew::CrossingOff | Skew::HanEriDifference | Skew::NapeOff | Skew::SleeveDifference => &[],
    }
}

/// Makes what was added to the heights of two places the same; where round her they lie stays.
fn even(own: &mut BTreeMap<Mark, (usize, Vec<f64>)>, pair: [Mark; 2]) {
    let [a, b] = pair.map(|mark| own.get(&mark).map(|(_, added)| added.clone()));
    let Some((a, b)) = a.zip(b) else { return };
    let Some((a, b)) = a.last().zip(b.last()) else {
        return;
    };
    let mean = 0.5 * (a + b);
    for mark in pair {
        // A place's height is the last of its own coordinates.
        if let Some(height) = own.get_mut(&mark).and_then(|(_, added)| added.last_mut()) {
            *height = mean;
        }
    }
}
