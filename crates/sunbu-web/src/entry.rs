//! Entering people and garments: fields of a form and what is wrong with them.
//!
//! A form is a table of texts. It comes back with every text as it was typed until the store has
//! taken it; nothing typed is ever dropped.

use maud::{Markup, html};
use sunbu_core::case::Fields;
use sunbu_core::measure::{Notation, Script, Shaku, Unit, format_length, parse_length};
use sunbu_words::{Lang, Words};

use crate::ask::Ask;
use crate::conflict::is_ours;
use crate::parts::{Wrong, field_faults, field_id, is_bad};

/// Name of the hidden field that says which version of a thing the form was filled from.
pub(crate) const REVISION: &str = "revision";

/// A form with what was typed and what is wrong with it.
pub(crate) struct Entry<'a> {
    /// The words of the page.
    pub words: &'static Words,
    /// Every field as it is to be shown.
    pub fields: &'a Fields,
    /// What is wrong.
    pub wrongs: &'a [Wrong],
}

impl Entry<'_> {
    /// The text of a field, empty when there is none.
    pub fn text(&self, name: &str) -> &str {
        self.fields.get(name).map_or("", String::as_str)
    }

    /// Whether anything was typed into a field or is wrong with it.
    pub fn touched(&self, name: &str) -> bool {
        let typed = |name: &str| !self.text(name).is_empty();
        typed(name) || typed(&format!("{name}.sd")) || is_bad(self.wrongs, name)
    }

    /// One line of text.
    pub fn line(&self, name: &str, label: &str, required: bool) -> Markup {
        let id = field_id(name);
        html! {
            div.field.bad[is_bad(self.wrongs, name)] {
                label for=(id) { (label) }
                (field_faults(self.wrongs, name))
                input.wide type="text" id=(id) name=(name) value=(self.text(name)) required[required]
                    autocomplete="off" aria-invalid=[self.invalid(name)]
                    aria-describedby=[self.wrong(name)];
            }
        }
    }

    /// Several lines of text.
    pub fn lines(&self, name: &str, label: &str) -> Markup {
        let id = field_id(name);
        html! {
            div.field.bad[is_bad(self.wrongs, name)] {
                label for=(id) { (label) }
                (field_faults(self.wrongs, name))
                textarea id=(id) name=(name) rows="3" aria-invalid=[self.invalid(name)]
                    aria-describedby=[self.wrong(name)] { "\n" (self.text(name)) }
            }
        }
    }

    /// One of a few: key and words of each.
    pub fn choice(
        &self,
        name: &str,
        label: &str,
        choices: &[(&str, String)],
        usual: &str,
    ) -> Markup {
        let chosen = Some(self.text(name))
            .filter(|text| !text.is_empty())
            .unwrap_or(usual);
        html! {
            fieldset.field.bad[is_bad(self.wrongs, name)] id=(field_id(name)) tabindex="-1" {
                legend { (label) }
                (field_faults(self.wrongs, name))
                div.pick {
                    @for (key, words) in choices {
                        label {
                            input type="radio" name=(name) value=(key) checked[*key == chosen];
                            (words)
                        }
                    }
                }
            }
        }
    }

    /// A length with how it is taken, its deviation, and how it reads in both units.
    pub fn length(&self, name: &str, label: &str, how: &str) -> Markup {
        let (id, sd) = (field_id(name), format!("{name}.sd"));
        let sd_id = field_id(&sd);
        let w = self.words;
        let described = [
            Some(format!("{id}-how")),
            self.wrong(name),
            Some(format!("{id}-read")),
        ];
        let described: Vec<String> = described.into_iter().flatten().collect();
        html! {
            div.field.bad[is_bad(self.wrongs, name) || is_bad(self.wrongs, &sd)] {
                label for=(id) { (label) }
                p.how id={ (id) "-how" } { (how) }
                (field_faults(self.wrongs, name))
                (field_faults(self.wrongs, &sd))
                div.row {
                    input type="text" id=(id) name=(name) value=(self.text(name)) autocomplete="off"
                        data-length aria-invalid=[self.invalid(name)]
                        aria-describedby=(described.join(" "));
                    label.sd for=(sd_id) {
                        "±" span.hidden-label { (w.with("deviation-of", &[("what", label.into())])) }
                        input type="text" id=(sd_id) name=(sd) value=(self.text(&sd))
                            autocomplete="off" aria-invalid=[self.invalid(&sd)]
                            aria-describedby=[self.wrong(&sd)];
                    }
                    output id={ (id) "-read" } for=(id) { (reading(w, self.text(name))) }
                }
            }
        }
    }

    fn invalid(&self, name: &str) -> Option<&'static str> {
        is_bad(self.wrongs, name).then_some("true")
    }

    fn wrong(&self, name: &str) -> Option<String> {
        is_bad(self.wrongs, name).then(|| format!("{}-wrong", field_id(name)))
    }
}

/// How a typed length reads in both units; empty when nothing was typed or it cannot be read.
pub(crate) fn reading(w: &Words, typed: &str) -> String {
    let Ok(written) = parse_length(typed, Shaku::Kujira) else {
        return String::new();
    };
    both_units(w, written.length)
}

/// A length in centimetres and in kujira-shaku.
pub(crate) fn both_units(w: &Words, length: sunbu_core::measure::Length) -> String {
    let notation = Notation::fine(script(w.lang()));
    let [cm, shaku] =
        [Unit::Centimetre, Unit::KujiraShaku].map(|unit| format_length(length, unit, notation));
    format!("{cm} = {shaku}")
}

/// The letters in which a language writes shaku.
pub(crate) fn script(lang: Lang) -> Script {
    match lang {
        Lang::En => Script::Latin,
        Lang::Ja => Script::Kanji,
    }
}

/// The fields of a form that belong to the thing itself, as they were typed.
pub(crate) fn typed(ask: &Ask) -> Fields {
    let own = |name: &str| name != REVISION && !is_ours(name);
    ask.form()
        .iter()
        .filter(|(name, _)| own(name))
        .cloned()
        .collect()
}

/// The version the form was filled from; none when it says none.
pub(crate) fn revision(ask: &Ask) -> Option<i64> {
    ask.sent(REVISION)?.parse().ok()
}
