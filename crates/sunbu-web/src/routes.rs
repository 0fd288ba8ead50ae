//! Which address leads to which page.

use axum::Router;
use axum::extract::{DefaultBodyLimit, Request, State};
use axum::http::StatusCode;
use axum::middleware;
use axum::response::Response;
use axum::routing::{MethodRouter, get, post};
use sunbu_core::case::{Person, Piece};
use sunbu_core::dressing::Occasion;
use sunbu_image::MOST_BYTES;
use sunbu_words::{Lang, Words};
use tower_http::csrf::CsrfLayer;

use crate::app::{App, Room};
use crate::ask::Ask;
use crate::error::Fault;
use crate::pages::{
    check, form, garments, home, people, plan, print, rules, saved, settings, small, worth,
};
use crate::{answer, assets, guard};

/// What answers a request: reads, checks, calls the core, chooses a page.
type Page = fn(&Room, &Ask) -> Result<Response, Fault>;

/// The pages of a studio.
pub fn router(app: App) -> Router {
    let room = Room::new(app);
    Router::new()
        .route("/", get_at(home::show))
        .route("/people", get_at(people::list))
        .route(
            "/people/new",
            both_at(form::new::<Person>, form::add::<Person>),
        )
        .route("/people/{person}", get_at(people::show))
        .route(
            "/people/{person}/edit",
            both_at(form::edit::<Person>, form::save::<Person>),
        )
        .route(
            "/people/{person}/erase",
            both_at(form::confirm_erase::<Person>, form::erase::<Person>),
        )
        .route("/people/{person}/plan", get_at(people::to_plan))
        .route("/people/{person}/worth", get_at(worth::garments_for))
        .route("/people/{person}/in/{garment}", get_at(plan::show))
        .route("/people/{person}/in/{garment}/redraw", get_at(plan::redraw))
        .route(
            "/people/{person}/in/{garment}/ways-out",
            get_at(plan::find_ways_out),
        )
        .route("/people/{person}/in/{garment}/print", get_at(print::plan))
        .route(
            "/people/{person}/in/{garment}/picture.svg",
            get_at(plan::picture),
        )
        .route("/people/{person}/in/{garment}/save", post_at(plan::keep))
        .route("/garments", get_at(garments::list))
        .route(
            "/garments/new",
            both_at(form::new::<Piece>, form::add::<Piece>),
        )
        .route("/garments/{garment}", get_at(garments::show))
        .route(
            "/garments/{garment}/edit",
            both_at(form::edit::<Piece>, form::save::<Piece>),
        )
        .route(
            "/garments/{garment}/erase",
            both_at(form::confirm_erase::<Piece>, form::erase::<Piece>),
        )
        .route("/garments/{garment}/plan", get_at(garments::to_plan))
        .route("/garments/{garment}/suits", get_at(worth::people_for))
        .route("/plan", get_at(home::to_plan))
        .route("/plans", get_at(saved::list))
        .route("/plans/{plan}", get_at(saved::show))
        .route("/plans/{plan}/print", get_at(print::saved))
        .route(
            "/plans/{plan}/erase",
            both_at(saved::confirm_erase, saved::erase),
        )
        .route(
            "/people/{person}/in/{garment}/check",
            post_at(check::begin::of_plan),
        )
        .route("/plans/{plan}/check", post_at(check::begin::of_kept))
        .merge(checks())
        .route("/rules", get_at(rules::list))
        .route("/rules/of/{occasion}", both_at(rules::edit, rules::save))
        .route("/rules/toml", both_at(rules::edit_toml, rules::save_toml))
        .route("/rules/reset", both_at(rules::confirm_reset, rules::reset))
        .route("/settings", both_at(settings::show, settings::save))
        .route("/language", post_at(small::choose_language))
        .route("/reading", get_at(small::reading))
        .route("/assets/{hash}/{name}", get(assets::serve))
        .fallback(|room, request| run(room, request, |_, _| Err(Fault::NotFound)))
        .method_not_allowed_fallback(|room, request| {
            run(room, request, |_, _| Err(Fault::WrongMethod))
        })
        .with_state(room)
        .layer(CsrfLayer::new().with_rejection_response(from_elsewhere))
        .layer(middleware::from_fn(guard::known_host))
        .layer(middleware::from_fn(guard::headers))
}

