//! The list of body measures: key, ISO 8559-1 term, accepted range, usual error of the tape.
//!
//! Heights are above the floor the person is dressed on. The ISO terms are from memory; where the
//! trade measures something else under the same name, that is a measure of its own (the fullest
//! girth beside the hip girth). Accepted ranges are chosen wide: they keep slips of the pen out
//! and every grown person in. The usual error of the tape is common practice, no source: half a
//! centimetre on the body, two millimetres on the hand.

use crate::keyed::keyed_enum;

keyed_enum! {
    /// Which population table a person is completed from.
    Sex {
        /// The table of women.
        Women = "women",
        /// The table of men.
        Men = "men",
    }
}

/// What a number tells of the body.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Height above the floor.
    Height,
    /// Girth of the convex hull, as a tape goes round.
    Girth,
    /// Any other length or breadth.
    Length,
}

macro_rules! body_measures {
    ($($(#[$doc:meta])* $name:ident $key:literal $iso:literal $kind:ident $low:literal..$high:literal tape $sd:literal;)*) => {
        keyed_enum! {
            /// One measure of the body. Serialised by its key, such as `hip_girth`.
            BodyMeasure {
                $(
                    $(#[$doc])*
                    #[doc = concat!("\n\nTerm of ISO 8559-1, else a plain description: ", $iso, ".")]
                    $name = $key,
                )*
            }
        }

        impl BodyMeasure {
            /// Height, girth, or another length.
            #[must_use]
            pub fn kind(self) -> Kind {
                match self { $(Self::$name => Kind::$kind,)* }
            }

            /// Lowest and highest value accepted at entry, in centimetres, both included.
            #[must_use]
            pub fn range_cm(self) -> (f64, f64) {
                match self { $(Self::$name => ($low, $high),)* }
            }

            /// Deviation of a taped value when the dresser gives none, in centimetres.
            #[must_use]
            pub fn tape_sd_cm(self) -> f64 {
                match self { $(Self::$name => $sd,)* }
            }
        }
    };
}

body_measures! {
    /// Floor to crown.
    Stature "stature" "stature" Height 100.0..215.0 tape 0.5;
    /// Floor to the back neck point (cervicale, the seventh neck bone).
    BackNeckHeight "back_neck_height" "back neck height" Height 80.0..190.0 tape 0.5;
    /// Floor to the side neck point, where the shoulder ridge meets the neck.
    SideNeckHeight "side_neck_height" "side neck height" Height 80.0..190.0 tape 0.5;
    /// Floor to the shoulder point (acromion).
    ShoulderHeight "shoulder_height" "shoulder height" Height 75.0..185.0 tape 0.5;
    /// Floor to the bust point.
    BustHeight "bust_height" "bust height" Height 60.0..165.0 tape 0.5;
    /// Floor to the lower edge of the breast.
    UnderBustHeight "under_bust_height" "underbust height" Height 55.0..160.0 tape 0.5;
    /// Floor to the natural waist, midway between lowest rib and hip bone.
    WaistHeight "waist_height" "waist height" Height 50.0..150.0 tape 0.5;
    /// Floor to the navel.
    NavelHeight "navel_height" "navel height" Height 45.0..145.0 tape 0.5;
    /// Floor to the point of the hip bone that fingers find in front (anterior superior iliac spine).
    HipBoneHeight "hip_bone_height" "anterior superior iliac spine height" Height 45.0..145.0 tape 0.5;
    /// Floor to the greatest prominence of the buttocks.
    HipHeight "hip_height" "hip height" Height 35.0..125.0 tape 0.5;
    /// Floor to the crotch.
    CrotchHeight "crotch_height" "inside leg height" Height 30.0..115.0 tape 0.5;
    /// Floor to the middle of the knee cap.
    KneeHeight "knee_height" "knee height" Height 20.0..70.0 tape 0.5;
    /// Floor to the outer ankle bone.
    AnkleHeight "ankle_height" "ankle height" Height 3.0..12.0 tape 0.3;
    /// Round the base of the neck.
    NeckBaseGirth "neck_base_girth" "neck base girth" Girth 25.0..60.0 tape 0.5;
    /// Round the bust points.
    BustGirth "bust_girth" "bust girth" Girth 55.0..180.0 tape 0.5;
    /// Round the ribs below the breast.
    UnderBustGirth "under_bust_girth" "underbust girth" Girth 50.0..170.0 tape 0.5;
    /// Round the natural waist.
    WaistGirth "waist_girth" "waist girth" Girth 45.0..190.0 tape 0.5;
    /// Round the belly at the navel.
    NavelGirth "navel_girth" "waist girth at the navel" Girth 45.0..200.0 tape 0.5;
    /// Round the greatest prominence of the buttocks.
    HipGirth "hip_girth" "hip girth" Girth 60.0..200.0 tape 0.5;
    /// The fullest girth anywhere from belly to thighs: the trade's koshi-mawari (S6b, S12).
    FullestGirth "fullest_girth" "fullest girth, belly to thighs" Girth 60.0..210.0 tape 0.5;
    /// From shoulder point to shoulder point, straight.
    ShoulderBreadth "shoulder_breadth" "shoulder breadth (biacromial)" Length 22.0..55.0 tape 0.5;
    /// Back neck point over the shoulder point to the wrist bone, arm lowered 45 degrees: the body's yuki.
    SpineToWrist "spine_to_wrist" "back neck point to wrist" Length 45.0..105.0 tape 0.5;
    /// Wrist crease to the tip of the middle finger.
    HandLength "hand_length" "hand length" Length 10.0..26.0 tape 0.2;
    /// Across the knuckles without the thumb.
    HandBreadth "hand_breadth" "hand breadth" Length 5.0..12.0 tape 0.2;
    /// Length of the index finger.
    IndexFingerLength "index_finger_length" "index finger length" Length 3.5..11.0 tape 0.2;
    /// One finger of a hand laid flat: a quarter of four fingers side by side at the middle joint.
    FingerBreadth "finger_breadth" "finger breadth" Length 1.0..3.0 tape 0.05;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_measure_comes_back_from_its_key_and_stands_at_its_index() {
        for (i, m) in BodyMeasure::ALL.iter().copied().enumerate() {
            assert_eq!(BodyMeasure::from_key(m.key()), Some(m), "{}", m.key());
            assert_eq!(m.index(), i, "{}", m.key());
            let (low, high) = m.range_cm();
            assert!(
                0.0 < low && low < high && m.tape_sd_cm() < low / 5.0,
                "{}: {low} to {high}",
                m.key()
            );
        }
        assert_eq!(BodyMeasure::from_key("hip"), None);
    }
}
