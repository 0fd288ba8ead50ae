//! Entering and editing: nothing typed is lost, and of two browsers the later one is told.

use axum::http::StatusCode;

use crate::studio::{empty_studio, encoded, follow, form_of, get, post, small_studio, with};

const HANA: &str = "name=Hana&sex=women&stature=158&hip_girth=92";

#[tokio::test]
async fn every_wrong_field_is_told_at_once_and_keeps_its_text() {
    let app = empty_studio();
    let form = "name=+&sex=women&stature=12+ells&hip_girth=9&waist_girth.sd=x&note=kept";
    let answer = post(&app, "/people/new", form).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    for kept in [
        "value=\"12 ells\"",
        "value=\"9\"",
        "value=\"x\"",
        ">\nkept</textarea>",
    ] {
        assert!(answer.text.contains(kept), "{kept} in {}", answer.text);
    }
    for field in ["f-name", "f-stature", "f-hip_girth", "f-waist_girth"] {
        let link = format!("href=\"#{field}\"");
        assert!(answer.text.contains(&link), "{link} in {}", answer.text);
        assert!(answer.text.contains(&format!("id=\"{field}\"")), "{field}");
    }
}

#[tokio::test]
async fn a_garment_that_contradicts_itself_comes_back_with_the_reason() {
    let app = empty_studio();
    let form = "name=Try&kind=nagagi&cloth=soft&mitake_from=shoulder&mitake=160\
                &ushirohaba=30&yuki=70&katahaba=30&sodehaba=30";
    let answer = post(&app, "/garments/new", form).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(
        answer.text.contains("60 cm"),
        "the sum is named: {}",
        answer.text
    );
    assert!(answer.text.contains("value=\"70\""));
    // All three of the sum are told, linked and marked, and no other.
    let faults = answer
        .text
        .split_once("id=\"errors\"")
        .expect("a summary")
        .1;
    let faults = faults.split_once("</section>").expect("its end").0;
    for field in ["yuki", "katahaba", "sodehaba"] {
        let link = format!("href=\"#f-{field}\"");
        assert!(faults.contains(&link), "{link} in {faults}");
        let input = answer
            .text
            .split("<input")
            .find(|tag| tag.contains(&format!("id=\"f-{field}\"")));
        let input = input
            .and_then(|tag| tag.split('>').next())
            .expect("the input");
        assert!(
            input.contains("aria-invalid=\"true\"") && input.contains(&format!("f-{field}-wrong")),
            "{input}"
        );
        assert!(
            answer.text.contains(&format!("id=\"f-{field}-wrong\"")),
            "{field}"
        );
    }
    assert_eq!(
        answer.text.matches("aria-invalid=\"true\"").count(),
        3,
        "{}",
        answer.text
    );
}

#[tokio::test]
async fn two_heights_in_the_wrong_order_are_both_marked() {
    let app = empty_studio();
    let form = "name=Try&sex=women&stature=160&hip_girth=92&back_neck_height=80&hip_bone_height=95";
    let answer = post(&app, "/people/new", form).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    for field in ["back_neck_height", "hip_bone_height"] {
        assert!(
            answer.text.contains(&format!("href=\"#f-{field}\"")),
            "{}",
            answer.text
        );
        assert!(
            answer.text.contains(&format!("id=\"f-{field}-wrong\"")),
            "{}",
            answer.text
        );
    }
}

#[tokio::test]
async fn shaku_and_centimetres_are_shown_as_they_were_written() {
    let app = empty_studio();
    let form = "name=Hana&sex=women&stature=158.5+cm&hip_girth=2+shaku+4+sun";
    let added = post(&app, "/people/new", form).await;
    let edit = format!("{}/edit", added.to.split('?').next().expect("a path"));
    let text = get(&app, &edit).await.text;
    assert!(text.contains("value=\"2 shaku 4 sun\""), "{text}");
    // 2 shaku 4 sun are 240 bu of 25/66 cm each: 90.91 cm.
    assert!(text.contains("90.9 cm = 2 shaku 4 sun"), "{text}");
    assert!(text.contains("value=\"158.5 cm\""), "{text}");
}

#[tokio::test]
async fn the_later_of_two_saves_sees_both_versions_and_chooses_by_line() {
    let app = empty_studio();
    post(&app, "/people/new", HANA).await;
    let edit = "/people/1/edit";
    let first = "revision=1&name=First&sex=women&stature=158&hip_girth=93&waist_girth=70";
    assert_eq!(post(&app, edit, first).await.status, StatusCode::SEE_OTHER);
    let late = "revision=1&name=Second&sex=women&stature=158&hip_girth=94";
    let answer = post(&app, edit, late).await;
    assert_eq!(answer.status, StatusCode::CONFLICT, "{}", answer.text);
    for text in [
        "First",
        "Second",
        "93 cm",
        "94",
        "70 cm",
        "name=\"revision\" value=\"2\"",
    ] {
        assert!(answer.text.contains(text), "{text} in {}", answer.text);
    }
    assert!(
        !answer.text.contains("pick.stature"),
        "what agrees is not asked"
    );
    // Nothing was overwritten by being told.
    assert!(get(&app, "/people/1").await.text.contains("First"));

    let chosen = "revision=2&name=Second&sex=women&stature=158&hip_girth=94\
                  &pick.name=mine&pick.hip_girth=theirs&pick.waist_girth=theirs";
    assert_eq!(post(&app, edit, chosen).await.status, StatusCode::SEE_OTHER);
    let text = get(&app, edit).await.text;
    for kept in ["value=\"Second\"", "value=\"93 cm\"", "value=\"70 cm\""] {
        assert!(text.contains(kept), "{kept} in {text}");
    }
}

