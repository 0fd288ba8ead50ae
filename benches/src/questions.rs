//! What the general solver is asked, as JSON: the hulls as fine tables, the cases with their limits,
//! starts and wishes, and random dressings at which both models are compared.

use std::collections::BTreeMap;

use serde::Serialize;
use sunbu_core::dressing::{Decision, Dressing, Fitting, Given, Rules};
use sunbu_core::garment::MitakeFrom;

use crate::cases::{Case, Demo, random_dressings};
use crate::reference::Ask;

/// Rows of the hull's table per centimetre of height. Straight lines between rows miss a curve by
/// an eighth of its second derivative times the square of their distance; that derivative was seen
/// to reach 4 per centimetre, which leaves two millionths of a centimetre.
const ROWS_PER_CM: f64 = 512.0;

/// Everything that is asked in one run.
#[derive(Serialize)]
pub struct Questions {
    repeat: usize,
    processes: usize,
    hulls: BTreeMap<String, HullTable>,
    cases: Vec<Question>,
    rack: Vec<Question>,
}

#[derive(Serialize)]
struct HullTable {
    lowest: f64,
    step: f64,
    girth: Vec<f64>,
    side_arc: Vec<f64>,
}

#[derive(Serialize)]
struct Question {
    name: String,
    hull: String,
    cloth: &'static str,
    mitake_from: &'static str,
    given: BTreeMap<&'static str, f64>,
    targets: Vec<Wanted>,
    ways: BTreeMap<&'static str, Limits>,
    starts: Vec<BTreeMap<&'static str, f64>>,
    dressings: Vec<BTreeMap<&'static str, f64>>,
}

#[derive(Serialize)]
struct Wanted {
    quantity: &'static str,
    low: Option<f64>,
    high: Option<f64>,
    weight: f64,
}

#[derive(Serialize)]
struct Limits {
    usual: f64,
    spread: f64,
    low: f64,
    high: f64,
}

/// Asks about these cases and this rack of garments of the first person.
pub fn questions(
    demo: &Demo,
    cases: &[Case],
    rack: &[(Fitting, Rules)],
    ask: &Ask<'_>,
) -> Questions {
    let mut spans: BTreeMap<usize, (f64, f64)> = BTreeMap::new();
    let mut hulls: BTreeMap<usize, &Fitting> = BTreeMap::new();
    let on_cases = cases.iter().map(|c| (c.person, &c.fitting, &c.rules));
    let on_rack = rack.iter().map(|(fitting, rules)| (0, fitting, rules));
    for (person, fitting, rules) in on_cases.chain(on_rack) {
        let (low, high) = heights(fitting, rules);
        let span = spans.entry(person).or_insert((low, high));
        *span = (span.0.min(low), span.1.max(high));
        hulls.insert(person, fitting);
    }
    let key = |person: usize| demo.people[person].0.clone();
    let tables = hulls.iter().map(|(&person, fitting)| {
        let (low, high) = spans[&person];
        (key(person), hull_table(fitting, low, high))
    });
    let asked = cases.iter().map(|case| {
        let mut asked = question(&case.name, key(case.person), &case.fitting, &case.rules);
        let drawn = random_dressings(case, ask.dressings);
        asked.dressings = drawn.iter().map(by_name).collect();
        asked
    });
    let hung = rack.iter().enumerate();
    let hung = hung.map(|(i, (fitting, rules))| question(&i.to_string(), key(0), fitting, rules));
    Questions {
        repeat: ask.repeat,
        processes: ask.processes,
        hulls: tables.collect(),
        cases: asked.collect(),
        rack: hung.collect(),
    }
}

/// The heights at which a case may ask for the hull: the hip, and the collar end at its lowest and
/// highest.
fn heights(fitting: &Fitting, rules: &Rules) -> (f64, f64) {
    let hip = fitting.value(Given::HipHeight);
    let (hem, raise) = (
        rules.way(Decision::HemHeight),
        rules.way(Decision::UwamaeRaise),
    );
    let collar_end = fitting.value(Given::Erishita);
    let low = collar_end + hem.low.min(0.0) + raise.low.min(0.0);
    let high = collar_end + hem.high + raise.high;
    // A centimetre more, so that a solver that looks beyond a limit still finds a slope.
    (hip.min(low) - 1.0, hip.max(high) + 1.0)
}

fn hull_table(fitting: &Fitting, low: f64, high: f64) -> HullTable {
    let lowest = (low * ROWS_PER_CM).floor() / ROWS_PER_CM;
    let mut table = HullTable {
        lowest,
        step: 1.0 / ROWS_PER_CM,
        girth: Vec::new(),
        side_arc: Vec::new(),
    };
    let rounded = |cm: f64| (cm * 1e9).round() / 1e9; // keeps the file half as long
    let mut height = lowest;
    while height <= high {
        let section = fitting.shape().at(height);
        table.girth.push(rounded(section.girth));
        table.side_arc.push(rounded(section.side_arc));
        height += table.step; // exact: the step is a power of two
    }
    table
}

fn question(name: &str, hull: String, fitting: &Fitting, rules: &Rules) -> Question {
    let wanted = rules.targets.iter().map(|target| Wanted {
        quantity: target.quantity.key(),
        low: target.low,
        high: target.high,
        weight: target.weight,
    });
    let limits = Decision::ALL.iter().map(|&decision| {
        let way = rules.way(decision);
        let limits = Limits {
            usual: way.usual,
            spread: way.spread,
            low: way.low,
            high: way.high,
        };
        (decision.key(), limits)
    });
    Question {
        name: name.to_owned(),
        hull,
        cloth: fitting.cloth().key(),
        mitake_from: match fitting.mitake_from() {
            MitakeFrom::Shoulder => "shoulder",
            MitakeFrom::BackSeam => "back_seam",
        },
        given: Given::ALL
            .iter()
            .map(|&given| (given.key(), fitting.value(given)))
            .collect(),
        targets: wanted.collect(),
        ways: limits.collect(),
        starts: starts(rules).iter().map(by_name).collect(),
        dressings: Vec::new(),
    }
}

/// Where the planner starts from: the collar end at its lowest, a third of the way up and at its
/// highest, all else as usual.
fn starts(rules: &Rules) -> [Dressing; 3] {
    [0.0, 1.0 / 3.0, 1.0].map(|share| {
        let part = |decision| {
            let way = rules.way(decision);
            way.low + share * (way.high - way.low)
        };
        [Decision::HemHeight, Decision::UwamaeRaise]
            .into_iter()
            .fold(rules.usual(), |start, d| start.with(d, part(d)))
    })
}

fn by_name(dressing: &Dressing) -> BTreeMap<&'static str, f64> {
    Decision::ALL
        .iter()
        .map(|&decision| (decision.key(), dressing.get(decision)))
        .collect()
}
