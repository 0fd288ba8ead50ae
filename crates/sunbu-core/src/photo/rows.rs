//! Misses of a least-squares problem, each with the few unknowns that move it.

use nalgebra::{DMatrix, DVector};

use super::camera::{CAMERA, Camera};

/// One miss in its deviations, and by how much each unknown moves it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    pub miss: f64,
    pub slopes: Vec<(usize, f64)>,
}

/// All misses.
#[derive(Debug, Clone)]
pub(super) struct Rows {
    pub list: Vec<Row>,
    also_at: usize,
}

impl Rows {
    /// None yet; the unknowns that belong to [`Rows::bind`]'s callers begin at `also_at`.
    pub fn new(also_at: usize) -> Self {
        Self {
            list: Vec::new(),
            also_at,
        }
    }

    /// Adds misses that hang on the camera and on some of the further unknowns; their slopes are
    /// taken by differences.
    pub fn bind(
        &mut self,
        camera: &Camera,
        own: std::ops::Range<usize>,
        also: &[f64],
        misses: impl Fn(&Camera, &[f64]) -> Vec<f64>,
    ) {
        /// A thousandth of a radian, of a logarithm, or of a millimetre: far above rounding, far
        /// below what bends.
        const STEP: f64 = 1e-4;
        let mut inputs = also[own.clone()].to_vec();
        let first = self.list.len();
        self.list
            .extend(misses(camera, &inputs).into_iter().map(|miss| Row {
                miss,
                slopes: Vec::new(),
            }));
        let mut slope = |unknown: usize, high: Vec<f64>, low: Vec<f64>| {
            for (i, (h, l)) in high.into_iter().zip(low).enumerate() {
                let slope = (h - l) / (2.0 * STEP);
                if slope != 0.0 {
                    self.list[first + i].slopes.push((unknown, slope));
                }
            }
        };
        for k in 0..CAMERA {
            let by = |step: f64| {
                let mut d = [0.0; CAMERA];
                d[k] = step;
                misses(&camera.moved(&d), &inputs)
            };
            slope(k, by(STEP), by(-STEP));
        }
        for k in 0..inputs.len() {
            let kept = inputs[k];
            inputs[k] = kept + STEP;
            let high = misses(camera, &inputs);
            inputs[k] = kept - STEP;
            let low = misses(camera, &inputs);
            inputs[k] = kept;
            slope(self.also_at + own.start + k, high, low);
        }
    }

    /// Sum of the squared misses.
    pub fn squares(&self) -> f64 {
        self.list.iter().map(|r| r.miss * r.miss).sum()
    }

    /// The normal matrix and the gradient of half the sum of squares.
    pub fn normal(&self, count: usize) -> (DMatrix<f64>, DVector<f64>) {
        let mut normal = DMatrix::zeros(count, count);
        let mut gradient = DVector::zeros(count);
        for row in &self.list {
            for &(i, a) in &row.slopes {
                gradient[i] += a * row.miss;
                for &(j, b) in &row.slopes {
                    normal[(i, j)] += a * b;
                }
            }
        }
        (normal, gradient)
    }
}
