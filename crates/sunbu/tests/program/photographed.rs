//! A person of the renderer as the files that the program reads: case, photos, marks; and what
//! the program's schemas say of a document.
#![allow(dead_code)] // each test file uses its own part

use std::collections::BTreeMap;
use std::path::Path;

use serde_json::Value;
use sunbu_core::body::{BodyMeasure as M, Sex};
use sunbu_core::case::{CaseFile, Person, Piece};
use sunbu_core::dressing::{Decision, Occasion};
use sunbu_core::garment::{Part, Sheet};
use sunbu_core::measure::{Length, Reading, Unit};
use sunbu_core::photo::{MarksFile, Shot, View};
use sunbu_image::Picture;
use sunbu_render::{Real, Scene, Told};

use super::program::sunbu;

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

/// The person of this number from one side, dressed as planned but for these changes.
pub fn dressed(seed: u64, view: View, off: &[(Decision, f64)]) -> Scene {
    let mut scene = Scene::random_from(seed, view);
    let planned = scene.subject.planned;
    let done = off.iter().fold(planned, |done, &(decision, by)| {
        done.with(decision, planned.get(decision) + by)
    });
    scene.real = Real::new(scene.real.body.clone(), scene.real.fitting.clone(), done);
    scene
}

/// Her case, with the planned dressing set by the dresser.
pub fn case(scene: &Scene) -> String {
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
    let case = CaseFile {
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
    };
    case.to_toml()
}

/// A photo of this size on which nothing is to be seen: what it shows is in its marks.
pub fn blank([width, height]: [u32; 2]) -> Vec<u8> {
    let pixels = vec![200; 3 * width as usize * height as usize];
    let picture = Picture::from_rgb([width, height], pixels).expect("a picture");
    picture.to_jpeg()
}

/// Her marks as a hand sets them, with the focal length that the photo's own data would say.
pub fn marks(scene: &Scene, seed: u64) -> MarksFile {
    let told = Told {
        focal: true,
        sheet: false,
    };
    let shot: Shot = scene.marked(told, seed);
    MarksFile {
        focal_mm: shot.focal.map(|share| 36.0 * share),
        ..MarksFile::of(&shot, shot.size)
    }
}

/// A file of a folder.
pub fn put(folder: &Path, name: &str, bytes: impl AsRef<[u8]>) -> String {
    let path = folder.join(name);
    std::fs::write(&path, bytes).expect("a file");
    path.to_str().expect("UTF-8").to_owned()
}

/// What the schema of this name has against a document.
pub fn complaints(document: &Value, name: &str) -> Vec<String> {
    let schema = sunbu(&["schema", name]).out;
    let schema: Value = serde_json::from_str(&schema).expect("a schema is JSON");
    let validator = jsonschema::validator_for(&schema).expect("a valid schema");
    validator
        .iter_errors(document)
        .map(|e| format!("{}: {e}", e.instance_path()))
        .collect()
}
