//! The documents of `--json`, and their schemas.
//!
//! Lengths are centimetres under names that end in `_cm`, to a hundredth: far below what any tape
//! tells, so that nothing is lost, and no longer than that. Texts are in the language of the run.

pub mod check;
pub mod keys;
pub mod marks;
pub mod plan;
pub mod problems;
pub mod rank;

use schemars::{JsonSchema, schema_for};
use serde::Serialize;

/// The documents by the name under which their schema is asked for.
pub fn schemas() -> [(&'static str, schemars::Schema); 5] {
    [
        ("plan", schema_for!(plan::PlanReport)),
        ("rank", schema_for!(rank::RankReport)),
        ("check", schema_for!(check::CheckReport)),
        ("marks", schema_for!(marks::MarksForm)),
        ("problems", schema_for!(problems::Problems)),
    ]
}

/// A document as text.
pub fn text(document: &impl Serialize) -> String {
    let json = serde_json::to_string_pretty(document);
    // Documents are plain structs with text keys and finite numbers.
    format!("{}\n", json.expect("a document has a JSON form"))
}

/// Centimetres to a hundredth, and never minus nothing.
pub fn cm(value: f64) -> f64 {
    (value * 100.0).round() / 100.0 + 0.0
}

/// What holds the truth nine times in ten.
#[derive(Debug, Clone, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Interval {
    /// Lower end, in centimetres.
    pub low_cm: f64,
    /// Upper end, in centimetres.
    pub high_cm: f64,
}

impl From<(f64, f64)> for Interval {
    fn from((low, high): (f64, f64)) -> Self {
        Interval {
            low_cm: cm(low),
            high_cm: cm(high),
        }
    }
}
