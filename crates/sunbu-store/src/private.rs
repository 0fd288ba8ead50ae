//! Files that only their owner may open: the measures of clients lie in them.
//!
//! On Unix a new file gets its permissions with its name, before anything is written into it.
//! SQLite gives its log and index those of the store. Other systems keep their own order: there a
//! file is as private as the folder it lies in.

use std::fs::{File, OpenOptions};
use std::io;
use std::path::Path;

/// Makes a new, empty file.
///
/// # Errors
/// When there is something of that name, or when the disk does not take it.
pub(crate) fn create(path: &Path) -> io::Result<File> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(path)
}

/// Copies the bytes of a file, and none of its permissions, into a new one.
///
/// # Errors
/// As [`create`].
pub(crate) fn copy(from: &Path, to: &Path) -> io::Result<()> {
    io::copy(&mut File::open(from)?, &mut create(to)?)?;
    Ok(())
}

/// Takes an existing file from everybody but its owner.
///
/// A file that is not there is passed over, and so is one whose permissions are not ours to
/// change: it belongs to another user, or lies on a disk without permissions. Refusing to open it
/// would lock the studio out and close it to nobody.
#[cfg(unix)]
pub(crate) fn tighten(path: &Path) {
    use std::fs;
    use std::os::unix::fs::PermissionsExt;
    let Ok(found) = fs::metadata(path) else {
        return;
    };
    let mode = found.permissions().mode();
    if mode & 0o077 != 0 {
        let _ = fs::set_permissions(path, fs::Permissions::from_mode(mode & 0o700));
    }
}

/// There are no permissions to take away.
#[cfg(not(unix))]
pub(crate) fn tighten(_path: &Path) {}
