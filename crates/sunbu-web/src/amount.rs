//! A length of a standard as people write it: `7`, `2 sun`, `0.17 stature`, `0.17 stature + 2`.

use sunbu_core::dressing::{Amount, MOST_CM};
use sunbu_core::measure::{Shaku, parse_signed_length};
use unicode_normalization::UnicodeNormalization;

/// The word for stature in a form, in both languages; both are read everywhere.
const STATURE: [&str; 2] = ["stature", "身長"];

/// Reads an amount; none when it is no length, or no sum of a share of stature and a length,
/// or beyond [`MOST_CM`] for people of 130 to 190 cm.
pub(crate) fn parse(text: &str) -> Option<Amount> {
    let amount = match STATURE.iter().find_map(|word| text.split_once(word)) {
        None => Amount::Fixed(length_cm(text)?),
        Some((share, rest)) => {
            let share = share.trim().trim_end_matches(['*', '×', '＊']);
            Amount::Proportional {
                stature: number(share)?,
                plus: plus_cm(rest.trim())?,
            }
        }
    };
    let sane = |stature| (-MOST_CM..=MOST_CM).contains(&amount.resolve(stature));
    [130.0, 190.0].into_iter().all(sane).then_some(amount)
}

/// What is added to a share of stature, or taken from it, in centimetres.
fn plus_cm(rest: &str) -> Option<f64> {
    let mut after = rest.chars();
    match after.next() {
        None => Some(0.0),
        Some('+' | '＋') => length_cm(after.as_str()),
        Some('-' | '−' | '–' | '‐' | '－' | 'ー') => Some(-length_cm(after.as_str())?),
        Some(_) => None,
    }
}

/// Reads a length as every form does, in centimetres; a minus may stand before it.
///
/// A plain number is taken as it is written, so that a form sent back unchanged leaves the rules
/// as they were. What was written in another unit is taken to a tenth of a millimetre, finer
/// than any hand dresses, so that the rules do not fill with digits nobody meant.
pub(crate) fn length_cm(text: &str) -> Option<f64> {
    let read = parse_signed_length(text, Shaku::Kujira).ok()?;
    let tenth_mm = (read.length.cm() * 100.0).round() / 100.0;
    Some(number(text).unwrap_or(tenth_mm))
}

/// Reads a plain number.
pub(crate) fn number(text: &str) -> Option<f64> {
    let text: String = text.trim().nfkc().collect();
    text.parse::<f64>().ok().filter(|n| n.is_finite())
}

/// Writes an amount, read back the same by [`parse`].
pub(crate) fn text(amount: Amount, word: &str) -> String {
    match amount {
        Amount::Fixed(cm) => cm.to_string(),
        Amount::Proportional { stature, plus: 0.0 } => format!("{stature} {word}"),
        Amount::Proportional { stature, plus } if plus < 0.0 => {
            format!("{stature} {word} - {}", -plus)
        }
        Amount::Proportional { stature, plus } => format!("{stature} {word} + {plus}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_read_as_people_write_them_and_written_back() {
        for (typed, want) in [
            ("7", Amount::Fixed(7.0)),
            (" -0.5 ", Amount::Fixed(-0.5)),
            ("−1", Amount::Fixed(-1.0)),
            ("７", Amount::Fixed(7.0)),
            // Not a whole number of 1/6600 cm: taken as it is written all the same.
            ("0.1234567890123", Amount::Fixed(0.123_456_789_012_3)),
            (
                "0.17 stature",
                Amount::Proportional {
                    stature: 0.17,
                    plus: 0.0,
                },
            ),
            (
                "0.17×身長+2",
                Amount::Proportional {
                    stature: 0.17,
                    plus: 2.0,
                },
            ),
            (
                "0.17 * stature - 2",
                Amount::Proportional {
                    stature: 0.17,
                    plus: -2.0,
                },
            ),
        ] {
            assert_eq!(parse(typed), Some(want), "{typed}");
            for word in STATURE {
                assert_eq!(parse(&text(want, word)), Some(want), "{typed} with {word}");
            }
        }
    }

    #[test]
    fn lengths_are_read_in_every_unit_of_the_other_forms() {
        // A kujira-shaku is 25/66 m: 1 sun 8 bu are 18 × 25/66 cm = 6.818… cm.
        let sun_8_bu = 6.82;
        let share = |plus| Amount::Proportional {
            stature: 0.17,
            plus,
        };
        for (typed, want) in [
            ("1 sun 8 bu", Amount::Fixed(sun_8_bu)),
            ("1寸8分", Amount::Fixed(sun_8_bu)),
            ("−１寸８分", Amount::Fixed(-sun_8_bu)),
            ("7 cm", Amount::Fixed(7.0)),
            ("25 mm", Amount::Fixed(2.5)),
            ("0.17 stature + 1 sun 8 bu", share(sun_8_bu)),
            ("0.17 身長－1寸8分", share(-sun_8_bu)),
            ("０．１７×身長＋２５ mm", share(2.5)),
        ] {
            let read = parse(typed);
            for stature in [0.0, 160.0] {
                let [got, want] = [
                    read.map(|a| a.resolve(stature)),
                    Some(want.resolve(stature)),
                ];
                // Only the last bits of an f64 may differ.
                let near = got
                    .zip(want)
                    .is_some_and(|(got, want)| (got - want).abs() < 1e-9);
                assert!(near, "{typed} at {stature} cm: {got:?}, not {want:?}");
            }
        }
    }

    #[test]
    fn what_is_no_amount_is_refused() {
        for typed in [
            "",
            "x",
            "stature",
            "1 stature 2",
            "inf",
            "NaN",
            "1e9",
            "2 ells",
            "1 sun stature",
            "0.17 stature + 2 ells",
            "9 stature",
            "1 + 2",
        ] {
            assert_eq!(parse(typed), None, "{typed}");
        }
    }
}
