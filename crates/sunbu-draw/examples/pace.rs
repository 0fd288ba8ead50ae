//! How long a figure takes, with prediction and without: what a slider waits for.
//! `cargo run --release -p sunbu-draw --example pace`.

use std::hint::black_box;
use std::time::Instant;

use sunbu_core::dressing::{Decision, Locks, assess};
use sunbu_draw::{Page, Style, View, figure, sheet};

#[path = "../tests/bench/mod.rs"]
#[allow(dead_code)]
mod bench;

fn main() {
    let bench = bench::Bench::ordinary();
    let scene = bench.scene();
    let time = |name: &str, run: &dyn Fn() -> String| {
        let mut micros: Vec<f64> = (0..200)
            .map(|_| {
                let start = Instant::now();
                black_box(run());
                start.elapsed().as_secs_f64() * 1e6
            })
            .collect();
        micros.sort_by(f64::total_cmp);
        let (median, worst) = (micros[100], micros[197]);
        let bytes = run().len();
        println!("{name}: median {median:.0} µs, 99 in 100 below {worst:.0} µs, {bytes} bytes");
    };
    time("front", &|| figure(&scene, View::Front, Style::default()));
    time("back", &|| figure(&scene, View::Back, Style::default()));
    time("sheet", &|| sheet(&scene, Page::Landscape));
    time("assess and front", &|| {
        let dressing = bench.plan.dressing.with(Decision::HemHeight, 3.0);
        let shown = assess(&bench.fitting, &bench.rules, &Locks::new(), dressing);
        figure(
            &sunbu_draw::Scene {
                shown: &shown,
                ..scene
            },
            View::Front,
            Style::default(),
        )
    });
}
