//! Draws figures of very different people into a folder, to be looked at:
//! `cargo run -p sunbu-draw --example gallery -- FOLDER`.

use std::path::PathBuf;

use sunbu_core::dressing::{Locks, assess};
use sunbu_draw::{Labels, Page, Style, View, figure, sheet};
use sunbu_words::Lang;

#[path = "../tests/bench/mod.rs"]
#[allow(dead_code)]
mod bench;

fn main() -> std::io::Result<()> {
    let folder = PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| "gallery".into()));
    std::fs::create_dir_all(&folder)?;
    for (name, bench) in bench::Bench::gallery() {
        for lang in [Lang::En, Lang::Ja] {
            for (turn, page) in [("a4", Page::Landscape), ("a4-tall", Page::Portrait)] {
                let file = format!("{name}-{turn}-{}.svg", lang.code());
                std::fs::write(folder.join(file), sheet(&bench.scene_in(lang), page))?;
            }
            for view in View::ALL {
                let svg = figure(&bench.scene_in(lang), view, Style::default());
                let file = format!("{name}-{}-{}.svg", view.key(), lang.code());
                println!("{file}: {} bytes", svg.len());
                std::fs::write(folder.join(file), svg)?;
            }
        }
    }
    let bench = bench::Bench::ordinary();
    let off = assess(&bench.fitting, &bench.rules, &Locks::new(), bench.off());
    for (name, labels) in [
        ("off", Labels::Full),
        ("numbers", Labels::Numbers),
        ("bare", Labels::Bare),
    ] {
        for view in View::ALL {
            let scene = sunbu_draw::Scene {
                shown: &off,
                wanted: Some(&bench.plan),
                ..bench.scene()
            };
            let svg = figure(
                &scene,
                view,
                Style {
                    labels,
                    ..Style::default()
                },
            );
            std::fs::write(folder.join(format!("{name}-{}.svg", view.key())), svg)?;
        }
    }
    Ok(())
}
