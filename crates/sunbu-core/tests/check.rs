//! From the marks of photos to what to change: several photos together, strangers, order, and the
//! one thing that is good.

use std::collections::BTreeMap;

use sunbu_core::body::{Body, BodyMeasure, Population, Sex, Tape};
use sunbu_core::check::{Advice, STRANGER, Stranger, check, combine, stranger};
use sunbu_core::dressing::{
    Decision, Dressing, Fitting, Locks, Occasion, Quantity, Rules, Standard, StepId, plan,
};
use sunbu_core::fault::{Fault, Ticks};
use sunbu_core::garment::Sheet;
use sunbu_core::measure::Reading as Taped;
use sunbu_core::photo::{
    Mark, Marks, Placed, Reading, References, Shot, Subject, Trust, View, expect, read,
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
fn a_hem_dropped_by_four_is_found_on_two_photos_and_put_back() {
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
fn two_photos_are_surer_than_each_and_lie_between_them() {
    let case = case();
    let two = readings(&case, &case.planned, &[View::Front, View::Back]);
    let both = combine(&case.fitting, &two);
    for &quantity in both.quantities() {
        let (value, sd) = both.reading(quantity).expect("it was read");
        for one in two.iter().filter_map(|r| r.get(quantity)) {
            // Half a millimetre of the finest reading is added to each photo's own.
            let own = one.sd.hypot(0.05);
            assert!(sd <= own + 1e-9, "{quantity:?}: {sd} against {own}");
        }
        assert!(value.is_finite());
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

#[test]
fn a_stranger_reads_with_wider_intervals_and_still_in_proportion() {
    let case = case();
    let told: Taped = Taped::read("160", None).expect("a length");
    let sd = |known: &Stranger| {
        let (body, garment) = stranger(Sex::Women, known).expect("a likely woman");
        let fitting = Fitting::new(&body, &garment);
        let subject = Subject {
            body: &body,
            fitting: &fitting,
            planned: &case.planned,
        };
        let shot = photo(&case, &case.planned, View::Front);
        let reading = read(&subject, &shot).expect("it reads");
        let hem = reading
            .get(Quantity::UwamaeCorner)
            .or(reading.get(Quantity::HemBack));
        let fold = reading.get(Quantity::FoldFront).expect("it is in sight");
        let obi = reading
            .get(Quantity::ObiOverHipBone)
            .expect("it is in sight");
        (hem.expect("it is in sight").sd, fold, obi.sd)
    };
    let nothing = sd(&STRANGER);
    let stature = sd(&Stranger {
        stature: Some(told),
    });
    assert!(nothing.2 > stature.2, "{} against {}", nothing.2, stature.2);
    let planned = sunbu_core::dressing::predict(&case.fitting, &case.planned);
    let want = planned.get(Quantity::FoldFront);
    for (_, fold, _) in [nothing, stature] {
        assert!(
            (fold.value - want).abs() < 2.0 * fold.sd + 0.1,
            "fold {} ± {}, true {want}",
            fold.value,
            fold.sd
        );
    }
}
