//! The planner's least-squares problem and its bounded Gauss-Newton solution.
//!
//! Minimise, over the decisions within their limits,
//!
//! ```text
//! F(d) = sum_i weight_i * (miss_i(d)^2 + CENTRE * off_centre_i(d)^2)
//!      + PULL * sum_j ((d_j - usual_j) / spread_j)^2
//! ```
//!
//! where `miss` is the distance to the wanted range (zero inside it) and `off_centre` the distance
//! to its middle in half widths. Both other terms are small: hands are not exact, so a plan aims
//! at the middle of a range and not at its edge; and among the dressings that look alike the most
//! usual is chosen. Each step solves the damped
//! normal equations (Levenberg-Marquardt) over the decisions that are not held by a limit, then
//! goes back inside the limits; a limit is let go as soon as the gradient points inwards.

use nalgebra::{SMatrix, SVector};

use super::decision::{Decision, Dressing};
use super::given::Fitting;
use super::predict::{by_decisions, predict};
use super::quantity::Appearance;
use super::standard::{Rules, Target};

const N: usize = Decision::COUNT;

/// Weight of the pull toward the usual way, against a wish of weight 1 missed by 1 cm.
///
/// Chosen: one whole spread away from the usual then costs as much as 1.4 mm of a missed wish
/// of weight 1, so the pull never buys a visible miss.
pub const PULL: f64 = 0.02;

/// Weight of an inexact aim: at the edge of a range it counts as a miss of 1.4 mm.
///
/// Chosen like [`PULL`]: enough to leave the edges, too little to buy a visible miss.
pub const CENTRE: f64 = 0.02;

/// Damping at the start: none to speak of, so that a quadratic is solved in one step.
const LEAST_DAMPING: f64 = 1e-9;

/// Damping at which a step is so short that no improvement is to be had.
const MOST_DAMPING: f64 = 1e6;

/// More than the longest run seen on random cases (the validation chapter prints it).
const MAX_STEPS: usize = 200;

/// A dressing found by the planner.
#[derive(Debug, Clone, Copy)]
pub struct Solution {
    /// The best dressing found.
    pub dressing: Dressing,
    /// `F` there, in weighted cm².
    pub objective: f64,
    /// Steps taken, for the validation chapter.
    pub steps: usize,
}

/// `F` of one dressing, in weighted cm².
pub fn objective(fitting: &Fitting, rules: &Rules, dressing: &Dressing) -> f64 {
    let seen = predict(fitting, dressing);
    misses(rules, &seen) + aim(rules, &seen) + pull(rules, dressing)
}

/// What an inexact aim adds to `F`.
fn aim(rules: &Rules, seen: &Appearance) -> f64 {
    let off = |t: &Target| {
        t.off_centre(seen.get(t.quantity))
            .map_or(0.0, |(off, _)| off * off)
    };
    CENTRE * rules.targets.iter().map(|t| t.weight * off(t)).sum::<f64>()
}

/// The misses alone in `F`: what is seen to be off, in weighted cm².
pub fn misses(rules: &Rules, seen: &Appearance) -> f64 {
    rules
        .targets
        .iter()
        .map(|t| t.weight * t.miss(seen.get(t.quantity)).powi(2))
        .sum()
}

fn pull(rules: &Rules, dressing: &Dressing) -> f64 {
    let term = |&d: &Decision| {
        let way = rules.way(d);
        ((dressing.get(d) - way.usual) / way.spread).powi(2)
    };
    PULL * Decision::ALL.iter().map(term).sum::<f64>()
}

/// Half the gradient of `F` and the Gauss-Newton half Hessian.
fn normal_equations(
    fitting: &Fitting,
    rules: &Rules,
    dressing: &Dressing,
) -> (SVector<f64, N>, SMatrix<f64, N, N>) {
    let seen = by_decisions(fitting, dressing);
    let mut gradient = SVector::<f64, N>::zeros();
    let mut hessian = SMatrix::<f64, N, N>::zeros();
    for target in &rules.targets {
        let dual = seen.get(target.quantity);
        let miss = target.miss(dual.value);
        let (mut pull, mut stiffness) = (0.0, 0.0);
        if miss != 0.0 {
            (pull, stiffness) = (miss, 1.0);
        }
        if let Some((off, half_width)) = target.off_centre(dual.value) {
            pull += CENTRE * off / half_width;
            stiffness += CENTRE / half_width.powi(2);
        }
        if stiffness > 0.0 {
            let slope = SVector::<f64, N>::from(dual.grad);
            gradient.axpy(target.weight * pull, &slope, 1.0);
            hessian.ger(target.weight * stiffness, &slope, &slope, 1.0);
        }
    }
    for &d in Decision::ALL {
        let (way, i) = (rules.way(d), d.index());
        let stiffness = PULL / way.spread.powi(2);
        gradient[i] += stiffness * (dressing.get(d) - way.usual);
        hessian[(i, i)] += stiffness;
    }
    (gradient, hessian)
}

