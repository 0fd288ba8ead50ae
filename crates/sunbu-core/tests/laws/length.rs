//! What holds of the length parser for any text at all.
//!
//! Held to by the property tests, by the stored corpus, and by the fuzz target, which includes
//! this file.

use sunbu_core::measure::{
    Length, LengthError, Notation, Precision, Script, Shaku, format_length, parse_length,
    parse_signed_length,
};

/// Longest error message in characters: the longest sentence and two quotations of 41.
const MAX_MESSAGE_CHARS: usize = 260;

/// Panics, naming the text, where a law does not hold for it.
pub fn check(text: &str) {
    for shaku in [Shaku::Kujira, Shaku::Kane] {
        match parse_signed_length(text, shaku) {
            Ok(written) => {
                assert!(
                    written.length.abs() <= Length::from_mm(100_000),
                    "{text:?} is too long"
                );
                for script in [Script::Kanji, Script::Latin] {
                    let notation = Notation {
                        script,
                        precision: Precision::Exact,
                        bare: shaku,
                    };
                    let exact = format_length(written.length, written.unit, notation);
                    let again = parse_signed_length(&exact, shaku);
                    assert_eq!(again, Ok(written), "{text:?} was written as {exact:?}");
                }
                same_when_spelt_otherwise(text, shaku);
            }
            Err(error) => well_said(text, &error),
        }
        unsigned_only_refuses_what_is_below_zero(text, shaku);
    }
}

/// A text that is read is read the same with blanks around it, in capitals, and in full width.
fn same_when_spelt_otherwise(text: &str, shaku: Shaku) {
    let read = parse_signed_length(text, shaku);
    let full_width: String = text
        .chars()
        .map(|c| match c {
            '!'..='~' => char::from_u32(u32::from(c) + 0xFEE0).unwrap_or(c),
            ' ' => '\u{3000}',
            _ => c,
        })
        .collect();
    for spelling in [
        format!(" {text}\u{3000}"),
        text.to_ascii_uppercase(),
        full_width,
    ] {
        match parse_signed_length(&spelling, shaku) {
            // A spelling takes more bytes, so a text near the limit may go over it.
            Err(LengthError::TooLong { .. }) => {}
            respelt => assert_eq!(respelt, read, "{text:?} spelt {spelling:?}"),
        }
    }
}

fn unsigned_only_refuses_what_is_below_zero(text: &str, shaku: Shaku) {
    let signed = parse_signed_length(text, shaku);
    let unsigned = parse_length(text, shaku);
    match &signed {
        Ok(written) if written.length < Length::ZERO => {
            assert!(
                matches!(unsigned, Err(LengthError::Negative { .. })),
                "{text:?}"
            );
        }
        _ => assert_eq!(unsigned, signed, "{text:?}"),
    }
}

fn well_said(text: &str, error: &LengthError) {
    let message = error.to_string();
    let chars = message.chars().count();
    assert!(
        chars <= MAX_MESSAGE_CHARS,
        "{text:?}: {chars} characters: {message}"
    );
    assert!(
        !message.chars().any(char::is_control),
        "{text:?}: {message:?}"
    );
    assert!(
        error
            .code()
            .chars()
            .all(|c| c.is_ascii_lowercase() || c == '_'),
        "{text:?}"
    );
    for (name, value) in error.details() {
        assert!(
            message.contains(&value),
            "{text:?}: {name} {value:?} is not in {message}"
        );
    }
}
