//! The demo studio: everything in it reads and completes, and it is spread as widely as promised.

use std::collections::BTreeSet;

use sunbu_core::body::{BodyMeasure, Population, Sex};
use sunbu_core::demo::{self, DemoGarment, Words};
use sunbu_core::garment::{Garment, Kind, MitakeFrom, Part, rules};
use sunbu_core::measure::{Origin, Unit};

fn garments() -> Vec<(DemoGarment, Garment)> {
    let all = demo::garments().unwrap_or_else(|problems| panic!("{problems:#?}"));
    let complete = |demo: DemoGarment| {
        let whole = demo
            .sheet
            .complete()
            .unwrap_or_else(|found| panic!("{}: {found:?}", demo.key));
        (demo, whole)
    };
    all.into_iter().map(complete).collect()
}

fn assert_words(key: &str, words: &Words) {
    assert!(
        !words.en.trim().is_empty() && !words.ja.trim().is_empty(),
        "{key} lacks words"
    );
    assert!(words.en.is_ascii(), "{key}: {:?} is not English", words.en);
    assert!(
        !words.ja.is_ascii(),
        "{key}: {:?} is not Japanese",
        words.ja
    );
    assert_eq!(
        (words.text("ja"), words.text("en")),
        (&*words.ja, &*words.en)
    );
}

#[test]
fn every_demo_person_completes_without_an_unlikely_measure() {
    let people = demo::people().unwrap_or_else(|problems| panic!("{problems:#?}"));
    assert!(people.len() >= 12, "{} people", people.len());
    let keys: BTreeSet<_> = people.iter().map(|person| &person.key).collect();
    assert_eq!(keys.len(), people.len(), "keys are unique");
    for person in &people {
        assert_words(&person.key, &person.name);
        assert_words(&person.key, &person.notes);
        let body = Population::shipped(person.tape.sex())
            .complete(&person.tape)
            .unwrap_or_else(|why| panic!("{}: {why}", person.key));
        let unlikely = body.unlikely();
        assert!(unlikely.is_empty(), "{}: {unlikely:?}", person.key);
    }
}

#[test]
fn the_demo_people_are_built_very_differently() {
    let people = demo::people().expect("read in another test");
    let bodies: Vec<_> = people
        .iter()
        .map(|person| {
            let population = Population::shipped(person.tape.sex());
            population
                .complete(&person.tape)
                .expect("read in another test")
        })
        .collect();
    let spread = |measure: BodyMeasure| {
        let values = bodies.iter().map(|body| body.measure(measure).value_cm());
        let (low, high) = values.fold((f64::MAX, f64::MIN), |(low, high), cm| {
            (low.min(cm), high.max(cm))
        });
        println!("{} from {low:.1} to {high:.1} cm", measure.key());
        (low, high)
    };
    let (shortest, tallest) = spread(BodyMeasure::Stature);
    assert!(
        shortest < 142.0 && tallest > 177.0,
        "{shortest} to {tallest}"
    );
    let (slimmest, stoutest) = spread(BodyMeasure::HipGirth);
    assert!(
        slimmest < 83.0 && stoutest > 110.0,
        "{slimmest} to {stoutest}"
    );
    let legs = |body: &sunbu_core::body::Body| {
        body.measure(BodyMeasure::HipBoneHeight).value_cm()
            / body.measure(BodyMeasure::Stature).value_cm()
    };
    let shares: Vec<f64> = bodies.iter().map(legs).collect();
    let low = shares.iter().copied().fold(f64::MAX, f64::min);
    let high = shares.iter().copied().fold(f64::MIN, f64::max);
    // In the population the share has a deviation near 0.011 (iliocristale height, ANSUR II);
    // long and short legs are to be three of them apart.
    assert!(
        high - low > 0.033,
        "hip bone at {low:.3} to {high:.3} of the stature"
    );
    let taped = |person: &demo::DemoPerson| person.tape.iter().count();
    let counts: BTreeSet<_> = people.iter().map(taped).collect();
    assert!(counts.len() >= 5, "different subsets are taped: {counts:?}");
    let least = people.iter().find(|person| taped(person) == 2);
    assert!(least.is_some(), "somebody gave only stature and hip");
    let in_shaku = people.iter().filter(|person| {
        let reading = person.tape.reading(BodyMeasure::Stature);
        reading.is_some_and(|reading| reading.unit == Unit::KujiraShaku)
    });
    assert!(in_shaku.count() >= 2, "some are taped in shaku");
    assert!(
        people.iter().any(|person| person.tape.sex() == Sex::Men),
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
        assert_words(&demo.key, &demo.name);
        assert_words(&demo.key, &demo.notes);
        for part in demo.sheet.parts.keys() {
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
        .filter(|(demo, _)| demo.sheet.parts[&Part::Mitake].unit == Unit::KujiraShaku);
    assert!(in_shaku.count() >= 10, "a good part is taped in shaku");
    let whole_sheets = all
        .iter()
        .filter(|(demo, _)| demo.sheet.parts.len() == Part::COUNT - 1);
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
        notes = { en = "Good", ja = "良" }
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
            "garment.2.notes",
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
