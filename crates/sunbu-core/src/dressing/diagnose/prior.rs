//! What is believed before looking: how far hands stray, what it is to be wrong, what is given.

use nalgebra::{Const, DMatrix, DVector, Dyn, OMatrix, SMatrix};

use super::observed::Observed;
use crate::dressing::decision::{Decision, Dressing};
use crate::dressing::forward::appearance;
use crate::dressing::given::{Fitting, Given};
use crate::dressing::predict::INPUTS;
use crate::dressing::quantity::Appearance;
use crate::dressing::standard::Rules;
use crate::scalar::Dual;

/// How likely each decision is to be wrong before anything is seen: two of twenty (chosen).
pub const WRONG_SHARE: f64 = 0.1;

/// Hands that know what they do stay within so many of their standard deviations: 95 % of the time.
const HANDS_95: f64 = 1.96;

/// Variance of hands that stay within [`HANDS_95`] deviations, as a share of the whole: that of a
/// normal variable cut off there, `1 - 2 z phi(z) / 0.95`.
const HANDS_LEFT: f64 = 0.759;

/// So many standard deviations must an amount stand out to be told from hands, body and reading.
///
/// With a share of wrong decisions of [`WRONG_SHARE`] and amounts a few deviations wide, a cause
/// becomes likelier than none at about 2.6 deviations; 1.6 more and 19 in 20 amounts get past it.
const STANDS_OUT: f64 = 4.2;

/// A decision of which a centimetre moves what was read by less than this, in squared deviations, is
/// not to be seen: a whole metre of it would not stand out.
const UNSEEN: f64 = 1e-4;

/// A wrong decision is off by up to so many of the way's spreads beyond what hands allow: chosen, so
/// that a raise of 15 done as 5, or a tie a hand too high, is still an ordinary mistake.
const REACH_SPREADS: f64 = 3.5;

/// No reading is taken to be more exact, in centimetres: cloth has a thickness, an edge a width.
pub(super) const FINEST_CM: f64 = 0.05;

/// How far beyond what can be done the model may be asked, in centimetres.
const BEYOND_CM: f64 = 1.0;

/// Inputs of the model as they differ from plan and fitting: decisions, then givens.
pub(super) type Offsets = [f64; INPUTS];

/// One row for each reading, one column for each input.
pub(super) type Rows = OMatrix<f64, Dyn, Const<INPUTS>>;

/// Wrong amounts in one direction: normal about a middle, in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Slab {
    /// The middle, with its sign.
    pub(super) middle: f64,
    /// The standard deviation.
    pub(super) sd: f64,
    /// Share of all that is done wrong which goes this way, by the room that there is for it.
    pub(super) share: f64,
}

/// What one decision may have become.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stray {
    /// More is wrong, and can be told; infinite where nothing that was read hangs on it.
    pub(super) tolerance: f64,
    /// Whether there is room for so much in either direction.
    pub(super) can_be_told: bool,
    /// Wrong upward, where there is room for it.
    pub(super) up: Option<Slab>,
    /// Wrong downward.
    pub(super) down: Option<Slab>,
}

impl Stray {
    /// A decision that nothing shows.
    pub(super) const UNSEEN: Self = Self {
        tolerance: f64::INFINITY,
        can_be_told: false,
        up: None,
        down: None,
    };

    /// Whether it may be wrong and seen to be.
    pub(super) fn shows(&self) -> bool {
        self.up.is_some() || self.down.is_some()
    }

    /// The slab of one direction.
    pub(super) fn slab(&self, up: bool) -> Option<Slab> {
        if up { self.up } else { self.down }
    }
}

/// The question: whom, what was meant, what was read.
pub(super) struct Question<'a> {
    pub(super) fitting: &'a Fitting,
    pub(super) rules: &'a Rules,
    pub(super) planned: &'a Dressing,
    pub(super) observed: &'a Observed,
    /// Covariance of the reading were the givens known, with the finest error of a reading put in.
    pub(super) noise: DMatrix<f64>,
    /// Covariance of the inputs when every decision is done as planned.
    pub(super) inputs: Box<SMatrix<f64, INPUTS, INPUTS>>,
}

impl<'a> Question<'a> {
    pub(super) fn new(
        fitting: &'a Fitting,
        rules: &'a Rules,
        planned: &'a Dressing,
        observed: &'a Observed,
    ) -> Self {
        let mut noise = observed.own_covariance().clone();
        for i in 0..noise.nrows() {
            noise[(i, i)] += FINEST_CM * FINEST_CM;
        }
        let mut inputs = Box::new(SMatrix::zeros());
        for &d in Decision::ALL {
            inputs[(d.index(), d.index())] = HANDS_LEFT * rules.way(d).hands.powi(2);
        }
        for &a in Given::ALL {
            for &b in Given::ALL {
                let (i, j) = (Decision::COUNT + a.index(), Decision::COUNT + b.index());
                inputs[(i, j)] = fitting.covariance(a, b);
            }
        }
        Self {
            fitting,
            rules,
            planned,
            observed,
            noise,
            inputs,
        }
    }

