//! The form of a check's document, as its schema has it.

use schemars::JsonSchema;
use serde::Serialize;

use super::super::{Interval, keys};
use crate::seen_by::SeenBy;

/// A check of a finished dressing from photos.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct CheckReport {
    /// The language of the texts.
    #[schemars(schema_with = "keys::lang")]
    pub(super) lang: &'static str,
    /// What the dressing is for.
    #[schemars(schema_with = "keys::occasion")]
    pub(super) occasion: &'static str,
    /// The name of the standard in force.
    pub(super) standard: String,
    /// Who is shown; none for a stranger.
    pub(super) person: Option<String>,
    /// What she wears; none for a stranger.
    pub(super) garment: Option<String>,
    /// The photos, in the order given.
    pub(super) photos: Vec<PhotoPart>,
    /// Sides that show right over left: a mirror, or wrongly wrapped. To be put right before all else.
    #[schemars(schema_with = "views")]
    pub(super) wrong_way: Vec<&'static str>,
    /// Whether everything that was read lies within its range, by more than reading errs or less.
    pub(super) met: bool,
    /// What to change, in this order: three things at most.
    #[schemars(length(max = 3))]
    pub(super) advice: Vec<AdvicePart>,
    /// How many more there would be.
    pub(super) more: usize,
    /// One thing well done; none when nothing that was read lies within its range.
    pub(super) good: Option<GoodPart>,
    /// What was read, of all photos together.
    pub(super) readings: Vec<ReadingPart>,
    /// Readings outside their range by more than reading errs.
    pub(super) faults: Vec<FindingPart>,
    /// Readings outside their range that may lie within it.
    pub(super) perhaps: Vec<FindingPart>,
    /// Readings that are no faults and differ from the plan.
    pub(super) differences: Vec<FindingPart>,
    /// What was done unlike the plan, in the order of dressing.
    pub(super) causes: Vec<CausePart>,
    /// How likely it is that just these were.
    #[schemars(range(min = 0.0, max = 1.0))]
    pub(super) probability: f64,
    /// Other causes that cannot be ruled out, likeliest first.
    pub(super) doubts: Vec<DoubtPart>,
    /// The fewest changes that bring everything into its range; none when nothing is at fault.
    pub(super) correction: Option<CorrectionPart>,
    /// Faults seen by eye, and those of left against right that are beyond doubt.
    pub(super) by_eye: Vec<ByEyePart>,
    /// Left against right.
    pub(super) skews: Vec<SkewPart>,
    /// What was not read, and why.
    pub(super) unseen: Vec<UnseenPart>,
    /// Decisions that nothing read could show to be wrong.
    #[schemars(schema_with = "decisions")]
    pub(super) hidden: Vec<&'static str>,
    /// Marks that do not fit with the others.
    pub(super) doubtful: Vec<DoubtfulPart>,
    /// The hem of this dressing as those asked about see it.
    pub(super) seen_by: Vec<SeenBy>,
}

fn views(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
    let view = keys::view(generator);
    schemars::json_schema!({ "type": "array", "items": view })
}

fn decisions(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
    let decision = keys::decision(generator);
    schemars::json_schema!({ "type": "array", "items": decision })
}

fn quantities(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
    let quantity = keys::quantity(generator);
    schemars::json_schema!({ "type": "array", "items": quantity })
}

fn faults(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
    let fault = keys::fault(generator);
    schemars::json_schema!({ "type": "array", "items": fault })
}

fn cautions(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
    let caution = keys::caution(generator);
    schemars::json_schema!({ "type": "array", "items": caution })
}

fn view_or_none(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
    let view = keys::view(generator);
    schemars::json_schema!({ "anyOf": [view, { "type": "null" }] })
}

fn mark_or_none(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
    let mark = keys::mark(generator);
    schemars::json_schema!({ "anyOf": [mark, { "type": "null" }] })
}

/// One photo.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct PhotoPart {
    pub(super) file: String,
    #[schemars(schema_with = "keys::view")]
    pub(super) view: &'static str,
    /// Which panel its marks show on top.
    #[schemars(schema_with = "keys::wrap")]
    pub(super) wrap: &'static str,
    /// How high the lens was found to stand.
    pub(super) lens_height_cm: f64,
    /// How far the lens was found to stand from the middle of her feet, level.
    pub(super) lens_distance_cm: f64,
}

/// One thing to change.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct AdvicePart {
    /// The panels' way round, a decision, or a fault.
    #[schemars(schema_with = "keys::advice")]
    pub(super) kind: &'static str,
    /// Key of the decision or of the fault; none for the way round.
    pub(super) key: Option<&'static str>,
    /// The step of dressing at which it is put right.
    #[schemars(schema_with = "keys::step")]
    pub(super) step: &'static str,
    pub(super) title: String,
    pub(super) why: String,
    /// What helps on the spot; none where only dressing anew does.
    pub(super) now: Option<String>,
    pub(super) practise: String,
    #[schemars(schema_with = "cautions")]
    pub(super) cautions: Vec<&'static str>,
}

/// Something well done.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct GoodPart {
    #[schemars(schema_with = "keys::quantity")]
    pub(super) quantity: &'static str,
    pub(super) value_cm: f64,
    pub(super) interval_90: Interval,
    pub(super) sentence: String,
}

