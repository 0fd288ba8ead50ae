//! The parts of a plan's page: figure, what is met in a line, knobs, the table of wishes, ways
//! out, steps. Shared by the page under the hands, the saved one and the sheet of paper.

use maud::{Markup, PreEscaped, html};
use sunbu_core::dressing::{Check, Decision, Occasion, Plan, Rules, Step, Way, WayOut};
use sunbu_core::problem::Problem;
use sunbu_draw::{Labels, Scene, Style, View};
use sunbu_words::Words;

use crate::state::State;

/// The decisions in the groups in which hands take them.
const GROUPS: [(&str, &[Decision]); 6] = [
    (
        "plan-group-hem",
        &[
            Decision::HemHeight,
            Decision::UwamaeRaise,
            Decision::ShitamaeRaise,
        ],
    ),
    (
        "plan-group-width",
        &[
            Decision::BackSeamHip,
            Decision::ShitamaeFoldBack,
            Decision::BackSeamTop,
        ],
    ),
    (
        "plan-group-tie",
        &[
            Decision::KoshihimoBack,
            Decision::KoshihimoFront,
            Decision::TakeUpFront,
            Decision::TakeUpRight,
            Decision::TakeUpBack,
        ],
    ),
    (
        "plan-group-collar",
        &[
            Decision::NapeDrop,
            Decision::JubanOverlap,
            Decision::KimonoOverlap,
        ],
    ),
    (
        "plan-group-obi",
        &[
            Decision::ObiLowerEdge,
            Decision::DrumHeight,
            Decision::TareLength,
            Decision::ObiageShow,
        ],
    ),
    (
        "plan-group-padding",
        &[Decision::WaistPadding, Decision::HipPadding],
    ),
];

/// Front and back, side by side, with numbers that [`notes`] explain.
pub(crate) fn figure(scene: &Scene<'_>) -> Markup {
    html! { @for view in View::ALL { figure { (PreEscaped(drawn(scene, view))) } } }
}

fn drawn(scene: &Scene<'_>, view: View) -> String {
    sunbu_draw::figure(
        scene,
        view,
        Style {
            labels: Labels::Numbers,
            id: "figure",
        },
    )
}

/// Front and back for paper, side by side, and how much smaller than life they are.
///
/// The drawing's unit is a millimetre on the body, so its size on paper is its own divided by
/// the scale.
pub(crate) fn paper_figure(scene: &Scene<'_>) -> (Markup, f64) {
    let svgs = View::ALL.map(|view| drawn(scene, view));
    let sizes: Vec<_> = svgs.iter().filter_map(|svg| view_box(svg)).collect();
    let width: f64 = sizes.iter().map(|(width, _)| width).sum();
    let fits = |scale: &f64| width / scale <= PAPER_MM;
    let scale = SCALES
        .into_iter()
        .find(fits)
        .unwrap_or(SCALES[SCALES.len() - 1]);
    let markup = html! {
        @for (svg, (width, height)) in svgs.iter().zip(sizes) {
            @let (width, height) = (width / scale, height / scale);
            @let size = format!("<svg width=\"{width:.1}mm\" height=\"{height:.1}mm\" ");
            figure { (PreEscaped(svg.replacen("<svg ", &size, 1))) }
        }
    };
    (markup, scale)
}

/// Width of A4 (ISO 216) between the margins of the style sheet, in millimetres.
const PAPER_MM: f64 = 210.0 - 2.0 * 11.0;

/// Scales of a figure on paper, largest first: one to this.
const SCALES: [f64; 6] = [10.0, 12.5, 15.0, 17.5, 20.0, 25.0];

/// Width and height of a drawing in its own unit.
fn view_box(svg: &str) -> Option<(f64, f64)> {
    let (_, rest) = svg.split_once("viewBox=\"")?;
    let mut numbers = rest.split('"').next()?.split(' ').skip(2).map(str::parse);
    Some((numbers.next()?.ok()?, numbers.next()?.ok()?))
}

