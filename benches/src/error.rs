//! Why a run of the benchmarks could not be carried out.

use std::path::PathBuf;

use thiserror::Error;

/// Why a run ended without its figures.
#[derive(Debug, Error)]
pub enum Error {
    /// The command line says something unknown.
    #[error("{0}\nRun with --help to see what there is.")]
    Arguments(String),
    /// The demo studio does not read.
    #[error("the demo studio cannot be read: {0}")]
    Demo(String),
    /// A file cannot be read or written.
    #[error("{}: {why}", path.display())]
    File {
        /// The file.
        path: PathBuf,
        /// What the system says.
        why: std::io::Error,
    },
    /// The photo that is timed was not read.
    #[error("the photo that is timed: {0}")]
    Photo(String),
    /// The reference solver did not run.
    #[error(
        "the reference solver did not run: {0}\n\
         It needs Python 3 with numpy and scipy: python3 -m pip install numpy scipy\n\
         To measure without it: --without-reference"
    )]
    Reference(String),
    /// The studio did not build, start or answer.
    #[error("the studio: {0}")]
    Studio(String),
    /// The report's text asks for a figure that was not measured.
    #[error("the chapter's template asks for {{{0}}}, which this run has not measured")]
    Template(String),
}

impl Error {
    /// For `map_err`: the failure of one file.
    pub fn file(path: impl Into<PathBuf>) -> impl FnOnce(std::io::Error) -> Self {
        let path = path.into();
        |why| Self::File { path, why }
    }
}
