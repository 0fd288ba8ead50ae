//! One spelling for what keyboards and pages spell in several ways.
//!
//! Full-width and half-width forms and squared units (㎝, ㌢) become their plain letters, capitals
//! become small, long vowels lose their mark (jō, jô). Other compatibility forms stay as they are,
//! unlike in Unicode's NFKC: there 5½ would become 51/2 and 16² would become 162.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::decompose_compatible;

/// The text in one spelling.
pub(super) fn fold(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            // A byte-order mark, a zero-width space and a word joiner come along in pasted text.
            '\u{FEFF}' | '\u{200B}' | '\u{2060}' => {}
            // Full- and half-width forms, and the block of squared units.
            '\u{FF01}'..='\u{FFEE}' | '\u{3300}'..='\u{33FF}' => {
                decompose_compatible(c, |part| plain.push(part));
            }
            // A fraction in one character: the space keeps it apart from the whole number.
            '¼'..='¾' | '\u{2150}'..='\u{215E}' | '\u{2189}' => {
                plain.push(' ');
                decompose_compatible(c, |part| plain.push(part));
            }
            _ => plain.push(c),
        }
    }
    plain
        .nfc()
        .flat_map(char::to_lowercase)
        .map(without_length_mark)
        .collect()
}

fn without_length_mark(c: char) -> char {
    match c {
        'ā' | 'â' => 'a',
        'ī' | 'î' => 'i',
        'ū' | 'û' => 'u',
        'ē' | 'ê' => 'e',
        'ō' | 'ô' => 'o',
        _ => c,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spellings_of_the_same_text_become_one() {
        for (typed, folded) in [
            ("１６１．５ｃｍ", "161.5cm"),
            ("161㎝", "161cm"),
            ("161㌢", "161センチ"),
            ("161ｾﾝﾁ", "161センチ"),
            ("5ﾌｨｰﾄ", "5フィート"),
            ("３ Jō", "3 jo"),
            ("3 Jo\u{0304}", "3 jo"), // the macron as a character of its own
            ("5½", "5 1⁄2"),
            ("\u{feff}161", "161"),
        ] {
            assert_eq!(fold(typed), folded, "typed {typed}");
        }
    }

    #[test]
    fn raised_and_circled_digits_do_not_become_plain_digits() {
        for typed in ["16²", "16₂", "①", "⒈"] {
            assert_eq!(fold(typed), typed);
        }
    }
}
