//! What holds of reading a marks file for any bytes at all, and of what is made of its marks.
//!
//! Held to by the property tests, by the stored corpus, and by the fuzz target, which includes
//! this file.

use std::sync::OnceLock;

use sunbu_core::body::{Body, Sex};
use sunbu_core::case::MAX_PROBLEMS;
use sunbu_core::check::{STRANGER, stranger};
use sunbu_core::dressing::{Dressing, Fitting, Occasion, Standard};
use sunbu_core::photo::{MarksFile, Subject, expect, read};
use sunbu_core::problem::Problem;

/// Longest sentence of a problem in characters: the longest list of known names, those of all
/// faults (some 1,000), and what is quoted of the entry.
const MAX_MESSAGE_CHARS: usize = 1800;

/// Whom the photos show.
struct Someone {
    body: Body,
    fitting: Fitting,
    planned: Dressing,
}

fn someone() -> &'static Someone {
    static SOMEONE: OnceLock<Someone> = OnceLock::new();
    SOMEONE.get_or_init(|| {
        let (body, garment) = stranger(Sex::Women, &STRANGER).expect("a likely woman");
        let rules = Standard::customary().rules(Occasion::Indoors, &body, garment.cloth());
        Someone {
            fitting: Fitting::new(&body, &garment),
            planned: rules.usual(),
            body,
        }
    })
}

/// Panics, naming what went wrong, where a law does not hold for these bytes.
pub fn check(bytes: &[u8]) {
    match MarksFile::parse_bytes(bytes) {
        Ok(marks) => what_is_read_is_whole(&marks),
        Err(problems) => well_said(&problems),
    }
}

fn well_said(problems: &[Problem]) {
    let count = problems.len();
    assert!((1..=MAX_PROBLEMS + 1).contains(&count), "{count} problems");
    for problem in problems {
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

fn what_is_read_is_whole(marks: &MarksFile) {
    let text = marks.to_toml();
    match MarksFile::parse(&text) {
        Ok(again) => assert_eq!(&again, marks, "written as:\n{text}"),
        Err(problems) => panic!("{problems:#?}\nin:\n{text}"),
    }
    let size = marks.size.unwrap_or([3024, 4032]);
    match marks.shot(size, size, None) {
        Ok(shot) => {
            let Someone {
                body,
                fitting,
                planned,
            } = someone();
            let subject = Subject {
                body,
                fitting,
                planned,
            };
            let found = [read(&subject, &shot).err(), expect(&subject, &shot).err()];
            found.iter().flatten().for_each(|found| well_said(found));
        }
        Err(problems) => well_said(&problems),
    }
}
