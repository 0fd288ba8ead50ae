//! `sunbu mark`: a marks file for a photo, every mark where the plan expects it, brought to the
//! picture's edges.

use std::fs::OpenOptions;
use std::io::{self, Write as _};
use std::path::Path;

use clap::ArgMatches;
use sunbu_core::body::BodyMeasure;
use sunbu_core::photo::edge::to_edge;
use sunbu_core::photo::{Mark, Marking, MarksFile, Pixel, Placed, Trust, View};
use sunbu_words::Words;

use super::output::is_same;
use super::photo::{self, Shown};
use super::{path, text};
use crate::answer::Answer;
use crate::trouble::{Trouble, troubles};

/// How far from where the plan has it an edge is looked for, in centimetres of the wearer. Chosen:
/// hands are off by as much, and farther away the next edge begins.
const REACH_CM: f64 = 2.0;

/// Marks, and writes the file or prints it.
pub fn run(words: &Words, given: &ArgMatches) -> Answer {
    answer(words, given).unwrap_or_else(|troubles| Answer::bad_input(words, &troubles, false))
}

fn answer(words: &Words, given: &ArgMatches) -> Result<Answer, Vec<Trouble>> {
    let mut wrong = Vec::new();
    let mut place = |name: &'static str| {
        let option = format!("--{name}");
        let read = pixel(&option, text(given, name).unwrap_or_default());
        read.map_err(|trouble| wrong.push(trouble)).ok()
    };
    let (floor, crown) = (place("floor"), place("crown"));
    if let Some(trouble) = unwritable(given) {
        wrong.push(trouble);
    }
    let shown = Shown::of(given).map_err(|found| wrong.extend(found)).ok();
    let picture = photo::picture(path(given, "photo").unwrap_or(Path::new("")));
    let picture = picture.map_err(|trouble| wrong.push(trouble)).ok();
    let (Some(floor), Some(crown), Some(shown), Some(picture), true) =
        (floor, crown, shown, picture, wrong.is_empty())
    else {
        return Err(wrong);
    };
    let view = text(given, "view")
        .and_then(View::from_key)
        .unwrap_or(View::Front);
    let sure = |at| Placed {
        at,
        trust: Trust::Sure,
    };
    let (whole, read) = (picture.file_size(), picture.size());
    let first = MarksFile {
        size: Some(whole),
        mirrored: given.get_flag("mirrored"),
        marks: [(Mark::Floor, sure(floor)), (Mark::Crown, sure(crown))].into(),
        ..MarksFile::new(view)
    };
    let shot = first
        .shot(whole, read, picture.focal())
        .map_err(as_options)?;
    let mut marking = Marking::new(view, read, picture.focal());
    marking.snapping = !given.get_flag("no-snap");
    let [low, high] = [Mark::Floor, Mark::Crown].map(|mark| shot.marks[&mark].at);
    let stature = shown.body.value_cm(BodyMeasure::Stature);
    let reach = REACH_CM * (low[0] - high[0]).hypot(low[1] - high[1]) / stature;
    marking.shot = shot;
    let gray = picture.gray();
    marking
        .follow(&shown.subject(), |at, edge| to_edge(&gray, at, edge, reach))
        .map_err(as_options)?;
    let file = MarksFile::of(&marking.shot, whole);
    let is_guess = |placed: &&Placed| placed.trust == Trust::Unsure;
    let guessed = file.marks.values().filter(is_guess).count();
    let written = page(words, &file, guessed);
    let Some(to) = path(given, "output") else {
        return Ok(Answer::Done(written));
    };
    let name = to.display().to_string();
    write(to, &written, given.get_flag("replace")).map_err(|error| {
        let trouble = match error.kind() {
            io::ErrorKind::AlreadyExists => Trouble::at(&name, "", "trouble-marks-there"),
            _ => Trouble::at(&name, "", "trouble-unwritten").with("why", error.to_string()),
        };
        vec![trouble]
    })?;
    let count = file.marks.len();
    let args = [
        ("file", (&name).into()),
        ("count", count.into()),
        ("guessed", guessed.into()),
    ];
    Ok(Answer::Done(words.with("cli-marked", &args) + "\n"))
}

/// Why the marks may not be written where they are to go: a file that is there may hold marks that
/// somebody moved, and what is read here is never written over.
fn unwritable(given: &ArgMatches) -> Option<Trouble> {
    let to = path(given, "output")?;
    let name = to.display().to_string();
    let read = ["photo", "case", "standard"].map(|name| path(given, name));
    if let Some(over) = read.into_iter().flatten().find(|other| is_same(to, other)) {
        let over = over.display().to_string();
        return Some(Trouble::at(name, "", "trouble-over-input").with("file", over));
    }
    let is_there = !given.get_flag("replace") && to.exists();
    is_there.then(|| Trouble::at(name, "", "trouble-marks-there"))
}

/// Writes the marks; into a file that is there only when it is to be replaced, even if it came to be
/// there just now.
fn write(to: &Path, text: &str, replaces: bool) -> io::Result<()> {
    let mut options = OpenOptions::new();
    options.write(true);
    if replaces {
        options.create(true).truncate(true);
    } else {
        options.create_new(true);
    }
    options.open(to)?.write_all(text.as_bytes())
}

/// The file with a word on what to do with it at its head.
fn page(words: &Words, file: &MarksFile, guessed: usize) -> String {
    let mut head = crate::page::Page::new();
    let args = [("guessed", guessed.into())];
    head.paragraph("# ", &words.with("cli-marks-head", &args));
    format!("{}\n{}", head.into_text(), file.to_toml())
}

/// A place on the photo, as `X,Y`.
fn pixel(option: &str, typed: &str) -> Result<Pixel, Trouble> {
    let parts: Option<Vec<f64>> = typed.split(',').map(|p| p.trim().parse().ok()).collect();
    match parts.as_deref() {
        Some(&[x, y]) if x.is_finite() && y.is_finite() => Ok([x, y]),
        _ => Err(Trouble::at(option, typed, "trouble-pixel")),
    }
}

/// Problems of floor and crown, which were given as options.
fn as_options(found: Vec<sunbu_core::problem::Problem>) -> Vec<Trouble> {
    let option = |path: &str| match path.strip_prefix("marks.") {
        Some(mark) => format!("--{mark}"),
        None => path.to_owned(),
    };
    let renamed = found.into_iter().map(|problem| problem.renamed(option));
    troubles(renamed.collect())
}
