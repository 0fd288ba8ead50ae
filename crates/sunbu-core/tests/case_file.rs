//! Case files as a dresser writes them: read, refused with every reason, and written back.

#[path = "support/whole_case.rs"]
mod whole_case;

use sunbu_core::body::BodyMeasure;
use sunbu_core::case::{CaseFile, MAX_CASE_BYTES, MAX_NAME_CHARS, MAX_PROBLEMS};
use sunbu_core::dressing::{Decision, Occasion, Standard};
use sunbu_core::garment::{Cloth, Part};
use sunbu_core::measure::{Length, Unit};
use sunbu_core::problem::Problem;
use whole_case::{WHOLE, faults};

fn problems_of(text: &str) -> Vec<Problem> {
    CaseFile::parse(text).expect_err("the case has faults")
}

/// The whole case with one text in it replaced.
fn with(old: &str, new: &str) -> String {
    assert!(WHOLE.contains(old), "{old} is not in the case");
    WHOLE.replacen(old, new, 1)
}

#[test]
fn every_form_of_length_is_read_in_its_unit() {
    let case = CaseFile::parse(WHOLE).unwrap_or_else(|p| panic!("{p:#?}"));
    assert_eq!(case.occasion, Occasion::Formal);
    let person = &case.person;
    assert_eq!(person.name, "Tanabe Chiyo");
    let stature = person.measures[&BodyMeasure::Stature];
    assert_eq!((stature.length, stature.sd), (Length::from_mm(1580), None));
    let hip = person.measures[&BodyMeasure::HipGirth];
    assert_eq!(
        (hip.length, hip.sd),
        (Length::from_mm(910), Some(Length::from_mm(5)))
    );
    let yuki = person.measures[&BodyMeasure::SpineToWrist];
    assert_eq!(
        (yuki.length, yuki.unit),
        (Length::from_kujira_bu(180), Unit::KujiraShaku)
    );
    let [tsumugi, yukata] = case.garments.as_slice() else {
        panic!("two garments")
    };
    assert_eq!(
        tsumugi.sheet.parts[&Part::Ushirohaba].length,
        Length::from_kujira_bu(75)
    );
    assert_eq!(
        yukata.sheet.cloth,
        Cloth::Cotton,
        "a yukata is of cotton when nothing is said"
    );
    assert_eq!(case.locks[&Decision::BackSeamHip], -1.25);
    assert_eq!(case.locks[&Decision::KoshihimoBack], 96.0);
    assert_eq!(
        case.dresser.as_ref().map(|d| d.name.as_str()),
        Some("Mori Sayo")
    );
    let body = person.body().unwrap();
    assert_eq!(body.measure(BodyMeasure::HipGirth).sd_cm(), 0.5);
    assert!((tsumugi.garment().unwrap().part(Part::Mitake).value_cm() - 415.0 / 2.64).abs() < 1e-9);
}

#[test]
fn a_written_case_reads_as_the_same_case() {
    let case = CaseFile::parse(WHOLE).unwrap();
    let text = case.to_toml();
    assert_eq!(CaseFile::parse(&text).unwrap(), case, "{text}");
    assert!(
        text.contains("mitake = \"4 shaku 1 sun 5 bu\""),
        "the unit is kept: {text}"
    );
    assert!(
        text.contains("stature = 158\n"),
        "centimetres stay a number: {text}"
    );
    let one = CaseFile {
        garments: case.garments[..1].to_vec(),
        ..case
    };
    assert!(one.to_toml().contains("[garment]"));
    assert_eq!(CaseFile::parse(&one.to_toml()).unwrap(), one);
}

#[test]
fn a_house_standard_travels_with_the_case() {
    let mut case = CaseFile::parse(WHOLE).unwrap();
    let mut house = Standard::customary();
    house.name = "house of the \"three\" pines".into();
    case.standard = Some(house);
    let text = case.to_toml();
    assert_eq!(CaseFile::parse(&text).unwrap(), case);
    let found = problems_of(&text.replacen("weight = 0.5", "weight = -1", 1));
    let told = (
        "standard.targets.uwamae_corner.weight",
        "problem-contradiction-weight-range".into(),
    );
    assert_eq!(faults(&found), [told]);
    assert!(
        found[0].to_string().contains("from 0 to 100"),
        "{}",
        found[0]
    );
    let found = problems_of(&with("occasion", "standard = 3\noccasion"));
    assert_eq!(faults(&found), [("standard", "problem-wrong-shape".into())]);
}

