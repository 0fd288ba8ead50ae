//! A whole body from what was taped: the conditional normal distribution over a population.
//!
//! Let `t` be the taped measures with readings `y = x_t + e`, `e ~ N(0, R)`, and `u` the others,
//! `(x_t, x_u) ~ N(mu, S)`. Then with `G = S_ut (S_tt + R)^-1`
//!
//! - completed: mean `mu_u + G (y - mu_t)`, covariance `S_uu - G S_tu`;
//! - taped: mean `y`, covariance `R`. The reading stands as it was typed; the population does not
//!   pull at it;
//! - between the two: the error of a completed value is `G e + G x_t - x_u` up to constants, so its
//!   covariance with `e` is `G R`.
//!
//! That is the exact covariance of the errors of this estimate over the population. Another taped
//! measure never raises a completed deviation, because conditioning on more never raises a variance.
//! (Conditional normal distribution: any textbook on multivariate statistics, from memory.)

use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

use super::hull::HullTable;
use super::measures::{BodyMeasure, Sex};
use super::order;
use super::population::Population;
use super::shape::Shape;
use super::tape::Tape;
use crate::measure::{Measured, Origin};

/// Conditional deviations beyond which a taped value is flagged as unlikely (chosen: about one
/// true value in 16,000 is flagged, while a slip of one digit mostly lies further out).
pub const UNLIKELY_DEVIATIONS: f64 = 4.0;

/// Why a body could not be completed.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum BodyError {
    /// The person's sex is not the table's.
    #[error(
        "the population table is of {table:?} and the person is to be completed from one of {person:?}"
    )]
    OtherSex {
        /// Sex of the table.
        table: Sex,
        /// Sex given with the tape.
        person: Sex,
    },
    /// The taped values cannot be told apart in this table: a table without spread in them.
    #[error("the population table cannot separate the taped measures; use another table")]
    Degenerate,
}

/// A taped value that the other taped values make unlikely; kept as taped.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unlikely {
    /// Which measure.
    pub measure: BodyMeasure,
    /// As taped, in centimetres.
    pub value_cm: f64,
    /// What the other taped values lead one to expect, in centimetres.
    pub expected_cm: f64,
    /// Deviation of that, tape included, in centimetres.
    pub sd_cm: f64,
    /// How many deviations lie between the two, positive when taped larger.
    pub deviations: f64,
}

/// A person's body: every measure with its deviation, and the hull from ankle to shoulder.
#[derive(Debug, Clone)]
pub struct Body {
    sex: Sex,
    value: DVector<f64>,
    covariance: DMatrix<f64>,
    origin: Vec<Origin>,
    unlikely: Vec<Unlikely>,
    moved: Vec<BodyMeasure>,
    shape: Shape,
}

impl Population {
    /// Completes a body from the tape.
    ///
    /// # Errors
    /// [`BodyError::OtherSex`] when tape and table are not of the same sex,
    /// [`BodyError::Degenerate`] when the table has no spread in what was taped.
    pub fn complete(&self, tape: &Tape) -> Result<Body, BodyError> {
        self.complete_with(tape, HullTable::shipped())
    }

    /// Completes a body with another table of hulls, such as one fitted without the body in hand.
    ///
    /// # Errors
    /// As [`Population::complete`].
    pub fn complete_with(&self, tape: &Tape, hulls: &HullTable) -> Result<Body, BodyError> {
        if tape.sex() != self.sex() {
            return Err(BodyError::OtherSex {
                table: self.sex(),
                person: tape.sex(),
            });
        }
        let taped: Vec<(BodyMeasure, Measured)> = tape.iter().collect();
        let gain = Gain::of(self, &taped).ok_or(BodyError::Degenerate)?;
        let posterior = self.condition(&taped, &gain);
        let mut origin = vec![Origin::Completed; BodyMeasure::COUNT];
        for &(m, v) in &taped {
            origin[m.index()] = v.origin();
        }
        let is_taped = |m: BodyMeasure| tape.get(m).is_some();
        let mut value = posterior.mean;
        let moved = order::settle(&mut value, &is_taped);
        let shape = Shape::of(hulls, &value, &posterior.covariance, &is_taped);
        Ok(Body {
            sex: self.sex(),
            value,
            covariance: posterior.covariance,
            origin,
            unlikely: gain.unlikely(&taped),
            moved,
            shape,
        })
    }

