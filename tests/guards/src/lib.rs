//! Rules of the house that no compiler checks.
//!
//! Each guard takes the repository's [`File`]s and returns its findings, one a line, empty when
//! all is well. The tests beside each guard show that it finds what it is there to find; the tests
//! in `tests/` hold the repository to it.

pub mod book;
pub mod layers;
pub mod links;
pub mod matter;
pub mod messages;
mod repository;

pub use repository::{File, files};
