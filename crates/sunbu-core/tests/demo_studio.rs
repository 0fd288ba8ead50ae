//! The demo studio: everything in it reads and completes, and it is spread as widely as promised.

use std::collections::BTreeSet;

use sunbu_core::body::{Body, BodyMeasure, Sex};
use sunbu_core::case::{Person, Piece};
use sunbu_core::demo::{self, Demo};
use sunbu_core::garment::{Garment, Kind, MitakeFrom, Part, rules};
use sunbu_core::measure::{Origin, Unit};

fn people() -> Vec<(Demo<Person>, Body)> {
    let all = demo::people().unwrap_or_else(|problems| panic!("{problems:#?}"));
    let complete = |demo: Demo<Person>| {
        let body = demo.en.body();
        let body = body.unwrap_or_else(|found| panic!("{}: {found:?}", demo.key));
        (demo, body)
    };
    all.into_iter().map(complete).collect()
}

fn garments() -> Vec<(Demo<Piece>, Garment)> {
    let all = demo::garments().unwrap_or_else(|problems| panic!("{problems:#?}"));
    let complete = |demo: Demo<Piece>| {
        let whole = demo.en.garment();
        let whole = whole.unwrap_or_else(|found| panic!("{}: {found:?}", demo.key));
        (demo, whole)
    };
    all.into_iter().map(complete).collect()
}

fn assert_words(key: &str, en: &str, ja: &str) {
    assert!(
        !en.is_empty() && en.is_ascii(),
        "{key}: {en:?} is not English"
    );
    assert!(!ja.is_ascii(), "{key}: {ja:?} is not Japanese");
}

#[test]
fn every_demo_person_completes_without_an_unlikely_measure() {
    let people = people();
    assert!(people.len() >= 12, "{} people", people.len());
    let keys: BTreeSet<_> = people.iter().map(|(demo, _)| &demo.key).collect();
    assert_eq!(keys.len(), people.len(), "keys are unique");
    for (demo, body) in &people {
        assert_words(&demo.key, &demo.en.name, &demo.ja.name);
        assert_words(&demo.key, &demo.en.note, &demo.ja.note);
        assert_eq!(demo.en.measures, demo.ja.measures, "{}", demo.key);
        assert_eq!(demo.said("ja-JP"), &demo.ja);
        assert_eq!(demo.said("en"), &demo.en);
        let unlikely = body.unlikely();
        assert!(unlikely.is_empty(), "{}: {unlikely:?}", demo.key);
    }
}

#[test]
fn the_demo_people_are_built_very_differently() {
    let people = people();
    let spread = |what: &str, measure: &dyn Fn(&Body) -> f64| {
        let values = people.iter().map(|(_, body)| measure(body));
        let (low, high) = values.fold((f64::MAX, f64::MIN), |(low, high), value| {
            (low.min(value), high.max(value))
        });
        println!("{what} from {low:.3} to {high:.3}");
        (low, high)
    };
    let cm = |measure| move |body: &Body| body.measure(measure).value_cm();
    let (shortest, tallest) = spread("stature", &cm(BodyMeasure::Stature));
    assert!(
        shortest < 142.0 && tallest > 177.0,
        "{shortest} to {tallest}"
    );
    let (slimmest, stoutest) = spread("hip girth", &cm(BodyMeasure::HipGirth));
    assert!(
        slimmest < 83.0 && stoutest > 110.0,
        "{slimmest} to {stoutest}"
    );
    let (low, high) = spread("hip bone, share of stature", &|body| {
        cm(BodyMeasure::HipBoneHeight)(body) / cm(BodyMeasure::Stature)(body)
    });
    // In the population the share has a deviation near 0.011 (iliocristale height, ANSUR II);
    // long and short legs are to be three of them apart.
    assert!(
        high - low > 0.033,
        "hip bone at {low:.3} to {high:.3} of the stature"
    );
    let counts: BTreeSet<_> = people
        .iter()
        .map(|(demo, _)| demo.en.measures.len())
        .collect();
    assert!(counts.len() >= 5, "different subsets are taped: {counts:?}");
    assert!(counts.contains(&2), "somebody gave only stature and hip");
    let in_shaku = people
        .iter()
        .filter(|(demo, _)| demo.en.measures[&BodyMeasure::Stature].unit == Unit::KujiraShaku);
    assert!(in_shaku.count() >= 2, "some are taped in shaku");
    assert!(
        people.iter().any(|(demo, _)| demo.en.sex == Sex::Men),
        "a man is among them"
    );
}

