//! The pages in a real browser: every one of them on a phone and at a desk in both languages,
//! and what happens under the hands.

#[path = "../support/dressed.rs"]
mod dressed;

mod hands;
mod layout;
mod look;
mod marked;
mod marking;
mod sheet;
mod studio;
mod taps;
