//! Form fields: what was typed, by name, and the reading of it that people, pieces and locks share.
//!
//! A web form gives its fields as they are; a case file's table is turned into the same fields
//! first. So there is one reader, and a fault reads the same in both places.

use std::collections::{BTreeMap, BTreeSet};

use super::MAX_PROBLEMS;
use crate::measure::{
    Notation, Reading, Script, Shaku, Written, parse_length, parse_signed_length,
};
use crate::problem::{Fault, Problem};

/// Field name to text as typed. A deviation stands at `<measure>.sd`.
///
/// Fields of the page that are not of the thing itself (a revision, a token) are to be taken out
/// before: an unknown name is a problem.
pub type Fields = BTreeMap<String, String>;

/// Most characters of a name. Chosen: a full name with title in any script, and still one line.
pub const MAX_NAME_CHARS: usize = 80;

/// Most characters of a note. Chosen: about a printed page.
pub const MAX_NOTE_CHARS: usize = 2000;

/// The field that says which shaku a bare 尺 is, kujira when it is left out.
pub(super) const SHAKU: &str = "shaku";

/// Reads one entry field by field and gathers what is wrong with it.
pub(super) struct Reader<'a> {
    fields: &'a Fields,
    shaku: Shaku,
    broken: BTreeSet<String>,
    /// Field name by key, for measures given under another name than their key.
    other_names: BTreeMap<&'static str, String>,
    problems: Vec<Problem>,
}

impl<'a> Reader<'a> {
    /// A reader of these fields. `broken` names fields that were given in a shape no text has, so
    /// that they are not also told to be missing.
    pub(super) fn new(fields: &'a Fields, broken: &BTreeSet<String>) -> Reader<'a> {
        let mut reader = Reader {
            fields,
            shaku: Shaku::Kujira,
            broken: broken.clone(),
            other_names: BTreeMap::new(),
            problems: Vec::new(),
        };
        let choices = [("kujira", Shaku::Kujira), ("kane", Shaku::Kane)];
        if let Some(shaku) = reader.choice(SHAKU, &choices, Some(Shaku::Kujira)) {
            reader.shaku = shaku;
        }
        reader
    }

    /// The text of a field, empty when it was not given.
    fn text(&self, name: &str) -> &'a str {
        self.fields.get(name).map_or("", String::as_str)
    }

    pub(super) fn push(&mut self, problem: Problem) {
        self.problems.push(problem);
    }

    /// A field of free text on one line; it must be given.
    pub(super) fn name(&mut self, field: &str) -> String {
        let typed = self.text(field);
        let name = typed.trim();
        if name.is_empty() {
            self.push(Problem::new(field, typed, Fault::Missing));
        } else if name.chars().count() > MAX_NAME_CHARS || name.chars().any(unprintable) {
            let fault = Fault::BadText {
                most_chars: MAX_NAME_CHARS,
                lines: false,
            };
            self.push(Problem::new(field, typed, fault));
        }
        name.to_owned()
    }

    /// A field of free text on any number of lines; it may be left out. Lines end in `\n`.
    pub(super) fn note(&mut self, field: &str) -> String {
        let typed = self.text(field);
        let note = typed.trim_end().replace("\r\n", "\n");
        let bad = |c| unprintable(c) && c != '\n' && c != '\t';
        if note.chars().count() > MAX_NOTE_CHARS || note.chars().any(bad) {
            let fault = Fault::BadText {
                most_chars: MAX_NOTE_CHARS,
                lines: true,
            };
            self.push(Problem::new(field, typed, fault));
        }
        note
    }

