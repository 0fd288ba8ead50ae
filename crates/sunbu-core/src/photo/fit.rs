//! The camera and every marked place at once: the most likely ones together.
//!
//! Unknown are the camera's seven numbers, four of the surface's shape, the own coordinates of
//! each mark, and the places of what else is known in the picture. Each mark gives two pixels,
//! each unknown its expectation; the sum of squared misses over their deviations is brought to its
//! least (Levenberg-Marquardt), and the inverse of its curvature there is the covariance of all
//! unknowns together. So what the camera leaves open makes every length less sure, and in step.

use nalgebra::{DMatrix, DVector};

use super::camera::{CAMERA, Camera};
use super::mark::Pixel;
use super::rows::{Row, Rows};
use super::spot::{Bent, SHAPE, SHAPE_SD, Spot, Together};

/// How many marks that move together have of their movement in common, in centimetres.
const IN_COMMON_SD: f64 = 4.0;
/// Steps at most; a fit takes five to fifteen.
const STEPS: usize = 60;

/// A mark that was set: which spot, where, and its deviations across and along the picture.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sighting {
    pub spot: usize,
    pub at: Pixel,
    pub sd: [f64; 2],
}

/// What is fitted.
pub(super) struct Task<'a> {
    pub bent: Bent<'a>,
    pub spots: &'a [Spot],
    pub sightings: &'a [Sighting],
    /// Everything else that binds camera and room: expectations of the camera, sheet, tape, edges.
    pub also: &'a dyn Fn(&Camera, &[f64], &mut Rows),
    /// How many unknowns of its own `also` has, with their starts.
    pub also_start: Vec<f64>,
}

/// What was found.
pub(super) struct Fit {
    pub camera: Camera,
    /// All unknowns: camera (as changes from the start), shape, own coordinates, the rest.
    pub theta: DVector<f64>,
    pub covariance: DMatrix<f64>,
    /// For each sighting, how far the found place falls from the mark, in its deviations.
    pub off: Vec<f64>,
    first: Vec<usize>,
}

impl Fit {
    /// Where a spot's own coordinates stand among the unknowns.
    pub fn own(&self, spot: usize) -> usize {
        self.first[spot]
    }
}

