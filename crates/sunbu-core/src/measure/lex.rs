//! From a folded text to its numbers, unit words and names of shaku.

use super::LengthError;
use super::error::quote;
use super::unit::{JAPANESE_NAMES, Shaku, Word, name_from_latin};

/// Whole numbers of more digits are over any length in any unit (a billion mo is 3.8 km).
const MAX_WHOLE_DIGITS: usize = 9;
/// Digits allowed above and below the line of a fraction.
const MAX_RATIO_DIGITS: usize = 4;

/// A number as written, not yet rounded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Number {
    pub(super) whole: i64,
    pub(super) tail: Tail,
}

/// What follows the whole part; always less than one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Tail {
    None,
    /// Decimal digits, each 0 to 9.
    Decimals(Vec<u8>),
    /// A fraction, the upper number less than the lower.
    Ratio(u32, u32),
}

/// A piece of the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Token {
    Number(Number),
    /// A written fraction such as 3/4, whole part taken out.
    Ratio(Number),
    /// 半, half of what it stands with.
    Half,
    Unit(Word),
    /// The name of a shaku; the flag says whether it ends in "shaku".
    Name(Shaku, bool),
    Open,
    Close,
}

/// The pieces of a folded text; `typed` is the text as typed, for the errors.
pub(super) fn tokens(folded: &str, typed: &str) -> Result<Vec<Token>, LengthError> {
    let chars: Vec<char> = folded.chars().collect();
    let mut lexer = Lexer {
        chars: &chars,
        at: 0,
        typed,
    };
    let mut tokens = Vec::new();
    while let Some(c) = lexer.peek() {
        if c.is_whitespace() {
            lexer.at += 1;
        } else {
            let number_met = tokens
                .iter()
                .any(|t| matches!(t, Token::Number(_) | Token::Ratio(_)));
            let token = lexer.token(c, number_met)?;
            match tokens.last_mut() {
                // "kujira shaku" in two words is the same name as in one.
                Some(Token::Name(_, says @ false)) if token == Token::Unit(Word::Shaku) => {
                    *says = true;
                }
                _ => tokens.push(token),
            }
        }
    }
    Ok(tokens)
}

struct Lexer<'a> {
    chars: &'a [char],
    at: usize,
    typed: &'a str,
}

