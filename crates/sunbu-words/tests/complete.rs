//! No message can be missing: every keyed member of the core is said in every language, every id
//! in the sources exists, and no message lies unused.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use fluent_syntax::ast::Entry;
use regex::Regex;
use sunbu_core::body::{BodyMeasure, Sex, Unlikely};
use sunbu_core::dressing::{
    Against, Caution, Cut, Decision, HandUnit, HemSeen, Landmark, Occasion, Onlooker, Quantity,
    Remedy, StepId, Verdict, WayOut,
};
use sunbu_core::fault::{Area, Cause, Fault as Flaw};
use sunbu_core::garment::{Cloth, Kind, MitakeFrom, Part, rules};
use sunbu_core::measure::{Origin, Shaku, Unit, parse_length};
use sunbu_core::photo::{Mark, Skew, Trust, View};
use sunbu_core::problem::{Fault, Problem};
use sunbu_words::{Lang, Words};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// Calls every saying of a language; in a debug build a missing message or argument panics.
fn say_everything(words: &Words) -> Vec<String> {
    let mut said = Vec::new();
    for &q in Quantity::ALL {
        said.extend([
            words.quantity(q),
            words.quantity_short(q),
            words.miss(q, 3.0),
            words.miss(q, -3.0),
        ]);
    }
    for &d in Decision::ALL {
        said.extend([words.decision(d), words.work(d, 2.0), words.work(d, -2.0)]);
    }
    for m in BodyMeasure::ALL.iter().copied() {
        said.extend([words.body_measure(m), words.body_measure_how(m)]);
        let (value_cm, expected_cm) = (160.0, 140.0);
        let unlikely = Unlikely {
            measure: m,
            value_cm,
            expected_cm,
            sd_cm: 3.0,
            deviations: 6.7,
        };
        said.push(words.unlikely(&unlikely));
    }
    for &p in Part::ALL {
        said.extend([words.part(p), words.part_how(p)]);
    }
    said.extend(Occasion::ALL.iter().map(|&o| words.occasion(o)));
    said.extend(Verdict::ALL.iter().map(|&v| words.verdict(v)));
    said.extend(Cut::ALL.iter().map(|&c| words.cut(c, 3.0)));
    said.extend(Landmark::ALL.iter().map(|&l| words.landmark(l)));
    said.extend(HandUnit::ALL.iter().map(|&h| words.hand_unit(h)));
    said.extend(Caution::ALL.iter().map(|&c| words.caution(c)));
    said.extend(Kind::ALL.iter().map(|&k| words.kind(k)));
    said.extend(Cloth::ALL.iter().map(|&c| words.cloth(c)));
    said.extend(MitakeFrom::ALL.iter().map(|&m| words.mitake_from(m)));
    said.extend([Sex::Women, Sex::Men].map(|sex| words.sex(sex)));
    said.extend(
        [
            Origin::Taped,
            Origin::Completed,
            Origin::Photo,
            Origin::Customary,
            Origin::Learned,
        ]
        .map(|origin| words.origin(origin)),
    );
    said.extend([Unit::Centimetre, Unit::KujiraShaku, Unit::KaneShaku].map(|u| words.unit(u)));
    for &s in StepId::ALL {
        said.extend([words.step_title(s), words.step_text(s)]);
    }
    said.push(words.cautions_note());
    said.extend(Area::ALL.iter().map(|&a| words.fault_area(a)));
    said.extend(Cause::ALL.iter().map(|&c| words.fault_cause(c)));
    for &flaw in Flaw::ALL {
        said.extend(said_of_fault(words, flaw));
    }
    said.extend(View::ALL.iter().map(|&v| words.view(v)));
    for &onlooker in Onlooker::ALL {
        said.extend([words.onlooker(onlooker), words.viewer(&onlooker.viewer())]);
    }
    for (at_leg_cm, bare_cm) in [(-4.0, -11.0), (2.0, -5.0), (9.0, 2.0), (15.0, 8.0)] {
        said.push(words.hem_seen(&HemSeen {
            hem_cm: 2.0,
            stands_out_cm: 10.0,
            slope: 0.1,
            at_leg_cm,
            at_leg_sd_cm: 0.6,
            bare_cm,
            bare_sd_cm: 0.7,
        }));
    }
    said.extend([Trust::Sure, Trust::Unsure].map(|t| words.trust(t)));
    for &mark in Mark::ALL {
        said.extend([words.mark(mark), words.mark_hint(mark)]);
    }
    for &remedy in Remedy::ALL {
        for left in [0.0, -2.0] {
            said.push(words.way_out(&WayOut {
                remedy,
                amount: 4.0,
                left,
            }));
        }
    }
    said.extend(rules::ALL.iter().map(|rule| words.rule(rule)));
    for halves in 1..=14 {
        let count = f64::from(halves) / 2.0;
        for &unit in HandUnit::ALL {
            said.push(words.against(&Against::Hand { unit, count }));
        }
        for &landmark in Landmark::ALL {
            for fingers in [count, -count, 0.0] {
                said.push(words.against(&Against::Body { landmark, fingers }));
            }
        }
    }
    said
}

