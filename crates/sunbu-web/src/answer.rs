//! The few shapes of an answer: a page, a way on, plain text, data for a script.

use axum::http::{HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use maud::Markup;

/// A page.
pub(crate) fn page(markup: Markup) -> Response {
    page_with(StatusCode::OK, markup)
}

/// A page with a status other than OK.
pub(crate) fn page_with(status: StatusCode, markup: Markup) -> Response {
    (
        status,
        [(header::CONTENT_TYPE, "text/html; charset=utf-8")],
        markup.into_string(),
    )
        .into_response()
}

/// The page to look at next, after a change: a reload there repeats nothing.
///
/// `path` is one of our own paths; a text that is none leads home.
pub(crate) fn go(path: &str) -> Response {
    let home = || HeaderValue::from_static("/");
    let target = if is_local(path) {
        HeaderValue::from_str(path).unwrap_or_else(|_| home())
    } else {
        home()
    };
    (StatusCode::SEE_OTHER, [(header::LOCATION, target)]).into_response()
}

/// Whether a path stays on this host: `//host` and `/\host` lead away.
pub(crate) fn is_local(path: &str) -> bool {
    path.starts_with('/') && !path[1..].starts_with(['/', '\\'])
}

/// Plain text, for what is refused before there is a page.
pub(crate) fn plain(status: StatusCode, text: &str) -> Response {
    (
        status,
        [(header::CONTENT_TYPE, "text/plain; charset=utf-8")],
        format!("{text}\n"),
    )
        .into_response()
}

/// A picture.
pub(crate) fn svg(text: String) -> Response {
    ([(header::CONTENT_TYPE, "image/svg+xml")], text).into_response()
}

/// A photo.
pub(crate) fn jpeg(bytes: Vec<u8>) -> Response {
    ([(header::CONTENT_TYPE, "image/jpeg")], bytes).into_response()
}

/// A drawing as a picture, to be kept under this name.
pub(crate) fn png(bytes: Vec<u8>, name: &str) -> Response {
    let kept_as = format!("attachment; filename=\"{name}\"");
    let head = [
        (header::CONTENT_TYPE, "image/png".to_owned()),
        (header::CONTENT_DISPOSITION, kept_as),
    ];
    (head, bytes).into_response()
}

/// A JSON document, for our own scripts.
pub(crate) fn json(value: &serde_json::Value) -> Response {
    json_with(StatusCode::OK, value)
}

/// A JSON document with a status other than OK.
pub(crate) fn json_with(status: StatusCode, value: &serde_json::Value) -> Response {
    (
        status,
        [(header::CONTENT_TYPE, "application/json")],
        value.to_string(),
    )
        .into_response()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_our_own_paths_are_gone_to() {
        for path in ["/", "/people/3?done=saved"] {
            assert!(is_local(path), "{path}");
        }
        for path in [
            "",
            "people",
            "//example.org",
            "/\\example.org",
            "https://example.org/",
        ] {
            assert!(!is_local(path), "{path}");
        }
    }
}
