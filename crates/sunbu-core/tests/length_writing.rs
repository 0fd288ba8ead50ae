//! What is written, and that reading it gives it back.

use proptest::prelude::*;
use sunbu_core::measure::{
    Length, Notation, Precision, Script, Shaku, Unit, format_length, parse_signed_length,
};

const LIMIT: i64 = 66_000_000; // 100 m in 1/6600 cm
const UNITS: [Unit; 3] = [Unit::Centimetre, Unit::KujiraShaku, Unit::KaneShaku];
const SCRIPTS: [Script; 2] = [Script::Kanji, Script::Latin];
const SHAKU: [Shaku; 2] = [Shaku::Kujira, Shaku::Kane];

#[test]
fn lengths_are_written_as_the_trade_writes_them() {
    use Precision::{Coarse, Exact, Fine};
    let cm = |mm| (Length::from_mm(mm), Unit::Centimetre);
    let kujira = |bu| (Length::from_kujira_bu(bu), Unit::KujiraShaku);
    let kane = |bu| (Length::from_kane_bu(bu), Unit::KaneShaku);
    let rin = |rin: i64| (Length::from_units(250 * rin), Unit::KujiraShaku);
    for ((length, unit), precision, kanji, latin) in [
        (cm(1610), Exact, "161 cm", "161 cm"),
        (cm(1615), Exact, "161.5 cm", "161.5 cm"),
        (cm(1610), Fine, "161.0 cm", "161.0 cm"),
        (cm(1615), Coarse, "162 cm", "162 cm"),
        (cm(-15), Fine, "-1.5 cm", "-1.5 cm"),
        (cm(0), Exact, "0 cm", "0 cm"),
        (cm(-4), Coarse, "0 cm", "0 cm"),
        (kujira(425), Exact, "4尺2寸5分", "4 shaku 2 sun 5 bu"),
        (kujira(420), Fine, "4尺2寸", "4 shaku 2 sun"),
        (kujira(405), Fine, "4尺5分", "4 shaku 5 bu"),
        (kujira(5), Fine, "5分", "5 bu"),
        (kujira(0), Fine, "0分", "0 bu"),
        (kujira(-5), Fine, "-5分", "-5 bu"),
        (kujira(3100), Fine, "3丈1尺", "3 jo 1 shaku"),
        (rin(4255), Exact, "4尺2寸5分5厘", "4 shaku 2 sun 5 bu 5 rin"),
        (rin(4255), Fine, "4尺2寸5分5厘", "4 shaku 2 sun 5 bu 5 rin"),
        (rin(4255), Coarse, "4尺2寸6分", "4 shaku 2 sun 6 bu"),
        (rin(4252), Fine, "4尺2寸5分", "4 shaku 2 sun 5 bu"),
        (rin(4253), Fine, "4尺2寸5分5厘", "4 shaku 2 sun 5 bu 5 rin"),
        (rin(4998), Fine, "5尺", "5 shaku"), // 4尺9寸9分8厘: rounding carries all the way
        (rin(-2), Fine, "0分", "0 bu"),
        (kane(425), Exact, "曲尺4尺2寸5分", "kane 4 shaku 2 sun 5 bu"),
        (
            (Length::from_units(1), Unit::KujiraShaku),
            Exact,
            "0.004厘",
            "0.004 rin",
        ),
        (
            (Length::from_units(1), Unit::KaneShaku),
            Exact,
            "曲尺0.005厘",
            "kane 0.005 rin",
        ),
        (
            (Length::from_units(1), Unit::Centimetre),
            Exact,
            "0.0002 cm",
            "0.0002 cm",
        ),
        // One kujira-shaku in cm needs four decimals, 161 cm in kujira a fraction of a rin.
        (
            (Length::from_kujira_bu(100), Unit::Centimetre),
            Exact,
            "37.8788 cm",
            "37.8788 cm",
        ),
        (
            (Length::from_mm(1610), Unit::KujiraShaku),
            Exact,
            "4尺2寸5分0.4厘",
            "4 shaku 2 sun 5 bu 0.4 rin",
        ),
    ] {
        for (script, expected) in [(Script::Kanji, kanji), (Script::Latin, latin)] {
            let notation = Notation {
                script,
                precision,
                bare: Shaku::Kujira,
            };
            assert_eq!(
                format_length(length, unit, notation),
                expected,
                "{length:?} {unit:?}"
            );
        }
    }
}

#[test]
fn the_shaku_that_is_not_meant_is_named() {
    let notation = Notation {
        bare: Shaku::Kane,
        ..Notation::fine(Script::Kanji)
    };
    let length = Length::from_kujira_bu(425);
    assert_eq!(
        format_length(length, Unit::KujiraShaku, notation),
        "鯨尺4尺2寸5分"
    );
    let latin = Notation {
        script: Script::Latin,
        ..notation
    };
    assert_eq!(
        format_length(length, Unit::KujiraShaku, latin),
        "kujira 4 shaku 2 sun 5 bu"
    );
    assert_eq!(
        format_length(Length::from_kane_bu(30), Unit::KaneShaku, notation),
        "3寸"
    );
}

