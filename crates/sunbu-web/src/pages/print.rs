//! The sheet for printing: A4, black on white, the figure to a round scale.

use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::dressing::Plan;

use super::plan::Bench;
use super::plan_parts as parts;
use crate::answer::page;
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, frame};
use crate::state::State;

/// The sheet of the plan under the hands.
pub(crate) fn plan(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let state = State::read(ask.query());
    let bench = Bench::set(room, ask, &state)?;
    let (state, shown) = bench.work(bench.readable(ask.words(), state)?);
    let title = bench.title(ask.words());
    let back = format!("{}?{}", bench.path(), state.query());
    Ok(page(sheet(
        room, ask, &bench, &state, &shown, &title, &back,
    )))
}

/// The sheet of a kept plan.
pub(crate) fn saved(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let id = ask.id("plan").ok_or(Fault::NotFound)?;
    let saved = room.store().plan(id)?;
    let (bench, state) = Bench::of(&saved)?;
    let (state, shown) = bench.work(state);
    let back = format!("/plans/{id}");
    Ok(page(sheet(
        room,
        ask,
        &bench,
        &state,
        &shown,
        &saved.row.title,
        &back,
    )))
}

fn sheet(
    room: &Room,
    ask: &Ask,
    bench: &Bench,
    state: &State,
    shown: &Plan,
    title: &str,
    back: &str,
) -> Markup {
    let w = ask.words();
    let names = bench.title(w);
    let scene = bench.scene(shown, None, w, title);
    let now = room.now();
    let (figure, scale) = parts::paper_figure(&scene);
    let body = html! {
        div.acts {
            button.main-act data-print hidden { (w.get("print-button")) }
            a.button href=(back) { (w.get("print-back")) }
        }
        article.sheet {
            h1 { (title) }
            p {
                @if names != title { (names) br; }
                (w.with("print-occasion", &[("occasion", (&w.occasion(state.occasion)).into())]))
                " · " (w.with("print-date", &[("day", super::day(&now).into())]))
            }
            div.figure { (figure) }
            p.soft { (w.with("print-scale", &[("scale", (&scale.to_string()).into())])) }
            p.told { (parts::told(w, shown)) }
            (parts::notes(w, &scene))
            h2 { (w.get("saved-do")) }
            (parts::decisions(w, state, &bench.rules))
            h2 { (w.get("plan-numbers")) }
            (parts::numbers(w, shown))
            h2 { (w.get("plan-steps")) }
            (bench.steps_part(w, shown))
        }
    };
    frame(
        ask,
        &Frame::new(title, Here::Plans).with(&["print.js"]),
        &body,
    )
}
