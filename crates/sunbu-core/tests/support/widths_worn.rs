//! Published widths put on the reference bodies: what is left past the side seam, and how far the
//! outer edge covers.

use std::f64::consts::{FRAC_PI_2, TAU};

use sunbu_core::body::BodyMeasure;
use sunbu_core::garment::rules::{self, BU_CM, Widths};
use sunbu_core::garment::tables::{HIP_TABLE, HipRow};

use super::reference_bodies::{self, Checked};

/// Thickness of the layers under and with the kimono, in centimetres, as in the worked example of
/// the model chapter.
pub const LAYERS_CM: f64 = 0.35;

/// How far beside a row's hips a body may lie and still wear the row, in centimetres (chosen, so that
/// each row has a body).
const BESIDE_CM: f64 = 1.5;

/// Least and greatest wrap ease looked for, in centimetres.
pub const EASE_CM: (f64, f64) = (0.0, 3.0);

/// Where widths come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cut {
    Table,
    R1,
    R2,
    R3,
    R4Narrowest,
    R4Widest,
}

impl Cut {
    pub const ALL: [Cut; 6] = [
        Cut::Table,
        Cut::R1,
        Cut::R2,
        Cut::R3,
        Cut::R4Narrowest,
        Cut::R4Widest,
    ];

    pub fn name(self) -> &'static str {
        match self {
            Cut::Table => "Table A (S7)",
            Cut::R1 => "R1 (S9)",
            Cut::R2 => "R2 (S10)",
            Cut::R3 => "R3 (S6)",
            Cut::R4Narrowest => "R4 narrowest (S11)",
            Cut::R4Widest => "R4 widest (S11)",
        }
    }

    /// The table gives one set for its row; a rule is cut for the hip it is given.
    fn widths(self, row: HipRow, hip: f64) -> Widths {
        match self {
            Cut::Table => row.widths,
            Cut::R1 => rules::r1(hip),
            Cut::R2 => rules::r2(hip),
            Cut::R3 => rules::r3(hip),
            Cut::R4Narrowest => rules::r4(hip).0,
            Cut::R4Widest => rules::r4(hip).1,
        }
    }
}

/// Widths of one row worn by one body. All in centimetres.
#[derive(Debug, Clone)]
pub struct Worn {
    /// Lowest and highest hip of the row.
    pub row: (f64, f64),
    pub from: Cut,
    pub body: String,
    pub hip: f64,
    /// Wrap of the cloth at the hem less the bare hip.
    pub over_hip: f64,
    /// Overlap panel narrower at the collar end than at the hem.
    pub narrower: f64,
    /// `2b + f + o' - P`.
    pub ease: f64,
    /// How far in front of the right side line the outer edge lands at the collar end.
    pub cover: f64,
}

impl Worn {
    pub fn is_outside(&self) -> bool {
        !(EASE_CM.0..=EASE_CM.1).contains(&self.ease)
    }
}

/// Every row and every rule on each body whose hip is the row's.
pub fn all() -> Vec<Worn> {
    let bodies = reference_bodies::read();
    let mut found = Vec::new();
    for row in HIP_TABLE {
        let (low, high) = (row.hip_cm.0 - BESIDE_CM, row.hip_cm.1 + BESIDE_CM);
        for from in Cut::ALL {
            let fits = |b: &&Checked| (low..=high).contains(&hip(b));
            found.extend(bodies.iter().filter(fits).map(|b| worn(row, from, b)));
        }
    }
    found
}

fn hip(body: &Checked) -> f64 {
    body.body
        .measure(BodyMeasure::HipGirth)
        .expect("every reference body has a hip girth")
}

