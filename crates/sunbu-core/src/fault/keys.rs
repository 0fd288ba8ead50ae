//! The names of faults, of the areas they lie in, and of causes that the model does not know.

use crate::keyed::keyed_enum;

keyed_enum! {
    /// Where on the figure a fault lies.
    Area {
        /// Hem and front.
        Hem = "hem",
        /// Fold (ohashori) and collar end.
        Fold = "fold",
        /// Collar and nape.
        Collar = "collar",
        /// Sleeves, shoulders, sides and back.
        SleeveBack = "sleeve_back",
        /// Obi and what goes with it.
        Obi = "obi",
    }
}

keyed_enum! {
    /// One fault of a dressing, as the trade tells them apart; left and right are the wearer's.
    Fault {
        /// The hem hangs too high.
        HemShort = "hem_short",
        /// The hem drops, drags or is stepped on.
        HemDragging = "hem_dragging",
        /// The inner panel hangs below the outer one.
        ShitamaeHanging = "shitamae_hanging",
        /// The inner corner is raised so far that it pulls at the knee.
        ShitamaeLifted = "shitamae_lifted",
        /// The outer corner hangs as low as the hem or lower.
        UwamaeDropped = "uwamae_dropped",
        /// The skirt flares instead of tapering.
        HemFlaring = "hem_flaring",
        /// The front is raised so far that it hobbles her.
        HemHobbling = "hem_hobbling",
        /// The front does not cover, or opens in walking.
        FrontOpen = "front_open",
        /// The outer edge goes round past the side.
        FrontPastSide = "front_past_side",
        /// So much inner panel that it hinders walking.
        ShitamaeTooWide = "shitamae_too_wide",
        /// The side seam lies far from the side.
        SideSeamOff = "side_seam_off",
        /// The back hem of a lined kimono bags.
        BackHemBaggy = "back_hem_baggy",
        /// The juban shows below the kimono.
        JubanBelowHem = "juban_below_hem",
        /// The hem is higher on one side.
        HemUneven = "hem_uneven",
        /// The heels show on an occasion that wants them hidden.
        HeelsBare = "heels_bare",
        /// The fold is too long.
        FoldLong = "fold_long",
        /// The fold is too short, or there is none.
        FoldShort = "fold_short",
        /// The fold rises toward her right.
        FoldRisingRight = "fold_rising_right",
        /// The fold sinks toward her right.
        FoldSinkingRight = "fold_sinking_right",
        /// The fold is bulky: a double layer.
        FoldBulky = "fold_bulky",
        /// The fold is uneven and crumpled.
        FoldWrinkled = "fold_wrinkled",
        /// The fold is loose and sags.
        FoldSagging = "fold_sagging",
        /// The fold of stiff cloth springs up.
        FoldSpringing = "fold_springing",
        /// A flap of cloth hangs in the fold.
        FoldFlap = "fold_flap",
        /// Too much of the collar end shows below the fold.
        CollarEndShowing = "collar_end_showing",
        /// The tie passes below the collar end or barely above it: the collar is not held.
        CollarEndNotHeld = "collar_end_not_held",
        /// The fold is too long at the back.
        FoldLongBack = "fold_long_back",
        /// The fold is too short at the back.
        FoldShortBack = "fold_short_back",
        /// The collar gapes in front.
        CollarGaping = "collar_gaping",
        /// The collars overlap too little to hold.
        OverlapSmall = "overlap_small",
        /// The crossing of the collars is off the middle.
        CrossingOffCentre = "crossing_off_centre",
        /// The collars cross too low.
        CrossingLow = "crossing_low",
        /// The collars cross too high at the throat.
        CrossingHigh = "crossing_high",
        /// The nape closes.
        NapeClosed = "nape_closed",
        /// The collar falls forward onto the neck.
        CollarFallingForward = "collar_falling_forward",
        /// The han-eri is hidden on one side.
        HanEriHidden = "han_eri_hidden",
        /// Too little han-eri shows.
        HanEriNarrow = "han_eri_narrow",
        /// Too much han-eri shows.
        HanEriWide = "han_eri_wide",
        /// The juban collar stands above the kimono collar at the back.
        JubanCollarStanding = "juban_collar_standing",
        /// More han-eri shows on one side than on the other.
        HanEriUneven = "han_eri_uneven",
        /// The collar stands away from the date-eri.
        DateEriApart = "date_eri_apart",
        /// The chest bags.
        ChestBaggy = "chest_baggy",
        /// The nape is drawn too deep.
        NapeTooDeep = "nape_too_deep",
        /// The hadajuban shows at the nape.
        HadajubanShowing = "hadajuban_showing",
        /// The shoulder ridge is dragged far back to make the nape.
        RidgeFarBack = "ridge_far_back",
        /// The juban shows at the sleeve end.
        JubanAtCuff = "juban_at_cuff",
        /// The juban shows at the furi.
        JubanAtFuri = "juban_at_furi",
        /// The juban shows at the side opening.
        JubanAtMiyatsukuchi = "juban_at_miyatsukuchi",
        /// The lining peeks out at the sleeve end.
        LiningAtCuff = "lining_at_cuff",
        /// The sleeve ends short of the wrist.
        SleeveShort = "sleeve_short",
        /// The sleeve covers the hand.
        SleeveLong = "sleeve_long",
        /// Wrinkles at armhole and side.
        SideWrinkled = "side_wrinkled",
        /// Cloth comes out above the obi at the side.
        ClothAboveObi = "cloth_above_obi",
        /// Wrinkles on the back above the obi.
        BackWrinkled = "back_wrinkled",
        /// The back seam lies off the spine.
        BackSeamOff = "back_seam_off",
        /// The back seam runs askew with a low shoulder.
        BackSeamSagging = "back_seam_sagging",
        /// The seam at the armhole has torn.
        ArmholeTorn = "armhole_torn",
        /// The obi slips down.
        ObiSlipping = "obi_slipping",
        /// The obi rides up in front.
        ObiRidingUp = "obi_riding_up",
        /// The obi sits too high.
        ObiHigh = "obi_high",
        /// The obi sits too low.
        ObiLow = "obi_low",
        /// The obi slants, or is higher in front than behind.
        ObiSlanting = "obi_slanting",
        /// The obi works loose.
        ObiLoosening = "obi_loosening",
        /// The drum drops.
        DrumDropping = "drum_dropping",
        /// The drum has lost its shape.
        DrumCollapsed = "drum_collapsed",
        /// The drum is too large.
        DrumLarge = "drum_large",
        /// The drum is too small.
        DrumSmall = "drum_small",
        /// The drum sits too low.
        DrumLow = "drum_low",
        /// The tail is too long.
        TareLong = "tare_long",
        /// The tail is too short.
        TareShort = "tare_short",
        /// The drum is off the spine or crooked.
        DrumOffCentre = "drum_off_centre",
        /// The drum stands away from the back.
        DrumOffBack = "drum_off_back",
        /// The te shows more on one side of the drum.
        TeUneven = "te_uneven",
        /// A plain stretch of a patterned obi shows.
        ObiPlainPart = "obi_plain_part",
        /// The motif in front is off the middle.
        ObiMotifOff = "obi_motif_off",
        /// The obi is too short to tie.
        ObiShort = "obi_short",
        /// The obijime loosens, and the drum may fall.
        ObijimeLoosening = "obijime_loosening",
        /// The obijime is crooked or off its place.
        ObijimeCrooked = "obijime_crooked",
        /// The obiage bulges or is twisted.
        ObiageUntidy = "obiage_untidy",
        /// Too much obiage shows.
        ObiageWide = "obiage_wide",
        /// Too little obiage shows.
        ObiageNarrow = "obiage_narrow",
        /// The obi wrinkles in front.
        ObiWrinkled = "obi_wrinkled",
        /// The knot of a half-width obi sinks.
        HanhabaSinking = "hanhaba_sinking",
        /// The haori cord sits too low or too high.
        HaoriCordOff = "haori_cord_off",
    }
}

