//! Lengths against the body and the dresser's own hand: her hands have no tape in them.

use crate::body::{Body, BodyMeasure};
use crate::keyed::keyed_enum;

keyed_enum! {
    /// A landmark that fingers find through cloth.
    Landmark {
        /// The ankle bone.
        Ankle = "ankle",
        /// The hip bone, at its point in front.
        HipBone = "hip_bone",
        /// The navel.
        Navel = "navel",
        /// The waist.
        Waist = "waist",
        /// Just below the bust.
        UnderBust = "under_bust",
    }
}

impl Landmark {
    /// The body's height that marks it.
    pub const fn measure(self) -> BodyMeasure {
        match self {
            Self::Ankle => BodyMeasure::AnkleHeight,
            Self::HipBone => BodyMeasure::HipBoneHeight,
            Self::Navel => BodyMeasure::NavelHeight,
            Self::Waist => BodyMeasure::WaistHeight,
            Self::UnderBust => BodyMeasure::UnderBustHeight,
        }
    }
}

keyed_enum! {
    /// A part of the dresser's hand used as a measure.
    HandUnit {
        /// Breadth of one finger.
        Finger = "finger",
        /// Length of the index finger.
        IndexFinger = "index_finger",
        /// A light fist.
        Fist = "fist",
    }
}

/// The dresser's own hand, in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hands {
    /// Breadth of one finger.
    pub finger: f64,
    /// Length of the index finger.
    pub index_finger: f64,
    /// Breadth of a light fist.
    pub fist: f64,
}

impl Hands {
    /// The hands of this body.
    ///
    /// A finger is a quarter of the hand's breadth; a light fist, knuckles across, is the hand's
    /// breadth and a thumb (another finger) over it: "common practice, no source".
    pub fn of(body: &Body) -> Self {
        let finger = body.measure(BodyMeasure::HandBreadth).value_cm() / 4.0;
        Self {
            finger,
            index_finger: body.measure(BodyMeasure::IndexFingerLength).value_cm(),
            fist: finger * 5.0,
        }
    }
}

/// A length or height as hands find it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Against {
    /// So many of a hand unit, in halves.
    Hand {
        /// Which part of the hand.
        unit: HandUnit,
        /// How many, to the half.
        count: f64,
    },
    /// So many fingers above (positive) or below a landmark, in halves.
    Body {
        /// The landmark.
        landmark: Landmark,
        /// Fingers above it, to the half; zero at the landmark itself.
        fingers: f64,
    },
}

fn to_half(x: f64) -> f64 {
    (x * 2.0).round() / 2.0
}

/// A length in hand units: the unit that comes nearest, fingers up to four; none when even the
/// best is more than half a finger off, or when there is less than a quarter of a finger to feel.
pub fn length_by_hand(cm: f64, hands: &Hands) -> Option<Against> {
    if cm < 0.25 * hands.finger {
        return None;
    }
    let fingers = to_half(cm / hands.finger);
    let candidates = [
        (HandUnit::IndexFinger, 1.0, hands.index_finger),
        (HandUnit::Fist, 1.0, hands.fist),
        (HandUnit::Finger, fingers.clamp(0.5, 4.0), hands.finger),
        (
            HandUnit::Fist,
            to_half(cm / hands.fist).max(1.0),
            hands.fist,
        ),
    ];
    let off = |&(_, count, size): &(HandUnit, f64, f64)| (count * size - cm).abs();
    let best = candidates
        .into_iter()
        .min_by(|a, b| off(a).total_cmp(&off(b)))?;
    (off(&best) <= 0.5 * hands.finger).then_some(Against::Hand {
        unit: best.0,
        count: best.1,
    })
}

/// A height in fingers above or below the nearest landmark; none beyond six fingers.
pub fn height_by_body(cm: f64, body: &Body, hands: &Hands) -> Option<Against> {
    let offset = |l: &Landmark| cm - body.measure(l.measure()).value_cm();
    let nearest = *Landmark::ALL
        .iter()
        .min_by(|a, b| offset(a).abs().total_cmp(&offset(b).abs()))?;
    let fingers = to_half(offset(&nearest) / hands.finger);
    (fingers.abs() <= 6.0).then_some(Against::Body {
        landmark: nearest,
        fingers,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const HANDS: Hands = Hands {
        finger: 1.8,
        index_finger: 6.6,
        fist: 9.0,
    };

    #[test]
    fn two_fingers_of_front_cover_are_two_fingers() {
        let got = length_by_hand(3.5, &HANDS);
        assert_eq!(
            got,
            Some(Against::Hand {
                unit: HandUnit::Finger,
                count: 2.0
            })
        );
    }

    #[test]
    fn a_fold_of_six_and_a_half_is_an_index_finger() {
        let got = length_by_hand(6.5, &HANDS);
        assert_eq!(
            got,
            Some(Against::Hand {
                unit: HandUnit::IndexFinger,
                count: 1.0
            })
        );
    }

    #[test]
    fn nothing_is_not_half_a_finger() {
        assert_eq!(length_by_hand(0.0, &HANDS), None);
        assert_eq!(length_by_hand(-0.3, &HANDS), None);
    }

    #[test]
    fn a_length_between_units_by_more_than_half_a_finger_has_none() {
        assert_eq!(length_by_hand(11.3, &HANDS), None);
    }
}
