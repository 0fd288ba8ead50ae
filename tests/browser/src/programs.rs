//! Finding the browser and its driver on the search path.

use std::env;
use std::path::{Path, PathBuf};

use crate::error::BrowserError;

/// The system's Chromium, under any of the names that systems give it.
///
/// # Errors
/// [`BrowserError::Missing`] when none of them is on the search path.
pub fn chromium() -> Result<PathBuf, BrowserError> {
    find(
        "the browser",
        &["chromium", "chromium-browser", "google-chrome"],
        "chromium",
    )
}

/// The driver that starts and steers it.
///
/// # Errors
/// [`BrowserError::Missing`] when it is not on the search path.
pub fn chromedriver() -> Result<PathBuf, BrowserError> {
    find("the browser's driver", &["chromedriver"], "chromium-driver")
}

fn find(
    what: &'static str,
    names: &[&str],
    package: &'static str,
) -> Result<PathBuf, BrowserError> {
    let path = env::var_os("PATH").unwrap_or_default();
    let folders: Vec<PathBuf> = env::split_paths(&path).collect();
    names
        .iter()
        .flat_map(|name| folders.iter().map(move |folder| folder.join(name)))
        .find(|file| file.is_file())
        .ok_or_else(|| BrowserError::Missing {
            what,
            names: names.join(", "),
            package,
        })
}

/// The folder that cargo builds into: two above the folder of the running test program.
pub fn target() -> PathBuf {
    let test = env::current_exe().unwrap_or_default();
    test.ancestors()
        .nth(3)
        .map(Path::to_path_buf)
        .unwrap_or_else(env::temp_dir)
}

#[cfg(test)]
mod tests {
    use super::find;

    #[test]
    fn a_missing_program_is_named_with_the_package_that_brings_it() {
        let missing = find("the loom", &["no-such-loom", "nor-this-one"], "looms").unwrap_err();
        let said = missing.to_string();
        assert!(
            [
                "the loom",
                "no-such-loom, nor-this-one",
                "install looms",
                "./check"
            ]
            .iter()
            .all(|part| said.contains(part)),
            "{said}"
        );
    }
}
