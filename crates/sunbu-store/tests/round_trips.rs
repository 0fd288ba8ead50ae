//! Whatever the core lets in comes out of the store the same.

#![allow(clippy::unwrap_used, missing_docs, dead_code)]

mod studio;

use std::collections::BTreeMap;

use proptest::prelude::*;
use studio::NOW;
use sunbu_core::body::{BodyMeasure, Sex};
use sunbu_core::case::Person;
use sunbu_core::measure::{Length, Reading, Unit};
use sunbu_store::{Store, StoreError};

/// A length to the last 1/6600 cm, in any unit, with or without a deviation.
fn reading(measure: BodyMeasure) -> impl Strategy<Value = (BodyMeasure, Reading)> {
    let units = |cm: f64| Length::from_cm(cm).unwrap().units();
    let (low, high) = measure.range_cm();
    let length = (units(low)..=units(high)).prop_map(Length::from_units);
    let unit = proptest::sample::select(vec![Unit::Centimetre, Unit::KujiraShaku, Unit::KaneShaku]);
    let sd = proptest::option::of((0..=units(10.0)).prop_map(Length::from_units));
    (length, unit, sd).prop_map(move |(length, unit, sd)| (measure, Reading { length, unit, sd }))
}

fn person() -> impl Strategy<Value = Person> {
    let measures = proptest::sample::subsequence(BodyMeasure::ALL.to_vec(), 0..6).prop_flat_map(
        |mut measures| {
            measures.extend([BodyMeasure::Stature, BodyMeasure::HipGirth]);
            measures.into_iter().map(reading).collect::<Vec<_>>()
        },
    );
    let sex = proptest::sample::select(Sex::ALL);
    ("\\PC{1,80}", sex, measures, "(\\PC|\n){0,200}").prop_map(|(name, sex, measures, note)| {
        let (name, note) = (name.trim().to_owned(), note.trim_end().to_owned());
        Person {
            name,
            sex,
            measures: BTreeMap::from_iter(measures),
            note,
        }
    })
}

proptest! {
    #[test]
    fn a_person_is_kept_as_entered_or_refused_as_the_core_refuses(
        first in person(), second in person()
    ) {
        let mut store = Store::in_memory().unwrap();
        match store.add_person(&first, NOW) {
            Ok(id) => {
                prop_assert_eq!(&store.person(id).unwrap().value, &first);
                prop_assert!(first.check().is_ok());
                if second.check().is_ok() {
                    store.save_person(id, 1, &second, NOW).unwrap();
                    let kept = store.person(id).unwrap();
                    prop_assert_eq!((kept.revision, &kept.value), (2, &second));
                }
            }
            Err(StoreError::Unfit(problems)) => prop_assert_eq!(first.check(), Err(problems)),
            Err(other) => prop_assert!(false, "{}", other),
        }
    }
}
