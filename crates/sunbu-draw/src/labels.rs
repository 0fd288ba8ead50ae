//! Labels in two columns beside the figure: spread so that none lies on another, with leaders.
//!
//! Each label wants to stand at the height of the place it speaks of. A column keeps its labels
//! in the order of those places and moves them as little as it can (least squares under the
//! distances they need: pool adjacent violators, the way of isotonic regression, Barlow and
//! others 1972). Two leaders that would cross change places, which shortens them both, so that
//! ends.

use crate::look::{self, Look};
use crate::svg::{Svg, number};
use crate::text;

/// A box in user units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Rect {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl Rect {
    /// Whether the insides of two boxes share anything.
    #[cfg(test)]
    pub fn overlaps(&self, other: &Rect) -> bool {
        self.x < other.x + other.width
            && other.x < self.x + self.width
            && self.y < other.y + other.height
            && other.y < self.y + self.height
    }
}

/// Which column a label stands in, as the viewer sees it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Side {
    Left,
    Right,
}

/// One line of a label.
#[derive(Debug, Clone)]
pub(crate) struct Line {
    pub text: String,
    pub look: Look,
    pub bold: bool,
    pub size: f64,
}

/// A label before it has a place.
#[derive(Debug, Clone)]
pub(crate) struct Label {
    pub lines: Vec<Line>,
    /// The place it speaks of, in user units, y down.
    pub anchor: (f64, f64),
    pub side: Side,
    /// The number of its fault sign; none when nothing is missed.
    pub fault: Option<usize>,
    /// By which its maker knows it again.
    pub key: usize,
}

/// A label with its place.
#[derive(Debug, Clone)]
pub(crate) struct Placed {
    pub label: Label,
    pub rect: Rect,
}

/// The columns' edges toward the figure, and the heights they may use, in user units.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Columns {
    pub left: f64,
    pub right: f64,
    pub top: f64,
    pub bottom: f64,
}

/// Room between two labels over their line height.
const GAP: f64 = 0.5;
/// Line height over font size.
pub(crate) const LEADING: f64 = 1.28;
/// From a column's edge to the bend of a leader, in user units: the sign of a fault stands there.
pub(crate) const BEND: f64 = 56.0;
/// From a column's edge to the text.
const TEXT_GAP: f64 = 8.0;

impl Label {
    fn size(&self) -> f64 {
        self.lines.first().map_or(28.0, |l| l.size)
    }

    fn height(&self) -> f64 {
        self.lines.iter().map(|l| l.size * LEADING).sum()
    }

    fn width(&self) -> f64 {
        let wide = |l: &Line| text::width(&l.text, l.size) * if l.bold { text::BOLD } else { 1.0 };
        self.lines.iter().map(wide).fold(0.0, f64::max)
    }
}

/// Places all labels.
pub(crate) fn place(labels: Vec<Label>, columns: Columns) -> Vec<Placed> {
    let (left, right): (Vec<Label>, Vec<Label>) =
        labels.into_iter().partition(|l| l.side == Side::Left);
    let mut out = column(left, columns, Side::Left);
    out.extend(column(right, columns, Side::Right));
    out
}

fn column(mut labels: Vec<Label>, columns: Columns, side: Side) -> Vec<Placed> {
    labels.sort_by(|a, b| {
        a.anchor
            .1
            .total_cmp(&b.anchor.1)
            .then(a.anchor.0.total_cmp(&b.anchor.0))
    });
    let edge = match side {
        Side::Left => columns.left,
        Side::Right => columns.right,
    };
    let bend = match side {
        Side::Left => edge + BEND,
        Side::Right => edge - BEND,
    };
    let mut tops = spread(&labels, columns);
    // Bounded by the number of pairs; each exchange shortens the leaders.
    for _ in 0..labels.len() * labels.len() {
        let crossing = (1..labels.len()).find(|&i| {
            let end = |k: usize| (bend, tops[k] + leader_drop(&labels[k]));
            crosses(labels[i - 1].anchor, end(i - 1), labels[i].anchor, end(i))
        });
        let Some(i) = crossing else { break };
        labels.swap(i - 1, i);
        tops = stacked(&labels, &tops);
    }
    labels
        .into_iter()
        .zip(tops)
        .map(|(label, y)| {
            let (width, height) = (label.width(), label.height());
            let x = match side {
                Side::Left => edge - TEXT_GAP - width,
                Side::Right => edge + TEXT_GAP,
            };
            Placed {
                rect: Rect {
                    x,
                    y,
                    width,
                    height,
                },
                label,
            }
        })
        .collect()
}

