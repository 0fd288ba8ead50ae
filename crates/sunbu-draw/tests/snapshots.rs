//! Drawings held to reference files, which are looked at when they change.
//!
//! `UPDATE_SNAPSHOTS=1 cargo test -p sunbu-draw --test snapshots` writes them anew; then look at
//! what changed. The drawings of the model chapter are references too: the book shows them.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use sunbu_core::dressing::{Locks, assess};
use sunbu_draw::{Labels, Page, Scene, Style, View, explain, figure, sheet};
use sunbu_words::Lang;

use crate::bench::Bench;

#[allow(dead_code)]
mod bench;

fn snapshots() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/snapshots")
}

fn images() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/img")
}

/// Every drawing with the file that holds it.
fn drawings() -> Vec<(PathBuf, String)> {
    let bench = Bench::ordinary();
    let scene = bench.scene();
    let off = assess(&bench.fitting, &bench.rules, &Locks::new(), bench.off());
    let compared = Scene {
        shown: &off,
        wanted: Some(&bench.plan),
        ..scene
    };
    let numbers = Style {
        labels: Labels::Numbers,
        ..Style::default()
    };
    let bare = Style {
        labels: Labels::Bare,
        ..Style::default()
    };
    let kept = [
        ("front-en", figure(&scene, View::Front, Style::default())),
        (
            "back-ja",
            figure(&bench.scene_in(Lang::Ja), View::Back, Style::default()),
        ),
        (
            "front-compared-en",
            figure(&compared, View::Front, Style::default()),
        ),
        (
            "back-compared-numbers-en",
            figure(&compared, View::Back, numbers),
        ),
        ("front-bare-en", figure(&scene, View::Front, bare)),
        (
            "sheet-landscape-ja",
            sheet(&bench.scene_in(Lang::Ja), Page::Landscape),
        ),
        ("sheet-portrait-en", sheet(&compared, Page::Portrait)),
    ];
    let book = [
        ("wrap", explain::wrap(&scene)),
        ("balances", explain::balances(&scene)),
        ("collar", explain::collar(&scene)),
        ("viewer", explain::viewer(&scene)),
    ];
    let file = |folder: PathBuf| {
        move |(name, svg): (&str, String)| (folder.join(format!("{name}.svg")), svg)
    };
    let kept = kept.into_iter().map(file(snapshots()));
    kept.chain(book.into_iter().map(file(images()))).collect()
}

#[test]
fn every_drawing_is_the_one_that_was_looked_at() {
    let update = std::env::var_os("UPDATE_SNAPSHOTS").is_some();
    let mut differ = Vec::new();
    for (file, svg) in drawings() {
        if update {
            fs::create_dir_all(file.parent().expect("a folder")).expect("a folder to write to");
            fs::write(&file, &svg).expect("a snapshot is written");
        } else if fs::read_to_string(&file).ok().as_deref() != Some(&svg) {
            differ.push(file.display().to_string());
        }
    }
    assert!(
        differ.is_empty(),
        "these drawings differ from their files; UPDATE_SNAPSHOTS=1 writes them anew, then look at \
         each:\n{}",
        differ.join("\n")
    );
}

#[test]
fn every_snapshot_belongs_to_a_drawing() {
    let drawn: BTreeSet<PathBuf> = drawings().into_iter().map(|(file, _)| file).collect();
    for entry in fs::read_dir(snapshots()).expect("the snapshots") {
        let path = entry.expect("an entry").path();
        assert!(
            drawn.contains(&path),
            "{} belongs to no drawing",
            path.display()
        );
    }
}
