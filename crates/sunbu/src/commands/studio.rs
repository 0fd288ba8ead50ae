//! `sunbu open`, `demo`, `backup`, `restore`, `erase`: the studio and what is kept in it.

use std::path::Path;

use clap::ArgMatches;
use sunbu_core::case::{Person, Piece};
use sunbu_store::{Counts, Listed, Store};
use sunbu_words::Words;

use super::nearest::nearest;
use super::{path, text};
use crate::answer::Answer;
use crate::studio::{self, Door};
use crate::trouble::Trouble;

/// Opens the studio.
pub fn open(words: &Words, given: &ArgMatches) -> Answer {
    answered(words, opened(words, given))
}

fn opened(words: &Words, given: &ArgMatches) -> Result<Answer, Vec<Trouble>> {
    let (store, lies_at) = studio::fresh(path(given, "studio"))?;
    let said = words.with(
        "said-open",
        &[("file", (&lies_at.display().to_string()).into())],
    );
    studio::open(store, door(given)?, &format!("{said}\n"))?;
    Ok(Answer::Done(String::new()))
}

/// Opens a studio on invented people and garments.
pub fn demo(words: &Words, given: &ArgMatches) -> Answer {
    answered(words, demonstrated(words, given))
}

fn demonstrated(words: &Words, given: &ArgMatches) -> Result<Answer, Vec<Trouble>> {
    let door = door(given)?;
    // Kept until the studio is closed, and removed with everything in it then.
    let folder = tempfile::Builder::new()
        .prefix("sunbu-demo-")
        .tempdir()
        .map_err(|error| {
            vec![Trouble::at("sunbu demo", "", "trouble-unwritten").with("why", error.to_string())]
        })?;
    let temporary = folder.path().join("studio.sunbu");
    let named = path(given, "studio");
    let (mut store, lies_at) = studio::fresh(Some(named.unwrap_or(&temporary)))?;
    let filled = studio::fill(&mut store, &lies_at, words)?;
    let file = lies_at.display().to_string();
    let said = match named {
        None => words.get("said-demo"),
        Some(_) if filled => words.with("said-open", &[("file", (&file).into())]),
        Some(_) => words.with("said-not-empty", &[("file", (&file).into())]),
    };
    studio::open(store, door, &format!("{said}\n"))?;
    Ok(Answer::Done(String::new()))
}

/// How the studio is to be opened.
fn door(given: &ArgMatches) -> Result<Door, Vec<Trouble>> {
    let port = text(given, "port").map(|typed| {
        typed
            .trim()
            .parse()
            .map_err(|_| vec![Trouble::at("--port", typed, "trouble-no-port")])
    });
    Ok(Door {
        port: port.transpose()?,
        browser: !given.get_flag("no-browser"),
    })
}

/// Copies the studio into one file that is known to be good.
pub fn backup(words: &Words, given: &ArgMatches) -> Answer {
    let to = path(given, "file").unwrap_or(Path::new(""));
    let made = studio::existing(path(given, "studio")).and_then(|store| {
        store
            .backup(to)
            .map_err(|error| studio::troubled(to, error))
    });
    answered(
        words,
        made.map(|counts| done(words, "said-backup", to, counts)),
    )
}

/// Puts a backup in the place of the studio.
pub fn restore(words: &Words, given: &ArgMatches) -> Answer {
    let from = path(given, "file").unwrap_or(Path::new(""));
    let restored = studio::restore_into(path(given, "studio"), from);
    answered(
        words,
        restored.map(|(counts, to)| done(words, "said-restored", &to, counts)),
    )
}

/// What was copied, and where to.
fn done(words: &Words, id: &str, file: &Path, counts: Counts) -> Answer {
    let count = |n: i64| usize::try_from(n).unwrap_or_default();
    let file = file.display().to_string();
    let args = [
        ("file", (&file).into()),
        ("people", count(counts.people).into()),
        ("garments", count(counts.garments).into()),
        ("plans", count(counts.plans).into()),
    ];
    Answer::Done(words.with(id, &args) + "\n")
}

