//! The built-in message files and looking messages up in them.

use std::sync::OnceLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use fluent_syntax::ast::Pattern;
use unic_langid::LanguageIdentifier;

use crate::Lang;

/// The message files of one language; the names are the same in each.
macro_rules! files {
    ($lang:literal) => {
        files!($lang: "names", "numbers", "plan", "steps", "problems", "draw", "web", "cli",
            "faults", "photo", "check", "checks", "marking", "report")
    };
    ($lang:literal: $($name:literal),+) => {
        &[$((
            concat!($lang, "/", $name, ".ftl"),
            include_str!(concat!("../../../locales/", $lang, "/", $name, ".ftl")),
        )),+]
    };
}

const ENGLISH: &[(&str, &str)] = files!("en");
const JAPANESE: &[(&str, &str)] = files!("ja");

/// What a message fills in. Numbers come as text, already rounded, see [`Words::cm`].
#[derive(Debug, Clone, PartialEq)]
pub enum Arg<'a> {
    /// A text, put in as it is.
    Text(&'a str),
    /// How many of something: it also chooses singular or plural.
    Count(usize),
}

impl<'a> From<&'a str> for Arg<'a> {
    fn from(text: &'a str) -> Self {
        Arg::Text(text)
    }
}

impl<'a> From<&'a String> for Arg<'a> {
    fn from(text: &'a String) -> Self {
        Arg::Text(text)
    }
}

impl From<usize> for Arg<'_> {
    fn from(count: usize) -> Self {
        Arg::Count(count)
    }
}

/// All messages of one language.
pub struct Words {
    lang: Lang,
    bundle: FluentBundle<FluentResource>,
}

impl Words {
    /// The words of a language, read once.
    ///
    /// # Panics
    /// Never in a released build: the tests read every file of every language.
    pub fn of(lang: Lang) -> &'static Words {
        static WORDS: [OnceLock<Words>; 2] = [OnceLock::new(), OnceLock::new()];
        WORDS[lang as usize].get_or_init(|| {
            Words::read(lang).unwrap_or_else(|errors| panic!("{}", errors.join("\n")))
        })
    }

    fn read(lang: Lang) -> Result<Words, Vec<String>> {
        let files = match lang {
            Lang::En => ENGLISH,
            Lang::Ja => JAPANESE,
        };
        let id: LanguageIdentifier = lang
            .code()
            .parse()
            .map_err(|e| vec![format!("{}: {e}", lang.code())])?;
        let mut bundle = FluentBundle::new_concurrent(vec![id]);
        // The marks that isolate text directions show as boxes in terminals and files.
        bundle.set_use_isolating(false);
        let mut errors = Vec::new();
        for (name, text) in files {
            match FluentResource::try_new((*text).to_owned()) {
                Ok(resource) => {
                    if let Err(doubles) = bundle.add_resource(resource) {
                        errors.extend(doubles.into_iter().map(|e| format!("{name}: {e}")));
                    }
                }
                Err((_, found)) => errors.extend(found.iter().map(|e| format!("{name}: {e}"))),
            }
        }
        if errors.is_empty() {
            Ok(Words { lang, bundle })
        } else {
            Err(errors)
        }
    }

    /// Which language it is.
    pub fn lang(&self) -> Lang {
        self.lang
    }

    /// The language's own name.
    pub fn language_name(&self) -> String {
        self.get("language-name")
    }

    /// The message of this id, which fills in nothing. `message.attribute` is its attribute.
    ///
    /// # Panics
    /// In a debug build, when there is no such message or it wants to fill something in; a
    /// release build then shows the id.
    pub fn get(&self, id: &str) -> String {
        self.with(id, &[])
    }

    /// The message of this id with its arguments filled in. `message.attribute` is its attribute.
    ///
    /// # Panics
    /// In a debug build, when there is no such message or an argument of it is not given; a
    /// release build then shows the id.
    pub fn with(&self, id: &str, args: &[(&str, Arg<'_>)]) -> String {
        match self.lookup(id, args) {
            Some(text) => text,
            None => {
                debug_assert!(
                    false,
                    "no message {id} with {args:?} in {}",
                    self.lang.code()
                );
                id.to_owned()
            }
        }
    }

    /// Whether there is a message (or `message.attribute`) of this id.
    pub fn has(&self, id: &str) -> bool {
        self.pattern(id).is_some()
    }

    fn pattern(&self, id: &str) -> Option<&Pattern<&str>> {
        match id.split_once('.') {
            None => self.bundle.get_message(id)?.value(),
            Some((id, attribute)) => Some(
                self.bundle
                    .get_message(id)?
                    .get_attribute(attribute)?
                    .value(),
            ),
        }
    }

    fn lookup(&self, id: &str, args: &[(&str, Arg<'_>)]) -> Option<String> {
        let mut filled = FluentArgs::with_capacity(args.len());
        for (name, arg) in args {
            match arg {
                Arg::Text(text) => filled.set(*name, FluentValue::from(*text)),
                Arg::Count(count) => filled.set(*name, FluentValue::from(*count)),
            }
        }
        let mut errors = Vec::new();
        let text = self
            .bundle
            .format_pattern(self.pattern(id)?, Some(&filled), &mut errors);
        errors.is_empty().then(|| text.into_owned())
    }
}

impl std::fmt::Debug for Words {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_tuple("Words").field(&self.lang).finish()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_file_of_every_language_is_read_without_complaint() {
        for &lang in Lang::ALL {
            let words = Words::of(lang);
            assert_eq!(words.lang(), lang);
            assert!(!words.language_name().is_empty());
        }
        assert_ne!(
            Words::of(Lang::En).language_name(),
            Words::of(Lang::Ja).language_name()
        );
    }

    #[test]
    fn filled_in_text_carries_no_isolating_marks() {
        let text = Words::of(Lang::En).with("cm", &[("value", "3".into())]);
        assert_eq!(text, "3 cm");
    }

    #[test]
    fn an_unknown_message_or_a_missing_argument_gives_nothing() {
        let words = Words::of(Lang::Ja);
        assert_eq!(words.lookup("no-such-message", &[]), None);
        assert_eq!(words.lookup("cm.no-such-attribute", &[]), None);
        assert_eq!(words.lookup("cm", &[]), None);
    }
}
