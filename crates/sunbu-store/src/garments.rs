//! The garments of the studio.

use sunbu_core::case::Piece;

use crate::{Kept, Listed, Store, StoreError, record};

impl Store {
    /// Every garment, by name; those that no longer read beside the others.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn garments(&self) -> Result<Listed<Piece>, StoreError> {
        record::all(&self.connection)
    }

    /// One garment.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], [`StoreError::Unreadable`], or when the store cannot be read.
    pub fn garment(&self, id: i64) -> Result<Kept<Piece>, StoreError> {
        record::one(&self.connection, id)
    }

    /// Keeps a new garment, at revision 1; answers the number.
    ///
    /// # Errors
    /// [`StoreError::Unfit`], or when the store cannot be written.
    pub fn add_garment(&mut self, piece: &Piece, now: &str) -> Result<i64, StoreError> {
        let tx = self.connection.transaction()?;
        let id = record::insert(&tx, piece, now)?;
        tx.commit()?;
        Ok(id)
    }

    /// Saves a garment read at `revision`, which then is one more.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when someone saved since, [`StoreError::NotFound`],
    /// [`StoreError::Unfit`], or when the store cannot be written.
    pub fn save_garment(
        &mut self,
        id: i64,
        revision: i64,
        piece: &Piece,
        now: &str,
    ) -> Result<(), StoreError> {
        record::save(&mut self.connection, id, revision, piece, now)
    }
}
