//! One headless browser with the screen and the language of one reader.

use std::fs;
use std::path::PathBuf;
use std::time::Duration;

use base64::prelude::{BASE64_STANDARD, Engine};
use fantoccini::wd::{TimeoutConfiguration, WebDriverCompatibleCommand};
use fantoccini::{Client, ClientBuilder};
use http::Method;
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use url::Url;

use crate::driver::Driver;
use crate::error::BrowserError;
use crate::programs;

/// The languages that every page comes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Language {
    /// English.
    En,
    /// Japanese.
    Ja,
}

impl Language {
    /// The tag of BCP 47, as in `<html lang>` and `Accept-Language`.
    pub fn tag(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::Ja => "ja",
        }
    }
}

/// Who looks: the screen in CSS pixels, and the language the browser asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct View {
    /// Width of the screen in CSS pixels. Below 600 the screen is a phone's: touched, and as wide
    /// as the page says in its viewport element.
    pub width: u32,
    /// Height of the screen in CSS pixels.
    pub height: u32,
    /// What the browser sends as `Accept-Language`.
    pub language: Language,
}

impl View {
    pub(crate) fn is_phone(self) -> bool {
        self.width < 600
    }

    /// A short name for files, such as `360-ja`.
    pub fn name(self) -> String {
        format!("{}-{}", self.width, self.language.tag())
    }
}

/// A browser of its own, with an empty profile; gone when dropped.
pub struct Browser {
    client: Client,
    view: View,
    _driver: Driver,
}

impl Browser {
    /// Opens a browser with this screen and language.
    ///
    /// # Errors
    /// [`BrowserError::Missing`] without a browser or driver; the other variants when they do not
    /// work together.
    pub async fn open(view: View) -> Result<Self, BrowserError> {
        let chromium = programs::chromium()?;
        let driver = Driver::start()?;
        let capabilities = capabilities(view, &chromium.to_string_lossy(), &driver);
        let Value::Object(capabilities) = capabilities else {
            return Err(answer("say what it can do", &capabilities));
        };
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities(capabilities)
            .connect(&driver.address())
            .await
            .map_err(|source| BrowserError::NoSession(Box::new(source)))?;
        let browser = Self {
            client,
            view,
            _driver: driver,
        };
        let limit = Some(Duration::from_secs(60));
        let limits = TimeoutConfiguration::new(limit, limit, Some(Duration::ZERO));
        let done = browser.client.update_timeouts(limits).await;
        done.map_err(|source| command("take time limits", source))?;
        browser.take_size().await?;
        Ok(browser)
    }

    /// The screen and the language it was opened with.
    pub fn view(&self) -> View {
        self.view
    }

    /// The WebDriver client, for clicks, typing and waiting.
    pub fn client(&self) -> &Client {
        &self.client
    }

    /// Goes to a page and waits for it to have loaded.
    ///
    /// # Errors
    /// [`BrowserError::Command`] when it cannot be reached or takes longer than 60 s.
    pub async fn goto(&self, url: &str) -> Result<(), BrowserError> {
        let done = self.client.goto(url).await;
        done.map_err(|source| command(&format!("go to {url}"), source))
    }

    /// Takes a picture of the whole page, also of what is below the screen's edge, as
    /// `target/screenshots/NAME.png`, and returns that path.
    ///
    /// # Errors
    /// [`BrowserError::Command`] or [`BrowserError::Answer`] when the browser takes none,
    /// [`BrowserError::File`] when it cannot be written.
    pub async fn screenshot(&self, name: &str) -> Result<PathBuf, BrowserError> {
        let doing = "take a picture";
        let metrics = self
            .devtools("Page.getLayoutMetrics", json!({}), doing)
            .await?;
        let page = &metrics["cssContentSize"];
        let picture = json!({
            "format": "png",
            "captureBeyondViewport": true,
            "clip": {
                "x": 0, "y": 0, "width": page["width"], "height": page["height"], "scale": 1,
            },
        });
        let taken = self
            .devtools("Page.captureScreenshot", picture, doing)
            .await?;
        let text = taken["data"].as_str().unwrap_or_default();
        let png = BASE64_STANDARD
            .decode(text)
            .map_err(|_| answer(doing, &taken))?;
        let path = programs::target()
            .join("screenshots")
            .join(format!("{name}.png"));
        let folder = path.parent().map(fs::create_dir_all).unwrap_or(Ok(()));
        folder
            .and_then(|()| fs::write(&path, png))
            .map_err(|source| BrowserError::File {
                path: path.clone(),
                source,
            })?;
        Ok(path)
    }

    /// The status that the page shown was answered with; `None` when it did not come over HTTP.
    ///
    /// # Errors
    /// [`BrowserError::Command`] when the page cannot be asked.
    pub async fn status(&self) -> Result<Option<u64>, BrowserError> {
        let script = "return performance.getEntriesByType('navigation')[0].responseStatus";
        let status = self.ask(script, vec![], "read the page's status").await?;
        Ok(status.as_u64().filter(|status| *status != 0))
    }

    /// The language that the page says it is in, `<html lang>`; `None` when it does not say.
    ///
    /// # Errors
    /// [`BrowserError::Command`] when the page cannot be asked.
    pub async fn page_language(&self) -> Result<Option<String>, BrowserError> {
        let script = "return document.documentElement.getAttribute('lang')";
        let lang = self.ask(script, vec![], "read the page's language").await?;
        Ok(lang.as_str().map(str::to_owned))
    }

