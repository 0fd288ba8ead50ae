//! Plans and rankings on the command line: what they say, and how they end.

mod program;

use program::{example, run, sunbu};

/// Every example with the exit code its head promises.
const EXAMPLES: [(&str, &str, i32); 5] = [
    ("plan", "annotated.toml", 0),
    ("plan", "annotated.ja.toml", 0),
    ("plan", "narrow-heirloom.toml", 1),
    ("plan", "tall-student.toml", 1),
    ("rank", "wardrobe.toml", 0),
];

#[test]
fn every_example_ends_as_its_head_says() {
    let folder = std::fs::read_dir(example("")).expect("the examples");
    let mut found: Vec<String> = folder
        .map(|entry| {
            entry
                .expect("an entry")
                .file_name()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    found.sort();
    let mut listed: Vec<&str> = EXAMPLES.iter().map(|(_, name, _)| *name).collect();
    listed.sort_unstable();
    assert_eq!(found, listed, "an example that no test runs");
    for (command, name, code) in EXAMPLES {
        for lang in ["en", "ja"] {
            let path = example(name);
            let path = path.to_str().expect("UTF-8");
            let ran = sunbu(&[command, path, "--lang", lang]);
            assert_eq!(ran.code, Some(code), "{name}: {}{}", ran.out, ran.err);
            assert!(ran.err.is_empty(), "{name}: {}", ran.err);
            assert!(
                !ran.out.contains('{') && !ran.out.contains("NaN"),
                "{name}: {}",
                ran.out
            );
        }
    }
}

#[test]
fn a_narrow_heirloom_is_told_what_holds_it_and_what_would_free_it() {
    let ran = sunbu(&["plan".as_ref(), example("narrow-heirloom.toml").as_os_str()]);
    for part in [
        "Granddaughter in Crested black kimono, 1958",
        "narrow",
        "back seam",
        "What cannot be met, and what would free it",
        "Held by:",
        "Would suffer if it were met:",
        "Ways out:",
        "wider all round would meet it",
        "more yuki would meet it",
        "Waist tie (koshihimo)",
        "no medical advice",
    ] {
        assert!(ran.out.contains(part), "no “{part}” in:\n{}", ran.out);
    }
}

#[test]
fn a_plan_comes_in_fifteen_steps_with_numbers_against_body_and_hand() {
    let ran = sunbu(&["plan".as_ref(), example("annotated.toml").as_os_str()]);
    for number in 1..=15 {
        assert!(
            ran.out.contains(&format!("\n{number:>2}. ")),
            "no step {number}"
        );
    }
    assert!(ran.out.contains("hip bone ("), "{}", ran.out);
    assert!(ran.out.contains("fingers"), "{}", ran.out);
    assert!(
        ran.out
            .contains("Fingers and fists are those of Mori Sayo."),
        "{}",
        ran.out
    );
}

#[test]
fn what_the_dresser_sets_stays_and_the_rest_is_planned_around_it() {
    let path = example("annotated.toml");
    let path = path.to_str().expect("UTF-8");
    let free = sunbu(&["plan", path, "--json"]);
    let set = sunbu(&["plan", path, "--json", "--set", "koshihimo_back=2尺5寸"]);
    let value = |ran: &program::Ran, decision: &str| {
        let json: serde_json::Value = serde_json::from_str(&ran.out).expect("JSON");
        let all = json["dressing"].as_array().expect("a list").clone();
        let one = all
            .into_iter()
            .find(|d| d["decision"] == decision)
            .expect("the decision");
        (
            one["value_cm"].as_f64().expect("a number"),
            one["locked"] == true,
        )
    };
    let (cm, locked) = value(&set, "koshihimo_back");
    // 2 shaku 5 sun of 25/66 m a shaku, to the hundredth of the document.
    assert!((cm - 250.0 * 25.0 / 66.0).abs() < 0.006 && locked, "{cm}");
    let (before, after) = (
        value(&free, "take_up_back").0,
        value(&set, "take_up_back").0,
    );
    assert!(
        (before - after).abs() > 0.1,
        "the plan did not answer: {before} and {after}"
    );
    // The case itself sets the nape.
    assert_eq!(value(&free, "nape_drop"), (7.0, true));
}

#[test]
fn an_occasion_given_on_the_command_line_wins_over_the_case() {
    let path = example("annotated.toml");
    let path = path.to_str().expect("UTF-8");
    for (occasion, name) in [
        ("formal", "Formal."),
        ("stage", "Stage."),
        ("indoors", "Indoors"),
    ] {
        let ran = sunbu(&["plan", path, "--occasion", occasion]);
        assert!(ran.out.contains(name), "{occasion}:\n{}", ran.out);
    }
}

#[test]
fn a_standard_of_ones_own_is_judged_by() {
    let shown = sunbu(&["help", "standard"]).out;
    let own = shown.replacen(
        "name = \"customary\"",
        "name = \"House of the long fold\"",
        1,
    );
    let fold = "[targets.fold_front]\nlow = ";
    let at = own.find(fold).expect("the standard wishes for a fold") + fold.len();
    let end = at + own[at..].find("source").expect("its source");
    let own = format!("{}12\nhigh = 14\nweight = 3\n{}", &own[..at], &own[end..]);
    let (_folder, standard) = program::file(own.as_bytes());
    let path = example("annotated.toml");
    let path = path.to_str().expect("UTF-8");
    let ran = sunbu(&["plan", path, "--standard", &standard]);
    assert!(
        ran.out.contains("House of the long fold"),
        "{}{}",
        ran.out,
        ran.err
    );
    assert!(ran.out.contains("wanted 12 to 14 cm"), "{}", ran.out);
}

#[test]
fn a_wardrobe_is_ranked_best_first_with_a_reason_for_each() {
    let ran = sunbu(&[
        "rank".as_ref(),
        example("wardrobe.toml").as_os_str(),
        "--json".as_ref(),
    ]);
    let json: serde_json::Value = serde_json::from_str(&ran.out).expect("JSON");
    let rows = json["rows"].as_array().expect("rows");
    assert_eq!(rows.len(), 6);
    let off: Vec<f64> = rows
        .iter()
        .map(|r| r["off_cm"].as_f64().expect("a number"))
        .collect();
    assert!(off.is_sorted(), "{off:?}");
    assert!(
        rows.iter()
            .all(|r| r["reason"].as_str().is_some_and(|text| text.len() > 10))
    );
    assert_eq!(json["ranked_for"], "Aunt with the wardrobe");
}

#[test]
fn of_several_garments_one_is_named_by_name_or_number() {
    let path = example("wardrobe.toml");
    let path = path.to_str().expect("UTF-8");
    for named in ["Blue komon", "1"] {
        let ran = sunbu(&["plan", path, "--garment", named]);
        assert!(
            ran.out
                .starts_with("Aunt with the wardrobe in Blue komon\n"),
            "{}",
            ran.out
        );
    }
    for wrong in [None, Some("0"), Some("7"), Some("Red komon")] {
        let mut arguments = vec!["plan", path];
        arguments.extend(wrong.map(|name| ["--garment", name]).into_iter().flatten());
        let ran = sunbu(&arguments);
        assert_eq!(ran.code, Some(2), "{wrong:?}");
        assert!(ran.err.contains("Brown tsumugi"), "{wrong:?}: {}", ran.err);
        assert!(ran.out.is_empty(), "{wrong:?}: {}", ran.out);
    }
}

#[test]
fn the_same_case_through_a_pipe_gives_the_same_plan() {
    let path = example("tall-student.toml");
    let bytes = std::fs::read(&path).expect("the example");
    let (piped, named) = (
        run(&["plan", "-"], &bytes),
        sunbu(&["plan".as_ref(), path.as_os_str()]),
    );
    assert_eq!(piped.out, named.out);
    assert_eq!(piped.code, Some(1));
}

#[test]
fn figures_are_drawn_as_svg_that_says_what_it_shows() {
    let path = example("narrow-heirloom.toml");
    let path = path.to_str().expect("UTF-8");
    for view in ["front", "back", "sheet", "sheet-upright"] {
        let ran = sunbu(&["figure", path, "--view", view, "--show", "usual"]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        let svg = ran.out.trim();
        assert!(svg.starts_with("<svg") && svg.ends_with("</svg>"), "{view}");
        assert!(svg.contains("<title") && !svg.contains("NaN"), "{view}");
    }
    let (_folder, target) = program::file(b"");
    let ran = sunbu(&["figure", path, "-o", &target]);
    assert_eq!(
        (ran.code, ran.out),
        (Some(0), format!("Written to {target}.\n"))
    );
    assert!(
        std::fs::read_to_string(&target)
            .expect("the figure")
            .starts_with("<svg")
    );
    let nowhere = format!("{target}/figure.svg");
    let ran = sunbu(&["figure", path, "--output", &nowhere]);
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(ran.err.starts_with(&nowhere), "{}", ran.err);
}

#[test]
fn a_reader_that_stops_reading_is_no_error() {
    use std::process::Stdio;
    let mut child = program::command()
        .args(["help", "standard"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    drop(child.stdout.take());
    let output = child.wait_with_output().expect("the program ends");
    assert_eq!(output.status.code(), Some(0));
    assert!(
        output.stderr.is_empty(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
}
