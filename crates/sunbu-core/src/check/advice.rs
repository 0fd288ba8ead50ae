//! At most three things to change, and one that is good.

use crate::dressing::{Change, Diagnosis, Observed, Quantity, Rules, StepId};
use crate::fault::{Catalogue, Fault, Ticks};
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
pub fn advice(diagnosis: &Diagnosis, seen: &Ticks, wrong_way: bool) -> Vec<Advice> {
    let mut all: Vec<Advice> = Vec::new();
    if let Some(correction) = &diagnosis.correction {
        all.extend(correction.changes.iter().cloned().map(Advice::Change));
    }
    all.extend(seen.iter().copied().map(Advice::Fault));
    all.sort_by_key(Advice::step);
    if wrong_way {
        all.insert(0, Advice::Way);
    }
    all
}

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
/// it: the standard's weight over how much of the range the reading leaves open.
pub fn good(rules: &Rules, observed: &Observed) -> Option<Good> {
    let merit = |quantity: Quantity| -> Option<(f64, Good)> {
        let target = rules.target(quantity)?;
        let (cm, sd) = observed.reading(quantity)?;
        let wide = match (target.low, target.high) {
            (Some(low), Some(high)) => high - low,
            _ => return None,
        };
        let middle = 1.0 - target.off_centre(cm).map_or(1.0, |(off, _)| off.abs());
        let good = Good {
            quantity,
            cm,
            interval_90: (cm - Z_90 * sd, cm + Z_90 * sd),
        };
        (target.miss(cm) == 0.0).then_some((
            target.weight * (0.2 + middle) * wide / (wide + 2.0 * sd),
            good,
        ))
    };
    let all = observed.quantities().iter().filter_map(|&q| merit(q));
    all.max_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, good)| good)
}
