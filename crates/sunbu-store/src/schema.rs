//! Whose file it is, which version, and how it is brought up to date.

use std::io::ErrorKind;
use std::path::Path;
use std::time::Duration;

use rusqlite::{Connection, OpenFlags, TransactionBehavior};

use crate::{StoreError, backup, private};

/// The letters `Sunb`.
const APPLICATION_ID: i64 = 0x5375_6E62;

/// In order; the place in the list, from 1, is the version.
pub(crate) const MIGRATIONS: &[&str] = &[
    include_str!("../migrations/0001_studio.sql"),
    include_str!("../migrations/0002_standard_revision.sql"),
    include_str!("../migrations/0003_checks.sql"),
    include_str!("../migrations/0004_hidden.sql"),
];

/// The newest version this program knows.
pub(crate) const KNOWN: i64 = MIGRATIONS.len() as i64;

/// How long another program may hold the file before it is an error.
const PATIENCE: Duration = Duration::from_secs(5);

/// Opens the file, and makes it when there is none; refuses one that is not ours untouched.
pub(crate) fn open(path: &Path) -> Result<Connection, StoreError> {
    match private::create(path) {
        Err(error) if error.kind() != ErrorKind::AlreadyExists => return Err(error.into()),
        _ => {}
    }
    let connection = Connection::open(path)?;
    connection.busy_timeout(PATIENCE)?;
    check_owner(&connection, path, true)?;
    backup::tighten(path);
    Ok(connection)
}

/// Opens an existing store to look at it only.
pub(crate) fn open_to_read(path: &Path) -> Result<Connection, StoreError> {
    let connection = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_ONLY)?;
    connection.busy_timeout(PATIENCE)?;
    check_owner(&connection, path, false)?;
    Ok(connection)
}

fn check_owner(connection: &Connection, path: &Path, may_be_new: bool) -> Result<(), StoreError> {
    let not_ours = || StoreError::NotOurs {
        path: path.display().to_string(),
    };
    let id = match number(connection, "application_id") {
        Err(StoreError::Damaged(_)) => return Err(not_ours()),
        other => other?,
    };
    if id != APPLICATION_ID && !(may_be_new && id == 0 && is_empty(connection)?) {
        return Err(not_ours());
    }
    let found = number(connection, "user_version")?;
    if found > KNOWN {
        return Err(StoreError::Newer {
            found,
            known: KNOWN,
        });
    }
    Ok(())
}

fn is_empty(connection: &Connection) -> Result<bool, StoreError> {
    let things: i64 =
        connection.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))?;
    Ok(things == 0 && number(connection, "user_version")? == 0)
}

pub(crate) fn number(connection: &Connection, pragma: &str) -> Result<i64, StoreError> {
    Ok(connection.pragma_query_value(None, pragma, |row| row.get(0))?)
}

/// Sets how the file is written and applies the migrations it lacks. A store in a file is copied
/// beside itself before the first of them changes it.
pub(crate) fn prepare(
    connection: &mut Connection,
    path: Option<&Path>,
    migrations: &[&str],
    now: &str,
) -> Result<(), StoreError> {
    connection.busy_timeout(PATIENCE)?;
    connection.pragma_update_and_check(None, "journal_mode", "WAL", |_| Ok(()))?;
    connection.pragma_update(None, "synchronous", "FULL")?;
    connection.pragma_update(None, "foreign_keys", true)?;
    connection.pragma_update_and_check(None, "secure_delete", true, |_| Ok(()))?;
    let version = number(connection, "user_version")?;
    if let Some(path) = path
        && version > 0
        && lacks(version, migrations).is_some()
    {
        backup::before_migration(connection, path, version)?;
    }
    loop {
        let tx = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        // Read inside the transaction: another program may have just done the work.
        let version = number(&tx, "user_version")?;
        let Some(sql) = lacks(version, migrations) else {
            return Ok(());
        };
        tx.execute_batch(sql)?;
        tx.execute(
            "INSERT INTO migration (version, applied_at) VALUES (?1, ?2)",
            (version + 1, now),
        )?;
        tx.pragma_update(None, "user_version", version + 1)?;
        tx.pragma_update(None, "application_id", APPLICATION_ID)?;
        tx.commit()?;
    }
}

