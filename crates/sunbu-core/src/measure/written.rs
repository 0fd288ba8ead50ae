//! A length together with the unit it was written in.

use super::{Length, Notation, Script, Shaku, Unit, format_length, parse_signed_length};
use serde::{Deserialize, Serialize};
use std::fmt;

/// A length and the unit its text gave it in, so that it is shown again the way it was written.
///
/// In files it is a number of centimetres or a text as [`parse_signed_length`] reads it, a bare
/// shaku being the kujira of garments; it is written as an exact text in romaji.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Written {
    /// The length.
    pub length: Length,
    /// The unit to show it in.
    pub unit: Unit,
}

impl Written {
    /// A length to be shown in centimetres.
    pub const fn in_cm(length: Length) -> Written {
        Written {
            length,
            unit: Unit::Centimetre,
        }
    }

    /// This length as text in its own unit.
    pub fn text(self, notation: Notation) -> String {
        format_length(self.length, self.unit, notation)
    }
}

impl fmt::Display for Written {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.text(Notation::exact(Script::Latin)))
    }
}

impl Serialize for Written {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Written {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Written, D::Error> {
        deserializer.deserialize_any(NumberOrText)
    }
}

struct NumberOrText;

impl serde::de::Visitor<'_> for NumberOrText {
    type Value = Written;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a length: a number of centimetres, or a text such as \"4尺2寸5分\"")
    }

    fn visit_f64<E: serde::de::Error>(self, cm: f64) -> Result<Written, E> {
        Length::from_cm(cm).map(Written::in_cm).map_err(E::custom)
    }

    fn visit_i64<E: serde::de::Error>(self, cm: i64) -> Result<Written, E> {
        self.visit_f64(cm as f64) // beyond 2^53 the nearest float, and far beyond the limit
    }

    fn visit_u64<E: serde::de::Error>(self, cm: u64) -> Result<Written, E> {
        self.visit_f64(cm as f64)
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Written, E> {
        parse_signed_length(text, Shaku::Kujira).map_err(E::custom)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn files_give_a_length_as_a_number_or_as_text() {
        let read = |json: &str| serde_json::from_str::<Written>(json);
        let cm = |mm| Written::in_cm(Length::from_mm(mm));
        assert_eq!(read("161").unwrap(), cm(1610));
        assert_eq!(read("-1.5").unwrap(), cm(-15));
        assert_eq!(read("\"161.5 cm\"").unwrap(), cm(1615));
        let shaku = read("\"4尺2寸5分\"").unwrap();
        assert_eq!(shaku.length, Length::from_kujira_bu(425));
        assert_eq!(
            serde_json::to_string(&shaku).unwrap(),
            "\"4 shaku 2 sun 5 bu\""
        );
        for (json, says) in [
            ("1e300", "longer than 100 m"),
            ("9223372036854775807", "longer than 100 m"),
            ("18446744073709551615", "longer than 100 m"),
            ("\"4 ells\"", "not a unit known here"),
            ("true", "a number of centimetres, or a text"),
            ("null", "a number of centimetres, or a text"),
        ] {
            let error = read(json).unwrap_err().to_string();
            assert!(error.contains(says), "{json}: {error}");
        }
    }

    #[test]
    fn toml_gives_a_length_as_a_number_or_as_text() {
        #[derive(serde::Deserialize)]
        struct Garment {
            mitake: Written,
            yuki: Written,
            sodetake: Written,
        }
        let garment: Garment =
            toml::from_str("mitake = 161\nyuki = 65.5\nsodetake = \"1尺3寸\"").unwrap();
        assert_eq!(garment.mitake.length, Length::from_mm(1610));
        assert_eq!(garment.yuki.length, Length::from_mm(655));
        assert_eq!(garment.sodetake.length, Length::from_kujira_bu(130));
        let nan = toml::from_str::<Garment>("mitake = nan\nyuki = 1\nsodetake = 1");
        assert!(nan.is_err_and(|e| e.to_string().contains("cannot be read as a length")));
    }
}
