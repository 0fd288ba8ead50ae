//! The sheet under the hands: the box over a face by pointer and by keys, the message copied, and
//! how it prints.

use fantoccini::Locator;
use fantoccini::actions::{InputSource, MOUSE_BUTTON_LEFT, MouseActions, PointerAction};
use fantoccini::elements::Element;
use fantoccini::key::Key;
use fantoccini::wd::{PrintConfiguration, PrintMargins, PrintSize};
use sunbu_browser_tests::{Browser, Language, View};

use crate::studio::{DESK, PHONE, Studio, text, until};

/// The sides of the first photo's box, in per cent.
async fn sides(browser: &Browser) -> [f64; 4] {
    let script = "const form = document.querySelector('form.face');
        return ['left', 'top', 'width', 'height'].map((side) => form.elements[side].value).join(' ')";
    let said = text(browser, script).await;
    let numbers: Vec<f64> = said.split(' ').filter_map(|n| n.parse().ok()).collect();
    numbers
        .try_into()
        .unwrap_or_else(|_| panic!("no box: {said}"))
}

async fn find(browser: &Browser, css: &str) -> Element {
    let found = browser.client().find(Locator::Css(css)).await;
    found.unwrap_or_else(|error| panic!("{css}: {error}"))
}

/// Brings an element into sight at once: what glides in cannot be hit.
async fn show(browser: &Browser, css: &str) -> Element {
    let script = format!(
        "document.querySelector('{css}').scrollIntoView({{ block: 'center', behavior: 'instant' }})"
    );
    browser.ask(&script, vec![], "scroll").await.expect("shown");
    find(browser, css).await
}

async fn click(browser: &Browser, css: &str) {
    show(browser, css).await.click().await.expect("clicked");
}

/// Drags an element by so many pixels.
async fn drag(browser: &Browser, css: &str, by: [f64; 2]) {
    let element = show(browser, css).await;
    let [x, y] = by;
    let actions = MouseActions::new("mouse".to_owned())
        .then(PointerAction::MoveToElement {
            element,
            duration: None,
            x: 0.0,
            y: 0.0,
        })
        .then(PointerAction::Down {
            button: MOUSE_BUTTON_LEFT,
        })
        .then(PointerAction::MoveBy {
            duration: None,
            x,
            y,
        })
        .then(PointerAction::Up {
            button: MOUSE_BUTTON_LEFT,
        });
    let done = browser.client().perform_actions(actions).await;
    done.expect("dragged");
}

async fn open(browser: &Browser, studio: &Studio, check: i64) {
    let path = studio.url(&format!("/checks/{check}/sheet"));
    browser.goto(&path).await.expect("the sheet");
}

#[tokio::test(flavor = "multi_thread")]
async fn the_box_over_a_face_follows_the_pointer_and_is_kept() {
    let (studio, check, _) = Studio::demo_with_a_check(Language::En).await;
    let browser = Browser::open(DESK).await.expect("a browser");
    open(&browser, &studio, check).await;
    let start = sides(&browser).await;
    let stage = "const box = document.querySelector('.stage').getBoundingClientRect();
        return box.width + ' ' + box.height";
    let stage = text(&browser, stage).await;
    let (wide, high) = stage.split_once(' ').expect("two lengths");
    let (wide, high): (f64, f64) = (wide.parse().expect("px"), high.parse().expect("px"));
    drag(&browser, ".face-box", [-20.0, 30.0]).await;
    let moved = sides(&browser).await;
    let wanted = [
        start[0] - 2000.0 / wide,
        start[1] + 3000.0 / high,
        start[2],
        start[3],
    ];
    for (got, wanted) in moved.iter().zip(wanted) {
        // A tenth of a per cent, and a pixel.
        assert!(
            (got - wanted).abs() < 0.1 + 100.0 / wide,
            "{moved:?}, {wanted}"
        );
    }
    drag(&browser, ".grip", [25.0, 10.0]).await;
    let sized = sides(&browser).await;
    assert!(
        (sized[0] - moved[0]).abs() < 0.01,
        "{sized:?} after {moved:?}"
    );
    let wider = sized[2] - moved[2];
    assert!(
        (wider - 2500.0 / wide).abs() < 0.1 + 100.0 / wide,
        "wider by {wider}"
    );
    click(&browser, "form.face .acts button").await;
    until(&browser, "return location.search === '?done=saved'").await;
    assert_eq!(sides(&browser).await, sized, "kept");
    browser
        .screenshot("sheet-box-kept")
        .await
        .expect("a picture");
}