#[test]
fn every_wrong_field_is_told_at_once_with_what_was_typed() {
    let text = r#"
occasion = "tea"
weather = "hot"
[person]
name = "  "
sex = "woman"
stature = 15.8
hip_girth = "about ninety"
waist_height = 170
elbow = 3
[garment]
name = "Grey"
kind = "nagagi"
mitake = true
ushirohaba = { value = 29, deviation = 1 }
yuki = { sd = 1 }
[dressing]
nape_drop = 500
hat = 1
"#;
    let found = problems_of(text);
    assert_eq!(
        faults(&found),
        [
            ("weather", "problem-unknown-field".into()),
            ("occasion", "problem-unknown-choice".into()),
            ("person.name", "problem-missing".into()),
            ("person.sex", "problem-unknown-choice".into()),
            ("person.hip_girth", "problem-unreadable".into()),
            ("person.elbow", "problem-unknown-field".into()),
            ("person.stature", "problem-out-of-range".into()),
            ("person.waist_height", "problem-out-of-range".into()),
            ("garment.mitake", "problem-wrong-shape".into()),
            (
                "garment.ushirohaba.deviation",
                "problem-unknown-field".into()
            ),
            ("garment.yuki.value", "problem-missing".into()),
            ("garment.mitake_from", "problem-unknown-choice".into()),
            ("dressing.hat", "problem-unknown-field".into()),
            ("dressing.nape_drop", "problem-out-of-range".into()),
        ]
    );
    let typed = |place: &str| {
        found
            .iter()
            .find(|p| p.place == place)
            .map(|p| p.typed.as_str())
    };
    assert_eq!(typed("person.stature"), Some("15.8"));
    assert_eq!(typed("person.hip_girth"), Some("about ninety"));
    assert_eq!(typed("garment.mitake"), Some("true"));
    let said: Vec<String> = found.iter().map(Problem::to_string).collect();
    let said = said.join("\n");
    for part in [
        "100 to 215 cm",
        "women or men",
        "indoors or formal",
        "0 to 30 cm",
        "hem_height",
    ] {
        assert!(said.contains(part), "{part} in {said}");
    }
}

#[test]
fn an_empty_file_is_told_all_it_needs() {
    for text in ["", "\n\n", "# nothing yet"] {
        assert_eq!(
            faults(&problems_of(text)),
            [
                ("occasion", "problem-unknown-choice".into()),
                ("person", "problem-missing".into()),
                ("garment", "problem-missing-one-of".into()),
            ]
        );
    }
    let found = problems_of("occasion = \"stage\"\n[person]\n[garment]");
    assert_eq!(
        faults(&found),
        [
            ("person.name", "problem-missing".into()),
            ("person.sex", "problem-unknown-choice".into()),
            ("person.stature", "problem-missing".into()),
            ("person.hip_girth", "problem-missing-one-of".into()),
            ("garment.name", "problem-missing".into()),
            ("garment.kind", "problem-unknown-choice".into()),
            ("garment.mitake_from", "problem-unknown-choice".into()),
            ("garment.mitake", "problem-missing".into()),
            ("garment.ushirohaba", "problem-missing-one-of".into()),
        ]
    );
}

#[test]
fn a_line_that_is_no_toml_does_not_hide_the_other_faults() {
    // The commonest slip of all: a length in shaku without its quotes.
    let text = with("\"4尺1寸5分\"", "4尺1寸5分").replace("stature = 158", "stature = 58");
    let found = problems_of(&text);
    let line = text.lines().position(|l| l.contains("4尺1寸5分")).unwrap() + 1;
    let place = format!("line {line}");
    assert!(
        found
            .iter()
            .any(|p| p.place == place && p.typed == "mitake = 4尺1寸5分"),
        "{found:#?}"
    );
    assert!(
        found.iter().any(|p| p.place == "person.stature"),
        "{found:#?}"
    );
    assert!(
        !found.iter().any(|p| p.place.ends_with("mitake")),
        "told twice: {found:#?}"
    );
    let said = found.iter().find(|p| p.place == place).unwrap().to_string();
    assert!(said.contains("needs quotes"), "{said}");
}

