//! What is marked on a photo: places in trade terms, and how sure the hand that marked was.

use std::collections::BTreeMap;

use crate::keyed::keyed_enum;

keyed_enum! {
    /// From which side a photo shows the wearer.
    View {
        /// She faces the lens.
        Front = "front",
        /// Her back.
        Back = "back",
        /// Her right side, where the outer collar ends.
        Right = "right",
        /// Her left side.
        Left = "left",
    }
}

keyed_enum! {
    /// One place to mark on a photo. Left and right are the wearer's; an edge is marked where the
    /// cloth ends, on the figure's middle line or a hand's breadth inside its outline: at the outline
    /// itself every line round the body bends out of sight, and no eye can say where it ends.
    Mark {
        /// The floor where the feet meet it, midway between them: at the toes from the front, at
        /// the heels from behind, under the near ankle from the side.
        Floor = "floor",
        /// The top of the head, hair and all.
        Crown = "crown",
        /// The outer bone of the left ankle.
        AnkleLeft = "ankle_left",
        /// The outer bone of the right ankle.
        AnkleRight = "ankle_right",
        /// The hem a hand's breadth inside the outline on the left.
        HemLeft = "hem_left",
        /// The hem on the middle line, or midway between the outlines from the side.
        HemCentre = "hem_centre",
        /// The hem a hand's breadth inside the outline on the right.
        HemRight = "hem_right",
        /// The lower corner of the outer panel (uwamae).
        UwamaeCorner = "uwamae_corner",
        /// The outer front edge where the fold hides it.
        EdgeAtFold = "edge_at_fold",
        /// The outer collar's end (erisaki) on the front edge, where it shows below the fold.
        CollarEnd = "collar_end",
        /// The outline of the skirt a hand's length above the hem on the left.
        SkirtLeft = "skirt_left",
        /// The outline of the skirt a hand's length above the hem on the right.
        SkirtRight = "skirt_right",
        /// The outline at the fullest hip on the left.
        HipLeft = "hip_left",
        /// The outline at the fullest hip on the right.
        HipRight = "hip_right",
        /// The fold's lower edge a hand's breadth inside the outline on the left.
        FoldLeft = "fold_left",
        /// The fold's lower edge on the middle line.
        FoldCentre = "fold_centre",
        /// The fold's lower edge a hand's breadth inside the outline on the right.
        FoldRight = "fold_right",
        /// The obi's lower edge a hand's breadth inside the outline on the left.
        ObiLowerLeft = "obi_lower_left",
        /// The obi's lower edge on the middle line.
        ObiLowerCentre = "obi_lower_centre",
        /// The obi's lower edge a hand's breadth inside the outline on the right.
        ObiLowerRight = "obi_lower_right",
        /// The outline of the obi at half its height on the left.
        ObiSideLeft = "obi_side_left",
        /// The outline of the obi at half its height on the right.
        ObiSideRight = "obi_side_right",
        /// The obi's upper edge a hand's breadth inside the outline on the left.
        ObiUpperLeft = "obi_upper_left",
        /// The obi's upper edge on the middle line.
        ObiUpperCentre = "obi_upper_centre",
        /// The obi's upper edge a hand's breadth inside the outline on the right.
        ObiUpperRight = "obi_upper_right",
        /// The obiage's upper edge on the middle line.
        ObiageTop = "obiage_top",
        /// Where the kimono collars cross.
        KimonoCrossing = "kimono_crossing",
        /// Where the juban collars cross.
        JubanCrossing = "juban_crossing",
        /// The kimono collar's inner edge on the left shoulder, beside the neck.
        CollarShoulderLeft = "collar_shoulder_left",
        /// The kimono collar's inner edge on the right shoulder, beside the neck.
        CollarShoulderRight = "collar_shoulder_right",
        /// The inner edge of the collar that comes from the left shoulder, where obi or obiage
        /// hides it.
        CollarTieLeft = "collar_tie_left",
        /// The inner edge of the collar that comes from the right shoulder, where obi or obiage,
        /// or the outer collar, hides it.
        CollarTieRight = "collar_tie_right",
        /// The juban collar's inner edge on the left, midway from the shoulder to its crossing.
        JubanEdgeLeft = "juban_edge_left",
        /// The juban collar's inner edge on the right, midway from the shoulder to its crossing.
        JubanEdgeRight = "juban_edge_right",
        /// The kimono collar's upper edge at the centre back.
        Nape = "nape",
        /// The back seam just below the collar.
        SeamNape = "seam_nape",
        /// The back seam just above the obi or drum.
        SeamWaist = "seam_waist",
        /// The back seam at the fullest hip.
        SeamHip = "seam_hip",
        /// The back seam at the hem.
        SeamHem = "seam_hem",
        /// The drum's upper edge on the middle line.
        DrumTop = "drum_top",
        /// The drum's lower fold on the middle line.
        DrumBottom = "drum_bottom",
        /// The lower end of the tail (tare) on the middle line.
        TareEnd = "tare_end",
        /// The left sleeve's end on the shoulder line.
        SleeveEndLeft = "sleeve_end_left",
        /// The right sleeve's end on the shoulder line.
        SleeveEndRight = "sleeve_end_right",
        /// The left wrist bone.
        WristLeft = "wrist_left",
        /// The right wrist bone.
        WristRight = "wrist_right",
    }
}

