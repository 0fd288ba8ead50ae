//! Whole pages as stored snapshots. Drawings are left out: they have snapshots of their own where
//! they are drawn. After a wanted change run the tests with `INSTA_UPDATE=always` and look at the
//! difference.

use crate::reports::checked_studio;
use crate::studio::{Answer, empty_studio, get, get_in, keep, plan_query, post, small_studio};

/// The answer with each tag on a line of its own, names of assets without their content's hash,
/// and drawings cut out.
fn page(answer: &Answer) -> String {
    let mut out = format!("{}\n", answer.status);
    let mut text = answer.text.as_str();
    while let Some((before, rest)) = text.split_once("<svg") {
        out.push_str(before);
        out.push_str("<svg/>");
        text = rest.split_once("</svg>").map_or("", |(_, after)| after);
    }
    out.push_str(text);
    let parts = out.split("/assets/").enumerate();
    let without_hash = parts.map(|(i, part)| match (i, part.split_once('/')) {
        (0, _) | (_, None) => part.to_owned(),
        (_, Some((_, rest))) => format!("/assets/…/{rest}"),
    });
    without_hash.collect::<String>().replace("><", ">\n<")
}

/// The same with every number as 0: what a page says and how it is built, whatever the model says
/// of the numbers, which have tests of their own.
fn page_without_numbers(answer: &Answer) -> String {
    let mut out = String::new();
    let mut in_number = false;
    for c in page(answer).chars() {
        let digit = c.is_ascii_digit();
        match (digit, in_number) {
            (true, false) => out.push('0'),
            (true, true) => {}
            // A point within a number.
            (false, true) if c == '.' => continue,
            (false, _) => out.push(c),
        }
        in_number = digit;
    }
    out
}

/// Compares a page with its snapshot of that name.
macro_rules! same {
    ($name:literal, $answer:expr) => {
        insta::assert_snapshot!($name, page(&$answer.await))
    };
}

/// Compares a page of computed numbers with its snapshot of that name.
macro_rules! alike {
    ($name:literal, $answer:expr) => {
        insta::assert_snapshot!($name, page_without_numbers(&$answer.await))
    };
}

#[tokio::test]
async fn pages_of_an_empty_studio() {
    let app = empty_studio();
    same!("empty-home", get(&app, "/"));
    same!("empty-people", get(&app, "/people"));
    same!("empty-garments", get(&app, "/garments"));
    same!("empty-plans", get(&app, "/plans"));
    same!("not-found", get(&app, "/nowhere"));
    same!("not-found-ja", get_in(&app, "/nowhere", "ja"));
}

#[tokio::test]
async fn pages_of_people() {
    let app = small_studio();
    same!("home", get(&app, "/"));
    same!("people", get(&app, "/people"));
    alike!("person", get(&app, "/people/2"));
    alike!("person-ja", get_in(&app, "/people/2", "ja"));
    same!("person-edit", get(&app, "/people/2/edit"));
    same!("person-erase", get(&app, "/people/2/erase"));
    let wrong = "name=Hana&sex=women&stature=12+ells&hip_girth=92";
    same!("person-refused", post(&app, "/people/new", wrong));
    let late = "revision=0&name=Hana&sex=women&stature=160&hip_girth=92";
    same!("person-stale", post(&app, "/people/2/edit", late));
}

#[tokio::test]
async fn pages_of_garments() {
    let app = small_studio();
    same!("garments", get(&app, "/garments"));
    alike!("garment", get(&app, "/garments/1"));
    alike!("garment-ja", get_in(&app, "/garments/1", "ja"));
    same!("garment-edit", get(&app, "/garments/1/edit"));
    same!(
        "garment-refused",
        post(&app, "/garments/new", "name=Try&kind=robe")
    );
}

#[tokio::test]
async fn pages_of_plans() {
    let app = small_studio();
    let path = "/people/1/in/2";
    let query = plan_query(&app, path).await;
    alike!("plan", get(&app, &format!("{path}?{query}")));
    alike!("plan-ja", get_in(&app, &format!("{path}?{query}"), "ja"));
    alike!("plan-print", get(&app, &format!("{path}/print?{query}")));
    let id = keep(&app, path, "Rehearsal").await;
    alike!("kept", get(&app, &format!("/plans/{id}")));
    same!("plans", get(&app, "/plans"));
    alike!("worth", get(&app, "/people/1/worth"));
    alike!("suits", get(&app, "/garments/2/suits"));
}

#[tokio::test]
async fn pages_of_rules_and_settings() {
    let app = small_studio();
    same!("rules", get(&app, "/rules"));
    same!("rules-formal", get(&app, "/rules/of/formal"));
    same!("rules-reset", get(&app, "/rules/reset"));
    same!("settings", get(&app, "/settings"));
    same!("settings-ja", get_in(&app, "/settings", "ja"));
}

#[tokio::test]
async fn pages_of_reports() {
    let app = checked_studio();
    alike!("report", get(&app, "/checks/1/report"));
    alike!("report-ja", get_in(&app, "/checks/1/report", "ja"));
    alike!("sheet", get(&app, "/checks/1/sheet"));
    alike!("sheet-ja", get_in(&app, "/checks/1/sheet", "ja"));
}
