//! One move of a hand: what it set goes to its edge, the rest follows, what is wrong is told.

#[path = "support/checked.rs"]
#[allow(dead_code)] // each test program uses its own part
mod checked;

use checked::Checked;
use sunbu_core::photo::{FIRST, Gray, Mark, Marking, Placed, Trust, View};

const SIZE: [u32; 2] = [1500, 2000];

/// Dark below this row, light above it.
fn edge_at(row: usize) -> Gray {
    let [width, height] = SIZE.map(|side| side as usize);
    let pixels = (0..height).flat_map(|y| vec![if y < row { 200 } else { 60 }; width]);
    Gray::new(width, height, pixels.collect()).expect("a picture")
}

fn set(marking: &mut Marking, mark: Mark, at: [f64; 2]) {
    let trust = Trust::Sure;
    marking.shot.marks.insert(mark, Placed { at, trust });
    marking.moved.insert(mark);
}

fn begun() -> Marking {
    let mut marking = Marking::new(View::Front, SIZE, None);
    set(&mut marking, Mark::Floor, [750.0, 1800.0]);
    set(&mut marking, Mark::Crown, [750.0, 300.0]);
    marking
}

#[test]
fn a_mark_that_a_hand_has_just_set_goes_to_the_edge_and_no_other_does() {
    let (case, gray) = (Checked::woman(), edge_at(1700));
    let mut marking = begun();
    set(&mut marking, Mark::HemCentre, [750.0, 1694.0]);
    set(&mut marking, Mark::FoldCentre, [750.0, 1206.0]);
    let placing = marking.place(&case.subject(&case.planned), &gray, &[Mark::HemCentre]);
    assert!(placing.problems.is_empty(), "{:?}", placing.problems);
    let at = |mark: Mark| marking.shot.marks[&mark].at[1];
    assert!(
        (at(Mark::HemCentre) - 1700.0).abs() < 0.2,
        "{}",
        at(Mark::HemCentre)
    );
    assert_eq!(at(Mark::FoldCentre), 1206.0);
    assert!(marking.shot.marks.len() > 20, "the others are placed");
}

#[test]
fn without_snapping_and_beyond_its_reach_a_mark_stays_where_it_was_set() {
    let (case, gray) = (Checked::woman(), edge_at(1700));
    for (snapping, y) in [(false, 1694.0), (true, 1680.0)] {
        let mut marking = begun();
        marking.snapping = snapping;
        set(&mut marking, Mark::HemCentre, [750.0, y]);
        marking.place(&case.subject(&case.planned), &gray, &[Mark::HemCentre]);
        assert_eq!(marking.shot.marks[&Mark::HemCentre].at[1], y);
    }
}

#[test]
fn a_sleeve_goes_with_its_wrist_and_the_other_arm_stays() {
    let (case, gray) = (Checked::woman(), edge_at(1));
    let mut marking = begun();
    marking.place(&case.subject(&case.planned), &gray, &[]);
    let before = marking.clone();
    let [x, y] = before.shot.marks[&Mark::WristLeft].at;
    set(&mut marking, Mark::WristLeft, [x - 60.0, y + 40.0]);
    marking.place(&case.subject(&case.planned), &gray, &[Mark::WristLeft]);
    let moved = |mark: Mark| {
        let (new, old) = (marking.shot.marks[&mark].at, before.shot.marks[&mark].at);
        [new[0] - old[0], new[1] - old[1]]
    };
    let [dx, dy] = moved(Mark::SleeveEndLeft);
    assert!(
        (dx + 60.0).abs() < 12.0 && (dy - 40.0).abs() < 12.0,
        "{dx} {dy} against -60, 40"
    );
    let [dx, dy] = moved(Mark::SleeveEndRight);
    assert!(dx.hypot(dy) < 12.0, "the other sleeve moved by {dx} {dy}");
}

#[test]
fn texts_and_marks_that_cannot_be_are_told_together_and_kept() {
    let (case, gray) = (Checked::woman(), edge_at(1700));
    let mut marking = begun();
    set(&mut marking, Mark::Crown, [750.0, 1900.0]);
    marking.lens_height = "tall".to_owned();
    let wanted = marking.clone();
    let placing = marking.place(&case.subject(&case.planned), &gray, &[]);
    let places: Vec<&str> = placing.problems.iter().map(|p| p.place.as_str()).collect();
    assert_eq!(places, ["lens_height", "marks.crown"]);
    assert!(placing.expected.is_empty());
    assert_eq!(marking, wanted);
    assert_eq!(placing, marking.foresee(&case.subject(&case.planned)));
}

#[test]
fn what_neither_an_edge_nor_a_hand_says_is_a_guess_and_is_not_read() {
    let (case, gray) = (Checked::woman(), edge_at(1700));
    let subject = case.subject(&case.planned);
    let mut marking = begun();
    marking.place(&subject, &gray, &[]);
    let edges: Vec<Mark> = marking.seen().marks.keys().copied().collect();
    assert!(FIRST.iter().all(|mark| edges.contains(mark)), "{edges:?}");
    for (mark, placed) in &marking.shot.marks {
        // There is one edge in the picture, and it runs level.
        let is_there = (placed.at[1] - 1700.0).abs() < 0.2;
        let wanted = FIRST.contains(mark) || is_there;
        assert_eq!(edges.contains(mark), wanted, "{mark:?} at {:?}", placed.at);
    }
    assert!(marking.shot.marks.len() > edges.len() + 10);
    // A hand that says that a guess is right where it stands has seen it.
    let stood = marking.shot.marks[&Mark::WristLeft].at;
    set(&mut marking, Mark::WristLeft, stood);
    marking.place(&subject, &gray, &[]);
    let seen = marking.seen();
    assert_eq!(seen.marks[&Mark::WristLeft].at, stood);
    assert!(!seen.marks.contains_key(&Mark::WristRight));
    // And one that says it is unsure has seen it, too.
    let wrist = marking.shot.marks.get_mut(&Mark::WristLeft).expect("set");
    wrist.trust = Trust::Unsure;
    marking.place(&subject, &gray, &[]);
    let seen = marking.seen();
    assert_eq!(seen.marks[&Mark::WristLeft].trust, Trust::Unsure);
}
