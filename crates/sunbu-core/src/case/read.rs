//! Reading a case file: bytes, text, tables, and every problem of all of them.

use std::collections::BTreeSet;
use std::ops::Range;

use toml::de::{DeTable, DeValue};

use super::fields::{Fields, Reader, SHAKU};
use super::locks::locks;
use super::table::Given;
use super::{CaseFile, Person, Piece};
use crate::dressing::{Locks, Occasion, Standard, StandardError};
use crate::problem::{Fault, Problem};

/// Most bytes of a case file that are read: some ten thousand garments. Chosen, so that a wrong
/// file is refused before anything is made of it.
pub const MAX_CASE_BYTES: usize = 4 * 1024 * 1024;

/// Most problems told of one file; a file with more is not a case file with slips in it.
pub const MAX_PROBLEMS: usize = 500;

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
        let fault = |fault| vec![Problem::new("file", "", fault)];
        if bytes.len() > MAX_CASE_BYTES {
            return Err(fault(Fault::TooMuch {
                most_bytes: MAX_CASE_BYTES,
            }));
        }
        match std::str::from_utf8(bytes) {
            Ok(text) if !text.contains('\0') => CaseFile::parse(text),
            _ => Err(fault(Fault::NotText {
                seems: encoding(bytes),
            })),
        }
    }

    /// Reads a case from its TOML text.
    ///
    /// # Errors
    /// Every problem at once, each at its dotted place (`person.hip_girth`, `garments.2.mitake`,
    /// counted from 1): [`Fault::Form`] where the text is no TOML, else as [`Person::from_fields`],
    /// [`Piece::from_fields`] and [`super::read_locks`] tell them. Beyond [`MAX_PROBLEMS`] only
    /// that there are more.
    pub fn parse(text: &str) -> Result<CaseFile, Vec<Problem>> {
        if text.len() > MAX_CASE_BYTES {
            let fault = Fault::TooMuch {
                most_bytes: MAX_CASE_BYTES,
            };
            return Err(vec![Problem::new("file", "", fault)]);
        }
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let (document, errors) = DeTable::parse_recoverable(text);
        let line_ends = text
            .bytes()
            .enumerate()
            .filter(|(_, b)| *b == b'\n')
            .map(|(at, _)| at);
        let mut file = File {
            text,
            line_ends: line_ends.collect(),
            ..File::default()
        };
        for error in &errors {
            if file.problems.len() > MAX_PROBLEMS {
                break;
            }
            file.syntax(error);
        }
        let case = file.case(document.get_ref());
        match case {
            Some(case) if file.problems.is_empty() => Ok(case),
            _ => Err(file.told()),
        }
    }
}

/// What bytes that are not UTF-8 seem to be.
fn encoding(bytes: &[u8]) -> &'static str {
    match bytes {
        [0xff, 0xfe, ..] | [0xfe, 0xff, ..] => "UTF-16",
        _ if bytes.contains(&0) => "no text at all",
        _ => "another encoding, such as Shift JIS",
    }
}

/// A file being read.
#[derive(Default)]
struct File<'a> {
    text: &'a str,
    line_ends: Vec<usize>,
    problems: Vec<Problem>,
    /// Lines, counted from 0, in which the text is no TOML: what stands there was not understood.
    unread: BTreeSet<usize>,
}