#[test]
fn forty_demo_garments_complete_and_keep_what_was_taped() {
    let all = garments();
    assert_eq!(all.len(), 40);
    let keys: BTreeSet<_> = all.iter().map(|(demo, _)| &demo.key).collect();
    assert_eq!(keys.len(), all.len(), "keys are unique");
    for (demo, whole) in &all {
        assert_words(&demo.key, &demo.en.name, &demo.ja.name);
        assert_words(&demo.key, &demo.en.note, &demo.ja.note);
        assert_eq!(demo.en.sheet, demo.ja.sheet, "{}", demo.key);
        for part in demo.en.sheet.parts.keys() {
            assert_eq!(whole.part(*part).origin(), Origin::Taped, "{}", demo.key);
        }
    }
}

#[test]
fn the_demo_garments_are_short_narrow_wide_and_long() {
    let all = garments();
    let count = |what: &str, at_least: usize, test: &dyn Fn(&Garment) -> bool| {
        let found = all.iter().filter(|(_, whole)| test(whole)).count();
        println!("{found} {what}");
        assert!(
            found >= at_least,
            "{found} {what}, at least {at_least} promised"
        );
    };
    let back = |whole: &Garment| whole.mitake_back().value_cm();
    let hip = |whole: &Garment| whole.likely_hip().value_cm();
    count("short, for a height under 150", 8, &|whole| {
        back(whole) < 150.0
    });
    count("long, for a height over 168", 4, &|whole| {
        back(whole) > 168.0
    });
    count("narrow, for a hip under 86", 6, &|whole| hip(whole) < 86.0);
    count("wide, for a hip over 102", 5, &|whole| hip(whole) > 102.0);
    count("with a yuki under 62", 6, &|whole| {
        whole.part(Part::Yuki).value_cm() < 62.0
    });
    count("with a yuki over what a bolt of 36 gives", 10, &|whole| {
        whole.part(Part::Yuki).value_cm() > rules::yuki_limit(36.0)
    });
    count("yukata", 8, &|whole| whole.kind() == Kind::Yukata);
    count("taped from the shoulder", 15, &|whole| {
        whole.mitake_from() == MitakeFrom::Shoulder
    });
    count("taped from the back seam", 10, &|whole| {
        whole.mitake_from() == MitakeFrom::BackSeam
    });
    count("with a warning", 3, &|whole| !whole.warnings().is_empty());
    let in_shaku = all
        .iter()
        .filter(|(demo, _)| demo.en.sheet.parts[&Part::Mitake].unit == Unit::KujiraShaku);
    assert!(in_shaku.count() >= 10, "a good part is taped in shaku");
    let whole_sheets = all
        .iter()
        .filter(|(demo, _)| demo.en.sheet.parts.len() == Part::COUNT - 1);
    assert_eq!(
        whole_sheets.count(),
        1,
        "one full sewing sheet (its furi is the difference)"
    );
}

#[test]
fn what_is_wrong_in_a_list_of_garments_is_told_all_at_once_with_its_place() {
    let text = r#"
        [[garment]]
        key = "good"
        name = { en = "Good", ja = "良" }
        note = { en = "Good", ja = "良" }
        kind = "nagagi"
        mitake_from = "shoulder"
        mitake = 160
        maehaba = 23

        [[garment]]
        key = "bad"
        name = "only one language"
        kind = "nagagi"
        mitake_from = "shoulder"
        mitake = "long"
        maehaba = 230
    "#;
    let problems = demo::read_garments(text).expect_err("the second is bad");
    let places: Vec<_> = problems
        .iter()
        .map(|problem| problem.place.as_str())
        .collect();
    assert_eq!(
        places,
        [
            "garment.2.name",
            "garment.2.note",
            "garment.2.mitake",
            "garment.2.maehaba"
        ]
    );
    for text in [
        "",
        "garment = 3",
        "garment = [1, 2]",
        "[[garment",
        "\u{0}\u{ffff}",
    ] {
        let problems = demo::read_garments(text).expect_err("no list of garments");
        assert_eq!(problems[0].place, "garment", "{text:?}");
    }
}
