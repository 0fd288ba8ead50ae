//! What was taped of a person, checked once at entry.
//!
//! A [`Tape`] holds only numbers that can be true together: each inside its accepted range, heights
//! in the order of the body. All that is wrong is told at once. Whether a possible set is likely is
//! another question, answered when the population completes it.

use std::collections::BTreeMap;

use serde::ser::SerializeMap;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::measures::{BodyMeasure, Sex};
use super::possible;
use crate::measure::{Entry, Length, Measured, Reading, Unit};
use crate::problem::{Fault, Problem};

/// Name of the field that says which population table completes the person.
const POPULATION: &str = "population";

const EXPECTED: &str = "a length such as 158, \"4尺2寸\" or { value = 158, sd = 0.5 }";

/// A possible set of taped measures of one person: at least stature and hip (or fullest) girth.
///
/// In files one flat table: `population` (`women` when left out) and the measures by their keys,
/// each a number of centimetres, a text, or `{ value, sd }`.
#[derive(Debug, Clone, PartialEq)]
pub struct Tape {
    sex: Sex,
    readings: BTreeMap<BodyMeasure, Reading>,
}

impl Tape {
    /// Starts a set of measures given as numbers of centimetres.
    #[must_use]
    pub fn of(sex: Sex) -> TapeBuilder {
        TapeBuilder {
            sex,
            readings: BTreeMap::new(),
            problems: Vec::new(),
        }
    }

    /// A set of measures as they were read.
    ///
    /// # Errors
    /// Every problem at once, with measure keys as paths: [`Fault::OutOfRange`] by
    /// [`BodyMeasure::range_cm`] (path `KEY.sd` for a deviation), [`Fault::Contradiction`] for heights
    /// out of order, [`Fault::Missing`] and [`Fault::MissingOneOf`] for stature and hip girth.
    pub fn new(sex: Sex, readings: BTreeMap<BodyMeasure, Reading>) -> Result<Tape, Vec<Problem>> {
        let problems = possible::problems(&readings);
        if problems.is_empty() {
            Ok(Tape { sex, readings })
        } else {
            Err(problems)
        }
    }

    /// Reads a set from its fields, names and texts in any order; an empty field is not taped.
    ///
    /// Paths in the problems are the bare field names; see [`Problem::within`].
    ///
    /// # Errors
    /// Every problem of every field at once: [`Fault::UnknownField`], [`Fault::UnknownChoice`],
    /// [`Fault::Unreadable`], and for those that could be read what [`Tape::new`] has against them.
    pub fn from_fields<'a>(
        fields: impl IntoIterator<Item = (&'a str, Entry)>,
    ) -> Result<Tape, Vec<Problem>> {
        let mut sex = Sex::Women;
        let mut readings = BTreeMap::new();
        let mut unread = Vec::new();
        let mut problems = Vec::new();
        for (name, entry) in fields {
            let typed = entry.to_string();
            let is_empty = typed.trim().is_empty();
            if name == POPULATION {
                match Sex::from_key(typed.trim()) {
                    Some(known) => sex = known,
                    None if is_empty => {}
                    None => problems.push(Problem::new(name, typed, unknown_population())),
                }
                continue;
            }
            let Some(measure) = BodyMeasure::from_key(name) else {
                problems.push(Problem::new(name, typed, unknown_field()));
                continue;
            };
            if is_empty {
                continue;
            }
            match entry.read() {
                Ok(reading) => {
                    readings.insert(measure, reading);
                }
                Err(why) => {
                    unread.push(name.to_owned());
                    problems.push(Problem::new(name, typed, Fault::Unreadable(why)));
                }
            }
        }
        finish(Tape::new(sex, readings), problems, &unread)
    }

    /// Reads a set from a TOML table; fields named in `also` belong to the caller and are passed over.
    ///
    /// # Errors
    /// As [`Tape::from_fields`], and [`Fault::WrongShape`] for a field that is neither number, text
    /// nor value with deviation.
    pub fn from_toml(table: &toml::Table, also: &[&str]) -> Result<Tape, Vec<Problem>> {
        let mut fields = Vec::new();
        let mut problems = Vec::new();
        let mut unread = Vec::new();
        for (name, value) in table
            .iter()
            .filter(|(name, _)| !also.contains(&name.as_str()))
        {
            if let Ok(entry) = value.clone().try_into::<Entry>() {
                fields.push((name.as_str(), entry));
            } else {
                unread.push(name.clone());
                let fault = Fault::WrongShape { expected: EXPECTED };
                problems.push(Problem::new(name, value.to_string(), fault));
            }
        }
        finish(Tape::from_fields(fields), problems, &unread)
    }

