//! A photo under the hands: taken in through its check, tapped, dragged, and read back.

use serde_json::{Value, json};
use sunbu_browser_tests::{Browser, View as Screen};
use sunbu_core::photo::{Mark, Marking, Pixel, View};
use sunbu_render::{Scene, Truth};

use crate::dressed::{everywhere_off, jpeg, studio};
use crate::studio::{Studio, until};

/// A page with a photo on it, under the hands.
pub struct Hands {
    pub studio: Studio,
    pub browser: Browser,
    pub scene: Scene,
    pub truth: Truth,
}

/// Waits until all is saved.
const SAVED: &str =
    "return ['Saved', '保存しました'].includes(document.getElementById('saved').textContent)";

impl Hands {
    /// The photo of a person dressed 2 cm off the plan, taken in through the page of its check.
    pub async fn upload(seed: u64, screen: Screen) -> Self {
        let scene = everywhere_off(seed, View::Front, 2.0);
        let studio = Studio::of(studio(&scene)).await;
        let browser = Browser::open(screen).await.expect("a browser");
        browser
            .goto(&studio.url("/checks/1"))
            .await
            .expect("the check");
        let folder = tempfile::tempdir().expect("a folder");
        let file = folder.path().join("front.jpg");
        std::fs::write(&file, jpeg(&scene, seed)).expect("a file");
        let input = fantoccini::Locator::Css("#photo-front");
        let input = browser.client().find(input).await.expect("the field");
        let path = file.to_str().expect("UTF-8");
        input.send_keys(path).await.expect("chosen");
        let hands = Self {
            truth: scene.truth(),
            studio,
            browser,
            scene,
        };
        hands.ready().await;
        hands
    }

    pub async fn ready(&self) {
        until(
            &self.browser,
            "const photo = document.getElementById('photo');
            return document.querySelector('#marking.ready') !== null
                && photo.complete && photo.naturalWidth > 0",
        )
        .await;
    }

    /// Where a place of the photo is on the screen; scrolled into sight when it is not.
    pub async fn on_screen(&self, at: Pixel) -> [f64; 2] {
        let script = "const [x, y] = arguments;
            const over = document.getElementById('over');
            const place = () => {
                const box = document.getElementById('stage').getBoundingClientRect();
                const size = over.viewBox.baseVal;
                return [box.left + x * box.width / size.width, box.top + y * box.height / size.height];
            };
            const frame = document.getElementById('frame').getBoundingClientRect();
            const low = Math.max(frame.top, 0), high = Math.min(frame.bottom, innerHeight);
            const there = place()[1];
            if (there < low + 4 || there > high - 4) scrollBy({ top: there - innerHeight / 2, behavior: 'instant' });
            return place();";
        let place = self
            .browser
            .ask(script, vec![json!(at[0]), json!(at[1])], "find a place");
        let place = place.await.expect("a place");
        [0, 1].map(|k| place[k].as_f64().expect("a number"))
    }

    /// Taps a place of the photo.
    pub async fn tap(&self, at: Pixel) {
        let place = self.on_screen(at).await;
        self.browser.tap(place).await.expect("tapped");
    }

    /// Drags from one place of the photo to another.
    pub async fn drag(&self, from: Pixel, to: Pixel) {
        let (from, to) = (self.on_screen(from).await, self.on_screen(to).await);
        self.browser.drag(from, to).await.expect("dragged");
    }

    /// Floor and crown.
    pub async fn first(&self) {
        for mark in [Mark::Floor, Mark::Crown] {
            self.tap(self.truth[&mark].pixel).await;
            self.saved().await;
        }
    }

    pub async fn saved(&self) {
        until(&self.browser, SAVED).await;
    }

    /// What the studio has kept.
    pub async fn kept(&self) -> Marking {
        let script =
            "return fetch(location.pathname).then((answer) => answer.text()).then((page) => {
                const read = new DOMParser().parseFromString(page, 'text/html');
                return JSON.parse(read.getElementById('marking').dataset.state).marking;
            })";
        let kept = self.browser.ask(script, vec![], "read what is kept").await;
        let kept: Value = kept.expect("what is kept");
        serde_json::from_value(kept).expect("a marking")
    }

    pub async fn at(&self, mark: Mark) -> Pixel {
        let kept = self.kept().await;
        kept.shot
            .marks
            .get(&mark)
            .unwrap_or_else(|| panic!("{mark:?} is not placed"))
            .at
    }

    pub async fn click(&self, selector: &str) {
        let script = "const button = document.querySelector(arguments[0]);
            button.scrollIntoView({ block: 'center', behavior: 'instant' });
            const box = button.getBoundingClientRect();
            return [box.left + box.width / 2, box.top + box.height / 2]";
        let at = self
            .browser
            .ask(script, vec![json!(selector)], "find a button")
            .await;
        let at = at.unwrap_or_else(|e| panic!("{selector}: {e}"));
        let at = [0, 1].map(|k| at[k].as_f64().expect("a number"));
        self.browser.tap(at).await.expect("tapped");
    }

    pub async fn keys(&self, keys: &str) {
        let here = self
            .browser
            .client()
            .active_element()
            .await
            .expect("a focus");
        here.send_keys(keys).await.expect("pressed");
    }

    /// Where a mark is drawn, without asking the studio.
    pub async fn at_shown(&self, mark: Mark) -> Pixel {
        let script = "const group = document.querySelector(`#over [data-id=${arguments[0]}]`);
            const { e, f } = group.transform.baseVal.getItem(0).matrix;
            return [e, f]";
        let at = self
            .browser
            .ask(script, vec![json!(mark.key())], "find a mark")
            .await;
        let at = at.expect("a mark");
        [0, 1].map(|k| at[k].as_f64().expect("a number"))
    }
}
