//! How things look: flat tones, line weights, dash patterns, type sizes.
//!
//! Every element carries its look as plain attributes, so a drawing stands alone in any viewer
//! and prints black on white. It carries a class as well, and [`stylesheet`] gives the rules with
//! which a page puts its own colours in through variables. Nothing is told by colour alone: what
//! is hidden, wanted or missed has a dash pattern, a mark and a word of its own.

use std::fmt::Write as _;

/// A colour: the variable a page may set, and the tone without one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Tone {
    pub variable: &'static str,
    pub hex: &'static str,
}

const fn tone(variable: &'static str, hex: &'static str) -> Tone {
    Tone { variable, hex }
}

pub(crate) const INK: Tone = tone("--draw-ink", "#22303c");
pub(crate) const SOFT_INK: Tone = tone("--draw-soft-ink", "#53606c");
pub(crate) const HAIR_INK: Tone = tone("--draw-hair-ink", "#8a949d");
pub(crate) const FAULT: Tone = tone("--draw-fault", "#a02a1c");
pub(crate) const WANTED: Tone = tone("--draw-wanted", "#1f5c52");
pub(crate) const PAPER: Tone = tone("--draw-paper", "#ffffff");
const CLOTH: Tone = tone("--draw-cloth", "#dbe3e6");
const CLOTH_SHADE: Tone = tone("--draw-cloth-shade", "#c8d3d8");
const LINING: Tone = tone("--draw-lining", "#c3a59a");
const JUBAN: Tone = tone("--draw-juban", "#fdfcf7");
const OBI: Tone = tone("--draw-obi", "#d9c8a0");
const OBI_SHADE: Tone = tone("--draw-obi-shade", "#c9b587");
const OBIAGE: Tone = tone("--draw-obiage", "#b9cbb2");
const OBIJIME: Tone = tone("--draw-obijime", "#8b4a3a");
const SKIN: Tone = tone("--draw-skin", "#f4e6d9");
const HAIR: Tone = tone("--draw-hair", "#59534f");
const TABI: Tone = tone("--draw-tabi", "#fbfaf6");

/// One way to draw: fill, stroke, weight in user units, and dashes.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Look {
    pub class: &'static str,
    pub fill: Option<Tone>,
    pub stroke: Option<Tone>,
    pub weight: &'static str,
    pub dash: &'static str,
}

macro_rules! looks {
    ($($name:ident $class:literal $fill:expr, $stroke:expr, $weight:literal $dash:literal;)*) => {
        $(pub(crate) const $name: Look =
            Look { class: $class, fill: $fill, stroke: $stroke, weight: $weight, dash: $dash };)*
        /// Every look, in the order of the stylesheet.
        const ALL: &[Look] = &[$($name),*];
    };
}

looks! {
    CLOTH_AREA "draw-cloth" Some(CLOTH), Some(INK), "3.2" "";
    SHADE_AREA "draw-cloth-shade" Some(CLOTH_SHADE), Some(INK), "2.6" "";
    LINING_AREA "draw-lining" Some(LINING), Some(INK), "2.4" "";
    COLLAR_AREA "draw-collar" Some(CLOTH), Some(INK), "3" "";
    COVER_AREA "draw-cover" Some(CLOTH), None, "0" "";
    JUBAN_AREA "draw-juban" Some(JUBAN), Some(INK), "2.2" "";
    OBI_AREA "draw-obi" Some(OBI), Some(INK), "3.2" "";
    OBI_SHADE_AREA "draw-obi-shade" Some(OBI_SHADE), Some(INK), "2.4" "";
    OBIAGE_AREA "draw-obiage" Some(OBIAGE), Some(INK), "2.2" "";
    OBIJIME_AREA "draw-obijime" Some(OBIJIME), Some(INK), "1.6" "";
    SKIN_AREA "draw-skin" Some(SKIN), Some(SOFT_INK), "2.2" "";
    HAIR_AREA "draw-hair" Some(HAIR), Some(INK), "2" "";
    TABI_AREA "draw-tabi" Some(TABI), Some(INK), "2.2" "";
    EDGE_LINE "draw-edge" None, Some(INK), "4" "";
    HEM_LINE "draw-hem" None, Some(INK), "5" "";
    SEAM_LINE "draw-seam" None, Some(SOFT_INK), "2" "";
    FINE_LINE "draw-fine" None, Some(SOFT_INK), "1.4" "";
    HIDDEN_LINE "draw-hidden" None, Some(INK), "2.4" "14 8";
    BODY_LINE "draw-body" None, Some(HAIR_INK), "1.8" "2 6";
    FLOOR_LINE "draw-floor" None, Some(SOFT_INK), "2" "";
    LEADER_LINE "draw-leader" None, Some(HAIR_INK), "1.3" "";
    DIMENSION_LINE "draw-dimension" None, Some(INK), "2" "";
    WANTED_LINE "draw-wanted" None, Some(WANTED), "3.2" "18 6 3 6";
    WANTED_MARK "draw-wanted-mark" Some(PAPER), Some(WANTED), "2.6" "";
    FAULT_LINE "draw-fault" None, Some(FAULT), "6" "9 5";
    FAULT_SIGN "draw-fault-sign" Some(PAPER), Some(FAULT), "3" "";
    DOT_MARK "draw-dot" Some(INK), None, "0" "";
    NUMBER_MARK "draw-number" Some(PAPER), Some(INK), "2.4" "";
    PAPER_AREA "draw-paper" Some(PAPER), None, "0" "";
    TEXT "draw-text" Some(INK), None, "0" "";
    SOFT_TEXT "draw-soft-text" Some(SOFT_INK), None, "0" "";
    FAULT_TEXT "draw-fault-text" Some(FAULT), None, "0" "";
    WANTED_TEXT "draw-wanted-text" Some(WANTED), None, "0" "";
}

