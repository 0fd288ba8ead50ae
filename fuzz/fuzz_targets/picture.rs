//! Any bytes as a photo: the laws of the border's own tests must hold.

#![no_main]

#[path = "../../crates/sunbu-image/tests/laws/picture.rs"]
mod laws;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| laws::check(bytes));