/// The pages of checks.
fn checks() -> Router<Room> {
    // A photo, and the few words of the form that it comes with.
    let most = DefaultBodyLimit::max(MOST_BYTES + 4096);
    Router::new()
        .route("/checks", get_at(check::list::list))
        .route("/checks/new", both_at(check::begin::new, check::begin::add))
        .route("/checks/{check}", get_at(check::show::show))
        .route("/checks/{check}/seen", post_at(check::eye::save))
        .route(
            "/checks/{check}/erase",
            both_at(check::list::confirm_erase, check::list::erase),
        )
        .route(
            "/checks/{check}/photos",
            post_at(check::photos::add).layer(most),
        )
        .route(
            "/checks/{check}/photos/{photo}",
            get_at(check::marking::show),
        )
        .route(
            "/checks/{check}/photos/{photo}/marks",
            post_at(check::marking::place),
        )
        .route(
            "/checks/{check}/photos/{photo}/picture.jpg",
            get_at(check::photos::picture),
        )
        .route(
            "/checks/{check}/photos/{photo}/shown.jpg",
            get_at(check::pictured::shown),
        )
        .route(
            "/checks/{check}/photos/{photo}/hidden",
            post_at(check::face::save),
        )
        .route("/checks/{check}/report", get_at(check::report::show))
        .route("/checks/{check}/sheet", get_at(check::sheet::show))
        .route("/checks/{check}/sheet.png", get_at(check::sheet::picture))
        .route("/checks/{check}/message.txt", get_at(check::sheet::text))
        .route(
            "/checks/{check}/photos/{photo}/erase",
            post_at(check::photos::erase),
        )
}

fn get_at(page: Page) -> MethodRouter<Room> {
    get(move |room, request| run(room, request, page))
}

fn post_at(page: Page) -> MethodRouter<Room> {
    post(move |room, request| run(room, request, page))
}

fn both_at(show: Page, send: Page) -> MethodRouter<Room> {
    get_at(show).merge(post_at(send))
}

/// Answers a request on a thread that may wait for the disk; what goes wrong has its page.
async fn run(State(room): State<Room>, request: Request, page: Page) -> Response {
    let ask = match Ask::read(request).await {
        Ok(ask) => ask,
        Err(refusal) => return refusal,
    };
    let asked = ask.clone();
    let work = tokio::task::spawn_blocking(move || page(&room, &asked));
    let answer = work.await.unwrap_or(Err(Fault::Broken));
    answer.unwrap_or_else(|fault| fault.page(&ask))
}

/// What a page elsewhere gets that sends one of our forms, in every language.
fn from_elsewhere(_: tower_http::csrf::ProtectionError) -> Response {
    let texts = Lang::ALL
        .iter()
        .map(|&lang| Words::of(lang).get("error-elsewhere"));
    answer::plain(StatusCode::FORBIDDEN, &texts.collect::<Vec<_>>().join("\n"))
}

/// Every address of a page that is only looked at, on a studio that has this person, garment, saved
/// plan, and check with its photo: what an audit of all pages visits.
pub fn page_list(person: i64, garment: i64, plan: i64, check: i64, photo: i64) -> Vec<String> {
    let fixed = [
        "/",
        "/people",
        "/people/new",
        "/garments",
        "/garments/new",
        "/plans",
        "/checks",
        "/checks/new",
        "/rules",
        "/rules/toml",
        "/rules/reset",
        "/settings",
        "/nowhere",
    ];
    let mut all: Vec<String> = fixed.iter().map(|&path| path.to_owned()).collect();
    for page in ["", "/edit", "/erase", "/worth"] {
        all.push(format!("/people/{person}{page}"));
    }
    for page in ["", "/print"] {
        all.push(format!("/people/{person}/in/{garment}{page}"));
        all.push(format!(
            "/people/{person}/in/{garment}{page}?occasion=formal"
        ));
    }
    for page in ["", "/edit", "/erase", "/suits"] {
        all.push(format!("/garments/{garment}{page}"));
    }
    for page in ["", "/print", "/erase"] {
        all.push(format!("/plans/{plan}{page}"));
    }
    for page in ["", "/report", "/sheet", "/erase"] {
        all.push(format!("/checks/{check}{page}"));
    }
    all.push(format!("/checks/{check}/report?eye=tall&distance=1"));
    all.push(format!("/checks/{check}/photos/{photo}"));
    all.extend(
        Occasion::ALL
            .iter()
            .map(|occasion| format!("/rules/of/{}", occasion.key())),
    );
    all.push("/rules/of/every".to_owned());
    all
}
