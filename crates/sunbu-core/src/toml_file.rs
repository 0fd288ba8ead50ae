//! A TOML file that people write: its text, its lines, and every problem of it at once.
//!
//! Case files and marks files are read through it, so that a slip in one is told as in the other.

use std::collections::BTreeSet;
use std::ops::Range;

use toml::Spanned;
use toml::de::{DeFloat, DeInteger, DeTable, DeValue};

use crate::problem::{Fault, Problem};

/// Most problems told of one file; a file with more is none of its kind with slips in it.
pub const MAX_PROBLEMS: usize = 500;

/// The text of a file as it lies on the disk: UTF-8, with or without a byte order mark.
///
/// # Errors
/// [`Fault::TooMuch`] above `most_bytes`, [`Fault::NotText`] for another encoding.
pub(crate) fn text_of(bytes: &[u8], most_bytes: usize) -> Result<&str, Vec<Problem>> {
    let fault = |fault| vec![Problem::new("file", "", fault)];
    if bytes.len() > most_bytes {
        return Err(fault(Fault::TooMuch { most_bytes }));
    }
    match std::str::from_utf8(bytes) {
        Ok(text) if !text.contains('\0') => Ok(text),
        _ => Err(fault(Fault::NotText {
            seems: encoding(bytes),
        })),
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

/// The text of a number as a person would write it; none for what is no number.
pub(crate) fn number(value: &DeValue<'_>) -> Option<String> {
    match value {
        DeValue::Integer(number) => Some(whole(number)),
        DeValue::Float(number) => Some(fraction(number)),
        _ => None,
    }
}

fn whole(number: &DeInteger<'_>) -> String {
    match i64::from_str_radix(number.as_str(), number.radix()) {
        Ok(value) if number.radix() != 10 => value.to_string(),
        // Too many digits for any number: the reader of lengths refuses them as they stand.
        _ => number.as_str().to_owned(),
    }
}

fn fraction(number: &DeFloat<'_>) -> String {
    let text = number.as_str();
    match text.parse::<f64>() {
        // A power of ten is written out; plain digits are kept, so that nothing is rounded twice.
        Ok(value) if value.is_finite() && text.contains(['e', 'E']) => value.to_string(),
        _ => text.to_owned(),
    }
}

/// A file being read.
#[derive(Default)]
pub(crate) struct TomlFile<'a> {
    text: &'a str,
    line_ends: Vec<usize>,
    /// Everything wrong so far.
    pub problems: Vec<Problem>,
    /// Lines, counted from 0, in which the text is no TOML: what stands there was not understood.
    unread: BTreeSet<usize>,
}

impl<'a> TomlFile<'a> {
    /// The file of this text with what could be read of it; lines that are no TOML are problems.
    pub fn read(text: &'a str) -> (Self, Spanned<DeTable<'a>>) {
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let (document, errors) = DeTable::parse_recoverable(text);
        let ends = text.bytes().enumerate().filter(|(_, b)| *b == b'\n');
        let mut file = TomlFile {
            text,
            line_ends: ends.map(|(at, _)| at).collect(),
            ..TomlFile::default()
        };
        for error in &errors {
            if file.problems.len() > MAX_PROBLEMS {
                break;
            }
            file.syntax(error);
        }
        (file, document)
    }

    /// The whole text, without a byte order mark.
    pub fn text(&self) -> &'a str {
        self.text
    }

    /// What stands at these bytes.
    pub fn typed(&self, span: Range<usize>) -> &'a str {
        self.text.get(span).unwrap_or("")
    }

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

    /// The first and the last line of a span. A value that was not understood can have a span
    /// that ends before it starts.
    fn lines(&self, span: &Range<usize>) -> (usize, usize) {
        let first = self.line(span.start.min(span.end));
        (first, self.line(span.start.max(span.end)))
    }

    /// Whether something in these lines was not understood.
    pub fn is_unread(&self, span: &Range<usize>) -> bool {
        let (first, last) = self.lines(span);
        self.unread.range(first..=last).next().is_some()
    }

    /// Keeps a problem, as far as so many are told. What is absent is not told when some lines were
    /// not understood: it may stand there.
    pub fn push(&mut self, problem: Problem) {
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

    /// Whether more is wrong than is told.
    pub fn is_full(&self) -> bool {
        self.problems.len() > MAX_PROBLEMS
    }

    /// Everything wrong; beyond [`MAX_PROBLEMS`] only that there is more.
    pub fn told(mut self) -> Vec<Problem> {
        if self.is_full() {
            self.problems.truncate(MAX_PROBLEMS);
            let fault = Fault::TooManyProblems { told: MAX_PROBLEMS };
            self.problems.push(Problem::new("file", "", fault));
        }
        self.problems
    }
}
