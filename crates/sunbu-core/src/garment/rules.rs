//! Published proportions of the women's long kimono, as functions.
//!
//! Rules R1 to R7 give body widths from the hip; the others lengths, sleeves and neck. Every
//! number is in centimetres. Rules disagree; `spread_within` and
//! `spread_among` turn the disagreement into a standard deviation.

use serde::Serialize;

use super::tables::HIP_TABLE;
use crate::measure::Origin;
use crate::source::{self, Source};

/// One kujira-sun in centimetres: a tenth of 25/66 m.
pub const SUN_CM: f64 = 250.0 / 66.0;
/// One kujira-bu in centimetres.
pub const BU_CM: f64 = SUN_CM / 10.0;

/// A published proportion by which a part was completed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Rule {
    /// Short name, the end of its message id `rule-…`.
    pub code: &'static str,
    /// The formula in plain text.
    pub formula: &'static str,
    /// Where it is published.
    pub sources: &'static [Source],
    /// `Completed` for a proportion to other parts, `Customary` for a fixed customary value.
    pub origin: Origin,
}

/// Body widths from one rule, in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Widths {
    /// One back panel.
    pub ushirohaba: f64,
    /// One front panel.
    pub maehaba: f64,
    /// The overlap panel.
    pub okumihaba: f64,
}

impl Widths {
    /// The wrap, in cm: both back panels, one front panel and its overlap; what reaches from
    /// the right side seam round the back to the outer front edge.
    pub fn wrap(self) -> f64 {
        2.0 * self.ushirohaba + self.maehaba + self.okumihaba
    }

    /// Cloth all round, in cm: both halves.
    pub fn all_round(self) -> f64 {
        2.0 * (self.ushirohaba + self.maehaba + self.okumihaba)
    }
}

/// Width of the front of the hip, in cm: half the hip less 6
/// (S9, dressing teacher: deriving kimono sizes; S10, how sizes are derived).
pub fn front_hip(hip: f64) -> f64 {
    hip / 2.0 - 6.0
}

/// R1 (S9, dressing teacher: deriving kimono sizes): the back takes what the front of the hip
/// leaves, with 6 of ease; the front panel is the front of the hip less the okumi of 15.
pub fn r1(hip: f64) -> Widths {
    let front = front_hip(hip);
    Widths {
        ushirohaba: (hip - front + 6.0) / 2.0,
        maehaba: front - 15.0,
        okumihaba: 15.0,
    }
}

/// R2 (S10, how sizes are derived): the front of the hip is shared 6 to 4 between maehaba and
/// okumi.
pub fn r2(hip: f64) -> Widths {
    let front = front_hip(hip);
    Widths {
        ushirohaba: (hip - front + 6.0) / 2.0,
        maehaba: 0.6 * front,
        okumihaba: 0.4 * front,
    }
}

/// R3 (S6, wasai class notes; S6b, wasai academy: deriving mae and ushiro widths): a quarter
/// of the hip, 2 for the side seam set forward, 4 to move; the front 1.5 sun less, from a hip
/// of 100 on 1 sun less. The source gives both for exactly 100; this takes the second.
pub fn r3(hip: f64) -> Widths {
    let ushirohaba = hip / 4.0 + 2.0 + 4.0;
    let less = if hip < 100.0 { 1.5 } else { 1.0 };
    Widths {
        ushirohaba,
        maehaba: ushirohaba - less * SUN_CM,
        okumihaba: okumi_by_hip(hip),
    }
}

/// R4 (S11, kimono size explained): narrowest and widest; a quarter of the hip plus 5 to 6 at
/// the back, plus 0 to 1 in front, okumi 15.
pub fn r4(hip: f64) -> (Widths, Widths) {
    let at = |back: f64, front: f64| Widths {
        ushirohaba: hip / 4.0 + back,
        maehaba: hip / 4.0 + front,
        okumihaba: 15.0,
    };
    (at(5.0, 0.0), at(6.0, 1.0))
}

/// R5 (S8, deciding kimono sizes from three measures): the wrap is the hip plus 4.
pub fn r5_wrap(hip: f64) -> f64 {
    hip + 4.0
}

/// R6 (S13, know your sizes: front and back widths): to reach a wider `wrap`, widen the front
/// first, up to 6.5 sun, and only then the back.
pub fn r6_widened(start: Widths, wrap: f64) -> Widths {
    let wanted = (wrap - start.wrap()).max(0.0);
    let front = wanted.min((6.5 * SUN_CM - start.maehaba).max(0.0));
    Widths {
        maehaba: start.maehaba + front,
        ushirohaba: start.ushirohaba + (wanted - front) / 2.0,
        ..start
    }
}

