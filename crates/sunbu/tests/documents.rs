//! The documents of `--json` keep to the schemas that the program itself prints.

mod program;

use program::{example, file, sunbu};
use serde_json::Value;

fn schema(name: &str) -> Value {
    let ran = sunbu(&["schema", name]);
    assert_eq!(ran.code, Some(0), "{}", ran.err);
    serde_json::from_str(&ran.out).expect("a schema is JSON")
}

fn complaints(schema: &Value, document: &Value) -> Vec<String> {
    let validator = jsonschema::validator_for(schema).expect("a valid schema");
    validator
        .iter_errors(document)
        .map(|e| format!("{}: {e}", e.instance_path()))
        .collect()
}

fn document(arguments: &[&str]) -> Value {
    let ran = sunbu(arguments);
    serde_json::from_str(&ran.out).unwrap_or_else(|e| panic!("{e}: {}{}", ran.out, ran.err))
}

#[test]
fn every_document_keeps_to_its_schema_in_every_language() {
    let path = |name| example(name).to_str().expect("UTF-8").to_owned();
    let (_folder, bad) = file(b"[person]\nstature = 9\n");
    for lang in ["en", "ja"] {
        for (name, arguments) in [
            ("plan", vec!["plan", &path("annotated.toml")]),
            (
                "plan",
                vec![
                    "plan",
                    &path("narrow-heirloom.toml"),
                    "--occasion",
                    "practice",
                ],
            ),
            (
                "plan",
                vec!["plan", &path("tall-student.toml"), "--set", "hem_height=3"],
            ),
            ("rank", vec!["rank", &path("wardrobe.toml")]),
            ("problems", vec!["plan", &bad]),
            ("problems", vec!["rank", "no-such-file"]),
        ] {
            let arguments: Vec<&str> = arguments
                .into_iter()
                .chain(["--json", "--lang", lang])
                .collect();
            let found = complaints(&schema(name), &document(&arguments));
            assert!(found.is_empty(), "{arguments:?}: {}", found.join("\n"));
        }
    }
}

#[test]
fn a_document_with_a_field_more_less_or_wrong_is_not_let_through() {
    let path = example("narrow-heirloom.toml");
    let good = document(&["plan", path.to_str().expect("UTF-8"), "--json"]);
    let schema = schema("plan");
    assert_eq!(complaints(&schema, &good), [""; 0]);
    let spoiled: [fn(&mut Value); 5] = [
        |d| d["dressing"][0]["decision"] = "wings".into(),
        |d| d["targets"][0]["miss_cm"] = "much".into(),
        |d| d["person"]["measures"][0]["sd_cm"] = (-1.0).into(),
        |d| d["colour"] = "blue".into(),
        |d| d["met"] = Value::Null,
    ];
    for spoil in spoiled {
        let mut bad = good.clone();
        spoil(&mut bad);
        assert!(
            !complaints(&schema, &bad).is_empty(),
            "let through: a spoiled document"
        );
    }
}

/// Calls `check` with the name and value of every number.
fn numbers(value: &Value, name: &str, check: &mut impl FnMut(&str, f64)) {
    match value {
        Value::Number(number) => check(name, number.as_f64().expect("a number")),
        Value::Array(values) => values.iter().for_each(|value| numbers(value, name, check)),
        Value::Object(fields) => {
            fields
                .iter()
                .for_each(|(name, value)| numbers(value, name, check));
        }
        _ => {}
    }
}

#[test]
fn every_length_says_its_unit_and_has_no_more_than_hundredths() {
    let path = example("narrow-heirloom.toml");
    let plan = document(&["plan", path.to_str().expect("UTF-8"), "--json"]);
    let mut lengths = 0;
    numbers(&plan, "", &mut |name, value| {
        if ["weight", "count", "place"].contains(&name) {
            return; // no lengths
        }
        lengths += 1;
        assert!(name.ends_with("_cm"), "{name} = {value}");
        let hundredths = value * 100.0;
        assert!(
            (hundredths - hundredths.round()).abs() < 1e-6,
            "{name} = {value}"
        );
    });
    assert!(
        lengths > 300,
        "only {lengths} lengths: the document lacks something"
    );
}

#[test]
fn the_document_and_the_page_tell_the_same_plan() {
    let path = example("narrow-heirloom.toml");
    let path = path.to_str().expect("UTF-8");
    let (plan, page) = (
        document(&["plan", path, "--json"]),
        sunbu(&["plan", path]).out,
    );
    // The page breaks its lines; the document does not.
    let flat = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for target in plan["targets"].as_array().expect("targets") {
        let sentence = target["sentence"].as_str().expect("a sentence");
        assert!(flat.contains(sentence), "not on the page: {sentence}");
    }
    let met = plan["targets"]
        .as_array()
        .expect("targets")
        .iter()
        .all(|t| t["met"] == true);
    assert_eq!(plan["met"], met);
}

#[test]
fn the_names_of_all_schemas_are_listed() {
    assert_eq!(
        sunbu(&["schema"]).out,
        "plan\nrank\ncheck\nmarks\nproblems\n"
    );
}