    /// What makes the page scroll sideways: a sentence, or `None` when it fits the screen.
    ///
    /// A page without a viewport element does not fit a phone, whatever is on it.
    ///
    /// # Errors
    /// [`BrowserError::Command`] when the page cannot be asked.
    pub async fn sideways_scroll(&self) -> Result<Option<String>, BrowserError> {
        let found = self.ask(SIDEWAYS, vec![], "measure the page").await?;
        let pixels = |name: &str| found[name].as_u64().unwrap_or(u64::MAX);
        let (screen, shown, needed) = (
            u64::from(self.view.width),
            pixels("shown"),
            pixels("needed"),
        );
        if shown > screen {
            return Ok(Some(format!(
                "laid out {shown} px wide on a screen of {screen} px: no viewport element?"
            )));
        }
        if needed <= shown {
            return Ok(None);
        }
        let wide: Vec<&str> = found["wide"]
            .as_array()
            .into_iter()
            .flatten()
            .filter_map(Value::as_str)
            .collect();
        Ok(Some(format!(
            "{needed} px wide on a screen of {shown} px: {}",
            wide.join("; ")
        )))
    }

    /// Errors in the browser's console since the last call: scripts that failed, files that did
    /// not come, policies broken.
    ///
    /// # Errors
    /// [`BrowserError::Command`] or [`BrowserError::Answer`] when there is no console to read.
    pub async fn console_errors(&self) -> Result<Vec<String>, BrowserError> {
        let (doing, body) = ("read the console", json!({ "type": "browser" }));
        let log = self.tell("se/log", body, doing).await?;
        let entries = log.as_array().ok_or_else(|| answer(doing, &log))?;
        let severe = entries.iter().filter(|entry| entry["level"] == "SEVERE");
        Ok(severe
            .map(|entry| entry["message"].as_str().unwrap_or("?").to_owned())
            .collect())
    }

    /// Runs a script in the page and returns what it returns.
    ///
    /// # Errors
    /// [`BrowserError::Command`] when the script throws.
    pub async fn ask(
        &self,
        script: &str,
        args: Vec<Value>,
        doing: &str,
    ) -> Result<Value, BrowserError> {
        let answered = self.client.execute(script, args).await;
        answered.map_err(|source| command(doing, source))
    }

    /// Sets the screen's size. A headless window has a least width of about 500 px, so the screen
    /// is set in the page's own terms instead.
    async fn take_size(&self) -> Result<(), BrowserError> {
        let View { width, height, .. } = self.view;
        let phone = self.view.is_phone();
        let doing = "take a size";
        let screen = json!({
            "width": width, "height": height, "mobile": phone,
            "deviceScaleFactor": if phone { 2 } else { 1 },
        });
        self.devtools("Emulation.setDeviceMetricsOverride", screen, doing)
            .await?;
        let touch = json!({ "enabled": phone });
        self.devtools("Emulation.setTouchEmulationEnabled", touch, doing)
            .await?;
        Ok(())
    }

    /// Sends a command of the browser's own protocol for developers.
    async fn devtools(
        &self,
        command: &str,
        parameters: Value,
        doing: &str,
    ) -> Result<Value, BrowserError> {
        let body = json!({ "cmd": command, "params": parameters });
        self.tell("goog/cdp/execute", body, doing).await
    }

    /// Sends a command that WebDriver leaves to the browser's maker.
    async fn tell(
        &self,
        path: &'static str,
        body: Value,
        doing: &str,
    ) -> Result<Value, BrowserError> {
        let answered = self.client.issue_cmd(Vendor { path, body }).await;
        answered.map_err(|source| command(doing, source))
    }
}

/// What the driver is asked for.
fn capabilities(view: View, chromium: &str, driver: &Driver) -> Value {
    json!({
        "goog:loggingPrefs": { "browser": "ALL" },
        "goog:chromeOptions": {
            "binary": chromium,
            "args": [
                "--headless",
                "--no-sandbox", // a sandbox cannot be made as root, and only local pages are shown
                "--disable-gpu",
                "--disable-dev-shm-usage", // containers often have little of it
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                format!("--user-data-dir={}", driver.profile().display()),
                format!("--accept-lang={}", view.language.tag()),
            ],
            "prefs": { "intl.accept_languages": view.language.tag() },
        },
    })
}

/// Measures the page, and names the innermost elements that stick out of it.
const SIDEWAYS: &str = r#"
    const page = document.scrollingElement, edge = page.clientWidth;
    const out = [...document.body.querySelectorAll('*')]
        .filter(e => e.getBoundingClientRect().right > edge + 0.5);
    const wide = out.filter(e => ![...e.children].some(c => out.includes(c))).slice(0, 5)
        .map(e => '<' + e.localName + (e.id ? ' id=' + e.id : '') +
            (e.getAttribute('class') ? ' class=' + e.getAttribute('class') : '') +
            '> ends at ' + Math.ceil(e.getBoundingClientRect().right) + ' px');
    return { shown: edge, needed: page.scrollWidth, wide };
"#;

/// A command of the browser's maker, below the session's address.
#[derive(Debug)]
struct Vendor {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Vendor {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, url::ParseError> {
        base.join(&format!(
            "session/{}/{}",
            session.unwrap_or_default(),
            self.path
        ))
    }

    fn method_and_body(&self, _: &Url) -> (Method, Option<String>) {
        (Method::POST, Some(self.body.to_string()))
    }
}

/// The error of a command that failed.
pub fn command(doing: &str, source: fantoccini::error::CmdError) -> BrowserError {
    BrowserError::Command {
        doing: doing.to_owned(),
        source: Box::new(source),
    }
}

/// The error of an answer that makes no sense, cut to a length that can be read.
pub fn answer(doing: &str, answer: &Value) -> BrowserError {
    let answer = answer.to_string().chars().take(300).collect();
    BrowserError::Answer {
        doing: doing.to_owned(),
        answer,
    }
}