/// Everything that is said of one fault of the catalogue: name, sign, causes, now, next time.
fn said_of_fault(words: &Words, fault: Flaw) -> [String; 5] {
    [
        words.fault_name(fault),
        words.fault_sign(fault),
        words.fault_causes(fault),
        words.fault_now(fault),
        words.fault_next(fault),
    ]
}

/// The longest text of a fault, in characters: two lines of a phone's page, chosen.
const LONGEST_OF_FAULT: usize = 140;

#[test]
fn each_fault_is_said_shortly_and_under_a_name_of_its_own() {
    for &lang in Lang::ALL {
        let words = Words::of(lang);
        let mut names = BTreeSet::new();
        for &fault in Flaw::ALL {
            for text in said_of_fault(words, fault) {
                let length = text.chars().count();
                assert!(
                    length <= LONGEST_OF_FAULT,
                    "{}: {length} characters: {text}",
                    fault.key()
                );
            }
            let name = words.fault_name(fault);
            assert!(names.insert(name.clone()), "two faults are called {name}");
        }
        let marks: BTreeSet<String> = Mark::ALL.iter().map(|&m| words.mark(m)).collect();
        assert_eq!(marks.len(), Mark::COUNT, "two marks have one name");
    }
}

#[test]
fn every_member_of_the_core_is_said_in_every_language() {
    for &lang in Lang::ALL {
        let said = say_everything(Words::of(lang));
        assert!(
            said.iter().all(|text| !text.trim().is_empty()),
            "{lang:?} says nothing somewhere"
        );
    }
}

#[test]
fn japanese_is_said_in_japanese() {
    for text in say_everything(Words::of(Lang::Ja)) {
        let japanese = text
            .chars()
            .any(|c| matches!(c, '\u{3040}'..='\u{30ff}' | '\u{4e00}'..='\u{9fff}'));
        assert!(japanese, "{text}");
        assert!(
            !text.contains("℃") && !text.chars().any(|c| ('０'..='９').contains(&c)),
            "{text}"
        );
    }
}

/// One text for every kind of length error.
const NO_LENGTHS: [(&str, &str); 13] = [
    ("empty", ""),
    ("not_a_number", "tall"),
    ("ambiguous_comma", "1,610"),
    ("missing_unit", "4尺2"),
    ("missing_number", "4尺寸"),
    ("unknown_unit", "4 ells"),
    ("mixed_units", "4尺 3 cm"),
    ("repeated_unit", "4尺2尺"),
    ("out_of_order", "2寸4尺"),
    ("subunit_too_large", "4尺12寸"),
    ("fraction_not_last", "4.5尺2寸"),
    ("too_large", "20000"),
    ("negative", "-3"),
];

#[test]
fn every_kind_of_length_error_is_told_with_what_was_typed() {
    let long = "9".repeat(5000);
    for (code, typed) in NO_LENGTHS.into_iter().chain([("too_long", long.as_str())]) {
        let error = parse_length(typed, Shaku::Kujira).expect_err(typed);
        assert_eq!(error.code(), code, "{typed}");
        for &lang in Lang::ALL {
            let told = Words::of(lang).length_error(&error);
            assert!(code == "too_long" || told.contains(typed), "{told}");
        }
    }
}

#[test]
fn every_kind_of_fault_is_told_in_every_language() {
    let others = || vec!["person.hip_girth".to_owned(), "garment.maehaba".to_owned()];
    let unreadable = parse_length("4 ells", Shaku::Kujira).expect_err("no unit");
    let faults = [
        Fault::Missing,
        Fault::MissingOneOf { others: others() },
        Fault::Unreadable(unreadable),
        Fault::WrongShape {
            expected: "a length such as 161",
        },
        Fault::WrongShape {
            expected: "a text in quotes",
        },
        Fault::WrongShape {
            expected: "a table",
        },
        Fault::WrongShape { expected: "tables" },
        Fault::OutOfRange {
            low_cm: 40.0,
            high_cm: 120.0,
        },
        Fault::Contradiction {
            code: "given-twice",
            english: "",
            args: Vec::new(),
            other: others(),
        },
        Fault::UnknownField { known: others() },
        Fault::UnknownChoice { allowed: others() },
        Fault::BadText {
            most_chars: 80,
            lines: false,
        },
        Fault::BadText {
            most_chars: 2000,
            lines: true,
        },
        Fault::Form {
            why: "expected a value".into(),
        },
        Fault::NotText { seems: "UTF-16" },
        Fault::NotText {
            seems: "no text at all",
        },
        Fault::NotText {
            seems: "another encoding",
        },
        Fault::TooMuch {
            most_bytes: 4 * 1024 * 1024,
        },
        Fault::TooManyProblems { told: 500 },
    ];
    for &lang in Lang::ALL {
        for fault in &faults {
            for typed in ["", "4\u{7} ells"] {
                let problem = Problem::new("garment.erishita", typed, fault.clone());
                let (line, sentence) = (
                    Words::of(lang).problem(&problem),
                    Words::of(lang).fault(&problem),
                );
                assert!(line.starts_with("garment.erishita"), "{line}");
                assert!(!sentence.is_empty() && !line.contains('\u{7}'), "{line}");
            }
        }
    }
}

