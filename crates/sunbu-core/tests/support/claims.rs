//! What the trade says of causes and effects, as far as the model covers it.

#![allow(
    dead_code,
    reason = "not every test that shares this file uses all of it"
)]

use sunbu_core::dressing::{Decision as D, Given as G, Quantity as Q};

/// What changes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Input {
    /// Something the hands do.
    Done(D),
    /// Something of the person or the garment.
    Given(G),
}

impl Input {
    /// Its stable name.
    pub fn key(self) -> &'static str {
        match self {
            Self::Done(d) => d.key(),
            Self::Given(g) => g.key(),
        }
    }
}

/// One claim: with more (or less) of an input there is more (or less) of a quantity.
pub struct Claim {
    /// Where it comes from.
    pub source: &'static str,
    /// What is said, in short.
    pub said: &'static str,
    pub input: Input,
    /// Whether the claim is about more of the input, or less.
    pub more: bool,
    pub quantity: Q,
    /// Whether there is then more of the quantity, or less.
    pub gains: bool,
    /// Where a source says how much: the change of the quantity by a centimetre more of the input.
    pub slope: Option<f64>,
}

const fn claim(
    source: &'static str,
    said: &'static str,
    (input, more): (Input, bool),
    (quantity, gains): (Q, bool),
) -> Claim {
    Claim {
        source,
        said,
        input,
        more,
        quantity,
        gains,
        slope: None,
    }
}

impl Claim {
    const fn by(mut self, slope: f64) -> Self {
        self.slope = Some(slope);
        self
    }
}

const MORE: bool = true;
const LESS: bool = false;

const fn more(d: D) -> (Input, bool) {
    (Input::Done(d), MORE)
}

const fn less(d: D) -> (Input, bool) {
    (Input::Done(d), LESS)
}

const fn given_more(g: G) -> (Input, bool) {
    (Input::Given(g), MORE)
}

const fn given_less(g: G) -> (Input, bool) {
    (Input::Given(g), LESS)
}

