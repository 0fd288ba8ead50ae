//! The lens: where a place of the room falls on the picture.
//!
//! A pinhole: no distortion of the lens (a phone takes it out before it saves). The room has `x` to
//! the wearer's left, `y` ahead of her and `z` up from the floor, all in centimetres, with the
//! origin on the floor in the middle of her body; the lens has its place, and is turned about the
//! upright (pan), up or down (tilt) and about its own axis (roll).
//!
//! ```text
//! forward  f = (cos a cos t, sin a cos t, sin t)      a = the view's azimuth + pan, t = tilt
//! right    r = (-sin a, cos a, 0)
//! up       u = (-cos a sin t, -sin a sin t, cos t)
//! X = p.r cos q + p.u sin q    Y = p.r sin q - p.u cos q    Z = p.f    p = place - eye, q = roll
//! pixel    = centre + focal (X / Z, Y / Z)
//! ```

use std::f64::consts::{FRAC_PI_2, PI};

use nalgebra::{SMatrix, SVector};

use super::mark::{Pixel, View};

/// A place in the room, in centimetres: to the wearer's left, ahead of her, above the floor.
pub type Place = [f64; 3];

/// How many numbers a camera has.
pub const CAMERA: usize = 7;

/// A lens in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Camera {
    /// Focal length in pixels.
    pub focal_px: f64,
    /// Middle of the picture, in pixels.
    pub centre: Pixel,
    /// Where the lens is, in centimetres.
    pub eye: Place,
    /// Azimuth of the axis from the wearer's left toward ahead of her, in radians.
    pub azimuth: f64,
    /// How far the axis points up, in radians.
    pub tilt: f64,
    /// How far the picture is turned about the axis: positive when what is upright leans to the
    /// right of the picture, in radians.
    pub roll: f64,
}

impl View {
    /// Azimuth of a lens that looks straight at this side, in radians.
    pub fn azimuth(self) -> f64 {
        match self {
            View::Front => -FRAC_PI_2,
            View::Back => FRAC_PI_2,
            View::Right => 0.0,
            View::Left => PI,
        }
    }
}

impl Camera {
    /// The axes of the picture in the room: to its right, downward, and away from the lens.
    fn axes(&self) -> [Place; 3] {
        let ((sin_a, cos_a), (sin_t, cos_t)) = (self.azimuth.sin_cos(), self.tilt.sin_cos());
        let (sin_q, cos_q) = self.roll.sin_cos();
        let right = [-sin_a, cos_a, 0.0];
        let up = [-cos_a * sin_t, -sin_a * sin_t, cos_t];
        let mix = |a: f64, b: f64| std::array::from_fn(|i| a * right[i] + b * up[i]);
        [
            mix(cos_q, sin_q),
            mix(sin_q, -cos_q),
            [cos_a * cos_t, sin_a * cos_t, sin_t],
        ]
    }

    /// A place as the lens has it: to the right, downward and away, in centimetres.
    pub fn before_lens(&self, place: Place) -> Place {
        let p: Place = std::array::from_fn(|i| place[i] - self.eye[i]);
        self.axes().map(|axis| dot(axis, p))
    }

    /// Where a place falls on the picture; none for one beside or behind the lens.
    pub fn project(&self, place: Place) -> Option<Pixel> {
        let [x, y, z] = self.before_lens(place);
        (z > 1.0).then(|| {
            [
                self.centre[0] + self.focal_px * x / z,
                self.centre[1] + self.focal_px * y / z,
            ]
        })
    }

    /// How many pixels a centimetre across the view makes at a place.
    pub fn pixels_per_cm(&self, place: Place) -> f64 {
        self.focal_px / self.before_lens(place)[2].max(1.0)
    }

