//! What the eye saw: the faults that no mark shows, by where they lie.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::fault::{Area, Catalogue, Fault, Ticks};
use sunbu_store::{Check, StoreError};
use sunbu_words::Words;

use super::show::{Refused, draw};
use crate::answer::go;
use crate::app::Room;
use crate::ask::Ask;
use crate::entry::{REVISION, revision};
use crate::error;

/// Ticks as they were sent and were not kept, since somebody else saved others meanwhile.
pub(crate) struct Sent {
    ticks: Ticks,
}

/// Keeps what the eye saw.
pub(crate) fn save(room: &Room, ask: &Ask) -> Result<Response, error::Fault> {
    let check = ask.id("check").ok_or(error::Fault::NotFound)?;
    let sent = ask.form().iter().filter(|(name, _)| name == "seen");
    let ticks: Ticks = sent.filter_map(|(_, key)| Fault::from_key(key)).collect();
    let from = revision(ask).unwrap_or(0);
    let kept = room.store().save_ticks(check, from, &ticks);
    match kept {
        Ok(()) => Ok(go(&format!("/checks/{check}?done=saved"))),
        Err(StoreError::Stale { .. }) => {
            let refused = Refused {
                eye: Some(Sent { ticks }),
                ..Refused::default()
            };
            draw(room, ask, StatusCode::CONFLICT, &refused)
        }
        Err(other) => Err(other.into()),
    }
}

/// The list with its ticks; of what was sent and not kept, both are ticked and each is told.
pub(crate) fn part(w: &Words, check: &Check, sent: Option<&Sent>) -> Markup {
    let kept = &check.ticks.value;
    let mine = sent.map_or(kept, |sent| &sent.ticks);
    let all: Ticks = kept.union(mine).copied().collect();
    html! {
        h2 #eye { (w.get("checks-eye")) }
        @if sent.is_some() {
            section.errors role="alert" tabindex="-1" { p { (w.get("checks-eye-stale")) } }
        }
        p { (w.get("checks-eye-how")) }
        form method="post" action={ "/checks/" (check.row.id) "/seen" } {
            input type="hidden" name=(REVISION) value=(check.ticks.revision);
            @for &area in Area::ALL {
                @let rows = rows(area, &all);
                @let ticked = rows.iter().filter(|fault| all.contains(fault)).count();
                details open[ticked > 0] {
                    summary {
                        (w.fault_area(area))
                        @if ticked > 0 { " · " (w.with("checks-eye-count", &[("count", ticked.into())])) }
                    }
                    ul.ticks {
                        @for fault in rows { (tick(w, fault, kept, mine, &all)) }
                    }
                }
            }
            div.acts { button { (w.get("checks-eye-save")) } }
        }
    }
}

/// The faults of an area that only the eye judges, and any other that was ticked.
fn rows(area: Area, ticked: &Ticks) -> Vec<Fault> {
    let catalogue = Catalogue::shipped();
    let shown = |fault: &Fault| {
        let entry = catalogue.entry(*fault);
        entry.area == area && (entry.by_eye() || ticked.contains(fault))
    };
    Fault::ALL.iter().copied().filter(shown).collect()
}

fn tick(w: &Words, fault: Fault, kept: &Ticks, mine: &Ticks, all: &Ticks) -> Markup {
    let whose = match (kept.contains(&fault), mine.contains(&fault)) {
        (true, false) => Some("checks-eye-theirs"),
        (false, true) => Some("checks-eye-mine"),
        _ => None,
    };
    html! {
        li {
            label {
                input type="checkbox" name="seen" value=(fault.key()) checked[all.contains(&fault)];
                span {
                    strong { (w.fault_name(fault)) }
                    @if let Some(id) = whose { " (" (w.get(id)) ")" }
                    span.small { (w.fault_sign(fault)) }
                }
            }
        }
    }
}
