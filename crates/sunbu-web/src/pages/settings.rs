//! Settings: the language, and whose hands measure.

use axum::response::Response;
use maud::html;
use sunbu_words::{Lang, Words};

use crate::answer::{go, page};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, frame};

/// The settings.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let store = room.store();
    let (people, dresser) = (store.people()?, store.dresser()?.map(|kept| kept.id));
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
                    @for (kept, name) in people.iter().zip(super::told_apart(w, &people)) {
                        option value=(kept.id) selected[dresser == Some(kept.id)] { (name) }
                    }
                }
            }
            button { (w.get("save")) }
        }
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
