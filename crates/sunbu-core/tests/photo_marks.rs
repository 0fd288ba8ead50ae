//! Marks of any kind: read, or refused with a reason, and never a panic.

#[path = "support/checked.rs"]
#[allow(dead_code)] // each test program uses its own part
mod checked;

use checked::Checked;
use proptest::prelude::*;
use sunbu_core::photo::{
    Known, Mark, Marking, Marks, Placed, References, Shot, Trust, View, Wrap, expect, read,
};
use sunbu_core::problem::Fault;

fn placed(x: f64, y: f64) -> Placed {
    Placed {
        at: [x, y],
        trust: Trust::Sure,
    }
}

/// A picture of 1500 by 2000 pixels from the front, floor and crown marked.
fn shot() -> Shot {
    Shot {
        view: View::Front,
        size: [1500, 2000],
        focal: Some(0.8),
        lens_height_cm: None,
        mirrored: false,
        references: References::default(),
        marks: Marks::from([
            (Mark::Floor, placed(750.0, 1850.0)),
            (Mark::Crown, placed(752.0, 250.0)),
        ]),
    }
}

/// The same with every place in sight marked where it is expected.
fn fully_marked(case: &Checked, shot: &Shot) -> Shot {
    let expected = expect(&case.subject(&case.planned), shot).expect("floor and crown are enough");
    let mut whole = shot.clone();
    for (mark, place) in expected.into_iter().filter(|(_, e)| e.in_sight) {
        whole
            .marks
            .entry(mark)
            .or_insert(placed(place.at[0], place.at[1]));
    }
    whole
}

/// Flipping a picture rounds its pixels: 1e-6 cm is far above that and far below reading.
fn alike(a: &[f64], b: &[f64]) {
    assert_eq!(a.len(), b.len());
    for (a, b) in a.iter().zip(b) {
        assert!((a - b).abs() < 1e-6, "{a} against {b}");
    }
}

fn codes(problems: &[sunbu_core::problem::Problem]) -> Vec<(&str, String)> {
    problems
        .iter()
        .map(|p| (p.place.as_str(), p.code()))
        .collect()
}

#[test]
fn marks_left_where_the_plan_expects_them_read_as_the_plan() {
    let case = Checked::woman();
    let want = sunbu_core::dressing::predict(&case.fitting, &case.planned);
    for view in [View::Front, View::Back] {
        let whole = fully_marked(&case, &Shot { view, ..shot() });
        let reading = read(&case.subject(&case.planned), &whole).expect("it reads");
        assert!(
            reading.quantities().len() > 5,
            "{view:?}: {:?}",
            reading.quantities()
        );
        for (&q, &got) in reading.quantities().iter().zip(reading.values()) {
            // The expected places are those of the most likely lens for two marks; with all marks
            // that lens stays the most likely, to what the search leaves; folds at the sides and the
            // back are worked out from beside them, with angles to a hundredth.
            let want = want.get(q);
            assert!(
                (got - want).abs() < 0.1,
                "{view:?} {q:?}: {got} against {want}"
            );
        }
        assert!(reading.doubtful.is_empty(), "{:?}", reading.doubtful);
    }
}

#[test]
fn a_picture_from_a_mirror_reads_as_one_without_when_it_is_called_so() {
    let case = Checked::woman();
    let whole = fully_marked(&case, &shot());
    let mut mirrored = whole.clone();
    mirrored.mirrored = true;
    for placed in mirrored.marks.values_mut() {
        placed.at[0] = 1500.0 - placed.at[0];
    }
    let (a, b) = (
        read(&case.subject(&case.planned), &whole),
        read(&case.subject(&case.planned), &mirrored),
    );
    let (a, b) = (a.expect("it reads"), b.expect("it reads"));
    assert_eq!(a.wrap, Wrap::LeftOverRight);
    assert_eq!(b.wrap, Wrap::LeftOverRight);
    alike(a.values(), b.values());
    assert_eq!(
        mirrored.marks.keys().collect::<Vec<_>>(),
        b.fitted.keys().collect::<Vec<_>>()
    );
    for (mark, at) in &b.fitted {
        let want = mirrored.marks[mark].at;
        assert!(
            (at[0] - want[0]).hypot(at[1] - want[1]) < 1.0,
            "{mark:?}: {at:?} {want:?}"
        );
    }
}

