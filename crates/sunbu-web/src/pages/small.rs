//! Two small answers: the change of language, and how a typed length reads.

use axum::http::{HeaderValue, StatusCode, header};
use axum::response::Response;
use sunbu_core::measure::{Shaku, parse_length};

use crate::answer::{go, plain};
use crate::app::Room;
use crate::ask::Ask;
use crate::entry::both_units;
use crate::error::Fault;
use crate::language;

/// Keeps the chosen language and goes back to the page it was chosen on.
pub(crate) fn choose_language(_room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let lang = ask
        .sent("lang")
        .and_then(language::from_tag)
        .ok_or(Fault::NotFound)?;
    // The page's address may have moved on with the sliders since it was drawn; the browser
    // names the present one.
    let back = ask.from.as_deref().or(ask.sent("back")).unwrap_or("/");
    let mut response = go(back);
    if let Ok(cookie) = HeaderValue::from_str(&language::cookie(lang)) {
        response.headers_mut().insert(header::SET_COOKIE, cookie);
    }
    Ok(response)
}

/// How a length reads in both units, or why it is none.
pub(crate) fn reading(_room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let text = match parse_length(ask.queried("text").unwrap_or(""), Shaku::Kujira) {
        Ok(written) => both_units(w, written.length),
        Err(why) => w.length_error(&why),
    };
    Ok(plain(StatusCode::OK, &text))
}
