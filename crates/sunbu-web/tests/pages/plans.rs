//! A plan: its address, its locks, keeping it, and what is kept.

use axum::http::StatusCode;

use crate::studio::{follow, get, keep, plan_query, post, small_studio};

const PATH: &str = "/people/1/in/1";

/// The text of an input's value in a page.
fn value<'a>(page: &'a str, name: &str) -> &'a str {
    let input = page
        .split("<input")
        .find(|tag| tag.contains(&format!("name=\"{name}\"")));
    let (_, rest) = input
        .and_then(|tag| tag.split_once("value=\""))
        .expect("the input");
    rest.split('"').next().expect("its value")
}

#[tokio::test]
async fn an_address_without_numbers_leads_to_the_plan_and_its_numbers() {
    let app = small_studio();
    let answer = get(&app, &format!("{PATH}?occasion=formal")).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
    assert!(
        answer
            .to
            .starts_with("/people/1/in/1?occasion=formal&hem_height="),
        "{}",
        answer.to
    );
    // The plan of its own numbers is not planned again.
    assert_eq!(get(&app, &answer.to).await.status, StatusCode::OK);
}

#[tokio::test]
async fn locked_numbers_survive_the_plan_even_outside_the_limits() {
    let app = small_studio();
    let query = "nape_drop=20&hem_height=3.33&lock=nape_drop&lock=hem_height&ask=1";
    let answer = get(&app, &format!("{PATH}?{query}")).await;
    assert!(answer.to.contains("nape_drop=20&"), "{}", answer.to);
    assert!(answer.to.contains("hem_height=3.33&"), "{}", answer.to);
    let page = get(&app, &answer.to).await.text;
    assert!(page.contains("outside the limits"), "{page}");
}

