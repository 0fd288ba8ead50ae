//! Writes SVG: elements, numbers with one decimal, escaped text.
//!
//! One user unit is a millimetre on the body, so one decimal is 1/100 cm. The same input gives
//! the same bytes: numbers have a fixed form, and nothing depends on the order of a hash.

use std::fmt::Write as _;

/// User units per centimetre on the body.
pub const UNITS_PER_CM: f64 = 10.0;

/// A drawing in the making.
#[derive(Debug, Default)]
pub(crate) struct Svg {
    out: String,
    open: Vec<&'static str>,
}

/// A number with at most one decimal, the way it stands in the file.
pub(crate) fn number(value: f64) -> String {
    let tenths = (value * 10.0).round();
    // Zero is written without a sign, whichever side it was rounded from.
    let tenths = if tenths == 0.0 { 0.0 } else { tenths };
    let text = format!("{:.1}", tenths / 10.0);
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

/// Text with what has a meaning in XML escaped; characters that XML forbids are left out.
pub(crate) fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\t' | '\n' | '\r' => out.push(' '),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => {}
            _ => out.push(c),
        }
    }
    out
}

impl Svg {
    /// Opens an element with the attributes written as they stand.
    pub fn open(&mut self, name: &'static str, attributes: &str) {
        self.tag(name, attributes, ">");
        self.open.push(name);
    }

    /// Closes the element opened last.
    pub fn close(&mut self) {
        if let Some(name) = self.open.pop() {
            let _ = write!(self.out, "</{name}>");
            if name == "g" {
                self.out.push('\n');
            }
        }
    }

    /// An element without content.
    pub fn empty(&mut self, name: &str, attributes: &str) {
        self.tag(name, attributes, "/>");
    }

    /// An element that holds only text.
    pub fn words(&mut self, name: &str, attributes: &str, text: &str) {
        self.tag(name, attributes, ">");
        let _ = write!(self.out, "{}</{name}>", escape(text));
    }

    /// Markup that is already SVG.
    pub fn raw(&mut self, markup: &str) {
        self.out.push_str(markup);
    }

    fn tag(&mut self, name: &str, attributes: &str, end: &str) {
        let gap = if attributes.is_empty() { "" } else { " " };
        let _ = write!(self.out, "<{name}{gap}{attributes}{end}");
    }

    /// The finished text.
    pub fn finish(mut self) -> String {
        while !self.open.is_empty() {
            self.close();
        }
        self.out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_one_form() {
        for (value, text) in [
            (0.0, "0"),
            (-0.04, "0"),
            (12.0, "12"),
            (12.34, "12.3"),
            (-7.96, "-8"),
            (0.05, "0.1"),
        ] {
            assert_eq!(number(value), text, "{value}");
        }
    }

    #[test]
    fn text_cannot_break_out_of_its_element() {
        assert_eq!(
            escape("<b a=\"1\">&\u{1}\n"),
            "&lt;b a=&quot;1&quot;&gt;&amp; "
        );
    }
}
