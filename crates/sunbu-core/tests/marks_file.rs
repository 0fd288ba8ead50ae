//! The marks file: what it holds, what it refuses and how, and which pixels its numbers are.

use sunbu_core::fault::{Fault as Flaw, Ticks};
use sunbu_core::photo::{Mark, MarksFile, Trust, View};
use sunbu_core::problem::{Fault, Problem};

const GOOD: &str = include_str!("../../../fuzz/corpus/marks/good-whole");

/// The same file with something else in it.
fn with(what: &str, instead: &str) -> String {
    assert!(GOOD.contains(what), "no {what} to replace");
    GOOD.replace(what, instead)
}

/// The problems of a text, on a photo of the size that it belongs to.
fn problems(text: &str) -> Vec<Problem> {
    match MarksFile::parse(text) {
        Err(problems) => problems,
        Ok(marks) => {
            let size = marks.size.unwrap_or([3024, 4032]);
            let shot = marks.shot(size, size, None);
            shot.expect_err("something is wrong with it")
        }
    }
}

/// Asserts that just this is wrong: place, typed text, code.
#[track_caller]
fn assert_wrong(text: &str, wanted: &[(&str, &str, &str)]) {
    let found: Vec<(String, String, String)> = problems(text)
        .into_iter()
        .map(|p| (p.place.clone(), p.typed.clone(), p.code()))
        .collect();
    let wanted: Vec<(String, String, String)> = wanted
        .iter()
        .map(|&(place, typed, code)| (place.into(), typed.into(), format!("problem-{code}")))
        .collect();
    assert_eq!(found, wanted, "in:\n{text}");
}

#[test]
fn everything_in_the_file_of_the_book_is_read() {
    let marks = MarksFile::parse(GOOD).expect("a good file");
    assert_eq!(marks.view, View::Front);
    assert_eq!(
        marks.seen,
        Ticks::from([Flaw::FoldWrinkled, Flaw::ObiageUntidy])
    );
    let shot = marks.shot([3024, 4032], [3024, 4032], Some(0.5));
    let shot = shot.expect("a good shot");
    assert_eq!(shot.marks[&Mark::HemLeft].at, [1712.5, 3722.0]);
    assert_eq!(shot.marks[&Mark::Crown].trust, Trust::Unsure);
    assert_eq!(shot.lens_height_cm.map(|known| known.value), Some(130.0));
    // 26 mm over the film's diagonal of 43.27 mm, which is 5/4 of the longer side of a picture of 4:3;
    // what the file says goes before what the photo says.
    let told = shot.focal.expect("it was told");
    let wanted = 26.0 / 43.266_615_3 * 1.25;
    assert!((told - wanted).abs() < 1e-9, "{told}, not {wanted}");
    assert_eq!(shot.references.tape.map(|tape| tape.length_cm), Some(90.0));
    assert_eq!(shot.references.levels.len(), 1);
}

#[test]
fn the_example_in_the_reader_s_own_words_is_a_marks_file() {
    let source = include_str!("../src/photo/marks_file/mod.rs");
    let lines = source.lines().filter_map(|line| line.strip_prefix("//!"));
    let lines: Vec<&str> = lines.map(str::trim_start).collect();
    let text = lines.join("\n");
    let example = text.split("```").nth(1).expect("an example");
    let example = example.strip_prefix("toml").expect("of TOML");
    let marks = MarksFile::parse(example).expect("it reads");
    assert!(marks.shot([3024, 4032], [3024, 4032], None).is_ok());
}

#[test]
fn a_file_without_a_size_counts_the_pixels_of_the_photo() {
    let text = with("size = [3024, 4032]\n", "");
    let marks = MarksFile::parse(&text).expect("a good file");
    let shot = marks
        .shot([3024, 4032], [1512, 2016], None)
        .expect("it fits");
    assert_eq!(shot.size, [1512, 2016]);
    assert_eq!(shot.marks[&Mark::HemLeft].at, [856.25, 1861.0]);
    assert_eq!(shot.references.uprights[0][1], [102.5, 1800.0]);
    let sheet = shot.references.sheet.expect("the sheet");
    assert_eq!(sheet[2], [450.0, 1892.5]);
}

#[test]
fn marks_of_a_smaller_copy_fit_the_photo_and_those_of_another_picture_do_not() {
    // Halved twice: sides of 1,512 by 2,016 pixels, and of 755 by 1,007 cut to whole pixels.
    let marks = MarksFile::parse(GOOD).expect("a good file");
    for whole in [[1512, 2016], [755, 1007], [6048, 8064]] {
        assert!(marks.shot(whole, whole, None).is_ok(), "{whole:?}");
    }
    for whole in [[4032, 3024], [3024, 3900], [2900, 4032]] {
        let found = marks.shot(whole, whole, None).expect_err("another picture");
        assert_eq!(found.len(), 1, "{found:?}");
        assert_eq!(found[0].place, "size");
        assert_eq!(found[0].typed, "[3024, 4032]");
        assert_eq!(
            found[0].code(),
            "problem-contradiction-marks-of-another-picture"
        );
    }
}

