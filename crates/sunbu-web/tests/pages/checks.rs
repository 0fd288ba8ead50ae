//! Checks through the router: begun, photos taken in and refused, ticks, erased.

use std::io::Cursor;

use axum::Router;
use axum::http::{StatusCode, header};
use image::{ImageFormat, RgbImage};

use crate::studio::{
    Answer, demo_studio, empty_studio, follow, get, get_in, keep, plan_query, post, post_file,
};

const PLAN: &str = "/people/15/in/40";

/// A picture of this size in this form.
fn picture(width: u32, height: u32, format: ImageFormat) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    let picture = RgbImage::from_fn(width, height, |x, y| {
        image::Rgb([
            u8::try_from(x % 251).expect("small"),
            90,
            u8::try_from(y % 249).expect("small"),
        ])
    });
    picture.write_to(&mut bytes, format).expect("encoded");
    bytes.into_inner()
}

/// Begins a check of the plan of a person in a garment; the path of its page.
async fn begin(app: &Router) -> String {
    let query = plan_query(app, PLAN).await;
    let begun = post(app, &format!("{PLAN}/check"), &query).await;
    assert_eq!(begun.status, StatusCode::SEE_OTHER, "{}", begun.text);
    begun.to
}

/// Sends a front photo; the path of its marking page.
async fn add(app: &Router, check: &str, view: &str, file: &[u8]) -> Answer {
    post_file(app, &format!("{check}/photos"), &[("view", view)], file).await
}

#[tokio::test]
async fn a_check_is_begun_from_the_plan_under_the_hands_and_from_a_kept_one() {
    let app = demo_studio();
    let check = begin(&app).await;
    let page = get(&app, &check).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.text.contains("href=\"/people/15\""), "{}", page.text);

    let plan = keep(&app, PLAN, "Rehearsal").await;
    let begun = post(&app, &format!("/plans/{plan}/check"), "").await;
    let page = get(&app, &begun.to).await;
    assert!(page.text.contains("<h1>Rehearsal</h1>"), "{}", page.text);
    assert!(page.text.contains(&format!("href=\"/plans/{plan}\"")));
    let link = format!("href=\"{}\"", begun.to);
    for list in [
        format!("/plans/{plan}"),
        "/people/15".to_owned(),
        "/checks".to_owned(),
    ] {
        let listed = get(&app, &list).await;
        assert!(listed.text.contains(&link), "{list}: {}", listed.text);
    }
    let found = get(&app, "/checks?search=rehearsal").await.text;
    assert!(found.contains(&link) && !found.contains(&format!("href=\"{check}\"")));
}

#[tokio::test]
async fn a_wrong_number_under_the_hands_begins_no_check() {
    let app = demo_studio();
    let query = plan_query(&app, PLAN).await;
    let refused = post(
        &app,
        &format!("{PLAN}/check"),
        &format!("{query}&hem_height=99"),
    )
    .await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(
        get(&app, "/checks")
            .await
            .text
            .contains("There are no checks yet")
    );
}

#[tokio::test]
async fn a_stranger_needs_a_name_and_what_was_typed_stays() {
    let app = empty_studio();
    let form = "name=&stature=12+ells&occasion=wedding&note=by+post";
    let refused = post(&app, "/checks/new", form).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    for kept in [
        "value=\"12 ells\"",
        "by post",
        "“wedding”",
        "href=\"#f-name\"",
    ] {
        assert!(refused.text.contains(kept), "{kept}: {}", refused.text);
    }
    let begun = post(&app, "/checks/new", "name=Student+4&occasion=formal").await;
    assert_eq!(begun.status, StatusCode::SEE_OTHER, "{}", begun.text);
    let page = get(&app, &begun.to).await.text;
    assert!(
        page.contains("Student 4") && page.contains("a stranger · Formal"),
        "{page}"
    );
}

#[tokio::test]
async fn a_photo_is_taken_in_shown_replaced_and_erased() {
    let app = demo_studio();
    let check = begin(&app).await;
    let sent = add(&app, &check, "front", &picture(300, 400, ImageFormat::Png)).await;
    assert_eq!(sent.status, StatusCode::SEE_OTHER, "{}", sent.text);
    let photo = sent.to.clone();
    let shown = get(&app, &check).await.text;
    assert!(
        shown.contains(&format!("src=\"{photo}/picture.jpg\"")),
        "{shown}"
    );

    let again = add(&app, &check, "front", &picture(310, 400, ImageFormat::Jpeg)).await;
    assert_eq!(
        again.status,
        StatusCode::UNPROCESSABLE_ENTITY,
        "the side is taken"
    );
    let id = photo.rsplit('/').next().expect("a number");
    let fields = [("view", "front"), ("instead_of", id)];
    let path = format!("{check}/photos");
    let replaced = post_file(&app, &path, &fields, &picture(310, 400, ImageFormat::Jpeg)).await;
    assert_eq!(replaced.status, StatusCode::SEE_OTHER, "{}", replaced.text);
    assert_ne!(replaced.to, photo, "another picture has another number");
    let gone = get(&app, &format!("{check}/photos/{id}/erase")).await;
    assert_eq!(gone.status, StatusCode::METHOD_NOT_ALLOWED);
    let erased = post(&app, &format!("{}/erase", replaced.to), "").await;
    assert_eq!(erased.to, format!("{check}?done=erased"));
    assert!(!get(&app, &check).await.text.contains("picture.jpg"));
}

