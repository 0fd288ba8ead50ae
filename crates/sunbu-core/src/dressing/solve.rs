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
//! usual is chosen. Each step goes to the best
//! dressing of a model that is straight in every quantity but keeps the ends of the ranges and the
//! limits as they are (Gauss-Newton, see [`super::walls`]); what the straight model misses is
//! learnt from step to step.

use nalgebra::{SMatrix, SVector};

use super::decision::{Decision, Dressing};
use super::given::Fitting;
use super::local::Local;
use super::predict::predict;
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

/// More than the longest run seen on random cases and the demo studio, which was 40 for all starts.
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

/// The best dressing within the limits.
///
/// Wishes are nearly straight in the decisions but for one: the girth under the collar end changes
/// with its height, so the cover may have more than one best place, each with its own slope around
/// it. The search therefore starts with the collar end at its lowest, a third of the way up and at
/// its highest. (On everybody and everything of the demo studio these three find what 28 starts
/// find; none of them does so alone.)
pub fn solve(fitting: &Fitting, rules: &Rules) -> Solution {
    let mut pushing = Vec::new();
    let mut from = |share: f64| {
        let part = |d: Decision| {
            let way = rules.way(d);
            way.low + share * (way.high - way.low)
        };
        let start = [Decision::HemHeight, Decision::UwamaeRaise]
            .into_iter()
            .fold(rules.usual(), |start, d| start.with(d, part(d)));
        descend(fitting, rules, start, &mut pushing)
    };
    let first = from(0.0);
    [1.0 / 3.0, 1.0].into_iter().fold(first, |best, share| {
        let other = from(share);
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
/// `pushing` carries what [`Local::step`] learns from one step to the next.
fn descend(
    fitting: &Fitting,
    rules: &Rules,
    start: Dressing,
    pushing: &mut Vec<usize>,
) -> Solution {
    let clamp = |d: Decision, v: f64| v.clamp(rules.way(d).low, rules.way(d).high);
    let mut at = Dressing::from_fn(|d| clamp(d, start.get(d)));
    let mut best = objective(fitting, rules, &at);
    let mut local = Local::at(fitting, at);
    let flat = SMatrix::<f64, N, N>::zeros();
    let mut bend = flat;
    let mut steps = 0;
    while steps < MAX_STEPS {
        steps += 1;
        let step = local.step(rules, &bend, pushing);
        let along = |share: f64| {
            let next = Dressing::from_fn(|d| clamp(d, at.get(d) + share * step[d.index()]));
            (objective(fitting, rules, &next), next)
        };
        let found = best_share(best, along);
        let gained = best - found.0;
        if gained > 0.0 {
            let moved = SVector::from_fn(|i, _| found.1.values()[i] - at.values()[i]);
            (best, at) = found;
            let next = Local::at(fitting, at);
            learn(&mut bend, &moved, &next.bend_since(&local, rules));
            local = next;
        }
        if gained <= 1e-9 * best.max(1e-6) {
            // A step that worsens all along its way may be the fault of what was learnt elsewhere.
            if gained >= 0.0 || bend == flat {
                break;
            }
            bend = flat;
        }
    }
    Solution {
        dressing: at,
        objective: best,
        steps,
    }
}

/// The best of a step, its double, fourfold and so on, or its half, quarter and so on: `F` and
/// where it is. Not below `best` when none of them improves it.
fn best_share(best: f64, along: impl Fn(f64) -> (f64, Dressing)) -> (f64, Dressing) {
    let mut found = along(1.0);
    let mut share = 2.0;
    while found.0 < best && share < 1e3 {
        let longer = along(share);
        if longer.0 >= found.0 {
            break;
        }
        found = longer;
        share *= 2.0;
    }
    if share > 2.0 {
        return found;
    }
    share = 0.5;
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
    found
}

/// Brings `bend` into line with what was seen of it on the last move: the symmetric matrix that
/// differs by rank one and takes `moved` to `seen` (Davidon 1959). Only the girth under the collar
/// end bends, along one direction, so one update is nearly all.
fn learn(bend: &mut SMatrix<f64, N, N>, moved: &SVector<f64, N>, seen: &SVector<f64, N>) {
    let rest = seen - *bend * moved;
    let along = rest.dot(moved);
    // The usual guard against a division by what is only rounding.
    if along.abs() > 1e-8 * rest.norm() * moved.norm() {
        bend.ger(1.0 / along, &rest, &rest, 1.0);
    }
}
