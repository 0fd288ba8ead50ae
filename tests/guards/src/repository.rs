//! The repository's own files: what is tracked, and what would be with the next commit.

use std::fs;
use std::io;
use std::path::Path;
use std::process::Command;

/// A file of the repository.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct File {
    /// Its path from the top of the repository, with slashes.
    pub path: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}

impl File {
    /// A file with this text.
    pub fn new(path: &str, text: &str) -> Self {
        Self {
            path: path.to_owned(),
            bytes: text.as_bytes().to_vec(),
        }
    }

    /// Its text; `None` when it is none.
    pub fn text(&self) -> Option<&str> {
        std::str::from_utf8(&self.bytes).ok()
    }

    /// Whether its name ends in one of these, given without the dot.
    pub fn has_ending(&self, endings: &[&str]) -> bool {
        let ending = self.path.rsplit_once('.').map(|(_, ending)| ending);
        ending.is_some_and(|ending| endings.contains(&ending))
    }
}

/// All files of this repository that git tracks or does not ignore, by path.
///
/// # Errors
/// When git cannot be run here, or a file cannot be read.
pub fn files() -> io::Result<Vec<File>> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let listed = Command::new("git")
        .args([
            "ls-files",
            "-z",
            "--cached",
            "--others",
            "--exclude-standard",
        ])
        .current_dir(&top)
        .output()?;
    if !listed.status.success() {
        return Err(io::Error::other(
            String::from_utf8_lossy(&listed.stderr).into_owned(),
        ));
    }
    let names = String::from_utf8_lossy(&listed.stdout);
    let mut paths: Vec<&str> = names.split('\0').filter(|name| !name.is_empty()).collect();
    paths.sort_unstable();
    paths.dedup();
    paths
        .into_iter()
        .filter(|path| top.join(path).exists()) // removed, but not in a commit yet
        .map(|path| {
            Ok(File {
                path: path.to_owned(),
                bytes: fs::read(top.join(path))?,
            })
        })
        .collect()
}
