//! The demo studio: invented people and garments, read from the data that ships with the program.
//!
//! A small teaching room above a hardware shop, with people of very different builds and garments
//! of which many are second-hand and fit badly. It goes through the same readers as what a dresser
//! enters, so it is also an example of how to write the files.

use serde::{Deserialize, Serialize};

use crate::body::Tape;
use crate::garment::Sheet;
use crate::problem::{Fault, Problem};

const PEOPLE: &str = include_str!("../../../data/demo/people.toml");
const GARMENTS: &str = include_str!("../../../data/demo/garments.toml");

/// The same words in the languages of the program.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Words {
    /// In English.
    pub en: String,
    /// In Japanese.
    pub ja: String,
}

impl Words {
    /// The words in the language of this tag: Japanese for `ja` and `ja-…`, else English.
    pub fn text(&self, language: &str) -> &str {
        match language.split('-').next() {
            Some("ja") => &self.ja,
            _ => &self.en,
        }
    }
}

/// One person of the demo studio.
#[derive(Debug, Clone, PartialEq)]
pub struct DemoPerson {
    /// Short name for links, unique among the people.
    pub key: String,
    /// Name.
    pub name: Words,
    /// What the dresser wrote beside the name.
    pub notes: Words,
    /// What was taped.
    pub tape: Tape,
}

/// One garment of the demo studio.
#[derive(Debug, Clone, PartialEq)]
pub struct DemoGarment {
    /// Short name for links, unique among the garments.
    pub key: String,
    /// Name.
    pub name: Words,
    /// What the dresser wrote beside the name.
    pub notes: Words,
    /// What was measured of it.
    pub sheet: Sheet,
}

/// The people of the demo studio, in the order of the file.
///
/// # Errors
/// As [`read_people`]; a test holds that the shipped file has none.
pub fn people() -> Result<Vec<DemoPerson>, Vec<Problem>> {
    read_people(PEOPLE)
}

/// The garments of the demo studio, in the order of the file.
///
/// # Errors
/// As [`read_garments`]; a test holds that the shipped file has none.
pub fn garments() -> Result<Vec<DemoGarment>, Vec<Problem>> {
    read_garments(GARMENTS)
}

/// Reads people from TOML as the shipped file has it, `[[person]]` tables.
///
/// # Errors
/// All problems of all people, with paths such as `person.3.hip_girth` (counted from 1); one at
/// `person` when the text is no TOML or has no such list.
pub fn read_people(text: &str) -> Result<Vec<DemoPerson>, Vec<Problem>> {
    let read = |table: &toml::Table| Tape::from_toml(table, &HEADING);
    let people = read_each(text, "person", read)?;
    let person = |(Heading { key, name, notes }, tape)| DemoPerson {
        key,
        name,
        notes,
        tape,
    };
    Ok(people.into_iter().map(person).collect())
}

/// Reads garments from TOML as the shipped file has it, `[[garment]]` tables.
///
/// # Errors
/// All problems of all garments, with paths such as `garment.3.ushirohaba` (counted from 1); one
/// at `garment` when the text is no TOML or has no such list.
pub fn read_garments(text: &str) -> Result<Vec<DemoGarment>, Vec<Problem>> {
    let read = |table: &toml::Table| Sheet::from_toml(table, &HEADING);
    let garments = read_each(text, "garment", read)?;
    let garment = |(Heading { key, name, notes }, sheet)| DemoGarment {
        key,
        name,
        notes,
        sheet,
    };
    Ok(garments.into_iter().map(garment).collect())
}

/// The fields before the measures, which the readers of the measures pass over.
const HEADING: [&str; 3] = ["key", "name", "notes"];

struct Heading {
    key: String,
    name: Words,
    notes: Words,
}

/// Reads every table of the list `list`, its heading and its measures, gathering what is wrong
/// with each.
fn read_each<T>(
    text: &str,
    list: &'static str,
    read_measures: impl Fn(&toml::Table) -> Result<T, Vec<Problem>>,
) -> Result<Vec<(Heading, T)>, Vec<Problem>> {
    let file: toml::Table = text.parse().map_err(|_| {
        let fault = Fault::WrongShape { expected: "TOML" };
        vec![Problem::new(list, text, fault)]
    })?;
    let tables = tables(&file, list).ok_or_else(|| {
        let expected = "a list of tables, each under the list's name in double brackets";
        let typed = file.get(list).map_or(String::new(), ToString::to_string);
        vec![Problem::new(list, typed, Fault::WrongShape { expected })]
    })?;
    let mut good = Vec::new();
    let mut problems = Vec::new();
    for (place, table) in tables.into_iter().enumerate() {
        match (read_heading(table), read_measures(table)) {
            (Ok(heading), Ok(measures)) => good.push((heading, measures)),
            (heading, measures) => {
                let prefix = format!("{list}.{}", place + 1);
                let found = heading.err().into_iter().chain(measures.err()).flatten();
                problems.extend(found.map(|problem| problem.within(&prefix)));
            }
        }
    }
    if problems.is_empty() {
        Ok(good)
    } else {
        Err(problems)
    }
}

/// The tables of a list; `None` when it is missing or anything in it is no table.
fn tables<'a>(file: &'a toml::Table, list: &str) -> Option<Vec<&'a toml::Table>> {
    let items = file.get(list)?.as_array()?;
    items.iter().map(toml::Value::as_table).collect()
}

fn read_heading(table: &toml::Table) -> Result<Heading, Vec<Problem>> {
    let mut problems = Vec::new();
    let key = field::<String>(table, "key", "a word", &mut problems);
    let words = "{ en = \"…\", ja = \"…\" }";
    let name = field::<Words>(table, "name", words, &mut problems);
    let notes = field::<Words>(table, "notes", words, &mut problems);
    match (key, name, notes) {
        (Some(key), Some(name), Some(notes)) => Ok(Heading { key, name, notes }),
        _ => Err(problems),
    }
}

fn field<T: serde::de::DeserializeOwned>(
    table: &toml::Table,
    name: &str,
    expected: &'static str,
    problems: &mut Vec<Problem>,
) -> Option<T> {
    let fault = Fault::WrongShape { expected };
    match table.get(name).cloned() {
        None => problems.push(Problem::new(name, "", fault)),
        Some(value) => match value.clone().try_into() {
            Ok(read) => return Some(read),
            Err(_) => problems.push(Problem::new(name, value.to_string(), fault)),
        },
    }
    None
}
