//! Replays the fuzz targets' stored inputs, so that what fuzzing once found stays mended on the
//! stable toolchain and without a fuzzer.

#[path = "laws/case.rs"]
mod case_laws;
#[path = "laws/length.rs"]
mod length_laws;
#[path = "laws/marks.rs"]
mod marks_laws;

use std::fs;
use std::path::Path;

/// Holds every file of a folder of the corpus to its laws; at least so many are there.
fn replay(folder: &str, at_least: usize, check: impl Fn(&[u8])) {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../fuzz/corpus")
        .join(folder);
    let mut replayed = 0;
    for entry in fs::read_dir(&folder).unwrap_or_else(|e| panic!("{}: {e}", folder.display())) {
        let file = entry
            .unwrap_or_else(|e| panic!("{}: {e}", folder.display()))
            .path();
        check(&fs::read(&file).unwrap_or_else(|e| panic!("{}: {e}", file.display())));
        replayed += 1;
    }
    assert!(
        replayed >= at_least,
        "only {replayed} files in {}",
        folder.display()
    );
}

#[test]
fn every_stored_length_keeps_the_laws() {
    replay("length", 40, |bytes| {
        length_laws::check(&String::from_utf8_lossy(bytes))
    });
}

#[test]
fn every_stored_case_keeps_the_laws() {
    replay("case", 20, case_laws::check);
}

#[test]
fn every_stored_marks_file_keeps_the_laws() {
    replay("marks", 20, marks_laws::check);
}
