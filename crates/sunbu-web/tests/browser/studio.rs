//! A studio with the demo data, served from this process.

use sunbu_browser_tests::{Browser, Language, View};
use sunbu_core::demo;
use sunbu_core::fault::Fault;
use sunbu_store::Store;
use sunbu_web::App;
use tokio::net::TcpListener;
use tokio::sync::oneshot;

use crate::dressed;

pub const NOW: &str = "2026-03-01T09:30:00+09:00";

pub const PHONE: View = View {
    width: 360,
    height: 740,
    language: Language::En,
};

pub const DESK: View = View {
    width: 1440,
    height: 900,
    language: Language::En,
};

/// A studio that is open until it is dropped.
pub struct Studio {
    pub origin: String,
    /// Closing this end closes the studio.
    _open: oneshot::Sender<()>,
}

impl Studio {
    /// Opens the demo studio with names in this language.
    pub async fn demo(language: Language) -> Self {
        Self::of(demo_store(language)).await
    }

    /// The same with a check of somebody in two photos; with the numbers of the check and of the
    /// first photo.
    pub async fn demo_with_a_check(language: Language) -> (Self, i64, i64) {
        let mut store = demo_store(language);
        let names = match language {
            Language::En => ["Mori Sayo", "Grey tsumugi"],
            Language::Ja => ["森 小夜", "鼠の紬"],
        };
        let check = dressed::check(&mut store, names);
        dressed::tick(&mut store, check, &[Fault::FoldWrinkled]);
        let [front, _] = [
            sunbu_core::photo::View::Front,
            sunbu_core::photo::View::Back,
        ]
        .map(|view| {
            let scene = dressed::scene(view, &dressed::OFF);
            let jpeg = scene.render(1).to_jpeg(85).expect("a photo");
            dressed::photo(&mut store, check, &dressed::shot(&scene), &jpeg)
        });
        (Self::of(store).await, check, front)
    }

    /// Opens a studio on this store.
    pub async fn of(store: Store) -> Self {
        let app = App {
            store,
            clock: Box::new(|| NOW.to_owned()),
        };
        let listener = TcpListener::bind("127.0.0.1:0").await.expect("a free port");
        let address = listener.local_addr().expect("its address");
        let (open, closed) = oneshot::channel::<()>();
        let shutdown = async move {
            // An error here means that the sender is gone: the same wish to close.
            drop(closed.await);
        };
        tokio::spawn(sunbu_web::serve(listener, app, shutdown));
        Self {
            origin: format!("http://{address}"),
            _open: open,
        }
    }

    /// The address of a path.
    pub fn url(&self, path: &str) -> String {
        format!("{}{path}", self.origin)
    }
}

/// Runs a script in the page and returns what it returns, as text.
pub async fn text(browser: &Browser, script: &str) -> String {
    let value = browser.ask(script, vec![], "ask the page").await;
    match value.expect("an answer of the page") {
        serde_json::Value::String(text) => text,
        other => other.to_string(),
    }
}

/// Waits until a script returns true, at most ten seconds.
pub async fn until(browser: &Browser, script: &str) {
    for _ in 0..200 {
        if text(browser, script).await == "true" {
            return;
        }
        tokio::time::sleep(std::time::Duration::from_millis(50)).await;
    }
    panic!("never true: {script}");
}

/// The demo data with names in this language.
fn demo_store(language: Language) -> Store {
    let mut store = Store::in_memory().expect("a store in memory");
    for person in demo::people().expect("demo people") {
        let person = person.said(language.tag());
        store.add_person(person, NOW).expect("added");
    }
    for piece in demo::garments().expect("demo garments") {
        let piece = piece.said(language.tag());
        store.add_garment(piece, NOW).expect("added");
    }
    store
}
