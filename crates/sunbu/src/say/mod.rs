//! The answers in words, as pages of text.

pub mod check;
pub mod plan;
pub mod rank;
