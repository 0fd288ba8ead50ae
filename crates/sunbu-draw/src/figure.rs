//! The figure: one view of a dressed person with its numbers, as one SVG.

use sunbu_core::body::Body;
use sunbu_core::dressing::{Check, Fitting, Given, Plan, Quantity, StepValue};
use sunbu_core::garment::Garment;
use sunbu_words::Words;

use crate::canvas::Canvas;
use crate::curve::{Paper, Pt, pt};
use crate::hull::View;
use crate::labels::{self, Columns, Label, Line, Placed, Side, fault_sign};
use crate::lines::Lines;
use crate::look;
use crate::marks::{Mark, Place, marks};
use crate::obi::Drum;
use crate::person::Person;
use crate::svg::{Svg, UNITS_PER_CM, number};
use crate::text;
use crate::upper::Sleeve;

/// What is drawn.
#[derive(Clone, Copy)]
pub struct Scene<'a> {
    /// The person.
    pub body: &'a Body,
    /// The garment.
    pub garment: &'a Garment,
    /// The person in the garment.
    pub fitting: &'a Fitting,
    /// The dressing that is drawn, with its prediction and its checks.
    pub shown: &'a Plan,
    /// The dressing it is held against, as a second line; none when there is nothing to compare.
    pub wanted: Option<&'a Plan>,
    /// The language.
    pub words: &'a Words,
    /// Who wears what, in the reader's language.
    pub title: &'a str,
}

/// How the numbers are given.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Labels {
    /// Name, value and interval beside the figure.
    #[default]
    Full,
    /// Numbers only, for a narrow page that lists [`notes`] beside or below.
    Numbers,
    /// None.
    Bare,
}

/// How a figure is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Style<'a> {
    /// How the numbers are given.
    pub labels: Labels,
    /// Start of the ids in the drawing: two figures on one page need two of them.
    pub id: &'a str,
}

impl Default for Style<'_> {
    fn default() -> Self {
        Self {
            labels: Labels::Full,
            id: "figure",
        }
    }
}

/// What a label of the figure says.
#[derive(Debug, Clone, PartialEq)]
pub struct Note {
    /// The number at its place in a figure with [`Labels::Numbers`], from 1.
    pub number: usize,
    /// What it is about.
    pub value: StepValue,
    /// Its name.
    pub name: String,
    /// The number with its unit.
    pub amount: String,
    /// The 90 % interval; none for what the hands decide.
    pub interval: Option<String>,
    /// What is wanted, where a wanted plan differs.
    pub wanted: Option<String>,
    /// The number of its fault sign and the fault in words; none when nothing is missed.
    pub fault: Option<(usize, String)>,
}

/// What the view's labels say, in the order of their numbers.
pub fn notes(scene: &Scene, view: View) -> Vec<Note> {
    let parts = Parts::of(scene, scene.shown);
    noted(scene, view, &parts)
        .into_iter()
        .map(|(note, _)| note)
        .collect()
}

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
}

/// Type of a figure on a page.
const ON_PAGE: Type = Type {
    size: 34.0,
    small: 30.0,
    room: 425.0,
    margin: MARGIN,
};
/// Room for a number alone.
const NUMBER_ROOM: f64 = 60.0;
/// Room round everything.
const MARGIN: f64 = 30.0;
/// From the figure to a column's edge.
const COLUMN_GAP: f64 = 70.0;

/// The pieces that all drawing starts from.
pub(crate) struct Parts<'a> {
    pub lines: Lines<'a>,
    pub person: Person<'a>,
    pub sleeve: Sleeve,
    pub drum: Drum,
    pub obiage: f64,
    pub collar_width: f64,
}

impl<'a> Parts<'a> {
    pub fn of(scene: &Scene<'a>, plan: &Plan) -> Self {
        let lines = Lines::new(scene.body, scene.fitting, plan);
        let person = Person::of(scene.body);
        let seen = |q: Quantity| plan.prediction.value(q);
        let drum = lines.drum(seen(Quantity::DrumHeight), seen(Quantity::TareLength));
        Self {
            sleeve: Sleeve::of(&person, scene.garment, scene.fitting.value(Given::Yuki)),
            person,
            drum,
            obiage: seen(Quantity::ObiageShow),
            collar_width: scene.garment.worn_collar_width().value_cm(),
            lines,
        }
    }
}

