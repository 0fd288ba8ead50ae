//! Garment sheets as people enter them: what is read, what is refused, in which words.

use sunbu_core::garment::{Cloth, Garment, Kind, MitakeFrom, Part, Sheet};
use sunbu_core::measure::{Entry, Origin, Unit};
use sunbu_core::problem::Problem;

fn sheet(fields: &[(&str, &str)]) -> Result<Sheet, Vec<Problem>> {
    let usual = [("kind", "nagagi"), ("mitake_from", "back_seam")];
    let given = |name: &str| fields.iter().any(|(other, _)| *other == name);
    let rest = usual.iter().filter(|(name, _)| !given(name));
    let all = rest.chain(fields);
    Sheet::from_fields(all.map(|(name, text)| (*name, Entry::plain(*text))))
}

fn garment(fields: &[(&str, &str)]) -> Garment {
    let sheet = sheet(fields).unwrap_or_else(|problems| panic!("{problems:?}"));
    sheet
        .complete()
        .unwrap_or_else(|problems| panic!("{problems:?}"))
}

fn refused(fields: &[(&str, &str)]) -> Vec<Problem> {
    sheet(fields).expect_err("these fields contradict each other or cannot be read")
}

fn codes(problems: &[Problem]) -> Vec<String> {
    problems.iter().map(Problem::code).collect()
}

#[test]
fn the_mitake_and_one_body_width_are_enough() {
    for width in ["ushirohaba", "maehaba"] {
        let cm = if width == "maehaba" { "23" } else { "28.5" };
        let whole = garment(&[("mitake", "160"), (width, cm)]);
        for part in Part::ALL {
            let value = whole.part(*part);
            let (low, high) = part.range_cm();
            let cm = value.value_cm();
            assert!((low..=high).contains(&cm), "{}: {cm}", part.key());
            assert!(value.sd_cm() > 0.0, "{} has no deviation", part.key());
            assert_eq!(
                value.origin() == Origin::Taped,
                whole.completed_by(*part).is_none(),
                "{}: taped, or completed by a named rule",
                part.key()
            );
        }
        assert_eq!(whole.completed().count(), Part::COUNT - 2);
    }
}

#[test]
fn what_is_missing_is_named_with_what_would_do_instead() {
    let problems = refused(&[]);
    assert_eq!(
        codes(&problems),
        ["problem-missing", "problem-missing-one-of"]
    );
    assert_eq!(problems[0].place, "mitake");
    assert_eq!(problems[1].place, "ushirohaba");
    assert_eq!(problems[1].others(), ["maehaba"]);
}

#[test]
fn every_wrong_field_is_named_at_once_with_what_was_typed() {
    let problems = refused(&[
        ("kind", "kimono"),
        ("cloth", "paper"),
        ("mitake_from", "elbow"),
        ("mitake", "16"),
        ("yuki", "about 66"),
        ("ushirohaba", "285"),
        ("okumihaba", "14"),
        ("aizumahaba", "15.5"),
        ("mitaka", "160"),
    ]);
    let mut found: Vec<(&str, &str, String)> = problems
        .iter()
        .map(|p| (p.place.as_str(), p.typed.as_str(), p.code()))
        .collect();
    found.sort();
    let expected = [
        (
            "aizumahaba",
            "15.5 cm",
            "problem-contradiction-aizuma-over-okumi",
        ),
        ("cloth", "paper", "problem-unknown-choice"),
        ("kind", "kimono", "problem-unknown-choice"),
        ("mitaka", "160", "problem-unknown-field"),
        ("mitake", "16 cm", "problem-out-of-range"),
        ("mitake_from", "elbow", "problem-unknown-choice"),
        ("ushirohaba", "285 cm", "problem-out-of-range"),
        ("yuki", "about 66", "problem-unreadable"),
    ]
    .map(|(place, typed, code)| (place, typed, code.to_owned()));
    assert_eq!(found, expected);
}

#[test]
fn a_field_typed_but_unreadable_is_not_called_missing_as_well() {
    let problems = refused(&[("mitake", "long"), ("maehaba", "narrow")]);
    assert_eq!(
        codes(&problems),
        ["problem-unreadable", "problem-unreadable"]
    );
}

#[test]
fn a_yuki_that_is_not_the_sum_of_its_parts_is_refused_with_all_three_named() {
    let base = [
        ("mitake", "160"),
        ("ushirohaba", "28.5"),
        ("katahaba", "32"),
        ("sodehaba", "34"),
    ];
    let with = |yuki| [&base[..], &[("yuki", yuki)]].concat();
    let problems = refused(&with("67.1"));
    assert_eq!(codes(&problems), ["problem-contradiction-yuki-split"]);
    assert_eq!(problems[0].place, "yuki");
    assert_eq!(problems[0].others(), ["katahaba", "sodehaba"]);
    let said = problems[0].to_string();
    assert!(said.contains("67.1 cm") && said.contains("66 cm"), "{said}");
    assert!(
        sheet(&with("66.9")).is_ok(),
        "1 cm is within the slips of three tapes"
    );
    assert!(
        sheet(&with("64.9")).is_err(),
        "too short is refused like too long"
    );
}

