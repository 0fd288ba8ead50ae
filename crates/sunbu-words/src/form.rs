//! What slipped in a line of a case file that is no TOML: most often a length without its quotes.
//!
//! The reader of the form says in English where it stopped and what it would have liked there. Which
//! of the usual slips it was is plain from the line itself, and is said in the reader's language.

use sunbu_core::measure::{Shaku, parse_length};

use crate::Words;

/// A usual slip in one line.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Slip {
    /// A length with a unit, not in quotes; `better` is how it is written.
    Length { better: String },
    /// A text not in quotes; `better` is how it is written.
    Text { better: String },
    /// Nothing after the equals sign.
    NoValue,
    /// No equals sign.
    NoEquals,
    /// A heading without its closing bracket.
    Heading,
    /// A text whose quotes do not close.
    Quote,
    /// None of them.
    Other,
}

impl Slip {
    /// The slip in a line that could not be read.
    pub fn of(line: &str) -> Slip {
        let line = line.trim();
        if line.starts_with('[') {
            return if line.contains(']') {
                Slip::Other
            } else {
                Slip::Heading
            };
        }
        let Some((key, value)) = line.split_once('=') else {
            let words = |c: char| c.is_alphanumeric() || c.is_whitespace() || "_-.".contains(c);
            let plain = !line.is_empty() && line.chars().all(words);
            return if plain { Slip::NoEquals } else { Slip::Other };
        };
        let value = value.trim();
        if let Some(inner) = value.strip_prefix('{') {
            return inner
                .split([',', '}'])
                .filter_map(|part| part.split_once('='))
                .map(|(key, value)| unquoted(key, value))
                .find(|slip| matches!(slip, Slip::Length { .. }))
                .unwrap_or(Slip::Other);
        }
        match value.chars().next() {
            None | Some('#') => Slip::NoValue,
            Some(quote @ ('"' | '\'')) => {
                if value.matches(quote).count() == 1 {
                    Slip::Quote
                } else {
                    Slip::Other
                }
            }
            Some('[') => Slip::Other,
            Some(_) => unquoted(key, value),
        }
    }
}

/// The slip in a value that neither quotes nor brackets hold.
fn unquoted(key: &str, value: &str) -> Slip {
    let value = value.split('#').next().unwrap_or_default().trim();
    let Some(first) = value.chars().next() else {
        return Slip::NoValue;
    };
    let better = || {
        let quoted = value.replace('\\', "\\\\").replace('"', "\\\"");
        format!("{} = \"{quoted}\"", key.trim())
    };
    // A number, a date or a yes stands without quotes, so the line slipped in something else.
    let bare = |c: char| c.is_ascii_digit() || "+-.:_TZ".contains(c);
    if value.chars().all(bare) || ["true", "false", "nan", "inf"].contains(&value) {
        return Slip::Other;
    }
    let length = first.is_ascii_digit() || parse_length(value, Shaku::Kujira).is_ok();
    if length {
        Slip::Length { better: better() }
    } else if first.is_alphabetic() {
        Slip::Text { better: better() }
    } else {
        Slip::Other
    }
}

impl Words {
    /// What is wrong with a line that is no TOML. `typed` is the line as a sentence quotes it,
    /// `why` what the reader of the form said, in English.
    pub(crate) fn slip(&self, line: &str, typed: &str, why: &str) -> String {
        let typed = ("typed", typed.into());
        let (id, better) = match Slip::of(line) {
            Slip::Length { better } => ("problem-form-length", Some(better)),
            Slip::Text { better } => ("problem-form-text", Some(better)),
            Slip::NoValue => ("problem-form-no-value", None),
            Slip::NoEquals => ("problem-form-no-equals", None),
            Slip::Heading => ("problem-form-heading", None),
            Slip::Quote => ("problem-form-quote", None),
            // The reader says it in two words of its own.
            Slip::Other if why.starts_with("duplicate key") => ("problem-form-twice", None),
            Slip::Other => return self.with("problem-form-at", &[typed, ("why", why.into())]),
        };
        match better {
            Some(better) => {
                let better = crate::problems::shown(&better);
                self.with(id, &[typed, ("better", (&better).into())])
            }
            None => self.with(id, &[typed]),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Lang;

    fn length(better: &str) -> Slip {
        let better = better.to_owned();
        Slip::Length { better }
    }

    #[test]
    fn a_length_without_quotes_is_told_from_other_slips() {
        for (line, slip) in [
            ("hip_bone_height = 4尺", length("hip_bone_height = \"4尺\"")),
            (
                "mitake = 4 shaku 2 sun",
                length("mitake = \"4 shaku 2 sun\""),
            ),
            ("mitake = 四尺二寸", length("mitake = \"四尺二寸\"")),
            ("mitake = 160 cm # taped", length("mitake = \"160 cm\"")),
            ("mitake = １６０", length("mitake = \"１６０\"")),
            ("stature = 5'3\"", length("stature = \"5'3\\\"\"")),
            (
                "yuki = { value = 1尺7寸, sd = 0.5 }",
                length("value = \"1尺7寸\""),
            ),
            (
                "name = Chiyo",
                Slip::Text {
                    better: "name = \"Chiyo\"".to_owned(),
                },
            ),
            ("mitake =", Slip::NoValue),
            ("mitake = # later", Slip::NoValue),
            ("mitake 160", Slip::NoEquals),
            ("[person", Slip::Heading),
            ("name = \"Chiyo", Slip::Quote),
            // Sound in itself: given twice, say.
            ("stature = 160", Slip::Other),
            ("stature = 160.5", Slip::Other),
            ("stature = 160.", Slip::Other),
            ("day = 1979-05-27", Slip::Other),
            ("name = \"Chiyo\"", Slip::Other),
            ("[person]", Slip::Other),
            ("\"\"\"", Slip::Other),
            ("", Slip::Other),
        ] {
            assert_eq!(Slip::of(line), slip, "{line}");
        }
    }

    #[test]
    fn every_slip_is_said_whole_and_without_the_readers_english() {
        let why = "string values must be quoted, expected literal string";
        for line in [
            "mitake = 4尺",
            "name = Chiyo",
            "mitake =",
            "mitake 160",
            "[person",
            "name = \"C",
        ] {
            for &lang in Lang::ALL {
                let told = Words::of(lang).slip(line, line, why);
                assert!(told.contains(line) && !told.contains("literal"), "{told}");
            }
        }
        let told = Words::of(Lang::Ja).slip("mitake = 4尺", "mitake = 4尺", why);
        assert!(
            told.contains("mitake = \"4尺\"") && told.contains("引用符"),
            "{told}"
        );
    }
}
