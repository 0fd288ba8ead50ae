//! What is wrong with an entry: which field, what was typed, what is allowed, the way out.
//!
//! Bodies, garments and case files all report faults in this one shape, every fault of an
//! entry at once. The core speaks plain English; `Problem::code` is the key (a Fluent message
//! id) by which a page says the same thing in another language.

use std::fmt;

use serde::ser::SerializeStruct;
use serde::{Serialize, Serializer};

use crate::measure::LengthError;

/// One fault of an entry, with the text that was typed.
#[derive(Debug, Clone, PartialEq)]
pub struct Problem {
    /// Dotted path of the field, e.g. `garment.ushirohaba`.
    pub place: String,
    /// What stood there, as it was typed; empty when nothing was.
    pub typed: String,
    /// What is wrong with it.
    pub fault: Fault,
}

/// What can be wrong with one field.
#[derive(Debug, Clone, PartialEq)]
pub enum Fault {
    /// The field must be given and was not.
    Missing,
    /// This field or one of `others` must be given and none was.
    MissingOneOf {
        /// Paths of the other fields that would do instead.
        others: Vec<String>,
    },
    /// The text is not a length.
    Unreadable(LengthError),
    /// The value has another shape than the field takes, e.g. a list where a length belongs, or
    /// nothing was given.
    WrongShape {
        /// What the field takes, in words, e.g. `a length such as 161 or "4尺2寸5分"`.
        expected: &'static str,
    },
    /// A readable length that no real one reaches.
    OutOfRange {
        /// Lowest value allowed, in centimetres.
        low_cm: f64,
        /// Highest value allowed, in centimetres.
        high_cm: f64,
    },
    /// A number that is no length, outside what is possible.
    NumberOutOfRange {
        /// Lowest value allowed.
        low: f64,
        /// Highest value allowed.
        high: f64,
        /// Its unit, e.g. `px`; empty for a plain number.
        unit: &'static str,
    },
    /// Values that are each possible but not together.
    Contradiction {
        /// Short name of the contradiction, e.g. `yuki-split`.
        code: &'static str,
        /// The sentence in English; `{name}` stands for the argument of that name.
        english: &'static str,
        /// The numbers in it, in centimetres.
        args: Vec<(&'static str, f64)>,
        /// Paths of the other fields involved.
        other: Vec<String>,
    },
    /// No field of this name exists here.
    UnknownField {
        /// The names that exist.
        known: Vec<String>,
    },
    /// The field takes one of a list of words, and this is none of them, or nothing was given.
    UnknownChoice {
        /// The words it takes.
        allowed: Vec<String>,
    },
    /// A text that is too long, or holds what cannot be shown in a text.
    BadText {
        /// Most characters allowed.
        most_chars: usize,
        /// Whether it may have several lines.
        lines: bool,
    },
    /// The file is not in the form it should have; `why` says where it stops making sense, in
    /// English.
    Form {
        /// What the reader of the form said.
        why: String,
    },
    /// The bytes of the file are no UTF-8 text.
    NotText {
        /// What they seem to be instead, e.g. `UTF-16`.
        seems: &'static str,
    },
    /// The file or the text is larger than any real one.
    TooMuch {
        /// Most bytes taken.
        most_bytes: usize,
    },
    /// More faults than are worth telling: those after the first `told` were left out.
    TooManyProblems {
        /// How many were told.
        told: usize,
    },
}

impl Problem {
    /// A fault at `place`, where `typed` stood.
    pub fn new(place: impl Into<String>, typed: impl Into<String>, fault: Fault) -> Self {
        Problem {
            place: place.into(),
            typed: typed.into(),
            fault,
        }
    }

    /// Key of the message for this fault: `problem-` and the kind of fault; a contradiction
    /// has its own code behind it, e.g. `problem-contradiction-yuki-split`.
    pub fn code(&self) -> String {
        match &self.fault {
            Fault::Missing => "problem-missing".into(),
            Fault::MissingOneOf { .. } => "problem-missing-one-of".into(),
            Fault::Unreadable(_) => "problem-unreadable".into(),
            Fault::WrongShape { .. } => "problem-wrong-shape".into(),
            Fault::OutOfRange { .. } => "problem-out-of-range".into(),
            Fault::NumberOutOfRange { .. } => "problem-number-out-of-range".into(),
            Fault::Contradiction { code, .. } => format!("problem-contradiction-{code}"),
            Fault::UnknownField { .. } => "problem-unknown-field".into(),
            Fault::UnknownChoice { .. } => "problem-unknown-choice".into(),
            Fault::BadText { .. } => "problem-bad-text".into(),
            Fault::Form { .. } => "problem-form".into(),
            Fault::NotText { .. } => "problem-not-text".into(),
            Fault::TooMuch { .. } => "problem-too-much".into(),
            Fault::TooManyProblems { .. } => "problem-too-many".into(),
        }
    }

