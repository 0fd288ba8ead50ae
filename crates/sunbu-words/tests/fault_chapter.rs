//! The book's chapter on faults says what the catalogue says.

#[path = "support/fault_chapter.rs"]
mod fault_chapter;

use std::path::Path;

#[test]
fn the_chapter_on_faults_is_up_to_date() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(fault_chapter::CHAPTER);
    let kept = std::fs::read_to_string(path).expect("the chapter is in the book");
    let wanted = fault_chapter::chapter();
    for (kept, wanted) in kept.lines().zip(wanted.lines()) {
        assert_eq!(
            kept, wanted,
            "run: cargo run -p sunbu-words --example fault_chapter"
        );
    }
    assert_eq!(kept.len(), wanted.len(), "the chapter ends elsewhere");
}
