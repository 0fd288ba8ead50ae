//! From the marks of photos to what to change: several photos together, strangers, order, and the
//! one thing that is good.

use std::collections::BTreeMap;

use sunbu_core::body::{Body, BodyMeasure, Population, Sex, Tape};
use sunbu_core::check::{
    Advice, Report, STRANGER, Stranger, WrongWay, check, combine, good, stranger,
};
use sunbu_core::dressing::{
    Decision, Dressing, Fitting, Locks, Observed, Occasion, Quantity, Rules, Standard, StepId,
    plan, predict,
};
use sunbu_core::fault::{Catalogue, Fault, Ticks};
use sunbu_core::garment::Sheet;
use sunbu_core::measure::Reading as Taped;
use sunbu_core::photo::{
    Mark, Marks, Placed, Reading, References, Shot, Subject, Trust, Unseen, View, expect, read,
};

struct Case {
    body: Body,
    fitting: Fitting,
    rules: Rules,
    planned: Dressing,
}

fn case() -> Case {
    let tape = Tape::of(Sex::Women)
        .with(BodyMeasure::Stature, 160.0)
        .with(BodyMeasure::HipGirth, 92.0)
        .build()
        .expect("a tape");
    let body = Population::shipped(Sex::Women)
        .complete(&tape)
        .expect("a body");
    let sheet: Sheet = toml::from_str(
        "kind='nagagi'\nmitake_from='back_seam'\nmitake=154\nyuki=67.5\nushirohaba=29.5\nmaehaba=23.5\n\
         okumihaba=15.2\naizumahaba=14.0\nkurikoshi=2.6\nerishita=80",
    )
    .expect("a sheet");
    let garment = sheet.complete().expect("a garment");
    let fitting = Fitting::new(&body, &garment);
    let rules = Standard::customary().rules(Occasion::Indoors, &body, garment.cloth());
    let best = plan(&fitting, &rules, &Locks::new());
    assert_eq!(best.missed().count(), 0, "a garment that fits");
    let planned = best.dressing;
    Case {
        body,
        fitting,
        rules,
        planned,
    }
}

fn placed(x: f64, y: f64) -> Placed {
    Placed {
        at: [x, y],
        trust: Trust::Sure,
    }
}

/// The photo of this dressing from one side, every place in sight marked where it is: the places
/// are those that the program itself expects of it.
fn photo(case: &Case, done: &Dressing, view: View) -> Shot {
    let mut shot = Shot {
        view,
        size: [1500, 2000],
        focal: Some(0.8),
        lens_height_cm: None,
        mirrored: false,
        references: References::default(),
        marks: Marks::from([
            (Mark::Floor, placed(750.0, 1850.0)),
            (Mark::Crown, placed(752.0, 250.0)),
        ]),
    };
    let subject = Subject {
        body: &case.body,
        fitting: &case.fitting,
        planned: done,
    };
    let expected = expect(&subject, &shot).expect("floor and crown are enough");
    for (mark, place) in expected.into_iter().filter(|(_, e)| e.in_sight) {
        shot.marks
            .entry(mark)
            .or_insert(placed(place.at[0], place.at[1]));
    }
    shot
}

fn readings(case: &Case, done: &Dressing, views: &[View]) -> Vec<Reading> {
    let subject = Subject {
        body: &case.body,
        fitting: &case.fitting,
        planned: &case.planned,
    };
    let shots = views.iter().map(|view| photo(case, done, *view));
    shots
        .map(|shot| read(&subject, &shot).expect("it reads"))
        .collect()
}

#[test]
fn a_dressing_as_planned_has_no_fault_no_cause_and_something_good() {
    let case = case();
    let readings = readings(&case, &case.planned, &[View::Front, View::Back]);
    let report = check(
        &case.fitting,
        &case.rules,
        &case.planned,
        &readings,
        &Ticks::new(),
    );
    assert_eq!(report.diagnosis.faults, []);
    assert_eq!(report.diagnosis.causes, []);
    assert_eq!(report.advice, []);
    assert!(report.good.is_some(), "something was within its range");
    assert_eq!(report.wrong_way, []);
}

#[test]
fn a_hem_set_four_too_high_is_found_on_two_photos_and_put_back() {
    let case = case();
    let hem = case.planned.get(Decision::HemHeight) + 4.0;
    let done = case.planned.with(Decision::HemHeight, hem);
    let readings = readings(&case, &done, &[View::Front, View::Back]);
    let report = check(
        &case.fitting,
        &case.rules,
        &case.planned,
        &readings,
        &Ticks::new(),
    );
    let causes: BTreeMap<Decision, f64> = report
        .diagnosis
        .causes
        .iter()
        .map(|c| (c.decision, c.amount))
        .collect();
    let amount = causes.get(&Decision::HemHeight).copied();
    assert!(
        amount.is_some_and(|a| (a - 4.0).abs() < 0.7),
        "hem 4 too high, found {causes:?}"
    );
    let first = report.advice.first().expect("something to change");
    assert!(
        matches!(first, Advice::Change(change) if change.decision == Decision::HemHeight),
        "{first:?}"
    );
}

