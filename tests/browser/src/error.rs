//! What can go wrong around a page under test, as distinct from what is wrong with the page.

use std::path::PathBuf;

/// The browser could not be started, or did not do as it was told.
#[derive(Debug, thiserror::Error)]
pub enum BrowserError {
    /// A program is not on the search path; usually `./check` has not been run on this machine.
    #[error("{what} is missing (looked for {names} on PATH): run ./check, or install {package}")]
    Missing {
        /// What the program is for the tests.
        what: &'static str,
        /// The names looked for.
        names: String,
        /// Debian's package of it.
        package: &'static str,
    },
    /// The accessibility rules are not installed; `npm ci` was not run in `tests/browser`.
    #[error(
        "the accessibility rules are missing at {path}: run ./check, or npm ci in tests/browser"
    )]
    NoRules {
        /// Where they were looked for.
        path: PathBuf,
    },
    /// The driver started but never said on which port; `log` is what it said instead.
    #[error("the browser's driver did not come up; it said: {log}")]
    DriverSilent {
        /// Everything it printed.
        log: String,
    },
    /// The driver would not open a browser; commonly a browser and a driver of different versions.
    #[error("the driver could not open a browser")]
    NoSession(#[source] Box<fantoccini::error::NewSessionError>),
    /// One command failed, for instance a page that never finished loading.
    #[error("the browser could not {doing}")]
    Command {
        /// What was asked of it.
        doing: String,
        /// What the driver answered.
        #[source]
        source: Box<fantoccini::error::CmdError>,
    },
    /// A command was answered in a form that these tests do not know.
    #[error("the browser's answer to \"{doing}\" makes no sense: {answer}")]
    Answer {
        /// What was asked of it.
        doing: String,
        /// The answer.
        answer: String,
    },
    /// A file of the tests' own could not be read or written.
    #[error("{path}: {source}")]
    File {
        /// The file or program.
        path: PathBuf,
        /// Why not.
        #[source]
        source: std::io::Error,
    },
}

/// The studio could not be started.
#[derive(Debug, thiserror::Error)]
pub enum StudioError {
    /// The program could not be run at all.
    #[error("{program}: {source}")]
    Start {
        /// The program.
        program: PathBuf,
        /// Why not.
        #[source]
        source: std::io::Error,
    },
    /// It ended, or said nothing for too long, before it told its address.
    #[error("the studio told no address within {seconds} s; it said: {said}")]
    NoAddress {
        /// How long it was waited for.
        seconds: u64,
        /// All that it printed to both streams.
        said: String,
    },
}
