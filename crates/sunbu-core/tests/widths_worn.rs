//! Published widths worn by bodies whose hulls are known: Table A of S7 (guide to kimono sizes: hip
//! table) and the rules R1 (S9, dressing teacher: deriving kimono sizes), R2 (S10, how sizes are
//! derived), R3 (S6, wasai class notes) and R4 (S11, kimono size explained).
//!
//! Each figure stands in `docs/validation/widths.md`, made by
//! `cargo run -p sunbu-core --example body_errors`.

use sunbu_core::garment::tables::HIP_TABLE;
use widths_worn::{Cut, EASE_CM, LAYERS_CM, OUTSIDE, all};

#[path = "support/reference_bodies.rs"]
mod reference_bodies;
#[path = "support/widths_worn.rs"]
mod widths_worn;

#[test]
fn the_wrap_goes_nought_to_three_past_the_side_seam_but_on_the_rows_listed_with_a_reason() {
    let worn = all();
    for row in HIP_TABLE {
        for from in Cut::ALL {
            let of_row: Vec<_> = worn
                .iter()
                .filter(|w| w.row == row.hip_cm && w.from == from)
                .collect();
            let name = format!("{} at hips {:?}", from.name(), row.hip_cm);
            assert!(!of_row.is_empty(), "no reference body wears {name}");
            let outside: Vec<String> = of_row
                .iter()
                .filter(|w| w.is_outside())
                .map(|w| format!("{} {:+.2}", w.body, w.ease))
                .collect();
            let listed = OUTSIDE
                .iter()
                .filter(|(high, of, _)| row.hip_cm.1 == *high && from == *of)
                .count();
            assert_eq!(
                listed,
                usize::from(!outside.is_empty()),
                "{name}: outside {EASE_CM:?} on {outside:?}, listed {listed} times"
            );
        }
    }
}

#[test]
fn what_is_left_is_the_allowance_less_layers_and_collar_end() {
    for w in all() {
        let want = w.over_hip - w.narrower - std::f64::consts::TAU * LAYERS_CM;
        // the hull at hip height is read between sections 1 cm apart or less, the hip at its level
        assert!(
            (w.ease - want).abs() < 0.1,
            "{} on {} (hip {}): {:+.2} against {want:+.2}",
            w.from.name(),
            w.body,
            w.hip,
            w.ease
        );
    }
}

#[test]
fn the_allowances_of_the_table_are_those_worked_out_from_it_by_hand() {
    // S7: both backs, front and okumi, less the middle hip of the row
    let want = [8.0, 5.5, 2.8, 2.5, 2.8];
    for (row, want) in HIP_TABLE.into_iter().zip(want) {
        let got = row.widths.wrap() - row.hip_middle();
        // published to a tenth
        assert!(
            (got - want).abs() < 0.05 + 1e-9,
            "{:?}: {got:.2} against {want}",
            row.hip_cm
        );
    }
}

#[test]
fn the_outer_edge_of_every_published_width_stays_in_front_of_the_right_side_line() {
    for w in all() {
        assert!(
            w.cover > 0.0 && w.cover < 10.0,
            "{} on {}: cover {:.1}",
            w.from.name(),
            w.body,
            w.cover
        );
    }
}