/// From a label's top to where its leader ends: the middle of its first line.
fn leader_drop(label: &Label) -> f64 {
    0.5 * LEADING * label.size()
}

/// Least-squares tops of labels kept in their order.
fn spread(labels: &[Label], columns: Columns) -> Vec<f64> {
    let needs = |l: &Label| l.height() + GAP * l.size();
    // With the room of all labels above taken off, only their order has to be kept.
    let mut above = 0.0;
    let mut offsets = Vec::with_capacity(labels.len());
    for l in labels {
        offsets.push(above);
        above += needs(l);
    }
    // Blocks of labels that touch: sum of wants, count.
    let mut blocks: Vec<(f64, usize)> = Vec::new();
    for (l, offset) in labels.iter().zip(&offsets) {
        blocks.push((l.anchor.1 - leader_drop(l) - offset, 1));
        while blocks.len() > 1 {
            let (b, a) = (blocks[blocks.len() - 1], blocks[blocks.len() - 2]);
            if a.0 / a.1 as f64 <= b.0 / b.1 as f64 {
                break;
            }
            blocks.truncate(blocks.len() - 2);
            blocks.push((a.0 + b.0, a.1 + b.1));
        }
    }
    let lowest = columns.bottom - above;
    let places = blocks.iter().flat_map(|&(sum, n)| {
        // A column that is too full starts at its top and runs over at the bottom.
        std::iter::repeat_n((sum / n as f64).min(lowest).max(columns.top), n)
    });
    places
        .zip(offsets)
        .map(|(place, offset)| place + offset)
        .collect()
}

/// Tops after an exchange: the same stack, each label as near as before to where it stood.
fn stacked(labels: &[Label], tops: &[f64]) -> Vec<f64> {
    let mut out = Vec::with_capacity(labels.len());
    let mut free = f64::NEG_INFINITY;
    for (l, &top) in labels.iter().zip(tops) {
        let y = top.max(free);
        out.push(y);
        free = y + l.height() + GAP * l.size();
    }
    out
}

