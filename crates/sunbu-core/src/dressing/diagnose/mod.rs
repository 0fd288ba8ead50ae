//! Diagnose: from what is seen of a finished dressing to what was done wrong, and what to change.
//!
//! The model run backwards. Before looking, each decision was either done as planned, within what
//! hands allow, or, seldom, wrong by an amount beyond its tolerance ([`prior`]); body, garment and
//! constants are as sure as they were given. Readings have a joint error. For every set of up to
//! three wrong decisions, and larger ones grown from the best, the evidence of the readings has a
//! closed form where the model is straight ([`sets`]); the likeliest sets are looked at again with
//! the true model ([`belief`]). So a cause is told with its probability, its amount with a deviation,
//! and what one view cannot tell apart stands side by side with what would ([`doubts`]).
//!
//! A fault is a reading out of its range by more than the error of reading ([`findings`]); the fewest
//! changes that cure all faults are searched with the planner ([`correct`], [`offers`]).
//!
//! Sparse causes are a spike and slab prior (Mitchell and Beauchamp 1988); slabs that keep away from
//! the plan, so that small amounts count as hands and not as causes, are those of Johnson and Rossell
//! (2010). Both from memory.

mod belief;
mod correct;
mod doubts;
mod findings;
mod observed;
mod offers;
mod prior;
mod report;
mod sets;
mod sight;

pub use doubts::RIVAL_ODDS;
pub use observed::{GREATEST_CM, Observed, ObservedError};
pub use prior::WRONG_SHARE;
pub use report::{Cause, Change, Correction, Diagnosis, Doubt, Finding, Parts, Shown, Tell};
pub use sight::{Sight, usual_sd};

use belief::{Belief, Start};
use prior::Question;
use sets::{Evidence, Set, Weighed};

use super::decision::{Decision, Dressing};
use super::given::Fitting;
use super::predict::INPUTS;
use super::standard::Rules;
use super::steps::step_of;
use crate::measure::Z_90;

/// So many of the likeliest sets are looked at with the true model.
const LOOKED_AT: usize = 10;

/// Sets less likely than the likeliest by this factor's logarithm are not: one in 1,500.
const FAR_BEHIND: f64 = 7.3;

/// What is off on a finished dressing that was meant to be `planned`, why, and what to change.
pub fn diagnose(
    fitting: &Fitting,
    rules: &Rules,
    planned: &Dressing,
    observed: &Observed,
) -> Diagnosis {
    let question = Question::new(fitting, rules, planned, observed);
    let at_plan = question.look(&[0.0; INPUTS]);
    let evidence = Evidence::at_plan(&question, &at_plan);
    let mut weighed = evidence.weigh();
    // Cloth is straight round the plan; far from it the sets are weighed again where they led.
    let likeliest = weighed.first().map_or(Set::NONE, |w| w.set);
    let plan: Start<'_> = (&[0.0; INPUTS], &at_plan);
    let first = Belief::of(&question, &evidence, likeliest, plan);
    let mut start = plan;
    if let Some(belief) = &first {
        weighed = evidence.at(&question, belief).weigh();
        start = (&belief.offsets, &belief.seen);
    }
    let mut beliefs = beliefs(&question, &evidence, &weighed, start);
    if beliefs.is_empty() {
        beliefs.extend(Belief::of(&question, &evidence, Set::NONE, plan));
    }
    let belief = &beliefs[0];
    let found = findings::findings(&question, belief, &at_plan, &evidence.expected);
    let probability = probabilities(&weighed, &beliefs);
    let correction = correct::correction(&question, belief, &found.faults);
    let mut causes: Vec<Cause> = belief
        .set
        .members()
        .map(|(decision, _)| {
            let (amount, sd) = (belief.offsets[decision.index()], belief.sd(decision));
            Cause {
                decision,
                step: step_of(decision),
                amount,
                sd,
                interval_90: (amount - Z_90 * sd, amount + Z_90 * sd),
                probability: probability.1[decision.index()],
            }
        })
        .collect();
    causes.sort_by_key(|c| (c.step, c.decision));
    let shown = Decision::ALL.iter().map(|&decision| {
        let stray = &evidence.strays[decision.index()];
        Shown {
            decision,
            tolerance: stray.tolerance,
            can_be_told: stray.can_be_told,
        }
    });
    Diagnosis {
        shown: shown.collect(),
        done: belief.done(planned),
        doubts: doubts::doubts(&question, &beliefs),
        faults: found.faults,
        perhaps: found.perhaps,
        differences: found.differences,
        causes,
        probability: probability.0,
        correction,
    }
}

/// The beliefs in the likeliest sets, likeliest first.
fn beliefs(
    question: &Question<'_>,
    evidence: &Evidence,
    weighed: &[Weighed],
    start: Start<'_>,
) -> Vec<Belief> {
    let best = weighed.first().map_or(0.0, |w| w.log);
    let near = weighed.iter().take_while(|w| w.log > best - FAR_BEHIND);
    let mut out: Vec<Belief> = near
        .take(LOOKED_AT)
        .filter_map(|w| Belief::of(question, evidence, w.set, start))
        .collect();
    out.sort_by(|a, b| b.log.total_cmp(&a.log).then(a.set.cmp(&b.set)));
    out
}

/// Probability of the likeliest set, and of each decision to be wrong.
///
/// Sets that were not looked at with the true model keep their weight against the likeliest one.
fn probabilities(weighed: &[Weighed], beliefs: &[Belief]) -> (f64, [f64; Decision::COUNT]) {
    let mut share = [0.0; Decision::COUNT];
    let top = &beliefs[0];
    let straight = weighed.iter().find(|w| w.set == top.set);
    let straight = straight.map_or(0.0, |w| w.log);
    let mut all = 0.0;
    for w in weighed {
        let log = match beliefs.iter().find(|b| b.set == w.set) {
            Some(belief) => belief.log - top.log,
            None => (w.log - straight).min(0.0),
        };
        let weight = log.exp();
        all += weight;
        for (d, _) in w.set.members() {
            share[d.index()] += weight;
        }
    }
    (1.0 / all, share.map(|s| s / all))
}
