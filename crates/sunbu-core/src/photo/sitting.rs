//! One photo of one person, fitted: the camera found and every mark with its place in the room.

use super::camera::{CAMERA, Camera, Place};
use super::check::{does_not_fit, problems};
use super::fit::{Fit, Sighting, Task};
use super::form::Form;
use super::mark::{Mark, Pixel, Trust, View};
use super::room::{Room, first_guess};
use super::rows::Rows;
use super::shot::Shot;
use super::spot::{Bent, SHAPE, Spot, Where};
use super::spots::Spots;
use crate::body::Body;
use crate::drape::Drape;
use crate::dressing::{Dressing, Fitting, Given, predict};
use crate::problem::Problem;

/// Deviation of a mark set with care over the height of the figure: 2 px of 1,500.
const MARK_SD: f64 = 2.0 / 1500.0;
/// No mark is surer than so many pixels.
const LEAST_SD_PX: f64 = 0.7;
/// How much less sure a mark is that was called so.
const UNSURE: f64 = 4.0;
/// How far cloth at an outline stands off the surface or falls in, in centimetres (chosen).
const OUTLINE_SD: f64 = 0.3;

/// Whom a photo shows, and how she was to be dressed.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// Her body.
    pub body: &'a Body,
    /// She in her garment.
    pub fitting: &'a Fitting,
    /// The dressing that was planned; the usual one where none was.
    pub planned: &'a Dressing,
}

/// A photo fitted.
pub(super) struct Sitting<'a> {
    pub subject: Subject<'a>,
    pub view: View,
    pub drape: Drape<'a>,
    pub fit: Fit,
    spots: Vec<Spot>,
    sightings: Vec<Sighting>,
}

impl<'a> Sitting<'a> {
    /// The photo fitted, or all that is wrong with it.
    pub fn new(subject: &Subject<'a>, shot: &Shot) -> Result<Self, Vec<Problem>> {
        let found = problems(shot);
        if !found.is_empty() {
            return Err(found);
        }
        let Subject {
            body,
            fitting,
            planned,
        } = *subject;
        let drape = Drape::new(body, fitting, planned, &predict(fitting, planned));
        let yuki = fitting.value(Given::Yuki);
        let spots = Spots {
            body,
            drape: &drape,
            yuki,
        }
        .of(shot.view);
        let Some((start, mark_sd)) = start(shot, &spots) else {
            return Err(vec![does_not_fit()]);
        };
        let sightings = sightings(shot, &spots, &start, mark_sd);
        let room = Room {
            shot,
            start,
            mark_sd,
        };
        let task = Task {
            bent: bent(&drape),
            spots: &spots,
            sightings: &sightings,
            also: &|camera: &Camera, also: &[f64], rows: &mut Rows| room.bind(camera, also, rows),
            also_start: room.start(),
        };
        let fit = task.solve(start).ok_or_else(|| vec![does_not_fit()])?;
        Ok(Self {
            subject: *subject,
            view: shot.view,
            drape,
            fit,
            spots,
            sightings,
        })
    }

    /// A spot's place in the room.
    pub fn place(&self, spot: usize) -> Place {
        let theta = self.fit.theta.as_slice();
        let (own, shape) = (&theta[self.fit.own(spot)..], &theta[CAMERA..]);
        bent(&self.drape).placed(&self.spots[spot].at, own, shape, self.fit.camera.eye)
    }

    /// The place of a spot on the surface, moved by so much of arc from where it is expected, its
    /// height as it was found.
    pub fn moved_place(&self, spot: usize, arc: f64) -> Place {
        let mut own = self.own(spot).to_vec();
        if let [first, _] = own.as_mut_slice() {
            *first = arc;
        }
        let shape = &self.fit.theta.as_slice()[CAMERA..];
        bent(&self.drape).placed(&self.spots[spot].at, &own, shape, self.fit.camera.eye)
    }

    /// All spots of this side.
    pub fn spots(&self) -> &[Spot] {
        &self.spots
    }

