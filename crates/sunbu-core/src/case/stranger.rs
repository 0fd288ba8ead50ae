//! A stranger: somebody known from a photo alone.

use std::collections::BTreeSet;

use super::fields::{Fields, Reader, keyed, put};
use crate::body::{BodyMeasure, Sex};
use crate::measure::{Reading, Script};
use crate::problem::{Fault, Problem};

/// Somebody whose photo was sent in, with nothing taped but perhaps her stature.
#[derive(Debug, Clone, PartialEq)]
pub struct Stranger {
    /// What the studio calls her: one line, 1 to 80 characters.
    pub name: String,
    /// Which population table stands for her.
    pub sex: Sex,
    /// Her stature as it was said; none when nobody knows.
    pub stature: Option<Reading>,
    /// Anything else to remember, up to 2000 characters.
    pub note: String,
}

/// The fields of a stranger that are no measures.
const WORDS: [&str; 3] = ["name", "sex", "note"];

impl Stranger {
    /// Reads a stranger from form fields: `name`, `sex` (`women`, `men`; women when it was left
    /// out), `note`, and `stature` with an optional deviation at `stature.sd`.
    ///
    /// # Errors
    /// Every problem of every field at once, with field names as places.
    pub fn from_fields(fields: &Fields) -> Result<Stranger, Vec<Problem>> {
        let mut reader = Reader::new(fields, &BTreeSet::new());
        let name = reader.name("name");
        let sex = reader.choice("sex", &keyed(Sex::ALL, Sex::key), Some(Sex::Women));
        let stature = BodyMeasure::Stature;
        let only = |name: &str| (name == stature.key()).then_some(stature);
        let readings = reader.readings(&WORDS, [stature], BodyMeasure::key, only);
        let stature_given = readings.get(&stature).copied();
        if let Some(reading) = stature_given {
            let (low_cm, high_cm) = stature.range_cm();
            if !(low_cm..=high_cm).contains(&reading.length.cm()) {
                let fault = Fault::OutOfRange { low_cm, high_cm };
                reader.found(vec![Problem::new(
                    stature.key(),
                    reading.to_string(),
                    fault,
                )]);
            }
        }
        let note = reader.note("note");
        let problems = reader.problems();
        if problems.is_empty() {
            Ok(Stranger {
                name,
                sex: sex.unwrap_or(Sex::Women),
                stature: stature_given,
                note,
            })
        } else {
            Err(problems)
        }
    }

    /// This stranger as form fields, the stature exact in romaji.
    pub fn to_fields(&self) -> Fields {
        let mut fields = Fields::new();
        fields.insert("name".into(), self.name.clone());
        fields.insert("sex".into(), self.sex.key().into());
        fields.insert("note".into(), self.note.clone());
        if let Some(stature) = self.stature {
            let key = BodyMeasure::Stature.key();
            put(&mut fields, key, stature, Script::Latin);
        }
        fields
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fields(of: &[(&str, &str)]) -> Fields {
        of.iter()
            .map(|(name, text)| ((*name).to_owned(), (*text).to_owned()))
            .collect()
    }

    #[test]
    fn a_name_is_enough_and_a_stature_may_be_written_in_any_way() {
        let bare = Stranger::from_fields(&fields(&[("name", "Student 4")])).expect("a stranger");
        assert_eq!((bare.sex, bare.stature), (Sex::Women, None));
        let told = fields(&[("name", "Student 4"), ("stature", "4尺2寸5分")]);
        let told = Stranger::from_fields(&told).expect("a stranger");
        let cm = told.stature.map_or(0.0, |reading| reading.length.cm());
        // 425 kujira-bu of 25/66 cm.
        assert!((cm - 425.0 * 25.0 / 66.0).abs() < 1e-9, "{cm}");
        assert_eq!(Stranger::from_fields(&told.to_fields()), Ok(told));
    }

    #[test]
    fn everything_wrong_is_told_at_once() {
        let wrong = fields(&[("stature", "12"), ("sex", "robots"), ("hip_girth", "90")]);
        let problems = Stranger::from_fields(&wrong).expect_err("nothing in it is right");
        let places: Vec<&str> = problems.iter().map(|p| p.place.as_str()).collect();
        for place in ["name", "sex", "hip_girth", "stature"] {
            assert!(places.contains(&place), "{place} is not in {places:?}");
        }
    }
}
