//! The people of the studio.

use rusqlite::{Connection, OptionalExtension, Transaction};
use sunbu_core::case::{CaseFile, Fields, Person};

use crate::{Kept, Store, StoreError, backup};

const MISSING: StoreError = StoreError::NotFound { what: "person" };

/// The fields with a column of their own.
const COLUMNS: [&str; 3] = ["name", "sex", "note"];

impl Store {
    /// Everyone, by name.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn people(&self) -> Result<Vec<Kept<Person>>, StoreError> {
        let tx = self.connection.unchecked_transaction()?;
        let ids = tx
            .prepare_cached("SELECT id FROM person ORDER BY name, id")?
            .query_map([], |row| row.get(0))?
            .collect::<Result<Vec<i64>, _>>()?;
        ids.into_iter().map(|id| read(&tx, id)).collect()
    }

    /// One person.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], or when the store cannot be read.
    pub fn person(&self, id: i64) -> Result<Kept<Person>, StoreError> {
        read(&*self.connection.unchecked_transaction()?, id)
    }

    /// Keeps a new person, at revision 1; answers the number.
    ///
    /// # Errors
    /// [`StoreError::Unfit`], or when the store cannot be written.
    pub fn add_person(&mut self, person: &Person, now: &str) -> Result<i64, StoreError> {
        let tx = self.connection.transaction()?;
        let id = insert(&tx, person, now)?;
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
        person.check().map_err(StoreError::Unfit)?;
        let tx = self.connection.transaction()?;
        let changed = tx.execute(
            "UPDATE person SET revision = revision + 1, name = ?3, sex = ?4, note = ?5, \
             saved_at = ?6 WHERE id = ?1 AND revision = ?2",
            (
                id,
                revision,
                &person.name,
                person.sex.key(),
                &person.note,
                now,
            ),
        )?;
        if changed == 0 {
            let current = tx
                .query_row("SELECT revision FROM person WHERE id = ?1", [id], |row| {
                    row.get(0)
                })
                .optional()?;
            return Err(current.map_or(MISSING, |current| StoreError::Stale { current }));
        }
        tx.execute("DELETE FROM person_field WHERE person_id = ?1", [id])?;
        write_fields(&tx, id, person)?;
        tx.commit()?;
        Ok(())
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
            return Err(MISSING);
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

/// Keeps a new person; answers the number.
pub(crate) fn insert(tx: &Transaction<'_>, person: &Person, now: &str) -> Result<i64, StoreError> {
    person.check().map_err(StoreError::Unfit)?;
    tx.execute(
        "INSERT INTO person (revision, name, sex, note, saved_at) VALUES (1, ?1, ?2, ?3, ?4)",
        (&person.name, person.sex.key(), &person.note, now),
    )?;
    let id = tx.last_insert_rowid();
    write_fields(tx, id, person)?;
    Ok(id)
}

fn read(connection: &Connection, id: i64) -> Result<Kept<Person>, StoreError> {
    let mut fields = Fields::new();
    let revision = connection
        .prepare_cached("SELECT revision, name, sex, note FROM person WHERE id = ?1")?
        .query_row([id], |row| {
            for (at, column) in COLUMNS.iter().enumerate() {
                fields.insert((*column).to_owned(), row.get(at + 1)?);
            }
            row.get(0)
        })
        .optional()?
        .ok_or(MISSING)?;
    let mut statement =
        connection.prepare_cached("SELECT field, text FROM person_field WHERE person_id = ?1")?;
    for pair in statement.query_map([id], |row| Ok((row.get(0)?, row.get(1)?)))? {
        let (field, text) = pair?;
        fields.insert(field, text);
    }
    let value = Person::from_fields(&fields)
        .map_err(|problems| StoreError::unreadable("person", id, &problems))?;
    Ok(Kept {
        id,
        revision,
        value,
    })
}

fn write_fields(tx: &Transaction<'_>, id: i64, person: &Person) -> Result<(), StoreError> {
    let mut statement =
        tx.prepare_cached("INSERT INTO person_field (person_id, field, text) VALUES (?1, ?2, ?3)")?;
    for (field, text) in person.to_fields() {
        if !COLUMNS.contains(&field.as_str()) {
            statement.execute((id, field, text))?;
        }
    }
    Ok(())
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