#[test]
fn right_over_left_is_told_and_read_as_from_a_mirror() {
    let case = Checked::woman();
    let whole = fully_marked(&case, &shot());
    // What a dresser marks on a mirror's picture that she takes for a plain one: each place where
    // it is, by the name that the side of the picture gives it.
    let mut wrong = whole.clone();
    wrong.marks = whole
        .marks
        .iter()
        .map(|(mark, p)| (mark.mirrored(), placed(1500.0 - p.at[0], p.at[1])))
        .collect();
    let reading = read(&case.subject(&case.planned), &wrong).expect("it reads");
    assert_eq!(reading.wrap, Wrap::RightOverLeft);
    let plain = read(&case.subject(&case.planned), &whole).expect("it reads");
    alike(reading.values(), plain.values());
    for (mark, at) in &reading.fitted {
        let want = wrong.marks[mark].at;
        assert!(
            (at[0] - want[0]).hypot(at[1] - want[1]) < 1.0,
            "{mark:?}: {at:?} {want:?}"
        );
    }
}

/// The mark of the front edge that is in sight beside the corner.
fn edge_in_sight(shot: &Shot) -> (Mark, f64) {
    let edges = [Mark::EdgeAtFold, Mark::CollarEnd];
    let mut seen = edges
        .iter()
        .filter_map(|m| Some((*m, shot.marks.get(m)?.at[0])));
    seen.next().expect("an edge at the fold or a collar end")
}

#[test]
fn one_edge_set_at_her_left_takes_the_others_along_and_is_told() {
    let case = Checked::woman();
    let mut marking = Marking::new(View::Front, [1500, 2000], Some(0.8));
    for (mark, at) in [
        (Mark::Floor, placed(750.0, 1850.0)),
        (Mark::Crown, placed(752.0, 250.0)),
    ] {
        marking.shot.marks.insert(mark, at);
    }
    let follow = |marking: &mut Marking| {
        let followed = marking.follow(&case.subject(&case.planned), |_, _| None);
        followed.expect("it follows");
    };
    follow(&mut marking);
    let (_, before) = edge_in_sight(&marking.shot);
    assert!(before < 700.0, "at her right, {before} px");
    // The dresser sees the corner at her left and draws it there.
    let hem = marking.shot.marks[&Mark::HemLeft].at;
    marking
        .shot
        .marks
        .insert(Mark::UwamaeCorner, placed(hem[0], hem[1]));
    marking.moved.insert(Mark::UwamaeCorner);
    follow(&mut marking);
    let (edge, after) = edge_in_sight(&marking.shot);
    assert!(after > 800.0, "{edge:?} goes along: {after} px");
    let (left, right) = (Mark::HemLeft, Mark::HemRight);
    let [left, right] = [left, right].map(|m| marking.shot.marks[&m].at[0]);
    assert!(left > right, "names stay where a hand would set them");
    let reading = read(&case.subject(&case.planned), &marking.shot).expect("it reads");
    assert_eq!(reading.wrap, Wrap::RightOverLeft);
    assert!(!reading.mirrored);
}

#[test]
fn an_edge_on_both_sides_of_her_is_doubted() {
    let case = Checked::woman();
    let mut torn = fully_marked(&case, &shot());
    let (edge, _) = edge_in_sight(&torn);
    let hem = torn.marks[&Mark::HemLeft].at;
    torn.marks
        .insert(Mark::UwamaeCorner, placed(hem[0], hem[1]));
    let reading = read(&case.subject(&case.planned), &torn).expect("it reads");
    for mark in [Mark::UwamaeCorner, edge] {
        assert!(reading.doubtful.contains(&mark), "{:?}", reading.doubtful);
    }
}