/// Every claim, in the order of a dressing.
pub const CLAIMS: &[Claim] = &[
    // Padding and juban.
    claim(
        "PD6, F34, F35",
        "padding at the waist evens the trunk; without it the obi slips",
        more(D::WaistPadding),
        (Q::TrunkStep, LESS),
    ),
    claim(
        "PD6, F34, F35",
        "a waist narrow against the hip makes the step",
        given_less(G::WaistGirth),
        (Q::TrunkStep, MORE),
    ),
    claim(
        "S21, S5",
        "a small kurikoshi: the garment must be drawn further back for the same nape",
        given_less(G::Kurikoshi),
        (Q::RidgeSetback, MORE),
    ),
    claim(
        "F24, F25",
        "the nape drawn down takes its cloth from the front",
        more(D::NapeDrop),
        (Q::ClothFront, LESS),
    ),
    claim(
        "F24, F25",
        "and gives it to the back",
        more(D::NapeDrop),
        (Q::ClothBack, MORE),
    ),
    claim(
        "F1, F17",
        "juban collar too loose: it hides behind the kimono's",
        less(D::JubanOverlap),
        (Q::JubanShow, LESS),
    ),
    claim(
        "S24",
        "a tight crossing lies high, an easy one low",
        more(D::JubanOverlap),
        (Q::JubanCrossing, LESS),
    ),
    claim(
        "F1, F17",
        "kimono crossed tighter than the juban: the juban collar hides",
        more(D::KimonoOverlap),
        (Q::JubanShow, LESS),
    ),
    // Hem.
    claim(
        "X1, F31, S87",
        "hem set high: more cloth for the fold",
        more(D::HemHeight),
        (Q::FoldFront, MORE),
    )
    .by(0.5),
    claim(
        "X1, F31",
        "hem set low: the fold gets short",
        less(D::HemHeight),
        (Q::FoldBack, LESS),
    )
    .by(0.5),
    claim(
        "S150, F2",
        "hem pulled up: the heels show",
        more(D::HemHeight),
        (Q::HemBack, MORE),
    )
    .by(1.0),
    // Cover and widths.
    claim(
        "F11, F10, S27",
        "garment narrow for the hips: the front is not covered",
        given_less(G::Maehaba),
        (Q::FrontCover, MORE),
    )
    .by(-1.0),
    claim(
        "F11, F10, S27",
        "the same, hips wide for the garment",
        given_more(G::HipGirth),
        (Q::FrontCover, MORE),
    ),
    claim(
        "F11",
        "outer edge pulled to the right, the side seam left alone: the front is covered",
        more(D::BackSeamHip),
        (Q::FrontCover, LESS),
    )
    .by(-1.0),
    claim(
        "S27",
        "outer edge set short of the right thigh: not covered",
        less(D::BackSeamHip),
        (Q::FrontCover, MORE),
    )
    .by(-1.0),
    claim(
        "F11",
        "then the inner panel reaches less far",
        more(D::BackSeamHip),
        (Q::InnerCover, LESS),
    )
    .by(-1.0),
    claim(
        "F10, S144b",
        "garment wide for the hips: too much inner panel",
        given_more(G::Maehaba),
        (Q::InnerCover, MORE),
    )
    .by(1.0),
    claim(
        "F10, F8",
        "the inner edge folded back: less of it",
        more(D::ShitamaeFoldBack),
        (Q::InnerCover, LESS),
    )
    .by(-1.0),
    claim(
        "S8, S14",
        "wider panels: the outer edge goes further past the right side seam",
        given_more(G::Ushirohaba),
        (Q::WrapEase, MORE),
    )
    .by(2.0),
    // Raised edges.
    claim(
        "F6, S24",
        "inner edge raised too little: it hangs below the outer one",
        less(D::ShitamaeRaise),
        (Q::ShitamaeAboveUwamae, LESS),
    ),
    claim(
        "F6",
        "outer edge raised too little: its corner drops",
        less(D::UwamaeRaise),
        (Q::UwamaeCorner, LESS),
    ),
    claim(
        "F5",
        "panels wrapped without lifting: the skirt flares",
        less(D::UwamaeRaise),
        (Q::HemTaper, LESS),
    ),
    claim(
        "F6",
        "raised too much: the hem is narrow and hobbles",
        more(D::UwamaeRaise),
        (Q::HemLoop, LESS),
    ),
    claim(
        "F27",
        "the raised front leaves slack above the tie on that side",
        more(D::UwamaeRaise),
        (Q::ClothRight, MORE),
    ),
    claim(
        "F27, F28",
        "so the fold slants, as the right side has more cloth than the middle",
        more(D::UwamaeRaise),
        (Q::FoldSlant, MORE),
    ),
    claim(
        "S25, S17",
        "fold and obi as they are, less of the collar end shows with a raised corner",
        more(D::UwamaeRaise),
        (Q::CollarEndVisible, LESS),
    ),
    // Collar end.
    claim(
        "S17, S25",
        "erishita short: the long collar hangs out below the fold",
        given_less(G::Erishita),
        (Q::CollarEndVisible, MORE),
    ),
    claim(
        "S17, S25",
        "erishita long: the tie misses the collar",
        given_more(G::Erishita),
        (Q::CollarEndClearance, LESS),
    ),
    claim(
        "S9, S14, S15",
        "the higher the tie, the further the collar end below it",
        more(D::KoshihimoFront),
        (Q::CollarEndClearance, MORE),
    ),
    claim(
        "S9, S14, S15",
        "the same at the back",
        more(D::KoshihimoBack),
        (Q::CollarEndClearance, MORE),
    ),
    // Tie and fold.
    claim(
        "X1, F36",
        "tie high: the fold gets short",
        more(D::KoshihimoFront),
        (Q::FoldFront, LESS),
    )
    .by(-1.0),
    claim(
        "F26, F30",
        "tie low: the fold gets long",
        less(D::KoshihimoFront),
        (Q::FoldFront, MORE),
    )
    .by(-1.0),
    claim(
        "F26, F30",
        "the same at the back",
        less(D::KoshihimoBack),
        (Q::FoldBack, MORE),
    )
    .by(-1.0),
    claim(
        "F33",
        "tied low in front: it slopes",
        less(D::KoshihimoFront),
        (Q::KoshihimoSlope, MORE),
    )
    .by(-1.0),
    claim(
        "X1, X1b, F31",
        "garment short: the fold gets short",
        given_less(G::Mitake),
        (Q::FoldFront, LESS),
    )
    .by(0.5),
    claim(
        "F26, F29",
        "garment long: the fold gets long",
        given_more(G::Mitake),
        (Q::FoldBack, MORE),
    )
    .by(0.5),
    claim(
        "F26, F29",
        "small wearer: the fold gets long in front",
        given_less(G::SideNeck),
        (Q::FoldFront, MORE),
    )
    .by(-0.5),
    claim(
        "F26, F29",
        "and at the back",
        given_less(G::BackNeck),
        (Q::FoldBack, MORE),
    )
    .by(-0.5),
    claim(
        "F26, F1",
        "surplus taken up under the obi: the fold gets shorter",
        more(D::TakeUpFront),
        (Q::FoldFront, LESS),
    )
    .by(-0.5),
    claim(
        "F28",
        "surplus of the low side taken up: the slant goes",
        more(D::TakeUpRight),
        (Q::FoldSlant, LESS),
    )
    .by(-0.5),
    claim(
        "F37",
        "slack left in the back panel: the fold is long at the back",
        less(D::TakeUpBack),
        (Q::FoldBack, MORE),
    )
    .by(-0.5),
    claim(
        "F26, F37",
        "what is taken up is bulk under the obi",
        more(D::TakeUpFront),
        (Q::BulkFront, MORE),
    )
    .by(1.0),
    // Obi and sleeves.
    claim(
        "F29, F30",
        "obi high: the fold looks long",
        more(D::ObiLowerEdge),
        (Q::FoldFront, MORE),
    )
    .by(1.0),
    claim(
        "F29",
        "obi edge lowered to the hip bone: the fold gets shorter",
        less(D::ObiLowerEdge),
        (Q::FoldRight, LESS),
    )
    .by(1.0),
    claim(
        "S3, S72",
        "yuki short: the wrist shows",
        given_less(G::Yuki),
        (Q::SleeveShort, MORE),
    )
    .by(-1.0),
    claim(
        "S24, S53",
        "tail let out: it is long",
        more(D::TareLength),
        (Q::TareLength, MORE),
    )
    .by(1.0),
];
