//! The pages through the router: request, status, whole answer.

mod all;
mod border;
mod checks;
mod conflicts;
#[path = "../support/dressed.rs"]
mod dressed;
mod entries;
mod marking;
mod plans;
mod reports;
mod rules;
mod snapshots;
mod studio;
mod unread;
