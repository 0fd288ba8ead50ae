//! The report of a check and its sheet: what they say, what they hide, and what they refuse.

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{Request, StatusCode, header};
use sunbu_core::fault::Fault;
use sunbu_core::photo::{Hidden, View};
use sunbu_image::{Area, Picture};
use sunbu_store::Store;
use tower::ServiceExt;

use crate::dressed::{OFF, bare_photo, check, photo, scene, shot, stranger, tick};
use crate::studio::{Answer, get, get_in, post, studio};

const NAMES: [&str; 2] = ["Mori Sayo", "Grey tsumugi"];

/// A grey picture of a size, as a JPEG.
fn blank([width, height]: [u32; 2]) -> Vec<u8> {
    let pixels = vec![200; 3 * width as usize * height as usize];
    let picture = Picture::from_rgb([width, height], pixels).expect("a picture");
    picture.to_jpeg()
}

/// A studio with one check, number 1, of two photos, 1 from the front and 2 from behind.
pub fn checked_studio() -> Router {
    studio(checked_store())
}

fn checked_store() -> Store {
    let mut store = Store::in_memory().expect("a store");
    let check = check(&mut store, NAMES);
    for view in [View::Front, View::Back] {
        let shot = shot(&scene(view, &OFF));
        photo(&mut store, check, &shot, &blank(shot.size));
    }
    tick(&mut store, check, &[Fault::FoldWrinkled]);
    store
}

async fn bytes(app: &Router, path: &str) -> (StatusCode, Vec<u8>) {
    let request = Request::get(path).header(header::HOST, "localhost:8080");
    let request = request.body(Body::empty()).expect("a request");
    let response = app.clone().oneshot(request).await.expect("an answer");
    let status = response.status();
    let bytes = to_bytes(response.into_body(), 32 << 20).await;
    (status, bytes.expect("the body").to_vec())
}

/// Where a text first stands in a page.
fn place(answer: &Answer, text: &str) -> usize {
    answer
        .text
        .find(text)
        .unwrap_or_else(|| panic!("“{text}” is not in {}", answer.text))
}

#[tokio::test]
async fn a_report_tells_first_what_to_change_and_shows_it_on_each_photo() {
    let app = checked_studio();
    let page = get(&app, "/checks/1/report").await;
    assert_eq!(page.status, StatusCode::OK, "{}", page.text);
    let order = [
        "To change, in this order",
        "Set the hem",
        "Well done",
        "As seen and as wanted",
        "Everything that was read",
        "What others see",
    ];
    let places = order.map(|text| place(&page, text));
    assert!(places.is_sorted(), "{places:?}");
    assert_eq!(page.text.matches("class=\"draw-overlay\"").count(), 2);
    for photo in 1..=2 {
        place(
            &page,
            &format!("href=\"/checks/1/photos/{photo}/picture.jpg\""),
        );
        place(&page, &format!("href=\"/checks/1/photos/{photo}\""));
    }
    let things = page.text.split("<ol class=\"steps changes\">").nth(1);
    let things = things.and_then(|rest| rest.split("</ol>").next());
    let things = things
        .expect("the things to change")
        .matches("<li>")
        .count();
    assert!((1..=3).contains(&things), "{things} things to change");
    assert!(!page.text.contains("No measures of her are known"));
}

#[tokio::test]
async fn what_others_see_is_told_from_a_typed_place_and_a_wrong_one_comes_back() {
    let app = checked_studio();
    let plain = get(&app, "/checks/1/report").await;
    for who in ["below a stage", "stands before her", "by a camera"] {
        place(&plain, who);
    }
    let own = get(&app, "/checks/1/report?eye=150&distance=1+m").await;
    place(&own, "from your place");
    place(&own, "value=\"1 m\"");
    let wrong = get(&app, "/checks/1/report?eye=tall%3Cb%3E&distance=10").await;
    assert_eq!(wrong.status, StatusCode::OK);
    place(&wrong, "value=\"tall&lt;b&gt;\"");
    place(&wrong, "50 to 10000 cm");
    assert!(!wrong.text.contains("from your place"), "{}", wrong.text);
}

