//! A check with photos whose truth is known, put into a store before it is served: a person of the
//! renderer, dressed as planned but for what is told, marked as a hand marks.
#![allow(dead_code)] // each test program uses its own part

use std::collections::BTreeMap;

use sunbu_core::body::{BodyMeasure as M, Sex};
use sunbu_core::case::{CaseFile, Person, Piece, Stranger};
use sunbu_core::dressing::{Decision, Occasion};
use sunbu_core::fault::{Fault, Ticks};
use sunbu_core::garment::{Part, Sheet};
use sunbu_core::measure::{Length, Reading, Unit};
use sunbu_core::photo::{Marking, Shot, View};
use sunbu_render::{Random, Real, Scene, Told};
use sunbu_store::{NewCheck, NewPhoto, Store};

/// When everything was kept.
const NOW: &str = "2026-03-01T09:30:00+09:00";
/// Whom all photos show.
const SEED: u64 = 7;

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

/// The hem set 5 cm too high and the obi 4 cm too low.
pub const OFF: [(Decision, f64); 2] = [(Decision::HemHeight, 5.0), (Decision::ObiLowerEdge, -4.0)];

/// Her from one side, dressed as planned but for these changes.
pub fn scene(view: View, off: &[(Decision, f64)]) -> Scene {
    let mut scene = Scene::random_from(SEED, view);
    let planned = scene.subject.planned;
    let done = off.iter().fold(planned, |done, &(decision, by)| {
        done.with(decision, planned.get(decision) + by)
    });
    scene.real = Real::new(scene.real.body.clone(), scene.real.fitting.clone(), done);
    scene
}

/// The person of this number from one side, every decision done `off_cm` off the plan, to either
/// side of it.
pub fn everywhere_off(seed: u64, view: View, off_cm: f64) -> Scene {
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
pub fn jpeg(scene: &Scene, seed: u64) -> Vec<u8> {
    scene.render(seed).to_jpeg(90).expect("a JPEG")
}

/// A studio with her, her garment, and check 1 of her as she was to be dressed.
pub fn studio(scene: &Scene) -> Store {
    let case = case(scene, ["Mori Sayo", "Grey tsumugi"]);
    let mut store = Store::in_memory().expect("a store in memory");
    let person = store.add_person(&case.person, NOW).expect("added");
    for piece in &case.garments {
        store.add_garment(piece, NOW).expect("added");
    }
    let check = NewCheck::Planned {
        person,
        plan: None,
        title: "After the rehearsal",
        case: &case,
    };
    assert_eq!(store.add_check(&check, NOW).expect("begun"), 1);
    store
}

/// Her case, with the planned dressing set by the dresser.
pub fn case(scene: &Scene, names: [&str; 2]) -> CaseFile {
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
            name: names[0].to_owned(),
            sex: Sex::Women,
            measures: measures.into(),
            note: String::new(),
        },
        garments: vec![Piece {
            name: names[1].to_owned(),
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

/// The scene as a hand marks it.
pub fn shot(scene: &Scene) -> Shot {
    let told = Told {
        focal: true,
        sheet: false,
    };
    scene.marked(told, SEED)
}

/// A check of hers without photos; a person is added for it.
pub fn check(store: &mut Store, names: [&str; 2]) -> i64 {
    let case = case(&scene(View::Front, &OFF), names);
    let person = store.add_person(&case.person, NOW).expect("a person");
    let check = NewCheck::Planned {
        person,
        plan: None,
        title: &names.join(" · "),
        case: &case,
    };
    store.add_check(&check, NOW).expect("a check")
}

/// A check of a stranger without photos, named as she named herself.
pub fn stranger(store: &mut Store, name: &str) -> i64 {
    let fields = [("name", name), ("sex", "women")];
    let fields = fields.map(|(name, text)| (name.to_owned(), text.to_owned()));
    let stranger = Stranger::from_fields(&fields.into()).expect("a stranger");
    let check = NewCheck::Stranger {
        stranger: &stranger,
        occasion: Occasion::Indoors,
    };
    store.add_check(&check, NOW).expect("a check")
}

/// Puts a photo in, marked with these marks.
pub fn photo(store: &mut Store, check: i64, shot: &Shot, jpeg: &[u8]) -> i64 {
    let photo = bare_photo(store, check, shot, jpeg);
    let marking = Marking {
        shot: shot.clone(),
        moved: shot.marks.keys().copied().collect(),
        ..Marking::new(shot.view, shot.size, shot.focal)
    };
    let saved = store.save_marking((check, photo), 1, &marking);
    saved.expect("the marks");
    photo
}

/// Puts a photo in that nobody has marked.
pub fn bare_photo(store: &mut Store, check: i64, shot: &Shot, jpeg: &[u8]) -> i64 {
    let new = NewPhoto {
        check,
        instead_of: None,
        marking: &Marking::new(shot.view, shot.size, shot.focal),
        jpeg,
    };
    store.add_photo(&new, NOW).expect("a photo")
}

/// Ticks what the eye saw.
pub fn tick(store: &mut Store, check: i64, seen: &[Fault]) {
    let ticks: Ticks = seen.iter().copied().collect();
    let revision = store.check(check).expect("the check").ticks.revision;
    store.save_ticks(check, revision, &ticks).expect("ticks");
}
