//! What is said of a view: every number at its place, with its trust, wish and fault.

use sunbu_core::dressing::{Check, Plan, StepValue};

use crate::figure::{Parts, Scene};
use crate::marks::{Mark, marks};
use crate::text;
use crate::view::View;

/// What a label of the figure says.
#[derive(Debug, Clone, PartialEq)]
pub struct Note {
    /// The number at its place in a figure with [`Labels::Numbers`](crate::Labels::Numbers), from 1.
    pub number: usize,
    /// What it is about.
    pub value: StepValue,
    /// Its name.
    pub name: String,
    /// The number with its unit.
    pub amount: String,
    /// The 90 % interval; none for what the hands decide.
    pub interval: Option<String>,
    /// The planner's number, where one is held against this and reads differently.
    pub wanted: Option<String>,
    /// The number of its fault sign and the fault in words; none when nothing is missed.
    pub fault: Option<(usize, String)>,
}

/// What the view's labels say, in the order of their numbers.
pub fn notes(scene: &Scene, view: View) -> Vec<Note> {
    let parts = Parts::of(scene, scene.shown);
    noted(scene, view, &parts)
        .into_iter()
        .map(|(note, _)| note)
        .collect()
}

/// All numbers of a view in words.
pub(crate) fn description(scene: &Scene, view: View, parts: &Parts) -> String {
    let said: Vec<String> = noted(scene, view, parts)
        .iter()
        .map(|(note, _)| {
            let mut text = format!("{}: {}", note.name, note.amount);
            let fault = note.fault.as_ref().map(|(_, words)| words);
            for more in [note.interval.as_ref(), note.wanted.as_ref(), fault]
                .into_iter()
                .flatten()
            {
                text.push_str(", ");
                text.push_str(more);
            }
            text
        })
        .collect();
    said.join(". ")
}

/// Notes with their marks: what is always shown, and what is missed.
pub(crate) fn noted(scene: &Scene, view: View, parts: &Parts) -> Vec<(Note, Mark)> {
    let words = scene.words;
    let plan = scene.shown;
    let all = marks(&parts.lines, view, plan, &parts.sleeve, parts.drum);
    let check = |value: StepValue| -> Option<&Check> {
        match value {
            StepValue::See(q) => plan.check(q).filter(|c| !c.met()),
            StepValue::Do(_) => None,
        }
    };
    let mut shown: Vec<Mark> = all
        .into_iter()
        .filter(|m| m.always || check(m.value).is_some())
        .collect();
    shown.sort_by(|a, b| b.place.middle().z.total_cmp(&a.place.middle().z));
    let amount_of = |plan: &Plan, value: StepValue| match value {
        StepValue::Do(d) => plan.dressing.get(d),
        StepValue::See(q) => plan.prediction.value(q),
    };
    let mut out = Vec::with_capacity(shown.len());
    for mark in shown {
        let value = mark.value;
        let cm = amount_of(plan, value);
        let interval = match value {
            StepValue::See(q) => Some(plan.prediction.interval_90(q)),
            StepValue::Do(_) => None,
        };
        let around = interval.unwrap_or((cm, cm));
        let wanted = scene
            .wanted
            .map(|w| amount_of(w, value))
            .and_then(|planned| words.planned_apart(value, planned, cm, around));
        let fault = check(value).map(|c| (fault_number(plan, c), words.check_miss(c)));
        out.push((
            Note {
                number: out.len() + 1,
                value,
                name: text::capital(&match value {
                    StepValue::Do(d) => words.decision(d),
                    StepValue::See(q) => words.quantity_short(q),
                }),
                amount: words.planned(value, cm, around),
                interval: interval.map(|i| words.interval(i)),
                wanted,
                fault,
            },
            mark,
        ));
    }
    out
}

/// The number of a fault's sign: its place among all that is missed, the same in both views.
fn fault_number(plan: &Plan, check: &Check) -> usize {
    1 + plan
        .missed()
        .take_while(|c| c.target.quantity != check.target.quantity)
        .count()
}

/// Amount and interval, on one line where they have room.
pub(crate) fn amounts(note: &Note, size: f64, room: f64) -> Vec<String> {
    let Some(interval) = &note.interval else {
        return vec![note.amount.clone()];
    };
    let both = format!("{} ({interval})", note.amount);
    if text::width(&both, size) * text::BOLD <= room {
        vec![both]
    } else {
        vec![note.amount.clone(), format!("({interval})")]
    }
}