#[test]
fn numbers_that_are_none_huge_or_outside_are_named_with_what_was_typed() {
    let hem = "hem_left = [1712.5, 3722]";
    for typed in [
        "nan",
        "inf",
        "-inf",
        "1e300",
        "-1",
        "20001",
        "99999999999999999999",
    ] {
        let text = with(hem, &format!("hem_left = [{typed}, 3722]"));
        assert_wrong(&text, &[("marks.hem_left.x", typed, "number-out-of-range")]);
    }
    // Within what pictures have, but not within this one.
    let text = with(hem, "hem_left = [1712.5, 4033]");
    assert_wrong(
        &text,
        &[("marks.hem_left.y", "4033", "number-out-of-range")],
    );
    let text = with("[700, 3785]]", "[3025, 3785]]");
    assert_wrong(
        &text,
        &[("references.sheet.4.x", "3025", "number-out-of-range")],
    );
    let text = with("[205, 3600]", "[205, 4040]");
    assert_wrong(
        &text,
        &[("references.uprights.1.2.y", "4040", "number-out-of-range")],
    );
}

#[test]
fn everything_wrong_is_told_at_once() {
    let text = r#"
view = "above"
size = [3024.5, 50]
mirrored = "yes"
lens_height = "as high as a door"
focal_35mm = 2000
seen = ["too_beautiful"]
exposure = 3
[references]
tape = { length = 5000 }
[marks]
floor = [1510]
heel = [1, 2]
crown = { unsure = true }
"#;
    assert_wrong(
        text,
        &[
            // A table's unknown names come before what is wrong in it.
            ("exposure", "3", "unknown-field"),
            ("view", "above", "unknown-choice"),
            ("size.width", "3024.5", "wrong-shape"),
            ("size.height", "50", "number-out-of-range"),
            ("mirrored", "\"yes\"", "wrong-shape"),
            ("lens_height", "as high as a door", "unreadable"),
            ("focal_35mm", "2000", "number-out-of-range"),
            ("seen.1", "too_beautiful", "unknown-choice"),
            ("references.tape.length", "5000", "out-of-range"),
            ("references.tape.ends", "", "missing"),
            ("marks.heel", "[1, 2]", "unknown-field"),
            ("marks.floor", "[1510]", "wrong-shape"),
            ("marks.crown.at", "", "missing"),
        ],
    );
}

#[test]
fn marks_swapped_all_equal_missing_or_out_of_sight_are_told() {
    let swapped = "view = \"front\"\n[marks]\nfloor = [1500, 310]\ncrown = [1510, 3830]\n";
    let code = "contradiction-crown-not-above-floor";
    assert_wrong(swapped, &[("marks.crown", "", code)]);
    let equal = "view = \"front\"\n[marks]\nfloor = [9, 9]\ncrown = [9, 9]\nhem_left = [9, 9]\n";
    assert_wrong(equal, &[("marks.crown", "", code)]);
    assert_wrong(
        "view = \"front\"\n",
        &[
            ("marks.floor", "", "missing"),
            ("marks.crown", "", "missing"),
        ],
    );
    let behind = with("view = \"front\"", "view = \"back\"");
    let code = "contradiction-mark-not-in-view";
    assert_wrong(
        &behind,
        &[
            ("marks.fold_centre", "", code),
            ("marks.obi_lower_centre", "", code),
        ],
    );
}

#[test]
fn a_line_that_is_no_toml_is_told_beside_values_that_cannot_be() {
    let text = with("lens_height = \"130 cm\"", "lens_height = 130 cm")
        .replace("[1712.5, 3722]", "[1712.5, nan]");
    let found = problems(&text);
    let places: Vec<&str> = found.iter().map(|p| p.place.as_str()).collect();
    assert_eq!(places, ["line 4", "marks.hem_left.y"], "{found:#?}");
}

#[test]
fn other_encodings_and_ten_megabytes_are_refused_at_once() {
    let code = |bytes: &[u8]| {
        let found = MarksFile::parse_bytes(bytes).expect_err("no marks file");
        assert_eq!(found.len(), 1, "{found:?}");
        found[0].code()
    };
    assert_eq!(code(b"\xff\xfev\0i\0"), "problem-not-text");
    assert_eq!(code(b"view = \"\x92\x85\""), "problem-not-text");
    assert_eq!(code(&vec![b'a'; 10 * 1024 * 1024]), "problem-too-much");
    let garbage = "[[[[=\n".repeat(100_000);
    let found = MarksFile::parse(&garbage).expect_err("garbage");
    assert!(found.len() <= 501, "{} problems", found.len());
    assert!(
        found
            .last()
            .is_some_and(|p| matches!(p.fault, Fault::TooManyProblems { .. })),
        "{:?}",
        found.last()
    );
}
