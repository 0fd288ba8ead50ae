//! `sunbu rank`: which garments can be made to look right on a person.

use clap::ArgMatches;
use sunbu_core::dressing;
use sunbu_words::Words;

use super::asked;
use crate::answer::Answer;
use crate::input::{self, Subject};
use crate::report::rank::{RankReport, Ranked, Side};
use crate::report::text;
use crate::say;
use crate::trouble::Trouble;

/// Ranks, and says it in words or as a document.
pub fn run(words: &Words, given: &ArgMatches) -> Answer {
    let json = given.get_flag("json");
    match answer(words, given, json) {
        Ok(answer) => answer,
        Err(troubles) => Answer::bad_input(words, &troubles, json),
    }
}

fn answer(words: &Words, given: &ArgMatches, json: bool) -> Result<Answer, Vec<Trouble>> {
    let asked = asked(given)?;
    let subject = |piece| Subject::new(&asked.case.person, piece, &asked.standard, asked.occasion);
    let subjects: Vec<Subject> = asked
        .case
        .garments
        .iter()
        .map(subject)
        .collect::<Result<_, _>>()?;
    let names: Vec<String> = subjects.iter().map(|s| s.piece.name.clone()).collect();
    let fittings: Vec<_> = subjects.into_iter().map(|s| (s.fitting, s.rules)).collect();
    let rows: Vec<_> = dressing::rank(&fittings, input::threads())
        .into_iter()
        .map(|(at, worth)| (names[at].clone(), worth))
        .collect();
    let ranked = Ranked {
        occasion: asked.occasion,
        standard: &asked.standard.name,
        rows_are: Side::Garments,
        ranked_for: &asked.case.person.name,
        rows: &rows,
    };
    let said = if json {
        text(&RankReport::of(words, &ranked))
    } else {
        say::rank::page(words, &ranked)
    };
    Ok(if ranked.met() {
        Answer::Done(said)
    } else {
        Answer::CannotBeMet(said)
    })
}
