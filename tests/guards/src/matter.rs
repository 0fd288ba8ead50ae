//! What may be in the repository at all: source that people write and read, in files of a size
//! that people read.

use crate::File;

/// The largest file, in bytes. Chosen: far above the largest table that the model needs.
pub const LARGEST: usize = 400 * 1024;

/// The longest line of a script or style sheet, in characters. Chosen: nobody writes one by hand,
/// and every program that squeezes source writes far longer ones.
pub const LONGEST_LINE: usize = 500;

/// Files that are too large, that are no text (pictures of the documentation excepted), or that
/// were squeezed by a program.
pub fn unreadable(files: &[File]) -> Vec<String> {
    let mut findings = Vec::new();
    for file in files {
        let (path, size) = (&file.path, file.bytes.len());
        if size > LARGEST {
            findings.push(format!("{path}: {size} bytes, more than {LARGEST}"));
        }
        let picture = path.starts_with("docs/") && file.has_ending(&["png"]);
        match file.text() {
            Some(text) if !text.contains('\0') => {
                let longest = text.lines().map(|line| line.chars().count()).max();
                let script = file.has_ending(&["js", "mjs", "css"]);
                if script && longest.unwrap_or(0) > LONGEST_LINE || path.contains(".min.") {
                    findings.push(format!("{path}: squeezed by a program; keep the source"));
                }
            }
            _ if picture => {}
            _ => findings.push(format!("{path}: no text")),
        }
    }
    findings
}

/// Folders that exist on somebody's machine only. Written in two parts, so that this file is not
/// a finding itself.
const MACHINE: [&str; 4] = [
    concat!("/", "home/"),
    concat!("/", "work/"),
    concat!("/", "root/"),
    concat!("/", "tmp/wt"),
];

/// Paths that only exist on one machine.
pub fn machine_paths(files: &[File]) -> Vec<String> {
    let mut findings = Vec::new();
    for file in files {
        let lines = file.text().unwrap_or_default().lines().enumerate();
        findings.extend(lines.filter_map(|(index, line)| {
            let found = MACHINE.iter().find(|path| line.contains(*path))?;
            Some(format!("{}:{}: {found}", file.path, index + 1))
        }));
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::{LARGEST, LONGEST_LINE, machine_paths, unreadable};
    use crate::File;

    #[test]
    fn a_file_is_too_large_just_above_the_limit() {
        let of_size = |size: usize| File::new("data/table.toml", &"#".repeat(size));
        assert_eq!(unreadable(&[of_size(LARGEST)]), [""; 0]);
        assert_eq!(
            unreadable(&[of_size(LARGEST + 1)]),
            ["data/table.toml: 409601 bytes, more than 409600"]
        );
    }

    #[test]
    fn what_is_no_text_is_found_unless_it_is_a_picture_of_the_documentation() {
        let binary = |path: &str| File {
            path: path.to_owned(),
            bytes: vec![0x89, b'P', 0xff],
        };
        let zero = File::new("a.txt", "a\0b");
        let files = [
            binary("docs/figure.png"),
            binary("figure.png"),
            binary("docs/a.zip"),
            zero,
        ];
        assert_eq!(
            unreadable(&files),
            [
                "figure.png: no text",
                "docs/a.zip: no text",
                "a.txt: no text"
            ]
        );
    }

    #[test]
    fn squeezed_scripts_are_found_by_their_lines_or_their_name() {
        let line = |length: usize| "x".repeat(length);
        let files = [
            File::new("a.js", &line(LONGEST_LINE)),
            File::new("b.js", &line(LONGEST_LINE + 1)),
            File::new("c.min.css", "a {}"),
            File::new("prose.md", &line(LONGEST_LINE + 1)),
        ];
        let found = unreadable(&files);
        assert_eq!(
            found,
            [
                "b.js: squeezed by a program; keep the source",
                "c.min.css: squeezed by a program; keep the source",
            ]
        );
    }

    #[test]
    fn a_path_of_one_machine_is_found_with_its_line() {
        let text = format!("first\nsee {}someone/notes\n", concat!("/", "home/"));
        let found = machine_paths(&[File::new("docs/a.md", &text)]);
        assert_eq!(found, [format!("docs/a.md:2: {}", concat!("/", "home/"))]);
        assert_eq!(
            machine_paths(&[File::new("docs/a.md", "at home and at work")]),
            [""; 0]
        );
    }
}
