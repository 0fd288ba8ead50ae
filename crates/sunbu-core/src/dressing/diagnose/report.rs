//! What a diagnosis says.

use super::sight::Sight;
use crate::dressing::decision::{Decision, Dressing};
use crate::dressing::quantity::Quantity;
use crate::dressing::steps::StepId;

/// What is off on a finished dressing, why, and what to change.
#[derive(Debug, Clone, PartialEq)]
pub struct Diagnosis {
    /// Readings outside the wanted range by more than the error of reading, in the order of
    /// [`Quantity::ALL`].
    pub faults: Vec<Finding>,
    /// Readings outside the range whose 90 % interval reaches into it: faults perhaps.
    pub perhaps: Vec<Finding>,
    /// Readings inside their range, or without one, that differ from the plan by more than reading,
    /// body and hands explain nine times in ten: worth telling, no faults.
    pub differences: Vec<Finding>,
    /// The decisions that were done wrong, most likely, in the order in which one dresses.
    pub causes: Vec<Cause>,
    /// Probability that just these decisions were wrong.
    pub probability: f64,
    /// Other sets of causes that what was read cannot rule out, likeliest first.
    pub doubts: Vec<Doubt>,
    /// The fewest changes that bring every fault into its range, or as near as the plan has it; none
    /// when there is no fault.
    pub correction: Option<Correction>,
    /// The dressing as it was done, as far as what was read tells.
    pub done: Dressing,
    /// What each decision must be off by to be told, in the order of [`Decision::ALL`].
    pub shown: Vec<Shown>,
}

impl Diagnosis {
    /// Decisions that nothing read can show to be wrong.
    pub fn hidden(&self) -> impl Iterator<Item = Decision> {
        self.shown
            .iter()
            .filter(|s| !s.can_be_told)
            .map(|s| s.decision)
    }
}

/// One reading held against the plan and the wish.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// What was read.
    pub quantity: Quantity,
    /// The reading, in centimetres.
    pub cm: f64,
    /// The 90 % interval of the reading, in centimetres.
    pub interval_90: (f64, f64),
    /// What it most likely is, by all readings together and what was known before, in centimetres.
    pub believed: f64,
    /// What the plan would have shown, in centimetres.
    pub planned: f64,
    /// How far it lies outside the wanted range: negative below, positive above, zero inside.
    pub miss: f64,
    /// What makes it differ from the plan.
    pub parts: Parts,
}

impl Finding {
    /// The share that `part` centimetres are of the difference from the plan; none where that
    /// difference is less than a tenth of a centimetre, the finest that is shown.
    pub fn share(&self, part: f64) -> Option<f64> {
        let whole = self.cm - self.planned;
        (whole.abs() >= 0.1).then(|| part / whole)
    }
}

/// The difference between a reading and the plan taken apart: the parts add up to it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Parts {
    /// What each cause brings, in centimetres, in dressing order.
    pub causes: Vec<(Decision, f64)>,
    /// What hands bring that did as planned, as well as hands can, in centimetres.
    pub hands: f64,
    /// What body, garment and constants bring that are not as they were taken to be.
    pub given: f64,
    /// What nothing explains: the error of reading.
    pub unexplained: f64,
}

impl Parts {
    /// The whole difference, in centimetres.
    pub fn whole(&self) -> f64 {
        let causes: f64 = self.causes.iter().map(|(_, cm)| cm).sum();
        causes + self.hands + self.given + self.unexplained
    }
}

/// One decision that was done wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cause {
    /// Which.
    pub decision: Decision,
    /// The step in which it is made.
    pub step: StepId,
    /// Done less planned, in centimetres.
    pub amount: f64,
    /// Its standard deviation, in centimetres.
    pub sd: f64,
    /// Its 90 % interval, in centimetres.
    pub interval_90: (f64, f64),
    /// Probability that this decision was wrong, whatever else was.
    pub probability: f64,
}

/// Another set of causes for the same readings.
#[derive(Debug, Clone, PartialEq)]
pub struct Doubt {
    /// All decisions that would have been wrong, in dressing order, each with its amount in
    /// centimetres.
    pub causes: Vec<(Decision, f64)>,
    /// Those of [`Diagnosis::causes`] that would not.
    pub without: Vec<Decision>,
    /// How likely it is against the causes told: 1 is as likely.
    pub odds: f64,
    /// What would decide between the two.
    pub tell: Option<Tell>,
}

/// What would tell two sets of causes apart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tell {
    /// What to find out.
    pub quantity: Quantity,
    /// How: on a photo, by touch, or by unpacking from the top.
    pub sight: Sight,
    /// What it is if the causes told are right, in centimetres.
    pub if_told: f64,
    /// What it is if the others are.
    pub if_other: f64,
    /// How many deviations lie between the two, found out as well as usual.
    pub apart: f64,
}

/// The fewest changes to what was done that bring the faults into their ranges.
#[derive(Debug, Clone, PartialEq)]
pub struct Correction {
    /// What to change, in dressing order; nothing where every fault is one of the plan's own.
    pub changes: Vec<Change>,
    /// Faults that stay, each with how far it would still lie outside its range: empty unless even
    /// the plan has them, on this person in this garment.
    pub left: Vec<(Quantity, f64)>,
}

/// One decision to change.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// Which.
    pub decision: Decision,
    /// The step in which it is made.
    pub step: StepId,
    /// As it was done, in centimetres.
    pub from: f64,
    /// As it should be done.
    pub to: f64,
    /// The faults that it helps to cure.
    pub cures: Vec<Quantity>,
}

/// How well a decision shows in what was read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shown {
    /// Which.
    pub decision: Decision,
    /// The tolerance: less than this is within what hands and reading allow, in centimetres;
    /// infinite where nothing that was read hangs on it.
    pub tolerance: f64,
    /// Whether it can be done so wrong that it is told.
    pub can_be_told: bool,
}
