//! The studio's store: people, garments, plans and settings in one SQLite file. The only place
//! with SQL.
//!
//! What is acknowledged is on disk: every save is one transaction with full synchronisation.
//! Reading goes through the core again, so nothing leaves the store as read that the core would
//! refuse; what it refuses is given back beside the rest, as it is stored.

#![deny(missing_docs)]

mod backup;
mod checks;
mod erasing;
mod error;
mod garments;
mod people;
mod photos;
mod plans;
mod private;
mod record;
mod schema;
mod settings;
mod unread;

pub use backup::{Counts, restore};
pub use checks::{Check, CheckRow, NewCheck, Shown};
pub use error::StoreError;
pub use photos::{NewPhoto, Photo};
pub use plans::{NewPlan, PlanRow, SavedPlan};
pub use settings::Own;
pub use unread::{Entry, Listed, Unread};

use std::path::{Path, PathBuf};

use rusqlite::Connection;
use sunbu_core::case::{Person, Piece};

/// Something kept: its identity, which save it is, and what it is.
#[derive(Debug, Clone, PartialEq)]
pub struct Kept<T> {
    /// Its number: never given to anything else, even after erasing.
    pub id: i64,
    /// Which save this is, from 1. Give it back when saving.
    pub revision: i64,
    /// What is kept.
    pub value: T,
}

/// The open store.
///
/// Moments (`now`) are given by the caller as RFC 3339 text.
#[derive(Debug)]
pub struct Store {
    connection: Connection,
    /// Where it lies; nowhere when it is in memory.
    path: Option<PathBuf>,
}

impl Store {
    /// Opens the store at `path`, making it when there is none and bringing an older one up to
    /// date. A copy of the older one is kept beside it, as `NAME.version-N`. On Unix all of them
    /// are their owner's alone; what others could read before is closed to them.
    ///
    /// # Errors
    /// When the file is not Sunbu's, is of a newer version, is damaged, or cannot be opened. A
    /// file refused is left as it was.
    pub fn open(path: &Path, now: &str) -> Result<Self, StoreError> {
        Self::ready(schema::open(path)?, Some(path.to_owned()), now)
    }

    /// A store that lives as long as this value.
    ///
    /// # Errors
    /// When there is no memory for it.
    pub fn in_memory() -> Result<Self, StoreError> {
        Self::ready(Connection::open_in_memory()?, None, "in memory")
    }

    /// Keeps many people and garments at once: all of them or, when one is refused, none. Quicker
    /// than one by one, since the disk is waited for once.
    ///
    /// # Errors
    /// [`StoreError::Unfit`], or when the store cannot be written.
    pub fn add_all(
        &mut self,
        people: &[Person],
        garments: &[Piece],
        now: &str,
    ) -> Result<(), StoreError> {
        let tx = self.connection.transaction()?;
        for person in people {
            record::insert(&tx, person, now)?;
        }
        for piece in garments {
            record::insert(&tx, piece, now)?;
        }
        Ok(tx.commit()?)
    }

    fn ready(
        mut connection: Connection,
        path: Option<PathBuf>,
        now: &str,
    ) -> Result<Self, StoreError> {
        schema::prepare(&mut connection, path.as_deref(), schema::MIGRATIONS, now)?;
        Ok(Self { connection, path })
    }
}