/// The best dressing within the limits.
///
/// Wishes are nearly linear in the decisions but for one: the girth under the collar end changes
/// with the collar end's height, so an outer edge raised much or not at all may cover where the
/// usual one does not. The search therefore starts from all three.
pub fn solve(fitting: &Fitting, rules: &Rules) -> Solution {
    let (usual, raise) = (rules.usual(), rules.way(Decision::UwamaeRaise));
    [raise.high, raise.low]
        .into_iter()
        .map(|cm| descend(fitting, rules, usual.with(Decision::UwamaeRaise, cm)))
        .fold(descend(fitting, rules, usual), |best, other| {
            let steps = best.steps + other.steps;
            let better = if other.objective < best.objective {
                other
            } else {
                best
            };
            Solution { steps, ..better }
        })
}

/// The best dressing reached by going down from `start`.
///
/// Stops when a step improves `F` by less than one part in 10⁹, or when no step improves it.
fn descend(fitting: &Fitting, rules: &Rules, start: Dressing) -> Solution {
    let clamp = |d: Decision, v: f64| v.clamp(rules.way(d).low, rules.way(d).high);
    let mut at = Dressing::from_fn(|d| clamp(d, start.get(d)));
    let mut best = objective(fitting, rules, &at);
    let mut damping = LEAST_DAMPING;
    let mut steps = 0;
    while steps < MAX_STEPS && damping < MOST_DAMPING {
        steps += 1;
        let (gradient, hessian) = normal_equations(fitting, rules, &at);
        let held: Vec<bool> = Decision::ALL
            .iter()
            .map(|&d| {
                let (way, value, slope) = (rules.way(d), at.get(d), gradient[d.index()]);
                (value <= way.low && slope >= 0.0) || (value >= way.high && slope <= 0.0)
            })
            .collect();
        let step = damped_step(&gradient, &hessian, &held, damping);
        let along = |share: f64| {
            let next = Dressing::from_fn(|d| clamp(d, at.get(d) + share * step[d.index()]));
            (objective(fitting, rules, &next), next)
        };
        // A wish whose range is left or entered on the way changes the curvature: the step is
        // halved as long as that helps, which lands near the best point on it.
        let mut found = along(1.0);
        let mut share = 0.5;
        while share > 1e-3 {
            let shorter = along(share);
            if shorter.0 >= found.0 && found.0 < best {
                break;
            }
            if shorter.0 < found.0 {
                found = shorter;
            }
            share *= 0.5;
        }
        let gained = best - found.0;
        if gained > 0.0 {
            (best, at) = found;
            damping = (damping * 0.01).max(LEAST_DAMPING);
        } else {
            damping *= 100.0;
        }
        if (0.0..=1e-9 * best.max(1e-6)).contains(&gained) {
            break;
        }
    }
    Solution {
        dressing: at,
        objective: best,
        steps,
    }
}

/// The step of the damped normal equations over the decisions that are not held.
fn damped_step(
    gradient: &SVector<f64, N>,
    hessian: &SMatrix<f64, N, N>,
    held: &[bool],
    damping: f64,
) -> SVector<f64, N> {
    let (mut a, mut b) = (*hessian, -gradient);
    for i in 0..N {
        a[(i, i)] *= 1.0 + damping;
        if held[i] {
            a.row_mut(i).fill(0.0);
            a.column_mut(i).fill(0.0);
            a[(i, i)] = 1.0;
            b[i] = 0.0;
        }
    }
    // Positive definite: every diagonal has its pull, so the factor always exists.
    a.cholesky()
        .map_or_else(SVector::zeros, |factor| factor.solve(&b))
}