#[test]
fn a_form_calls_other_fields_by_name_and_a_file_by_its_keys() {
    let others = vec!["garment.maehaba".to_owned()];
    let problem = Problem::new("garment.ushirohaba", "", Fault::MissingOneOf { others });
    let words = Words::of(Lang::En);
    assert_eq!(
        words.problem(&problem),
        "garment.ushirohaba: is needed and not given; enter it, or instead garment.maehaba"
    );
    assert!(
        words
            .fault(&problem)
            .ends_with("or instead Front width (maehaba)")
    );
    assert!(Words::of(Lang::Ja).fault(&problem).contains("前幅"));
}

fn sources(folder: &Path, found: &mut Vec<(PathBuf, String)>) {
    for entry in fs::read_dir(folder).expect("a folder of the repository") {
        let path = entry.expect("an entry of it").path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            let text = fs::read_to_string(&path).expect("source is UTF-8");
            found.push((path, text));
        }
    }
}

/// All Rust sources below the `src` folders of `crates/`.
fn program() -> Vec<(PathBuf, String)> {
    let mut found = Vec::new();
    for entry in fs::read_dir(root().join("crates")).expect("the crates") {
        sources(&entry.expect("a crate").path().join("src"), &mut found);
    }
    found
}

/// Ids (with `.attribute`) of all messages of a language.
fn ids(lang: Lang) -> BTreeSet<String> {
    let mut ids = BTreeSet::new();
    for entry in fs::read_dir(root().join("locales").join(lang.code())).expect("its messages") {
        let text = fs::read_to_string(entry.expect("a file").path()).expect("messages are UTF-8");
        let resource = fluent_syntax::parser::parse(text.as_str()).expect("messages are Fluent");
        for entry in &resource.body {
            let Entry::Message(message) = entry else {
                continue;
            };
            if message.value.is_some() {
                ids.insert(message.id.name.to_owned());
            }
            ids.extend(
                message
                    .attributes
                    .iter()
                    .map(|a| format!("{}.{}", message.id.name, a.id.name)),
            );
        }
    }
    ids
}

#[test]
fn every_id_in_the_sources_has_its_message() {
    // A receiver called `w` or ending in `words`, or `self` inside the words themselves.
    let asked = Regex::new(
        r#"(?:\bw|words|words\(\)|\bself)\s*\.\s*(?:get|with)\(\s*&?"([a-z][a-z0-9_.-]*)""#,
    )
    .expect("a pattern");
    let mut seen = 0;
    for (path, text) in program() {
        for found in asked.captures_iter(&text) {
            let receiver_is_self = found[0].starts_with("self");
            if receiver_is_self && !path.to_string_lossy().contains("sunbu-words") {
                continue;
            }
            seen += 1;
            for &lang in Lang::ALL {
                assert!(
                    Words::of(lang).has(&found[1]),
                    "{}: no message {} in {lang:?}",
                    path.display(),
                    &found[1]
                );
            }
        }
    }
    assert!(
        seen > 30,
        "only {seen} ids found: the pattern no longer fits the sources"
    );
}