impl Lexer<'_> {
    fn peek(&self) -> Option<char> {
        self.ahead(0)
    }

    fn ahead(&self, steps: usize) -> Option<char> {
        self.chars.get(self.at + steps).copied()
    }

    fn not_a_number(&self) -> LengthError {
        LengthError::NotANumber {
            text: quote(self.typed),
        }
    }

    fn token(&mut self, c: char, number_met: bool) -> Result<Token, LengthError> {
        let starts_decimal =
            is_point(c) && c != '・' && self.ahead(1).is_some_and(|d| d.is_ascii_digit());
        if is_figure(c) || starts_decimal {
            return self.number();
        }
        if c.is_ascii_alphabetic() {
            return self.latin(number_met);
        }
        let single = match c {
            '半' => Some(Token::Half),
            '(' => Some(Token::Open),
            ')' => Some(Token::Close),
            '"' | '“' | '”' | '″' => Some(Token::Unit(Word::Inch)),
            _ => None,
        };
        if let Some(token) = single {
            self.at += 1;
            return Ok(token);
        }
        if is_prime(c) {
            // Two single marks are one double mark.
            let double = self.ahead(1).is_some_and(is_prime);
            self.at += if double { 2 } else { 1 };
            return Ok(Token::Unit(if double { Word::Inch } else { Word::Foot }));
        }
        self.japanese(number_met)
    }

    /// A word in Latin letters, hyphens inside it left out, with an abbreviation's full stop.
    fn latin(&mut self, number_met: bool) -> Result<Token, LengthError> {
        let start = self.at;
        let mut word = String::new();
        while let Some(c) = self.peek() {
            let joins = matches!(c, '-' | '\u{2010}')
                && self.ahead(1).is_some_and(|next| next.is_ascii_alphabetic());
            if c.is_ascii_alphabetic() {
                word.push(c);
            } else if !joins {
                break;
            }
            self.at += 1;
        }
        if let Some((shaku, says_shaku)) = name_from_latin(&word) {
            return Ok(Token::Name(shaku, says_shaku));
        }
        let Some(unit) = Word::from_latin(&word) else {
            return Err(self.unknown(start, number_met));
        };
        if self.peek() == Some('.') && !self.ahead(1).is_some_and(|d| d.is_ascii_digit()) {
            self.at += 1;
        }
        Ok(Token::Unit(unit))
    }

    /// A unit or a name of a shaku in kanji or kana.
    fn japanese(&mut self, number_met: bool) -> Result<Token, LengthError> {
        if let Some((name, shaku, says)) = JAPANESE_NAMES.iter().find(|n| self.begins(n.0)) {
            self.at += name.chars().count();
            return Ok(Token::Name(*shaku, *says));
        }
        if let Some((word, unit)) = Word::JAPANESE.iter().find(|w| self.begins(w.0)) {
            self.at += word.chars().count();
            return Ok(Token::Unit(*unit));
        }
        Err(self.unknown(self.at, number_met))
    }

    fn begins(&self, word: &str) -> bool {
        word.chars()
            .enumerate()
            .all(|(i, c)| self.ahead(i) == Some(c))
    }

    /// The error for a word from `start` on that nothing here knows: after a number it stands
    /// where a unit would.
    fn unknown(&self, start: usize, number_met: bool) -> LengthError {
        let word: String = self.chars[start..]
            .iter()
            .take_while(|c| c.is_alphabetic())
            .collect();
        if number_met && !word.is_empty() {
            LengthError::UnknownUnit {
                text: quote(self.typed),
                word: quote(&word),
            }
        } else {
            self.not_a_number()
        }
    }

    /// A number: digits or kanji, with decimals or as a fraction.
    fn number(&mut self) -> Result<Token, LengthError> {
        let head = self.run(is_figure);
        let kanji = head.first().is_some_and(|c| !c.is_ascii_digit());
        if head.iter().any(|c| c.is_ascii_digit() == kanji) {
            return Err(self.not_a_number()); // digits and kanji in one number
        }
        let whole = self.whole(&head)?;
        if !kanji && matches!(self.peek(), Some('/' | '⁄')) {
            self.at += 1;
            let below = self.run(|c| c.is_ascii_digit());
            return self.ratio(&head, &below);
        }
        let tail = self.decimals(&head, kanji)?;
        Ok(Token::Number(Number { whole, tail }))
    }

    fn run(&mut self, belongs: impl Fn(char) -> bool) -> Vec<char> {
        let run: Vec<char> = self.chars[self.at..]
            .iter()
            .copied()
            .take_while(|&c| belongs(c))
            .collect();
        self.at += run.len();
        run
    }

    fn whole(&self, head: &[char]) -> Result<i64, LengthError> {
        if head.iter().any(|&c| multiplier(c).is_some()) {
            return counted(head).ok_or_else(|| self.not_a_number());
        }
        let significant = head.iter().skip_while(|&&c| digit(c) == Some(0));
        if significant.clone().count() > MAX_WHOLE_DIGITS {
            return Err(LengthError::TooLarge {
                text: quote(self.typed),
            });
        }
        Ok(significant
            .filter_map(|&c| digit(c))
            .fold(0, |n, d| 10 * n + i64::from(d)))
    }

    fn ratio(&self, above: &[char], below: &[char]) -> Result<Token, LengthError> {
        let value = |digits: &[char]| {
            (1..=MAX_RATIO_DIGITS).contains(&digits.len()).then(|| {
                digits
                    .iter()
                    .filter_map(|&c| digit(c))
                    .fold(0, |n, d| 10 * n + u32::from(d))
            })
        };
        match (value(above), value(below)) {
            (Some(above), Some(below)) if below > 0 => Ok(Token::Ratio(Number {
                whole: i64::from(above / below),
                tail: match above % below {
                    0 => Tail::None,
                    rest => Tail::Ratio(rest, below),
                },
            })),
            _ => Err(self.not_a_number()),
        }
    }

    /// The decimals after `head`, if a point and digits of the same script follow.
    fn decimals(&mut self, head: &[char], kanji: bool) -> Result<Tail, LengthError> {
        let same_script = move |c: char| digit(c).is_some() && c.is_ascii_digit() != kanji;
        let Some(point) = self.peek().filter(|&c| is_point(c)) else {
            return Ok(Tail::None);
        };
        if !self.ahead(1).is_some_and(same_script) {
            // "161." at the end of a sentence; a comma or middle dot there is left to be refused.
            if point == '.' && self.ahead(1).is_none_or(char::is_whitespace) {
                self.at += 1;
            }
            return Ok(Tail::None);
        }
        self.at += 1;
        let digits = self.run(same_script);
        let groups_thousands = point == ','
            && digits.len() == 3
            && (1..=3).contains(&head.len())
            && digit(head[0]) != Some(0);
        if groups_thousands {
            return Err(LengthError::AmbiguousComma {
                text: quote(self.typed),
            });
        }
        if self.peek().is_some_and(is_point) && self.ahead(1).is_some_and(|c| digit(c).is_some()) {
            return Err(self.not_a_number()); // a second point, as in 1.2.3
        }
        Ok(Tail::Decimals(
            digits.into_iter().filter_map(digit).collect(),
        ))
    }
}

