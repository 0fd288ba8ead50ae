//! A length of a standard as people write it: `7`, `0.17 stature`, `0.17 stature + 2`.

use sunbu_core::dressing::{Amount, MOST_CM};

/// The word for stature in a form, in both languages; both are read everywhere.
const STATURE: [&str; 2] = ["stature", "身長"];

/// Reads an amount; none when it is no number, or no sum of a share of stature and a number,
/// or beyond [`MOST_CM`] for people of 130 to 190 cm.
pub(crate) fn parse(text: &str) -> Option<Amount> {
    let text = text.trim().replace('−', "-");
    let amount = match STATURE.iter().find_map(|word| text.split_once(word)) {
        None => Amount::Fixed(number(&text)?),
        Some((share, rest)) => {
            let share = number(share.trim().trim_end_matches(['*', '×']).trim_end())?;
            let rest = rest.trim();
            let plus = match rest.chars().next() {
                None => 0.0,
                Some('+') => number(rest[1..].trim_start())?,
                Some('-') => -number(rest[1..].trim_start())?,
                Some(_) => return None,
            };
            Amount::Proportional {
                stature: share,
                plus,
            }
        }
    };
    let sane = |stature| (-MOST_CM..=MOST_CM).contains(&amount.resolve(stature));
    [130.0, 190.0].into_iter().all(sane).then_some(amount)
}

/// Reads a plain number.
pub(crate) fn number(text: &str) -> Option<f64> {
    text.trim().parse::<f64>().ok().filter(|n| n.is_finite())
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
    fn what_is_no_amount_is_refused() {
        for typed in [
            "",
            "x",
            "stature",
            "1 stature 2",
            "inf",
            "NaN",
            "1e9",
            "9 stature",
            "1 + 2",
        ] {
            assert_eq!(parse(typed), None, "{typed}");
        }
    }
}
