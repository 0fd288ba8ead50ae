//! Beginning a check: from the plan under the hands, from a kept plan, or for a stranger.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::body::{BodyMeasure, Sex};
use sunbu_core::case::{Fields, Stranger};
use sunbu_core::dressing::Occasion;
use sunbu_core::problem::Problem;
use sunbu_store::{NewCheck, SavedPlan};
use sunbu_words::Words;

use crate::answer::{go, page, page_with};
use crate::app::Room;
use crate::ask::Ask;
use crate::entry::{Entry, typed};
use crate::error::Fault;
use crate::pages::plan::Bench;
use crate::pages::{field_name, plan_parts};
use crate::parts::{Frame, Here, Wrong, fault_summary, frame, wrongs};
use crate::state::{self, State};

/// Begins a check of the dressing under the hands.
pub(crate) fn of_plan(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let state = State::read(ask.form());
    let bench = Bench::set(room, ask, &state)?;
    let (state, _) = bench.work(bench.readable(w, state)?);
    begin(room, &bench, &state, None, &bench.title(w))
}

/// Begins a check of a kept plan.
pub(crate) fn of_kept(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let id = ask.id("plan").ok_or(Fault::NotFound)?;
    let saved = room.store().plan(id)?;
    let (bench, state) = Bench::of(&saved)?;
    let SavedPlan { row, .. } = &saved;
    let (state, _) = bench.work(state);
    begin(room, &bench, &state, Some(id), &row.title)
}

fn begin(
    room: &Room,
    bench: &Bench,
    state: &State,
    plan: Option<i64>,
    title: &str,
) -> Result<Response, Fault> {
    let check = NewCheck::Planned {
        person: bench.person(),
        plan,
        title,
        case: &bench.decided(state),
    };
    let id = room.store().add_check(&check, &room.now())?;
    Ok(go(&format!("/checks/{id}")))
}

/// An empty form for a stranger.
pub(crate) fn new(_room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let (fields, w) = (Fields::new(), ask.words());
    Ok(page(form(ask, w, &fields, &[])))
}

/// Begins a check of a stranger.
pub(crate) fn add(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let fields = typed(ask);
    let own: Fields = fields
        .iter()
        .filter(|(name, _)| *name != "occasion")
        .map(|(name, text)| (name.clone(), text.clone()))
        .collect();
    let mut problems: Vec<Problem> = Vec::new();
    let occasion = state::occasion(fields.get("occasion").map_or("", String::as_str))
        .map_err(|problem| problems.push(*problem))
        .unwrap_or_default()
        .unwrap_or(Occasion::Indoors);
    match Stranger::from_fields(&own) {
        Ok(stranger) if problems.is_empty() => {
            let check = NewCheck::Stranger {
                stranger: &stranger,
                occasion,
            };
            let id = room.store().add_check(&check, &room.now())?;
            Ok(go(&format!("/checks/{id}")))
        }
        found => {
            problems.extend(found.err().into_iter().flatten());
            let sheet = form(ask, w, &fields, &problems);
            Ok(page_with(StatusCode::UNPROCESSABLE_ENTITY, sheet))
        }
    }
}

fn label(w: &Words, field: &str) -> String {
    match (BodyMeasure::from_key(field), field) {
        (Some(measure), _) => w.body_measure(measure),
        (None, "occasion") => w.get("plan-occasion"),
        (None, other) => field_name(w, other),
    }
}

fn form(ask: &Ask, w: &'static Words, fields: &Fields, problems: &[Problem]) -> Markup {
    let title = w.get("checks-new");
    let wrongs: Vec<Wrong> = wrongs(w, problems, |field| label(w, field));
    let entry = Entry {
        words: w,
        fields,
        wrongs: &wrongs,
    };
    let stature = BodyMeasure::Stature;
    let sexes: Vec<(&str, String)> = Sex::ALL.iter().map(|&s| (s.key(), w.sex(s))).collect();
    let chosen = state::occasion(entry.text("occasion")).ok().flatten();
    let body = html! {
        p.crumb { a href="/checks" { (w.get("checks-title")) } }
        h1 { (title) }
        (fault_summary(w, &wrongs))
        p { (w.get("checks-new-how")) }
        form method="post" action="/checks/new" data-keep=(if wrongs.is_empty() { "saved" } else { "unsaved" }) novalidate {
            (entry.line("name", &w.get("field-name"), true))
            (entry.choice("sex", &w.get("field-sex"), &sexes, Sex::Women.key()))
            (entry.length(stature.key(), &w.body_measure(stature), &w.get("checks-new-stature")))
            (plan_parts::occasions(w, chosen.unwrap_or(Occasion::Indoors)))
            (entry.lines("note", &w.get("field-note")))
            div.acts { button.main-act { (w.get("checks-begin")) } a.button href="/checks" { (w.get("cancel")) } }
        }
    };
    frame(
        ask,
        &Frame::new(&title, Here::Checks).with(&["form.js"]),
        &body,
    )
}
