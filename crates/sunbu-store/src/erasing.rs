//! Erasing: what goes together, and that its bytes go too.
//!
//! Each erasing rewrites the file and removes the copies made before migrations. Backups that
//! somebody asked for still hold what was erased.
//!
//! Nothing has to read to be erased. A dresser's measures leave the plans of others whether or
//! not those read: what cannot be taken apart surely goes whole.

use rusqlite::Transaction;
use sunbu_core::case::{CaseFile, Person, Piece};

use crate::record::{self, Record};
use crate::unread::Text;
use crate::{Store, StoreError, backup, checks, photos, plans};

impl Store {
    /// Erases a person, their plans, their checks with the photos, and their hands from the plans
    /// of others.
    ///
    /// # Errors
    /// [`StoreError::NotFound`]; [`StoreError::Traces`] when they are erased but the file could
    /// not be rewritten; or when the store cannot be written.
    pub fn erase_person(&mut self, id: i64) -> Result<(), StoreError> {
        let tx = self.connection.transaction()?;
        take_hands_out(&tx, id)?;
        delete(&tx, Person::TABLE, id, record::missing::<Person>())?;
        tx.commit()?;
        self.scrub()
    }

    /// Erases a garment. Plans made with it stay, with the garment as it was then.
    ///
    /// # Errors
    /// As [`Store::erase_person`].
    pub fn erase_garment(&mut self, id: i64) -> Result<(), StoreError> {
        let tx = self.connection.transaction()?;
        delete(&tx, Piece::TABLE, id, record::missing::<Piece>())?;
        tx.commit()?;
        self.scrub()
    }

    /// Erases a plan. Person and garment stay, and so do the checks begun from it.
    ///
    /// # Errors
    /// As [`Store::erase_person`].
    pub fn erase_plan(&mut self, id: i64) -> Result<(), StoreError> {
        let tx = self.connection.transaction()?;
        delete(&tx, "plan", id, plans::MISSING)?;
        tx.commit()?;
        self.scrub()
    }

    /// Erases a check with its photos. Person and plan stay.
    ///
    /// # Errors
    /// As [`Store::erase_person`].
    pub fn erase_check(&mut self, id: i64) -> Result<(), StoreError> {
        let tx = self.connection.transaction()?;
        delete(&tx, "checkup", id, checks::MISSING)?;
        tx.commit()?;
        self.scrub()
    }

    /// Erases a photo with its marks. Its check stays.
    ///
    /// # Errors
    /// As [`Store::erase_person`].
    pub fn erase_photo(&mut self, check: i64, id: i64) -> Result<(), StoreError> {
        let sql = "DELETE FROM photo WHERE id = ?1 AND checkup_id = ?2";
        match self.connection.execute(sql, [id, check])? {
            0 => Err(photos::MISSING),
            _ => self.scrub(),
        }
    }

    /// Rewrites the file without what was deleted and empties the write-ahead log.
    pub(crate) fn scrub(&self) -> Result<(), StoreError> {
        let traces = |error: rusqlite::Error| StoreError::Traces(error.to_string());
        self.connection.execute_batch("VACUUM").map_err(traces)?;
        let held: bool = self
            .connection
            .query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| row.get(0))
            .map_err(traces)?;
        if held {
            return Err(StoreError::Traces("another program is reading".into()));
        }
        match &self.path {
            Some(path) => backup::forget_old_versions(path)
                .map_err(|error| StoreError::Traces(error.to_string())),
            None => Ok(()),
        }
    }
}

fn delete(tx: &Transaction<'_>, table: &str, id: i64, none: StoreError) -> Result<(), StoreError> {
    match tx.execute(&format!("DELETE FROM {table} WHERE id = ?1"), [id])? {
        0 => Err(none),
        _ => Ok(()),
    }
}

/// Plans of others hold a copy of the dresser's measures; it goes with the dresser. A plan's row,
/// with its title, day and choices, stays in any case: they hold nothing of the dresser.
fn take_hands_out(tx: &Transaction<'_>, dresser: i64) -> Result<(), StoreError> {
    let plans = tx
        .prepare("SELECT id, case_toml FROM plan WHERE dresser_id = ?1")?
        .query_map([dresser], |row| Ok((row.get(0)?, row.get(1)?)))?
        .collect::<Result<Vec<(i64, Text)>, _>>()?;
    for (id, Text(text)) in plans {
        tx.execute(
            "UPDATE plan SET case_toml = ?2 WHERE id = ?1",
            (id, CaseFile::without_dresser(&text)),
        )?;
    }
    Ok(())
}
