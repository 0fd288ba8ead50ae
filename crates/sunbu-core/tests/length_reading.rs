//! What the parser reads and refuses, text by text. The texts are our own, in the ways of writing
//! met in the sources of the trade tables (digits and kanji, full width, shaku and sun alone).

use sunbu_core::measure::{Length, MAX_TEXT_BYTES, Shaku, Unit, parse_length, parse_signed_length};

#[test]
fn texts_in_centimetres_metres_and_millimetres_are_read() {
    for (text, mm) in [
        ("161", 1610),
        ("161 cm", 1610),
        ("161cm", 1610),
        ("161.5cm", 1615),
        ("161,5", 1615),
        ("161,5 cm", 1615),
        ("1,61 m", 1610),
        ("1.61 m", 1610),
        ("1 m 61 cm", 1610),
        ("1m 61cm 5mm", 1615),
        ("1 m 5 mm", 1005),
        ("1610 mm", 1610),
        ("161 centimetres", 1610),
        ("161 CM", 1610),
        ("  161\u{3000}cm ", 1610),
        ("１６１．５ｃｍ", 1615),
        ("１６１，５ｃｍ", 1615),
        ("161㎝", 1610),
        ("1610㎜", 1610),
        ("161㌢", 1610),
        ("161ｾﾝﾁ", 1610),
        ("161センチ", 1610),
        ("161センチメートル", 1610),
        ("161センチ半", 1615),
        ("1メートル61センチ", 1610),
        ("1610ミリ", 1610),
        ("百六十一センチ", 1610),
        ("一六一センチ", 1610),
        ("百六十一", 1610),
        ("一六一・五センチ", 1615),
        ("0", 0),
        ("000161.50", 1615),
        (".5", 5),
        ("0,125 m", 125),
        ("161.", 1610),
        ("+161", 1610),
        ("161 1/2 cm", 1615),
        ("161½", 1615),
    ] {
        let written = parse_length(text, Shaku::Kujira).unwrap_or_else(|e| panic!("{text}: {e}"));
        assert_eq!(
            written.length,
            Length::from_mm(mm),
            "{text} against {mm} mm"
        );
        assert_eq!(written.unit, Unit::Centimetre, "{text}");
    }
}

#[test]
fn texts_in_feet_and_inches_are_read() {
    for (text, quarter_inches) in [
        ("5 ft 3 in", 252),
        ("5ft3in", 252),
        ("5 ft. 3 in.", 252),
        ("5'3\"", 252),
        ("5' 3\"", 252),
        ("5’3”", 252),
        ("5′3″", 252),
        ("5'3''", 252),
        ("5'3", 252),
        ("5ft 3", 252),
        ("5 feet 3 inches", 252),
        ("5フィート3インチ", 252),
        ("63 in", 252),
        ("63\"", 252),
        ("63.25 in", 253),
        ("63 1/4 in", 253),
        ("63¼ in", 253),
        ("5'3¼\"", 253),
        ("5.25 ft", 252),
        ("3/4 in", 3),
        ("5/4 in", 5),
    ] {
        let written = parse_length(text, Shaku::Kujira).unwrap_or_else(|e| panic!("{text}: {e}"));
        let units = Length::from_inches(1).units() / 4 * quarter_inches;
        assert_eq!(
            written.length.units(),
            units,
            "{text} against {quarter_inches}/4 in"
        );
        assert_eq!(written.unit, Unit::Centimetre, "{text}");
    }
}

