//! Two windows on one person: what only one of them changed is never overwritten by the other.

use axum::Router;
use axum::http::StatusCode;

use crate::studio::{empty_studio, encoded, form_of, get, post, small_studio, with};

const EDIT: &str = "/people/1/edit";
const HANA: &str = "name=Hana&sex=women&stature=158&hip_girth=92&note=first";

/// A studio with one person, and her form as two windows have opened it.
async fn two_windows() -> (Router, Vec<(String, String)>) {
    let app = empty_studio();
    post(&app, "/people/new", HANA).await;
    let form = form_of(&get(&app, EDIT).await.text);
    (app, form)
}

/// The choice that a conflict's page makes beforehand in a line; none where it asks.
fn chosen<'a>(form: &'a [(String, String)], field: &str) -> Option<&'a str> {
    let line = format!("pick.{field}");
    let mut sent = form.iter().filter(|(name, _)| *name == line).peekable();
    assert!(sent.peek().is_some(), "{field} is asked: {form:?}");
    sent.map(|(_, pick)| pick.as_str())
        .find(|pick| !pick.is_empty())
}

#[tokio::test]
async fn what_only_the_other_window_changed_stays_as_the_other_window_left_it() {
    let (app, form) = two_windows().await;
    let first = with(with(form.clone(), "waist_girth", "70"), "hip_girth", "94");
    assert_eq!(
        post(&app, EDIT, &encoded(&first)).await.status,
        StatusCode::SEE_OTHER
    );
    // The second window corrects the note and nothing else.
    let second = with(form, "note", "second");
    let asked = post(&app, EDIT, &encoded(&second)).await;
    assert_eq!(asked.status, StatusCode::CONFLICT, "{}", asked.text);
    let form = form_of(&asked.text);
    assert_eq!(chosen(&form, "hip_girth"), Some("theirs"));
    assert_eq!(chosen(&form, "waist_girth"), Some("theirs"));
    assert_eq!(chosen(&form, "note"), Some("mine"));
    let saved = post(&app, EDIT, &encoded(&form)).await;
    assert_eq!(saved.status, StatusCode::SEE_OTHER, "{}", saved.text);
    let text = get(&app, EDIT).await.text;
    for kept in ["value=\"94 cm\"", "value=\"70 cm\"", ">\nsecond</textarea>"] {
        assert!(text.contains(kept), "{kept} in {text}");
    }
}

#[tokio::test]
async fn what_both_windows_changed_is_chosen_by_hand_or_not_saved() {
    let (app, form) = two_windows().await;
    let first = with(with(form.clone(), "name", "First"), "waist_girth", "70");
    post(&app, EDIT, &encoded(&first)).await;
    let second = with(with(form, "name", "Second"), "note", "second");
    let asked = post(&app, EDIT, &encoded(&second)).await;
    let form = form_of(&asked.text);
    assert_eq!(chosen(&form, "name"), None, "{}", asked.text);

    let again = post(&app, EDIT, &encoded(&form)).await;
    assert_eq!(
        again.status,
        StatusCode::UNPROCESSABLE_ENTITY,
        "{}",
        again.text
    );
    assert!(
        again.text.contains("href=\"#f-name\"") && again.text.contains("choose which one"),
        "{}",
        again.text
    );
    assert!(
        get(&app, "/people/1").await.text.contains("First"),
        "nothing was saved without a choice"
    );
    // What was chosen elsewhere is still chosen.
    let mut form = form_of(&again.text);
    assert_eq!(chosen(&form, "waist_girth"), Some("theirs"));
    assert_eq!(chosen(&form, "note"), Some("mine"));
    form.push(("pick.name".to_owned(), "mine".to_owned()));
    let saved = post(&app, EDIT, &encoded(&form)).await;
    assert_eq!(saved.status, StatusCode::SEE_OTHER, "{}", saved.text);
    let form = form_of(&get(&app, EDIT).await.text);
    for (field, want) in [
        ("name", "Second"),
        ("waist_girth", "70 cm"),
        ("note", "second"),
    ] {
        let sent = form.iter().find(|(name, _)| name == field);
        assert_eq!(sent.map(|(_, text)| text.as_str()), Some(want), "{field}");
    }
}

