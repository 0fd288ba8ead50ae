//! A photo marked with real fingers, keys and mouse, on a rendered photo whose truth is known.

use sunbu_browser_tests::VIEWS;
use sunbu_core::photo::{Mark, Marking};

use crate::marked::Hands;
use crate::studio::{DESK, PHONE, text, until};

/// Which of the renderer's people, when it does not matter.
const SEED: u64 = 3;

#[tokio::test(flavor = "multi_thread")]
async fn two_taps_place_all_and_a_drag_goes_to_the_edge_on_phone_and_desk() {
    for screen in [DESK, PHONE] {
        let hands = Hands::upload(SEED, screen).await;
        hands.first().await;
        let kept = hands.kept().await;
        assert!(
            kept.shot.marks.len() >= 25,
            "only {} marks",
            kept.shot.marks.len()
        );
        let drawn = text(
            &hands.browser,
            "return document.querySelectorAll('#over g').length",
        )
        .await;
        assert_eq!(
            drawn,
            kept.shot.marks.len().to_string(),
            "{screen:?}: all are drawn"
        );
        let truth = hands.truth[&Mark::HemCentre].pixel;
        let from = kept.shot.marks[&Mark::HemCentre].at;
        hands.drag(from, [truth[0], truth[1] - 4.0]).await;
        hands.saved().await;
        let kept = hands.kept().await;
        assert!(
            kept.moved.contains(&Mark::HemCentre),
            "{screen:?}: it was not moved"
        );
        let got = kept.shot.marks[&Mark::HemCentre].at[1];
        assert!(
            (got - truth[1]).abs() < 4.0 && (got - truth[1] + 4.0).abs() > 0.1,
            "{screen:?}: {got} against {}",
            truth[1]
        );
        let square = "return document.querySelector('#over .hand[data-id=hem_centre]') !== null";
        assert_eq!(text(&hands.browser, square).await, "true", "{screen:?}");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn the_loupe_shows_the_place_beside_the_finger_while_it_drags() {
    let hands = Hands::upload(SEED, PHONE).await;
    hands.first().await;
    // The last place of the loupe while a finger moved, noted by the page itself.
    let note = "window.noted = [];
        document.getElementById('frame').addEventListener('pointermove', (event) => {
            const loupe = document.getElementById('loupe');
            const box = loupe.getBoundingClientRect();
            const paper = loupe.getContext('2d').getImageData(0, 0, 320, 320).data;
            const far = Math.hypot(event.clientX - box.left - box.width / 2,
                event.clientY - box.top - box.height / 2);
            window.noted.push([!loupe.hidden, far, new Set(paper).size,
                box.left >= 0 && box.top >= 0 && box.right <= innerWidth && box.bottom <= innerHeight]);
        })";
    hands
        .browser
        .ask(note, vec![], "watch")
        .await
        .expect("watched");
    for mark in [Mark::KimonoCrossing, Mark::HemCentre, Mark::HemLeft] {
        let at = hands.at(mark).await;
        hands.drag(at, [at[0] + 40.0, at[1] + 30.0]).await;
        hands.saved().await;
        let noted = hands
            .browser
            .ask("return window.noted.splice(0)", vec![], "ask")
            .await;
        let noted = noted.expect("noted");
        let last = noted
            .as_array()
            .and_then(|all| all.last())
            .expect("it moved");
        assert_eq!(last[0], true, "{mark:?}: the loupe is there");
        assert!(
            last[1].as_f64().expect("far") > 95.0,
            "{mark:?}: the finger covers it: {last}"
        );
        assert!(
            last[2].as_f64().expect("colours") > 20.0,
            "{mark:?}: it shows the photo: {last}"
        );
        assert_eq!(last[3], true, "{mark:?}: it is on the screen");
    }
    assert_eq!(
        text(
            &hands.browser,
            "return document.getElementById('loupe').hidden"
        )
        .await,
        "true"
    );
}

#[tokio::test(flavor = "multi_thread")]
async fn keys_nudge_by_a_pixel_and_ten_and_take_it_back() {
    let hands = Hands::upload(SEED, DESK).await;
    hands.first().await;
    hands.click("#mark-obi_lower_centre .pick-mark").await;
    let [x, y] = hands.at(Mark::ObiLowerCentre).await;
    hands.keys("\u{E014}\u{E014}\u{E015}").await; // right, right, down
    hands.saved().await;
    assert_eq!(
        hands.at(Mark::ObiLowerCentre).await,
        [x + 2.0, y + 1.0],
        "from {x}, {y}"
    );
    tokio::time::sleep(std::time::Duration::from_millis(900)).await;
    hands.keys("\u{E008}\u{E013}\u{E008}").await; // Shift up
    hands.saved().await;
    assert_eq!(hands.at(Mark::ObiLowerCentre).await, [x + 2.0, y - 9.0]);
    hands.keys("\u{E009}z\u{E009}").await; // Ctrl Z
    hands.saved().await;
    assert_eq!(hands.at(Mark::ObiLowerCentre).await, [x + 2.0, y + 1.0]);
    hands.click("#undo").await;
    hands.saved().await;
    let kept = hands.kept().await;
    assert!(
        !kept.moved.contains(&Mark::ObiLowerCentre),
        "it follows again"
    );
    let back = kept.shot.marks[&Mark::ObiLowerCentre].at;
    assert!(
        (back[0] - x).hypot(back[1] - y) < 0.01,
        "{back:?} against {x}, {y}"
    );
}

#[tokio::test(flavor = "multi_thread")]
async fn a_mark_is_left_out_called_unsure_and_placed_again() {
    let hands = Hands::upload(SEED, PHONE).await;
    hands.first().await;
    let placed = |kept: &Marking, mark| kept.shot.marks.contains_key(&mark);
    hands.click("#mark-wrist_left .row-act").await;
    hands.saved().await;
    let kept = hands.kept().await;
    assert!(kept.left_out.contains(&Mark::WristLeft) && !placed(&kept, Mark::WristLeft));
    hands.click("#mark-wrist_left .row-act").await;
    hands.saved().await;
    let kept = hands.kept().await;
    assert!(
        kept.left_out.is_empty() && placed(&kept, Mark::WristLeft),
        "it follows again"
    );
    hands.click("#mark-hem_left .pick-mark").await;
    hands.click("#chosen [data-act=unsure]").await;
    hands.saved().await;
    let kept = hands.kept().await;
    assert_eq!(
        kept.shot.marks[&Mark::HemLeft].trust,
        sunbu_core::photo::Trust::Unsure
    );
    let shape =
        "return document.querySelector('#over [data-id=hem_left]').classList.contains('unsure')
        && document.querySelector('#mark-hem_left .state').textContent === 'unsure'";
    assert_eq!(text(&hands.browser, shape).await, "true");
    // One that is not in sight is put by a tap.
    hands.click("#mark-ankle_left .pick-mark").await;
    hands.click("#chosen [data-act=again]").await;
    let at = hands.truth[&Mark::AnkleLeft].pixel;
    hands.tap(at).await;
    hands.saved().await;
    let got = hands.at(Mark::AnkleLeft).await;
    assert!(
        (got[0] - at[0]).hypot(got[1] - at[1]) < 8.0,
        "{got:?} against {at:?}"
    );
}

#[tokio::test(flavor = "multi_thread")]
async fn closing_and_opening_loses_nothing_even_while_the_studio_is_away() {
    let hands = Hands::upload(SEED, PHONE).await;
    hands.first().await;
    let offline = "window.fetch = () => Promise.reject(new TypeError('offline'))";
    hands
        .browser
        .ask(offline, vec![], "go offline")
        .await
        .expect("offline");
    let from = hands.at_shown(Mark::HemCentre).await;
    hands.drag(from, [from[0] + 60.0, from[1] - 30.0]).await;
    until(
        &hands.browser,
        "return !document.getElementById('kept-here').hidden",
    )
    .await;
    let told = text(
        &hands.browser,
        "return document.getElementById('kept-here').textContent",
    )
    .await;
    assert!(told.contains("does not answer"), "{told}");
    let waiting =
        "return Object.keys(localStorage).filter((name) => name.startsWith('sunbu-marks-')).length";
    assert_eq!(text(&hands.browser, waiting).await, "1");
    hands
        .browser
        .goto(&hands.studio.url("/checks/1"))
        .await
        .expect("another page");
    hands
        .browser
        .goto(&hands.studio.url("/checks/1/photos/1"))
        .await
        .expect("back");
    hands.ready().await;
    hands.saved().await;
    let kept = hands.kept().await;
    assert!(
        kept.moved.contains(&Mark::HemCentre),
        "it was sent after all"
    );
    let got = kept.shot.marks[&Mark::HemCentre].at;
    assert!(
        (got[0] - from[0] - 60.0).abs() < 6.0,
        "{got:?} from {from:?}"
    );
    until(&hands.browser, &waiting.replace(".length", ".length === 0")).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn a_studio_that_comes_back_gets_what_waited() {
    let hands = Hands::upload(SEED, DESK).await;
    hands.first().await;
    let offline = "window.real = window.fetch;
        window.fetch = () => Promise.reject(new TypeError('offline'))";
    hands
        .browser
        .ask(offline, vec![], "go offline")
        .await
        .expect("offline");
    hands.click("#mark-wrist_left .row-act").await;
    until(
        &hands.browser,
        "return !document.getElementById('kept-here').hidden",
    )
    .await;
    let online = "window.fetch = window.real";
    hands
        .browser
        .ask(online, vec![], "come back")
        .await
        .expect("online");
    until(
        &hands.browser,
        "return document.getElementById('kept-here').hidden",
    )
    .await;
    hands.saved().await;
    assert!(hands.kept().await.left_out.contains(&Mark::WristLeft));
}

#[tokio::test(flavor = "multi_thread")]
async fn of_two_hands_the_later_chooses_and_neither_is_lost_unasked() {
    for (button, mine) in [("#keep-mine", true), ("#take-theirs", false)] {
        let hands = Hands::upload(SEED, DESK).await;
        hands.first().await;
        let theirs = "const page = await fetch(location.pathname).then((answer) => answer.text());
            const read = new DOMParser().parseFromString(page, 'text/html');
            const { revision, marking } = JSON.parse(read.getElementById('marking').dataset.state);
            delete marking.shot.marks.wrist_right;
            marking.left_out = ['wrist_right'];
            const body = new URLSearchParams({ revision, marking: JSON.stringify(marking), hands: '' });
            return (await fetch(location.pathname + '/marks', { method: 'POST', body })).status";
        let theirs = format!("return (async () => {{ {theirs} }})()");
        let status = hands.browser.ask(&theirs, vec![], "save elsewhere").await;
        assert_eq!(status.expect("saved"), 200);
        hands.click("#mark-wrist_left .row-act").await;
        until(
            &hands.browser,
            "return !document.getElementById('stale').hidden",
        )
        .await;
        hands.click(button).await;
        hands.saved().await;
        let out = hands.kept().await.left_out;
        let wanted = if mine {
            Mark::WristLeft
        } else {
            Mark::WristRight
        };
        assert_eq!(out.into_iter().collect::<Vec<_>>(), [wanted], "{button}");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn sheet_tape_and_lens_height_are_set_and_a_wrong_length_is_told_beside_its_field() {
    let hands = Hands::upload(SEED, DESK).await;
    hands.first().await;
    let [x, y] = hands.truth[&Mark::Floor].pixel;
    hands.click("[data-refer=sheet]").await;
    for at in [
        [x - 300.0, y - 250.0],
        [x - 120.0, y - 250.0],
        [x - 120.0, y],
        [x - 300.0, y],
    ] {
        hands.tap(at).await;
    }
    hands.saved().await;
    assert!(hands.kept().await.shot.references.sheet.is_some());
    hands.click("[data-refer=tape]").await;
    for at in [[x + 200.0, y], [x + 200.0, y - 900.0]] {
        hands.tap(at).await;
    }
    hands.keys("100 ells").await;
    until(
        &hands.browser,
        "return document.getElementById('tape-length-wrong').textContent !== ''",
    )
    .await;
    hands.saved().await;
    assert_eq!(hands.kept().await.tape.expect("a tape").length, "100 ells");
    hands.click("#lens-height").await;
    hands.keys("110").await;
    until(
        &hands.browser,
        "return document.getElementById('lens-height').value === '110'",
    )
    .await;
    hands.saved().await;
    assert_eq!(hands.kept().await.lens_height, "110");
    hands.click("#mirrored").await;
    hands.saved().await;
    assert!(hands.kept().await.shot.mirrored);
    hands.click("#snapping").await;
    hands.saved().await;
    assert!(!hands.kept().await.snapping);
}

#[tokio::test(flavor = "multi_thread")]
async fn on_a_phone_the_page_scrolls_over_the_photo_and_the_photo_grows() {
    let hands = Hands::upload(SEED, PHONE).await;
    hands.first().await;
    let top = "return scrollY";
    let before: f64 = text(&hands.browser, top).await.parse().expect("a number");
    // A corner of the photo, where no mark is near.
    let from = hands.on_screen([30.0, 1400.0]).await;
    hands
        .browser
        .drag(from, [from[0], from[1] - 200.0])
        .await
        .expect("swiped");
    until(
        &hands.browser,
        &format!("return Math.abs(scrollY - {before}) > 60"),
    )
    .await;
    // A page that still glides takes the first touch as a hold.
    tokio::time::sleep(std::time::Duration::from_millis(800)).await;
    let wide = "return document.getElementById('stage').getBoundingClientRect().width";
    let before: f64 = text(&hands.browser, wide).await.parse().expect("a number");
    hands.click("#larger").await;
    hands.click("#larger").await;
    let grown = format!(
        "return Math.abs(document.getElementById('stage').getBoundingClientRect().width
            / {before} - 2.25) < 0.02"
    );
    until(&hands.browser, &grown).await;
    let fits = hands.browser.sideways_scroll().await.expect("a width");
    assert!(fits.is_none(), "{fits:?}");
}

/// Before and after the two taps, on every screen and in both languages.
#[tokio::test(flavor = "multi_thread")]
async fn the_page_is_right_on_every_screen_before_and_after_the_two_taps() {
    let mut faults = Vec::new();
    for screen in VIEWS {
        let hands = Hands::upload(SEED, screen).await;
        let browser = &hands.browser;
        faults.extend(crate::look::look(browser, "marking-empty").await);
        hands.first().await;
        hands.click("#mark-hem_left .pick-mark").await;
        faults.extend(crate::look::look(browser, "marking").await);
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
