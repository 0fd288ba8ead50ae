//! Worth wearing? All garments for one person, and all people for one garment, best first.

use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::dressing::{Fitting, Occasion, Rules, Worth, rank};
use sunbu_words::Words;

use super::plan_parts;
use crate::answer::page;
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, frame};

/// One line of a ranking: who or what, where its plan is, and how well it falls.
struct Line {
    name: String,
    path: String,
    worth: Worth,
}

/// What cannot be ranked, and where to mend it.
struct Left {
    name: String,
    path: String,
}

/// All garments for one person.
pub(crate) fn garments_for(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = ask.id("person").ok_or(Fault::NotFound)?;
    let occasion = occasion(ask);
    let store = room.store();
    let (person, garments, standard) = (store.person(id)?, store.garments()?, store.standard()?);
    drop(store);
    let body = person.value.body()?;
    let (mut named, mut fittings, mut left) = (Vec::new(), Vec::new(), Vec::new());
    for (kept, name) in garments.iter().zip(super::told_apart(w, &garments)) {
        let Ok(garment) = kept.value.garment() else {
            left.push(Left {
                name,
                path: format!("/garments/{}/edit", kept.id),
            });
            continue;
        };
        let rules = standard.rules(occasion, &body, garment.cloth());
        fittings.push((Fitting::new(&body, &garment), rules));
        named.push((name, plan_path(id, kept.id, occasion)));
    }
    let lines = ranked(&named, &fittings);
    let name = person.value.name;
    let title = w.with("worth-garments-title", &[("name", (&name).into())]);
    let back = (format!("/people/{id}"), name);
    Ok(page(ranking(
        ask,
        &title,
        Here::People,
        &back,
        occasion,
        &lines,
        &left,
    )))
}

/// All people for one garment.
pub(crate) fn people_for(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = ask.id("garment").ok_or(Fault::NotFound)?;
    let occasion = occasion(ask);
    let store = room.store();
    let (piece, people, standard) = (store.garment(id)?, store.people()?, store.standard()?);
    drop(store);
    let garment = piece.value.garment()?;
    let (mut named, mut fittings, mut left) = (Vec::new(), Vec::new(), Vec::new());
    for (kept, name) in people.iter().zip(super::told_apart(w, &people)) {
        let Ok(body) = kept.value.body() else {
            left.push(Left {
                name,
                path: format!("/people/{}/edit", kept.id),
            });
            continue;
        };
        let rules = standard.rules(occasion, &body, garment.cloth());
        fittings.push((Fitting::new(&body, &garment), rules));
        named.push((name, plan_path(kept.id, id, occasion)));
    }
    let lines = ranked(&named, &fittings);
    let name = piece.value.name;
    let title = w.with("worth-people-title", &[("name", (&name).into())]);
    let back = (format!("/garments/{id}"), name);
    Ok(page(ranking(
        ask,
        &title,
        Here::Garments,
        &back,
        occasion,
        &lines,
        &left,
    )))
}

fn occasion(ask: &Ask) -> Occasion {
    ask.queried("occasion")
        .and_then(Occasion::from_key)
        .unwrap_or(Occasion::Indoors)
}

fn plan_path(person: i64, garment: i64, occasion: Occasion) -> String {
    format!("/people/{person}/in/{garment}?occasion={}", occasion.key())
}

fn ranked(named: &[(String, String)], fittings: &[(Fitting, Rules)]) -> Vec<Line> {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let line = |(i, worth): (usize, Worth)| {
        let (name, path) = named[i].clone();
        Line { name, path, worth }
    };
    rank(fittings, threads).into_iter().map(line).collect()
}

fn ranking(
    ask: &Ask,
    title: &str,
    here: Here,
    back: &(String, String),
    occasion: Occasion,
    lines: &[Line],
    left: &[Left],
) -> Markup {
    let w = ask.words();
    let body = html! {
        p.crumb { a href=(back.0) { (back.1) } }
        h1 { (title) }
        form.search method="get" {
            (plan_parts::occasions(w, occasion))
            button { (w.get("worth-again")) }
        }
        @if lines.is_empty() { p { (w.get("worth-nothing")) } }
        ol.list {
            @for line in lines {
                li {
                    a.grow href=(line.path) { (line.name) }
                    (verdict(w, &line.worth))
                    span.reason { (w.reason(&line.worth)) }
                }
            }
        }
        @if !left.is_empty() {
            h2 { (w.get("worth-left")) }
            ul.list { @for one in left { li { a href=(one.path) { (one.name) } } } }
        }
    };
    frame(ask, &Frame::new(title, here), &body)
}

/// The verdict by sign and word.
fn verdict(w: &Words, worth: &Worth) -> Markup {
    use sunbu_core::dressing::Verdict as V;
    let (class, sign) = match worth.verdict {
        V::FallsRight => ("mark ok", "◎"),
        V::WithCare => ("mark ok", "○"),
        V::Shows => ("mark so", "△"),
        V::LeaveIt => ("mark off", "✕"),
    };
    html! { span class=(class) { (sign) " " (w.verdict(worth.verdict)) } }
}
