//! Ridge regression of one value on the ratios of a body, with its leave-one-out error.
//!
//! Ratios are standardised by mean and deviation over the bodies fitted; the value's mean is left
//! unpenalised: `b = (Z'Z + penalty I)^-1 Z'(y - mean y)` (Hoerl and Kennard 1970, from memory).

use nalgebra::{SMatrix, SVector};

use super::hull::{RATIOS, Rule};

/// The rule for `y`, with the root mean square error over bodies left out one at a time.
#[expect(clippy::cast_precision_loss, reason = "a handful of bodies")]
pub(crate) fn fit(ratios: &[[f64; RATIOS]], y: &[f64], penalty: f64) -> Rule {
    let mut squares = 0.0;
    for left_out in 0..y.len() {
        let keep = |i: &usize| *i != left_out;
        let some: Vec<_> = (0..y.len()).filter(keep).map(|i| ratios[i]).collect();
        let seen: Vec<_> = (0..y.len()).filter(keep).map(|i| y[i]).collect();
        squares +=
            (Line::through(&some, &seen, penalty).at(&ratios[left_out]) - y[left_out]).powi(2);
    }
    let line = Line::through(ratios, y, penalty);
    Rule {
        at_mean: line.at_mean,
        per_deviation: line.slope.into(),
        error_sd: (squares / y.len() as f64).sqrt(),
    }
}

struct Line {
    mean: SVector<f64, RATIOS>,
    sd: SVector<f64, RATIOS>,
    at_mean: f64,
    slope: SVector<f64, RATIOS>,
}

impl Line {
    #[expect(clippy::cast_precision_loss, reason = "a handful of bodies")]
    fn through(ratios: &[[f64; RATIOS]], y: &[f64], penalty: f64) -> Line {
        let n = y.len() as f64;
        let rows: Vec<SVector<f64, RATIOS>> = ratios.iter().map(|r| SVector::from(*r)).collect();
        let mean = rows.iter().sum::<SVector<f64, RATIOS>>() / n;
        let variance = rows
            .iter()
            .map(|r| (r - mean).component_mul(&(r - mean)))
            .sum::<SVector<f64, RATIOS>>()
            / n;
        let sd = variance.map(|v| v.sqrt().max(1e-9));
        let at_mean = y.iter().sum::<f64>() / n;
        let mut normal = SMatrix::<f64, RATIOS, RATIOS>::identity() * penalty;
        let mut right = SVector::<f64, RATIOS>::zeros();
        for (row, value) in rows.iter().zip(y) {
            let standard = (row - mean).component_div(&sd);
            normal += standard * standard.transpose();
            right += standard * (value - at_mean);
        }
        // a sum of squares plus a positive penalty always has a Cholesky factor
        let slope = normal
            .cholesky()
            .map_or_else(SVector::zeros, |c| c.solve(&right));
        Line {
            mean,
            sd,
            at_mean,
            slope,
        }
    }

    fn at(&self, ratios: &[f64; RATIOS]) -> f64 {
        let standard = (SVector::from(*ratios) - self.mean).component_div(&self.sd);
        self.at_mean + self.slope.dot(&standard)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_penalty_a_linear_law_is_found_again() {
        let ratios: Vec<[f64; RATIOS]> = (0..12)
            .map(|i| {
                std::array::from_fn(|k| {
                    (f64::from(i) * (1.3 + 0.7 * f64::from(u8::try_from(k).unwrap()))).sin()
                })
            })
            .collect();
        let law = |r: &[f64; RATIOS]| 2.0 + r[0] - 3.0 * r[1] + 0.5 * r[4];
        let y: Vec<f64> = ratios.iter().map(law).collect();
        let rule = fit(&ratios, &y, 1e-12);
        assert!(
            rule.error_sd < 1e-6,
            "leave-one-out error {} against 0",
            rule.error_sd
        );
    }
}