fn worn(row: HipRow, from: Cut, checked: &Checked) -> Worn {
    let body = &checked.body;
    let hip = hip(checked);
    let widths = from.widths(row, hip);
    // the collar end is 2 bu narrower than the hem (S12, S14, S18); equal from a hip of 100 (S6, S14)
    let narrower = if hip < 100.0 { 2.0 * BU_CM } else { 0.0 };
    let front_edge = widths.maehaba + widths.okumihaba - narrower;
    let at = |measure| body.measure(measure).expect("every reference body has it");
    let girth = body.section(at(BodyMeasure::HipHeight)).girth + TAU * LAYERS_CM;
    // the collar end: half the stature above the hem, 1 more for the raise (S3, S10 and S14)
    let end = body.section(0.5 * at(BodyMeasure::Stature) + 1.0);
    let right_side = end.girth + TAU * LAYERS_CM - end.side_arc - FRAC_PI_2 * LAYERS_CM;
    Worn {
        row: row.hip_cm,
        from,
        body: body.name.clone(),
        hip,
        over_hip: widths.wrap() - hip,
        narrower,
        ease: 2.0 * widths.ushirohaba + front_edge - girth,
        cover: right_side - (widths.ushirohaba + front_edge),
    }
}

/// Rows with a body on which the ease lies outside, each with the reason. The row is named by its
/// highest hip.
pub const OUTSIDE: &[(f64, Cut, &str)] = &[
    (
        84.0,
        Cut::Table,
        "The table's allowance shrinks as hips grow: its wraps are 8.0, 5.5, 2.8, 2.5 and 2.8 over the middle hips of its rows. This row has the 8.0.",
    ),
    (84.0, Cut::R1, SIX_BELOW_100),
    (84.0, Cut::R2, SIX_BELOW_100),
    (
        84.0,
        Cut::R3,
        "The wrap is three quarters of the hip and a constant, so the allowance grows by a quarter of what the hip is smaller: 6.3 over this hip.",
    ),
    (
        84.0,
        Cut::R4Widest,
        "The wrap is three quarters of the hip and 28, which is 6.8 over this hip.",
    ),
    (
        90.0,
        Cut::Table,
        "The wrap is 5.5 over the middle of the row; on hips 2 below the middle it is 7.6 and more.",
    ),
    (90.0, Cut::R1, SIX_BELOW_100),
    (90.0, Cut::R2, SIX_BELOW_100),
    (
        90.0,
        Cut::R4Narrowest,
        "The wrap is three quarters of the hip and 25: less than layers and collar end take from a hip of 88.2 on.",
    ),
    (
        90.0,
        Cut::R4Widest,
        "The wrap is three quarters of the hip and 28: more than 3 is left below a hip of 88.2.",
    ),
    (
        96.0,
        Cut::Table,
        "The wrap is 2.8 over the middle of the row; layers and collar end take 3.0, so nothing is left from a hip of 94.8 on.",
    ),
    (96.0, Cut::R1, SIX_BELOW_100),
    (96.0, Cut::R2, SIX_BELOW_100),
    (
        96.0,
        Cut::R4Narrowest,
        "The wrap is three quarters of the hip and 25: at most 1.8 over these hips, and layers and collar end take 3.0.",
    ),
    (
        101.0,
        Cut::Table,
        "The wrap is 2.5 over the middle of the row; the layers take 2.2, so nothing is left from a hip of 100.3 on.",
    ),
    (101.0, Cut::R1, SIX_FROM_100),
    (101.0, Cut::R2, SIX_FROM_100),
    (
        101.0,
        Cut::R4Narrowest,
        "The wrap is three quarters of the hip and 25: less than the bare hip above 100.",
    ),
    (104.0, Cut::R1, SIX_FROM_100),
    (104.0, Cut::R2, SIX_FROM_100),
    (
        104.0,
        Cut::R4Narrowest,
        "The wrap is three quarters of the hip and 25: less than the bare hip above 100.",
    ),
    (
        104.0,
        Cut::R4Widest,
        "The wrap is three quarters of the hip and 28: the layers take all of its allowance from a hip of 103.2 on.",
    ),
];

const SIX_BELOW_100: &str = "The rule allows 6.0 over every hip; layers and collar end take 2.96, so a little more than 3 is left on every body.";
const SIX_FROM_100: &str = "The rule allows 6.0 over every hip; from 100 on the collar end is as wide as the hem, the layers take 2.2 and 3.8 is left.";
