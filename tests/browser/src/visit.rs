//! Everything that must hold of every page, whatever is on it.

use crate::audit::as_list;
use crate::browser::{Browser, Language, View};
use crate::error::BrowserError;

/// A page of the studio.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    /// Its path and query, beginning with a slash.
    pub path: String,
    /// The status that it is answered with (RFC 9110, section 15).
    pub status: u64,
}

impl Page {
    /// The page at a path, answered with 200, "OK".
    pub fn new(path: impl Into<String>) -> Self {
        Self {
            path: path.into(),
            status: 200,
        }
    }

    /// The same page, answered with another status: there is a page for "not found" too.
    #[must_use]
    pub fn with_status(self, status: u64) -> Self {
        Self { status, ..self }
    }

    /// A name for its pictures: the path with hyphens, `home` for the first page.
    pub fn name(&self) -> String {
        let words = self.path.split(|c: char| !c.is_alphanumeric());
        let name = words
            .filter(|word| !word.is_empty())
            .collect::<Vec<_>>()
            .join("-");
        if name.is_empty() {
            "home".to_owned()
        } else {
            name
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
/// It must have the status it should, be in the language that the browser asked for, fit the
/// screen's width, break no rule of the accessibility audit, and leave no error in the console. A picture of it is kept as
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
    let url = format!("{}{}", origin.trim_end_matches('/'), page.path);
    browser.goto(&url).await?;
    browser
        .screenshot(&format!("{}-{}", page.name(), view.name()))
        .await?;
    let mut faults = Vec::new();
    let status = browser.status().await?;
    if status != Some(page.status) {
        faults.push(format!("the status is {status:?}, not {}", page.status));
    }
    let wanted = view.language.tag();
    match browser.page_language().await? {
        Some(lang) if lang == wanted => {}
        lang => faults.push(format!("<html lang> is {lang:?}, not {wanted:?}")),
    }
    faults.extend(browser.sideways_scroll().await?);
    let console = browser.console_errors().await?;
    // The console repeats the page's own status, which was looked at above.
    let own = format!("{url} - Failed to load resource");
    let other = console.iter().filter(|line| !line.starts_with(&own));
    faults.extend(other.map(|line| format!("console: {line}")));
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

#[cfg(test)]
mod tests {
    use super::Page;

    #[test]
    fn pictures_are_named_by_the_path() {
        assert_eq!(Page::new("/").name(), "home");
        let page = Page::new("/people/3/in/17/print?occasion=formal");
        assert_eq!(page.name(), "people-3-in-17-print-occasion-formal");
    }
}
