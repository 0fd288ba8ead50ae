//! Entering, editing and erasing: the same for people and garments, which are [`Thing`]s.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::case::Fields;
use sunbu_core::measure::Script;
use sunbu_core::problem::Fault::UnknownField;
use sunbu_core::problem::Problem;
use sunbu_store::{Kept, Listed, Store, StoreError};
use sunbu_words::Words;

use super::unread;
use crate::answer::{go, page, page_with};
use crate::app::Room;
use crate::ask::Ask;
use crate::conflict::{self, Conflict, Picks};
use crate::entry::{self, Entry};
use crate::error::Fault;
use crate::parts::{Frame, Here, Wrong, fault_summary, field_faults, field_id, frame, wrongs};
use crate::search::same_name;

/// What the studio keeps and edits by a form of its own.
pub(crate) trait Thing: Sized {
    /// Path of the list, without a slash at its end.
    const PATH: &'static str;
    /// Name of the number in a path.
    const PARAM: &'static str;
    /// Beginning of its message ids: `-title`, `-new`, `-erase`, `-erase-what`, `-form-how`.
    const WORDS: &'static str;
    /// Its place in the menu.
    const HERE: Here;

    /// What it is called.
    fn name(&self) -> &str;
    /// The measure that tells two of one name apart; none when it was not taken.
    fn telling(&self, w: &Words) -> Option<String>;
    /// Reads it from a form, or says everything that is wrong.
    fn read(fields: &Fields) -> Result<Self, Vec<Problem>>;
    /// Its fields, to be edited.
    fn fields(&self, script: Script) -> Fields;
    /// The form's fields.
    fn form(entry: &Entry<'_>) -> Markup;
    /// A field's name in words.
    fn label(w: &Words, field: &str) -> String;

    /// All of them.
    fn all(store: &Store) -> Result<Listed<Self>, StoreError>;
    /// Looks it up.
    fn find(store: &Store, id: i64) -> Result<Kept<Self>, StoreError>;
    /// Keeps a new one.
    fn add(&self, store: &mut Store, now: &str) -> Result<i64, StoreError>;
    /// Keeps a new version of `revision`.
    fn save(&self, store: &mut Store, id: i64, revision: i64, now: &str) -> Result<(), StoreError>;
    /// Erases it with everything that hangs on it.
    fn erase(store: &mut Store, id: i64) -> Result<(), StoreError>;
}

/// A form and what stands around it.
struct Sheet<'a> {
    title: &'a str,
    action: &'a str,
    /// The version it was filled from; none for what is new.
    from: Option<&'a From>,
    fields: &'a Fields,
    problems: &'a [Problem],
}

/// The version a form was filled from.
struct From {
    /// Its number; none when the form does not say.
    revision: Option<i64>,
    /// Every field as it was; empty when the form does not say.
    was: Fields,
}

impl From {
    /// What a form that was sent says.
    fn said(ask: &Ask) -> Self {
        Self {
            revision: entry::revision(ask),
            was: conflict::was(ask),
        }
    }
}

/// What is kept of one as its form shows it, whether or not it still reads.
struct Version {
    revision: i64,
    name: String,
    fields: Fields,
    /// What is wrong with the fields as they are kept; mostly nothing.
    problems: Vec<Problem>,
}

impl Version {
    fn of<T: Thing>(store: &Store, id: i64, ask: &Ask) -> Result<Self, StoreError> {
        match T::find(store, id) {
            Ok(kept) => Ok(Self {
                revision: kept.revision,
                name: kept.value.name().to_owned(),
                fields: kept.value.fields(entry::script(ask.lang)),
                problems: Vec::new(),
            }),
            Err(StoreError::Unreadable(unread)) => Ok(Self {
                revision: unread.revision,
                name: unread::name(ask.words(), &unread),
                fields: unread.fields,
                problems: unread.problems,
            }),
            Err(other) => Err(other),
        }
    }
}

fn id_of<T: Thing>(ask: &Ask) -> Result<i64, Fault> {
    ask.id(T::PARAM).ok_or(Fault::NotFound)
}

fn words<T: Thing>(ask: &Ask, end: &str) -> String {
    ask.words().get(&format!("{}-{end}", T::WORDS))
}

/// An empty form.
pub(crate) fn new<T: Thing>(_room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let (title, action) = (words::<T>(ask, "new"), format!("{}/new", T::PATH));
    let (fields, problems) = (&Fields::new(), &[]);
    let sheet = Sheet {
        title: &title,
        action: &action,
        from: None,
        fields,
        problems,
    };
    Ok(page(sheet_page::<T>(ask, &sheet)))
}

/// Takes a new one into the studio.
pub(crate) fn add<T: Thing>(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let fields = entry::typed(ask);
    match T::read(&fields) {
        Ok(thing) => {
            let mut store = room.store();
            let id = thing.add(&mut store, &room.now())?;
            Ok(go(&kept_path(&store, id, &thing, "added")?))
        }
        Err(problems) => Ok(refused::<T>(ask, None, &fields, &problems)),
    }
}

