//! Writes the drawings of the model chapter into a folder:
//! `cargo run -p sunbu-draw --example model_chapter -- docs/img`.

use std::path::PathBuf;

use sunbu_draw::explain;

#[path = "../tests/bench/mod.rs"]
#[allow(dead_code)]
mod bench;

fn main() -> std::io::Result<()> {
    let folder = PathBuf::from(std::env::args().nth(1).unwrap_or_else(|| "docs/img".into()));
    std::fs::create_dir_all(&folder)?;
    let bench = bench::Bench::ordinary();
    let scene = bench.scene();
    for (name, svg) in [
        ("wrap", explain::wrap(&scene)),
        ("balances", explain::balances(&scene)),
        ("collar", explain::collar(&scene)),
        ("viewer", explain::viewer(&scene)),
    ] {
        std::fs::write(folder.join(format!("{name}.svg")), svg)?;
    }
    Ok(())
}