#[tokio::test]
async fn the_plan_tells_what_others_see_and_keeps_the_typed_place() {
    let app = crate::studio::small_studio();
    let led = get(&app, "/people/1/in/2?eye=150&distance=100").await;
    assert!(led.to.ends_with("&eye=150&distance=100"), "{}", led.to);
    let page = get(&app, &led.to).await;
    place(&page, "from your place");
    let query = led.to.split_once('?').expect("a query").1;
    let query = query.replace("eye=150", "eye=%3Ci%3E");
    let drawn = get(&app, &format!("/people/1/in/2/redraw?{query}")).await;
    let drawn: serde_json::Value = serde_json::from_str(&drawn.text).expect("JSON");
    let text = |name: &str| drawn["parts"][name].as_str().unwrap_or_default().to_owned();
    assert!(text("sights").contains("below a stage"), "{drawn}");
    assert!(!text("sights").contains("from your place"), "{drawn}");
    assert!(text("eye-wrong").contains("&lt;i&gt;"), "{drawn}");
    assert_eq!(text("distance-wrong"), "");
    let kept = drawn["query"].as_str().unwrap_or_default();
    assert!(kept.ends_with("&eye=%3Ci%3E&distance=100"), "{kept}");
}

#[tokio::test]
async fn without_photo_and_tick_a_report_says_what_to_do_next() {
    let mut store = Store::in_memory().expect("a store");
    let check = check(&mut store, NAMES);
    let app = studio(store);
    for page in ["report", "sheet"] {
        let page = get(&app, &format!("/checks/{check}/{page}")).await;
        assert_eq!(page.status, StatusCode::OK);
        place(&page, "There is nothing to report yet");
        assert!(!page.text.contains("sheet.png"), "{}", page.text);
    }
    for file in ["sheet.png", "message.txt"] {
        let led = get(&app, &format!("/checks/{check}/{file}")).await;
        assert_eq!(led.to, format!("/checks/{check}/sheet"), "{file}");
    }
}

#[tokio::test]
async fn what_the_eye_saw_is_told_without_any_photo() {
    let mut store = Store::in_memory().expect("a store");
    let check = check(&mut store, NAMES);
    tick(&mut store, check, &[Fault::FoldWrinkled]);
    let app = studio(store);
    let page = get(&app, &format!("/checks/{check}/report")).await;
    place(&page, "Fold is crumpled");
    place(&page, "only what the eye saw is told");
    assert!(!page.text.contains("draw-overlay"));
    let (status, png) = bytes(&app, &format!("/checks/{check}/sheet.png")).await;
    assert_eq!(status, StatusCode::OK);
    assert!(png.starts_with(b"\x89PNG"));
}

#[tokio::test]
async fn photos_that_do_not_read_are_told_with_the_way_to_their_marks() {
    let mut store = Store::in_memory().expect("a store");
    let check = check(&mut store, NAMES);
    let shot = shot(&scene(View::Front, &OFF));
    bare_photo(&mut store, check, &shot, &blank(shot.size));
    let app = studio(store);
    let page = get(&app, &format!("/checks/{check}/report")).await;
    place(&page, "Photos that cannot be read yet");
    place(&page, "Floor and crown are not marked yet.");
    place(&page, &format!("href=\"/checks/{check}/photos/1\""));
}

#[tokio::test]
async fn a_stranger_is_told_that_her_intervals_are_wide() {
    let mut store = Store::in_memory().expect("a store");
    let check = stranger(&mut store, "Photo from Aya");
    let shot = shot(&scene(View::Front, &OFF));
    photo(&mut store, check, &shot, &blank(shot.size));
    let app = studio(store);
    let page = get(&app, &format!("/checks/{check}/report")).await;
    place(&page, "the intervals are wide");
    assert_eq!(
        get(&app, &format!("/checks/{check}/sheet")).await.status,
        200
    );
}

