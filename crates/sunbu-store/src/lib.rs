//! The studio's store: people, garments, plans and settings in one SQLite file. The only place
//! with SQL.
//!
//! What is acknowledged is on disk: every save is one transaction with full synchronisation.
//! Reading goes through the core again, so nothing leaves the store that the core would refuse.

#![deny(missing_docs)]

mod backup;
mod error;
mod garments;
mod people;
mod plans;
mod schema;
mod settings;

pub use backup::{Counts, restore};
pub use error::StoreError;
pub use plans::{NewPlan, PlanRow, SavedPlan};

use std::path::Path;

use rusqlite::Connection;

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
}

impl Store {
    /// Opens the store at `path`, making it when there is none and bringing an older one up to
    /// date.
    ///
    /// # Errors
    /// When the file is not Sunbu's, is of a newer version, is damaged, or cannot be opened. A
    /// file refused is left as it was.
    pub fn open(path: &Path, now: &str) -> Result<Self, StoreError> {
        let connection = schema::open(path)?;
        Self::ready(connection, now)
    }

    /// A store that lives as long as this value.
    ///
    /// # Errors
    /// When there is no memory for it.
    pub fn in_memory() -> Result<Self, StoreError> {
        Self::ready(Connection::open_in_memory()?, "in memory")
    }

    fn ready(mut connection: Connection, now: &str) -> Result<Self, StoreError> {
        schema::prepare(&mut connection, now)?;
        Ok(Self { connection })
    }
}
