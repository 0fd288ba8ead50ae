//! What cannot be true of one body.

use std::collections::BTreeMap;

use super::measures::BodyMeasure;
use crate::measure::Reading;
use crate::problem::{Fault, Problem};
use BodyMeasure as M;

/// Largest deviation accepted, in centimetres (chosen: a guess by eye is better than that).
pub const MAX_SD_CM: f64 = 10.0;

/// Heights from floor to crown: of two that are taped, the later one must be higher.
pub(crate) const LADDER: [BodyMeasure; 11] = [
    M::AnkleHeight,
    M::KneeHeight,
    M::CrotchHeight,
    M::HipHeight,
    M::HipBoneHeight,
    M::WaistHeight,
    M::UnderBustHeight,
    M::BustHeight,
    M::ShoulderHeight,
    M::BackNeckHeight,
    M::Stature,
];

/// The same with the navel, which may lie on either side of hip bone and waist, and with the side
/// neck point, which may lie a little above or below the back neck point.
const OTHER_LADDER: [BodyMeasure; 10] = [
    M::AnkleHeight,
    M::KneeHeight,
    M::CrotchHeight,
    M::HipHeight,
    M::NavelHeight,
    M::UnderBustHeight,
    M::BustHeight,
    M::ShoulderHeight,
    M::SideNeckHeight,
    M::Stature,
];

/// Completes the pairs that neither ladder holds.
const PAIRS: [(BodyMeasure, BodyMeasure); 2] = [
    (M::WaistHeight, M::SideNeckHeight),
    (M::HipBoneHeight, M::SideNeckHeight),
];

/// How far the side neck point may stand above or below the back neck point, in centimetres.
///
/// On the reference bodies it is 0.4 to 1.1 below; 5 is chosen to hold every stoop.
pub(crate) const NECK_STEP_CM: f64 = 5.0;

/// All that is wrong with a set of readings, in the order of [`BodyMeasure::ALL`].
pub(crate) fn problems(readings: &BTreeMap<BodyMeasure, Reading>) -> Vec<Problem> {
    let mut found = Vec::new();
    for (measure, reading) in readings {
        let typed = reading.to_string();
        found.extend(outside(
            measure.key().to_owned(),
            typed,
            reading.length.cm(),
            measure.range_cm(),
        ));
        if let Some(sd) = reading.sd {
            found.extend(outside(
                format!("{}.sd", measure.key()),
                sd.cm().to_string(),
                sd.cm(),
                (0.0, MAX_SD_CM),
            ));
        }
    }
    found.extend(out_of_order(readings));
    if !readings.contains_key(&M::Stature) {
        found.push(Problem::new(M::Stature.key(), "", Fault::Missing));
    }
    if !readings.contains_key(&M::HipGirth) && !readings.contains_key(&M::FullestGirth) {
        let others = vec![M::FullestGirth.key().to_owned()];
        found.push(Problem::new(
            M::HipGirth.key(),
            "",
            Fault::MissingOneOf { others },
        ));
    }
    found
}

fn outside(
    place: String,
    typed: String,
    cm: f64,
    (low_cm, high_cm): (f64, f64),
) -> Option<Problem> {
    let inside = (low_cm..=high_cm).contains(&cm);
    (!inside).then(|| Problem::new(place, typed, Fault::OutOfRange { low_cm, high_cm }))
}

/// Taped heights that contradict the order of the body.
fn out_of_order(readings: &BTreeMap<BodyMeasure, Reading>) -> Vec<Problem> {
    let cm = |m: BodyMeasure| readings.get(&m).map(|r| r.length.cm());
    let neighbours = |ladder: &[BodyMeasure]| -> Vec<(BodyMeasure, BodyMeasure)> {
        let taped: Vec<_> = ladder
            .iter()
            .copied()
            .filter(|&m| cm(m).is_some())
            .collect();
        taped.windows(2).map(|w| (w[0], w[1])).collect()
    };
    let mut pairs = neighbours(&LADDER);
    pairs.extend(neighbours(&OTHER_LADDER));
    pairs.extend(PAIRS);
    pairs.sort_unstable();
    pairs.dedup();
    let mut found = Vec::new();
    for (lower, upper) in pairs {
        let (Some(low), Some(high)) = (cm(lower), cm(upper)) else {
            continue;
        };
        if high <= low {
            found.push(contradiction(
                lower,
                readings,
                upper,
                "heights-order",
                "{lower} cm cannot be below the {upper} cm of the other height; tape both again or leave one out",
                vec![("lower", low), ("upper", high)],
            ));
        }
    }
    if let (Some(side), Some(back)) = (cm(M::SideNeckHeight), cm(M::BackNeckHeight))
        && (side - back).abs() > NECK_STEP_CM
    {
        found.push(contradiction(
            M::SideNeckHeight,
            readings,
            M::BackNeckHeight,
            "neck-points",
            "side neck point at {side} cm and back neck point at {back} cm are more than {step} cm apart; \
             tape both again or leave one out",
            vec![("side", side), ("back", back), ("step", NECK_STEP_CM)],
        ));
    }
    found
}

fn contradiction(
    at: BodyMeasure,
    readings: &BTreeMap<BodyMeasure, Reading>,
    other: BodyMeasure,
    code: &'static str,
    english: &'static str,
    args: Vec<(&'static str, f64)>,
) -> Problem {
    let typed = readings
        .get(&at)
        .map(Reading::to_string)
        .unwrap_or_default();
    Problem::new(
        at.key(),
        typed,
        Fault::Contradiction {
            code,
            english,
            args,
            other: vec![other.key().to_owned()],
        },
    )
}
