//! House rules: the form, the text, and the way back.

use axum::http::StatusCode;

use crate::studio::{follow, get, plan_query, post, small_studio};

/// The fields of a page's form as a browser would send them, one changed.
fn fields(page: &str, change: &str, to: &str) -> String {
    let mut out = Vec::new();
    for tag in page.split("<input").skip(1) {
        let attribute = |name: &str| {
            let (_, rest) = tag.split_once(&format!(" {name}=\""))?;
            rest.split('"').next()
        };
        let Some(name) = attribute("name").filter(|name| name.contains('.')) else {
            continue;
        };
        let value = if name == change {
            to
        } else {
            attribute("value").unwrap_or("")
        };
        out.push(format!(
            "{name}={}",
            value.replace('+', "%2B").replace(' ', "+")
        ));
    }
    assert!(
        out.iter().any(|field| field.starts_with(change)),
        "no field {change}"
    );
    out.join("&")
}

/// The text of one field of a page's form.
fn field(page: &str, name: &str) -> String {
    let (_, rest) = page
        .split_once(&format!("name=\"{name}\" value=\""))
        .expect("the field");
    rest.split('"').next().expect("its text").to_owned()
}

/// The version a page's form was filled from, as a browser would send it.
fn revision(page: &str) -> String {
    let (_, rest) = page
        .split_once("name=\"revision\" value=\"")
        .expect("a revision");
    format!("revision={}", rest.split('"').next().expect("a number"))
}

/// The whole form of a page, one field changed.
fn form(page: &str, change: &str, to: &str) -> String {
    format!("{}&{}", revision(page), fields(page, change, to))
}

fn toml_form(revision: &str, toml: &str) -> String {
    let text: String = toml.bytes().map(|byte| format!("%{byte:02x}")).collect();
    format!("{revision}&toml={text}")
}

#[tokio::test]
async fn a_form_sent_back_unchanged_changes_no_plan() {
    let app = small_studio();
    let before = plan_query(&app, "/people/1/in/1").await;
    for scope in [
        "every", "formal", "stage", "indoors", "everyday", "practice",
    ] {
        let path = format!("/rules/of/{scope}");
        let page = get(&app, &path).await.text;
        let same = fields(&page, "front_cover.low", "2");
        let answer = post(&app, &path, &format!("{}&{same}", revision(&page))).await;
        assert_eq!(
            answer.status,
            StatusCode::SEE_OTHER,
            "{scope}: {}",
            answer.text
        );
        let again = follow(&app, &answer.to).await.text;
        assert_eq!(fields(&again, "front_cover.low", "2"), same, "{scope}");
    }
    assert_eq!(plan_query(&app, "/people/1/in/1").await, before);
}

#[tokio::test]
async fn an_occasions_rule_holds_there_alone() {
    let app = small_studio();
    let path = "/rules/of/formal";
    let page = get(&app, path).await.text;
    let sent = form(&page, "tare_length.low", "7.5");
    assert_eq!(post(&app, path, &sent).await.status, StatusCode::SEE_OTHER);
    let toml = get(&app, "/rules/toml").await.text;
    let own = toml
        .split("[occasions.formal.targets.")
        .find(|t| t.starts_with("tare_length"));
    let own = own.expect("formal's own row");
    assert!(
        own.contains("low = 7.5") && own.contains("house rule"),
        "{own}"
    );
    assert!(
        !toml.contains("[occasions.stage.targets.tare_length]"),
        "{toml}"
    );
    assert!(
        get(&app, "/rules")
            .await
            .text
            .contains("own copy is in force")
    );

    let asked = get(&app, "/rules/reset").await.text;
    assert_eq!(
        post(&app, "/rules/reset", &revision(&asked)).await.status,
        StatusCode::SEE_OTHER
    );
    assert!(!get(&app, "/rules/toml").await.text.contains("house rule"));
}

