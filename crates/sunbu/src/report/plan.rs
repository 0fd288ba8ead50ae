//! The document of one plan: what it is computed from, every wish, and the steps.

use schemars::JsonSchema;
use serde::Serialize;
use sunbu_core::body::BodyMeasure;
use sunbu_core::dressing::{
    Against, Check, Decision, Locks, Occasion, Plan, Quantity, Side, Step, StepValue, WayOut, Worth,
};
use sunbu_core::garment::Part;
use sunbu_core::measure::{Measured, Origin};
use sunbu_words::Words;

use super::rank::Row;
use super::{Interval, cm, keys};
use crate::input::Subject;
use crate::seen_by::{self, SeenBy, Sight};

/// A plan: how one person is best dressed in one garment.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct PlanReport {
    /// The language of the texts.
    #[schemars(schema_with = "keys::lang")]
    lang: &'static str,
    /// What the dressing is for.
    #[schemars(schema_with = "keys::occasion")]
    occasion: &'static str,
    /// The name of the standard in force.
    standard: String,
    /// Who is dressed.
    person: PersonPart,
    /// What is worn.
    garment: GarmentPart,
    /// Whether every wish is met.
    met: bool,
    /// How well the garment can be made to look, nothing locked.
    worth: Row,
    /// Every decision of the hands.
    dressing: Vec<DecisionPart>,
    /// Every wish of the standard.
    targets: Vec<TargetPart>,
    /// Everything that will be seen, wished for or not.
    seen: Vec<SeenPart>,
    /// Whose hands lengths are given against; none when they are those of the one dressed.
    dresser: Option<String>,
    /// The hem as those asked about see it.
    seen_by: Vec<SeenBy>,
    /// The steps in order.
    steps: Vec<StepPart>,
    /// What stands over all cautions.
    cautions_note: String,
}

/// A person with every measure, taped or completed.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct PersonPart {
    name: String,
    #[schemars(schema_with = "keys::sex")]
    sex: &'static str,
    measures: Vec<MeasurePart>,
    /// Taped values that the others make unlikely, as sentences.
    unlikely: Vec<String>,
}

/// One measure of the body.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct MeasurePart {
    #[schemars(schema_with = "keys::measure")]
    measure: &'static str,
    name: String,
    value_cm: f64,
    /// Standard deviation.
    #[schemars(range(min = 0.0))]
    sd_cm: f64,
    #[schemars(schema_with = "keys::origin")]
    origin: &'static str,
}

/// A garment with every part, taped or completed.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct GarmentPart {
    name: String,
    #[schemars(schema_with = "keys::kind")]
    kind: &'static str,
    #[schemars(schema_with = "keys::cloth")]
    cloth: &'static str,
    #[schemars(schema_with = "keys::mitake_from")]
    mitake_from: &'static str,
    parts: Vec<PartPart>,
    /// What is unusual about it, as sentences.
    warnings: Vec<String>,
}

/// One part of the garment.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct PartPart {
    #[schemars(schema_with = "keys::part")]
    part: &'static str,
    name: String,
    value_cm: f64,
    /// Standard deviation.
    #[schemars(range(min = 0.0))]
    sd_cm: f64,
    #[schemars(schema_with = "keys::origin")]
    origin: &'static str,
    /// The published proportion that gave it; none when it was taped.
    rule: Option<String>,
    /// Codes of the sources of that proportion.
    sources: Vec<&'static str>,
}

/// One decision of the hands.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct DecisionPart {
    #[schemars(schema_with = "keys::decision")]
    decision: &'static str,
    name: String,
    value_cm: f64,
    usual_cm: f64,
    /// Whether the dresser set it herself.
    locked: bool,
}

/// One wish held against the plan.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct TargetPart {
    #[schemars(schema_with = "keys::quantity")]
    quantity: &'static str,
    name: String,
    value_cm: f64,
    interval_90: Interval,
    /// Least wanted; none where smaller is never worse.
    low_cm: Option<f64>,
    /// Greatest wanted; none where greater is never worse.
    high_cm: Option<f64>,
    /// How much a miss counts against others.
    weight: f64,
    /// Where the wish comes from.
    source: String,
    met: bool,
    /// How far outside the range: negative below, positive above, zero when met.
    miss_cm: f64,
    /// The wish in one line.
    sentence: String,
    /// For a missed wish: the limits that hold it, strongest first.
    binding: Vec<BindingPart>,
    /// For a missed wish: other wishes that would suffer if it were met.
    rivals: Vec<RivalPart>,
    /// For a missed wish: what would free it, best first.
    ways_out: Vec<WayOutPart>,
}

