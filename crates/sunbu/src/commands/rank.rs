//! `sunbu rank`: which garments can be made to look right on a person, or whom a garment suits.

use std::path::Path;

use clap::ArgMatches;
use sunbu_core::case::{Person, Piece};
use sunbu_core::dressing::{self, Occasion, Standard};
use sunbu_store::Unread;
use sunbu_words::Words;

use super::studio::{the_garment, the_person};
use super::{asked, path, text};
use crate::answer::Answer;
use crate::input::{self, Subject};
use crate::report;
use crate::report::rank::{RankReport, Ranked, Side};
use crate::say;
use crate::studio;
use crate::trouble::Trouble;

/// Ranks, and says it in words or as a document.
pub fn run(words: &Words, given: &ArgMatches) -> Answer {
    let json = given.get_flag("json");
    match answer(words, given, json) {
        Ok(answer) => answer,
        Err(troubles) => Answer::bad_input(words, &troubles, json),
    }
}

/// Whom to plan in what, and what the rows of the answer are.
struct Rows {
    pairs: Vec<(Person, Piece)>,
    /// Names of the entries that do not read.
    left_out: Vec<String>,
    side: Side,
    ranked_for: String,
    occasion: Occasion,
    standard: Standard,
}

fn answer(words: &Words, given: &ArgMatches, json: bool) -> Result<Answer, Vec<Trouble>> {
    let rows = match path(given, "case") {
        Some(_) => of_case(given)?,
        None => of_studio(given)?,
    };
    if rows.pairs.is_empty() && rows.left_out.is_empty() {
        return Err(vec![Trouble::at("--studio", "", "trouble-empty-studio")]);
    }
    let mut names = Vec::new();
    let mut fittings = Vec::new();
    for (person, piece) in &rows.pairs {
        let subject = Subject::new(person, piece, &rows.standard, rows.occasion)?;
        names.push(match rows.side {
            Side::Garments => piece.name.clone(),
            Side::People => person.name.clone(),
        });
        fittings.push((subject.fitting, subject.rules));
    }
    let ranking = dressing::rank(&fittings, input::threads());
    let ranking: Vec<_> = ranking
        .into_iter()
        .map(|(at, worth)| (names[at].clone(), worth))
        .collect();
    let ranked = Ranked {
        occasion: rows.occasion,
        standard: &rows.standard.name,
        rows_are: rows.side,
        ranked_for: &rows.ranked_for,
        rows: &ranking,
        left_out: &rows.left_out,
    };
    let said = if json {
        report::text(&RankReport::of(words, &ranked))
    } else {
        say::rank::page(words, &ranked)
    };
    Ok(if ranked.met() {
        Answer::Done(said)
    } else {
        Answer::CannotBeMet(said)
    })
}

/// The garments of a case, for its person.
fn of_case(given: &ArgMatches) -> Result<Rows, Vec<Trouble>> {
    let asked = asked(given)?;
    let person = asked.case.person;
    Ok(Rows {
        ranked_for: person.name.clone(),
        pairs: asked
            .case
            .garments
            .into_iter()
            .map(|piece| (person.clone(), piece))
            .collect(),
        left_out: Vec::new(),
        side: Side::Garments,
        occasion: asked.occasion,
        standard: asked.standard,
    })
}

/// The garments of the studio for one of its people, or its people for one of its garments.
fn of_studio(given: &ArgMatches) -> Result<Rows, Vec<Trouble>> {
    let named = path(given, "studio");
    let store = studio::existing(named)?;
    let place = named.unwrap_or(Path::new("sunbu"));
    let told = |error| studio::troubled(place, error);
    let occasion = match text(given, "occasion") {
        Some(key) => input::occasion(key).map_err(|trouble| vec![trouble])?,
        None => Occasion::Indoors,
    };
    let standard = match path(given, "standard") {
        Some(file) => input::standard(file)?,
        None => store.standard().map_err(told)?,
    };
    let names = |unread: &[Unread]| {
        let name = |one: &Unread| studio::shown_name(one.name());
        unread.iter().map(name).collect::<Vec<_>>()
    };
    let (pairs, left_out, side, ranked_for) = match (text(given, "person"), text(given, "garment"))
    {
        (_, Some(garment)) => {
            let piece = the_garment(&store, place, garment)?;
            let people = store.people().map_err(told)?;
            let left_out = names(&people.unread);
            let pairs = people
                .read
                .into_iter()
                .map(|person| (person.value, piece.clone()));
            let pairs: Vec<_> = pairs.collect();
            (pairs, left_out, Side::People, piece.name)
        }
        (person, None) => {
            let person = the_person(&store, place, person.unwrap_or_default(), "--person")?;
            let garments = store.garments().map_err(told)?;
            let left_out = names(&garments.unread);
            let pairs = garments
                .read
                .into_iter()
                .map(|piece| (person.clone(), piece.value));
            let pairs: Vec<_> = pairs.collect();
            (pairs, left_out, Side::Garments, person.name)
        }
    };
    Ok(Rows {
        pairs,
        left_out,
        side,
        ranked_for,
        occasion,
        standard,
    })
}
