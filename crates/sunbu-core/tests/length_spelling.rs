//! Every spelling of a unit, and of the name of a shaku, means the same unit.

use sunbu_core::measure::{Length, Shaku, parse_length};

#[test]
fn every_spelling_of_a_unit_is_the_same_unit() {
    let cm = Length::from_mm(10);
    let kujira_mo = Length::from_units(25);
    let groups: [(&[&str], Length); 11] = [
        (
            &["m", "metre", "metres", "meter", "meters", "メートル", "㍍"],
            cm * 100,
        ),
        (
            &[
                "cm",
                "cms",
                "centimetre",
                "centimetres",
                "centimeter",
                "centimeters",
                "senchi",
                "㎝",
                "センチ",
                "センチメートル",
                "㌢",
            ],
            cm,
        ),
        (
            &[
                "mm",
                "millimetre",
                "millimetres",
                "millimeter",
                "millimeters",
                "miri",
                "㎜",
                "ミリ",
                "ミリメートル",
                "㍉",
            ],
            Length::from_mm(1),
        ),
        (
            &["ft", "foot", "feet", "フィート", "㌳", "'", "‘", "’", "′"],
            Length::from_inches(12),
        ),
        (
            &[
                "in",
                "ins",
                "inch",
                "inches",
                "インチ",
                "㌅",
                "\"",
                "“",
                "”",
                "″",
                "''",
                "’’",
                "′′",
            ],
            Length::from_inches(1),
        ),
        (
            &[
                "丈",
                "じょう",
                "jo",
                "jou",
                "joo",
                "jō",
                "jô",
                "jyo",
                "jyou",
                "zyo",
                "zyou",
            ],
            kujira_mo * 100_000,
        ),
        (
            &["尺", "しゃく", "じゃく", "shaku", "syaku", "jaku"],
            kujira_mo * 10_000,
        ),
        (&["寸", "すん", "sun", "zun"], kujira_mo * 1000),
        (&["分", "ぶ", "bu"], kujira_mo * 100),
        (&["厘", "釐", "りん", "rin"], kujira_mo * 10),
        (&["毛", "もう", "mo", "mou", "moo", "mō"], kujira_mo),
    ];
    for (spellings, one) in groups {
        for spelling in spellings {
            for text in [format!("3{spelling}"), format!("3 {spelling}")] {
                let read = parse_length(&text, Shaku::Kujira).map(|written| written.length);
                assert_eq!(read, Ok(one * 3), "{text}");
            }
        }
    }
}

#[test]
fn every_spelling_of_a_shakus_name_is_the_same_shaku() {
    let kujira = [
        "鯨尺",
        "鯨",
        "くじら尺",
        "クジラ尺",
        "くじら",
        "クジラ",
        "くじらじゃく",
        "クジラジャク",
        "kujira",
        "kujira-shaku",
        "kujira shaku",
        "kujirashaku",
        "kujirajaku",
        "kujirasyaku",
        "kujirazyaku",
    ];
    let kane = [
        "曲尺",
        "矩尺",
        "曲",
        "かね尺",
        "カネ尺",
        "かね",
        "カネ",
        "かねじゃく",
        "カネジャク",
        "kane",
        "kane-shaku",
        "kane shaku",
        "kaneshaku",
        "kanejaku",
        "kanesyaku",
        "kanezyaku",
    ];
    for (names, length) in [
        (&kujira[..], Length::from_kujira_bu(30)),
        (&kane[..], Length::from_kane_bu(30)),
    ] {
        for name in names {
            for text in [format!("{name} 3寸"), format!("3 sun ({name})")] {
                for meant in [Shaku::Kujira, Shaku::Kane] {
                    let read = parse_length(&text, meant).map(|written| written.length);
                    assert_eq!(read, Ok(length), "{text}");
                }
            }
        }
    }
}