/// Texts, and their length in mo: ten-thousandths of a shaku.
const SHAKU_TEXTS: &[(&str, i64)] = &[
    ("4尺2寸5分", 42_500),
    ("４尺２寸５分", 42_500),
    ("4 尺 2 寸 5 分", 42_500),
    ("四尺二寸五分", 42_500),
    ("四尺二寸五分五厘", 42_550),
    ("4尺2寸5分5厘2毛", 42_552),
    ("4.25 shaku", 42_500),
    ("4.25尺", 42_500),
    ("4,25 shaku", 42_500),
    ("四・二五尺", 42_500),
    ("4 shaku 2 sun 5 bu", 42_500),
    ("4shaku2sun5bu", 42_500),
    ("4 Shaku 2 Sun 5 Bu", 42_500),
    ("4 shaku 2 sun 5 bu 5 rin", 42_550),
    ("4 shaku 2.5 sun", 42_500),
    ("4尺2.5寸", 42_500),
    ("4尺5分", 40_500),
    ("4尺25分", 42_500),
    ("4尺半", 45_000),
    ("5分半", 550),
    ("4尺2寸半", 42_500),
    ("半寸", 500),
    ("5½ bu", 550),
    ("5 1/2 bu", 550),
    ("4しゃく2すん5ぶ", 42_500),
    ("12寸", 12_000),
    ("十二寸", 12_000),
    ("2丈", 200_000),
    ("二丈", 200_000),
    ("3丈1尺", 310_000),
    ("3 jō 1 shaku", 310_000),
    ("3 jou 1 shaku", 310_000),
    ("3 Jô", 300_000),
    ("5厘", 50),
    ("5 rin", 50),
    ("0分", 0),
    ("壱尺弐寸参分", 12_300),
];

#[test]
fn texts_in_shaku_are_read_in_the_shaku_that_is_meant() {
    for &(text, mo) in SHAKU_TEXTS {
        for (shaku, unit, units_per_mo) in [
            (Shaku::Kujira, Unit::KujiraShaku, 25),
            (Shaku::Kane, Unit::KaneShaku, 20),
        ] {
            let written = parse_length(text, shaku).unwrap_or_else(|e| panic!("{text}: {e}"));
            assert_eq!(
                written.length.units(),
                mo * units_per_mo,
                "{text} against {mo} mo"
            );
            assert_eq!(written.unit, unit, "{text}");
        }
    }
}

#[test]
fn a_named_shaku_overrides_the_one_that_was_meant() {
    let kujira = (Length::from_kujira_bu(420), Unit::KujiraShaku);
    let kane = (Length::from_kane_bu(420), Unit::KaneShaku);
    for (text, (length, unit)) in [
        ("鯨尺4尺2寸", kujira),
        ("鯨尺 四尺二寸", kujira),
        ("鯨4尺2寸", kujira),
        ("くじら4尺2寸", kujira),
        ("4尺2寸（鯨尺）", kujira),
        ("(鯨尺) 4尺2寸", kujira),
        ("4尺2寸 鯨尺", kujira),
        ("4.2鯨尺", kujira),
        ("kujira 4 shaku 2 sun", kujira),
        ("Kujira-shaku 4 shaku 2 sun", kujira),
        ("kujira shaku 4 shaku 2 sun", kujira),
        ("kujirajaku 4 shaku 2 sun", kujira),
        ("4.2 kujira-shaku", kujira),
        ("4.2 kujira shaku", kujira),
        ("4 shaku 2 sun (kujira)", kujira),
        ("曲尺4尺2寸", kane),
        ("矩尺4尺2寸", kane),
        ("かね尺4尺2寸", kane),
        ("kane 4 shaku 2 sun", kane),
        ("kane-jaku 4 shaku 2 sun", kane),
        ("4.2 kane shaku", kane),
    ] {
        for meant in [Shaku::Kujira, Shaku::Kane] {
            let written = parse_length(text, meant).unwrap_or_else(|e| panic!("{text}: {e}"));
            assert_eq!((written.length, written.unit), (length, unit), "{text}");
        }
    }
}

