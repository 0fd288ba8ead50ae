//! What is known of the room: how photos are usually taken, and things of known size or direction.

use std::f64::consts::FRAC_PI_2;

use super::camera::{Camera, Place};
use super::mark::Pixel;
use super::rows::Rows;
use super::shot::{Line, Shot};

/// Width and height of an A4 sheet, in centimetres (ISO 216).
const SHEET: [f64; 2] = [21.0, 29.7];

/// Focal length over the longer side of the picture, as a logarithm, and its deviation, where the
/// photo does not say: from a wide phone lens (0.7) to a portrait one (1.4) (chosen).
const FOCAL: (f64, f64) = (-0.1, 0.35);
/// Deviation of that logarithm where the photo says it: the 35 mm equivalent is a whole number,
/// and steadying the picture crops a little (chosen).
const FOCAL_TOLD_SD: f64 = 0.015;
/// Distance of the lens as a logarithm of centimetres, and its deviation: 2 to 5 m (chosen).
const DISTANCE: (f64, f64) = (5.8, 0.4);
/// Height of the lens: from a table to above the eyes, in centimetres (chosen).
const LENS_HEIGHT: (f64, f64) = (115.0, 35.0);
/// How far the wearer stands turned from the lens, in radians (chosen: about 7 degrees).
const TURNED_SD: f64 = 0.12;
/// How far the axis points beside her, in radians (chosen).
const BESIDE_SD: f64 = 0.25;
/// How far it points up or down, in radians (chosen: about 6 degrees).
const TILT_SD: f64 = 0.11;
/// How far the picture is turned, in radians (chosen: about 2 degrees).
const ROLL_SD: f64 = 0.04;
/// Where sheet or tape may stand, in centimetres from the middle of the feet (chosen).
const NEAR_SD: f64 = 40.0;
/// How far a sheet may be turned from the lens, in radians (chosen).
const SHEET_TURNED_SD: f64 = 0.35;

/// What binds the camera beside the marks.
pub(super) struct Room<'a> {
    pub shot: &'a Shot,
    /// The lens at its start.
    pub start: Camera,
    /// Deviation of a marked point, in pixels.
    pub mark_sd: f64,
}

