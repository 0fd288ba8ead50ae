//! What happens under the hands: sliders, locks, the plan, the way back, the other language.

use sunbu_browser_tests::{Browser, Language};

use crate::studio::{DESK, PHONE, Studio, text, until};

const PLAN: &str = "/people/1/in/16";

/// Sets an input as fingers do, in as many moves as there are values.
const MOVE: &str = "const [id, ...values] = arguments;
    const knob = document.getElementById(id).closest('.knob');
    const slider = knob.querySelector('input[type=range]');
    for (const value of values) {
        slider.value = value;
        slider.dispatchEvent(new Event('input', { bubbles: true }));
    }";

async fn slide(browser: &Browser, id: &str, values: &[f64]) {
    let mut args = vec![id.into()];
    args.extend(values.iter().map(|cm| (*cm).into()));
    browser.ask(MOVE, args, "slide").await.expect("slid");
}

async fn open(studio: &Studio, view: sunbu_browser_tests::View) -> Browser {
    let browser = Browser::open(view).await.expect("a browser");
    browser.goto(&studio.url(PLAN)).await.expect("the plan");
    browser
}

#[tokio::test(flavor = "multi_thread")]
async fn a_slider_redraws_figure_and_numbers_and_the_address_keeps_it() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, PHONE).await;
    let figure = "return document.getElementById('figure').innerHTML";
    let before = text(&browser, figure).await;
    slide(&browser, "hem_height", &[9.0]).await;
    until(&browser, "return location.search.includes('hem_height=9&')").await;
    assert_ne!(
        text(&browser, figure).await,
        before,
        "the figure is drawn anew"
    );
    let numbers = text(
        &browser,
        "return document.getElementById('numbers').innerText",
    )
    .await;
    let first = numbers.lines().take(12).collect::<Vec<_>>().join(" ");
    assert!(
        first.contains("9.0 ± 0.8 cm"),
        "the missed hem comes first: {first}"
    );
    browser
        .client()
        .refresh()
        .await
        .expect("the page once more");
    let kept = text(
        &browser,
        "return document.getElementById('hem_height').value",
    )
    .await;
    assert_eq!(kept, "9", "a reload keeps the state");
}

#[tokio::test(flavor = "multi_thread")]
async fn of_many_quick_moves_the_last_one_is_shown() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, DESK).await;
    let moves: Vec<f64> = (0..60).map(|i| f64::from(i % 12) + 0.5).collect();
    slide(&browser, "hem_height", &moves).await;
    slide(&browser, "hem_height", &[7.3]).await;
    until(
        &browser,
        "return location.search.includes('hem_height=7.3&')",
    )
    .await;
    let shown = text(
        &browser,
        "return document.getElementById('numbers').innerText",
    )
    .await;
    assert!(shown.contains("7.3 ± 0.8 cm"), "{shown}");
}

#[tokio::test(flavor = "multi_thread")]
async fn asking_the_plan_keeps_what_is_locked_and_the_way_back_undoes_it() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, DESK).await;
    slide(&browser, "nape_drop", &[11.5]).await;
    slide(&browser, "hem_height", &[10.0]).await;
    until(
        &browser,
        "return location.search.includes('hem_height=10&')",
    )
    .await;
    let unfold =
        "for (const group of document.querySelectorAll('#knobs details')) group.open = true";
    browser
        .ask(unfold, vec![], "unfold")
        .await
        .expect("unfolded");
    let lock = "document.querySelector('input[name=lock][value=nape_drop]').click();
        document.querySelector('button[name=ask]').click()";
    browser
        .ask(lock, vec![], "ask the plan")
        .await
        .expect("asked");
    until(
        &browser,
        "return !location.search.includes('hem_height=10&')",
    )
    .await;
    let locked = "return document.getElementById('nape_drop').value + ' ' +
        document.querySelector('input[name=lock][value=nape_drop]').checked";
    assert_eq!(text(&browser, locked).await, "11.5 true");
    let folded = "return document.querySelectorAll('#knobs details:not([open])').length";
    assert_eq!(
        text(&browser, folded).await,
        "0",
        "groups stay as they were"
    );
    let hem = "return document.getElementById('hem_height').value";
    let planned: f64 = text(&browser, hem).await.parse().expect("a number");
    assert!(planned < 3.0, "indoors the hem is low: {planned} cm");
    browser.client().back().await.expect("the way back");
    until(
        &browser,
        "return document.getElementById('hem_height')?.value === '10'",
    )
    .await;
}

/// Types into a number as fingers do.
const TYPE: &str = "const [id, text] = arguments;
    const number = document.getElementById(id);
    number.value = text;
    number.dispatchEvent(new Event('input', { bubbles: true }));
    return number.closest('.knob').querySelector('input[type=range]').value";

async fn type_in(browser: &Browser, id: &str, typed: &str) -> String {
    let args = vec![id.into(), typed.into()];
    let slider = browser.ask(TYPE, args, "type").await.expect("typed");
    slider.as_str().expect("the slider's value").to_owned()
}

