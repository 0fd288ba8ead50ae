//! A value with how far it is trusted and where it came from.

use serde::{Deserialize, Serialize};

/// Half the width of a 90 % interval in standard deviations: the standard normal distribution
/// lies below it with probability 0.95.
pub const Z_90: f64 = 1.644_853_6;

/// Largest value or deviation taken, in cm, either way: as for lengths, 100 m.
const LIMIT_CM: f64 = 10_000.0;

/// Where a value came from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Origin {
    /// Read off a tape.
    #[default]
    Taped,
    /// Completed from other measures and a population or published proportions.
    Completed,
    /// Read off a photo.
    Photo,
    /// The customary value.
    Customary,
    /// Learned from earlier dressings.
    Learned,
}

/// A value in centimetres with its standard deviation and origin.
///
/// Always finite, within 100 m, the deviation zero or more. In files `{ value, sd, origin }`;
/// without an origin it was taped.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Raw", into = "Raw")]
pub struct Measured {
    value_cm: f64,
    sd_cm: f64,
    origin: Origin,
}

/// Why a value with a deviation was refused.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum MeasuredError {
    /// Not a number, infinite, or over 100 m; commonest cause: a failed sum before it.
    #[error("value {value_cm} cm is no length; it is a number from -10000 to 10000 cm")]
    Value {
        /// The refused value.
        value_cm: f64,
    },
    /// Not a number, negative, infinite, or over 100 m; commonest cause: a variance below zero.
    #[error("deviation {sd_cm} cm is none; it is a number from 0 to 10000 cm")]
    Deviation {
        /// The refused deviation.
        sd_cm: f64,
    },
}

impl MeasuredError {
    /// A name for the kind of error that stays the same, for programs and translations.
    pub const fn code(&self) -> &'static str {
        match self {
            MeasuredError::Value { .. } => "bad_value",
            MeasuredError::Deviation { .. } => "bad_deviation",
        }
    }
}

impl Measured {
    /// A value of `value_cm` centimetres with standard deviation `sd_cm` centimetres.
    ///
    /// # Errors
    /// [`MeasuredError::Value`] unless the value is a number within 100 m either way,
    /// [`MeasuredError::Deviation`] unless the deviation is a number from 0 to 100 m.
    pub fn new(value_cm: f64, sd_cm: f64, origin: Origin) -> Result<Measured, MeasuredError> {
        // Ranges contain neither NaN nor the infinities.
        if !(-LIMIT_CM..=LIMIT_CM).contains(&value_cm) {
            return Err(MeasuredError::Value { value_cm });
        }
        if !(0.0..=LIMIT_CM).contains(&sd_cm) {
            return Err(MeasuredError::Deviation { sd_cm });
        }
        Ok(Measured {
            value_cm,
            sd_cm,
            origin,
        })
    }

    /// The value in centimetres.
    pub const fn value_cm(self) -> f64 {
        self.value_cm
    }

    /// The standard deviation in centimetres.
    pub const fn sd_cm(self) -> f64 {
        self.sd_cm
    }

    /// Where it came from.
    pub const fn origin(self) -> Origin {
        self.origin
    }

    /// The lower and upper end, in centimetres, of the interval that holds the truth nine times
    /// in ten, if the error is normally distributed.
    pub fn interval_90(self) -> (f64, f64) {
        let half = Z_90 * self.sd_cm;
        (self.value_cm - half, self.value_cm + half)
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Raw {
    value: f64,
    sd: f64,
    #[serde(default)]
    origin: Origin,
}

impl TryFrom<Raw> for Measured {
    type Error = MeasuredError;
    fn try_from(raw: Raw) -> Result<Measured, MeasuredError> {
        Measured::new(raw.value, raw.sd, raw.origin)
    }
}

impl From<Measured> for Raw {
    fn from(measured: Measured) -> Raw {
        Raw {
            value: measured.value_cm,
            sd: measured.sd_cm,
            origin: measured.origin,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    #[test]
    fn the_interval_holds_nine_tenths_of_a_normal_distribution() {
        // Second road: the normal density summed by Simpson's rule over the interval of a value
        // with deviation 1. Its error here is below 1e-12 (h^4 with h = 1/600).
        let (low, high) = Measured::new(0.0, 1.0, Origin::Taped)
            .unwrap()
            .interval_90();
        let steps = 2000;
        let h = (high - low) / f64::from(steps);
        let density = |x: f64| (-x * x / 2.0).exp() / (2.0 * PI).sqrt();
        let sum: f64 = (0..=steps)
            .map(|i| {
                let weight = if i == 0 || i == steps {
                    1.0
                } else {
                    f64::from(2 + i % 2 * 2)
                };
                weight * density(low + h * f64::from(i))
            })
            .sum();
        let share = sum * h / 3.0;
        // Eight digits of z leave at most 2 * 0.103 * 5e-8 (density times rounding of z).
        assert!((share - 0.9).abs() < 2e-8, "share {share} against 0.9");
    }

    #[test]
    fn what_is_no_value_is_refused() {
        for value in [
            f64::NAN,
            f64::INFINITY,
            f64::NEG_INFINITY,
            10_001.0,
            -10_001.0,
        ] {
            let error = Measured::new(value, 1.0, Origin::Taped).unwrap_err();
            assert_eq!(error.code(), "bad_value", "{value}");
        }
        for sd in [f64::NAN, f64::INFINITY, -0.1, 10_001.0] {
            let error = Measured::new(160.0, sd, Origin::Taped).unwrap_err();
            assert_eq!(error.code(), "bad_deviation", "{sd}");
        }
        let sure = Measured::new(160.0, 0.0, Origin::Taped).unwrap();
        assert_eq!(sure.interval_90(), (160.0, 160.0));
    }

    #[test]
    fn files_give_value_deviation_and_origin() {
        let photo = Measured::new(90.5, 0.5, Origin::Photo).unwrap();
        let json = serde_json::to_string(&photo).unwrap();
        assert_eq!(json, r#"{"value":90.5,"sd":0.5,"origin":"photo"}"#);
        assert_eq!(serde_json::from_str::<Measured>(&json).unwrap(), photo);
        let taped: Measured = serde_json::from_str(r#"{"value":160,"sd":0.5}"#).unwrap();
        assert_eq!(taped.origin(), Origin::Taped);
        for bad in [
            r#"{"value":160,"sd":-1}"#,
            r#"{"value":1e9,"sd":1}"#,
            r#"{"value":160}"#,
        ] {
            assert!(serde_json::from_str::<Measured>(bad).is_err(), "{bad}");
        }
    }
}
