//! Reading a marks file: bytes, text, places, and every problem of all of them.

use toml::de::{DeTable, DeValue};

use super::super::check::{LENS_HEIGHT_CM, SIDE_PX, TAPE_CM};
use super::super::mark::{Mark, Marks, Pixel, Placed, Trust, View};
use super::super::shot::References;
use super::{FOCAL_MM, MAX_MARKS_BYTES, MarkedTape, MarksFile};
use crate::fault::{Fault as Flaw, Ticks};
use crate::measure::{Length, Reading, Shaku, parse_length};
use crate::problem::{Fault, Problem};
use crate::toml_file::{TomlFile, number, text_of};

/// The fields of the file itself.
const TOP: [&str; 8] = [
    "view",
    "size",
    "mirrored",
    "lens_height",
    "focal_35mm",
    "seen",
    "references",
    "marks",
];

/// Allowed deviation of a lens's height, in centimetres.
const LENS_SD_CM: (f64, f64) = (0.1, 100.0);

const TEXT: &str = "a text in quotes";
const TEXTS: &str = "texts in quotes, between brackets";
const TRUTH: &str = "true or false";
const NUMBER: &str = "a number";
const LENGTH: &str = "a length such as 130, \"4尺2寸5分\" or { value = 130, sd = 3 }";
const TABLE: &str = "a table, headed [like this]";
const SIZE: &str = "a width and a height, such as [3024, 4032]";
const PLACE: &str = "a place such as [1510, 3830]";
const MARK: &str = "a place such as [1510, 3830], or { at = [1510, 3830], unsure = true }";
const SHEET: &str = "four places, the corners of the sheet";
const LINES: &str = "lines, each of two places";
const PAIRS: &str = "pairs of lines, each line of two places";
const TAPE: &str = "a tape such as { ends = [[700, 3800], [702, 2900]], length = 90 }";

impl MarksFile {
    /// Reads a marks file as it lies on the disk: UTF-8, with or without a byte order mark.
    ///
    /// # Errors
    /// As [`MarksFile::parse`], and [`Fault::NotText`] for another encoding.
    pub fn parse_bytes(bytes: &[u8]) -> Result<MarksFile, Vec<Problem>> {
        MarksFile::parse(text_of(bytes, MAX_MARKS_BYTES)?)
    }

    /// Reads marks from their TOML text.
    ///
    /// # Errors
    /// Every problem at once, each at its dotted place (`marks.hem_left.x`, `references.sheet.2.y`,
    /// counted from 1): [`Fault::Form`] where the text is no TOML, [`Fault::WrongShape`],
    /// [`Fault::UnknownField`], [`Fault::UnknownChoice`], numbers beyond what any picture has, and
    /// lengths that are none. Beyond [`crate::case::MAX_PROBLEMS`] only that there are more.
    /// Whether the marks lie on a photo, [`MarksFile::shot`] tells.
    pub fn parse(text: &str) -> Result<MarksFile, Vec<Problem>> {
        if text.len() > MAX_MARKS_BYTES {
            let most_bytes = MAX_MARKS_BYTES;
            return Err(vec![Problem::new(
                "file",
                "",
                Fault::TooMuch { most_bytes },
            )]);
        }
        let (mut file, document) = TomlFile::read(text);
        let marks = Reader { file: &mut file }.file(document.get_ref());
        match marks {
            Some(marks) if file.problems.is_empty() => Ok(marks),
            _ => Err(file.told()),
        }
    }
}

/// A name in the file with its value, and its dotted place.
struct Entry<'v, 'a> {
    name: &'v str,
    value: &'v toml::Spanned<DeValue<'a>>,
    place: String,
}

struct Reader<'f, 'a> {
    file: &'f mut TomlFile<'a>,
}