#[tokio::test]
async fn what_is_no_photo_is_told_and_nothing_is_kept() {
    let app = demo_studio();
    let check = begin(&app).await;
    let whole = picture(300, 400, ImageFormat::Jpeg);
    for (file, told) in [
        (Vec::new(), "the file is empty"),
        (b"<html>".to_vec(), "a web page or a drawing"),
        (b"GIF89a....".to_vec(), "a GIF"),
        (
            whole[..whole.len() / 2].to_vec(),
            "ends before its picture does",
        ),
        (picture(40, 50, ImageFormat::Png), "40 × 50 pixels"),
    ] {
        let refused = add(&app, &check, "back", &file).await;
        assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY, "{told}");
        assert!(refused.text.contains(told), "{told}: {}", refused.text);
        assert!(!refused.text.contains("picture.jpg"));
    }
    let japanese = get_in(&app, &check, "ja").await;
    assert!(japanese.text.contains("前から"), "{}", japanese.text);
    for (path, view) in [(check.as_str(), "above"), ("/checks/99", "front")] {
        let nowhere = add(&app, path, view, &whole).await;
        assert_eq!(nowhere.status, StatusCode::NOT_FOUND, "{path} {view}");
    }
}

#[tokio::test]
async fn more_bytes_than_a_photo_has_are_refused_unread() {
    let app = demo_studio();
    let check = begin(&app).await;
    let refused = add(&app, &check, "front", &vec![0_u8; 41 << 20]).await;
    assert_eq!(refused.status, StatusCode::PAYLOAD_TOO_LARGE);
    // Everywhere else a form is a form.
    let elsewhere = post_file(&app, &format!("{check}/seen"), &[], &vec![0_u8; 3 << 20]).await;
    assert_eq!(elsewhere.status, StatusCode::PAYLOAD_TOO_LARGE);
}

#[tokio::test]
async fn ticks_are_kept_and_of_two_windows_the_later_is_told() {
    let app = demo_studio();
    let check = begin(&app).await;
    let path = format!("{check}/seen");
    let ticked = |page: &str, key: &str| page.contains(&format!("value=\"{key}\" checked"));
    let first = post(&app, &path, "revision=1&seen=fold_bulky&seen=nonsense").await;
    assert_eq!(first.to, format!("{check}?done=saved"), "{}", first.text);
    assert!(ticked(&get(&app, &check).await.text, "fold_bulky"));
    let later = post(&app, &path, "revision=1&seen=collar_gaping").await;
    assert_eq!(later.status, StatusCode::CONFLICT);
    assert!(ticked(&later.text, "fold_bulky") && ticked(&later.text, "collar_gaping"));
    let kept = get(&app, &check).await.text;
    assert!(
        !ticked(&kept, "collar_gaping"),
        "nothing is saved before it is looked at"
    );
    let saved = post(&app, &path, "revision=2&seen=collar_gaping").await;
    assert_eq!(saved.status, StatusCode::SEE_OTHER);
    let kept = get(&app, &check).await.text;
    assert!(ticked(&kept, "collar_gaping") && !ticked(&kept, "fold_bulky"));
}

#[tokio::test]
async fn a_check_is_erased_with_its_photos() {
    let app = demo_studio();
    let check = begin(&app).await;
    let photo = add(&app, &check, "front", &picture(300, 400, ImageFormat::Jpeg))
        .await
        .to;
    let shown = get_as_bytes(&app, &format!("{photo}/picture.jpg")).await;
    assert_eq!(shown, StatusCode::OK);
    let asked = get(&app, &format!("{check}/erase")).await;
    assert!(asked.text.contains("its photos"), "{}", asked.text);
    let erased = post(&app, &format!("{check}/erase"), "").await;
    assert!(
        follow(&app, &erased.to)
            .await
            .text
            .contains("There are no checks yet")
    );
    for path in [
        check.clone(),
        format!("{photo}/picture.jpg"),
        format!("{check}/erase"),
    ] {
        assert_eq!(
            get(&app, &path).await.status,
            StatusCode::NOT_FOUND,
            "{path}"
        );
    }
}

/// The status of an answer that is no text.
async fn get_as_bytes(app: &Router, path: &str) -> StatusCode {
    use tower::ServiceExt;
    let request = axum::http::Request::get(path).header(header::HOST, "localhost:8080");
    let request = request.body(axum::body::Body::empty()).expect("a request");
    let answer = app.clone().oneshot(request).await.expect("an answer");
    let kind = answer.headers().get(header::CONTENT_TYPE);
    assert_eq!(kind.map(|kind| kind.as_bytes()), Some(&b"image/jpeg"[..]));
    answer.status()
}
