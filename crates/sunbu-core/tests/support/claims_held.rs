//! What the trade says of causes and effects, held against the model.

#![allow(
    dead_code,
    reason = "not every test that shares this file uses all of it"
)]

use sunbu_core::dressing::{
    Decision as D, Diagnosis, Dressing, Observed, Prediction, Quantity as Q, Sight, predict,
    usual_sd,
};

use super::cases::{People, Random};
use super::claims::{Claim, Input};
use super::injected::Case;

/// A claim held against the model.
pub struct Held {
    /// Least and greatest change of the quantity by a centimetre more of the input, over people.
    pub slopes: (f64, f64),
    /// People on whom the cause was told when it was put in, and all on whom there was room for it;
    /// none for what hands do not do.
    pub told: Option<(usize, usize)>,
    /// What was read for it.
    pub read: &'static str,
}

/// How many people each claim is held against.
pub const PEOPLE: u64 = 25;

/// Holds a claim against the model on random people in garments of their own.
pub fn held(claim: &Claim, people: &People) -> Held {
    let mut slopes = (f64::INFINITY, f64::NEG_INFINITY);
    let (mut told, mut tried) = (0, 0);
    let mut read = "photos";
    for seed in 0..PEOPLE {
        let case = Case::of(people, &mut Random::of(seed));
        let prediction = Prediction::new(&case.fitting, &case.planned, |_| 0.0);
        let slope = match claim.input {
            Input::Done(d) => prediction.slope(claim.quantity, d),
            Input::Given(g) => prediction.slope_by_given(claim.quantity, g),
        };
        slopes = (slopes.0.min(slope), slopes.1.max(slope));
        let Input::Done(decision) = claim.input else {
            continue;
        };
        let on_photos = case.as_planned().shown[decision.index()].can_be_told;
        if !on_photos {
            read = "all of it, opened";
        }
        if let Some(diagnosis) = wrong(&case, claim, decision, on_photos) {
            tried += 1;
            told += usize::from(is_told(claim, decision, &diagnosis));
        }
    }
    let is_done = matches!(claim.input, Input::Done(_));
    Held {
        slopes,
        told: is_done.then_some((told, tried)),
        read,
    }
}

/// The reading of what a claim's dressing shows, without any error but with its deviation.
fn readings(case: &Case, done: &Dressing, photos: bool) -> Observed {
    let seen = predict(&case.fitting, done);
    let read = Q::ALL
        .iter()
        .filter(|&&q| !photos || Sight::of(q).is_photo());
    Observed::independent(read.map(|&q| (q, seen.get(q), usual_sd(q))))
        .expect("readings that stand")
}

/// What is said when the decision alone is wrong in the claim's direction, by a third more than its
/// tolerance, or as far as it can be; none where that is less than the tolerance.
fn wrong(case: &Case, claim: &Claim, decision: D, photos: bool) -> Option<Diagnosis> {
    let as_planned = case.diagnose(&readings(case, &case.planned, photos));
    let tolerance = as_planned.shown[decision.index()].tolerance;
    let (way, planned) = (case.rules.way(decision), case.planned.get(decision));
    let (room, sign) = match claim.more {
        true => (way.high - planned, 1.0),
        false => (planned - way.low, -1.0),
    };
    if room < tolerance {
        return None;
    }
    let by = room.min(tolerance * 4.0 / 3.0);
    let done = case.planned.with(decision, planned + sign * by);
    Some(case.diagnose(&readings(case, &done, photos)))
}

/// Whether the decision is told as the only cause, in the claim's direction, with its effect on the
/// quantity in the right direction where that was read and is off.
fn is_told(claim: &Claim, decision: D, diagnosis: &Diagnosis) -> bool {
    let [cause] = diagnosis.causes[..] else {
        return false;
    };
    let found = diagnosis.faults.iter().chain(&diagnosis.perhaps);
    let mut found = found.chain(&diagnosis.differences);
    let effect = found
        .find(|f| f.quantity == claim.quantity)
        .and_then(|f| f.parts.causes.iter().find(|c| c.0 == decision))
        .is_none_or(|&(_, cm)| (cm > 0.0) == claim.gains);
    cause.decision == decision && (cause.amount > 0.0) == claim.more && effect
}