#[test]
fn wrong_encodings_are_named() {
    let utf16: Vec<u8> = [0xfeff_u16]
        .into_iter()
        .chain(WHOLE.encode_utf16())
        .flat_map(u16::to_le_bytes)
        .collect();
    // "4尺" in Shift JIS (JIS X 0208: 尺 is 0x8EDA), from memory.
    let sjis = b"[person]\nstature = \"4\x8e\xda\"";
    for (bytes, seems) in [
        (utf16.as_slice(), "UTF-16"),
        (sjis.as_slice(), "Shift JIS"),
        (b"\x7fELF\0\0\xff".as_slice(), "no text at all"),
        (b"occasion = \0".as_slice(), "no text at all"),
    ] {
        let found = CaseFile::parse_bytes(bytes).unwrap_err();
        assert_eq!(faults(&found), [("file", "problem-not-text".into())]);
        assert!(found[0].to_string().contains(seems), "{}", found[0]);
    }
    let marked = [b"\xef\xbb\xbf", WHOLE.as_bytes()].concat();
    assert!(
        CaseFile::parse_bytes(&marked).is_ok(),
        "a byte order mark is no fault"
    );
    assert!(CaseFile::parse_bytes(WHOLE.replace('\n', "\r\n").as_bytes()).is_ok());
}

#[test]
fn garbage_is_refused_soon_and_with_a_bounded_answer() {
    // A megabyte each, which an unoptimised build reads in seconds; one of full length besides.
    const MB: usize = 1_000_000;
    let many_keys: String = (0..MB / 8).map(|i| format!("{i:x}=1\n")).collect();
    let texts = [
        "x".repeat(10 * MB),
        "寸".repeat(MAX_CASE_BYTES / 3),
        "=".repeat(MB),
        "\n= ".repeat(MB / 3),
        many_keys.clone(),
        format!("[person]\n{many_keys}"),
        format!("[dressing]\n{many_keys}"),
        format!("[person]\nstature = {{{}}}", many_keys.replace('\n', ",")),
        "[[garments]]\n".repeat(MB / 13),
        format!("a = {}", "[".repeat(MB)),
        "a.".repeat(MB / 2),
        format!("occasion = \"{}\"", "z".repeat(MB)),
        format!("[person]\nstature = {}", "9".repeat(MB)),
    ];
    for text in texts {
        let start = text.chars().take(40).collect::<String>();
        let clock = std::time::Instant::now();
        let found = CaseFile::parse_bytes(text.as_bytes()).expect_err("garbage is no case");
        let took = clock.elapsed().as_secs_f64();
        println!("{took:.2} s, {} problems: {start}", found.len());
        assert!(
            !found.is_empty() && found.len() <= MAX_PROBLEMS + 1,
            "{}: {start}",
            found.len()
        );
        // Chosen: nobody waits longer for a refusal, and a slow build machine is allowed for.
        assert!(took < 20.0, "{took} s for {start}");
    }
}

#[test]
fn numbers_that_are_no_lengths_are_refused_as_they_stand() {
    for number in [
        "nan",
        "inf",
        "-inf",
        "1e300",
        "-5",
        "99999999999999999999999999",
        "0x5f",
        "1e-300",
    ] {
        let found = problems_of(&with("stature = 158", &format!("stature = {number}")));
        let Some(stature) = found.iter().find(|p| p.place == "person.stature") else {
            assert_eq!(
                found[0].place.starts_with("line"),
                number.len() > 20,
                "{found:#?}"
            );
            continue;
        };
        assert_eq!(stature.typed, number, "{stature}");
    }
    let same = CaseFile::parse(&with("stature = 158", "stature = 1.58e2")).unwrap();
    assert_eq!(same, CaseFile::parse(WHOLE).unwrap());
}

