//! Reading a case file: bytes, text, tables, and every problem of all of them.

use std::collections::BTreeSet;

use toml::de::{DeTable, DeValue};

use super::fields::{Fields, Reader, SHAKU};
use super::locks::locks;
use super::table::Given;
use super::{CaseFile, Person, Piece};
use crate::dressing::{Locks, Occasion, Standard, StandardError};
use crate::problem::{Fault, Problem};
use crate::toml_file::{TomlFile, text_of};

/// Most bytes of a case file that are read: some ten thousand garments. Chosen, so that a wrong
/// file is refused before anything is made of it.
pub const MAX_CASE_BYTES: usize = 4 * 1024 * 1024;

/// The fields of the file itself.
const TOP: [&str; 8] = [
    "occasion", SHAKU, "person", "garment", "garments", "dressing", "dresser", "standard",
];

/// Fields of the tables that take words.
const WORDS: [&str; 6] = ["name", "sex", "note", "kind", "cloth", "mitake_from"];

const TABLE: &str = "a table, headed [like this]";
const TABLES: &str = "tables, each headed [[garments]]";

impl CaseFile {
    /// Reads a case file as it lies on the disk: UTF-8, with or without a byte order mark.
    ///
    /// # Errors
    /// As [`CaseFile::parse`], and [`Fault::NotText`] for another encoding.
    pub fn parse_bytes(bytes: &[u8]) -> Result<CaseFile, Vec<Problem>> {
        CaseFile::parse(text_of(bytes, MAX_CASE_BYTES)?)
    }

    /// Reads a case from its TOML text.
    ///
    /// # Errors
    /// Every problem at once, each at its dotted place (`person.hip_girth`, `garments.2.mitake`,
    /// counted from 1): [`Fault::Form`] where the text is no TOML, else as [`Person::from_fields`],
    /// [`Piece::from_fields`] and [`super::read_locks`] tell them. Beyond [`super::MAX_PROBLEMS`] only
    /// that there are more.
    pub fn parse(text: &str) -> Result<CaseFile, Vec<Problem>> {
        if text.len() > MAX_CASE_BYTES {
            let fault = Fault::TooMuch {
                most_bytes: MAX_CASE_BYTES,
            };
            return Err(vec![Problem::new("file", "", fault)]);
        }
        let (mut file, document) = TomlFile::read(text);
        let case = Case { file: &mut file }.case(document.get_ref());
        match case {
            Some(case) if file.problems.is_empty() => Ok(case),
            _ => Err(file.told()),
        }
    }
}

/// A case being read out of its file.
struct Case<'f, 'a> {
    file: &'f mut TomlFile<'a>,
}

impl Case<'_, '_> {
    fn case(&mut self, document: &DeTable<'_>) -> Option<CaseFile> {
        let words = self.words(document);
        let mut top = Reader::new(&words.fields, &words.broken);
        let occasions: Vec<_> = Occasion::ALL.iter().map(|o| (o.key(), *o)).collect();
        let occasion = top.choice("occasion", &occasions, None);
        let found = top
            .problems()
            .into_iter()
            .map(|problem| words.told(problem));
        self.take(found.collect(), &words, "");
        let shaku = words.fields.get(SHAKU);
        let person = self.one(document, "person", shaku, Person::read);
        if person.is_none() && !document.contains_key("person") {
            self.file.push(Problem::new("person", "", Fault::Missing));
        }
        let garments = self.garments(document, shaku);
        let locks = match document.contains_key("dressing") {
            true => self.one(document, "dressing", shaku, locks),
            false => Some(Locks::new()),
        };
        let dresser = match document.contains_key("dresser") {
            true => self.one(document, "dresser", shaku, Person::read).map(Some),
            false => Some(None),
        };
        let standard = self.standard(document);
        Some(CaseFile {
            person: person?,
            garments,
            occasion: occasion?,
            locks: locks?,
            dresser: dresser?,
            standard: standard?,
        })
    }

    /// The words at the top of the file; what is unknown there is a problem.
    fn words(&mut self, document: &DeTable<'_>) -> Given {
        let mut words = Given::of(
            &document
                .iter()
                .filter(|(name, _)| ["occasion", SHAKU].contains(&name.get_ref().as_ref()))
                .map(|(name, value)| (name.clone(), value.clone()))
                .collect(),
            &["occasion", SHAKU],
            self.file.text(),
        );
        let found = std::mem::take(&mut words.problems);
        self.take(found, &words, "");
        for (name, value) in document {
            if !TOP.contains(&name.get_ref().as_ref()) && !self.file.is_unread(&name.span()) {
                let known = TOP.iter().map(|name| (*name).to_owned()).collect();
                let typed = self.file.typed(value.span());
                let place = name.get_ref().as_ref();
                self.file
                    .push(Problem::new(place, typed, Fault::UnknownField { known }));
            }
        }
        words
    }