#[tokio::test]
async fn a_picture_of_right_over_left_is_told_before_all_else() {
    use sunbu_core::photo::Mark;
    let mut store = Store::in_memory().expect("a store");
    let check = check(&mut store, NAMES);
    let mut shot = shot(&scene(View::Front, &OFF));
    // As from a mirror: every place on the other side, the names exchanged.
    let width = f64::from(shot.size[0]);
    let marks = std::mem::take(&mut shot.marks);
    shot.marks = marks
        .into_iter()
        .map(|(mark, mut placed)| {
            placed.at[0] = width - placed.at[0];
            (mark.mirrored(), placed)
        })
        .collect();
    assert!(shot.marks.contains_key(&Mark::Floor));
    photo(&mut store, check, &shot, &blank(shot.size));
    let app = studio(store);
    for page in ["report", "sheet"] {
        let page = get(&app, &format!("/checks/{check}/{page}")).await;
        let way = place(&page, "right lies over left");
        assert!(way < place(&page, "To change, in this order"));
    }
}

#[tokio::test]
async fn the_message_names_no_measure_of_the_body() {
    let store = checked_store();
    let sunbu_store::Shown::Planned(case) = store.check(1).expect("it").shown.expect("it reads")
    else {
        panic!("somebody of the studio");
    };
    let measures = case.person.measures.clone();
    let app = studio(store);
    for language in ["en", "ja"] {
        let message = get_in(&app, "/checks/1/message.txt", language).await;
        assert_eq!(message.status, StatusCode::OK);
        assert!(message.text.contains("Mori Sayo"), "{}", message.text);
        for (measure, reading) in &measures {
            let cm = reading.length.cm();
            for number in [format!("{cm:.1}"), format!("{cm:.0}")] {
                let found = message.text.contains(&format!("{number} cm"));
                assert!(!found, "{measure:?}: {number} in {}", message.text);
            }
        }
        let sheet = get_in(&app, "/checks/1/sheet", language).await;
        let said = message.text.lines().next().expect("a greeting");
        place(&sheet, said);
    }
}

#[tokio::test]
async fn nothing_under_the_box_is_left_in_what_is_served() {
    // Two pictures that differ only under the box, which lies on whole squares of the JPEG.
    let size = [800, 1600];
    let hidden = Hidden::new(0.25, 0.1, 0.25, 0.2).expect("a box");
    let [left, top, width, height] = hidden.pixels(size);
    let mut served = Vec::new();
    let mut kept = Vec::new();
    for face in [[250, 20, 20], [20, 20, 250]] {
        let mut picture = Picture::read(&blank(size)).expect("a picture");
        let area = Area {
            left,
            top,
            width,
            height,
        };
        picture.hide(area, face);
        let mut store = Store::in_memory().expect("a store");
        let check = check(&mut store, NAMES);
        let mut shot = shot(&scene(View::Front, &OFF));
        shot.size = size;
        let jpeg = picture.to_jpeg();
        let photo = bare_photo(&mut store, check, &shot, &jpeg);
        store.hide((check, photo), Some(hidden)).expect("hidden");
        let app = studio(store);
        let path = format!("/checks/{check}/photos/{photo}");
        served.push(bytes(&app, &format!("{path}/shown.jpg")).await.1);
        kept.push(bytes(&app, &format!("{path}/picture.jpg")).await.1);
    }
    assert_ne!(kept[0], kept[1], "the kept pictures differ");
    assert_eq!(
        served[0], served[1],
        "what is served depends on what is hidden"
    );
    let picture = Picture::read(&served[0]).expect("a picture");
    let pixel = |x: u32, y: u32| {
        let at = 3 * (y as usize * size[0] as usize + x as usize);
        &picture.rgb()[at..at + 3]
    };
    let colour = pixel(left + width / 2, top + height / 2).to_vec();
    for y in top..top + height {
        for x in left..left + width {
            let off = pixel(x, y)
                .iter()
                .zip(&colour)
                .map(|(a, b)| a.abs_diff(*b))
                .max();
            assert!(
                off <= Some(2),
                "{x}, {y}: {:?} beside {colour:?}",
                pixel(x, y)
            );
        }
    }
}

