//! Every page is there, empty or full, and what is not is not found.

use axum::http::StatusCode;
use sunbu_web::page_list;

use crate::studio::{
    demo_studio, demo_studio_with_a_check, empty_studio, follow, get, keep, plan_query, post,
};

#[tokio::test]
async fn every_page_of_the_demo_studio_is_there() {
    let (app, check, photo) = demo_studio_with_a_check();
    let (person, garment) = (15, 40);
    let id = keep(&app, &format!("/people/{person}/in/{garment}"), "Rehearsal").await;
    for path in page_list(person, garment, id, check, photo) {
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
async fn a_redraw_brings_the_figure_and_leaves_ways_out_for_later() {
    let app = demo_studio();
    let path = "/people/15/in/40";
    let query = plan_query(&app, path).await;
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
