//! One person in one garment: the figure, and the dressing under the hands.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Map, Value, json};
use sunbu_core::body::Body;
use sunbu_core::case::{CaseFile, MAX_NAME_CHARS};
use sunbu_core::dressing::{
    Decision, Fitting, Hands, Locks, Plan, Quantity, Rules, Standard, WaysOut, assess, plan, steps,
};
use sunbu_core::garment::Garment;
use sunbu_core::problem::Problem;
use sunbu_draw::{Page, Scene};
use sunbu_store::{NewPlan, SavedPlan, StoreError, Unread};
use sunbu_words::Words;

use super::onlookers::{self, Place};
use super::plan_parts::{self as parts, Free, Missed};
use super::unread;
use crate::answer::{go, json, page_with, svg};
use crate::app::Room;
use crate::ask::{Ask, pairs};
use crate::error::{Fault, UnreadPlan};
use crate::parts::{Frame, Here, frame};
use crate::state::State;

/// Everything a plan is made from, looked up and completed.
pub(crate) struct Bench {
    ids: (i64, i64),
    /// The number of the person whose hands the case names; none on the bench of a kept plan.
    dresser: Option<i64>,
    /// The one whose hands were to dress, when that entry does not read.
    unread_dresser: Option<Box<Unread>>,
    case: CaseFile,
    body: Body,
    cut: Garment,
    fitting: Fitting,
    hands: Hands,
    /// The rules for this person, cloth and occasion.
    pub rules: Rules,
}

impl Bench {
    /// The person and garment of the path, under the house rules for this occasion.
    pub fn set(room: &Room, ask: &Ask, state: &State) -> Result<Self, Fault> {
        let (person, garment) = ask
            .id("person")
            .zip(ask.id("garment"))
            .ok_or(Fault::NotFound)?;
        let store = room.store();
        let (dresser, unread_dresser) = match store.dresser() {
            Ok(dresser) => (dresser, None),
            // The plan is made with the hands of whoever is dressed, and says so.
            Err(StoreError::Unreadable(unread)) => (None, Some(unread)),
            Err(other) => return Err(other.into()),
        };
        let (dresser, hands) = dresser.map(|kept| (kept.id, kept.value)).unzip();
        let case = CaseFile {
            person: store.person(person)?.value,
            garments: vec![store.garment(garment)?.value],
            occasion: state.occasion,
            locks: state.locks(),
            dresser: hands,
            standard: store.own_standard()?.value,
        };
        drop(store);
        let bench = Self::from_case((person, garment), dresser, case)?;
        Ok(Self {
            unread_dresser,
            ..bench
        })
    }

    /// The bench of a kept plan, as it was, with its dressing.
    pub fn of(saved: &SavedPlan) -> Result<(Self, State), Fault> {
        // Kept by a version with wider limits: shown with another number it would not be the plan.
        let unread = |problems| {
            Fault::Plan(Box::new(UnreadPlan {
                row: saved.row.clone(),
                query: saved.query.clone(),
                problems,
            }))
        };
        let case = saved.case.clone().map_err(unread)?;
        let state = State::read(&pairs(saved.query.as_bytes()));
        let problems: Vec<Problem> = state.problems().into_iter().cloned().collect();
        if !problems.is_empty() {
            return Err(unread(problems));
        }
        let ids = saved.row.person_id.zip(saved.row.garment_id);
        match Self::from_case(ids.unwrap_or((0, 0)), None, case) {
            Ok(bench) => Ok((bench, state)),
            Err(Fault::Kept(problems)) => Err(unread(problems)),
            Err(other) => Err(other),
        }
    }

    fn from_case(ids: (i64, i64), dresser: Option<i64>, case: CaseFile) -> Result<Self, Fault> {
        let piece = case.garments.first().ok_or(Fault::NotFound)?;
        let (body, cut) = (case.person.body()?, piece.garment()?);
        let fitting = Fitting::new(&body, &cut);
        let customary;
        let standard = match &case.standard {
            Some(own) => own,
            None => {
                customary = Standard::customary();
                &customary
            }
        };
        let rules = standard.rules(case.occasion, &body, cut.cloth());
        let hands = match &case.dresser {
            Some(dresser) => Hands::of(&dresser.body()?),
            None => Hands::of(&body),
        };
        Ok(Self {
            ids,
            dresser,
            unread_dresser: None,
            case,
            body,
            cut,
            fitting,
            hands,
            rules,
        })
    }

