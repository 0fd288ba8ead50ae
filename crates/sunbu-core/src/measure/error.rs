//! Why a text or a number is not a length.
//!
//! Each message names what was typed and the way out, in English for logs and the command line.
//! A page in another language builds its own sentence from [`LengthError::code`] and
//! [`LengthError::details`]. The whole typed text stays with the caller; only its beginning is
//! quoted here, so that a pasted file does not come back in full.

/// How many characters of the typed text an error quotes.
const QUOTED_CHARS: usize = 40;

/// Why a text or a number is not a length.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum LengthError {
    /// Nothing but blanks; commonest cause: the field was left out.
    #[error("no length was given; write one such as 161 cm or 4尺2寸5分")]
    Empty,
    /// Far longer than any length; commonest cause: something else was pasted.
    #[error(
        "the text beginning \u{201c}{text}\u{201d} is too long to be a length; \
         write only the length, such as 161 cm or 4尺2寸5分"
    )]
    TooLong {
        /// The beginning of what was typed.
        text: String,
    },
    /// Not made of numbers and units; commonest cause: a word, a range, or NaN.
    #[error(
        "\u{201c}{text}\u{201d} cannot be read as a length; \
         write it like 161, 161.5 cm, 4尺2寸5分 or 5 ft 3 in"
    )]
    NotANumber {
        /// The beginning of what was typed.
        text: String,
    },
    /// A comma that may part thousands or decimals, as in 1,610.
    #[error(
        "the comma in \u{201c}{text}\u{201d} can be read in two ways; \
         leave it out between thousands, or write decimals with a point"
    )]
    AmbiguousComma {
        /// The beginning of what was typed.
        text: String,
    },
    /// A number without a unit beside parts that have one, as in 4尺2.
    #[error(
        "a number in \u{201c}{text}\u{201d} has no unit; \
         write the unit after every number, as in 4尺2寸5分 or 4 shaku 2 sun 5 bu"
    )]
    MissingUnit {
        /// The beginning of what was typed.
        text: String,
    },
    /// A unit without a number, as in 4尺寸.
    #[error(
        "in \u{201c}{text}\u{201d} there is no number before {unit}; write one, as in 2 {unit}"
    )]
    MissingNumber {
        /// The beginning of what was typed.
        text: String,
        /// The unit that stands alone.
        unit: &'static str,
    },
    /// A word after a number that is no unit known here.
    #[error(
        "\u{201c}{word}\u{201d} in \u{201c}{text}\u{201d} is not a unit known here; \
         use cm, mm, m, ft, in, or jo, shaku, sun, bu, rin (丈, 尺, 寸, 分, 厘)"
    )]
    UnknownUnit {
        /// The beginning of what was typed.
        text: String,
        /// The word that is not a unit.
        word: String,
    },
    /// Units of two systems in one length, as in 4尺 3 cm, or two different shaku named.
    #[error(
        "\u{201c}{text}\u{201d} mixes {first} and {second}; write the length in one of them only"
    )]
    MixedUnits {
        /// The beginning of what was typed.
        text: String,
        /// The unit met first.
        first: &'static str,
        /// The one that does not go with it.
        second: &'static str,
    },
    /// The same unit twice, as in 4尺2尺.
    #[error("\u{201c}{text}\u{201d} gives {unit} twice; give each unit once")]
    RepeatedUnit {
        /// The beginning of what was typed.
        text: String,
        /// The unit given twice.
        unit: &'static str,
    },
    /// A smaller unit before a larger one, as in 2寸4尺.
    #[error("\u{201c}{text}\u{201d} gives {second} after {first}; write the larger unit first")]
    OutOfOrder {
        /// The beginning of what was typed.
        text: String,
        /// The unit met first, the smaller.
        first: &'static str,
        /// The larger unit after it.
        second: &'static str,
    },
    /// More of a smaller unit than fit in the one before it, as in 4尺12寸.
    #[error(
        "\u{201c}{text}\u{201d} gives more {unit} than there are in one {outer}; \
         write fewer than {limit} {unit} after {outer}"
    )]
    SubunitTooLarge {
        /// The beginning of what was typed.
        text: String,
        /// The smaller unit.
        unit: &'static str,
        /// The larger unit before it.
        outer: &'static str,
        /// How many of the smaller make one of the larger.
        limit: i64,
    },
    /// A fraction on a unit with a smaller one after it, as in 4.5尺2寸.
    #[error(
        "\u{201c}{text}\u{201d} gives a fraction of {unit} and then a smaller unit; \
         only the last number may have a fraction"
    )]
    FractionNotLast {
        /// The beginning of what was typed.
        text: String,
        /// The unit with the fraction.
        unit: &'static str,
    },
    /// Over 100 m; commonest cause: the wrong unit or a finger kept on a key.
    #[error("\u{201c}{text}\u{201d} is longer than 100 m; check the unit and the number of digits")]
    TooLarge {
        /// The beginning of what was typed.
        text: String,
    },
    /// Below zero where only a length can stand.
    #[error("\u{201c}{text}\u{201d} is below zero; this length is zero or more")]
    Negative {
        /// The beginning of what was typed.
        text: String,
    },
}