impl Look {
    /// The look as attributes of an element.
    pub fn attributes(&self) -> String {
        let mut out = format!("class=\"{}\"", self.class);
        let hex = |t: Option<Tone>| t.map_or("none", |t| t.hex);
        let _ = write!(out, " fill=\"{}\"", hex(self.fill));
        if let Some(stroke) = self.stroke {
            let _ = write!(
                out,
                " stroke=\"{}\" stroke-width=\"{}\"",
                stroke.hex, self.weight
            );
            if !self.dash.is_empty() {
                let _ = write!(out, " stroke-dasharray=\"{}\"", self.dash);
            }
        }
        out
    }
}

/// The rules by which a page puts its own colours into drawings on it, as CSS.
///
/// Without them a drawing shows the same tones, for they are the fallbacks of the variables.
pub fn stylesheet() -> String {
    let mut out = String::from(".draw-figure{max-width:100%;height:auto;font-family:inherit}\n");
    for look in ALL {
        let _ = write!(out, ".{}{{", look.class);
        for (property, tone) in [("fill", look.fill), ("stroke", look.stroke)] {
            if let Some(Tone { variable, hex }) = tone {
                let _ = write!(out, "{property}:var({variable},{hex});");
            }
        }
        out.push_str("}\n");
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance of a tone (WCAG 2.2, "relative luminance").
    fn luminance(tone: Tone) -> f64 {
        let channel = |at: usize| {
            let c = f64::from(u8::from_str_radix(&tone.hex[at..at + 2], 16).expect("hex")) / 255.0;
            if c <= 0.04045 {
                c / 12.92
            } else {
                ((c + 0.055) / 1.055).powf(2.4)
            }
        };
        0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
    }

    fn contrast(a: Tone, b: Tone) -> f64 {
        let (a, b) = (luminance(a) + 0.05, luminance(b) + 0.05);
        if a > b { a / b } else { b / a }
    }

    #[test]
    fn text_stands_out_from_paper_by_four_and_a_half_and_lines_of_meaning_from_cloth_by_three() {
        // WCAG 2.2: 1.4.3 asks 4.5 of text, 1.4.11 asks 3 of parts of a graphic.
        for text in [INK, SOFT_INK, FAULT, WANTED] {
            let got = contrast(text, PAPER);
            assert!(got >= 4.5, "{}: {got:.2} against 4.5", text.variable);
            for ground in [CLOTH, CLOTH_SHADE, OBI, SKIN, OBIAGE, LINING] {
                let got = contrast(text, ground);
                assert!(
                    got >= 2.8,
                    "{} on {}: {got:.2}",
                    text.variable,
                    ground.variable
                );
            }
        }
        for ground in [CLOTH, CLOTH_SHADE, OBI, OBI_SHADE, SKIN, OBIAGE, LINING] {
            let got = contrast(INK, ground);
            assert!(
                got >= 4.5,
                "ink on {}: {got:.2} against 4.5",
                ground.variable
            );
        }
    }

    #[test]
    fn every_look_has_one_class_and_one_rule() {
        let css = stylesheet();
        for look in ALL {
            assert_eq!(
                ALL.iter().filter(|l| l.class == look.class).count(),
                1,
                "{}",
                look.class
            );
            assert_eq!(
                css.matches(&format!(".{}{{", look.class)).count(),
                1,
                "{}",
                look.class
            );
        }
    }
}