    /// The state with the planner's numbers where it asks for them, and what will be seen.
    pub fn work(&self, state: State) -> (State, Plan) {
        let state = if state.ask {
            let found = plan(&self.fitting, &self.rules, &state.locks());
            state.dressed(&found.dressing, &self.rules)
        } else {
            state.completed(&self.rules)
        };
        let dressing = state.dressing(&self.rules);
        let seen = assess(&self.fitting, &self.rules, &state.locks(), dressing);
        (state, seen)
    }

    /// Lets a state pass in which every value could be read.
    ///
    /// # Errors
    /// [`Fault::Unread`]: a picture or a sheet of paper shows what was asked for, or nothing.
    pub fn readable(&self, w: &Words, state: State) -> Result<State, Fault> {
        let problems = state.problems();
        if problems.is_empty() {
            return Ok(state);
        }
        let told = problems.iter();
        let told = told.map(|problem| (parts::name(w, problem), w.fault(problem)));
        Err(Fault::Unread {
            told: told.collect(),
            back: format!("{}?{}", self.path(), state.query()),
        })
    }

    /// What the planner would do if nothing were locked: what the shown dressing is held against.
    fn wanted(&self) -> Plan {
        plan(&self.fitting, &self.rules, &Locks::new())
    }

    /// The drawing's scene; without `wanted` there is nothing to compare.
    pub fn scene<'a>(
        &'a self,
        shown: &'a Plan,
        wanted: Option<&'a Plan>,
        w: &'static Words,
        title: &'a str,
    ) -> Scene<'a> {
        Scene {
            body: &self.body,
            garment: &self.cut,
            fitting: &self.fitting,
            shown,
            wanted,
            words: w,
            title,
        }
    }

    /// The missed wishes and what would free each; ways out only when `deep`: they take many
    /// plans.
    pub fn missed<'a>(&self, state: &State, shown: &'a Plan, deep: bool) -> Vec<Missed<'a>> {
        let locks = state.locks();
        let planned = plan(&self.fitting, &self.rules, &locks);
        let mut remedies = WaysOut::new(&self.fitting, &self.rules, &locks);
        let mut found = |quantity: Quantity| match planned.check(quantity) {
            Some(check) if check.met() => Free::ByPlan,
            _ if deep => Free::Ways(remedies.of(quantity)),
            _ => Free::Later,
        };
        shown
            .missed()
            .map(|check| Missed {
                check,
                free: found(check.target.quantity),
            })
            .collect()
    }

    /// The number of the person.
    pub fn person(&self) -> i64 {
        self.ids.0
    }

    /// The case with every decision taken as in `state`.
    pub fn decided(&self, state: &State) -> CaseFile {
        let dressing = state.dressing(&self.rules);
        let all = Decision::ALL.iter();
        CaseFile {
            locks: all.map(|&d| (d, dressing.get(d))).collect(),
            ..self.case.clone()
        }
    }

    fn piece_name(&self) -> &str {
        self.case.garments.first().map_or("", |piece| &piece.name)
    }

    /// Who in what.
    pub fn title(&self, w: &Words) -> String {
        w.with(
            "plan-title",
            &[
                ("person", (&self.case.person.name).into()),
                ("garment", self.piece_name().into()),
            ],
        )
    }

    /// The hem of the shown dressing as others see it.
    fn sights(&self, w: &Words, shown: &Plan, place: &Place) -> Markup {
        onlookers::sights(w, (&self.body, &self.fitting), shown, place)
    }

    /// The page's path.
    pub fn path(&self) -> String {
        let (person, garment) = self.ids;
        format!("/people/{person}/in/{garment}")
    }

    /// The steps, and whose hand they are measured with.
    pub fn steps_part(&self, w: &Words, shown: &Plan) -> Markup {
        let found = steps(shown, &self.body, &self.hands, |d| self.rules.way(d).hands);
        let whose = match &self.case.dresser {
            Some(dresser) => w.with("plan-hands-own", &[("name", (&dresser.name).into())]),
            None => w.get("plan-hands-worn"),
        };
        html! {
            @if let Some(unread) = &self.unread_dresser { (unread::dresser(w, unread)) }
            p.soft { (whose) }
            (parts::steps(w, &found))
        }
    }
}

/// The page. An address without numbers leads to the one with the plan's numbers.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let state = State::read(ask.query());
    let bench = Bench::set(room, ask, &state)?;
    if state.ask {
        let (state, _) = bench.work(state);
        let place = Place::read(ask.query()).query();
        return Ok(go(&format!("{}?{}{place}", bench.path(), state.query())));
    }
    draw_page(room, ask, &bench, state, None)
}

