//! What a check says of fixed dressings, whole, in both languages, held to files that are read when
//! they change; and what must hold of every such text.
//!
//! `UPDATE_SNAPSHOTS=1 cargo test -p sunbu-words --test check_report` writes the files anew.

#[path = "../../sunbu-core/tests/support/checked.rs"]
mod checked;

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use checked::Checked;
use sunbu_core::check::{Report, Skewed, WrongWay};
use sunbu_core::dressing::{Change, Decision, Quantity, Sight, Tell, step_of};
use sunbu_core::fault::{Fault, Ticks};
use sunbu_core::photo::{Mark, Shot, Skew, Unseen, View};
use sunbu_words::{Lang, Words};

/// The fixed checks with the name of their file.
fn reports(woman: &Checked) -> Vec<(&'static str, Report, usize)> {
    let off = |changes: &[(Decision, f64)]| {
        let by = |dressing: sunbu_core::dressing::Dressing, &(d, by): &(Decision, f64)| {
            dressing.with(d, dressing.get(d) + by)
        };
        changes.iter().fold(woman.planned, by)
    };
    let of = |done, views: &[View]| -> Vec<Shot> {
        views.iter().map(|&view| woman.photo(&done, view)).collect()
    };
    let both = [View::Front, View::Back];
    let wrong = off(&[(Decision::HemHeight, 4.0), (Decision::NapeDrop, -3.0)]);
    let ticks = Ticks::from([Fault::FoldWrinkled, Fault::ObiageUntidy]);
    // The fold alone is seen to be short: tie, obi or taking up may be behind it.
    let mut fold = of(off(&[(Decision::KoshihimoFront, 4.0)]), &[View::Front]);
    let seen = [
        Mark::Floor,
        Mark::Crown,
        Mark::FoldCentre,
        Mark::ObiLowerCentre,
        Mark::HemLeft,
        Mark::HemRight,
    ];
    fold[0].marks.retain(|mark, _| seen.contains(mark));
    let mut mirrored = of(woman.planned, &[View::Front]);
    for placed in mirrored[0].marks.values_mut() {
        placed.at[0] = 1500.0 - placed.at[0];
    }
    mirrored[0].marks = mirrored[0]
        .marks
        .iter()
        .map(|(mark, placed)| (mark.mirrored(), *placed))
        .collect();
    // The same photo without a mirror, marked as if it came from one.
    let mut said_mirrored = of(woman.planned, &[View::Front]);
    said_mirrored[0].mirrored = true;
    said_mirrored[0].marks = said_mirrored[0]
        .marks
        .iter()
        .map(|(mark, placed)| (mark.mirrored(), *placed))
        .collect();
    vec![
        (
            "as-planned",
            woman.report(&of(woman.planned, &both), &Ticks::new()),
            2,
        ),
        ("two-deeds", woman.report(&of(wrong, &both), &ticks), 2),
        ("one-line", woman.report(&fold, &Ticks::new()), 1),
        ("right-over-left", woman.report(&mirrored, &Ticks::new()), 1),
        ("by-eye", woman.report(&[], &ticks), 0),
        ("short-sleeves", short_sleeves(), 2),
        (
            "said-mirrored",
            woman.report(&said_mirrored, &Ticks::new()),
            1,
        ),
        ("nothing-read", woman.report(&[], &Ticks::new()), 0),
    ]
}

/// A dressing as planned in a garment whose sleeves are short for her, which no hand can change.
fn short_sleeves() -> Report {
    let woman = Checked::in_sleeves(61.0);
    let shots = [View::Front, View::Back].map(|view| woman.photo(&woman.planned, view));
    woman.report(&shots, &Ticks::new())
}

/// Report and message as one text.
fn text(words: &Words, woman: &Checked, report: &Report, photos: usize) -> String {
    let mut out = String::new();
    for section in words.report(report, &woman.rules) {
        out += &format!("# {}\n\n", section.title);
        for line in section.lines {
            out += &format!("- {line}\n");
        }
        out += "\n";
    }
    let name = match words.lang() {
        Lang::En => "Aki",
        Lang::Ja => "秋",
    };
    out + "----\n\n" + &words.message(report, Some(name), photos)
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/snapshots")
}

