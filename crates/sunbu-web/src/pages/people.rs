//! The people the studio dresses: the list, and one person's measures, completed.

use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::body::{Body, BodyMeasure, Kind};
use sunbu_core::case::Person;
use sunbu_core::measure::Origin;
use sunbu_words::Words;

use super::unread;
use crate::answer::{go, page};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, frame};
use crate::search::matches;

/// All people, or those whose name or note holds what is searched for.
pub(crate) fn list(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let sought = ask.queried("search").unwrap_or("").trim();
    let all = room.store().people()?;
    let none_yet = all.is_empty();
    let unread = unread::found(all.unread, sought);
    let found: Vec<_> = all
        .read
        .into_iter()
        .filter(|kept| matches(sought, &[&kept.value.name, &kept.value.note]))
        .collect();
    let title = w.get("people-title");
    let body = html! {
        h1 { (title) }
        div.acts { a.button.main-act href="/people/new" { (w.get("people-new")) } }
        @if none_yet {
            p { (w.get("people-none")) }
        } @else {
            (super::search_form(w, "/people", sought, &w.get("people-search")))
            @if found.is_empty() && unread.is_empty() { p role="status" { (w.with("search-none", &[("sought", sought.into())])) } }
            ul.list {
                @for kept in &found {
                    li {
                        a.grow href={ "/people/" (kept.id) } { (kept.value.name) }
                        span.soft { (essentials(w, &kept.value)) }
                    }
                }
            }
            (unread::list(w, &unread))
        }
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::People), &body)))
}

/// Stature and hip as taped: what tells two people of one name apart.
fn essentials(w: &Words, person: &Person) -> String {
    let taped = [
        BodyMeasure::Stature,
        BodyMeasure::HipGirth,
        BodyMeasure::FullestGirth,
    ];
    let texts = taped.into_iter().filter_map(|measure| {
        let cm = person.measures.get(&measure)?.length.cm();
        Some(format!("{} {}", w.body_measure(measure), w.cm(cm)))
    });
    texts.collect::<Vec<_>>().join(" · ")
}

/// One person: every measure with its interval, where it came from, what looks unlikely.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = ask.id("person").ok_or(Fault::NotFound)?;
    let store = room.store();
    let kept = store.person(id)?;
    let garments = store.garments()?.read;
    let (plans, checks) = (store.plans_of_person(id)?, store.checks_of_person(id)?);
    drop(store);
    let body = kept.value.body()?;
    let title = kept.value.name.clone();
    let markup = html! {
        p.crumb { a href="/people" { (w.get("people-title")) } }
        h1 { (title) }
        @if !kept.value.note.is_empty() { p.note { (kept.value.note) } }
        div.acts {
            a.button.main-act href={ "/people/" (id) "/worth" } { (w.get("person-worth")) }
            a.button href={ "/people/" (id) "/edit" } { (w.get("edit")) }
            a.button.grave href={ "/people/" (id) "/erase" } { (w.get("erase")) }
        }
        @if !garments.is_empty() {
            form.search method="get" action={ "/people/" (id) "/plan" } {
                div {
                    label for="garment" { (w.get("person-plan-with")) }
                    (super::garment_select(w, &garments))
                }
                button { (w.get("plan-open")) }
            }
        }
        (unlikely(w, &body))
        h2 { (w.get("person-measures")) }
        p { (w.get("person-measures-how")) }
        (measures(w, &body))
        (super::plan_list(w, &plans, &w.get("person-plans")))
        (super::check::list::part(w, &checks))
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::People), &markup)))
}

/// What was taped but hardly goes with the rest: a second look at the tape is due.
fn unlikely(w: &Words, body: &Body) -> Markup {
    html! {
        @if !body.unlikely().is_empty() {
            section.warn aria-labelledby="unlikely" {
                h2 #unlikely { (w.get("person-unlikely")) }
                ul {
                    @for odd in body.unlikely() { li { (w.unlikely(odd)) } }
                }
            }
        }
    }
}

/// The table of all measures, heights first.
fn measures(w: &Words, body: &Body) -> Markup {
    let groups = [
        (Kind::Height, "person-heights"),
        (Kind::Girth, "person-girths"),
        (Kind::Length, "person-lengths"),
    ];
    html! {
        @for (kind, id) in groups {
            table.cards {
                caption { (w.get(id)) }
                thead {
                    tr {
                        th scope="col" { (w.get("col-measure")) }
                        th scope="col" { (w.get("col-value")) }
                        th scope="col" { (w.get("col-interval")) }
                        th scope="col" { (w.get("col-origin")) }
                    }
                }
                tbody {
                    @for &measure in BodyMeasure::ALL.iter().filter(|m| m.kind() == kind) {
                        (measure_row(w, body, measure))
                    }
                }
            }
        }
    }
}

fn measure_row(w: &Words, body: &Body, measure: BodyMeasure) -> Markup {
    let value = body.measure(measure);
    let odd = body.unlikely().iter().any(|u| u.measure == measure);
    let moved = body.moved().contains(&measure);
    html! {
        tr {
            th scope="row" { (w.body_measure(measure)) }
            td.num data-name=(w.get("col-value")) { (w.length(value.value_cm(), value.sd_cm())) }
            td.num data-name=(w.get("col-interval")) { (w.interval(value.interval_90())) }
            td data-name=(w.get("col-origin")) {
                @if value.origin() == Origin::Taped { strong { (w.origin(value.origin())) } }
                @else { (w.origin(value.origin())) }
                @if odd { " " span.mark.off { "▲ " (w.get("mark-unlikely")) } }
                @if moved { " " span.mark.so { "△ " (w.get("mark-moved")) } }
            }
        }
    }
}

/// The garment chosen on a person's page leads to their plan.
pub(crate) fn to_plan(_room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let person = ask.id("person").ok_or(Fault::NotFound)?;
    let garment = ask
        .queried("garment")
        .and_then(|text| text.parse::<i64>().ok());
    let garment = garment.ok_or(Fault::NotFound)?;
    Ok(go(&format!("/people/{person}/in/{garment}")))
}
