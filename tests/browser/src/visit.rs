//! Everything that must hold of every page, whatever is on it.

use crate::audit::as_list;
use crate::browser::{Browser, Language, View};
use crate::error::BrowserError;

/// A page of the studio.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    /// A short name, used for the picture.
    pub name: &'static str,
    /// Its path and query, beginning with a slash.
    pub path: String,
}

impl Page {
    /// The page at a path.
    pub fn new(name: &'static str, path: impl Into<String>) -> Self {
        Self {
            name,
            path: path.into(),
        }
    }
}

/// Every screen and language that a page must be right on: a phone held upright, and a desk.
pub const VIEWS: [View; 4] = [
    View {
        width: 360,
        height: 740,
        language: Language::En,
    },
    View {
        width: 360,
        height: 740,
        language: Language::Ja,
    },
    View {
        width: 1440,
        height: 900,
        language: Language::En,
    },
    View {
        width: 1440,
        height: 900,
        language: Language::Ja,
    },
];

/// Visits one page and returns what is wrong with it, one fault a line; empty when all is well.
///
/// It must be in the language that the browser asked for, fit the screen's width, break no rule
/// of the accessibility audit, and leave no error in the console. A picture of it is kept as
/// `target/screenshots/PAGE-WIDTH-LANGUAGE.png`.
///
/// # Errors
/// Those of [`Browser`]; a fault of the page is no error.
pub async fn visit(
    browser: &Browser,
    origin: &str,
    page: &Page,
) -> Result<Vec<String>, BrowserError> {
    let view = browser.view();
    browser
        .goto(&format!("{}{}", origin.trim_end_matches('/'), page.path))
        .await?;
    browser
        .screenshot(&format!("{}-{}", page.name, view.name()))
        .await?;
    let mut faults = Vec::new();
    let wanted = view.language.tag();
    match browser.page_language().await? {
        Some(lang) if lang == wanted => {}
        lang => faults.push(format!("<html lang> is {lang:?}, not {wanted:?}")),
    }
    faults.extend(browser.sideways_scroll().await?);
    faults.extend(
        browser
            .console_errors()
            .await?
            .iter()
            .map(|line| format!("console: {line}")),
    );
    let violations = browser.audit().await?;
    if !violations.is_empty() {
        faults.push(as_list(&violations));
    }
    let place = format!("{} at {} px in {wanted}", page.path, view.width);
    Ok(faults
        .into_iter()
        .map(|fault| format!("{place}: {fault}"))
        .collect())
}
