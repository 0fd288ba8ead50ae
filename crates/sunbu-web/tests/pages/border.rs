//! What stands before the pages: hosts, forms from elsewhere, languages, assets, odd requests.

use axum::body::Body;
use axum::http::{Request, StatusCode, header};

use crate::studio::{empty_studio, get, get_in, post, send, small_studio};

#[tokio::test]
async fn strange_hosts_are_refused_before_any_page() {
    let app = small_studio();
    for host in [
        "studio.example.org",
        "localhost.example.org",
        "0.0.0.0",
        "a@localhost",
        "",
    ] {
        for path in ["/people/1", "/assets/x/style.css", "/nowhere"] {
            let request = Request::get(path).header(header::HOST, host);
            let answer = send(&app, request.body(Body::empty()).expect("a request")).await;
            assert_eq!(
                answer.status,
                StatusCode::MISDIRECTED_REQUEST,
                "{host} {path}"
            );
            assert!(
                !answer.text.contains("Reiko"),
                "{host} {path}: {}",
                answer.text
            );
        }
    }
    let none = Request::get("/").body(Body::empty()).expect("a request");
    assert_eq!(
        send(&app, none).await.status,
        StatusCode::MISDIRECTED_REQUEST
    );
    for host in ["localhost", "LOCALHOST:4000", "127.0.0.1:1", "[::1]:4000"] {
        let request = Request::get("/").header(header::HOST, host);
        let answer = send(&app, request.body(Body::empty()).expect("a request")).await;
        assert_eq!(answer.status, StatusCode::OK, "{host}");
    }
}

#[tokio::test]
async fn forms_from_elsewhere_change_nothing() {
    let app = small_studio();
    for (name, value) in [
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-site", "same-site"),
        ("origin", "https://example.org"),
        ("origin", "http://localhost:9"),
        ("origin", "null"),
    ] {
        for path in [
            "/people/1/erase",
            "/people/new",
            "/rules/reset",
            "/settings",
        ] {
            let request = Request::post(path)
                .header(header::HOST, "localhost:8080")
                .header(name, value)
                .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded");
            let answer = send(&app, request.body(Body::empty()).expect("a request")).await;
            assert_eq!(
                answer.status,
                StatusCode::FORBIDDEN,
                "{name}: {value} {path}"
            );
        }
    }
    assert_eq!(get(&app, "/people/1").await.status, StatusCode::OK);
}

#[tokio::test]
async fn every_answer_forbids_content_that_is_not_ours() {
    let app = small_studio();
    for path in ["/", "/people/1", "/nowhere", "/people/1/in/1"] {
        let head = get(&app, path).await.head;
        let policy = head[header::CONTENT_SECURITY_POLICY]
            .to_str()
            .expect("text");
        assert!(policy.starts_with("default-src 'none'"), "{path}: {policy}");
        assert!(!policy.contains("unsafe"), "{path}: {policy}");
        assert_eq!(head[header::X_CONTENT_TYPE_OPTIONS], "nosniff", "{path}");
        assert_eq!(head[header::CACHE_CONTROL], "no-store", "{path}");
    }
}

#[tokio::test]
async fn no_page_needs_an_inline_script_or_style() {
    let app = small_studio();
    for path in [
        "/",
        "/people/1",
        "/people/1/edit",
        "/rules/of/every",
        "/people/1/in/1/print",
    ] {
        let text = get(&app, path).await.text;
        for inline in [" style=", "<style", "<script>", " onclick=", " onload="] {
            assert!(!text.contains(inline), "{path} has {inline}");
        }
    }
}

