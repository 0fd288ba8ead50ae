//! Counts, over many scenes, how often each mark is to be seen: from which side, of how many.
//! `cargo run -p sunbu-render --example tally -- SCENES`.

use std::collections::BTreeMap;
use std::time::Instant;

use sunbu_core::photo::{Mark, View};
use sunbu_render::Scene;

fn main() {
    let scenes: u64 = std::env::args()
        .nth(1)
        .and_then(|a| a.parse().ok())
        .unwrap_or(50);
    let start = Instant::now();
    for &view in View::ALL {
        let mut counts: BTreeMap<Mark, u64> = BTreeMap::new();
        for seed in 0..scenes {
            for (mark, seen) in Scene::random_from(seed, view).truth() {
                *counts.entry(mark).or_default() += u64::from(seen.visible);
            }
        }
        println!("{}:", view.key());
        for (mark, count) in counts {
            println!("  {} {count} of {scenes}", mark.key());
        }
    }
    println!("all in {:?}", start.elapsed());
}
