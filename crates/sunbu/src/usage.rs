//! What is wrong with the arguments themselves, in the language of the run.

use clap::Error;
use clap::error::{ContextKind, ContextValue, ErrorKind};
use sunbu_words::Words;

/// The complaint about arguments that the command tree does not take, with the way to the help.
pub fn complaint(words: &Words, error: &Error) -> String {
    let of = |kind: ContextKind| match error.get(kind) {
        Some(ContextValue::String(text)) => text.clone(),
        Some(ContextValue::Strings(texts)) => texts.join(", "),
        _ => String::new(),
    };
    let (what, value) = (of(ContextKind::InvalidArg), of(ContextKind::InvalidValue));
    let known = of(ContextKind::ValidValue);
    let sentence = match error.kind() {
        ErrorKind::InvalidSubcommand => {
            let name = of(ContextKind::InvalidSubcommand);
            words.with("usage-no-command", &[("name", (&name).into())])
        }
        // With no argument at all the help is what is missing.
        ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => return error.to_string(),
        ErrorKind::MissingSubcommand => words.get("usage-which-command"),
        ErrorKind::UnknownArgument => words.with("usage-unknown", &[("what", (&what).into())]),
        ErrorKind::MissingRequiredArgument => {
            words.with("usage-missing", &[("what", (&what).into())])
        }
        ErrorKind::ArgumentConflict => words.with("usage-conflict", &[("what", (&what).into())]),
        ErrorKind::InvalidValue if value.is_empty() => {
            words.with("usage-no-value", &[("what", (&what).into())])
        }
        ErrorKind::InvalidValue if !known.is_empty() => {
            let args = [
                ("what", (&what).into()),
                ("value", (&value).into()),
                ("known", (&known).into()),
            ];
            words.with("usage-bad-value", &args)
        }
        ErrorKind::InvalidUtf8 => words.get("usage-not-text"),
        // The rest comes with a reason of its own, in English.
        _ => {
            let why = error.to_string();
            let why = why
                .lines()
                .next()
                .unwrap_or_default()
                .trim_start_matches("error: ");
            words.with("usage-other", &[("why", why.into())])
        }
    };
    format!("{sentence}\n{}\n", words.get("usage-see-help"))
}
