//! What a command ends with: text for stdout or stderr, and the exit code.

use std::io::{ErrorKind, Write};
use std::process::ExitCode;

use sunbu_words::Words;

use crate::report::problems::Problems;
use crate::trouble::Trouble;

/// How a command ended.
#[derive(Debug)]
pub enum Answer {
    /// Done: exit code 0.
    Done(String),
    /// The answer is that it cannot be met, reasons in the text: exit code 1.
    CannotBeMet(String),
    /// The input is bad, everything wrong with it in the texts: exit code 2.
    BadInput {
        /// For stdout: the problems as a JSON document, or nothing.
        document: String,
        /// For stderr: the problems in words.
        complaint: String,
    },
}

impl Answer {
    /// Bad input, every problem of it; a JSON document too where one was asked for.
    pub fn bad_input(words: &Words, troubles: &[Trouble], json: bool) -> Answer {
        let document = if json {
            Problems::of(words, troubles).text()
        } else {
            String::new()
        };
        let complaint = troubles
            .iter()
            .map(|trouble| format!("{}\n", trouble.said(words)))
            .collect();
        Answer::BadInput {
            document,
            complaint,
        }
    }
}

/// Prints an answer and tells its exit code.
///
/// A reader that stops reading (`| head`) is no error; a full disk is one.
pub fn give(answer: Answer) -> ExitCode {
    let (out, err, code) = match answer {
        Answer::Done(text) => (text, String::new(), 0),
        Answer::CannotBeMet(text) => (text, String::new(), 1),
        Answer::BadInput {
            document,
            complaint,
        } => (document, complaint, 2),
    };
    let mut stdout = std::io::stdout().lock();
    let written = stdout
        .write_all(out.as_bytes())
        .and_then(|()| stdout.flush());
    let mut stderr = std::io::stderr().lock();
    let complained = stderr.write_all(err.as_bytes());
    match written.and(complained) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            // Nothing is left to do where even this cannot be written.
            let _ = writeln!(stderr, "{error}");
            ExitCode::from(2)
        }
        _ => ExitCode::from(code),
    }
}
