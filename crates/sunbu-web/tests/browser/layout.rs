//! What stays in sight on a plan's page, on a phone and at a desk.

use sunbu_browser_tests::{Browser, Language, View};

use crate::studio::{DESK, PHONE, Studio, text, until};

/// A garment that is short and narrow for the first person: much is missed.
const PLAN: &str = "/people/1/in/1";

async fn open(studio: &Studio, view: View) -> Browser {
    let browser = Browser::open(view).await.expect("a browser");
    browser.goto(&studio.url(PLAN)).await.expect("the plan");
    browser
}

async fn number(browser: &Browser, script: &str) -> f64 {
    let said = text(browser, script).await;
    said.parse().unwrap_or_else(|_| panic!("{script}: {said}"))
}

#[tokio::test(flavor = "multi_thread")]
async fn on_a_phone_half_of_the_screen_is_left_to_the_sliders() {
    for language in [Language::En, Language::Ja] {
        let studio = Studio::demo(language).await;
        let view = View { language, ..PHONE };
        let browser = open(&studio, view).await;
        let pinned = "return document.querySelector('.pin').getBoundingClientRect().height";
        let pinned = number(&browser, pinned).await;
        let half = f64::from(view.height) / 2.0;
        assert!(
            pinned <= half,
            "{language:?}: {pinned} px are pinned, of {half} px at most"
        );
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn on_a_phone_each_way_down_leads_to_what_it_names_in_sight() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, PHONE).await;
    for id in ["ways-title", "steps-title", "save"] {
        let go = format!("document.querySelector('.pin a[href=\"#{id}\"]').click()");
        browser
            .ask(&go, vec![], "follow the way")
            .await
            .expect("followed");
        // Between what is pinned and the lower edge.
        until(
            &browser,
            &format!(
                "const pin = document.querySelector('.pin').getBoundingClientRect();
                const top = document.getElementById('{id}').getBoundingClientRect().top;
                return top >= Math.max(pin.bottom, 0) && top < innerHeight"
            ),
        )
        .await;
        let back = "scrollTo({ top: 0, behavior: 'instant' })";
        browser
            .ask(back, vec![], "scroll back")
            .await
            .expect("at the top");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn on_a_phone_what_is_met_is_folded_away_and_all_that_is_missed_is_in_full() {
    let studio = Studio::demo(Language::En).await;
    let browser = open(&studio, PHONE).await;
    let folded = "return document.querySelector('#numbers .met').open";
    assert_eq!(text(&browser, folded).await, "false");
    // Every missed wish that the pinned lines may cut off is told again, whole.
    let missed = "const told = [...document.querySelectorAll('#told b')].map((b) => b.innerText);
        const full = document.getElementById('ways').innerText;
        return told.length > 1 && told.every((sign) => full.includes(sign))";
    assert_eq!(text(&browser, missed).await, "true");
    let desk = open(&studio, DESK).await;
    assert_eq!(text(&desk, folded).await, "true");
}

#[tokio::test(flavor = "multi_thread")]
async fn at_a_desk_figure_verdict_and_buttons_fit_the_window_without_a_scrollbar() {
    for (width, height) in [(1440, 900), (1280, 720), (1100, 640)] {
        let studio = Studio::demo(Language::En).await;
        let view = View {
            width,
            height,
            ..DESK
        };
        let browser = open(&studio, view).await;
        let down = "const controls = document.querySelector('.controls').getBoundingClientRect();
            scrollTo({ top: controls.top + 300, behavior: 'instant' })";
        browser.ask(down, vec![], "scroll").await.expect("scrolled");
        let cut = "const pin = document.querySelector('.pin');
            const box = pin.getBoundingClientRect();
            const parts = [...pin.querySelectorAll('#figure svg, #told, .acts')];
            const cut = parts.filter((part) => {
                const { top, bottom } = part.getBoundingClientRect();
                return top < 0 || bottom > innerHeight;
            });
            return [...cut.map((part) => part.id || part.tagName), box.top < 0 ? 'pin' : '',
                getComputedStyle(pin).overflowY === 'visible' ? '' : 'scrollbar'].join('')";
        assert_eq!(
            text(&browser, cut).await,
            "",
            "cut off at {width} × {height}"
        );
        let tall = "return document.querySelector('#figure svg').getBoundingClientRect().height";
        let tall = number(&browser, tall).await;
        let least = 0.45 * f64::from(height);
        assert!(
            tall > least,
            "the figure is {tall} px tall at {width} × {height}"
        );
    }
}
