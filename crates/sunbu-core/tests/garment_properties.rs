//! What must hold for every garment sheet, whatever stands in it.

use std::collections::BTreeMap;

use proptest::prelude::*;
use sunbu_core::garment::{Cloth, Garment, Kind, MitakeFrom, Part, Sheet};
use sunbu_core::measure::{Entry, Length, Origin, Reading, Unit};

fn reading(length: Length) -> Reading {
    Reading {
        length,
        unit: Unit::Centimetre,
        sd: None,
    }
}

/// Any subset of the parts, each anywhere in its range, in whole millimetres.
fn any_parts() -> impl Strategy<Value = BTreeMap<Part, Reading>> {
    let one = |part: Part| {
        let (low, high) = part.range_cm();
        prop::option::weighted(0.4, low..=high)
            .prop_map(move |cm| Some((part, reading(Length::from_cm(cm?).ok()?))))
    };
    let all: Vec<_> = Part::ALL.iter().map(|part| one(*part)).collect();
    all.prop_map(|found| found.into_iter().flatten().collect())
}

fn any_sheet() -> impl Strategy<Value = Sheet> {
    (
        prop::sample::select(Kind::ALL),
        prop::sample::select(Cloth::ALL),
        prop::sample::select(MitakeFrom::ALL),
        any_parts(),
    )
        .prop_map(|(kind, cloth, mitake_from, parts)| Sheet {
            kind,
            cloth,
            mitake_from,
            parts,
        })
}

/// A sheet of the sort people bring: mitake and a back width in the ordinary range, and now and
/// then other parts near their published values.
fn plausible_sheet() -> impl Strategy<Value = Sheet> {
    let near = |part: Part, middle: f64, spread: f64| {
        prop::option::weighted(0.4, middle - spread..middle + spread)
            .prop_map(move |cm| Some((part, reading(Length::from_cm(cm?).ok()?))))
            .boxed()
    };
    let others = vec![
        near(Part::Yuki, 65.0, 6.0),
        near(Part::Katahaba, 32.0, 2.5),
        near(Part::Sodetake, 50.0, 8.0),
        near(Part::Sodetsuke, 22.0, 1.5),
        near(Part::Maehaba, 23.5, 3.0),
        near(Part::Okumihaba, 15.2, 0.6),
        near(Part::Erishita, 79.0, 5.0),
        near(Part::Kurikoshi, 2.6, 1.0),
    ];
    (
        prop::sample::select(Kind::ALL),
        prop::sample::select(MitakeFrom::ALL),
        140.0..180.0,
        25.0..36.0,
        others,
    )
        .prop_map(|(kind, mitake_from, mitake, back, others)| {
            let cm = |cm: f64| reading(Length::from_cm(cm).expect("within 100 m"));
            let mut parts: BTreeMap<_, _> = others.into_iter().flatten().collect();
            parts.insert(Part::Mitake, cm(mitake));
            parts.insert(Part::Ushirohaba, cm(back));
            Sheet {
                kind,
                cloth: Cloth::Soft,
                mitake_from,
                parts,
            }
        })
}

fn fields(sheet: &Sheet) -> Vec<(&'static str, Entry)> {
    let mut fields = vec![
        ("kind", Entry::plain(sheet.kind.key())),
        ("cloth", Entry::plain(sheet.cloth.key())),
        ("mitake_from", Entry::plain(sheet.mitake_from.key())),
    ];
    for (part, reading) in &sheet.parts {
        fields.push((part.key(), Entry::plain(reading.to_string())));
    }
    fields
}