#[tokio::test(flavor = "multi_thread")]
async fn the_box_over_a_face_follows_keys_and_numbers_and_goes_when_the_face_may_show() {
    let (studio, check, _) = Studio::demo_with_a_check(Language::En).await;
    let browser = Browser::open(PHONE).await.expect("a browser");
    open(&browser, &studio, check).await;
    let start = sides(&browser).await;
    let face = find(&browser, ".face-box").await;
    let keys = format!("{}{}", char::from(Key::Right), char::from(Key::Up));
    face.send_keys(&keys).await.expect("typed");
    let moved = sides(&browser).await;
    assert!(
        (moved[0] - start[0] - 1.0).abs() < 0.06,
        "{moved:?} after {start:?}"
    );
    assert!(
        (start[1] - moved[1] - 1.0).abs() < 0.06,
        "{moved:?} after {start:?}"
    );
    let larger = format!("{}{}", char::from(Key::Shift), char::from(Key::Down));
    face.send_keys(&larger).await.expect("typed");
    let sized = sides(&browser).await;
    assert!(
        (sized[3] - moved[3] - 1.0).abs() < 0.06,
        "{sized:?} after {moved:?}"
    );
    let typed = "const left = document.querySelector('form.face').elements.left;
        left.value = '33'; left.dispatchEvent(new Event('input', { bubbles: true }));
        return document.querySelector('.face-box').style.left";
    assert_eq!(text(&browser, typed).await, "33%");
    let hidden = "return document.querySelector('.face-box').hidden";
    assert_eq!(text(&browser, hidden).await, "false");
    let show = "document.querySelector('form.face [value=show]').click()";
    browser.ask(show, vec![], "show").await.expect("shown");
    assert_eq!(text(&browser, hidden).await, "true");
}

#[tokio::test(flavor = "multi_thread")]
async fn the_message_is_copied_and_where_it_cannot_be_it_is_selected() {
    let (studio, check, _) = Studio::demo_with_a_check(Language::En).await;
    let browser = Browser::open(DESK).await.expect("a browser");
    open(&browser, &studio, check).await;
    click(&browser, "[data-copy]").await;
    let said = "return document.getElementById('copied').textContent";
    until(
        &browser,
        "return document.getElementById('copied').textContent !== ''",
    )
    .await;
    assert_eq!(text(&browser, said).await, "Copied.");
    // As over plain http from another machine, with the old command refused too.
    let refuse = "Object.defineProperty(navigator, 'clipboard', { value: undefined });
        document.execCommand = () => false;
        document.getElementById('copied').textContent = ''";
    browser
        .ask(refuse, vec![], "refuse")
        .await
        .expect("refused");
    click(&browser, "[data-copy]").await;
    until(
        &browser,
        "return document.getElementById('copied').textContent !== ''",
    )
    .await;
    assert!(text(&browser, said).await.contains("selected"));
    let selected = "const text = document.getElementById('message-text');
        return text.selectionStart === 0 && text.selectionEnd === text.value.length
            && document.activeElement === text";
    assert_eq!(text(&browser, selected).await, "true");
}

/// A place that is typed on a plan's page is told without a new page, and a wrong one beside its
/// field.
#[tokio::test(flavor = "multi_thread")]
async fn what_others_see_of_a_plan_follows_the_typed_place() {
    let studio = Studio::demo(Language::En).await;
    let browser = Browser::open(DESK).await.expect("a browser");
    browser
        .goto(&studio.url("/people/1/in/16"))
        .await
        .expect("the plan");
    let look = "const [eye, distance] = arguments;
        document.getElementById('eye').value = eye;
        document.getElementById('distance').value = distance;
        document.querySelector('.place button').click()";
    let place = |eye: &str| vec![eye.into(), "1 m".into()];
    browser
        .ask(look, place("150"), "look")
        .await
        .expect("asked");
    until(
        &browser,
        "return document.getElementById('sights').innerText.includes('from your place')",
    )
    .await;
    until(&browser, "return location.search.includes('eye=150')").await;
    browser
        .ask(look, place("<i>tall"), "look")
        .await
        .expect("asked");
    until(
        &browser,
        "return document.getElementById('eye-wrong').innerText.includes('<i>tall')",
    )
    .await;
}

/// How many pages a PDF has: each says so of itself, and the list of them says it of all.
fn pages(pdf: &[u8]) -> usize {
    let text = String::from_utf8_lossy(pdf);
    let all = text.matches("/Type /Page").count();
    all - text.matches("/Type /Pages").count()
}

#[tokio::test(flavor = "multi_thread")]
async fn the_sheet_is_printed_on_one_or_two_pages_of_a4_in_both_languages() {
    for language in [Language::En, Language::Ja] {
        let (studio, check, _) = Studio::demo_with_a_check(language).await;
        let view = View { language, ..DESK };
        let browser = Browser::open(view).await.expect("a browser");
        open(&browser, &studio, check).await;
        // The margins of the style sheet, in centimetres.
        let [top, bottom, left, right] = [1.1; 4];
        let margins = PrintMargins {
            top,
            bottom,
            left,
            right,
        };
        let paper = PrintConfiguration::builder().size(PrintSize::A4);
        let paper = paper.margins(margins).build().expect("paper");
        let pdf = browser.client().print(paper).await.expect("a PDF");
        let name = format!("sheet-{}", view.name());
        let shot = browser.screenshot(&name);
        let beside = shot.await.expect("a picture").with_extension("pdf");
        std::fs::write(beside, &pdf).expect("the PDF");
        let pages = pages(&pdf);
        assert!((1..=2).contains(&pages), "{language:?}: {pages} pages");
    }
}
