//! House rules: the studio's own copy of the standard, by occasion, as form and as TOML.
//!
//! Each page carries the revision it was filled from; a change of an older one is told and
//! changes nothing.

use std::collections::BTreeSet;

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::dressing::{Occasion, Standard, StandardError};
use sunbu_store::{Own, StoreError};
use sunbu_words::Words;

use super::rule_fields::{self, Scope};
use super::rule_read;
use crate::answer::{go, page, page_with};
use crate::app::Room;
use crate::ask::Ask;
use crate::entry;
use crate::error::Fault;
use crate::parts::{Frame, Here, Wrong, fault_summary, field_id, frame};

/// What the house rules are, and where each part of them is edited.
pub(crate) fn list(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let own = room.store().own_standard_text()?.value;
    let title = w.get("rules-title");
    let body = html! {
        h1 { (title) }
        p { (w.get("rules-what")) }
        p.notice { (w.get(if own.is_some() { "rules-own" } else { "rules-customary" })) }
        ul.list {
            li { a.grow href="/rules/of/every" { (w.get("rules-every")) } }
            @for &occasion in Occasion::ALL {
                li { a.grow href={ "/rules/of/" (occasion.key()) } { (w.occasion(occasion)) } }
            }
        }
        div.acts {
            a.button href="/rules/toml" { (w.get("rules-toml")) }
            @if own.is_some() { a.button.grave href="/rules/reset" { (w.get("rules-reset")) } }
        }
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Rules), &body)))
}

/// The rules of every occasion, or of one, as a form.
pub(crate) fn edit(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let scope = Scope::of(ask.param("occasion")).ok_or(Fault::NotFound)?;
    let own = room.store().own_standard()?;
    let standard = own.value.unwrap_or_else(Standard::customary);
    let fields = rule_fields::fields(&standard, scope, &ask.words().get("rules-stature"));
    let sheet = Sheet {
        standard: &standard,
        revision: own.revision,
        scope,
        fields: &fields,
        wrongs: &[],
        theirs: None,
    };
    Ok(page(form_page(ask, &sheet)))
}

/// Takes the form's rules, if they can stand and nobody changed them since it was filled.
pub(crate) fn save(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let scope = Scope::of(ask.param("occasion")).ok_or(Fault::NotFound)?;
    let mut store = room.store();
    let own = store.own_standard()?;
    let standard = own.value.unwrap_or_else(Standard::customary);
    let typed = entry::typed(ask);
    let read = rule_read::read(&standard, scope, &typed, w);
    let fresh = entry::revision(ask) == Some(own.revision);
    let (status, wrongs) = match read {
        Ok(changed) if fresh => {
            let saved = store.set_standard(own.revision, &changed, &room.now());
            drop(store);
            let done = format!("/rules/of/{}?done=saved", scope.key());
            return after(saved, &done, || save(room, ask));
        }
        Ok(_) => (StatusCode::CONFLICT, Vec::new()),
        Err(wrongs) if fresh => (StatusCode::UNPROCESSABLE_ENTITY, wrongs),
        Err(wrongs) => (StatusCode::CONFLICT, wrongs),
    };
    let theirs = rule_fields::fields(&standard, scope, &w.get("rules-stature"));
    let sheet = Sheet {
        standard: &standard,
        revision: own.revision,
        scope,
        fields: &typed,
        wrongs: &wrongs,
        theirs: (!fresh).then_some(&theirs),
    };
    Ok(page_with(status, form_page(ask, &sheet)))
}

/// Where a change leads. When another program on the same file was quicker by a moment, the form
/// is an old one by now and is looked at again.
fn after(
    changed: Result<(), StoreError>,
    done: &str,
    again: impl FnOnce() -> Result<Response, Fault>,
) -> Result<Response, Fault> {
    match changed {
        Ok(()) => Ok(go(done)),
        Err(StoreError::Stale { .. }) => again(),
        Err(other) => Err(other.into()),
    }
}

