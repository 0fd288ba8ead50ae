//! The document of everything wrong with an input.

use schemars::JsonSchema;
use serde::Serialize;
use sunbu_words::Words;

use super::{keys, text};
use crate::trouble::Trouble;

/// Everything wrong with an input.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Problems {
    /// The language of the sentences.
    #[schemars(schema_with = "keys::lang")]
    lang: &'static str,
    /// All of them, in the order of the input.
    #[schemars(length(min = 1))]
    problems: Vec<Told>,
}

/// One thing wrong.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct Told {
    /// Dotted path of the field, such as `garments.2.mitake`, or the file or argument.
    place: String,
    /// What stood there, as it was typed; empty when nothing was.
    typed: String,
    /// The stable name of the kind of problem.
    #[schemars(regex(pattern = "^(problem|trouble|picture)-[a-z-]+$"))]
    code: String,
    /// The whole sentence: place, what is wrong, what is allowed, the way out.
    sentence: String,
}

impl Problems {
    /// The document for these troubles.
    pub fn of(words: &Words, troubles: &[Trouble]) -> Problems {
        let told = |trouble: &Trouble| Told {
            place: trouble.place().to_owned(),
            typed: trouble.typed().to_owned(),
            code: trouble.code(),
            sentence: trouble.said(words),
        };
        Problems {
            lang: words.lang().code(),
            problems: troubles.iter().map(told).collect(),
        }
    }

    /// The document as text.
    pub fn text(&self) -> String {
        text(self)
    }
}
