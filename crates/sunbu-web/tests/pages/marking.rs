//! A photo's marks through the router: set, followed, refused, saved by two.

use std::sync::OnceLock;

use axum::Router;
use axum::http::StatusCode;
use serde_json::{Value, json};
use sunbu_core::photo::{Mark, Marking, View};
use sunbu_image::Picture;
use sunbu_render::{Scene, Truth};
use sunbu_store::{NewPhoto, Store};

use crate::dressed::{everywhere_off, jpeg, studio as store_of};
use crate::studio::{Answer, NOW, encoded, get, get_in, post, studio};

const PAGE: &str = "/checks/1/photos/1";
/// Which of the renderer's people.
const SEED: u64 = 3;

struct Shown {
    scene: Scene,
    truth: Truth,
    jpeg: Vec<u8>,
}

fn shown() -> &'static Shown {
    static SHOWN: OnceLock<Shown> = OnceLock::new();
    SHOWN.get_or_init(|| {
        let scene = everywhere_off(SEED, View::Front, 2.0);
        Shown {
            truth: scene.truth(),
            jpeg: jpeg(&scene, SEED),
            scene,
        }
    })
}

fn add(store: &mut Store, view: View, jpeg: &[u8]) {
    let picture = Picture::read(jpeg).expect("a picture");
    let photo = NewPhoto {
        check: 1,
        instead_of: None,
        marking: &Marking::new(view, picture.size(), None),
        jpeg: &picture.to_jpeg(),
    };
    store.add_photo(&photo, NOW).expect("kept");
}

/// A studio with one check and its photo from the front.
fn open() -> Router {
    let mut store = store_of(&shown().scene);
    add(&mut store, View::Front, &shown().jpeg);
    studio(store)
}

fn fresh() -> Value {
    let picture = Picture::read(&shown().jpeg).expect("a picture");
    let marking = Marking::new(View::Front, picture.size(), None);
    serde_json::to_value(marking).expect("plain data")
}

/// As places are kept.
fn hundredths(px: f64) -> f64 {
    (100.0 * px).round() / 100.0
}

/// The marking with a mark set by hand.
fn set(marking: &mut Value, mark: Mark, at: [f64; 2]) {
    let at = at.map(hundredths);
    marking["shot"]["marks"][mark.key()] = json!({ "at": at, "trust": "sure" });
    let moved = marking["moved"].as_array_mut().expect("a list");
    moved.push(json!(mark.key()));
}

fn two_taps() -> Value {
    let mut marking = fresh();
    for mark in [Mark::Floor, Mark::Crown] {
        set(&mut marking, mark, shown().truth[&mark].pixel);
    }
    marking
}

async fn send(app: &Router, revision: i64, marking: &Value, hands: &str) -> (StatusCode, Value) {
    let fields = [
        ("revision".to_owned(), revision.to_string()),
        ("marking".to_owned(), marking.to_string()),
        ("hands".to_owned(), hands.to_owned()),
    ];
    let answer = post(app, &format!("{PAGE}/marks"), &encoded(&fields)).await;
    let told = serde_json::from_str(&answer.text);
    (
        answer.status,
        told.unwrap_or_else(|_| panic!("no JSON: {}", answer.text)),
    )
}

fn at(told: &Value, mark: Mark) -> [f64; 2] {
    let at = &told["marking"]["shot"]["marks"][mark.key()]["at"];
    [0, 1].map(|k| {
        at[k]
            .as_f64()
            .unwrap_or_else(|| panic!("{mark:?} is not placed"))
    })
}

fn places(told: &Value) -> Vec<&str> {
    let problems = told["problems"].as_array().expect("a list");
    problems
        .iter()
        .filter_map(|problem| problem["place"].as_str())
        .collect()
}

#[tokio::test]
async fn the_page_shows_photo_list_and_ways_on_also_without_a_script() {
    let app = open();
    for (lang, hem) in [("en", "Hem, middle"), ("ja", "裾")] {
        let Answer { status, text, .. } = get_in(&app, PAGE, lang).await;
        assert_eq!(status, StatusCode::OK);
        for part in [
            "/picture.jpg\"",
            "<noscript>",
            hem,
            "href=\"/checks/1/report\"",
            "href=\"/checks/1\"",
            "marking.css",
        ] {
            assert!(text.contains(part), "{lang}: no {part}");
        }
        assert!(!text.contains("id=\"mark-drum_top\""), "not from the front");
    }
}

