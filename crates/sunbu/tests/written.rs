//! What is written beside an answer: never over what is read or was moved by hand, and no face or
//! name in what is handed on when that is asked.

#[path = "program/photographed.rs"]
mod photographed;
mod program;

use std::path::Path;

use photographed::{blank, put};
use program::{example, sunbu};
use sunbu_image::Picture;

/// Of every photo here.
const SIZE: [u32; 2] = [1500, 2000];
const MARKS: &str = "view = \"front\"\n[marks]\nfloor = [750, 1850]\ncrown = [752, 250]\n";

fn case() -> String {
    let path = example("annotated.toml");
    path.to_str().expect("UTF-8").to_owned()
}

/// Arguments and some more.
fn with<'a>(asked: &[&'a str], more: &[&'a str]) -> Vec<&'a str> {
    [asked, more].concat()
}

/// Exit code 2 and these parts in the complaint.
#[track_caller]
fn refused(arguments: &[&str], parts: &[&str]) {
    let ran = sunbu(arguments);
    assert_eq!(ran.code, Some(2), "{arguments:?}: {ran:?}");
    for part in parts {
        assert!(ran.err.contains(part), "no “{part}” in: {}", ran.err);
    }
}

#[test]
fn marks_that_were_moved_are_written_over_only_when_that_is_asked() {
    let folder = tempfile::tempdir().expect("a folder");
    let (case, photo) = (case(), put(folder.path(), "p.jpg", blank(SIZE)));
    let out = folder.path().join("p.toml");
    let out = out.to_str().expect("UTF-8");
    let asked = [
        "mark", &case, "--photo", &photo, "--view", "front", "--floor", "750,1850", "--crown",
        "752,250", "-o",
    ];
    let ran = sunbu(&with(&asked, &[out]));
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let moved = format!("# moved by hand\n{MARKS}");
    std::fs::write(out, &moved).expect("it is changed");
    refused(&with(&asked, &[out]), &["p.toml", "--replace"]);
    let kept = std::fs::read_to_string(out).expect("it is there");
    assert_eq!(kept, moved);
    let ran = sunbu(&with(&asked, &[out, "--replace"]));
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    let now = std::fs::read_to_string(out).expect("it is there");
    assert!(!now.contains("moved by hand"), "{now}");
    // Not even then over the photo.
    let over = with(&asked, &[photo.as_str(), "--replace"]);
    refused(&over, &["p.jpg", "read here"]);
    assert_eq!(std::fs::read(&photo).expect("the photo"), blank(SIZE));
}

#[test]
fn lines_are_never_drawn_over_a_file_that_is_read_nor_twice_into_one() {
    let folder = tempfile::tempdir().expect("a folder");
    let put = |name: &str, bytes: &[u8]| put(folder.path(), name, bytes);
    let (case, photo) = (case(), put("p.png", &blank(SIZE)));
    let marks = put("p.toml", MARKS.as_bytes());
    let again = folder.path().join(".").join("p.png");
    let lines = folder.path().join("lines.svg");
    let [again, lines] = [&again, &lines].map(|path| path.to_str().expect("UTF-8"));
    let one = ["check", &case, "--photo", &photo, "--marks", &marks];
    for over in [photo.as_str(), again] {
        refused(&with(&one, &["--overlay", over]), &["p.png", "read here"]);
    }
    let two = ["--photo", &photo, "--marks", &marks];
    let twice = ["--overlay", lines, "--overlay", lines];
    refused(&[&one[..], &two, &twice].concat(), &["lines.svg", "twice"]);
    assert!(!Path::new(lines).exists(), "it was written all the same");
    assert_eq!(std::fs::read(&photo).expect("the photo"), blank(SIZE));
}

/// A photo of checks; over the head they have another colour.
fn with_head(colour: u8) -> Vec<u8> {
    let [width, height] = SIZE;
    let mut rgb = Vec::new();
    for (y, x) in (0..height).flat_map(|y| (0..width).map(move |x| (y, x))) {
        // Within 100 pixels beside the crown and 180 below it: less than a head of this height.
        let is_head = x.abs_diff(752) < 100 && (250..430).contains(&y);
        let light = (x / 20 + y / 20) & 1 == 0;
        rgb.extend(match (is_head, light) {
            (true, true) => [colour, 90, 60],
            (true, false) => [60, 90, colour],
            (false, true) => [230, 220, 200],
            (false, false) => [40, 60, 80],
        });
    }
    Picture::from_rgb(SIZE, rgb).expect("a picture").to_jpeg()
}

#[test]
fn with_the_face_hidden_nothing_of_it_is_in_the_drawing_and_her_name_never_is() {
    let folder = tempfile::tempdir().expect("a folder");
    let case = case();
    let marks = put(folder.path(), "m.toml", MARKS);
    let drawn = |name: &str, colour: u8, more: &[&str]| {
        let photo = put(folder.path(), &format!("{name}.jpg"), with_head(colour));
        let lines = folder.path().join(format!("{name}.svg"));
        let lines = lines.to_str().expect("UTF-8");
        let asked = [
            "check",
            &case,
            "--photo",
            &photo,
            "--marks",
            &marks,
            "--overlay",
            lines,
        ];
        let ran = sunbu(&[&asked[..], more].concat());
        assert!(matches!(ran.code, Some(0 | 1)), "{}", ran.err);
        std::fs::read_to_string(lines).expect("the drawing")
    };
    let [one, other] = [("one", 140), ("other", 250)].map(|(name, colour)| {
        let hidden = drawn(name, colour, &["--hide-face"]);
        (hidden, drawn(name, colour, &[]))
    });
    // Two photos that differ by the head alone give the same drawing to the last byte.
    assert!(one.0 == other.0, "something of the head is left");
    assert!(one.1 != other.1, "the photos do not differ");
    let text = std::fs::read_to_string(&case).expect("the case");
    let table: toml::Table = toml::from_str(&text).expect("TOML");
    let name = table["person"]["name"].as_str().expect("a name");
    for drawing in [&one.0, &one.1] {
        assert!(!drawing.contains(name), "{name} is in the drawing");
    }
    refused(
        &[
            "check",
            &case,
            "--photo",
            "p",
            "--marks",
            "m",
            "--hide-face",
        ],
        &["--overlay"],
    );
}
