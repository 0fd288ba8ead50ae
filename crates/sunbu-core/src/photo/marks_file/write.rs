//! Writing a marks file, so that reading it gives the same again.

use std::fmt::Write as _;

use super::super::mark::{Mark, Pixel, Trust};
use super::MarksFile;
use crate::measure::{Notation, Reading, Script, Written};

impl MarksFile {
    /// These marks as TOML. [`MarksFile::parse`] reads equal marks from it, pixels and lengths
    /// exact.
    pub fn to_toml(&self) -> String {
        let mut out = String::new();
        let mut line = |name: &str, value: &str| {
            let _ = writeln!(out, "{name} = {value}"); // a `String` takes every write
        };
        line("view", &quoted(self.view.key()));
        if let Some([width, height]) = self.size {
            line("size", &format!("[{width}, {height}]"));
        }
        if self.mirrored {
            line("mirrored", "true");
        }
        if let Some(height) = self.lens_height {
            line("lens_height", &length(height));
        }
        if let Some(mm) = self.focal_mm {
            line("focal_35mm", &mm.to_string());
        }
        if !self.seen.is_empty() {
            line("seen", &list(self.seen.iter().map(|f| quoted(f.key()))));
        }
        let references = &self.references;
        let mut known: Vec<(&str, String)> = Vec::new();
        if let Some(corners) = &references.sheet {
            known.push(("sheet", list(corners.iter().map(place))));
        }
        if let Some(tape) = &self.tape {
            let ends = list(tape.ends.iter().map(place));
            let length = length(tape.length);
            known.push(("tape", format!("{{ ends = {ends}, length = {length} }}")));
        }
        let drawn = |line: &[Pixel; 2]| list(line.iter().map(place));
        if !references.uprights.is_empty() {
            known.push(("uprights", list(references.uprights.iter().map(drawn))));
        }
        if !references.levels.is_empty() {
            let pairs = references.levels.iter();
            let pairs = pairs.map(|pair| list(pair.iter().map(drawn)));
            known.push(("levels", list(pairs)));
        }
        if !known.is_empty() {
            out.push_str("\n[references]\n");
            for (name, value) in known {
                let _ = writeln!(out, "{name} = {value}");
            }
        }
        out.push_str("\n[marks]\n");
        for mark in Mark::ALL {
            let Some(placed) = self.marks.get(mark) else {
                continue;
            };
            let at = place(&placed.at);
            let value = match placed.trust {
                Trust::Sure => at,
                Trust::Unsure => format!("{{ at = {at}, unsure = true }}"),
            };
            let _ = writeln!(out, "{} = {value}", mark.key());
        }
        out
    }
}

fn list(parts: impl Iterator<Item = String>) -> String {
    format!("[{}]", parts.collect::<Vec<_>>().join(", "))
}

fn place([x, y]: &Pixel) -> String {
    format!("[{x}, {y}]")
}

/// Keys have nothing in them that needs to be escaped, and written lengths no more than a quote
/// cannot hold.
fn quoted(text: &str) -> String {
    format!("\"{text}\"")
}

fn length(reading: Reading) -> String {
    let text = |written: Written| quoted(&written.text(Notation::exact(Script::Latin)));
    let value = text(reading.written());
    match reading.sd {
        Some(sd) => format!("{{ value = {value}, sd = {} }}", text(Written::in_cm(sd))),
        None => value,
    }
}