#[test]
fn two_photos_are_surer_than_each_and_contradict_neither() {
    let case = case();
    let two = readings(&case, &case.planned, &[View::Front, View::Back]);
    let both = combine(&case.fitting, &two);
    for &quantity in both.quantities() {
        let (value, sd) = both.reading(quantity).expect("it was read");
        for one in two.iter().filter_map(|r| r.get(quantity)) {
            // Half a millimetre of the finest reading is added to each photo's own.
            let own = one.sd.hypot(0.05);
            assert!(sd <= own + 1e-9, "{quantity:?}: {sd} against {own}");
            let off = (value - one.value).abs();
            assert!(
                off <= own,
                "{quantity:?}: together {value} ± {sd}, one photo {} ± {own}",
                one.value
            );
        }
    }
}

#[test]
fn what_the_eye_saw_is_sorted_in_and_only_three_things_are_asked() {
    let case = case();
    let ticks = Ticks::from([
        Fault::ObiageUntidy,
        Fault::FoldWrinkled,
        Fault::BackWrinkled,
        Fault::JubanBelowHem,
    ]);
    let report = check(&case.fitting, &case.rules, &case.planned, &[], &ticks);
    assert_eq!(report.rows.len(), 4);
    assert_eq!(report.advice.len(), 3);
    assert_eq!(report.more, 1);
    let steps: Vec<StepId> = report.advice.iter().map(Advice::step).collect();
    assert!(steps.is_sorted(), "{steps:?}");
    assert_eq!(report.advice[0], Advice::Fault(Fault::JubanBelowHem));
}

/// What a hem set four too high comes to, with these ticked.
fn hem_too_high(case: &Case, ticks: &Ticks) -> Report {
    let hem = case.planned.get(Decision::HemHeight) + 4.0;
    let done = case.planned.with(Decision::HemHeight, hem);
    let readings = readings(case, &done, &[View::Front, View::Back]);
    check(&case.fitting, &case.rules, &case.planned, &readings, ticks)
}

#[test]
fn what_a_change_cures_as_measured_is_not_asked_again_because_the_eye_saw_it() {
    let case = case();
    let alone = hem_too_high(&case, &Ticks::new());
    let seen = hem_too_high(&case, &Ticks::from([Fault::HemShort]));
    assert_eq!(seen.advice, alone.advice);
    assert_eq!(seen.more, alone.more);
    let rows = seen.rows.len();
    assert_eq!(rows, alone.rows.len() + 1, "what was seen is still told");
    // The same quantity, but on its other side: that is another thing.
    let other = hem_too_high(&case, &Ticks::from([Fault::HemDragging]));
    let (all, before) = (
        other.advice.len() + other.more,
        alone.advice.len() + alone.more,
    );
    assert_eq!(all, before + 1, "{:?}", other.advice);
}

#[test]
fn what_is_called_good_lies_within_its_range_by_half_of_its_interval_at_least() {
    let case = case();
    let target = case.rules.target(Quantity::FoldFront).expect("a wish");
    let (low, high) = (
        target.low.expect("a lower end"),
        target.high.expect("an upper end"),
    );
    let told = |cm: f64, sd: f64| {
        let observed = Observed::independent([(Quantity::FoldFront, cm, sd)]);
        good(&case.rules, &observed.expect("a reading that stands")).is_some()
    };
    let middle = 0.5 * (low + high);
    assert!(told(middle, 0.5));
    assert!(!told(middle, 4.0), "a reading that spans the whole range");
    // In the middle half of the interval is the whole range: 2 · 1.645 · sd = 2 · (high − low).
    let half = (high - low) / 1.6449;
    assert!(told(middle, 0.99 * half), "sd {}", 0.99 * half);
    assert!(!told(middle, 1.01 * half), "sd {}", 1.01 * half);
    // Just within the range more than half of it lies within, beyond it less.
    assert!(told(high - 0.01, 0.2));
    assert!(!told(high + 0.01, 0.2));
    assert!(told(high, 0.0), "a reading without error");
}

