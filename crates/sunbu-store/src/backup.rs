//! Copies of the store that are known to be good.

use std::ffi::OsString;
use std::fs::{self, File};
use std::path::{Path, PathBuf};

use rusqlite::Connection;

use crate::{Store, StoreError, schema};

/// How much a store holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Counts {
    /// People.
    pub people: i64,
    /// Garments.
    pub garments: i64,
    /// Plans.
    pub plans: i64,
}

impl Store {
    /// How much is kept.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn counts(&self) -> Result<Counts, StoreError> {
        counts(&self.connection)
    }

    /// Writes a whole copy into a new file while the store stays open, then opens the copy and
    /// checks it; answers what is in it. A copy that fails the check is removed.
    ///
    /// # Errors
    /// [`StoreError::Exists`], [`StoreError::Damaged`], or when the file cannot be written.
    pub fn backup(&self, to: &Path) -> Result<Counts, StoreError> {
        if to.exists() {
            return Err(StoreError::Exists(to.to_owned()));
        }
        let name = to
            .to_str()
            .ok_or_else(|| StoreError::Other(format!("{} is not a name in UTF-8", to.display())))?;
        let copied = self.copy_into(name, to);
        if copied.is_err() {
            // The copy is ours and is no good; that it is gone is no more important than why.
            let _ = fs::remove_file(to);
        }
        copied
    }

    fn copy_into(&self, name: &str, to: &Path) -> Result<Counts, StoreError> {
        self.connection.execute("VACUUM INTO ?1", [name])?;
        File::open(to)?.sync_all()?;
        let (copy, own) = (verify(to)?, self.counts()?);
        if copy != own {
            let text = format!("the store holds {own:?} and the copy {copy:?}");
            return Err(StoreError::Other(text));
        }
        Ok(copy)
    }
}

/// Puts the backup `from` in the place of the store `to`; answers what is in it. The backup is
/// checked before anything is replaced, and the replacing is one step.
///
/// # Errors
/// When the backup is damaged, not Sunbu's or of a newer version, when the store is open somewhere
/// ([`StoreError::InUse`]), or when the disk fails. The store is then as it was.
pub fn restore(from: &Path, to: &Path) -> Result<Counts, StoreError> {
    verify(from)?;
    let new = beside(to, ".restoring");
    fs::copy(from, &new)?;
    let replaced = replace(&new, to);
    if replaced.is_err() {
        // As above: the reason matters more than the leftover.
        let _ = fs::remove_file(&new);
    }
    replaced
}

fn replace(new: &Path, to: &Path) -> Result<Counts, StoreError> {
    File::open(new)?.sync_all()?;
    let found = verify(new)?;
    if to.exists() {
        close_off(to)?;
    }
    // A log left from before would be played into the new file.
    for ending in ["-wal", "-shm"] {
        match fs::remove_file(beside(to, ending)) {
            Err(error) if error.kind() != std::io::ErrorKind::NotFound => return Err(error.into()),
            _ => {}
        }
    }
    fs::rename(new, to)?;
    if let Some(directory) = to.parent().filter(|path| !path.as_os_str().is_empty()) {
        File::open(directory)?.sync_all()?;
    }
    Ok(found)
}

/// Folds the log into the store to be replaced, which only works while nobody has it open.
fn close_off(to: &Path) -> Result<(), StoreError> {
    let old = match schema::open(to) {
        // A damaged or newer store may be replaced; a file that is something else may not.
        Err(StoreError::Damaged(_) | StoreError::Newer { .. }) => return Ok(()),
        other => other?,
    };
    match old.pragma_update_and_check(None, "journal_mode", "DELETE", |_| Ok(())) {
        Err(error) => match StoreError::from(error) {
            StoreError::Damaged(_) => Ok(()),
            other => Err(other),
        },
        Ok(()) => Ok(()),
    }
}

/// Opens a store to look at it only, and checks all of it.
fn verify(path: &Path) -> Result<Counts, StoreError> {
    let connection = schema::open_to_read(path)?;
    let said: String = connection.query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))?;
    if said != "ok" {
        return Err(StoreError::Damaged(said));
    }
    let loose: i64 =
        connection.query_row("SELECT count(*) FROM pragma_foreign_key_check", [], |row| {
            row.get(0)
        })?;
    if loose != 0 {
        return Err(StoreError::Damaged(format!(
            "{loose} rows belong to nothing"
        )));
    }
    counts(&connection)
}

fn counts(connection: &Connection) -> Result<Counts, StoreError> {
    Ok(connection.query_row(
        "SELECT (SELECT count(*) FROM person), (SELECT count(*) FROM piece), \
         (SELECT count(*) FROM plan)",
        [],
        |row| {
            Ok(Counts {
                people: row.get(0)?,
                garments: row.get(1)?,
                plans: row.get(2)?,
            })
        },
    )?)
}

fn beside(path: &Path, ending: &str) -> PathBuf {
    let mut name = OsString::from(path);
    name.push(ending);
    PathBuf::from(name)
}
