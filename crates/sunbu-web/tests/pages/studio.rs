//! A studio asked as a browser asks, through the router.

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Request, StatusCode, header};
use sunbu_core::demo;
use sunbu_core::photo::View;
use sunbu_store::Store;
use sunbu_web::{App, router};
use tower::ServiceExt;

use crate::dressed;

pub const NOW: &str = "2026-03-01T09:30:00+09:00";

pub fn studio(store: Store) -> Router {
    router(App {
        store,
        clock: Box::new(|| NOW.to_owned()),
    })
}

/// The demo studio: people 1 to 15, garments 1 to 40.
pub fn demo_studio() -> Router {
    studio(demo_store())
}

/// The same with a check of somebody else, and its one photo.
pub fn demo_studio_with_a_check() -> (Router, i64, i64) {
    let mut store = demo_store();
    let check = dressed::check(&mut store, ["Mori Sayo", "Grey tsumugi"]);
    let shot = dressed::shot(&dressed::scene(View::Front, &dressed::OFF));
    let photo = dressed::photo(&mut store, check, &shot, b"a picture");
    (studio(store), check, photo)
}

fn demo_store() -> Store {
    let mut store = Store::in_memory().expect("a store in memory");
    for person in demo::people().expect("demo people") {
        store.add_person(&person.en, NOW).expect("added");
    }
    for piece in demo::garments().expect("demo garments") {
        store.add_garment(&piece.en, NOW).expect("added");
    }
    store
}

/// A studio with two people and two garments: the first is short and narrow for the first person,
/// the second falls right on her.
pub fn small_studio() -> Router {
    let mut store = Store::in_memory().expect("a store in memory");
    for person in demo::people().expect("demo people").iter().take(2) {
        store.add_person(&person.en, NOW).expect("added");
    }
    let garments = demo::garments().expect("demo garments");
    for key in ["komon-plum", "iromuji-mist"] {
        let piece = garments.iter().find(|piece| piece.key == key);
        let piece = piece.expect("a garment of that key");
        store.add_garment(&piece.en, NOW).expect("added");
    }
    studio(store)
}

pub fn empty_studio() -> Router {
    studio(Store::in_memory().expect("a store in memory"))
}

/// Status, head, place it leads to, and text of an answer.
pub struct Answer {
    pub status: StatusCode,
    pub head: HeaderMap,
    pub to: String,
    pub text: String,
}

pub async fn send(app: &Router, request: Request<Body>) -> Answer {
    let response = app.clone().oneshot(request).await.expect("an answer");
    let to = response.headers().get(header::LOCATION);
    let to = to.map_or("", |v| v.to_str().expect("a path")).to_owned();
    let (status, head) = (response.status(), response.headers().clone());
    let bytes = to_bytes(response.into_body(), 8 << 20)
        .await
        .expect("the body");
    let text = String::from_utf8(bytes.to_vec()).expect("UTF-8");
    Answer {
        status,
        head,
        to,
        text,
    }
}

pub async fn get(app: &Router, path: &str) -> Answer {
    get_in(app, path, "en").await
}

pub async fn get_in(app: &Router, path: &str, language: &str) -> Answer {
    let request = Request::get(path)
        .header(header::HOST, "localhost:8080")
        .header(header::ACCEPT_LANGUAGE, language);
    send(app, request.body(Body::empty()).expect("a request")).await
}

pub async fn post(app: &Router, path: &str, form: &str) -> Answer {
    let request = Request::post(path)
        .header(header::HOST, "localhost:8080")
        .header("sec-fetch-site", "same-origin")
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded");
    let request = request.body(Body::from(form.to_owned()));
    send(app, request.expect("a request")).await
}

