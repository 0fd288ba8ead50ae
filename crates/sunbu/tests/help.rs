//! Help that teaches: every command with an example, topics, and an example case that is one.

mod program;

use program::{command, file, sunbu};

#[test]
fn help_shows_commands_with_examples_in_both_languages() {
    for (lang, usage) in [("en", "Usage:"), ("ja", "使い方：")] {
        let ran = sunbu(&["--help", "--lang", lang]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
        for part in [
            usage,
            "plan",
            "rank",
            "figure",
            "check",
            "schema",
            "$ sunbu plan case.toml",
        ] {
            assert!(ran.out.contains(part), "no “{part}” in:\n{}", ran.out);
        }
        let long = sunbu(&["plan", "--help", "--lang", lang]).out;
        assert_eq!(long, sunbu(&["help", "plan", "--lang", lang]).out);
        assert!(
            long.contains("--set") && long.contains("koshihimo_back=90"),
            "{long}"
        );
    }
}

#[test]
fn the_example_case_shown_as_help_can_be_planned() {
    for lang in ["en", "ja"] {
        let shown = sunbu(&["help", "case", "--lang", lang]).out;
        let (_folder, path) = file(shown.as_bytes());
        let ran = sunbu(&["plan", &path]);
        assert_eq!(ran.code, Some(0), "{}", ran.err);
    }
}

#[test]
fn topics_list_every_key_that_a_case_may_hold() {
    use sunbu_core::body::BodyMeasure;
    use sunbu_core::dressing::Decision;
    use sunbu_core::fault::Fault;
    use sunbu_core::garment::Part;
    use sunbu_core::photo::Mark;
    let shown = |topic| sunbu(&["help", topic]).out;
    let (measures, parts, decisions) = (shown("measures"), shown("parts"), shown("decisions"));
    for measure in BodyMeasure::ALL.iter() {
        assert!(
            measures.contains(&format!("\n{} ", measure.key())),
            "{}",
            measure.key()
        );
    }
    for part in Part::ALL.iter() {
        assert!(
            parts.contains(&format!("\n{} ", part.key())),
            "{}",
            part.key()
        );
    }
    let (marks, faults) = (shown("marks"), shown("faults"));
    for mark in Mark::ALL {
        assert!(
            marks.contains(&format!("\n{} ", mark.key())),
            "{}",
            mark.key()
        );
    }
    for fault in Fault::ALL {
        assert!(
            faults.contains(&format!("\n{} ", fault.key())),
            "{}",
            fault.key()
        );
    }
    for decision in Decision::ALL {
        assert!(
            decisions.contains(&format!("\n{} ", decision.key())),
            "{}",
            decision.key()
        );
    }
}

#[test]
fn the_environment_chooses_the_language_where_nobody_else_does() {
    let output = command()
        .env("LC_ALL", "ja_JP.UTF-8")
        .arg("--help")
        .output()
        .expect("it runs");
    assert!(String::from_utf8_lossy(&output.stdout).contains("使い方："));
}

#[test]
fn the_version_is_told() {
    assert_eq!(
        sunbu(&["--version"]).out,
        format!("sunbu {}\n", env!("CARGO_PKG_VERSION"))
    );
}

#[test]
fn no_line_of_help_is_wider_than_a_terminal() {
    for topic in [
        "plan", "rank", "figure", "mark", "check", "schema", "help", "case", "measures", "parts",
        "photos", "marks", "faults",
    ] {
        for lang in ["en", "ja"] {
            for line in sunbu(&["help", topic, "--lang", lang]).out.lines() {
                // A Japanese letter is two columns wide.
                let width: usize = line.chars().map(|c| 1 + usize::from(c > '\u{2e80}')).sum();
                assert!(width <= 100, "{topic}: {width} columns: {line}");
            }
        }
    }
}

#[test]
fn the_shortest_case_of_the_book_can_be_planned() {
    let book = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/command-line.md");
    let text = std::fs::read_to_string(book).expect("the chapter");
    let start = text.find("```toml\n").expect("its example") + "```toml\n".len();
    let length = text[start..].find("```").expect("the end of the example");
    let (_folder, path) = file(&text.as_bytes()[start..start + length]);
    let ran = sunbu(&["plan", &path]);
    assert!(matches!(ran.code, Some(0 | 1)), "{}", ran.err);
}
