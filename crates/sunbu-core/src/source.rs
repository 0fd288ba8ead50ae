//! Where a figure of the trade comes from: a short code, a grade and a descriptive title.
//!
//! Every rule and table in the core names its sources through these constants, so that pages,
//! documents and tests can print them from one place. Grades: `A` academic, official or
//! trade rule; `B` tailor, sewing class, trade body, dressing school or glossary; `C` retailer
//! or rental guide; `D` blog or essay.

use serde::Serialize;

/// One published source of trade figures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Source {
    /// Short code used in the tables and in the validation chapter, e.g. `S6`.
    pub code: &'static str,
    /// How much weight it bears: `A` best, `D` least.
    pub grade: char,
    /// Descriptive title, in our own words.
    pub title: &'static str,
}

macro_rules! sources {
    ($($name:ident $code:literal $grade:literal $title:literal;)*) => {
        $(
            #[doc = concat!($code, " (grade ", $grade, "): ", $title, ".")]
            pub const $name: Source = Source { code: $code, grade: $grade, title: $title };
        )*
        /// All sources named in the garment rules and tables.
        pub const ALL: &[Source] = &[$($name),*];
    };
}

sources! {
    A9 "A9" 'B' "Wasai lesson: centre-back seam 3, 4, 2.5 bu";
    S1 "S1" 'B' "Online dressing school, lesson 104: standard sizes";
    S2 "S2" 'B' "Wasai basics 3: women's standard sizes";
    S3 "S3" 'B' "Wasai basics 2: women's calculation rules";
    S4 "S4" 'C' "Guide sizes for kimono (height 158, hip 88)";
    S5 "S5" 'C' "Standard sizes of kimono, women, by height";
    S6 "S6" 'B' "Wasai class notes: how kimono sizes are decided";
    S6B "S6b" 'B' "Wasai academy: deriving mae and ushiro widths (worked, hip 95)";
    S6C "S6c" 'B' "Wasai academy: dakihaba from bust";
    S6D "S6d" 'B' "Wasai school (English): 20 measurements";
    S7 "S7" 'C' "Guide to kimono sizes: hip table";
    S8 "S8" 'B' "Deciding kimono sizes from three measures";
    S9 "S9" 'B' "Dressing teacher: deriving kimono sizes";
    S10 "S10" 'C' "How sizes are derived";
    S11 "S11" 'C' "Kimono size explained";
    S12 "S12" 'B' "Tailor's notes 4: body width";
    S13 "S13" 'B' "Know your sizes: front and back widths";
    S14 "S14" 'B' "Kimono glossary: aizuma, okumi-sagari, erishita, sodehaba, mitake";
    S15B "S15b" 'B' "Kimono glossary: erikata-aki";
    S16 "S16" 'D' "Dressing teacher's notes: tsumashita and dakihaba";
    S17 "S17" 'B' "Padding maker's notes: tsumashita";
    S17B "S17b" 'B' "Padding maker's notes: dakihaba";
    S18 "S18" 'D' "Tailor's notes: names and sizes";
    S19 "S19" 'B' "Tailor: kurikoshi 2";
    S20 "S20" 'D' "Tailor's essay: kurikoshi, tsukekomi, erikata-aki";
    S21 "S21" 'B' "Wasai intermediate: neck opening and dressing";
    S22 "S22" 'B' "Wasai basics 6: shoulder and back widths";
    S63B "S63b" 'C' "Measuring support: yuki and its split";
    S64 "S64" 'D' "Archery kimono: sleeve length, two arm postures";
    S110 "S110" 'B' "Dressing school: measurements, Edo and modern table";
    S123 "S123" 'B' "Tailoring studio: yuki limit from bolt width (worked)";
    S135 "S135" 'C' "Glossary of measured parts";
    F16 "F16" 'D' "Essay: why the collar collapses";
    FS2 "FS2" 'B' "Kimono glossary: sodetake";
}