/// The rules of a scope as a form, and what it is filled from.
struct Sheet<'a> {
    standard: &'a Standard,
    revision: i64,
    scope: Scope,
    fields: &'a rule_fields::Typed,
    wrongs: &'a [Wrong],
    /// What holds now, when another window changed it after this form was filled.
    theirs: Option<&'a rule_fields::Typed>,
}

fn form_page(ask: &Ask, sheet: &Sheet<'_>) -> Markup {
    let w = ask.words();
    let Sheet {
        standard,
        scope,
        fields,
        wrongs,
        ..
    } = *sheet;
    let title = scope.title(w);
    let unsaved = if ask.posted { "unsaved" } else { "" };
    let body = html! {
        p.crumb { a href="/rules" { (w.get("rules-title")) } }
        h1 { (title) }
        @if let Some(theirs) = sheet.theirs {
            (meanwhile(w, "rules-meanwhile", &differing(w, fields, theirs)))
        }
        (fault_summary(w, wrongs))
        p { (w.get("rules-how")) }
        @if scope != Scope::Every { p { (w.get("rules-how-occasion")) } }
        form method="post" novalidate data-keep=(unsaved) {
            input type="hidden" name=(entry::REVISION) value=(sheet.revision);
            h2 { (w.get("rules-wishes")) }
            (rule_fields::wishes(w, standard, scope, fields, wrongs))
            h2 { (w.get("rules-usual")) }
            (rule_fields::ways(w, standard, scope, fields, wrongs))
            div.acts { button.main-act { (w.get("save")) } a.button href="/rules" { (w.get("cancel")) } }
        }
    };
    frame(
        ask,
        &Frame::new(&title, Here::Rules).with(&["form.js"]),
        &body,
    )
}

/// Says that another window changed the rules after this page was opened.
fn meanwhile(w: &Words, id: &str, more: &Markup) -> Markup {
    html! {
        section.errors role="alert" tabindex="-1" {
            p { (w.get(id)) }
            (more)
        }
    }
}

/// The fields in which what was typed is not what another window saved; each leads to its input.
fn differing(w: &Words, typed: &rule_fields::Typed, theirs: &rule_fields::Typed) -> Markup {
    let text = |fields: &rule_fields::Typed, name: &str| {
        fields.get(name).map_or("", |text| text.trim()).to_owned()
    };
    let shown = |text: String| match text.as_str() {
        "" => w.get("conflict-empty"),
        _ => text,
    };
    let names: BTreeSet<&String> = typed.keys().chain(theirs.keys()).collect();
    let differ = names
        .into_iter()
        .filter(|name| text(typed, name) != text(theirs, name))
        .filter_map(|name| Some((name, rule_fields::label(w, name)?)));
    html! {
        ul {
            @for (name, label) in differ {
                li {
                    a href={ "#" (field_id(name)) } { (label) } ": "
                    (w.with("rules-meanwhile-field", &[
                        ("mine", (&shown(text(typed, name))).into()),
                        ("theirs", (&shown(text(theirs, name))).into()),
                    ]))
                }
            }
        }
    }
}

/// The whole standard as TOML. A kept text that the core no longer takes is there to be mended.
pub(crate) fn edit_toml(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let own = room.store().own_standard_text()?;
    let text = text_in_force(&own);
    let sheet = TomlSheet {
        text: &text,
        revision: own.revision,
        error: Standard::parse(&text).err(),
        theirs: None,
    };
    Ok(page(toml_page(ask, &sheet)))
}

/// Takes a standard from TOML, if nobody changed it since the form was filled.
pub(crate) fn save_toml(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let text = ask.sent("toml").unwrap_or("");
    let mut store = room.store();
    let own = store.own_standard_text()?;
    let fresh = entry::revision(ask) == Some(own.revision);
    let (status, error) = match Standard::parse(text) {
        Ok(standard) if fresh => {
            let saved = store.set_standard(own.revision, &standard, &room.now());
            drop(store);
            return after(saved, "/rules/toml?done=saved", || save_toml(room, ask));
        }
        Ok(_) => (StatusCode::CONFLICT, None),
        Err(error) if fresh => (StatusCode::UNPROCESSABLE_ENTITY, Some(error)),
        Err(error) => (StatusCode::CONFLICT, Some(error)),
    };
    let theirs = text_in_force(&own);
    let sheet = TomlSheet {
        text,
        revision: own.revision,
        error,
        theirs: (!fresh).then_some(&theirs),
    };
    Ok(page_with(status, toml_page(ask, &sheet)))
}

