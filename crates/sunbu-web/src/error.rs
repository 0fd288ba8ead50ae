//! What can go wrong with a request, and the page that says so.
//!
//! Each layer knows its own errors: the core what is wrong with measures, the store what with
//! rows, and only this file which status that is. A fault of the asker gets words for people; a
//! fault of ours is logged by route and kind and shown plainly, without a driver's words. Neither
//! says what was typed or kept: a log may be read by others than the studio.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::problem::Problem;
use sunbu_store::{PlanRow, StoreError, Unread};
use sunbu_words::Words;

use crate::answer::page_with;
use crate::ask::Ask;
use crate::pages::{day, unread};
use crate::parts::{Frame, Here, frame};

/// A kept plan that does not read, with what can still be said of it.
#[derive(Debug)]
pub(crate) struct UnreadPlan {
    /// As it stands in lists.
    pub row: PlanRow,
    /// The choices of the page it was made on, as they are kept.
    pub query: String,
    /// Everything that is wrong with it.
    pub problems: Vec<Problem>,
}

/// Why a request got no answer of its own.
#[derive(Debug)]
pub(crate) enum Fault {
    /// There is nothing at this address, or no longer.
    NotFound,
    /// The page knows another way of asking: mostly an address typed by hand that a form posts to.
    WrongMethod,
    /// A value in the address cannot be taken, and nothing is drawn in its place.
    Unread {
        /// What is wrong, each with the name of its field.
        told: Vec<(String, String)>,
        /// The page on which it can be mended.
        back: String,
    },
    /// What is kept contradicts itself; commonest cause: it was kept by an older version with
    /// wider limits. The way out is to edit it.
    Kept(Vec<Problem>),
    /// A person or garment that is needed does not read as it is kept. The way out is its form.
    Unreadable(Box<Unread>),
    /// A kept plan does not read. It stays as it is kept, and can be erased.
    Plan(Box<UnreadPlan>),
    /// Another program holds the store's file.
    InUse,
    /// It is erased, but its bytes may still lie in the file.
    Traces,
    /// The studio's own rules as they are kept no longer stand. The way out is to mend them as
    /// text, or to take them back.
    Standard,
    /// The store failed; commonest cause: a full disk.
    Store(StoreError),
    /// A handler panicked: a mistake of ours.
    Broken,
}

impl From<StoreError> for Fault {
    fn from(error: StoreError) -> Self {
        match error {
            StoreError::NotFound { .. } => Self::NotFound,
            StoreError::InUse => Self::InUse,
            StoreError::Traces(_) => Self::Traces,
            StoreError::Standard(_) => Self::Standard,
            StoreError::Unfit(problems) => Self::Kept(problems),
            StoreError::Unreadable(unread) => Self::Unreadable(unread),
            other => Self::Store(other),
        }
    }
}

impl From<Vec<Problem>> for Fault {
    fn from(problems: Vec<Problem>) -> Self {
        Self::Kept(problems)
    }
}

impl Fault {
    /// The kind of a fault of ours; none when it is the asker's or the way out is on the page.
    fn logged(&self) -> Option<&'static str> {
        match self {
            Self::Store(error) => Some(error.kind()),
            Self::Standard => Some("unreadable standard"),
            Self::Broken => Some("a mistake of the program"),
            _ => None,
        }
    }

    /// The page that says what is wrong and what to do.
    pub fn page(&self, ask: &Ask) -> Response {
        if let Some(kind) = self.logged() {
            eprintln!("{}: {kind}", ask.route);
        }
        let (status, id) = match self {
            Self::NotFound => (StatusCode::NOT_FOUND, "error-not-found"),
            Self::WrongMethod => (StatusCode::METHOD_NOT_ALLOWED, "error-method"),
            Self::Unread { .. } => (StatusCode::UNPROCESSABLE_ENTITY, "error-unread"),
            Self::Kept(_) => (StatusCode::CONFLICT, "error-kept"),
            Self::Unreadable(_) => (StatusCode::CONFLICT, "error-unreadable"),
            Self::Plan(_) => (StatusCode::CONFLICT, "error-plan"),
            Self::InUse => (StatusCode::SERVICE_UNAVAILABLE, "error-in-use"),
            Self::Traces => (StatusCode::INTERNAL_SERVER_ERROR, "error-traces"),
            Self::Standard => (StatusCode::CONFLICT, "error-standard"),
            Self::Store(_) | Self::Broken => (StatusCode::INTERNAL_SERVER_ERROR, "error-ours"),
        };
        let w = ask.words();
        let title = w.get(&format!("{id}.title"));
        let body = html! {
            h1 { (title) }
            p { (w.get(id)) }
            (self.way_out(w))
            p { a href="/" { (w.get("error-home")) } }
        };
        page_with(status, frame(ask, &Frame::new(&title, Here::Home), &body))
    }

    /// What exactly is wrong and where it is mended; nothing where the words say it all.
    fn way_out(&self, w: &Words) -> Markup {
        match self {
            Self::Kept(problems) => listed(w, problems),
            Self::Unread { told, back } => html! {
                ul { @for (field, sentence) in told { li { strong { (field) } ": " (sentence) } } }
                p { a href=(back) { (w.get("print-back")) } }
            },
            Self::Unreadable(unread) => {
                let path = unread::path(unread);
                html! {
                    h2 { (unread::name(w, unread)) }
                    (listed(w, &unread.problems))
                    div.acts {
                        a.button.main-act href={ (path) "/edit" } { (w.get("unread-mend")) }
                        a.button.grave href={ (path) "/erase" } { (w.get("erase")) }
                    }
                }
            }
            Self::Plan(plan) => plan_way_out(w, plan),
            Self::Standard => html! {
                div.acts {
                    a.button.main-act href="/rules/toml" { (w.get("rules-toml")) }
                    a.button.grave href="/rules/reset" { (w.get("rules-reset")) }
                }
            },
            _ => html! {},
        }
    }
}

fn listed(w: &Words, problems: &[Problem]) -> Markup {
    html! { ul { @for problem in problems { li { (w.problem(problem)) } } } }
}

/// What is still known of a plan that does not read; it can be planned again while person and
/// garment are there.
fn plan_way_out(w: &Words, plan: &UnreadPlan) -> Markup {
    let UnreadPlan {
        row,
        query,
        problems,
    } = plan;
    let again = row.person_id.zip(row.garment_id);
    html! {
        h2 { (row.title) }
        p { (row.person) " · " (row.garment) " · " (day(&row.made_at)) }
        (listed(w, problems))
        div.acts {
            @if let Some((person, garment)) = again {
                a.button.main-act href={ "/people/" (person) "/in/" (garment) "?" (query) } {
                    (w.get("saved-reopen"))
                }
            }
            a.button.grave href={ "/plans/" (row.id) "/erase" } { (w.get("erase")) }
        }
        p { a href="/plans" { (w.get("saved-title")) } }
    }
}
