//! The reduced reference bodies of `tests/data/bodies`, read for tests and examples.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use serde::Deserialize;
use sunbu_core::body::{BodyMeasure, ReferenceBody, Section};

/// A reference body with what only checks need.
pub struct Checked {
    /// As the fit takes it: side arcs to the middle of the outermost band.
    pub body: ReferenceBody,
    /// The same with side arcs to the outermost vertex; the fit has no use for it.
    #[allow(dead_code, reason = "not every test that shares this file compares it")]
    pub outermost: ReferenceBody,
}

#[derive(Deserialize)]
struct File {
    name: String,
    measures: BTreeMap<String, f64>,
    sections: Columns,
}

#[derive(Deserialize)]
struct Columns {
    z: Vec<f64>,
    girth: Vec<f64>,
    breadth: Vec<f64>,
    front: Vec<f64>,
    back: Vec<f64>,
    side_arc: Vec<f64>,
    side_arc_outermost: Vec<f64>,
}

/// Every reference body, by name.
pub fn read() -> Vec<Checked> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/bodies");
    let mut files: Vec<_> = fs::read_dir(&folder)
        .expect("the folder of reference bodies")
        .map(|entry| entry.expect("a folder entry").path())
        .filter(|path| path.extension().is_some_and(|e| e == "json"))
        .collect();
    files.sort();
    files.iter().map(|path| one(path)).collect()
}

fn one(path: &Path) -> Checked {
    let text = fs::read_to_string(path).expect("a readable body");
    let file: File = serde_json::from_str(&text).expect("a body of the reduced form");
    let measures: Vec<_> = file
        .measures
        .iter()
        .map(|(key, value)| (BodyMeasure::from_key(key).expect("a known measure"), *value))
        .collect();
    let c = &file.sections;
    let with = |side: &[f64]| ReferenceBody {
        name: file.name.clone(),
        measures: measures.clone(),
        sections: (0..c.z.len())
            .map(|i| {
                let section = Section {
                    girth: c.girth[i],
                    breadth: c.breadth[i],
                    front: c.front[i],
                    back: c.back[i],
                    side_arc: side[i],
                };
                (c.z[i], section)
            })
            .collect(),
    };
    Checked {
        body: with(&c.side_arc),
        outermost: with(&c.side_arc_outermost),
    }
}
