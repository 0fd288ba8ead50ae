//! Kept plans: the list, and one of them as it was, from the snapshot that was kept with it.

use axum::response::Response;
use maud::html;
use sunbu_store::SavedPlan;

use super::check;
use super::plan::Bench;
use super::plan_parts as parts;
use crate::answer::{go, page};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, frame};
use crate::search::matches;
use crate::state::State;

/// All kept plans, or those whose title, person or garment is searched for.
pub(crate) fn list(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let sought = ask.queried("search").unwrap_or("").trim();
    let all = room.store().plans()?;
    let none_yet = all.is_empty();
    let found: Vec<_> = all
        .into_iter()
        .filter(|row| matches(sought, &[&row.title, &row.person, &row.garment]))
        .collect();
    let title = w.get("saved-title");
    let body = html! {
        h1 { (title) }
        @if none_yet {
            p { (w.get("saved-none")) }
        } @else {
            (super::search_form(w, "/plans", sought, &w.get("saved-search")))
            @if found.is_empty() { p role="status" { (w.with("search-none", &[("sought", sought.into())])) } }
            (super::plan_rows(w, &found))
        }
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Plans), &body)))
}

/// One kept plan, to be looked at only.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = ask.id("plan").ok_or(Fault::NotFound)?;
    let store = room.store();
    let (saved, checks) = (store.plan(id)?, store.checks_of_plan(id)?);
    drop(store);
    let (bench, state) = Bench::of(&saved)?;
    let (state, shown) = bench.work(state);
    let title = saved.row.title.clone();
    let scene = bench.scene(&shown, None, w, &title);
    let body = html! {
        p.crumb { a href="/plans" { (w.get("saved-title")) } }
        h1 { (title) }
        p { (bench.title(w)) }
        p.soft {
            (w.with("saved-read-only", &[
                ("day", super::day(&saved.row.made_at).into()),
                ("occasion", (&w.occasion(state.occasion)).into()),
            ]))
        }
        div.acts {
            @if let Some(path) = again(&saved, &state) {
                a.button.main-act href=(path) { (w.get("saved-reopen")) }
            }
            a.button href={ "/plans/" (id) "/print" } { (w.get("saved-print")) }
            @if saved.row.person_id.is_some() {
                form method="post" action={ "/plans/" (id) "/check" } {
                    button { (w.get("checks-of-this")) }
                }
            }
            a.button.grave href={ "/plans/" (id) "/erase" } { (w.get("erase")) }
        }
        @if again(&saved, &state).is_none() { p { (w.get("saved-gone")) } }
        div.kept {
            div.figure { (parts::figure(&scene)) }
            p.told { (parts::told(w, &shown)) }
        }
        (parts::notes(w, &scene))
        h2 { (w.get("saved-do")) }
        (parts::decisions(w, &state, &bench.rules))
        h2 { (w.get("plan-numbers")) }
        (parts::numbers(w, &shown))
        h2 { (w.get("plan-ways")) }
        (parts::ways(w, &bench.missed(&state, &shown, true)))
        h2 { (w.get("plan-steps")) }
        (bench.steps_part(w, &shown))
        (check::list::part(w, &checks))
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Plans), &body)))
}

/// Where the same dressing is planned further; none when person or garment are gone.
fn again(saved: &SavedPlan, state: &State) -> Option<String> {
    let (person, garment) = saved.row.person_id.zip(saved.row.garment_id)?;
    Some(format!("/people/{person}/in/{garment}?{}", state.query()))
}

/// Asks whether a kept plan is to be erased.
pub(crate) fn confirm_erase(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = ask.id("plan").ok_or(Fault::NotFound)?;
    let saved = room.store().plan(id)?;
    let title = w.with("erase-title", &[("name", (&saved.row.title).into())]);
    let body = html! {
        h1 { (title) }
        p { (w.get("saved-erase-what")) }
        form.acts method="post" {
            button.grave { (w.get("erase-yes")) }
            a.button href={ "/plans/" (id) } { (w.get("erase-no")) }
        }
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Plans), &body)))
}

/// Erases a kept plan.
pub(crate) fn erase(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    room.store()
        .erase_plan(ask.id("plan").ok_or(Fault::NotFound)?)?;
    Ok(go("/plans?done=erased"))
}
