//! What holds for the whole studio: its standard, and whose hands dress.

use sunbu_core::case::Person;
use sunbu_core::dressing::Standard;

use crate::{Kept, Store, StoreError, record};

/// What the studio has set for itself, and which change of it this is.
#[derive(Debug, Clone, PartialEq)]
pub struct Own<T> {
    /// Grows by one when it is set and when it is taken back, from 1. Give it back when changing
    /// it.
    pub revision: i64,
    /// What was set; none when the customary one is in force.
    pub value: Option<T>,
}

impl Store {
    /// The standard in force: the studio's own, or the customary one.
    ///
    /// # Errors
    /// As [`Store::own_standard`].
    pub fn standard(&self) -> Result<Standard, StoreError> {
        let own = self.own_standard()?.value;
        Ok(own.unwrap_or_else(Standard::customary))
    }

    /// The studio's own standard, if it has set one.
    ///
    /// # Errors
    /// [`StoreError::Standard`] when the core no longer takes it, or when the store cannot be
    /// read.
    pub fn own_standard(&self) -> Result<Own<Standard>, StoreError> {
        let Own { revision, value } = self.own_standard_text()?;
        let value = value.map(|text| Standard::parse(&text)).transpose()?;
        Ok(Own { revision, value })
    }

    /// The studio's own standard as it is kept, in TOML, whether or not the core takes it.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn own_standard_text(&self) -> Result<Own<String>, StoreError> {
        Ok(self.connection.query_row(
            "SELECT standard_revision, standard_toml FROM setting",
            [],
            |row| {
                Ok(Own {
                    revision: row.get(0)?,
                    value: row.get(1)?,
                })
            },
        )?)
    }

    /// Sets the studio's own standard in the place of what was read at `revision`, which then is
    /// one more.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when someone set or took it back since, or when the store cannot be
    /// written.
    pub fn set_standard(
        &mut self,
        revision: i64,
        standard: &Standard,
        now: &str,
    ) -> Result<(), StoreError> {
        self.change_standard(revision, Some((&standard.to_toml(), now)))
    }

    /// Goes back to the customary standard from what was read at `revision`, which then is one
    /// more.
    ///
    /// # Errors
    /// As [`Store::set_standard`].
    pub fn reset_standard(&mut self, revision: i64) -> Result<(), StoreError> {
        self.change_standard(revision, None)
    }

    /// The text and the moment of the own standard, or none.
    fn change_standard(
        &mut self,
        revision: i64,
        to: Option<(&str, &str)>,
    ) -> Result<(), StoreError> {
        let (text, at) = to.unzip();
        let tx = self.connection.transaction()?;
        let changed = tx.execute(
            "UPDATE setting SET standard_toml = ?1, standard_at = ?2, \
             standard_revision = standard_revision + 1 WHERE standard_revision = ?3",
            (text, at, revision),
        )?;
        if changed == 0 {
            let sql = "SELECT standard_revision FROM setting";
            let current = tx.query_row(sql, [], |row| row.get(0))?;
            return Err(StoreError::Stale { current });
        }
        Ok(tx.commit()?)
    }

    /// Whose hands dress, if it was said.
    ///
    /// # Errors
    /// [`StoreError::Unreadable`] when the dresser's own entry does not read, or when the store
    /// cannot be read.
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
            record::must_be::<Person>(&self.connection, id)?;
        }
        self.connection
            .execute("UPDATE setting SET dresser_id = ?1", [id])?;
        Ok(())
    }
}
