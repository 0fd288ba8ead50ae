//! What a studio may write into its own standard, and what it is told.

use std::collections::BTreeSet;

use sunbu_core::demo;
use sunbu_core::dressing::{Occasion, Quantity, Standard, StandardError};
use sunbu_core::garment::Cloth;

/// Places, typed texts and codes of everything wrong with the customary standard after changes.
fn wrong(changes: &[(&str, &str)]) -> Vec<(String, String, String)> {
    let text = changes
        .iter()
        .fold(Standard::CUSTOMARY_TOML.to_owned(), |text, (old, new)| {
            assert!(text.contains(old), "{old} is not in the standard");
            text.replacen(old, new, 1)
        });
    match Standard::parse(&text) {
        Ok(_) => Vec::new(),
        Err(StandardError::Values(problems)) => problems
            .into_iter()
            .map(|p| (p.place.clone(), p.typed.clone(), p.code()))
            .collect(),
        Err(StandardError::Form(why)) => panic!("not of a standard's form: {why}"),
    }
}

fn row(place: &str, typed: &str, code: &str) -> (String, String, String) {
    (place.into(), typed.into(), code.into())
}

const SOFT: &str = "soft = 8, cotton";

#[test]
fn the_shipped_standard_survives_its_own_text() {
    let standard = Standard::customary();
    assert_eq!(Standard::parse(&standard.to_toml()), Ok(standard));
}

#[test]
fn every_wrong_value_is_told_at_once() {
    assert_eq!(
        wrong(&[
            ("weight = 0.5", "weight = -1"),
            ("spread = 3", "spread = 0")
        ]),
        [
            row(
                "targets.uwamae_corner.weight",
                "-1",
                "problem-contradiction-weight-range"
            ),
            row("usual.hem_height.spread", "0", "problem-out-of-range"),
        ]
    );
}

#[test]
fn what_is_no_number_is_refused_wherever_it_stands() {
    let out = "problem-out-of-range";
    assert_eq!(
        wrong(&[(SOFT, "soft = nan, cotton")]),
        [row("usual.uwamae_raise.by_cloth.soft", "NaN", out)]
    );
    let change = "[occasions.formal.usual.nape_drop]\nplus = ";
    assert_eq!(
        wrong(&[(&format!("{change}8.5"), &format!("{change}inf"))]),
        [row("occasions.formal.usual.nape_drop.plus", "inf", out)]
    );
    assert_eq!(
        wrong(&[("low = 2\nhigh = 8", "low = nan\nhigh = 8")]),
        [row("targets.uwamae_corner.low", "NaN", out)]
    );
    assert_eq!(
        wrong(&[("weight = 0.5", "weight = nan")]),
        [row(
            "targets.uwamae_corner.weight",
            "NaN",
            "problem-contradiction-weight-range"
        )]
    );
}

#[test]
fn numbers_beyond_a_body_are_refused() {
    // Finite, but so large that squares overflow: the planner would never come to an end.
    let out = "problem-out-of-range";
    let found = wrong(&[("low = 2\nhigh = 8", "low = 1e200\nhigh = 1e201")]);
    let places: Vec<_> = found
        .iter()
        .map(|(place, _, code)| (place.as_str(), code.as_str()))
        .collect();
    assert_eq!(
        places,
        [
            ("targets.uwamae_corner.low", out),
            ("targets.uwamae_corner.high", out)
        ]
    );
    assert_eq!(
        wrong(&[("low = { stature = 0.17 }", "low = { stature = 99 }")]).len(),
        1,
        "a share of stature is held to the same bound"
    );
}

#[test]
fn a_misspelt_part_of_an_amount_is_not_swallowed() {
    let text = Standard::CUSTOMARY_TOML.replacen(
        "{ stature = 0.17 }",
        "{ stature = 0.17, pluss = 99 }",
        1,
    );
    assert!(matches!(
        Standard::parse(&text),
        Err(StandardError::Form(_))
    ));
}

#[test]
fn an_empty_range_and_a_usual_value_outside_its_limits_are_refused() {
    assert_eq!(
        wrong(&[("low = 2\nhigh = 8", "low = 9\nhigh = 8")]),
        [row(
            "targets.uwamae_corner",
            "",
            "problem-contradiction-range-empty"
        )]
    );
    assert_eq!(
        wrong(&[("plus = 1\nspread = 3", "plus = 200\nspread = 3")]),
        [row(
            "usual.hem_height.plus",
            "200",
            "problem-contradiction-usual-outside"
        )]
    );
    let change = "[occasions.everyday.usual.hem_height]\nplus = ";
    assert_eq!(
        wrong(&[(&format!("{change}4"), &format!("{change}40"))]),
        [row(
            "occasions.everyday.usual.hem_height.plus",
            "40",
            "problem-contradiction-usual-outside"
        )]
    );
}

#[test]
fn an_occasion_may_be_without_a_wish_of_every_occasion() {
    let head = "[occasions.formal.targets.hem_back]";
    let text = Standard::CUSTOMARY_TOML.replacen(
        head,
        &format!("[occasions.formal]\nwithout = [\"tare_length\"]\n\n{head}"),
        1,
    );
    let standard = Standard::parse(&text).unwrap();
    assert_eq!(Standard::parse(&standard.to_toml()), Ok(standard.clone()));
    let person = &demo::people().unwrap()[0].en;
    let body = person.body().unwrap();
    let wished = |standard: &Standard, occasion| {
        let rules = standard.rules(occasion, &body, Cloth::Soft);
        let wishes = rules.targets.iter().map(|target| target.quantity);
        wishes.collect::<BTreeSet<_>>()
    };
    let customary = Standard::customary();
    for &occasion in Occasion::ALL {
        let (with, now) = (wished(&customary, occasion), wished(&standard, occasion));
        let gone: Vec<_> = with.difference(&now).copied().collect();
        let expected: &[Quantity] = match occasion {
            Occasion::Formal => &[Quantity::TareLength],
            _ => &[],
        };
        assert_eq!(gone, expected, "{occasion:?}");
        assert!(now.is_subset(&with), "{occasion:?}");
    }
}

#[test]
fn a_wish_both_written_and_left_out_is_refused() {
    let head = "[occasions.formal.targets.hem_back]";
    let both = format!("[occasions.formal]\nwithout = [\"hem_back\"]\n\n{head}");
    assert_eq!(
        wrong(&[(head, &both)]),
        [row(
            "occasions.formal.without",
            "hem_back",
            "problem-contradiction-wish-and-without"
        )]
    );
}