#[test]
fn a_collar_end_above_the_garment_or_above_the_okumi_is_refused() {
    let problems = refused(&[("mitake", "110"), ("ushirohaba", "28"), ("erishita", "112")]);
    assert_eq!(
        codes(&problems),
        ["problem-contradiction-collar-end-above-garment"]
    );
    assert_eq!(problems[0].others(), ["mitake"]);
    let problems = refused(&[
        ("mitake", "110"),
        ("ushirohaba", "28"),
        ("erishita", "95"),
        ("okumisagari", "23"),
    ]);
    assert_eq!(
        codes(&problems),
        ["problem-contradiction-collar-end-above-okumi"]
    );
    assert_eq!(problems[0].others(), ["mitake", "okumisagari"]);
}

#[test]
fn sleeves_that_do_not_add_up_are_refused() {
    let base = [("mitake", "160"), ("ushirohaba", "28.5")];
    let with = |more: &[(&'static str, &'static str)]| [&base[..], more].concat();
    for (more, code, other) in [
        (
            &[("sodetake", "49"), ("sodetsuke", "21"), ("furi", "31")][..],
            "sodetake-split",
            &["sodetsuke", "furi"][..],
        ),
        (
            &[("sodetake", "30"), ("sodetsuke", "33")],
            "sodetsuke-over-sodetake",
            &["sodetake"],
        ),
        (
            &[("sodetake", "49"), ("furi", "45")],
            "sodetsuke-impossible",
            &["sodetake"],
        ),
        (
            &[("sodetake", "30"), ("sodeguchi", "33")],
            "sodeguchi-over-sodetake",
            &["sodetake"],
        ),
        (
            &[("yuki", "60"), ("sodehaba", "45")],
            "katahaba-impossible",
            &["sodehaba"],
        ),
        (
            &[("yuki", "60"), ("katahaba", "45")],
            "sodehaba-impossible",
            &["katahaba"],
        ),
        (
            &[("katahaba", "47"), ("sodehaba", "47")],
            "yuki-impossible",
            &["sodehaba"],
        ),
        (
            &[("sodetsuke", "35"), ("furi", "105")],
            "sodetake-impossible",
            &["furi"],
        ),
    ] {
        let problems = refused(&with(more));
        assert_eq!(
            codes(&problems),
            [format!("problem-contradiction-{code}")],
            "{more:?}"
        );
        assert_eq!(problems[0].others(), other, "{code}");
    }
}

#[test]
fn a_sheet_keeps_its_units_in_toml_and_comes_back_the_same() {
    let text = r#"
        kind = "yukata"
        mitake_from = "shoulder"
        mitake = "4尺2寸5分"
        ushirohaba = { value = 29.5, sd = 0.5 }
        yuki = 66
        tsumashita = "2 shaku"
    "#;
    let sheet: Sheet = toml::from_str(text).expect("a good sheet");
    assert_eq!((sheet.kind, sheet.cloth), (Kind::Yukata, Cloth::Cotton));
    assert_eq!(sheet.mitake_from, MitakeFrom::Shoulder);
    assert_eq!(sheet.parts[&Part::Mitake].unit, Unit::KujiraShaku);
    assert_eq!(sheet.parts[&Part::Yuki].unit, Unit::Centimetre);
    assert!(
        sheet.parts.contains_key(&Part::Erishita),
        "tsumashita is the erishita"
    );
    let again = toml::to_string(&sheet).expect("a sheet is plain data");
    assert!(again.contains("4 shaku 2 sun 5 bu"), "{again}");
    assert_eq!(
        toml::from_str::<Sheet>(&again).expect("its own text"),
        sheet
    );
    let json = serde_json::to_string(&sheet).expect("a sheet is plain data");
    assert_eq!(
        serde_json::from_str::<Sheet>(&json).expect("its own text"),
        sheet
    );
}

#[test]
fn a_wide_shoulder_on_a_narrow_back_is_warned_of_not_refused() {
    // S6 (wasai class notes) and S22 (wasai basics 6): up to 3.0 best, up to 3.8 tolerable.
    let with = |katahaba| {
        let whole = garment(&[
            ("mitake", "160"),
            ("ushirohaba", "28"),
            ("katahaba", katahaba),
        ]);
        whole.warnings().iter().map(|w| w.code).collect::<Vec<_>>()
    };
    assert_eq!(with("30.9"), Vec::<&str>::new());
    assert_eq!(with("31.5"), ["shoulder-drag-slight"]);
    assert_eq!(with("32"), ["shoulder-drag"]);
}

#[test]
fn a_deviation_too_large_to_say_anything_is_refused() {
    let entry = Entry {
        value: "160".into(),
        sd: Some("40".into()),
    };
    let fields = [
        ("kind", Entry::plain("nagagi")),
        ("mitake_from", Entry::plain("shoulder")),
        ("mitake", entry),
        ("maehaba", Entry::plain("23")),
    ];
    let problems = Sheet::from_fields(fields).expect_err("a deviation of 40 cm");
    assert_eq!(problems[0].place, "mitake.sd");
    assert_eq!(problems[0].code(), "problem-out-of-range");
}
