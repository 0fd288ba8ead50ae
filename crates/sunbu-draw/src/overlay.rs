//! A photo with the lines of the dressing as they are seen and as they are wanted.
//!
//! What is seen is a whole line, what is wanted a dashed one, both cased in white so that they stand
//! out from any cloth; between the two an arrow, and beside it what moves which way and by how much.
//! The number of the advice stands before it. Coordinates are the photo's own pixels.

use std::fmt::Write as _;

use sunbu_core::check::{Advice, Report};
use sunbu_core::dressing::{Decision, Quantity};
use sunbu_core::fault::Fault;
use sunbu_core::photo::{Mark, Moved, Overlay, Pixel, View};
use sunbu_words::Words;

use crate::look::{INK, PAPER, Tone, WANTED};
use crate::svg::{Svg, number};
use crate::text;

/// What moves by less than this is not told to move, in centimetres (chosen: nobody sees it from
/// three steps away, and no photo shows it).
const LEAST_CM: f64 = 0.5;
/// Height of the letters over the height of the part that is shown.
const LETTERS: f64 = 0.0235;
/// How much of the photo is shown beside, above and below the figure, over her height.
const BESIDE: f64 = 0.4;
const ABOVE: f64 = 0.07;
const BELOW: f64 = 0.06;
/// Length of the scale, in centimetres.
const SCALE_CM: f64 = 10.0;
/// Half the length of the stroke that stands for a line of which one place is marked, in centimetres.
const STROKE_CM: f64 = 5.0;

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

/// Along which way a line is moved.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    Up,
    Aside,
}

/// A line of the dressing.
struct Line {
    key: &'static str,
    way: Way,
    /// Its marks from one end to the other; those not set are left out.
    marks: &'static [Mark],
    /// Where it is told how far it moves: the first of these that is marked.
    told_at: &'static [Mark],
}

/// Every line, from the floor up.
const LINES: &[Line] = {
    use Mark as M;
    use Way::{Aside, Up};
    const fn line(
        key: &'static str,
        way: Way,
        marks: &'static [Mark],
        told_at: &'static [Mark],
    ) -> Line {
        Line {
            key,
            way,
            marks,
            told_at,
        }
    }
    const HEM: &[M] = &[
        M::HemRight,
        M::UwamaeCorner,
        M::HemCentre,
        M::SeamHem,
        M::HemLeft,
    ];
    const HEM_AT: &[M] = &[M::HemCentre, M::SeamHem, M::HemLeft, M::HemRight];
    const EDGE: &[M] = &[M::UwamaeCorner, M::EdgeAtFold, M::CollarEnd];
    const FOLD: &[M] = &[M::FoldRight, M::FoldCentre, M::FoldLeft];
    const FOLD_AT: &[M] = &[M::FoldCentre, M::FoldRight, M::FoldLeft];
    const OBI: &[M] = &[M::ObiLowerRight, M::ObiLowerCentre, M::ObiLowerLeft];
    const OBI_AT: &[M] = &[M::ObiLowerCentre, M::ObiLowerRight, M::ObiLowerLeft];
    const OBI_TOP: &[M] = &[M::ObiUpperRight, M::ObiUpperCentre, M::ObiUpperLeft];
    const COLLAR: &[M] = &[M::CollarShoulderLeft, M::KimonoCrossing, M::CollarTieLeft];
    const JUBAN: &[M] = &[M::JubanEdgeLeft, M::JubanCrossing, M::JubanEdgeRight];
    &[
        line("hem", Up, HEM, HEM_AT),
        line("corner", Up, &[M::UwamaeCorner], &[M::UwamaeCorner]),
        line("edge", Aside, EDGE, EDGE),
        line("seam", Aside, &[M::SeamHem, M::SeamHip], &[M::SeamHip]),
        line("fold", Up, FOLD, FOLD_AT),
        line("tail", Up, &[M::TareEnd], &[M::TareEnd]),
        line("drum", Up, &[M::DrumBottom], &[M::DrumBottom]),
        line("obi", Up, OBI, OBI_AT),
        line("obi_top", Up, OBI_TOP, &[]),
        line("obiage", Up, &[M::ObiageTop], &[M::ObiageTop]),
        line("drum_top", Up, &[M::DrumTop], &[]),
        line("collars", Up, COLLAR, &[M::KimonoCrossing]),
        line(
            "under_collar",
            Up,
            &[M::CollarShoulderRight, M::KimonoCrossing],
            &[],
        ),
        line("juban", Up, JUBAN, &[M::JubanCrossing]),
        line(
            "seam_top",
            Aside,
            &[M::SeamNape, M::SeamWaist],
            &[M::SeamWaist],
        ),
        line("nape", Up, &[M::Nape], &[M::Nape]),
    ]
};