    /// Which population table completes this person.
    #[must_use]
    pub fn sex(&self) -> Sex {
        self.sex
    }

    /// The reading of a measure, in the unit it was written in; `None` when it was not taped.
    #[must_use]
    pub fn reading(&self, measure: BodyMeasure) -> Option<Reading> {
        self.readings.get(&measure).copied()
    }

    /// The taped value with its deviation; `None` when it was not taped.
    #[must_use]
    pub fn get(&self, measure: BodyMeasure) -> Option<Measured> {
        self.readings
            .get(&measure)?
            .measured(measure.tape_sd_cm())
            .ok()
    }

    /// What was taped, in the order of [`BodyMeasure::ALL`].
    pub fn iter(&self) -> impl Iterator<Item = (BodyMeasure, Measured)> + '_ {
        self.readings
            .keys()
            .filter_map(|&m| Some((m, self.get(m)?)))
    }
}

/// Adds what an outer reader found to what an inner one did: a field that could not be read was
/// given, so it is not missing as well.
fn finish(
    inner: Result<Tape, Vec<Problem>>,
    mut outer: Vec<Problem>,
    unread: &[String],
) -> Result<Tape, Vec<Problem>> {
    match inner {
        Ok(tape) if outer.is_empty() => Ok(tape),
        Ok(_) => Err(outer),
        Err(found) => {
            let given = |path: &String| unread.contains(path);
            outer.extend(found.into_iter().filter(|problem| {
                let is_missing =
                    matches!(problem.fault, Fault::Missing | Fault::MissingOneOf { .. });
                !(is_missing && (given(&problem.place) || problem.others().iter().any(given)))
            }));
            Err(outer)
        }
    }
}

fn unknown_population() -> Fault {
    Fault::UnknownChoice {
        allowed: Sex::ALL.iter().map(|s| s.key().to_owned()).collect(),
    }
}

fn unknown_field() -> Fault {
    let keys = BodyMeasure::ALL.iter().map(|m| m.key());
    Fault::UnknownField {
        known: std::iter::once(POPULATION)
            .chain(keys)
            .map(str::to_owned)
            .collect(),
    }
}

impl Serialize for Tape {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(1 + self.readings.len()))?;
        map.serialize_entry(POPULATION, &self.sex)?;
        for (measure, reading) in &self.readings {
            map.serialize_entry(measure.key(), reading)?;
        }
        map.end()
    }
}

impl<'de> Deserialize<'de> for Tape {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Tape, D::Error> {
        let fields = BTreeMap::<String, Entry>::deserialize(deserializer)?;
        let named = fields
            .iter()
            .map(|(name, entry)| (name.as_str(), entry.clone()));
        Tape::from_fields(named).map_err(|problems| {
            let all: Vec<String> = problems.iter().map(Problem::to_string).collect();
            serde::de::Error::custom(all.join("\n"))
        })
    }
}

/// Gathers numbers of centimetres; [`TapeBuilder::build`] checks them all together.
#[derive(Debug, Clone)]
pub struct TapeBuilder {
    sex: Sex,
    readings: BTreeMap<BodyMeasure, Reading>,
    problems: Vec<Problem>,
}

impl TapeBuilder {
    /// A value in centimetres with the usual deviation of the tape. A later entry replaces an earlier one.
    #[must_use]
    pub fn with(self, measure: BodyMeasure, value_cm: f64) -> Self {
        self.insert(measure, value_cm, None)
    }

    /// A value and its deviation, both in centimetres.
    #[must_use]
    pub fn with_sd(self, measure: BodyMeasure, value_cm: f64, sd_cm: f64) -> Self {
        self.insert(measure, value_cm, Some(sd_cm))
    }

    fn insert(mut self, measure: BodyMeasure, value_cm: f64, sd_cm: Option<f64>) -> Self {
        let read = || {
            let length = Length::from_cm(value_cm)?;
            Ok(Reading {
                length,
                unit: Unit::Centimetre,
                sd: sd_cm.map(Length::from_cm).transpose()?,
            })
        };
        match read() {
            Ok(reading) => {
                self.readings.insert(measure, reading);
            }
            Err(why) => {
                let typed = Entry {
                    value: value_cm.to_string(),
                    sd: sd_cm.map(|sd| sd.to_string()),
                };
                self.problems.push(Problem::new(
                    measure.key(),
                    typed.to_string(),
                    Fault::Unreadable(why),
                ));
            }
        }
        self
    }

