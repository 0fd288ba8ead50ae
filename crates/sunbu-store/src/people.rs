//! The people of the studio.

use rusqlite::Transaction;
use sunbu_core::case::{CaseFile, Person};

use crate::{Kept, Store, StoreError, backup, record};

impl Store {
    /// Everyone, by name.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn people(&self) -> Result<Vec<Kept<Person>>, StoreError> {
        record::all(&self.connection)
    }

    /// One person.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], or when the store cannot be read.
    pub fn person(&self, id: i64) -> Result<Kept<Person>, StoreError> {
        record::one(&self.connection, id)
    }

    /// Keeps a new person, at revision 1; answers the number.
    ///
    /// # Errors
    /// [`StoreError::Unfit`], or when the store cannot be written.
    pub fn add_person(&mut self, person: &Person, now: &str) -> Result<i64, StoreError> {
        let tx = self.connection.transaction()?;
        let id = record::insert(&tx, person, now)?;
        tx.commit()?;
        Ok(id)
    }

    /// Saves a person read at `revision`, which then is one more.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when someone saved since, [`StoreError::NotFound`],
    /// [`StoreError::Unfit`], or when the store cannot be written.
    pub fn save_person(
        &mut self,
        id: i64,
        revision: i64,
        person: &Person,
        now: &str,
    ) -> Result<(), StoreError> {
        record::save(&mut self.connection, id, revision, person, now)
    }

    /// Erases a person, their plans, and their hands from the plans of others; then rewrites the
    /// file, so that the bytes are gone too, and removes the copies made before migrations.
    /// Backups that somebody asked for still hold them.
    ///
    /// # Errors
    /// [`StoreError::NotFound`]; [`StoreError::Traces`] when they are erased but the file could
    /// not be rewritten; or when the store cannot be written.
    pub fn erase_person(&mut self, id: i64) -> Result<(), StoreError> {
        let tx = self.connection.transaction()?;
        take_hands_out(&tx, id)?;
        if tx.execute("DELETE FROM person WHERE id = ?1", [id])? == 0 {
            return Err(record::missing::<Person>());
        }
        tx.commit()?;
        self.scrub()
    }

    /// Rewrites the file without what was deleted and empties the write-ahead log.
    fn scrub(&self) -> Result<(), StoreError> {
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

/// Plans of others hold a copy of the dresser's measures; it goes with the dresser.
fn take_hands_out(tx: &Transaction<'_>, dresser: i64) -> Result<(), StoreError> {
    let plans = tx
        .prepare("SELECT id, case_toml FROM plan WHERE dresser_id = ?1")?
        .query_map([dresser], |row| Ok((row.get(0)?, row.get(1)?)))?
        .collect::<Result<Vec<(i64, String)>, _>>()?;
    for (id, text) in plans {
        let mut case = CaseFile::parse(&text)
            .map_err(|problems| StoreError::unreadable("plan", id, &problems))?;
        case.dresser = None;
        tx.execute(
            "UPDATE plan SET case_toml = ?2 WHERE id = ?1",
            (id, case.to_toml()),
        )?;
    }
    Ok(())
}
