//! One view laid out on its paper: the dressed figure, dimension lines, labels.

use crate::canvas::Canvas;
use crate::curve::{Paper, Pt, pt};
use crate::figure::{Labels, Parts, Scene};
use crate::labels::{self, Columns, Label, Line, Placed, Side, fault_sign};
use crate::legend::Legend;
use crate::look;
use crate::marks::{Mark, Place};
use crate::notes::{Note, amounts, noted};
use crate::svg::{Svg, number};
use crate::text;
use crate::view::View;

/// Type and room of the labels, in user units.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Type {
    /// Font size of names.
    pub size: f64,
    /// Font size of amounts and what else there is to say.
    pub small: f64,
    /// Room for a label's text.
    pub room: f64,
    /// Room outside the labels.
    pub margin: f64,
    /// Radius of the ring round a number that stands for a label.
    pub ring: f64,
    /// Size of a fault's sign at its place.
    pub sign: f64,
    /// Font size of the legend.
    pub legend: f64,
}

/// Type of a figure with full labels on a page.
pub(crate) const ON_PAGE: Type = Type {
    size: 34.0,
    small: 30.0,
    room: 425.0,
    margin: MARGIN,
    ring: 30.0,
    sign: 26.0,
    legend: 27.0,
};
/// Type of a figure with numbers on a narrow page, where a centimetre is three dots of the screen.
pub(crate) const ON_PHONE: Type = Type {
    ring: 38.0,
    sign: 38.0,
    legend: 38.0,
    margin: 20.0,
    ..ON_PAGE
};
/// Room round everything.
const MARGIN: f64 = 30.0;
/// From the figure to a column's edge.
const COLUMN_GAP: f64 = 70.0;

/// A view laid out on its paper.
pub(crate) struct Drawn {
    pub width: f64,
    pub height: f64,
    pub paper: Paper,
    view: View,
    labels: Labels,
    placed: Vec<(Placed, Mark, usize)>,
    marks: Vec<(Mark, Option<usize>)>,
    legend: Legend,
    ty: Type,
}

impl Drawn {
    pub fn new(
        scene: &Scene,
        view: View,
        style: Labels,
        parts: &Parts,
        scale: f64,
        ty: Type,
    ) -> Self {
        let half = half_width(parts);
        let room = match style {
            Labels::Full => COLUMN_GAP + ty.room,
            Labels::Numbers => COLUMN_GAP + 2.0 * ty.ring,
            Labels::Bare => 0.0,
        };
        let middle = ty.margin + room + half * scale;
        let top = MARGIN + 20.0;
        let floor = top + (parts.person.stature() + 2.0) * scale;
        let paper = Paper {
            middle,
            floor,
            scale,
        };
        let columns = Columns {
            left: ty.margin + room - COLUMN_GAP,
            right: 2.0 * middle - ty.margin - room + COLUMN_GAP,
            top,
            bottom: floor + 20.0,
        };
        let noted = noted(scene, view, parts);
        let placed = match style {
            Labels::Full | Labels::Numbers => placed(&noted, &paper, columns, style, ty),
            Labels::Bare => Vec::new(),
        };
        let low = placed
            .iter()
            .map(|(p, ..)| p.rect.y + p.rect.height)
            .fold(floor, f64::max);
        let marks = match style {
            Labels::Bare => Vec::new(),
            _ => noted
                .iter()
                .map(|(n, m)| (*m, n.fault.as_ref().map(|f| f.0)))
                .collect(),
        };
        let faults = noted.iter().any(|(n, _)| n.fault.is_some());
        let room = 2.0 * (middle - MARGIN);
        let legend = Legend::new(
            scene.words,
            ty.legend,
            room,
            scale,
            scene.wanted.is_some(),
            faults,
        );
        Self {
            width: 2.0 * middle,
            height: low + MARGIN + 20.0 + legend.height(),
            legend,
            ty,
            paper,
            view,
            labels: style,
            placed,
            marks,
        }
    }

    /// The drawing's content, with or without its own legend.
    pub fn finish(self, parts: &Parts, scene: &Scene, with_legend: bool) -> String {
        let mut canvas = Canvas::new(self.paper);
        self.floor(&mut canvas);
        self.dressed(&mut canvas, parts);
        if let Some(wanted) = scene.wanted {
            crate::wanted::draw(&mut canvas, self.view, parts, &Parts::of(scene, wanted));
        }
        canvas.svg.open("g", "data-part=\"leaders\"");
        for (placed, ..) in &self.placed {
            placed.draw_leader(&mut canvas.svg);
        }
        canvas.svg.close();
        canvas.svg.open("g", "data-part=\"dimensions\"");
        for (mark, fault) in &self.marks {
            dimension(&mut canvas, mark, *fault, self.ty.sign);
        }
        canvas.svg.close();
        canvas.svg.open("g", "data-part=\"labels\"");
        for (placed, _, number) in &self.placed {
            match self.labels {
                Labels::Numbers => numbered(&mut canvas.svg, placed, self.ty.ring, *number),
                _ => placed.draw_text(&mut canvas.svg),
            }
        }
        canvas.svg.close();
        if with_legend {
            let at = (MARGIN, self.height - MARGIN - 8.0);
            self.legend.draw(&mut canvas.svg, at);
        }
        canvas.svg.finish()
    }