/// The line at which a piece of advice shows.
fn line_of(advice: &Advice) -> Option<&'static str> {
    use Decision as D;
    Some(match advice {
        Advice::Way => return None,
        Advice::Change(change) => match change.decision {
            D::HemHeight => "hem",
            D::UwamaeRaise => "corner",
            D::BackSeamHip => "seam",
            D::BackSeamTop => "seam_top",
            D::KoshihimoBack
            | D::KoshihimoFront
            | D::TakeUpFront
            | D::TakeUpRight
            | D::TakeUpBack => "fold",
            D::NapeDrop => "nape",
            D::JubanOverlap => "juban",
            D::KimonoOverlap => "collars",
            D::ObiLowerEdge => "obi",
            D::DrumHeight => "drum",
            D::TareLength => "tail",
            D::ObiageShow => "obiage",
            D::ShitamaeRaise | D::ShitamaeFoldBack | D::WaistPadding | D::HipPadding => {
                return None;
            }
        },
        Advice::Fault(fault) => match fault {
            Fault::HemUneven => "hem",
            Fault::ObiSlanting => "obi",
            _ => return None,
        },
    })
}

/// The line at which a quantity shows.
fn line_of_quantity(quantity: Quantity) -> Option<&'static str> {
    use Quantity as Q;
    Some(match quantity {
        Q::HemBack => "hem",
        Q::UwamaeCorner => "corner",
        Q::FrontCover => "edge",
        Q::BackSeamHip => "seam",
        Q::BackSeamTop | Q::BackSeamBend => "seam_top",
        Q::FoldFront | Q::FoldRight | Q::FoldBack | Q::FoldSlant => "fold",
        Q::NapeDrop => "nape",
        Q::JubanCrossing | Q::JubanShow | Q::JubanHold => "juban",
        Q::KimonoHold => "collars",
        Q::ObiOverHipBone => "obi",
        Q::DrumHeight => "drum",
        Q::TareLength => "tail",
        Q::ObiageShow => "obiage",
        _ => return None,
    })
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
        pen.stroke(&mut svg, line, "seen", &seen, shown.overlay);
    }
    for line in LINES {
        let places = places(shown.overlay, line);
        let is_told = moves(shown.overlay, line).is_some();
        if is_told || line.told_at.is_empty() && places.iter().any(is_moved) {
            let wanted: Vec<Pixel> = places.iter().map(|moved| moved.wanted).collect();
            pen.stroke(&mut svg, line, "wanted", &wanted, shown.overlay);
        }
    }
    pen.beside(&mut svg, &labels, part);
    pen.foot(&mut svg, shown, part, foot);
    svg.finish()
}

/// The places of a line that were marked, from one end to the other.
fn places(overlay: &Overlay, line: &Line) -> Vec<Moved> {
    let marks = line.marks.iter();
    marks
        .filter_map(|mark| overlay.places.get(mark).copied())
        .collect()
}

/// Whether a place moves so far that it is worth a second line.
fn is_moved(moved: &Moved) -> bool {
    moved.by_cm.iter().map(|cm| cm * cm).sum::<f64>().sqrt() >= LEAST_CM
}

