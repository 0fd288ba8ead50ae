//! A person of the renderer as the files that the program reads: case, photos, marks; and what
//! the program's schemas say of a document.
#![allow(dead_code)] // each test file uses its own part

use std::path::Path;

use serde_json::Value;
use sunbu_core::dressing::Decision;
use sunbu_core::photo::{MarksFile, Shot, View, share_of_film};
use sunbu_image::Picture;
use sunbu_render::{Scene, Told};

use super::program::sunbu;

/// The person of this number from one side, dressed as planned but for these changes.
pub fn dressed(seed: u64, view: View, off: &[(Decision, f64)]) -> Scene {
    Scene::random_from(seed, view).off(off)
}

/// Her case, with the planned dressing set by the dresser.
pub fn case(scene: &Scene) -> String {
    scene.case(["Mori Sayo", "Grey tsumugi"]).to_toml()
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
        focal_mm: shot
            .focal
            .map(|share| share / share_of_film(1.0, shot.size)),
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