    /// A field that takes one of a few words; `usual` when it was left out.
    pub(super) fn choice<T: Copy>(
        &mut self,
        field: &str,
        choices: &[(&'static str, T)],
        usual: Option<T>,
    ) -> Option<T> {
        let typed = self.text(field);
        let word = typed.trim();
        if word.is_empty() && usual.is_some() {
            return usual;
        }
        let found = choices.iter().find(|(key, _)| *key == word);
        if found.is_none() {
            let allowed = choices.iter().map(|(key, _)| (*key).to_owned()).collect();
            self.push(Problem::new(field, typed, Fault::UnknownChoice { allowed }));
        }
        found.map(|(_, value)| *value)
    }

    /// The fields that are none of `words` as measures, each under the key its name stands for.
    ///
    /// A measure left empty counts as not taken. What cannot be read is a problem and left out.
    pub(super) fn readings<K: Copy + Ord>(
        &mut self,
        words: &[&'static str],
        all: impl IntoIterator<Item = K>,
        key: impl Fn(K) -> &'static str,
        from_key: impl Fn(&str) -> Option<K>,
    ) -> BTreeMap<K, Reading> {
        let mut readings = BTreeMap::new();
        let mut named: BTreeMap<K, &str> = BTreeMap::new();
        let mut unknown = Vec::new();
        for (field, typed) in self.fields {
            let (name, is_sd) = match field.strip_suffix(".sd") {
                Some(name) => (name, true),
                None => (field.as_str(), false),
            };
            if !is_sd && (words.contains(&name) || name == SHAKU) {
                continue;
            }
            let Some(measure) = from_key(name) else {
                unknown.push(Problem::new(field, typed, Fault::Missing));
                continue;
            };
            if is_sd {
                let value = self.text(name);
                if value.trim().is_empty()
                    && !typed.trim().is_empty()
                    && !self.broken.contains(name)
                {
                    self.problems
                        .push(Problem::new(name, value, Fault::Missing));
                }
                continue;
            }
            let sd = self.text(&format!("{name}.sd"));
            if name != key(measure) {
                self.other_names.insert(key(measure), name.to_owned());
            }
            if let Some(reading) = self.reading(name, typed, sd) {
                if let Some(other) = named.insert(measure, name) {
                    self.push(Problem::new(name, typed, given_twice(other)));
                }
                readings.insert(measure, reading);
            }
        }
        if !unknown.is_empty() {
            let known: Vec<String> = words
                .iter()
                .copied()
                .chain(all.into_iter().map(key))
                .map(str::to_owned)
                .collect();
            // Garbage has endless names, and every one would carry the list of the known ones.
            self.problems
                .extend(unknown.into_iter().take(MAX_PROBLEMS).map(|problem| {
                    let fault = Fault::UnknownField {
                        known: known.clone(),
                    };
                    Problem { fault, ..problem }
                }));
        }
        readings
    }

    /// One measure with its deviation; `None` when it was left empty or cannot be read.
    fn reading(&mut self, name: &str, typed: &str, typed_sd: &str) -> Option<Reading> {
        if typed.trim().is_empty() {
            return None;
        }
        let value = self.length(name, name, typed);
        let sd = match typed_sd.trim() {
            "" => Some(None),
            _ => self
                .length(&format!("{name}.sd"), name, typed_sd)
                .map(|sd| Some(sd.length)),
        };
        let (Written { length, unit }, sd) = (value?, sd?);
        Some(Reading { length, unit, sd })
    }

    /// The length at `field`, which belongs to the measure `name`.
    fn length(&mut self, field: &str, name: &str, typed: &str) -> Option<Written> {
        match parse_length(typed, self.shaku) {
            Ok(written) => Some(written),
            Err(why) => {
                self.broken.insert(name.to_owned());
                self.push(Problem::new(field, typed, Fault::Unreadable(why)));
                None
            }
        }
    }

    /// The length at a field, in centimetres; it may be below zero.
    ///
    /// A plain number is taken to the last digit, so that a planned value comes back unchanged.
    pub(super) fn signed_cm(&mut self, field: &str, typed: &str) -> Option<f64> {
        if let Some(cm) = typed.trim().parse().ok().filter(|cm: &f64| cm.is_finite()) {
            return Some(cm);
        }
        match parse_signed_length(typed, self.shaku) {
            Ok(written) => Some(written.length.cm()),
            Err(why) => {
                self.push(Problem::new(field, typed, Fault::Unreadable(why)));
                None
            }
        }
    }

    /// The fields that are decisions or ought to be.
    pub(super) fn decisions(&self) -> impl Iterator<Item = (&'a str, &'a str)> + use<'a> {
        let fields = self
            .fields
            .iter()
            .filter(|(field, _)| field.as_str() != SHAKU);
        fields.map(|(field, typed)| (field.as_str(), typed.as_str()))
    }

    /// What the whole has against itself, told with the texts that were typed.
    pub(super) fn found(&mut self, problems: Vec<Problem>) {
        for problem in problems {
            let mut problem = problem.renamed(|path| self.as_given(path));
            if let Some(typed) = self.fields.get(&problem.place) {
                problem.typed.clone_from(typed);
            }
            self.push(problem);
        }
    }

    /// The path of a field under the name it was given by.
    fn as_given(&self, path: &str) -> String {
        let (key, sd) = match path.strip_suffix(".sd") {
            Some(key) => (key, ".sd"),
            None => (path, ""),
        };
        self.other_names
            .get(key)
            .map_or_else(|| path.to_owned(), |name| format!("{name}{sd}"))
    }

    /// Everything wrong, without what is only the echo of a field that could not be read or is
    /// itself out of range.
    pub(super) fn problems(self) -> Vec<Problem> {
        let Reader {
            problems, broken, ..
        } = self;
        let out_of_range: BTreeSet<String> = problems
            .iter()
            .filter(|problem| matches!(problem.fault, Fault::OutOfRange { .. }))
            .map(|problem| problem.place.clone())
            .collect();
        let echo = |problem: &Problem| {
            let among = |set: &BTreeSet<String>, others: &[String]| {
                set.contains(&problem.place) || others.iter().any(|path| set.contains(path))
            };
            match &problem.fault {
                Fault::Missing => among(&broken, &[]),
                Fault::MissingOneOf { others } => among(&broken, others),
                Fault::UnknownChoice { .. } => problem.typed.is_empty() && among(&broken, &[]),
                Fault::Contradiction { other, .. } => {
                    among(&broken, other) || among(&out_of_range, other)
                }
                _ => false,
            }
        };
        problems
            .into_iter()
            .filter(|problem| !echo(problem))
            .collect()
    }
}

/// The choices of a field with their words.
pub(super) fn keyed<T: Copy>(all: &[T], key: impl Fn(T) -> &'static str) -> Vec<(&'static str, T)> {
    all.iter().map(|&choice| (key(choice), choice)).collect()
}

/// The same measure given under both of its names.
fn given_twice(other: &str) -> Fault {
    Fault::Contradiction {
        code: "given-twice",
        english: "this is another name of a measure that is given too; leave one of them out",
        args: Vec::new(),
        other: vec![other.to_owned()],
    }
}

/// Whether a character has no place in a line of text: controls, line separators, and the marks
/// that turn the direction of what follows them.
fn unprintable(c: char) -> bool {
    c.is_control() || matches!(c, '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// Writes a reading into fields, so that it is read back the same.
pub(super) fn put(fields: &mut Fields, key: &str, reading: Reading, script: Script) {
    let notation = Notation::exact(script);
    fields.insert(key.to_owned(), reading.written().text(notation));
    if let Some(sd) = reading.sd {
        fields.insert(format!("{key}.sd"), Written::in_cm(sd).text(notation));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_that_turn_the_direction_of_a_page_are_no_text() {
        for c in ['\0', '\u{7f}', '\u{85}', '\u{202e}', '\u{2066}', '\u{2028}'] {
            assert!(unprintable(c), "{c:?}");
        }
        // A variation selector chooses the form of a kanji in many a family name.
        for c in ['あ', ' ', '\u{3000}', '\u{e0100}', '葛', '\u{200d}'] {
            assert!(!unprintable(c), "{c:?}");
        }
    }
}