#[test]
fn every_report_is_the_one_that_was_read() {
    let woman = Checked::woman();
    let update = std::env::var_os("UPDATE_SNAPSHOTS").is_some();
    let (mut differ, mut names) = (Vec::new(), BTreeSet::new());
    for (name, report, photos) in reports(&woman) {
        for &lang in Lang::ALL {
            let file = folder().join(format!("check-{name}-{}.txt", lang.code()));
            let said = text(Words::of(lang), &woman, &report, photos);
            names.insert(file.clone());
            if update {
                fs::write(&file, said).expect("a snapshot is written");
            } else if fs::read_to_string(&file).ok().as_ref() != Some(&said) {
                differ.push(format!("{}:\n{said}", file.display()));
            }
        }
    }
    assert!(differ.is_empty(), "{}", differ.join("\n"));
    for entry in fs::read_dir(folder()).expect("the snapshots") {
        let path = entry.expect("an entry").path();
        assert!(names.contains(&path), "{} is no report", path.display());
    }
}

/// What is said of a check for each decision, each skew and each reason not to see something; whole
/// reports are held by `check_report`.
fn said_of_a_check(words: &Words) -> Vec<String> {
    let mut said = Vec::new();
    for &decision in Decision::ALL {
        said.extend([words.decision_short(decision), words.practise(decision)]);
        for by in [2.0, -2.0] {
            said.push(words.deed(decision, by));
            said.push(words.todo(&Change {
                decision,
                step: step_of(decision),
                from: 0.0,
                to: by,
                cures: Vec::new(),
            }));
        }
    }
    for &skew in Skew::ALL {
        said.push(words.skew_name(skew));
        for (cm, sd) in [(3.0, 0.4), (-3.0, 0.4), (1.8, 0.8), (-0.4, 0.1)] {
            let view = View::Front;
            said.push(words.skewed(&Skewed { skew, view, cm, sd }));
        }
    }
    for &quantity in Quantity::ALL {
        for why in [
            Unseen::Covered,
            Unseen::OtherSide(View::Back),
            Unseen::NotMarked(Mark::HemLeft),
        ] {
            said.push(words.unseen_why(quantity, why));
        }
        said.push(words.tell(&Tell {
            quantity,
            sight: Sight::of(quantity),
            if_told: 2.0,
            if_other: -1.0,
            apart: 3.0,
        }));
    }
    said.extend([0.99, 0.9, 0.6, 0.3].map(|p| words.sureness(p)));
    for mirrored in [false, true] {
        let way = |&view: &View| WrongWay { view, mirrored };
        let all: Vec<WrongWay> = View::ALL.iter().map(way).collect();
        said.extend(words.wrong_way(&all));
    }
    said.push(words.doubtful(View::Right, Mark::HemCentre));
    said
}

#[test]
fn every_finding_is_said_in_every_language_in_its_own_letters() {
    for &lang in Lang::ALL {
        for text in said_of_a_check(Words::of(lang)) {
            let japanese = text
                .chars()
                .any(|c| matches!(c, '\u{3040}'..='\u{30ff}' | '\u{4e00}'..='\u{9fff}'));
            assert_eq!(japanese, lang == Lang::Ja, "{lang:?}: {text}");
        }
    }
}

#[test]
fn right_over_left_is_said_before_all_else_and_otherwise_when_a_mirror_was_named() {
    let woman = Checked::woman();
    let all = reports(&woman);
    for (name, mirrored, id) in [
        ("right-over-left", false, "message-way"),
        ("said-mirrored", true, "message-way-mirrored"),
    ] {
        let found = all.iter().find(|(of, _, _)| *of == name);
        let (_, report, _) = found.expect("one of the reports");
        for &lang in Lang::ALL {
            let words = Words::of(lang);
            let first = words.report(report, &woman.rules).remove(0);
            let view = View::Front;
            assert_eq!(
                Some(first.lines[0].clone()),
                words.wrong_way(&[WrongWay { view, mirrored }])
            );
            let message = words.message(report, None, 1);
            let paragraphs: Vec<&str> = message.split("\n\n").collect();
            assert_eq!(paragraphs[1], words.get(id));
        }
    }
}

#[test]
fn a_message_carries_every_caution_of_what_it_asks_and_defers_to_those_who_know() {
    let woman = Checked::woman();
    let mut cautions = 0;
    for (name, report, photos) in reports(&woman) {
        for &lang in Lang::ALL {
            let words = Words::of(lang);
            let message = words.message(&report, None, photos);
            let minded = Words::cautions_of(&words.advised(&report));
            for caution in &minded {
                let told = words.caution(*caution);
                assert!(message.contains(&told), "{name}: no “{told}” in\n{message}");
            }
            let defers = message.contains(&words.cautions_note());
            assert_eq!(defers, !minded.is_empty(), "{name}\n{message}");
            cautions = cautions.max(minded.len());
        }
    }
    // Tight ties, fainting, pregnancy, heat, long hem are of one of them.
    assert!(cautions >= 5, "only {cautions} cautions at most");
}

