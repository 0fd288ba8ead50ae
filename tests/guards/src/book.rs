//! What the book owes the code: each term that is a name in the program is in the glossary, and
//! each source that is cited is in the list of sources.

use std::collections::{BTreeMap, BTreeSet};

use crate::File;

const GLOSSARY: &str = "docs/glossary.md";
const SOURCES: &str = "docs/sources.md";

/// Names of garment parts and kinds, as in files and JSON, that the glossary does not explain, and
/// names that it explains twice.
pub fn unexplained_terms(files: &[File]) -> Vec<String> {
    let explained = code_spans(first_cells(text(files, GLOSSARY)));
    let mut findings = Vec::new();
    for file in files.iter().filter(|file| {
        file.path.starts_with("crates/sunbu-core/src/garment/") && file.has_ending(&["rs"])
    }) {
        for key in file.text().unwrap_or_default().lines().filter_map(key) {
            match explained.iter().filter(|term| **term == key).count() {
                0 => findings.push(format!("{}: {key} is not in {GLOSSARY}", file.path)),
                1 => {}
                times => findings.push(format!("{GLOSSARY}: {key} is there {times} times")),
            }
        }
    }
    findings
}

/// The key of an enum's member that has a name in files, `Member = "key",`.
fn key(line: &str) -> Option<&str> {
    let (member, key) = line.trim().strip_suffix("\",")?.split_once(" = \"")?;
    let is_member = member.chars().all(char::is_alphanumeric);
    let is_key = key.chars().all(|c| c.is_ascii_lowercase() || c == '_');
    (is_member && is_key).then_some(key)
}

/// Sources that the standards or the core's list of sources cite and the book does not list, that
/// the book lists under another title than the core, or that it lists and nothing cites.
pub fn sources(files: &[File]) -> Vec<String> {
    let listed: BTreeMap<&str, &str> = rows(text(files, SOURCES))
        .filter(|cells| cells.len() == 3 && is_code(cells[0]))
        .map(|cells| (cells[0], cells[2]))
        .collect();
    let mut cited: BTreeMap<&str, &str> = BTreeMap::new();
    let mut findings = Vec::new();
    for file in files {
        let standard = file.path.starts_with("data/") && file.has_ending(&["toml"]);
        let lines = file.text().unwrap_or_default().lines();
        if standard {
            for line in lines.filter(|line| line.trim_start().starts_with("source")) {
                cited.extend(codes(line).map(|code| (code, file.path.as_str())));
            }
        } else if file.path == "crates/sunbu-core/src/source.rs" {
            for (code, title) in lines.filter_map(entry) {
                cited.insert(code, &file.path);
                if listed.get(code).is_some_and(|listed| *listed != title) {
                    findings.push(format!("{SOURCES}: {code} is called {title:?} in the core"));
                }
            }
        }
    }
    for (code, path) in &cited {
        if !listed.contains_key(code) {
            findings.push(format!("{path}: {code} is not in {SOURCES}"));
        }
    }
    let elsewhere: BTreeSet<&str> = files
        .iter()
        .filter(|file| file.path != SOURCES && !file.path.starts_with("tests/guards/"))
        .flat_map(|file| codes(file.text().unwrap_or_default()))
        .collect();
    for code in listed.keys().filter(|code| !elsewhere.contains(*code)) {
        findings.push(format!("{SOURCES}: nothing cites {code}"));
    }
    findings
}

/// Code and title in a line of the core's list, `NAME "S1" 'B' "Title";`.
fn entry(line: &str) -> Option<(&str, &str)> {
    let mut quoted = line.trim().strip_suffix("\";")?.split('"').skip(1);
    let code = quoted.next().filter(|code| is_code(code))?;
    Some((code, quoted.nth(1)?))
}

/// Whether it looks like a source's code: one or two capitals, digits, perhaps a small letter.
fn is_code(word: &str) -> bool {
    let digits = word.trim_start_matches(|c: char| c.is_ascii_uppercase());
    let rest = digits.trim_start_matches(|c: char| c.is_ascii_digit());
    let capitals = word.len() - digits.len();
    (1..=2).contains(&capitals)
        && digits.len() > rest.len()
        && (rest.is_empty() || rest.len() == 1 && rest.as_bytes()[0].is_ascii_lowercase())
}

fn codes(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|word| is_code(word))
}

fn text<'a>(files: &'a [File], path: &str) -> &'a str {
    let file = files.iter().find(|file| file.path == path);
    file.and_then(File::text).unwrap_or_default()
}

/// The cells of each row of a document's tables.
fn rows(text: &str) -> impl Iterator<Item = Vec<&str>> {
    let rows = text
        .lines()
        .filter_map(|line| line.strip_prefix('|')?.trim_end().strip_suffix('|'));
    rows.map(|row| row.split('|').map(str::trim).collect())
}

fn first_cells(text: &str) -> impl Iterator<Item = &str> {
    rows(text).filter_map(|cells| cells.first().copied())
}

/// Everything between backquotes.
fn code_spans<'a>(cells: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    cells
        .flat_map(|cell| cell.split('`').skip(1).step_by(2))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{sources, unexplained_terms};
    use crate::File;

    const PARTS: &str = "keyed_enum! {\n    Part {\n        /// Length.\n        Mitake = \"mitake\",\n\
                         Yuki = \"yuki\",\n    }\n}\nconst X: &str = \"no key\";\n";

    fn terms(glossary: &str) -> Vec<String> {
        unexplained_terms(&[
            File::new("crates/sunbu-core/src/garment/part.rs", PARTS),
            File::new("docs/glossary.md", glossary),
        ])
    }

    #[test]
    fn each_part_must_be_explained_exactly_once() {
        let row = |term: &str| format!("| `{term}` | 字 | words with `code` |\n");
        assert_eq!(terms(&(row("mitake") + &row("yuki"))), [""; 0]);
        assert_eq!(
            terms(&(row("mitake") + "The `yuki` in prose.")),
            ["crates/sunbu-core/src/garment/part.rs: yuki is not in docs/glossary.md"]
        );
        assert_eq!(
            terms(&(row("mitake") + &row("yuki") + &row("yuki"))),
            ["docs/glossary.md: yuki is there 2 times"]
        );
    }

    #[test]
    fn sources_that_are_missing_renamed_or_cited_nowhere_are_found() {
        let files = [
            File::new(
                "data/standards/a.toml",
                "source = \"S24, F8: by half\"\n# A4 is paper\n",
            ),
            File::new(
                "crates/sunbu-core/src/source.rs",
                "    S6B \"S6b\" 'B' \"A class\";\n",
            ),
            File::new(
                "docs/sources.md",
                "| S24 | B | A school |\n| S6b | B | Another class |\n| P9 | A | A trial |\n",
            ),
        ];
        assert_eq!(
            sources(&files),
            [
                "docs/sources.md: S6b is called \"A class\" in the core",
                "data/standards/a.toml: F8 is not in docs/sources.md",
                "docs/sources.md: nothing cites P9",
            ]
        );
    }

    #[test]
    fn sources_that_are_listed_and_cited_are_left_alone() {
        let files = [
            File::new("data/standards/a.toml", "source = \"S24: by half\"\n"),
            File::new("crates/sunbu-core/src/a.rs", "// S28, a trial\n"),
            File::new(
                "docs/sources.md",
                "| S24 | B | A school |\n| S28 | B | A trial |\n",
            ),
        ];
        assert_eq!(sources(&files), [""; 0]);
    }
}
