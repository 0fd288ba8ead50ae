//! Text on a drawing: how wide it is at most, and where it breaks.
//!
//! The reader's own fonts are used, so widths can only be bounded. The table holds widths that
//! common sans-serif faces do not exceed (measured on DejaVu Sans, the widest of the usual ones);
//! Japanese characters take one em.

/// How much wider a bold face runs than the plain one, at most.
pub(crate) const BOLD: f64 = 1.12;

/// Width of one character, in em.
fn em(c: char) -> f64 {
    match c {
        'i' | 'j' | 'l' | '\'' | '|' => 0.29,
        'f' | 'r' | 't' | ' ' | '.' | ',' | ':' | ';' | '(' | ')' | '-' | '/' | '!' | 'I' => 0.42,
        'm' | 'w' | 'M' | 'W' => 0.99,
        'A'..='Z' | '±' | '−' | '+' | '=' | '<' | '>' | '&' => 0.8,
        '–' => 0.52,
        c if c.is_ascii() => 0.64,
        '\u{a0}'..='\u{24f}' => 0.66,
        _ => 1.0,
    }
}

/// Width of a text at most, for a font size, in the unit of the size.
pub(crate) fn width(text: &str, size: f64) -> f64 {
    text.chars().map(em).sum::<f64>() * size
}

/// Whether a line may break before `c`: Japanese breaks nearly anywhere, but not before closing
/// marks and small kana (a short form of JIS X 4051's rule, from memory).
fn breaks_before(c: char) -> bool {
    c as u32 > 0x2e7f
        && !"、。,.・:;)」』】〉》ー々ぁぃぅぇぉっゃゅょァィゥェォッャュョ〜".contains(c)
}

/// The text in lines no wider than `room` where its words allow that.
pub(crate) fn wrapped(text: &str, size: f64, room: f64) -> Vec<String> {
    let mut pieces: Vec<String> = Vec::new();
    for c in text.chars() {
        let opens = pieces.last().is_some_and(|p| p.ends_with(['(', '「', '(']));
        let new = match pieces.last() {
            None => true,
            Some(last) => last.ends_with(' ') || (breaks_before(c) && !opens),
        };
        if new {
            pieces.push(String::new());
        }
        if let Some(last) = pieces.last_mut() {
            last.push(c);
        }
    }
    let mut lines: Vec<String> = Vec::new();
    for piece in pieces {
        match lines.last_mut() {
            Some(line) if width(&format!("{line}{}", piece.trim_end()), size) <= room => {
                line.push_str(&piece);
            }
            _ => lines.push(piece),
        }
    }
    for line in &mut lines {
        line.truncate(line.trim_end().len());
    }
    lines
}

/// The text with its first letter a capital, for the start of a line.
pub(crate) fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(chars).collect()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_keep_within_the_room_and_lose_no_character() {
        for text in [
            "Front cover: outer edge in front of the right side line",
            "衿先から腰紐まで(上前の衿)の長さ、右脇線で",
            "Fold (おはしょり) at the right side",
        ] {
            let lines = wrapped(text, 10.0, 130.0);
            assert!(lines.len() > 1, "{lines:?}");
            for line in &lines {
                assert!(width(line, 10.0) <= 130.0, "{line}: {}", width(line, 10.0));
            }
            let bare = |t: &str| t.replace(' ', "");
            assert_eq!(bare(&lines.concat()), bare(text));
        }
    }

    #[test]
    fn a_word_wider_than_the_room_stays_whole() {
        assert_eq!(wrapped("ushirohaba b", 10.0, 20.0), ["ushirohaba", "b"]);
    }

    #[test]
    fn japanese_does_not_start_a_line_with_a_closing_mark() {
        for room in 20..120 {
            let lines = wrapped("おはしょり(前)、右。", 10.0, f64::from(room));
            assert!(
                lines.iter().all(|l| !l.starts_with(['、', '。', ')'])),
                "{lines:?}"
            );
        }
    }
}
