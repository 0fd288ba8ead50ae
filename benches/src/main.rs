//! Measures how fast the plan, the ranking, the check and the studio answer, beside a general solver.
//!
//! One run gives all figures, so that they can be set in relation: `cargo run --release -p
//! sunbu-benches`. With `--write` it also writes the chapter `docs/performance.md`.

mod arguments;
mod cases;
mod check;
mod error;
mod machine;
mod marking;
mod photo;
mod planner;
mod program;
mod questions;
mod reference;
mod report;
mod studio;
mod timing;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use arguments::{Arguments, HELP};
use cases::Demo;
use check::checks;
use error::Error;
use machine::Machine;
use photo::photo;
use planner::{Amount, Rack, everything, plans, ranking};
use reference::{Ask, compare};
use report::Report;
use studio::studio;

/// The target is set for two cores, so no more are used where there are more.
const THREADS: usize = 2;

fn main() -> ExitCode {
    let arguments = match Arguments::read(std::env::args().skip(1)) {
        Ok(arguments) if arguments.help => {
            print!("{HELP}");
            return ExitCode::SUCCESS;
        }
        Ok(arguments) => arguments,
        Err(why) => return failed(&why),
    };
    match run(arguments) {
        Ok(faults) if faults.is_empty() => ExitCode::SUCCESS,
        Ok(faults) => {
            for fault in faults {
                eprintln!("benches: {fault}");
            }
            ExitCode::from(1)
        }
        Err(why) => failed(&why),
    }
}

fn failed(why: &Error) -> ExitCode {
    eprintln!("benches: {why}");
    ExitCode::from(2)
}

/// Measures, prints and writes; gives what does not hold.
fn run(arguments: Arguments) -> Result<Vec<String>, Error> {
    let root = repository();
    let report = measure(arguments, &root)?;
    for line in report.lines() {
        println!("{line}");
    }
    let json = serde_json::to_string_pretty(&report).map_err(std::io::Error::from);
    let path = root.join("target/bench.json");
    json.and_then(|json| std::fs::write(&path, json + "\n"))
        .map_err(Error::file(&path))?;
    if arguments.write {
        let path = root.join("docs/performance.md");
        std::fs::write(&path, report.chapter()?).map_err(Error::file(&path))?;
    }
    Ok(report.faults())
}

fn measure(arguments: Arguments, root: &Path) -> Result<Report, Error> {
    let amount = if arguments.quick {
        Amount::QUICK
    } else {
        Amount::FULL
    };
    let studio = if arguments.without_studio {
        None
    } else {
        Some(studio(root, amount.visits)?)
    };
    let demo = Demo::read()?;
    let cases = demo.spread(amount.cases);
    let rack = Rack::of(&demo, amount.rack);
    let photo = photo(amount.photos)?;
    let first = plans(&cases, amount);
    let ranking = ranking(&rack, THREADS, amount);
    let everything = everything(&demo, amount.everything);
    let checks = checks(&demo, &cases, amount.runs, amount.everything)?;
    let reference = if arguments.without_reference {
        None
    } else {
        let folder = root.join("target/bench");
        std::fs::create_dir_all(&folder).map_err(Error::file(&folder))?;
        let ask = Ask {
            script: &root.join("benches/reference/plan.py"),
            folder: &folder,
            dressings: amount.dressings,
            repeat: amount.reference_runs,
            processes: THREADS,
        };
        Some(compare(&demo, &cases, &rack, ask)?)
    };
    Ok(Report {
        machine: Machine::here(),
        quick: arguments.quick,
        plan_again: plans(&cases, amount).plan,
        plans: first,
        everything,
        checks,
        ranking,
        photo,
        reference,
        studio,
    })
}

/// Where the repository lay when this was built.
fn repository() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.parent().unwrap_or(here).to_path_buf()
}
