//! Which part may know of what: dependencies point one way, SQL stays in the store, and the core
//! has no files, clock or network.

use crate::File;

/// The packages of `crates/` that each of them may depend on, apart from outside libraries.
const MAY_DEPEND_ON: [(&str, &[&str]); 7] = [
    ("sunbu-core", &[]),
    ("sunbu-words", &["sunbu-core"]),
    ("sunbu-draw", &["sunbu-core", "sunbu-words"]),
    ("sunbu-store", &["sunbu-core"]),
    ("sunbu-image", &["sunbu-core"]),
    (
        "sunbu-web",
        &[
            "sunbu-core",
            "sunbu-words",
            "sunbu-draw",
            "sunbu-store",
            "sunbu-image",
        ],
    ),
    (
        "sunbu",
        &[
            "sunbu-core",
            "sunbu-words",
            "sunbu-draw",
            "sunbu-store",
            "sunbu-image",
            "sunbu-web",
        ],
    ),
];

/// Outside libraries that only one package may use: the database's driver, the web server, and what
/// unpacks pictures.
const ONE_OWNER: [(&str, &str); 5] = [
    ("rusqlite", "sunbu-store"),
    ("axum", "sunbu-web"),
    ("image", "sunbu-image"),
    ("kamadak-exif", "sunbu-image"),
    ("resvg", "sunbu-image"),
];

/// Dependencies that point the wrong way, in the `Cargo.toml` files of `crates/`.
///
/// What a package needs for its tests alone may also be a package of `tests/`.
pub fn dependencies(files: &[File]) -> Vec<String> {
    let mut findings = Vec::new();
    for file in files {
        if !file.path.starts_with("crates/") || !file.path.ends_with("/Cargo.toml") {
            continue;
        }
        let manifest = file
            .text()
            .and_then(|text| text.parse::<toml::Table>().ok());
        let Some(manifest) = manifest else {
            findings.push(format!("{}: no TOML", file.path));
            continue;
        };
        let package = manifest.get("package").and_then(|table| table.get("name"));
        let name = package.and_then(toml::Value::as_str).unwrap_or("?");
        let Some((_, allowed)) = MAY_DEPEND_ON.iter().find(|(known, _)| *known == name) else {
            findings.push(format!(
                "{}: {name} is new: say in tests/guards what it may depend on",
                file.path
            ));
            continue;
        };
        for (section, dependency) in all_dependencies(&manifest) {
            let ours = MAY_DEPEND_ON.iter().any(|(known, _)| *known == dependency);
            if ours && !allowed.contains(&dependency.as_str()) {
                findings.push(format!(
                    "{}: {name} must not depend on {dependency}",
                    file.path
                ));
            }
            let owner = ONE_OWNER.iter().find(|(library, _)| *library == dependency);
            if let Some((_, owner)) = owner
                && *owner != name
                && section != "dev-dependencies"
            {
                findings.push(format!("{}: only {owner} may use {dependency}", file.path));
            }
        }
    }
    findings
}

/// Each dependency with the section it stands in, also below `target`, by the package's real name.
fn all_dependencies(manifest: &toml::Table) -> Vec<(&'static str, String)> {
    let platforms = manifest.get("target").and_then(toml::Value::as_table);
    let platforms = platforms.into_iter().flat_map(|table| table.values());
    let tables: Vec<&toml::Table> = std::iter::once(manifest)
        .chain(platforms.filter_map(toml::Value::as_table))
        .collect();
    let mut found = Vec::new();
    for section in ["dependencies", "build-dependencies", "dev-dependencies"] {
        for table in &tables {
            let entries = table.get(section).and_then(toml::Value::as_table);
            for (key, value) in entries.into_iter().flatten() {
                let renamed = value.get("package").and_then(toml::Value::as_str);
                found.push((section, renamed.unwrap_or(key).to_owned()));
            }
        }
    }
    found
}

/// SQL that gives itself away in Rust source: capital keywords as people write them, and small
/// ones at the start of a string.
const SQL: [&str; 16] = [
    "SELECT ",
    "INSERT INTO",
    "INSERT OR",
    "DELETE FROM",
    "CREATE TABLE",
    "CREATE INDEX",
    "CREATE UNIQUE INDEX",
    "ALTER TABLE",
    "DROP TABLE",
    "PRAGMA ",
    "BEGIN IMMEDIATE",
    "\"select ",
    "\"insert into ",
    "\"delete from ",
    "\"create table ",
    "\"pragma ",
];

/// SQL outside the store: in Rust source, or as a file of its own.
pub fn sql_outside_the_store(files: &[File]) -> Vec<String> {
    let elsewhere = files.iter().filter(|file| {
        !file.path.starts_with("crates/sunbu-store/") && !file.path.starts_with("tests/guards/")
    });
    let mut findings = Vec::new();
    for file in elsewhere {
        if file.has_ending(&["sql"]) {
            findings.push(format!("{}: SQL belongs in sunbu-store", file.path));
        }
        if file.has_ending(&["rs"]) {
            findings.extend(lines_with(file, &SQL));
        }
    }
    findings
}

/// What a pure core has no use for.
const IMPURE: [&str; 11] = [
    "std::fs",
    "std::io",
    "std::net",
    "std::env",
    "std::process",
    "std::time",
    "SystemTime",
    "Instant::now",
    "println!",
    "print!",
    "dbg!",
];

/// Files, streams, network, clock, environment or printing in the core's source.
pub fn impure_core(files: &[File]) -> Vec<String> {
    let core = files
        .iter()
        .filter(|file| file.path.starts_with("crates/sunbu-core/src/") && file.has_ending(&["rs"]));
    core.flat_map(|file| {
        let spelled_out = File::new(&file.path, &ungrouped(file.text().unwrap_or_default()));
        lines_with(&spelled_out, &IMPURE)
    })
    .collect()
}

