//! A person of the renderer in a studio, with a check of her begun, and her photo: what every mark
//! on it should be is known.
#![allow(dead_code)] // each test file uses its own part

use std::collections::BTreeMap;

use sunbu_core::body::{BodyMeasure as M, Sex};
use sunbu_core::case::{CaseFile, Person, Piece};
use sunbu_core::dressing::{Decision, Occasion};
use sunbu_core::garment::{Part, Sheet};
use sunbu_core::measure::{Length, Reading, Unit};
use sunbu_core::photo::View;
use sunbu_render::{Random, Real, Scene};
use sunbu_store::{NewCheck, Store};

/// What a dresser usually tapes.
const TAPED: [M; 8] = [
    M::Stature,
    M::BackNeckHeight,
    M::WaistHeight,
    M::HipBoneHeight,
    M::BustGirth,
    M::UnderBustGirth,
    M::WaistGirth,
    M::HipGirth,
];

/// The person of this number from one side, every decision done `off_cm` off the plan, to either
/// side of it.
pub fn dressed(seed: u64, view: View, off_cm: f64) -> Scene {
    let mut scene = Scene::random_from(seed, view);
    let random = &mut Random::of(seed ^ 0x7A95);
    let planned = scene.subject.planned;
    let done = Decision::ALL.iter().fold(planned, |done, &decision| {
        let off = off_cm * random.one_of(&[-1.0, 1.0]);
        done.with(decision, planned.get(decision) + off)
    });
    scene.real = Real::new(scene.real.body.clone(), scene.real.fitting.clone(), done);
    scene
}

/// Her photo as a JPEG.
pub fn photo(scene: &Scene, seed: u64) -> Vec<u8> {
    scene.render(seed).to_jpeg(90).expect("a JPEG")
}

/// A studio with her, her garment, and check 1 of her as she was to be dressed.
pub fn studio(scene: &Scene, now: &str) -> Store {
    let case = case(scene);
    let mut store = Store::in_memory().expect("a store in memory");
    let person = store.add_person(&case.person, now).expect("added");
    for piece in &case.garments {
        store.add_garment(piece, now).expect("added");
    }
    let check = NewCheck::Planned {
        person,
        plan: None,
        title: "After the rehearsal",
        case: &case,
    };
    assert_eq!(store.add_check(&check, now).expect("begun"), 1);
    store
}

/// Her case, with the planned dressing set by the dresser.
fn case(scene: &Scene) -> CaseFile {
    let reading = |cm: f64, sd: f64| Reading {
        length: Length::from_cm(cm).expect("a length"),
        unit: Unit::Centimetre,
        sd: Some(Length::from_cm(sd).expect("a deviation")),
    };
    let subject = &scene.subject;
    let measures = TAPED.map(|m| (m, reading(subject.body.value_cm(m), 0.5)));
    let garment = &subject.garment;
    let taped = Part::ALL.iter().copied();
    let taped = taped.filter(|&part| garment.completed_by(part).is_none());
    let parts: BTreeMap<Part, Reading> = taped
        .map(|part| (part, reading(garment.part(part).value_cm(), 0.3)))
        .collect();
    CaseFile {
        person: Person {
            name: "Mori Sayo".to_owned(),
            sex: Sex::Women,
            measures: measures.into(),
            note: String::new(),
        },
        garments: vec![Piece {
            name: "Grey tsumugi".to_owned(),
            sheet: Sheet {
                kind: garment.kind(),
                cloth: garment.cloth(),
                mitake_from: garment.mitake_from(),
                parts,
            },
            note: String::new(),
        }],
        occasion: Occasion::Indoors,
        locks: Decision::ALL
            .iter()
            .map(|&d| (d, subject.planned.get(d)))
            .collect(),
        dresser: None,
        standard: None,
    }
}
