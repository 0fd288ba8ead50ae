//! The pages through the router: request, status, whole answer.

#[path = "../photographed/mod.rs"]
mod photographed;

mod all;
mod border;
mod conflicts;
mod entries;
mod marking;
mod plans;
mod rules;
mod snapshots;
mod studio;
mod unread;