#[test]
fn what_is_no_length_is_refused_with_its_reason() {
    for (text, code) in [
        ("", "empty"),
        (" \u{3000}\t\n", "empty"),
        ("\u{feff}", "empty"),
        ("nan", "not_a_number"),
        ("NaN cm", "not_a_number"),
        ("inf", "not_a_number"),
        ("-inf", "not_a_number"),
        ("∞", "not_a_number"),
        ("hello", "not_a_number"),
        ("約161", "not_a_number"),
        ("~161", "not_a_number"),
        ("161-165", "not_a_number"),
        ("160 161", "not_a_number"),
        ("1 610 mm", "not_a_number"),
        ("1.2.3", "not_a_number"),
        ("--161", "not_a_number"),
        ("16²", "not_a_number"),
        ("①", "not_a_number"),
        ("1/0 in", "not_a_number"),
        ("3/ in", "not_a_number"),
        ("1.5/2 in", "not_a_number"),
        ("5 9/8 in", "not_a_number"),
        ("5.5 1/2 in", "not_a_number"),
        ("12345/2 in", "not_a_number"), // four digits at most above and below the line
        ("十百", "not_a_number"),
        ("4二尺", "not_a_number"),
        ("4半", "not_a_number"),
        ("半", "not_a_number"),
        ("半半寸", "not_a_number"),
        ("5分半半", "not_a_number"),
        ("4尺（鯨尺）半", "not_a_number"),
        ("5.5分半", "not_a_number"),
        ("鯨尺", "not_a_number"),
        ("kujira shaku", "not_a_number"),
        ("(161)", "not_a_number"),
        ("161(", "not_a_number"),
        ("()", "not_a_number"),
        ("161,", "not_a_number"),
        ("161;", "not_a_number"),
        ("<script>", "not_a_number"),
        ("٤", "not_a_number"), // digits of other scripts are not guessed at
        ("1,610", "ambiguous_comma"),
        ("1,234.5", "ambiguous_comma"),
        ("1,610 mm", "ambiguous_comma"),
        ("4尺2", "missing_unit"),
        ("1m61", "missing_unit"),
        ("4尺2 kane", "missing_unit"),
        ("kujira 4.25", "missing_unit"),
        ("cm", "missing_number"),
        ("4尺寸", "missing_number"),
        ("shaku", "missing_number"),
        ("しゃく4", "missing_number"),
        ("161 ells", "unknown_unit"),
        ("161 km", "unknown_unit"),
        ("161 kg", "unknown_unit"),
        ("1e3", "unknown_unit"),
        ("0x10", "unknown_unit"),
        ("161歩", "unknown_unit"),
        ("161 cmです", "unknown_unit"),
        ("4尺 3 cm", "mixed_units"),
        ("161 cm 4尺", "mixed_units"),
        ("161.0 cm (4尺2寸5分)", "mixed_units"),
        ("5 ft 3 cm", "mixed_units"),
        ("1 m 3 in", "mixed_units"),
        ("鯨尺 161 cm", "mixed_units"),
        ("鯨尺4尺 曲尺2寸", "mixed_units"),
        ("4尺2尺", "repeated_unit"),
        ("161 cm 5 cm", "repeated_unit"),
        ("2寸4尺", "out_of_order"),
        ("3 in 5 ft", "out_of_order"),
        ("4尺2寸4尺", "out_of_order"),
        ("4尺12寸", "subunit_too_large"),
        ("4尺10寸", "subunit_too_large"),
        ("4尺100分", "subunit_too_large"),
        ("5 ft 12 in", "subunit_too_large"),
        ("5'13\"", "subunit_too_large"),
        ("1 m 161 cm", "subunit_too_large"),
        ("4.5尺2寸", "fraction_not_last"),
        ("4½ ft 3 in", "fraction_not_last"),
        ("10001", "too_large"),
        ("10000.0001", "too_large"),
        ("101 m", "too_large"),
        ("1234567890", "too_large"),
        ("99999999999999999999999999 cm", "too_large"),
        ("千丈", "too_large"),
        ("-1", "negative"),
        ("-4尺", "negative"),
        ("ー161", "negative"),
    ] {
        let error = match parse_length(text, Shaku::Kujira) {
            Ok(written) => panic!("{text:?} was read as {written}, expected {code}"),
            Err(error) => error,
        };
        assert_eq!(error.code(), code, "{text:?}: {error}");
        let message = error.to_string();
        for (name, value) in error.details() {
            assert!(
                message.contains(&value),
                "{text:?}: {name} {value} not in: {message}"
            );
        }
    }
}