/// What the numbers in the figure say.
pub(crate) fn notes(w: &Words, scene: &Scene<'_>) -> Markup {
    html! {
        div.two {
            @for (view, id) in View::ALL.into_iter().zip(["plan-front", "plan-back"]) {
                section {
                    h3 { (w.get(id)) }
                    ul.notes {
                        @for note in sunbu_draw::notes(scene, view) {
                            li {
                                span.no { (note.number) }
                                span.grow { (note.name) }
                                span.num {
                                    (note.amount)
                                    @if let Some(interval) = note.interval { span.small { (interval) } }
                                }
                                @if let Some(wanted) = note.wanted { span.small { (wanted) } }
                                @if let Some((number, fault)) = note.fault {
                                    span.mark.off { (sign(number)) " " (fault) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// The sign of a missed wish: its number among all that are missed, from 1, in the triangle that
/// stands in the figure at what is missed.
fn sign(number: usize) -> Markup {
    html! { b.sign { "△" (number) } }
}

/// How many wishes are met, and the missed ones by name, in one line.
pub(crate) fn told(w: &Words, plan: &Plan) -> Markup {
    let missed: Vec<&Check> = plan.missed().collect();
    html! {
        @if missed.is_empty() {
            span.mark.ok { "○ " (w.with("plan-all-met", &[("count", plan.checks.len().into())])) }
        } @else {
            span.mark.off {
                "✕ " (w.with("plan-missed", &[
                    ("missed", missed.len().into()),
                    ("count", plan.checks.len().into()),
                ]))
            }
            " "
            @for (i, check) in missed.iter().enumerate() {
                @if i > 0 { " · " }
                (sign(i + 1)) " " (miss(w, check))
            }
        }
    }
}

/// What cannot be read, each with a way to its field; nothing when all can.
pub(crate) fn faults(w: &Words, problems: &[&Problem]) -> Markup {
    html! {
        @if !problems.is_empty() {
            section.errors role="alert" tabindex="-1" {
                h2 { (w.with("form-errors", &[("count", problems.len().into())])) }
                ul {
                    @for problem in problems {
                        li { a href={ "#" (problem.place) } { (name(w, problem)) } ": " (w.fault(problem)) }
                    }
                }
            }
        }
    }
}

/// What the field of a problem is called.
pub(crate) fn name(w: &Words, problem: &Problem) -> String {
    match Decision::from_key(&problem.place) {
        Some(decision) => w.decision(decision),
        None => w.get("plan-occasion"),
    }
}

/// The occasions to choose from.
pub(crate) fn occasions(w: &Words, chosen: Occasion) -> Markup {
    html! {
        div.field {
            label for="occasion" { (w.get("plan-occasion")) }
            select #occasion name="occasion" {
                @for &occasion in Occasion::ALL {
                    option value=(occasion.key()) selected[occasion == chosen] { (w.occasion(occasion)) }
                }
            }
        }
    }
}

/// Every decision with slider, number, lock, its usual value and its limits.
pub(crate) fn knobs(w: &Words, state: &State, rules: &Rules) -> Markup {
    html! {
        @for (i, (group, decisions)) in GROUPS.iter().enumerate() {
            // The first groups are those a dresser turns to first; faults are never folded away.
            details open[i < 3 || decisions.iter().any(|d| state.unread.contains_key(d))] {
                summary { (w.get(group)) }
                @for &decision in *decisions { (knob(w, state, decision, rules.way(decision))) }
            }
        }
    }
}

fn knob(w: &Words, state: &State, decision: Decision, way: Way) -> Markup {
    let (key, text) = (decision.key(), state.text(decision));
    let problem = state.unread.get(&decision);
    let outside = state
        .values
        .get(&decision)
        .is_some_and(|cm| !(way.low..=way.high).contains(cm));
    let name = w.decision(decision);
    html! {
        div.knob.bad[problem.is_some()] {
            label #{ (key) "-label" } for=(key) { (name) }
            // Stands here also when nothing is wrong: what is told later is read aloud in it.
            p.wrong #{ (key) "-wrong" } aria-live="polite" {
                @if let Some(problem) = problem { (w.fault(problem)) }
            }
            span.cm {
                // Text, not a number: a browser would drop what it cannot read, and shaku with it.
                // The keys for decimals of some phones have no minus.
                input type="text" id=(key) name=(key) value=(text)
                    inputmode=[(way.low >= 0.0).then_some("decimal")] autocomplete="off" aria-invalid=[problem.map(|_| "true")]
                    aria-describedby={ (key) "-usual " (key) "-wrong" };
                "cm"
            }
            div.track hidden {
                (usual_mark(way))
                input type="range" min=(tenths(way.low)) max=(tenths(way.high)) step="0.1"
                    value=(text) aria-labelledby={ (key) "-label" } aria-describedby={ (key) "-usual" };
            }
            span.small #{ (key) "-usual" } {
                (w.with("plan-usual", &[
                    ("usual", (&w.cm(way.usual)).into()),
                    ("range", (&w.range(Some(way.low), Some(way.high))).into()),
                ]))
                @if outside { " " span.mark.so { "△ " (w.get("plan-outside")) } }
            }
            label.keep {
                input type="checkbox" name="lock" value=(key) checked[state.locked.contains(&decision)];
                (w.get("plan-lock")) span.hidden-label { " " (name) }
            }
        }
    }
}

/// A tick on the slider's track where the usual value lies.
fn usual_mark(way: Way) -> Markup {
    let share = 100.0 * (way.usual - way.low) / (way.high - way.low).max(f64::MIN_POSITIVE);
    let at = format!("{share:.1}%");
    html! {
        svg aria-hidden="true" {
            line x1=(at) x2=(at) y1="8%" y2="92%" stroke="#7f7666" stroke-width="2" {}
        }
    }
}

/// A limit as the slider takes it.
fn tenths(cm: f64) -> String {
    format!("{cm:.1}")
}

/// Every wish: value, interval, what is wanted, met or missed; the missed ones first.
pub(crate) fn numbers(w: &Words, plan: &Plan) -> Markup {
    let (met, missed) = parted(plan);
    wishes(w, &[missed, met].concat())
}

/// The same with the wishes that are met in a fold of their own, for a narrow screen.
pub(crate) fn numbers_folded(w: &Words, plan: &Plan) -> Markup {
    let (met, missed) = parted(plan);
    html! {
        @if !missed.is_empty() { (wishes(w, &missed)) }
        @if !met.is_empty() {
            details.met open {
                summary { (w.with("plan-met", &[("count", met.len().into())])) }
                (wishes(w, &met))
            }
        }
    }
}

/// A wish, with its number where it is missed.
type Numbered<'a> = (&'a Check, Option<usize>);

/// What is met, and what is missed with its numbers.
fn parted(plan: &Plan) -> (Vec<Numbered<'_>>, Vec<Numbered<'_>>) {
    let met = plan.checks.iter().filter(|check| check.met());
    let missed = plan.missed().zip(1..);
    (
        met.map(|check| (check, None)).collect(),
        missed
            .map(|(check, number)| (check, Some(number)))
            .collect(),
    )
}

fn wishes(w: &Words, wishes: &[Numbered<'_>]) -> Markup {
    html! {
        table.cards.tight.wishes {
            thead {
                tr {
                    th scope="col" { (w.get("col-wish")) }
                    th scope="col" { (w.get("col-value")) }
                    th scope="col" { (w.get("col-interval")) }
                    th scope="col" { (w.get("col-wanted")) }
                    th scope="col" { (w.get("col-met")) }
                }
            }
            tbody { @for &(check, number) in wishes { (wish_row(w, check, number)) } }
        }
    }
}

fn wish_row(w: &Words, check: &Check, number: Option<usize>) -> Markup {
    let q = check.target.quantity;
    html! {
        tr {
            th scope="row" { (w.quantity(q)) }
            td.num data-name=(w.get("col-value")) { (w.check_length(check)) }
            td.num data-name=(w.get("col-interval")) { (w.interval(check.interval_90)) }
            td.num data-name=(w.get("col-wanted")) { (w.target_range(&check.target)) }
            td data-name=(w.get("col-met")) { (met(w, check, number)) }
        }
    }
}
/// A missed wish by name and amount.
fn miss(w: &Words, check: &Check) -> String {
    let what = w.quantity_short(check.target.quantity);
    w.with(
        "plan-miss",
        &[
            ("what", (&what).into()),
            ("miss", (&w.check_miss(check)).into()),
        ],
    )
}

/// Whether a wish is met, by sign and word; `number` is that of a missed one.
fn met(w: &Words, check: &Check, number: Option<usize>) -> Markup {
    html! {
        @match number {
            None => span.mark.ok { "○ " (w.check_verdict(check)) },
            Some(number) => span.mark.off { (sign(number)) " " (w.check_miss(check)) },
        }
    }
}

/// A missed wish with what holds it and what would free it.
pub(crate) struct Missed<'a> {
    /// The wish.
    pub check: &'a Check,
    /// What would free it.
    pub free: Free,
}

/// What would free a missed wish.
pub(crate) enum Free {
    /// The plan meets it: the hands have only to follow.
    ByPlan,
    /// It has not been worked out yet.
    Later,
    /// These changes; none when no single one does.
    Ways(Vec<WayOut>),
}

/// What holds each missed wish, and the ways out.
pub(crate) fn ways(w: &Words, missed: &[Missed<'_>]) -> Markup {
    html! {
        @if missed.is_empty() { p { (w.get("plan-nothing-missed")) } }
        @for (Missed { check, free }, number) in missed.iter().zip(1..) {
            section {
                h3 { span.mark.off { (sign(number)) } " " (miss(w, check)) }
                @if !check.binding.is_empty() {
                    p { (w.get("plan-held-by")) }
                    ul { @for binding in &check.binding { li { (w.binding(binding)) } } }
                }
                @if !check.rivals.is_empty() {
                    p { (w.get("plan-rivals")) }
                    ul { @for rival in &check.rivals { li { (w.with("plan-rival", &[
                        ("what", (&w.quantity_short(rival.quantity)).into()),
                        ("cost", (&w.cm(rival.cost)).into()),
                    ])) } } }
                }
                @match free {
                    Free::ByPlan => p { (w.get("plan-meets-it")) },
                    Free::Later => p.soft { (w.get("plan-ways-later")) },
                    Free::Ways(found) if found.is_empty() => p { (w.get("plan-no-way-out")) },
                    Free::Ways(found) => {
                        p { (w.get("plan-ways-out")) }
                        ul { @for way in found { li { (w.way_out(way)) } } }
                    }
                }
            }
        }
    }
}

/// The steps in dressing order, with numbers and cautions.
pub(crate) fn steps(w: &Words, steps: &[Step]) -> Markup {
    html! {
        p.soft { (w.cautions_note()) }
        ol.steps {
            @for step in steps {
                li {
                    h3 { (w.step_title(step.id)) }
                    p { (w.step_text(step.id)) }
                    @if !step.numbers.is_empty() {
                        ul { @for number in &step.numbers { li { (w.number(number)) } } }
                    }
                    @for &caution in step.cautions { p.caution { (w.caution(caution)) } }
                }
            }
        }
    }
}

/// The decisions as a table, for what is only looked at.
pub(crate) fn decisions(w: &Words, state: &State, rules: &Rules) -> Markup {
    let dressing = state.dressing(rules);
    html! {
        table.cards {
            thead {
                tr {
                    th scope="col" { (w.get("col-decision")) }
                    th scope="col" { (w.get("col-value")) }
                    th scope="col" { (w.get("col-usual")) }
                }
            }
            tbody {
                @for &decision in GROUPS.iter().flat_map(|(_, decisions)| *decisions) {
                    tr {
                        th scope="row" { (w.decision(decision)) }
                        td.num data-name=(w.get("col-value")) {
                            (w.cm(dressing.get(decision)))
                            @if state.locked.contains(&decision) { " " span.small { (w.get("plan-lock")) } }
                        }
                        td.num data-name=(w.get("col-usual")) { (w.cm(rules.way(decision).usual)) }
                    }
                }
            }
        }
    }
}