    /// The way in which something that runs along `direction` in the room points on the picture at
    /// a pixel, not normed. It does not depend on how far away the thing is.
    pub fn runs(&self, direction: Place, at: Pixel) -> [f64; 2] {
        let [x, y, z] = self.axes().map(|axis| dot(axis, direction));
        let m = [
            (at[0] - self.centre[0]) / self.focal_px,
            (at[1] - self.centre[1]) / self.focal_px,
        ];
        [x - m[0] * z, y - m[1] * z]
    }

    /// The camera that sees known places where they were seen, by least squares over its seven
    /// numbers, or the six without the focal length when that is known.
    ///
    /// The start must look at the places from about the right side. `None` when fewer than four
    /// places are given, a place lies behind the lens on the way, or the places leave the camera
    /// open (all on one line).
    pub fn pose(start: Camera, seen: &[(Place, Pixel)], focal_is_known: bool) -> Option<Camera> {
        if seen.len() < 4 {
            return None;
        }
        let cost = |c: &Camera| -> Option<f64> {
            seen.iter().try_fold(0.0, |sum, (place, pixel)| {
                let at = c.project(*place)?;
                Some(sum + (at[0] - pixel[0]).powi(2) + (at[1] - pixel[1]).powi(2))
            })
        };
        let (mut at, mut best, mut damping) = (start, cost(&start)?, 1e-3);
        for _ in 0..200 {
            let mut normal = SMatrix::<f64, CAMERA, CAMERA>::zeros();
            let mut gradient = SVector::<f64, CAMERA>::zeros();
            for (place, pixel) in seen {
                let got = at.project(*place)?;
                let slope = at.slopes(*place)?;
                for row in 0..2 {
                    let j = SVector::<f64, CAMERA>::from_fn(|k, _| {
                        if k == 0 && focal_is_known {
                            0.0
                        } else {
                            slope[k][row]
                        }
                    });
                    normal.ger(1.0, &j, &j, 1.0);
                    gradient += j * (got[row] - pixel[row]);
                }
            }
            if focal_is_known {
                normal[(0, 0)] = 1.0;
            }
            let mut moved = false;
            while damping < 1e12 {
                let mut damped = normal;
                for k in 0..CAMERA {
                    damped[(k, k)] *= 1.0 + damping;
                }
                let step = damped.cholesky()?.solve(&-gradient);
                let next = at.moved(&step.into());
                match cost(&next) {
                    Some(c) if c < best => {
                        let gained = best - c;
                        (at, best, damping, moved) =
                            (next, c, damping * 0.2, gained > 1e-14 * best);
                        break;
                    }
                    _ => damping *= 6.0,
                }
            }
            if !moved {
                break;
            }
        }
        Some(at)
    }

    /// The camera with its seven numbers changed: logarithm of the focal length, the lens's place,
    /// azimuth, tilt, roll.
    pub(super) fn moved(&self, by: &[f64; CAMERA]) -> Camera {
        Camera {
            focal_px: self.focal_px * by[0].exp(),
            centre: self.centre,
            eye: std::array::from_fn(|i| self.eye[i] + by[1 + i]),
            azimuth: self.azimuth + by[4],
            tilt: self.tilt + by[5],
            roll: self.roll + by[6],
        }
    }

    /// How a pixel moves by each of the seven numbers.
    pub(super) fn slopes(&self, place: Place) -> Option<[Pixel; CAMERA]> {
        let axes = self.axes();
        let p: Place = std::array::from_fn(|i| place[i] - self.eye[i]);
        let [x, y, z] = axes.map(|axis| dot(axis, p));
        if z <= 1.0 {
            return None;
        }
        // A pixel's change when the place before the lens changes by `d`.
        let by = |d: Place| {
            [
                self.focal_px * (d[0] - x / z * d[2]) / z,
                self.focal_px * (d[1] - y / z * d[2]) / z,
            ]
        };
        let (sin_q, cos_q) = self.roll.sin_cos();
        // Turning about the upright turns `p` the other way about it.
        let turned = [p[1], -p[0], 0.0];
        // Tilting turns it in the plane of the axis and what is upward before the roll.
        let tilted = [-sin_q * z, cos_q * z, sin_q * x - cos_q * y];
        Some([
            [self.focal_px * x / z, self.focal_px * y / z],
            by(std::array::from_fn(|i| -axes[i][0])),
            by(std::array::from_fn(|i| -axes[i][1])),
            by(std::array::from_fn(|i| -axes[i][2])),
            by(axes.map(|axis| dot(axis, turned))),
            by(tilted),
            [-self.focal_px * y / z, self.focal_px * x / z],
        ])
    }

