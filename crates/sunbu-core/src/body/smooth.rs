//! A smooth curve through given points that never overshoots them.
//!
//! Piecewise cubic Hermite interpolation with the slopes of Fritsch and Butland (1984, "A method for
//! constructing local monotone piecewise cubic interpolants", from memory): between two points the
//! curve stays between their values, so a girth can not dip below zero nor a bust bulge where none
//! was taped. Value and slope are continuous everywhere; beyond the ends the value stays constant,
//! so the slope is zero at both ends.

/// A function of height with a continuous slope.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Smooth {
    z: Vec<f64>,
    value: Vec<f64>,
    slope: Vec<f64>,
}

impl Smooth {
    /// The curve through `(z, value)`; `z` must rise strictly and hold at least two points.
    pub(crate) fn through(z: &[f64], value: &[f64]) -> Smooth {
        debug_assert!(z.len() == value.len() && z.len() >= 2 && z.windows(2).all(|w| w[0] < w[1]));
        let mut slope = vec![0.0; z.len()];
        for i in 1..z.len() - 1 {
            let (h0, h1) = (z[i] - z[i - 1], z[i + 1] - z[i]);
            let (d0, d1) = (
                (value[i] - value[i - 1]) / h0,
                (value[i + 1] - value[i]) / h1,
            );
            if d0 * d1 > 0.0 {
                let (w0, w1) = (2.0 * h1 + h0, h1 + 2.0 * h0);
                slope[i] = (w0 + w1) / (w0 / d0 + w1 / d1);
            }
        }
        Smooth {
            z: z.to_vec(),
            value: value.to_vec(),
            slope,
        }
    }

    /// Value at a height.
    pub(crate) fn at(&self, z: f64) -> f64 {
        self.at_slope(z).0
    }

    /// Value and slope at a height. A height that is not a number reads as the lowest.
    pub(crate) fn at_slope(&self, z: f64) -> (f64, f64) {
        let last = self.z.len() - 1;
        if z >= self.z[last] {
            return (self.value[last], 0.0);
        }
        let above = self.z.partition_point(|&k| k <= z);
        if above == 0 {
            return (self.value[0], 0.0);
        }
        let i = above - 1;
        let h = self.z[above] - self.z[i];
        let t = (z - self.z[i]) / h;
        let (v0, v1, m0, m1) = (
            self.value[i],
            self.value[above],
            self.slope[i] * h,
            self.slope[above] * h,
        );
        let (t2, t3) = (t * t, t * t * t);
        let value =
            v0 + m0 * t + (3.0 * (v1 - v0) - 2.0 * m0 - m1) * t2 + (2.0 * (v0 - v1) + m0 + m1) * t3;
        let slope = m0
            + 2.0 * (3.0 * (v1 - v0) - 2.0 * m0 - m1) * t
            + 3.0 * (2.0 * (v0 - v1) + m0 + m1) * t2;
        (value, slope / h)
    }

    /// Lowest and highest height given.
    pub(crate) fn span(&self) -> (f64, f64) {
        (self.z[0], self.z[self.z.len() - 1])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_curve_meets_its_points_and_stays_between_them() {
        let (z, v) = ([0.0, 1.0, 1.5, 4.0, 5.0], [3.0, 3.0, 7.0, 2.0, 1.0]);
        let curve = Smooth::through(&z, &v);
        for i in 0..z.len() {
            assert!(
                (curve.at(z[i]) - v[i]).abs() < 1e-12,
                "{} against {}",
                curve.at(z[i]),
                v[i]
            );
        }
        for i in 0..z.len() - 1 {
            let (low, high) = (v[i].min(v[i + 1]), v[i].max(v[i + 1]));
            for k in 0..=50 {
                let got = curve.at(z[i] + (z[i + 1] - z[i]) * f64::from(k) / 50.0);
                assert!(
                    (low - 1e-12..=high + 1e-12).contains(&got),
                    "{got} outside {low} to {high}"
                );
            }
        }
    }

    #[test]
    fn the_slope_is_the_central_difference_of_the_value_and_has_no_jump() {
        let curve = Smooth::through(&[0.0, 1.0, 1.5, 4.0, 5.0], &[3.0, 3.0, 7.0, 2.0, 1.0]);
        let h = 1e-6; // error of the central difference about h^2 times the third derivative, below 1e-9
        for k in -10..70 {
            let z = f64::from(k) * 0.1 + 0.03;
            let (_, slope) = curve.at_slope(z);
            let difference = (curve.at(z + h) - curve.at(z - h)) / (2.0 * h);
            assert!(
                (slope - difference).abs() < 1e-6,
                "at {z}: {slope} against {difference}"
            );
        }
        for knot in [0.0, 1.0, 1.5, 4.0, 5.0] {
            let (before, after) = (curve.at_slope(knot - 1e-9).1, curve.at_slope(knot + 1e-9).1);
            assert!(
                (before - after).abs() < 1e-5,
                "at {knot}: {before} against {after}"
            );
        }
    }
}
