//! Everything the program says, in English and Japanese, through Fluent.
//!
//! [`Words`] of a [`Lang`] gives a message by its id and knows how to say the core's values: names
//! of keyed members, numbers with unit and trust, wishes met or missed, ways out, steps, problems.
//! The texts are the files below `locales/`, built in. Asking for an id that no file has stops a
//! debug build, and so every test that comes by; a released one shows the id.

mod advice;
mod catalogue;
mod check;
mod faults;
mod form;
mod lang;
mod names;
mod nothing;
mod numbers;
mod photo;
mod picture;
mod plan;
mod problems;
mod report;
mod steps;
mod wish;

pub use advice::Advised;
pub use catalogue::{Arg, Words};
pub use lang::Lang;
pub use report::Section;