/// Erases one person with everything of theirs.
pub fn erase(words: &Words, given: &ArgMatches) -> Answer {
    answered(words, erased(words, given))
}

fn erased(words: &Words, given: &ArgMatches) -> Result<Answer, Vec<Trouble>> {
    let named = path(given, "studio");
    let mut store = studio::existing(named)?;
    let place = named.unwrap_or(Path::new("sunbu"));
    let told = |error| studio::troubled(place, error);
    let asked = text(given, "person").unwrap_or_default();
    let people = store.people().map_err(told)?;
    // Whom the core no longer reads can be erased like everybody else.
    let (id, name) = the_one(named_people(&people), asked, "sunbu erase")?;
    let plans = store.plans_of_person(id).map_err(told)?.len();
    if !given.get_flag("yes") {
        let trouble = Trouble::at("--yes", name, "trouble-not-sure").counting("plans", plans);
        return Err(vec![trouble]);
    }
    store.erase_person(id).map_err(told)?;
    let name = studio::shown_name(name);
    let args = [("name", (&name).into()), ("plans", plans.into())];
    Ok(Answer::Done(words.with("said-erased", &args) + "\n"))
}

/// The person of the studio with this name, or with this number; `argument` is where it was given.
///
/// # Errors
/// When nobody has it, several have, or the entry does not read.
pub fn the_person(
    store: &Store,
    place: &Path,
    named: &str,
    argument: &'static str,
) -> Result<Person, Vec<Trouble>> {
    let told = |error| studio::troubled(place, error);
    let people = store.people().map_err(told)?;
    let (id, _) = the_one(named_people(&people), named, argument)?;
    Ok(store.person(id).map_err(told)?.value)
}

/// Everyone's number and name, of those who do not read, too.
fn named_people(people: &Listed<Person>) -> Vec<(i64, &str)> {
    named(people, |person| &person.name)
}

fn named<T>(listed: &Listed<T>, name: impl Fn(&T) -> &str) -> Vec<(i64, &str)> {
    let read = listed.read.iter().map(|kept| (kept.id, name(&kept.value)));
    let unread = listed
        .unread
        .iter()
        .map(|unread| (unread.id, unread.name()));
    read.chain(unread).collect()
}

/// The garment of the studio with this name, or with this number.
///
/// # Errors
/// When none has it, several have, or the entry does not read.
pub fn the_garment(store: &Store, place: &Path, asked: &str) -> Result<Piece, Vec<Trouble>> {
    let told = |error| studio::troubled(place, error);
    let garments = store.garments().map_err(told)?;
    let pieces = named(&garments, |piece| &piece.name);
    let (id, _) = the_one(pieces, asked, "--garment")?;
    Ok(store.garment(id).map_err(told)?.value)
}

/// The one of this name, or of this number.
fn the_one<'a>(
    kept: Vec<(i64, &'a str)>,
    named: &str,
    place: &'static str,
) -> Result<(i64, &'a str), Vec<Trouble>> {
    let matching = kept.iter().filter(|(_, name)| *name == named);
    let ids: Vec<i64> = matching.map(|(id, _)| *id).collect();
    let id = match ids.as_slice() {
        [id] => Some(*id),
        [] => named.parse().ok(),
        several => {
            let known: Vec<String> = several.iter().map(i64::to_string).collect();
            let trouble = Trouble::at(place, named, "trouble-several");
            return Err(vec![trouble.with("known", known.join(", "))]);
        }
    };
    // Parted by what names do not hold: they may well hold commas.
    let near = nearest(named, kept.iter().copied());
    let found = kept.into_iter().find(|one| Some(one.0) == id);
    found.ok_or_else(|| {
        let trouble = Trouble::at(place, named, "trouble-nobody").counting("near", near.len());
        vec![trouble.with("known", near.join(" / "))]
    })
}

fn answered(words: &Words, answer: Result<Answer, Vec<Trouble>>) -> Answer {
    answer.unwrap_or_else(|troubles| Answer::bad_input(words, &troubles, false))
}
