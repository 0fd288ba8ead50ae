//! Which units a length may be kept and shown in, and which words the parser knows for them.

use super::length::{PER_CM, PER_FOOT, PER_INCH, PER_KANE_BU, PER_KUJIRA_BU, PER_METRE, PER_MM};
use serde::{Deserialize, Serialize};

/// One of the two shaku. Both divide the same way (1 jo = 10 shaku, 1 shaku = 10 sun = 100 bu =
/// 1000 rin; facts "U4", "U5"), so a text that only says "shaku" needs to be told which is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shaku {
    /// The measure of cloth and garments: 25/66 m.
    Kujira,
    /// The carpenter's measure: 10/33 m.
    Kane,
}

impl Shaku {
    /// The unit a length written in this shaku is remembered in.
    pub const fn unit(self) -> Unit {
        match self {
            Shaku::Kujira => Unit::KujiraShaku,
            Shaku::Kane => Unit::KaneShaku,
        }
    }

    /// Units of 1/6600 cm in one bu.
    pub(super) const fn per_bu(self) -> i64 {
        match self {
            Shaku::Kujira => PER_KUJIRA_BU,
            Shaku::Kane => PER_KANE_BU,
        }
    }

    /// Its name in romaji.
    pub(super) const fn name(self) -> &'static str {
        match self {
            Shaku::Kujira => "kujira",
            Shaku::Kane => "kane",
        }
    }
}

/// The unit a length was written in and is shown in again.
///
/// Metres, millimetres, feet and inches are read but remembered as centimetres: neither the
/// trade's tables nor its tapes use them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// Centimetres.
    #[default]
    Centimetre,
    /// Shaku, sun and bu of the cloth measure.
    KujiraShaku,
    /// Shaku, sun and bu of the carpenter's measure.
    KaneShaku,
}

/// Units that may stand together in one text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Family {
    Metric,
    Imperial,
    Shaku,
}

/// A unit as a word in a text; which shaku is meant is not in the word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Word {
    Metre,
    Centimetre,
    Millimetre,
    Foot,
    Inch,
    Jo,
    Shaku,
    Sun,
    Bu,
    Rin,
    Mo,
}

impl Word {
    pub(super) const fn family(self) -> Family {
        match self {
            Word::Metre | Word::Centimetre | Word::Millimetre => Family::Metric,
            Word::Foot | Word::Inch => Family::Imperial,
            Word::Jo | Word::Shaku | Word::Sun | Word::Bu | Word::Rin | Word::Mo => Family::Shaku,
        }
    }

    /// Units of 1/6600 cm in one of it.
    pub(super) const fn size(self, shaku: Shaku) -> i64 {
        match self {
            Word::Metre => PER_METRE,
            Word::Centimetre => PER_CM,
            Word::Millimetre => PER_MM,
            Word::Foot => PER_FOOT,
            Word::Inch => PER_INCH,
            Word::Jo => 1000 * shaku.per_bu(),
            Word::Shaku => 100 * shaku.per_bu(),
            Word::Sun => 10 * shaku.per_bu(),
            Word::Bu => shaku.per_bu(),
            Word::Rin => shaku.per_bu() / 10,
            Word::Mo => shaku.per_bu() / 100,
        }
    }

