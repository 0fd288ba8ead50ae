//! A piece: one garment of the studio, as its sewing sheet says.

use std::collections::BTreeSet;

use super::fields::{Fields, Reader, keyed, put};
use crate::garment::{Cloth, Garment, Kind, MitakeFrom, Part, Sheet, part_named};
use crate::measure::Script;
use crate::problem::Problem;

/// A garment as entered: its name, and what was measured of it.
///
/// Made by [`Piece::from_fields`] or by a case file, it can be completed to a garment. One put
/// together by hand is checked by [`Piece::check`].
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// What the studio calls the garment: one line, 1 to 80 characters.
    pub name: String,
    /// What was measured of it.
    pub sheet: Sheet,
    /// Anything else to remember, up to 2000 characters.
    pub note: String,
}

/// The fields of a piece that are no parts.
const WORDS: [&str; 5] = ["name", "note", "kind", "cloth", "mitake_from"];

impl Piece {
    /// Reads a garment from form fields: `name`, `note`, `kind`, `cloth` (may be left out),
    /// `mitake_from`, and the parts by their keys, each with an optional deviation at `<key>.sd`;
    /// `shaku` = `kane` makes a bare shaku the carpenter's.
    ///
    /// # Errors
    /// Every problem of every field at once, with field names as places.
    pub fn from_fields(fields: &Fields) -> Result<Piece, Vec<Problem>> {
        Piece::read(fields, &BTreeSet::new())
    }

    pub(super) fn read(fields: &Fields, broken: &BTreeSet<String>) -> Result<Piece, Vec<Problem>> {
        let mut reader = Reader::new(fields, broken);
        let name = reader.name("name");
        let kind = reader.choice("kind", &keyed(Kind::ALL, Kind::key), None);
        let usual_cloth = match kind {
            Some(Kind::Yukata) => Cloth::Cotton,
            _ => Cloth::Soft,
        };
        let cloth = reader.choice("cloth", &keyed(Cloth::ALL, Cloth::key), Some(usual_cloth));
        let froms = keyed(MitakeFrom::ALL, MitakeFrom::key);
        let mitake_from = reader.choice("mitake_from", &froms, None);
        let parts = reader.readings(&WORDS, Part::ALL.iter().copied(), Part::key, part_named);
        let note = reader.note("note");
        // With a choice unread the lengths are checked under the commonest one, so that their
        // faults are told in the same breath.
        let sheet = Sheet {
            kind: kind.unwrap_or(Kind::Nagagi),
            cloth: cloth.unwrap_or(usual_cloth),
            mitake_from: mitake_from.unwrap_or(MitakeFrom::Shoulder),
            parts,
        };
        if let Err(found) = sheet.complete() {
            reader.found(found);
        }
        let problems = reader.problems();
        if problems.is_empty() {
            Ok(Piece { name, sheet, note })
        } else {
            Err(problems)
        }
    }

    /// This garment as form fields, lengths exact in romaji.
    pub fn to_fields(&self) -> Fields {
        self.to_fields_in(Script::Latin)
    }

    /// This garment as form fields, lengths exact in the script given.
    pub fn to_fields_in(&self, script: Script) -> Fields {
        let mut fields = Fields::new();
        let words = [
            ("name", self.name.as_str()),
            ("kind", self.sheet.kind.key()),
            ("cloth", self.sheet.cloth.key()),
            ("mitake_from", self.sheet.mitake_from.key()),
            ("note", self.note.as_str()),
        ];
        fields.extend(words.map(|(field, text)| (field.to_owned(), text.to_owned())));
        for (part, reading) in &self.sheet.parts {
            put(&mut fields, part.key(), *reading, script);
        }
        fields
    }

    /// Whether every rule of a garment as entered is kept.
    ///
    /// # Errors
    /// As [`Piece::from_fields`].
    pub fn check(&self) -> Result<(), Vec<Problem>> {
        Piece::from_fields(&self.to_fields()).map(|_| ())
    }

    /// The whole garment, parts not measured completed by published proportions.
    ///
    /// # Errors
    /// Every problem of the sheet at once, as [`Sheet::complete`] tells them.
    pub fn garment(&self) -> Result<Garment, Vec<Problem>> {
        self.sheet.complete()
    }
}