/// The page of what was just kept; it says so when another one has the same name.
fn kept_path<T: Thing>(store: &Store, id: i64, kept: &T, done: &str) -> Result<String, StoreError> {
    let all = T::all(store)?;
    let read = all.read.iter().map(|other| (other.id, other.value.name()));
    let unread = all.unread.iter().map(|other| (other.id, other.name()));
    let twin = read
        .chain(unread)
        .any(|(other, name)| other != id && same_name(name, kept.name()));
    let end = if twin { "-twin" } else { "" };
    Ok(format!("{}/{id}?done={done}{end}", T::PATH))
}

/// The form with everything as it was typed and what is wrong with it.
fn refused<T: Thing>(
    ask: &Ask,
    known: Option<(i64, &str, &From)>,
    fields: &Fields,
    problems: &[Problem],
) -> Response {
    let new = words::<T>(ask, "new");
    let (action, title, from) = match known {
        Some((id, name, from)) => (format!("{}/{id}/edit", T::PATH), name, Some(from)),
        None => (format!("{}/new", T::PATH), new.as_str(), None),
    };
    let sheet = Sheet {
        title,
        action: &action,
        from,
        fields,
        problems,
    };
    page_with(
        StatusCode::UNPROCESSABLE_ENTITY,
        sheet_page::<T>(ask, &sheet),
    )
}

/// The form filled with what is known.
pub(crate) fn edit<T: Thing>(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let id = id_of::<T>(ask)?;
    let version = Version::of::<T>(&room.store(), id, ask)?;
    let from = From {
        revision: Some(version.revision),
        was: version.fields,
    };
    let sheet = Sheet {
        title: &version.name,
        action: &format!("{}/{id}/edit", T::PATH),
        from: Some(&from),
        fields: &from.was,
        problems: &version.problems,
    };
    let lead = html! {
        @if !version.problems.is_empty() { p.notice { (ask.words().get("unread-form")) } }
    };
    Ok(page(sheet_page_after::<T>(ask, &sheet, &lead)))
}

/// Saves a new version, unless another browser saved after this form was filled.
pub(crate) fn save<T: Thing>(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let id = id_of::<T>(ask)?;
    let mut store = room.store();
    let now = Version::of::<T>(&store, id, ask).map(Some);
    let Some(now) = now.or_else(none_when_missing)? else {
        return Ok(erased_meanwhile::<T>(ask));
    };
    let (from, picks) = (From::said(ask), Picks::read(ask));
    let fresh = from.revision == Some(now.revision);
    // A choice is between mine and the version of theirs that was shown beside it.
    let shown = if fresh {
        now.fields.clone()
    } else if from.was.is_empty() {
        // A form that does not say what it showed chooses nothing.
        entry::typed(ask)
    } else {
        from.was.clone()
    };
    if fresh
        && picks.open().next().is_some()
        && let Ok(mine) = T::read(&entry::typed(ask))
    {
        return Ok(unchosen(ask, id, &mine, &picks, &now));
    }
    let fields = picks.apply(ask, &shown);
    let thing = match T::read(&fields) {
        Ok(thing) => thing,
        Err(problems) => {
            let known = Some((id, now.name.as_str(), &from));
            return Ok(refused::<T>(ask, known, &fields, &problems));
        }
    };
    if !fresh {
        return Ok(stale(ask, id, &thing, &from, &now));
    }
    match thing.save(&mut store, id, now.revision, &room.now()) {
        Ok(()) => Ok(go(&kept_path(&store, id, &thing, "saved")?)),
        // Another program on the same file was quicker by a moment.
        Err(StoreError::Stale { .. }) => {
            let newest = Version::of::<T>(&store, id, ask)?;
            Ok(stale(ask, id, &thing, &from, &newest))
        }
        Err(other) => Err(other.into()),
    }
}

fn none_when_missing<T>(error: StoreError) -> Result<Option<T>, StoreError> {
    match error {
        StoreError::NotFound { .. } => Ok(None),
        other => Err(other),
    }
}

/// What another browser erased while this one typed can be kept as new.
fn erased_meanwhile<T: Thing>(ask: &Ask) -> Response {
    let title = words::<T>(ask, "new");
    let sheet = Sheet {
        title: &title,
        action: &format!("{}/new", T::PATH),
        from: None,
        fields: &entry::typed(ask),
        problems: &[],
    };
    let lead = html! {
        section.errors role="alert" tabindex="-1" { p { (ask.words().get("form-erased-meanwhile")) } }
    };
    page_with(StatusCode::GONE, sheet_page_after::<T>(ask, &sheet, &lead))
}

/// Both versions, for the later of two browsers; all are written alike, so that only what says
/// something else differs.
fn stale<T: Thing>(ask: &Ask, id: i64, mine: &T, from: &From, newest: &Version) -> Response {
    let script = entry::script(ask.lang);
    let base = T::read(&from.was).ok().map(|thing| thing.fields(script));
    let shown = Shown {
        status: StatusCode::CONFLICT,
        base: base.as_ref(),
        picks: &Picks::read(ask).only_open(),
    };
    both_versions(ask, id, mine, newest, &shown)
}

