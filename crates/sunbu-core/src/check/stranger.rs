//! A photo of somebody whose measures nobody has taken.

use std::collections::BTreeMap;

use crate::body::{Body, BodyMeasure, Population, Sex};
use crate::case::Person;
use crate::garment::rules::r3;
use crate::garment::{Cloth, Garment, Kind, MitakeFrom, Part, Sheet};
use crate::measure::{Length, Reading, Unit};
use crate::problem::{Fault, Problem};

/// Somebody unknown: what may still be known of her.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Stranger {
    /// Her stature, when somebody has said it.
    pub stature: Option<Reading>,
}

/// How a stranger is taken: nothing known.
pub const STRANGER: Stranger = Stranger { stature: None };

/// Deviation of a measure of which nothing is known, as a tape would have it, in centimetres: the
/// widest that a reading may have, so that it says next to nothing beside the population.
const UNKNOWN_SD: f64 = crate::body::MAX_SD_CM;
/// Deviation of a stature that was told and not taped, in centimetres (chosen).
const TOLD_SD: f64 = 1.5;
/// How far a garment's length may be from its wearer's height, and a panel from what the published
/// proportions give for her hip, in centimetres (chosen).
const LENGTH_SD: f64 = 5.0;
const WIDTH_SD: f64 = 2.0;

/// The likeliest body and garment of a stranger, each number with the spread of the population.
///
/// # Errors
/// What the body's and the garment's own checks refuse: a stature beyond the range of people.
pub fn stranger(sex: Sex, known: &Stranger) -> Result<(Body, Garment), Vec<Problem>> {
    let population = Population::shipped(sex);
    let unknown = |m: BodyMeasure| reading(population.mean_cm(m), UNKNOWN_SD);
    let stature = match known.stature {
        Some(told) => Reading {
            sd: Some(told.sd.map_or_else(|| length(TOLD_SD), Ok)?),
            ..told
        },
        None => unknown(BodyMeasure::Stature)?,
    };
    let person = Person {
        name: String::new(),
        sex,
        measures: BTreeMap::from([
            (BodyMeasure::Stature, stature),
            (BodyMeasure::HipGirth, unknown(BodyMeasure::HipGirth)?),
        ]),
        note: String::new(),
    };
    let body = person.body()?;
    let widths = r3(body.value_cm(BodyMeasure::HipGirth));
    let sheet = Sheet {
        kind: Kind::Nagagi,
        cloth: Cloth::Soft,
        mitake_from: MitakeFrom::Shoulder,
        parts: [
            (Part::Mitake, body.value_cm(BodyMeasure::Stature), LENGTH_SD),
            (Part::Ushirohaba, widths.ushirohaba, WIDTH_SD),
            (Part::Maehaba, widths.maehaba, WIDTH_SD),
        ]
        .into_iter()
        .map(|(part, cm, sd)| Ok((part, reading(cm, sd)?)))
        .collect::<Result<_, Vec<Problem>>>()?,
    };
    Ok((body, sheet.complete()?))
}

fn length(cm: f64) -> Result<Length, Vec<Problem>> {
    let unreadable = |why| {
        vec![Problem::new(
            "stature",
            cm.to_string(),
            Fault::Unreadable(why),
        )]
    };
    Length::from_cm(cm).map_err(unreadable)
}

fn reading(cm: f64, sd: f64) -> Result<Reading, Vec<Problem>> {
    Ok(Reading {
        length: length(cm)?,
        unit: Unit::Centimetre,
        sd: Some(length(sd)?),
    })
}
