//! The pen that draws on a photo: strokes cased in white, labels with their arrows, the foot.

use std::fmt::Write as _;

use sunbu_core::photo::{Overlay, Pixel};

use super::lines::{Line, Way};
use super::{Label, Overlaid, Part};
use crate::look::{INK, PAPER, SOFT_INK, Tone, WANTED};
use crate::svg::{Svg, number};
use crate::text;

/// Length of the scale, in centimetres.
const SCALE_CM: f64 = 10.0;
/// Half the length of the stroke that stands for a line of which one place is marked, in centimetres.
const STROKE_CM: f64 = 5.0;

/// What a stroke shows.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// A line as it is seen.
    Seen,
    /// A line as it is wanted.
    Wanted,
}

impl Kind {
    fn key(self) -> &'static str {
        match self {
            Self::Seen => "seen",
            Self::Wanted => "wanted",
        }
    }

    /// Tone, weight over the letters' height, and whether it is dashed.
    fn style(self) -> (Tone, f64, bool) {
        match self {
            Self::Seen => (INK, 0.12, false),
            Self::Wanted => (WANTED, 0.2, true),
        }
    }
}

/// Draws at the size of the letters.
pub(super) struct Pen {
    /// Height of the letters, in pixels of the photo.
    pub(super) ty: f64,
}

impl Pen {
    /// A line, cased in white; one marked place makes a short stroke.
    pub(super) fn stroke(
        &self,
        svg: &mut Svg,
        line: &Line,
        kind: Kind,
        at: &[Pixel],
        overlay: &Overlay,
    ) {
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
        let (tone, weight, is_dashed) = kind.style();
        let dash = self.dash(is_dashed);
        for (tone, weight, dash) in [(PAPER, weight + 0.14, ""), (tone, weight, dash.as_str())] {
            svg.empty(
                "path",
                &format!(
                    "data-part=\"{}-{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"{}\" \
                     stroke-linejoin=\"round\"{dash} d=\"{data}\"",
                    line.key,
                    kind.key(),
                    tone.hex,
                    number(weight * self.ty)
                ),
            );
        }
    }

    /// The dashes of a line, as an attribute; nothing for a whole one.
    fn dash(&self, is_dashed: bool) -> String {
        if !is_dashed {
            return String::new();
        }
        let (long, gap) = (number(0.55 * self.ty), number(0.35 * self.ty));
        format!(" stroke-dasharray=\"{long} {gap}\"")
    }

    /// An arrow for each label from what is seen to what is wanted, and the labels in a column at
    /// the right.
    pub(super) fn beside(&self, svg: &mut Svg, labels: &[Label], part: Part) {
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
            self.casing(svg, &[tip, [left, row]], SOFT_INK);
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
    pub(super) fn foot(&self, svg: &mut Svg, shown: &Overlaid, part: Part, foot: f64) {
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
        for (kind, id) in [
            (Kind::Seen, "overlay-seen"),
            (Kind::Wanted, "overlay-wanted"),
        ] {
            let (tone, weight, is_dashed) = kind.style();
            let dash = self.dash(is_dashed);
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
