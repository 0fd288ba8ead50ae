//! Sets of causes that the readings cannot tell apart, and what would tell them.

use super::belief::Belief;
use super::prior::Question;
use super::report::{Doubt, Tell};
use super::sight::{Sight, usual_sd};
use crate::dressing::decision::Decision;
use crate::dressing::quantity::Quantity;
use crate::dressing::steps::step_of;

/// Sets less likely than this against the likeliest are ruled out: twenty to one (chosen, as the
/// trade's usual 95 % in a test).
pub const RIVAL_ODDS: f64 = 0.05;

/// No more doubts are told.
const MOST: usize = 5;

/// Two values so many deviations apart are told from each other: each is then nearer to its own by
/// two deviations, 19 times in 20.
const APART: f64 = 2.0;

/// The beliefs that the readings do not rule out against the first, likeliest first.
pub(super) fn doubts(question: &Question<'_>, beliefs: &[Belief]) -> Vec<Doubt> {
    let Some((told, others)) = beliefs.split_first() else {
        return Vec::new();
    };
    let open = others.iter().filter_map(|other| {
        let odds = (other.log - told.log).exp();
        (odds >= RIVAL_ODDS).then(|| doubt(question, told, other, odds))
    });
    open.take(MOST).collect()
}

fn doubt(question: &Question<'_>, told: &Belief, other: &Belief, odds: f64) -> Doubt {
    let amount = |(d, _): (Decision, bool)| (d, other.offsets[d.index()]);
    let mut causes: Vec<(Decision, f64)> = other.set.members().map(amount).collect();
    causes.sort_by_key(|&(d, _)| (step_of(d), d));
    let mut without: Vec<Decision> = told
        .set
        .members()
        .filter_map(|(d, _)| (!other.set.contains(d)).then_some(d))
        .collect();
    without.sort_by_key(|&d| (step_of(d), d));
    Doubt {
        causes,
        without,
        odds,
        tell: tell(question, told, other),
    }
}

/// What tells two beliefs apart best: on a photo if one can, else by touch, else by unpacking.
fn tell(question: &Question<'_>, told: &Belief, other: &Belief) -> Option<Tell> {
    let unread = |q: &&Quantity| !question.observed.quantities().contains(q);
    let all: Vec<Tell> = Quantity::ALL
        .iter()
        .filter(unread)
        .map(|&quantity| {
            let (if_told, if_other) = (told.seen.get(quantity), other.seen.get(quantity));
            let spread = told.variance_of(quantity).max(other.variance_of(quantity));
            let sd = (spread + usual_sd(quantity).powi(2)).sqrt();
            Tell {
                quantity,
                sight: Sight::of(quantity),
                if_told: if_told.value,
                if_other: if_other.value,
                apart: (if_told.value - if_other.value).abs() / sd,
            }
        })
        .collect();
    let rank = |tell: &Tell| match tell.sight {
        Sight::Photo(_) => 0,
        Sight::Felt => 1,
        Sight::Opened => 2,
    };
    all.into_iter()
        .filter(|tell| tell.apart >= APART)
        .min_by(|a, b| {
            let easier = rank(a).cmp(&rank(b));
            easier.then(b.apart.total_cmp(&a.apart))
        })
}
