//! The garments of the studio.

use rusqlite::{Connection, OptionalExtension, Transaction};
use sunbu_core::case::{Fields, Piece};

use crate::{Kept, Store, StoreError};

const MISSING: StoreError = StoreError::NotFound { what: "garment" };

/// The fields with a column of their own.
const COLUMNS: [&str; 2] = ["name", "note"];

impl Store {
    /// Every garment, by name.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn garments(&self) -> Result<Vec<Kept<Piece>>, StoreError> {
        let tx = self.connection.unchecked_transaction()?;
        let ids = tx
            .prepare_cached("SELECT id FROM piece ORDER BY name, id")?
            .query_map([], |row| row.get(0))?
            .collect::<Result<Vec<i64>, _>>()?;
        ids.into_iter().map(|id| read(&tx, id)).collect()
    }

    /// One garment.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], or when the store cannot be read.
    pub fn garment(&self, id: i64) -> Result<Kept<Piece>, StoreError> {
        read(&*self.connection.unchecked_transaction()?, id)
    }

    /// Keeps a new garment, at revision 1; answers the number.
    ///
    /// # Errors
    /// [`StoreError::Unfit`], or when the store cannot be written.
    pub fn add_garment(&mut self, piece: &Piece, now: &str) -> Result<i64, StoreError> {
        let tx = self.connection.transaction()?;
        let id = insert(&tx, piece, now)?;
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
        piece.check().map_err(StoreError::Unfit)?;
        let tx = self.connection.transaction()?;
        let changed = tx.execute(
            "UPDATE piece SET revision = revision + 1, name = ?3, note = ?4, saved_at = ?5 \
             WHERE id = ?1 AND revision = ?2",
            (id, revision, &piece.name, &piece.note, now),
        )?;
        if changed == 0 {
            let current = tx
                .query_row("SELECT revision FROM piece WHERE id = ?1", [id], |row| {
                    row.get(0)
                })
                .optional()?;
            return Err(current.map_or(MISSING, |current| StoreError::Stale { current }));
        }
        tx.execute("DELETE FROM piece_field WHERE piece_id = ?1", [id])?;
        write_fields(&tx, id, piece)?;
        tx.commit()?;
        Ok(())
    }

    /// Erases a garment. Plans made with it stay, with the garment as it was then.
    ///
    /// # Errors
    /// [`StoreError::NotFound`], or when the store cannot be written.
    pub fn erase_garment(&mut self, id: i64) -> Result<(), StoreError> {
        match self
            .connection
            .execute("DELETE FROM piece WHERE id = ?1", [id])?
        {
            0 => Err(MISSING),
            _ => Ok(()),
        }
    }
}

/// Keeps a new garment; answers the number.
pub(crate) fn insert(tx: &Transaction<'_>, piece: &Piece, now: &str) -> Result<i64, StoreError> {
    piece.check().map_err(StoreError::Unfit)?;
    tx.execute(
        "INSERT INTO piece (revision, name, note, saved_at) VALUES (1, ?1, ?2, ?3)",
        (&piece.name, &piece.note, now),
    )?;
    let id = tx.last_insert_rowid();
    write_fields(tx, id, piece)?;
    Ok(id)
}

fn read(connection: &Connection, id: i64) -> Result<Kept<Piece>, StoreError> {
    let mut fields = Fields::new();
    let revision = connection
        .prepare_cached("SELECT revision, name, note FROM piece WHERE id = ?1")?
        .query_row([id], |row| {
            for (at, column) in COLUMNS.iter().enumerate() {
                fields.insert((*column).to_owned(), row.get(at + 1)?);
            }
            row.get(0)
        })
        .optional()?
        .ok_or(MISSING)?;
    let mut statement =
        connection.prepare_cached("SELECT field, text FROM piece_field WHERE piece_id = ?1")?;
    for pair in statement.query_map([id], |row| Ok((row.get(0)?, row.get(1)?)))? {
        let (field, text) = pair?;
        fields.insert(field, text);
    }
    let value = Piece::from_fields(&fields)
        .map_err(|problems| StoreError::unreadable("garment", id, &problems))?;
    Ok(Kept {
        id,
        revision,
        value,
    })
}

fn write_fields(tx: &Transaction<'_>, id: i64, piece: &Piece) -> Result<(), StoreError> {
    let mut statement =
        tx.prepare_cached("INSERT INTO piece_field (piece_id, field, text) VALUES (?1, ?2, ?3)")?;
    for (field, text) in piece.to_fields() {
        if !COLUMNS.contains(&field.as_str()) {
            statement.execute((id, field, text))?;
        }
    }
    Ok(())
}