#[tokio::test]
async fn rules_are_read_in_shaku_and_kept_in_centimetres() {
    let app = small_studio();
    let path = "/rules/of/every";
    // 2 sun are 20 bu of 25/66 cm each: 7.5757… cm, kept to a tenth of a
    // millimetre.
    for (field, typed, place) in [
        ("tare_length.low", "2 sun", "[targets.tare_length]"),
        ("do.tare_length.plus", "2寸", "[usual.tare_length]"),
        ("do.nape_drop.high", "1尺", "[usual.nape_drop]"),
        ("do.nape_drop.spread", "5分", "[usual.nape_drop]"),
    ] {
        let page = get(&app, path).await.text;
        let answer = post(&app, path, &form(&page, field, typed)).await;
        assert_eq!(
            answer.status,
            StatusCode::SEE_OTHER,
            "{field}: {}",
            answer.text
        );
        let toml = get(&app, "/rules/toml").await.text;
        let row = toml.split_once(place).expect("its row").1;
        let row = format!("{}\n", row.split("\n[").next().expect("the row alone"));
        let cm = match typed {
            "1尺" => "37.88",
            "5分" => "1.89",
            _ => "7.58",
        };
        assert!(
            row.contains(&format!(" = {cm}\n")),
            "{field} = {typed} is {cm} cm in {row}"
        );
    }
}

#[tokio::test]
async fn wrong_rules_come_back_as_typed_each_with_its_reason() {
    let app = small_studio();
    let path = "/rules/of/every";
    let page = get(&app, path).await.text;
    for (field, typed) in [
        ("front_cover.low", "many"),
        ("front_cover.low", "9"),
        ("front_cover.weight", "-1"),
        ("do.nape_drop.spread", "0"),
        ("do.nape_drop.low", "99"),
        ("do.nape_drop.low", "2 ells"),
        ("do.nape_drop.spread", "99 shaku"),
        ("drum_height.high", "0.17 stature + x"),
    ] {
        let answer = post(&app, path, &form(&page, field, typed)).await;
        assert_eq!(
            answer.status,
            StatusCode::UNPROCESSABLE_ENTITY,
            "{field} {typed}"
        );
        assert!(
            answer.text.contains(&format!("value=\"{typed}\"")),
            "{field} {typed}"
        );
        let id = format!("f-{}", field.replace('.', "-"));
        assert!(
            answer.text.contains(&format!("href=\"#{id}\"")),
            "{field} {typed}"
        );
    }
    assert!(
        get(&app, "/rules")
            .await
            .text
            .contains("customary standard is in force")
    );
}

#[tokio::test]
async fn rules_that_contradict_each_other_are_told_and_never_stored() {
    let app = small_studio();
    let every = "/rules/of/every";
    // Usual values outside their own limits, on either page.
    for (path, field, typed) in [
        (every, "do.tare_length.plus", "60"),
        (every, "do.tare_length.high", "7"),
        ("/rules/of/formal", "do.tare_length.plus", "60"),
        ("/rules/of/formal", "do.tare_length.plus", "0.9 stature"),
    ] {
        let page = get(&app, path).await.text;
        let answer = post(&app, path, &form(&page, field, typed)).await;
        assert_eq!(
            answer.status,
            StatusCode::UNPROCESSABLE_ENTITY,
            "{path} {field} {typed}"
        );
        assert!(
            answer.text.contains(&format!("value=\"{typed}\"")),
            "{field} {typed}"
        );
        assert!(
            answer.text.contains("href=\"#f-do-tare_length-plus\""),
            "{field} {typed}: {}",
            answer.text
        );
        assert_eq!(
            get(&app, "/people/1/in/1?hem_height=1").await.status,
            StatusCode::OK
        );
    }
}