#[tokio::test]
async fn a_choice_holds_when_a_third_save_comes_between() {
    let (app, form) = two_windows().await;
    let first = with(with(form.clone(), "name", "First"), "waist_girth", "70");
    post(&app, EDIT, &encoded(&first)).await;
    let asked = post(&app, EDIT, &encoded(&with(form, "name", "Second"))).await;
    let mut mine = form_of(&asked.text);
    mine.push(("pick.name".to_owned(), "mine".to_owned()));
    // Before that is sent, the first window saves once more.
    let third = with(form_of(&get(&app, EDIT).await.text), "hip_girth", "95");
    post(&app, EDIT, &encoded(&third)).await;
    let asked = post(&app, EDIT, &encoded(&mine)).await;
    assert_eq!(asked.status, StatusCode::CONFLICT, "{}", asked.text);
    let form = form_of(&asked.text);
    assert_eq!(chosen(&form, "name"), Some("mine"), "the name was chosen");
    assert_eq!(chosen(&form, "hip_girth"), Some("theirs"));
    assert!(
        !asked.text.contains("pick.waist_girth"),
        "what was left to the other window is as that window has it"
    );
}

#[tokio::test]
async fn a_line_left_open_stays_open_when_a_third_save_comes_between() {
    let (app, form) = two_windows().await;
    post(&app, EDIT, &encoded(&with(form.clone(), "name", "First"))).await;
    let asked = post(&app, EDIT, &encoded(&with(form, "name", "Second"))).await;
    let open = form_of(&asked.text);
    let third = with(form_of(&get(&app, EDIT).await.text), "hip_girth", "95");
    post(&app, EDIT, &encoded(&third)).await;
    let asked = post(&app, EDIT, &encoded(&open)).await;
    assert_eq!(
        chosen(&form_of(&asked.text), "name"),
        None,
        "{}",
        asked.text
    );
}

#[tokio::test]
async fn a_form_that_was_refused_still_knows_what_it_started_from() {
    let (app, form) = two_windows().await;
    post(&app, EDIT, &encoded(&with(form.clone(), "hip_girth", "94"))).await;
    let wrong = with(form, "stature", "12 ells");
    let refused = post(&app, EDIT, &encoded(&wrong)).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    let mended = with(form_of(&refused.text), "stature", "159");
    let asked = post(&app, EDIT, &encoded(&mended)).await;
    let form = form_of(&asked.text);
    assert_eq!(chosen(&form, "stature"), Some("mine"), "{}", asked.text);
    assert_eq!(chosen(&form, "hip_girth"), Some("theirs"));
}

#[tokio::test]
async fn garments_are_kept_from_being_overwritten_like_people() {
    let app = small_studio();
    let edit = "/garments/1/edit";
    let form = form_of(&get(&app, edit).await.text);
    let first = with(form.clone(), "erishita", "81");
    assert_eq!(
        post(&app, edit, &encoded(&first)).await.status,
        StatusCode::SEE_OTHER
    );
    let asked = post(&app, edit, &encoded(&with(form, "note", "aired"))).await;
    assert_eq!(asked.status, StatusCode::CONFLICT, "{}", asked.text);
    let form = form_of(&asked.text);
    assert_eq!(chosen(&form, "erishita"), Some("theirs"));
    assert_eq!(chosen(&form, "note"), Some("mine"));
}

#[tokio::test]
async fn two_windows_that_saved_the_same_are_not_asked() {
    let (app, form) = two_windows().await;
    let both = encoded(&with(form, "hip_girth", "94"));
    post(&app, EDIT, &both).await;
    let again = post(&app, EDIT, &both).await;
    assert_eq!(again.to, "/people/1?done=saved", "{}", again.text);
}
