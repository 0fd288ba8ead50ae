//! Reading a length as people write it.
//!
//! Metric (`161`, `161.5 cm`, `1.61 m`, `1610 mm`, `1 m 61 cm`), feet and inches (`5 ft 3 in`,
//! `5'3"`, `63½ in`) and shaku in kanji, kana or romaji (`4尺2寸5分`, `四尺二寸五分`,
//! `4.25 shaku`, `4尺2.5寸`, `5分半`, `鯨尺4尺2寸`, `kane 4 shaku`). A bare number is centimetres.
//!
//! The numbers are taken as the exact rationals they are written as; only a value that falls
//! between two units of 1/6600 cm is rounded, to the nearest, halves to the even one.

use super::error::quote;
use super::fold::fold;
use super::length::LIMIT;
use super::lex::{Number, Tail, Token, tokens};
use super::unit::{Family, Shaku, Unit, Word};
use super::{Length, LengthError, Written};

/// Longest text looked at, in bytes: five times the longest sensible length in kanji with blanks.
/// Chosen, so that a pasted file is refused before anything is done with it.
pub const MAX_TEXT_BYTES: usize = 256;

/// The length a text gives, zero or more, and the unit it is written in.
///
/// `shaku` is the one meant where the text says only "shaku" or 尺: kujira for garments.
///
/// # Errors
/// Every [`LengthError`]; [`LengthError::Negative`] for a length below zero.
///
/// ```
/// use sunbu_core::measure::{Length, Shaku, Unit, parse_length};
/// let written = parse_length("４尺２寸５分", Shaku::Kujira)?;
/// assert_eq!(written.length, Length::from_kujira_bu(425));
/// assert_eq!(written.unit, Unit::KujiraShaku);
/// # Ok::<(), sunbu_core::measure::LengthError>(())
/// ```
pub fn parse_length(text: &str, shaku: Shaku) -> Result<Written, LengthError> {
    let written = parse_signed_length(text, shaku)?;
    if written.length < Length::ZERO {
        return Err(LengthError::Negative { text: quote(text) });
    }
    Ok(written)
}

/// Like [`parse_length`], but a leading minus gives a length below zero, as a shift of a seam may
/// be.
///
/// # Errors
/// Every [`LengthError`] but [`LengthError::Negative`].
pub fn parse_signed_length(text: &str, shaku: Shaku) -> Result<Written, LengthError> {
    if text.len() > MAX_TEXT_BYTES {
        return Err(LengthError::TooLong { text: quote(text) });
    }
    let folded = fold(text);
    let body = folded.trim();
    if body.is_empty() {
        return Err(LengthError::Empty);
    }
    // The kana long mark is what a Japanese keyboard gives for the minus key.
    let (negative, body) = match body.strip_prefix(['-', '−', '–', '‐', 'ー']) {
        Some(rest) => (true, rest),
        None => (false, body.strip_prefix('+').unwrap_or(body)),
    };
    let reader = Reader {
        text,
        tokens: tokens(body, text)?,
    };
    let reading = reader.reading()?;
    let named = reading.name.unwrap_or(shaku);
    let units = reader.units(&reading.parts, named)?;
    let unit = match reading.parts[0].unit.family() {
        Family::Shaku => named.unit(),
        Family::Metric | Family::Imperial => Unit::Centimetre,
    };
    let length = Length::from_units(if negative { -units } else { units });
    Ok(Written { length, unit })
}

/// A number with its unit.
struct Part {
    number: Number,
    unit: Word,
}

/// What a text says: at least one part, all of one family, larger units first.
struct Reading {
    name: Option<Shaku>,
    parts: Vec<Part>,
}

struct Reader<'a> {
    text: &'a str,
    tokens: Vec<Token>,
}

