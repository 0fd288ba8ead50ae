//! All checks, and erasing one.

use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::photo::View;
use sunbu_store::CheckRow;
use sunbu_words::Words;

use super::checked::about;
use crate::answer::{go, page};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::pages::{day, search_form};
use crate::parts::{Frame, Here, frame};
use crate::search::matches;

/// All checks, or those whose title, person or garment is searched for.
pub(crate) fn list(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let sought = ask.queried("search").unwrap_or("").trim();
    let all = room.store().checks()?;
    let none_yet = all.is_empty();
    let found: Vec<_> = all
        .into_iter()
        .filter(|row| matches(sought, &[&row.title, &row.person, &row.garment]))
        .collect();
    let title = w.get("checks-title");
    let body = html! {
        h1 { (title) }
        p { (w.get("checks-what")) }
        div.acts {
            a.button.main-act href="/plans" { (w.get("checks-from-plan")) }
            a.button href="/checks/new" { (w.get("checks-new")) }
        }
        @if none_yet {
            p { (w.get("checks-none")) }
        } @else {
            (search_form(w, "/checks", sought, &w.get("checks-search")))
            @if found.is_empty() { p role="status" { (w.with("search-none", &[("sought", sought.into())])) } }
            (rows(w, &found))
        }
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Checks), &body)))
}

/// Checks as a list.
pub(crate) fn rows(w: &Words, checks: &[CheckRow]) -> Markup {
    html! {
        ul.list {
            @for check in checks {
                li {
                    a.grow href={ "/checks/" (check.id) } { (check.title) }
                    span { (about(w, check)) }
                    span.soft { (views(w, &check.views)) }
                    span.soft.num { (day(&check.made_at)) }
                }
            }
        }
    }
}

/// Checks under a heading; nothing when there are none.
pub(crate) fn part(w: &Words, checks: &[CheckRow]) -> Markup {
    html! {
        @if !checks.is_empty() {
            h2 { (w.get("checks-title")) }
            (rows(w, checks))
        }
    }
}

fn views(w: &Words, views: &[View]) -> String {
    if views.is_empty() {
        return w.get("checks-no-photo");
    }
    let names: Vec<String> = views.iter().map(|&view| w.view(view)).collect();
    names.join(" · ")
}

/// Asks whether a check is to be erased.
pub(crate) fn confirm_erase(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = ask.id("check").ok_or(Fault::NotFound)?;
    let row = room.store().check(id)?.row;
    let title = w.with("erase-title", &[("name", (&row.title).into())]);
    let body = html! {
        h1 { (title) }
        p { (about(w, &row)) }
        p { (w.get("checks-erase-what")) }
        form.acts method="post" {
            button.grave { (w.get("erase-yes")) }
            a.button href={ "/checks/" (id) } { (w.get("erase-no")) }
        }
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Checks), &body)))
}

/// Erases a check with its photos.
pub(crate) fn erase(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    room.store()
        .erase_check(ask.id("check").ok_or(Fault::NotFound)?)?;
    Ok(go("/checks?done=erased"))
}