#[tokio::test(flavor = "multi_thread")]
async fn a_number_moves_its_slider_and_one_that_cannot_be_read_does_not() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, DESK).await;
    assert_eq!(type_in(&browser, "hem_height", "6.5").await, "6.5");
    let said = "return document.getElementById('hem_height').closest('.knob')
        .querySelector('input[type=range]').getAttribute('aria-valuetext')";
    assert_eq!(
        text(&browser, said).await,
        "6.5 cm",
        "a slider says its unit"
    );
    until(
        &browser,
        "return location.search.includes('hem_height=6.5&')",
    )
    .await;
    assert_eq!(
        type_in(&browser, "hem_height", ".").await,
        "6.5",
        "the last whole number stays"
    );
}

#[tokio::test(flavor = "multi_thread")]
async fn a_wrong_number_is_told_beside_its_field_and_nothing_else_is_drawn() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, DESK).await;
    let drawn = "return document.getElementById('figure').innerHTML
        + document.getElementById('numbers').innerHTML + document.getElementById('steps').innerHTML";
    let before = text(&browser, drawn).await;
    for (id, typed) in [
        ("hem_height", "99"),
        ("obi_lower_edge", "500"),
        ("nape_drop", "deep"),
    ] {
        let right = format!("return document.getElementById('{id}').value");
        let right = text(&browser, &right).await;
        type_in(&browser, id, typed).await;
        until(
            &browser,
            &format!(
                "return document.getElementById('{id}').getAttribute('aria-invalid') === 'true'"
            ),
        )
        .await;
        let sentence = format!("return document.getElementById('{id}-wrong').innerText");
        let sentence = text(&browser, &sentence).await;
        assert!(
            sentence.contains(typed),
            "{id} is told and in sight: {sentence}"
        );
        assert_eq!(
            text(&browser, drawn).await,
            before,
            "{id}: nothing is drawn for it"
        );
        let marked = "return document.querySelector('.unlike').checkVisibility()";
        assert_eq!(
            text(&browser, marked).await,
            "true",
            "{id}: the figure is marked"
        );
        let kept = format!("return document.getElementById('{id}').value");
        assert_eq!(
            text(&browser, &kept).await,
            typed,
            "{id} keeps what was typed"
        );

        type_in(&browser, id, &right).await;
        until(
            &browser,
            "return !document.querySelector('.unlike').checkVisibility()
                && document.querySelector('[aria-invalid]') === null",
        )
        .await;
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn a_wrong_number_survives_a_reload_and_can_be_mended_after_it() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, PHONE).await;
    type_in(&browser, "hem_height", "99").await;
    until(
        &browser,
        "return location.search.includes('hem_height=99&')",
    )
    .await;
    browser
        .client()
        .refresh()
        .await
        .expect("the page once more");
    let state = "return document.getElementById('hem_height').value + ' '
        + (document.querySelector('#faults .errors') !== null)";
    assert_eq!(text(&browser, state).await, "99 true");
    type_in(&browser, "hem_height", "1").await;
    until(
        &browser,
        "return document.querySelector('#faults .errors') === null
            && document.querySelector('[aria-invalid]') === null",
    )
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn shaku_typed_under_the_hands_moves_the_slider() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, DESK).await;
    type_in(&browser, "nape_drop", "2寸").await;
    // 2 sun are 7.58 cm; the slider takes tenths.
    until(
        &browser,
        "return document.getElementById('nape_drop').closest('.knob')
            .querySelector('input[type=range]').value === '7.6'",
    )
    .await;
}

#[tokio::test(flavor = "multi_thread")]
async fn the_other_language_shows_the_same_state() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, PHONE).await;
    slide(&browser, "hem_height", &[8.5]).await;
    until(
        &browser,
        "return location.search.includes('hem_height=8.5&')",
    )
    .await;
    let switch = "document.querySelector('button[name=lang][value=ja]').click()";
    browser
        .ask(switch, vec![], "switch")
        .await
        .expect("switched");
    until(&browser, "return document.documentElement.lang === 'ja'").await;
    let hem = "return document.getElementById('hem_height').value";
    assert_eq!(text(&browser, hem).await, "8.5");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_studio_that_was_closed_is_told_and_the_numbers_stay() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, DESK).await;
    // The server finishes open connections; a browser that is offline finds none.
    let offline = "window.fetch = () => Promise.reject(new TypeError('offline'))";
    browser
        .ask(offline, vec![], "go offline")
        .await
        .expect("offline");
    slide(&browser, "hem_height", &[5.5]).await;
    until(&browser, "return !document.getElementById('lost').hidden").await;
    let hem = "return document.getElementById('hem_height').value";
    assert_eq!(text(&browser, hem).await, "5.5");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_typed_length_is_read_back_in_both_units() {
    let studio = Studio::demo(Language::En).await;
    let browser = Browser::open(PHONE).await.expect("a browser");
    browser
        .goto(&studio.url("/people/new"))
        .await
        .expect("the form");
    let typed = "const input = document.getElementById('f-stature');
        input.value = '4尺2寸5分';
        input.dispatchEvent(new Event('input', { bubbles: true }))";
    browser.ask(typed, vec![], "type").await.expect("typed");
    // 4 shaku 2 sun 5 bu are 425 bu of 25/66 cm each: 160.98 cm.
    let read = "return document.getElementById('f-stature-read').textContent.trim()
        === '161.0 cm = 4 shaku 2 sun 5 bu'";
    until(&browser, read).await;
}
