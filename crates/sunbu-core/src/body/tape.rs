//! What was taped of a person, checked once at entry.
//!
//! A [`Tape`] holds only numbers that can be true together: each inside its accepted range, heights
//! in the order of the body. All that is wrong is told at once. Whether a possible set is likely is
//! another question, answered when the population completes it.

use std::collections::BTreeMap;
use std::fmt;

use super::measures::{BodyMeasure, Sex};
use crate::measure::{Measured, Origin};
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

/// One thing wrong with a set of taped values.
#[derive(Debug, Clone, PartialEq)]
pub enum Problem {
    /// The value is not a finite number or lies outside the accepted range; mostly a slip or a wrong unit.
    OutOfRange {
        /// Which measure.
        measure: BodyMeasure,
        /// The value given, in centimetres.
        value_cm: f64,
        /// Lowest and highest accepted.
        allowed_cm: (f64, f64),
    },
    /// The deviation is not a number, negative, or larger than a guess by eye.
    BadDeviation {
        /// Which measure.
        measure: BodyMeasure,
        /// The deviation given, in centimetres.
        sd_cm: f64,
    },
    /// Two heights contradict the order of the body; one of them is wrong.
    OutOfOrder {
        /// The measure that must be lower.
        lower: BodyMeasure,
        /// Its value, in centimetres.
        lower_cm: f64,
        /// The measure that must be higher.
        upper: BodyMeasure,
        /// Its value, in centimetres.
        upper_cm: f64,
        /// The lowest the upper one may be.
        upper_allowed_from_cm: f64,
    },
    /// Stature, or both hip girth and fullest girth, are missing: the least a body is made from.
    Missing {
        /// Which measure to tape.
        measure: BodyMeasure,
    },
}

impl Problem {
    /// The measure whose field is marked.
    #[must_use]
    pub fn measure(&self) -> BodyMeasure {
        match self {
            Self::OutOfRange { measure, .. }
            | Self::BadDeviation { measure, .. }
            | Self::Missing { measure } => *measure,
            Self::OutOfOrder { lower, .. } => *lower,
        }
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange {
                measure,
                value_cm,
                allowed_cm: (low, high),
            } => write!(
                f,
                "{}: {value_cm} cm is outside {low} to {high} cm; check the number and its unit",
                measure.key()
            ),
            Self::BadDeviation { measure, sd_cm } => write!(
                f,
                "{}: deviation {sd_cm} cm is outside 0 to {MAX_SD_CM} cm; leave it out for the usual {} cm",
                measure.key(),
                measure.tape_sd_cm()
            ),
            Self::OutOfOrder {
                lower,
                lower_cm,
                upper,
                upper_cm,
                upper_allowed_from_cm,
            } => write!(
                f,
                "{}: {lower_cm} cm does not go with {} of {upper_cm} cm, which should then be above \
                 {upper_allowed_from_cm} cm; tape both again or leave one out",
                lower.key(),
                upper.key()
            ),
            Self::Missing { measure } => write!(
                f,
                "{}: missing; stature and hip girth (or fullest girth) are the least a body is made from",
                measure.key()
            ),
        }
    }
}

/// All that is wrong with a set of taped values.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{}", .problems.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n"))]
pub struct TapeError {
    /// Every problem, in the order of [`BodyMeasure::ALL`].
    pub problems: Vec<Problem>,
}

/// A possible set of taped measures of one person: at least stature and hip (or fullest) girth.
#[derive(Debug, Clone, PartialEq)]
pub struct Tape {
    sex: Sex,
    values: BTreeMap<BodyMeasure, Measured>,
}

impl Tape {
    /// Starts the entry of a person's measures.
    #[must_use]
    pub fn of(sex: Sex) -> TapeBuilder {
        TapeBuilder {
            sex,
            values: BTreeMap::new(),
        }
    }

    /// Which population table completes this person.
    #[must_use]
    pub fn sex(&self) -> Sex {
        self.sex
    }