#[tokio::test]
async fn the_next_photo_without_marks_is_offered() {
    let mut store = store_of(&shown().scene);
    for view in [View::Front, View::Back] {
        add(&mut store, view, &shown().jpeg);
    }
    let app = studio(store);
    let page = get(&app, PAGE).await.text;
    assert!(page.contains("href=\"/checks/1/photos/2\""), "{page}");
    assert!(page.contains("Next: From behind"));
}

#[tokio::test]
async fn two_taps_place_all_the_others_and_a_dragged_mark_goes_to_its_edge() {
    let app = open();
    let (status, told) = send(&app, 1, &two_taps(), "floor,crown").await;
    assert_eq!(status, StatusCode::OK, "{told}");
    assert_eq!(told["revision"], 2);
    let marks = told["marking"]["shot"]["marks"].as_object().expect("marks");
    assert!(marks.len() >= 25, "only {} marks", marks.len());
    assert!(places(&told).is_empty(), "{told}");
    // Five pixels above the true place; where two edges lie near each other the other may win.
    let mut marking = told["marking"].clone();
    let edges = [
        Mark::HemLeft,
        Mark::FoldCentre,
        Mark::ObiLowerCentre,
        Mark::ObiLowerLeft,
        Mark::ObiUpperCentre,
    ];
    for mark in edges {
        let [x, y] = shown().truth[&mark].pixel;
        set(&mut marking, mark, [x, y - 5.0]);
    }
    let hands = edges.map(Mark::key).join(",");
    let (_, snapped) = send(&app, 2, &marking, &hands).await;
    let off = edges.map(|mark| at(&snapped, mark)[1] - shown().truth[&mark].pixel[1]);
    let near = off.iter().filter(|off| off.abs() < 2.0).count();
    assert!(near >= 3, "off by {off:?} px after going to their edges");
    // The same without going to edges.
    let [x, y] = shown().truth[&Mark::HemCentre].pixel;
    marking["snapping"] = json!(false);
    set(&mut marking, Mark::HemCentre, [x, y - 5.0]);
    let (_, plain) = send(&app, 3, &marking, "hem_centre").await;
    assert_eq!(at(&plain, Mark::HemCentre), [x, y - 5.0].map(hundredths));
    // It is kept.
    let page = get(&app, PAGE).await.text;
    assert!(
        page.contains(&format!("{}", hundredths(y - 5.0))),
        "not kept"
    );
}

#[tokio::test]
async fn what_cannot_be_is_told_and_stays_as_it_was_set() {
    let app = open();
    let truth = &shown().truth;
    let [floor, crown] = [Mark::Floor, Mark::Crown].map(|mark| truth[&mark].pixel.map(hundredths));
    let first = |floor: [f64; 2], crown: [f64; 2]| {
        let mut marking = fresh();
        set(&mut marking, Mark::Floor, floor);
        set(&mut marking, Mark::Crown, crown);
        marking
    };
    let mut outside = two_taps();
    set(&mut outside, Mark::HemLeft, [-50.0, 1e9]);
    let mut other_side = two_taps();
    set(&mut other_side, Mark::Nape, [300.0, 300.0]);
    let mut typed = two_taps();
    typed["lens_height"] = json!("as high as a house");
    typed["tape"] = json!({ "ends": [floor, crown], "length": "12 ells" });
    let mut one_place = two_taps();
    one_place["shot"]["references"] = json!({ "sheet": [floor, floor, floor, floor] });
    let mut one_line = two_taps();
    let line: Vec<[f64; 2]> = (0..4).map(|i| [300.0 + f64::from(i), 900.0]).collect();
    one_line["shot"]["references"] = json!({ "sheet": line });
    let mut no_tape = two_taps();
    no_tape["tape"] = json!({ "ends": [floor, floor], "length": "100" });
    let mut heap = two_taps();
    for &mark in Mark::ALL.iter().filter(|mark| mark.shows_in(View::Front)) {
        if !matches!(mark, Mark::Floor | Mark::Crown) {
            set(&mut heap, mark, [400.0, 400.0]);
        }
    }
    let cases: [(&str, Value, &[&str]); 9] = [
        ("exchanged", first(crown, floor), &["marks.crown"]),
        ("equal", first(floor, floor), &["marks.crown"]),
        (
            "outside",
            outside,
            &["marks.hem_left.at.x", "marks.hem_left.at.y"],
        ),
        ("of another side", other_side, &["marks.nape"]),
        ("typed", typed, &["lens_height", "tape_length"]),
        ("a sheet in one place", one_place, &[]),
        ("a sheet in one line", one_line, &[]),
        ("a tape without length", no_tape, &[]),
        ("all in one place", heap, &[]),
    ];
    for (i, (what, marking, wanted)) in (1..).zip(cases) {
        let (status, told) = send(&app, i, &marking, "").await;
        assert_eq!(status, StatusCode::OK, "{what}: {told}");
        for place in wanted {
            assert!(places(&told).contains(place), "{what}: {told}");
        }
        for problem in told["problems"].as_array().expect("a list") {
            let sentence = problem["sentence"].as_str().expect("a sentence");
            assert!(sentence.len() > 10, "{what}: {problem}");
        }
        for (mark, placed) in marking["shot"]["marks"].as_object().expect("marks") {
            let kept = &told["marking"]["shot"]["marks"][mark];
            assert_eq!(kept["at"], placed["at"], "{what}: {mark} was moved");
        }
        for field in ["lens_height", "tape"] {
            assert_eq!(told["marking"][field], marking[field], "{what}");
        }
        let page = get(&app, PAGE).await;
        assert_eq!(page.status, StatusCode::OK, "{what}");
    }
}

