//! Files to write: whether two names are one file, so that nothing read here is written over.

use std::path::{Path, PathBuf};

/// Whether both names lead to the same file, whether or not it is there yet.
///
/// Links are followed. Two names of one file by hard links are taken for two files.
pub fn is_same(one: &Path, other: &Path) -> bool {
    one == other || whole(one).is_some_and(|path| Some(path) == whole(other))
}

/// The file's path from the root without links; none where even its folder is not there.
fn whole(file: &Path) -> Option<PathBuf> {
    if let Ok(path) = file.canonicalize() {
        return Some(path);
    }
    let folder = file.parent().filter(|f| !f.as_os_str().is_empty());
    let folder = folder.unwrap_or(Path::new(".")).canonicalize().ok()?;
    Some(folder.join(file.file_name()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_file_by_two_names_is_the_same_there_or_not() {
        let folder = tempfile::tempdir().expect("a folder");
        let there = folder.path().join("a.png");
        std::fs::write(&there, "").expect("a file");
        std::fs::create_dir(folder.path().join("deep")).expect("a folder");
        let around = |name: &str| folder.path().join("deep").join("..").join(name);
        assert!(is_same(&there, &around("a.png")));
        let new = folder.path().join("new.svg");
        assert!(is_same(&new, &around("new.svg")));
        assert!(!is_same(&there, &new));
        assert!(!is_same(&new, &folder.path().join("deep/new.svg")));
        let nowhere = Path::new("/no/such/folder/new.svg");
        assert!(!is_same(nowhere, &new));
        assert!(is_same(nowhere, nowhere));
    }
}
