//! A length as a whole number of one small unit that every unit of the trade is a multiple of.
//!
//! The unit is 1/6600 cm. Why 6600: a kujira-bu is 25/66 cm, a kane-bu 10/33 cm, an inch 2.54 cm
//! and a millimetre 0.1 cm; 6600 times each is whole (2500, 2000, 16764, 660), so entry in one
//! unit and sums across units lose nothing.

use super::LengthError;
use super::error::quote;
use serde::{Deserialize, Serialize};
use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// Units of 1/6600 cm in one millimetre.
pub(super) const PER_MM: i64 = 660;
/// Units in one centimetre.
pub(super) const PER_CM: i64 = 10 * PER_MM;
/// Units in one metre.
pub(super) const PER_METRE: i64 = 100 * PER_CM;
/// Units in one kujira-bu: a hundredth of 25/66 m.
pub(super) const PER_KUJIRA_BU: i64 = PER_METRE * 25 / 66 / 100; // = 2500
/// Units in one kane-bu: a hundredth of 10/33 m.
pub(super) const PER_KANE_BU: i64 = PER_METRE * 10 / 33 / 100; // = 2000
/// Units in one inch: 25.4 mm (international yard of 1959, 0.9144 m).
pub(super) const PER_INCH: i64 = PER_MM * 254 / 10; // = 16764
/// Units in one foot.
pub(super) const PER_FOOT: i64 = 12 * PER_INCH;

/// The longest length read from outside, 100 m: several bolts of cloth. Chosen, so that a slipped
/// finger or a pasted number is refused and no sum of entries comes near the limits of `i64`.
pub(super) const LIMIT: i64 = 100 * PER_METRE;

/// A length, exact to 1/6600 cm (1.5 micrometres); may be negative, as a shift may.
///
/// Sums and multiples stop at the ends of `i64` (over ten billion kilometres) and so never panic.
///
/// ```
/// use sunbu_core::measure::Length;
/// // 25 cm are exactly 66 kujira-bu.
/// assert_eq!(Length::from_mm(250), Length::from_kujira_bu(66));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// No length.
    pub const ZERO: Length = Length(0);

    /// A length of so many 1/6600 cm.
    pub const fn from_units(units: i64) -> Length {
        Length(units)
    }

    /// How many 1/6600 cm this is.
    pub const fn units(self) -> i64 {
        self.0
    }

    /// A length of so many millimetres, exactly.
    pub const fn from_mm(mm: i64) -> Length {
        Length(mm.saturating_mul(PER_MM))
    }

    /// A length of so many bu of the cloth measure (1/100 of 25/66 m), exactly.
    pub const fn from_kujira_bu(bu: i64) -> Length {
        Length(bu.saturating_mul(PER_KUJIRA_BU))
    }

    /// A length of so many bu of the carpenter's measure (1/100 of 10/33 m), exactly.
    pub const fn from_kane_bu(bu: i64) -> Length {
        Length(bu.saturating_mul(PER_KANE_BU))
    }

    /// A length of so many inches of 2.54 cm, exactly.
    pub const fn from_inches(inches: i64) -> Length {
        Length(inches.saturating_mul(PER_INCH))
    }

    /// The length nearest to so many centimetres; half a unit goes to the even one.
    ///
    /// Off by at most 1/13200 cm. What [`Length::cm`] gave comes back as the same length.
    ///
    /// # Errors
    /// [`LengthError::NotANumber`] for NaN, [`LengthError::TooLarge`] beyond 100 m either way,
    /// infinities among them.
    pub fn from_cm(cm: f64) -> Result<Length, LengthError> {
        if cm.is_nan() {
            return Err(LengthError::NotANumber {
                text: cm.to_string(),
            });
        }
        let units = (cm * PER_CM as f64).round_ties_even();
        if units.abs() > LIMIT as f64 {
            return Err(LengthError::TooLarge {
                text: quote(&format!("{cm:e} cm")),
            });
        }
        #[expect(
            clippy::cast_possible_truncation,
            reason = "whole and within LIMIT, just checked"
        )]
        Ok(Length(units as i64))
    }

    /// This length in centimetres, to the precision of an `f64`.
    pub fn cm(self) -> f64 {
        self.0 as f64 / PER_CM as f64
    }

    /// The same length without its sign.
    #[must_use]
    pub const fn abs(self) -> Length {
        Length(self.0.saturating_abs())
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0.saturating_add(other.0))
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Length) {
        *self = *self + other;
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0.saturating_sub(other.0))
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Length) {
        *self = *self - other;
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(self.0.saturating_neg())
    }
}

