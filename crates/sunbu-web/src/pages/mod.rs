//! The pages, one file each. A handler reads what was asked, checks it, calls the core or the
//! store, and chooses a page; the functions that make markup take finished values.

pub(crate) mod check;
pub(crate) mod form;
mod garment_form;
pub(crate) mod garments;
pub(crate) mod home;
pub(crate) mod onlookers;
pub(crate) mod people;
mod person_form;
pub(crate) mod plan;
mod plan_parts;
pub(crate) mod print;
mod rule_fields;
mod rule_read;
pub(crate) mod rules;
pub(crate) mod saved;
pub(crate) mod settings;
pub(crate) mod small;
pub(crate) mod unread;
pub(crate) mod worth;

use maud::{Markup, html};
use sunbu_core::case::{Person, Piece};
use sunbu_store::{Kept, PlanRow};
use sunbu_words::Words;

use crate::search::same_name;
use form::Thing;

/// The search field above a list.
fn search_form(w: &Words, action: &str, sought: &str, label: &str) -> Markup {
    html! {
        form.search role="search" method="get" action=(action) {
            div {
                label for="search" { (label) }
                input #search type="search" name="search" value=(sought);
            }
            button { (w.get("search")) }
        }
    }
}

/// A choice of one garment.
fn garment_select(w: &Words, garments: &[Kept<Piece>]) -> Markup {
    html! {
        select #garment name="garment" {
            @for (kept, name) in garments.iter().zip(told_apart(w, garments)) {
                option value=(kept.id) { (name) }
            }
        }
    }
}

/// A choice of one person.
fn person_select(w: &Words, people: &[Kept<Person>]) -> Markup {
    html! {
        select #person name="person" {
            @for (kept, name) in people.iter().zip(told_apart(w, people)) {
                option value=(kept.id) { (name) }
            }
        }
    }
}

/// The names of all; where two read alike, each with the measure that tells them apart.
fn told_apart<T: Thing>(w: &Words, all: &[Kept<T>]) -> Vec<String> {
    let name = |kept: &Kept<T>| {
        let own = kept.value.name();
        let repeats = all
            .iter()
            .any(|other| other.id != kept.id && same_name(other.value.name(), own));
        match kept.value.telling(w).filter(|_| repeats) {
            Some(telling) => w.with(
                "name-told-apart",
                &[("name", own.into()), ("telling", (&telling).into())],
            ),
            None => own.to_owned(),
        }
    };
    all.iter().map(name).collect()
}

/// Saved plans, newest first, under a heading; nothing when there are none.
fn plan_list(w: &Words, plans: &[PlanRow], heading: &str) -> Markup {
    html! {
        @if !plans.is_empty() {
            h2 { (heading) }
            (plan_rows(w, plans))
        }
    }
}

/// Saved plans as a list.
fn plan_rows(w: &Words, plans: &[PlanRow]) -> Markup {
    html! {
        ul.list {
            @for plan in plans {
                li {
                    a.grow href={ "/plans/" (plan.id) } { (plan.title) }
                    span { (plan.person) " · " (plan.garment) " · " (occasion(w, plan)) }
                    span.soft.num { (day(&plan.made_at)) }
                }
            }
        }
    }
}

/// What a kept plan is for, in words.
fn occasion(w: &Words, plan: &PlanRow) -> String {
    plan.occasion
        .map_or_else(|| w.get("unread-occasion"), |occasion| w.occasion(occasion))
}

/// The day of an ISO 8601 time.
pub(crate) fn day(time: &str) -> &str {
    time.split('T').next().unwrap_or(time)
}

/// The name of a field that is no measure; a name that no form has stands as it is.
fn field_name(w: &Words, field: &str) -> String {
    match field {
        "name" | "sex" | "note" | "kind" | "cloth" | "mitake_from" => {
            w.get(&format!("field-{field}"))
        }
        other => other.to_owned(),
    }
}