#[test]
fn the_longest_length_is_a_hundred_metres() {
    assert_eq!(
        parse_length("100 m", Shaku::Kane).unwrap().length,
        Length::from_mm(100_000)
    );
    assert_eq!(
        parse_length("10000", Shaku::Kane).unwrap().length,
        Length::from_mm(100_000)
    );
}

#[test]
fn a_minus_is_read_only_where_it_is_asked_for() {
    for minus in ["-", "−", "－", "–", "ー", "‐"] {
        let text = format!("{minus}0.5寸");
        let read = parse_signed_length(&text, Shaku::Kujira).map(|written| written.length);
        assert_eq!(read, Ok(Length::from_kujira_bu(-5)), "{text}");
        assert_eq!(
            parse_length(&text, Shaku::Kujira).unwrap_err().code(),
            "negative",
            "{text}"
        );
    }
    let zero = parse_length("-0", Shaku::Kujira).map(|written| written.length);
    assert_eq!(zero, Ok(Length::ZERO));
}

#[test]
fn decimals_are_rationals_and_round_once_halves_to_even() {
    for (text, units) in [
        // 1/6600 cm is 0.000151515...: just under half of it, just over it.
        ("0.000075757575757575757575757575757575757575", 0),
        ("0.000075757575757575757575757575757575757576", 1),
        // 0.0005 mm is 0.33 of a unit, 0.00125 mm is 0.825 of one.
        ("0.0005 mm", 0),
        ("0.00125 mm", 1),
        // Exact halves: 0.0625 cm = 412.5 units, 0.1875 cm = 1237.5 units, half to the even one.
        ("0.0625", 412),
        ("0.1875", 1238),
        ("0.06250000000000000000000000000000000000001", 413),
        ("0.06249999999999999999999999999999999999999", 412),
        ("1/16 cm", 412),
        ("3/16 cm", 1238),
        // Parts are summed before rounding: 1 m and 412.5 units.
        ("1 m 0.0625 cm", 660_412),
        ("1/3 shaku", 83_333), // 250000/3 = 83333.3
        ("2/3 shaku", 166_667),
        ("161.55", 1_066_230),
    ] {
        let written = parse_length(text, Shaku::Kujira).unwrap_or_else(|e| panic!("{text}: {e}"));
        assert_eq!(
            written.length.units(),
            units,
            "{text} against {units} units"
        );
    }
    // Where doubles are off, the text is not: 0.1 + 0.2 parts of a shaku.
    assert_eq!(
        parse_length("0.3尺", Shaku::Kujira).unwrap().length,
        Length::from_kujira_bu(30)
    );
    assert_eq!(
        parse_length("161.55", Shaku::Kujira).unwrap().length,
        Length::from_mm(16_155 / 10) + Length::from_units(330)
    );
}

#[test]
fn ten_megabytes_of_anything_are_refused_by_their_length_alone() {
    for garbage in ["9", "尺", " ", "\u{0}", "é", "1 "] {
        let text = garbage.repeat(10_000_000 / garbage.len());
        let start = std::time::Instant::now();
        let error = parse_length(&text, Shaku::Kujira).unwrap_err();
        let took = start.elapsed();
        assert_eq!(error.code(), "too_long", "{garbage:?}");
        // Quoting trims at most one pass of blanks over the text.
        assert!(took.as_millis() < 500, "{garbage:?} took {took:?}");
        let message = error.to_string();
        assert!(
            message.chars().count() < 200,
            "{} characters: {message}",
            message.chars().count()
        );
    }
    let fits = format!("{}161", " ".repeat(MAX_TEXT_BYTES - 3));
    assert_eq!(
        parse_length(&fits, Shaku::Kujira).unwrap().length,
        Length::from_mm(1610)
    );
    let over = format!(" {fits}");
    assert_eq!(
        parse_length(&over, Shaku::Kujira).unwrap_err().code(),
        "too_long"
    );
}