/// The migration that a store of this version lacks next.
fn lacks<'a>(version: i64, migrations: &[&'a str]) -> Option<&'a str> {
    let at = usize::try_from(version).ok()?;
    migrations.get(at).copied()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A migration that a later version might bring.
    const NEXT: &str =
        "ALTER TABLE person ADD COLUMN called TEXT; UPDATE person SET called = name;";
    /// One that changes something before it fails.
    const BROKEN: &str = "DELETE FROM person; INSERT INTO nowhere VALUES (1);";

    /// A store of the first version with one person in it.
    fn first(path: &Path) {
        let mut connection = open(path).unwrap();
        prepare(&mut connection, Some(path), &MIGRATIONS[..1], "then").unwrap();
        let sql = "INSERT INTO person (revision, name, sex, note, saved_at) \
                   VALUES (1, 'Chiyo', 'women', '', 'then')";
        connection.execute(sql, []).unwrap();
    }

    fn migrate(path: &Path, next: &str) -> Result<Connection, StoreError> {
        let mut connection = open(path)?;
        prepare(&mut connection, Some(path), &[MIGRATIONS[0], next], "now")?;
        Ok(connection)
    }

    fn text(connection: &Connection, sql: &str) -> String {
        connection.query_row(sql, [], |row| row.get(0)).unwrap()
    }

    #[test]
    fn a_store_is_copied_beside_itself_and_then_brought_up_to_date() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("studio.db");
        first(&path);
        let copy = folder.path().join("studio.db.version-1");
        assert!(!copy.exists(), "a new store has nothing to be copied");
        std::fs::write(&copy, "left by an attempt that failed").unwrap();
        let migrated = migrate(&path, NEXT).unwrap();
        assert_eq!(number(&migrated, "user_version").unwrap(), 2);
        assert_eq!(text(&migrated, "SELECT called FROM person"), "Chiyo");
        assert_eq!(
            text(
                &migrated,
                "SELECT applied_at FROM migration WHERE version = 2"
            ),
            "now"
        );
        let old = open_to_read(&copy).unwrap();
        assert_eq!(number(&old, "user_version").unwrap(), 1);
        assert_eq!(text(&old, "SELECT name FROM person"), "Chiyo");
        assert_eq!(
            std::fs::read_dir(folder.path()).unwrap().count(),
            4,
            "store, log, index, copy"
        );
    }

    #[test]
    fn a_migration_that_fails_leaves_the_store_as_it_was() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("studio.db");
        first(&path);
        let failed = migrate(&path, BROKEN).unwrap_err();
        assert!(failed.to_string().contains("nowhere"), "{failed}");
        let as_before = open(&path).unwrap();
        assert_eq!(number(&as_before, "user_version").unwrap(), 1);
        assert_eq!(text(&as_before, "SELECT name FROM person"), "Chiyo");
        drop(as_before);
        // A mended version gets through.
        assert_eq!(
            text(&migrate(&path, NEXT).unwrap(), "SELECT called FROM person"),
            "Chiyo"
        );
    }

    #[test]
    fn nothing_is_migrated_when_the_copy_cannot_be_made() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("studio.db");
        first(&path);
        // A folder stands where the copy belongs.
        std::fs::create_dir_all(folder.path().join("studio.db.version-1/full")).unwrap();
        assert!(migrate(&path, NEXT).is_err());
        assert_eq!(number(&open(&path).unwrap(), "user_version").unwrap(), 1);
    }

    #[test]
    fn two_programs_that_open_an_old_store_at_once_migrate_it_once() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("studio.db");
        first(&path);
        let (mut one, mut two) = (open(&path).unwrap(), open(&path).unwrap());
        let both = [MIGRATIONS[0], NEXT];
        prepare(&mut one, Some(&path), &both, "now").unwrap();
        prepare(&mut two, Some(&path), &both, "later").unwrap();
        assert_eq!(
            text(&two, "SELECT applied_at FROM migration WHERE version = 2"),
            "now"
        );
    }
}
