//! Texts for people: each message is in English and in Japanese, with the same variables.

use std::collections::{BTreeMap, BTreeSet};

use fluent_syntax::ast::{
    CallArguments, Entry, Expression, InlineExpression, Pattern, PatternElement,
};
use fluent_syntax::parser;

use crate::File;

/// The languages, each with a folder of Fluent files below `locales/`.
const LANGUAGES: [&str; 2] = ["en", "ja"];

/// Names that are the same in every language.
const NAMES: [&str; 2] = ["Sunbu", "English"];

/// What one text of one language holds: a message, a term (with a hyphen before its name), or an
/// attribute of either (`message.attribute`).
#[derive(Debug, Default, PartialEq, Eq)]
struct Text {
    variables: BTreeSet<String>,
    references: BTreeSet<String>,
    /// The words alone, without what is filled in.
    words: String,
}

/// Messages that are missing in one language, that take other variables in one than in another,
/// that refer to a message that is not there, that stand in a file twice, that were left
/// untranslated, or that are no Fluent at all.
pub fn incomplete(files: &[File]) -> Vec<String> {
    let mut findings = Vec::new();
    let [english, japanese] = LANGUAGES.map(|language| read(files, language, &mut findings));
    for (here, texts, there, others) in [
        (LANGUAGES[0], &english, LANGUAGES[1], &japanese),
        (LANGUAGES[1], &japanese, LANGUAGES[0], &english),
    ] {
        for (id, text) in texts {
            if !others.contains_key(id) {
                findings.push(format!("{id}: in {here}, not in {there}"));
            }
            for unknown in text
                .references
                .iter()
                .filter(|known| !texts.contains_key(*known))
            {
                findings.push(format!(
                    "{id}: refers to {unknown}, which {here} does not have"
                ));
            }
        }
    }
    for (id, text) in &english {
        let Some(other) = japanese.get(id) else {
            continue;
        };
        if text.variables != other.variables {
            let (en, ja) = (list(&text.variables), list(&other.variables));
            findings.push(format!("{id}: takes {en} in en, {ja} in ja"));
        }
        if text.words == other.words && has_a_word(&text.words) {
            findings.push(format!(
                "{id}: the same words in both languages: {}",
                text.words
            ));
        }
    }
    findings
}

fn list(names: &BTreeSet<String>) -> String {
    let names: Vec<String> = names.iter().map(|name| format!("${name}")).collect();
    if names.is_empty() {
        "nothing".to_owned()
    } else {
        names.join(", ")
    }
}

/// Whether there is an English word in it, apart from [`NAMES`]: three small letters in a row.
fn has_a_word(words: &str) -> bool {
    let words = NAMES
        .iter()
        .fold(words.to_owned(), |words, name| words.replace(name, ""));
    words
        .as_bytes()
        .windows(3)
        .any(|three| three.iter().all(u8::is_ascii_lowercase))
}

fn read(files: &[File], language: &str, findings: &mut Vec<String>) -> BTreeMap<String, Text> {
    let folder = format!("locales/{language}/");
    let mut texts = BTreeMap::new();
    for file in files
        .iter()
        .filter(|file| file.path.starts_with(&folder) && file.has_ending(&["ftl"]))
    {
        let resource = match parser::parse(file.text().unwrap_or_default()) {
            Ok(resource) => resource,
            Err((resource, errors)) => {
                findings.extend(errors.iter().map(|error| format!("{}: {error}", file.path)));
                resource
            }
        };
        for entry in &resource.body {
            let (name, value, attributes) = match entry {
                Entry::Message(message) => (
                    message.id.name.to_owned(),
                    message.value.as_ref(),
                    &message.attributes,
                ),
                Entry::Term(term) => (
                    format!("-{}", term.id.name),
                    Some(&term.value),
                    &term.attributes,
                ),
                _ => continue,
            };
            let attributes = attributes
                .iter()
                .map(|attribute| (format!("{name}.{}", attribute.id.name), &attribute.value));
            let value = value.map(|value| (name.clone(), value));
            for (id, pattern) in value.into_iter().chain(attributes) {
                let mut text = Text::default();
                text.add(pattern);
                if texts.insert(id.clone(), text).is_some() {
                    findings.push(format!("{}: {id} is there before", file.path));
                }
            }
        }
    }
    texts
}

impl Text {
    fn add(&mut self, pattern: &Pattern<&str>) {
        for element in &pattern.elements {
            match element {
                PatternElement::TextElement { value } => self.words.push_str(value),
                PatternElement::Placeable { expression } => self.add_expression(expression),
            }
        }
    }