#[test]
fn what_cannot_be_read_is_told_all_at_once_with_its_place() {
    let case = Checked::woman();
    let mut bad = shot();
    bad.focal = Some(f64::NAN);
    bad.lens_height_cm = Some(Known {
        value: 900.0,
        sd: 5.0,
    });
    bad.marks.insert(Mark::HemLeft, placed(-3.0, 1800.0));
    bad.marks
        .insert(Mark::HemRight, placed(700.0, f64::INFINITY));
    let problems =
        read(&case.subject(&case.planned), &bad).expect_err("nothing of it can be right");
    let out = "problem-number-out-of-range".to_owned();
    assert_eq!(
        codes(&problems),
        [
            ("focal", out.clone()),
            ("lens_height_cm.value", out.clone()),
            ("marks.hem_left.at.x", out.clone()),
            ("marks.hem_right.at.y", out),
        ]
    );

    let mut swapped = shot();
    swapped.marks.insert(Mark::Floor, placed(750.0, 250.0));
    swapped.marks.insert(Mark::Crown, placed(750.0, 1850.0));
    let problems = read(&case.subject(&case.planned), &swapped).expect_err("they are exchanged");
    assert_eq!(
        problems[0].code(),
        "problem-contradiction-crown-not-above-floor"
    );

    let mut none = shot();
    none.marks.clear();
    let problems = read(&case.subject(&case.planned), &none).expect_err("two are needed");
    assert!(
        problems.iter().all(|p| p.fault == Fault::Missing),
        "{problems:?}"
    );
    assert_eq!(problems.len(), 2);

    let mut hidden = shot();
    hidden.marks.insert(Mark::Nape, placed(750.0, 400.0));
    let problems = read(&case.subject(&case.planned), &hidden).expect_err("not from the front");
    assert_eq!(
        codes(&problems),
        [(
            "marks.nape",
            "problem-contradiction-mark-not-in-view".into()
        )]
    );
}

#[test]
fn marks_that_together_read_longer_than_any_dress_are_refused() {
    let case = Checked::woman();
    let mut wild = Shot {
        view: View::Right,
        focal: None,
        ..shot()
    };
    for (mark, x, y) in [
        (Mark::Floor, 578.4, 1420.5),
        (Mark::HemCentre, 0.0, 0.0),
        (Mark::CollarEnd, 1220.5, 0.0),
    ] {
        wild.marks.insert(mark, placed(x, y));
    }
    let problems = read(&case.subject(&case.planned), &wild).expect_err("a cover of metres");
    assert_eq!(
        codes(&problems),
        [("marks", "problem-contradiction-marks-do-not-fit".into())]
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn any_marks_are_read_or_refused(
        points in prop::collection::vec((0..Mark::COUNT, 0.0..1500.0_f64, 0.0..2000.0_f64), 0..50),
        view in 0..View::COUNT,
        focal in prop::option::of(0.3..8.0_f64),
        equal in any::<bool>(),
    ) {
        let case = Checked::woman();
        let mut wild = Shot { view: View::ALL[view], focal, ..shot() };
        for (mark, x, y) in points {
            let mark = Mark::ALL[mark];
            if mark.shows_in(wild.view) {
                wild.marks.insert(mark, if equal { placed(700.0, 900.0) } else { placed(x, y) });
            }
        }
        if let Ok(reading) = read(&case.subject(&case.planned), &wild) {
            prop_assert!(reading.values().iter().all(|v| v.is_finite()));
            prop_assert!(reading.covariance().iter().all(|v| v.is_finite()));
        }
        if let Ok(expected) = expect(&case.subject(&case.planned), &wild) {
            prop_assert!(expected.values().all(|e| e.at.iter().all(|v| v.is_finite())));
        }
    }
}
