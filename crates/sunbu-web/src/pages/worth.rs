//! Worth wearing? All garments for one person, and all people for one garment, best first.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::dressing::{Fitting, Occasion, Rules, Worth, rank};
use sunbu_core::problem::Problem;
use sunbu_store::Unread;
use sunbu_words::Words;

use super::{plan_parts, unread};
use crate::answer::page_with;
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, frame};
use crate::state;

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

impl Left {
    /// What does not even read.
    fn of(w: &Words, unread: &Unread) -> Self {
        Self {
            name: unread::name(w, unread),
            path: format!("{}/edit", unread::path(unread)),
        }
    }
}

/// Whose ranking it is: title, place in the menu, and where it is left to.
struct Head {
    title: String,
    here: Here,
    /// Path and name.
    back: (String, String),
}

/// What was ranked, best first, and what was left out.
struct Ranking {
    occasion: Occasion,
    lines: Vec<Line>,
    left: Vec<Left>,
}

/// All garments for one person.
pub(crate) fn garments_for(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = ask.id("person").ok_or(Fault::NotFound)?;
    let store = room.store();
    let (person, garments, standard) = (store.person(id)?, store.garments()?, store.standard()?);
    drop(store);
    let body = person.value.body()?;
    let name = person.value.name;
    let head = Head {
        title: w.with("worth-garments-title", &[("name", (&name).into())]),
        here: Here::People,
        back: (format!("/people/{id}"), name),
    };
    let ranked = asked(ask).map(|occasion| {
        let (mut named, mut fittings) = (Vec::new(), Vec::new());
        let mut left: Vec<Left> = garments.unread.iter().map(|one| Left::of(w, one)).collect();
        for (kept, name) in garments
            .read
            .iter()
            .zip(super::told_apart(w, &garments.read))
        {
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
        let lines = lines(&named, &fittings);
        Ranking {
            occasion,
            lines,
            left,
        }
    });
    Ok(ranking(ask, &head, ranked))
}

/// All people for one garment.
pub(crate) fn people_for(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let id = ask.id("garment").ok_or(Fault::NotFound)?;
    let store = room.store();
    let (piece, people, standard) = (store.garment(id)?, store.people()?, store.standard()?);
    drop(store);
    let garment = piece.value.garment()?;
    let name = piece.value.name;
    let head = Head {
        title: w.with("worth-people-title", &[("name", (&name).into())]),
        here: Here::Garments,
        back: (format!("/garments/{id}"), name),
    };
    let ranked = asked(ask).map(|occasion| {
        let (mut named, mut fittings) = (Vec::new(), Vec::new());
        let mut left: Vec<Left> = people.unread.iter().map(|one| Left::of(w, one)).collect();
        for (kept, name) in people.read.iter().zip(super::told_apart(w, &people.read)) {
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
        let lines = lines(&named, &fittings);
        Ranking {
            occasion,
            lines,
            left,
        }
    });
    Ok(ranking(ask, &head, ranked))
}

/// The occasion that is asked for; indoors when it is not said.
fn asked(ask: &Ask) -> Result<Occasion, Box<Problem>> {
    let said = state::occasion(ask.queried("occasion").unwrap_or(""))?;
    Ok(said.unwrap_or(Occasion::Indoors))
}

fn plan_path(person: i64, garment: i64, occasion: Occasion) -> String {
    format!("/people/{person}/in/{garment}?occasion={}", occasion.key())
}

fn lines(named: &[(String, String)], fittings: &[(Fitting, Rules)]) -> Vec<Line> {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let line = |(i, worth): (usize, Worth)| {
        let (name, path) = named[i].clone();
        Line { name, path, worth }
    };
    rank(fittings, threads).into_iter().map(line).collect()
}

/// The page; for an occasion that nobody knows nothing is ranked, since it would be the ranking
/// of another one.
fn ranking(ask: &Ask, head: &Head, ranked: Result<Ranking, Box<Problem>>) -> Response {
    let w = ask.words();
    let occasion = ranked.as_ref().map_or(Occasion::Indoors, |r| r.occasion);
    let body = html! {
        p.crumb { a href=(head.back.0) { (head.back.1) } }
        h1 { (head.title) }
        @if let Err(unknown) = &ranked { (plan_parts::faults(w, &[unknown])) }
        form.search method="get" {
            (plan_parts::occasions(w, occasion))
            button { (w.get("worth-again")) }
        }
        @if let Ok(ranked) = &ranked { (ranked_list(w, ranked)) }
    };
    let status = if ranked.is_ok() {
        StatusCode::OK
    } else {
        StatusCode::UNPROCESSABLE_ENTITY
    };
    page_with(
        status,
        frame(ask, &Frame::new(&head.title, head.here), &body),
    )
}

fn ranked_list(w: &Words, ranked: &Ranking) -> Markup {
    html! {
        @if ranked.lines.is_empty() { p { (w.get("worth-nothing")) } }
        ol.list {
            @for line in &ranked.lines {
                li {
                    a.grow href=(line.path) { (line.name) }
                    (verdict(w, &line.worth))
                    span.reason { (w.reason(&line.worth)) }
                }
            }
        }
        @if !ranked.left.is_empty() {
            h2 { (w.get("worth-left")) }
            ul.list { @for one in &ranked.left { li { a href=(one.path) { (one.name) } } } }
        }
    }
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
