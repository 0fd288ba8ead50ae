//! What is seen or felt of a dressing: the quantities that the standard has a wish for.

use crate::keyed::keyed_enum;

keyed_enum! {
    /// One thing to be seen or felt of a dressed person, in centimetres.
    Quantity {
        /// Hem above the floor at the back.
        HemBack = "hem_back",
        /// Lower corner of the outer panel (uwamae) above the floor.
        UwamaeCorner = "uwamae_corner",
        /// How much higher the inner panel's corner hangs than the outer one's.
        ShitamaeAboveUwamae = "shitamae_above_uwamae",
        /// Girth at the hip less the loop of the hem: how much the skirt tapers.
        HemTaper = "hem_taper",
        /// The loop of the hem.
        HemLoop = "hem_loop",
        /// `x`: how far in front of the right side line the outer collar end lies.
        FrontCover = "front_cover",
        /// `y`: how far the inner panel reaches past the centre front at the hip.
        InnerCover = "inner_cover",
        /// How far the outer edge goes past the right side seam.
        WrapEase = "wrap_ease",
        /// The back seam's offset at the hip, positive to the wearer's left.
        BackSeamHip = "back_seam_hip",
        /// The back seam's offset above the fold.
        BackSeamTop = "back_seam_top",
        /// Offset of the back seam between hip and top that the slack has to give.
        BackSeamBend = "back_seam_bend",
        /// Waist tie at the back above the hip bone.
        KoshihimoOverHipBone = "koshihimo_over_hip_bone",
        /// How much lower the waist tie runs in front than at the back.
        KoshihimoSlope = "koshihimo_slope",
        /// How far above the collar end the waist tie crosses the collar.
        CollarEndClearance = "collar_end_clearance",
        /// Collar end left to see below the fold; negative when hidden.
        CollarEndVisible = "collar_end_visible",
        /// Fold below the obi at the centre front.
        FoldFront = "fold_front",
        /// Fold below the obi at the right side, along the outer collar.
        FoldRight = "fold_right",
        /// Fold below the obi at the centre back.
        FoldBack = "fold_back",
        /// How much longer the fold is at the right side than at the front.
        FoldSlant = "fold_slant",
        /// Cloth above the tie at the centre front that the body does not need.
        ClothFront = "cloth_front",
        /// The same along the outer collar.
        ClothRight = "cloth_right",
        /// The same at the centre back.
        ClothBack = "cloth_back",
        /// Cloth taken up at the front: bulk under the obi.
        BulkFront = "bulk_front",
        /// Cloth taken up at the right side.
        BulkRight = "bulk_right",
        /// Cloth taken up at the back.
        BulkBack = "bulk_back",
        /// The collar at the back below the back neck point (emon-nuki).
        NapeDrop = "nape_drop",
        /// How far behind the body's shoulder ridge the garment's ridge lies.
        RidgeSetback = "ridge_setback",
        /// Crossing of the juban collars below the hollow of the throat.
        JubanCrossing = "juban_crossing",
        /// Juban collar (han-eri) left to see at its widest.
        JubanShow = "juban_show",
        /// Height of the triangle in which the juban collars overlap: it carries the collar.
        JubanHold = "juban_hold",
        /// The same for the kimono collars.
        KimonoHold = "kimono_hold",
        /// Obi's lower edge in front above the hip bone.
        ObiOverHipBone = "obi_over_hip_bone",
        /// Padded hip girth less padded waist girth: how far from a straight cylinder.
        TrunkStep = "trunk_step",
        /// How far the sleeve end stays short of the wrist bone, arm lowered 45 degrees.
        SleeveShort = "sleeve_short",
        /// Height of the drum (otaiko).
        DrumHeight = "drum_height",
        /// Length of the tail below the drum (tare).
        TareLength = "tare_length",
        /// Obiage left to see.
        ObiageShow = "obiage_show",
    }
}

/// One value for every [`Quantity`], in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Appearance<S = f64>(pub(super) [S; Quantity::COUNT]);

impl<S: Copy> Appearance<S> {
    /// One quantity, in centimetres.
    pub fn get(&self, quantity: Quantity) -> S {
        self.0[quantity.index()]
    }
}
