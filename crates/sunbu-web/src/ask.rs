//! A request as the pages read it: path, query, form, language. Everything is text; each page
//! parses what it needs, so that a wrong entry can be given back exactly as it was typed.

use std::collections::BTreeMap;

use axum::body::Bytes;
use axum::extract::{FromRequest, MatchedPath, Multipart, RawPathParams, Request};
use axum::http::{HeaderMap, Method, StatusCode, header};
use axum::response::Response;
use sunbu_words::{Lang, Words};

use crate::language;

/// One request, read whole.
#[derive(Debug, Clone)]
pub(crate) struct Ask {
    /// The language of the answer.
    pub lang: Lang,
    /// Path and query, to come back to after a change of language.
    pub path_and_query: String,
    /// The pattern of the address, such as `/people/{person}`: for the log, which gets nothing
    /// that was typed.
    pub route: String,
    /// Whether the request sends a form.
    pub posted: bool,
    /// The page the request came from, on this host; none when the browser does not say.
    pub from: Option<String>,
    params: BTreeMap<String, String>,
    query: Vec<(String, String)>,
    form: Vec<(String, String)>,
    file: Option<Bytes>,
}

impl Ask {
    /// Reads a request; its body, if it has one, is a form.
    ///
    /// # Errors
    /// The refusal to send back when the body is longer than the server takes.
    pub async fn read(request: Request) -> Result<Self, Response> {
        let (mut parts, body) = request.into_parts();
        let lang = language::choose(&parts.headers);
        let query = pairs(parts.uri.query().unwrap_or("").as_bytes());
        let path_and_query = parts
            .uri
            .path_and_query()
            .map_or_else(|| "/".to_owned(), ToString::to_string);
        let from = came_from(&parts.headers);
        let route = parts.extensions.get::<MatchedPath>();
        let route = route.map_or("no route", MatchedPath::as_str).to_owned();
        let params = path_params(&mut parts).await;
        let posted = parts.method == Method::POST;
        let (form, file) = if posted {
            let request = Request::from_parts(parts, body);
            sent(request).await.ok_or_else(|| too_long(lang))?
        } else {
            (Vec::new(), None)
        };
        Ok(Self {
            lang,
            path_and_query,
            route,
            posted,
            from,
            params,
            query,
            form,
            file,
        })
    }

    /// The words of the answer's language.
    pub fn words(&self) -> &'static Words {
        Words::of(self.lang)
    }

    /// The number in the path under `name`; none when it is no number.
    pub fn id(&self, name: &str) -> Option<i64> {
        self.params.get(name)?.parse().ok()
    }

    /// The text in the path under `name`.
    pub fn param(&self, name: &str) -> Option<&str> {
        self.params.get(name).map(String::as_str)
    }

    /// The query's pairs, in the order in which they stand.
    pub fn query(&self) -> &[(String, String)] {
        &self.query
    }

    /// The first value of `name` in the query.
    pub fn queried(&self, name: &str) -> Option<&str> {
        first(&self.query, name)
    }

    /// The form's pairs, in the order in which they were sent.
    pub fn form(&self) -> &[(String, String)] {
        &self.form
    }

    /// The first value of `name` in the form.
    pub fn sent(&self, name: &str) -> Option<&str> {
        first(&self.form, name)
    }

    /// The file that was sent with the form; none when the form has none.
    pub fn file(&self) -> Option<&[u8]> {
        self.file.as_deref()
    }
}

/// The pairs of a form that was sent, and the file in it; nothing when it is longer than its
/// address takes, or breaks off.
async fn sent(request: Request) -> Option<(Vec<(String, String)>, Option<Bytes>)> {
    let kind = request.headers().get(header::CONTENT_TYPE);
    let with_file = kind.is_some_and(|kind| kind.as_bytes().starts_with(b"multipart/form-data"));
    if !with_file {
        let bytes = Bytes::from_request(request, &()).await.ok()?;
        return Some((pairs(&bytes), None));
    }
    let mut parts = Multipart::from_request(request, &()).await.ok()?;
    let (mut form, mut file) = (Vec::new(), None);
    while let Some(part) = parts.next_field().await.ok()? {
        let name = part.name().unwrap_or_default().to_owned();
        // What the file was called is left where it came from: names of photos tell of people.
        if part.file_name().is_some() {
            file = Some(part.bytes().await.ok()?);
        } else {
            let text = part.bytes().await.ok()?;
            form.push((name, String::from_utf8_lossy(&text).into_owned()));
        }
    }
    Some((form, file))
}

fn first<'a>(pairs: &'a [(String, String)], name: &str) -> Option<&'a str> {
    pairs
        .iter()
        .find(|(key, _)| key == name)
        .map(|(_, value)| value.as_str())
}

/// The pairs of a query or form. Bytes that are no UTF-8 become the replacement character,
/// which no field takes, so a wrong encoding is refused by the field it stands in.
pub(crate) fn pairs(bytes: &[u8]) -> Vec<(String, String)> {
    form_urlencoded::parse(bytes).into_owned().collect()
}

async fn path_params(parts: &mut axum::http::request::Parts) -> BTreeMap<String, String> {
    use axum::extract::FromRequestParts;
    RawPathParams::from_request_parts(parts, &())
        .await
        .map_or_else(
            // A route without parameters, or a path that is no UTF-8: the page sees none.
            |_| BTreeMap::new(),
            |params| {
                params
                    .iter()
                    .map(|(k, v)| (k.to_owned(), v.to_owned()))
                    .collect()
            },
        )
}

/// Path and query of the referring page when it is on the host that is asked.
fn came_from(headers: &HeaderMap) -> Option<String> {
    let referer = headers.get(header::REFERER)?.to_str().ok()?;
    let host = headers.get(header::HOST)?.to_str().ok()?;
    let rest = referer.strip_prefix("http://")?.strip_prefix(host)?;
    rest.starts_with('/').then(|| rest.to_owned())
}

fn too_long(lang: Lang) -> Response {
    crate::answer::plain(
        StatusCode::PAYLOAD_TOO_LARGE,
        &Words::of(lang).get("error-too-long"),
    )
}
