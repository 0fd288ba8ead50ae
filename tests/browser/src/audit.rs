//! The accessibility audit: the rules of axe-core for WCAG 2.2 at levels A and AA, run in the page.

use std::fmt;
use std::fs;
use std::path::Path;

use serde::Deserialize;
use serde_json::{Value, json};

use crate::browser::{Browser, answer, command};
use crate::error::BrowserError;

/// A rule that the page breaks.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
pub struct Violation {
    /// The rule's short name, such as `label`.
    pub id: String,
    /// What the rule asks for, in words.
    pub help: String,
    /// The rule's tags; those beginning `wcag` name the success criteria, as in `wcag143` for 1.4.3.
    pub tags: Vec<String>,
    /// The elements that break it.
    pub nodes: Vec<Culprit>,
}

/// An element that breaks a rule.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
pub struct Culprit {
    /// Its source, perhaps shortened.
    pub html: String,
    /// What to do, one thing a line; `None` when the rule's own words say all.
    #[serde(rename = "failureSummary")]
    pub summary: Option<String>,
}

impl fmt::Display for Violation {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}: {}", self.id, self.help)?;
        for node in &self.nodes {
            write!(out, "\n    {}", node.html)?;
            let summary = node.summary.iter().flat_map(|text| text.lines().skip(1));
            for line in summary.filter(|line| !line.trim().is_empty()) {
                write!(out, "\n      {}", line.trim())?;
            }
        }
        Ok(())
    }
}

/// Violations as a list to read; empty when there are none.
pub fn as_list(violations: &[Violation]) -> String {
    violations
        .iter()
        .map(Violation::to_string)
        .collect::<Vec<_>>()
        .join("\n")
}

/// The tags of the rules for WCAG 2.2 at levels A and AA. Each version's rules carry only the tag
/// of the version that brought them, so all versions are named.
const TAGS: [&str; 6] = [
    "wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa",
];

impl Browser {
    /// The rules of WCAG 2.2, levels A and AA, that the page shown breaks.
    ///
    /// An automated audit finds only what a program can decide; an empty answer is no proof that
    /// the page can be used.
    ///
    /// # Errors
    /// [`BrowserError::NoRules`] when the rules are not installed; [`BrowserError::Command`] and
    /// [`BrowserError::Answer`] when they cannot be run in the page.
    pub async fn audit(&self) -> Result<Vec<Violation>, BrowserError> {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("node_modules/axe-core/axe.min.js");
        let rules = fs::read_to_string(&path).map_err(|_| BrowserError::NoRules { path })?;
        self.ask(&rules, vec![], "load the accessibility rules")
            .await?;
        let options = json!({
            "runOnly": { "type": "tag", "values": TAGS },
            "resultTypes": ["violations"],
        });
        let doing = "run the accessibility rules";
        let found = self.client().execute_async(RUN, vec![options]).await;
        let found = found.map_err(|source| command(doing, source))?;
        let Some(violations) = found.get("violations") else {
            return Err(answer(doing, &found));
        };
        // No rule at all was run when the names of the tags are wrong; that must not pass.
        if found["passes"].as_u64().unwrap_or(0) == 0 {
            return Err(answer(
                doing,
                &Value::from("not one rule passed, so none was run"),
            ));
        }
        serde_json::from_value(violations.clone()).map_err(|_| answer(doing, &found))
    }
}

const RUN: &str = r#"
    const [options, done] = arguments;
    axe.run(document, options)
        .then(r => done({ violations: r.violations, passes: r.passes.length }))
        .catch(e => done({ failed: String(e) }));
"#;