/// One length that was read.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct ReadingPart {
    #[schemars(schema_with = "keys::quantity")]
    pub(super) quantity: &'static str,
    pub(super) name: String,
    pub(super) value_cm: f64,
    pub(super) interval_90: Interval,
}

/// One reading held against plan and wish.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct FindingPart {
    #[schemars(schema_with = "keys::quantity")]
    pub(super) quantity: &'static str,
    /// What the catalogue calls it.
    #[schemars(schema_with = "faults")]
    pub(super) faults: Vec<&'static str>,
    pub(super) value_cm: f64,
    pub(super) interval_90: Interval,
    /// What the plan would have shown.
    pub(super) planned_cm: f64,
    /// How far outside its range: negative below, positive above, zero inside.
    pub(super) miss_cm: f64,
    /// What each cause makes of the difference from the plan.
    pub(super) by_causes: Vec<SharePart>,
    /// What hands make of it that did as planned, as well as hands can.
    pub(super) by_hands_cm: f64,
    /// What body and garment make of it that are not as they were taken to be.
    pub(super) by_given_cm: f64,
    /// What nothing explains.
    pub(super) unexplained_cm: f64,
    pub(super) sentence: String,
}

/// What a cause makes of a difference.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct SharePart {
    #[schemars(schema_with = "keys::decision")]
    pub(super) decision: &'static str,
    pub(super) part_cm: f64,
}

/// One decision that was done unlike the plan.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct CausePart {
    #[schemars(schema_with = "keys::decision")]
    pub(super) decision: &'static str,
    #[schemars(schema_with = "keys::step")]
    pub(super) step: &'static str,
    /// Done less planned.
    pub(super) amount_cm: f64,
    pub(super) interval_90: Interval,
    #[schemars(range(min = 0.0, max = 1.0))]
    pub(super) probability: f64,
    pub(super) sentence: String,
}

/// A decision with an amount.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct AmountPart {
    #[schemars(schema_with = "keys::decision")]
    pub(super) decision: &'static str,
    pub(super) amount_cm: f64,
}

/// Another set of causes for the same readings.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct DoubtPart {
    /// All that would have been done wrong.
    pub(super) causes: Vec<AmountPart>,
    /// Those told that would not.
    #[schemars(schema_with = "decisions")]
    pub(super) without: Vec<&'static str>,
    /// How likely it is against what is told: 1 is as likely.
    #[schemars(range(min = 0.0))]
    pub(super) odds: f64,
    /// What would decide; none where nothing would.
    pub(super) tell: Option<TellPart>,
    pub(super) sentence: String,
}

/// What would tell two sets of causes apart.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct TellPart {
    #[schemars(schema_with = "keys::quantity")]
    pub(super) quantity: &'static str,
    /// What it is if the causes told are right.
    pub(super) if_told_cm: f64,
    /// What it is if the others are.
    pub(super) if_other_cm: f64,
    pub(super) sentence: String,
}

/// The fewest changes.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct CorrectionPart {
    pub(super) changes: Vec<ChangePart>,
    /// Faults that stay whatever is changed.
    pub(super) left: Vec<LeftPart>,
}

/// One decision to change.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct ChangePart {
    #[schemars(schema_with = "keys::decision")]
    pub(super) decision: &'static str,
    #[schemars(schema_with = "keys::step")]
    pub(super) step: &'static str,
    pub(super) from_cm: f64,
    pub(super) to_cm: f64,
    /// The faults that it helps to cure.
    #[schemars(schema_with = "quantities")]
    pub(super) cures: Vec<&'static str>,
    pub(super) sentence: String,
}

/// A fault that stays.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct LeftPart {
    #[schemars(schema_with = "keys::quantity")]
    pub(super) quantity: &'static str,
    /// How far it would still lie outside its range.
    pub(super) miss_cm: f64,
    pub(super) sentence: String,
}

/// A fault seen by eye.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct ByEyePart {
    #[schemars(schema_with = "keys::fault")]
    pub(super) fault: &'static str,
    /// Whether it was ticked; else it was read off left and right.
    pub(super) ticked: bool,
    pub(super) sentence: String,
}

/// A difference between left and right.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct SkewPart {
    #[schemars(schema_with = "keys::skew")]
    pub(super) skew: &'static str,
    /// The side whose photo shows it best.
    #[schemars(schema_with = "keys::view")]
    pub(super) view: &'static str,
    pub(super) value_cm: f64,
    pub(super) interval_90: Interval,
    /// Whether it lies beyond what is let pass, by more than reading errs.
    pub(super) is_fault: bool,
    pub(super) sentence: String,
}

/// Something that was not read.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct UnseenPart {
    #[schemars(schema_with = "keys::quantity")]
    pub(super) quantity: &'static str,
    #[schemars(schema_with = "keys::unseen")]
    pub(super) why: &'static str,
    /// The side that shows it, where another one does.
    #[schemars(schema_with = "view_or_none")]
    pub(super) view: Option<&'static str>,
    /// The mark that was left out, where one was.
    #[schemars(schema_with = "mark_or_none")]
    pub(super) mark: Option<&'static str>,
    pub(super) sentence: String,
}

/// A mark that does not fit with the others.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub(super) struct DoubtfulPart {
    #[schemars(schema_with = "keys::view")]
    pub(super) view: &'static str,
    #[schemars(schema_with = "keys::mark")]
    pub(super) mark: &'static str,
    pub(super) sentence: String,
}
