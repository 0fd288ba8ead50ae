//! Replays the fuzz targets' stored inputs, so that what fuzzing once found stays mended on the
//! stable toolchain and without a fuzzer.

#[path = "laws/length.rs"]
mod length_laws;

use std::fs;
use std::path::Path;

#[test]
fn every_stored_length_keeps_the_laws() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fuzz/corpus/length");
    let mut replayed = 0;
    for entry in fs::read_dir(&folder).unwrap_or_else(|e| panic!("{}: {e}", folder.display())) {
        let bytes = fs::read(entry.unwrap().path()).unwrap();
        length_laws::check(&String::from_utf8_lossy(&bytes));
        replayed += 1;
    }
    assert!(
        replayed >= 40,
        "only {replayed} files in {}",
        folder.display()
    );
}
