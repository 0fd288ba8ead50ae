//! Hulls predicted from the tape, against bodies whose hulls are known.
//!
//! The bodies are each predicted by a table fitted to the others; the figures of each stand in
//! `docs/validation/bodies.md`, made by `cargo run -p sunbu-core --example body_errors`.

use left_out::{FULL, LEAST, USUAL, median_and_worst, outcomes, predict};
use sunbu_core::body::{BodyMeasure, HullTable, ReferenceBody, Section};

#[path = "support/left_out.rs"]
mod left_out;
#[path = "support/reference_bodies.rs"]
mod reference_bodies;

use BodyMeasure as M;

/// What is aimed at for the landing of the outer edge, in centimetres.
const MEDIAN_AIM_CM: f64 = 1.5;
const WORST_AIM_CM: f64 = 3.0;

#[test]
fn the_outer_edge_lands_within_the_aims_on_bodies_left_out_of_the_fit() {
    assert_eq!(left_out::bodies().len(), 17);
    for set in [&LEAST, &USUAL, &FULL] {
        let found = outcomes(set);
        for o in &found {
            assert!(
                o.landing.abs() <= WORST_AIM_CM,
                "{} (hip {:.1}) at {:.1}: cover {:.1} off by {:+.1}, section off by {:?}",
                o.name,
                o.hip,
                o.z,
                o.cover,
                o.landing,
                o.error
            );
        }
        let (median, worst) = median_and_worst(found.iter().map(|o| o.landing));
        assert!(
            median <= MEDIAN_AIM_CM && worst <= WORST_AIM_CM,
            "{} tape: median {median:.2}, worst {worst:.2}",
            set.name
        );
    }
}

#[test]
fn with_the_usual_tape_the_aims_hold_even_against_the_outermost_vertex() {
    for set in [&USUAL, &FULL] {
        let found = outcomes(set);
        let (median, worst) = median_and_worst(found.iter().map(|o| o.landing_outermost));
        assert!(
            median <= MEDIAN_AIM_CM && worst <= WORST_AIM_CM,
            "{} tape: median {median:.2}, worst {worst:.2}",
            set.name
        );
    }
}

#[test]
fn with_the_least_tape_the_outermost_vertex_misses_the_median_aim_by_less_than_a_millimetre() {
    let found = outcomes(&LEAST);
    let (median, worst) = median_and_worst(found.iter().map(|o| o.landing_outermost));
    // 1.56 against an aim of 1.5; the chapter says so, and it is not to get worse.
    assert!(median <= MEDIAN_AIM_CM + 0.1, "median {median:.2}");
    assert!(worst <= WORST_AIM_CM, "worst {worst:.2}");
}

#[test]
fn the_more_is_taped_the_better_the_trunk_is_met() {
    let trunk = |set| {
        let found = outcomes(set);
        let squares: f64 = found.iter().map(|o| o.stretches[1].girth.powi(2)).sum();
        (squares / f64::from(u32::try_from(found.len()).unwrap())).sqrt()
    };
    let (least, usual, full) = (trunk(&LEAST), trunk(&USUAL), trunk(&FULL));
    assert!(
        full < usual && usual < least,
        "{full:.2}, {usual:.2}, {least:.2}"
    );
    // with all landmarks taped half a centimetre is left, about the 0.5 % the bodies are good for
    assert!(full < 0.7, "{full:.2} against 0.7");
}

#[test]
fn the_stated_intervals_of_the_girth_hold_about_nine_tenths_of_the_sections() {
    for set in [&LEAST, &USUAL, &FULL] {
        let scores: Vec<f64> = outcomes(set)
            .into_iter()
            .flat_map(|o| o.girth_scores)
            .collect();
        let inside = scores
            .iter()
            .filter(|s| s.abs() <= sunbu_core::measure::Z_90)
            .count();
        let share = 100 * inside / scores.len();
        // sections of one body err together, so seventeen bodies pin the share only to some 7 %
        assert!((83..=97).contains(&share), "{} tape: {share} %", set.name);
    }
}