    /// The same problem with `prefix` and a dot before its own path and the paths it names.
    ///
    /// A garment knows its parts as `ushirohaba`; the case file holding it calls that field
    /// `garment.ushirohaba`.
    #[must_use]
    pub fn within(self, prefix: &str) -> Self {
        self.renamed(|path| {
            if path.is_empty() {
                prefix.to_owned()
            } else {
                format!("{prefix}.{path}")
            }
        })
    }

    /// The same problem with every path in it put through `rename`.
    #[must_use]
    pub fn renamed(mut self, rename: impl Fn(&str) -> String) -> Self {
        self.place = rename(&self.place);
        match &mut self.fault {
            Fault::MissingOneOf { others: paths } | Fault::Contradiction { other: paths, .. } => {
                paths.iter_mut().for_each(|path| *path = rename(path));
            }
            _ => {}
        }
        self
    }

    /// The numbers of the fault by name, in centimetres: the allowed range of an
    /// `OutOfRange`, the arguments of a `Contradiction`, nothing for the others.
    pub fn args(&self) -> Vec<(&'static str, f64)> {
        match &self.fault {
            Fault::OutOfRange { low_cm, high_cm } => vec![("low", *low_cm), ("high", *high_cm)],
            Fault::Contradiction { args, .. } => args.clone(),
            _ => Vec::new(),
        }
    }

