//! The document of a check: what photos show, why, and what to change.

use schemars::JsonSchema;
use serde::Serialize;
use sunbu_core::check::{Advice, Report, Skewed, named};
use sunbu_core::dressing::{Decision, Diagnosis, Doubt, Finding, Quantity};
use sunbu_core::fault::{Fault, Finding as RowOf, Ticks};
use sunbu_core::measure::Z_90;
use sunbu_core::photo::{Unseen, Wrap};
use sunbu_words::{Advised, Words};

use super::{Interval, cm, keys};
use crate::commands::check::Taken;
use crate::commands::photo::Shown;
use crate::seen_by::{self, SeenBy, Sight};

/// A check of a finished dressing from photos.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct CheckReport {
    /// The language of the texts.
    #[schemars(schema_with = "keys::lang")]
    lang: &'static str,
    /// What the dressing is for.
    #[schemars(schema_with = "keys::occasion")]
    occasion: &'static str,
    /// The name of the standard in force.
    standard: String,
    /// Who is shown; none for a stranger.
    person: Option<String>,
    /// What she wears; none for a stranger.
    garment: Option<String>,
    /// The photos, in the order given.
    photos: Vec<PhotoPart>,
    /// Sides that show right over left: a mirror, or wrongly wrapped. To be put right before all else.
    #[schemars(schema_with = "views")]
    wrong_way: Vec<&'static str>,
    /// Whether everything that was read lies within its range, by more than reading errs or less.
    met: bool,
    /// What to change, in this order: three things at most.
    #[schemars(length(max = 3))]
    advice: Vec<AdvicePart>,
    /// How many more there would be.
    more: usize,
    /// One thing well done; none when nothing that was read lies within its range.
    good: Option<GoodPart>,
    /// What was read, of all photos together.
    readings: Vec<ReadingPart>,
    /// Readings outside their range by more than reading errs.
    faults: Vec<FindingPart>,
    /// Readings outside their range that may lie within it.
    perhaps: Vec<FindingPart>,
    /// Readings that are no faults and differ from the plan.
    differences: Vec<FindingPart>,
    /// What was done unlike the plan, in the order of dressing.
    causes: Vec<CausePart>,
    /// How likely it is that just these were.
    #[schemars(range(min = 0.0, max = 1.0))]
    probability: f64,
    /// Other causes that cannot be ruled out, likeliest first.
    doubts: Vec<DoubtPart>,
    /// The fewest changes that bring everything into its range; none when nothing is at fault.
    correction: Option<CorrectionPart>,
    /// Faults seen by eye, and those of left against right that are beyond doubt.
    by_eye: Vec<ByEyePart>,
    /// Left against right.
    skews: Vec<SkewPart>,
    /// What was not read, and why.
    unseen: Vec<UnseenPart>,
    /// Decisions that nothing read could show to be wrong.
    #[schemars(schema_with = "decisions")]
    hidden: Vec<&'static str>,
    /// Marks that do not fit with the others.
    doubtful: Vec<DoubtfulPart>,
    /// The hem of this dressing as those asked about see it.
    seen_by: Vec<SeenBy>,
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
struct PhotoPart {
    file: String,
    #[schemars(schema_with = "keys::view")]
    view: &'static str,
    /// Which panel its marks show on top.
    #[schemars(schema_with = "keys::wrap")]
    wrap: &'static str,
    /// How high the lens was found to stand.
    lens_height_cm: f64,
    /// How far the lens was found to stand from the middle of her feet, level.
    lens_distance_cm: f64,
}

/// One thing to change.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct AdvicePart {
    /// The panels' way round, a decision, or a fault.
    #[schemars(schema_with = "keys::advice")]
    kind: &'static str,
    /// Key of the decision or of the fault; none for the way round.
    key: Option<&'static str>,
    /// The step of dressing at which it is put right.
    #[schemars(schema_with = "keys::step")]
    step: &'static str,
    title: String,
    why: String,
    /// What helps on the spot; none where only dressing anew does.
    now: Option<String>,
    practise: String,
    #[schemars(schema_with = "cautions")]
    cautions: Vec<&'static str>,
}

/// Something well done.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct GoodPart {
    #[schemars(schema_with = "keys::quantity")]
    quantity: &'static str,
    value_cm: f64,
    interval_90: Interval,
    sentence: String,
}

/// One length that was read.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct ReadingPart {
    #[schemars(schema_with = "keys::quantity")]
    quantity: &'static str,
    name: String,
    value_cm: f64,
    interval_90: Interval,
}