/// A limit that holds a missed wish.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct BindingPart {
    #[schemars(schema_with = "keys::decision")]
    decision: &'static str,
    #[schemars(schema_with = "keys::side")]
    side: &'static str,
    /// What each centimetre of freedom would give, in centimetres.
    gain_cm: f64,
    sentence: String,
}

/// A wish that would suffer.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct RivalPart {
    #[schemars(schema_with = "keys::quantity")]
    quantity: &'static str,
    /// How far it would move out for each centimetre gained.
    cost_cm: f64,
    sentence: String,
}

/// A change that would free a missed wish.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct WayOutPart {
    #[schemars(schema_with = "keys::remedy")]
    remedy: &'static str,
    amount_cm: f64,
    /// What is still missed after it, signed; zero when it suffices.
    left_cm: f64,
    sentence: String,
}

/// Something to be seen.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct SeenPart {
    #[schemars(schema_with = "keys::quantity")]
    quantity: &'static str,
    name: String,
    value_cm: f64,
    interval_90: Interval,
}

/// One step.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct StepPart {
    #[schemars(schema_with = "keys::step")]
    step: &'static str,
    title: String,
    text: String,
    numbers: Vec<NumberPart>,
    cautions: Vec<CautionPart>,
}

/// One number of a step.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct NumberPart {
    /// Whether the hands do it or the eye sees it.
    #[schemars(schema_with = "keys::about")]
    about: &'static str,
    /// Key of the decision or quantity.
    key: &'static str,
    name: String,
    value_cm: f64,
    interval_90: Interval,
    /// The same against body or hand; none where neither comes near enough.
    against: Option<AgainstPart>,
    sentence: String,
}

/// A length as hands find it.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct AgainstPart {
    /// The landmark it counts from; none for a plain length.
    #[schemars(schema_with = "keys::landmark_or_none")]
    landmark: Option<&'static str>,
    /// Which part of the hand.
    #[schemars(schema_with = "keys::hand_unit")]
    unit: &'static str,
    /// How many of it, in halves; negative below the landmark.
    #[schemars(extend("multipleOf" = 0.5))]
    count: f64,
    text: String,
}

/// A caution.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct CautionPart {
    #[schemars(schema_with = "keys::caution")]
    caution: &'static str,
    text: String,
}

/// Everything a plan's document is made from.
#[derive(Debug)]
pub struct Planned<'a> {
    /// Who in what.
    pub subject: &'a Subject,
    /// What for.
    pub occasion: Occasion,
    /// The standard's name.
    pub standard: &'a str,
    /// What the dresser set herself.
    pub locks: &'a Locks,
    /// How well it can be made to look.
    pub worth: &'a Worth,
    /// The plan.
    pub plan: &'a Plan,
    /// For every missed wish, what would free it.
    pub ways_out: &'a [(Quantity, Vec<WayOut>)],
    /// The hem as those asked about see it.
    pub sights: &'a [Sight],
    /// The steps.
    pub steps: &'a [Step],
    /// Whose hands lengths are given against; none when they are those of the one dressed.
    pub dresser: Option<&'a str>,
}

impl PlanReport {
    /// The document of a plan.
    pub fn of(words: &Words, planned: &Planned<'_>) -> PlanReport {
        let Planned { subject, plan, .. } = planned;
        PlanReport {
            lang: words.lang().code(),
            occasion: planned.occasion.key(),
            standard: planned.standard.to_owned(),
            person: person(words, subject),
            garment: garment(words, subject),
            met: plan.missed().next().is_none(),
            worth: Row::of(words, 1, &subject.piece.name, planned.worth),
            dressing: Decision::ALL
                .iter()
                .map(|&d| DecisionPart {
                    decision: d.key(),
                    name: words.decision(d),
                    value_cm: cm(plan.dressing.get(d)),
                    usual_cm: cm(subject.rules.way(d).usual),
                    locked: planned.locks.contains_key(&d),
                })
                .collect(),
            targets: plan
                .checks
                .iter()
                .map(|check| target(words, planned, check))
                .collect(),
            seen: Quantity::ALL
                .iter()
                .map(|&q| SeenPart {
                    quantity: q.key(),
                    name: words.quantity(q),
                    value_cm: cm(plan.prediction.value(q)),
                    interval_90: plan.prediction.interval_90(q).into(),
                })
                .collect(),
            dresser: planned.dresser.map(str::to_owned),
            seen_by: seen_by::documents(words, planned.sights),
            steps: planned.steps.iter().map(|s| step(words, s)).collect(),
            cautions_note: words.cautions_note(),
        }
    }
}

fn origin(measured: Measured) -> &'static str {
    match measured.origin() {
        Origin::Taped => "taped",
        Origin::Completed => "completed",
        Origin::Photo => "photo",
        Origin::Customary => "customary",
        Origin::Learned => "learned",
    }
}

