//! The studio's garments: the list, and one garment with every part, taped or completed.

use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::case::Piece;
use sunbu_core::garment::{Garment, Part};
use sunbu_words::Words;

use super::unread;
use crate::answer::{go, page};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, frame};
use crate::search::matches;

/// All garments, or those whose name or note holds what is searched for.
pub(crate) fn list(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let sought = ask.queried("search").unwrap_or("").trim();
    let all = room.store().garments()?;
    let none_yet = all.is_empty();
    let unread = unread::found(all.unread, sought);
    let found: Vec<_> = all
        .read
        .into_iter()
        .filter(|kept| matches(sought, &[&kept.value.name, &kept.value.note]))
        .collect();
    let title = w.get("garments-title");
    let body = html! {
        h1 { (title) }
        div.acts { a.button.main-act href="/garments/new" { (w.get("garments-new")) } }
        @if none_yet {
            p { (w.get("garments-none")) }
        } @else {
            (super::search_form(w, "/garments", sought, &w.get("garments-search")))
            @if found.is_empty() && unread.is_empty() { p role="status" { (w.with("search-none", &[("sought", sought.into())])) } }
            ul.list {
                @for kept in &found {
                    li {
                        a.grow href={ "/garments/" (kept.id) } { (kept.value.name) }
                        span.soft { (essentials(w, &kept.value)) }
                    }
                }
            }
            (unread::list(w, &unread))
        }
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Garments), &body)))
}

/// Kind and length: what a dresser looks for first.
fn essentials(w: &Words, piece: &Piece) -> String {
    let kind = w.kind(piece.sheet.kind);
    match piece.sheet.parts.get(&Part::Mitake) {
        Some(mitake) => format!(
            "{kind} · {} {}",
            w.part(Part::Mitake),
            w.cm(mitake.length.cm())
        ),
        None => kind,
    }
}

/// One garment: every part with its interval, and the rule and source of what was completed.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = ask.id("garment").ok_or(Fault::NotFound)?;
    let store = room.store();
    let kept = store.garment(id)?;
    let people = store.people()?.read;
    drop(store);
    let garment = kept.value.garment()?;
    let title = kept.value.name.clone();
    let body = html! {
        p.crumb { a href="/garments" { (w.get("garments-title")) } }
        h1 { (title) }
        p.soft {
            (w.kind(garment.kind())) " · " (w.cloth(garment.cloth())) " · "
            (w.mitake_from(garment.mitake_from()))
        }
        @if !kept.value.note.is_empty() { p.note { (kept.value.note) } }
        div.acts {
            a.button.main-act href={ "/garments/" (id) "/suits" } { (w.get("garment-suits")) }
            a.button href={ "/garments/" (id) "/edit" } { (w.get("edit")) }
            a.button.grave href={ "/garments/" (id) "/erase" } { (w.get("erase")) }
        }
        @if !people.is_empty() {
            form.search method="get" action={ "/garments/" (id) "/plan" } {
                div {
                    label for="person" { (w.get("garment-plan-for")) }
                    (super::person_select(w, &people))
                }
                button { (w.get("plan-open")) }
            }
        }
        (warnings(w, &garment))
        h2 { (w.get("garment-parts")) }
        p { (w.get("garment-parts-how")) }
        (cut_for(w, &garment))
        (parts(w, &garment))
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Garments), &body)))
}

/// What is unusual about the garment.
fn warnings(w: &Words, garment: &Garment) -> Markup {
    let found = garment.warnings();
    html! {
        @if !found.is_empty() {
            section.warn aria-labelledby="unusual" {
                h2 #unusual { (w.get("garment-unusual")) }
                ul { @for warning in &found { li { (w.warning(warning)) } } }
            }
        }
    }
}

/// For whom it was likely cut.
fn cut_for(w: &Words, garment: &Garment) -> Markup {
    let (height, hip) = (garment.likely_height(), garment.likely_hip());
    html! {
        p {
            (w.with("garment-cut-for", &[
                ("height", (&w.length(height.value_cm(), height.sd_cm())).into()),
                ("hip", (&w.length(hip.value_cm(), hip.sd_cm())).into()),
            ]))
        }
    }
}

fn parts(w: &Words, garment: &Garment) -> Markup {
    html! {
        table.cards {
            thead {
                tr {
                    th scope="col" { (w.get("col-part")) }
                    th scope="col" { (w.get("col-value")) }
                    th scope="col" { (w.get("col-interval")) }
                    th scope="col" { (w.get("col-origin")) }
                }
            }
            tbody { @for &part in Part::ALL { (part_row(w, garment, part)) } }
        }
    }
}

fn part_row(w: &Words, garment: &Garment, part: Part) -> Markup {
    let value = garment.part(part);
    html! {
        tr {
            th scope="row" { (w.part(part)) }
            td.num data-name=(w.get("col-value")) { (w.length(value.value_cm(), value.sd_cm())) }
            td.num data-name=(w.get("col-interval")) { (w.interval(value.interval_90())) }
            td data-name=(w.get("col-origin")) {
                @match garment.completed_by(part) {
                    None => strong { (w.origin(value.origin())) },
                    Some(rule) => {
                        span.mark.so { "△ " (w.origin(value.origin())) }
                        span.small {
                            (w.rule(rule))
                            @for source in rule.sources { " · " (source.code) ": " (source.title) }
                        }
                    }
                }
            }
        }
    }
}

/// The person chosen on a garment's page leads to their plan.
pub(crate) fn to_plan(_room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let garment = ask.id("garment").ok_or(Fault::NotFound)?;
    let person = ask
        .queried("person")
        .and_then(|text| text.parse::<i64>().ok());
    let person = person.ok_or(Fault::NotFound)?;
    Ok(go(&format!("/people/{person}/in/{garment}")))
}