#[test]
fn every_contradiction_warning_and_rule_of_the_core_has_its_message() {
    let code = Regex::new(r#""([a-z]+(?:-[a-z]+)+)""#).expect("a pattern");
    let mut seen = 0;
    for (path, text) in program() {
        let path = path.to_string_lossy().replace('\\', "/");
        let told = [
            "body/possible.rs",
            "garment/check.rs",
            "garment/rules.rs",
            "sunbu-core/src/case/",
        ];
        if !told.iter().any(|part| path.contains(part)) {
            continue;
        }
        // Codes are the only words with hyphens in these files; tests below them say anything.
        let text = text.split("#[cfg(test)]").next().unwrap_or_default();
        for found in code.captures_iter(text) {
            seen += 1;
            let known = ["problem-contradiction-", "warning-", "rule-"]
                .iter()
                .any(|kind| Words::of(Lang::En).has(&format!("{kind}{}", &found[1])));
            assert!(known, "{path}: nothing is said for {}", &found[1]);
        }
    }
    assert!(
        seen > 40,
        "only {seen} codes found: the pattern no longer fits the sources"
    );
}

#[test]
fn no_message_lies_unused() {
    let keyed: BTreeSet<String> = [
        (
            "quantity",
            Quantity::ALL.iter().map(|m| m.key()).collect::<Vec<_>>(),
        ),
        ("decision", Decision::ALL.iter().map(|m| m.key()).collect()),
        (
            "measure",
            BodyMeasure::ALL.iter().map(|m| m.key()).collect(),
        ),
        ("part", Part::ALL.iter().map(|m| m.key()).collect()),
        ("occasion", Occasion::ALL.iter().map(|m| m.key()).collect()),
        ("verdict", Verdict::ALL.iter().map(|m| m.key()).collect()),
        ("cut", Cut::ALL.iter().map(|m| m.key()).collect()),
        ("landmark", Landmark::ALL.iter().map(|m| m.key()).collect()),
        ("hand", HandUnit::ALL.iter().map(|m| m.key()).collect()),
        ("step", StepId::ALL.iter().map(|m| m.key()).collect()),
        ("caution", Caution::ALL.iter().map(|m| m.key()).collect()),
        ("remedy", Remedy::ALL.iter().map(|m| m.key()).collect()),
        ("kind", Kind::ALL.iter().map(|m| m.key()).collect()),
        ("cloth", Cloth::ALL.iter().map(|m| m.key()).collect()),
        (
            "mitake_from",
            MitakeFrom::ALL.iter().map(|m| m.key()).collect(),
        ),
        ("rule", rules::ALL.iter().map(|rule| rule.code).collect()),
        ("onlooker", Onlooker::ALL.iter().map(|m| m.key()).collect()),
        ("fault", Flaw::ALL.iter().map(|m| m.key()).collect()),
        ("cause", Cause::ALL.iter().map(|m| m.key()).collect()),
        ("area", Area::ALL.iter().map(|m| m.key()).collect()),
        ("photo-mark", Mark::ALL.iter().map(|m| m.key()).collect()),
        ("photo-view", View::ALL.iter().map(|m| m.key()).collect()),
        ("done", Decision::ALL.iter().map(|m| m.key()).collect()),
        ("todo", Decision::ALL.iter().map(|m| m.key()).collect()),
        ("skew", Skew::ALL.iter().map(|m| m.key()).collect()),
        (
            "length-error",
            NO_LENGTHS
                .iter()
                .map(|(code, _)| *code)
                .chain(["too_long"])
                .collect(),
        ),
        (
            "length-unit",
            vec![
                "m", "cm", "mm", "ft", "in", "jo", "shaku", "sun", "bu", "rin", "mo",
            ],
        ),
    ]
    .into_iter()
    .flat_map(|(kind, keys)| keys.into_iter().map(move |key| format!("{kind}-{key}")))
    .collect();
    let program: String = program().into_iter().map(|(_, text)| text).collect();
    let messages: String = [Lang::En, Lang::Ja]
        .iter()
        .flat_map(|lang| fs::read_dir(root().join("locales").join(lang.code())).expect("messages"))
        .map(|entry| fs::read_to_string(entry.expect("a file").path()).expect("UTF-8"))
        .collect();
    let mut unused = Vec::new();
    for id in ids(Lang::En) {
        let name = id.split('.').next().unwrap_or(&id);
        let code = name
            .trim_start_matches("problem-contradiction-")
            .trim_start_matches("warning-");
        // Asked for by its own name, by a name that is put together, or by another message.
        let put_together = name.match_indices('-').any(|(at, _)| {
            let prefix = &name[..=at];
            ["problem-contradiction-", "warning-"].contains(&prefix)
                && program.contains(&format!("\"{code}\""))
                || !["problem-", "problem-contradiction-", "warning-"].contains(&prefix)
                    && !keyed.iter().any(|key| key.starts_with(prefix))
                    && program.contains(&format!("\"{prefix}{{"))
                // Two halves that stand in the sources as such: "garments" and "erase-what".
                || program.contains(&format!("\"{}\"", &name[..at]))
                    && program.contains(&format!("\"{}\"", &name[at + 1..]))
        });
        let used = keyed.contains(name)
            || program.contains(&format!("\"{name}\""))
            || program.contains(&format!("\"{id}\""))
            || messages.contains(&format!("{{ {name} }}"))
            || put_together;
        if !used {
            unused.push(id);
        }
    }
    assert!(unused.is_empty(), "nowhere asked for: {unused:?}");
}