/// R7 (S1, online dressing school: standard sizes): 2 more all round is easier to wear.
pub fn r7_wrap(ordinary_wrap: f64) -> f64 {
    ordinary_wrap + 2.0
}

/// Okumihaba by hip, in cm (S6, wasai class notes): 4 sun; 4.1 from a hip of 100, 4.2 from 105.
pub fn okumi_by_hip(hip: f64) -> f64 {
    let sun = match hip {
        hip if hip >= 105.0 => 4.2,
        hip if hip >= 100.0 => 4.1,
        _ => 4.0,
    };
    sun * SUN_CM
}

/// The hip a back panel was cut for, in cm: R1, R2 and R3 turned round (they agree on it).
pub fn hip_of_ushirohaba(ushirohaba: f64) -> f64 {
    4.0 * (ushirohaba - 6.0)
}

/// Maehaba by hip, in cm, from Table A (S7, guide to kimono sizes: hip table), straight
/// between the middles of its rows. Outside them it goes on by a quarter of the hip, as R3
/// and R4 do (chosen; the table itself stops there).
pub fn mae_by_hip(hip: f64) -> f64 {
    let first = HIP_TABLE[0];
    let last = HIP_TABLE[HIP_TABLE.len() - 1];
    if hip <= first.hip_middle() {
        return first.widths.maehaba + (hip - first.hip_middle()) / 4.0;
    }
    for pair in HIP_TABLE.windows(2) {
        let (low, high) = (pair[0], pair[1]);
        if hip <= high.hip_middle() {
            let share = (hip - low.hip_middle()) / (high.hip_middle() - low.hip_middle());
            return low.widths.maehaba + share * (high.widths.maehaba - low.widths.maehaba);
        }
    }
    last.widths.maehaba + (hip - last.hip_middle()) / 4.0
}

/// The hip a front panel was cut for, in cm: `mae_by_hip` turned round.
///
/// Bisection on a rising function; 60 halvings of a 600 cm interval end below 1e-12 cm.
pub fn hip_of_maehaba(maehaba: f64) -> f64 {
    let (mut low, mut high) = (0.0, 600.0);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if mae_by_hip(middle) < maehaba {
            low = middle;
        } else {
            high = middle;
        }
    }
    (low + high) / 2.0
}

/// Every published maehaba for one hip, in cm: Table A, R1, R2, R3, and R4's two ends.
pub fn mae_opinions(hip: f64) -> [f64; 6] {
    let (least, most) = r4(hip);
    [
        mae_by_hip(hip),
        r1(hip).maehaba,
        r2(hip).maehaba,
        r3(hip).maehaba,
        least.maehaba,
        most.maehaba,
    ]
}

/// Every published ushirohaba that goes with one maehaba, in cm: by Table A's hip, by R1, by
/// R3 (1.5 sun and 1 sun) and by R4.
pub fn ushiro_opinions(maehaba: f64) -> [f64; 5] {
    let by_table = r1(hip_of_maehaba(maehaba)).ushirohaba;
    let by_r1 = r1(2.0 * (maehaba + 15.0 + 6.0)).ushirohaba;
    [
        by_table,
        by_r1,
        maehaba + 1.5 * SUN_CM,
        maehaba + SUN_CM,
        maehaba + 5.0,
    ]
}

/// Dakihaba from the bust, in cm (S6 and S6c, wasai academy: dakihaba from bust): a quarter and
/// 2, kept within 3 bu of the maehaba.
pub fn daki_by_bust(bust: f64, maehaba: f64) -> f64 {
    (bust / 4.0 + 2.0).clamp(maehaba - 3.0 * BU_CM, maehaba + 3.0 * BU_CM)
}

/// Yuki by height, in cm (S3, wasai basics 2: women's calculation rules), arm lowered.
pub fn yuki_by_height(height: f64) -> f64 {
    0.4 * height + 2.0
}

/// Sodehaba from yuki, in cm, by S14 (kimono glossary): half and 2.5 to 3 bu; the middle.
pub fn sodehaba_s14(yuki: f64) -> f64 {
    yuki / 2.0 + 2.75 * BU_CM
}

/// Sodehaba from yuki, in cm, by S6 (wasai class notes): half and 5 bu.
pub fn sodehaba_s6(yuki: f64) -> f64 {
    yuki / 2.0 + 5.0 * BU_CM
}

/// Sodehaba from yuki, in cm, by S3 (wasai basics 2): 8.5 sun for a yuki of 1-6.5 to 1-7.0,
/// else halves in whole bu, the odd bu to the sleeve.
///
/// The rule speaks of sheets in whole bu; a yuki is rounded to them first. Between 1-7.0 and
/// 1-7.1, and between 1-6.4 and 1-6.5, nothing is said because no whole bu lies between.
pub fn sodehaba_s3(yuki: f64) -> f64 {
    let bu = (yuki / BU_CM).round();
    let sleeve_bu = if (165.0..=170.0).contains(&bu) {
        85.0
    } else {
        (bu / 2.0).ceil()
    };
    sleeve_bu * BU_CM
}

