//! What stands before every page: only this machine's names as `Host`, changes only from our own
//! pages, and headers that keep strangers' content out.
//!
//! The studio holds people's body measures. A page elsewhere could point a name of its own at
//! this machine and read them (DNS rebinding), so unknown names are refused before routing.

use axum::extract::Request;
use axum::http::{HeaderValue, StatusCode, header, uri::Authority};
use axum::middleware::Next;
use axum::response::Response;
use sunbu_words::Words;

use crate::{answer, language};

/// Content only from ourselves: no inline script or style, no frames, forms only to us.
const CONTENT_POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; \
    img-src 'self' data:; connect-src 'self'; form-action 'self'; base-uri 'none'; \
    frame-ancestors 'none'";

/// Refuses requests whose host is not this machine.
pub(crate) async fn known_host(request: Request, next: Next) -> Response {
    let host = request
        .headers()
        .get(header::HOST)
        .and_then(|value| value.to_str().ok());
    if host.is_some_and(is_this_machine) {
        return next.run(request).await;
    }
    let words = Words::of(language::choose(request.headers()));
    answer::plain(StatusCode::MISDIRECTED_REQUEST, &words.get("error-host"))
}

/// Whether a `Host` names this machine, with or without a port.
fn is_this_machine(host: &str) -> bool {
    let Ok(authority) = host.parse::<Authority>() else {
        return false;
    };
    let port = host.get(authority.host().len()..).unwrap_or_default();
    let number = port.strip_prefix(':');
    // An authority may carry a user before `@`; no browser sends one in `Host`.
    !host.contains('@')
        && (port.is_empty() || number.is_some_and(|text| text.parse::<u16>().is_ok()))
        && ["localhost", "127.0.0.1", "[::1]"]
            .iter()
            .any(|name| authority.host().eq_ignore_ascii_case(name))
}

/// Adds the headers that every answer carries.
pub(crate) async fn headers(request: Request, next: Next) -> Response {
    let mut response = next.run(request).await;
    let headers = response.headers_mut();
    for (name, value) in [
        (header::CONTENT_SECURITY_POLICY, CONTENT_POLICY),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "same-origin"),
    ] {
        headers.insert(name, HeaderValue::from_static(value));
    }
    // Pages hold clients' measures: nothing of them stays in a shared cache or on disk.
    headers
        .entry(header::CACHE_CONTROL)
        .or_insert(HeaderValue::from_static("no-store"));
    response
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_this_machine_is_known() {
        for host in [
            "localhost",
            "LOCALHOST:8080",
            "127.0.0.1:3000",
            "[::1]",
            "[::1]:80",
        ] {
            assert!(is_this_machine(host), "{host}");
        }
        for host in [
            "",
            "example.org",
            "localhost.example.org",
            "127.0.0.1.example.org",
            "evil@localhost",
            "localhost@example.org",
            "0.0.0.0",
            "127.0.0.2",
            "localhost:port",
        ] {
            assert!(!is_this_machine(host), "{host}");
        }
    }
}