#[test]
fn a_photo_said_to_be_from_a_mirror_that_shows_right_over_left_is_told_from_one_not_said_so() {
    let case = case();
    let subject = Subject {
        body: &case.body,
        fitting: &case.fitting,
        planned: &case.planned,
    };
    let plain = photo(&case, &case.planned, View::Front);
    let turned = |shot: &Shot| {
        let mut shot = shot.clone();
        for placed in shot.marks.values_mut() {
            placed.at[0] = 1500.0 - placed.at[0];
        }
        shot
    };
    let renamed = |shot: &Shot| {
        let marks = shot.marks.iter();
        let marks = marks.map(|(mark, placed)| (mark.mirrored(), *placed));
        Shot {
            marks: marks.collect(),
            ..shot.clone()
        }
    };
    let said = |shot: Shot| Shot {
        mirrored: true,
        ..shot
    };
    let edges = |shot: &Shot| {
        let mut shot = shot.clone();
        let kept = [
            Mark::Floor,
            Mark::Crown,
            Mark::UwamaeCorner,
            Mark::EdgeAtFold,
            Mark::CollarEnd,
        ];
        shot.marks.retain(|mark, _| kept.contains(mark));
        shot
    };
    let found = |shot: &Shot| {
        let readings = [read(&subject, shot).expect("it reads")];
        let (fitting, rules) = (&case.fitting, &case.rules);
        check(fitting, rules, &case.planned, &readings, &Ticks::new()).wrong_way
    };
    let way = |mirrored| {
        [WrongWay {
            view: View::Front,
            mirrored,
        }]
    };
    // Whoever takes a photo for one from a mirror puts her left at the picture's left.
    let not_said = renamed(&turned(&plain));
    let wrongly_said = said(renamed(&plain));
    assert_eq!(found(&plain), []);
    assert_eq!(found(&said(turned(&plain))), []);
    for shot in [&not_said, &edges(&not_said)] {
        assert_eq!(found(shot), way(false), "{} marks", shot.marks.len());
    }
    for shot in [&wrongly_said, &edges(&wrongly_said)] {
        assert_eq!(found(shot), way(true), "{} marks", shot.marks.len());
    }
}

#[test]
fn a_fault_that_no_photo_can_be_read_for_is_on_the_list_for_the_eye() {
    let case = case();
    let all = readings(&case, &case.planned, View::ALL);
    let is_covered = |quantity: Quantity| {
        all.iter()
            .all(|reading| reading.unseen.get(&quantity) == Some(&Unseen::Covered))
    };
    let mut covered = 0;
    for &fault in Fault::ALL {
        let entry = Catalogue::shipped().entry(fault);
        let mut measured = entry.measured.iter();
        let is_for_the_eye = measured.all(|judged| is_covered(judged.quantity));
        assert_eq!(entry.by_eye(), is_for_the_eye, "{}", fault.key());
        covered += usize::from(is_for_the_eye && !entry.measured.is_empty());
    }
    assert_eq!(covered, 5, "faults whose quantities cloth lies over");
}

#[test]
fn a_stranger_reads_less_surely_than_a_measured_woman_and_the_truth_lies_within() {
    let case = case();
    let told: Taped = Taped::read("160", None).expect("a length");
    let shot = photo(&case, &case.planned, View::Front);
    let widths = |reading: &Reading| {
        let of = |q: Quantity| reading.get(q).expect("it is in sight");
        (of(Quantity::FoldFront), of(Quantity::ObiOverHipBone).sd)
    };
    let unmeasured = |known: &Stranger| {
        let (body, garment) = stranger(Sex::Women, known).expect("a likely woman");
        let fitting = Fitting::new(&body, &garment);
        let rules = Standard::customary().rules(Occasion::Indoors, &body, garment.cloth());
        // Nobody knows how she was to be dressed: as one would dress the likeliest woman.
        let planned = plan(&fitting, &rules, &Locks::new()).dressing;
        let subject = Subject {
            body: &body,
            fitting: &fitting,
            planned: &planned,
        };
        widths(&read(&subject, &shot).expect("it reads"))
    };
    let measured = widths(&readings(&case, &case.planned, &[View::Front])[0]);
    let nothing = unmeasured(&STRANGER);
    let stature = unmeasured(&Stranger {
        stature: Some(told),
    });
    let sds = [measured.1, stature.1, nothing.1];
    assert!(
        sds[0] < sds[1] && sds[1] < sds[2],
        "obi, measured, stature told, nothing known: {sds:?}"
    );
    let want = predict(&case.fitting, &case.planned).get(Quantity::FoldFront);
    for (fold, _) in [measured, nothing, stature] {
        // Two deviations, and a millimetre for what the model rounds.
        assert!(
            (fold.value - want).abs() < 2.0 * fold.sd + 0.1,
            "fold {} ± {}, true {want}",
            fold.value,
            fold.sd
        );
    }
}
