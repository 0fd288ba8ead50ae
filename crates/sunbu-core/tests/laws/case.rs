//! What holds of reading a case file for any bytes at all.
//!
//! Held to by the property tests, by the stored corpus, and by the fuzz target, which includes
//! this file.

use sunbu_core::case::{CaseFile, MAX_PROBLEMS, Person, Piece};

/// Longest sentence of a problem in characters: the longest list of known names (some 900) and
/// what is quoted of the entry.
const MAX_MESSAGE_CHARS: usize = 1500;

/// Panics, naming what went wrong, where a law does not hold for these bytes.
pub fn check(bytes: &[u8]) {
    match CaseFile::parse_bytes(bytes) {
        Ok(case) => what_is_read_is_whole(&case),
        Err(problems) => {
            let count = problems.len();
            assert!((1..=MAX_PROBLEMS + 1).contains(&count), "{count} problems");
            for problem in &problems {
                let said = problem.to_string();
                assert!(
                    said.chars().count() <= MAX_MESSAGE_CHARS,
                    "too long: {said}"
                );
                assert!(
                    !said.chars().any(char::is_control),
                    "not printable: {said:?}"
                );
            }
        }
    }
}

fn what_is_read_is_whole(case: &CaseFile) {
    let text = case.to_toml();
    match CaseFile::parse(&text) {
        Ok(again) => assert_eq!(&again, case, "written as:\n{text}"),
        Err(problems) => panic!("{problems:#?}\nin:\n{text}"),
    }
    for person in case.dresser.iter().chain([&case.person]) {
        assert!(person.body().is_ok(), "{person:?} has no body");
        assert_eq!(
            Person::from_fields(&person.to_fields()).as_ref(),
            Ok(person)
        );
    }
    assert!(!case.garments.is_empty(), "there is nothing to wear");
    for piece in &case.garments {
        assert!(piece.garment().is_ok(), "{piece:?} is no garment");
        assert_eq!(Piece::from_fields(&piece.to_fields()).as_ref(), Ok(piece));
    }
}
