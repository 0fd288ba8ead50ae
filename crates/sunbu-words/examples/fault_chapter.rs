//! Writes `docs/faults.md`, the fault catalogue for people.
//!
//! `cargo run -p sunbu-words --example fault_chapter`

#[path = "../tests/support/fault_chapter.rs"]
mod fault_chapter;

use std::path::Path;

fn main() -> std::io::Result<()> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(fault_chapter::CHAPTER);
    std::fs::write(path, fault_chapter::chapter())
}