#[tokio::test]
async fn limits_that_shut_out_an_occasions_own_value_name_the_occasion() {
    let app = small_studio();
    let formal = "/rules/of/formal";
    let page = get(&app, formal).await.text;
    let own = form(&page, "do.tare_length.plus", "9");
    assert_eq!(post(&app, formal, &own).await.status, StatusCode::SEE_OTHER);
    let every = "/rules/of/every";
    let page = get(&app, every).await.text;
    let answer = post(&app, every, &form(&page, "do.tare_length.high", "8")).await;
    assert_eq!(
        answer.status,
        StatusCode::UNPROCESSABLE_ENTITY,
        "{}",
        answer.text
    );
    let faults = answer
        .text
        .split_once("id=\"errors\"")
        .expect("a summary")
        .1;
    let faults = faults.split_once("</section>").expect("its end").0;
    assert!(
        faults.contains("Formal") && faults.contains("href=\"#f-do-tare_length-"),
        "{faults}"
    );
}

#[tokio::test]
async fn text_that_is_no_standard_is_kept_in_its_field() {
    let app = small_studio();
    let first = revision(&get(&app, "/rules/toml").await.text);
    let answer = post(&app, "/rules/toml", &toml_form(&first, "name = \"mine")).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(
        answer.text.contains("name = &quot;mine</textarea>"),
        "{}",
        answer.text
    );
    let toml = sunbu_core::dressing::Standard::CUSTOMARY_TOML;
    let mended = toml_form(&revision(&answer.text), toml);
    let answer = post(&app, "/rules/toml", &mended).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER, "{}", answer.text);
}

#[tokio::test]
async fn the_later_of_two_windows_sees_what_the_other_changed_and_loses_nothing() {
    let app = small_studio();
    let path = "/rules/of/every";
    let page = get(&app, path).await.text;
    let hers = form(&page, "tare_length.low", "7.5");
    assert_eq!(post(&app, path, &hers).await.status, StatusCode::SEE_OTHER);
    // A form that says no version is an old one, too.
    let his = fields(&page, "nape_drop.low", "5.5");
    for sent in [format!("{}&{his}", revision(&page)), his.clone()] {
        let late = post(&app, path, &sent).await;
        assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.text);
        let told = late.text.split_once("role=\"alert\"").expect("told").1;
        let told = told.split_once("</section>").expect("its end").0;
        for field in ["tare_length-low", "nape_drop-low"] {
            assert!(told.contains(&format!("href=\"#f-{field}\"")), "{told}");
        }
        assert_eq!(told.matches("<li>").count(), 2, "{told}");
        for shown in ["“7.5” in the other", "“7” here", "“5.5” here"] {
            assert!(told.contains(shown), "{shown} in {told}");
        }
        assert_eq!(fields(&late.text, "nape_drop.low", "5.5"), his);
        // Nothing was overwritten by being told.
        let kept = get(&app, path).await.text;
        assert_eq!(
            fields(&kept, "tare_length.low", "7.5"),
            fields(&page, "tare_length.low", "7.5")
        );
    }
    let late = post(&app, path, &his).await.text;
    let again = format!("{}&{his}", revision(&late));
    assert_eq!(post(&app, path, &again).await.status, StatusCode::SEE_OTHER);
    let kept = get(&app, path).await.text;
    assert_eq!(fields(&kept, "nape_drop.low", "5.5"), his);
}

#[tokio::test]
async fn text_and_taking_back_from_an_old_window_change_nothing() {
    let app = small_studio();
    let (toml, reset) = ("/rules/toml", "/rules/reset");
    let first = revision(&get(&app, toml).await.text);
    assert_eq!(first, revision(&get(&app, reset).await.text));
    let customary = sunbu_core::dressing::Standard::CUSTOMARY_TOML;
    let hers = customary.replacen("name = \"", "name = \"Hers, ", 1);
    let sent = toml_form(&first, &hers);
    assert_eq!(post(&app, toml, &sent).await.status, StatusCode::SEE_OTHER);

    let his = customary.replacen("name = \"", "name = \"His, ", 1);
    let late = post(&app, toml, &toml_form(&first, &his)).await;
    assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.text);
    for text in [
        "Another window changed",
        "name = &quot;His, ",
        "name = &quot;Hers, ",
    ] {
        assert!(late.text.contains(text), "{text} in {}", late.text);
    }
    let late = post(&app, reset, &first).await;
    assert_eq!(late.status, StatusCode::CONFLICT, "{}", late.text);
    assert!(
        late.text.contains("Another window changed"),
        "{}",
        late.text
    );
    assert!(get(&app, toml).await.text.contains("name = &quot;Hers, "));
    let asked = revision(&late.text);
    assert_eq!(
        post(&app, reset, &asked).await.status,
        StatusCode::SEE_OTHER
    );
    assert!(!get(&app, toml).await.text.contains("name = &quot;Hers, "));
}

