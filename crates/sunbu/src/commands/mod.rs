//! The commands: each reads its input, asks the core, and says the answer.

pub mod check;
pub mod figure;
pub mod mark;
mod nearest;
mod output;
pub mod photo;
pub mod plan;
pub mod rank;
pub mod schema;
pub mod studio;
pub mod topics;

use std::path::{Path, PathBuf};

use clap::ArgMatches;
use sunbu_core::case::CaseFile;
use sunbu_core::dressing::{Locks, Occasion, Standard};

use crate::input::{self, Subject};
use crate::trouble::Trouble;

/// The text of an argument, if it was given.
fn text<'a>(given: &'a ArgMatches, name: &str) -> Option<&'a str> {
    given.get_one::<String>(name).map(String::as_str)
}

/// The path of an argument, if it was given.
fn path<'a>(given: &'a ArgMatches, name: &str) -> Option<&'a Path> {
    given.get_one::<PathBuf>(name).map(PathBuf::as_path)
}

/// A case with what the command line says about it.
struct Asked {
    case: CaseFile,
    occasion: Occasion,
    standard: Standard,
}

/// Reads the case and what was asked of it; what the command line says goes before the file.
fn asked(given: &ArgMatches) -> Result<Asked, Vec<Trouble>> {
    let mut wrong = Vec::new();
    let mut keep = |found: Vec<Trouble>| wrong.extend(found);
    let occasion = text(given, "occasion").and_then(|key| {
        input::occasion(key)
            .map_err(|trouble| keep(vec![trouble]))
            .ok()
    });
    let standard =
        path(given, "standard").and_then(|file| input::standard(file).map_err(&mut keep).ok());
    let file = path(given, "case").unwrap_or(Path::new(""));
    let case = input::case(file).map_err(&mut keep).ok();
    match case {
        Some(mut case) if wrong.is_empty() => Ok(Asked {
            occasion: occasion.unwrap_or(case.occasion),
            standard: standard
                .or(case.standard.take())
                .unwrap_or_else(Standard::customary),
            case,
        }),
        _ => Err(wrong),
    }
}

/// One person in one garment, with the decisions the dresser has taken.
struct AskedOne {
    subject: Subject,
    locks: Locks,
    asked: Asked,
}

/// Reads a case in which one garment is meant.
fn asked_one(given: &ArgMatches) -> Result<AskedOne, Vec<Trouble>> {
    let set = given
        .get_many::<String>("set")
        .unwrap_or_default()
        .map(String::as_str);
    let (set, asked) = match (input::locks(set), asked(given)) {
        (Ok(set), Ok(asked)) => (set, asked),
        (set, asked) => {
            return Err(asked.err().into_iter().chain(set.err()).flatten().collect());
        }
    };
    let piece = input::the_garment(&asked.case, text(given, "garment")).map_err(|t| vec![t])?;
    let subject = Subject::new(&asked.case.person, piece, &asked.standard, asked.occasion)?;
    let mut locks = asked.case.locks.clone();
    locks.extend(set);
    Ok(AskedOne {
        subject,
        locks,
        asked,
    })
}