#[tokio::test]
async fn of_two_who_save_the_later_is_told_and_nothing_is_lost() {
    let app = open();
    let (_, first) = send(&app, 1, &two_taps(), "").await;
    let mut other = two_taps();
    set(&mut other, Mark::HemLeft, [500.0, 500.0]);
    let (status, told) = send(&app, 1, &other, "").await;
    assert_eq!(status, StatusCode::CONFLICT);
    assert_eq!(told["marking"], first["marking"], "what is kept is shown");
    assert_eq!(told["revision"], 2);
    // Once more from there, mine are kept.
    let (status, mine) = send(&app, 2, &other, "").await;
    assert_eq!(status, StatusCode::OK);
    assert_eq!(at(&mine, Mark::HemLeft), [500.0, 500.0]);
}

#[tokio::test]
async fn a_change_whose_answer_was_lost_is_answered_again_and_saved_once() {
    let app = open();
    let (_, first) = send(&app, 1, &two_taps(), "floor,crown").await;
    let (status, again) = send(&app, 1, &two_taps(), "floor,crown").await;
    assert_eq!(status, StatusCode::OK);
    assert_eq!(first, again);
}

#[tokio::test]
async fn nonsense_is_refused_and_what_is_not_there_is_not_found() {
    let app = open();
    let long = json!({ "lens_height": "9".repeat(70_000) }).to_string();
    for body in [
        "",
        "revision=1",
        "revision=1&marking=",
        "revision=1&marking=%7B",
        "revision=1&marking=%5B1%5D",
        "revision=one&marking=%7B%7D",
        &encoded(&[
            ("revision".into(), "1".into()),
            ("marking".into(), long.clone()),
        ]),
        &encoded(&[
            ("revision".into(), "1".into()),
            ("marking".into(), "[".repeat(50_000)),
        ]),
    ] {
        let answer = post(&app, &format!("{PAGE}/marks"), body).await;
        assert_eq!(
            answer.status,
            StatusCode::UNPROCESSABLE_ENTITY,
            "{body:.60}"
        );
        let told: Value = serde_json::from_str(&answer.text).expect("JSON");
        assert!(told["refused"].as_str().is_some_and(|text| text.len() > 20));
    }
    for path in [
        "/checks/1/photos/2",
        "/checks/2/photos/1",
        "/checks/1/photos/x",
    ] {
        assert_eq!(
            get(&app, path).await.status,
            StatusCode::NOT_FOUND,
            "{path}"
        );
        let answer = post(&app, &format!("{path}/marks"), "revision=1").await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{path}");
    }
    let get_marks = get(&app, &format!("{PAGE}/marks")).await;
    assert_eq!(get_marks.status, StatusCode::METHOD_NOT_ALLOWED);
}

#[tokio::test]
async fn side_and_size_stay_the_photos_own() {
    let app = open();
    let mut marking = two_taps();
    marking["shot"]["view"] = json!("back");
    marking["shot"]["size"] = json!([100, 100]);
    let (status, told) = send(&app, 1, &marking, "").await;
    assert_eq!(status, StatusCode::OK, "{told}");
    assert_eq!(told["marking"]["shot"]["view"], "front");
    assert_eq!(told["marking"]["shot"]["size"], fresh()["shot"]["size"]);
}