#[tokio::test]
async fn a_wish_emptied_for_one_occasion_is_gone_there_alone_until_it_is_written_again() {
    let app = small_studio();
    let path = "/rules/of/formal";
    let page = get(&app, path).await.text;
    let (low, high, weight) = ("tare_length.low", "tare_length.high", "tare_length.weight");
    let text = |name: &str| field(&page, name);
    let was = [low, high, weight].map(text);
    let shown = |page: &str| [low, high, weight].map(|name| field(page, name));
    assert!(!was[0].is_empty(), "customary practice wishes for it");
    let change = |page: &str, to: &[String; 3]| {
        let fields = form(page, low, &to[0]);
        let pairs = fields.split('&').map(|pair| match pair.split('=').next() {
            Some(name) if name == high => format!("{high}={}", to[1]),
            Some(name) if name == weight => format!("{weight}={}", to[2]),
            _ => pair.to_owned(),
        });
        pairs.collect::<Vec<_>>().join("&")
    };
    let none = [String::new(), String::new(), String::new()];
    let sent = change(&page, &none);
    assert_eq!(post(&app, path, &sent).await.status, StatusCode::SEE_OTHER);

    let emptied = get(&app, path).await.text;
    assert_eq!(shown(&emptied), none, "the page shows what was saved");
    assert!(emptied.contains("No wish on this occasion"), "{emptied}");
    let toml = get(&app, "/rules/toml").await.text;
    assert!(
        toml.contains("without = [&quot;tare_length&quot;]"),
        "{toml}"
    );
    for (occasion, wished) in [("formal", false), ("stage", true)] {
        let plan = follow(&app, &format!("/people/1/in/1?occasion={occasion}")).await;
        let numbers = plan.text.split_once("id=\"numbers\"").expect("numbers").1;
        let numbers = numbers.split_once("id=\"ways\"").expect("their end").0;
        let row = "Tail below the drum (tare)";
        assert_eq!(numbers.contains(row), wished, "{occasion}: {numbers}");
    }
    let elsewhere = get(&app, "/rules/of/stage").await.text;
    assert_eq!(shown(&elsewhere), was);

    // Sent back unchanged it stays away; with the general numbers it is the general wish again.
    let same = change(&emptied, &none);
    assert_eq!(post(&app, path, &same).await.status, StatusCode::SEE_OTHER);
    let emptied = get(&app, path).await.text;
    assert_eq!(shown(&emptied), none);
    let back = change(&emptied, &was);
    assert_eq!(post(&app, path, &back).await.status, StatusCode::SEE_OTHER);
    assert_eq!(shown(&get(&app, path).await.text), was);
    let toml = get(&app, "/rules/toml").await.text;
    assert!(
        !toml.contains("without") && !toml.contains("[occasions.formal.targets.tare_length]"),
        "{toml}"
    );
}

#[tokio::test]
async fn a_usual_value_emptied_for_one_occasion_is_that_of_every_occasion() {
    let app = small_studio();
    let (path, name) = ("/rules/of/formal", "do.nape_drop.plus");
    let page = get(&app, path).await.text;
    assert_eq!(field(&page, name), "8.5");
    assert!(page.contains("a usual value left empty is that of every occasion"));
    let sent = form(&page, name, "");
    assert_eq!(post(&app, path, &sent).await.status, StatusCode::SEE_OTHER);
    let general = field(&get(&app, "/rules/of/every").await.text, name);
    assert_eq!(field(&get(&app, path).await.text, name), general);
}
