//! The places of a photo as they are and as they would be: what stays falls on itself, and what moves
//! moves by what was changed.

#[path = "support/checked.rs"]
#[allow(dead_code)]
mod checked;

use checked::Checked;
use sunbu_core::dressing::{Decision, Dressing};
use sunbu_core::photo::{Mark, Moved, Overlay, Skew, View, overlay};

fn over(woman: &Checked, view: View, done: &Dressing, wanted: &Dressing) -> Overlay {
    let shot = woman.photo(done, view);
    overlay(&woman.subject(&woman.planned), &shot, (done, wanted), &[]).expect("it reads")
}

fn apart(moved: &Moved) -> f64 {
    (moved.seen[0] - moved.wanted[0]).hypot(moved.seen[1] - moved.wanted[1])
}

#[test]
fn nothing_changed_falls_on_itself_on_every_side() {
    let woman = Checked::woman();
    for &view in View::ALL {
        let same = over(&woman, view, &woman.planned, &woman.planned);
        assert!(same.places.len() > 5, "{view:?}: {}", same.places.len());
        for (mark, moved) in &same.places {
            let off = apart(moved);
            assert!(off < 1e-6, "{view:?} {mark:?}: {off} px apart");
        }
    }
}

#[test]
fn a_hem_let_down_by_three_lies_three_lower_and_lifts_the_fold_by_half() {
    let woman = Checked::woman();
    let hem = woman.planned.get(Decision::HemHeight);
    let high = woman.planned.with(Decision::HemHeight, hem + 3.0);
    let lower = over(&woman, View::Front, &high, &woman.planned);
    let up = |mark: Mark| lower.places[&mark].by_cm[2];
    for mark in [Mark::HemLeft, Mark::HemCentre] {
        // The raised front edge makes the hem a little higher there, by the same in both.
        assert!((up(mark) + 3.0).abs() < 0.2, "{mark:?}: {} cm", up(mark));
    }
    // The trade's own rule: the fold moves by half of what the hem does, the other way.
    assert!(
        (up(Mark::FoldCentre) - 1.5).abs() < 0.1,
        "{} cm",
        up(Mark::FoldCentre)
    );
    let crossing = &lower.places[&Mark::KimonoCrossing];
    assert!(apart(crossing) < 1e-6, "{} px", apart(crossing));
    // On the picture lower is further down, by as much as the scale says.
    let hem = &lower.places[&Mark::HemCentre];
    let px = (hem.wanted[1] - hem.seen[1]) / lower.pixels_per_cm;
    // Nearer to the lens than her middle, and seen from above: within a fifth.
    assert!((2.4..3.6).contains(&px), "{px} cm by the scale");
}

#[test]
fn what_was_added_to_a_place_stays_with_it() {
    let woman = Checked::woman();
    let mut shot = woman.photo(&woman.planned, View::Front);
    // The hem hangs lower at her left than any dressing of the model would have it.
    let left = shot.marks.get_mut(&Mark::HemLeft).expect("it is in sight");
    left.at[1] += 20.0;
    // And further out than the tape would have it.
    left.at[0] += 15.0;
    let subject = woman.subject(&woman.planned);
    let pair = (&woman.planned, &woman.planned);
    let kept = overlay(&subject, &shot, pair, &[]).expect("it reads");
    assert!(apart(&kept.places[&Mark::HemLeft]) < 1e-6);
    let level = overlay(&subject, &shot, pair, &[Skew::HemSlant]).expect("it reads");
    let (left, right) = (
        &level.places[&Mark::HemLeft],
        &level.places[&Mark::HemRight],
    );
    assert!(left.by_cm[2] > 0.4, "{} cm up", left.by_cm[2]);
    let sum = left.by_cm[2] + right.by_cm[2];
    assert!(sum.abs() < 1e-9, "both sides meet in the middle: {sum} cm");
    for moved in [left, right] {
        let aside = moved.by_cm[0].hypot(moved.by_cm[1]);
        assert!(
            aside < 0.3,
            "made level, a line slides {aside} cm round her"
        );
    }
}

#[test]
fn a_picture_from_a_mirror_has_its_places_where_the_mirror_shows_them() {
    let woman = Checked::woman();
    let hem = woman.planned.get(Decision::HemHeight);
    let high = woman.planned.with(Decision::HemHeight, hem + 3.0);
    let plain = woman.photo(&high, View::Front);
    let width = f64::from(plain.size[0]);
    let mut flipped = plain.clone();
    for placed in flipped.marks.values_mut() {
        placed.at[0] = width - placed.at[0];
    }
    // Said to be from a mirror, the marks have the wearer's own names; not said, every mark is taken
    // for the one of the other side. Her right over her left in a mirror looks as usual.
    let mut said = flipped.clone();
    said.mirrored = true;
    let renamed = |shot: &sunbu_core::photo::Shot| {
        let marks = shot.marks.iter().map(|(mark, p)| (mark.mirrored(), *p));
        marks.collect()
    };
    let mut unsaid = flipped;
    unsaid.marks = renamed(&unsaid);
    let mut wrong_in_mirror = plain.clone();
    wrong_in_mirror.mirrored = true;
    wrong_in_mirror.marks = renamed(&plain);
    let subject = woman.subject(&woman.planned);
    let of = |shot| overlay(&subject, shot, (&high, &woman.planned), &[]).expect("it reads");
    let straight = of(&plain);
    for (shot, is_flipped, is_renamed) in [
        (&said, true, false),
        (&unsaid, true, true),
        (&wrong_in_mirror, false, true),
    ] {
        let got = of(shot);
        for (mark, moved) in &straight.places {
            let name = if is_renamed { mark.mirrored() } else { *mark };
            let flip = |x: f64| if is_flipped { width - x } else { x };
            let there = &got.places[&name];
            for (got, want) in [(there.seen, moved.seen), (there.wanted, moved.wanted)] {
                let off = (got[0] - flip(want[0])).hypot(got[1] - want[1]);
                assert!(off < 1e-6, "{mark:?}: {off} px off");
            }
        }
    }
}
