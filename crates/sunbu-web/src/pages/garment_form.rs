//! Entering a garment: its parts in the order of a sewing sheet, the needed ones first.

use maud::{Markup, html};
use sunbu_core::case::{Fields, Piece};
use sunbu_core::garment::{Cloth, Kind, MitakeFrom, Part};
use sunbu_core::measure::Script;
use sunbu_core::problem::Problem;
use sunbu_store::{Kept, Listed, Store, StoreError};
use sunbu_words::Words;

use super::form::Thing;
use crate::entry::Entry;
use crate::parts::Here;

/// Parts asked for first: the length, and the widths and the front edge on which the wrap hangs.
const FIRST: [Part; 6] = [
    Part::Mitake,
    Part::Yuki,
    Part::Ushirohaba,
    Part::Maehaba,
    Part::Okumihaba,
    Part::Erishita,
];

impl Thing for Piece {
    const PATH: &'static str = "/garments";
    const PARAM: &'static str = "garment";
    const WORDS: &'static str = "garments";
    const HERE: Here = Here::Garments;

    fn name(&self) -> &str {
        &self.name
    }

    fn telling(&self, w: &Words) -> Option<String> {
        let mitake = self.sheet.parts.get(&Part::Mitake)?;
        let cm = w.cm(mitake.length.cm());
        Some(format!("{} {cm}", w.part(Part::Mitake)))
    }

    fn read(fields: &Fields) -> Result<Self, Vec<Problem>> {
        Self::from_fields(fields)
    }

    fn fields(&self, script: Script) -> Fields {
        self.to_fields_in(script)
    }

    fn form(entry: &Entry<'_>) -> Markup {
        let w = entry.words;
        let kinds: Vec<_> = Kind::ALL.iter().map(|k| (k.key(), w.kind(*k))).collect();
        let cloths: Vec<_> = Cloth::ALL.iter().map(|c| (c.key(), w.cloth(*c))).collect();
        let froms: Vec<_> = MitakeFrom::ALL
            .iter()
            .map(|m| (m.key(), w.mitake_from(*m)))
            .collect();
        let rest: Vec<Part> = Part::ALL
            .iter()
            .copied()
            .filter(|p| !FIRST.contains(p))
            .collect();
        html! {
            (entry.line("name", &w.get("field-name"), true))
            (entry.choice("kind", &w.get("field-kind"), &kinds, Kind::Nagagi.key()))
            (entry.choice("cloth", &w.get("field-cloth"), &cloths, Cloth::Soft.key()))
            fieldset {
                legend { (w.get("garment-first")) }
                p.soft { (w.get("garment-first-least")) }
                (entry.choice("mitake_from", &w.get("field-mitake_from"), &froms, MitakeFrom::Shoulder.key()))
                div.fields { (lengths(entry, &FIRST)) }
            }
            details open[rest.iter().any(|p| entry.touched(p.key()))] {
                summary { (w.get("garment-more")) }
                div.fields { (lengths(entry, &rest)) }
            }
            (entry.lines("note", &w.get("field-note")))
        }
    }

    fn label(w: &Words, field: &str) -> String {
        if let Some(part) = Part::from_key(field) {
            return w.part(part);
        }
        match field.strip_suffix(".sd").and_then(Part::from_key) {
            Some(part) => w.with("deviation-of", &[("what", (&w.part(part)).into())]),
            None => super::field_name(w, field),
        }
    }

    fn all(store: &Store) -> Result<Listed<Self>, StoreError> {
        store.garments()
    }

    fn find(store: &Store, id: i64) -> Result<Kept<Self>, StoreError> {
        store.garment(id)
    }

    fn add(&self, store: &mut Store, now: &str) -> Result<i64, StoreError> {
        store.add_garment(self, now)
    }

    fn save(&self, store: &mut Store, id: i64, revision: i64, now: &str) -> Result<(), StoreError> {
        store.save_garment(id, revision, self, now)
    }

    fn erase(store: &mut Store, id: i64) -> Result<(), StoreError> {
        store.erase_garment(id)
    }
}

fn lengths(entry: &Entry<'_>, parts: &[Part]) -> Markup {
    let w = entry.words;
    html! {
        @for &part in parts { (entry.length(part.key(), &w.part(part), &w.part_how(part))) }
    }
}
