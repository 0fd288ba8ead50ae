//! Laws of the length parser on texts nobody would write, and on ones somebody might.

#[path = "laws/length.rs"]
mod laws;

use proptest::prelude::*;
use sunbu_core::measure::{Shaku, parse_length};

/// Pieces that mean something to the parser, so that their mixtures reach deep into it.
const PIECES: &[&str] = &[
    "0",
    "1",
    "4",
    "12",
    "161",
    "9999",
    "100000",
    "1234567890",
    ".",
    ",",
    "・",
    ".5",
    "/",
    "⁄",
    "½",
    "半",
    "一",
    "二",
    "十",
    "百",
    "千",
    "〇",
    "-",
    "−",
    "ー",
    "+",
    " ",
    "\u{3000}",
    "(",
    ")",
    "（",
    "）",
    "cm",
    "mm",
    "m",
    "㎝",
    "センチ",
    "ミリ",
    "メートル",
    "ft",
    "in",
    "'",
    "\"",
    "′",
    "″",
    "''",
    "フィート",
    "丈",
    "尺",
    "寸",
    "分",
    "厘",
    "毛",
    "shaku",
    "sun",
    "bu",
    "rin",
    "jo",
    "jō",
    "mo",
    "鯨尺",
    "曲尺",
    "鯨",
    "曲",
    "kujira",
    "kane",
    "kujira-shaku",
    "しゃく",
    "くじら",
    "ells",
    "e3",
    "nan",
    "\u{0}",
    "\u{feff}",
    "\u{304}",
    "\u{3099}",
    "²",
    "①",
    "４",
    "ｃｍ",
    "ｾﾝﾁ",
    "約",
    "。",
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn laws_hold_for_arbitrary_texts(text in any::<String>()) {
        laws::check(&text);
    }

    #[test]
    fn laws_hold_for_arbitrary_bytes(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        laws::check(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn laws_hold_for_mixtures_of_what_the_parser_knows(
        pieces in prop::collection::vec(prop::sample::select(PIECES), 0..9),
    ) {
        laws::check(&pieces.concat());
    }
}

#[test]
fn texts_in_wrong_encodings_are_refused_and_not_misread() {
    // 4尺2寸5分 as Shift JIS and as UTF-16, letters of Latin-1, and a text with a NUL: each taken
    // for UTF-8 by a careless border.
    let utf_16: Vec<u8> = "4尺2寸5分"
        .encode_utf16()
        .flat_map(u16::to_le_bytes)
        .collect();
    let shift_jis = b"4\x8e\xda2\x90\xa15\x95\xaa".to_vec();
    for bytes in [
        shift_jis,
        utf_16,
        (0xA0..0xE0).collect(),
        b"161\0cm".to_vec(),
    ] {
        let text = String::from_utf8_lossy(&bytes);
        laws::check(&text);
        let error = parse_length(&text, Shaku::Kujira).unwrap_err();
        assert_eq!(error.code(), "not_a_number", "{text:?}: {error}");
    }
}