fn is_point(c: char) -> bool {
    matches!(c, '.' | ',' | '・')
}

fn is_prime(c: char) -> bool {
    matches!(c, '\'' | '‘' | '’' | '′')
}

fn is_figure(c: char) -> bool {
    digit(c).is_some() || multiplier(c).is_some()
}

/// The value of one digit, everyday kanji and the ones used on deeds included.
fn digit(c: char) -> Option<u8> {
    Some(match c {
        '0' | '〇' | '零' => 0,
        '1' | '一' | '壱' => 1,
        '2' | '二' | '弐' => 2,
        '3' | '三' | '参' => 3,
        '4' | '四' => 4,
        '5' | '五' | '伍' => 5,
        '6' | '六' => 6,
        '7' | '七' => 7,
        '8' | '八' => 8,
        '9' | '九' => 9,
        _ => return None,
    })
}

fn multiplier(c: char) -> Option<i64> {
    Some(match c {
        '十' | '拾' => 10,
        '百' => 100,
        '千' => 1000,
        _ => return None,
    })
}

/// A number counted in tens, hundreds and thousands, such as 百六十一; `None` if it is not formed
/// that way.
fn counted(figures: &[char]) -> Option<i64> {
    let (mut total, mut pending, mut last) = (0, None, i64::MAX);
    for &c in figures {
        match (multiplier(c), digit(c)) {
            (Some(times), _) if times < last => {
                total += pending.take().unwrap_or(1) * times;
                last = times;
            }
            (None, Some(value)) if value > 0 && pending.is_none() => {
                pending = Some(i64::from(value));
            }
            _ => return None,
        }
    }
    Some(total + pending.unwrap_or(0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_counted_in_tens_and_hundreds_are_read() {
        let value = |text: &str| counted(&text.chars().collect::<Vec<_>>());
        for (text, number) in [
            ("十", 10),
            ("十二", 12),
            ("二十", 20),
            ("百六十一", 161),
            ("千百五", 1105),
        ] {
            assert_eq!(value(text), Some(number), "{text}");
        }
        for text in ["十十", "十百", "二三十", "百〇五", "百〇", "〇百", "百五六"]
        {
            assert_eq!(value(text), None, "{text}");
        }
    }
}