/// One reading held against plan and wish.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct FindingPart {
    #[schemars(schema_with = "keys::quantity")]
    quantity: &'static str,
    /// What the catalogue calls it.
    #[schemars(schema_with = "faults")]
    faults: Vec<&'static str>,
    value_cm: f64,
    interval_90: Interval,
    /// What the plan would have shown.
    planned_cm: f64,
    /// How far outside its range: negative below, positive above, zero inside.
    miss_cm: f64,
    /// What each cause makes of the difference from the plan.
    by_causes: Vec<SharePart>,
    /// What hands make of it that did as planned, as well as hands can.
    by_hands_cm: f64,
    /// What body and garment make of it that are not as they were taken to be.
    by_given_cm: f64,
    /// What nothing explains.
    unexplained_cm: f64,
    sentence: String,
}

/// What a cause makes of a difference.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct SharePart {
    #[schemars(schema_with = "keys::decision")]
    decision: &'static str,
    part_cm: f64,
}

/// One decision that was done unlike the plan.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct CausePart {
    #[schemars(schema_with = "keys::decision")]
    decision: &'static str,
    #[schemars(schema_with = "keys::step")]
    step: &'static str,
    /// Done less planned.
    amount_cm: f64,
    interval_90: Interval,
    #[schemars(range(min = 0.0, max = 1.0))]
    probability: f64,
    sentence: String,
}

/// A decision with an amount.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct AmountPart {
    #[schemars(schema_with = "keys::decision")]
    decision: &'static str,
    amount_cm: f64,
}

/// Another set of causes for the same readings.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct DoubtPart {
    /// All that would have been done wrong.
    causes: Vec<AmountPart>,
    /// Those told that would not.
    #[schemars(schema_with = "decisions")]
    without: Vec<&'static str>,
    /// How likely it is against what is told: 1 is as likely.
    #[schemars(range(min = 0.0))]
    odds: f64,
    /// What would decide; none where nothing would.
    tell: Option<TellPart>,
    sentence: String,
}

/// What would tell two sets of causes apart.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct TellPart {
    #[schemars(schema_with = "keys::quantity")]
    quantity: &'static str,
    /// What it is if the causes told are right.
    if_told_cm: f64,
    /// What it is if the others are.
    if_other_cm: f64,
    sentence: String,
}

/// The fewest changes.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct CorrectionPart {
    changes: Vec<ChangePart>,
    /// Faults that stay whatever is changed.
    left: Vec<LeftPart>,
}

/// One decision to change.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct ChangePart {
    #[schemars(schema_with = "keys::decision")]
    decision: &'static str,
    #[schemars(schema_with = "keys::step")]
    step: &'static str,
    from_cm: f64,
    to_cm: f64,
    /// The faults that it helps to cure.
    #[schemars(schema_with = "quantities")]
    cures: Vec<&'static str>,
    sentence: String,
}

/// A fault that stays.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct LeftPart {
    #[schemars(schema_with = "keys::quantity")]
    quantity: &'static str,
    /// How far it would still lie outside its range.
    miss_cm: f64,
    sentence: String,
}

/// A fault seen by eye.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct ByEyePart {
    #[schemars(schema_with = "keys::fault")]
    fault: &'static str,
    /// Whether it was ticked; else it was read off left and right.
    ticked: bool,
    sentence: String,
}

/// A difference between left and right.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct SkewPart {
    #[schemars(schema_with = "keys::skew")]
    skew: &'static str,
    /// The side whose photo shows it best.
    #[schemars(schema_with = "keys::view")]
    view: &'static str,
    value_cm: f64,
    interval_90: Interval,
    /// Whether it lies beyond what is let pass, by more than reading errs.
    is_fault: bool,
    sentence: String,
}

/// Something that was not read.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct UnseenPart {
    #[schemars(schema_with = "keys::quantity")]
    quantity: &'static str,
    #[schemars(schema_with = "keys::unseen")]
    why: &'static str,
    /// The side that shows it, where another one does.
    #[schemars(schema_with = "view_or_none")]
    view: Option<&'static str>,
    /// The mark that was left out, where one was.
    #[schemars(schema_with = "mark_or_none")]
    mark: Option<&'static str>,
    sentence: String,
}

