//! Drawings held to reference files, which are looked at when they change.
//!
//! `UPDATE_SNAPSHOTS=1 cargo test -p sunbu-draw --test snapshots` writes them anew; then look at
//! what changed. The drawings of the model chapter are references too: the book shows them.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use checked::Checked;
use sunbu_core::check::overlaid;
use sunbu_core::dressing::{Decision, Dressing, Locks, assess};
use sunbu_core::fault::{Fault, Ticks};
use sunbu_draw::{
    Feedback, Labels, Overlaid, Page, Scene, Style, View, explain, feedback, figure, overlay, sheet,
};
use sunbu_words::{Lang, Words};

use crate::bench::Bench;

#[allow(dead_code)]
mod bench;
#[allow(dead_code)]
#[path = "../../sunbu-core/tests/support/checked.rs"]
mod checked;

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
    let kept = kept.chain(overlays().into_iter().map(file(snapshots())));
    let sheets = [Lang::En, Lang::Ja].map(feedback_in);
    let kept = kept.chain(sheets.into_iter().map(file(snapshots())));
    kept.chain(book.into_iter().map(file(images()))).collect()
}

/// Photos with their lines: two deeds from the front, one from behind, and one as planned.
fn overlays() -> Vec<(&'static str, String)> {
    use sunbu_core::photo::View::{Back, Front};
    let woman = Checked::woman();
    let off = |changes: &[(Decision, f64)]| {
        let by =
            |dressing: Dressing, &(d, by): &(Decision, f64)| dressing.with(d, dressing.get(d) + by);
        changes.iter().fold(woman.planned, by)
    };
    let hem_and_obi = [(Decision::HemHeight, 4.0), (Decision::ObiLowerEdge, -3.0)];
    let back = [(Decision::NapeDrop, -3.0), (Decision::TareLength, 3.0)];
    let of = |view, changes: &[(Decision, f64)], lang| {
        let done = off(changes);
        let shots = [Front, Back].map(|side| woman.photo(&done, side));
        let report = woman.report(&shots, &Ticks::new());
        let shot = &shots[usize::from(view == Back)];
        let over = overlaid(&woman.subject(&woman.planned), shot, &report);
        overlay(&Overlaid {
            href: "photo.jpg",
            view,
            size: shot.size,
            overlay: &over.expect("it reads"),
            report: &report,
            words: Words::of(lang),
            title: "Aki",
            id: "overlay",
        })
    };
    vec![
        ("overlay-front-en", of(Front, &hem_and_obi, Lang::En)),
        ("overlay-back-ja", of(Back, &back, Lang::Ja)),
        ("overlay-as-planned-en", of(Front, &[], Lang::En)),
    ]
}

/// The sheet to hand over: two photos, two deeds, and what the eye saw.
fn feedback_in(lang: Lang) -> (&'static str, String) {
    use sunbu_core::photo::View::{Back, Front};
    let (woman, words) = (Checked::woman(), Words::of(lang));
    let done = [(Decision::HemHeight, 4.0), (Decision::ObiLowerEdge, -3.0)];
    let done = done.into_iter().fold(woman.planned, |dressing, (d, by)| {
        dressing.with(d, dressing.get(d) + by)
    });
    let shots = [Front, Back].map(|view| woman.photo(&done, view));
    let seen = Ticks::from([Fault::FoldWrinkled, Fault::ObiageUntidy]);
    let report = woman.report(&shots, &seen);
    let photos = shots.map(|shot| {
        let over = overlaid(&woman.subject(&woman.planned), &shot, &report);
        overlay(&Overlaid {
            href: "photo.jpg",
            view: shot.view,
            size: shot.size,
            overlay: &over.expect("it reads"),
            report: &report,
            words,
            title: "Aki",
            id: if shot.view == Front { "front" } else { "back" },
        })
    });
    let advised = words.advised(&report);
    let cautions = Words::cautions_of(&advised);
    let cautions: Vec<String> = cautions.into_iter().map(|c| words.caution(c)).collect();
    let drawn = feedback(&Feedback {
        title: &words.get("sheet-title"),
        about: "Aki · 2026-03-01",
        photos: &photos,
        first: None,
        good: &words.good_line(&report, &woman.rules),
        advised: &advised,
        more: words.more(&report).as_deref(),
        cautions: &cautions,
        words,
    });
    let name = match lang {
        Lang::En => "feedback-en",
        Lang::Ja => "feedback-ja",
    };
    (name, drawn)
}

/// Where each line of text stands, its size, and the text; of the sheet itself, not of its photos.
fn lines(svg: &str) -> Vec<(f64, f64, f64, String)> {
    let own = svg.rsplit("</svg>").nth(1).expect("the end of the sheet");
    let attribute = |tag: &str, name: &str| -> f64 {
        let (_, rest) = tag
            .split_once(&format!(" {name}=\""))
            .expect("an attribute");
        let text = rest.split('"').next().expect("its value");
        text.parse().expect("a number")
    };
    let texts = own.split("<text ").skip(1);
    texts
        .map(|tag| {
            let (head, rest) = tag.split_once('>').expect("a tag");
            let head = format!(" {head}");
            let text = rest.split('<').next().expect("its text").to_owned();
            let at = |name| attribute(&head, name);
            (at("x"), at("y"), at("font-size"), text)
        })
        .collect()
}

#[test]
fn lines_of_the_sheet_to_hand_over_keep_within_it_and_apart() {
    for lang in [Lang::En, Lang::Ja] {
        let (name, svg) = feedback_in(lang);
        let lines = lines(&svg);
        assert!(lines.len() > 15, "{name}: {} lines", lines.len());
        // A kanji or kana is as wide as its size (they are square); no other letter is wider.
        for (x, _, size, text) in &lines {
            let square = text.chars().filter(|c| *c as u32 > 0x2e7f).count();
            let right = x + size * square as f64;
            assert!(
                right <= 2100.0 - 110.0 + 1.0,
                "{name}: “{text}” ends at {right}"
            );
            assert!(
                !text.starts_with(['、', '。', '）', '」']),
                "{name}: {text}"
            );
        }
        let mut own = lines
            .iter()
            .filter(|(_, _, _, text)| text.chars().count() > 1);
        let mut above = own.next().expect("a line");
        for line in own {
            let gap = line.1 - above.1;
            assert!(
                gap >= 1.2 * line.2.min(above.2),
                "{name}: {gap} above “{}”",
                line.3
            );
            above = line;
        }
    }
}

#[test]
fn what_is_wanted_is_told_from_what_is_seen_by_dashes_and_words() {
    let drawn = overlays();
    let (moved, same) = (&drawn[0].1, &drawn[2].1);
    let hem = |svg: &str, kind: &str| {
        let from = svg.find(&format!("data-part=\"hem-{kind}\""))?;
        let path = &svg[from..];
        // The casing comes first; the line itself lies on it.
        let own = path[1..].find(&format!("data-part=\"hem-{kind}\""))? + 1;
        let path = &path[own..];
        Some(path[..path.find("/>")?].to_owned())
    };
    let seen = hem(moved, "seen").expect("a hem");
    let wanted = hem(moved, "wanted").expect("a hem to reach");
    assert!(!seen.contains("dasharray") && wanted.contains("dasharray"));
    let words = Words::of(Lang::En);
    for id in ["overlay-seen", "overlay-wanted"] {
        assert!(moved.contains(&words.get(id)), "{id}");
    }
    assert!(moved.contains("hem 3 cm lower"), "{moved}");
    assert_eq!(hem(same, "wanted"), None, "nothing is to be moved");
    assert!(same.contains(&words.get("overlay-desc-same")));
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
