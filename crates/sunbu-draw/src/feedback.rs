//! The sheet that a student is handed, as one picture: photos with their lines, what to change in
//! order, why and how to practise it, and one thing that is good.
//!
//! As wide as A4 and as tall as its words need: on a phone it is scrolled, on paper it is fitted.

use sunbu_words::{Advised, Words};

use crate::look::{self, INK, Look, PAPER};
use crate::sheet::put;
use crate::svg::{Svg, number};
use crate::text;

/// Width of A4 (ISO 216) at ten units to the millimetre.
const WIDTH: f64 = 2100.0;
/// Room on each side.
const MARGIN: f64 = 110.0;
/// Between two photos.
const GAP: f64 = 40.0;
/// No photo is taller: the first words then stand on the first page (chosen).
const TALLEST: f64 = 1180.0;
/// Font sizes: 4.2 mm for what is read, 6.4 mm for the title (chosen: read on a phone turned wide).
const SIZE: f64 = 42.0;
const TITLE: f64 = 64.0;
/// Line height over font size.
const LEADING: f64 = 1.45;
/// Room before the words of a numbered thing.
const INDENT: f64 = 96.0;

/// What the sheet says.
#[derive(Clone, Copy)]
pub struct Feedback<'a> {
    /// Its heading.
    pub title: &'a str,
    /// Whom it is for and when, in one line.
    pub about: &'a str,
    /// The photos, as [`crate::overlay()`] draws them, each with its picture in it.
    pub photos: &'a [String],
    /// What is said before all else; none when nothing is.
    pub first: Option<&'a str>,
    /// One thing that is good.
    pub good: &'a str,
    /// The things to change, in order.
    pub advised: &'a [Advised],
    /// What is said where nothing is to be changed, or of what else there would be; none when
    /// everything is told.
    pub more: Option<&'a str>,
    /// What to mind.
    pub cautions: &'a [String],
    /// The language.
    pub words: &'a Words,
}

/// A pen that writes down the page.
struct Page {
    svg: Svg,
    y: f64,
}

/// The sheet, as one SVG document.
pub fn feedback(sheet: &Feedback) -> String {
    let mut page = Page {
        svg: Svg::default(),
        y: MARGIN,
    };
    let w = sheet.words;
    page.bold(TITLE, MARGIN, sheet.title);
    page.lines(look::SOFT_TEXT, SIZE, MARGIN, sheet.about);
    page.y += 0.5 * SIZE;
    page.photos(sheet.photos);
    if let Some(first) = sheet.first {
        page.heading(&w.get("check-h-way"));
        page.lines(look::TEXT, SIZE, MARGIN, first);
    }
    page.heading(&w.get("check-h-good"));
    page.lines(look::TEXT, SIZE, MARGIN, sheet.good);
    page.heading(&w.get("check-h-advice"));
    for (place, one) in sheet.advised.iter().enumerate() {
        page.thing(w, place + 1, one);
    }
    if let Some(more) = sheet.more {
        page.lines(look::TEXT, SIZE, MARGIN, more);
    }
    if !sheet.cautions.is_empty() {
        page.heading(&w.get("check-h-cautions"));
        for caution in sheet.cautions {
            page.lines(look::TEXT, 0.86 * SIZE, MARGIN, caution);
            page.y += 0.3 * SIZE;
        }
    }
    let height = page.y + MARGIN;
    let mut svg = Svg::default();
    svg.open(
        "svg",
        &format!(
            "xmlns=\"http://www.w3.org/2000/svg\" class=\"draw-feedback\" role=\"img\" \
             aria-labelledby=\"feedback-title\" viewBox=\"0 0 {} {}\" \
             font-family=\"system-ui, 'Noto Sans JP', IPAexGothic, sans-serif\" lang=\"{}\"",
            number(WIDTH),
            number(height),
            w.lang().code()
        ),
    );
    svg.words("title", "id=\"feedback-title\"", sheet.title);
    svg.empty(
        "rect",
        &format!(
            "fill=\"{}\" width=\"{}\" height=\"{}\"",
            PAPER.hex,
            number(WIDTH),
            number(height)
        ),
    );
    svg.raw(&page.svg.finish());
    svg.finish()
}

impl Page {
    /// A text in as many lines as it needs, from `left` to the margin.
    fn lines(&mut self, look: Look, size: f64, left: f64, words: &str) {
        for line in text::wrapped(&held(words), size, WIDTH - MARGIN - left) {
            self.y += LEADING * size;
            let at = (left, self.y - 0.3 * size);
            put(&mut self.svg, look, size, "start", at, &line);
        }
    }