#[test]
fn the_shipped_table_is_the_fit_to_the_reference_bodies() {
    let bodies: Vec<ReferenceBody> = reference_bodies::read()
        .into_iter()
        .map(|c| c.body)
        .collect();
    let fresh = HullTable::fit(&bodies, "").unwrap();
    let reread = HullTable::parse(&fresh.to_toml().unwrap()).unwrap();
    for body in &bodies {
        let (a, b) = (
            predict(body, &FULL, HullTable::shipped()),
            predict(body, &FULL, &reread),
        );
        for k in 10..80 {
            let z = f64::from(k) * 0.01 * body.measure(M::Stature).unwrap();
            let (a, b) = (a.shape().at(z), b.shape().at(z));
            // both are written with six decimals
            assert!(
                (a.girth - b.girth).abs() < 0.01,
                "{}: {} against {}",
                body.name,
                a.girth,
                b.girth
            );
            assert!((a.side_arc - b.side_arc).abs() < 0.01, "{}", body.name);
        }
    }
}

#[test]
fn taped_girths_are_met_where_they_were_taped() {
    for checked in reference_bodies::read() {
        let truth = &checked.body;
        let body = predict(truth, &FULL, HullTable::shipped());
        for (height, girth, near) in [
            (M::HipHeight, M::HipGirth, 1e-3),
            (M::WaistHeight, M::WaistGirth, 1e-3),
            (M::UnderBustHeight, M::UnderBustGirth, 1e-3),
            (M::BustHeight, M::BustGirth, 1e-3),
            // approached by scaling the levels around it
            (M::NavelHeight, M::NavelGirth, 0.05),
        ] {
            let got = body.shape().girth(truth.measure(height).unwrap());
            let want = truth.measure(girth).unwrap();
            assert!(
                (got - want).abs() < near,
                "{} {}: {got} against {want}",
                truth.name,
                girth.key()
            );
        }
    }
}

/// Circumference of an ellipse by its two diameters, by the arithmetic-geometric mean (Gauss; see
/// any table of complete elliptic integrals): another road than the program's.
fn ellipse(breadth: f64, depth: f64) -> f64 {
    let (mut a, mut b) = (0.5 * breadth.max(depth), 0.5 * breadth.min(depth));
    let (long, mut sum, mut weight) = (a, 0.5 * (a * a - b * b), 1.0);
    for _ in 0..20 {
        (a, b) = (0.5 * (a + b), (a * b).sqrt());
        // c of the next step is half the old difference, a - the geometric mean's partner
        let c = a * a - b * b;
        sum += weight * c;
        weight *= 2.0;
    }
    std::f64::consts::TAU / a * (long * long - sum)
}

#[test]
fn a_girth_is_longer_than_the_ellipse_of_breadth_and_depth_but_by_no_more_than_the_survey_says() {
    // The notes on the survey: taped girths exceed that ellipse by 2.5 to 6 % at the waist and by
    // 4.5 to 9 % at the hip. The reference bodies, measured on the mesh and not with calipers that
    // press in, keep the upper ends and fall below the lower ones: from 1.0 % at the navel and 2.5 %
    // at the hip. What is predicted for them may differ by a half on either side.
    let circle = ellipse(20.0, 20.0) / (20.0 * std::f64::consts::PI);
    assert!((circle - 1.0).abs() < 1e-12, "a circle reads {circle}");
    let excess = |s: &Section| 100.0 * (s.girth / ellipse(s.breadth, s.front + s.back) - 1.0);
    for checked in reference_bodies::read() {
        let truth = &checked.body;
        let body = predict(truth, &USUAL, HullTable::shipped());
        for (height, low, high) in [(M::NavelHeight, 1.0, 6.0), (M::HipHeight, 2.5, 9.0)] {
            let known = excess(&truth.section(truth.measure(height).unwrap()));
            let got = excess(&body.shape().at(body.value_cm(height)));
            for (name, percent, slack) in [("known", known, 0.0), ("predicted", got, 0.5)] {
                assert!(
                    (low - slack..=high + slack).contains(&percent),
                    "{} {} {name}: {percent:.2} %",
                    truth.name,
                    height.key()
                );
            }
        }
    }
}

#[test]
fn side_lines_lie_where_the_model_chapter_says() {
    // right side line of the reference bodies at 0.73 to 0.77 of the girth
    for checked in reference_bodies::read() {
        let truth = &checked.outermost;
        let s = truth.section(0.5 * truth.measure(M::Stature).unwrap() + 1.0);
        let right = 1.0 - s.side_arc / s.girth;
        assert!(
            (0.725..=0.775).contains(&right),
            "{}: {right:.3}",
            truth.name
        );
    }
}