    /// What would be seen with these inputs, and how it changes with each of them.
    pub(super) fn look(&self, offsets: &Offsets) -> Appearance<Dual<INPUTS>> {
        appearance(
            self.fitting,
            |d| Dual::input(self.planned.get(d) + offsets[d.index()], d.index()),
            |g| {
                let place = Decision::COUNT + g.index();
                Dual::input(self.fitting.value(g) + offsets[place], place)
            },
        )
    }

    /// What would be seen with these inputs, alone.
    pub(super) fn glance(&self, offsets: &Offsets) -> Appearance {
        appearance(
            self.fitting,
            |d| self.planned.get(d) + offsets[d.index()],
            |g| self.fitting.value(g) + offsets[Decision::COUNT + g.index()],
        )
    }

    /// How what is read changes with all inputs. A reading that was reckoned with a given takes that
    /// one as it was foretold, and so differs from what is seen by as much as the given does.
    pub(super) fn rows(&self, seen: &Appearance<Dual<INPUTS>>) -> Rows {
        let quantities = self.observed.quantities();
        let by_given = self.observed.by_given();
        let (rows, columns) = (Dyn(quantities.len()), Const::<INPUTS>);
        Rows::from_fn_generic(rows, columns, |i, j| {
            let reckoned = j
                .checked_sub(Decision::COUNT)
                .map_or(0.0, |g| by_given[(i, g)]);
            seen.get(quantities[i]).grad[j] - reckoned
        })
    }

    /// What was read less what would be read with these inputs, in centimetres.
    pub(super) fn residual(
        &self,
        seen: &Appearance<Dual<INPUTS>>,
        offsets: &Offsets,
    ) -> DVector<f64> {
        let given = DVector::from_column_slice(&offsets[Decision::COUNT..]);
        let reckoned = self.observed.by_given() * given;
        let quantities = self.observed.quantities();
        DVector::from_fn(quantities.len(), |i, _| {
            self.observed.values()[i] - seen.get(quantities[i]).value + reckoned[i]
        })
    }

    /// The inputs brought back to where the model means anything: a little beyond what can be done,
    /// five deviations of what is given.
    pub(super) fn kept(&self, offsets: &Offsets) -> Offsets {
        std::array::from_fn(|i| match Decision::ALL.get(i) {
            Some(&d) => {
                let (way, planned) = (self.rules.way(d), self.planned.get(d));
                let low = (way.low - BEYOND_CM - planned).min(0.0);
                let high = (way.high + BEYOND_CM - planned).max(0.0);
                offsets[i].clamp(low, high)
            }
            None => {
                let far = 5.0 * self.inputs[(i, i)].max(0.0).sqrt();
                offsets[i].clamp(-far, far)
            }
        })
    }

    /// What one decision may have become when `standing_out` is how well it shows: the square of
    /// how many deviations of what was read a centimetre of it moves it.
    ///
    /// The **tolerance** is what hands allow 95 times in 100, and at least what can be seen among
    /// everything else that is uncertain: `max(1.96 hands, 4.2 / sqrt(standing_out))`.
    ///
    /// A wrong amount lies anywhere from what hands allow to as far as it can be done, at most
    /// [`REACH_SPREADS`] further, as a normal density about the middle of that stretch with half its
    /// width for a deviation, so that the evidence has a closed form. Either way is as likely as
    /// there is room for it.
    pub(super) fn stray(&self, decision: Decision, standing_out: f64) -> Stray {
        let (way, planned) = (self.rules.way(decision), self.planned.get(decision));
        let within = HANDS_95 * way.hands;
        if standing_out < UNSEEN {
            return Stray::UNSEEN;
        }
        let tolerance = within.max(STANDS_OUT / standing_out.sqrt());
        let stretch = REACH_SPREADS * way.spread;
        let (up, down) = (way.high - planned, planned - way.low);
        let length = |room: f64| (room - within).clamp(0.0, stretch);
        let whole = (length(up) + length(down)).max(stretch);
        let slab = |room: f64, sign: f64| {
            let length = length(room);
            (length > 0.0).then(|| Slab {
                middle: sign * (within + 0.5 * length),
                sd: (0.5 * length).max(0.5 * way.hands),
                share: length / whole,
            })
        };
        Stray {
            tolerance,
            can_be_told: up.max(down) > tolerance,
            up: slab(up, 1.0),
            down: slab(down, -1.0),
        }
    }
}
