//! Edges are found where they are, finer than a pixel, and nowhere else.

#![allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // brightness within a byte

use proptest::prelude::*;
use serde_json::Value;
use sunbu_core::photo::Gray;
use sunbu_core::photo::edge::{slope, snap, snap_corner};

/// Side of the pictures, in pixels.
const SIDE: usize = 96;

/// A picture of a brightness at every place, each pixel the mean of sixteen places in it, with noise
/// of this deviation.
fn picture(noise: f64, bright: impl Fn(f64, f64) -> f64) -> Gray {
    let mut state = 0x9E37_79B9_u32;
    let mut random = || {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        f64::from(state) / f64::from(u32::MAX)
    };
    let mut pixels = Vec::with_capacity(SIDE * SIDE);
    for y in 0..SIDE {
        for x in 0..SIDE {
            let places = (0..16).map(|i| {
                let (u, v) = (f64::from(i % 4) + 0.5, f64::from(i / 4) + 0.5);
                bright(x as f64 + u / 4.0, y as f64 + v / 4.0)
            });
            let mean = places.sum::<f64>() / 16.0;
            // Twelve even numbers add up to a nearly normal one of deviation one.
            let normal = (0..12).map(|_| random()).sum::<f64>() - 6.0;
            pixels.push((mean + noise * normal).round().clamp(0.0, 255.0) as u8);
        }
    }
    Gray::new(SIDE, SIDE, pixels).expect("as many pixels as the sides say")
}

/// From 0 to 1 across a line, with this width.
fn step(distance: f64, blur: f64) -> f64 {
    0.5 + 0.5 * (distance / blur).tanh()
}

const MIDDLE: [f64; 2] = [48.0, 48.0];

/// How far a place lies from a line through `through` with this direction across it.
fn off([x, y]: [f64; 2], through: [f64; 2], across: [f64; 2]) -> f64 {
    (x - through[0]) * across[0] + (y - through[1]) * across[1]
}

fn direction(degrees: f64) -> [f64; 2] {
    let (sin, cos) = degrees.to_radians().sin_cos();
    [cos, sin]
}

fn vectors() -> Value {
    serde_json::from_str(include_str!("data/edges/vectors.json")).expect("made by make.py")
}

fn numbers(value: &Value) -> Vec<f64> {
    let list = value.as_array().expect("a list").iter();
    list.map(|number| number.as_f64().expect("a number"))
        .collect()
}

#[test]
fn slopes_are_those_of_scipys_gaussian_filter() {
    let vectors = vectors();
    for case in vectors["slopes"].as_array().unwrap() {
        let (values, wanted) = (numbers(&case["values"]), numbers(&case["slopes"]));
        let deviation = case["deviation"].as_f64().unwrap();
        let found = slope(&values, deviation);
        assert_eq!(found.len(), wanted.len());
        for (found, wanted) in found.iter().zip(&wanted) {
            // Sums of at most 41 products of values up to 255.
            assert!((found - wanted).abs() < 1e-11, "{found} against {wanted}");
        }
    }
    assert!(slope(&[], 1.0).is_empty());
    assert_eq!(slope(&[1.0, 2.0], f64::NAN).len(), 2);
}

#[test]
fn a_step_of_scipys_error_function_is_found_where_it_is() {
    let vectors = vectors();
    for case in vectors["edges"].as_array().unwrap() {
        let row: Vec<u8> = numbers(&case["pixels"])
            .iter()
            .map(|&value| value as u8)
            .collect();
        let [place, blur, height] =
            ["place", "blur", "step"].map(|name| case[name].as_f64().unwrap());
        let gray = Gray::new(row.len(), 30, row.repeat(30)).unwrap();
        for start in [place - 6.0, place + 3.5] {
            let found = snap(&gray, [start, 15.0], Some([1.0, 0.0]), 9.0).unwrap();
            // Brightness rounded to whole steps moves a faint edge most: half a step of 20 over its
            // slope.
            let allowed = 0.1 + 0.5 * (blur + 0.5) / height;
            assert!(
                (found.at[0] - place).abs() < allowed,
                "{} against {place}, blur {blur}, {height} high",
                found.at[0]
            );
            assert_eq!(found.at[1], 15.0);
            // Blur takes from the wide slope what lies outside it.
            let share = found.strength / height;
            assert!(
                (0.6..=1.02).contains(&share),
                "{share} of the step, blur {blur}"
            );
        }
    }
}