#[tokio::test]
async fn a_choice_between_versions_that_are_old_again_is_asked_again() {
    let app = empty_studio();
    post(&app, "/people/new", HANA).await;
    let save = |revision: i64, name: &str, pick: &str| {
        format!("revision={revision}&name={name}&sex=women&stature=158&hip_girth=92{pick}")
    };
    let edit = "/people/1/edit";
    assert_eq!(
        post(&app, edit, &save(1, "A", "")).await.status,
        StatusCode::SEE_OTHER
    );
    assert_eq!(
        post(&app, edit, &save(2, "B", "")).await.status,
        StatusCode::SEE_OTHER
    );
    // This browser was shown revision 2 and picked its name, which is no longer the newest.
    let answer = post(&app, edit, &save(2, "C", "&pick.name=theirs")).await;
    assert_eq!(answer.status, StatusCode::CONFLICT);
    assert!(
        answer.text.contains('B') && answer.text.contains('C'),
        "{}",
        answer.text
    );
}

#[tokio::test]
async fn a_form_without_revision_overwrites_nothing() {
    let app = empty_studio();
    post(&app, "/people/new", HANA).await;
    let answer = post(&app, "/people/1/edit", &HANA.replace("Hana", "Other")).await;
    assert_eq!(answer.status, StatusCode::CONFLICT);
    assert!(get(&app, "/people/1").await.text.contains("Hana"));
}

#[tokio::test]
async fn what_was_erased_meanwhile_can_be_kept_as_new() {
    let app = empty_studio();
    post(&app, "/people/new", HANA).await;
    assert_eq!(
        post(&app, "/people/1/erase", "").await.status,
        StatusCode::SEE_OTHER
    );
    let answer = post(&app, "/people/1/edit", &format!("revision=1&{HANA}")).await;
    assert_eq!(answer.status, StatusCode::GONE);
    assert!(answer.text.contains("value=\"Hana\""), "{}", answer.text);
    assert!(
        answer.text.contains("action=\"/people/new\""),
        "{}",
        answer.text
    );
}

#[tokio::test]
async fn erasing_asks_first_and_takes_the_plans_too() {
    let app = small_studio();
    let id = crate::studio::keep(&app, "/people/1/in/1", "Rehearsal").await;
    let asked = get(&app, "/people/1/erase").await;
    assert!(
        asked.text.contains("Reiko") && asked.text.contains("<form"),
        "{}",
        asked.text
    );
    let backups = "Backups made before still hold them";
    assert!(asked.text.contains(backups), "{}", asked.text);
    assert_eq!(
        get(&app, "/people/1").await.status,
        StatusCode::OK,
        "asking erases nothing"
    );
    let done = post(&app, "/people/1/erase", "").await;
    assert!(follow(&app, &done.to).await.text.contains("Erased"));
    assert_eq!(get(&app, "/people/1").await.status, StatusCode::NOT_FOUND);
    let plan = get(&app, &format!("/plans/{id}")).await;
    assert_eq!(plan.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_search_finds_part_of_a_name_in_any_width() {
    let app = small_studio();
    let text = get(&app, "/people?search=%EF%BC%B2EIKO").await.text;
    assert!(text.contains("Reiko"), "{text}");
    let text = get(&app, "/people?search=nobody").await.text;
    assert!(!text.contains("Reiko") && text.contains("nobody"), "{text}");
}

#[tokio::test]
async fn two_of_one_name_are_both_kept_told_and_told_apart() {
    let app = empty_studio();
    let twin = "name=hana+&sex=women&stature=165&hip_girth=95";
    assert_eq!(
        post(&app, "/people/new", HANA).await.to,
        "/people/1?done=added"
    );
    let second = post(&app, "/people/new", twin).await;
    assert_eq!(second.to, "/people/2?done=added-twin");
    let told = get(&app, &second.to).await.text;
    assert!(told.contains("Another entry has the same name"), "{told}");
    let cloth = "kind=nagagi&cloth=soft&mitake_from=shoulder&ushirohaba=30";
    for mitake in [158, 165] {
        let form = format!("name=Komon&{cloth}&mitake={mitake}");
        assert_eq!(
            post(&app, "/garments/new", &form).await.status,
            StatusCode::SEE_OTHER
        );
    }
    let alone = format!("name=Tsumugi&{cloth}&mitake=160");
    assert_eq!(
        post(&app, "/garments/new", &alone).await.to,
        "/garments/3?done=added"
    );

    for (page, telling) in [
        ("/", "Hana (Stature 158 cm)"),
        ("/", "hana (Stature 165 cm)"),
        ("/", ">Tsumugi<"),
        ("/garments/1", "hana (Stature 165 cm)"),
        ("/garments/1/suits", "hana (Stature 165 cm)"),
        ("/settings", "Hana (Stature 158 cm)"),
        ("/people/1", "Komon (Length (mitake) 165 cm)"),
        ("/people/1/worth", "Komon (Length (mitake) 158 cm)"),
    ] {
        let text = get(&app, page).await.text;
        assert!(text.contains(telling), "{telling} on {page}: {text}");
    }
    // A name of its own again: nothing is told, nothing is added.
    let page = get(&app, "/people/2/edit").await.text;
    let form = with(form_of(&page), "name", "Hanae");
    let saved = post(&app, "/people/2/edit", &encoded(&form)).await;
    assert_eq!(saved.to, "/people/2?done=saved");
    assert!(get(&app, "/").await.text.contains(">Hana<"));
}
