//! What was measured of a garment, as entered, and its way in from text.

use std::collections::BTreeMap;

use serde::ser::SerializeMap;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::{Cloth, Garment, Kind, MitakeFrom, Part};
use crate::measure::{Entry, Reading};
use crate::problem::{Fault, Problem};

/// Deviation of a taped part when none is said, in cm: about half the 5 mm to which a sheet in
/// centimetres is written (chosen).
pub const TAPE_SD_CM: f64 = 0.25;

/// What was measured of one garment: any subset of its parts, each in the unit it was
/// written in.
///
/// Enough to go on are the mitake and one of ushirohaba and maehaba. In files one flat table:
/// `kind`, `cloth`, `mitake_from` and the parts by their keys.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Kind of garment.
    pub kind: Kind,
    /// How its cloth handles.
    pub cloth: Cloth,
    /// Where the mitake was taken from.
    pub mitake_from: MitakeFrom,
    /// The measures that were taken.
    pub parts: BTreeMap<Part, Reading>,
}

/// Names of the fields of a sheet that are no parts.
const CHOICES: [&str; 3] = ["kind", "cloth", "mitake_from"];

impl Sheet {
    /// Reads a sheet from its fields, names and texts in any order.
    ///
    /// `kind` and `mitake_from` must be given, for a length without its datum is off by a sun.
    /// `cloth` may be left out: cotton for a yukata, soft for a long kimono. A part left
    /// empty counts as not measured. Paths in the problems are the bare field names; see
    /// [`Problem::within`].
    ///
    /// # Errors
    /// Every problem of every field at once: [`Fault::UnknownField`], [`Fault::UnknownChoice`],
    /// [`Fault::Unreadable`], [`Fault::Missing`], and for those that could be read what
    /// [`Sheet::complete`] has against them.
    pub fn from_fields<'a>(
        fields: impl IntoIterator<Item = (&'a str, Entry)>,
    ) -> Result<Sheet, Vec<Problem>> {
        let mut problems = Vec::new();
        let mut choices: BTreeMap<&str, String> = BTreeMap::new();
        let mut parts = BTreeMap::new();
        let mut faulty = Vec::new();
        for (name, entry) in fields {
            if CHOICES.contains(&name) {
                choices.insert(name, entry.value);
                continue;
            }
            let Some(part) = part_named(name) else {
                problems.push(unknown_field(name, &entry));
                continue;
            };
            if entry.value.trim().is_empty() && entry.sd.as_deref().unwrap_or("").trim().is_empty()
            {
                continue;
            }
            match entry.read() {
                Ok(reading) => {
                    parts.insert(part, reading);
                }
                Err(why) => {
                    faulty.push(part);
                    let typed = entry.to_string();
                    problems.push(Problem::new(part.key(), typed, Fault::Unreadable(why)));
                }
            }
        }
        let kind = choice(&choices, "kind", Kind::ALL, Kind::key, None, &mut problems);
        let usual_cloth = match kind {
            Some(Kind::Yukata) => Cloth::Cotton,
            _ => Cloth::Soft,
        };
        let cloth = choice(
            &choices,
            "cloth",
            Cloth::ALL,
            Cloth::key,
            Some(usual_cloth),
            &mut problems,
        );
        let mitake_from = choice(
            &choices,
            "mitake_from",
            MitakeFrom::ALL,
            MitakeFrom::key,
            None,
            &mut problems,
        );
        // With a choice unreadable the sheet is checked under the commonest one, so that the
        // faults of its lengths are told in the same breath.
        let sheet = Sheet {
            kind: kind.unwrap_or(Kind::Nagagi),
            cloth: cloth.unwrap_or(usual_cloth),
            mitake_from: mitake_from.unwrap_or(MitakeFrom::Shoulder),
            parts,
        };
        if let Err(found) = sheet.complete() {
            problems.extend(found.into_iter().filter(|problem| {
                let typed_but_unreadable =
                    |path: &str| Part::from_key(path).is_some_and(|part| faulty.contains(&part));
                match &problem.fault {
                    Fault::Missing => !typed_but_unreadable(&problem.place),
                    Fault::MissingOneOf { others } => {
                        !typed_but_unreadable(&problem.place)
                            && !others.iter().any(|path| typed_but_unreadable(path))
                    }
                    _ => true,
                }
            }));
        }
        if problems.is_empty() {
            Ok(sheet)
        } else {
            Err(problems)
        }
    }

    /// The whole garment: what was taped, and the rest by published proportions.
    ///
    /// # Errors
    /// Every problem at once, with bare part names as paths: [`Fault::Missing`] and
    /// [`Fault::MissingOneOf`] when mitake or both body widths are missing,
    /// [`Fault::OutOfRange`] by [`Part::range_cm`], and [`Fault::Contradiction`] naming all
    /// the parts in it.
    pub fn complete(&self) -> Result<Garment, Vec<Problem>> {
        Garment::from_sheet(self)
    }
}

/// The part a field is named after; `tsumashita` is the erishita's other name.
pub(crate) fn part_named(name: &str) -> Option<Part> {
    match name {
        "tsumashita" => Some(Part::Erishita),
        _ => Part::from_key(name),
    }
}

fn unknown_field(name: &str, entry: &Entry) -> Problem {
    let parts = Part::ALL.iter().map(|part| part.key());
    let known = CHOICES.into_iter().chain(parts).map(str::to_owned);
    Problem::new(
        name,
        entry.to_string(),
        Fault::UnknownField {
            known: known.collect(),
        },
    )
}

/// The choice at `name`; `usual` when it was left out, which is a problem if there is none.
fn choice<T: Copy>(
    given: &BTreeMap<&str, String>,
    name: &str,
    all: &[T],
    key: impl Fn(T) -> &'static str,
    usual: Option<T>,
    problems: &mut Vec<Problem>,
) -> Option<T> {
    let typed = given.get(name).map_or("", String::as_str);
    let words = || all.iter().map(|choice| key(*choice).to_owned()).collect();
    if typed.trim().is_empty() {
        if usual.is_none() {
            problems.push(Problem::new(
                name,
                typed,
                Fault::UnknownChoice { allowed: words() },
            ));
        }
        return usual;
    }
    let found = all
        .iter()
        .copied()
        .find(|choice| key(*choice) == typed.trim());
    if found.is_none() {
        problems.push(Problem::new(
            name,
            typed,
            Fault::UnknownChoice { allowed: words() },
        ));
    }
    found
}

impl Serialize for Sheet {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(CHOICES.len() + self.parts.len()))?;
        map.serialize_entry("kind", &self.kind)?;
        map.serialize_entry("cloth", &self.cloth)?;
        map.serialize_entry("mitake_from", &self.mitake_from)?;
        for (part, reading) in &self.parts {
            map.serialize_entry(part.key(), reading)?;
        }
        map.end()
    }
}

impl<'de> Deserialize<'de> for Sheet {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Sheet, D::Error> {
        let fields = BTreeMap::<String, Entry>::deserialize(deserializer)?;
        let named = fields
            .iter()
            .map(|(name, entry)| (name.as_str(), entry.clone()));
        Sheet::from_fields(named).map_err(|problems| {
            let all: Vec<String> = problems.iter().map(Problem::to_string).collect();
            serde::de::Error::custom(all.join("\n"))
        })
    }
}
