//! Two browsers editing the same thing: what each changed, and which of both to keep.
//!
//! A form carries, unseen, every field as it was when the form was filled. So three versions are
//! known when the later browser saves: the one both started from, its own, and the one saved
//! meanwhile. A line that only one of them changed is chosen beforehand for the one that changed
//! it; a line that both changed is chosen by hand.

use maud::{Markup, html};
use sunbu_core::case::Fields;
use sunbu_words::Words;

use crate::ask::Ask;
use crate::entry::{REVISION, typed};
use crate::parts::{Wrong, field_faults, field_id, is_bad};

/// Before the name of a field: which of two versions of it to keep. A line that asks sends it
/// once empty, so that a line without a choice is told from a line that was never asked.
const PICK: &str = "pick.";

/// Before the name of a field: its text when the form was filled.
const WAS: &str = "was.";

/// Whether a field of a form belongs to this file, not to the thing itself.
pub(crate) fn is_ours(name: &str) -> bool {
    name.starts_with(PICK) || name.starts_with(WAS)
}

/// Every field as it was when the form was filled; empty when the form does not say.
pub(crate) fn was(ask: &Ask) -> Fields {
    let was = ask.form().iter();
    was.filter_map(|(name, text)| Some((name.strip_prefix(WAS)?.to_owned(), text.clone())))
        .collect()
}

/// The hidden fields that say how every field was.
pub(crate) fn was_inputs(was: &Fields) -> Markup {
    html! {
        @for (name, text) in was { input type="hidden" name={ (WAS) (name) } value=(text); }
    }
}

/// Which version of a line to keep.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Pick {
    Mine,
    Theirs,
}

impl Pick {
    const ALL: [Self; 2] = [Self::Mine, Self::Theirs];

    fn key(self) -> &'static str {
        match self {
            Self::Mine => "mine",
            Self::Theirs => "theirs",
        }
    }

    fn words(self) -> &'static str {
        match self {
            Self::Mine => "conflict-mine",
            Self::Theirs => "conflict-theirs",
        }
    }
}

/// The lines of a form of conflicts with what was chosen in each; none where nothing was.
#[derive(Debug, Default)]
pub(crate) struct Picks(std::collections::BTreeMap<String, Option<Pick>>);

impl Picks {
    /// What a form says.
    pub fn read(ask: &Ask) -> Self {
        let mut picks = Self::default();
        for (name, choice) in ask.form() {
            let Some(field) = name.strip_prefix(PICK) else {
                continue;
            };
            let line = picks.0.entry(field.to_owned()).or_default();
            *line = Pick::ALL
                .into_iter()
                .find(|pick| pick.key() == choice)
                .or(*line);
        }
        picks
    }

    /// The lines in which nothing was chosen.
    pub fn open(&self) -> impl Iterator<Item = &str> {
        let open = self.0.iter().filter(|(_, pick)| pick.is_none());
        open.map(|(field, _)| field.as_str())
    }

    /// Only the lines in which nothing was chosen: what is asked again between newer versions.
    #[must_use]
    pub fn only_open(mut self) -> Self {
        self.0.retain(|_, pick| pick.is_none());
        self
    }

    /// What was typed, with the other browser's text in the fields where that was chosen.
    pub fn apply(&self, ask: &Ask, theirs: &Fields) -> Fields {
        let mut mine = typed(ask);
        for (field, pick) in &self.0 {
            if *pick != Some(Pick::Theirs) {
                continue;
            }
            match theirs.get(field) {
                Some(text) => mine.insert(field.clone(), text.clone()),
                None => mine.remove(field),
            };
        }
        mine
    }
}

/// Two versions of one thing, side by side, where they differ; every line is to be chosen.
pub(crate) struct Conflict<'a> {
    /// The version both started from; none when the form did not say.
    pub base: Option<&'a Fields>,
    /// What this browser sent.
    pub mine: &'a Fields,
    /// What another one saved before it.
    pub theirs: &'a Fields,
    /// What was chosen already.
    pub picks: &'a Picks,
    /// The version of theirs.
    pub revision: i64,
    /// Where the form goes.
    pub action: &'a str,
    /// Where theirs can be looked at.
    pub show: &'a str,
}

/// The text of a field; empty when it was left out.
fn text<'a>(fields: &'a Fields, name: &str) -> &'a str {
    fields.get(name).map_or("", String::as_str)
}

impl Conflict<'_> {
    /// The names of the fields in which both differ.
    pub fn differ(&self) -> Vec<&str> {
        let names = self.mine.keys().chain(self.theirs.keys());
        let mut names: Vec<&str> = names
            .map(String::as_str)
            .filter(|name| text(self.mine, name).trim() != text(self.theirs, name).trim())
            .collect();
        names.sort_unstable();
        names.dedup();
        names
    }

    /// What is chosen in a line: what was chosen by hand, else the one version that was changed.
    fn pick(&self, name: &str) -> Option<Pick> {
        if let Some(pick) = self.picks.0.get(name) {
            return *pick;
        }
        let base = self.base?;
        let changed = |fields: &Fields| text(fields, name).trim() != text(base, name).trim();
        match (changed(self.mine), changed(self.theirs)) {
            (true, false) => Some(Pick::Mine),
            (false, true) => Some(Pick::Theirs),
            _ => None,
        }
    }

    /// The form; `label` names a field in words, `wrongs` are the lines in which a choice is
    /// missing.
    pub fn form(&self, w: &Words, label: impl Fn(&str) -> String, wrongs: &[Wrong]) -> Markup {
        html! {
            form method="post" action=(self.action) data-keep="unsaved" novalidate {
                input type="hidden" name=(REVISION) value=(self.revision);
                // What is chosen here is chosen between mine and this version of theirs.
                (was_inputs(self.theirs))
                @for (name, value) in self.mine {
                    input type="hidden" name=(name) value=(value);
                }
                table.cards {
                    caption { (w.get("conflict-caption")) }
                    thead {
                        tr {
                            th scope="col" { (w.get("conflict-field")) }
                            @for pick in Pick::ALL { th scope="col" { (w.get(pick.words())) } }
                        }
                    }
                    tbody { @for name in self.differ() { (self.row(w, name, &label(name), wrongs)) } }
                }
                div.acts {
                    button.main-act { (w.get("conflict-save")) }
                    a.button href=(self.show) { (w.get("conflict-leave")) }
                }
            }
        }
    }

    fn row(&self, w: &Words, name: &str, label: &str, wrongs: &[Wrong]) -> Markup {
        let (id, bad, chosen) = (field_id(name), is_bad(wrongs, name), self.pick(name));
        let field = format!("{PICK}{name}");
        html! {
            tr.bad[bad] {
                th scope="row" {
                    (label)
                    (field_faults(wrongs, name))
                    input type="hidden" name=(field) value="";
                }
                @for pick in Pick::ALL {
                    @let value = text(if pick == Pick::Mine { self.mine } else { self.theirs }, name);
                    td data-name=(w.get(pick.words())) {
                        label.keep {
                            // A fault leads to the first of the two.
                            input type="radio" id=[(pick == Pick::Mine).then_some(&id)] name=(field)
                                value=(pick.key()) checked[chosen == Some(pick)]
                                aria-describedby=[bad.then(|| format!("{id}-wrong"))];
                            span.hidden-label { (label) ", " (w.get(pick.words())) ": " }
                            @if value.is_empty() { (w.get("conflict-empty")) } @else { (value) }
                        }
                    }
                }
            }
        }
    }
}