/// The source with `use std::{fs, io::Read};` written as `std::fs, std::io::Read` on its line, so
/// that a search for `std::fs` finds it. Only the outermost group is undone.
fn ungrouped(source: &str) -> String {
    let mut parts = source.split("std::{");
    let mut out = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let (group, rest) = part.split_once(';').unwrap_or((part, ""));
        let names = group
            .split(',')
            .map(|name| format!("std::{}", name.trim_start()));
        out.push_str(&names.collect::<Vec<_>>().join(", "));
        out.push(';');
        out.push_str(rest);
    }
    out
}

/// Lines outside comments that hold one of these, with their number.
fn lines_with(file: &File, wanted: &[&str]) -> Vec<String> {
    let lines = file.text().unwrap_or_default().lines().enumerate();
    let code = lines.filter(|(_, line)| !line.trim_start().starts_with("//"));
    code.filter_map(|(index, line)| {
        let found = wanted.iter().find(|word| line.contains(*word))?;
        Some(format!(
            "{}:{}: {}",
            file.path,
            index + 1,
            found.trim().trim_start_matches('"')
        ))
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::{dependencies, impure_core, sql_outside_the_store};
    use crate::File;

    fn manifest(name: &str, rest: &str) -> File {
        let path = format!("crates/{name}/Cargo.toml");
        File::new(&path, &format!("[package]\nname = \"{name}\"\n{rest}"))
    }

    #[test]
    fn a_dependency_against_the_direction_is_found_in_every_section_and_under_every_name() {
        for section in [
            "[dependencies]\nsunbu-store.workspace = true",
            "[dependencies]\nrows = { package = \"sunbu-store\", path = \"../x\" }",
            "[dev-dependencies]\nsunbu-store.workspace = true",
            "[build-dependencies]\nsunbu-store.workspace = true",
            "[target.'cfg(unix)'.dependencies]\nsunbu-store.workspace = true",
        ] {
            let found = dependencies(&[manifest("sunbu-draw", section)]);
            assert_eq!(
                found,
                ["crates/sunbu-draw/Cargo.toml: sunbu-draw must not depend on sunbu-store"],
                "{section}"
            );
        }
    }

    #[test]
    fn dependencies_along_the_direction_and_outside_libraries_are_left_alone() {
        let web = manifest(
            "sunbu-web",
            "[dependencies]\nsunbu-core.workspace = true\nsunbu-store.workspace = true\naxum = \"1\"\n\
             [dev-dependencies]\nsunbu-browser-tests = { path = \"x\" }\nrusqlite = \"1\"",
        );
        assert_eq!(dependencies(&[web]), [""; 0]);
    }

    #[test]
    fn the_databases_driver_and_the_web_server_each_have_one_owner() {
        let found = dependencies(&[manifest(
            "sunbu",
            "[dependencies]\nrusqlite = \"1\"\naxum = \"1\"",
        )]);
        assert_eq!(found.len(), 2, "{found:?}");
        assert!(
            found
                .iter()
                .any(|line| line.ends_with("only sunbu-store may use rusqlite"))
        );
        assert!(
            found
                .iter()
                .any(|line| line.ends_with("only sunbu-web may use axum"))
        );
    }

    #[test]
    fn a_package_that_the_table_does_not_know_is_asked_about() {
        let found = dependencies(&[manifest("sunbu-extra", "")]);
        assert!(found.concat().contains("sunbu-extra is new"), "{found:?}");
    }

    #[test]
    fn sql_is_found_outside_the_store_and_left_alone_in_it() {
        let query = "fn f() { run(\"SELECT name FROM person\"); }";
        let small = "fn f() { run(\"delete from person\"); }";
        let there = [
            File::new("crates/sunbu-web/src/a.rs", query),
            File::new("crates/sunbu-web/src/b.rs", small),
            File::new("crates/sunbu-web/c.sql", "-- empty"),
        ];
        assert_eq!(
            sql_outside_the_store(&there),
            [
                "crates/sunbu-web/src/a.rs:1: SELECT",
                "crates/sunbu-web/src/b.rs:1: delete from",
                "crates/sunbu-web/c.sql: SQL belongs in sunbu-store",
            ]
        );
        let store = File::new("crates/sunbu-store/src/a.rs", query);
        let prose = "// SELECT one of these\nlet select = \"Select a garment from the list\";";
        let page = File::new("crates/sunbu-web/src/d.rs", prose);
        assert_eq!(sql_outside_the_store(&[store, page]), [""; 0]);
    }

    #[test]
    fn files_clock_and_network_are_found_in_the_core_however_they_are_imported() {
        for (source, found) in [
            ("use std::fs;", "std::fs"),
            ("use std::{fmt, net::TcpStream};", "std::net"),
            ("use std::{\n    fmt,\n    time::Duration,\n};", "std::time"),
            ("let now = Instant::now();", "Instant::now"),
            ("println!(\"{x}\");", "println!"),
        ] {
            let findings = impure_core(&[File::new("crates/sunbu-core/src/a.rs", source)]);
            assert!(findings.concat().ends_with(found), "{source}: {findings:?}");
        }
        let pure = "//! No std::fs here.\nuse std::{fmt, str::FromStr};";
        let files = [
            File::new("crates/sunbu-core/src/a.rs", pure),
            File::new("crates/sunbu-core/tests/a.rs", "use std::fs;"),
            File::new("crates/sunbu/src/main.rs", "use std::fs;"),
        ];
        assert_eq!(impure_core(&files), [""; 0]);
    }
}
