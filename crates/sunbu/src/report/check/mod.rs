//! The document of a check: what photos show, why, and what to change.

mod form;

use sunbu_core::check::{Advice, Report, Skewed, named};
use sunbu_core::dressing::{Decision, Diagnosis, Doubt, Finding, Quantity};
use sunbu_core::fault::{Fault, Finding as RowOf, Ticks};
use sunbu_core::measure::Z_90;
use sunbu_core::photo::{Unseen, Wrap};
use sunbu_words::{Advised, Words};

use super::cm;
use crate::commands::check::Taken;
use crate::commands::photo::Shown;
use crate::seen_by::{self, Sight};

pub use form::CheckReport;
use form::{
    AdvicePart, AmountPart, ByEyePart, CausePart, ChangePart, CorrectionPart, DoubtPart,
    DoubtfulPart, FindingPart, GoodPart, LeftPart, PhotoPart, ReadingPart, SharePart, SkewPart,
    TellPart, UnseenPart,
};

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
            wrong_way: report.wrong_way.iter().map(|w| w.view.key()).collect(),
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
