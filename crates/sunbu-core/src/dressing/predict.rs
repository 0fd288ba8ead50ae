//! Predict: what a dressing will look like, how each input moves it, and how sure that is.

use nalgebra::{SMatrix, SVector};

use super::decision::{Decision, Dressing};
use super::forward::appearance;
use super::given::{Fitting, Given};
use super::quantity::{Appearance, Quantity};
use crate::scalar::Dual;

/// Number of inputs of the forward model: decisions, then givens.
pub const INPUTS: usize = Decision::COUNT + Given::COUNT;

/// What is seen of `dressing`, in centimetres.
pub fn predict(fitting: &Fitting, dressing: &Dressing) -> Appearance {
    appearance(fitting, |d| dressing.get(d), |g| fitting.value(g))
}

/// What is seen, with derivatives by the decisions alone: what the planner works with.
pub(super) fn by_decisions(
    fitting: &Fitting,
    dressing: &Dressing,
) -> Appearance<Dual<{ Decision::COUNT }>> {
    appearance(
        fitting,
        |d| Dual::input(dressing.get(d), d.index()),
        |g| crate::scalar::Scalar::constant(fitting.value(g)),
    )
}

/// A prediction with its exact Jacobian and its uncertainty.
#[derive(Debug, Clone)]
pub struct Prediction {
    appearance: Appearance<Dual<INPUTS>>,
    covariance: SMatrix<f64, { Quantity::COUNT }, { Quantity::COUNT }>,
}

impl Prediction {
    /// The prediction for `dressing`, each decision carried out with its standard deviation
    /// `hands` in centimetres.
    ///
    /// Covariance in, covariance out: `J (S_given + S_hands) J'`, exact for the linear part of
    /// the model; the validation chapter holds the intervals to a simulation of the full one.
    pub fn new(fitting: &Fitting, dressing: &Dressing, hands: impl Fn(Decision) -> f64) -> Self {
        let appearance = appearance(
            fitting,
            |d| Dual::<INPUTS>::input(dressing.get(d), d.index()),
            |g| Dual::input(fitting.value(g), Decision::COUNT + g.index()),
        );
        let mut jacobian = SMatrix::<f64, { Quantity::COUNT }, INPUTS>::zeros();
        for (i, dual) in appearance.0.iter().enumerate() {
            jacobian.set_row(i, &SVector::from(dual.grad).transpose());
        }
        let mut inputs = SMatrix::<f64, INPUTS, INPUTS>::zeros();
        for &d in Decision::ALL {
            inputs[(d.index(), d.index())] = hands(d).powi(2);
        }
        for &a in Given::ALL {
            for &b in Given::ALL {
                let (i, j) = (Decision::COUNT + a.index(), Decision::COUNT + b.index());
                inputs[(i, j)] = fitting.covariance(a, b);
            }
        }
        Self {
            appearance,
            covariance: jacobian * inputs * jacobian.transpose(),
        }
    }

    /// The most likely value, in centimetres.
    pub fn value(&self, quantity: Quantity) -> f64 {
        self.appearance.get(quantity).value
    }

    /// The most likely value of every quantity, in centimetres.
    pub fn appearance(&self) -> Appearance {
        Appearance(self.appearance.0.map(|dual| dual.value))
    }

    /// The standard deviation, in centimetres.
    pub fn sd(&self, quantity: Quantity) -> f64 {
        self.covariance(quantity, quantity).max(0.0).sqrt()
    }

    /// The interval that holds the truth nine times in ten, in centimetres.
    pub fn interval_90(&self, quantity: Quantity) -> (f64, f64) {
        let half = crate::measure::Z_90 * self.sd(quantity);
        (self.value(quantity) - half, self.value(quantity) + half)
    }

    /// Covariance of two quantities, in cm².
    pub fn covariance(&self, a: Quantity, b: Quantity) -> f64 {
        self.covariance[(a.index(), b.index())]
    }

    /// How much `quantity` moves per centimetre of `decision`.
    pub fn slope(&self, quantity: Quantity, decision: Decision) -> f64 {
        self.appearance.get(quantity).grad[decision.index()]
    }

    /// How much `quantity` moves per centimetre of `given`.
    pub fn slope_by_given(&self, quantity: Quantity, given: Given) -> f64 {
        self.appearance.get(quantity).grad[Decision::COUNT + given.index()]
    }
}
