//! Every page passes the audit on every screen and in both languages.

use sunbu_browser_tests::{Browser, Page, VIEWS, View, visit};
use sunbu_web::page_list;

use crate::studio::{Studio, text, until};

/// A garment that is short and narrow for the first person, so that there is something to show
/// of what is missed.
const PERSON: i64 = 1;
const GARMENT: i64 = 1;

/// Keeps a plan as a person would, and returns its number.
async fn keep_a_plan(browser: &Browser, studio: &Studio) -> i64 {
    let path = format!("/people/{PERSON}/in/{GARMENT}");
    browser.goto(&studio.url(&path)).await.expect("the plan");
    let script = "document.getElementById('title').value = 'Rehearsal';
        document.querySelector('[formmethod=post]').click()";
    browser
        .ask(script, vec![], "keep the plan")
        .await
        .expect("kept");
    until(browser, "return location.pathname.startsWith('/plans/')").await;
    let id = text(browser, "return location.pathname.split('/')[2]").await;
    id.parse().expect("the plan's number")
}

async fn look_at_everything(view: View) {
    let studio = Studio::demo(view.language).await;
    let browser = Browser::open(view).await.expect("a browser");
    let plan = keep_a_plan(&browser, &studio).await;
    let mut faults = Vec::new();
    for path in page_list(PERSON, GARMENT, plan) {
        let status = if path == "/nowhere" { 404 } else { 200 };
        let page = Page::new(path).with_status(status);
        faults.extend(
            visit(&browser, &studio.origin, &page)
                .await
                .expect("a visit"),
        );
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[tokio::test(flavor = "multi_thread")]
async fn every_page_is_right_on_a_phone_in_english() {
    look_at_everything(VIEWS[0]).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn every_page_is_right_on_a_phone_in_japanese() {
    look_at_everything(VIEWS[1]).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn every_page_is_right_at_a_desk_in_english() {
    look_at_everything(VIEWS[2]).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn every_page_is_right_at_a_desk_in_japanese() {
    look_at_everything(VIEWS[3]).await;
}