#[tokio::test]
async fn names_and_notes_are_shown_as_text() {
    let app = empty_studio();
    let hostile = "%3Cscript%3Ealert(1)%3C%2Fscript%3E%22%27%26";
    let form = format!("name={hostile}&note={hostile}&sex=women&stature=160&hip_girth=92");
    let added = post(&app, "/people/new", &form).await;
    assert_eq!(added.status, StatusCode::SEE_OTHER, "{}", added.text);
    let form = format!(
        "name={hostile}&note={hostile}&kind=nagagi&cloth=soft&mitake_from=shoulder\
         &mitake=160&ushirohaba=30"
    );
    let added = post(&app, "/garments/new", &form).await;
    assert_eq!(added.status, StatusCode::SEE_OTHER, "{}", added.text);
    let plan = get(&app, "/people/1/in/1").await.to;
    for path in [
        "/",
        "/people",
        "/people/1",
        "/people/1/edit",
        "/people/1/erase",
        "/people/1/worth",
        "/people?search=%3Cscript%3E",
        "/garments",
        "/garments/1",
        "/garments/1/suits",
        plan.as_str(),
        "/people/1/in/1/print",
    ] {
        let text = get(&app, path).await.text;
        assert!(!text.contains("<script>"), "{path}");
        assert!(!text.contains("alert(1)</"), "{path}");
    }
    assert!(
        get(&app, "/people")
            .await
            .text
            .contains("&lt;script&gt;alert(1)")
    );
}

#[tokio::test]
async fn the_language_is_the_chosen_one_then_the_browsers() {
    let app = small_studio();
    assert!(
        get_in(&app, "/", "ja,en;q=0.5")
            .await
            .text
            .contains("<html lang=\"ja\">")
    );
    let choice = post(&app, "/language", "lang=ja&back=/people").await;
    assert_eq!(
        (choice.status, choice.to.as_str()),
        (StatusCode::SEE_OTHER, "/people")
    );
    let cookie = choice.head[header::SET_COOKIE].to_str().expect("text");
    assert!(cookie.starts_with("lang=ja;"), "{cookie}");
    let request = Request::get("/")
        .header(header::HOST, "localhost")
        .header(header::ACCEPT_LANGUAGE, "en")
        .header(header::COOKIE, "lang=ja");
    let page = send(&app, request.body(Body::empty()).expect("a request")).await;
    assert!(page.text.contains("<html lang=\"ja\">"));
}

#[tokio::test]
async fn a_choice_of_language_never_leads_away_from_the_studio() {
    let app = small_studio();
    for back in [
        "https://example.org/",
        "//example.org/",
        "%2F%5Cexample.org",
        "javascript:x",
    ] {
        let answer = post(&app, "/language", &format!("lang=en&back={back}")).await;
        assert_eq!(answer.to, "/", "{back}");
    }
    let answer = post(&app, "/language", "lang=xx&back=/").await;
    assert_eq!(answer.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn assets_are_kept_by_their_content() {
    let app = small_studio();
    let page = get(&app, "/").await.text;
    let path = page
        .split('"')
        .find(|part| part.ends_with("style.css"))
        .expect("a style sheet");
    let style = get(&app, path).await;
    assert_eq!(style.status, StatusCode::OK);
    assert!(
        style.head[header::CACHE_CONTROL]
            .to_str()
            .is_ok_and(|c| c.contains("immutable"))
    );
    let tag = style.head[header::ETAG].clone();
    let request = Request::get("/assets/old/style.css")
        .header(header::HOST, "localhost")
        .header(header::IF_NONE_MATCH, tag);
    let again = send(&app, request.body(Body::empty()).expect("a request")).await;
    assert_eq!(again.status, StatusCode::NOT_MODIFIED);
    assert_eq!(again.head[header::CACHE_CONTROL], "no-cache");
    assert_eq!(
        get(&app, "/assets/x/none.js").await.status,
        StatusCode::NOT_FOUND
    );
}

#[tokio::test]
async fn odd_requests_get_an_answer_and_no_harm() {
    let app = small_studio();
    let huge = format!("name={}", "x".repeat(10 << 20));
    let answer = post(&app, "/people/new", &huge).await;
    assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE);
    let wrong_encoding = post(&app, "/people/new", "name=%ff%fe&sex=women&stature=%ff").await;
    assert_eq!(wrong_encoding.status, StatusCode::UNPROCESSABLE_ENTITY);
    let answer = post(&app, "/people", "").await;
    assert_eq!(answer.status, StatusCode::METHOD_NOT_ALLOWED);
    let big = i64::MAX.to_string() + "0";
    for path in [
        format!("/people/{big}"),
        "/people/-1".into(),
        "/people/%ff".into(),
    ] {
        let status = get(&app, &path).await.status;
        assert!(status.is_client_error(), "{path}: {status}");
    }
}