impl Mul<i64> for Length {
    type Output = Length;
    fn mul(self, times: i64) -> Length {
        Length(self.0.saturating_mul(times))
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}

/// As a number of centimetres, the unit of all numbers in JSON.
impl Serialize for Length {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(self.cm())
    }
}

/// From a number of centimetres, by [`Length::from_cm`].
impl<'de> Deserialize<'de> for Length {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Length, D::Error> {
        Length::from_cm(f64::deserialize(deserializer)?).map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_scale_is_the_smallest_that_makes_every_unit_whole() {
        // Each unit of the trade as a fraction of a centimetre, in lowest terms.
        let denominators = [10, 66, 33, 50]; // mm 1/10, kujira-bu 25/66, kane-bu 10/33, inch 127/50
        // With rin (a tenth of a bu) the kujira-bu's 25/66 becomes 5/132, the kane-bu's 1/33.
        let with_rin = denominators.into_iter().chain([132, 33]).fold(1, lcm);
        assert_eq!(
            with_rin, 3300,
            "least common multiple with rin is {with_rin}, expected 3300"
        );
        // 6600 is twice that: half a rin of either shaku and half a millimetre stay whole too.
        assert_eq!(
            PER_CM,
            2 * with_rin,
            "{PER_CM} units per cm against twice {with_rin}"
        );
    }

    fn lcm(a: i64, b: i64) -> i64 {
        let (mut x, mut y) = (a, b);
        while y != 0 {
            (x, y) = (y, x % y);
        }
        a / x * b
    }

    #[test]
    fn constants_built_by_division_lost_nothing() {
        assert_eq!(PER_KUJIRA_BU * 100 * 66, 25 * PER_METRE);
        assert_eq!(PER_KANE_BU * 100 * 33, 10 * PER_METRE);
        assert_eq!(PER_INCH * 50, 127 * PER_CM);
    }

    #[test]
    fn floats_that_are_no_length_are_refused() {
        assert_eq!(
            Length::from_cm(f64::NAN).unwrap_err().code(),
            "not_a_number"
        );
        for cm in [
            f64::INFINITY,
            f64::NEG_INFINITY,
            1e300,
            -1e300,
            10_000.001,
            -10_000.001,
        ] {
            assert_eq!(
                Length::from_cm(cm).unwrap_err().code(),
                "too_large",
                "{cm} cm"
            );
        }
        assert_eq!(Length::from_cm(10_000.0).unwrap().units(), LIMIT);
        assert_eq!(Length::from_cm(-0.0).unwrap(), Length::ZERO);
    }

    #[test]
    fn half_a_unit_goes_to_the_even_one() {
        // n + 1/2 units as centimetres may not be exact in binary, so only these are: 0.5/6600 is
        // not representable, but 6600 * x is exact for x = k/16, where 6600/16 = 412.5.
        assert_eq!(Length::from_cm(1.0 / 16.0).unwrap().units(), 412);
        assert_eq!(Length::from_cm(3.0 / 16.0).unwrap().units(), 1238); // 1237.5
        assert_eq!(Length::from_cm(-1.0 / 16.0).unwrap().units(), -412);
    }

    #[test]
    fn sums_at_the_end_of_the_scale_stop_there() {
        let most = Length::from_units(i64::MAX);
        assert_eq!(most + most, most);
        assert_eq!(most * 3, most);
        assert_eq!(-Length::from_units(i64::MIN), most);
        assert_eq!(Length::from_units(i64::MIN).abs(), most);
        assert_eq!(Length::from_inches(i64::MIN), Length::from_units(i64::MIN));
    }

    proptest! {
        #[test]
        fn centimetres_come_back_as_the_same_length(units in -LIMIT..=LIMIT) {
            let length = Length::from_units(units);
            prop_assert_eq!(Length::from_cm(length.cm()), Ok(length));
            let json = serde_json::to_string(&length).unwrap();
            prop_assert_eq!(serde_json::from_str::<Length>(&json).unwrap(), length, "{}", json);
        }

        #[test]
        fn order_is_the_order_of_the_centimetres(a in -LIMIT..=LIMIT, b in -LIMIT..=LIMIT) {
            let (a, b) = (Length::from_units(a), Length::from_units(b));
            prop_assert_eq!(a.cmp(&b), a.cm().total_cmp(&b.cm()));
        }

        #[test]
        fn adding_and_taking_away_again_changes_nothing(a in -LIMIT..=LIMIT, b in -LIMIT..=LIMIT) {
            let (a, b) = (Length::from_units(a), Length::from_units(b));
            prop_assert_eq!(a + b - b, a);
            prop_assert_eq!(a - b, -(b - a));
            prop_assert_eq!(a + a + a, a * 3);
        }
    }
}