impl Mark {
    /// Whether the place can be seen from this side.
    pub fn shows_in(self, view: View) -> bool {
        use Mark as M;
        match self {
            M::Floor | M::Crown => true,
            M::HemCentre
            | M::FoldCentre
            | M::ObiLowerCentre
            | M::ObiUpperCentre
            | M::HemLeft
            | M::HemRight
            | M::SkirtLeft
            | M::SkirtRight
            | M::ObiSideLeft
            | M::ObiSideRight
            | M::HipLeft
            | M::HipRight
            | M::FoldLeft
            | M::FoldRight
            | M::ObiLowerLeft
            | M::ObiLowerRight
            | M::ObiUpperLeft
            | M::ObiUpperRight => match view {
                View::Front => true,
                // The drum and its tail hide the middle of obi and fold.
                View::Back => {
                    !matches!(self, M::FoldCentre | M::ObiLowerCentre | M::ObiUpperCentre)
                }
                View::Right | View::Left => matches!(
                    self,
                    M::HemCentre | M::FoldCentre | M::ObiLowerCentre | M::ObiUpperCentre
                ),
            },
            M::UwamaeCorner | M::EdgeAtFold | M::CollarEnd => {
                matches!(view, View::Front | View::Right)
            }
            M::ObiageTop
            | M::KimonoCrossing
            | M::JubanCrossing
            | M::CollarShoulderLeft
            | M::CollarShoulderRight
            | M::CollarTieLeft
            | M::CollarTieRight
            | M::JubanEdgeLeft
            | M::JubanEdgeRight => view == View::Front,
            M::Nape
            | M::SeamNape
            | M::SeamWaist
            | M::SeamHip
            | M::SeamHem
            | M::DrumTop
            | M::DrumBottom
            | M::TareEnd => view == View::Back,
            M::AnkleLeft | M::SleeveEndLeft | M::WristLeft => view != View::Right,
            M::AnkleRight | M::SleeveEndRight | M::WristRight => view != View::Left,
        }
    }

    /// The same place on the wearer's other side; itself on the middle line.
    #[must_use]
    pub fn mirrored(self) -> Mark {
        let key = self.key();
        let other = if let Some(stem) = key.strip_suffix("_left") {
            format!("{stem}_right")
        } else if let Some(stem) = key.strip_suffix("_right") {
            format!("{stem}_left")
        } else {
            return self;
        };
        Self::from_key(&other).unwrap_or(self)
    }
}

/// A place on an upright picture, in pixels: x to the right and y down from its upper left corner.
pub type Pixel = [f64; 2];

/// How sure a mark was set.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Default, Hash, serde::Serialize, serde::Deserialize,
)]
#[serde(rename_all = "snake_case")]
pub enum Trust {
    /// The edge is plain to see.
    #[default]
    Sure,
    /// It is guessed, behind a hand or in the dark.
    Unsure,
}

/// A mark as it was set.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Placed {
    /// Where.
    pub at: Pixel,
    /// How sure.
    #[serde(default)]
    pub trust: Trust,
}

/// The marks of one photo; a mark that is not in it was left out.
pub type Marks = BTreeMap<Mark, Placed>;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn mirroring_twice_gives_the_same_mark_and_keeps_the_views_front_and_back() {
        for &mark in Mark::ALL {
            assert_eq!(mark.mirrored().mirrored(), mark);
            for view in [View::Front, View::Back] {
                assert_eq!(
                    mark.shows_in(view),
                    mark.mirrored().shows_in(view),
                    "{mark:?} {view:?}"
                );
            }
        }
        assert_eq!(Mark::HemLeft.mirrored(), Mark::HemRight);
        assert_eq!(Mark::UwamaeCorner.mirrored(), Mark::UwamaeCorner);
    }
}