    /// The floor, from which heights are counted.
    fn floor(&self, canvas: &mut Canvas) {
        let half = 0.5 * self.width / self.paper.scale;
        let reach = (half - 4.0).min(40.0);
        canvas.line(
            look::FLOOR_LINE,
            "floor",
            &[pt(-reach, 0.0), pt(reach, 0.0)],
        );
    }

    fn dressed(&self, canvas: &mut Canvas, parts: &Parts) {
        let (lines, view) = (&parts.lines, self.view);
        canvas.svg.open("g", "data-part=\"dressed\"");
        parts.person.feet(canvas, view);
        parts.person.hands(canvas);
        lines.draw_skirt(canvas, view);
        lines.draw_fold(canvas, view);
        match view {
            View::Front => {
                parts.person.neck(canvas);
                parts.person.head(canvas, view);
                lines.draw_upper(
                    canvas,
                    view,
                    &parts.person,
                    &parts.sleeve,
                    parts.collar_width,
                );
            }
            View::Back => {
                lines.draw_upper(
                    canvas,
                    view,
                    &parts.person,
                    &parts.sleeve,
                    parts.collar_width,
                );
                parts.person.neck(canvas);
                parts.person.head(canvas, view);
            }
        }
        parts.person.through_cloth(canvas);
        lines.draw_obi(canvas, view, parts.obiage);
        if view == View::Back {
            lines.draw_drum(canvas, parts.drum, parts.obiage);
        }
        lines.draw_hidden(canvas, view);
        lines.draw_collar_end(canvas, view);
        canvas.svg.close();
    }
}

/// Half the width of what is drawn of the person, in centimetres.
fn half_width(parts: &Parts) -> f64 {
    let skirt = parts
        .lines
        .silhouette(parts.lines.hem, parts.lines.obi.front);
    let arms = parts.sleeve.reach().x.max(parts.person.fingertip().x);
    skirt.iter().map(|p| p.x).fold(arms, f64::max)
}

/// Room that is left for a label's text in a width, with the figure drawn to a scale.
pub(crate) fn room_for_text(parts: &Parts, width: f64, scale: f64) -> f64 {
    0.5 * width - half_width(parts) * scale - COLUMN_GAP
}

/// Labels for the notes, in their columns: full or numbers alone.
fn placed(
    noted: &[(Note, Mark)],
    paper: &Paper,
    columns: Columns,
    style: Labels,
    ty: Type,
) -> Vec<(Placed, Mark, usize)> {
    let mut labels = Vec::with_capacity(noted.len());
    for (note, mark) in noted {
        let anchor = mark.place.middle();
        labels.push(Label {
            lines: match style {
                Labels::Numbers => number_lines(note, ty),
                _ => lines_of(note, ty),
            },
            anchor: (paper.x(anchor), paper.y(anchor)),
            side: mark.side,
            fault: note
                .fault
                .as_ref()
                .map(|f| f.0)
                .filter(|_| style == Labels::Full),
            key: note.number,
        });
    }
    let mut out: Vec<(Placed, Mark, usize)> = labels::place(labels, columns)
        .into_iter()
        .filter_map(|p| {
            let (note, mark) = noted.iter().find(|(n, _)| n.number == p.label.key)?;
            Some((p, *mark, note.number))
        })
        .collect();
    out.sort_by_key(|p| p.2);
    out
}

/// The lines of a label: name, amount, and what more there is to say.
fn lines_of(note: &Note, ty: Type) -> Vec<Line> {
    let Type {
        size, small, room, ..
    } = ty;
    let line = |text: String, look, bold, size| Line {
        text,
        look,
        bold,
        size,
    };
    let mut out: Vec<Line> = text::wrapped(&note.name, size, room)
        .into_iter()
        .map(|t| line(t, look::TEXT, false, size))
        .collect();
    for amount in amounts(note, small, room) {
        out.push(line(amount, look::TEXT, true, small));
    }
    if let Some(wanted) = &note.wanted {
        out.push(line(wanted.clone(), look::WANTED_TEXT, false, small));
    }
    if let Some((_, fault)) = &note.fault {
        for t in text::wrapped(fault, small * text::BOLD, room) {
            out.push(line(t, look::FAULT_TEXT, true, small));
        }
    }
    out
}

/// The one line of a label that is a number, as high as its ring.
fn number_lines(note: &Note, ty: Type) -> Vec<Line> {
    vec![Line {
        text: note.number.to_string(),
        look: look::TEXT,
        bold: true,
        size: 2.0 * ty.ring / labels::LEADING,
    }]
}

