//! `sunbu schema`: the JSON Schemas of the documents.

use clap::ArgMatches;
use sunbu_words::Words;

use super::text;
use crate::answer::Answer;
use crate::report;
use crate::trouble::Trouble;

/// Prints one schema, or the names of all.
pub fn run(words: &Words, given: &ArgMatches) -> Answer {
    let schemas = report::schemas();
    let names: Vec<&str> = schemas.iter().map(|(name, _)| *name).collect();
    let Some(asked) = text(given, "name") else {
        return Answer::Done(names.iter().map(|name| format!("{name}\n")).collect());
    };
    match schemas.iter().find(|(name, _)| *name == asked) {
        Some((_, schema)) => Answer::Done(report::text(schema)),
        None => {
            let trouble =
                Trouble::at("schema", asked, "trouble-schema").with("known", names.join(", "));
            Answer::bad_input(words, &[trouble], false)
        }
    }
}