/// Both versions once more, for whoever left a line without a choice.
fn unchosen<T: Thing>(ask: &Ask, id: i64, mine: &T, picks: &Picks, newest: &Version) -> Response {
    let shown = Shown {
        status: StatusCode::UNPROCESSABLE_ENTITY,
        base: None,
        picks,
    };
    both_versions(ask, id, mine, newest, &shown)
}

/// What is known of a conflict beside the two versions.
struct Shown<'a> {
    status: StatusCode,
    base: Option<&'a Fields>,
    picks: &'a Picks,
}

fn both_versions<T: Thing>(
    ask: &Ask,
    id: i64,
    mine: &T,
    newest: &Version,
    shown: &Shown<'_>,
) -> Response {
    let w = ask.words();
    let script = entry::script(ask.lang);
    let (action, show) = (
        format!("{}/{id}/edit", T::PATH),
        format!("{}/{id}", T::PATH),
    );
    let mine = mine.fields(script);
    let conflict = Conflict {
        base: shown.base,
        mine: &mine,
        theirs: &newest.fields,
        picks: shown.picks,
        revision: newest.revision,
        action: &action,
        show: &show,
    };
    let differ = conflict.differ();
    if differ.is_empty() {
        // Both windows saved the same.
        return go(&format!("{show}?done=saved"));
    }
    let open = shown.picks.open().filter(|field| differ.contains(field));
    let open = open.map(|field| Wrong {
        place: field.to_owned(),
        label: T::label(w, field),
        sentence: w.get("conflict-choose"),
        others: Vec::new(),
    });
    let wrongs: Vec<Wrong> = open.collect();
    let title = w.get("conflict-title");
    let body = html! {
        h1 { (title) }
        (fault_summary(w, &wrongs))
        p { (w.get("conflict-how")) }
        (conflict.form(w, |name| T::label(w, name), &wrongs))
    };
    let framed = Frame::new(&title, T::HERE).with(&["form.js"]);
    page_with(shown.status, frame(ask, &framed, &body))
}

fn sheet_page<T: Thing>(ask: &Ask, sheet: &Sheet<'_>) -> Markup {
    sheet_page_after::<T>(ask, sheet, &html! {})
}

fn sheet_page_after<T: Thing>(ask: &Ask, sheet: &Sheet<'_>, lead: &Markup) -> Markup {
    let w = ask.words();
    let wrongs = wrongs(w, sheet.problems, |place| T::label(w, place));
    let entry = Entry {
        words: w,
        fields: sheet.fields,
        wrongs: &wrongs,
    };
    let unsaved = if ask.posted { "unsaved" } else { "" };
    let body = html! {
        p.crumb { a href=(T::PATH) { (words::<T>(ask, "title")) } }
        h1 { (sheet.title) }
        (lead)
        (fault_summary(w, &wrongs))
        p { (words::<T>(ask, "form-how")) }
        form method="post" action=(sheet.action) data-keep=(unsaved) novalidate {
            @if let Some(from) = sheet.from {
                @if let Some(revision) = from.revision {
                    input type="hidden" name=(entry::REVISION) value=(revision);
                }
                (conflict::was_inputs(&from.was))
            }
            (T::form(&entry))
            (unknown_fields(&entry, sheet.problems))
            div.acts { button.main-act { (w.get("save")) } a.button href=(T::PATH) { (w.get("cancel")) } }
        }
    };
    frame(
        ask,
        &Frame::new(sheet.title, T::HERE).with(&["form.js"]),
        &body,
    )
}

/// Fields that are kept under a name that no form has: to be read and copied, and left out when
/// the form is saved.
fn unknown_fields(entry: &Entry<'_>, problems: &[Problem]) -> Markup {
    let unknown = |problem: &&Problem| matches!(problem.fault, UnknownField { .. });
    html! {
        @for Problem { place, typed, .. } in problems.iter().filter(unknown) {
            @let id = field_id(place);
            div.field.bad {
                label for=(id) { (place) }
                (field_faults(entry.wrongs, place))
                p.how { (entry.words.get("unread-left-out")) }
                input.wide type="text" id=(id) value=(typed) readonly
                    aria-describedby={ (id) "-wrong" };
            }
        }
    }
}

/// Asks whether it is to be erased.
pub(crate) fn confirm_erase<T: Thing>(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = id_of::<T>(ask)?;
    let name = Version::of::<T>(&room.store(), id, ask)?.name;
    let title = w.with("erase-title", &[("name", (&name).into())]);
    let body = html! {
        h1 { (title) }
        p { (words::<T>(ask, "erase-what")) }
        form.acts method="post" {
            button.grave { (w.get("erase-yes")) }
            a.button href={ (T::PATH) "/" (id) } { (w.get("erase-no")) }
        }
    };
    Ok(page(frame(ask, &Frame::new(&title, T::HERE), &body)))
}

/// Erases it.
pub(crate) fn erase<T: Thing>(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    T::erase(&mut room.store(), id_of::<T>(ask)?)?;
    Ok(go(&format!("{}?done=erased", T::PATH)))
}
