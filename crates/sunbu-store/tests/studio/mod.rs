//! What the tests of the store share.

use sunbu_core::case::{CaseFile, Person, Piece};
use sunbu_core::demo;
use sunbu_core::dressing::{Locks, Occasion};

/// The moment the tests happen in.
pub const NOW: &str = "2026-01-15T10:00:00+09:00";

/// The people of the demonstration, in both languages.
pub fn people() -> Vec<Person> {
    demo::people()
        .unwrap()
        .into_iter()
        .flat_map(|demo| [demo.en, demo.ja])
        .collect()
}

/// The garments of the demonstration, in both languages.
pub fn garments() -> Vec<Piece> {
    demo::garments()
        .unwrap()
        .into_iter()
        .flat_map(|demo| [demo.en, demo.ja])
        .collect()
}

/// A case with a dresser.
pub fn case(person: &Person, garment: &Piece, dresser: Option<Person>) -> CaseFile {
    CaseFile {
        person: person.clone(),
        garments: vec![garment.clone()],
        occasion: Occasion::ALL[0],
        locks: Locks::new(),
        dresser,
        standard: None,
    }
}
