//! Published tables of women's garment measures, as data, each with its source.
//!
//! Table A feeds the completion; all of them are what the rules are held against. Values are
//! in centimetres as published; where the source writes only sun they are converted exactly.

use super::Part;
use super::rules::{SUN_CM, Widths};
use crate::source::{self, Source};

/// A row of Table A: widths for a span of hips.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HipRow {
    /// Lowest and highest hip of the row, in cm.
    pub hip_cm: (f64, f64),
    /// The widths the row gives, in cm.
    pub widths: Widths,
}

impl HipRow {
    /// The middle of the row's hips, in cm.
    pub fn hip_middle(self) -> f64 {
        (self.hip_cm.0 + self.hip_cm.1) / 2.0
    }
}

const fn hip_row(low: f64, high: f64, mae: f64, ushiro: f64, okumi: f64) -> HipRow {
    HipRow {
        hip_cm: (low, high),
        widths: Widths {
            ushirohaba: ushiro,
            maehaba: mae,
            okumihaba: okumi,
        },
    }
}

/// Table A, from S7 (guide to kimono sizes: hip table). Its first row is for a hip of 84 or
/// less and is set at 84.
pub const HIP_TABLE: [HipRow; 5] = [
    hip_row(84.0, 84.0, 22.0, 27.5, 15.0),
    hip_row(88.0, 90.0, 22.7, 28.4, 15.0),
    hip_row(94.0, 96.0, 23.8, 29.5, 15.0),
    hip_row(99.0, 101.0, 25.7, 30.9, 15.0),
    hip_row(102.0, 104.0, 26.5, 31.7, 15.9),
];

/// The source of Table A.
pub const HIP_TABLE_SOURCE: Source = source::S7;

/// One published set of measures: a size, a column or a worked case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PublishedSheet {
    /// Table and column, e.g. `B-160`.
    pub id: &'static str,
    /// Where it is published.
    pub source: Source,
    /// Height it is for, lowest and highest in cm; `None` where the source names none.
    pub height_cm: Option<(f64, f64)>,
    /// Hip it is for, lowest and highest in cm; `None` where the source names none.
    pub hip_cm: Option<(f64, f64)>,
    /// The measures: part, lowest, highest, in cm. The mitake is from the back seam.
    pub parts: &'static [(Part, f64, f64)],
}

impl PublishedSheet {
    /// Lowest and highest published value of `part` in cm; `None` where the source has none.
    pub fn range(&self, part: Part) -> Option<(f64, f64)> {
        self.parts
            .iter()
            .find(|(named, ..)| *named == part)
            .map(|(_, low, high)| (*low, *high))
    }

    /// Middle of the published values of `part` in cm; `None` where the source has none.
    pub fn middle(&self, part: Part) -> Option<f64> {
        self.range(part).map(|(low, high)| (low + high) / 2.0)
    }
}

const fn one(part: Part, cm: f64) -> (Part, f64, f64) {
    (part, cm, cm)
}

const fn sun(part: Part, low: f64, high: f64) -> (Part, f64, f64) {
    (part, low * SUN_CM, high * SUN_CM)
}

