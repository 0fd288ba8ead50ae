//! Any bytes as a length: the laws of the parser's own tests must hold.

#![no_main]

#[path = "../../crates/sunbu-core/tests/laws/length.rs"]
mod laws;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| laws::check(&String::from_utf8_lossy(bytes)));
