//! What is kept but no longer reads: one such row closes nothing but itself.
//!
//! Commonest cause: it was kept by a version with wider limits, or another program wrote to the
//! file. It is given back as it is stored, to be mended in its form or erased.

use rusqlite::types::{FromSql, FromSqlResult, ValueRef};
use sunbu_core::case::Fields;
use sunbu_core::problem::Problem;

use crate::Kept;

/// What an entry of the studio is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Entry {
    /// One of the people.
    Person,
    /// One of the garments.
    Garment,
}

impl Entry {
    /// What a message calls it.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Person => "person",
            Self::Garment => "garment",
        }
    }
}

/// An entry that the core no longer reads, as it is stored.
#[derive(Debug, Clone, PartialEq)]
pub struct Unread {
    /// What it is.
    pub entry: Entry,
    /// Its number.
    pub id: i64,
    /// Which save this is. Give it back when saving the mended one.
    pub revision: i64,
    /// Every field as it is stored. Bytes that are no text are replacement characters.
    pub fields: Fields,
    /// Everything that is wrong with the fields, at least one.
    pub problems: Vec<Problem>,
}

impl Unread {
    /// The name as it is stored; may be empty.
    pub fn name(&self) -> &str {
        self.fields.get("name").map_or("", String::as_str)
    }
}

/// Everything of one kind, by name.
#[derive(Debug, Clone, PartialEq)]
pub struct Listed<T> {
    /// What reads.
    pub read: Vec<Kept<T>>,
    /// What does not; mostly nothing.
    pub unread: Vec<Unread>,
}

impl<T> Listed<T> {
    /// Whether there is none at all.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// How many there are, whether they read or not.
    pub fn len(&self) -> usize {
        self.read.len() + self.unread.len()
    }
}

/// A stored text. Bytes that are no UTF-8, which only another program can have written, become
/// replacement characters instead of an error that would hide everything beside them.
pub(crate) struct Text(pub String);

impl FromSql for Text {
    fn column_result(value: ValueRef<'_>) -> FromSqlResult<Self> {
        let bytes = value.as_bytes()?;
        Ok(Self(String::from_utf8_lossy(bytes).into_owned()))
    }
}
