//! Measuring a person: which measures are asked for, in which order.

use maud::{Markup, html};
use sunbu_core::body::{BodyMeasure, Kind, Sex};
use sunbu_core::case::{Fields, Person};
use sunbu_core::measure::Script;
use sunbu_core::problem::Problem;
use sunbu_store::{Kept, Listed, Store, StoreError};
use sunbu_words::Words;

use super::form::Thing;
use crate::entry::Entry;
use crate::parts::Here;

/// Measures asked for first: the least a body is made from.
const FIRST: [BodyMeasure; 2] = [BodyMeasure::Stature, BodyMeasure::HipGirth];

/// Measures that sharpen a plan most for the trouble of taping them: the waist tie hangs on the
/// hip bone, the fold on the neck point, the sleeve on the yuki, the padding on the waist.
const TELLING: [BodyMeasure; 6] = [
    BodyMeasure::WaistGirth,
    BodyMeasure::BustGirth,
    BodyMeasure::HipBoneHeight,
    BodyMeasure::BackNeckHeight,
    BodyMeasure::SpineToWrist,
    BodyMeasure::FullestGirth,
];

impl Thing for Person {
    const PATH: &'static str = "/people";
    const PARAM: &'static str = "person";
    const WORDS: &'static str = "people";
    const HERE: Here = Here::People;

    fn name(&self) -> &str {
        &self.name
    }

    fn telling(&self, w: &Words) -> Option<String> {
        let stature = self.measures.get(&BodyMeasure::Stature)?;
        let cm = w.cm(stature.length.cm());
        Some(format!("{} {cm}", w.body_measure(BodyMeasure::Stature)))
    }

    fn read(fields: &Fields) -> Result<Self, Vec<Problem>> {
        Self::from_fields(fields)
    }

    fn fields(&self, script: Script) -> Fields {
        self.to_fields_in(script)
    }

    fn form(entry: &Entry<'_>) -> Markup {
        let w = entry.words;
        let sexes = [("women", w.sex(Sex::Women)), ("men", w.sex(Sex::Men))];
        html! {
            (entry.line("name", &w.get("field-name"), true))
            (entry.choice("sex", &w.get("field-sex"), &sexes, "women"))
            fieldset {
                legend { (w.get("person-first")) }
                div.fields { (lengths(entry, FIRST)) }
            }
            fieldset {
                legend { (w.get("person-telling")) }
                p.soft { (w.get("person-telling-why")) }
                div.fields { (lengths(entry, TELLING)) }
            }
            @for (kind, id) in [
                (Kind::Height, "person-more-heights"),
                (Kind::Girth, "person-more-girths"),
                (Kind::Length, "person-more-lengths"),
            ] {
                details open[rest(kind).any(|m| entry.touched(m.key()))] {
                    summary { (w.get(id)) }
                    div.fields { (lengths(entry, rest(kind))) }
                }
            }
            (entry.lines("note", &w.get("field-note")))
        }
    }

    fn label(w: &Words, field: &str) -> String {
        if let Some(measure) = BodyMeasure::from_key(field) {
            return w.body_measure(measure);
        }
        match field.strip_suffix(".sd").and_then(BodyMeasure::from_key) {
            Some(measure) => w.with(
                "deviation-of",
                &[("what", (&w.body_measure(measure)).into())],
            ),
            None => super::field_name(w, field),
        }
    }

    fn all(store: &Store) -> Result<Listed<Self>, StoreError> {
        store.people()
    }

    fn find(store: &Store, id: i64) -> Result<Kept<Self>, StoreError> {
        store.person(id)
    }

    fn add(&self, store: &mut Store, now: &str) -> Result<i64, StoreError> {
        store.add_person(self, now)
    }

    fn save(&self, store: &mut Store, id: i64, revision: i64, now: &str) -> Result<(), StoreError> {
        store.save_person(id, revision, self, now)
    }

    fn erase(store: &mut Store, id: i64) -> Result<(), StoreError> {
        store.erase_person(id)
    }
}

/// The measures of a kind that are asked for last.
fn rest(kind: Kind) -> impl Iterator<Item = BodyMeasure> {
    let before = |m: &BodyMeasure| FIRST.contains(m) || TELLING.contains(m);
    BodyMeasure::ALL
        .iter()
        .copied()
        .filter(move |m| m.kind() == kind && !before(m))
}

fn lengths(entry: &Entry<'_>, measures: impl IntoIterator<Item = BodyMeasure>) -> Markup {
    let w = entry.words;
    html! {
        @for measure in measures {
            (entry.length(measure.key(), &w.body_measure(measure), &w.body_measure_how(measure)))
        }
    }
}