    /// The same in bold.
    fn bold(&mut self, size: f64, left: f64, words: &str) {
        self.svg.open("g", "font-weight=\"700\"");
        for line in text::wrapped(&held(words), text::BOLD * size, WIDTH - MARGIN - left) {
            self.y += LEADING * size;
            let at = (left, self.y - 0.3 * size);
            put(&mut self.svg, look::TEXT, size, "start", at, &line);
        }
        self.svg.close();
    }

    /// A heading under a rule.
    fn heading(&mut self, words: &str) {
        self.y += 0.8 * SIZE;
        let (left, right) = (number(MARGIN), number(WIDTH - MARGIN));
        let line = format!("M{left} {}H{right}", number(self.y));
        let look = look::FINE_LINE.attributes();
        self.svg.empty("path", &format!("{look} d=\"{line}\""));
        self.y += 0.3 * SIZE;
        self.bold(1.12 * SIZE, MARGIN, words);
        self.y += 0.2 * SIZE;
    }

    /// The photos side by side, as large as there is room.
    fn photos(&mut self, photos: &[String]) {
        let shapes: Vec<(f64, &String)> = photos
            .iter()
            .filter_map(|svg| Some((shape(svg)?, svg)))
            .collect();
        if shapes.is_empty() {
            return;
        }
        let gaps = GAP * (shapes.len() as f64 - 1.0);
        let widths: f64 = shapes.iter().map(|(shape, _)| shape).sum();
        let height = ((WIDTH - 2.0 * MARGIN - gaps) / widths).min(TALLEST);
        let mut x = 0.5 * (WIDTH - widths * height - gaps);
        for (shape, svg) in shapes {
            let place = format!(
                "<svg x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" ",
                number(x),
                number(self.y),
                number(shape * height),
                number(height)
            );
            self.svg.raw(&svg.replacen("<svg ", &place, 1));
            x += shape * height + GAP;
        }
        self.y += height;
    }

    /// One thing to change, with its number in a disc as on the photos.
    fn thing(&mut self, w: &Words, place: usize, one: &Advised) {
        self.y += 0.4 * SIZE;
        let left = MARGIN + INDENT;
        let middle = (MARGIN + 0.36 * INDENT, self.y + 0.5 * LEADING * 1.1 * SIZE);
        self.svg.empty(
            "circle",
            &format!(
                "fill=\"{}\" cx=\"{}\" cy=\"{}\" r=\"{}\"",
                INK.hex,
                number(middle.0),
                number(middle.1),
                number(0.34 * INDENT)
            ),
        );
        self.svg.words(
            "text",
            &format!(
                "fill=\"{}\" text-anchor=\"middle\" font-size=\"{}\" x=\"{}\" y=\"{}\"",
                PAPER.hex,
                number(SIZE),
                number(middle.0),
                number(middle.1 + 0.35 * SIZE)
            ),
            &place.to_string(),
        );
        self.bold(1.1 * SIZE, left, &one.title);
        let why = w.with("check-advice-why", &[("why", (&one.why).into())]);
        self.lines(look::TEXT, SIZE, left, &why);
        if let Some(now) = &one.now {
            let now = w.with("check-advice-now", &[("how", now.into())]);
            self.lines(look::TEXT, SIZE, left, &now);
        }
        let practise = w.with("check-advice-next", &[("how", (&one.practise).into())]);
        self.lines(look::TEXT, SIZE, left, &practise);
        self.y += 0.3 * SIZE;
    }
}

/// The text with each number held to its unit: no line breaks between the two.
fn held(words: &str) -> String {
    let mut out = words.to_owned();
    for unit in ["cm", "%"] {
        out = out.replace(&format!(" {unit}"), &format!("\u{a0}{unit}"));
    }
    out
}

/// Width over height of a drawing, as its own head says; none when it does not say.
fn shape(svg: &str) -> Option<f64> {
    let (_, rest) = svg.split_once("viewBox=\"")?;
    let mut numbers = rest.split('"').next()?.split(' ').skip(2).map(str::parse);
    let (width, height): (f64, f64) = (numbers.next()?.ok()?, numbers.next()?.ok()?);
    (width > 0.0 && height > 0.0).then(|| width / height)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_stays_with_its_unit() {
        let words = "右脇のおはしょりが1.8 cm短すぎる、帯下線が3 cm低すぎる。";
        for room in 20..400 {
            let lines = text::wrapped(&held(words), 10.0, f64::from(room));
            let torn = lines.iter().find(|line| line.starts_with("cm"));
            assert_eq!(torn, None, "{lines:?}");
        }
    }

    #[test]
    fn the_shape_of_a_drawing_is_read_from_its_head() {
        let read = shape("<svg viewBox=\"10 20 300 600\"><g/></svg>");
        assert_eq!(read, Some(0.5));
        assert_eq!(shape("<svg/>"), None);
        assert_eq!(shape("<svg viewBox=\"0 0 0 5\"/>"), None);
    }
}
