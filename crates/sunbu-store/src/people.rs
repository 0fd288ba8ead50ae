//! The people of the studio.

use sunbu_core::case::Person;

use crate::{Kept, Listed, Store, StoreError, record};

impl Store {
    /// Everyone, by name; those that no longer read beside the others.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn people(&self) -> Result<Listed<Person>, StoreError> {
        record::all(&self.connection)
    }

    /// One person.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], [`StoreError::Unreadable`], or when the store cannot be read.
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
}