fn person(words: &Words, subject: &Subject) -> PersonPart {
    let measure = |&m: &BodyMeasure| {
        let measured = subject.body.measure(m);
        MeasurePart {
            measure: m.key(),
            name: words.body_measure(m),
            value_cm: cm(measured.value_cm()),
            sd_cm: cm(measured.sd_cm()),
            origin: origin(measured),
        }
    };
    PersonPart {
        name: subject.person.name.clone(),
        sex: match subject.person.sex {
            sunbu_core::body::Sex::Women => "women",
            sunbu_core::body::Sex::Men => "men",
        },
        measures: BodyMeasure::ALL.iter().map(measure).collect(),
        unlikely: subject
            .body
            .unlikely()
            .iter()
            .map(|u| words.unlikely(u))
            .collect(),
    }
}

fn garment(words: &Words, subject: &Subject) -> GarmentPart {
    let garment = &subject.garment;
    let part = |&p: &Part| {
        let (measured, rule) = (garment.part(p), garment.completed_by(p));
        PartPart {
            part: p.key(),
            name: words.part(p),
            value_cm: cm(measured.value_cm()),
            sd_cm: cm(measured.sd_cm()),
            origin: origin(measured),
            rule: rule.map(|rule| words.rule(rule)),
            sources: rule
                .map_or(&[][..], |r| r.sources)
                .iter()
                .map(|s| s.code)
                .collect(),
        }
    };
    GarmentPart {
        name: subject.piece.name.clone(),
        kind: garment.kind().key(),
        cloth: garment.cloth().key(),
        mitake_from: garment.mitake_from().key(),
        parts: Part::ALL.iter().map(part).collect(),
        warnings: garment
            .warnings()
            .iter()
            .map(|w| words.warning(w))
            .collect(),
    }
}

fn target(words: &Words, planned: &Planned<'_>, check: &Check) -> TargetPart {
    let quantity = check.target.quantity;
    let binding = check.binding.iter().map(|b| BindingPart {
        decision: b.decision.key(),
        side: match b.side {
            Side::Low => "low",
            Side::High => "high",
            Side::Locked => "locked",
        },
        gain_cm: cm(b.gain),
        sentence: words.binding(b),
    });
    let rivals = check.rivals.iter().map(|r| RivalPart {
        quantity: r.quantity.key(),
        cost_cm: cm(r.cost),
        sentence: words.rival(r),
    });
    let ways = planned
        .ways_out
        .iter()
        .filter(|(q, _)| *q == quantity)
        .flat_map(|(_, w)| w);
    let ways_out = ways.map(|w| WayOutPart {
        remedy: w.remedy.key(),
        amount_cm: cm(w.amount),
        left_cm: cm(w.left),
        sentence: words.way_out(w),
    });
    TargetPart {
        quantity: quantity.key(),
        name: words.quantity(quantity),
        value_cm: cm(check.value),
        interval_90: check.interval_90.into(),
        low_cm: check.target.low.map(cm),
        high_cm: check.target.high.map(cm),
        weight: check.target.weight,
        source: check.target.source.clone(),
        met: check.met(),
        miss_cm: cm(check.miss),
        sentence: words.check(check),
        binding: binding.collect(),
        rivals: rivals.collect(),
        ways_out: ways_out.collect(),
    }
}

fn step(words: &Words, step: &Step) -> StepPart {
    let number = |n: &sunbu_core::dressing::StepNumber| NumberPart {
        about: match n.value {
            StepValue::Do(_) => "do",
            StepValue::See(_) => "see",
        },
        key: n.value.key(),
        name: words.step_value(n.value),
        value_cm: cm(n.cm),
        interval_90: n.interval_90.into(),
        against: n.against.as_ref().map(|a| against(words, a)),
        sentence: words.number(n),
    };
    StepPart {
        step: step.id.key(),
        title: words.step_title(step.id),
        text: words.step_text(step.id),
        numbers: step.numbers.iter().map(number).collect(),
        cautions: step
            .cautions
            .iter()
            .map(|&c| CautionPart {
                caution: c.key(),
                text: words.caution(c),
            })
            .collect(),
    }
}

fn against(words: &Words, against: &Against) -> AgainstPart {
    let text = words.against(against);
    match *against {
        Against::Hand { unit, count } => AgainstPart {
            landmark: None,
            unit: unit.key(),
            count,
            text,
        },
        Against::Body { landmark, fingers } => AgainstPart {
            landmark: Some(landmark.key()),
            unit: sunbu_core::dressing::HandUnit::Finger.key(),
            count: fingers,
            text,
        },
    }
}
