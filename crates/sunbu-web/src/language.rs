//! Which language to answer in: the one chosen before, else the browser's first that we speak.

use axum::http::{HeaderMap, header};
use sunbu_words::Lang;

/// Name of the cookie that keeps the chosen language.
pub(crate) const COOKIE: &str = "lang";

/// Half a year, in seconds: as long as a season of kimono and a bit.
const KEPT_S: u32 = 15_778_800;

/// The language of the answer: cookie first, then `Accept-Language`, then English.
pub(crate) fn choose(headers: &HeaderMap) -> Lang {
    from_cookie(headers)
        .or_else(|| from_accept(headers))
        .unwrap_or(Lang::En)
}

/// The language whose tag starts with a code we speak, e.g. `ja-JP`.
pub(crate) fn from_tag(tag: &str) -> Option<Lang> {
    let code = tag.split('-').next().unwrap_or("").trim();
    Lang::ALL
        .iter()
        .copied()
        .find(|lang| lang.code().eq_ignore_ascii_case(code))
}

/// The `Set-Cookie` text that keeps `lang`.
pub(crate) fn cookie(lang: Lang) -> String {
    format!(
        "{COOKIE}={}; Path=/; Max-Age={KEPT_S}; SameSite=Lax; HttpOnly",
        lang.code()
    )
}

fn from_cookie(headers: &HeaderMap) -> Option<Lang> {
    headers
        .get_all(header::COOKIE)
        .iter()
        .filter_map(|value| value.to_str().ok())
        .flat_map(|text| text.split(';'))
        .filter_map(|pair| pair.trim().split_once('='))
        .find(|(name, _)| *name == COOKIE)
        .and_then(|(_, value)| from_tag(value))
}

/// The spoken language of the greatest weight (RFC 9110, section 12.5.4); of equal weights the
/// first named.
fn from_accept(headers: &HeaderMap) -> Option<Lang> {
    let text = headers.get(header::ACCEPT_LANGUAGE)?.to_str().ok()?;
    let mut best: Option<(f64, Lang)> = None;
    for item in text.split(',') {
        let mut parts = item.split(';');
        let Some(lang) = parts.next().and_then(|tag| from_tag(tag.trim())) else {
            continue;
        };
        let weight = parts
            .find_map(|p| p.trim().strip_prefix("q="))
            .map_or(1.0, |q| q.parse::<f64>().unwrap_or(0.0));
        if weight > 0.0 && best.is_none_or(|(most, _)| weight > most) {
            best = Some((weight, lang));
        }
    }
    best.map(|(_, lang)| lang)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn headers(name: header::HeaderName, value: &str) -> HeaderMap {
        HeaderMap::from_iter([(name, value.parse().expect("a header value"))])
    }

    #[test]
    fn the_heaviest_spoken_language_wins() {
        for (accept, want) in [
            ("ja", Lang::Ja),
            ("ja-JP,ja;q=0.9,en;q=0.8", Lang::Ja),
            ("en-GB;q=0.8, ja;q=0.9", Lang::Ja),
            ("fr, en;q=0.5, ja;q=0.4", Lang::En),
            ("ja;q=0, en", Lang::En),
            ("de", Lang::En),
            ("", Lang::En),
            ("*;q=x;;,", Lang::En),
        ] {
            let got = choose(&headers(header::ACCEPT_LANGUAGE, accept));
            assert_eq!(got, want, "{accept}");
        }
    }

    #[test]
    fn a_choice_made_before_outweighs_the_browser() {
        let mut both = headers(header::ACCEPT_LANGUAGE, "en");
        both.insert(
            header::COOKIE,
            "a=b; lang=ja".parse().expect("a header value"),
        );
        assert_eq!(choose(&both), Lang::Ja);
        let mut nonsense = headers(header::ACCEPT_LANGUAGE, "ja");
        nonsense.insert(header::COOKIE, "lang=xx".parse().expect("a header value"));
        assert_eq!(choose(&nonsense), Lang::Ja);
    }
}
