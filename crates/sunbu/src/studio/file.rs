//! The studio's file: where it lies, and what can be wrong with it.

use std::path::{Path, PathBuf};

use sunbu_store::{Store, StoreError};

use super::now;
use crate::trouble::{Trouble, troubles};

/// The file that is named, else the usual one.
fn named_or_usual(named: Option<&Path>) -> Result<PathBuf, Trouble> {
    match named {
        Some(path) => Ok(path.to_owned()),
        None => usual(|name| std::env::var(name).ok())
            .ok_or_else(|| Trouble::at("--studio", "", "trouble-no-place")),
    }
}

/// Opens a studio that is there already.
///
/// # Errors
/// When it is not, or what is wrong with it.
pub fn existing(named: Option<&Path>) -> Result<Store, Vec<Trouble>> {
    let path = named_or_usual(named).map_err(|trouble| vec![trouble])?;
    if !path.exists() {
        return Err(vec![Trouble::at(
            path.display().to_string(),
            "",
            "trouble-no-studio",
        )]);
    }
    Store::open(&path, &now()).map_err(|error| troubled(&path, error))
}

/// Opens a studio, making it where there is none; tells where it lies.
///
/// # Errors
/// What is wrong with it or with its folder.
pub fn fresh(named: Option<&Path>) -> Result<(Store, PathBuf), Vec<Trouble>> {
    let path = named_or_usual(named).map_err(|trouble| vec![trouble])?;
    if named.is_none() {
        folder_for(&path)?;
    }
    let store = Store::open(&path, &now()).map_err(|error| troubled(&path, error))?;
    Ok((store, path))
}

/// Puts a backup in the place of the studio that is named, else of the usual one; tells where.
///
/// # Errors
/// What is wrong with either.
pub fn restore_into(
    named: Option<&Path>,
    backup: &Path,
) -> Result<(sunbu_store::Counts, PathBuf), Vec<Trouble>> {
    let path = named_or_usual(named).map_err(|trouble| vec![trouble])?;
    if !backup.is_file() {
        return Err(vec![Trouble::at(
            backup.display().to_string(),
            "",
            "trouble-no-file",
        )]);
    }
    if named.is_none() {
        folder_for(&path)?;
    }
    let counts = sunbu_store::restore(backup, &path).map_err(|error| troubled(backup, error))?;
    Ok((counts, path))
}

/// Makes the folder of the usual place, open to its owner alone: clients' measures lie in it.
fn folder_for(path: &Path) -> Result<(), Vec<Trouble>> {
    let Some(folder) = path.parent() else {
        return Ok(());
    };
    let mut builder = std::fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder).map_err(|error| {
        let shown = folder.display().to_string();
        vec![Trouble::at(shown, "", "trouble-unwritten").with("why", error.to_string())]
    })
}

/// A name as it is kept, fit for a terminal: what another program wrote may hold anything.
pub fn shown_name(name: &str) -> String {
    name.replace(char::is_control, "\u{fffd}")
}

/// What a store says is wrong, at its file.
pub fn troubled(path: &Path, error: StoreError) -> Vec<Trouble> {
    let at = |code| Trouble::at(path.display().to_string(), "", code);
    vec![match error {
        StoreError::NotFound { .. } => at("trouble-erased"),
        StoreError::Stale { .. } | StoreError::Taken { .. } => at("trouble-stale"),
        StoreError::NotOurs { .. } => at("trouble-not-ours"),
        StoreError::Newer { .. } => at("trouble-newer"),
        StoreError::Damaged(why) => at("trouble-damaged").with("why", why),
        StoreError::Standard(why) => at("trouble-house-rules").with("why", why.to_string()),
        StoreError::InUse => at("trouble-in-use"),
        StoreError::Exists(file) => Trouble::at(file.display().to_string(), "", "trouble-exists"),
        StoreError::Unreadable(unread) => {
            let trouble = at("trouble-unreadable").with("name", shown_name(unread.name()));
            let number = trouble.with("number", unread.id.to_string());
            return [vec![number], troubles(unread.problems)].concat();
        }
        StoreError::Unfit(problems) => return troubles(problems),
        StoreError::Traces(why) => at("trouble-traces").with("why", why),
        StoreError::Disk(why) | StoreError::Other(why) => at("trouble-store").with("why", why),
    }]
}

/// The studio's file in the user's folder for data, by the custom of the system (the XDG base
/// directory specification on Linux; from memory); `None` when the system names no such folder.
fn usual(env: impl Fn(&str) -> Option<String>) -> Option<PathBuf> {
    let folder = |name: &str| {
        let path = env(name).map(PathBuf::from);
        // The specification has relative paths passed over.
        path.filter(|path| path.is_absolute())
    };
    let data = if cfg!(windows) {
        folder("APPDATA")
    } else if cfg!(target_os = "macos") {
        folder("HOME").map(|home| home.join("Library/Application Support"))
    } else {
        folder("XDG_DATA_HOME").or_else(|| folder("HOME").map(|home| home.join(".local/share")))
    };
    data.map(|data| data.join("sunbu").join("studio.sunbu"))
}

#[cfg(all(test, target_os = "linux"))]
mod tests {
    use super::*;

    fn found(env: &[(&str, &str)]) -> Option<PathBuf> {
        usual(|name| {
            let known = env.iter().find(|(known, _)| *known == name);
            known.map(|(_, value)| (*value).to_owned())
        })
    }

    #[test]
    fn the_studio_lies_where_the_system_keeps_data() {
        let home = ("HOME", "/h/d");
        let usual = PathBuf::from("/h/d/.local/share/sunbu/studio.sunbu");
        assert_eq!(found(&[home]), Some(usual.clone()));
        assert_eq!(found(&[home, ("XDG_DATA_HOME", "data")]), Some(usual));
        let elsewhere = found(&[home, ("XDG_DATA_HOME", "/data")]);
        assert_eq!(elsewhere, Some(PathBuf::from("/data/sunbu/studio.sunbu")));
        assert_eq!(found(&[]), None);
    }
}
