//! The same problem put to a general solver, `scipy.optimize.least_squares`, in the same run.
//!
//! The questions go to `benches/reference/plan.py` as JSON, the answers come back as JSON. Judged
//! here: whether the model written there sees the same as ours, and whether either optimum is
//! better than the other.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;

use serde::{Deserialize, Serialize};
use sunbu_core::dressing::{
    Decision, Dressing, Fitting, Given, Locks, Quantity, Rules, objective, plan, predict,
};
use sunbu_core::garment::MitakeFrom;

use crate::cases::{Case, Demo, random_dressings};
use crate::error::Error;
use crate::planner::Rack;
use crate::timing::{OverCases, Times};

/// Rows of the hull's table per centimetre of height: straight lines between rows this close leave
/// the girth to a millionth of a centimetre (its second derivative stays below 1 per centimetre).
const ROWS_PER_CM: f64 = 256.0;

/// How far two objectives may differ, as a share: the hull's table leaves less than a tenth of it.
pub const AGREED_SHARE: f64 = 1e-6;

/// How far two values of one quantity may differ, in centimetres, for the same reason.
pub const AGREED_CM: f64 = 1e-5;

/// How much better, as a share, the general solver's optimum may be than the planner's.
pub const WORSE_SHARE: f64 = 0.01;

#[derive(Serialize)]
struct Questions {
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

#[derive(Deserialize)]
struct Answers {
    versions: Versions,
    seen: Vec<Seen>,
    solved: Vec<Solved>,
    rack: RackAnswer,
}

/// What the reference ran on.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct Versions {
    /// The Python interpreter.
    pub python: String,
    /// Its arrays.
    pub numpy: String,
    /// Its solver.
    pub scipy: String,
}

#[derive(Deserialize)]
struct Seen {
    objective: f64,
    appearance: BTreeMap<String, f64>,
}

#[derive(Deserialize)]
struct Solved {
    case: String,
    solver: String,
    dressing: BTreeMap<String, f64>,
    evaluations: usize,
    median_ms: f64,
    least_ms: f64,
}

#[derive(Deserialize)]
struct RackAnswer {
    processes: usize,
    ms: f64,
    objectives: Vec<f64>,
}

/// What the reference said, and how that stands to the planner.
#[derive(Debug, Clone, Serialize)]
pub struct Comparison {
    /// What it ran on.
    pub versions: Versions,
    /// How many dressings both models were asked about.
    pub dressings: usize,
    /// Largest difference of one seen quantity, in centimetres.
    pub apart_cm: f64,
    /// Largest difference of two objectives, as a share.
    pub apart_share: f64,
    /// Each of its solvers.
    pub solvers: Vec<Solver>,
    /// Milliseconds for the whole rack.
    pub rack_ms: f64,
    /// In how many processes.
    pub rack_processes: usize,
    /// How much better its optimum of a garment on the rack is than the planner's, at most, as a
    /// share; below zero when it is never better.
    pub rack_better_share: f64,
}

/// One way of asking the general solver.
#[derive(Debug, Clone, Serialize)]
pub struct Solver {
    /// Its method, and how it gets its derivatives.
    pub name: String,
    /// How long it took.
    pub times: OverCases,
    /// The middle number of times it asked for the residuals, apart from derivatives.
    pub evaluations: f64,
    /// How much better its optimum is than the planner's, at most, as a share.
    pub better_share: f64,
    /// How much worse, at most.
    pub worse_share: f64,
}

impl Comparison {
    /// What does not hold, one sentence each.
    pub fn faults(&self) -> Vec<String> {
        let mut out = Vec::new();
        if self.apart_cm > AGREED_CM {
            let (apart, agreed) = (self.apart_cm, AGREED_CM);
            out.push(format!(
                "the models see {apart:e} cm apart, above {agreed:e}"
            ));
        }
        if self.apart_share > AGREED_SHARE {
            let (apart, agreed) = (self.apart_share, AGREED_SHARE);
            out.push(format!(
                "the objectives are {apart:e} apart, above {agreed:e}"
            ));
        }
        let solvers = self.solvers.iter().map(|s| (&*s.name, s.better_share));
        for (name, better) in solvers.chain([("rack", self.rack_better_share)]) {
            if better > WORSE_SHARE {
                out.push(format!("{name}: better than the planner by {better}"));
            }
        }
        out
    }
}

/// Asks the general solver about these cases and this rack.
///
/// # Errors
/// [`Error::Reference`] when Python, numpy or scipy is missing, or the script fails or answers
/// something else than it was asked; [`Error::File`] for its files.
pub fn compare(
    demo: &Demo,
    cases: &[Case],
    rack: &Rack<'_>,
    ask: Ask<'_>,
) -> Result<Comparison, Error> {
    let rack = rack.fittings();
    let questions = questions(demo, cases, &rack, &ask);
    let asked = ask.folder.join("questions.json");
    let answered = ask.folder.join("answers.json");
    let text = serde_json::to_string(&questions).map_err(|why| unreadable(&why))?;
    std::fs::write(&asked, text).map_err(Error::file(&asked))?;
    run(ask.script, &asked, &answered)?;
    let text = std::fs::read_to_string(&answered).map_err(Error::file(&answered))?;
    let answers: Answers = serde_json::from_str(&text).map_err(|why| unreadable(&why))?;
    judge(cases, &rack, &ask, answers)
}