#[tokio::test]
async fn a_number_that_cannot_be_read_stays_in_its_field_with_a_sentence() {
    let app = small_studio();
    let answer = get(&app, &format!("{PATH}?hem_height=low&nape_drop=6")).await;
    assert_eq!(answer.status, StatusCode::OK);
    assert_eq!(value(&answer.text, "hem_height"), "low");
    assert!(
        answer.text.contains("href=\"#hem_height\""),
        "{}",
        answer.text
    );
    let save = format!("{PATH}/save");
    let kept = post(&app, &save, "hem_height=low&title=Mine").await;
    assert_eq!(kept.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(value(&kept.text, "hem_height"), "low");
    assert_eq!(value(&kept.text, "title"), "Mine");
    assert!(
        get(&app, "/plans").await.text.contains("No plan"),
        "nothing was kept"
    );
}

#[tokio::test]
async fn a_redraw_of_a_wrong_number_tells_it_and_draws_nothing() {
    let app = small_studio();
    let query = plan_query(&app, PATH).await;
    // The range of a lock: a hem of -20 to 80 cm, an obi edge of 20 to 160 cm.
    for (field, typed, said) in [
        ("hem_height", "99", "80"),
        ("obi_lower_edge", "500", "160"),
        ("nape_drop", "deep", "deep"),
    ] {
        let pairs = query.split('&').filter(|pair| !pair.starts_with(field));
        let query = format!("{}&{field}={typed}", pairs.collect::<Vec<_>>().join("&"));
        for page in ["redraw", "ways-out"] {
            let text = get(&app, &format!("{PATH}/{page}?{query}")).await.text;
            let answer: serde_json::Value = serde_json::from_str(&text).expect("JSON");
            let problems = answer["problems"].as_object().expect("problems");
            assert_eq!(problems.keys().collect::<Vec<_>>(), [field], "{text}");
            let sentence = problems[field].as_str().expect("a sentence");
            assert!(sentence.contains(said), "{sentence} names {said}");
            assert_eq!(answer["parts"], serde_json::json!({}), "{text}");
            let kept = format!("{field}={typed}");
            assert!(answer["query"].as_str().expect("a query").contains(&kept));
        }
    }
}

#[tokio::test]
async fn the_plan_replaces_a_wrong_number_but_not_one_that_it_is_to_keep() {
    let app = small_studio();
    let wrong = format!("{PATH}/redraw?hem_height=99&ask=1");
    let asked = get(&app, &wrong).await.text;
    let asked: serde_json::Value = serde_json::from_str(&asked).expect("JSON");
    assert_eq!(asked["problems"], serde_json::json!({}), "{asked}");
    assert!(asked["parts"]["knobs"].is_string(), "{asked}");
    let kept = get(&app, &format!("{wrong}&lock=hem_height")).await.text;
    let kept: serde_json::Value = serde_json::from_str(&kept).expect("JSON");
    assert!(kept["problems"]["hem_height"].is_string(), "{kept}");
}

#[tokio::test]
async fn a_redraw_reads_lengths_in_every_unit() {
    let app = small_studio();
    let text = get(&app, &format!("{PATH}/redraw?nape_drop=2+sun"))
        .await
        .text;
    let answer: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    // 2 sun are 20 bu of 25/66 cm each: 7.58 cm.
    let cm = answer["values_cm"]["nape_drop"].as_f64().expect("a number");
    assert!((cm - 20.0 * 25.0 / 66.0).abs() < 1e-9, "{cm}");
}

#[tokio::test]
async fn paper_and_picture_of_a_wrong_value_are_refused_with_the_sentence() {
    let app = small_studio();
    for (query, name, said) in [
        ("hem_height=99", "hem above the floor", "80"),
        ("obi_lower_edge=abc", "obi", "abc"),
        ("hem_height=1&occasion=nowhere", "Occasion", "nowhere"),
        ("occasion=nowhere", "Occasion", "nowhere"),
        (
            "hem_height=99&lock=hem_height&ask=1",
            "hem above the floor",
            "80",
        ),
    ] {
        for page in ["print", "picture.svg"] {
            let answer = get(&app, &format!("{PATH}/{page}?{query}")).await;
            assert_eq!(
                answer.status,
                StatusCode::UNPROCESSABLE_ENTITY,
                "{page} {query}"
            );
            let text = &answer.text;
            assert!(
                text.to_lowercase().contains(&name.to_lowercase()) && text.contains(said),
                "{query}: {text}"
            );
            assert!(!text.contains("<svg"), "{page} {query} draws nothing");
            // The way back holds what was typed.
            let back = format!("href=\"{PATH}?");
            assert!(text.contains(&back), "{text}");
            let (_, rest) = text.split_once(&back).expect("a way back");
            let address = rest
                .split('"')
                .next()
                .expect("its query")
                .replace("&amp;", "&");
            let page = get(&app, &format!("{PATH}?{address}")).await;
            assert!(page.text.contains("unlike-it"), "{address}");
        }
    }
}

#[tokio::test]
async fn what_an_address_leaves_out_is_as_usual() {
    let app = small_studio();
    let page = get(&app, &format!("{PATH}?hem_height=9")).await.text;
    assert_eq!(value(&page, "hem_height"), "9");
    // The customary standard: usual.tare_length.plus = 7.5.
    assert_eq!(value(&page, "tare_length"), "7.5");
}

#[tokio::test]
async fn a_plan_needs_a_name() {
    let app = small_studio();
    let query = plan_query(&app, PATH).await;
    let save = format!("{PATH}/save");
    for title in ["", "+++", &"x".repeat(81)] {
        let answer = post(&app, &save, &format!("{query}&title={title}")).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{title:?}");
        assert!(answer.text.contains("title-wrong"), "{}", answer.text);
    }
}

#[tokio::test]
async fn a_kept_plan_shows_person_garment_and_rules_as_they_were() {
    let app = small_studio();
    let id = keep(&app, PATH, "Rehearsal").await;
    let kept = format!("/plans/{id}");
    let before = get(&app, &kept).await.text;

    let edit = get(&app, "/people/1/edit").await.text;
    let revision = value(&edit, "revision").to_owned();
    let form = format!("revision={revision}&name=Another&sex=women&stature=150&hip_girth=120");
    assert_eq!(
        post(&app, "/people/1/edit", &form).await.status,
        StatusCode::SEE_OTHER
    );
    let toml = get(&app, "/rules/toml").await.text;
    assert!(toml.contains("customary"), "{toml}");
    let after = get(&app, &kept).await.text;
    assert_eq!(
        before, after,
        "an edited person does not change what was kept"
    );

    let again = get(&app, &format!("{kept}/print")).await;
    assert!(again.text.contains("Rehearsal"));
    let history = follow(&app, PATH).await.text;
    assert!(history.contains(&format!("href=\"{kept}\"")), "{history}");
}

#[tokio::test]
async fn a_kept_plan_opens_again_with_the_same_numbers() {
    let app = small_studio();
    // Finer than the planner's tenth, and not locked: kept as typed all the same.
    let query = "occasion=stage&hem_height=0.55&nape_drop=9&tare_length=7.25&lock=nape_drop";
    let kept = post(
        &app,
        &format!("{PATH}/save"),
        &format!("{query}&title=Stage"),
    )
    .await;
    let page = follow(&app, &kept.to).await.text;
    let (_, rest) = page.split_once("href=\"/people/1/in/1?").expect("a way on");
    let state = rest
        .split('"')
        .next()
        .expect("its query")
        .replace("&amp;", "&");
    assert!(
        state.starts_with("occasion=stage&hem_height=0.55&") && state.contains("tare_length=7.25&"),
        "{state}"
    );
    assert!(
        state.contains("nape_drop=9&") && state.ends_with("lock=nape_drop"),
        "{state}"
    );
}

#[tokio::test]
async fn a_kept_plan_is_erased_alone() {
    let app = small_studio();
    let id = keep(&app, PATH, "Rehearsal").await;
    let done = post(&app, &format!("/plans/{id}/erase"), "").await;
    assert_eq!(done.status, StatusCode::SEE_OTHER);
    assert_eq!(
        get(&app, &format!("/plans/{id}")).await.status,
        StatusCode::NOT_FOUND
    );
    assert_eq!(get(&app, "/people/1").await.status, StatusCode::OK);
}

#[tokio::test]
async fn the_redraw_says_what_the_page_says() {
    let app = small_studio();
    let query = plan_query(&app, PATH).await;
    let page = get(&app, &format!("{PATH}?{query}")).await.text;
    let redraw = get(&app, &format!("{PATH}/redraw?{query}")).await.text;
    let redraw: serde_json::Value = serde_json::from_str(&redraw).expect("JSON");
    for part in ["figure", "told", "notes", "numbers", "ways", "steps"] {
        let text = redraw["parts"][part].as_str().expect("markup");
        assert!(
            page.contains(text),
            "{part} of the redraw is not on the page"
        );
    }
    assert_eq!(redraw["query"], query.as_str());
    assert!(
        redraw["parts"]["knobs"].is_null(),
        "knobs stay under the thumb"
    );
    let asked = get(&app, &format!("{PATH}/redraw?{query}&ask=1"))
        .await
        .text;
    let asked: serde_json::Value = serde_json::from_str(&asked).expect("JSON");
    assert!(asked["parts"]["knobs"].is_string());
}

#[tokio::test]
async fn the_picture_for_the_wall_is_one_drawing_of_both_views() {
    let app = small_studio();
    let answer = get(&app, &format!("{PATH}/picture.svg")).await;
    assert_eq!(answer.status, StatusCode::OK);
    assert_eq!(answer.head["content-type"], "image/svg+xml");
    assert!(answer.text.starts_with("<svg"), "{}", answer.text);
    assert!(answer.text.contains("Reiko"), "it says who it is");
}

#[tokio::test]
async fn what_the_plan_would_meet_is_not_called_hopeless() {
    let app = small_studio();
    // The second garment falls right on her; a hem of 10 cm is the hands' doing.
    let path = "/people/1/in/2";
    let query = plan_query(&app, path).await;
    let hem = query
        .split('&')
        .find(|pair| pair.starts_with("hem_height="))
        .expect("a hem");
    let query = query.replace(hem, "hem_height=10");
    let ways = get(&app, &format!("{path}/ways-out?{query}")).await.text;
    assert!(ways.contains("“Ask the plan” meets it."), "{ways}");
    let locked = format!("{path}/ways-out?{query}&lock=hem_height");
    let ways = get(&app, &locked).await.text;
    let hem = ways.split("</section>").next().expect("the hem's section");
    assert!(hem.contains("hem at the back"), "{hem}");
    assert!(
        !hem.contains("meets it"),
        "locked, the plan cannot help: {hem}"
    );
}

/// The fault signs in a text with what stands after each, up to the next tag or sign.
fn signs(text: &str) -> std::collections::BTreeMap<usize, String> {
    let mut out = std::collections::BTreeMap::new();
    for part in text.split('△').skip(1) {
        let digits: String = part.chars().take_while(char::is_ascii_digit).collect();
        let Ok(number) = digits.parse() else {
            continue;
        };
        let rest = part[digits.len()..].trim_start_matches(['<', '/', 'b', '>', ' ']);
        let said = rest.split(['<', '·']).next().unwrap_or("").trim();
        let known = out.entry(number).or_insert_with(|| said.to_owned());
        let agrees = known.ends_with(said) || said.ends_with(known.as_str());
        assert!(agrees, "△{number} is {known} and {said}");
    }
    out
}

#[tokio::test]
async fn the_triangles_of_the_figure_have_their_key_on_page_and_paper() {
    let app = small_studio();
    let query = plan_query(&app, PATH).await;
    let query = query.replace("hem_height=", "hem_height=1");
    for page in ["", "/print"] {
        let text = get(&app, &format!("{PATH}{page}?{query}")).await.text;
        let told = text
            .split_once("told\"")
            .expect("the list of what is missed")
            .1;
        let told = told.split_once("</p>").expect("its end").0;
        let missed = signs(told);
        assert!(missed.len() > 1, "several wishes are missed: {told}");
        let numbers: Vec<usize> = missed.keys().copied().collect();
        assert_eq!(numbers, (1..=missed.len()).collect::<Vec<_>>());

        // The triangles that are drawn are a part of those that are told.
        let drawings = text.split("<svg").skip(1);
        let drawn = drawings.flat_map(|svg| svg.split("class=\"draw-fault-sign\"").skip(1));
        let drawn: Vec<usize> = drawn
            .filter_map(|sign| {
                let text = sign.split_once("<text")?.1.split_once('>')?.1;
                text.split('<').next()?.parse().ok()
            })
            .collect();
        assert!(!drawn.is_empty(), "{page} has no triangle");
        for number in drawn {
            assert!(missed.contains_key(&number), "△{number} is told: {told}");
        }
        // Told, noted beside the figure and in the table in the same words.
        let tables = text.split_once("class=\"notes\"").expect("the notes").1;
        let keyed = signs(tables);
        assert_eq!(
            keyed.keys().collect::<Vec<_>>(),
            missed.keys().collect::<Vec<_>>()
        );
        for (number, said) in &missed {
            assert!(
                said.ends_with(keyed[number].as_str()),
                "△{number}: {said} / {}",
                keyed[number]
            );
        }
    }
}

#[tokio::test]
async fn a_ranking_for_an_occasion_that_nobody_knows_says_so_and_ranks_nothing() {
    let app = small_studio();
    for path in ["/people/1/worth", "/garments/1/suits"] {
        let ranked = get(&app, &format!("{path}?occasion=formal")).await;
        assert_eq!(ranked.status, StatusCode::OK, "{path}");
        assert!(
            ranked.text.contains("?occasion=formal\""),
            "{}",
            ranked.text
        );
        let told = get(&app, &format!("{path}?occasion=nowhere")).await;
        assert_eq!(told.status, StatusCode::UNPROCESSABLE_ENTITY, "{path}");
        let fault = told.text.split_once("role=\"alert\"").expect("a fault").1;
        let fault = fault.split_once("</section>").expect("its end").0;
        for said in ["href=\"#occasion\"", "nowhere", "formal"] {
            assert!(fault.contains(said), "{said} in {fault}");
        }
        assert!(told.text.contains("id=\"occasion\""), "{}", told.text);
        assert!(
            !told.text.contains("class=\"reason\""),
            "ranked: {}",
            told.text
        );
    }
}
