//! A photo with the lines of the dressing as they are seen and as they are wanted.
//!
//! What is seen is a whole line, what is wanted a dashed one, both cased in white so that they stand
//! out from any cloth; between the two an arrow, and beside it what moves which way and by how much.
//! The number of the advice stands before it. Coordinates are the photo's own pixels.

mod lines;
mod pen;

use sunbu_core::check::Report;
use sunbu_core::photo::{Moved, Overlay, Pixel, View};
use sunbu_words::Words;

use lines::{LINES, Line, Way, is_moved, line_of, line_of_quantity, moves, places};
use pen::{Kind, Pen};

use crate::svg::{Svg, number};

/// Height of the letters over the height of the part that is shown.
const LETTERS: f64 = 0.0235;
/// How much of the photo is shown beside, above and below the figure, over her height.
const BESIDE: f64 = 0.4;
const ABOVE: f64 = 0.07;
const BELOW: f64 = 0.06;

/// What is drawn.
#[derive(Clone, Copy)]
pub struct Overlaid<'a> {
    /// Where the photo is: an address, or the picture itself as a data address.
    pub href: &'a str,
    /// From which side it shows her.
    pub view: View,
    /// Its size, in pixels.
    pub size: [u32; 2],
    /// Its places.
    pub overlay: &'a Overlay,
    /// What the check says.
    pub report: &'a Report,
    /// The language.
    pub words: &'a Words,
    /// What is shown, in the reader's language.
    pub title: &'a str,
    /// Start of the ids in the drawing: two on one page need two of them.
    pub id: &'a str,
}

/// What is said beside one line.
struct Label {
    text: String,
    /// Numbers of the advice that shows here, from 1.
    advice: Vec<usize>,
    at: Moved,
}

/// The part of the photo that is shown.
#[derive(Clone, Copy)]
struct Part {
    left: f64,
    top: f64,
    width: f64,
    height: f64,
}

/// The photo with its lines, as one SVG document.
///
/// Only the part with the figure is shown; below it stand what the lines mean and a scale. `<title>`
/// and `<desc>` say in words what the drawing shows, numbers included.
pub fn overlay(shown: &Overlaid) -> String {
    let part = Part::of(shown);
    let ty = LETTERS * part.height;
    let labels = labels(shown);
    let foot = 2.6 * ty;
    let mut svg = Svg::default();
    let (w, id) = (shown.words, shown.id);
    svg.open(
        "svg",
        &format!(
            "xmlns=\"http://www.w3.org/2000/svg\" class=\"draw-overlay\" role=\"img\" \
             aria-labelledby=\"{id}-title\" aria-describedby=\"{id}-desc\" viewBox=\"{} {} {} {}\" \
             font-family=\"system-ui, 'Noto Sans JP', IPAexGothic, sans-serif\" lang=\"{}\"",
            number(part.left),
            number(part.top),
            number(part.width),
            number(part.height + foot),
            w.lang().code()
        ),
    );
    let view = w.view(shown.view);
    let args = [("title", shown.title.into()), ("view", (&view).into())];
    let title = w.with("overlay-title", &args);
    svg.words("title", &format!("id=\"{id}-title\""), &title);
    let told: Vec<String> = labels.iter().map(|label| label.text.clone()).collect();
    let desc = if told.is_empty() {
        w.get("overlay-desc-same")
    } else {
        let moves = w.listed(&told);
        w.with("overlay-desc", &[("moves", (&moves).into())])
    };
    svg.words("desc", &format!("id=\"{id}-desc\""), &desc);
    let [width, height] = shown.size;
    svg.empty(
        "image",
        &format!(
            "href=\"{}\" x=\"0\" y=\"0\" width=\"{width}\" height=\"{height}\"",
            crate::svg::escape(shown.href)
        ),
    );
    let pen = Pen { ty };
    for line in LINES {
        let places = places(shown.overlay, line);
        let seen: Vec<Pixel> = places.iter().map(|moved| moved.seen).collect();
        pen.stroke(&mut svg, line, Kind::Seen, &seen, shown.overlay);
    }
    for line in LINES {
        let places = places(shown.overlay, line);
        let is_told = moves(shown.overlay, line).is_some();
        if is_told || line.told_at.is_empty() && places.iter().any(is_moved) {
            let wanted: Vec<Pixel> = places.iter().map(|moved| moved.wanted).collect();
            pen.stroke(&mut svg, line, Kind::Wanted, &wanted, shown.overlay);
        }
    }
    pen.beside(&mut svg, &labels, part);
    pen.foot(&mut svg, shown, part, foot);
    svg.finish()
}

/// What is said beside each line that is at fault or to be changed, from the top of the picture
/// down. Lines that only follow these move without a word.
fn labels(shown: &Overlaid) -> Vec<Label> {
    let w = shown.words;
    let faults = &shown.report.diagnosis.faults;
    let label = |line: &Line| {
        let (cm, at) = moves(shown.overlay, line)?;
        let numbers = shown.report.advice.iter().enumerate();
        let advice: Vec<usize> = numbers
            .filter(|(_, advice)| line_of(advice) == Some(line.key))
            .map(|(place, _)| place + 1)
            .collect();
        let is_fault = faults
            .iter()
            .any(|fault| line_of_quantity(fault.quantity) == Some(line.key));
        if advice.is_empty() && !is_fault {
            return None;
        }
        let id = match (line.way, cm > 0.0) {
            (Way::Up, true) => "overlay-higher",
            (Way::Up, false) => "overlay-lower",
            (Way::Aside, true) => "overlay-left",
            (Way::Aside, false) => "overlay-right",
        };
        let what = w.get(&format!("overlay-line-{}", line.key));
        let amount = w.rough(cm.abs());
        let args = [("what", (&what).into()), ("amount", (&amount).into())];
        Some(Label {
            text: w.with(id, &args),
            advice,
            at,
        })
    };
    let mut all: Vec<Label> = LINES.iter().filter_map(label).collect();
    all.sort_by(|a, b| a.at.wanted[1].total_cmp(&b.at.wanted[1]));
    all
}

impl Part {
    /// The figure with a margin, within the photo.
    fn of(shown: &Overlaid) -> Self {
        let [width, height] = shown.size.map(f64::from);
        let all: Vec<Pixel> = shown.overlay.places.values().map(|m| m.seen).collect();
        let range = |k: usize| {
            let (low, high) = (f64::INFINITY, f64::NEG_INFINITY);
            all.iter().fold((low, high), |(low, high), at| {
                (low.min(at[k]), high.max(at[k]))
            })
        };
        let ((left, right), (top, bottom)) = (range(0), range(1));
        let tall = bottom - top;
        if !tall.is_finite() || tall <= 0.0 {
            return Self {
                left: 0.0,
                top: 0.0,
                width,
                height,
            };
        }
        let middle = 0.5 * (left + right);
        let half = (BESIDE * tall).max(0.5 * (right - left) + 0.03 * tall);
        let left = (middle - half).max(0.0);
        let top = (top - ABOVE * tall).max(0.0);
        Self {
            left,
            top,
            width: (middle + half).min(width) - left,
            height: (bottom + BELOW * tall).min(height) - top,
        }
    }
}
