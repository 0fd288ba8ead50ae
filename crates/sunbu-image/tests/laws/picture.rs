//! What holds of any bytes that are given for a photo.
//!
//! Held to by the property tests and by the fuzz target, which includes this file.

use sunbu_image::{LEAST_SHORTER_SIDE, LONGEST_SIDE, Picture};

/// Longest error message in characters: the longest sentence with its four numbers.
const MAX_MESSAGE_CHARS: usize = 220;

/// Panics, naming what is wrong, where a law does not hold for these bytes.
pub fn check(bytes: &[u8]) {
    match Picture::read(bytes) {
        Ok(picture) => well_read(&picture),
        Err(error) => {
            let message = error.to_string();
            let chars = message.chars().count();
            assert!(chars <= MAX_MESSAGE_CHARS, "{chars} characters: {message}");
            assert!(!message.chars().any(char::is_control), "{message:?}");
            for (name, detail) in error.details() {
                assert!(message.contains(&detail), "{name} {detail:?}: {message}");
            }
        }
    }
}

/// A picture is within its limits and is written as one of the same size that says nothing else.
fn well_read(picture: &Picture) {
    let size = picture.size();
    let within = LEAST_SHORTER_SIDE..=LONGEST_SIDE;
    assert!(size.iter().all(|side| within.contains(side)), "{size:?}");
    let focal = picture.focal().unwrap_or(1.0);
    assert!((0.1..100.0).contains(&focal), "{focal}");

    let gray = picture.gray();
    assert_eq!(
        [gray.width(), gray.height()],
        size.map(|side| side as usize)
    );

    let again = Picture::read(&picture.to_jpeg());
    let Ok(again) = again else {
        panic!("what was written is not read: {again:?}");
    };
    assert_eq!(again.size(), size);
    assert_eq!(again.focal(), None);
}
