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
    Decision, Dressing, Fitting, Locks, Quantity, Rules, objective, plan, predict,
};

use crate::cases::{Case, Demo, random_dressings};
use crate::error::Error;
use crate::planner::Rack;
use crate::questions::questions;
use crate::timing::{OverCases, Times};

/// How far two objectives may differ, as a share. The hull's table leaves a tenth of it or less.
pub const AGREED_SHARE: f64 = 1e-6;

/// How far two values of one quantity may differ, in centimetres. The table leaves a fifth of it.
pub const AGREED_CM: f64 = 1e-5;

/// How much better, as a share, the general solver's optimum may be than the planner's.
pub const WORSE_SHARE: f64 = 0.01;

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