    /// What `read` makes of the table of this name; `None` when it is not there or has problems.
    fn one<T>(
        &mut self,
        document: &DeTable<'_>,
        name: &str,
        shaku: Option<&String>,
        read: impl Fn(&Fields, &BTreeSet<String>) -> Result<T, Vec<Problem>>,
    ) -> Option<T> {
        let value = document.get(name)?;
        let DeValue::Table(table) = value.get_ref() else {
            let typed = self.file.typed(value.span());
            self.file.push(Problem::new(
                name,
                typed,
                Fault::WrongShape { expected: TABLE },
            ));
            return None;
        };
        self.table(table, name, shaku, read)
    }

    fn table<T>(
        &mut self,
        table: &DeTable<'_>,
        place: &str,
        shaku: Option<&String>,
        read: impl Fn(&Fields, &BTreeSet<String>) -> Result<T, Vec<Problem>>,
    ) -> Option<T> {
        let mut given = Given::of(table, &WORDS, self.file.text());
        let mut problems = std::mem::take(&mut given.problems);
        if let Some(shaku) = shaku {
            given
                .fields
                .entry(SHAKU.to_owned())
                .or_insert_with(|| shaku.clone());
        }
        let read = read(&given.fields, &given.broken);
        let sound = problems.is_empty() && read.is_ok();
        let read = match read {
            Ok(read) => Some(read),
            Err(found) => {
                // A wrong word at the top of the file is told there.
                let told_above = |p: &Problem| p.place == SHAKU && !given.spans.contains_key(SHAKU);
                let found = found.into_iter().filter(|p| !told_above(p));
                problems.extend(found.map(|problem| given.told(problem)));
                None
            }
        };
        self.take(problems, &given, place);
        read.filter(|_| sound)
    }

    fn garments(&mut self, document: &DeTable<'_>, shaku: Option<&String>) -> Vec<Piece> {
        let mut garments = Vec::new();
        if document.contains_key("garment") {
            garments.extend(self.one(document, "garment", shaku, Piece::read));
        }
        let Some(value) = document.get("garments") else {
            if !document.contains_key("garment") {
                let others = vec!["garments".to_owned()];
                self.file
                    .push(Problem::new("garment", "", Fault::MissingOneOf { others }));
            }
            return garments;
        };
        let typed = self.file.typed(value.span());
        if document.contains_key("garment") {
            let fault = Fault::Contradiction {
                code: "garment-and-garments",
                english: "write one [garment] or several [[garments]], not both",
                args: Vec::new(),
                other: vec!["garment".to_owned()],
            };
            self.file.push(Problem::new("garments", typed, fault));
        }
        let tables = match value.get_ref() {
            DeValue::Array(tables) if !tables.is_empty() => tables,
            _ => {
                let fault = Fault::WrongShape { expected: TABLES };
                self.file.push(Problem::new("garments", typed, fault));
                return garments;
            }
        };
        for (at, value) in tables.iter().enumerate() {
            if self.file.is_full() {
                break;
            }
            let place = format!("garments.{}", at + 1);
            if let DeValue::Table(table) = value.get_ref() {
                garments.extend(self.table(table, &place, shaku, Piece::read));
            } else {
                let typed = self.file.typed(value.span());
                self.file.push(Problem::new(
                    place,
                    typed,
                    Fault::WrongShape { expected: TABLES },
                ));
            }
        }
        garments
    }

    /// The standard in the file; `Some(None)` when there is none.
    fn standard(&mut self, document: &DeTable<'_>) -> Option<Option<Standard>> {
        if !document.contains_key("standard") {
            return Some(None);
        }
        // A standard reads itself from its own text, which its table in the file is not.
        let mut file: toml::Table = match toml::from_str(self.file.text()) {
            Ok(file) => file,
            Err(_) => return None, // told already, line by line
        };
        let text = match file.remove("standard") {
            Some(toml::Value::Table(table)) => table.to_string(),
            other => {
                let typed = other.map(|value| value.to_string()).unwrap_or_default();
                let fault = Fault::WrongShape { expected: TABLE };
                self.file.push(Problem::new("standard", typed, fault));
                return None;
            }
        };
        match Standard::parse(&text) {
            Ok(standard) => Some(Some(standard)),
            Err(error) => {
                match error {
                    StandardError::Values(problems) => {
                        for problem in problems {
                            self.file.push(problem.within("standard"));
                        }
                    }
                    // Before its last line it quotes a text that the dresser did not write.
                    StandardError::Form(why) => {
                        let why = why.lines().last().unwrap_or_default().to_owned();
                        self.file
                            .push(Problem::new("standard", "", Fault::Form { why }));
                    }
                }
                None
            }
        }
    }

    /// Problems of one table, without those that only say that a line was not understood.
    fn take(&mut self, problems: Vec<Problem>, given: &Given, place: &str) {
        for problem in problems {
            let others = match &problem.fault {
                Fault::Contradiction { other, .. } => other.as_slice(),
                _ => &[],
            };
            let told = others.iter().chain([&problem.place]).any(|path| {
                let field = path.strip_suffix(".sd").unwrap_or(path);
                given
                    .spans
                    .get(field)
                    .is_some_and(|&(start, end)| self.file.is_unread(&(start..end)))
            });
            if !told {
                let under_a_table = !place.is_empty();
                self.file.push(if under_a_table {
                    problem.within(place)
                } else {
                    problem
                });
            }
        }
    }
}