    /// The taped value of a measure; `None` when it was not taped.
    #[must_use]
    pub fn get(&self, measure: BodyMeasure) -> Option<Measured> {
        self.values.get(&measure).copied()
    }

    /// What was taped, in the order of [`BodyMeasure::ALL`].
    pub fn iter(&self) -> impl Iterator<Item = (BodyMeasure, Measured)> + '_ {
        self.values.iter().map(|(m, t)| (*m, *t))
    }
}

/// Gathers taped values; [`TapeBuilder::build`] checks them all together.
#[derive(Debug, Clone)]
pub struct TapeBuilder {
    sex: Sex,
    values: BTreeMap<BodyMeasure, Entry>,
}

/// A value not yet checked.
#[derive(Debug, Clone, Copy)]
struct Entry {
    value_cm: f64,
    sd_cm: f64,
    origin: Origin,
}

impl TapeBuilder {
    /// A value in centimetres with the usual deviation of the tape. A later entry replaces an earlier one.
    #[must_use]
    pub fn with(self, measure: BodyMeasure, value_cm: f64) -> Self {
        self.with_sd(measure, value_cm, measure.tape_sd_cm())
    }

    /// A value that carries its own deviation and origin, such as one read off a photo.
    #[must_use]
    pub fn with_measured(mut self, measure: BodyMeasure, value: Measured) -> Self {
        let entry = Entry {
            value_cm: value.value_cm(),
            sd_cm: value.sd_cm(),
            origin: value.origin(),
        };
        self.values.insert(measure, entry);
        self
    }

    /// A value and its deviation, both in centimetres.
    #[must_use]
    pub fn with_sd(mut self, measure: BodyMeasure, value_cm: f64, sd_cm: f64) -> Self {
        self.values.insert(
            measure,
            Entry {
                value_cm,
                sd_cm,
                origin: Origin::Taped,
            },
        );
        self
    }

    /// The checked set.
    ///
    /// # Errors
    /// [`TapeError`] with every problem: values out of range or not numbers, bad deviations, heights
    /// out of order, stature or both hip girths missing.
    pub fn build(self) -> Result<Tape, TapeError> {
        let mut problems = Vec::new();
        for (&measure, taped) in &self.values {
            let (low, high) = measure.range_cm();
            if !(low..=high).contains(&taped.value_cm) {
                problems.push(Problem::OutOfRange {
                    measure,
                    value_cm: taped.value_cm,
                    allowed_cm: (low, high),
                });
            }
            if !(0.0..=MAX_SD_CM).contains(&taped.sd_cm) {
                problems.push(Problem::BadDeviation {
                    measure,
                    sd_cm: taped.sd_cm,
                });
            }
        }
        problems.extend(self.out_of_order());
        let has = |m| self.values.contains_key(&m);
        problems.extend((!has(M::Stature)).then_some(Problem::Missing {
            measure: M::Stature,
        }));
        problems.extend(
            (!has(M::HipGirth) && !has(M::FullestGirth)).then_some(Problem::Missing {
                measure: M::HipGirth,
            }),
        );
        // A value in range with a deviation in range is always a `Measured`, so this drops nothing.
        let checked = |(&m, e): (&BodyMeasure, &Entry)| {
            Some((m, Measured::new(e.value_cm, e.sd_cm, e.origin).ok()?))
        };
        if problems.is_empty() {
            Ok(Tape {
                sex: self.sex,
                values: self.values.iter().filter_map(checked).collect(),
            })
        } else {
            problems.sort_by_key(Problem::measure);
            Err(TapeError { problems })
        }
    }

