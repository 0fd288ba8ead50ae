//! Sunbu's command line: reads cases, asks the core, says the answer; opens the studio.
//!
//! Clock, browser and exit codes live here and nowhere else.

mod answer;
mod cli;
mod commands;
mod input;
mod language;
mod page;
mod report;
mod say;
mod seen_by;
mod studio;
mod trouble;
mod usage;

use std::process::ExitCode;

fn main() -> ExitCode {
    answer::give(cli::run(std::env::args_os().collect()))
}