/// The page with a state; `refused` says why a plan was not kept.
fn draw_page(
    room: &Room,
    ask: &Ask,
    bench: &Bench,
    state: State,
    refused: Option<&str>,
) -> Result<Response, Fault> {
    let w = ask.words();
    let saved = room.store().plans_of(bench.ids.0, bench.ids.1)?;
    let (state, shown) = bench.work(state);
    let (title, path) = (bench.title(w), bench.path());
    let wanted = bench.wanted();
    let scene = bench.scene(&shown, Some(&wanted), w, &title);
    let plan_name = ask.sent("title").unwrap_or("");
    let deep = ask.queried("ways").is_some();
    let place = Place::read(ask.query());
    let body = html! {
        p.crumb {
            a href={ "/people/" (bench.ids.0) } { (bench.case.person.name) } " · "
            a href={ "/garments/" (bench.ids.1) } { (bench.piece_name()) }
        }
        h1 { (title) }
        div #faults { (parts::faults(w, &state.problems())) }
        form #dressing method="get" action=(path) data-path=(path) data-lost=(w.get("plan-lost")) novalidate {
            div.bench {
                div.pin.unlike-it[!state.problems().is_empty()] {
                    div #figure .figure tabindex="0" role="group" aria-label=(w.get("plan-figure")) {
                        (parts::figure(&scene))
                    }
                    p #told .told role="status" { (parts::told(w, &shown)) }
                    p.unlike.wrong role="alert" { (w.get("plan-unlike")) }
                    div.acts {
                        button #redraw { (w.get("plan-redraw")) }
                        button.main-act name="ask" value="1" { (w.get("plan-ask")) }
                        // What was pinned in few lines stands in full further down.
                        span.ways-down {
                            a href="#ways-title" { (w.get("plan-go-missed")) " ↓" }
                            a href="#steps-title" { (w.get("plan-steps")) " ↓" }
                            a href="#save" { (w.get("plan-save")) " ↓" }
                        }
                    }
                }
                div.controls {
                    (parts::occasions(w, state.occasion))
                    p #lost .errors role="alert" hidden {}
                    p.soft { (w.get("plan-ask-how")) }
                    div #knobs .groups { (parts::knobs(w, &state, &bench.rules)) }
                }
                section.beside aria-labelledby="notes-title" {
                    h2 #notes-title { (w.get("plan-notes")) }
                    div #notes { (parts::notes(w, &scene)) }
                }
            }
        }
        h2 { (w.get("plan-numbers")) }
        div #numbers { (parts::numbers_folded(w, &shown)) }
        h2 #ways-title { (w.get("plan-ways")) }
        div #ways { (parts::ways(w, &bench.missed(&state, &shown, deep))) }
        // Ways out take many plans: the script asks for them once the page stands.
        @if !deep && shown.misses > 0.0 {
            noscript { p { a href={ (path) "?" (state.query()) "&ways=1#ways" } { (w.get("plan-ways-out")) } } }
        }
        h2 #seen-title { (w.get("seen-title")) }
        p { (w.get("seen-planned")) }
        div #sights { (bench.sights(w, &shown, &place)) }
        (onlookers::fields(w, &place, Some("dressing")))
        h2 #steps-title { (w.get("plan-steps")) }
        div #steps { (bench.steps_part(w, &shown)) }
        h2 #save { (w.get("plan-save")) }
        div.field.bad[refused.is_some()] {
            label for="title" { (w.get("plan-save-title")) }
            @if let Some(why) = refused { p.wrong #title-wrong { (why) } }
            input.wide #title name="title" form="dressing" value=(plan_name) maxlength="80"
                autocomplete="off" aria-describedby=[refused.map(|_| "title-wrong")];
        }
        div.acts {
            button.main-act form="dressing" formmethod="post" formaction={ (path) "/save" } { (w.get("plan-keep")) }
            button form="dressing" formaction={ (path) "/print" } { (w.get("plan-print")) }
            button form="dressing" formaction={ (path) "/picture.svg" } { (w.get("plan-picture")) }
            button form="dressing" formmethod="post" formaction={ (path) "/check" } { (w.get("checks-of-this")) }
        }
        (super::plan_list(w, &saved, &w.get("plan-history")))
    };
    let frame_of = Frame {
        class: Some("plan"),
        ..Frame::new(&title, Here::Plans).with(&["plan.js"])
    };
    let status = if refused.is_some() {
        StatusCode::UNPROCESSABLE_ENTITY
    } else {
        StatusCode::OK
    };
    Ok(page_with(status, frame(ask, &frame_of, &body)))
}

