//! What is kept but no longer reads: its name, its line in a list, and its own page.

use maud::{Markup, html};
use sunbu_core::case::{Person, Piece};
use sunbu_store::{Entry, Unread};
use sunbu_words::Words;

use super::form::Thing;
use crate::search::matches;

/// The name as it is kept; its number when it has none.
pub(crate) fn name(w: &Words, unread: &Unread) -> String {
    match unread.name().trim() {
        "" => w.with(
            "unread-nameless",
            &[("number", (&unread.id.to_string()).into())],
        ),
        name => name.to_owned(),
    }
}

/// The path of the pages of an entry.
pub(crate) fn path(unread: &Unread) -> String {
    let list = match unread.entry {
        Entry::Person => Person::PATH,
        Entry::Garment => Piece::PATH,
    };
    format!("{list}/{}", unread.id)
}

/// Those in whose stored name a search finds something.
pub(crate) fn found(unread: Vec<Unread>, sought: &str) -> Vec<Unread> {
    let found = |unread: &Unread| matches(sought, &[unread.name()]);
    unread.into_iter().filter(found).collect()
}

/// Those of a list by name, each with what is to be done; nothing when all read.
pub(crate) fn list(w: &Words, unread: &[Unread]) -> Markup {
    html! {
        @if !unread.is_empty() {
            h2 { (w.get("unread-title")) }
            ul.list {
                @for one in unread {
                    li {
                        a.grow href={ (path(one)) "/edit" } { (name(w, one)) }
                        span.reason { (w.with("unread-why", &[("count", one.problems.len().into())])) }
                    }
                }
            }
        }
    }
}

/// That the dresser's own entry does not read, so that other hands measure.
pub(crate) fn dresser(w: &Words, unread: &Unread) -> Markup {
    html! {
        p.notice {
            (w.with("unread-dresser", &[("name", (&name(w, unread)).into())])) " "
            a href={ (path(unread)) "/edit" } { (w.get("unread-mend")) }
        }
    }
}