    /// Mean and error covariance of all measures given the readings.
    fn condition(&self, taped: &[(BodyMeasure, Measured)], gain: &Gain) -> Posterior {
        let n = BodyMeasure::COUNT;
        let mut mean = DVector::from_fn(n, |i, _| self.mean_cm(BodyMeasure::ALL[i]));
        let full = DMatrix::from_fn(n, n, |i, j| {
            self.covariance(BodyMeasure::ALL[i], BodyMeasure::ALL[j])
        });
        mean += &gain.matrix * &gain.surprise;
        let mut covariance = &full - &gain.matrix * &gain.cross;
        for (k, &(m, v)) in taped.iter().enumerate() {
            let at = m.index();
            let variance = v.sd_cm() * v.sd_cm();
            mean[at] = v.value_cm();
            for i in 0..n {
                let with_reading = gain.matrix[(i, k)] * variance;
                covariance[(at, i)] = with_reading;
                covariance[(i, at)] = with_reading;
            }
        }
        // rows of taped measures: only their own reading error, independent of the others'
        for &(a, v) in taped {
            for &(b, _) in taped {
                covariance[(a.index(), b.index())] =
                    if a == b { v.sd_cm() * v.sd_cm() } else { 0.0 };
            }
        }
        // rounding can leave a hair of asymmetry, or of a negative variance where nothing is left unknown
        let mut covariance = (&covariance + covariance.transpose()) * 0.5;
        for i in 0..n {
            covariance[(i, i)] = covariance[(i, i)].max(0.0);
        }
        Posterior { mean, covariance }
    }
}

struct Posterior {
    mean: DVector<f64>,
    covariance: DMatrix<f64>,
}

/// `G` for all measures at once, with `S_t.`, `(S_tt + R)^-1` and `y - mu_t`.
struct Gain {
    matrix: DMatrix<f64>,
    cross: DMatrix<f64>,
    precision: DMatrix<f64>,
    surprise: DVector<f64>,
}

impl Gain {
    fn of(table: &Population, taped: &[(BodyMeasure, Measured)]) -> Option<Gain> {
        let (n, k) = (BodyMeasure::COUNT, taped.len());
        let cross = DMatrix::from_fn(k, n, |i, j| {
            table.covariance(taped[i].0, BodyMeasure::ALL[j])
        });
        let seen = DMatrix::from_fn(k, k, |i, j| {
            let noise = if i == j {
                taped[i].1.sd_cm().powi(2)
            } else {
                0.0
            };
            table.covariance(taped[i].0, taped[j].0) + noise
        });
        let factor: Cholesky<f64, Dyn> = seen.cholesky()?;
        let matrix = factor.solve(&cross).transpose();
        let surprise =
            DVector::from_fn(k, |i, _| taped[i].1.value_cm() - table.mean_cm(taped[i].0));
        Some(Gain {
            matrix,
            cross,
            precision: factor.inverse(),
            surprise,
        })
    }

    /// Taped values far from what all the other taped ones lead one to expect.
    ///
    /// With `W = (S_tt + R)^-1`, a reading given all others is normal with variance `1/W_ii` about
    /// `y_i - (W (y - mu))_i / W_ii`: the block inverse of a covariance (any textbook, from memory).
    fn unlikely(&self, taped: &[(BodyMeasure, Measured)]) -> Vec<Unlikely> {
        let pull = &self.precision * &self.surprise;
        let judge = |(i, &(measure, v)): (usize, &(BodyMeasure, Measured))| {
            let weight = self.precision[(i, i)];
            Unlikely {
                measure,
                value_cm: v.value_cm(),
                expected_cm: v.value_cm() - pull[i] / weight,
                sd_cm: 1.0 / weight.sqrt(),
                deviations: pull[i] / weight.sqrt(),
            }
        };
        let far = |u: &Unlikely| u.deviations.abs() > UNLIKELY_DEVIATIONS;
        taped.iter().enumerate().map(judge).filter(far).collect()
    }
}

impl Body {
    /// From which table the body was completed.
    #[must_use]
    pub fn sex(&self) -> Sex {
        self.sex
    }

    /// A measure with its deviation and where it came from.
    ///
    /// # Panics
    /// Never: values and deviations are finite and small by construction.
    #[must_use]
    #[expect(
        clippy::expect_used,
        reason = "kept finite by `settle` and by the positive diagonal"
    )]
    pub fn measure(&self, measure: BodyMeasure) -> Measured {
        let sd = self.covariance(measure, measure).sqrt();
        Measured::new(self.value_cm(measure), sd, self.origin[measure.index()])
            .expect("a body measure is a finite length")
    }

    /// A measure's value alone, in centimetres.
    #[must_use]
    pub fn value_cm(&self, measure: BodyMeasure) -> f64 {
        self.value[measure.index()]
    }

    /// Covariance of the errors of two measures, in square centimetres.
    #[must_use]
    pub fn covariance(&self, a: BodyMeasure, b: BodyMeasure) -> f64 {
        self.covariance[(a.index(), b.index())]
    }

    /// Taped values that the other taped values make unlikely; a second look at the tape is due.
    #[must_use]
    pub fn unlikely(&self) -> &[Unlikely] {
        &self.unlikely
    }

    /// Completed measures that had to be moved to keep the order of the body, because the taped
    /// ones are far from the population's; their deviations then say too little.
    #[must_use]
    pub fn moved(&self) -> &[BodyMeasure] {
        &self.moved
    }

    /// The hull, ankle to shoulder.
    #[must_use]
    pub fn shape(&self) -> &Shape {
        &self.shape
    }
}