#[test]
fn nothing_read_nothing_sure_and_nothing_to_change_are_three_things() {
    let woman = Checked::woman();
    let all = reports(&woman);
    let of = |name: &str| {
        let found = all.iter().find(|(of, _, _)| *of == name);
        found.expect("one of the reports").1.clone()
    };
    let unread = of("nothing-read");
    let mut unsure = of("as-planned");
    unsure.diagnosis.perhaps = of("two-deeds").diagnosis.perhaps;
    assert!(!unsure.diagnosis.perhaps.is_empty());
    for (report, id, to_send) in [
        (&unread, "check-nothing-read-yet", "message-nothing-read"),
        (&unsure, "check-nothing-sure", "message-nothing-sure"),
        (
            &of("as-planned"),
            "check-nothing-to-change",
            "message-nothing",
        ),
    ] {
        for &lang in Lang::ALL {
            let words = Words::of(lang);
            assert_eq!(words.nothing_to_change(report), words.get(id));
            let message = words.message(report, None, 1);
            let told = words.get(to_send);
            assert!(message.contains(&told), "no “{told}” in\n{message}");
        }
    }
}

#[test]
fn sleeves_that_differ_are_named_and_not_called_nothing_to_change() {
    let woman = Checked::woman();
    let (_, mut report, _) = reports(&woman).remove(0);
    let skewed = Skewed {
        skew: Skew::SleeveDifference,
        view: View::Front,
        cm: 4.0,
        sd: 0.3,
    };
    assert!(skewed.is_fault() && skewed.fault().is_none());
    report.skews.push(skewed);
    for &lang in Lang::ALL {
        let words = Words::of(lang);
        let line = words.skewed(&skewed).to_lowercase();
        let line = line.split(['(', '（']).next().unwrap_or_default().trim();
        for said in [
            words.nothing_to_change(&report),
            words.message(&report, None, 1),
        ] {
            let is_named = said.to_lowercase().contains(line);
            assert!(is_named, "no “{line}” in\n{said}");
            let id = "check-nothing-to-change";
            assert!(!said.contains(&words.get(id)), "{said}");
            assert!(!said.contains(&words.get("message-nothing")), "{said}");
        }
    }
}

#[test]
fn a_fault_that_no_change_helps_is_not_called_nothing_to_change() {
    let report = short_sleeves();
    assert!(!report.diagnosis.faults.is_empty(), "{report:?}");
    assert!(report.advice.is_empty(), "{:?}", report.advice);
    for &lang in Lang::ALL {
        let words = Words::of(lang);
        let said = words.nothing_to_change(&report);
        let sleeve = words.finding_short(&report.diagnosis.faults[0]);
        assert!(said.contains(&sleeve), "{said}");
        let message = words.message(&report, None, 2);
        assert!(message.contains(&sleeve), "{message}");
        assert!(
            !message.contains(&words.get("message-nothing")),
            "{message}"
        );
    }
}

#[test]
fn a_message_asks_at_most_three_things_and_names_no_measure_of_the_body() {
    let woman = Checked::woman();
    let heights = ["158", "159", "160", "161", "92 cm", "93 cm", "94 cm"];
    for (name, report, photos) in reports(&woman) {
        for &lang in Lang::ALL {
            let message = Words::of(lang).message(&report, Some("Aki"), photos);
            let asked = message
                .lines()
                .filter(|line| line.chars().next().is_some_and(|c| c.is_ascii_digit()))
                .count();
            assert!(asked <= 3, "{name}: {asked} things\n{message}");
            for height in heights {
                assert!(!message.contains(height), "{name}: {height}\n{message}");
            }
        }
    }
}

#[test]
fn every_number_of_a_report_has_its_unit() {
    let woman = Checked::woman();
    // A number, or two with a dash, and what must follow it. Places in a list and hours of practice
    // are words or stand before a full stop.
    let number = regex::Regex::new(r"\d+(?:\.\d+)?(?:\s*\S+)?").expect("a pattern");
    let follows = |found: &str| {
        let rest = found.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
        let rest = rest.trim_start();
        let with_unit = ["cm", "%", "–", "〜", "to", "つ", "枚", "本", "回", "mm"];
        found.ends_with('.') || with_unit.iter().any(|unit| rest.starts_with(unit))
    };
    for (name, report, photos) in reports(&woman) {
        for &lang in Lang::ALL {
            let said = text(Words::of(lang), &woman, &report, photos);
            for found in number.find_iter(&said) {
                assert!(
                    follows(found.as_str()),
                    "{name}: “{}” in\n{said}",
                    found.as_str()
                );
            }
        }
    }
}