impl Reader<'_> {
    fn quoted(&self) -> String {
        quote(self.text)
    }

    fn not_a_number(&self) -> LengthError {
        LengthError::NotANumber {
            text: self.quoted(),
        }
    }

    fn mixed(&self, first: &'static str, second: &'static str) -> LengthError {
        LengthError::MixedUnits {
            text: self.quoted(),
            first,
            second,
        }
    }

    /// Numbers joined with their units, and the whole checked.
    fn reading(&self) -> Result<Reading, LengthError> {
        let mut name: Option<Shaku> = None;
        let mut parts: Vec<Part> = Vec::new();
        let mut pending: Option<Number> = None;
        let mut stray_bracket = false;
        for (at, token) in self.tokens.iter().enumerate() {
            match token {
                Token::Number(number) => {
                    if pending.replace(number.clone()).is_some() {
                        return Err(self.not_a_number());
                    }
                }
                Token::Ratio(ratio) => {
                    pending = Some(self.with_ratio(pending, ratio)?);
                }
                Token::Half if pending.is_some() => return Err(self.not_a_number()),
                Token::Half => pending = self.half(at, &mut parts)?,
                Token::Unit(unit) => parts.push(self.part(pending.take(), *unit)?),
                Token::Name(shaku, says_shaku) => {
                    if let Some(other) = name.filter(|other| other != shaku) {
                        return Err(self.mixed(other.name(), shaku.name()));
                    }
                    name = Some(*shaku);
                    if *says_shaku && pending.is_some() {
                        parts.push(self.part(pending.take(), Word::Shaku)?);
                    }
                }
                Token::Open | Token::Close => stray_bracket |= !self.around_a_name(at),
            }
        }
        if let Some(number) = pending {
            let unit = match (parts.last().map(|part| part.unit), name) {
                (None, None) => Word::Centimetre,
                (Some(Word::Foot), None) => Word::Inch, // 5'3: nothing else follows feet
                _ => {
                    return Err(LengthError::MissingUnit {
                        text: self.quoted(),
                    });
                }
            };
            parts.push(Part { number, unit });
        }
        self.check(&parts, name)?;
        if stray_bracket || parts.is_empty() {
            return Err(self.not_a_number());
        }
        Ok(Reading { name, parts })
    }

    /// Whether the bracket at `at` is one of a pair around nothing but the name of a shaku.
    fn around_a_name(&self, at: usize) -> bool {
        let open = match self.tokens[at] {
            Token::Open => Some(at),
            _ => at.checked_sub(2),
        };
        open.and_then(|open| self.tokens.get(open..open + 3))
            .is_some_and(|three| matches!(three, [Token::Open, Token::Name(..), Token::Close]))
    }

    fn part(&self, number: Option<Number>, unit: Word) -> Result<Part, LengthError> {
        match number {
            Some(number) => Ok(Part { number, unit }),
            None => Err(LengthError::MissingNumber {
                text: self.quoted(),
                unit: unit.label(),
            }),
        }
    }

    /// What 半 at `at` adds: half of the unit after it (半寸), returned for that unit to take up,
    /// or else half of the one before it (5分半), put into its part.
    fn half(&self, at: usize, parts: &mut [Part]) -> Result<Option<Number>, LengthError> {
        let is_unit = |at: usize| matches!(self.tokens.get(at), Some(Token::Unit(_)));
        let half = Tail::Ratio(1, 2);
        if is_unit(at + 1) {
            return Ok(Some(Number {
                whole: 0,
                tail: half,
            }));
        }
        match parts.last_mut() {
            Some(last) if at > 0 && is_unit(at - 1) && last.number.tail == Tail::None => {
                last.number.tail = half;
                Ok(None)
            }
            _ => Err(self.not_a_number()),
        }
    }

    /// A fraction by itself, or joined to the whole number before it, as in 5 3/4.
    fn with_ratio(&self, before: Option<Number>, ratio: &Number) -> Result<Number, LengthError> {
        match before {
            None => Ok(ratio.clone()),
            Some(Number {
                whole,
                tail: Tail::None,
            }) if ratio.whole == 0 => Ok(Number {
                whole,
                tail: ratio.tail.clone(),
            }),
            Some(_) => Err(self.not_a_number()),
        }
    }

    fn check(&self, parts: &[Part], name: Option<Shaku>) -> Result<(), LengthError> {
        let text = || self.quoted();
        if let (Some(name), Some(part)) = (name, parts.first())
            && part.unit.family() != Family::Shaku
        {
            return Err(self.mixed(name.name(), part.unit.label()));
        }
        for pair in parts.windows(2) {
            let (outer, inner) = (&pair[0], &pair[1]);
            let (first, second) = (outer.unit.label(), inner.unit.label());
            // Ratios within a family are the same in both shaku.
            let (big, small) = (
                outer.unit.size(Shaku::Kujira),
                inner.unit.size(Shaku::Kujira),
            );
            if outer.unit.family() != inner.unit.family() {
                return Err(self.mixed(first, second));
            }
            if outer.unit == inner.unit {
                return Err(LengthError::RepeatedUnit {
                    text: text(),
                    unit: first,
                });
            }
            if small > big {
                return Err(LengthError::OutOfOrder {
                    text: text(),
                    first,
                    second,
                });
            }
            if outer.number.tail != Tail::None {
                return Err(LengthError::FractionNotLast {
                    text: text(),
                    unit: first,
                });
            }
            if inner.number.whole >= big / small {
                return Err(LengthError::SubunitTooLarge {
                    text: text(),
                    unit: second,
                    outer: first,
                    limit: big / small,
                });
            }
        }
        Ok(())
    }

    /// The parts together in units of 1/6600 cm.
    ///
    /// Counted in half units, rounded down, with a note whether anything was left over: that is
    /// all it takes to round to the nearest whole unit and to know a tie.
    fn units(&self, parts: &[Part], shaku: Shaku) -> Result<i64, LengthError> {
        let (mut halves, mut exact) = (0, true);
        for Part { number, unit } in parts {
            // A whole part has nine digits at most and the largest unit is 2.5e6: no overflow.
            let half_units = 2 * unit.size(shaku);
            let (tail, tail_exact) = share_of(half_units, &number.tail);
            halves += number.whole * half_units + tail;
            exact &= tail_exact;
        }
        let down = halves / 2;
        let up = match (halves % 2, exact) {
            (0, _) => 0,
            (_, false) => 1,
            (_, true) => down % 2, // a tie: up only if that is even
        };
        let units = down + up;
        if units > LIMIT {
            return Err(LengthError::TooLarge {
                text: self.quoted(),
            });
        }
        Ok(units)
    }
}

/// The whole part of `tail · of`, and whether that is all of it.
fn share_of(of: i64, tail: &Tail) -> (i64, bool) {
    match tail {
        Tail::None => (0, true),
        Tail::Ratio(above, below) => {
            let product = of * i64::from(*above);
            (
                product / i64::from(*below),
                product % i64::from(*below) == 0,
            )
        }
        // Long multiplication from the last digit: what is carried past the point is the whole
        // part, and any digit left behind it makes the product inexact.
        Tail::Decimals(digits) => digits
            .iter()
            .rev()
            .fold((0, true), |(carry, exact), &digit| {
                let sum = of * i64::from(digit) + carry;
                (sum / 10, exact && sum % 10 == 0)
            }),
    }
}