/// Tables B to H and the single cases V8, V11, V12 (V1, V2, V4, V6, V7, V9, V10 restate rows
/// of the tables).
pub const PUBLISHED: &[PublishedSheet] = &[
    PublishedSheet {
        id: "B-150",
        source: source::S5,
        height_cm: Some((150.0, 150.0)),
        hip_cm: Some((90.0, 95.0)),
        parts: &[
            one(Part::Mitake, 152.0),
            one(Part::Sodetake, 49.0),
            one(Part::Sodeguchi, 23.0),
            one(Part::Sodetsuke, 21.0),
            one(Part::Miyatsukuchi, 15.0),
            one(Part::Yuki, 62.0),
            one(Part::Sodehaba, 32.0),
            one(Part::Katahaba, 30.0),
            (Part::Maehaba, 24.0, 24.5),
            (Part::Ushirohaba, 29.0, 30.0),
            one(Part::Erishita, 76.0),
            one(Part::ErikataAki, 8.5),
            one(Part::Kurikoshi, 2.7),
            one(Part::Okumisagari, 23.0),
            one(Part::Okumihaba, 15.0),
            one(Part::Aizumahaba, 14.0),
        ],
    },
    PublishedSheet {
        id: "B-160",
        source: source::S5,
        height_cm: Some((160.0, 160.0)),
        hip_cm: Some((90.0, 95.0)),
        parts: &[
            one(Part::Mitake, 161.0),
            one(Part::Sodetake, 51.0),
            one(Part::Sodeguchi, 23.0),
            one(Part::Sodetsuke, 23.0),
            one(Part::Miyatsukuchi, 15.0),
            one(Part::Yuki, 66.0),
            one(Part::Sodehaba, 34.0),
            one(Part::Katahaba, 32.0),
            (Part::Maehaba, 24.0, 24.5),
            (Part::Ushirohaba, 29.0, 30.0),
            one(Part::Erishita, 81.0),
            one(Part::ErikataAki, 8.5),
            one(Part::Kurikoshi, 2.7),
            one(Part::Okumisagari, 23.0),
            one(Part::Okumihaba, 15.0),
            one(Part::Aizumahaba, 14.0),
        ],
    },
    PublishedSheet {
        id: "B-170",
        source: source::S5,
        height_cm: Some((170.0, 170.0)),
        hip_cm: Some((90.0, 95.0)),
        parts: &[
            one(Part::Mitake, 170.0),
            one(Part::Sodetake, 55.0),
            one(Part::Sodeguchi, 23.0),
            one(Part::Sodetsuke, 23.0),
            one(Part::Miyatsukuchi, 15.0),
            one(Part::Yuki, 70.0),
            one(Part::Sodehaba, 35.0),
            one(Part::Katahaba, 35.0),
            (Part::Maehaba, 24.0, 24.5),
            (Part::Ushirohaba, 29.0, 30.0),
            one(Part::Erishita, 83.0),
            one(Part::ErikataAki, 8.5),
            one(Part::Kurikoshi, 2.7),
            one(Part::Okumisagari, 23.0),
            one(Part::Okumihaba, 15.0),
            one(Part::Aizumahaba, 14.0),
        ],
    },
    PublishedSheet {
        id: "C",
        source: source::S1,
        height_cm: Some((155.0, 160.0)),
        hip_cm: None,
        parts: &[
            (Part::Mitake, 160.0, 165.0),
            one(Part::Yuki, 66.5),
            one(Part::Sodetake, 49.0),
            one(Part::Sodeguchi, 23.0),
            one(Part::Sodetsuke, 21.0),
            one(Part::Sodehaba, 33.5),
            one(Part::Miyatsukuchi, 15.0),
            one(Part::Katahaba, 33.0),
            one(Part::Ushirohaba, 29.0),
            one(Part::Maehaba, 24.0),
            one(Part::Okumihaba, 15.0),
            one(Part::Kurikoshi, 2.5),
            (Part::Erishita, 80.5, 83.0),
        ],
    },
    PublishedSheet {
        id: "D",
        source: source::S4,
        height_cm: Some((158.0, 158.0)),
        hip_cm: Some((88.0, 88.0)),
        parts: &[
            one(Part::Mitake, 159.6),
            one(Part::Yuki, 66.5),
            one(Part::Katahaba, 32.3),
            one(Part::Sodehaba, 34.2),
            one(Part::Sodetake, 49.4),
            one(Part::Sodetsuke, 20.9),
            one(Part::Maehaba, 22.8),
            one(Part::Ushirohaba, 28.5),
            one(Part::Okumihaba, 15.2),
            one(Part::Kurikoshi, 1.9),
        ],
    },
    PublishedSheet {
        id: "E",
        source: source::S2,
        height_cm: None,
        hip_cm: None,
        parts: &[
            sun(Part::Erihaba, 3.0, 3.0),
            sun(Part::Tsukekomi, 0.3, 0.5),
            sun(Part::Sodeguchi, 6.0, 6.0),
            sun(Part::Ushirohaba, 8.0, 8.0),
            sun(Part::Maehaba, 6.5, 6.5),
            sun(Part::Okumihaba, 4.0, 4.0),
            sun(Part::Aizumahaba, 3.5, 3.8),
            sun(Part::Okumisagari, 6.0, 6.0),
            sun(Part::Sodetake, 13.0, 15.0),
            sun(Part::Sodetsuke, 5.5, 6.0),
            sun(Part::Miyatsukuchi, 3.5, 4.0),
        ],
    },
    PublishedSheet {
        id: "F-edo",
        source: source::S110,
        height_cm: None,
        hip_cm: None,
        parts: &[
            sun(Part::Mitake, 40.0, 40.0),
            sun(Part::Yuki, 16.5, 16.5),
            sun(Part::Sodetake, 13.0, 13.0),
            sun(Part::Sodeguchi, 6.0, 6.0),
            sun(Part::Sodetsuke, 6.0, 6.0),
            sun(Part::Sodehaba, 8.5, 8.5),
            sun(Part::Ushirohaba, 7.5, 7.5),
            sun(Part::Maehaba, 6.0, 6.0),
            sun(Part::Okumihaba, 4.0, 4.0),
            sun(Part::ErikataAki, 2.5, 2.5),
            sun(Part::Miyatsukuchi, 3.5, 3.5),
            sun(Part::Katahaba, 8.0, 8.0),
            sun(Part::Aizumahaba, 3.5, 3.5),
        ],
    },
    PublishedSheet {
        id: "F-modern",
        source: source::S110,
        height_cm: None,
        hip_cm: None,
        parts: &[
            (Part::Mitake, 155.0, 165.0),
            (Part::Yuki, 62.0, 66.0),
            (Part::Sodetake, 48.0, 60.0),
            one(Part::Sodeguchi, 23.0),
            (Part::Sodetsuke, 21.0, 23.0),
            (Part::Sodehaba, 32.0, 34.0),
            (Part::Ushirohaba, 28.0, 30.0),
            (Part::Maehaba, 23.0, 25.0),
            one(Part::Okumihaba, 15.0),
            (Part::ErikataAki, 8.5, 9.0),
            (Part::Miyatsukuchi, 13.5, 15.0),
            (Part::Katahaba, 30.0, 32.0),
        ],
    },
    PublishedSheet {
        id: "G-standard",
        source: source::S8,
        height_cm: Some((155.0, 155.0)),
        hip_cm: Some((90.0, 90.0)),
        parts: &[
            one(Part::Mitake, 155.0),
            one(Part::Katahaba, 31.5),
            one(Part::Sodehaba, 33.0),
            one(Part::Yuki, 64.5),
        ],
    },
    PublishedSheet {
        id: "G-L",
        source: source::S8,
        height_cm: Some((160.0, 160.0)),
        hip_cm: Some((94.0, 94.0)),
        parts: &[
            one(Part::Mitake, 160.0),
            one(Part::Katahaba, 33.5),
            one(Part::Sodehaba, 34.0),
            one(Part::Yuki, 67.5),
        ],
    },
    PublishedSheet {
        id: "H",
        source: source::S6D,
        height_cm: None,
        hip_cm: None,
        parts: &[
            one(Part::Sodetake, 49.0),
            one(Part::Sodeguchi, 22.5),
            one(Part::Sodetsuke, 22.5),
            one(Part::Miyatsukuchi, 15.0),
            one(Part::Okumihaba, 15.0),
            (Part::Aizumahaba, 14.0, 15.0),
            one(Part::Kurikoshi, 2.6),
            one(Part::Okumisagari, 22.5),
            (Part::Tsukekomi, 1.0, 2.0),
            one(Part::ErikataAki, 8.7),
        ],
    },
    PublishedSheet {
        id: "V8",
        source: source::S6B,
        height_cm: None,
        hip_cm: Some((95.0, 95.0)),
        parts: &[
            one(Part::Ushirohaba, 29.75),
            one(Part::Maehaba, 24.1),
            one(Part::Okumihaba, 15.2),
            one(Part::Aizumahaba, 14.0),
            one(Part::Kurikoshi, 2.7),
        ],
    },
    PublishedSheet {
        id: "V11",
        source: source::S12,
        height_cm: None,
        hip_cm: Some((95.0, 95.0)),
        parts: &[
            one(Part::Ushirohaba, 30.3),
            one(Part::Maehaba, 24.6),
            one(Part::Okumihaba, 15.2),
            one(Part::Aizumahaba, 14.4),
        ],
    },
    PublishedSheet {
        id: "V12",
        source: source::S16,
        height_cm: Some((162.0, 162.0)),
        hip_cm: None,
        parts: &[one(Part::Erishita, 83.6)],
    },
];
