//! What no longer reads is shown, mended and erased, and closes nothing but itself.

use std::fs;

use axum::Router;
use axum::http::StatusCode;
use sunbu_store::Store;
use tempfile::TempDir;

use crate::studio::{NOW, encoded, follow, form_of, get, keep, post, studio, with};

/// A studio in a file with Hana (1) and Reiko (2), a komon (1) and a tsumugi (2).
struct OnDisk {
    folder: TempDir,
    app: Router,
}

const HANA: &str = "name=Hana&sex=women&stature=158.31&hip_girth=92&waist_girth=70.17";
const CLOTH: &str = "kind=nagagi&cloth=soft&mitake_from=shoulder&ushirohaba=30";

impl OnDisk {
    async fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let app = opened(&folder);
        let reiko = "name=Reiko&sex=women&stature=161&hip_girth=93";
        let komon = format!("name=Komon&{CLOTH}&mitake=158.47");
        let tsumugi = format!("name=Tsumugi&{CLOTH}&mitake=163");
        for (path, form) in [
            ("/people/new", HANA),
            ("/people/new", reiko),
            ("/garments/new", &komon),
            ("/garments/new", &tsumugi),
        ] {
            let added = post(&app, path, form).await;
            assert_eq!(added.status, StatusCode::SEE_OTHER, "{}", added.text);
        }
        Self { folder, app }
    }

    /// The same studio after something else wrote to its file: every `from` is a `to` of the same
    /// length.
    fn changed(self, changes: &[(&str, &str)]) -> Self {
        let Self { folder, app } = self;
        drop(app);
        let path = folder.path().join("studio.sunbu");
        let mut bytes = fs::read(&path).expect("the file");
        for (from, to) in changes {
            assert_eq!(from.len(), to.len(), "{from} and {to}");
            let places: Vec<usize> = (0..bytes.len())
                .filter(|&at| bytes[at..].starts_with(from.as_bytes()))
                .collect();
            assert!(!places.is_empty(), "{from} is not in the file");
            for at in places {
                bytes[at..at + to.len()].copy_from_slice(to.as_bytes());
            }
        }
        fs::write(&path, bytes).expect("written");
        let app = opened(&folder);
        Self { folder, app }
    }
}

fn opened(folder: &TempDir) -> Router {
    let path = folder.path().join("studio.sunbu");
    studio(Store::open(&path, NOW).expect("a store"))
}

/// Hana and the komon put beyond their limits.
async fn with_unread() -> OnDisk {
    let studio = OnDisk::new().await;
    studio.changed(&[("158.31 cm", "958.31 cm"), ("158.47 cm", "1 of gold")])
}

#[tokio::test]
async fn an_entry_that_does_not_read_closes_no_page_but_its_own() {
    let studio = with_unread().await;
    let app = &studio.app;
    for path in [
        "/",
        "/people",
        "/garments",
        "/people/2",
        "/garments/2",
        "/people/2/worth",
        "/garments/2/suits",
        "/people/2/in/2",
        "/settings",
        "/plans",
        "/people/1/edit",
        "/people/1/erase",
        "/garments/1/edit",
        "/garments/1/erase",
    ] {
        let answer = follow(app, path).await;
        assert_eq!(answer.status, StatusCode::OK, "{path}: {}", answer.text);
    }
    assert!(get(app, "/").await.text.contains("There are 2 people"));
    for (list, name, edit) in [
        ("/people", "Hana", "/people/1/edit"),
        ("/garments", "Komon", "/garments/1/edit"),
        ("/people?search=han", "Hana", "/people/1/edit"),
        ("/people/2/worth", "Komon", "/garments/1/edit"),
        ("/garments/2/suits", "Hana", "/people/1/edit"),
    ] {
        let text = get(app, list).await.text;
        let link = format!("href=\"{edit}\">{name}</a>");
        assert!(text.contains(&link), "{link} on {list}: {text}");
        let said = ["cannot be read", "Left out"];
        assert!(said.iter().any(|s| text.contains(s)), "{list}: {text}");
    }
    assert!(!get(app, "/people?search=reiko").await.text.contains("Hana"));
    for path in ["/people/1", "/people/1/worth", "/people/1/in/2"] {
        let answer = get(app, path).await;
        assert_eq!(answer.status, StatusCode::CONFLICT, "{path}");
        for said in ["Hana", "958.31", "href=\"/people/1/edit\""] {
            assert!(
                answer.text.contains(said),
                "{said} on {path}: {}",
                answer.text
            );
        }
    }
}

#[tokio::test]
async fn its_form_shows_what_is_kept_and_takes_the_mended_entry() {
    let studio = with_unread().await;
    let app = &studio.app;
    for (path, field, kept) in [
        ("/people/1", "stature", "958.31 cm"),
        ("/garments/1", "mitake", "1 of gold"),
    ] {
        let edit = format!("{path}/edit");
        let page = get(app, &edit).await.text;
        for shown in [
            format!("name=\"{field}\" value=\"{kept}\""),
            format!("href=\"#f-{field}\""),
            format!("id=\"f-{field}-wrong\""),
            "cannot be read as it stands".to_owned(),
        ] {
            assert!(page.contains(&shown), "{shown} in {page}");
        }
        // As wrong as before, with something else typed beside it.
        let form = with(form_of(&page), "note", "ask her");
        let refused = post(app, &edit, &encoded(&form)).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
        for shown in [kept, "ask her"] {
            assert!(refused.text.contains(shown), "{shown} in {}", refused.text);
        }
        let form = with(form_of(&refused.text), field, "158");
        let saved = post(app, &edit, &encoded(&form)).await;
        assert_eq!(saved.status, StatusCode::SEE_OTHER, "{}", saved.text);
        let shown = get(app, path).await;
        assert_eq!(shown.status, StatusCode::OK);
        assert!(shown.text.contains("ask her"), "{}", shown.text);
    }
    assert!(!get(app, "/people").await.text.contains("cannot be read"));
}

