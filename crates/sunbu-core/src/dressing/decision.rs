//! What the dresser's hands decide: the free variables of a dressing.

use crate::keyed::keyed_enum;

keyed_enum! {
    /// One thing the dresser's hands decide, in centimetres.
    ///
    /// Heights are above the floor on which the person is dressed; offsets along the body are
    /// arcs, positive to the wearer's left.
    Decision {
        /// `g`: the hem above the floor at the back.
        HemHeight = "hem_height",
        /// `a`: raise of the outer panel's (uwamae) front edge while wrapping.
        UwamaeRaise = "uwamae_raise",
        /// `a'`: raise of the inner panel's (shitamae) front edge while wrapping.
        ShitamaeRaise = "shitamae_raise",
        /// Width of the inner front edge folded back on itself, for a garment too wide.
        ShitamaeFoldBack = "shitamae_fold_back",
        /// `c`: the back seam's arc offset at the hip.
        BackSeamHip = "back_seam_hip",
        /// `c_u`: the back seam's arc offset above the fold.
        BackSeamTop = "back_seam_top",
        /// `h`: height of the waist tie (koshihimo) at the back.
        KoshihimoBack = "koshihimo_back",
        /// `h_f`: height of the waist tie (koshihimo) at the front.
        KoshihimoFront = "koshihimo_front",
        /// `u` at the front: cloth taken up under the chest tie.
        TakeUpFront = "take_up_front",
        /// `u` at the right side.
        TakeUpRight = "take_up_right",
        /// `u` at the back.
        TakeUpBack = "take_up_back",
        /// `e`: how far the collar is drawn down the back below the back neck point (emon-nuki).
        NapeDrop = "nape_drop",
        /// `w` of the juban: half the collars' overlap at the chest tie.
        JubanOverlap = "juban_overlap",
        /// `w` of the kimono.
        KimonoOverlap = "kimono_overlap",
        /// `z_o`: lower edge of the obi at the front.
        ObiLowerEdge = "obi_lower_edge",
        /// Height of the drum (otaiko).
        DrumHeight = "drum_height",
        /// Length of the tail below the drum (tare).
        TareLength = "tare_length",
        /// Width of the obiage left to see above the obi.
        ObiageShow = "obiage_show",
        /// Thickness of padding round the waist.
        WaistPadding = "waist_padding",
        /// Thickness of padding round the hip.
        HipPadding = "hip_padding",
    }
}

/// One value for every [`Decision`], in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dressing([f64; Decision::COUNT]);

impl Dressing {
    /// The dressing whose every decision is given by `value`, in centimetres.
    pub fn from_fn(mut value: impl FnMut(Decision) -> f64) -> Self {
        Self(std::array::from_fn(|i| value(Decision::ALL[i])))
    }

    /// One decision, in centimetres.
    pub fn get(&self, decision: Decision) -> f64 {
        self.0[decision.index()]
    }

    /// The same dressing with one decision set to `cm`.
    #[must_use]
    pub fn with(mut self, decision: Decision, cm: f64) -> Self {
        self.0[decision.index()] = cm;
        self
    }

    /// All values in the order of [`Decision::ALL`], in centimetres.
    pub fn values(&self) -> &[f64; Decision::COUNT] {
        &self.0
    }
}
