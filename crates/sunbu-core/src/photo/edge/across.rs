//! One edge, across a known direction or the best of all.

use std::f64::consts::{PI, TAU};

use super::slope::slope;
use super::{LEAST_STRENGTH, Snap, summit, usable, worth};
use crate::photo::{Gray, Pixel};

/// Steps between the values across an edge, in pixels.
const STEP: f64 = 0.5;
/// Deviation of the wide slope, which chooses, in pixels.
const WIDE: f64 = 2.0;
/// Deviation of the narrow slope, which places, in pixels: that of a sharp photo's own blur.
const NARROW: f64 = 1.2;
/// How far along the edge the means reach to both sides, in pixels.
const ALONG: i32 = 6;
/// By how much an edge may be turned against its expected direction, in radians, and still be summed
/// up along itself: 0, 8 and 16 degrees to both sides.
const TURNS: [f64; 5] = [0.0, 0.14, -0.14, 0.28, -0.28];
/// Directions tried when none is expected.
const DIRECTIONS: u32 = 8;

/// The strong edge nearest to a place, at most `reach_px` pixels from it; none where nothing within
/// reach stands out.
///
/// `across` is the direction across the expected edge, of any length and either sense; the place then
/// moves along it alone. Without one, or with one that is no direction, every direction is
/// tried and the best taken. Near and strong are weighed together: the stronger of two edges at the
/// same distance, the nearer of two of the same strength.
pub fn snap(gray: &Gray, at: Pixel, across: Option<[f64; 2]>, reach_px: f64) -> Option<Snap> {
    let reach = usable(at, reach_px)?;
    let told = across.and_then(|[x, y]| {
        let length = x.hypot(y);
        (length.is_finite() && length > 0.0).then(|| [x / length, y / length])
    });
    let found = match told {
        Some(across) => best(gray, at, across, &TURNS, reach),
        None => (0..DIRECTIONS)
            .filter_map(|number| {
                let (y, x) = (PI * f64::from(number) / f64::from(DIRECTIONS)).sin_cos();
                best(gray, at, [x, y], &TURNS[..3], reach)
            })
            .reduce(better),
    }?;
    let [x, y] = found.across;
    Some(Snap {
        at: [at[0] + found.far * x, at[1] + found.far * y],
        strength: found.strength,
    })
}

/// An edge as it was found.
#[derive(Clone, Copy)]
struct Found {
    across: [f64; 2],
    /// How far along `across`, in pixels.
    far: f64,
    strength: f64,
    /// Strength and nearness together.
    worth: f64,
}

/// The worthier; the first of two that are alike, so that the order of looking decides.
fn better(one: Found, other: Found) -> Found {
    if other.worth > one.worth { other } else { one }
}

/// The best edge across one direction, turned by any of `turns`.
fn best(gray: &Gray, at: Pixel, across: [f64; 2], turns: &[f64], reach: f64) -> Option<Found> {
    turns
        .iter()
        .filter_map(|turn| {
            let (sin, cos) = turn.sin_cos();
            let along = [
                -across[1] * cos - across[0] * sin,
                across[0] * cos - across[1] * sin,
            ];
            on_profile(&profile(gray, at, across, along, reach), reach, across)
        })
        .reduce(better)
}

/// Values across the edge around a place, every [`STEP`], each a mean along it. The middle one is at
/// the place.
fn profile(gray: &Gray, [x, y]: Pixel, across: [f64; 2], along: [f64; 2], reach: f64) -> Vec<f64> {
    let half = steps(reach) + steps(4.0 * WIDE);
    let weight = |off: i32| f64::from(ALONG + 1 - off.abs());
    let whole: f64 = (-ALONG..=ALONG).map(weight).sum();
    (-half..=half)
        .map(|number| {
            let far = f64::from(number) * STEP;
            let (x, y) = (x + far * across[0], y + far * across[1]);
            let sum: f64 = (-ALONG..=ALONG)
                .map(|off| {
                    let aside = f64::from(off);
                    weight(off) * gray.at(x + aside * along[0], y + aside * along[1])
                })
                .sum();
            sum / whole
        })
        .collect()
}

/// How many steps a length has, rounded up.
#[allow(clippy::cast_possible_truncation)] // the reach has its limit
fn steps(length_px: f64) -> i32 {
    (length_px / STEP).ceil() as i32
}

/// The worthiest edge of a profile.
#[allow(clippy::cast_sign_loss)] // from the middle to both sides within the profile
fn on_profile(profile: &[f64], reach: f64, across: [f64; 2]) -> Option<Found> {
    let half = steps(reach);
    let middle = half + steps(4.0 * WIDE);
    // A step of one across a slope's own width has the summit 1 / (deviation sqrt(2 pi)).
    let as_step = WIDE / STEP * TAU.sqrt();
    let wide: Vec<f64> = slope(profile, WIDE / STEP)
        .into_iter()
        .map(|slope| slope * as_step)
        .collect();
    let strength = |number: i32| wide[(middle + number) as usize].abs();
    let worth = |number: i32| worth(strength(number), f64::from(number) * STEP, reach);
    let chosen = (-half..=half)
        .filter(|&number| {
            let here = strength(number);
            here >= LEAST_STRENGTH && here >= strength(number - 1) && here >= strength(number + 1)
        })
        .reduce(|one, other| {
            if worth(other) > worth(one) {
                other
            } else {
                one
            }
        })?;
    let narrow = slope(profile, NARROW / STEP);
    let rising = wide[(middle + chosen) as usize].signum();
    let height = |number: i32| rising * narrow[(middle + number) as usize];
    // The narrow summit lies within the wide slope's width.
    let about = steps(WIDE);
    let sharpest = (chosen - about..=chosen + about).reduce(|one, other| {
        if height(other) > height(one) {
            other
        } else {
            one
        }
    })?;
    let off = summit(height(sharpest - 1), height(sharpest), height(sharpest + 1));
    let far = (f64::from(sharpest) + off) * STEP;
    Some(Found {
        across,
        far: far.clamp(-reach, reach),
        strength: strength(chosen),
        worth: worth(chosen),
    })
}
