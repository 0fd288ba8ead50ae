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
    let (studio, check, photo) = Studio::demo_with_a_check(view.language).await;
    let browser = Browser::open(view).await.expect("a browser");
    let plan = keep_a_plan(&browser, &studio).await;
    let mut faults = Vec::new();
    for path in page_list(PERSON, GARMENT, plan, check, photo) {
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

/// What the page shown now breaks of the rules, after a picture of it.
pub async fn look(browser: &Browser, name: &str) -> Vec<String> {
    let picture = format!("{name}-{}", browser.view().name());
    browser.screenshot(&picture).await.expect("a picture");
    let violations = browser.audit().await.expect("an audit");
    let wide = browser.sideways_scroll().await.expect("a width");
    let faults = violations.iter().map(ToString::to_string).chain(wide);
    faults.map(|fault| format!("{name}: {fault}")).collect()
}

/// Fills a form's fields and sends it.
const FILL: &str = "const [fields] = arguments;
    for (const [id, text] of Object.entries(fields)) document.getElementById(id).value = text;
    document.querySelector('main form button.main-act').click()";

/// The pages that only a form leads to: refused entries, the later of two saves, before and after
/// it was sent without a choice, and a plan with a wrong number.
#[tokio::test(flavor = "multi_thread")]
async fn refused_and_conflicting_forms_are_right_on_every_screen() {
    for view in VIEWS {
        let studio = Studio::demo(view.language).await;
        let browser = Browser::open(view).await.expect("a browser");
        let mut faults = Vec::new();
        let here = "return document.querySelector('.errors, table input[type=radio]') !== null";

        let wrong = serde_json::json!({ "f-stature": "12 ells", "f-waist_girth": "7" });
        let form = studio.url("/people/new");
        browser.goto(&form).await.expect("the form");
        browser.ask(FILL, vec![wrong], "fill").await.expect("sent");
        until(&browser, here).await;
        faults.extend(look(&browser, "refused").await);

        let edit = studio.url("/people/2/edit");
        browser.goto(&edit).await.expect("the form");
        let twice = "const form = document.querySelector('main form');
            const mine = new URLSearchParams(new FormData(form));
            mine.set('name', 'Saved first');
            mine.set('waist_girth', '71');
            return fetch(form.action, { method: 'POST', body: mine }).then((a) => a.status)";
        let first = browser.ask(twice, vec![], "save first").await;
        assert_eq!(first.expect("saved"), 200);
        let later = serde_json::json!({ "f-name": "Saved later" });
        browser.ask(FILL, vec![later], "fill").await.expect("sent");
        until(&browser, here).await;
        faults.extend(look(&browser, "conflict").await);
        let send = "document.querySelector('main form button.main-act').click()";
        browser
            .ask(send, vec![], "save unchosen")
            .await
            .expect("sent");
        until(
            &browser,
            "return document.querySelector('.errors') !== null",
        )
        .await;
        faults.extend(look(&browser, "unchosen").await);
        let plan = studio.url(&format!("/people/{PERSON}/in/{GARMENT}?hem_height=99"));
        browser.goto(&plan).await.expect("the plan");
        faults.extend(look(&browser, "wrong-number").await);
        assert!(faults.is_empty(), "{view:?}:\n{}", faults.join("\n"));
    }
}
