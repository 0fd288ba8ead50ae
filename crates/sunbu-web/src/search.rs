//! Finding a name in a list: any part of it, small or capital, half or full width.

use unicode_normalization::UnicodeNormalization;

/// Whether every word of `sought` is part of one of the texts; nothing sought is found in all.
pub(crate) fn matches(sought: &str, texts: &[&str]) -> bool {
    let texts: Vec<String> = texts.iter().map(|text| folded(text)).collect();
    folded(sought)
        .split_whitespace()
        .all(|word| texts.iter().any(|text| text.contains(word)))
}

/// Whether two names read alike: they tell nobody apart.
pub(crate) fn same_name(a: &str, b: &str) -> bool {
    let folded = |text: &str| folded(text).split_whitespace().collect::<String>();
    folded(a) == folded(b)
}

fn folded(text: &str) -> String {
    text.nfkc().flat_map(char::to_lowercase).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_that_read_alike_are_the_same() {
        for (a, b, want) in [
            ("Hana", "hana ", true),
            ("田中　花", "田中花", true),
            ("Hana", "Hanae", false),
        ] {
            assert_eq!(same_name(a, b), want, "{a} and {b}");
        }
    }

    #[test]
    fn letters_are_found_whatever_their_size_and_width() {
        for (sought, text, want) in [
            ("", "Tanabe Chiyo", true),
            ("chiyo tan", "Tanabe Chiyo", true),
            ("ＴＡＮＡＢＥ", "Tanabe Chiyo", true),
            ("たなべ", "たなべ　ちよ", true),
            ("ﾀﾅﾍﾞ", "タナベ", true),
            ("mori", "Tanabe Chiyo", false),
        ] {
            assert_eq!(matches(sought, &[text]), want, "{sought} in {text}");
        }
    }
}