    /// Neighbouring taped heights that contradict the order of the body.
    fn out_of_order(&self) -> Vec<Problem> {
        let taped = |m: BodyMeasure| {
            self.values
                .get(&m)
                .map(|t| t.value_cm)
                .filter(|v| v.is_finite())
        };
        let rungs = |ladder: &[BodyMeasure]| -> Vec<BodyMeasure> {
            ladder
                .iter()
                .copied()
                .filter(|&m| taped(m).is_some())
                .collect()
        };
        let neighbours = |ladder: &[BodyMeasure]| -> Vec<(BodyMeasure, BodyMeasure)> {
            rungs(ladder).windows(2).map(|w| (w[0], w[1])).collect()
        };
        let mut pairs = neighbours(&LADDER);
        pairs.extend(neighbours(&OTHER_LADDER));
        pairs.extend(PAIRS);
        pairs.sort();
        pairs.dedup();
        let mut found = Vec::new();
        for (lower, upper) in pairs {
            if let (Some(lower_cm), Some(upper_cm)) = (taped(lower), taped(upper))
                && upper_cm <= lower_cm
            {
                found.push(Problem::OutOfOrder {
                    lower,
                    lower_cm,
                    upper,
                    upper_cm,
                    upper_allowed_from_cm: lower_cm,
                });
            }
        }
        if let (Some(side), Some(back)) = (taped(M::SideNeckHeight), taped(M::BackNeckHeight)) {
            let (lower, lower_cm, upper, upper_cm, from) = if side > back {
                (
                    M::SideNeckHeight,
                    side,
                    M::BackNeckHeight,
                    back,
                    side - NECK_STEP_CM,
                )
            } else {
                (
                    M::BackNeckHeight,
                    back,
                    M::SideNeckHeight,
                    side,
                    back - NECK_STEP_CM,
                )
            };
            if upper_cm < from {
                found.push(Problem::OutOfOrder {
                    lower,
                    lower_cm,
                    upper,
                    upper_cm,
                    upper_allowed_from_cm: from,
                });
            }
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn person() -> TapeBuilder {
        Tape::of(Sex::Women)
            .with(M::Stature, 158.0)
            .with(M::HipGirth, 91.0)
    }

    #[test]
    fn every_wrong_value_is_told_at_once() {
        let error = person()
            .with(M::HipGirth, 9.0)
            .with(M::WaistHeight, 170.0)
            .with(M::BustGirth, f64::NAN)
            .with_sd(M::WaistGirth, 64.0, -1.0)
            .build()
            .unwrap_err();
        let fields: Vec<_> = error.problems.iter().map(Problem::measure).collect();
        assert_eq!(
            fields,
            [
                M::WaistHeight,
                M::WaistHeight,
                M::BustGirth,
                M::WaistGirth,
                M::HipGirth
            ],
            "{error}"
        );
    }

    #[test]
    fn a_waist_above_the_crown_is_refused_naming_both_heights() {
        let error = person()
            .with(M::Stature, 140.0)
            .with(M::WaistHeight, 145.0)
            .build()
            .unwrap_err();
        let said = error.to_string();
        for part in ["waist_height", "145", "stature", "140", "tape both again"] {
            assert!(said.contains(part), "{part} in: {said}");
        }
    }

    #[test]
    fn stature_and_one_hip_girth_are_the_least() {
        assert!(person().build().is_ok());
        assert!(
            Tape::of(Sex::Men)
                .with(M::Stature, 170.0)
                .with(M::FullestGirth, 95.0)
                .build()
                .is_ok()
        );
        let error = Tape::of(Sex::Women).build().unwrap_err();
        assert_eq!(error.problems.len(), 2, "{error}");
    }

    #[test]
    fn the_ends_of_a_range_are_accepted_and_a_hair_beyond_refused() {
        let (low, high) = M::BustGirth.range_cm();
        for (value, good) in [
            (low, true),
            (high, true),
            (low - 1e-9, false),
            (high + 1e-9, false),
            (f64::INFINITY, false),
        ] {
            assert_eq!(
                person().with(M::BustGirth, value).build().is_ok(),
                good,
                "{value}"
            );
        }
    }
}