/// Whether two stretches cross.
fn crosses(a: (f64, f64), b: (f64, f64), c: (f64, f64), d: (f64, f64)) -> bool {
    let side = |p: (f64, f64), q: (f64, f64), r: (f64, f64)| {
        (q.0 - p.0) * (r.1 - p.1) - (q.1 - p.1) * (r.0 - p.0)
    };
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

impl Placed {
    /// Where the leader ends at the text, and where it bends, in user units.
    fn ends(&self) -> (f64, f64, f64) {
        let y = self.rect.y + leader_drop(&self.label);
        match self.label.side {
            Side::Left => {
                let edge = self.rect.x + self.rect.width;
                (edge + TEXT_GAP * 0.4, edge + TEXT_GAP + BEND, y)
            }
            Side::Right => (
                self.rect.x - TEXT_GAP * 0.4,
                self.rect.x - TEXT_GAP - BEND,
                y,
            ),
        }
    }

    /// The leader from the place to the label.
    pub fn draw_leader(&self, svg: &mut Svg) {
        let (end, bend, y) = self.ends();
        let (x, from) = self.label.anchor;
        let [x, from, bend, y, end] = [x, from, bend, y, end].map(number);
        let path = format!("M{x} {from}L{bend} {y}L{end} {y}");
        svg.empty(
            "path",
            &format!("{} d=\"{path}\"", look::LEADER_LINE.attributes()),
        );
    }

    /// The text, and its fault sign between text and leader.
    pub fn draw_text(&self, svg: &mut Svg) {
        let (x, anchor) = match self.label.side {
            Side::Left => (self.rect.x + self.rect.width, "end"),
            Side::Right => (self.rect.x, "start"),
        };
        let mut y = self.rect.y;
        svg.open("g", &format!("text-anchor=\"{anchor}\""));
        for line in &self.label.lines {
            let weight = if line.bold {
                " font-weight=\"600\""
            } else {
                ""
            };
            let attributes = format!(
                "{} font-size=\"{}\"{weight} x=\"{}\" y=\"{}\"",
                line.look.attributes(),
                number(line.size),
                number(x),
                number(y + line.size * 0.97)
            );
            svg.words("text", &attributes, &line.text);
            y += line.size * LEADING;
        }
        svg.close();
        if let Some(n) = self.label.fault {
            let (end, bend, y) = self.ends();
            fault_sign(svg, (end + 0.5 * (bend - end), y), self.label.size(), n);
        }
    }
}

/// A numbered triangle, the sign of a fault.
pub(crate) fn fault_sign(svg: &mut Svg, at: (f64, f64), size: f64, n: usize) {
    let (x, y) = at;
    let r = 0.78 * size;
    let path = format!(
        "M{} {}L{} {}L{} {}Z",
        number(x),
        number(y - r),
        number(x + 0.92 * r),
        number(y + 0.66 * r),
        number(x - 0.92 * r),
        number(y + 0.66 * r)
    );
    let join = "stroke-linejoin=\"round\"";
    svg.empty(
        "path",
        &format!("{} {join} d=\"{path}\"", look::FAULT_SIGN.attributes()),
    );
    let attributes = format!(
        "{} font-size=\"{}\" font-weight=\"700\" text-anchor=\"middle\" x=\"{}\" y=\"{}\"",
        look::FAULT_TEXT.attributes(),
        number(0.82 * size),
        number(x),
        number(y + 0.5 * r)
    );
    svg.words("text", &attributes, &n.to_string());
}

#[cfg(test)]
mod tests {
    use super::*;

    fn label(y: f64, x: f64) -> Label {
        let line = Line {
            text: "Waist tie".into(),
            look: look::TEXT,
            bold: false,
            size: 28.0,
        };
        Label {
            lines: vec![line.clone(), line],
            anchor: (x, y),
            side: Side::Right,
            fault: None,
            key: 0,
        }
    }

    const COLUMNS: Columns = Columns {
        left: 300.0,
        right: 900.0,
        top: 0.0,
        bottom: 1800.0,
    };

    #[test]
    fn labels_with_room_stand_at_their_places() {
        let placed = place(vec![label(300.0, 500.0), label(800.0, 600.0)], COLUMNS);
        for p in placed {
            let got = p.rect.y + leader_drop(&p.label);
            assert!(
                (got - p.label.anchor.1).abs() < 1e-9,
                "{got} against {}",
                p.label.anchor.1
            );
        }
    }

    #[test]
    fn crowded_labels_part_evenly_about_their_mean() {
        let placed = place((0..5).map(|_| label(900.0, 500.0)).collect(), COLUMNS);
        let mean = placed
            .iter()
            .map(|p| p.rect.y + leader_drop(&p.label))
            .sum::<f64>()
            / 5.0;
        assert!((mean - 900.0).abs() < 1e-6, "mean {mean} against 900");
        for (i, a) in placed.iter().enumerate() {
            for b in &placed[i + 1..] {
                assert!(!a.rect.overlaps(&b.rect), "{:?} on {:?}", a.rect, b.rect);
            }
        }
    }

    #[test]
    fn leaders_of_neighbours_do_not_cross() {
        let labels: Vec<Label> = (0..12)
            .map(|i| {
                label(
                    600.0 + f64::from(i * i % 7) * 9.0,
                    400.0 + f64::from(i * 37 % 11) * 30.0,
                )
            })
            .collect();
        let placed = place(labels, COLUMNS);
        for pair in placed.windows(2) {
            let end = |p: &Placed| (COLUMNS.right - BEND, p.rect.y + leader_drop(&p.label));
            let [a, b] = [&pair[0], &pair[1]];
            assert!(
                !crosses(a.label.anchor, end(a), b.label.anchor, end(b)),
                "{:?} {:?}",
                a.label.anchor,
                b.label.anchor
            );
        }
    }
}
