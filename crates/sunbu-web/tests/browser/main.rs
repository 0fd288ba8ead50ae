//! The pages in a real browser: every one of them on a phone and at a desk in both languages,
//! and what happens under the hands.

#[path = "../photographed/mod.rs"]
mod photographed;

mod hands;
mod layout;
mod look;
mod marked;
mod marking;
mod studio;
mod taps;
