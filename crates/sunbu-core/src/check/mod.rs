//! A check: from the readings of photos to what to change, why, and what is good.
//!
//! The photos of one dressing are taken together, diagnosed, joined with what the eye has ticked,
//! and brought down to at most three things to change, in the order in which one dresses.

mod advice;
mod combine;
mod overlaid;
mod skewed;
mod stranger;
mod way;

pub use advice::{Advice, Good, MOST_ADVICE, advice, good};
pub use combine::combine;
pub use overlaid::overlaid;
pub use skewed::{Skewed, skewed, tolerance};
pub use stranger::{STRANGER, Stranger, stranger};
pub use way::WrongWay;

use std::collections::BTreeMap;

use crate::dressing::{Diagnosis, Dressing, Fitting, Observed, Quantity, Rules, diagnose};
use crate::fault::{Catalogue, Fault, Finding, Ticks, mixed};
use crate::photo::{Mark, Reading, Unseen, View};

/// Everything a check says.
#[derive(Debug, Clone)]
pub struct Report {
    /// The photos that show right over left, whether or not they were said to come from a mirror:
    /// said before all else.
    pub wrong_way: Vec<WrongWay>,
    /// What was read from all photos together.
    pub observed: Observed,
    /// Faults, causes, corrections.
    pub diagnosis: Diagnosis,
    /// What is not alike on both sides, the most telling first within each.
    pub skews: Vec<Skewed>,
    /// Measured causes and faults seen by eye in dressing order; a measured one is a place in
    /// `diagnosis.causes`.
    pub rows: Vec<Finding>,
    /// At most [`MOST_ADVICE`] things to change, in dressing order.
    pub advice: Vec<Advice>,
    /// How many more there would be.
    pub more: usize,
    /// One thing that is well done; none when nothing that was read is within its range.
    pub good: Option<Good>,
    /// What no photo showed, and why.
    pub unseen: BTreeMap<Quantity, Unseen>,
    /// Marks that do not fit with the others.
    pub doubtful: Vec<(View, Mark)>,
}

/// What the readings of all photos of one dressing, and the faults ticked by eye, come to.
///
/// `planned` is the dressing that was meant. Without any reading there is only what the eye saw.
pub fn check(
    fitting: &Fitting,
    rules: &Rules,
    planned: &Dressing,
    readings: &[Reading],
    ticks: &Ticks,
) -> Report {
    let observed = combine(fitting, readings);
    let diagnosis = diagnose(fitting, rules, planned, &observed);
    let skews = skewed(readings);
    // What is not alike on both sides counts as seen by eye once it is beyond doubt.
    let mut seen = ticks.clone();
    seen.extend(
        skews
            .iter()
            .filter(|s| s.is_fault())
            .filter_map(Skewed::fault),
    );
    let catalogue = Catalogue::shipped();
    let rows = mixed(catalogue, diagnosis.causes.iter().map(|c| c.step), &seen);
    let wrong_way = way::wrong_way(readings);
    let mut advice = advice(&diagnosis, &seen, !wrong_way.is_empty());
    let more = advice.len().saturating_sub(MOST_ADVICE);
    advice.truncate(MOST_ADVICE);
    let good = good(rules, &observed);
    let unseen = unseen(readings, &observed);
    let doubtful = readings
        .iter()
        .flat_map(|r| r.doubtful.iter().map(|mark| (r.view, *mark)))
        .collect();
    Report {
        wrong_way,
        observed,
        diagnosis,
        skews,
        rows,
        advice,
        more,
        good,
        unseen,
        doubtful,
    }
}

/// What none of the photos showed: the reason that asks least of the dresser.
fn unseen(readings: &[Reading], observed: &Observed) -> BTreeMap<Quantity, Unseen> {
    let rank = |why: &Unseen| match why {
        Unseen::NotMarked(_) => 0,
        Unseen::OtherSide(_) => 1,
        Unseen::Covered => 2,
    };
    let mut all: BTreeMap<Quantity, Unseen> = BTreeMap::new();
    for reading in readings {
        for (&quantity, &why) in &reading.unseen {
            if observed.reading(quantity).is_some() {
                continue;
            }
            let kept = all.entry(quantity).or_insert(why);
            if rank(&why) < rank(kept) {
                *kept = why;
            }
        }
    }
    all
}

/// The faults of the catalogue that a finding of the diagnosis is.
pub fn named(quantity: Quantity, miss: f64) -> Vec<Fault> {
    Catalogue::shipped().of_quantity(quantity, miss > 0.0)
}