fn values(garment: &Garment) -> Vec<(f64, f64)> {
    let part = |part: &Part| garment.part(*part);
    let all = Part::ALL.iter().map(part);
    all.chain([
        garment.mitake_back(),
        garment.mitake_shoulder(),
        garment.likely_hip(),
    ])
    .map(|value| (value.value_cm(), value.sd_cm()))
    .collect()
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 512,
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn a_sheet_gives_a_whole_garment_or_named_problems(sheet in any_sheet()) {
        match sheet.complete() {
            Ok(whole) => {
                for part in Part::ALL {
                    let (low, high) = part.range_cm();
                    let cm = whole.part(*part).value_cm();
                    prop_assert!((low..=high).contains(&cm), "{} {cm}", part.key());
                }
                whole.warnings();
            }
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                for problem in problems {
                    prop_assert!(Part::from_key(&problem.place).is_some(), "{problem}");
                    prop_assert!(!problem.to_string().contains('{'), "{problem}");
                }
            }
        }
    }

    #[test]
    fn any_text_in_any_field_is_read_or_refused_without_panic(
        names in prop::collection::vec("[a-z_]{0,12}|mitake|yuki|maehaba|kind|furi", 0..8),
        texts in prop::collection::vec(".{0,40}|[0-9.尺寸分 cm-]{1,12}", 8),
    ) {
        let fields = names.iter().zip(&texts);
        let read = Sheet::from_fields(
            fields.map(|(name, text)| (name.as_str(), Entry::plain(text.clone()))),
        );
        if let Err(problems) = read {
            prop_assert!(!problems.is_empty());
        }
    }

    #[test]
    fn taped_parts_always_win(sheet in plausible_sheet()) {
        if let Ok(whole) = sheet.complete() {
            for (part, reading) in &sheet.parts {
                let value = whole.part(*part);
                prop_assert_eq!(value.value_cm(), reading.length.cm(), "{}", part.key());
                prop_assert_eq!(value.origin(), Origin::Taped, "{}", part.key());
                prop_assert!(whole.completed_by(*part).is_none(), "{}", part.key());
            }
            prop_assert_eq!(whole.completed().count() + sheet.parts.len(), Part::COUNT);
        }
    }

    #[test]
    fn the_order_of_entry_does_not_matter(
        (sheet, shuffled) in plausible_sheet().prop_flat_map(|sheet| {
            let fields = fields(&sheet);
            (Just(sheet), Just(fields).prop_shuffle())
        })
    ) {
        let straight = Sheet::from_fields(fields(&sheet));
        let mixed = Sheet::from_fields(shuffled);
        match (straight, mixed) {
            (Ok(a), Ok(b)) => {
                prop_assert_eq!(&a, &b);
                prop_assert_eq!(a.complete(), b.complete());
            }
            (Err(a), Err(b)) => {
                let sorted = |problems: Vec<_>| {
                    let mut all: Vec<String> =
                        problems.iter().map(ToString::to_string).collect();
                    all.sort();
                    all
                };
                prop_assert_eq!(sorted(a), sorted(b));
            }
            (a, b) => prop_assert!(false, "{a:?} but shuffled {b:?}"),
        }
    }

    // 1 kujira-bu is 1.25 kane-bu, so a whole number of the one is written exactly in the other.
    #[test]
    fn units_do_not_matter(
        mitake_bu in 370_i64..480,
        back_bu in 66_i64..95,
        yuki_bu in 150_i64..190,
    ) {
        let sheet = |text: &dyn Fn(i64) -> String| {
            let fields = [
                ("kind", Entry::plain("nagagi")),
                ("mitake_from", Entry::plain("shoulder")),
                ("mitake", Entry::plain(text(mitake_bu))),
                ("ushirohaba", Entry::plain(text(back_bu))),
                ("yuki", Entry::plain(text(yuki_bu))),
            ];
            Sheet::from_fields(fields).and_then(|sheet| sheet.complete())
        };
        let kujira = sheet(&|bu| format!("{bu} bu"));
        let kanji = sheet(&|bu| format!("{}尺{}寸{}分", bu / 100, bu / 10 % 10, bu % 10));
        let kane = sheet(&|bu| format!("kane {} bu", bu as f64 * 1.25));
        prop_assert!(kujira.is_ok(), "{kujira:?}");
        prop_assert_eq!(&kujira, &kanji);
        prop_assert_eq!(&kujira, &kane);
    }

    // What was completed fits together: entered as if taped, it is accepted and stays.
    #[test]
    fn a_completed_garment_is_a_sheet_without_contradictions(sheet in plausible_sheet()) {
        if let Ok(whole) = sheet.complete() {
            let mut full = sheet.clone();
            for part in Part::ALL {
                let length = Length::from_cm(whole.part(*part).value_cm()).expect("in range");
                full.parts.entry(*part).or_insert(reading(length));
            }
            let again = full.complete();
            prop_assert!(again.is_ok(), "{again:?}");
            let pairs = values(&whole).into_iter().zip(values(&again.expect("just checked")));
            for ((before, _), (after, _)) in pairs {
                // Lengths are kept to 1/6600 cm; a hip is four times a width.
                prop_assert!((before - after).abs() < 4.0 / 6600.0, "{before} and {after}");
            }
        }
    }

    // A longer garment of the same kind is never completed shorter anywhere else along it.
    #[test]
    fn a_longer_garment_has_no_lower_collar_end(back in 100.0_f64..200.0, more in 0.1_f64..5.0) {
        let whole = |mitake: f64| {
            let fields = [
                ("kind", Entry::plain("nagagi")),
                ("mitake_from", Entry::plain("back_seam")),
                ("mitake", Entry::plain(format!("{mitake:.2}"))),
                ("maehaba", Entry::plain("23")),
            ];
            let sheet = Sheet::from_fields(fields).expect("plain figures");
            sheet.complete().expect("plain figures")
        };
        let (short, long) = (whole(back), whole(back + more));
        for part in [Part::Erishita, Part::Yuki, Part::Sodetsuke, Part::Okumisagari] {
            let (a, b) = (short.part(part).value_cm(), long.part(part).value_cm());
            prop_assert!(b >= a, "{}: {a} then {b}", part.key());
        }
    }
}