    /// How a pixel moves by each coordinate of its place.
    pub(super) fn slopes_by_place(&self, place: Place) -> Option<[Pixel; 3]> {
        let s = self.slopes(place)?;
        Some(std::array::from_fn(|i| [-s[1 + i][0], -s[1 + i][1]]))
    }
}

fn dot(a: Place, b: Place) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn camera() -> Camera {
        Camera {
            focal_px: 1800.0,
            centre: [760.0, 1000.0],
            eye: [25.0, 310.0, 128.0],
            azimuth: View::Front.azimuth() - 0.06,
            tilt: -0.11,
            roll: 0.03,
        }
    }

    #[test]
    fn her_left_is_at_the_right_of_the_picture_from_the_front_and_at_the_left_from_behind() {
        for (view, eye, rightward) in [
            (View::Front, [0.0, 300.0, 90.0], [1.0, 0.0]),
            (View::Back, [0.0, -300.0, 90.0], [-1.0, 0.0]),
            (View::Right, [-300.0, 0.0, 90.0], [0.0, 1.0]),
            (View::Left, [300.0, 0.0, 90.0], [0.0, -1.0]),
        ] {
            let camera = Camera {
                eye,
                azimuth: view.azimuth(),
                tilt: 0.0,
                roll: 0.0,
                ..camera()
            };
            let place = [10.0 * rightward[0], 10.0 * rightward[1], 100.0];
            let [x, y] = camera.project(place).expect("it is before the lens");
            // 1800 px of focal length at 3 m: 6 px to the centimetre, for 10 cm to the side and up.
            let (across, up) = (x - 760.0, 1000.0 - y);
            assert!(
                (across - 60.0).abs() < 1e-9,
                "{view:?}: {across} across, want 60"
            );
            assert!((up - 60.0).abs() < 1e-9, "{view:?}: {up} up, want 60");
        }
    }

    #[test]
    fn slopes_agree_with_central_differences() {
        let (camera, place, step) = (camera(), [-18.0, 11.0, 86.0], 1e-5);
        let slopes = camera.slopes(place).expect("it is before the lens");
        for (k, got) in slopes.iter().enumerate() {
            let at = |by: f64| {
                let mut d = [0.0; CAMERA];
                d[k] = by;
                camera
                    .moved(&d)
                    .project(place)
                    .expect("it is before the lens")
            };
            let (high, low) = (at(step), at(-step));
            for i in 0..2 {
                let want = (high[i] - low[i]) / (2.0 * step);
                // Rounding of pixels near 1000 over twice the step.
                assert!(
                    (got[i] - want).abs() < 1e-4,
                    "{k}, {i}: {} against {want}",
                    got[i]
                );
            }
        }
    }

    #[test]
    fn what_is_upright_runs_as_its_ends_show() {
        let camera = camera();
        let (foot, head) = ([-40.0, 5.0, 0.0], [-40.0, 5.0, 20.0]);
        let (a, b) = (camera.project(foot), camera.project(head));
        let (a, b) = a.zip(b).expect("both are before the lens");
        let runs = camera.runs([0.0, 0.0, 1.0], a);
        let cross = runs[0] * (b[1] - a[1]) - runs[1] * (b[0] - a[0]);
        assert!(cross.abs() < 1e-9, "{cross} off the line");
        assert!(runs[1] < 0.0, "up is up");
    }
}
