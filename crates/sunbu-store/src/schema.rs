//! Whose file it is, which version, and how it is brought up to date.

use std::path::Path;
use std::time::Duration;

use rusqlite::{Connection, OpenFlags, TransactionBehavior};

use crate::StoreError;

/// The letters `Sunb`.
const APPLICATION_ID: i64 = 0x5375_6E62;

/// In order; the place in the list, from 1, is the version.
const MIGRATIONS: [&str; 1] = [include_str!("../migrations/0001_studio.sql")];

/// The newest version this program knows.
pub(crate) const KNOWN: i64 = MIGRATIONS.len() as i64;

/// How long another program may hold the file before it is an error.
const PATIENCE: Duration = Duration::from_secs(5);

/// Opens the file, and makes it when there is none; refuses one that is not ours untouched.
pub(crate) fn open(path: &Path) -> Result<Connection, StoreError> {
    let connection = Connection::open(path)?;
    connection.busy_timeout(PATIENCE)?;
    check_owner(&connection, path, true)?;
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

/// Sets how the file is written and applies the migrations it lacks.
pub(crate) fn prepare(connection: &mut Connection, now: &str) -> Result<(), StoreError> {
    connection.busy_timeout(PATIENCE)?;
    connection.pragma_update_and_check(None, "journal_mode", "WAL", |_| Ok(()))?;
    connection.pragma_update(None, "synchronous", "FULL")?;
    connection.pragma_update(None, "foreign_keys", true)?;
    connection.pragma_update_and_check(None, "secure_delete", true, |_| Ok(()))?;
    loop {
        let tx = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        // Read inside the transaction: another program may have just done the work.
        let version = number(&tx, "user_version")?;
        let Some(sql) = usize::try_from(version)
            .ok()
            .and_then(|at| MIGRATIONS.get(at))
        else {
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
