//! The planner's objective round one dressing, straight in every quantity.

use nalgebra::{SMatrix, SVector};

use super::decision::{Decision, Dressing};
use super::given::Fitting;
use super::predict::by_decisions;
use super::quantity::{Appearance, Quantity};
use super::solve::{CENTRE, PULL};
use super::standard::{Rules, Way};
use super::walls::{Wall, lowest};
use crate::scalar::Dual;

const N: usize = Decision::COUNT;

/// How far, in centimetres, the collar end may move in one step: the hull under it is taken to be
/// straight that far. Its levels lie 3 to 6 cm apart there; with 3 cm the search stays on its side
/// of a bulge.
const REACH_CM: f64 = 3.0;

/// How far a limit gives way per unit of force, in centimetres. Forces reach some thousands, so a
/// limit is passed by a tenth of a millimetre at most, which is taken back afterwards; with none at
/// all, limits that say the same would have no forces of their own.
const LIMIT_GIVES: f64 = 1e-8;

/// What is seen of one dressing, and how it changes.
pub(super) struct Local {
    at: Dressing,
    seen: Appearance<Dual<N>>,
}

impl Local {
    /// Round this dressing.
    pub(super) fn at(fitting: &Fitting, at: Dressing) -> Self {
        let seen = by_decisions(fitting, &at);
        Self { at, seen }
    }

    /// The step to the best dressing within the limits.
    ///
    /// Half of the objective is a bowl (pull and aims) between walls: the ends of the wanted
    /// ranges, which give way as their weight says, and the limits of the decisions, which hardly
    /// do. `bend` is added to the bowl where that leaves it a bottom. `pushing` is left with the
    /// walls that hold the step, to be given to the next one.
    pub(super) fn step(
        &self,
        rules: &Rules,
        bend: &SMatrix<f64, N, N>,
        pushing: &mut Vec<usize>,
    ) -> SVector<f64, N> {
        let mut gradient = SVector::<f64, N>::zeros();
        let mut hessian = SMatrix::<f64, N, N>::zeros();
        let mut walls = Vec::with_capacity(2 * (rules.targets.len() + N + 1));
        for target in rules.targets.iter().filter(|t| t.weight > 0.0) {
            let value = self.seen.get(target.quantity).value;
            let slope = self.free_slope(target.quantity, rules);
            if let Some((off, half_width)) = target.off_centre(value) {
                let stiffness = target.weight * CENTRE / half_width.powi(2);
                gradient.axpy(stiffness * off * half_width, &slope, 1.0);
                hessian.ger(stiffness, &slope, &slope, 1.0);
            }
            let give = 1.0 / target.weight;
            let (above, below) = (
                target.high.map(|h| h - value),
                target.low.map(|l| value - l),
            );
            push_pair(&mut walls, slope, [above, below], give);
        }
        for &d in Decision::ALL {
            let (way, value, i) = (rules.way(d), self.at.get(d), d.index());
            let stiffness = PULL / way.spread.powi(2);
            hessian[(i, i)] += stiffness;
            if is_free(way) {
                gradient[i] += stiffness * (value - way.usual);
                let mut slope = SVector::zeros();
                slope[i] = 1.0;
                let room = [way.high - value, value - way.low].map(Some);
                push_pair(&mut walls, slope, room, LIMIT_GIVES);
            }
        }
        // The collar end lies a fixed length above the outer corner.
        let slope = self.free_slope(Quantity::UwamaeCorner, rules);
        push_pair(&mut walls, slope, [Some(REACH_CM); 2], LIMIT_GIVES);
        // Every decision has its pull, so the bowl alone has a bottom.
        lowest(hessian + bend, &gradient, &walls, pushing)
            .or_else(|| lowest(hessian, &gradient, &walls, pushing))
            .unwrap_or_else(SVector::zeros)
    }

    /// How the gradient of half the objective has changed since `before` by the change of slopes
    /// alone: what a model that is straight in every quantity misses.
    pub(super) fn bend_since(&self, before: &Self, rules: &Rules) -> SVector<f64, N> {
        let mut out = SVector::<f64, N>::zeros();
        for target in &rules.targets {
            let miss = target.miss(self.seen.get(target.quantity).value);
            if miss != 0.0 {
                let now = self.free_slope(target.quantity, rules);
                let change = now - before.free_slope(target.quantity, rules);
                out.axpy(target.weight * miss, &change, 1.0);
            }
        }
        out
    }

    /// How a quantity changes with every decision that may move.
    fn free_slope(&self, quantity: Quantity, rules: &Rules) -> SVector<f64, N> {
        let slope = &self.seen.get(quantity).grad;
        SVector::from_fn(|i, _| match is_free(rules.way(Decision::ALL[i])) {
            true => slope[i],
            false => 0.0,
        })
    }
}

fn is_free(way: Way) -> bool {
    way.low < way.high
}

/// The walls ahead and behind along `slope`, each where there is one, if anything moves that way.
fn push_pair(walls: &mut Vec<Wall<N>>, slope: SVector<f64, N>, room: [Option<f64>; 2], give: f64) {
    if slope.iter().all(|s| *s == 0.0) {
        return;
    }
    for (slope, bound) in [slope, -slope].into_iter().zip(room) {
        walls.extend(bound.map(|bound| Wall { slope, bound, give }));
    }
}
