//! The report of a check: first what to change and why, then everything that was read.

use axum::response::Response;
use maud::{Markup, PreEscaped, html};
use sunbu_core::dressing::{Finding, Locks, assess};
use sunbu_core::photo::{FIRST, Marking, View};
use sunbu_store::Photo;
use sunbu_words::Words;

use super::checked::about;
use super::pictured::drawn;
use super::told::{Told, first_of_all, nothing_yet, to_change};
use crate::answer::page;
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::pages::day;
use crate::pages::onlookers::{self, Place};
use crate::parts::{Frame, Here, frame};

/// The page.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let told = Told::look_up(room, ask)?;
    let (row, id) = (&told.checked.check.row, told.id());
    let body = html! {
        p.crumb { a href={ "/checks/" (id) } { (w.get("report-to-check")) } }
        h1 { (row.title) }
        p { (about(w, row)) " · " span.num { (day(&row.made_at)) } }
        @if told.is_empty() {
            (nothing_yet(w, id))
            (unread(w, &told))
        } @else {
            (first_of_all(w, &told.report))
            @if told.read.read.iter().any(|(photo, _)| is_untouched(photo)) {
                p.warn { (w.get("report-untouched")) }
            }
            @if told.checked.is_stranger() && !told.read.read.is_empty() {
                p.warn { (w.get(told.checked.stranger_id())) }
            }
            div.report {
                section.to-change {
                    h2 { (w.get("check-h-advice")) }
                    (to_change(w, &told, true))
                    h2 { (w.get("check-h-good")) }
                    p.good { (w.good_line(&told.report, told.rules())) }
                    div.acts { a.button.main-act href={ "/checks/" (id) "/sheet" } { (w.get("report-sheet")) } }
                }
                (pictures(w, &told)?)
            }
            (unread(w, &told))
            (everything(w, &told))
            (seen(w, ask, &told))
        }
    };
    let frame_of = Frame::new(&row.title, Here::Checks).styled(&["report.css"]);
    Ok(page(frame(ask, &frame_of, &body)))
}

/// The photos that were read, with their lines.
fn pictures(w: &Words, told: &Told) -> Result<Markup, Fault> {
    let mut figures = Vec::new();
    for photo in told.photos() {
        let path = path_of(photo);
        let href = format!("{path}/picture.jpg");
        let svg = drawn(w, &told.checked, &told.report, photo, &href)?;
        figures.push((path, photo.view, set_by_hand(w, photo), svg));
    }
    Ok(html! {
        @if !figures.is_empty() {
            section.pictures {
                h2 { (w.get("report-photos")) }
                @for (path, view, set, svg) in figures {
                    figure {
                        (PreEscaped(svg))
                        figcaption { (w.view(view)) " · " (set) " · " a href=(path) { (w.get("report-marks")) } }
                    }
                }
            }
        }
    })
}

/// How many of a photo's marks a hand has set: the others stand where they are expected.
fn set_by_hand(w: &Words, photo: &Photo) -> String {
    let (by_hand, all) = photo.marking.as_ref().map_or((0, 0), Marking::by_hand);
    w.with(
        "report-by-hand",
        &[
            ("count", by_hand.into()),
            ("all", (&all.to_string()).into()),
        ],
    )
}

/// Whether a photo's marks are all where the program put them, but for floor and crown.
fn is_untouched(photo: &Photo) -> bool {
    let set = photo.marking.as_ref().map(Marking::by_hand);
    set.is_some_and(|(by_hand, _)| by_hand <= FIRST.len())
}

/// The address of a photo's marks.
fn path_of(photo: &Photo) -> String {
    format!("/checks/{}/photos/{}", photo.check, photo.id)
}

/// The photos that do not read, with what is wrong and the way to mend it.
fn unread(w: &Words, told: &Told) -> Markup {
    let photos = &told.read.unread;
    html! {
        @if !photos.is_empty() {
            h2 { (w.get("report-unread")) }
            ul.list {
                @for (photo, problems) in photos {
                    li {
                        strong { (w.view(photo.view)) }
                        span.grow {
                            @match (&photo.marking, problems.as_slice()) {
                                (None, _) => (w.get("checks-marks-unread")),
                                (Some(_), []) => (w.get("report-unread-marks")),
                                (Some(_), problems) => @for problem in problems { (w.named_problem(problem)) " " },
                            }
                        }
                        a href=(path_of(photo)) { (w.get("checks-mark")) }
                    }
                }
            }
        }
    }
}