#[test]
fn every_length_up_to_two_sun_is_read_back_from_its_exact_text() {
    // Exhaustive over all 50000 units of two kujira-sun, either side of zero.
    for units in -50_000..=50_000 {
        let length = Length::from_units(units);
        for unit in UNITS {
            let text = format_length(length, unit, Notation::exact(Script::Latin));
            let read = parse_signed_length(&text, Shaku::Kujira).map(|written| written.length);
            assert_eq!(read, Ok(length), "{text}");
        }
    }
}

#[test]
fn the_largest_lengths_that_can_be_held_are_written_without_a_panic() {
    for units in [i64::MIN, i64::MIN + 1, i64::MAX] {
        for unit in UNITS {
            for precision in [Precision::Exact, Precision::Fine, Precision::Coarse] {
                let notation = Notation {
                    precision,
                    ..Notation::exact(Script::Kanji)
                };
                let text = format_length(Length::from_units(units), unit, notation);
                assert_eq!(text.starts_with('-'), units < 0, "{text}");
            }
        }
    }
}

fn any_length() -> impl Strategy<Value = Length> {
    prop_oneof![
        (-LIMIT..=LIMIT).prop_map(Length::from_units),
        (-26_400..=26_400_i64).prop_map(Length::from_kujira_bu), // whole bu up to 100 m
        (-100_000..=100_000_i64).prop_map(Length::from_mm),
        (-500..=500_i64).prop_map(Length::from_units),
    ]
}

fn any_notation(precision: Precision) -> impl Strategy<Value = Notation> {
    (
        prop::sample::select(&SCRIPTS[..]),
        prop::sample::select(&SHAKU[..]),
    )
        .prop_map(move |(script, bare)| Notation {
            script,
            precision,
            bare,
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn what_is_written_exactly_is_read_as_the_same_length_and_unit(
        length in any_length(),
        unit in prop::sample::select(&UNITS[..]),
        notation in any_notation(Precision::Exact),
    ) {
        let text = format_length(length, unit, notation);
        let written = parse_signed_length(&text, notation.bare);
        let read = written.clone().map(|written| (written.length, written.unit));
        prop_assert_eq!(read, Ok((length, unit)), "{}", &text);
        let again = written.unwrap().text(notation);
        prop_assert_eq!(again, text);
    }

    #[test]
    fn what_is_written_rounded_is_within_half_its_step(
        length in any_length(),
        unit in prop::sample::select(&UNITS[..]),
        notation in prop_oneof![any_notation(Precision::Fine), any_notation(Precision::Coarse)],
    ) {
        let bu = match unit {
            Unit::Centimetre => 6600, // for cm the coarse step is 1 cm and the fine one 1/10
            Unit::KujiraShaku => 2500,
            Unit::KaneShaku => 2000,
        };
        let parts = match (notation.precision, unit) {
            (Precision::Coarse, _) => 1,
            (_, Unit::Centimetre) => 10,
            _ => 2,
        };
        let step = bu / parts;
        // Rounded up, 100 m may come out a step longer, which is not read.
        prop_assume!(length.abs().units() <= LIMIT - step);
        let text = format_length(length, unit, notation);
        let read = parse_signed_length(&text, notation.bare).unwrap().length;
        let off = (read - length).abs().units();
        prop_assert!(2 * off <= step, "{} is {} units off, step {}", text, off, step);
        prop_assert_eq!(read.units() % step, 0, "{} is no multiple of {}", text, step);
    }

    #[test]
    fn order_is_kept_by_writing_and_reading(
        a in any_length(),
        b in any_length(),
        unit in prop::sample::select(&UNITS[..]),
        notation in prop_oneof![
            any_notation(Precision::Exact),
            any_notation(Precision::Fine),
            any_notation(Precision::Coarse),
        ],
    ) {
        let margin = 6600; // room to round up within 100 m
        prop_assume!(a.abs().units() <= LIMIT - margin && b.abs().units() <= LIMIT - margin);
        let there_and_back = |length| {
            let text = format_length(length, unit, notation);
            parse_signed_length(&text, notation.bare).unwrap().length
        };
        let (read_a, read_b) = (there_and_back(a), there_and_back(b));
        if a <= b {
            prop_assert!(read_a <= read_b, "{:?} {:?} read as {:?} {:?}", a, b, read_a, read_b);
        } else {
            prop_assert!(read_a >= read_b, "{:?} {:?} read as {:?} {:?}", a, b, read_a, read_b);
        }
    }
}