/// One view of the scene as an SVG document.
///
/// One user unit is a millimetre on the body. `<title>` and `<desc>` say in words what the
/// drawing shows, numbers included.
pub fn figure(scene: &Scene, view: View, style: Style) -> String {
    let parts = Parts::of(scene, scene.shown);
    let drawn = Drawn::new(scene, view, style.labels, &parts, UNITS_PER_CM, ON_PAGE);
    let mut svg = Svg::default();
    let (width, height) = (drawn.width, drawn.height);
    let key = format!("{}-{}", style.id, view.key());
    svg.open(
        "svg",
        &format!(
            "xmlns=\"http://www.w3.org/2000/svg\" class=\"draw-figure\" role=\"img\" \
             aria-labelledby=\"{key}-title\" aria-describedby=\"{key}-desc\" \
             viewBox=\"0 0 {} {}\" font-family=\"system-ui, 'Noto Sans JP', IPAexGothic, \
             sans-serif\" lang=\"{}\"",
            number(width),
            number(height),
            scene.words.lang().code()
        ),
    );
    svg.words(
        "title",
        &format!("id=\"{key}-title\""),
        &heading(scene, view),
    );
    svg.words(
        "desc",
        &format!("id=\"{key}-desc\""),
        &description(scene, view, &parts),
    );
    svg.raw(&drawn.finish(&parts, scene, true));
    svg.finish()
}

/// The view's heading: who wears what, seen from where.
pub(crate) fn heading(scene: &Scene, view: View) -> String {
    let id = match view {
        View::Front => "draw-title-front",
        View::Back => "draw-title-back",
    };
    scene.words.with(id, &[("title", scene.title.into())])
}

/// All numbers of a view in words.
fn description(scene: &Scene, view: View, parts: &Parts) -> String {
    let said: Vec<String> = noted(scene, view, parts)
        .iter()
        .map(|(note, _)| {
            let mut text = format!("{}: {}", note.name, note.amount);
            let fault = note.fault.as_ref().map(|(_, words)| words);
            for more in [note.interval.as_ref(), note.wanted.as_ref(), fault]
                .into_iter()
                .flatten()
            {
                text.push_str(", ");
                text.push_str(more);
            }
            text
        })
        .collect();
    said.join(". ")
}

/// Notes with their marks: what is always shown, and what is missed.
fn noted(scene: &Scene, view: View, parts: &Parts) -> Vec<(Note, Mark)> {
    let words = scene.words;
    let plan = scene.shown;
    let all = marks(&parts.lines, view, plan, &parts.sleeve, parts.drum);
    let check = |value: StepValue| -> Option<&Check> {
        match value {
            StepValue::See(q) => plan.check(q).filter(|c| !c.met()),
            StepValue::Do(_) => None,
        }
    };
    let mut shown: Vec<Mark> = all
        .into_iter()
        .filter(|m| m.always || check(m.value).is_some())
        .collect();
    shown.sort_by(|a, b| b.place.middle().z.total_cmp(&a.place.middle().z));
    let amount_of = |plan: &Plan, value: StepValue| match value {
        StepValue::Do(d) => plan.dressing.get(d),
        StepValue::See(q) => plan.prediction.value(q),
    };
    let mut out = Vec::with_capacity(shown.len());
    for mark in shown {
        let value = mark.value;
        let cm = amount_of(plan, value);
        let interval = match value {
            StepValue::See(q) => Some(plan.prediction.interval_90(q)),
            StepValue::Do(_) => None,
        };
        let spoken = |cm: f64| match interval {
            Some(interval) => words.value_in(cm, interval),
            None => words.cm(cm),
        };
        let wanted = scene
            .wanted
            .map(|w| amount_of(w, value))
            .map(spoken)
            .filter(|w| *w != spoken(cm))
            .map(|w| words.with("draw-wanted-value", &[("value", (&w).into())]));
        let fault = check(value).map(|c| (fault_number(plan, c), words.check_miss(c)));
        out.push((
            Note {
                number: out.len() + 1,
                value,
                name: text::capital(&match value {
                    StepValue::Do(d) => words.decision(d),
                    StepValue::See(q) => words.quantity_short(q),
                }),
                amount: spoken(cm),
                interval: interval.map(|i| words.interval(i)),
                wanted,
                fault,
            },
            mark,
        ));
    }
    out
}

/// The number of a fault's sign: its place among all that is missed, the same in both views.
fn fault_number(plan: &Plan, check: &Check) -> usize {
    1 + plan
        .missed()
        .take_while(|c| c.target.quantity != check.target.quantity)
        .count()
}

