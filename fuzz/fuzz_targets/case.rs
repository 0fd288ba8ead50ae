//! Any bytes as a case file: the laws of the reader's own tests must hold.

#![no_main]

#[path = "../../crates/sunbu-core/tests/laws/case.rs"]
mod laws;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| laws::check(bytes));
