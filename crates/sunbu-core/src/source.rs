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
        /// All sources named in rules, tables, standards and docs.
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
    A10 "A10" 'B' "Trade glossary: side seam";
    F1 "F1" 'C' "Cures for disorder by place";
    F6 "F6" 'B' "Dressing class: soft and stiff cloth raise";
    F8 "F8" 'D' "Dressing steps, an essay";
    F9 "F9" 'C' "Basics of dressing";
    F10 "F10" 'D' "Width alterations and wearing";
    F11 "F11" 'D' "Narrow body width: wearing tricks";
    F13 "F13" 'B' "Teacher column: centre back, wrinkles, han-eri";
    F27 "F27" 'D' "Slanting fold, two cures";
    F28 "F28" 'D' "Slanting fold";
    F29 "F29" 'D' "Fold too long, yukata";
    F30 "F30" 'D' "Second cord method";
    F33 "F33" 'B' "Magazine questions and answers: the pillow slips";
    N1 "N1" 'A' "University teaching programme, how to wear the yukata: 3, start";
    N3 "N3" 'A' "University teaching programme, how to wear the yukata: 6, ohashori";
    P2 "P2" 'A' "Grant report on clothing pressure, 05405007 (final and 1994)";
    P9 "P9" 'A' "Fold position from body measures, 57th congress of home economics, 2P-30 (2005)";
    P21 "P21" 'A' "Ohashori slippage and koshihimo position, Jpn. J. Clothing Research 58(2), 71-82 (2015)";
    P22 "P22" 'A' "Disorder following arm actions, Jpn. J. Clothing Research 30(1), 13-19 (1986)";
    PD2 "PD2" 'D' "How many towels for which build";
    PD6 "PD6" 'D' "On body padding";
    S15 "S15" 'B' "Kimono glossary: erishita";
    S24 "S24" 'B' "Dressing school: finishing points";
    S25 "S25" 'C' "Column: tsumashita matters";
    S27 "S27" 'C' "Dressing steps";
    S28 "S28" 'D' "Yukata dressing points";
    S30 "S30" 'C' "Glossary: kitake";
    S31 "S31" 'D' "Hem length in practice";
    S32 "S32" 'D' "Dresser's notes: nape and underwear";
    S33 "S33" 'D' "Index-finger rules";
    S72 "S72" 'C' "Men's kimono questions and answers: yuki";
    S86 "S86" 'C' "Size notes";
    S87 "S87" 'C' "Juban for tall, long-armed wearers; bolt widths";
    S116 "S116" 'A' "Influence of the juban on worn appearance, women's university bulletin";
    S125 "S125" 'C' "Checking an inherited furisode 3: yuki allowance";
    S144B "S144b" 'C' "Men: putting on the nagagi";
    X2 "X2" 'D' "Short-torso wearer's length computation";
    FS2 "FS2" 'B' "Kimono glossary: sodetake";
}
