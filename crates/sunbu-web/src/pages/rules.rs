//! House rules: the studio's own copy of the standard, by occasion, as form and as TOML.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::dressing::{Occasion, Standard, StandardError};
use sunbu_words::Words;

use super::rule_fields::{self, Scope};
use super::rule_read;
use crate::answer::{go, page, page_with};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, Wrong, fault_summary, frame};

/// What the house rules are, and where each part of them is edited.
pub(crate) fn list(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let own = room.store().own_standard()?;
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
    let standard = room.store().standard()?;
    let fields = rule_fields::fields(&standard, scope, &ask.words().get("rules-stature"));
    Ok(page(form_page(ask, &standard, scope, &fields, &[])))
}

/// Takes the form's rules, if they can stand.
pub(crate) fn save(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let scope = Scope::of(ask.param("occasion")).ok_or(Fault::NotFound)?;
    let mut store = room.store();
    let standard = store.standard()?;
    let typed = ask.form().iter().cloned().collect();
    match rule_read::read(&standard, scope, &typed, w) {
        Ok(changed) => {
            store.set_standard(&changed, &room.now())?;
            Ok(go(&format!("/rules/of/{}?done=saved", scope.key())))
        }
        Err(wrongs) => {
            let markup = form_page(ask, &standard, scope, &typed, &wrongs);
            Ok(page_with(StatusCode::UNPROCESSABLE_ENTITY, markup))
        }
    }
}

fn form_page(
    ask: &Ask,
    standard: &Standard,
    scope: Scope,
    fields: &rule_fields::Typed,
    wrongs: &[Wrong],
) -> Markup {
    let w = ask.words();
    let title = scope.title(w);
    let body = html! {
        p.crumb { a href="/rules" { (w.get("rules-title")) } }
        h1 { (title) }
        (fault_summary(w, wrongs))
        p { (w.get("rules-how")) }
        @if scope != Scope::Every { p { (w.get("rules-how-occasion")) } }
        form method="post" novalidate data-keep=(if wrongs.is_empty() { "" } else { "unsaved" }) {
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

/// The whole standard as TOML.
pub(crate) fn edit_toml(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let text = room.store().standard()?.to_toml();
    Ok(page(toml_page(ask, &text, None)))
}

/// Takes a standard from TOML.
pub(crate) fn save_toml(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let text = ask.sent("toml").unwrap_or("");
    match Standard::parse(text) {
        Ok(standard) => {
            room.store().set_standard(&standard, &room.now())?;
            Ok(go("/rules/toml?done=saved"))
        }
        Err(error) => {
            let markup = toml_page(ask, text, Some(&error));
            Ok(page_with(StatusCode::UNPROCESSABLE_ENTITY, markup))
        }
    }
}

fn toml_page(ask: &Ask, text: &str, error: Option<&StandardError>) -> Markup {
    let w = ask.words();
    let title = w.get("rules-toml");
    let body = html! {
        p.crumb { a href="/rules" { (w.get("rules-title")) } }
        h1 { (title) }
        @if let Some(error) = error { (toml_faults(w, error)) }
        p { (w.get("rules-toml-how")) }
        form method="post" data-keep=(if error.is_some() { "unsaved" } else { "" }) {
            label for="toml" { (w.get("rules-toml-label")) }
            textarea.toml #toml name="toml" spellcheck="false" aria-invalid=[error.map(|_| "true")]
                aria-describedby=[error.map(|_| "toml-wrong")] { "\n" (text) }
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
pub(crate) fn confirm_reset(_room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let title = w.get("rules-reset");
    let body = html! {
        h1 { (title) }
        p { (w.get("rules-reset-what")) }
        form.acts method="post" {
            button.grave { (w.get("rules-reset-yes")) }
            a.button href="/rules" { (w.get("erase-no")) }
        }
    };
    Ok(page(frame(ask, &Frame::new(&title, Here::Rules), &body)))
}

/// Back to the customary standard.
pub(crate) fn reset(room: &Room, _ask: &Ask) -> Result<Response, Fault> {
    room.store().reset_standard()?;
    Ok(go("/rules?done=reset"))
}