#[test]
fn a_bare_shaku_is_the_kujira_unless_the_file_says_kane() {
    let garment = |shaku: &str| {
        let text = with("occasion", &format!("{shaku}\noccasion"));
        CaseFile::parse(&text).unwrap().garments[1].clone()
    };
    let in_kane = with("mitake = \"161 cm\"", "mitake = \"5尺3寸\"")
        .replacen("occasion", "shaku = \"kane\"\noccasion", 1)
        .replace("\"4尺1寸5分\"", "\"鯨尺4尺1寸5分\"")
        .replace("\"7 sun 5 bu\"", "\"kujira 7 sun 5 bu\"")
        .replace("\"1尺8寸\"", "\"2尺3寸\"");
    let case = CaseFile::parse(&in_kane).unwrap_or_else(|p| panic!("{p:#?}"));
    let mitake = case.garments[1].sheet.parts[&Part::Mitake];
    assert_eq!(
        (mitake.length, mitake.unit),
        (Length::from_kane_bu(530), Unit::KaneShaku)
    );
    // What is written names its shaku, so the copy needs no setting.
    assert_eq!(CaseFile::parse(&case.to_toml()).unwrap(), case);
    assert_eq!(garment("shaku = \"kujira\""), garment(""));
    let found = problems_of(&with("occasion", "shaku = \"cloth\"\noccasion"));
    assert_eq!(
        faults(&found),
        [("shaku", "problem-unknown-choice".into())],
        "told once"
    );
}

#[test]
fn names_and_notes_keep_to_their_limits() {
    let name = |name: &str| CaseFile::parse(&with("Tanabe Chiyo", name));
    assert!(name(&"葛".repeat(MAX_NAME_CHARS)).is_ok());
    assert_eq!(name("  山田 花子　").unwrap().person.name, "山田 花子");
    for bad in [
        "葛".repeat(MAX_NAME_CHARS + 1),
        "a\\nb".into(),
        "a\\u0000b".into(),
        "\\u202Eab".into(),
    ] {
        let found = name(&bad).unwrap_err();
        assert_eq!(
            faults(&found),
            [("person.name", "problem-bad-text".into())],
            "{bad}"
        );
        assert!(
            !found[0].to_string().contains('\u{0}'),
            "controls are not printed"
        );
    }
    let note = |note: &str| CaseFile::parse(&with("left shoulder lower", note));
    assert_eq!(note("two\\r\\nlines\\n").unwrap().person.note, "two\nlines");
    assert_eq!(
        faults(&note("bell \\u0007").unwrap_err())[0].0,
        "person.note"
    );
}

#[test]
fn one_garment_and_several_are_not_mixed() {
    let found = problems_of(&with("[[garments]]", "[garment]"));
    assert_eq!(
        faults(&found)[0],
        (
            "garments",
            "problem-contradiction-garment-and-garments".into()
        )
    );
    for (line, place) in [
        ("garments = []", "garments"),
        ("garments = [1]", "garments.1"),
        ("garment = 1", "garment"),
    ] {
        let text = format!("{line}\n{}", WHOLE.split("[[garments]]").next().unwrap());
        let found = problems_of(&text);
        assert_eq!(
            faults(&found),
            [(place, "problem-wrong-shape".into())],
            "{line}"
        );
    }
    let second = problems_of(&with("mitake = \"161 cm\"", "mitake = \"16.1 cm\""));
    assert_eq!(
        faults(&second),
        [("garments.2.mitake", "problem-out-of-range".into())]
    );
    assert_eq!(second[0].typed, "16.1 cm");
}

#[test]
fn the_other_name_of_a_measure_is_read_and_kept_in_problems() {
    let ok = CaseFile::parse(&with("yuki = 65.5", "tsumashita = 80")).unwrap();
    assert_eq!(
        ok.garments[0].sheet.parts[&Part::Erishita].length,
        Length::from_mm(800)
    );
    let found = problems_of(&with("yuki = 65.5", "tsumashita = 8"));
    assert_eq!(
        faults(&found)[0],
        ("garments.1.tsumashita", "problem-out-of-range".into())
    );
    let found = problems_of(&with("yuki = 65.5", "tsumashita = 80\nerishita = 80"));
    assert_eq!(
        faults(&found),
        [(
            "garments.1.tsumashita",
            "problem-contradiction-given-twice".into()
        )]
    );
}

#[test]
fn heights_out_of_order_name_both_fields_and_their_values() {
    let found = problems_of(&with(
        "waist_height = \"95.5 cm\"",
        "waist_height = 100\nhip_height = 101",
    ));
    let [problem] = found.as_slice() else {
        panic!("{found:#?}")
    };
    assert_eq!(problem.place, "person.hip_height");
    assert_eq!(problem.others(), ["person.waist_height"]);
    let said = problem.to_string();
    for part in ["101 cm", "100 cm", "tape both again"] {
        assert!(said.contains(part), "{said}");
    }
}
