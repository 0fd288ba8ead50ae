//! The sheet to hand over: the photo with its lines, at most three things in order, one that is
//! good. As a page for paper, as a picture, and as a message to send.
//!
//! Nothing here leads to the picture as it is kept: only to the one with what is hidden painted in.

use axum::http::StatusCode;
use axum::response::Response;
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use maud::{Markup, PreEscaped, html};
use sunbu_draw::Feedback;
use sunbu_image::png_of_svg;
use sunbu_store::Photo;
use sunbu_words::Words;

use super::face::{self, Refused};
use super::pictured::{drawn, painted};
use super::told::{Told, first_of_all, nothing_yet, to_change};
use crate::answer::{go, page_with, plain, png};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::pages::day;
use crate::parts::{Frame, Here, frame};

/// Width of the picture, in pixels. Chosen: A4 at 200 dots per inch, read on a phone when it is
/// spread.
const PICTURE_PX: u32 = 1654; // = 21.0 / 2.54 * 200., rounded up

/// The page.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    draw(room, ask, StatusCode::OK, None)
}

/// The page, with a box that could not be kept.
pub(crate) fn draw(
    room: &Room,
    ask: &Ask,
    status: StatusCode,
    refused: Option<&Refused>,
) -> Result<Response, Fault> {
    let w = ask.words();
    let told = Told::look_up(room, ask)?;
    let id = told.id();
    let title = w.get("sheet-title");
    let undecided = told.photos().any(|photo| !photo.decided);
    let body = html! {
        p.crumb { a href={ "/checks/" (id) "/report" } { (w.get("report-to-report")) } }
        @if told.is_empty() {
            h1 { (title) }
            (nothing_yet(w, id))
        } @else {
            p.screen { (w.get("sheet-how")) }
            @if undecided {
                p.notice.screen { "■ " (w.get("sheet-undecided")) " " a href="#faces" { (w.get("sheet-to-faces")) } }
            }
            div.acts {
                button.main-act data-print hidden { (w.get("print-button")) }
                a.button href={ "/checks/" (id) "/sheet.png" } { (w.get("sheet-png")) }
                a.button href="#message" { (w.get("sheet-message")) }
            }
            (paper(w, &told)?)
            div.screen { (faces(w, &told, refused)) (message_part(w, &told)) }
        }
    };
    let frame_of = Frame::new(&title, Here::Checks)
        .with(&["print.js", "sheet.js"])
        .styled(&["report.css"]);
    Ok(page_with(status, frame(ask, &frame_of, &body)))
}

/// Whom the sheet is for, and the day of the check.
fn about(w: &Words, told: &Told) -> String {
    let row = &told.checked.check.row;
    let name = match row.person_id {
        Some(_) => &row.person,
        None => &row.title,
    };
    let name = w.with("sheet-about", &[("name", name.into())]);
    format!("{name} · {}", day(&row.made_at))
}

/// What is printed.
fn paper(w: &Words, told: &Told) -> Result<Markup, Fault> {
    let mut figures = Vec::new();
    for photo in told.photos() {
        let href = format!("/checks/{}/photos/{}/shown.jpg", photo.check, photo.id);
        figures.push(drawn(w, &told.checked, &told.report, photo, &href)?);
    }
    let cautions = cautions(w, told);
    Ok(html! {
        article.sheet.feedback {
            h1 { (w.get("sheet-title")) }
            p { (about(w, told)) }
            (first_of_all(w, &told.report))
            @if !figures.is_empty() {
                div.photos { @for svg in figures { figure { (PreEscaped(svg)) } } }
            }
            section.good {
                h2 { "○ " (w.get("check-h-good")) }
                p { (w.good_line(&told.report, told.rules())) }
            }
            h2 { (w.get("check-h-advice")) }
            (to_change(w, told, false))
            @if !cautions.is_empty() {
                h2 { (w.get("check-h-cautions")) }
                div.cautions { @for caution in cautions { p.caution.small { (caution) } } }
            }
        }
    })
}

/// What to mind with what is to be changed, and that it is no advice of a doctor.
fn cautions(w: &Words, told: &Told) -> Vec<String> {
    let all = Words::cautions_of(&told.advised);
    let mut lines: Vec<String> = all.into_iter().map(|caution| w.caution(caution)).collect();
    if !lines.is_empty() {
        lines.push(w.cautions_note());
    }
    lines
}

/// What is hidden of each photo.
fn faces(w: &Words, told: &Told, refused: Option<&Refused>) -> Markup {
    let photos: Vec<&Photo> = told.photos().collect();
    html! {
        @if !photos.is_empty() {
            h2 #faces { (w.get("sheet-faces")) }
            p { (w.get("sheet-faces-how")) }
            div.faces { @for photo in photos { (face::part(w, photo, refused)) } }
        }
    }
}

/// The message, to be changed and copied.
fn message_part(w: &Words, told: &Told) -> Markup {
    let text = message(w, told);
    html! {
        h2 #message { (w.get("sheet-message")) }
        p #message-how { (w.get("sheet-message-how")) }
        textarea #message-text rows="16" aria-labelledby="message" aria-describedby="message-how" { "\n" (text) }
        div.acts {
            button.main-act data-copy="message-text" data-copied=(w.get("sheet-copied"))
                data-self=(w.get("sheet-copy-self")) hidden { (w.get("sheet-copy")) }
            a.button href={ "/checks/" (told.id()) "/message.txt" } { (w.get("sheet-text")) }
            span role="status" #copied {}
        }
    }
}

/// The message to send.
fn message(w: &Words, told: &Told) -> String {
    let row = &told.checked.check.row;
    let name = row.person_id.map(|_| row.person.as_str());
    w.message(&told.report, name, told.read.read.len())
}

/// The message alone; where there is nothing to tell, the page that says what to do.
pub(crate) fn text(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let told = Told::look_up(room, ask)?;
    if told.is_empty() {
        return Ok(go(&format!("/checks/{}/sheet", told.id())));
    }
    let text = message(ask.words(), &told);
    Ok(plain(StatusCode::OK, text.trim_end()))
}

/// The sheet as a picture; where there is nothing to tell, the page that says what to do.
pub(crate) fn picture(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let told = Told::look_up(room, ask)?;
    if told.is_empty() {
        return Ok(go(&format!("/checks/{}/sheet", told.id())));
    }
    let mut photos = Vec::new();
    for photo in told.photos() {
        let kept = room.store().picture(photo.check, photo.id)?;
        let jpeg = STANDARD.encode(painted(photo, kept)?);
        let href = format!("data:image/jpeg;base64,{jpeg}");
        photos.push(drawn(w, &told.checked, &told.report, photo, &href)?);
    }
    let svg = sunbu_draw::feedback(&Feedback {
        title: &w.get("sheet-title"),
        about: &about(w, &told),
        photos: &photos,
        first: w.wrong_way(&told.report.wrong_way).as_deref(),
        good: &w.good_line(&told.report, told.rules()),
        advised: &told.advised,
        more: told.more(w).as_deref(),
        cautions: &cautions(w, &told),
        words: w,
    });
    let bytes = png_of_svg(&svg, PICTURE_PX).map_err(|_| Fault::Broken)?;
    Ok(png(bytes, &format!("check-{}.png", told.id())))
}