/// What the sliders ask for while they move: the parts that change, and the state's address; or
/// what is wrong in which field, and then nothing is drawn.
pub(crate) fn redraw(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let state = State::read(ask.query());
    let bench = Bench::set(room, ask, &state)?;
    if let Some(told) = wrong_fields(ask, &state) {
        return Ok(told);
    }
    let asked = state.ask;
    let (state, shown) = bench.work(state);
    let title = bench.title(w);
    let wanted = bench.wanted();
    let scene = bench.scene(&shown, Some(&wanted), w, &title);
    let mut changed = json!({
        "faults": "",
        "figure": parts::figure(&scene).into_string(),
        "notes": parts::notes(w, &scene).into_string(),
        "told": parts::told(w, &shown).into_string(),
        "numbers": parts::numbers_folded(w, &shown).into_string(),
        "steps": bench.steps_part(w, &shown).into_string(),
        "ways": parts::ways(w, &bench.missed(&state, &shown, false)).into_string(),
    });
    let place = Place::read(ask.query());
    changed["sights"] = bench.sights(w, &shown, &place).into_string().into();
    for (field, wrong) in place.wrongs(w) {
        // The script puts it into the page as markup: what was typed must not become any.
        changed[format!("{field}-wrong")] = html! { (wrong) }.into_string().into();
    }
    // The knobs are only replaced when the planner has moved them.
    if asked {
        changed["knobs"] = parts::knobs(w, &state, &bench.rules).into_string().into();
    }
    let values = state.values.iter();
    let values_cm: Map<String, Value> = values
        .map(|(decision, cm)| (decision.key().to_owned(), (*cm).into()))
        .collect();
    Ok(json(&json!({
        "query": state.query() + &place.query(),
        "problems": {},
        "values_cm": values_cm,
        "parts": changed,
    })))
}

/// What is wrong with a state, for the script; none when all can be read.
fn wrong_fields(ask: &Ask, state: &State) -> Option<Response> {
    let w = ask.words();
    let problems = state.problems();
    if problems.is_empty() {
        return None;
    }
    let told = problems.iter();
    let told: Map<String, Value> = told
        .map(|problem| (problem.place.clone(), w.fault(problem).into()))
        .collect();
    Some(json(&json!({
        "query": state.query() + &Place::read(ask.query()).query(),
        "problems": told,
        "parts": {},
    })))
}

/// The ways out of every missed wish, asked for when the hands rest.
pub(crate) fn find_ways_out(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let state = State::read(ask.query());
    let bench = Bench::set(room, ask, &state)?;
    if let Some(told) = wrong_fields(ask, &state) {
        return Ok(told);
    }
    let (state, shown) = bench.work(state);
    let found = parts::ways(w, &bench.missed(&state, &shown, true)).into_string();
    Ok(json(&json!({ "parts": { "ways": found } })))
}

/// Both views on one sheet to pin on a wall, as a picture.
pub(crate) fn picture(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let state = State::read(ask.query());
    let bench = Bench::set(room, ask, &state)?;
    let (_, shown) = bench.work(bench.readable(w, state)?);
    let title = bench.title(w);
    let scene = bench.scene(&shown, None, w, &title);
    Ok(svg(sunbu_draw::sheet(&scene, Page::Landscape)))
}

/// Keeps the plan under its name, with person, garment and rules as they are now.
pub(crate) fn keep(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let state = State {
        ask: false,
        ..State::read(ask.form())
    };
    let bench = Bench::set(room, ask, &state)?;
    let title = ask.sent("title").unwrap_or("").trim();
    let refused = match title.chars().count() {
        _ if !state.problems().is_empty() => Some("plan-keep-numbers"),
        0 => Some("plan-keep-name"),
        n if n > MAX_NAME_CHARS => Some("plan-keep-long"),
        _ => None,
    };
    if let Some(id) = refused {
        let why = ask.words().get(id);
        return draw_page(room, ask, &bench, state, Some(&why));
    }
    let state = state.completed(&bench.rules);
    let plan = NewPlan {
        ids: bench.ids,
        dresser: bench.dresser,
        title,
        case: &bench.case,
        query: &state.query(),
    };
    let id = room.store().add_plan(&plan, &room.now())?;
    Ok(go(&format!("/plans/{id}?done=kept")))
}