impl LengthError {
    /// A name for the kind of error that stays the same, for programs and translations.
    pub const fn code(&self) -> &'static str {
        match self {
            LengthError::Empty => "empty",
            LengthError::TooLong { .. } => "too_long",
            LengthError::NotANumber { .. } => "not_a_number",
            LengthError::AmbiguousComma { .. } => "ambiguous_comma",
            LengthError::MissingUnit { .. } => "missing_unit",
            LengthError::MissingNumber { .. } => "missing_number",
            LengthError::UnknownUnit { .. } => "unknown_unit",
            LengthError::MixedUnits { .. } => "mixed_units",
            LengthError::RepeatedUnit { .. } => "repeated_unit",
            LengthError::OutOfOrder { .. } => "out_of_order",
            LengthError::SubunitTooLarge { .. } => "subunit_too_large",
            LengthError::FractionNotLast { .. } => "fraction_not_last",
            LengthError::TooLarge { .. } => "too_large",
            LengthError::Negative { .. } => "negative",
        }
    }

    /// What the message fills in, by name: `text` (the beginning of what was typed), and by kind
    /// `unit`, `word`, `first`, `second`, `outer`, `limit`.
    pub fn details(&self) -> Vec<(&'static str, String)> {
        let mut details = Vec::new();
        if let Some(text) = self.text() {
            details.push(("text", text.to_owned()));
        }
        match self {
            LengthError::MissingNumber { unit, .. }
            | LengthError::RepeatedUnit { unit, .. }
            | LengthError::FractionNotLast { unit, .. } => {
                details.push(("unit", (*unit).to_owned()));
            }
            LengthError::UnknownUnit { word, .. } => details.push(("word", word.clone())),
            LengthError::MixedUnits { first, second, .. }
            | LengthError::OutOfOrder { first, second, .. } => {
                details.push(("first", (*first).to_owned()));
                details.push(("second", (*second).to_owned()));
            }
            LengthError::SubunitTooLarge {
                unit, outer, limit, ..
            } => {
                details.push(("unit", (*unit).to_owned()));
                details.push(("outer", (*outer).to_owned()));
                details.push(("limit", limit.to_string()));
            }
            LengthError::Empty
            | LengthError::TooLong { .. }
            | LengthError::NotANumber { .. }
            | LengthError::AmbiguousComma { .. }
            | LengthError::MissingUnit { .. }
            | LengthError::TooLarge { .. }
            | LengthError::Negative { .. } => {}
        }
        details
    }

    /// The beginning of what was typed; `None` when nothing was.
    pub fn text(&self) -> Option<&str> {
        match self {
            LengthError::Empty => None,
            LengthError::TooLong { text }
            | LengthError::NotANumber { text }
            | LengthError::AmbiguousComma { text }
            | LengthError::MissingUnit { text }
            | LengthError::MissingNumber { text, .. }
            | LengthError::UnknownUnit { text, .. }
            | LengthError::MixedUnits { text, .. }
            | LengthError::RepeatedUnit { text, .. }
            | LengthError::OutOfOrder { text, .. }
            | LengthError::SubunitTooLarge { text, .. }
            | LengthError::FractionNotLast { text, .. }
            | LengthError::TooLarge { text }
            | LengthError::Negative { text } => Some(text),
        }
    }
}

/// The first forty characters of a text on one line, with an ellipsis if there are more.
pub(super) fn quote(text: &str) -> String {
    let mut chars = text.trim().chars();
    let mut quoted: String = chars
        .by_ref()
        .take(QUOTED_CHARS)
        .map(|c| {
            if c.is_control() {
                char::REPLACEMENT_CHARACTER
            } else {
                c
            }
        })
        .collect();
    if chars.next().is_some() {
        quoted.push('…');
    }
    quoted
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quoted_text_is_short_and_on_one_line() {
        assert_eq!(quote(" 161\tcm\n "), "161\u{fffd}cm");
        let long = quote(&"尺".repeat(1000));
        assert_eq!(long.chars().count(), QUOTED_CHARS + 1, "{long}");
        assert!(long.ends_with('…'), "{long}");
        assert_eq!(quote(&"9".repeat(QUOTED_CHARS)), "9".repeat(QUOTED_CHARS));
    }
}