#[test]
fn a_turned_blurred_and_noisy_edge_is_found_from_eight_pixels_off() {
    for degrees in (0..180).step_by(9).map(f64::from) {
        for (blur, noise) in [(0.6, 0.0), (1.5, 3.0), (2.5, 6.0)] {
            let across = direction(degrees);
            let through = [47.3, 48.9];
            let gray = picture(noise, |x, y| {
                90.0 + 60.0 * step(off([x, y], through, across), blur)
            });
            for far in [-8.0, -3.0, 0.0, 5.0, 8.0] {
                let at = [through[0] + far * across[0], through[1] + far * across[1]];
                // The direction may be told ten degrees wrong, and in either sense.
                for told in [degrees, degrees + 10.0, degrees + 170.0] {
                    let found = snap(&gray, at, Some(direction(told)), 10.0)
                        .unwrap_or_else(|| panic!("{degrees} degrees, from {far}: nothing"));
                    let miss = off(found.at, through, across);
                    assert!(
                        miss.abs() < 0.5,
                        "{degrees} degrees, from {far}: {miss} px off"
                    );
                }
            }
            let found = snap(&gray, [49.0, 52.0], None, 10.0).expect("an edge in some direction");
            let miss = off(found.at, through, across);
            assert!(
                miss.abs() < 0.5,
                "{degrees} degrees, none told: {miss} px off"
            );
        }
    }
}

#[test]
fn weave_weaker_than_the_edge_does_not_hold_a_mark_back() {
    // Stripes of 16 steps, every 3 to 7 pixels, along the edge, slanted and across it, on both sides.
    let through = [48.4, 48.0];
    let (mut tried, mut near) = (0, 0);
    for period in [3.0, 4.0, 5.0, 7.0] {
        for degrees in [0.0, 30.0, 60.0, 90.0] {
            let weave = direction(degrees);
            let gray = picture(3.0, |x, y| {
                let thread = (off([x, y], [0.0, 0.0], weave) / period).rem_euclid(1.0) < 0.5;
                let light = 80.0 + 70.0 * step(off([x, y], through, [1.0, 0.0]), 0.8);
                light + if thread { 8.0 } else { -8.0 }
            });
            for far in [-8.0, -5.0, 5.0, 8.0] {
                let at = [through[0] + far, 48.0];
                let found = snap(&gray, at, Some([1.0, 0.0]), 10.0).map(|snap| snap.at[0]);
                tried += 1;
                near += usize::from(found.is_some_and(|x| (x - through[0]).abs() <= 1.5));
            }
        }
    }
    assert!(
        near * 100 >= tried * 95,
        "{near} of {tried} came within 1.5 px"
    );
}

#[test]
fn of_two_edges_the_nearer_is_taken_unless_it_is_far_the_weaker() {
    // A faint edge at 44, a strong one at 56.
    let faint_and_strong = |faint: f64| {
        picture(0.0, move |x, _| {
            60.0 + faint * step(x - 44.0, 0.8) + 80.0 * step(x - 56.0, 0.8)
        })
    };
    for (faint, start, wanted) in [
        (60.0, 46.0, 44.0),
        (60.0, 54.0, 56.0),
        (60.0, 48.0, 44.0),
        (7.0, 51.0, 56.0),
        (7.0, 54.0, 56.0),
    ] {
        let found = snap(
            &faint_and_strong(faint),
            [start, 48.0],
            Some([1.0, 0.0]),
            10.0,
        );
        let x = found.map_or(f64::NAN, |snap| snap.at[0]);
        assert!(
            (x - wanted).abs() < 0.5,
            "{faint} from {start}: {x} against {wanted}"
        );
    }
}

#[test]
fn where_nothing_stands_out_the_mark_stays() {
    let flat = picture(0.0, |_, _| 120.0);
    let noisy = picture(5.0, |_, _| 120.0);
    // A wall that gets darker by half a step a pixel has no edge, either.
    let fading = picture(0.0, |x, _| 80.0 + 0.5 * x);
    for (name, gray) in [("flat", flat), ("noisy", noisy), ("fading", fading)] {
        for across in [None, Some([1.0, 0.0]), Some([0.0, 1.0])] {
            let found = snap(&gray, MIDDLE, across, 10.0);
            assert_eq!(found, None, "{name}");
        }
        assert_eq!(snap_corner(&gray, MIDDLE, 10.0), None, "{name}");
    }
}

#[test]
fn a_corner_is_found_where_its_edges_meet_and_a_straight_edge_has_none() {
    for (from, to) in [(0.0, 90.0), (20.0, 110.0), (0.0, 60.0), (45.0, 165.0)] {
        let tip = [48.3, 47.6];
        let (one, other) = (direction(from), direction(to));
        for noise in [0.0, 4.0] {
            // Bright where both edges have it on their bright side.
            let gray = picture(noise, |x, y| {
                let inside =
                    step(off([x, y], tip, one), 0.7).min(step(off([x, y], tip, other), 0.7));
                70.0 + 90.0 * inside
            });
            for (dx, dy) in [(0.0, 0.0), (6.0, 2.0), (-4.0, 5.0), (-5.5, -5.5)] {
                let at = [tip[0] + dx, tip[1] + dy];
                let found = snap_corner(&gray, at, 10.0).expect("a corner");
                let miss = (found.at[0] - tip[0]).hypot(found.at[1] - tip[1]);
                assert!(miss < 1.5, "{from} and {to} degrees: {miss} px off");
            }
        }
    }
    let straight = picture(0.0, |x, y| {
        70.0 + 90.0 * step(off([x, y], MIDDLE, direction(20.0)), 0.7)
    });
    assert_eq!(snap_corner(&straight, MIDDLE, 10.0), None);
}