/// The ring of a label that is a number, at its column's edge.
fn numbered(svg: &mut Svg, placed: &Placed, r: f64, n: usize) {
    let y = placed.rect.y + 0.5 * placed.rect.height;
    let x = match placed.label.side {
        Side::Left => placed.rect.x + placed.rect.width - r + 6.0,
        Side::Right => placed.rect.x + r - 6.0,
    };
    number_ring(svg, (x, y), r, n);
}

/// A number in a ring.
pub(crate) fn number_ring(svg: &mut Svg, at: (f64, f64), r: f64, n: usize) {
    let [x, y, radius] = [at.0, at.1, r].map(number);
    let ring = look::NUMBER_MARK.attributes();
    svg.empty(
        "circle",
        &format!("{ring} cx=\"{x}\" cy=\"{y}\" r=\"{radius}\""),
    );
    let attributes = format!(
        "{} font-size=\"{}\" font-weight=\"600\" text-anchor=\"middle\" x=\"{x}\" y=\"{}\"",
        look::TEXT.attributes(),
        number(1.22 * r),
        number(at.1 + 0.44 * r)
    );
    svg.words("text", &attributes, &n.to_string());
}

/// A dimension line at its place, and a fault's sign beside it.
fn dimension(canvas: &mut Canvas, mark: &Mark, fault: Option<usize>, sign: f64) {
    let look = if fault.is_some() {
        look::FAULT_LINE
    } else {
        look::DIMENSION_LINE
    };
    match mark.place {
        Place::Span(a, b) => {
            canvas.line(look, "span", &[a, b]);
            let length = a.distance(b);
            // Ticks across the ends; a span of nothing keeps one across where it would lie.
            let (dx, dz) = if length > 1e-6 {
                ((b.z - a.z) / length, -(b.x - a.x) / length)
            } else {
                (0.0, 1.0)
            };
            let tick = |p: Pt| [p.moved(-0.7 * dx, -0.7 * dz), p.moved(0.7 * dx, 0.7 * dz)];
            canvas.line(look::DIMENSION_LINE, "tick", &tick(a));
            if length > 0.15 {
                canvas.line(look::DIMENSION_LINE, "tick", &tick(b));
            }
        }
        Place::At(p) => canvas.disc(look::DOT_MARK, "dot", p, 4.5),
    }
    if let Some(n) = fault {
        let p = mark.place.middle();
        let beside = match mark.side {
            Side::Left => -1.25 * sign,
            Side::Right => 1.25 * sign,
        };
        let at = (canvas.paper.x(p) + beside, canvas.paper.y(p));
        fault_sign(&mut canvas.svg, at, sign, n);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::{Bench, Seeded};
    use crate::svg::UNITS_PER_CM;
    use sunbu_core::dressing::{Locks, assess};
    use sunbu_words::{Lang, Words};

    #[test]
    fn labels_of_two_hundred_random_dressings_lie_neither_on_another_nor_on_the_figure() {
        let mut seeded = Seeded(20_260_102);
        let gallery = Bench::gallery();
        for round in 0..200 {
            let (name, bench) = &gallery[round % gallery.len()];
            let dressing = bench.random(&mut seeded);
            let shown = assess(&bench.fitting, &bench.rules, &Locks::new(), dressing);
            let lang = if round % 2 == 0 { Lang::En } else { Lang::Ja };
            let scene = Scene {
                shown: &shown,
                wanted: Some(&bench.plan),
                words: Words::of(lang),
                ..bench.scene()
            };
            let parts = Parts::of(&scene, scene.shown);
            for view in View::ALL {
                for (style, ty) in [(Labels::Full, ON_PAGE), (Labels::Numbers, ON_PHONE)] {
                    let drawn = Drawn::new(&scene, view, style, &parts, UNITS_PER_CM, ty);
                    let what = format!("{name}, round {round}, {}", view.key());
                    let boxes: Vec<_> = drawn.placed.iter().map(|(p, ..)| p.rect).collect();
                    let half = half_width(&parts) * UNITS_PER_CM;
                    for (i, a) in boxes.iter().enumerate() {
                        assert!(a.x >= 0.0 && a.x + a.width <= drawn.width, "{what}: {a:?}");
                        assert!(
                            a.y >= 0.0 && a.y + a.height <= drawn.height,
                            "{what}: {a:?}"
                        );
                        let (left, right) = (drawn.paper.middle - half, drawn.paper.middle + half);
                        assert!(
                            a.x + a.width < left || a.x > right,
                            "{what}: {a:?} on the figure"
                        );
                        for b in &boxes[i + 1..] {
                            assert!(!a.overlaps(b), "{what}: {a:?} on {b:?}");
                        }
                    }
                }
            }
        }
    }
}
