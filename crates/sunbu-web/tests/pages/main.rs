//! The pages through the router: request, status, whole answer.

mod all;
mod border;
mod checks;
mod conflicts;
mod entries;
mod plans;
mod rules;
mod snapshots;
mod studio;
mod unread;
