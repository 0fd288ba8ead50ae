//! The planner against a search that knows no derivatives.

mod support {
    pub mod cases;
}

use sunbu_core::body::Sex;
use sunbu_core::dressing::{Decision, Dressing, Fitting, Rules, objective, solve};
use support::cases::{People, Random, case};

const CASES: u64 = 1000;

/// Decisions in which the model is least linear or the wishes compete most: the grid runs over
/// these, the local search over all.
const GRID: [Decision; 5] = [
    Decision::HemHeight,
    Decision::UwamaeRaise,
    Decision::BackSeamHip,
    Decision::NapeDrop,
    Decision::ObiLowerEdge,
];
const LEVELS: usize = 4;

/// The best of a dense grid and of random points: the grid's four best, and four points drawn
/// evenly over the limits of all decisions, each improved by a compass search.
fn searched(fitting: &Fitting, rules: &Rules, random: &mut Random) -> f64 {
    let level = |d: Decision, i: usize| {
        let way = rules.way(d);
        way.low + (way.high - way.low) * (i as f64 + 0.5) / LEVELS as f64
    };
    let mut grid: Vec<(f64, Dressing)> = (0..LEVELS.pow(5))
        .map(|cell| {
            let mut at = rules.usual();
            let mut rest = cell;
            for d in GRID {
                at = at.with(d, level(d, rest % LEVELS));
                rest /= LEVELS;
            }
            (objective(fitting, rules, &at), at)
        })
        .collect();
    grid.push((objective(fitting, rules, &rules.usual()), rules.usual()));
    grid.sort_by(|a, b| a.0.total_cmp(&b.0));
    grid.truncate(4);
    let anywhere =
        (0..4).map(|_| Dressing::from_fn(|d| random.between(rules.way(d).low, rules.way(d).high)));
    let starts: Vec<Dressing> = grid.into_iter().map(|(_, at)| at).chain(anywhere).collect();
    starts
        .into_iter()
        .map(|at| compass(fitting, rules, at))
        .fold(f64::INFINITY, f64::min)
}

/// Steps along every decision and along every pair that has just moved together, halved until
/// they are a fiftieth of a millimetre.
fn compass(fitting: &Fitting, rules: &Rules, mut at: Dressing) -> f64 {
    let mut best = objective(fitting, rules, &at);
    let mut step = 4.0;
    while step > 0.002 {
        let before = at;
        for &d in Decision::ALL {
            for sign in [1.0, -1.0] {
                let way = rules.way(d);
                let next = at.with(d, (at.get(d) + sign * step).clamp(way.low, way.high));
                let value = objective(fitting, rules, &next);
                if value < best {
                    (at, best) = (next, value);
                    break;
                }
            }
        }
        // The pattern move of Hooke and Jeeves (1961): once more the way just gone.
        let further = Dressing::from_fn(|d| {
            let way = rules.way(d);
            (2.0 * at.get(d) - before.get(d)).clamp(way.low, way.high)
        });
        let value = objective(fitting, rules, &further);
        if value < best {
            (at, best) = (further, value);
        }
        if at == before {
            step *= 0.5;
        }
    }
    best
}

#[test]
fn the_planner_is_never_worse_than_a_dense_grid_with_local_search() {
    let run = |seeds: std::ops::Range<u64>| {
        let people = People::of(Sex::Women);
        seeds
            .map(|seed| {
                let random = &mut Random::of(seed);
                let (body, garment, rules) = case(&people, random);
                let fitting = Fitting::new(&body, &garment);
                let planned = solve(&fitting, &rules);
                (
                    seed,
                    planned.objective,
                    searched(&fitting, &rules, random),
                    planned.steps,
                )
            })
            .collect::<Vec<_>>()
    };
    let results = std::thread::scope(|scope| {
        let half = scope.spawn(|| run(0..CASES / 2));
        let mut all = run(CASES / 2..CASES);
        all.extend(half.join().expect("the other half ran"));
        all
    });
    let worse = |by: f64| {
        results
            .iter()
            .filter(|(_, p, s, _)| *p > s * (1.0 + by))
            .count()
    };
    let steps = results.iter().map(|r| r.3).max().unwrap_or(0);
    let better = results.iter().filter(|(_, p, s, _)| *p < s * 0.99).count();
    println!("planner against grid with local search, {CASES} cases:");
    println!(
        "  worse by more than 1 %: {}; worse by more than 0.01 %: {}",
        worse(0.01),
        worse(1e-4)
    );
    println!("  better by more than 1 %: {better}; longest run: {steps} steps");
    for (seed, planned, searched, _) in results
        .iter()
        .filter(|(_, p, s, _)| *p > s * 1.0001)
        .take(10)
    {
        println!("  seed {seed}: planned {planned}, searched {searched}");
    }
    assert_eq!(results.len(), usize::try_from(CASES).unwrap());
    assert_eq!(
        worse(0.01),
        0,
        "cases in which the planner is worse by more than 1 %"
    );
}
