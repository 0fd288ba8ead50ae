//! Style sheet and scripts, built into the program, each under a name that changes with its
//! content: a browser may keep them for ever and still never shows an old one.

use std::sync::LazyLock;

use axum::extract::Path;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Response};

struct Asset {
    name: &'static str,
    kind: &'static str,
    text: String,
    hash: String,
}

macro_rules! assets {
    ($($name:literal $kind:literal;)*) => {
        static ASSETS: LazyLock<Vec<Asset>> = LazyLock::new(|| vec![$({
            let mut text = include_str!(concat!("../assets/", $name)).to_owned();
            if $name == "style.css" {
                // The figure's own colours and lines, said once where it is drawn.
                text.push_str(&sunbu_draw::stylesheet());
            }
            Asset { name: $name, kind: $kind, hash: hash(&text), text }
        }),*]);
    };
}

assets! {
    "style.css" "text/css; charset=utf-8";
    "report.css" "text/css; charset=utf-8";
    "sheet.js" "text/javascript; charset=utf-8";
    "plan.js" "text/javascript; charset=utf-8";
    "check.js" "text/javascript; charset=utf-8";
    "form.js" "text/javascript; charset=utf-8";
    "print.js" "text/javascript; charset=utf-8";
    "marking.css" "text/css; charset=utf-8";
    "marking.js" "text/javascript; charset=utf-8";
    "mark-keep.js" "text/javascript; charset=utf-8";
    "mark-loupe.js" "text/javascript; charset=utf-8";
    "mark-picture.js" "text/javascript; charset=utf-8";
    "mark-side.js" "text/javascript; charset=utf-8";
    "icon.svg" "image/svg+xml";
}

/// The path under which the asset `name` is served.
///
/// # Panics
/// When there is no such asset; the tests ask for every page, and so for every asset.
pub(crate) fn path(name: &str) -> String {
    let asset = ASSETS
        .iter()
        .find(|a| a.name == name)
        .expect("an asset of this program");
    format!("/assets/{}/{}", asset.hash, asset.name)
}

/// Serves an asset. An old hash gets the present content, but not for keeps.
pub(crate) async fn serve(
    Path((hash, name)): Path<(String, String)>,
    headers: HeaderMap,
) -> Response {
    let Some(asset) = ASSETS.iter().find(|a| a.name == name) else {
        return StatusCode::NOT_FOUND.into_response();
    };
    let tag = format!("\"{}\"", asset.hash);
    let keep = if hash == asset.hash {
        "public, max-age=31536000, immutable"
    } else {
        "no-cache"
    };
    let known = headers
        .get(header::IF_NONE_MATCH)
        .and_then(|value| value.to_str().ok())
        .is_some_and(|tags| tags.split(',').any(|t| t.trim() == tag || t.trim() == "*"));
    let head = [
        (header::CACHE_CONTROL, keep.to_owned()),
        (header::ETAG, tag),
        (header::CONTENT_TYPE, asset.kind.to_owned()),
    ];
    if known {
        (StatusCode::NOT_MODIFIED, head).into_response()
    } else {
        (head, asset.text.as_str()).into_response()
    }
}

/// Sixteen hexadecimal digits that tell contents apart: FNV-1a, 64 bits (constants from memory).
/// Not for secrets; only our own few files are told apart.
fn hash(text: &str) -> String {
    let mut state: u64 = 0xcbf2_9ce4_8422_2325;
    for byte in text.bytes() {
        state = (state ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
    }
    format!("{state:016x}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hashes_are_the_published_ones() {
        // Test vectors of the FNV-1a 64-bit hash: the empty text and "a" (from memory).
        assert_eq!(hash(""), "cbf29ce484222325");
        assert_eq!(hash("a"), "af63dc4c8601ec8c");
    }

    #[test]
    fn the_style_sheet_stays_small() {
        let asset = ASSETS
            .iter()
            .find(|a| a.name == "style.css")
            .expect("the style sheet");
        assert!(asset.text.len() < 25_000, "{} bytes", asset.text.len());
    }
}
