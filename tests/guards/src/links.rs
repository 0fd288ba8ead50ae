//! Links between the documents: each leads somewhere, and each chapter can be reached.

use std::collections::{BTreeMap, BTreeSet};

use pulldown_cmark::{Event, Options, Parser, Tag, TagEnd};

use crate::File;

/// A link from one document to another place in the repository.
struct Link {
    /// The document it stands in.
    from: String,
    /// As written.
    written: String,
    /// The path from the top of the repository; `None` when it leads out of it.
    path: Option<String>,
    /// The heading after `#`; `None` when there is none.
    heading: Option<String>,
}

/// Links in Markdown files that lead to no file, no folder or no heading of the repository.
///
/// Links to other hosts are not followed.
pub fn broken(files: &[File]) -> Vec<String> {
    let paths: BTreeSet<&str> = files.iter().map(|file| file.path.as_str()).collect();
    let headings: BTreeMap<&str, BTreeSet<String>> = documents(files)
        .map(|(path, text)| (path, headings(text)))
        .collect();
    let is_folder = |path: &str| {
        path.is_empty()
            || paths
                .iter()
                .any(|known| known.starts_with(&format!("{path}/")))
    };
    let fault = |link: &Link| {
        let Some(path) = link.path.as_deref() else {
            return Some("leads out of the repository".to_owned());
        };
        if !paths.contains(path) && !is_folder(path) {
            return Some(format!("there is no {path}"));
        }
        let heading = link.heading.as_ref()?;
        let known = headings
            .get(path)
            .is_some_and(|known| known.contains(heading));
        (!known).then(|| format!("{path} has no heading #{heading}"))
    };
    links(files)
        .iter()
        .filter_map(|link| {
            fault(link).map(|fault| format!("{}: ({}): {fault}", link.from, link.written))
        })
        .collect()
}

/// Documents below `docs/` that no chain of links from the top `README.md` reaches.
pub fn unreachable(files: &[File]) -> Vec<String> {
    let links = links(files);
    let mut reached = BTreeSet::from(["README.md"]);
    let mut open = vec!["README.md"];
    while let Some(from) = open.pop() {
        for link in links.iter().filter(|link| link.from == from) {
            if let Some(path) = link.path.as_deref()
                && reached.insert(path)
            {
                open.push(path);
            }
        }
    }
    documents(files)
        .filter(|(path, _)| path.starts_with("docs/") && !reached.contains(path))
        .map(|(path, _)| format!("{path}: no document leads here from README.md"))
        .collect()
}

fn documents(files: &[File]) -> impl Iterator<Item = (&str, &str)> {
    let documents = files.iter().filter(|file| file.has_ending(&["md"]));
    documents.filter_map(|file| Some((file.path.as_str(), file.text()?)))
}

fn parse(text: &str) -> Parser<'_> {
    Parser::new_ext(text, Options::ENABLE_TABLES | Options::ENABLE_FOOTNOTES)
}

/// The links of all documents that stay on this host.
fn links(files: &[File]) -> Vec<Link> {
    let mut found = Vec::new();
    for (from, text) in documents(files) {
        for event in parse(text) {
            let (Event::Start(Tag::Link { dest_url, .. })
            | Event::Start(Tag::Image { dest_url, .. })) = event
            else {
                continue;
            };
            if dest_url.contains("://") || dest_url.starts_with("mailto:") {
                continue;
            }
            let (path, heading) = match dest_url.split_once('#') {
                Some((path, heading)) => (path, Some(heading.to_owned())),
                None => (&*dest_url, None),
            };
            let path = if path.is_empty() {
                Some(from.to_owned())
            } else {
                resolve(from, path)
            };
            found.push(Link {
                from: from.to_owned(),
                written: dest_url.to_string(),
                path,
                heading,
            });
        }
    }
    found
}

/// The path from the top of the repository, of a link in the document `from`; `None` above the top.
fn resolve(from: &str, link: &str) -> Option<String> {
    let mut parts: Vec<&str> = from.split('/').collect();
    parts.pop();
    for part in link.split('/') {
        match part {
            "" | "." => {}
            ".." => {
                parts.pop()?;
            }
            name => parts.push(name),
        }
    }
    Some(parts.join("/"))
}

/// The names that forges give to a document's headings: small letters, words joined by hyphens,
/// punctuation left out, and a number after a name that was there before.
fn headings(text: &str) -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    let mut heading: Option<String> = None;
    for event in parse(text) {
        match event {
            Event::Start(Tag::Heading { .. }) => heading = Some(String::new()),
            Event::Text(text) | Event::Code(text) => {
                if let Some(heading) = &mut heading {
                    heading.push_str(&text);
                }
            }
            Event::End(TagEnd::Heading(_)) => {
                let name = slug(&heading.take().unwrap_or_default());
                let numbered = (1..).map(|number| format!("{name}-{number}"));
                let mut candidates = std::iter::once(name.clone()).chain(numbered);
                names.extend(candidates.find(|candidate| !names.contains(candidate)));
            }
            _ => {}
        }
    }
    names
}

fn slug(heading: &str) -> String {
    let kept = heading.to_lowercase();
    let kept = kept
        .chars()
        .filter(|c| c.is_alphanumeric() || matches!(c, ' ' | '-' | '_'));
    kept.map(|c| if c == ' ' { '-' } else { c }).collect()
}

#[cfg(test)]
mod tests {
    use super::{broken, unreachable};
    use crate::File;

    fn book(pages: &[(&str, &str)]) -> Vec<File> {
        pages
            .iter()
            .map(|(path, text)| File::new(path, text))
            .collect()
    }

    #[test]
    fn links_to_files_folders_headings_and_pictures_that_are_there_are_left_alone() {
        let files = book(&[
            (
                "README.md",
                "[a](docs/a.md) [b](docs/a.md#two-words-more) [c](docs) [d](./docs/) [e](#top)\n\
                 # Top\n[f](https://example.org/none) ![g](docs/g.svg) [h][ref]\n\n[ref]: LICENSE",
            ),
            (
                "docs/a.md",
                "# Two words, `more`\n[up](../README.md) [second](#same-1)\n# Same\n# Same",
            ),
            ("docs/g.svg", "<svg/>"),
            ("LICENSE", "MIT"),
        ]);
        assert_eq!(broken(&files), [""; 0]);
    }

    #[test]
    fn each_kind_of_broken_link_is_found() {
        let files = book(&[(
            "docs/a.md",
            "[a](b.md) [b](a.md#nowhere) ![c](c.svg) [d](../../d.md) [e][ref]\n\n[ref]: e.md\n\
                 # Here\n`[code](f.md)`",
        )]);
        assert_eq!(
            broken(&files),
            [
                "docs/a.md: (b.md): there is no docs/b.md",
                "docs/a.md: (a.md#nowhere): docs/a.md has no heading #nowhere",
                "docs/a.md: (c.svg): there is no docs/c.svg",
                "docs/a.md: (../../d.md): leads out of the repository",
                "docs/a.md: (e.md): there is no docs/e.md",
            ]
        );
    }

    #[test]
    fn a_chapter_that_no_link_reaches_is_found() {
        let files = book(&[
            ("README.md", "[book](docs/README.md)"),
            ("docs/README.md", "[a](a.md)"),
            ("docs/a.md", "[b](more/b.md)"),
            ("docs/more/b.md", ""),
            ("docs/lost.md", "[home](../README.md)"),
        ]);
        assert_eq!(
            unreachable(&files),
            ["docs/lost.md: no document leads here from README.md"]
        );
    }
}