/// How far a line moves where that is told, in centimetres, and there.
fn moves(overlay: &Overlay, line: &Line) -> Option<(f64, Moved)> {
    let mut told_at = line.told_at.iter();
    let moved = *told_at.find_map(|mark| overlay.places.get(mark))?;
    let cm = match line.way {
        Way::Up => moved.by_cm[2],
        Way::Aside => moved.by_cm[0],
    };
    (cm.abs() >= LEAST_CM).then_some((cm, moved))
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

/// Draws at the size of the letters.
struct Pen {
    ty: f64,
}

impl Pen {
    /// A line, cased in white; one marked place makes a short stroke.
    fn stroke(&self, svg: &mut Svg, line: &Line, kind: &str, at: &[Pixel], overlay: &Overlay) {
        let points = match *at {
            [] => return,
            [[x, y]] => {
                let half = STROKE_CM * overlay.pixels_per_cm;
                match line.way {
                    Way::Up => vec![[x - half, y], [x + half, y]],
                    Way::Aside => vec![[x, y - half], [x, y + half]],
                }
            }
            _ => at.to_vec(),
        };
        let data = smooth(&points);
        let dash = format!(
            " stroke-dasharray=\"{} {}\"",
            number(0.55 * self.ty),
            number(0.35 * self.ty)
        );
        let (tone, weight, dash) = match kind {
            "wanted" => (WANTED, 0.2, dash.as_str()),
            _ => (INK, 0.12, ""),
        };
        for (tone, weight, dash) in [(PAPER, weight + 0.14, ""), (tone, weight, dash)] {
            svg.empty(
                "path",
                &format!(
                    "data-part=\"{}-{kind}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{}\" \
                     stroke-linejoin=\"round\"{dash} d=\"{data}\"",
                    line.key,
                    tone.hex,
                    number(weight * self.ty)
                ),
            );
        }
    }

    /// An arrow for each label from what is seen to what is wanted, and the labels in a column at
    /// the right.
    fn beside(&self, svg: &mut Svg, labels: &[Label], part: Part) {
        let ty = self.ty;
        let gap = 1.6 * ty;
        let right = part.left + part.width - 0.4 * ty;
        let mut rows: Vec<f64> = labels.iter().map(|label| label.at.wanted[1]).collect();
        for i in 1..rows.len() {
            rows[i] = rows[i].max(rows[i - 1] + gap);
        }
        // What was pushed out below is pushed up again.
        let mut lowest = part.top + part.height - 0.9 * ty;
        for row in rows.iter_mut().rev() {
            *row = row.min(lowest).max(part.top + 0.9 * ty);
            lowest = *row - gap;
        }
        for (label, &row) in labels.iter().zip(&rows) {
            let wide = text::width(&label.text, ty) + 0.5 * ty;
            let badges = 1.5 * ty * f64::from(u32::try_from(label.advice.len()).unwrap_or(0));
            let left = right - wide - badges;
            let tip = label.at.wanted;
            self.casing(svg, &[tip, [left, row]], SOFT);
            self.arrow(svg, label.at.seen, tip);
            svg.empty(
                "rect",
                &format!(
                    "fill=\"{}\" fill-opacity=\"0.92\" x=\"{}\" y=\"{}\" width=\"{}\" \
                     height=\"{}\" rx=\"{}\"",
                    PAPER.hex,
                    number(left - 0.25 * ty),
                    number(row - 0.72 * ty),
                    number(wide + badges + 0.25 * ty),
                    number(1.44 * ty),
                    number(0.2 * ty)
                ),
            );
            for (place, advice) in label.advice.iter().enumerate() {
                let x = left + (0.6 + 1.5 * f64::from(u32::try_from(place).unwrap_or(0))) * ty;
                svg.empty(
                    "circle",
                    &format!(
                        "fill=\"{}\" cx=\"{}\" cy=\"{}\" r=\"{}\"",
                        INK.hex,
                        number(x),
                        number(row),
                        number(0.62 * ty)
                    ),
                );
                let text = advice.to_string();
                self.letters(svg, PAPER, "middle", [x, row], 0.9, &text);
            }
            let at = [left + badges, row];
            self.letters(svg, INK, "start", at, 1.0, &label.text);
        }
    }

    fn arrow(&self, svg: &mut Svg, from: Pixel, to: Pixel) {
        let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
        let long = dx.hypot(dy).max(1e-9);
        let (ux, uy) = (dx / long, dy / long);
        let head = (0.45 * self.ty).min(0.7 * long);
        let wing = |side: f64| {
            [
                to[0] - head * ux - side * 0.6 * head * uy,
                to[1] - head * uy + side * 0.6 * head * ux,
            ]
        };
        self.casing(svg, &[from, to], INK);
        self.casing(svg, &[wing(1.0), to, wing(-1.0)], INK);
    }

    /// A thin line cased in white.
    fn casing(&self, svg: &mut Svg, points: &[Pixel], tone: Tone) {
        let data = straight(points);
        for (tone, weight) in [(PAPER, 0.26), (tone, 0.1)] {
            svg.empty(
                "path",
                &format!(
                    "fill=\"none\" stroke=\"{}\" stroke-width=\"{}\" stroke-linejoin=\"round\" \
                     d=\"{data}\"",
                    tone.hex,
                    number(weight * self.ty)
                ),
            );
        }
    }

    /// What the lines mean, and the scale, on white below the photo.
    fn foot(&self, svg: &mut Svg, shown: &Overlaid, part: Part, foot: f64) {
        let (ty, w) = (self.ty, shown.words);
        let top = part.top + part.height;
        svg.empty(
            "rect",
            &format!(
                "fill=\"{}\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"",
                PAPER.hex,
                number(part.left),
                number(top),
                number(part.width),
                number(foot)
            ),
        );
        let row = top + 0.8 * ty;
        let mut x = part.left + 0.3 * ty;
        for (kind, id) in [("seen", "overlay-seen"), ("wanted", "overlay-wanted")] {
            let (tone, weight, dash) = match kind {
                "wanted" => (
                    WANTED,
                    0.2,
                    format!(
                        " stroke-dasharray=\"{} {}\"",
                        number(0.55 * ty),
                        number(0.35 * ty)
                    ),
                ),
                _ => (INK, 0.12, String::new()),
            };
            svg.empty(
                "path",
                &format!(
                    "fill=\"none\" stroke=\"{}\" stroke-width=\"{}\"{dash} d=\"{}\"",
                    tone.hex,
                    number(weight * ty),
                    straight(&[[x, row], [x + 2.2 * ty, row]])
                ),
            );
            let text = w.get(id);
            self.letters(svg, INK, "start", [x + 2.6 * ty, row], 0.9, &text);
            x += 3.4 * ty + text::width(&text, 0.9 * ty);
        }
        let (x, row) = (part.left + 0.3 * ty, top + 2.0 * ty);
        let long = SCALE_CM * shown.overlay.pixels_per_cm;
        let end = 0.3 * ty;
        let bar = [
            [x, row - end],
            [x, row],
            [x + long, row],
            [x + long, row - end],
        ];
        svg.empty(
            "path",
            &format!(
                "data-part=\"scale\" fill=\"none\" stroke=\"{}\" stroke-width=\"{}\" d=\"{}\"",
                INK.hex,
                number(0.1 * ty),
                straight(&bar)
            ),
        );
        let length = w.cm(SCALE_CM);
        let text = w.with("overlay-scale", &[("length", (&length).into())]);
        self.letters(svg, INK, "start", [x + long + 0.4 * ty, row], 0.9, &text);
    }

    /// Letters with their middle at a height.
    fn letters(&self, svg: &mut Svg, tone: Tone, anchor: &str, at: Pixel, size: f64, text: &str) {
        let size = size * self.ty;
        svg.words(
            "text",
            &format!(
                "fill=\"{}\" text-anchor=\"{anchor}\" font-size=\"{}\" x=\"{}\" y=\"{}\"",
                tone.hex,
                number(size),
                number(at[0]),
                number(at[1] + 0.35 * size)
            ),
            text,
        );
    }
}

/// The tone of a line that leads from a label to its place.
const SOFT: Tone = crate::look::SOFT_INK;

fn straight(points: &[Pixel]) -> String {
    let mut data = String::new();
    for (place, [x, y]) in points.iter().enumerate() {
        let step = if place == 0 { "M" } else { "L" };
        let _ = write!(data, "{step}{} {}", number(*x), number(*y));
    }
    data
}

/// A line through all points that bends evenly: at each inner point it runs as its neighbours do
/// (Catmull and Rom's spline, as cubic curves; from memory).
fn smooth(points: &[Pixel]) -> String {
    let last = points.len() - 1;
    let at = |place: usize| points[place.min(last)];
    let mut data = straight(&points[..1]);
    for i in 0..last {
        let (before, from, to, after) = (at(i.saturating_sub(1)), at(i), at(i + 1), at(i + 2));
        let third = |k: usize| from[k] + (to[k] - before[k]) / 6.0;
        let two_thirds = |k: usize| to[k] - (after[k] - from[k]) / 6.0;
        let _ = write!(
            data,
            "C{} {} {} {} {} {}",
            number(third(0)),
            number(third(1)),
            number(two_thirds(0)),
            number(two_thirds(1)),
            number(to[0]),
            number(to[1])
        );
    }
    data
}
