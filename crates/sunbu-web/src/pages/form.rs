//! Entering, editing and erasing: the same for people and garments, which are [`Thing`]s.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::case::Fields;
use sunbu_core::measure::Script;
use sunbu_core::problem::Problem;
use sunbu_store::{Kept, Store, StoreError};
use sunbu_words::Words;

use crate::answer::{go, page, page_with};
use crate::app::Room;
use crate::ask::Ask;
use crate::entry::{self, Conflict, Entry};
use crate::error::Fault;
use crate::parts::{Frame, Here, fault_summary, frame, wrongs};

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
    /// Reads it from a form, or says everything that is wrong.
    fn read(fields: &Fields) -> Result<Self, Vec<Problem>>;
    /// Its fields, to be edited.
    fn fields(&self, script: Script) -> Fields;
    /// The form's fields.
    fn form(entry: &Entry<'_>) -> Markup;
    /// A field's name in words.
    fn label(w: &Words, field: &str) -> String;

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
    revision: Option<i64>,
    fields: &'a Fields,
    problems: &'a [Problem],
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
        revision: None,
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
            let id = thing.add(&mut room.store(), &room.now())?;
            Ok(go(&format!("{}/{id}?done=added", T::PATH)))
        }
        Err(problems) => Ok(refused::<T>(ask, None, &fields, &problems)),
    }
}

/// The form with everything as it was typed and what is wrong with it.
fn refused<T: Thing>(
    ask: &Ask,
    known: Option<(i64, &str, Option<i64>)>,
    fields: &Fields,
    problems: &[Problem],
) -> Response {
    let new = words::<T>(ask, "new");
    let (action, title, revision) = match known {
        Some((id, name, revision)) => (format!("{}/{id}/edit", T::PATH), name, revision),
        None => (format!("{}/new", T::PATH), new.as_str(), None),
    };
    let sheet = Sheet {
        title,
        action: &action,
        revision,
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
    let kept = T::find(&room.store(), id)?;
    let sheet = Sheet {
        title: kept.value.name(),
        action: &format!("{}/{id}/edit", T::PATH),
        revision: Some(kept.revision),
        fields: &kept.value.fields(entry::script(ask.lang)),
        problems: &[],
    };
    Ok(page(sheet_page::<T>(ask, &sheet)))
}

/// Saves a new version, unless another browser saved after this form was filled.
pub(crate) fn save<T: Thing>(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let id = id_of::<T>(ask)?;
    let mut store = room.store();
    let Some(now) = T::find(&store, id).map(Some).or_else(none_when_missing)? else {
        return Ok(erased_meanwhile::<T>(ask));
    };
    let theirs = now.value.fields(entry::script(ask.lang));
    let revision = entry::revision(ask);
    let fresh = revision == Some(now.revision);
    // Theirs is only picked from the version that was shown.
    let mine = entry::typed(ask);
    let fields = if fresh {
        entry::picked(ask, mine, &theirs)
    } else {
        mine
    };
    let thing = match T::read(&fields) {
        Ok(thing) => thing,
        Err(problems) => {
            let known = Some((id, now.value.name(), revision));
            return Ok(refused::<T>(ask, known, &fields, &problems));
        }
    };
    if !fresh {
        return Ok(stale(ask, id, &thing, &now));
    }
    match thing.save(&mut store, id, now.revision, &room.now()) {
        Ok(()) => Ok(go(&format!("{}/{id}?done=saved", T::PATH))),
        // Another program on the same file was quicker by a moment.
        Err(StoreError::Stale { .. }) => {
            let newest = T::find(&store, id)?;
            Ok(stale(ask, id, &thing, &newest))
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
        revision: None,
        fields: &entry::typed(ask),
        problems: &[],
    };
    let lead = html! {
        section.errors role="alert" tabindex="-1" { p { (ask.words().get("form-erased-meanwhile")) } }
    };
    page_with(StatusCode::GONE, sheet_page_after::<T>(ask, &sheet, &lead))
}

/// Both versions, for the later of two browsers; written alike, so that only what says something
/// else differs.
fn stale<T: Thing>(ask: &Ask, id: i64, mine: &T, newest: &Kept<T>) -> Response {
    let w = ask.words();
    let script = entry::script(ask.lang);
    let (action, show) = (
        format!("{}/{id}/edit", T::PATH),
        format!("{}/{id}", T::PATH),
    );
    let (mine, theirs) = (mine.fields(script), newest.value.fields(script));
    let conflict = Conflict {
        mine: &mine,
        theirs: &theirs,
        revision: newest.revision,
        action: &action,
        show: &show,
    };
    let title = w.get("conflict-title");
    let body = html! {
        h1 { (title) }
        p { (w.get("conflict-how")) }
        (conflict.form(w, |name| T::label(w, name)))
    };
    let framed = Frame::new(&title, T::HERE).with(&["form.js"]);
    page_with(StatusCode::CONFLICT, frame(ask, &framed, &body))
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
            @if let Some(revision) = sheet.revision {
                input type="hidden" name=(entry::REVISION) value=(revision);
            }
            (T::form(&entry))
            div.acts { button.main-act { (w.get("save")) } a.button href=(T::PATH) { (w.get("cancel")) } }
        }
    };
    frame(
        ask,
        &Frame::new(sheet.title, T::HERE).with(&["form.js"]),
        &body,
    )
}

/// Asks whether it is to be erased.
pub(crate) fn confirm_erase<T: Thing>(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = id_of::<T>(ask)?;
    let kept = T::find(&room.store(), id)?;
    let title = w.with("erase-title", &[("name", kept.value.name().into())]);
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
