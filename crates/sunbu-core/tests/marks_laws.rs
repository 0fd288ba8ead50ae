//! Laws of the marks file: on files with slips in them, and on any file that could be written.

#[path = "laws/marks.rs"]
mod laws;

use proptest::prelude::*;
use sunbu_core::fault::Fault;
use sunbu_core::measure::{Length, Reading, Unit};
use sunbu_core::photo::{
    FOCAL_MM, LENS_HEIGHT_CM, Mark, MarkedTape, MarksFile, Pixel, Placed, References, TAPE_CM,
    Trust, View,
};

const MARKS: &str = include_str!("../../../fuzz/corpus/marks/good-whole");

/// Pieces that mean something to the reader, so that slips made of them reach deep into it.
const SLIPS: &[&str] = &[
    "",
    "\n",
    " ",
    "\"",
    "#",
    "=",
    ".",
    ",",
    "[",
    "]",
    "[[",
    "{",
    "}",
    "-",
    "nan",
    "inf",
    "1e999",
    "true",
    "0x1F",
    "1979-05-27",
    "\\u0000",
    "\u{feff}",
    "3尺",
    "view",
    "\"back\"",
    "[marks]",
    "[references]",
    "at = ",
    "unsure = ",
    "crown",
    "floor = [1, 2]\n",
    "[0, 0]",
    "[20000, 1]",
    "seen = []\n",
    "mirrored = true\n",
];

fn pixel() -> impl Strategy<Value = Pixel> {
    [0.0..=20_000.0_f64, 0.0..=20_000.0_f64]
}

fn line() -> impl Strategy<Value = [Pixel; 2]> {
    [pixel(), pixel()]
}

fn reading((low_cm, high_cm): (f64, f64)) -> impl Strategy<Value = Reading> {
    let units = |cm: f64| Length::from_cm(cm).map_or(0, Length::units);
    let unit = prop_oneof![Just(Unit::Centimetre), Just(Unit::KujiraShaku)];
    let sd = proptest::option::of((units(0.1)..=units(100.0)).prop_map(Length::from_units));
    let length = (units(low_cm)..=units(high_cm)).prop_map(Length::from_units);
    (length, unit, sd).prop_map(|(length, unit, sd)| Reading { length, unit, sd })
}

fn marks_file() -> impl Strategy<Value = MarksFile> {
    let marks = proptest::sample::subsequence(Mark::ALL.to_vec(), 0..=Mark::COUNT);
    let marks = marks.prop_flat_map(|marks| {
        let each = |mark: Mark| {
            let trust = prop_oneof![Just(Trust::Sure), Just(Trust::Unsure)];
            (pixel(), trust).prop_map(move |(at, trust)| (mark, Placed { at, trust }))
        };
        marks.into_iter().map(each).collect::<Vec<_>>()
    });
    let references = (
        proptest::option::of([pixel(), pixel(), pixel(), pixel()]),
        proptest::collection::vec(line(), 0..3),
        proptest::collection::vec([line(), line()], 0..3),
    );
    let tape = (line(), reading(TAPE_CM));
    let lens = (
        proptest::option::of(reading(LENS_HEIGHT_CM)),
        proptest::option::of(FOCAL_MM.0..=FOCAL_MM.1),
        any::<bool>(),
    );
    let seen = proptest::sample::subsequence(Fault::ALL.to_vec(), 0..5);
    let size = proptest::option::of([100..=20_000_u32, 100..=20_000_u32]);
    let view = proptest::sample::select(View::ALL);
    (
        view,
        size,
        lens,
        seen,
        references,
        proptest::option::of(tape),
        marks,
    )
        .prop_map(
            |(view, size, lens, seen, (sheet, uprights, levels), tape, marks)| MarksFile {
                view,
                size,
                lens_height: lens.0,
                focal_mm: lens.1,
                mirrored: lens.2,
                seen: seen.into_iter().collect(),
                references: References {
                    sheet,
                    uprights,
                    levels,
                    tape: None,
                },
                // A tape's own deviation is none that the file has.
                tape: tape.map(|(ends, length)| MarkedTape {
                    ends,
                    length: Reading { sd: None, ..length },
                }),
                marks: marks.into_iter().collect(),
            },
        )
}

proptest! {
    #[test]
    fn any_bytes_at_all_are_answered(bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
        laws::check(&bytes);
    }

    #[test]
    fn a_file_with_slips_in_it_is_answered(
        slips in proptest::collection::vec(
            (0..MARKS.len(), 0..12_usize, proptest::sample::select(SLIPS)), 1..6)
    ) {
        let mut text = MARKS.to_owned();
        for (at, gone, slip) in slips {
            let start = text.floor_char_boundary(at);
            let stop = text.floor_char_boundary(start + gone).max(start);
            text.replace_range(start..stop, slip);
        }
        laws::check(text.as_bytes());
    }

    #[test]
    fn a_damaged_file_is_answered(
        slips in proptest::collection::vec((0..MARKS.len(), any::<u8>()), 1..8)
    ) {
        let mut bytes = MARKS.as_bytes().to_vec();
        for (at, byte) in slips {
            bytes[at] = byte;
        }
        laws::check(&bytes);
    }

    #[test]
    fn any_marks_that_may_be_come_back_the_same_and_are_answered(marks in marks_file()) {
        laws::check(marks.to_toml().as_bytes());
        prop_assert_eq!(MarksFile::parse(&marks.to_toml()), Ok(marks));
    }
}
