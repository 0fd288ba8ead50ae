//! Copies of the store that are known to be good.

use std::ffi::OsString;
use std::fs::{self, File};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use rusqlite::Connection;

use crate::{Store, StoreError, private, schema};

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
    /// checks it; answers what is in it. A copy that fails the check is removed. On Unix the copy
    /// is its owner's alone.
    ///
    /// # Errors
    /// [`StoreError::Exists`], [`StoreError::Damaged`], or when the file cannot be written.
    pub fn backup(&self, to: &Path) -> Result<Counts, StoreError> {
        copy(&self.connection, to)?;
        verify(to)
    }
}

/// Copies a store of an older version into `NAME.version-N` beside it, before it is brought up to
/// date. One that lies there already was made by an attempt that did not get further.
pub(crate) fn before_migration(
    connection: &Connection,
    path: &Path,
    version: i64,
) -> Result<(), StoreError> {
    let to = of_version(path, version);
    let new = beside(&to, ".new");
    remove(&new)?;
    copy(connection, &new)?;
    fs::rename(&new, &to)?;
    settle(&to)
}

/// Takes a store, its log and index, and the copies made before migrations from everybody but
/// their owner.
pub(crate) fn tighten(path: &Path) {
    private::tighten(path);
    for ending in ["-wal", "-shm"] {
        private::tighten(&beside(path, ending));
    }
    for version in 1..=schema::KNOWN {
        private::tighten(&of_version(path, version));
    }
}

/// Removes the copies made before migrations: they hold what is to be forgotten.
pub(crate) fn forget_old_versions(path: &Path) -> Result<(), StoreError> {
    (1..=schema::KNOWN).try_for_each(|version| remove(&of_version(path, version)))
}

fn of_version(path: &Path, version: i64) -> PathBuf {
    beside(path, &format!(".version-{version}"))
}

/// Writes a whole copy into a new file, then opens the copy and checks it. A copy that fails the
/// check is removed.
fn copy(connection: &Connection, to: &Path) -> Result<(), StoreError> {
    private::create(to).map_err(|error| match error.kind() {
        ErrorKind::AlreadyExists => StoreError::Exists(to.to_owned()),
        _ => error.into(),
    })?;
    let copied = copy_unchecked(connection, to).and_then(|()| {
        let copy = schema::open_to_read(to)?;
        sound(&copy)?;
        let (copied, own) = (rows(&copy)?, rows(connection)?);
        if copied != own {
            let text = format!("the store holds {own:?} and the copy {copied:?}");
            return Err(StoreError::Other(text));
        }
        Ok(())
    });
    if copied.is_err() {
        // The copy is ours and is no good; that it is gone is no more important than why.
        let _ = fs::remove_file(to);
    }
    copied
}

fn copy_unchecked(connection: &Connection, to: &Path) -> Result<(), StoreError> {
    let name = to
        .to_str()
        .ok_or_else(|| StoreError::Other(format!("{} is not a name in UTF-8", to.display())))?;
    // It writes into an empty file, and into none that holds something.
    connection.execute("VACUUM INTO ?1", [name])?;
    Ok(File::open(to)?.sync_all()?)
}

/// Every table of a store of any version, with how many rows it has.
fn rows(connection: &Connection) -> Result<Vec<(String, i64)>, StoreError> {
    let tables = connection
        .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")?
        .query_map([], |row| row.get(0))?
        .collect::<Result<Vec<String>, _>>()?;
    let mut rows = Vec::new();
    for table in tables {
        let quoted = table.replace('"', "\"\"");
        let sql = format!("SELECT count(*) FROM \"{quoted}\"");
        let count = connection.query_row(&sql, [], |row| row.get(0))?;
        rows.push((table, count));
    }
    Ok(rows)
}

/// Removes a file that may not be there.
fn remove(path: &Path) -> Result<(), StoreError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != ErrorKind::NotFound => Err(error.into()),
        _ => Ok(()),
    }
}

/// Waits until the name of a file is on the disk too.
fn settle(path: &Path) -> Result<(), StoreError> {
    if let Some(directory) = path.parent().filter(|path| !path.as_os_str().is_empty()) {
        File::open(directory)?.sync_all()?;
    }
    Ok(())
}

/// Puts the backup `from` in the place of the store `to`; answers what is in it. The backup is
/// checked before anything is replaced, and the replacing is one step. On Unix what is put there
/// is its owner's alone, whoever may read the backup.
///
/// # Errors
/// When the backup is damaged, not Sunbu's or of a newer version, when the store is open somewhere
/// ([`StoreError::InUse`]), or when the disk fails. The store is then as it was.
pub fn restore(from: &Path, to: &Path) -> Result<Counts, StoreError> {
    verify(from)?;
    let new = beside(to, ".restoring");
    // An attempt that was cut off may have left one.
    remove(&new)?;
    let replaced = private::copy(from, &new)
        .map_err(StoreError::from)
        .and_then(|()| replace(&new, to));
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
        remove(&beside(to, ending))?;
    }
    fs::rename(new, to)?;
    settle(to)?;
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
    sound(&connection)?;
    counts(&connection)
}

/// Checks every page and every reference.
fn sound(connection: &Connection) -> Result<(), StoreError> {
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
    Ok(())
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
