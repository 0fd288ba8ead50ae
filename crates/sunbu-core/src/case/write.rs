//! Writing a case file, so that reading it gives the same again.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::fields::Fields;
use super::{CaseFile, Person, Piece};
use crate::body::BodyMeasure;
use crate::garment::Part;

impl CaseFile {
    /// This case as TOML. [`CaseFile::parse`] reads an equal case from it, lengths exact and in the
    /// units they were written in.
    ///
    /// # Panics
    /// Never: every field of a standard has a TOML form.
    pub fn to_toml(&self) -> String {
        let mut out = format!("occasion = {}\n", quoted(self.occasion.key()));
        person(&mut out, "[person]", &self.person);
        let header = if self.garments.len() == 1 {
            "[garment]"
        } else {
            "[[garments]]"
        };
        for garment in &self.garments {
            piece(&mut out, header, garment);
        }
        if !self.locks.is_empty() {
            out.push_str("\n[dressing]\n");
            for (decision, cm) in &self.locks {
                line(&mut out, decision.key(), &cm.to_string());
            }
        }
        if let Some(dresser) = &self.dresser {
            person(&mut out, "[dresser]", dresser);
        }
        if let Some(standard) = &self.standard {
            let table = BTreeMap::from([("standard", standard)]);
            let text = toml::to_string(&table).expect("every field of a standard has a TOML form");
            out.push('\n');
            out.push_str(&text);
        }
        out
    }
}

fn person(out: &mut String, header: &str, person: &Person) {
    let measures = BodyMeasure::ALL.iter().map(|measure| measure.key());
    table(out, header, &["name", "sex"], measures, &person.to_fields());
}

fn piece(out: &mut String, header: &str, piece: &Piece) {
    let words = ["name", "kind", "cloth", "mitake_from"];
    let parts = Part::ALL.iter().map(|part| part.key());
    table(out, header, &words, parts, &piece.to_fields());
}

/// A table: words first, then measures in their usual order, the note last.
fn table<'a>(
    out: &mut String,
    header: &str,
    words: &[&str],
    measures: impl Iterator<Item = &'a str>,
    fields: &Fields,
) {
    let _ = writeln!(out, "\n{header}"); // a `String` takes every write
    let text = |field: &str| fields.get(field).filter(|text| !text.is_empty());
    for word in words {
        line(out, word, &quoted(text(word).map_or("", String::as_str)));
    }
    for measure in measures {
        let Some(value) = text(measure) else { continue };
        match text(&format!("{measure}.sd")) {
            Some(sd) => {
                let pair = format!("{{ value = {}, sd = {} }}", length(value), length(sd));
                line(out, measure, &pair);
            }
            None => line(out, measure, &length(value)),
        }
    }
    if let Some(note) = text("note") {
        line(out, "note", &quoted(note));
    }
}

fn line(out: &mut String, key: &str, value: &str) {
    let _ = writeln!(out, "{key} = {value}"); // a `String` takes every write
}

/// Centimetres as a bare number, any other unit as text.
fn length(text: &str) -> String {
    text.strip_suffix(" cm")
        .map_or_else(|| quoted(text), str::to_owned)
}

fn quoted(text: &str) -> String {
    toml::Value::String(text.to_owned()).to_string()
}