#[tokio::test]
async fn a_face_is_hidden_until_somebody_says_that_it_may_show() {
    let app = checked_studio();
    let original = bytes(&app, "/checks/1/photos/1/picture.jpg").await.1;
    let shown = bytes(&app, "/checks/1/photos/1/shown.jpg").await.1;
    assert_ne!(original, shown, "the head is covered");
    let sheet = get(&app, "/checks/1/sheet").await;
    place(&sheet, "nobody has said yet");
    place(&sheet, "/checks/1/photos/1/shown.jpg");
    assert!(
        !sheet.text.contains("picture.jpg"),
        "the original is linked"
    );
    let done = post(&app, "/checks/1/photos/1/hidden", "face=show").await;
    assert_eq!(done.to, "/checks/1/sheet?done=saved#face-1");
    assert_eq!(
        bytes(&app, "/checks/1/photos/1/shown.jpg").await.1,
        original
    );
    let own = "face=hide&left=10&top=5&width=20.5&height=15";
    post(&app, "/checks/1/photos/1/hidden", own).await;
    assert_ne!(
        bytes(&app, "/checks/1/photos/1/shown.jpg").await.1,
        original
    );
    let sheet = get(&app, "/checks/1/sheet").await;
    place(&sheet, "value=\"20.5\"");
}

#[tokio::test]
async fn a_photo_whose_head_nobody_marked_is_hidden_whole() {
    let mut store = Store::in_memory().expect("a store");
    let check = check(&mut store, NAMES);
    let shot = shot(&scene(View::Front, &OFF));
    let photo = bare_photo(&mut store, check, &shot, &blank(shot.size));
    let app = studio(store);
    let shown = bytes(&app, &format!("/checks/{check}/photos/{photo}/shown.jpg"))
        .await
        .1;
    let picture = Picture::read(&shown).expect("a picture");
    let first = picture.rgb()[..3].to_vec();
    assert_ne!(first, [200, 200, 200]);
    assert!(picture.rgb().chunks_exact(3).all(|rgb| rgb == first));
}

#[tokio::test]
async fn a_box_that_is_none_comes_back_as_it_was_typed() {
    let app = checked_studio();
    let wrong = "face=hide&left=ten%25&top=5&width=0&height=15";
    let page = post(&app, "/checks/1/photos/1/hidden", wrong).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    place(&page, "value=\"ten%\"");
    place(
        &page,
        "“ten%” is not a share of the picture; write 0 to 99 %",
    );
    place(&page, "“0” is not a share of the picture; write 1 to 100 %");
    place(&page, "nobody has said yet");
}

#[tokio::test]
async fn the_sheet_is_a_picture_too() {
    let app = checked_studio();
    let (status, png) = bytes(&app, "/checks/1/sheet.png").await;
    assert_eq!(status, StatusCode::OK);
    let picture = Picture::read(&png).expect("a picture");
    assert_eq!(picture.size()[0], 1654);
    assert!(picture.size()[1] > 1654, "{:?}", picture.size());
}

#[tokio::test]
async fn reports_and_pictures_that_are_not_there_are_not_found() {
    let app = checked_studio();
    for path in [
        "/checks/9/report",
        "/checks/9/sheet",
        "/checks/9/sheet.png",
        "/checks/9/message.txt",
        "/checks/x/report",
        "/checks/1/photos/9/shown.jpg",
        "/checks/2/photos/1/shown.jpg",
    ] {
        assert_eq!(
            get(&app, path).await.status,
            StatusCode::NOT_FOUND,
            "{path}"
        );
    }
    for (path, form) in [
        ("/checks/1/photos/9/hidden", "face=show"),
        ("/checks/1/photos/9/hidden", "face=hide&left=x"),
        ("/checks/1/photos/1/hidden", "face=perhaps"),
    ] {
        let answer = post(&app, path, form).await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{path} {form}");
    }
}
