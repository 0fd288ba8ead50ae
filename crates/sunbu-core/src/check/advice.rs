//! At most three things to change, and one that is good.

use crate::dressing::{Change, Diagnosis, Observed, Quantity, Rules, StepId};
use crate::fault::{Catalogue, Fault, Ticks, Too};
use crate::measure::Z_90;

/// More than so many things at a time nobody practises (common practice, no source).
pub const MOST_ADVICE: usize = 3;

/// One thing to change.
#[derive(Debug, Clone, PartialEq)]
pub enum Advice {
    /// The panels lie right over left.
    Way,
    /// A decision, from how it was done to how it should be.
    Change(Change),
    /// A fault seen by eye, or one of left against right.
    Fault(Fault),
}

impl Advice {
    /// The step in which it is put right.
    pub fn step(&self) -> StepId {
        match self {
            // The outer panel is the last that can be put on the wrong way.
            Self::Way => StepId::PutOn,
            Self::Change(change) => change.step,
            Self::Fault(fault) => Catalogue::shipped().entry(*fault).cure,
        }
    }
}

/// Everything to change, first things first: the wrong way round before all, then in the order in
/// which one dresses, since what is done earlier carries what comes later.
///
/// A fault that the eye saw, and that a change cures as it was measured, is not asked for a second
/// time.
pub fn advice(diagnosis: &Diagnosis, seen: &Ticks, wrong_way: bool) -> Vec<Advice> {
    let mut all: Vec<Advice> = Vec::new();
    if let Some(correction) = &diagnosis.correction {
        all.extend(correction.changes.iter().cloned().map(Advice::Change));
    }
    let seen = seen.iter().copied();
    let seen = seen.filter(|fault| !is_cured(*fault, diagnosis));
    all.extend(seen.map(Advice::Fault));
    all.sort_by_key(Advice::step);
    if wrong_way {
        all.insert(0, Advice::Way);
    }
    all
}

/// Whether a change puts right what this fault is when it is measured, on the same side.
fn is_cured(fault: Fault, diagnosis: &Diagnosis) -> bool {
    let changes = diagnosis.correction.iter().flat_map(|c| &c.changes);
    let cured: Vec<Quantity> = changes.flat_map(|c| c.cures.iter().copied()).collect();
    let measured = &Catalogue::shipped().entry(fault).measured;
    let mut found = diagnosis.faults.iter();
    found.any(|finding| {
        let side = |too: Too| (too == Too::High) == (finding.miss > 0.0);
        let mut judged = measured.iter();
        cured.contains(&finding.quantity)
            && judged.any(|j| j.quantity == finding.quantity && side(j.too))
    })
}

/// How much of its 90 % interval must lie within the range before something is called good. Chosen:
/// with less it may as well lie outside, as far as reading can tell.
const LEAST_INSIDE: f64 = 0.5;

/// Something that is as it should be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Good {
    /// Which.
    pub quantity: Quantity,
    /// As it was read, in centimetres.
    pub cm: f64,
    /// The 90 % interval of the reading, in centimetres.
    pub interval_90: (f64, f64),
}

/// The weightiest wish that was read within its range, and so surely that chance does not explain
/// it: the standard's weight over how much of the range the reading leaves open. Of the reading's
/// 90 % interval at least half must lie within the range; a reading that spans all of it says nothing.
pub fn good(rules: &Rules, observed: &Observed) -> Option<Good> {
    let merit = |quantity: Quantity| -> Option<(f64, Good)> {
        let target = rules.target(quantity)?;
        let (cm, sd) = observed.reading(quantity)?;
        let (low, high) = target.low.zip(target.high)?;
        let wide = high - low;
        let middle = 1.0 - target.off_centre(cm).map_or(1.0, |(off, _)| off.abs());
        let good = Good {
            quantity,
            cm,
            interval_90: (cm - Z_90 * sd, cm + Z_90 * sd),
        };
        let (from, to) = good.interval_90;
        let inside = to.min(high) - from.max(low);
        let is_sure = inside >= LEAST_INSIDE * (to - from);
        (target.miss(cm) == 0.0 && is_sure).then_some((
            target.weight * (0.2 + middle) * wide / (wide + 2.0 * sd),
            good,
        ))
    };
    let all = observed.quantities().iter().filter_map(|&q| merit(q));
    all.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, good)| good)
}
