//! `sunbu figure`: the dressed person, to scale, as SVG.

use clap::ArgMatches;
use sunbu_core::dressing::{Locks, assess, plan};
use sunbu_draw::{Page, Scene, Style, View};
use sunbu_words::Words;

use super::{AskedOne, asked_one, path, text};
use crate::answer::Answer;
use crate::trouble::Trouble;

/// What can be drawn: one side, or both on a page of A4, lying or standing.
pub const VIEWS: [&str; 4] = ["front", "back", "sheet", "sheet-upright"];

/// Which dressing can be drawn: the plan, or the usual way with the plan over it as what is wanted.
pub const SHOWN: [&str; 2] = ["plan", "usual"];

/// Draws the plan.
pub fn run(words: &Words, given: &ArgMatches) -> Answer {
    answer(words, given).unwrap_or_else(|troubles| Answer::bad_input(words, &troubles, false))
}

fn answer(words: &Words, given: &ArgMatches) -> Result<Answer, Vec<Trouble>> {
    let AskedOne { subject, locks, .. } = asked_one(given)?;
    let planned = plan(&subject.fitting, &subject.rules, &locks);
    let usual = || {
        let usual = locks
            .iter()
            .fold(subject.rules.usual(), |usual, (&d, &cm)| usual.with(d, cm));
        assess(&subject.fitting, &subject.rules, &Locks::new(), usual)
    };
    let (shown, wanted) = match text(given, "show") {
        Some("usual") => (usual(), Some(planned)),
        _ => (planned, None),
    };
    let (person, garment) = (&subject.person.name, &subject.piece.name);
    let title = words.with(
        "cli-title",
        &[("person", person.into()), ("garment", garment.into())],
    );
    let scene = Scene {
        body: &subject.body,
        garment: &subject.garment,
        fitting: &subject.fitting,
        shown: &shown,
        wanted: wanted.as_ref(),
        words,
        title: &title,
    };
    let svg = match text(given, "view") {
        Some("front") => sunbu_draw::figure(&scene, View::Front, Style::default()),
        Some("back") => sunbu_draw::figure(&scene, View::Back, Style::default()),
        Some("sheet-upright") => sunbu_draw::sheet(&scene, Page::Portrait),
        _ => sunbu_draw::sheet(&scene, Page::Landscape),
    };
    let Some(file) = path(given, "output") else {
        return Ok(Answer::Done(format!("{svg}\n")));
    };
    let shown = file.display().to_string();
    std::fs::write(file, svg + "\n").map_err(|error| {
        vec![Trouble::at(&shown, "", "trouble-unwritten").with("why", error.to_string())]
    })?;
    Ok(Answer::Done(
        words.with("cli-written", &[("file", (&shown).into())]) + "\n",
    ))
}