/// How the general solver is asked.
#[derive(Debug, Clone, Copy)]
pub struct Ask<'a> {
    /// The script.
    pub script: &'a Path,
    /// Where questions and answers are kept.
    pub folder: &'a Path,
    /// Random dressings of each case to compare the models at.
    pub dressings: usize,
    /// Runs of each case.
    pub repeat: usize,
    /// Processes for the rack.
    pub processes: usize,
}

fn unreadable(why: &serde_json::Error) -> Error {
    Error::Reference(why.to_string())
}

fn run(script: &Path, asked: &Path, answered: &Path) -> Result<(), Error> {
    let output = Command::new("python3")
        .args([script, asked, answered])
        .output()
        .map_err(|why| Error::Reference(format!("python3: {why}")))?;
    if output.status.success() {
        return Ok(());
    }
    let said = String::from_utf8_lossy(&output.stderr);
    let last = said.trim().lines().last().unwrap_or("no word why");
    Err(Error::Reference(last.to_owned()))
}

fn questions(demo: &Demo, cases: &[Case], rack: &[(Fitting, Rules)], ask: &Ask<'_>) -> Questions {
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

fn judge(
    cases: &[Case],
    rack: &[(Fitting, Rules)],
    ask: &Ask<'_>,
    answers: Answers,
) -> Result<Comparison, Error> {
    let dressings: Vec<(&Case, Dressing)> = cases
        .iter()
        .flat_map(|case| {
            let drawn = random_dressings(case, ask.dressings);
            drawn.into_iter().map(move |dressing| (case, dressing))
        })
        .collect();
    if answers.seen.len() != dressings.len() || answers.rack.objectives.len() != rack.len() {
        return Err(Error::Reference("it left questions unanswered".into()));
    }
    let (mut apart_cm, mut apart_share) = (0.0_f64, 0.0_f64);
    for ((case, dressing), theirs) in dressings.iter().zip(&answers.seen) {
        let seen = predict(&case.fitting, dressing);
        for &quantity in Quantity::ALL {
            let value = named(&theirs.appearance, quantity.key())?;
            apart_cm = apart_cm.max((seen.get(quantity) - value).abs());
        }
        let ours = objective(&case.fitting, &case.rules, dressing);
        apart_share = apart_share.max((theirs.objective / ours - 1.0).abs());
    }
    let mut better_on_rack = f64::NEG_INFINITY;
    for ((fitting, rules), theirs) in rack.iter().zip(&answers.rack.objectives) {
        let ours = planned(fitting, rules);
        better_on_rack = better_on_rack.max(ours / theirs - 1.0);
    }
    Ok(Comparison {
        dressings: dressings.len(),
        apart_cm,
        apart_share,
        solvers: solvers(cases, &answers.solved)?,
        rack_ms: answers.rack.ms,
        rack_processes: answers.rack.processes,
        rack_better_share: better_on_rack,
        versions: answers.versions,
    })
}

/// The objective of the planner's dressing.
fn planned(fitting: &Fitting, rules: &Rules) -> f64 {
    let planned = plan(fitting, rules, &Locks::new());
    objective(fitting, rules, &planned.dressing)
}

/// Each solver over all cases, in the order in which they answered.
fn solvers(cases: &[Case], solved: &[Solved]) -> Result<Vec<Solver>, Error> {
    let mut names: Vec<&str> = Vec::new();
    for answer in solved {
        if !names.contains(&&*answer.solver) {
            names.push(&answer.solver);
        }
    }
    let one = |name: &str| {
        let mut times = Vec::new();
        let mut evaluations = Vec::new();
        let (mut better_share, mut worse_share) = (f64::NEG_INFINITY, f64::NEG_INFINITY);
        for case in cases {
            let found = solved
                .iter()
                .find(|answer| answer.solver == name && answer.case == case.name)
                .ok_or_else(|| Error::Reference(format!("{name} left out {}", case.name)))?;
            let theirs = objective(&case.fitting, &case.rules, &dressing(case, found)?);
            let ours = planned(&case.fitting, &case.rules);
            better_share = better_share.max(ours / theirs - 1.0);
            worse_share = worse_share.max(theirs / ours - 1.0);
            times.push(Times {
                median_ms: found.median_ms,
                least_ms: found.least_ms,
                most_ms: found.median_ms,
                runs: 1,
            });
            #[expect(clippy::cast_precision_loss, reason = "a few hundred at most")]
            evaluations.push(found.evaluations as f64);
        }
        Ok(Solver {
            name: name.to_owned(),
            times: OverCases::of(&times),
            evaluations: Times::of(evaluations).median_ms,
            better_share,
            worse_share,
        })
    };
    names.into_iter().map(one).collect()
}

/// The dressing that was found, back within the limits where rounding left them.
fn dressing(case: &Case, found: &Solved) -> Result<Dressing, Error> {
    for decision in Decision::ALL {
        named(&found.dressing, decision.key())?;
    }
    Ok(Dressing::from_fn(|decision| {
        let way = case.rules.way(decision);
        found.dressing[decision.key()].clamp(way.low, way.high)
    }))
}

fn named(values: &BTreeMap<String, f64>, key: &str) -> Result<f64, Error> {
    let missing = || Error::Reference(format!("it does not say {key}"));
    values.get(key).copied().ok_or_else(missing)
}