#[test]
fn a_way_that_is_none_moves_nothing() {
    let gray = picture(0.0, |x, _| 60.0 + 90.0 * step(x - 48.0, 0.8));
    for reach in [0.0, -3.0, f64::NAN, f64::INFINITY] {
        assert_eq!(snap(&gray, MIDDLE, None, reach), None);
        assert_eq!(snap_corner(&gray, MIDDLE, reach), None);
    }
    for at in [
        [f64::NAN, 48.0],
        [48.0, f64::INFINITY],
        [1e300, -1e300],
        [-500.0, 48.0],
    ] {
        assert_eq!(snap(&gray, at, None, 10.0), None);
        assert_eq!(snap_corner(&gray, at, 10.0), None);
    }
    // A direction that is none is as if none were told.
    for none in [[0.0, 0.0], [f64::NAN, 1.0], [f64::INFINITY, 0.0]] {
        assert_eq!(
            snap(&gray, [46.0, 48.0], Some(none), 10.0),
            snap(&gray, [46.0, 48.0], None, 10.0)
        );
    }
}

fn any_picture() -> impl Strategy<Value = Gray> {
    let pixels = prop_oneof![
        prop::collection::vec(any::<u8>(), 40 * 40),
        // Large patches, so that there are edges to find.
        prop::collection::vec(any::<u8>(), 16).prop_map(|patches| {
            (0..40 * 40)
                .map(|i| patches[(i / 40 / 10) * 4 + (i % 40) / 10])
                .collect()
        }),
    ];
    pixels.prop_map(|pixels| Gray::new(40, 40, pixels).expect("as many as its sides say"))
}

/// The same picture with this many columns and rows of its rim's pixels before it.
fn moved(gray: &Gray, right: usize, down: usize) -> Gray {
    let (width, height) = (gray.width() + right, gray.height() + down);
    let rows = (0..height).flat_map(|y| {
        let row = gray.row(y.saturating_sub(down));
        (0..width).map(move |x| row[x.saturating_sub(right)])
    });
    Gray::new(width, height, rows.collect()).expect("as many as its sides say")
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn no_mark_moves_further_than_it_may(
        gray in any_picture(),
        at in [-20.0..60.0_f64, -20.0..60.0_f64],
        angle in 0.0..360.0_f64,
        told in any::<bool>(),
        reach in 0.1..60.0_f64,
    ) {
        let across = told.then(|| direction(angle));
        let one = snap(&gray, at, across, reach);
        let corner = snap_corner(&gray, at, reach);
        for found in one.into_iter().chain(corner) {
            let far = (found.at[0] - at[0]).hypot(found.at[1] - at[1]);
            prop_assert!(far <= reach + 1e-9, "{far} px of {reach}");
            prop_assert!(found.strength.is_finite() && found.strength >= 4.0);
        }
        if let (Some(found), Some([x, y])) = (one, across) {
            let aside = (found.at[0] - at[0]) * -y + (found.at[1] - at[1]) * x;
            prop_assert!(aside.abs() < 1e-9, "{aside} px beside the way that was told");
        }
    }

    #[test]
    fn a_moved_picture_moves_what_is_found_by_as_much(
        gray in any_picture(),
        at in [5.0..35.0_f64, 5.0..35.0_f64],
        angle in 0.0..360.0_f64,
        right in 0..9_usize,
        down in 0..9_usize,
    ) {
        let there = [at[0] + right as f64, at[1] + down as f64];
        let other = moved(&gray, right, down);
        let across = Some(direction(angle));
        for (here, there) in [
            (snap(&gray, at, across, 6.0), snap(&other, there, across, 6.0)),
            (snap_corner(&gray, at, 6.0), snap_corner(&other, there, 6.0)),
        ] {
            let (Some(here), Some(there)) = (here, there) else {
                // Rounding may lift or lower what is right at the limit.
                let at_limit = here.or(there).is_none_or(|snap| snap.strength < 4.001);
                prop_assert!(at_limit, "{here:?} and {there:?}");
                continue;
            };
            let miss = (there.at[0] - here.at[0] - right as f64)
                .hypot(there.at[1] - here.at[1] - down as f64);
            prop_assert!(miss < 1e-6, "{here:?} and {there:?}");
        }
    }
}
