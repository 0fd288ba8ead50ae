//! What a report and its sheet both say: the way round, what to change, what is good.

use maud::{Markup, html};
use sunbu_core::check::Report;
use sunbu_core::dressing::Rules;
use sunbu_store::Photo;
use sunbu_words::{Advised, Words};

use super::{Checked, Read};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;

/// A check with everything that is said of it.
pub(crate) struct Told {
    /// Whom it shows.
    pub checked: Checked,
    /// Its photos, read as far as they are marked.
    pub read: Read,
    /// What they and the eye come to.
    pub report: Report,
    /// What to change, in words.
    pub advised: Vec<Advised>,
}

impl Told {
    /// Of the check of the path.
    ///
    /// # Errors
    /// [`Fault::NotFound`], or [`Fault::Kept`] when whom it shows no longer reads.
    pub fn look_up(room: &Room, ask: &Ask) -> Result<Self, Fault> {
        let checked = Checked::look_up(room, ask)?;
        let photos = room.store().photos(checked.check.row.id)?;
        let read = checked.read(photos);
        let report = checked.report(&read.readings());
        let advised = ask.words().advised(&report);
        Ok(Self {
            checked,
            read,
            report,
            advised,
        })
    }

    /// The number of the check.
    pub fn id(&self) -> i64 {
        self.checked.check.row.id
    }

    /// The rules it is judged by.
    pub fn rules(&self) -> &Rules {
        &self.checked.rules
    }

    /// Whether there is nothing to tell: no photo reads, and nothing was ticked.
    pub fn is_empty(&self) -> bool {
        self.read.read.is_empty() && self.checked.check.ticks.value.is_empty()
    }

    /// The photos that were read.
    pub fn photos(&self) -> impl Iterator<Item = &Photo> {
        self.read.read.iter().map(|(photo, _)| photo)
    }

    /// What is said after the last thing to change, or instead of one; none when all is told.
    pub fn more(&self, w: &Words) -> Option<String> {
        if self.advised.is_empty() {
            return Some(w.nothing_to_change(&self.report));
        }
        w.more(&self.report)
    }
}

/// Where there is nothing to tell: what to do next.
pub(crate) fn nothing_yet(w: &Words, check: i64) -> Markup {
    html! {
        section.notice {
            p { strong { (w.get("report-empty")) } }
            ul {
                li { (w.get("report-empty-photo")) }
                li { (w.get("report-empty-eye")) }
            }
            div.acts { a.button.main-act href={ "/checks/" (check) } { (w.get("report-to-check")) } }
        }
    }
}

/// What is said before all else: that right lies over left.
pub(crate) fn first_of_all(w: &Words, report: &Report) -> Markup {
    html! {
        @if let Some(way) = w.wrong_way(&report.wrong_way) {
            section.errors.first-of-all {
                h2 { "▲ " (w.get("check-h-way")) }
                p { (way) }
            }
        }
    }
}

/// What to change, in order, with `cautions` beside each where they are wanted.
pub(crate) fn to_change(w: &Words, told: &Told, cautions: bool) -> Markup {
    html! {
        @if !told.advised.is_empty() {
            ol.steps.changes {
                @for one in &told.advised {
                    li {
                        h3 { (one.title) }
                        p { (w.with("check-advice-why", &[("why", (&one.why).into())])) }
                        @if let Some(now) = &one.now {
                            p { (w.with("check-advice-now", &[("how", now.into())])) }
                        }
                        p { (w.with("check-advice-next", &[("how", (&one.practise).into())])) }
                        @if cautions {
                            @for &caution in &one.cautions { p.caution { (w.caution(caution)) } }
                        }
                    }
                }
            }
        }
        @if let Some(more) = told.more(w) { p.soft { (more) } }
        @if cautions && told.advised.iter().any(|one| !one.cautions.is_empty()) {
            p.soft { (w.cautions_note()) }
        }
    }
}
