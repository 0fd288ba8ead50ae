//! The harness finds each fault that it is there to find, and none on a page without any.

// A helper that fails is a failed test.
#![allow(clippy::unwrap_used)]

mod site;

use std::path::Path;
use std::process::Command;
use std::thread;
use std::time::Duration;

use sunbu_browser_tests::{Browser, Language, Page, View, visit};

const PHONE: View = View {
    width: 360,
    height: 740,
    language: Language::En,
};
const DESK: View = View {
    width: 1440,
    height: 900,
    language: Language::Ja,
};

/// The head of a page without fault; `LANGUAGE` becomes what the browser asked for.
macro_rules! page {
    ($body:literal) => {
        concat!(
            "<!doctype html><html lang='LANGUAGE'><head><title>Try</title>",
            "<meta name='viewport' content='width=device-width, initial-scale=1'>",
            "<link rel='icon' href='data:,'></head><body><main><h1>Try</h1>",
            $body,
            "</main></body></html>"
        )
    };
}

const GOOD: &str = page!(
    "<p>A long line that can break wherever it must, so that it fits a narrow screen.</p>
     <form><label for='a'>Stature</label> <input id='a' name='a'> <button>Save</button></form>"
);

/// What a visit to this page finds, one fault a line.
async fn faults(view: View, html: &str) -> String {
    let browser = Browser::open(view).await.unwrap();
    let page = Page::new("/?harness");
    let faults = visit(&browser, &site::serve(html), &page).await.unwrap();
    faults.join("\n")
}

#[tokio::test]
async fn a_page_without_fault_passes_on_a_phone_and_at_a_desk_in_both_languages() {
    for view in [PHONE, DESK] {
        assert_eq!(faults(view, GOOD).await, "", "{view:?}");
    }
}

#[tokio::test]
async fn the_audit_names_the_rule_and_the_element_of_each_violation() {
    let bad = page!(
        "<p style='color:#aaa;background:#fff'>Too pale</p><input name='a'><img src='data:,'>
         <button style='width:9px;height:9px;padding:0;border:0' aria-label='a'></button><button
          style='width:9px;height:9px;padding:0;border:0' aria-label='b'></button>"
    );
    let browser = Browser::open(PHONE).await.unwrap();
    let origin = site::serve(bad);
    browser.goto(&origin).await.unwrap();
    let violations = browser.audit().await.unwrap();
    for (rule, element) in [
        ("color-contrast", "Too pale"),
        ("label", "<input name=\"a\">"),
        ("image-alt", "<img"),
        ("target-size", "aria-label=\"a\""), // WCAG 2.2's own, left out of older sets of rules
    ] {
        let found = violations.iter().find(|violation| violation.id == rule);
        let text = found.map(ToString::to_string).unwrap_or_default();
        assert!(
            text.contains(element),
            "{rule}: {text:?} among {violations:?}"
        );
    }
}

#[tokio::test]
async fn a_page_wider_than_the_screen_is_found_with_the_element_that_is_too_wide() {
    let wide = page!("<p>Fine</p><div><p id='long' style='width:500px'>Too wide</p></div>");
    let found = faults(PHONE, wide).await;
    assert!(
        found.contains("on a screen of 360 px: <p id=long> ends at 5"),
        "{found}"
    );
    let at_a_desk = faults(DESK, wide).await;
    assert_eq!(at_a_desk, "", "500 px fit a desk");
}

#[tokio::test]
async fn a_page_without_a_viewport_element_does_not_fit_a_phone() {
    let plain = "<!doctype html><html lang='LANGUAGE'><title>Try</title>\
                 <link rel='icon' href='data:,'><main><h1>Try</h1></main></html>";
    let found = faults(PHONE, plain).await;
    assert!(found.contains("no viewport element?"), "{found}");
}

#[tokio::test]
async fn a_page_in_another_language_than_asked_for_is_found() {
    let german = GOOD.replace("LANGUAGE", "de");
    let found = faults(DESK, &german).await;
    assert_eq!(
        found,
        "/?harness at 1440 px in ja: <html lang> is Some(\"de\"), not \"ja\""
    );
}

#[tokio::test]
async fn scripts_that_fail_and_files_that_do_not_come_are_found() {
    let broken = page!(
        "<script>undefinedFunction()</script><script src='/missing.js'></script>
         <script>console.warn('only a warning')</script>"
    );
    let found = faults(PHONE, broken).await;
    for part in ["undefinedFunction is not defined", "missing.js"] {
        assert!(found.contains(part), "no {part:?} in {found}");
    }
    assert!(!found.contains("only a warning"), "{found}");
}

#[tokio::test]
async fn the_status_must_be_the_one_that_the_page_should_have() {
    let browser = Browser::open(PHONE).await.unwrap();
    let origin = site::serve(GOOD);
    let nowhere = Page::new("/harness-nowhere");
    let found = visit(&browser, &origin, &nowhere).await.unwrap();
    let wrong = "/harness-nowhere at 360 px in en: the status is Some(404), not 200";
    assert_eq!(found, [wrong]);
    let found = visit(&browser, &origin, &nowhere.with_status(404))
        .await
        .unwrap();
    assert_eq!(found, [""; 0]);
    let home = Page::new("/?harness").with_status(404);
    let found = visit(&browser, &origin, &home).await.unwrap();
    assert_eq!(
        found,
        ["/?harness at 360 px in en: the status is Some(200), not 404"]
    );
}

#[tokio::test]
async fn a_picture_shows_the_whole_page_at_the_screens_width() {
    let tall = page!("<div style='height:3000px'>Tall</div>");
    let browser = Browser::open(DESK).await.unwrap();
    browser.goto(&site::serve(tall)).await.unwrap();
    let path = browser.screenshot("harness-tall").await.unwrap();
    let png = std::fs::read(&path).unwrap();
    // The PNG specification, 11.2.2 "IHDR Image header": width and height at bytes 16 and 20.
    let number = |at: usize| u32::from_be_bytes(png[at..at + 4].try_into().unwrap());
    let (width, height) = (number(16), number(20));
    assert!(
        (1400..=1440).contains(&width) && height > 3000,
        "{width} x {height}"
    );
}

#[tokio::test]
async fn nothing_is_left_running_when_a_browser_is_dropped() {
    let browser = Browser::open(PHONE).await.unwrap();
    let capabilities = browser.client().capabilities().unwrap();
    let process = capabilities["goog:processID"].as_u64().unwrap();
    let profile = capabilities["chrome"]["userDataDir"]
        .as_str()
        .unwrap()
        .to_owned();
    let runs = || {
        let listed = Command::new("ps")
            .args(["-o", "stat=", "-p", &process.to_string()])
            .output();
        let state = String::from_utf8(listed.unwrap().stdout).unwrap();
        !state.trim().is_empty() && !state.starts_with('Z')
    };
    assert!(
        runs() && Path::new(&profile).exists(),
        "the browser is there before"
    );
    drop(browser);
    // A process that was told to end is still listed for a moment.
    for _ in 0..100 {
        if !runs() {
            break;
        }
        thread::sleep(Duration::from_millis(50));
    }
    assert!(!runs(), "process {process} still runs");
    assert!(!Path::new(&profile).exists(), "{profile} is still there");
}