impl Task<'_> {
    /// Where each spot's own coordinates begin, and how many unknowns there are in all.
    fn layout(&self) -> (Vec<usize>, usize) {
        let mut next = CAMERA + SHAPE;
        let first = self
            .spots
            .iter()
            .map(|spot| {
                let at = next;
                next += spot.at.own();
                at
            })
            .collect();
        (first, next)
    }

    /// The inverse of the covariance that shape and own coordinates are expected to have.
    fn expectation(&self, first: &[usize], count: usize) -> DMatrix<f64> {
        let mut covariance = DMatrix::<f64>::zeros(count, count);
        for (k, sd) in SHAPE_SD.iter().enumerate() {
            covariance[(CAMERA + k, CAMERA + k)] = sd * sd;
        }
        for (i, spot) in self.spots.iter().enumerate() {
            for k in 0..spot.at.own() {
                covariance[(first[i] + k, first[i] + k)] = spot.sd[k].powi(2);
            }
            if spot.together == Together::Alone {
                continue;
            }
            for (j, other) in self.spots.iter().enumerate() {
                if other.together == spot.together {
                    let (a, b) = (first[i] + spot.at.height(), first[j] + other.at.height());
                    covariance[(a, b)] += IN_COMMON_SD.powi(2);
                }
            }
        }
        let from = CAMERA;
        let n = count - from;
        let inner = covariance.view((from, from), (n, n)).into_owned();
        let mut precision = DMatrix::zeros(count, count);
        if let Some(inverse) = inner.try_inverse() {
            precision.view_mut((from, from), (n, n)).copy_from(&inverse);
        }
        precision
    }

    /// The rows of one sighting: two misses in deviations, and how each unknown moves them.
    fn sighted(
        &self,
        camera: &Camera,
        theta: &[f64],
        first: usize,
        seen: &Sighting,
    ) -> Option<[Row; 2]> {
        let at = &self.spots[seen.spot].at;
        let n = at.own();
        let mut inputs: Vec<f64> = theta[CAMERA..CAMERA + SHAPE].to_vec();
        inputs.extend(&theta[first..first + n]);
        // The outline is where the sight line touches, so moving along it moves no pixel: its arc
        // stays while slopes are taken.
        let arc = self
            .bent
            .arc(at, &inputs[SHAPE..], &inputs[..SHAPE], camera.eye);
        let place = |inputs: &[f64]| self.bent.place(at, &inputs[SHAPE..], &inputs[..SHAPE], arc);
        let here = place(&inputs);
        let pixel = camera.project(here)?;
        let by_camera = camera.slopes(here)?;
        let by_place = camera.slopes_by_place(here)?;
        let mut rows: [Row; 2] = std::array::from_fn(|r| Row {
            miss: (pixel[r] - seen.at[r]) / seen.sd[r],
            slopes: (0..CAMERA)
                .map(|k| (k, by_camera[k][r] / seen.sd[r]))
                .collect(),
        });
        for k in 0..inputs.len() {
            let step = if k < SHAPE { 1e-4 } else { 1e-3 };
            let kept = inputs[k];
            inputs[k] = kept + step;
            let high = place(&inputs);
            inputs[k] = kept - step;
            let low = place(&inputs);
            inputs[k] = kept;
            let unknown = if k < SHAPE {
                CAMERA + k
            } else {
                first + k - SHAPE
            };
            for (r, row) in rows.iter_mut().enumerate() {
                let moved: f64 = (0..3)
                    .map(|i| by_place[i][r] * (high[i] - low[i]) / (2.0 * step))
                    .sum();
                row.slopes.push((unknown, moved / seen.sd[r]));
            }
        }
        Some(rows)
    }

    fn rows(
        &self,
        start: &Camera,
        theta: &DVector<f64>,
        first: &[usize],
        also_at: usize,
    ) -> Option<Rows> {
        let theta = theta.as_slice();
        let camera = start.moved(&std::array::from_fn(|k| theta[k]));
        let mut rows = Rows::new(also_at);
        for seen in self.sightings {
            rows.list
                .extend(self.sighted(&camera, theta, first[seen.spot], seen)?);
        }
        (self.also)(&camera, &theta[also_at..], &mut rows);
        rows.list.iter().all(|r| r.miss.is_finite()).then_some(rows)
    }

    /// The most likely camera and places, from a start that looks at the wearer.
    pub fn solve(&self, start: Camera) -> Option<Fit> {
        let (first, own_end) = self.layout();
        let count = own_end + self.also_start.len();
        let expected = self.expectation(&first, own_end);
        let expected = expected.resize(count, count, 0.0);
        let mut theta = DVector::zeros(count);
        theta
            .rows_mut(own_end, self.also_start.len())
            .copy_from_slice(&self.also_start);
        let cost =
            |rows: &Rows, theta: &DVector<f64>| rows.squares() + (&expected * theta).dot(theta);
        let mut rows = self.rows(&start, &theta, &first, own_end)?;
        let mut best = cost(&rows, &theta);
        let mut damping = 1e-4;
        for _ in 0..STEPS {
            let (mut normal, mut gradient) = rows.normal(count);
            normal += &expected;
            gradient += &expected * &theta;
            let mut gained = 0.0;
            while damping < 1e9 {
                let mut damped = normal.clone();
                for k in 0..count {
                    damped[(k, k)] += damping * normal[(k, k)].max(1e-9);
                }
                let step = damped.cholesky()?.solve(&-&gradient);
                // What a straight model would gain: nothing that shows.
                if -gradient.dot(&step) < 1e-6 {
                    break;
                }
                let next = &theta + step;
                let tried = self.rows(&start, &next, &first, own_end);
                let tried = tried.map(|rows| (cost(&rows, &next), rows));
                if let Some((value, next_rows)) = tried.filter(|(value, _)| *value < best) {
                    gained = best - value;
                    (theta, best, rows) = (next, value, next_rows);
                    damping *= 0.1;
                    break;
                }
                damping *= 8.0;
            }
            if gained <= 1e-6 {
                break;
            }
        }
        let (mut normal, _) = rows.normal(count);
        normal += &expected;
        let camera = start.moved(&std::array::from_fn(|k| theta[k]));
        Some(Fit {
            camera,
            covariance: normal.cholesky()?.inverse(),
            off: (0..self.sightings.len())
                .map(|i| rows.list[2 * i].miss.hypot(rows.list[2 * i + 1].miss))
                .collect(),
            theta,
            first,
        })
    }
}
