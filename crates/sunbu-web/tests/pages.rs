//! Every page of a studio, asked as a browser asks.

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{Request, StatusCode, header};
use sunbu_core::demo;
use sunbu_store::Store;
use sunbu_web::{App, page_list, router};
use tower::ServiceExt;

const NOW: &str = "2026-03-01T09:30:00+09:00";

fn studio(store: Store) -> Router {
    router(App {
        store,
        clock: Box::new(|| NOW.to_owned()),
    })
}

/// The demo studio, with the ids of a person and a garment in it.
fn demo_studio() -> (Router, i64, i64) {
    let mut store = Store::in_memory().expect("a store in memory");
    let mut ids = (0, 0);
    for person in demo::people().expect("demo people") {
        ids.0 = store.add_person(&person.en, NOW).expect("added");
    }
    for piece in demo::garments().expect("demo garments") {
        ids.1 = store.add_garment(&piece.en, NOW).expect("added");
    }
    (studio(store), ids.0, ids.1)
}

fn empty_studio() -> Router {
    studio(Store::in_memory().expect("a store in memory"))
}

/// Status, place it leads to, and text of an answer.
struct Answer {
    status: StatusCode,
    to: String,
    text: String,
}

async fn send(app: &Router, request: Request<Body>) -> Answer {
    let response = app.clone().oneshot(request).await.expect("an answer");
    let to = response.headers().get(header::LOCATION);
    let to = to.map_or("", |v| v.to_str().expect("a path")).to_owned();
    let status = response.status();
    let bytes = to_bytes(response.into_body(), 8 << 20)
        .await
        .expect("the body");
    let text = String::from_utf8(bytes.to_vec()).expect("UTF-8");
    Answer { status, to, text }
}

async fn get(app: &Router, path: &str) -> Answer {
    let request = Request::get(path).header(header::HOST, "localhost:8080");
    send(app, request.body(Body::empty()).expect("a request")).await
}

async fn post(app: &Router, path: &str, form: &str) -> Answer {
    let request = Request::post(path)
        .header(header::HOST, "localhost:8080")
        .header("sec-fetch-site", "same-origin")
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded");
    send(
        app,
        request
            .body(Body::from(form.to_owned()))
            .expect("a request"),
    )
    .await
}

/// Follows an address to the page it leads to.
async fn follow(app: &Router, path: &str) -> Answer {
    let mut answer = get(app, path).await;
    for _ in 0..3 {
        if answer.status.is_redirection() {
            answer = get(app, &answer.to.clone()).await;
        }
    }
    answer
}

#[tokio::test]
async fn every_page_of_the_demo_studio_is_there() {
    let (app, person, garment) = demo_studio();
    let plan = get(&app, &format!("/people/{person}/in/{garment}")).await;
    let query = plan.to.split_once('?').expect("the plan's numbers").1;
    let save = format!("/people/{person}/in/{garment}/save");
    let kept = post(&app, &save, &format!("{query}&title=Rehearsal")).await;
    assert_eq!(kept.status, StatusCode::SEE_OTHER, "{}", kept.text);
    let id = kept.to.trim_start_matches("/plans/").split('?').next();
    let id = id
        .and_then(|id| id.parse().ok())
        .expect("the plan's number");
    for path in page_list(person, garment, id) {
        let wanted = if path == "/nowhere" { 404 } else { 200 };
        let answer = follow(&app, &path).await;
        assert_eq!(answer.status.as_u16(), wanted, "{path}: {}", answer.text);
        assert!(answer.text.contains("<h1"), "{path} has no heading");
    }
    assert!(get(&app, "/plans").await.text.contains("Rehearsal"));
}

#[tokio::test]
async fn an_empty_studio_has_pages_too() {
    let app = empty_studio();
    for path in [
        "/",
        "/people",
        "/people/new",
        "/garments",
        "/garments/new",
        "/plans",
        "/rules",
        "/settings",
    ] {
        let answer = get(&app, path).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}");
    }
}

#[tokio::test]
async fn what_is_not_there_is_not_found() {
    let app = empty_studio();
    for path in [
        "/people/1",
        "/garments/9",
        "/plans/1",
        "/people/1/in/1",
        "/people/x",
        "/rules/of/nothing",
    ] {
        assert_eq!(
            get(&app, path).await.status,
            StatusCode::NOT_FOUND,
            "{path}"
        );
    }
}

#[tokio::test]
async fn a_wrong_form_comes_back_as_it_was_typed() {
    let app = empty_studio();
    let answer = post(&app, "/people/new", "name=Hana&sex=women&stature=12+ells").await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(answer.text.contains("value=\"12 ells\""), "{}", answer.text);
    assert!(answer.text.contains("value=\"Hana\""));
}

#[tokio::test]
async fn a_person_entered_is_shown_and_listed() {
    let app = empty_studio();
    let answer = post(
        &app,
        "/people/new",
        "name=Hana&sex=women&stature=158&hip_girth=92",
    )
    .await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
    assert!(follow(&app, &answer.to).await.text.contains("Hana"));
    assert!(get(&app, "/people").await.text.contains("Hana"));
}

#[tokio::test]
async fn a_later_save_of_an_older_form_is_told_and_loses_nothing() {
    let app = empty_studio();
    let added = post(
        &app,
        "/people/new",
        "name=Hana&sex=women&stature=158&hip_girth=92",
    )
    .await;
    let edit = format!("{}/edit", added.to.split('?').next().expect("a path"));
    let form = |name: &str| format!("revision=1&name={name}&sex=women&stature=158&hip_girth=92");
    assert_eq!(
        post(&app, &edit, &form("First")).await.status,
        StatusCode::SEE_OTHER
    );
    let late = post(&app, &edit, &form("Second")).await;
    assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.text);
    assert!(late.text.contains("First") && late.text.contains("Second"));
}

#[tokio::test]
async fn strange_hosts_and_forms_from_elsewhere_are_refused() {
    let app = empty_studio();
    let request = Request::get("/").header(header::HOST, "studio.example.org");
    let answer = send(&app, request.body(Body::empty()).expect("a request")).await;
    assert_eq!(answer.status, StatusCode::MISDIRECTED_REQUEST);

    let request = Request::post("/people/new")
        .header(header::HOST, "localhost")
        .header("sec-fetch-site", "cross-site")
        .header(header::ORIGIN, "https://example.org")
        .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded");
    let answer = send(&app, request.body(Body::from("name=X")).expect("a request")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn a_redraw_brings_the_figure_and_leaves_ways_out_for_later() {
    let (app, person, garment) = demo_studio();
    let path = format!("/people/{person}/in/{garment}");
    let plan = get(&app, &path).await;
    let query = plan.to.split_once('?').expect("the plan's numbers").1;
    let drawn = get(&app, &format!("{path}/redraw?{query}")).await;
    assert_eq!(drawn.status, StatusCode::OK);
    let drawn: serde_json::Value = serde_json::from_str(&drawn.text).expect("JSON");
    assert!(
        drawn["parts"]["figure"]
            .as_str()
            .is_some_and(|svg| svg.contains("<svg"))
    );
    let ways = get(&app, &format!("{path}/ways-out?{query}")).await;
    assert_eq!(ways.status, StatusCode::OK);
    assert!(ways.text.contains("ways"), "{}", ways.text);
}