/// Sends a form with a file in it, as browsers do.
pub async fn post_file(app: &Router, path: &str, fields: &[(&str, &str)], file: &[u8]) -> Answer {
    const LINE: &str = "----between-the-parts";
    let mut body = Vec::new();
    for (name, value) in fields {
        let part = format!(
            "--{LINE}\r\nContent-Disposition: form-data; name=\"{name}\"\r\n\r\n{value}\r\n"
        );
        body.extend(part.bytes());
    }
    let head = format!(
        "--{LINE}\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"a.jpg\"\r\n\
         Content-Type: image/jpeg\r\n\r\n"
    );
    body.extend(head.bytes());
    body.extend(file);
    body.extend(format!("\r\n--{LINE}--\r\n").bytes());
    let request = Request::post(path)
        .header(header::HOST, "localhost:8080")
        .header("sec-fetch-site", "same-origin")
        .header(
            header::CONTENT_TYPE,
            format!("multipart/form-data; boundary={LINE}"),
        );
    send(app, request.body(Body::from(body)).expect("a request")).await
}

/// Follows an address to the page it leads to.
pub async fn follow(app: &Router, path: &str) -> Answer {
    let mut answer = get(app, path).await;
    for _ in 0..3 {
        if answer.status.is_redirection() {
            answer = get(app, &answer.to.clone()).await;
        }
    }
    answer
}

/// The query of the plan's own numbers for a person in a garment.
pub async fn plan_query(app: &Router, path: &str) -> String {
    let answer = get(app, path).await;
    let query = answer.to.split_once('?').expect("the plan's numbers").1;
    query.to_owned()
}

/// Keeps the plan of a person in a garment and returns its number.
pub async fn keep(app: &Router, path: &str, title: &str) -> i64 {
    let query = plan_query(app, path).await;
    let kept = post(
        app,
        &format!("{path}/save"),
        &format!("{query}&title={title}"),
    )
    .await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    let id = kept.to.trim_start_matches("/plans/").split('?').next();
    id.and_then(|id| id.parse().ok())
        .expect("the plan's number")
}

/// The fields that a browser would send of a page's last form with fields of its own, in order:
/// inputs with their values, radio buttons where they are checked, several lines of text.
pub fn form_of(page: &str) -> Vec<(String, String)> {
    let main = page.split_once("<main").expect("the main part").1;
    let form = main.split_once("method=\"post\"").expect("a form").1;
    let form = form.split_once("</form>").expect("its end").0;
    let mut out = Vec::new();
    for tag in form.split('<').skip(1) {
        let (inside, after) = tag.split_once('>').expect("a whole tag");
        let attribute = |name: &str| {
            let (_, rest) = inside.split_once(&format!(" {name}=\""))?;
            Some(plain(rest.split('"').next()?))
        };
        let Some(name) = attribute("name") else {
            continue;
        };
        let off = inside.contains("type=\"radio\"") && !inside.contains(" checked");
        if inside.starts_with("input") && !off {
            out.push((name, attribute("value").unwrap_or_default()));
        } else if inside.starts_with("textarea") {
            out.push((name, plain(after.trim_start_matches('\n'))));
        }
    }
    out
}

/// A text without the escapes of HTML.
fn plain(text: &str) -> String {
    let escapes = [
        ("&quot;", "\""),
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&amp;", "&"),
    ];
    escapes
        .iter()
        .fold(text.to_owned(), |text, (from, to)| text.replace(from, to))
}

/// Fields as a form sends them.
pub fn encoded(fields: &[(String, String)]) -> String {
    let byte = |byte: u8| format!("%{byte:02x}");
    let text = |text: &str| text.bytes().map(byte).collect::<String>();
    let pairs = fields
        .iter()
        .map(|(name, value)| format!("{}={}", text(name), text(value)));
    pairs.collect::<Vec<_>>().join("&")
}

/// The same fields with one of them changed.
pub fn with(mut fields: Vec<(String, String)>, name: &str, to: &str) -> Vec<(String, String)> {
    let field = fields.iter_mut().rev().find(|(field, _)| field == name);
    field.expect("the field").1 = to.to_owned();
    fields
}
