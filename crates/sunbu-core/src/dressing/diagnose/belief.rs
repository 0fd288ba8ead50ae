//! What one set of wrong decisions makes of all inputs, on the true model.
//!
//! With the set's decisions free, all inputs `x` have a normal prior and the readings a normal
//! error, so the likeliest inputs are those of a nonlinear least-squares problem. Gauss-Newton:
//! straighten the model where the last round ended, solve, repeat. The model bends in few places (the
//! girth under the collar end, the collars), so a few rounds do. The evidence is that of the straight
//! model at the end (Laplace).

use nalgebra::{DMatrix, SVector};

use super::prior::{Offsets, Question, Rows};
use super::sets::{Evidence, Set};
use crate::dressing::decision::{Decision, Dressing};
use crate::dressing::predict::INPUTS;
use crate::dressing::quantity::{Appearance, Quantity};
use crate::scalar::Dual;

/// Rounds of Gauss-Newton after the first, at most.
const ROUNDS: usize = 4;

/// Inputs that move by less than this, in centimetres, end the rounds.
const STILL_CM: f64 = 0.05;

/// Where the model is straightened first: inputs, and what is seen with them.
pub(super) type Start<'a> = (&'a Offsets, &'a Appearance<Dual<INPUTS>>);

/// The inputs as they are believed to have been, if a set of decisions was wrong.
pub(super) struct Belief {
    pub(super) set: Set,
    /// Logarithm of evidence and prior, up to a constant that all beliefs share.
    pub(super) log: f64,
    /// The likeliest inputs.
    pub(super) offsets: Offsets,
    /// What is seen with them.
    pub(super) seen: Appearance<Dual<INPUTS>>,
    /// Covariance of the inputs before looking.
    before: Box<nalgebra::SMatrix<f64, INPUTS, INPUTS>>,
    /// How what was read hangs together with the inputs: `J P`.
    joint: Rows,
    /// Inverse of the covariance of what was read.
    precision: DMatrix<f64>,
}

impl Belief {
    /// The belief in one set, from the model straightened at `start`: inputs, and what is seen with
    /// them.
    pub(super) fn of(
        question: &Question<'_>,
        evidence: &Evidence,
        set: Set,
        start: Start<'_>,
    ) -> Option<Self> {
        let mut before = question.inputs.clone();
        let mut mean = SVector::<f64, INPUTS>::zeros();
        for (d, up) in set.members() {
            let slab = evidence.strays[d.index()].slab(up)?;
            before[(d.index(), d.index())] += slab.sd * slab.sd;
            mean[d.index()] = slab.middle;
        }
        let (mut offsets, mut seen) = (*start.0, *start.1);
        for round in 0..=ROUNDS {
            let jacobian = question.rows(&seen);
            let joint = &jacobian * *before;
            let covariance = &joint * jacobian.transpose() + &question.noise;
            let moved = SVector::<f64, INPUTS>::from(offsets) - mean;
            let innovation = question.residual(&seen, &offsets) + &jacobian * moved;
            let root = covariance.cholesky()?;
            let weights = root.solve(&innovation);
            let at = mean + joint.tr_mul(&weights);
            let at = question.kept(&at.into());
            let step = at.iter().zip(&offsets).map(|(a, b)| (a - b).abs());
            let still = step.fold(0.0, f64::max) < STILL_CM;
            offsets = at;
            if still || round == ROUNDS {
                let log_det: f64 = root.l_dirty().diagonal().iter().map(|v| v.ln()).sum();
                let log = evidence.log_prior(set) - 0.5 * innovation.dot(&weights) - log_det;
                return log.is_finite().then(|| Self {
                    set,
                    log,
                    offsets,
                    seen: question.look(&offsets),
                    before,
                    joint,
                    precision: root.inverse(),
                });
            }
            seen = question.look(&offsets);
        }
        None
    }

    /// Variance of a straight combination of inputs, in the square of its unit.
    pub(super) fn variance(&self, combination: &Offsets) -> f64 {
        let along = SVector::<f64, INPUTS>::from(*combination);
        let told = &self.joint * along;
        let left = along.dot(&(*self.before * along)) - told.dot(&(&self.precision * &told));
        left.max(0.0)
    }

    /// Deviation of one decision, in centimetres.
    pub(super) fn sd(&self, decision: Decision) -> f64 {
        let mut along = [0.0; INPUTS];
        along[decision.index()] = 1.0;
        self.variance(&along).sqrt()
    }

    /// Variance of a quantity that was not read, in cm².
    pub(super) fn variance_of(&self, quantity: Quantity) -> f64 {
        self.variance(&self.seen.get(quantity).grad)
    }

    /// The dressing as it was done.
    pub(super) fn done(&self, planned: &Dressing) -> Dressing {
        Dressing::from_fn(|d| planned.get(d) + self.offsets[d.index()])
    }
}
