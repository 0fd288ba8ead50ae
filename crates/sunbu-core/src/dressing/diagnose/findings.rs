//! Readings against plan and wish, and what makes the difference.

use nalgebra::DMatrix;

use super::belief::Belief;
use super::prior::{FINEST_CM, Question};
use super::report::{Finding, Parts};
use crate::dressing::decision::Decision;
use crate::dressing::plan::MET_WITHIN_CM;
use crate::dressing::predict::INPUTS;
use crate::dressing::quantity::Appearance;
use crate::dressing::steps::step_of;
use crate::measure::Z_90;
use crate::scalar::Dual;

/// Faults, faults perhaps, and differences from the plan.
pub(super) struct Findings {
    pub(super) faults: Vec<Finding>,
    pub(super) perhaps: Vec<Finding>,
    pub(super) differences: Vec<Finding>,
}

/// Sorts the readings; `expected` is their covariance when all is done as planned.
pub(super) fn findings(
    question: &Question<'_>,
    belief: &Belief,
    at_plan: &Appearance<Dual<INPUTS>>,
    expected: &DMatrix<f64>,
) -> Findings {
    let mut out = Findings {
        faults: Vec::new(),
        perhaps: Vec::new(),
        differences: Vec::new(),
    };
    for (place, &quantity) in question.observed.quantities().iter().enumerate() {
        let cm = question.observed.values()[place];
        let variance = question.observed.covariance()[(place, place)] + FINEST_CM * FINEST_CM;
        let half = Z_90 * variance.max(0.0).sqrt();
        let planned = at_plan.get(quantity).value;
        let target = question.rules.target(quantity);
        let miss = |cm: f64| target.map_or(0.0, |t| t.miss(cm));
        let finding = Finding {
            quantity,
            cm,
            interval_90: (cm - half, cm + half),
            believed: belief.seen.get(quantity).value,
            planned,
            miss: miss(cm),
            parts: parts(question, belief, at_plan, place),
        };
        // The end of the interval that lies nearest to the range.
        let surely_out = match finding.miss {
            m if m > 0.0 => miss(cm - half) > 0.0,
            m if m < 0.0 => miss(cm + half) < 0.0,
            _ => false,
        };
        let out_at_all = finding.miss.abs() >= MET_WITHIN_CM;
        let spread = Z_90 * expected[(place, place)].max(0.0).sqrt();
        if out_at_all && surely_out {
            out.faults.push(finding);
        } else if out_at_all {
            out.perhaps.push(finding);
        } else if (cm - planned).abs() > spread {
            out.differences.push(finding);
        }
    }
    for list in [&mut out.faults, &mut out.perhaps, &mut out.differences] {
        list.sort_by_key(|f| f.quantity);
    }
    out
}

/// The difference between a reading and the plan, by what made it.
///
/// Each input's part is its offset times the mean of the slopes at the plan and at the inputs
/// believed in, which is exact where the model bends evenly between the two. What the parts leave
/// is the error of reading.
fn parts(
    question: &Question<'_>,
    belief: &Belief,
    at_plan: &Appearance<Dual<INPUTS>>,
    place: usize,
) -> Parts {
    let quantity = question.observed.quantities()[place];
    let cm = question.observed.values()[place];
    let by_given = question.observed.by_given();
    let (plan, now) = (at_plan.get(quantity), belief.seen.get(quantity));
    let part = |i: usize| 0.5 * (plan.grad[i] + now.grad[i]) * belief.offsets[i];
    let mut out = Parts::default();
    for &d in Decision::ALL {
        match belief.set.contains(d) {
            true => out.causes.push((d, part(d.index()))),
            false => out.hands += part(d.index()),
        }
    }
    out.causes.sort_by_key(|&(d, _)| (step_of(d), d));
    // A reading that was reckoned with a given as foretold is off by as much as the given is.
    let reckoned = |i: usize| by_given[(place, i - Decision::COUNT)] * belief.offsets[i];
    out.given = (Decision::COUNT..INPUTS)
        .map(|i| part(i) - reckoned(i))
        .sum();
    out.unexplained = cm - plan.value - out.whole();
    out
}
