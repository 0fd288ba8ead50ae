//! Bad photos, marks and places: every problem told at once, exit code 2, never a panic.

#[path = "program/photographed.rs"]
mod photographed;
mod program;

use photographed::{blank, complaints, put};
use program::{example, sunbu};
use serde_json::Value;

/// Exit code 2, nothing on stdout, no panic, and these parts in the complaint.
#[track_caller]
fn refused(arguments: &[&str], parts: &[&str]) {
    let ran = sunbu(arguments);
    assert_eq!(ran.code, Some(2), "{arguments:?}: {ran:?}");
    assert!(ran.out.is_empty(), "{}", ran.out);
    assert!(!ran.err.contains("panicked"), "{}", ran.err);
    for part in parts {
        assert!(ran.err.contains(part), "no “{part}” in: {}", ran.err);
    }
}

#[test]
fn what_is_no_photo_no_marks_or_not_of_one_photo_is_told_all_at_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = |name: &str, bytes: &[u8]| put(folder.path(), name, bytes);
    let jpeg = blank([1500, 2000]);
    let good = file("good.jpg", &jpeg);
    let cut = file("cut.jpg", &jpeg[..jpeg.len() / 2]);
    let gif = file("moves.jpg", b"GIF89a and so on, and on, and on");
    let empty = file("empty.jpg", b"");
    let small = file("small.jpg", &blank([40, 60]));
    let huge = file("huge.jpg", &vec![0xff; 41 * 1024 * 1024]);
    let marks = "view = \"front\"\n[marks]\nfloor = [750, 1850]\ncrown = [752, 250]\n";
    let fine = file("fine.toml", marks.as_bytes());
    let wide = file("wide.toml", marks.replace("[750,", "[1501,").as_bytes());
    let slip = file(
        "slip.toml",
        marks.replace("[752, 250]", "[752 250").as_bytes(),
    );
    let garbage = file("garbage.toml", &[b'a'; 10 * 1024 * 1024]);
    let case = example("annotated.toml");
    let case = case.to_str().expect("UTF-8");
    let check = |photo: &str, marks: &str, parts: &[&str]| {
        refused(&["check", case, "--photo", photo, "--marks", marks], parts);
    };
    check(&cut, &fine, &["cut.jpg", "ends before its picture"]);
    check(&gif, &fine, &["moves.jpg", "a GIF"]);
    check(&empty, &fine, &["empty.jpg", "empty"]);
    check(&small, &fine, &["small.jpg", "shorter side"]);
    check(&huge, &fine, &["huge.jpg", "at most 40 MB"]);
    check("nothing.jpg", &fine, &["nothing.jpg", "no such file"]);
    check(
        &good,
        &wide,
        &["wide.toml: marks.floor.x", "1501", "1500 px"],
    );
    check(&good, &slip, &["slip.toml: line 4"]);
    check(&good, &garbage, &["garbage.toml", "at most 1 MB"]);
    // A photo and its marks that are both wrong, of two.
    refused(
        &[
            "check", case, "--photo", &gif, "--marks", &wide, "--photo", &good, "--marks", &slip,
        ],
        &["moves.jpg", "slip.toml: line 4"],
    );
    refused(
        &[
            "check", case, "--photo", &good, "--photo", &good, "--marks", &fine,
        ],
        &["2 photos and one marks file"],
    );
    refused(
        &[
            "check",
            case,
            "--photo",
            &good,
            "--marks",
            &fine,
            "--overlay",
            "lines.gif",
        ],
        &["lines.gif", ".svg"],
    );
    for (eye, part) in [
        ("everybody", "nobody who looks"),
        ("150", "nobody who looks"),
        ("150,10", "between 50 and 10000 cm"),
        ("9 m,300", "between 0 and 400 cm"),
        ("150,300,2 km", "nobody who looks"),
    ] {
        refused(
            &[
                "check",
                case,
                "--photo",
                &good,
                "--marks",
                &fine,
                "--seen-by",
                eye,
            ],
            &[part],
        );
    }
    let json = sunbu(&["check", case, "--photo", &gif, "--marks", &wide, "--json"]);
    let problems: Value = serde_json::from_str(&json.out).expect("JSON");
    assert!(complaints(&problems, "problems").is_empty(), "{}", json.out);
    assert_eq!(problems["problems"][0]["code"], "picture-other-kind");
}

#[test]
fn a_case_or_a_stranger_is_meant_and_not_both_and_places_are_places() {
    let folder = tempfile::tempdir().expect("a folder");
    let photo = put(folder.path(), "p.jpg", blank([1500, 2000]));
    let case = example("annotated.toml");
    let case = case.to_str().expect("UTF-8");
    let mark = |more: &[&str], parts: &[&str]| {
        let asked = ["mark", "--photo", &photo, "--view", "front"];
        refused(&[&asked[..], more].concat(), parts);
    };
    let places = ["--floor", "750,1850", "--crown", "752,250"];
    mark(&places, &["Missing"]);
    mark(
        &[&places[..], &[case, "--stranger"]].concat(),
        &["does not go with"],
    );
    mark(
        &[&places[..], &[case, "--stature", "160"]].concat(),
        &["does not go with"],
    );
    mark(
        &[&places[..], &["--stranger", "--stature", "12"]].concat(),
        &["--stature", "12"],
    );
    mark(
        &[case, "--floor", "nan,3", "--crown", "left"],
        &["--floor", "nan,3", "--crown", "left"],
    );
    mark(
        &[case, "--floor", "750,1850", "--crown", "752,2500"],
        &["--crown.y", "2500", "2000 px"],
    );
    mark(
        &[case, "--floor", "752,250", "--crown", "750,1850"],
        &["--crown", "exchanged"],
    );
    let view = ["mark", case, "--photo", &photo, "--view", "top"];
    refused(&[&view[..], &places].concat(), &["top", "front"]);
}