/// A mark that does not fit with the others.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct DoubtfulPart {
    #[schemars(schema_with = "keys::view")]
    view: &'static str,
    #[schemars(schema_with = "keys::mark")]
    mark: &'static str,
    sentence: String,
}

/// Everything a check's answer is made from.
pub struct Checked<'a> {
    /// Whom the photos show.
    pub shown: &'a Shown,
    /// The photos.
    pub taken: &'a [Taken],
    /// What the eye saw.
    pub ticks: &'a Ticks,
    /// What the check says.
    pub report: &'a Report,
    /// The hem as others see it.
    pub sights: &'a [Sight],
}

impl CheckReport {
    /// The document of a check.
    pub fn of(words: &Words, checked: &Checked<'_>) -> CheckReport {
        let Checked { shown, report, .. } = checked;
        let diagnosis = &report.diagnosis;
        let findings = |all: &[Finding]| -> Vec<FindingPart> {
            all.iter().map(|f| finding(words, checked, f)).collect()
        };
        let names = shown.names.as_ref();
        CheckReport {
            lang: words.lang().code(),
            occasion: shown.occasion.key(),
            standard: shown.standard.clone(),
            person: names.map(|(person, _)| person.clone()),
            garment: names.map(|(_, garment)| garment.clone()),
            photos: checked.taken.iter().map(photo).collect(),
            wrong_way: report.wrong_way.iter().map(|view| view.key()).collect(),
            met: diagnosis.faults.is_empty(),
            advice: advice(words, report),
            more: report.more,
            good: report.good.as_ref().map(|good| GoodPart {
                quantity: good.quantity.key(),
                value_cm: cm(good.cm),
                interval_90: good.interval_90.into(),
                sentence: words.good(good, &shown.rules),
            }),
            readings: readings(words, report),
            faults: findings(&diagnosis.faults),
            perhaps: findings(&diagnosis.perhaps),
            differences: findings(&diagnosis.differences),
            causes: causes(words, diagnosis),
            probability: share(diagnosis.probability),
            doubts: diagnosis
                .doubts
                .iter()
                .map(|d| doubt(words, diagnosis, d))
                .collect(),
            correction: correction(words, diagnosis),
            by_eye: by_eye(words, checked),
            skews: report.skews.iter().map(|s| skew(words, s)).collect(),
            unseen: report
                .unseen
                .iter()
                .map(|(&quantity, &why)| unseen(words, quantity, why))
                .collect(),
            hidden: diagnosis.hidden().map(Decision::key).collect(),
            doubtful: report
                .doubtful
                .iter()
                .map(|&(view, mark)| DoubtfulPart {
                    view: view.key(),
                    mark: mark.key(),
                    sentence: words.doubtful(view, mark),
                })
                .collect(),
            seen_by: seen_by::documents(words, checked.sights),
        }
    }
}

/// A probability to a thousandth: no more is known of one.
fn share(probability: f64) -> f64 {
    (probability * 1000.0).round() / 1000.0
}

fn photo(one: &Taken) -> PhotoPart {
    let [left, ahead, up] = one.reading.camera.eye;
    PhotoPart {
        file: one.file.clone(),
        view: one.shot.view.key(),
        wrap: match one.reading.wrap {
            Wrap::LeftOverRight => "left_over_right",
            Wrap::RightOverLeft => "right_over_left",
            Wrap::Untold => "untold",
        },
        lens_height_cm: cm(up),
        lens_distance_cm: cm(left.hypot(ahead)),
    }
}

fn advice(words: &Words, report: &Report) -> Vec<AdvicePart> {
    let part = |(advice, said): (&Advice, Advised)| {
        let (kind, key) = match advice {
            Advice::Way => ("way", None),
            Advice::Change(change) => ("change", Some(change.decision.key())),
            Advice::Fault(fault) => ("fault", Some(fault.key())),
        };
        AdvicePart {
            kind,
            key,
            step: advice.step().key(),
            title: said.title,
            why: said.why,
            now: said.now,
            practise: said.practise,
            cautions: said.cautions.iter().map(|caution| caution.key()).collect(),
        }
    };
    report
        .advice
        .iter()
        .zip(words.advised(report))
        .map(part)
        .collect()
}

fn readings(words: &Words, report: &Report) -> Vec<ReadingPart> {
    let observed = &report.observed;
    let read = observed.quantities().iter().filter_map(|&quantity| {
        let (value, sd) = observed.reading(quantity)?;
        Some(ReadingPart {
            quantity: quantity.key(),
            name: words.quantity(quantity),
            value_cm: cm(value),
            interval_90: (value - Z_90 * sd, value + Z_90 * sd).into(),
        })
    });
    read.collect()
}