keyed_enum! {
    /// A cause that is no decision and no measure of the model.
    Cause {
        /// A belly below the obi lifts it.
        Belly = "belly",
        /// No board under the front of the obi, or it slid.
        BoardMissing = "board_missing",
        /// A very full or very slim chest, not padded for.
        ChestBuild = "chest_build",
        /// Chest tie or datejime is loose.
        ChestTieLoose = "chest_tie_loose",
        /// An elastic clip belt pulls too hard.
        ClipsTight = "clips_tight",
        /// The haori's loop sits at another height.
        CordLoop = "cord_loop",
        /// Juban and kimono cross at different places.
        CrossingsDiffer = "crossings_differ",
        /// Fold line, tail or height of the obi were misjudged.
        DrumMisjudged = "drum_misjudged",
        /// The occasion wants the hem at the floor.
        FormalHem = "formal_hem",
        /// The front collar was pulled down, or the kimono drawn back alone.
        FrontPulled = "front_pulled",
        /// The hem was drawn up while tying or while arranging the fold.
        HemDrawnUp = "hem_drawn_up",
        /// The juban below was not smoothed.
        JubanCreased = "juban_creased",
        /// The juban is cut to other measures than the kimono.
        JubanCut = "juban_cut",
        /// The juban slid, or its tie is loose.
        JubanSlid = "juban_slid",
        /// The knot of the obi lies off the spine.
        KnotOff = "knot_off",
        /// Lining and outer cloth are out of balance.
        LiningBalance = "lining_balance",
        /// Big movements, or long wear.
        Movement = "movement",
        /// Nothing under the knot carries it.
        NoBase = "no_base",
        /// No slack was left under the arm.
        NoEase = "no_ease",
        /// The cloth was not smoothed before it was tied.
        NotSmoothed = "not_smoothed",
        /// The obi is short for this girth.
        ObiLength = "obi_length",
        /// The obi was not tightened turn by turn.
        ObiLoose = "obi_loose",
        /// The pattern of the obi is laid out for another girth.
        ObiPattern = "obi_pattern",
        /// The first half of the obijime knot gave way.
        ObijimeLoose = "obijime_loose",
        /// The pillow is not seated on the knot, or its cord is loose.
        PillowSeat = "pillow_seat",
        /// Shoulders or head come forward.
        Posture = "posture",
        /// The inner panel was not folded up inside the fold.
        ShitamaeNotFolded = "shitamae_not_folded",
        /// One shoulder is lower.
        ShoulderLow = "shoulder_low",
        /// Surplus of back and front gathers under the arm.
        SideSurplus = "side_surplus",
        /// The hem was stepped on.
        SteppedOn = "stepped_on",
        /// Stiff cloth was handled like soft.
        StiffCloth = "stiff_cloth",
        /// The te was moved or not drawn level.
        TeMoved = "te_moved",
        /// The waist tie caught cloth.
        TieCaughtCloth = "tie_caught_cloth",
        /// The waist tie crept up.
        TieCrept = "tie_crept",
        /// The waist tie is loose.
        TieLoose = "tie_loose",
        /// It is twisted inside.
        Twisted = "twisted",
        /// The hadajuban was not drawn back.
        UnderwearHigh = "underwear_high",
        /// The two sides were not handled alike.
        UnevenHands = "uneven_hands",
        /// Shoulder or chest of the garment is cut too wide.
        UpperCutWide = "upper_cut_wide",
    }
}
