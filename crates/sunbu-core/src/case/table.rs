//! A table of a case file as form fields, with what the text of the file was.

use std::collections::{BTreeMap, BTreeSet};

use toml::de::{DeTable, DeValue};

use super::fields::Fields;
use crate::problem::{Fault, Problem};
use crate::toml_file::number;

/// What a measure may look like.
const LENGTH: &str = "a length such as 161, \"4尺2寸5分\" or { value = 161, sd = 0.5 }";
const TEXT: &str = "a text in quotes";

/// What one table of the file holds.
#[derive(Debug, Default)]
pub(super) struct Given {
    /// Its values as fields.
    pub fields: Fields,
    /// Values as they stand in the file, where that is not the field's text.
    pub raw: BTreeMap<String, String>,
    /// Fields whose value has a shape that no field has.
    pub broken: BTreeSet<String>,
    /// Byte ranges of the fields in the file: name and value.
    pub spans: BTreeMap<String, (usize, usize)>,
    /// What is wrong with the shapes.
    pub problems: Vec<Problem>,
}

impl Given {
    /// Reads a table of the file `source`; `texts` are the fields that take words, not lengths.
    pub(super) fn of(table: &DeTable<'_>, texts: &[&str], source: &str) -> Given {
        let mut given = Given::default();
        for (name, value) in table {
            let span = (name.span().start, value.span().end);
            given.spans.insert(name.get_ref().to_string(), span);
            let name = name.get_ref().as_ref();
            let raw = source.get(value.span()).unwrap_or("");
            match value.get_ref() {
                DeValue::String(text) => {
                    given.fields.insert(name.to_owned(), text.to_string());
                }
                _ if texts.contains(&name) => given.misshapen(name, raw, TEXT),
                DeValue::Table(pair) => given.pair(name, pair, source),
                value => match number(value) {
                    Some(number) => given.put(name, number, raw),
                    None => given.misshapen(name, raw, LENGTH),
                },
            }
        }
        given
    }

    /// A field's text, and how the file has it.
    fn put(&mut self, field: &str, text: String, raw: &str) {
        if text != raw {
            self.raw.insert(field.to_owned(), raw.to_owned());
        }
        self.fields.insert(field.to_owned(), text);
    }

    fn misshapen(&mut self, field: &str, raw: &str, expected: &'static str) {
        self.broken.insert(field.to_owned());
        self.problems
            .push(Problem::new(field, raw, Fault::WrongShape { expected }));
    }

    /// A value with its deviation.
    fn pair(&mut self, name: &str, pair: &DeTable<'_>, source: &str) {
        for (part, value) in pair {
            let raw = source.get(value.span()).unwrap_or("");
            let field = match part.get_ref().as_ref() {
                "value" => name.to_owned(),
                "sd" => format!("{name}.sd"),
                other => {
                    let known = vec!["value".to_owned(), "sd".to_owned()];
                    let place = format!("{name}.{other}");
                    self.problems
                        .push(Problem::new(place, raw, Fault::UnknownField { known }));
                    continue;
                }
            };
            match value.get_ref() {
                DeValue::String(text) => {
                    self.fields.insert(field, text.to_string());
                }
                value => match number(value) {
                    Some(number) => self.put(&field, number, raw),
                    None => {
                        self.broken.insert(name.to_owned());
                        self.misshapen(&field, raw, "a length such as 161 or \"4尺2寸5分\"");
                    }
                },
            }
        }
        if !self.fields.contains_key(name) && !self.broken.contains(name) {
            self.broken.insert(name.to_owned());
            let place = format!("{name}.value");
            self.problems.push(Problem::new(place, "", Fault::Missing));
        }
    }

    /// Problems found in the fields, with the texts of the file.
    pub(super) fn told(&self, mut problem: Problem) -> Problem {
        if let Some(raw) = self.raw.get(&problem.place) {
            problem.typed.clone_from(raw);
        }
        problem
    }
}
