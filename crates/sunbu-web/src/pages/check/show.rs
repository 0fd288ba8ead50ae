//! One check: its photos side by side, what the eye saw, and the way to the report.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::photo::{SIDES, View};
use sunbu_store::{Check, Photo};
use sunbu_words::Words;

use super::checked::about;
use super::eye;
use crate::answer::page_with;
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::pages::day;
use crate::parts::{Frame, Here, frame};

/// What a change that was not made has to say on the page of its check.
#[derive(Default)]
pub(crate) struct Refused {
    /// Which side's photo was refused, and why.
    pub photo: Option<(View, String)>,
    /// Why the faults seen by eye were not kept, and the form as it was sent.
    pub eye: Option<eye::Sent>,
}

/// The page.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    draw(room, ask, StatusCode::OK, &Refused::default())
}

/// The page with what could not be done.
pub(crate) fn draw(
    room: &Room,
    ask: &Ask,
    status: StatusCode,
    refused: &Refused,
) -> Result<Response, Fault> {
    let w = ask.words();
    let id = ask.id("check").ok_or(Fault::NotFound)?;
    let store = room.store();
    let (check, photos) = (store.check(id)?, store.photos(id)?);
    drop(store);
    let title = check.row.title.clone();
    let body = html! {
        p.crumb { a href="/checks" { (w.get("checks-title")) } }
        h1 { (title) }
        p { (about(w, &check.row)) " · " span.num { (day(&check.row.made_at)) } }
        (links(w, &check))
        @if let Err(problems) = &check.shown {
            section.errors { h2 { (w.get("checks-unread")) } ul { @for p in problems { li { (w.problem(p)) } } } }
        }
        @if let Some((view, why)) = &refused.photo {
            section.errors role="alert" tabindex="-1" { p { strong { (w.view(*view)) } ": " (why) } }
        }
        h2 { (w.get("checks-photos")) }
        p { (w.get("checks-photos-how")) }
        ul.sides { @for view in sides(&photos) { (side(w, id, view, &photos)) } }
        @if !photos.iter().any(|photo| photo.view == View::Left) {
            details { summary { (w.get("checks-left")) } (upload(w, id, View::Left, None)) }
        }
        div.acts { a.button.main-act href={ "/checks/" (id) "/report" } { (w.get("checks-report")) } }
        (eye::part(w, &check, refused.eye.as_ref()))
        div.acts {
            a.button.main-act href={ "/checks/" (id) "/report" } { (w.get("checks-report")) }
            a.button.grave href={ "/checks/" (id) "/erase" } { (w.get("erase")) }
        }
    };
    let frame_of = Frame::new(&title, Here::Checks).with(&["check.js"]);
    Ok(page_with(status, frame(ask, &frame_of, &body)))
}

/// Whom and which plan the check is of.
fn links(w: &Words, check: &Check) -> Markup {
    let row = &check.row;
    html! {
        @if row.person_id.is_some() || row.plan_id.is_some() {
            p.soft {
                @if let Some(person) = row.person_id { a href={ "/people/" (person) } { (row.person) } }
                @if let Some(plan) = row.plan_id { " · " a href={ "/plans/" (plan) } { (w.get("checks-plan")) } }
            }
        }
    }
}

/// The sides that are asked for, and any other that is there.
fn sides(photos: &[Photo]) -> Vec<View> {
    let taken = |view: &View| photos.iter().any(|photo| photo.view == *view);
    View::ALL
        .iter()
        .copied()
        .filter(|view| SIDES.contains(view) || taken(view))
        .collect()
}

/// One side: its photo and what is to be done with it, or where to put one.
fn side(w: &Words, check: i64, view: View, photos: &[Photo]) -> Markup {
    let photo = photos.iter().find(|photo| photo.view == view);
    html! {
        li.side {
            h3 { (w.view(view)) }
            @match photo {
                Some(photo) => (taken(w, check, photo)),
                None => {
                    p.soft { (w.get(&format!("checks-side-{}", view.key()))) }
                    (upload(w, check, view, None))
                }
            }
        }
    }
}

fn taken(w: &Words, check: i64, photo: &Photo) -> Markup {
    let path = format!("/checks/{check}/photos/{}", photo.id);
    let marking = photo.marking.as_ref();
    let (sign, state) = match marking {
        None => ("✕", w.get("checks-marks-unread")),
        Some(marking) if !marking.begun() => ("○", w.get("checks-marks-none")),
        Some(marking) => (
            "✓",
            w.with(
                "checks-marks",
                &[("count", marking.shot.marks.len().into())],
            ),
        ),
    };
    let size = marking.map(|marking| marking.shot.size);
    html! {
        a.shot href=(path) {
            img src={ (path) "/picture.jpg" } alt=(w.view(photo.view)) loading="lazy"
                width=[size.map(|s| s[0])] height=[size.map(|s| s[1])];
        }
        p { span.sign aria-hidden="true" { (sign) } (state) }
        div.acts {
            @if marking.is_some() { a.button.main-act href=(path) { (w.get("checks-mark")) } }
        }
        details {
            summary { (w.get("checks-replace")) }
            p.soft { (w.get("checks-replace-what")) }
            (upload(w, check, photo.view, Some(photo.id)))
            form.acts method="post" action={ (path) "/erase" } { button.grave { (w.get("checks-photo-erase")) } }
        }
    }
}

/// Where a photo is chosen or taken; `instead_of` is the one whose place it takes.
fn upload(w: &Words, check: i64, view: View, instead_of: Option<i64>) -> Markup {
    let id = format!("photo-{}", view.key());
    html! {
        form.upload method="post" enctype="multipart/form-data" action={ "/checks/" (check) "/photos" }
            data-busy=(w.get("checks-sending")) {
            input type="hidden" name="view" value=(view.key());
            @if let Some(old) = instead_of { input type="hidden" name="instead_of" value=(old); }
            label for=(id) { (w.get("checks-choose")) }
            input id=(id) type="file" name="photo" accept="image/jpeg,image/png,image/webp" required;
            button { (w.get("checks-send")) }
            p.soft role="status" {}
        }
    }
}