impl<'a> Reader<'_, 'a> {
    fn file(&mut self, document: &DeTable<'a>) -> Option<MarksFile> {
        let mut read = MarksFile::new(View::Front);
        let mut view = None;
        for Entry { name, value, place } in self.entries(document, "", &TOP) {
            match name {
                "view" => view = self.view(&place, value),
                "size" => read.size = self.size(&place, value),
                "mirrored" => read.mirrored = self.truth(&place, value)?,
                "lens_height" => read.lens_height = self.length(&place, value, LENS_HEIGHT_CM),
                "focal_35mm" => read.focal_mm = self.number(&place, value, FOCAL_MM, "mm"),
                "seen" => read.seen = self.seen(&place, value),
                "references" => (read.references, read.tape) = self.references(&place, value),
                _ => read.marks = self.marks(&place, value),
            }
        }
        if !document.contains_key("view") {
            let allowed = keys(View::ALL.iter().map(|view| view.key()));
            self.file
                .push(Problem::new("view", "", Fault::UnknownChoice { allowed }));
        }
        Some(MarksFile {
            view: view?,
            ..read
        })
    }

    /// The entries of a table whose names are known and whose lines were understood, as they stand
    /// in the file.
    fn entries<'v>(
        &mut self,
        table: &'v DeTable<'a>,
        under: &str,
        known: &[&str],
    ) -> Vec<Entry<'v, 'a>> {
        let mut found = Vec::new();
        let mut all: Vec<_> = table.iter().collect();
        all.sort_by_key(|(name, _)| name.span().start);
        for (name, value) in all {
            if self.file.is_unread(&(name.span().start..value.span().end)) {
                continue;
            }
            let name = name.get_ref().as_ref();
            let place = match under {
                "" => name.to_owned(),
                _ => format!("{under}.{name}"),
            };
            if known.contains(&name) {
                found.push(Entry { name, value, place });
            } else {
                let known = keys(known.iter().copied());
                let typed = self.file.typed(value.span());
                self.file
                    .push(Problem::new(place, typed, Fault::UnknownField { known }));
            }
            if self.file.is_full() {
                break;
            }
        }
        found
    }

    fn wrong(&mut self, place: &str, value: &toml::Spanned<DeValue<'a>>, fault: Fault) {
        let typed = self.file.typed(value.span());
        self.file.push(Problem::new(place, typed, fault));
    }

    fn misshapen(
        &mut self,
        place: &str,
        value: &toml::Spanned<DeValue<'a>>,
        expected: &'static str,
    ) {
        self.wrong(place, value, Fault::WrongShape { expected });
    }

    fn view(&mut self, place: &str, value: &toml::Spanned<DeValue<'a>>) -> Option<View> {
        let DeValue::String(word) = value.get_ref() else {
            self.misshapen(place, value, TEXT);
            return None;
        };
        let found = View::from_key(word.trim());
        if found.is_none() {
            let allowed = keys(View::ALL.iter().map(|view| view.key()));
            let fault = Fault::UnknownChoice { allowed };
            self.file.push(Problem::new(place, word.to_string(), fault));
        }
        found
    }

    /// Whether something is so; none for what says neither.
    fn truth(&mut self, place: &str, value: &toml::Spanned<DeValue<'a>>) -> Option<bool> {
        match value.get_ref() {
            DeValue::Boolean(so) => Some(*so),
            _ => {
                self.misshapen(place, value, TRUTH);
                // The rest of the file is read all the same.
                Some(false)
            }
        }
    }

    /// A number within a range.
    fn number(
        &mut self,
        place: &str,
        value: &toml::Spanned<DeValue<'a>>,
        (low, high): (f64, f64),
        unit: &'static str,
    ) -> Option<f64> {
        let read = number(value.get_ref()).and_then(|text| text.parse::<f64>().ok());
        match read {
            None => self.misshapen(place, value, NUMBER),
            Some(number) if (low..=high).contains(&number) => return Some(number),
            Some(_) => self.wrong(place, value, Fault::NumberOutOfRange { low, high, unit }),
        }
        None
    }

    fn size(&mut self, place: &str, value: &toml::Spanned<DeValue<'a>>) -> Option<[u32; 2]> {
        let sides = match value.get_ref() {
            DeValue::Array(sides) if sides.len() == 2 => sides,
            _ => {
                self.misshapen(place, value, SIZE);
                return None;
            }
        };
        let mut read = [None; 2];
        for (i, (side, name)) in sides.iter().zip(["width", "height"]).enumerate() {
            let place = format!("{place}.{name}");
            if !matches!(side.get_ref(), DeValue::Integer(_)) {
                self.misshapen(&place, side, SIZE);
                continue;
            }
            let (low, high) = (f64::from(SIDE_PX.0), f64::from(SIDE_PX.1));
            let within = self.number(&place, side, (low, high), "px");
            // Whole and within thousands, so nothing is cut off.
            read[i] = within.and_then(|px| (SIDE_PX.0..=SIDE_PX.1).find(|&n| f64::from(n) == px));
        }
        Some([read[0]?, read[1]?])
    }

    /// A length with its deviation if one is given.
    fn length(
        &mut self,
        place: &str,
        value: &toml::Spanned<DeValue<'a>>,
        range: (f64, f64),
    ) -> Option<Reading> {
        let DeValue::Table(pair) = value.get_ref() else {
            return self.plain_length(place, value, range);
        };
        let (mut length, mut sd) = (None, None);
        for Entry { name, value, place } in self.entries(pair, place, &["value", "sd"]) {
            match name {
                "value" => length = Some(self.plain_length(&place, value, range)),
                _ => sd = Some(self.plain_length(&place, value, LENS_SD_CM)),
            }
        }
        if length.is_none() {
            let place = format!("{place}.value");
            self.file.push(Problem::new(place, "", Fault::Missing));
        }
        let sd: Option<Length> = match sd {
            Some(sd) => Some(sd?.length),
            None => None,
        };
        Some(Reading { sd, ..length?? })
    }

    fn plain_length(
        &mut self,
        place: &str,
        value: &toml::Spanned<DeValue<'a>>,
        (low_cm, high_cm): (f64, f64),
    ) -> Option<Reading> {
        let text = match value.get_ref() {
            DeValue::String(text) => text.to_string(),
            other => match number(other) {
                Some(text) => text,
                None => {
                    self.misshapen(place, value, LENGTH);
                    return None;
                }
            },
        };
        let fault = match parse_length(&text, Shaku::Kujira) {
            Err(why) => Fault::Unreadable(why),
            Ok(written) if (low_cm..=high_cm).contains(&written.length.cm()) => {
                return Some(Reading::from(written));
            }
            Ok(_) => Fault::OutOfRange { low_cm, high_cm },
        };
        self.file.push(Problem::new(place, text, fault));
        None
    }

    fn seen(&mut self, place: &str, value: &toml::Spanned<DeValue<'a>>) -> Ticks {
        let mut seen = Ticks::new();
        let DeValue::Array(list) = value.get_ref() else {
            self.misshapen(place, value, TEXTS);
            return seen;
        };
        for (i, value) in list.iter().enumerate() {
            let place = format!("{place}.{}", i + 1);
            let DeValue::String(word) = value.get_ref() else {
                self.misshapen(&place, value, TEXT);
                continue;
            };
            match Flaw::from_key(word.trim()) {
                Some(fault) => {
                    seen.insert(fault);
                }
                None if self.file.is_full() => break,
                None => {
                    let allowed = keys(Flaw::ALL.iter().map(|fault| fault.key()));
                    let fault = Fault::UnknownChoice { allowed };
                    self.file.push(Problem::new(place, word.to_string(), fault));
                }
            }
        }
        seen
    }

    fn references(
        &mut self,
        place: &str,
        value: &toml::Spanned<DeValue<'a>>,
    ) -> (References, Option<MarkedTape>) {
        let mut known = References::default();
        let mut tape = None;
        let DeValue::Table(table) = value.get_ref() else {
            self.misshapen(place, value, TABLE);
            return (known, tape);
        };
        let names = ["sheet", "tape", "uprights", "levels"];
        for Entry { name, value, place } in self.entries(table, place, &names) {
            match name {
                "sheet" => known.sheet = self.several(&place, value, SHEET, Self::pixel),
                "tape" => tape = self.tape(&place, value),
                "uprights" => known.uprights = self.list(&place, value, LINES, Self::line),
                _ => known.levels = self.list(&place, value, PAIRS, Self::pair),
            }
        }
        (known, tape)
    }

    fn tape(&mut self, place: &str, value: &toml::Spanned<DeValue<'a>>) -> Option<MarkedTape> {
        let DeValue::Table(table) = value.get_ref() else {
            self.misshapen(place, value, TAPE);
            return None;
        };
        let (mut ends, mut length) = (None, None);
        for Entry { name, value, place } in self.entries(table, place, &["ends", "length"]) {
            match name {
                "ends" => ends = self.line(&place, value),
                _ => length = self.plain_length(&place, value, TAPE_CM),
            }
        }
        for name in ["ends", "length"] {
            if !table.contains_key(name) {
                let place = format!("{place}.{name}");
                self.file.push(Problem::new(place, "", Fault::Missing));
            }
        }
        Some(MarkedTape {
            ends: ends?,
            length: length?,
        })
    }

    fn marks(&mut self, place: &str, value: &toml::Spanned<DeValue<'a>>) -> Marks {
        let mut marks = Marks::new();
        let DeValue::Table(table) = value.get_ref() else {
            self.misshapen(place, value, TABLE);
            return marks;
        };
        let known: Vec<&str> = Mark::ALL.iter().map(|mark| mark.key()).collect();
        for Entry { name, value, place } in self.entries(table, place, &known) {
            let placed = match value.get_ref() {
                DeValue::Table(table) => self.placed(&place, table),
                DeValue::Array(_) => self.pixel(&place, value).map(|at| Placed {
                    at,
                    trust: Trust::Sure,
                }),
                _ => {
                    self.misshapen(&place, value, MARK);
                    None
                }
            };
            if let Some((mark, placed)) = Mark::from_key(name).zip(placed) {
                marks.insert(mark, placed);
            }
        }
        marks
    }

    /// A mark with how sure it is.
    fn placed(&mut self, place: &str, table: &DeTable<'a>) -> Option<Placed> {
        let mut at = None;
        let mut unsure = false;
        for Entry {
            name,
            value,
            place: within,
        } in self.entries(table, place, &["at", "unsure"])
        {
            match name {
                "at" => at = self.pixel(place, value),
                _ => unsure = self.truth(&within, value)?,
            }
        }
        if !table.contains_key("at") {
            let place = format!("{place}.at");
            self.file.push(Problem::new(place, "", Fault::Missing));
        }
        let trust = if unsure { Trust::Unsure } else { Trust::Sure };
        Some(Placed { at: at?, trust })
    }

    fn pixel(&mut self, place: &str, value: &toml::Spanned<DeValue<'a>>) -> Option<Pixel> {
        let parts = match value.get_ref() {
            DeValue::Array(parts) if parts.len() == 2 => parts,
            _ => {
                self.misshapen(place, value, PLACE);
                return None;
            }
        };
        let range = (0.0, f64::from(SIDE_PX.1));
        let [x, y] = ["x", "y"].map(|axis| {
            let part = parts.get(usize::from(axis == "y"))?;
            self.number(&format!("{place}.{axis}"), part, range, "px")
        });
        Some([x?, y?])
    }

    fn line(&mut self, place: &str, value: &toml::Spanned<DeValue<'a>>) -> Option<[Pixel; 2]> {
        self.several(place, value, LINES, Self::pixel)
    }

    fn pair(&mut self, place: &str, value: &toml::Spanned<DeValue<'a>>) -> Option<[[Pixel; 2]; 2]> {
        self.several(place, value, PAIRS, Self::line)
    }

    /// Exactly so many of something.
    fn several<T: Copy, const N: usize>(
        &mut self,
        place: &str,
        value: &toml::Spanned<DeValue<'a>>,
        expected: &'static str,
        read: impl Fn(&mut Self, &str, &toml::Spanned<DeValue<'a>>) -> Option<T>,
    ) -> Option<[T; N]> {
        match value.get_ref() {
            DeValue::Array(parts) if parts.len() == N => {
                self.list(place, value, expected, read).try_into().ok()
            }
            _ => {
                self.misshapen(place, value, expected);
                None
            }
        }
    }

    /// Any number of something, without those that are none.
    fn list<T>(
        &mut self,
        place: &str,
        value: &toml::Spanned<DeValue<'a>>,
        expected: &'static str,
        read: impl Fn(&mut Self, &str, &toml::Spanned<DeValue<'a>>) -> Option<T>,
    ) -> Vec<T> {
        let DeValue::Array(parts) = value.get_ref() else {
            self.misshapen(place, value, expected);
            return Vec::new();
        };
        let mut found = Vec::new();
        for (i, part) in parts.iter().enumerate() {
            if self.file.is_full() {
                break;
            }
            found.extend(read(self, &format!("{place}.{}", i + 1), part));
        }
        found
    }
}

fn keys<'k>(known: impl Iterator<Item = &'k str>) -> Vec<String> {
    known.map(str::to_owned).collect()
}