#[tokio::test]
async fn the_later_of_two_windows_is_told_of_a_version_that_does_not_read() {
    let studio = OnDisk::new().await;
    let page = get(&studio.app, "/people/1/edit").await.text;
    let late = encoded(&with(form_of(&page), "note", "mine"));
    let first = encoded(&with(form_of(&page), "name", "Hanae"));
    let saved = post(&studio.app, "/people/1/edit", &first).await;
    assert_eq!(saved.status, StatusCode::SEE_OTHER, "{}", saved.text);
    let studio = studio.changed(&[("158.31 cm", "958.31 cm")]);
    let told = post(&studio.app, "/people/1/edit", &late).await;
    assert_eq!(told.status, StatusCode::CONFLICT, "{}", told.text);
    for shown in ["Hanae", "mine", "958.31 cm", "pick.stature"] {
        assert!(told.text.contains(shown), "{shown} in {}", told.text);
    }
    let mut form = form_of(&told.text);
    for (field, pick) in [("name", "theirs"), ("note", "mine"), ("stature", "mine")] {
        form.push((format!("pick.{field}"), pick.to_owned()));
    }
    let saved = post(&studio.app, "/people/1/edit", &encoded(&form)).await;
    assert_eq!(saved.status, StatusCode::SEE_OTHER, "{}", saved.text);
    let text = get(&studio.app, "/people/1").await.text;
    assert!(text.contains("Hanae") && text.contains("mine"), "{text}");
}

#[tokio::test]
async fn a_field_that_no_form_has_is_shown_and_left_out_when_saved() {
    let studio = OnDisk::new().await;
    // The last letter alone, so that the field keeps its place in the file's order.
    let studio = studio.changed(&[("waist_girth70.17", "waist_girti70.17")]);
    let page = get(&studio.app, "/people/1/edit").await.text;
    for shown in ["id=\"f-waist_girti\"", "value=\"70.17 cm\"", "is left out"] {
        assert!(page.contains(shown), "{shown} in {page}");
    }
    let form = encoded(&form_of(&page));
    let saved = post(&studio.app, "/people/1/edit", &form).await;
    assert_eq!(saved.status, StatusCode::SEE_OTHER, "{}", saved.text);
    assert_eq!(get(&studio.app, "/people/1").await.status, StatusCode::OK);
}

#[tokio::test]
async fn an_entry_that_does_not_read_is_erased_like_any_other() {
    let studio = with_unread().await;
    for path in ["/people/1", "/garments/1"] {
        let done = post(&studio.app, &format!("{path}/erase"), "").await;
        assert_eq!(done.status, StatusCode::SEE_OTHER, "{}", done.text);
        let gone = get(&studio.app, path).await;
        assert_eq!(gone.status, StatusCode::NOT_FOUND, "{path}");
    }
}

#[tokio::test]
async fn plans_go_on_with_other_hands_and_say_so_when_the_dresser_does_not_read() {
    let studio = OnDisk::new().await;
    post(&studio.app, "/settings", "dresser=1").await;
    let studio = studio.changed(&[("158.31 cm", "958.31 cm")]);
    let app = &studio.app;
    let plan = follow(app, "/people/2/in/2").await;
    assert_eq!(plan.status, StatusCode::OK, "{}", plan.text);
    for page in [&plan.text, &get(app, "/settings").await.text] {
        for said in ["The entry of Hana", "href=\"/people/1/edit\""] {
            assert!(page.contains(said), "{said} in {page}");
        }
    }
    assert!(plan.text.contains("taken from the person who is dressed"));
    // Saving the settings as they are shown changes nothing.
    let shown = get(app, "/settings").await.text;
    assert!(
        shown.contains("<option value=\"1\" selected>Hana"),
        "{shown}"
    );
    let saved = post(app, "/settings", "dresser=1").await;
    assert_eq!(saved.status, StatusCode::SEE_OTHER);
    keep(app, "/people/2/in/2", "Tea").await;
}

#[tokio::test]
async fn a_plan_that_does_not_read_is_listed_says_so_and_is_erased() {
    let studio = OnDisk::new().await;
    keep(&studio.app, "/people/1/in/2", "Tea").await;
    let studio = studio.changed(&[("stature = 158.31", "stature = 958.31")]);
    let app = &studio.app;
    for list in ["/", "/plans", "/people/1"] {
        let text = get(app, list).await.text;
        assert!(text.contains("href=\"/plans/1\">Tea</a>"), "{list}: {text}");
    }
    for page in ["/plans/1", "/plans/1/print"] {
        let told = get(app, page).await;
        assert_eq!(told.status, StatusCode::CONFLICT, "{}", told.text);
        for said in [
            "This plan cannot be read",
            "Tea",
            "958.31",
            "href=\"/people/1/in/2?occasion=indoors",
            "href=\"/plans/1/erase\"",
        ] {
            assert!(told.text.contains(said), "{said} in {}", told.text);
        }
    }
    assert_eq!(get(app, "/plans/1/erase").await.status, StatusCode::OK);
    let done = post(app, "/plans/1/erase", "").await;
    assert_eq!(done.status, StatusCode::SEE_OTHER);
    assert_eq!(get(app, "/plans/1").await.status, StatusCode::NOT_FOUND);
}
