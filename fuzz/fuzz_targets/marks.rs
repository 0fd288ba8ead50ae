//! Any bytes as a marks file: the laws of the reader's own tests must hold.

#![no_main]

#[path = "../../crates/sunbu-core/tests/laws/marks.rs"]
mod laws;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| laws::check(bytes));
