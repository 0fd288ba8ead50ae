//! Settings: the language, and whose hands measure.

use axum::response::Response;
use maud::html;
use sunbu_store::StoreError;
use sunbu_words::{Lang, Words};

use super::unread;
use crate::answer::{go, page};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, frame};

/// The settings.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let store = room.store();
    let people = store.people()?;
    let (dresser, unread) = match store.dresser() {
        Ok(kept) => (kept.map(|kept| kept.id), None),
        Err(StoreError::Unreadable(unread)) => (Some(unread.id), Some(unread)),
        Err(other) => return Err(other.into()),
    };
    drop(store);
    let title = w.get("settings-title");
    let body = html! {
        h1 { (title) }
        h2 { (w.get("settings-language")) }
        form.acts method="post" action="/language" {
            input type="hidden" name="back" value="/settings";
            @for &lang in Lang::ALL {
                button name="lang" value=(lang.code()) lang=(lang.code()) class=[(lang == ask.lang).then_some("main-act")] aria-pressed=(lang == ask.lang) {
                    (Words::of(lang).language_name())
                }
            }
        }
        h2 { (w.get("settings-hands")) }
        p { (w.get("settings-hands-what")) }
        form.search method="post" {
            div {
                label for="dresser" { (w.get("settings-dresser")) }
                select #dresser name="dresser" {
                    option value="" selected[dresser.is_none()] { (w.get("settings-dresser-none")) }
                    @for (kept, name) in people.read.iter().zip(super::told_apart(w, &people.read)) {
                        option value=(kept.id) selected[dresser == Some(kept.id)] { (name) }
                    }
                    // Stays chosen until somebody chooses otherwise.
                    @if let Some(unread) = &unread {
                        option value=(unread.id) selected { (unread::name(w, unread)) }
                    }
                }
            }
            button { (w.get("save")) }
        }
        @if let Some(unread) = &unread { (unread::dresser(w, unread)) }
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Settings), &body)))
}

/// Keeps whose hands measure.
pub(crate) fn save(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let dresser = match ask.sent("dresser").unwrap_or("") {
        "" => None,
        text => Some(text.parse::<i64>().map_err(|_| Fault::NotFound)?),
    };
    room.store().set_dresser(dresser)?;
    Ok(go("/settings?done=saved"))
}