/// All that was read, folded away: a dresser looks here when she wants to know why.
fn everything(w: &Words, told: &Told) -> Markup {
    let report = &told.report;
    let diagnosis = &report.diagnosis;
    let mut faults_say = Vec::new();
    if report.observed.quantities().is_empty() {
        faults_say.push(w.get("check-nothing-read"));
    } else if diagnosis.faults.is_empty() {
        faults_say.push(w.get("check-no-faults"));
    }
    let doubts = diagnosis.doubts.iter();
    let doubts = doubts.map(|doubt| w.doubt(doubt, diagnosis)).collect();
    let differences = diagnosis.differences.iter();
    let differences = differences.map(|found| w.difference(found)).collect();
    let hidden = w.hidden(report).into_iter().collect();
    let lists: [(&str, Vec<String>); 7] = [
        ("check-h-causes", w.rows(report)),
        ("check-h-doubts", doubts),
        ("check-h-correction", w.corrections(report)),
        ("check-h-skews", w.skew_lines(report)),
        ("check-h-differences", differences),
        ("check-h-unseen", w.unseen_lines(report)),
        ("check-h-hidden", hidden),
    ];
    html! {
        details.everything {
            summary { (w.get("report-all")) }
            p.soft { (w.with("print-occasion", &[("occasion", (&w.occasion(told.checked.occasion)).into())])) }
            h3 { (w.get("check-h-faults")) }
            @for line in faults_say { p { (line) } }
            (findings(w, told, &diagnosis.faults))
            @if !diagnosis.perhaps.is_empty() {
                h3 { (w.get("check-h-perhaps")) }
                (findings(w, told, &diagnosis.perhaps))
            }
            @for (heading, lines) in lists {
                @if !lines.is_empty() {
                    h3 { (w.get(heading)) }
                    ul { @for line in lines { li { (line) } } }
                }
            }
            @if !report.doubtful.is_empty() {
                h3 { (w.get("check-h-doubtful")) }
                ul {
                    @for &(view, mark) in &report.doubtful {
                        li { (w.doubtful(view, mark)) " " (to_marks(w, told, view)) }
                    }
                }
            }
        }
    }
}

/// A way to the marks of one side's photo.
fn to_marks(w: &Words, told: &Told, view: View) -> Markup {
    let photo = told.photos().find(|photo| photo.view == view);
    html! { @if let Some(photo) = photo { a href=(path_of(photo)) { (w.get("report-marks")) } } }
}

/// Readings outside their range: value, interval, range and by how much.
fn findings(w: &Words, told: &Told, found: &[Finding]) -> Markup {
    let rules = told.rules();
    html! {
        @if !found.is_empty() {
            table.cards.tight {
                thead {
                    tr {
                        th scope="col" { (w.get("report-fault")) }
                        th scope="col" { (w.get("col-value")) }
                        th scope="col" { (w.get("col-interval")) }
                        th scope="col" { (w.get("col-wanted")) }
                        th scope="col" { (w.get("report-off")) }
                    }
                }
                tbody {
                    @for finding in found {
                        @let names = w.finding_names(finding);
                        tr {
                            th scope="row" {
                                @if !names.is_empty() { (w.listed(&names)) br; }
                                span.small { (w.quantity(finding.quantity)) }
                            }
                            td.num data-name=(w.get("col-value")) { (w.finding_value(finding, rules)) }
                            td.num data-name=(w.get("col-interval")) { (w.interval(finding.interval_90)) }
                            td.num data-name=(w.get("col-wanted")) {
                                @if let Some(target) = rules.target(finding.quantity) { (w.target_range(target)) }
                            }
                            td data-name=(w.get("report-off")) { (w.finding_miss(finding, rules)) }
                        }
                    }
                }
            }
        }
    }
}

/// The hem of the dressing as it was done, as others see it.
fn seen(w: &Words, ask: &Ask, told: &Told) -> Markup {
    let checked = &told.checked;
    let (fitting, done) = (&checked.fitting, told.report.diagnosis.done);
    let done = assess(fitting, &checked.rules, &Locks::new(), done);
    let place = Place::read(ask.query());
    // Without a reading nothing is known but what was planned.
    let what = if told.read.read.is_empty() {
        w.get("seen-planned")
    } else {
        w.get("seen-done")
    };
    html! {
        h2 #seen { (w.get("seen-title")) }
        p { (what) }
        (onlookers::sights(w, (&checked.body, fitting), &done, &place))
        form method="get" action={ "/checks/" (told.id()) "/report#seen" } {
            (onlookers::fields(w, &place, None))
        }
    }
}
