//! The first page: what to do next.

use axum::response::Response;
use maud::html;

use crate::answer::{go, page};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, frame};

/// How many of the newest plans the first page lists.
const RECENT: usize = 8;

/// Measure, enter, plan, check; and the plans made last.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let store = room.store();
    let (people, garments, mut plans) = (store.people()?, store.garments()?, store.plans()?);
    let checks = store.checks()?;
    drop(store);
    plans.truncate(RECENT);
    let title = w.get("home-title");
    let ready = !people.read.is_empty() && !garments.read.is_empty();
    let body = html! {
        h1 { (title) }
        p { (w.get("home-what")) }
        ol.todo {
            li {
                h2 { (w.get("home-measure")) }
                p { (w.with("home-measure-how", &[("count", people.len().into())])) }
                a.button href="/people/new" { (w.get("people-new")) }
            }
            li {
                h2 { (w.get("home-enter")) }
                p { (w.with("home-enter-how", &[("count", garments.len().into())])) }
                a.button href="/garments/new" { (w.get("garments-new")) }
            }
            li {
                h2 { (w.get("home-plan")) }
                @if ready {
                    form method="get" action="/plan" {
                        div.field {
                            label for="person" { (w.get("home-person")) }
                            (super::person_select(w, &people.read))
                        }
                        div.field {
                            label for="garment" { (w.get("home-garment")) }
                            (super::garment_select(w, &garments.read))
                        }
                        button.main-act { (w.get("plan-open")) }
                    }
                } @else {
                    p { (w.get("home-plan-later")) }
                }
            }
            li {
                h2 { (w.get("home-check")) }
                p { (w.with("home-check-how", &[("count", checks.len().into())])) }
                a.button href="/checks" { (w.get("home-check-open")) }
            }
        }
        (super::plan_list(w, &plans, &w.get("home-recent")))
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Home), &body)))
}

/// The person and garment chosen on the first page lead to their plan.
pub(crate) fn to_plan(_room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let number = |name: &str| ask.queried(name).and_then(|text| text.parse::<i64>().ok());
    let (person, garment) = number("person")
        .zip(number("garment"))
        .ok_or(Fault::NotFound)?;
    Ok(go(&format!("/people/{person}/in/{garment}")))
}
