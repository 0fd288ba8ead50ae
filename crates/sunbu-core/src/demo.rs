//! The demo studio: invented people and garments, read from the data that ships with the program.
//!
//! A small teaching room above a hardware shop, with people of very different builds and garments
//! of which many are second-hand and fit badly. Measures go through the reader of case files, so
//! the files are also an example of how to write one; only names and notes differ, given here in
//! every language of the program: `name = { en = "…", ja = "…" }`.

use serde::Deserialize;

use crate::case::{Fields, Person, Piece};
use crate::measure::Entry;
use crate::problem::{Fault, Problem};

const PEOPLE: &str = include_str!("../../../data/demo/people.toml");
const GARMENTS: &str = include_str!("../../../data/demo/garments.toml");

/// One person or garment of the demo studio, named in every language of the program.
#[derive(Debug, Clone, PartialEq)]
pub struct Demo<T> {
    /// Short name for links, unique in its list.
    pub key: String,
    /// With name and note in English.
    pub en: T,
    /// With name and note in Japanese, all else the same.
    pub ja: T,
}

impl<T> Demo<T> {
    /// The one in the language of this tag: Japanese for `ja` and `ja-…`, else English.
    pub fn said(&self, language: &str) -> &T {
        match language.split('-').next() {
            Some("ja") => &self.ja,
            _ => &self.en,
        }
    }
}

/// The people of the demo studio, in the order of the file.
///
/// # Errors
/// As [`read_people`]; a test holds that the shipped file has none.
pub fn people() -> Result<Vec<Demo<Person>>, Vec<Problem>> {
    read_people(PEOPLE)
}

/// The garments of the demo studio, in the order of the file.
///
/// # Errors
/// As [`read_garments`]; a test holds that the shipped file has none.
pub fn garments() -> Result<Vec<Demo<Piece>>, Vec<Problem>> {
    read_garments(GARMENTS)
}

/// Reads people from TOML as the shipped file has it, `[[person]]` tables.
///
/// # Errors
/// All problems of all people, with paths such as `person.3.hip_girth` (counted from 1); one at
/// `person` when the text is no TOML or has no such list.
pub fn read_people(text: &str) -> Result<Vec<Demo<Person>>, Vec<Problem>> {
    read_each(text, "person", Person::from_fields)
}

/// Reads garments from TOML as the shipped file has it, `[[garment]]` tables.
///
/// # Errors
/// All problems of all garments, with paths such as `garment.3.ushirohaba` (counted from 1); one
/// at `garment` when the text is no TOML or has no such list.
pub fn read_garments(text: &str) -> Result<Vec<Demo<Piece>>, Vec<Problem>> {
    read_each(text, "garment", Piece::from_fields)
}

/// The same words in the languages of the program.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Words {
    en: String,
    ja: String,
}

/// Reads every table of a list, gathering what is wrong with each.
fn read_each<T>(
    text: &str,
    list: &'static str,
    read: impl Fn(&Fields) -> Result<T, Vec<Problem>>,
) -> Result<Vec<Demo<T>>, Vec<Problem>> {
    let wrong_shape =
        |typed: String, expected| vec![Problem::new(list, typed, Fault::WrongShape { expected })];
    let file: toml::Table = text
        .parse()
        .map_err(|_| wrong_shape(text.to_owned(), "TOML"))?;
    let tables = tables(&file, list).ok_or_else(|| {
        let typed = file.get(list).map_or(String::new(), ToString::to_string);
        wrong_shape(
            typed,
            "a list of tables, each under the list's name in double brackets",
        )
    })?;
    let mut good = Vec::new();
    let mut problems = Vec::new();
    for (place, table) in tables.into_iter().enumerate() {
        match read_one(table, &read) {
            Ok(demo) => good.push(demo),
            Err(found) => {
                let prefix = format!("{list}.{}", place + 1);
                problems.extend(found.into_iter().map(|problem| problem.within(&prefix)));
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

fn read_one<T>(
    table: &toml::Table,
    read: impl Fn(&Fields) -> Result<T, Vec<Problem>>,
) -> Result<Demo<T>, Vec<Problem>> {
    let mut problems = Vec::new();
    let words = "{ en = \"…\", ja = \"…\" }";
    let key = field::<String>(table, "key", "a word", &mut problems);
    let name = field::<Words>(table, "name", words, &mut problems);
    let note = field::<Words>(table, "note", words, &mut problems);
    let mut shared = Fields::new();
    for (field, value) in table {
        if !["key", "name", "note"].contains(&field.as_str()) {
            put(&mut shared, field, value, &mut problems);
        }
    }
    let in_words = |name: &str, note: &str| {
        let mut fields = shared.clone();
        fields.insert("name".into(), name.to_owned());
        fields.insert("note".into(), note.to_owned());
        read(&fields)
    };
    let (Some(key), Some(name), Some(note)) = (key, name, note) else {
        // Named for the reader's sake, so that the faults of the measures are told as well.
        problems.extend(in_words("unnamed", "").err().unwrap_or_default());
        return Err(problems);
    };
    match (in_words(&name.en, &note.en), in_words(&name.ja, &note.ja)) {
        (Ok(en), Ok(ja)) if problems.is_empty() => Ok(Demo { key, en, ja }),
        (en, ja) => {
            // What is wrong in one language alone is its name or note; the rest is shared.
            let found = en.err().or(ja.err()).unwrap_or_default();
            problems.extend(found);
            Err(problems)
        }
    }
}

fn field<T: serde::de::DeserializeOwned>(
    table: &toml::Table,
    name: &str,
    expected: &'static str,
    problems: &mut Vec<Problem>,
) -> Option<T> {
    let fault = Fault::WrongShape { expected };
    match table.get(name) {
        None => problems.push(Problem::new(name, "", fault)),
        Some(value) => match value.clone().try_into() {
            Ok(read) => return Some(read),
            Err(_) => problems.push(Problem::new(name, value.to_string(), fault)),
        },
    }
    None
}

/// A value as the form fields that a person would fill in for it.
fn put(fields: &mut Fields, name: &str, value: &toml::Value, problems: &mut Vec<Problem>) {
    match value.clone().try_into::<Entry>() {
        Ok(entry) => {
            fields.insert(name.to_owned(), entry.value);
            fields.extend(entry.sd.map(|sd| (format!("{name}.sd"), sd)));
        }
        Err(_) => problems.push(Problem::new(
            name,
            value.to_string(),
            Fault::WrongShape {
                expected: "a word, a length, or { value = 161, sd = 0.5 }",
            },
        )),
    }
}
