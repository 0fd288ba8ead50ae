//! How many marks a hand must move until all stand where they should, on photos of dressings that
//! are off by about two centimetres everywhere: `cargo run -p sunbu-render --example taps -- FIRST
//! COUNT`.

use std::collections::BTreeMap;

use sunbu_core::dressing::Decision;
use sunbu_core::photo::edge::{snap, snap_corner};
use sunbu_core::photo::{Edge, Expected, Gray, Mark, Marking, Placed, Subject, Trust, View};
use sunbu_render::{Random, Real, Scene};

fn main() {
    let mut numbers = std::env::args()
        .skip(1)
        .map_while(|a| a.parse::<u64>().ok());
    let (first, count) = (numbers.next().unwrap_or(1), numbers.next().unwrap_or(1));
    let verbose = count == 1;
    for seed in first..first + count {
        let scene = off(seed, View::Front);
        run(&scene, seed, verbose);
    }
}

fn off(seed: u64, view: View) -> Scene {
    let mut scene = Scene::random_from(seed, view);
    let random = &mut Random::of(seed ^ 0x7A95);
    let planned = scene.subject.planned;
    let done = Decision::ALL.iter().fold(planned, |done, &d| {
        done.with(d, planned.get(d) + 2.0 * random.one_of(&[-1.0, 1.0]))
    });
    scene.real = Real::new(scene.real.body.clone(), scene.real.fitting.clone(), done);
    scene
}

fn gray(scene: &Scene, seed: u64) -> Gray {
    let image = scene.render(seed).image;
    let pixels = image.pixels().map(|p| {
        let [r, g, b] = p.0.map(u32::from);
        u8::try_from((299 * r + 587 * g + 114 * b + 500) / 1000).unwrap_or(255)
    });
    Gray::new(
        image.width() as usize,
        image.height() as usize,
        pixels.collect(),
    )
    .unwrap()
}

fn to_edge(gray: &Gray, at: [f64; 2], edge: Edge, reach: f64) -> Option<[f64; 2]> {
    match edge {
        Edge::Across(a) => snap(gray, at, Some(a), reach).map(|f| f.at),
        Edge::Corner => snap_corner(gray, at, reach).map(|f| f.at),
        Edge::Soft => None,
    }
}

fn run(scene: &Scene, seed: u64, verbose: bool) {
    let truth = scene.truth();
    let gray = gray(scene, seed);
    let subject = Subject {
        body: &scene.subject.body,
        fitting: &scene.subject.fitting,
        planned: &scene.subject.planned,
    };
    for (level, outline) in [(0.0, 0.0), (1.0, 1.0), (1.0, 3.0), (2.0, 3.0)] {
        let reach_cm = level;
        let share = scene.lens.focal_px / f64::from(scene.lens.size[1]);
        let mut m = Marking::new(
            View::Front,
            scene.lens.size,
            Some((36.0 * share).round() / 36.0),
        );
        let set = |m: &mut Marking, mark: Mark, at| {
            m.shot.marks.insert(
                mark,
                Placed {
                    at,
                    trust: Trust::Sure,
                },
            );
        };
        set(&mut m, Mark::Floor, truth[&Mark::Floor].pixel);
        set(&mut m, Mark::Crown, truth[&Mark::Crown].pixel);
        let tall = truth[&Mark::Floor].pixel[1] - truth[&Mark::Crown].pixel[1];
        let px_cm = tall / 160.0;
        let follow = |m: &mut Marking| -> BTreeMap<Mark, Expected> {
            m.follow(&subject, |at, e| {
                let reach = match e {
                    Edge::Across([x, y]) if x.abs() > y.abs() => outline,
                    _ => level,
                };
                (reach > 0.0)
                    .then(|| to_edge(&gray, at, e, reach * px_cm))
                    .flatten()
            })
            .unwrap_or_else(|e| panic!("{e:?}"))
        };
        let mut expected = follow(&mut m);
        let tol = 8.0 * tall / 1500.0;
        let mut drags = 0;
        let mut gone = 0;
        let mut list: Vec<String> = vec![];
        let report = |m: &Marking, expected: &BTreeMap<Mark, Expected>| {
            for (mark, p) in &m.shot.marks {
                let t = truth[mark];
                let (dx, dy) = (p.at[0] - t.pixel[0], p.at[1] - t.pixel[1]);
                let e = expected.get(mark);
                println!(
                    "  {:24} off {:6.1} ({dx:6.1} {dy:6.1}) vis {} exp {:?}",
                    mark.key(),
                    dx.hypot(dy),
                    t.visible,
                    e.map(|e| (
                        (e.at[0] - t.pixel[0]).round(),
                        (e.at[1] - t.pixel[1]).round()
                    ))
                );
            }
            for (mark, t) in &truth {
                if t.visible && !m.shot.marks.contains_key(mark) {
                    println!("  {:24} MISSING", mark.key());
                }
            }
        };
        let off = |m: &Marking, expected: &BTreeMap<Mark, Expected>, k: Mark, p: [f64; 2]| {
            let t = truth[&k].pixel;
            let _ = m;
            match expected.get(&k).map(|e| e.edge) {
                Some(Edge::Across([x, y])) => ((p[0] - t[0]) * x + (p[1] - t[1]) * y).abs(),
                _ => dist(p, t),
            }
        };
        let within0 = m
            .shot
            .marks
            .iter()
            .filter(|(k, p)| truth[k].visible && off(&m, &expected, **k, p.at) <= tol)
            .count();
        if verbose {
            println!("reach {reach_cm}: tall {tall}");
            report(&m, &expected);
        }
        loop {
            // Top to bottom of the list: the first that is further off.
            let next = Mark::ALL
                .iter()
                .copied()
                .filter_map(|k| {
                    let p = m.shot.marks.get(&k)?;
                    let t = truth[&k];
                    {
                        let d = off(&m, &expected, k, p.at);
                        (t.visible && d > tol).then_some((k, d))
                    }
                })
                .max_by(|a, b| a.1.total_cmp(&b.1));
            let Some((k, d)) = next else { break };
            if m.moved.contains(&k) {
                break;
            }
            list.push(format!("{}:{d:.0}", k.key()));
            set(&mut m, k, truth[&k].pixel);
            m.moved.insert(k);
            expected = follow(&mut m);
            drags += 1;
            if drags > 40 {
                break;
            }
        }
        let hidden: Vec<&str> = m
            .shot
            .marks
            .keys()
            .filter(|k| !truth[k].visible && **k != Mark::Floor && **k != Mark::Crown)
            .map(|k| k.key())
            .collect();
        gone += hidden.len();
        let missing: Vec<&str> = truth
            .iter()
            .filter(|(k, t)| t.visible && !m.shot.marks.contains_key(k))
            .map(|(k, _)| k.key())
            .collect();
        println!(
            "seed {seed} reach {reach_cm} {outline}: TAPS {} {} marks, {within0} at once, drags {drags}, not in sight {gone} {hidden:?}, missing {missing:?}\n   {list:?}",
            4 + drags + gone,
            m.shot.marks.len()
        );
        if verbose {
            report(&m, &expected);
        }
    }
}

fn dist(a: [f64; 2], b: [f64; 2]) -> f64 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}