impl Room<'_> {
    /// The unknowns of sheet, tape and level edges, as first guessed.
    pub fn start(&self) -> Vec<f64> {
        let references = &self.shot.references;
        let mut all = Vec::new();
        if let Some([_, _, right, left]) = references.sheet {
            all.extend(self.on_floor(middle(left, right)));
            all.push(0.0);
        }
        if let Some(tape) = &references.tape {
            all.extend(self.on_floor(tape.ends[0]));
        }
        for pair in &references.levels {
            let off = |turn: f64| {
                let misses = pair
                    .iter()
                    .map(|line| self.along(&self.start, line, level(turn)));
                misses.map(f64::abs).sum::<f64>()
            };
            all.push(if off(0.0) < off(FRAC_PI_2) {
                0.0
            } else {
                FRAC_PI_2
            });
        }
        all
    }

    /// Where a pixel's sight line meets the floor; the middle of the feet where it does not, or far off.
    fn on_floor(&self, at: Pixel) -> [f64; 2] {
        let c = &self.start;
        let ahead = c.before_lens([0.0, 0.0, 0.0])[2];
        let near = (-100..=100).map(|i| {
            // Along a line through the feet away from the lens, the place that falls nearest.
            let (sin, cos) = c.azimuth.sin_cos();
            let t = f64::from(i);
            [t * cos, t * sin]
        });
        let scale = ahead / c.focal_px;
        let off = |p: &[f64; 2]| {
            c.project([p[0], p[1], 0.0])
                .map_or(f64::INFINITY, |q| (q[1] - at[1]).abs())
        };
        let best = near
            .min_by(|a, b| off(a).total_cmp(&off(b)))
            .unwrap_or([0.0; 2]);
        let across = c
            .project([best[0], best[1], 0.0])
            .map_or(0.0, |q| (at[0] - q[0]) * scale);
        let (sin, cos) = c.azimuth.sin_cos();
        [best[0] - across * sin, best[1] + across * cos]
    }

    /// Adds the misses of all that is known.
    pub fn bind(&self, camera: &Camera, also: &[f64], rows: &mut Rows) {
        rows.bind(camera, 0..0, also, |c, _| self.usual(c));
        let references = &self.shot.references;
        let mut next = 0;
        let mut take = |n: usize| {
            next += n;
            next - n..next
        };
        if let Some(corners) = &references.sheet {
            rows.bind(camera, take(3), also, |c, own| self.sheet(c, own, corners));
        }
        if let Some(tape) = &references.tape {
            rows.bind(camera, take(2), also, |c, own| {
                let mut misses = near(own);
                for (end, z) in tape.ends.iter().zip([0.0, tape.length_cm]) {
                    self.miss(c, [own[0], own[1], z], *end, &mut misses);
                }
                misses
            });
        }
        for line in &references.uprights {
            rows.bind(camera, 0..0, also, |c, _| {
                vec![self.along(c, line, [0.0, 0.0, 1.0])]
            });
        }
        for pair in &references.levels {
            rows.bind(camera, take(1), also, |c, own| {
                let misses = pair.iter().map(|line| self.along(c, line, level(own[0])));
                misses.collect()
            });
        }
    }

    /// How a photo is usually taken.
    fn usual(&self, c: &Camera) -> Vec<f64> {
        let longer = f64::from(self.shot.size[0].max(self.shot.size[1]));
        let (focal, focal_sd) = match self.shot.focal {
            Some(share) => (share.ln(), FOCAL_TOLD_SD),
            None => FOCAL,
        };
        let (height, height_sd) = match self.shot.lens_height_cm {
            Some(known) => (known.value, known.sd),
            None => LENS_HEIGHT,
        };
        // Where the wearer stands as the lens has it, seen from above.
        let toward_her = (-c.eye[1]).atan2(-c.eye[0]);
        let turned = angle(toward_her - self.shot.view.azimuth());
        let beside = angle(c.azimuth - toward_her);
        vec![
            ((c.focal_px / longer).ln() - focal) / focal_sd,
            (c.eye[0].hypot(c.eye[1]).ln() - DISTANCE.0) / DISTANCE.1,
            turned / TURNED_SD,
            (c.eye[2] - height) / height_sd,
            beside / BESIDE_SD,
            c.tilt / TILT_SD,
            c.roll / ROLL_SD,
        ]
    }

    fn sheet(&self, c: &Camera, own: &[f64], corners: &[Pixel; 4]) -> Vec<f64> {
        let mut misses = near(own);
        misses.push(own[2] / SHEET_TURNED_SD);
        // The way its upper edge runs toward the right of the picture.
        let (sin, cos) = (self.shot.view.azimuth() + own[2]).sin_cos();
        let half = 0.5 * SHEET[0];
        let places = [
            (-half, SHEET[1]),
            (half, SHEET[1]),
            (half, 0.0),
            (-half, 0.0),
        ];
        for ((across, z), at) in places.into_iter().zip(corners) {
            let place = [own[0] - across * sin, own[1] + across * cos, z];
            self.miss(c, place, *at, &mut misses);
        }
        misses
    }

    fn miss(&self, c: &Camera, place: Place, at: Pixel, misses: &mut Vec<f64>) {
        let seen = c.project(place).unwrap_or([f64::NAN; 2]);
        misses.extend((0..2).map(|i| (seen[i] - at[i]) / self.mark_sd));
    }

    /// How far a line's ends lie off one that runs along `direction` through its middle.
    fn along(&self, c: &Camera, line: &Line, direction: Place) -> f64 {
        let [a, b] = *line;
        let m = middle(a, b);
        let [x, y] = c.runs(direction, m);
        let length = x.hypot(y).max(1e-9);
        let half = [b[0] - m[0], b[1] - m[1]];
        // Each end is set with its own error, and half their difference has less by a root of two.
        (half[0] * y - half[1] * x) / length / (self.mark_sd * std::f64::consts::FRAC_1_SQRT_2)
    }
}

/// A level direction.
fn level(turn: f64) -> Place {
    let (sin, cos) = turn.sin_cos();
    [cos, sin, 0.0]
}

fn middle(a: Pixel, b: Pixel) -> Pixel {
    [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])]
}

fn near(own: &[f64]) -> Vec<f64> {
    vec![own[0] / NEAR_SD, own[1] / NEAR_SD]
}

/// An angle between half a turn to either side.
fn angle(a: f64) -> f64 {
    let (sin, cos) = a.sin_cos();
    sin.atan2(cos)
}

/// The lens as first guessed from two places that were seen: straight ahead of her, as far away
/// as their distance in the picture tells, and turned so that both fall where they were seen.
pub(super) fn first_guess(shot: &Shot, seen: [(Place, Pixel); 2]) -> Camera {
    let [w, h] = shot.size.map(f64::from);
    let focal_px = shot.focal.unwrap_or(FOCAL.0.exp()) * w.max(h);
    let centre = [0.5 * w, 0.5 * h];
    let [(p, a), (q, b)] = seen;
    let apart = (a[0] - b[0]).hypot(a[1] - b[1]).max(1.0);
    let tall = (0..3).map(|i| (p[i] - q[i]).powi(2)).sum::<f64>().sqrt();
    let distance = (focal_px * tall / apart).clamp(80.0, 3000.0);
    let height = shot.lens_height_cm.map_or(LENS_HEIGHT.0, |k| k.value);
    let (azimuth, m) = (shot.view.azimuth(), middle(a, b));
    let (sin, cos) = azimuth.sin_cos();
    let z = 0.5 * (p[2] + q[2]);
    // A lens as far to the side as to leave her on the picture's middle, then turned to where she is.
    Camera {
        focal_px,
        centre,
        eye: [-distance * cos, -distance * sin, height],
        azimuth: azimuth - ((m[0] - centre[0]) / focal_px).atan(),
        tilt: (z - height).atan2(distance) + ((m[1] - centre[1]) / focal_px).atan(),
        roll: 0.0,
    }
}
