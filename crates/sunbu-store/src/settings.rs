//! What holds for the whole studio: its standard, and whose hands dress.

use sunbu_core::case::Person;
use sunbu_core::dressing::Standard;

use crate::{Kept, Store, StoreError};

impl Store {
    /// The standard in force: the studio's own, or the customary one.
    ///
    /// # Errors
    /// As [`Store::own_standard`].
    pub fn standard(&self) -> Result<Standard, StoreError> {
        Ok(self.own_standard()?.unwrap_or_else(Standard::customary))
    }

    /// The studio's own standard, if it has set one.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn own_standard(&self) -> Result<Option<Standard>, StoreError> {
        let text: Option<String> =
            self.connection
                .query_row("SELECT standard_toml FROM setting", [], |row| row.get(0))?;
        text.map(|text| {
            Standard::parse(&text)
                .map_err(|error| StoreError::Damaged(format!("the standard: {error}")))
        })
        .transpose()
    }

    /// Sets the studio's own standard.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn set_standard(&mut self, standard: &Standard, now: &str) -> Result<(), StoreError> {
        self.connection.execute(
            "UPDATE setting SET standard_toml = ?1, standard_at = ?2",
            (standard.to_toml(), now),
        )?;
        Ok(())
    }

    /// Goes back to the customary standard.
    ///
    /// # Errors
    /// When the store cannot be written.
    pub fn reset_standard(&mut self) -> Result<(), StoreError> {
        self.connection.execute(
            "UPDATE setting SET standard_toml = NULL, standard_at = NULL",
            [],
        )?;
        Ok(())
    }

    /// Whose hands dress, if it was said.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn dresser(&self) -> Result<Option<Kept<Person>>, StoreError> {
        let id: Option<i64> =
            self.connection
                .query_row("SELECT dresser_id FROM setting", [], |row| row.get(0))?;
        id.map(|id| self.person(id)).transpose()
    }

    /// Says whose hands dress.
    ///
    /// # Errors
    /// [`StoreError::NotFound`] when there is no such person, or when the store cannot be written.
    pub fn set_dresser(&mut self, id: Option<i64>) -> Result<(), StoreError> {
        if let Some(id) = id {
            self.person(id)?;
        }
        self.connection
            .execute("UPDATE setting SET dresser_id = ?1", [id])?;
        Ok(())
    }
}
