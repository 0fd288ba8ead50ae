//! Where two edges meet.

use std::f64::consts::TAU;

use super::slope::weights;
use super::{LEAST_STRENGTH, Snap, usable, worth};
use crate::photo::{Gray, Pixel};

/// Deviation of the slope of brightness, in pixels.
const SLOPE: f64 = 1.2;
/// Deviation of the neighbourhood in which two edges are looked for, in pixels.
const AROUND: f64 = 2.0;
/// How many deviations of it are summed up.
const AROUND_CUT: f64 = 2.5;
/// Slope in steps of brightness to the pixel at which an edge counts half of what it has. Slopes
/// above it count by their height and not by its square, so that where a hem meets an outline the
/// fainter of the two is not lost beside the other. Chosen.
const FAINT: f64 = 3.0;
/// How alike the two edges must be in strength, from 0 for a single straight one to 1. Chosen: two
/// equal edges at 20 degrees have 0.1.
const LEAST_ROUNDNESS: f64 = 0.1;

/// The corner nearest to a place, at most `reach_px` pixels from it, where two strong edges meet; none
/// where there is no such.
///
/// How near and how strong are weighed together, as for [`snap`](super::snap()). The strength is that of the
/// weaker of the two edges.
pub fn snap_corner(gray: &Gray, at: Pixel, reach_px: f64) -> Option<Snap> {
    let reach = usable(at, reach_px)?;
    let window = Window::around(gray, at, reach);
    let mut best: Option<(f64, Snap)> = None;
    for y in 0..window.side {
        for x in 0..window.side {
            let Some(snap) = window.corner(x, y) else {
                continue;
            };
            let far = (snap.at[0] - at[0]).hypot(snap.at[1] - at[1]);
            let counts = worth(snap.strength, far, reach);
            if far <= reach && best.is_none_or(|(known, _)| counts > known) {
                best = Some((counts, snap));
            }
        }
    }
    best.map(|(_, snap)| snap)
}

/// Sums over the neighbourhood of each pixel near the place: of the products of the slope's two
/// parts over its height, and of them times where they stand.
struct Window {
    /// Pixels on a side.
    side: usize,
    /// The middle of its first pixel.
    start: Pixel,
    /// xx, xy, yy, and the two parts of the sum of tangents.
    sums: [Grid; 5],
}

impl Window {
    fn around(gray: &Gray, at: Pixel, reach: f64) -> Self {
        let (slope, mean, around) = (slope_kernel(), bell(SLOPE, 4.0), bell(AROUND, AROUND_CUT));
        let rim = around.len() / 2;
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        // the reach has its limit
        let half = reach.ceil() as usize + 1;
        let side = 2 * half + 1;
        // The middles of pixels, so that no brightness is mixed.
        let start = at.map(|part| part.floor() + 0.5 - half as f64);
        let off = (rim + slope.len() / 2) as f64;
        let values = Grid::of(side + 2 * rim + slope.len() - 1, |x, y| {
            gray.at(start[0] + x - off, start[1] + y - off)
        });
        let across = values.turned(&slope).turned(&mean);
        let down = values.turned(&mean).turned(&slope);
        let products = |product: &dyn Fn(f64, f64, f64, f64) -> f64| {
            let (mut at, rim) = (0, rim as f64);
            Grid::of(across.width, |x, y| {
                let (a, b) = (across.values[at], down.values[at]);
                at += 1;
                product(a, b, x - rim, y - rim) / (a.hypot(b) + FAINT)
            })
            .turned(&around)
            .turned(&around)
        };
        Window {
            side,
            start,
            sums: [
                products(&|a, _, _, _| a * a),
                products(&|a, b, _, _| a * b),
                products(&|_, b, _, _| b * b),
                products(&|a, b, x, y| a * a * x + a * b * y),
                products(&|a, b, x, y| a * b * x + b * b * y),
            ],
        }
    }

    /// The place nearest to all tangents around this pixel, when two edges run there.
    fn corner(&self, x: usize, y: usize) -> Option<Snap> {
        let [xx, xy, yy, tx, ty] = self
            .sums
            .each_ref()
            .map(|sums| sums.values[y * self.side + x]);
        let (trace, determinant) = (xx + yy, xx * yy - xy * xy);
        if 4.0 * determinant < LEAST_ROUNDNESS * trace * trace || determinant <= 0.0 {
            return None;
        }
        // The smaller proper value is what the weaker edge has. A strong step of one along a line
        // through the middle has the integral of the bell of the slope times the bell around, 1 /
        // sqrt(2 pi (AROUND² + SLOPE²)); an edge that ends in a corner has half.
        let weaker = 0.5 * (trace - (trace * trace - 4.0 * determinant).max(0.0).sqrt());
        let width = AROUND.hypot(SLOPE);
        let strength = weaker * 2.0 * TAU.sqrt() * width;
        if strength < LEAST_STRENGTH {
            return None;
        }
        let place = [
            (yy * tx - xy * ty) / determinant,
            (xx * ty - xy * tx) / determinant,
        ];
        // Only the pixel that the corner lies in tells of it; a little more, so that none falls
        // between two.
        let off = [place[0] - x as f64, place[1] - y as f64];
        if off.iter().any(|part| part.abs() > 0.75) {
            return None;
        }
        Some(Snap {
            at: [self.start[0] + place[0], self.start[1] + place[1]],
            strength,
        })
    }
}

/// Values in rows, as many as there are columns.
struct Grid {
    width: usize,
    values: Vec<f64>,
}

impl Grid {
    /// A square of this width, its value at each column and row.
    fn of(width: usize, mut value: impl FnMut(f64, f64) -> f64) -> Self {
        let places = (0..width).flat_map(|y| (0..width).map(move |x| (x as f64, y as f64)));
        let values = places.map(|(x, y)| value(x, y)).collect();
        Grid { width, values }
    }

    /// Every row correlated with a kernel, as far as the kernel lies within, and the rows as columns:
    /// two of these correlate both ways.
    fn turned(&self, kernel: &[f64]) -> Grid {
        let height = self.values.len() / self.width;
        let count = self.width + 1 - kernel.len();
        let mut values = vec![0.0; count * height];
        for (y, row) in self.values.chunks_exact(self.width).enumerate() {
            for (x, part) in row.windows(kernel.len()).enumerate() {
                values[x * height + y] = part.iter().zip(kernel).map(|(a, b)| a * b).sum();
            }
        }
        Grid {
            width: height,
            values,
        }
    }
}

/// The derivative of a Gaussian as [`super::slope()`] has it, both sides of it.
fn slope_kernel() -> Vec<f64> {
    let after = weights(SLOPE);
    let before = after.iter().rev().map(|weight| -weight);
    before.chain([0.0]).chain(after.iter().copied()).collect()
}

/// Heights of a Gaussian of sum one, to both sides up to `cut` deviations.
fn bell(deviation: f64, cut: f64) -> Vec<f64> {
    #[allow(clippy::cast_possible_truncation)] // constants of a few pixels
    let half = (cut * deviation + 0.5) as i32;
    let heights: Vec<f64> = (-half..=half)
        .map(|off| (-0.5 * (f64::from(off) / deviation).powi(2)).exp())
        .collect();
    let sum: f64 = heights.iter().sum();
    heights.into_iter().map(|height| height / sum).collect()
}