    /// Paths of the other fields the fault involves, or the words the field would take.
    pub fn others(&self) -> &[String] {
        match &self.fault {
            Fault::MissingOneOf { others } => others,
            Fault::Contradiction { other, .. } => other,
            Fault::UnknownField { known } => known,
            Fault::UnknownChoice { allowed } => allowed,
            _ => &[],
        }
    }
}

/// A length for a sentence: one decimal, none when it is whole.
pub(crate) fn cm_text(cm: f64) -> String {
    let tenths = format!("{cm:.1}");
    tenths.strip_suffix(".0").unwrap_or(&tenths).to_owned()
}

/// `english` with each `{name}` replaced by the argument of that name.
pub(crate) fn fill_in(english: &str, args: &[(&'static str, f64)]) -> String {
    args.iter().fold(english.to_owned(), |text, (name, cm)| {
        text.replace(&format!("{{{name}}}"), &cm_text(*cm))
    })
}

impl fmt::Display for Problem {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}: ", printable(&clipped(&self.place)))?;
        let typed = printable(&clipped(&self.typed));
        match &self.fault {
            Fault::Missing => write!(out, "is needed and not given; measure it and enter it"),
            Fault::MissingOneOf { others } => write!(
                out,
                "is needed and not given; enter it, or instead {}",
                others.join(" or ")
            ),
            Fault::Unreadable(why) => write!(out, "\"{typed}\" is not a length: {why}"),
            Fault::WrongShape { expected } if typed.trim().is_empty() => {
                write!(out, "is needed and not given; write {expected}")
            }
            Fault::WrongShape { expected } => {
                write!(out, "\"{typed}\" does not belong here; write {expected}")
            }
            Fault::OutOfRange { low_cm, high_cm } => write!(
                out,
                "\"{typed}\" is outside the allowed {} to {} cm; check the tape and the unit",
                cm_text(*low_cm),
                cm_text(*high_cm)
            ),
            Fault::NumberOutOfRange { low, high, unit } => {
                let (low, high) = (cm_text(*low), cm_text(*high));
                write!(
                    out,
                    "\"{typed}\" is outside the allowed {low} to {high}{}{unit}; check what was given",
                    if unit.is_empty() { "" } else { " " }
                )
            }
            Fault::Contradiction {
                english,
                args,
                other,
                ..
            } => {
                if !typed.is_empty() {
                    write!(out, "\"{typed}\": ")?;
                }
                write!(out, "{}", fill_in(english, args))?;
                if !other.is_empty() {
                    write!(out, " (together with {})", other.join(", "))?;
                }
                Ok(())
            }
            Fault::UnknownField { known } => write!(
                out,
                "no such field here; the fields are {}",
                known.join(", ")
            ),
            Fault::UnknownChoice { allowed } if typed.trim().is_empty() => {
                write!(
                    out,
                    "is needed and not given; write {}",
                    allowed.join(" or ")
                )
            }
            Fault::UnknownChoice { allowed } => write!(
                out,
                "\"{typed}\" is not one of the choices; write {}",
                allowed.join(" or ")
            ),
            Fault::BadText { most_chars, lines } => {
                let form = if *lines { "" } else { " on one line" };
                write!(
                    out,
                    "\"{typed}\" cannot be kept; write up to {most_chars} characters{form}, \
                     without control characters"
                )
            }
            Fault::Form { why } if typed.is_empty() => write!(out, "{why}"),
            Fault::Form { why } => write!(out, "\"{typed}\": {why}"),
            Fault::NotText { seems } => {
                write!(
                    out,
                    "is not UTF-8 text but seems to be {seems}; save it as UTF-8"
                )
            }
            Fault::TooMuch { most_bytes } => write!(
                out,
                "is larger than any real one; at most {most_bytes} bytes are read"
            ),
            Fault::TooManyProblems { told } => write!(
                out,
                "has more than the {told} problems told; mend those and try again"
            ),
        }
    }
}

/// The typed text for a sentence: a page of garbage is cut, the field itself keeps it whole.
fn clipped(typed: &str) -> String {
    const SHOWN: usize = 60;
    if typed.chars().count() <= SHOWN {
        return typed.to_owned();
    }
    let start: String = typed.chars().take(SHOWN).collect();
    format!("{start}…")
}

/// The text with a stand-in for every control character, so that it cannot spoil a terminal.
fn printable(text: &str) -> String {
    let shown = |c: char| {
        if c.is_control() {
            char::REPLACEMENT_CHARACTER
        } else {
            c
        }
    };
    text.chars().map(shown).collect()
}

impl std::error::Error for Problem {}

/// As JSON: `place`, `typed`, `code`, and the English `message`.
impl Serialize for Problem {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut object = serializer.serialize_struct("Problem", 4)?;
        object.serialize_field("place", &self.place)?;
        object.serialize_field("typed", &self.typed)?;
        object.serialize_field("code", &self.code())?;
        object.serialize_field("message", &self.to_string())?;
        object.end()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_contradiction_names_every_field_and_fills_in_its_numbers() {
        let problem = Problem::new(
            "yuki",
            "70",
            Fault::Contradiction {
                code: "yuki-split",
                english: "yuki is {yuki} cm but the parts add up to {sum} cm",
                args: vec![("yuki", 70.0), ("sum", 66.25)],
                other: vec!["katahaba".into(), "sodehaba".into()],
            },
        )
        .within("garment");
        assert_eq!(
            problem.to_string(),
            "garment.yuki: \"70\": yuki is 70 cm but the parts add up to 66.2 cm \
             (together with garment.katahaba, garment.sodehaba)"
        );
        assert_eq!(problem.code(), "problem-contradiction-yuki-split");
    }

    #[test]
    fn a_page_of_garbage_is_kept_whole_but_shown_short() {
        let garbage = "寸".repeat(10_000);
        let problem = Problem::new(
            "mitake",
            garbage.clone(),
            Fault::OutOfRange {
                low_cm: 95.0,
                high_cm: 210.0,
            },
        );
        assert_eq!(problem.typed, garbage);
        let shown = problem.to_string();
        assert!(shown.chars().count() < 200, "{} characters", shown.len());
        assert!(shown.contains("95 to 210 cm"), "{shown}");
    }

    #[test]
    fn the_json_form_carries_place_text_code_and_sentence() {
        let problem = Problem::new("stature", "", Fault::Missing).within("body");
        let json = serde_json::to_value(&problem).expect("a problem is plain data");
        assert_eq!(json["place"], "body.stature");
        assert_eq!(json["code"], "problem-missing");
        assert_eq!(json["typed"], "");
        assert!(
            json["message"]
                .as_str()
                .is_some_and(|text| text.contains("needed"))
        );
    }
}
