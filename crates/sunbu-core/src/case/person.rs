//! A person: a name, and what was taped.

use std::collections::{BTreeMap, BTreeSet};

use super::fields::{Fields, Reader, keyed, put};
use crate::body::{Body, BodyError, BodyMeasure, Population, Sex, Tape};
use crate::measure::{Reading, Script};
use crate::problem::{Fault, Problem};

/// A person as entered: what was taped, in the units it was written in.
///
/// Made by [`Person::from_fields`] or by a case file, it can be completed to a body. One put
/// together by hand is checked by [`Person::check`].
#[derive(Debug, Clone, PartialEq)]
pub struct Person {
    /// What the studio calls the person: one line, 1 to 80 characters.
    pub name: String,
    /// Which population table completes the body.
    pub sex: Sex,
    /// What was taped.
    pub measures: BTreeMap<BodyMeasure, Reading>,
    /// Anything else to remember, up to 2000 characters.
    pub note: String,
}

/// The fields of a person that are no measures.
const WORDS: [&str; 3] = ["name", "sex", "note"];

impl Person {
    /// Reads a person from form fields: `name`, `sex` (`women`, `men`), `note`, and the measures by
    /// their keys, each with an optional deviation at `<key>.sd`; `shaku` = `kane` makes a bare
    /// shaku the carpenter's.
    ///
    /// # Errors
    /// Every problem of every field at once, with field names as places.
    pub fn from_fields(fields: &Fields) -> Result<Person, Vec<Problem>> {
        Person::read(fields, &BTreeSet::new())
    }

    pub(super) fn read(fields: &Fields, broken: &BTreeSet<String>) -> Result<Person, Vec<Problem>> {
        let mut reader = Reader::new(fields, broken);
        let name = reader.name("name");
        let sex = reader.choice("sex", &keyed(Sex::ALL, Sex::key), None);
        let measures = reader.readings(
            &WORDS,
            BodyMeasure::ALL.iter().copied(),
            BodyMeasure::key,
            BodyMeasure::from_key,
        );
        let note = reader.note("note");
        // With the sex unread the measures are checked all the same: their rules are shared.
        let person = Person {
            name,
            sex: sex.unwrap_or(Sex::Women),
            measures,
            note,
        };
        if let Err(found) = person.tape() {
            reader.found(found);
        }
        let problems = reader.problems();
        if problems.is_empty() {
            Ok(person)
        } else {
            Err(problems)
        }
    }

    /// This person as form fields, lengths exact in romaji.
    pub fn to_fields(&self) -> Fields {
        self.to_fields_in(Script::Latin)
    }

    /// This person as form fields, lengths exact in the script given.
    pub fn to_fields_in(&self, script: Script) -> Fields {
        let mut fields = Fields::new();
        fields.insert("name".into(), self.name.clone());
        fields.insert("sex".into(), self.sex.key().into());
        fields.insert("note".into(), self.note.clone());
        for (measure, reading) in &self.measures {
            put(&mut fields, measure.key(), *reading, script);
        }
        fields
    }

    /// Whether every rule of a person as entered is kept.
    ///
    /// # Errors
    /// As [`Person::from_fields`].
    pub fn check(&self) -> Result<(), Vec<Problem>> {
        Person::from_fields(&self.to_fields()).map(|_| ())
    }

    /// What was taped, as a set that can be true together.
    ///
    /// # Errors
    /// As [`Tape::new`], with measure keys as places.
    pub fn tape(&self) -> Result<Tape, Vec<Problem>> {
        Tape::new(self.sex, self.measures.clone())
    }

    /// The body, what was not taped completed from the shipped table of this sex.
    ///
    /// # Errors
    /// As [`Person::tape`].
    pub fn body(&self) -> Result<Body, Vec<Problem>> {
        self.body_from(Population::shipped(self.sex))
    }

    /// The body, completed from another population table.
    ///
    /// # Errors
    /// As [`Person::tape`], and when the table is of the other sex or cannot tell the taped
    /// measures apart.
    pub fn body_from(&self, table: &Population) -> Result<Body, Vec<Problem>> {
        table.complete(&self.tape()?).map_err(|error| {
            let (place, code, english) = match error {
                BodyError::OtherSex { .. } => (
                    "sex",
                    "other-table",
                    "the population table in use is of the other sex",
                ),
                BodyError::Degenerate => (
                    "stature",
                    "table-degenerate",
                    "the population table cannot tell the taped measures apart; use another one",
                ),
            };
            let fault = Fault::Contradiction {
                code,
                english,
                args: Vec::new(),
                other: Vec::new(),
            };
            vec![Problem::new(place, self.typed(place), fault)]
        })
    }

    /// What stands at a field.
    fn typed(&self, field: &str) -> String {
        self.to_fields().remove(field).unwrap_or_default()
    }
}