    /// How error messages name it.
    pub(super) const fn label(self) -> &'static str {
        match self {
            Word::Metre => "m",
            Word::Centimetre => "cm",
            Word::Millimetre => "mm",
            Word::Foot => "ft",
            Word::Inch => "in",
            Word::Jo => "jo",
            Word::Shaku => "shaku",
            Word::Sun => "sun",
            Word::Bu => "bu",
            Word::Rin => "rin",
            Word::Mo => "mo",
        }
    }

    /// The unit of a word in Latin letters, already in small letters without hyphens or macrons.
    pub(super) fn from_latin(word: &str) -> Option<Word> {
        Some(match word {
            "m" | "metre" | "metres" | "meter" | "meters" => Word::Metre,
            "cm" | "cms" | "centimetre" | "centimetres" | "centimeter" | "centimeters"
            | "senchi" => Word::Centimetre,
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" | "miri" => {
                Word::Millimetre
            }
            "ft" | "foot" | "feet" => Word::Foot,
            "in" | "ins" | "inch" | "inches" => Word::Inch,
            "jo" | "jou" | "joo" | "jyo" | "jyou" | "zyo" | "zyou" => Word::Jo,
            "shaku" | "syaku" | "jaku" => Word::Shaku,
            "sun" | "zun" => Word::Sun,
            "bu" => Word::Bu,
            "rin" => Word::Rin,
            "mo" | "mou" | "moo" => Word::Mo,
            _ => return None,
        })
    }

    /// Units written in kanji or kana, longest first where one begins another.
    pub(super) const JAPANESE: &[(&str, Word)] = &[
        ("センチメートル", Word::Centimetre),
        ("ミリメートル", Word::Millimetre),
        ("メートル", Word::Metre),
        ("フィート", Word::Foot),
        ("センチ", Word::Centimetre),
        ("インチ", Word::Inch),
        ("ミリ", Word::Millimetre),
        ("じょう", Word::Jo),
        ("しゃく", Word::Shaku),
        ("じゃく", Word::Shaku),
        ("すん", Word::Sun),
        ("りん", Word::Rin),
        ("もう", Word::Mo),
        ("ぶ", Word::Bu),
        ("丈", Word::Jo),
        ("尺", Word::Shaku),
        ("寸", Word::Sun),
        ("分", Word::Bu),
        ("厘", Word::Rin),
        ("釐", Word::Rin),
        ("毛", Word::Mo),
    ];
}

/// Names of the two shaku in kanji or kana, longest first where one begins another; the flag says
/// whether the name ends in "shaku" and so can stand for the unit after a number ("2鯨尺").
pub(super) const JAPANESE_NAMES: &[(&str, Shaku, bool)] = &[
    ("くじらじゃく", Shaku::Kujira, true),
    ("クジラジャク", Shaku::Kujira, true),
    ("かねじゃく", Shaku::Kane, true),
    ("カネジャク", Shaku::Kane, true),
    ("くじら尺", Shaku::Kujira, true),
    ("クジラ尺", Shaku::Kujira, true),
    ("くじら", Shaku::Kujira, false),
    ("クジラ", Shaku::Kujira, false),
    ("かね尺", Shaku::Kane, true),
    ("カネ尺", Shaku::Kane, true),
    ("鯨尺", Shaku::Kujira, true),
    ("曲尺", Shaku::Kane, true),
    ("矩尺", Shaku::Kane, true),
    ("かね", Shaku::Kane, false),
    ("カネ", Shaku::Kane, false),
    ("鯨", Shaku::Kujira, false),
    ("曲", Shaku::Kane, false),
];

/// The shaku named by a word in Latin letters, and whether the word ends in "shaku".
pub(super) fn name_from_latin(word: &str) -> Option<(Shaku, bool)> {
    Some(match word {
        "kujira" => (Shaku::Kujira, false),
        "kujirashaku" | "kujirajaku" | "kujirasyaku" | "kujirazyaku" => (Shaku::Kujira, true),
        "kane" => (Shaku::Kane, false),
        "kaneshaku" | "kanejaku" | "kanesyaku" | "kanezyaku" => (Shaku::Kane, true),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_earlier_word_hides_a_longer_one() {
        let words = Word::JAPANESE.iter().map(|w| w.0).collect::<Vec<_>>();
        let names = JAPANESE_NAMES.iter().map(|n| n.0).collect::<Vec<_>>();
        for table in [words, names] {
            for (i, early) in table.iter().enumerate() {
                for late in &table[i + 1..] {
                    assert!(!late.starts_with(early), "{early} is met before {late}");
                }
            }
        }
    }

    #[test]
    fn the_smallest_parts_are_whole_units_in_both_shaku() {
        for shaku in [Shaku::Kujira, Shaku::Kane] {
            assert_eq!(
                Word::Mo.size(shaku) * 10_000,
                Word::Shaku.size(shaku),
                "{shaku:?}"
            );
        }
    }

    #[test]
    fn units_are_named_in_small_letters_with_underscores() {
        let names = [Unit::Centimetre, Unit::KujiraShaku, Unit::KaneShaku]
            .map(|unit| serde_json::to_string(&unit).unwrap());
        assert_eq!(
            names,
            ["\"centimetre\"", "\"kujira_shaku\"", "\"kane_shaku\""]
        );
    }
}
