//! A page of text for a terminal: headings, wrapped lines, lists.

use textwrap::core::Word;
use textwrap::{Options, WordSeparator, fill};
use unicode_linebreak::{BreakOpportunity, linebreaks};

/// Columns of a line: what every terminal and every sheet of paper has. A Japanese letter takes
/// two of them.
const COLUMNS: usize = 80;

/// Text being put together.
#[derive(Debug, Default)]
pub struct Page {
    text: String,
}

impl Page {
    /// An empty page.
    pub fn new() -> Page {
        Page::default()
    }

    /// A heading, underlined, with an empty line before it unless it stands first.
    pub fn heading(&mut self, heading: &str) {
        if !self.text.is_empty() {
            self.text.push('\n');
        }
        let width = textwrap::core::display_width(heading);
        self.text
            .push_str(&format!("{heading}\n{}\n", "-".repeat(width)));
    }

    /// A paragraph, wrapped, each line after `indent`.
    pub fn paragraph(&mut self, indent: &str, text: &str) {
        self.wrapped(indent, indent, text);
    }

    /// An item of a list: `first` before its first line, as many blanks before the others.
    pub fn item(&mut self, first: &str, text: &str) {
        let rest = " ".repeat(textwrap::core::display_width(first));
        self.wrapped(first, &rest, text);
    }

    /// An empty line.
    pub fn gap(&mut self) {
        self.text.push('\n');
    }

    fn wrapped(&mut self, first: &str, rest: &str, text: &str) {
        let options = Options::new(COLUMNS)
            .initial_indent(first)
            .subsequent_indent(rest)
            .word_separator(WordSeparator::Custom(parts));
        self.text.push_str(&fill(text, options));
        self.text.push('\n');
    }

    /// The finished text.
    pub fn into_text(self) -> String {
        self.text
    }
}

/// The parts of a line between which it may be broken, by Unicode's rules (UAX 14): Japanese
/// between most letters, but with no full stop at the head of a line.
fn parts(line: &str) -> Box<dyn Iterator<Item = Word<'_>> + '_> {
    // A number stays with its unit, and an interval in one piece.
    let holds_together = |at: usize| {
        let (before, after) = line.split_at(at);
        before.ends_with(['–', '〜']) || after.starts_with("cm")
    };
    let allowed = move |&(at, how): &(usize, BreakOpportunity)| {
        how == BreakOpportunity::Allowed && !holds_together(at)
    };
    let ends = linebreaks(line)
        .filter(allowed)
        .map(|(at, _)| at)
        .chain([line.len()]);
    let mut start = 0;
    Box::new(ends.filter_map(move |end| {
        let part = line.get(start..end).filter(|part| !part.is_empty())?;
        start = end;
        Some(Word::from(part))
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_stays_with_its_unit_and_an_interval_in_one_piece() {
        for text in ["cloth 16.4–22.3 cm of it ", "布16.4〜22.3 cmまで"] {
            let mut page = Page::new();
            page.paragraph("", &text.repeat(20));
            for line in page.into_text().lines() {
                assert!(
                    !line.ends_with(['–', '〜']) && !line.starts_with("cm"),
                    "{line}"
                );
                assert!(!line.ends_with("22.3"), "{line}");
            }
        }
    }

    #[test]
    fn no_line_is_wider_than_the_page_in_either_script() {
        let mut page = Page::new();
        page.item("  1. ", &"the fold in front ".repeat(20));
        page.item("  2. ", &"腰紐を腰骨の上で締めます。".repeat(20));
        for line in page.into_text().lines() {
            let width = textwrap::core::display_width(line);
            assert!(width <= COLUMNS, "{width} columns: {line}");
            assert!(!line.trim_start().starts_with('。'), "{line}");
        }
    }
}
