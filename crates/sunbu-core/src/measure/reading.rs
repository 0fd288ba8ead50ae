//! One entry of a sheet of measures: a length, the unit it was written in, its deviation.

use std::fmt;

use serde::ser::SerializeStruct;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::{
    Length, LengthError, Measured, MeasuredError, Origin, Shaku, Unit, Written, parse_length,
};

/// A taped length as it was written, with how far it is trusted if that was said.
///
/// In files a number of centimetres, a text such as `"4尺2寸5分"`, or
/// `{ value = "161 cm", sd = "5 mm" }`. Never below zero.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Reading {
    /// The length.
    pub length: Length,
    /// The unit it was written in, and is shown in again.
    pub unit: Unit,
    /// Its standard deviation; `None` when none was said and the tape's usual one holds.
    pub sd: Option<Length>,
}

impl Reading {
    /// Reads a length and, where one is given, its deviation; a bare shaku is the kujira.
    ///
    /// # Errors
    /// Every [`LengthError`] of [`parse_length`], of the value or of the deviation.
    pub fn read(value: &str, sd: Option<&str>) -> Result<Reading, LengthError> {
        let Written { length, unit } = parse_length(value, Shaku::Kujira)?;
        let sd = match sd {
            Some(text) => Some(parse_length(text, Shaku::Kujira)?.length),
            None => None,
        };
        Ok(Reading { length, unit, sd })
    }

    /// The value with its deviation, taped; `tape_sd_cm` stands where none was said.
    ///
    /// # Errors
    /// Every [`MeasuredError`]: a length or deviation beyond 100 m, which nothing read by
    /// [`Reading::read`] is, or a `tape_sd_cm` that is no deviation.
    pub fn measured(self, tape_sd_cm: f64) -> Result<Measured, MeasuredError> {
        let sd_cm = self.sd.map_or(tape_sd_cm, Length::cm);
        Measured::new(self.length.cm(), sd_cm, Origin::Taped)
    }

    /// The length with its unit, to be written out.
    pub fn written(self) -> Written {
        Written {
            length: self.length,
            unit: self.unit,
        }
    }
}

impl From<Written> for Reading {
    fn from(written: Written) -> Reading {
        Reading {
            length: written.length,
            unit: written.unit,
            sd: None,
        }
    }
}

/// The length in its unit; the deviation is not shown.
impl fmt::Display for Reading {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.written().fmt(out)
    }
}

impl Serialize for Reading {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Some(sd) = self.sd else {
            return self.written().serialize(serializer);
        };
        let mut object = serializer.serialize_struct("Reading", 2)?;
        object.serialize_field("value", &self.written())?;
        object.serialize_field("sd", &Written::in_cm(sd))?;
        object.end()
    }
}

impl<'de> Deserialize<'de> for Reading {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Reading, D::Error> {
        Entry::deserialize(deserializer)?
            .read()
            .map_err(serde::de::Error::custom)
    }
}

/// What stands at a field that takes a reading, before it is read: kept as it was typed, so
/// that a fault can show it again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Entry {
    /// The text of the length.
    pub value: String,
    /// The text of the deviation; `None` when none was given.
    pub sd: Option<String>,
}

impl Entry {
    /// A length without a deviation.
    pub fn plain(value: impl Into<String>) -> Entry {
        Entry {
            value: value.into(),
            sd: None,
        }
    }

    /// The reading this text gives.
    ///
    /// # Errors
    /// Every [`LengthError`] of [`Reading::read`].
    pub fn read(&self) -> Result<Reading, LengthError> {
        Reading::read(&self.value, self.sd.as_deref())
    }
}

/// The text of the length, and of the deviation behind `±`.
impl fmt::Display for Entry {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&self.value)?;
        match &self.sd {
            Some(sd) => write!(out, " ± {sd}"),
            None => Ok(()),
        }
    }
}

impl<'de> Deserialize<'de> for Entry {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Entry, D::Error> {
        #[derive(Deserialize)]
        #[serde(untagged)]
        enum Plain {
            Whole(i64),
            Number(f64),
            Text(String),
        }
        impl Plain {
            fn text(self) -> String {
                match self {
                    Plain::Whole(cm) => cm.to_string(),
                    Plain::Number(cm) => cm.to_string(),
                    Plain::Text(text) => text,
                }
            }
        }
        #[derive(Deserialize)]
        #[serde(deny_unknown_fields)]
        struct Pair {
            value: Plain,
            sd: Option<Plain>,
        }
        #[derive(Deserialize)]
        #[serde(
            untagged,
            expecting = "a length: a number of centimetres, a text such as \"4尺2寸5分\", or \
                         { value = 161, sd = 0.5 }"
        )]
        enum Raw {
            Plain(Plain),
            Pair(Pair),
        }
        Ok(match Raw::deserialize(deserializer)? {
            Raw::Plain(plain) => Entry::plain(plain.text()),
            Raw::Pair(pair) => Entry {
                value: pair.value.text(),
                sd: pair.sd.map(Plain::text),
            },
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(json: &str) -> Result<Reading, serde_json::Error> {
        serde_json::from_str(json)
    }

    #[test]
    fn files_give_a_reading_as_number_text_or_pair_and_get_it_back() {
        for (json, length, unit, sd) in [
            ("161", Length::from_mm(1610), Unit::Centimetre, None),
            ("65.5", Length::from_mm(655), Unit::Centimetre, None),
            (
                "\"4尺2寸5分\"",
                Length::from_kujira_bu(425),
                Unit::KujiraShaku,
                None,
            ),
            (
                r#"{"value":"4尺2寸5分","sd":"5 mm"}"#,
                Length::from_kujira_bu(425),
                Unit::KujiraShaku,
                Some(Length::from_mm(5)),
            ),
            (
                r#"{"value":161,"sd":0.5}"#,
                Length::from_mm(1610),
                Unit::Centimetre,
                Some(Length::from_mm(5)),
            ),
        ] {
            let reading = read(json).unwrap();
            assert_eq!(reading, Reading { length, unit, sd }, "{json}");
            let again = serde_json::to_string(&reading).unwrap();
            assert_eq!(read(&again).unwrap(), reading, "{json} by way of {again}");
        }
    }

    #[test]
    fn what_is_no_reading_is_refused() {
        for json in [
            "-3",
            "\"-3 cm\"",
            "1e300",
            "true",
            "null",
            "[161]",
            "\"about 161\"",
            r#"{"value":161,"sd":-1}"#,
            r#"{"value":161,"deviation":1}"#,
            r#"{"sd":1}"#,
        ] {
            assert!(read(json).is_err(), "{json} was read");
        }
    }

    #[test]
    fn the_deviation_said_goes_before_the_one_of_the_tape() {
        let plain = Reading::read("160", None).unwrap();
        assert_eq!(plain.measured(0.25).unwrap().sd_cm(), 0.25);
        let said = Reading::read("160", Some("2 cm")).unwrap();
        assert_eq!(said.measured(0.25).unwrap().sd_cm(), 2.0);
        assert_eq!(said.measured(0.25).unwrap().origin(), Origin::Taped);
    }
}