    /// The spots whose mark was set.
    pub fn seen_spots(&self) -> impl Iterator<Item = usize> + '_ {
        self.sightings.iter().map(|seen| seen.spot)
    }

    /// What was found of a spot's own coordinates, off where they are expected.
    pub fn own(&self, spot: usize) -> &[f64] {
        let first = self.fit.own(spot);
        &self.fit.theta.as_slice()[first..first + self.spots[spot].at.own()]
    }

    /// What was found of the surface, off the one foretold.
    pub fn shape_found(&self) -> &[f64] {
        &self.fit.theta.as_slice()[CAMERA..CAMERA + SHAPE]
    }

    /// Where each mark that was set falls in the picture.
    pub fn fitted(&self) -> impl Iterator<Item = (Mark, Pixel)> + '_ {
        self.sightings.iter().filter_map(|seen| {
            let at = self.fit.camera.project(self.place(seen.spot))?;
            Some((self.spots[seen.spot].mark, at))
        })
    }

    /// How far each mark lies from there, in its deviations.
    pub fn off(&self) -> impl Iterator<Item = (Mark, f64)> + '_ {
        let marks = self.sightings.iter().map(|seen| self.spots[seen.spot].mark);
        marks.zip(self.fit.off.iter().copied())
    }

    fn seen(&self, mark: Mark) -> Option<usize> {
        let sighting = self
            .sightings
            .iter()
            .find(|s| self.spots[s.spot].mark == mark);
        sighting.map(|s| s.spot)
    }

    /// The height of a mark that was set.
    pub fn height(&self, mark: Mark) -> Option<Form> {
        let spot = self.seen(mark)?;
        let at = &self.spots[spot].at;
        let unknown = self.fit.own(spot) + at.height();
        Some(Form::of(at.z() + self.fit.theta[unknown], unknown))
    }

    /// The arc of a mark that was set on the surface.
    pub fn arc(&self, mark: Mark) -> Option<Form> {
        let spot = self.seen(mark)?;
        let Where::Lying { s, .. } = self.spots[spot].at else {
            return None;
        };
        let unknown = self.fit.own(spot);
        Some(Form::of(s + self.fit.theta[unknown], unknown))
    }

    /// One coordinate of a mark that was set anywhere in the room.
    pub fn coordinate(&self, mark: Mark, k: usize) -> Option<Form> {
        let spot = self.seen(mark)?;
        let Where::Free(place) = self.spots[spot].at else {
            return None;
        };
        let unknown = self.fit.own(spot) + k;
        Some(Form::of(place[k] + self.fit.theta[unknown], unknown))
    }

    /// How much longer arcs at the side are at a height than on the surface foretold.
    pub fn stretch_ahead(&self, z: f64) -> f64 {
        bent(&self.drape).stretch(z, &self.fit.theta.as_slice()[CAMERA..])[1]
    }

    /// How the surface differs from the one foretold, by [`super::spot::SHAPE_SD`]'s places.
    pub fn shape(&self, k: usize) -> Form {
        Form::of(self.fit.theta[CAMERA + k], CAMERA + k)
    }
}

fn bent<'d>(drape: &'d Drape<'d>) -> Bent<'d> {
    Bent {
        surface: &drape.surface,
        hem: drape.hem,
        obi: drape.obi.front,
    }
}

/// The lens as first guessed, and the deviation of a mark: from floor and crown.
fn start(shot: &Shot, spots: &[Spot]) -> Option<(Camera, f64)> {
    let seen = |mark: Mark| {
        let spot = spots.iter().find(|spot| spot.mark == mark)?;
        let Where::Free(place) = spot.at else {
            return None;
        };
        Some((place, shot.marks.get(&mark)?.at))
    };
    let ends = [seen(Mark::Floor)?, seen(Mark::Crown)?];
    let tall = (ends[0].1[0] - ends[1].1[0]).hypot(ends[0].1[1] - ends[1].1[1]);
    let mark_sd = (MARK_SD * tall).max(LEAST_SD_PX);
    Some((first_guess(shot, ends), mark_sd))
}

fn sightings(shot: &Shot, spots: &[Spot], start: &Camera, mark_sd: f64) -> Vec<Sighting> {
    let scale = start.pixels_per_cm([0.0, 0.0, 0.5 * start.eye[2]]);
    let seen = spots
        .iter()
        .enumerate()
        .filter_map(|(spot, Spot { mark, at, .. })| {
            let placed = shot.marks.get(mark)?;
            let sd = match placed.trust {
                Trust::Sure => mark_sd,
                Trust::Unsure => UNSURE * mark_sd,
            };
            let across = match at {
                Where::Outline { .. } => sd.hypot(OUTLINE_SD * scale),
                _ => sd,
            };
            Some(Sighting {
                spot,
                at: placed.at,
                sd: [across, sd],
            })
        });
    seen.collect()
}