/// The studio's own standard as it is kept, else the customary one.
fn text_in_force(own: &Own<String>) -> String {
    let own = own.value.clone();
    own.unwrap_or_else(|| Standard::customary().to_toml())
}

/// A standard as text, and what stands around it.
struct TomlSheet<'a> {
    text: &'a str,
    revision: i64,
    error: Option<StandardError>,
    /// What holds now, when another window changed it after this form was filled.
    theirs: Option<&'a String>,
}

fn toml_page(ask: &Ask, sheet: &TomlSheet<'_>) -> Markup {
    let w = ask.words();
    let title = w.get("rules-toml");
    let error = sheet.error.as_ref();
    let unsaved = if ask.posted { "unsaved" } else { "" };
    let body = html! {
        p.crumb { a href="/rules" { (w.get("rules-title")) } }
        h1 { (title) }
        @if let Some(theirs) = sheet.theirs {
            (meanwhile(w, "rules-meanwhile", &html! {
                details { summary { (w.get("rules-meanwhile-theirs")) } pre { (theirs) } }
            }))
        }
        @if let Some(error) = error { (toml_faults(w, error)) }
        p { (w.get("rules-toml-how")) }
        form method="post" data-keep=(unsaved) {
            input type="hidden" name=(entry::REVISION) value=(sheet.revision);
            label for="toml" { (w.get("rules-toml-label")) }
            textarea.toml #toml name="toml" spellcheck="false" aria-invalid=[error.map(|_| "true")]
                aria-describedby=[error.map(|_| "toml-wrong")] { "\n" (sheet.text) }
            div.acts { button.main-act { (w.get("save")) } a.button href="/rules" { (w.get("cancel")) } }
        }
    };
    frame(
        ask,
        &Frame::new(&title, Here::Rules).with(&["form.js"]),
        &body,
    )
}

/// What is wrong with the text, in the reader's words and those of the TOML reader.
fn toml_faults(w: &Words, error: &StandardError) -> Markup {
    html! {
        section.errors #toml-wrong role="alert" tabindex="-1" {
            h2 { a href="#toml" { (w.get("rules-toml-wrong")) } }
            @match error {
                StandardError::Form(text) => pre lang="en" { (text) },
                StandardError::Values(problems) => ul { @for problem in problems { li { (w.problem(problem)) } } },
            }
        }
    }
}

/// Asks whether the customary standard is to come back.
pub(crate) fn confirm_reset(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let revision = room.store().own_standard_text()?.revision;
    Ok(page(reset_page(ask, revision, &html! {})))
}

fn reset_page(ask: &Ask, revision: i64, lead: &Markup) -> Markup {
    let w = ask.words();
    let title = w.get("rules-reset");
    let body = html! {
        h1 { (title) }
        (lead)
        p { (w.get("rules-reset-what")) }
        form.acts method="post" {
            input type="hidden" name=(entry::REVISION) value=(revision);
            button.grave { (w.get("rules-reset-yes")) }
            a.button href="/rules" { (w.get("erase-no")) }
        }
    };
    frame(ask, &Frame::new(&title, Here::Rules), &body)
}

/// Back to the customary standard, if nobody changed the own one since it was asked.
pub(crate) fn reset(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let mut store = room.store();
    let revision = store.own_standard_text()?.revision;
    if entry::revision(ask) != Some(revision) {
        let lead = meanwhile(ask.words(), "rules-meanwhile-reset", &html! {});
        let markup = reset_page(ask, revision, &lead);
        return Ok(page_with(StatusCode::CONFLICT, markup));
    }
    let taken_back = store.reset_standard(revision);
    drop(store);
    after(taken_back, "/rules?done=reset", || reset(room, ask))
}