/// Sodehaba from yuki, in cm, by the table of S63b (measuring support: yuki and its split),
/// straight between its rows, constant outside: 1-6.5 gives 8.5 sun, 1-7.0 8.8, 1-7.5 9.0,
/// 1-8.0 9.0.
pub fn sodehaba_s63b(yuki: f64) -> f64 {
    const ROWS_SUN: [(f64, f64); 4] = [(16.5, 8.5), (17.0, 8.8), (17.5, 9.0), (18.0, 9.0)];
    let sun = yuki / SUN_CM;
    if sun <= ROWS_SUN[0].0 {
        return ROWS_SUN[0].1 * SUN_CM;
    }
    for pair in ROWS_SUN.windows(2) {
        let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
        if sun <= x1 {
            return (y0 + (sun - x0) / (x1 - x0) * (y1 - y0)) * SUN_CM;
        }
    }
    ROWS_SUN[3].1 * SUN_CM
}

/// Every published sodehaba for one yuki, in cm.
pub fn sodehaba_opinions(yuki: f64) -> [f64; 4] {
    [
        sodehaba_s14(yuki),
        sodehaba_s6(yuki),
        sodehaba_s3(yuki),
        sodehaba_s63b(yuki),
    ]
}

/// Ceiling of the erishita, in cm: 2 shaku 2 sun, so as not to hinder walking
/// (S9, dressing teacher; S14, kimono glossary).
pub const ERISHITA_CEILING_CM: f64 = 22.0 * SUN_CM;

/// Erishita from the back mitake, in cm: half of it (S6, wasai class notes), at most 2-2.
pub fn erishita_by_mitake(mitake_back: f64) -> f64 {
    (mitake_back / 2.0).min(ERISHITA_CEILING_CM)
}

/// Every published erishita for a back mitake, in cm: half (S6), half and 5 bu (S17), and by
/// the height plus 2 or 3 (S14), where the height is the mitake (S3). All under the ceiling.
pub fn erishita_opinions(mitake_back: f64) -> [f64; 4] {
    let half = mitake_back / 2.0;
    [half, half + 5.0 * BU_CM, half + 2.0, half + 3.0].map(|cm| cm.min(ERISHITA_CEILING_CM))
}

/// Sodetsuke by height, in cm (S5, standard sizes by height): 5.5 sun below 160, else 6 sun.
pub fn sodetsuke_by_height(height: f64) -> f64 {
    if height < 160.0 {
        5.5 * SUN_CM
    } else {
        6.0 * SUN_CM
    }
}

/// Okumisagari by height, in cm: 6 sun; 5.5 up to a height of 150
/// (S6, wasai class notes; S14, kimono glossary).
pub fn okumisagari_by_height(height: f64) -> f64 {
    if height <= 150.0 {
        5.5 * SUN_CM
    } else {
        6.0 * SUN_CM
    }
}

/// What the collar seam takes of the back between ridge and neck, in cm: 3 bu (S18).
pub const NECK_SEAM_CM: f64 = 3.0 * BU_CM;

/// Shoulder mitake less back mitake, in cm, for a kurikoshi: kurikoshi and 3 bu
/// (S18, tailor's notes: kurikoshi = shoulder mitake − back mitake − 3 bu).
pub fn shoulder_over_back(kurikoshi: f64) -> f64 {
    kurikoshi + NECK_SEAM_CM
}

/// Longest yuki a bolt gives, in cm (S123, tailoring studio: yuki limit from bolt width).
pub fn yuki_limit(bolt_width: f64) -> f64 {
    (bolt_width - 2.5) * 2.0
}

/// Standard deviation of a chosen value when any value from `low` to `high` is in use, in cm.
///
/// Each is taken as equally likely: the mean square distance from `chosen` is range²/12 plus
/// the squared distance of `chosen` from the middle. Never below 1 bu, the step in which sheets
/// are written (chosen).
pub fn spread_within(chosen: f64, low: f64, high: f64) -> f64 {
    let (range, off) = (high - low, (low + high) / 2.0 - chosen);
    (range * range / 12.0 + off * off).sqrt().max(BU_CM)
}