fn finding(words: &Words, checked: &Checked<'_>, found: &Finding) -> FindingPart {
    let names = match found.miss {
        0.0 => Vec::new(),
        miss => named(found.quantity, miss),
    };
    let causes = found.parts.causes.iter();
    FindingPart {
        quantity: found.quantity.key(),
        faults: names.into_iter().map(Fault::key).collect(),
        value_cm: cm(found.cm),
        interval_90: found.interval_90.into(),
        planned_cm: cm(found.planned),
        miss_cm: cm(found.miss),
        by_causes: causes
            .map(|&(decision, part)| SharePart {
                decision: decision.key(),
                part_cm: cm(part),
            })
            .collect(),
        by_hands_cm: cm(found.parts.hands),
        by_given_cm: cm(found.parts.given),
        unexplained_cm: cm(found.parts.unexplained),
        sentence: match found.miss {
            0.0 => words.difference(found),
            _ => words.finding(found, &checked.shown.rules),
        },
    }
}

fn causes(words: &Words, diagnosis: &Diagnosis) -> Vec<CausePart> {
    let all = diagnosis.causes.iter().map(|cause| CausePart {
        decision: cause.decision.key(),
        step: cause.step.key(),
        amount_cm: cm(cause.amount),
        interval_90: cause.interval_90.into(),
        probability: share(cause.probability),
        sentence: words.cause_explains(cause, diagnosis),
    });
    all.collect()
}

fn doubt(words: &Words, diagnosis: &Diagnosis, doubt: &Doubt) -> DoubtPart {
    let causes = doubt.causes.iter();
    DoubtPart {
        causes: causes
            .map(|&(decision, amount)| AmountPart {
                decision: decision.key(),
                amount_cm: cm(amount),
            })
            .collect(),
        without: doubt.without.iter().map(|d| d.key()).collect(),
        odds: share(doubt.odds),
        tell: doubt.tell.as_ref().map(|tell| TellPart {
            quantity: tell.quantity.key(),
            if_told_cm: cm(tell.if_told),
            if_other_cm: cm(tell.if_other),
            sentence: words.tell(tell),
        }),
        sentence: words.doubt(doubt, diagnosis),
    }
}

fn correction(words: &Words, diagnosis: &Diagnosis) -> Option<CorrectionPart> {
    let correction = diagnosis.correction.as_ref()?;
    let changes = correction.changes.iter().map(|change| ChangePart {
        decision: change.decision.key(),
        step: change.step.key(),
        from_cm: cm(change.from),
        to_cm: cm(change.to),
        cures: change.cures.iter().map(|q| q.key()).collect(),
        sentence: words.change(change, diagnosis),
    });
    let left = correction.left.iter().map(|&(quantity, miss)| LeftPart {
        quantity: quantity.key(),
        miss_cm: cm(miss),
        sentence: words.left(quantity, miss),
    });
    Some(CorrectionPart {
        changes: changes.collect(),
        left: left.collect(),
    })
}

fn by_eye(words: &Words, checked: &Checked<'_>) -> Vec<ByEyePart> {
    let seen = checked.report.rows.iter().filter_map(|row| match row {
        RowOf::ByEye(fault) => Some(*fault),
        RowOf::Measured(_) => None,
    });
    let part = |fault: Fault| ByEyePart {
        fault: fault.key(),
        ticked: checked.ticks.contains(&fault),
        sentence: words.by_eye(fault),
    };
    seen.map(part).collect()
}

fn skew(words: &Words, skewed: &Skewed) -> SkewPart {
    SkewPart {
        skew: skewed.skew.key(),
        view: skewed.view.key(),
        value_cm: cm(skewed.cm),
        interval_90: skewed.interval_90().into(),
        is_fault: skewed.is_fault(),
        sentence: words.skewed(skewed),
    }
}

fn unseen(words: &Words, quantity: Quantity, why: Unseen) -> UnseenPart {
    let (code, view, mark) = match why {
        Unseen::Covered => ("covered", None, None),
        Unseen::OtherSide(view) => ("other_side", Some(view.key()), None),
        Unseen::NotMarked(mark) => ("not_marked", None, Some(mark.key())),
    };
    UnseenPart {
        quantity: quantity.key(),
        why: code,
        view,
        mark,
        sentence: words.unseen_why(quantity, why),
    }
}
