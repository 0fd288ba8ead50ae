//! What can go wrong in the store, in words that say what to do.

use std::path::PathBuf;

use rusqlite::ErrorCode;
use sunbu_core::dressing::StandardError;
use sunbu_core::problem::Problem;

use crate::Unread;

/// Why the store did not do what it was asked. Nothing was changed, unless it says so.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// There is no such thing, or no longer.
    #[error("there is no such {what}; it may have been erased")]
    NotFound {
        /// What was asked for: person, garment, plan, dresser, check or photo.
        what: &'static str,
    },
    /// Someone saved it since it was read.
    #[error("it was changed meanwhile and is at revision {current}; look at it and save again")]
    Stale {
        /// The revision it is at now.
        current: i64,
    },
    /// A check has a photo of this side already.
    #[error("there is a photo of this side already, number {by}; replace that one")]
    Taken {
        /// The photo that is there.
        by: i64,
    },
    /// The file is something else.
    #[error("{path} is not a Sunbu store; name another file")]
    NotOurs {
        /// Where it lies.
        path: String,
    },
    /// The file was written by a newer Sunbu.
    #[error(
        "the store is of version {found} and this Sunbu knows up to {known}; use a newer Sunbu"
    )]
    Newer {
        /// The version of the file.
        found: i64,
        /// The newest version this program knows.
        known: i64,
    },
    /// What is in the file cannot be right.
    #[error("the store is damaged ({0}); restore a backup")]
    Damaged(String),
    /// Another program holds the file.
    #[error("the store is in use by another program; close it and try again")]
    InUse,
    /// A file would be overwritten.
    #[error("{0} exists already; name a file that does not")]
    Exists(PathBuf),
    /// The entry is there, but the core no longer reads it; commonest cause: it was kept by an
    /// older version with wider limits. Saving a mended one or erasing it is the way out.
    #[error(
        "{} {} cannot be read ({}); mend it in its form or erase it",
        .0.entry.word(),
        .0.id,
        lines(&.0.problems)
    )]
    Unreadable(Box<Unread>),
    /// What was to be kept breaks a rule of the core.
    #[error("it cannot be kept: {}", lines(.0))]
    Unfit(Vec<Problem>),
    /// The studio's own standard, as it is kept, breaks a rule of the core; commonest cause: it
    /// was kept by an older version with wider limits.
    #[error("the house rules kept here no longer stand ({0}); mend them as text or take them back")]
    Standard(#[from] StandardError),
    /// The erased things are gone from every page, but their bytes may still lie in the file.
    #[error(
        "erased, but traces may remain in the file ({0}); close all programs that use it, and open it once"
    )]
    Traces(String),
    /// The disk does not read or write; commonest cause: it is full.
    #[error("the disk does not take or give it: {0}")]
    Disk(String),
    /// Anything else the database says.
    #[error("the store cannot be used: {0}")]
    Other(String),
}

pub(crate) fn lines(problems: &[Problem]) -> String {
    let all: Vec<String> = problems.iter().map(ToString::to_string).collect();
    all.join("; ")
}

impl StoreError {
    /// Which kind of failure it is, in a word or two that hold nothing of what is kept: for a log.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::NotFound { .. } => "not found",
            Self::Stale { .. } => "stale",
            Self::Taken { .. } => "side taken",
            Self::NotOurs { .. } => "not a store",
            Self::Newer { .. } => "newer version",
            Self::Damaged(_) => "damaged store",
            Self::InUse => "in use",
            Self::Exists(_) => "file exists",
            Self::Unreadable(_) => "unreadable entry",
            Self::Unfit(_) => "unfit entry",
            Self::Standard(_) => "unreadable standard",
            Self::Traces(_) => "traces left",
            Self::Disk(_) => "disk",
            Self::Other(_) => "database",
        }
    }
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> Self {
        match error.sqlite_error_code() {
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => Self::InUse,
            Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => {
                Self::Damaged(error.to_string())
            }
            Some(
                ErrorCode::DiskFull
                | ErrorCode::SystemIoFailure
                | ErrorCode::CannotOpen
                | ErrorCode::ReadOnly,
            ) => Self::Disk(error.to_string()),
            _ => Self::Other(error.to_string()),
        }
    }
}

impl From<std::io::Error> for StoreError {
    fn from(error: std::io::Error) -> Self {
        Self::Disk(error.to_string())
    }
}
