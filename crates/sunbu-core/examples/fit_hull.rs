//! Fits the table of hulls to the reference bodies and writes `data/hull/women.toml`.
//!
//! `cargo run -p sunbu-core --example fit_hull`

use std::path::Path;

use sunbu_core::body::{HullTable, RATIO_NAMES, ReferenceBody};

#[path = "../tests/support/reference_bodies.rs"]
mod reference_bodies;

const SOURCE: &str = "17 reference bodies (women, synthetic), crates/sunbu-core/tests/data/bodies";

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let bodies: Vec<ReferenceBody> = reference_bodies::read()
        .into_iter()
        .map(|c| c.body)
        .collect();
    let table = HullTable::fit(&bodies, SOURCE)?;
    let head = format!(
        "# How hulls run between landmarks. Made by `cargo run -p sunbu-core --example fit_hull`; edit the fit, not this.\n\
         # Ratios, in this order: {}.\n",
        RATIO_NAMES.join(", ")
    );
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../data/hull/women.toml");
    std::fs::write(&path, head + &table.to_toml()?)?;
    println!("{} bodies fitted, {} written", bodies.len(), path.display());
    Ok(())
}