    fn add_expression(&mut self, expression: &Expression<&str>) {
        match expression {
            Expression::Inline(inline) => self.add_inline(inline),
            Expression::Select { selector, variants } => {
                self.add_inline(selector);
                for variant in variants {
                    self.add(&variant.value);
                }
            }
        }
    }

    fn add_inline(&mut self, inline: &InlineExpression<&str>) {
        let attributed = |name: String, attribute: Option<&str>| match attribute {
            Some(attribute) => format!("{name}.{attribute}"),
            None => name,
        };
        match inline {
            InlineExpression::VariableReference { id } => {
                self.variables.insert(id.name.to_owned());
            }
            InlineExpression::MessageReference { id, attribute } => {
                let attribute = attribute.as_ref().map(|attribute| attribute.name);
                self.references
                    .insert(attributed(id.name.to_owned(), attribute));
            }
            InlineExpression::TermReference {
                id,
                attribute,
                arguments,
            } => {
                let attribute = attribute.as_ref().map(|attribute| attribute.name);
                self.references
                    .insert(attributed(format!("-{}", id.name), attribute));
                arguments
                    .iter()
                    .for_each(|arguments| self.add_arguments(arguments));
            }
            InlineExpression::FunctionReference { arguments, .. } => self.add_arguments(arguments),
            InlineExpression::Placeable { expression } => self.add_expression(expression),
            InlineExpression::StringLiteral { .. } | InlineExpression::NumberLiteral { .. } => {}
        }
    }

    fn add_arguments(&mut self, arguments: &CallArguments<&str>) {
        arguments
            .positional
            .iter()
            .for_each(|argument| self.add_inline(argument));
        arguments
            .named
            .iter()
            .for_each(|argument| self.add_inline(&argument.value));
    }
}

#[cfg(test)]
mod tests {
    use super::incomplete;
    use crate::File;

    fn findings(english: &str, japanese: &str) -> Vec<String> {
        incomplete(&[
            File::new("locales/en/a.ftl", english),
            File::new("locales/ja/a.ftl", japanese),
        ])
    }

    #[test]
    fn two_languages_that_say_the_same_are_left_alone() {
        let english = "-brand = Sunbu\n\
                       title = { -brand }: the hem\n\
                       hem = Hem { $height } cm\n    .hint = Above the floor\n\
                       count = { $n ->\n    [one] one garment\n   *[other] { $n } garments\n}\n\
                       unit = cm\n";
        let japanese = "-brand = Sunbu\n\
                        title = { -brand }：裾\n\
                        hem = 裾 { NUMBER($height, maximumFractionDigits: 1) } cm\n    .hint = 床から\n\
                        count = { $n } 着\n\
                        unit = cm\n";
        assert_eq!(findings(english, japanese), [""; 0]);
    }

    #[test]
    fn a_message_or_an_attribute_that_one_language_lacks_is_found() {
        assert_eq!(
            findings("a = One\n    .b = Two\nc = Three\n", "a = 一\nd = 四\n"),
            [
                "a.b: in en, not in ja",
                "c: in en, not in ja",
                "d: in ja, not in en"
            ]
        );
    }

    #[test]
    fn other_variables_are_found_also_inside_variants_and_calls() {
        assert_eq!(
            findings(
                "a = { $n ->\n   *[other] Up by { $by }\n}\nb = Flat\n",
                "a = { NUMBER($n) } 上げる\nb = 平ら { $x }\n"
            ),
            [
                "a: takes $by, $n in en, $n in ja",
                "b: takes nothing in en, $x in ja"
            ]
        );
    }

    #[test]
    fn references_to_nothing_repeated_messages_and_text_that_is_no_fluent_are_found() {
        let found = findings("a = { -brand } hem\n", "a = 裾 { b }\na = 裾\n");
        assert!(
            found.contains(&"a: refers to -brand, which en does not have".to_owned()),
            "{found:?}"
        );
        assert!(
            found.contains(&"locales/ja/a.ftl: a is there before".to_owned()),
            "{found:?}"
        );
        let found = findings("a = Hem {\n", "a = 裾\n");
        assert!(
            found
                .iter()
                .any(|line| line.starts_with("locales/en/a.ftl: ")),
            "{found:?}"
        );
    }

    #[test]
    fn a_message_left_in_english_is_found_and_a_name_is_not() {
        assert_eq!(
            findings(
                "a = The hem\nb = Sunbu\nc = { $x } cm\n",
                "a = The hem\nb = Sunbu\nc = { $x } cm\n"
            ),
            ["a: the same words in both languages: The hem"]
        );
    }
}