    /// The checked set.
    ///
    /// # Errors
    /// Every problem at once: those of [`Tape::new`], and [`Fault::Unreadable`] for what is no number.
    pub fn build(self) -> Result<Tape, Vec<Problem>> {
        let unread: Vec<String> = self.problems.iter().map(|p| p.place.clone()).collect();
        finish(Tape::new(self.sex, self.readings), self.problems, &unread)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use BodyMeasure as M;

    fn person() -> TapeBuilder {
        Tape::of(Sex::Women)
            .with(M::Stature, 158.0)
            .with(M::HipGirth, 91.0)
    }

    fn places(problems: &[Problem]) -> Vec<&str> {
        problems.iter().map(|p| p.place.as_str()).collect()
    }

    #[test]
    fn every_wrong_value_is_told_at_once() {
        let problems = person()
            .with(M::HipGirth, 9.0)
            .with(M::WaistHeight, 170.0)
            .with(M::BustGirth, f64::NAN)
            .with_sd(M::WaistGirth, 64.0, -1.0)
            .build()
            .unwrap_err();
        let want = [
            "bust_girth",
            "waist_height",
            "waist_girth.sd",
            "hip_girth",
            "waist_height",
        ];
        assert_eq!(places(&problems), want, "{problems:?}");
    }

    #[test]
    fn a_waist_above_the_crown_is_refused_naming_both_heights() {
        let problems = person()
            .with(M::Stature, 140.0)
            .with(M::WaistHeight, 145.0)
            .build()
            .unwrap_err();
        let said = problems[0].to_string();
        for part in ["waist_height", "145", "stature", "140", "tape both again"] {
            assert!(said.contains(part), "{part} in: {said}");
        }
    }

    #[test]
    fn stature_and_one_hip_girth_are_the_least() {
        assert!(person().build().is_ok());
        assert!(
            Tape::of(Sex::Men)
                .with(M::Stature, 170.0)
                .with(M::FullestGirth, 95.0)
                .build()
                .is_ok()
        );
        let problems = Tape::of(Sex::Women).build().unwrap_err();
        assert_eq!(places(&problems), ["stature", "hip_girth"], "{problems:?}");
    }

    #[test]
    fn the_ends_of_a_range_are_accepted_and_a_hair_beyond_refused() {
        let (low, high) = M::BustGirth.range_cm();
        let hair = 1e-3; // lengths are whole multiples of 1/6600 cm
        for (value, good) in [
            (low, true),
            (high, true),
            (low - hair, false),
            (high + hair, false),
            (f64::INFINITY, false),
        ] {
            assert_eq!(
                person().with(M::BustGirth, value).build().is_ok(),
                good,
                "{value}"
            );
        }
    }

    #[test]
    fn fields_keep_what_was_typed_and_a_garbled_hip_is_not_missing_as_well() {
        let fields = [
            ("stature", "about 160"),
            ("hip_girth", "九十一"),
            ("hips", "91"),
            ("population", "cats"),
            ("bust_girth", " "),
        ];
        let problems = Tape::from_fields(fields.map(|(n, t)| (n, Entry::plain(t)))).unwrap_err();
        assert!(
            problems
                .iter()
                .all(|p| fields.contains(&(p.place.as_str(), p.typed.as_str()))),
            "{problems:?}"
        );
        let wrong = places(&problems);
        for place in ["stature", "hips", "population"] {
            assert_eq!(
                wrong.iter().filter(|p| **p == place).count(),
                1,
                "{place} in {wrong:?}"
            );
        }
        assert!(
            !wrong.contains(&"bust_girth"),
            "an empty field counts as not taped: {wrong:?}"
        );
    }

    #[test]
    fn a_set_comes_back_from_its_file_in_the_units_it_was_written_in() {
        let text = "population = \"women\"\nstature = \"4尺2寸\"\nhip_girth = { value = 91, sd = 1 }\nname = \"invented\"\n";
        let table: toml::Table = toml::from_str(text).unwrap();
        let tape = Tape::from_toml(&table, &["name"]).unwrap();
        assert_eq!(
            tape.reading(M::Stature).map(|r| r.unit),
            Some(Unit::KujiraShaku)
        );
        assert_eq!(tape.get(M::HipGirth).map(Measured::sd_cm), Some(1.0));
        let again: Tape = serde_json::from_str(&serde_json::to_string(&tape).unwrap()).unwrap();
        assert_eq!(again, tape);
        let problems = Tape::from_toml(&table, &[]).unwrap_err();
        assert_eq!(places(&problems), ["name"], "{problems:?}");
    }
}