/// A view laid out on its paper.
pub(crate) struct Drawn {
    pub width: f64,
    pub height: f64,
    pub paper: Paper,
    view: View,
    labels: Labels,
    placed: Vec<(Placed, Mark, usize)>,
    marks: Vec<(Mark, Option<usize>)>,
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
            Labels::Numbers => COLUMN_GAP + NUMBER_ROOM,
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
            Labels::Full => placed(&noted, &paper, columns, Some(ty)),
            Labels::Numbers => placed(&noted, &paper, columns, None),
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
        Self {
            width: 2.0 * middle,
            height: low + MARGIN + 60.0,
            paper,
            view,
            labels: style,
            placed,
            marks,
        }
    }

    /// The drawing's content, with or without its own legend.
    pub fn finish(self, parts: &Parts, scene: &Scene, legend: bool) -> String {
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
            dimension(&mut canvas, mark, *fault);
        }
        canvas.svg.close();
        canvas.svg.open("g", "data-part=\"labels\"");
        for (placed, _, number) in &self.placed {
            match self.labels {
                Labels::Numbers => numbered(&mut canvas.svg, placed, *number),
                _ => placed.draw_text(&mut canvas.svg),
            }
        }
        canvas.svg.close();
        if legend {
            let faults = self.marks.iter().any(|(_, f)| f.is_some());
            let at = (MARGIN, self.height - MARGIN - 8.0);
            let room = self.width - 2.0 * MARGIN;
            let wanted = scene.wanted.is_some();
            crate::legend::draw(
                &mut canvas.svg,
                scene.words,
                at,
                room,
                self.paper.scale,
                wanted,
                faults,
            );
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

/// Labels for the notes, in their columns: of this type, or numbers alone.
fn placed(
    noted: &[(Note, Mark)],
    paper: &Paper,
    columns: Columns,
    ty: Option<Type>,
) -> Vec<(Placed, Mark, usize)> {
    let mut labels = Vec::with_capacity(noted.len());
    for (note, mark) in noted {
        let anchor = mark.place.middle();
        labels.push(Label {
            lines: ty.map_or_else(|| number_lines(note), |ty| lines_of(note, ty)),
            anchor: (paper.x(anchor), paper.y(anchor)),
            side: mark.side,
            fault: note.fault.as_ref().map(|f| f.0).filter(|_| ty.is_some()),
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
    let amount = match &note.interval {
        Some(interval) => format!("{} ({interval})", note.amount),
        None => note.amount.clone(),
    };
    out.push(line(amount, look::TEXT, true, small));
    if let Some(wanted) = &note.wanted {
        out.push(line(wanted.clone(), look::WANTED_TEXT, false, small));
    }
    if let Some((_, fault)) = &note.fault {
        for t in text::wrapped(fault, small * 1.12, room) {
            out.push(line(t, look::FAULT_TEXT, true, small));
        }
    }
    out
}

/// The one line of a label that is a number.
fn number_lines(note: &Note) -> Vec<Line> {
    vec![Line {
        text: note.number.to_string(),
        look: look::TEXT,
        bold: true,
        size: 40.0,
    }]
}

/// A number in a ring.
fn numbered(svg: &mut Svg, placed: &Placed, n: usize) {
    let r = 30.0;
    let y = placed.rect.y + 0.5 * placed.rect.height;
    let x = match placed.label.side {
        Side::Left => placed.rect.x + placed.rect.width - r + 6.0,
        Side::Right => placed.rect.x + r - 6.0,
    };
    let disc = format!(
        "{} cx=\"{}\" cy=\"{}\" r=\"{}\"",
        look::NUMBER_MARK.attributes(),
        number(x),
        number(y),
        number(r)
    );
    svg.empty("circle", &disc);
    let attributes = format!(
        "{} font-size=\"38\" font-weight=\"600\" text-anchor=\"middle\" x=\"{}\" y=\"{}\"",
        look::TEXT.attributes(),
        number(x),
        number(y + 13.5)
    );
    svg.words("text", &attributes, &n.to_string());
}

/// A dimension line at its place, and a fault's sign beside it.
fn dimension(canvas: &mut Canvas, mark: &Mark, fault: Option<usize>) {
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
        let toward = match mark.side {
            Side::Left => -3.2,
            Side::Right => 3.2,
        };
        let at = p.moved(toward, 0.0);
        fault_sign(
            &mut canvas.svg,
            (canvas.paper.x(at), canvas.paper.y(at)),
            25.0,
            n,
        );
    }
}