/// Standard deviation of a chosen value about which published rules disagree, in cm.
///
/// The garment is taken to be cut by any of the rules, each equally likely: the root of the mean
/// square distance of their answers from `chosen`. Never below 1 bu, as in [`spread_within`].
pub fn spread_among(chosen: f64, answers: &[f64]) -> f64 {
    let squares: f64 = answers.iter().map(|cm| (cm - chosen).powi(2)).sum();
    let count = answers.len().max(1) as f64;
    (squares / count).sqrt().max(BU_CM)
}

macro_rules! rules {
    ($($name:ident $origin:ident $code:literal $formula:literal [$($source:ident),*];)*) => {
        $(
            #[doc = $formula]
            pub static $name: Rule = Rule {
                code: $code,
                formula: $formula,
                sources: &[$(source::$source),*],
                origin: Origin::$origin,
            };
        )*
        /// Every rule of completion.
        pub static ALL: &[&Rule] = &[$(&$name),*];
    };
}

rules! {
    YUKI_SUM Completed "yuki-sum" "yuki = katahaba + sodehaba" [S3];
    YUKI_HEIGHT Completed "yuki-height" "yuki = 0.4 × height + 2 cm, height taken as the mitake" [S3];
    SHOULDER_REST Completed "shoulder-rest" "katahaba = yuki − sodehaba" [S6];
    SLEEVE_REST Completed "sleeve-rest" "sodehaba = yuki − katahaba" [S6];
    SLEEVE_SPLIT Completed "sleeve-split" "sodehaba = yuki ÷ 2 + 2.75 bu" [S14];
    SLEEVE_FROM_SHOULDER Completed "sleeve-from-shoulder" "sodehaba = katahaba + 5.5 bu" [S14];
    SHOULDER_FROM_SLEEVE Completed "shoulder-from-sleeve" "katahaba = sodehaba − 5.5 bu" [S14];
    SODETAKE_STANDARD Customary "sodetake-standard" "sodetake = 1 shaku 3 sun" [S1, S4, S6D];
    SODETAKE_SUM Completed "sodetake-sum" "sodetake = sodetsuke + furi" [S2];
    SODEGUCHI_STANDARD Customary "sodeguchi-standard" "sodeguchi = 6 sun" [S1, S2, S5];
    SODETSUKE_HEIGHT Completed "sodetsuke-height"
        "sodetsuke = 5.5 sun below a height of 160 cm, else 6 sun" [S5, S2];
    SODETSUKE_REST Completed "sodetsuke-rest" "sodetsuke = sodetake − furi" [S2];
    FURI_REST Completed "furi-rest" "furi = sodetake − sodetsuke" [S2];
    MIYATSUKUCHI_STANDARD Customary "miyatsukuchi-standard" "miyatsukuchi = 4 sun" [S1, S5, S6];
    USHIRO_OF_MAE Completed "ushiro-of-mae"
        "ushirohaba = hip ÷ 4 + 6 cm, the hip being the one the maehaba is tabled for" [S9, S7];
    MAE_OF_USHIRO Completed "mae-of-ushiro"
        "maehaba by hip table, the hip being 4 × (ushirohaba − 6 cm)" [S7, S9];
    DAKI_OF_MAE Completed "daki-of-mae" "dakihaba = maehaba − 4 bu" [S17, S18];
    OKUMI_HIP Completed "okumi-hip" "okumihaba = 4 sun, 4.1 from a hip of 100 cm, 4.2 from 105" [S6];
    AIZUMA_OF_OKUMI Completed "aizuma-of-okumi" "aizumahaba = okumihaba − 2 bu" [S12, S14, S18];
    AIZUMA_EQUAL Completed "aizuma-equal" "aizumahaba = okumihaba from a hip of 100 cm" [S6, S14];
    OKUMI_OF_AIZUMA Completed "okumi-of-aizuma" "okumihaba = aizumahaba where that is over the rule" [S6];
    ERISHITA_HALF Completed "erishita-half" "erishita = mitake ÷ 2, at most 2 shaku 2 sun" [S6, S9];
    OKUMISAGARI_HEIGHT Completed "okumisagari-height"
        "okumisagari = 6 sun, 5.5 up to a height of 150 cm" [S6, S14, S2];
    ERIKATA_AKI_STANDARD Customary "erikata-aki-standard" "erikata-aki = 2.3 sun" [S5, S6];
    KURIKOSHI_STANDARD Customary "kurikoshi-standard" "kurikoshi = 7 bu, as cut" [S1, S5, S6];
    TSUKEKOMI_STANDARD Customary "tsukekomi-standard" "tsukekomi = 4 bu, the middle of 3 to 5" [S2, S20];
    ERIHABA_WIDE Customary "erihaba-wide" "erihaba = 3 sun, a wide collar folded when worn" [S2, S6];
    ERIHABA_NARROW Customary "erihaba-narrow" "erihaba = 1.5 sun at the back, a sewn narrow collar" [S2];
}
