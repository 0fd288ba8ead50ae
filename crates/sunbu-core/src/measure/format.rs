//! Writing a length for people, and exactly.

use super::length::PER_CM;
use super::{Length, Shaku, Unit};
use serde::{Deserialize, Serialize};

/// Which letters a length in shaku is written in. Centimetres read the same in both.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Script {
    /// 4尺2寸5分.
    Kanji,
    /// 4 shaku 2 sun 5 bu.
    Latin,
}

/// How finely a length is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Precision {
    /// So that reading it back gives the very same length: as many decimals of a centimetre as
    /// that takes (four at most), or rin with up to three decimals.
    Exact,
    /// To 0.1 cm, or to half a bu (5 rin, 0.19 cm): what a tape can be read to.
    Fine,
    /// To 1 cm, or to a bu: what a hand can be held to.
    Coarse,
}

/// How a length is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Notation {
    /// The letters.
    pub script: Script,
    /// How finely.
    pub precision: Precision,
    /// The shaku that needs no name here; the other one is written with its name.
    pub bare: Shaku,
}

impl Notation {
    /// Exact, with kujira as the shaku that needs no name.
    pub const fn exact(script: Script) -> Notation {
        Notation {
            script,
            precision: Precision::Exact,
            bare: Shaku::Kujira,
        }
    }

    /// For people, to 0.1 cm or half a bu, with kujira as the shaku that needs no name.
    pub const fn fine(script: Script) -> Notation {
        Notation {
            script,
            precision: Precision::Fine,
            bare: Shaku::Kujira,
        }
    }

    /// For people, to 1 cm or a bu, with kujira as the shaku that needs no name.
    pub const fn coarse(script: Script) -> Notation {
        Notation {
            script,
            precision: Precision::Coarse,
            bare: Shaku::Kujira,
        }
    }
}

/// The length as text with its unit, such as `161.0 cm`, `4尺2寸5分` or `4 shaku 2 sun 5 bu`.
///
/// Rounded, it is the nearest of its step, halves away from zero. Written exactly, up to 100 m,
/// [`parse_signed_length`](super::parse_signed_length) with the same bare shaku reads the same
/// length again.
///
/// ```
/// use sunbu_core::measure::{Length, Notation, Script, Unit, format_length};
/// let mitake = Length::from_kujira_bu(425);
/// let fine = Notation::fine(Script::Latin);
/// assert_eq!(format_length(mitake, Unit::Centimetre, fine), "161.0 cm");
/// assert_eq!(format_length(mitake, Unit::KujiraShaku, fine), "4 shaku 2 sun 5 bu");
/// ```
pub fn format_length(length: Length, unit: Unit, notation: Notation) -> String {
    let magnitude = length.units().unsigned_abs();
    let (text, is_zero) = match unit {
        Unit::Centimetre => centimetres(magnitude, notation.precision),
        Unit::KujiraShaku => shaku(magnitude, Shaku::Kujira, notation),
        Unit::KaneShaku => shaku(magnitude, Shaku::Kane, notation),
    };
    // What rounds to nothing has no sign left.
    if length < Length::ZERO && !is_zero {
        format!("-{text}")
    } else {
        text
    }
}

/// The text, and whether it says zero.
fn centimetres(units: u64, precision: Precision) -> (String, bool) {
    let decimals = match precision {
        Precision::Exact => (0..4).find(|&d| reads_back(units, d)).unwrap_or(4),
        Precision::Fine => 1,
        Precision::Coarse => 0,
    };
    let scale = 10_u128.pow(decimals);
    let count = nearest(u128::from(units) * scale, u128::from(PER_CM.unsigned_abs()));
    let text = match decimals {
        0 => format!("{count} cm"),
        d => format!(
            "{}.{:0width$} cm",
            count / scale,
            count % scale,
            width = d as usize
        ),
    };
    (text, count == 0)
}

/// Whether so many decimals of a centimetre lie nearer to this length than to any other.
///
/// Four always do: they are off by 1/20000 cm at most, less than the half unit of 1/13200 cm.
fn reads_back(units: u64, decimals: u32) -> bool {
    let (units, scale, per_cm) = (
        u128::from(units),
        10_u128.pow(decimals),
        u128::from(PER_CM.unsigned_abs()),
    );
    let count = nearest(units * scale, per_cm);
    (count * per_cm).abs_diff(units * scale) * 2 < scale
}

/// The text, and whether it says zero.
fn shaku(units: u64, shaku: Shaku, notation: Notation) -> (String, bool) {
    let per_bu = shaku.per_bu().unsigned_abs();
    let per_rin = per_bu / 10;
    let step = match notation.precision {
        Precision::Exact => 1,
        Precision::Fine => per_rin * 5,
        Precision::Coarse => per_bu,
    };
    let units = nearest(u128::from(units), u128::from(step)) * u128::from(step);
    let (per_bu, per_rin) = (u128::from(per_bu), u128::from(per_rin));
    // A unit is a whole number of thousandths of a rin in both shaku, 4 and 5, so three decimals
    // of a rin say every length exactly.
    let milli_rin = (units % per_bu) * (1000 / per_rin);
    let bu = units / per_bu;
    let counts = [bu / 1000, bu / 100 % 10, bu / 10 % 10, bu % 10];
    let names = match notation.script {
        Script::Kanji => ["丈", "尺", "寸", "分", "厘"],
        Script::Latin => [" jo", " shaku", " sun", " bu", " rin"],
    };
    let mut parts: Vec<String> = counts
        .iter()
        .zip(names)
        .filter(|(count, _)| **count > 0)
        .map(|(count, name)| format!("{count}{name}"))
        .collect();
    if milli_rin > 0 {
        let decimals = format!("{}.{:03}", milli_rin / 1000, milli_rin % 1000);
        let rin = decimals.trim_end_matches('0').trim_end_matches('.');
        parts.push(format!("{rin}{}", names[4]));
    }
    if parts.is_empty() {
        parts.push(format!("0{}", names[3]));
    }
    let name = match (notation.script, shaku) {
        _ if shaku == notation.bare => "",
        (Script::Kanji, Shaku::Kujira) => "鯨尺",
        (Script::Kanji, Shaku::Kane) => "曲尺",
        (Script::Latin, Shaku::Kujira) => "kujira ",
        (Script::Latin, Shaku::Kane) => "kane ",
    };
    let between = if notation.script == Script::Latin {
        " "
    } else {
        ""
    };
    (format!("{name}{}", parts.join(between)), units == 0)
}

/// `a / b` to the nearest whole number, halves up.
fn nearest(a: u128, b: u128) -> u128 {
    (2 * a + b) / (2 * b)
}