impl File<'_> {
    /// A place where the text is no TOML.
    fn syntax(&mut self, error: &toml::de::Error) {
        let end = self.text.len();
        let span = error.span().unwrap_or(end..end);
        let (first, last) = self.lines(&span);
        self.unread.extend(first..=last);
        let start = first
            .checked_sub(1)
            .map_or(0, |line| self.line_ends[line] + 1);
        let stop = self.line_ends.get(first).copied().unwrap_or(end);
        let typed = self.text.get(start..stop).unwrap_or("").trim();
        let said: Vec<&str> = error.message().lines().map(str::trim).collect();
        let said = said.join(", ");
        let why = format!("{said}; a text needs quotes, a table its [brackets]");
        let place = format!("line {}", first + 1);
        // One line can hold several errors that have the same cause.
        if self.problems.last().is_none_or(|last| last.place != place) {
            self.problems
                .push(Problem::new(place, typed, Fault::Form { why }));
        }
    }

    /// The line a byte is in, counted from 0.
    fn line(&self, byte: usize) -> usize {
        self.line_ends.partition_point(|end| *end < byte)
    }

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
            self.push(Problem::new("person", "", Fault::Missing));
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
            self.text,
        );
        let found = std::mem::take(&mut words.problems);
        self.take(found, &words, "");
        for (name, value) in document {
            if !TOP.contains(&name.get_ref().as_ref()) && !self.is_unread(&name.span()) {
                let known = TOP.iter().map(|name| (*name).to_owned()).collect();
                let typed = self.text.get(value.span()).unwrap_or("");
                let place = name.get_ref().as_ref();
                self.push(Problem::new(place, typed, Fault::UnknownField { known }));
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
            let typed = self.text.get(value.span()).unwrap_or("");
            self.push(Problem::new(
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
        let mut given = Given::of(table, &WORDS, self.text);
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
                self.push(Problem::new("garment", "", Fault::MissingOneOf { others }));
            }
            return garments;
        };
        let typed = || self.text.get(value.span()).unwrap_or("").to_owned();
        if document.contains_key("garment") {
            let fault = Fault::Contradiction {
                code: "garment-and-garments",
                english: "write one [garment] or several [[garments]], not both",
                args: Vec::new(),
                other: vec!["garment".to_owned()],
            };
            let typed = typed();
            self.push(Problem::new("garments", typed, fault));
        }
        let tables = match value.get_ref() {
            DeValue::Array(tables) if !tables.is_empty() => tables,
            _ => {
                let fault = Fault::WrongShape { expected: TABLES };
                let typed = typed();
                self.push(Problem::new("garments", typed, fault));
                return garments;
            }
        };
        for (at, value) in tables.iter().enumerate() {
            if self.problems.len() > MAX_PROBLEMS {
                break;
            }
            let place = format!("garments.{}", at + 1);
            if let DeValue::Table(table) = value.get_ref() {
                garments.extend(self.table(table, &place, shaku, Piece::read));
            } else {
                let typed = self.text.get(value.span()).unwrap_or("");
                self.push(Problem::new(
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
        let mut file: toml::Table = match toml::from_str(self.text) {
            Ok(file) => file,
            Err(_) => return None, // told already, line by line
        };
        let text = match file.remove("standard") {
            Some(toml::Value::Table(table)) => table.to_string(),
            other => {
                let typed = other.map(|value| value.to_string()).unwrap_or_default();
                let fault = Fault::WrongShape { expected: TABLE };
                self.push(Problem::new("standard", typed, fault));
                return None;
            }
        };
        match Standard::parse(&text) {
            Ok(standard) => Some(Some(standard)),
            Err(error) => {
                match error {
                    StandardError::Values(problems) => {
                        for problem in problems {
                            self.push(problem.within("standard"));
                        }
                    }
                    // Before its last line it quotes a text that the dresser did not write.
                    StandardError::Form(why) => {
                        let why = why.lines().last().unwrap_or_default().to_owned();
                        self.push(Problem::new("standard", "", Fault::Form { why }));
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
                    .is_some_and(|&(start, end)| self.is_unread(&(start..end)))
            });
            if !told {
                let under_a_table = !place.is_empty();
                self.push(if under_a_table {
                    problem.within(place)
                } else {
                    problem
                });
            }
        }
    }

    /// The first and the last line of a span. A value that was not understood can have a span
    /// that ends before it starts.
    fn lines(&self, span: &Range<usize>) -> (usize, usize) {
        let first = self.line(span.start.min(span.end));
        (first, self.line(span.start.max(span.end)))
    }

    fn is_unread(&self, span: &Range<usize>) -> bool {
        let (first, last) = self.lines(span);
        self.unread.range(first..=last).next().is_some()
    }

    /// What is absent is not told when some lines were not understood: it may stand there.
    fn push(&mut self, problem: Problem) {
        let absence = match problem.fault {
            Fault::Missing | Fault::MissingOneOf { .. } => true,
            Fault::UnknownChoice { .. } => problem.typed.is_empty(),
            _ => false,
        };
        let may_stand_there = absence && !self.unread.is_empty();
        if !may_stand_there && self.problems.len() <= MAX_PROBLEMS {
            self.problems.push(problem);
        }
    }

    fn told(mut self) -> Vec<Problem> {
        if self.problems.len() > MAX_PROBLEMS {
            self.problems.truncate(MAX_PROBLEMS);
            let fault = Fault::TooManyProblems { told: MAX_PROBLEMS };
            self.problems.push(Problem::new("file", "", fault));
        }
        self.problems
    }
}
