//! The program under test: built as it is shipped, opened on a demo studio of its own, asked over
//! HTTP.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};

use tempfile::TempDir;
use ureq::Agent;
use ureq::http::Response;
use ureq::{Body, http};

use crate::error::Error;

/// What it says when it listens, followed by the address alone.
const ANNOUNCEMENT: &str = "Sunbu is open at ";

/// The program, and a home folder with a demo studio in it.
pub struct Program {
    path: PathBuf,
    home: TempDir,
}

impl Program {
    /// Builds it, so that what is timed is what the source says, and lets it lay out its demo
    /// studio.
    ///
    /// # Errors
    /// [`Error::Studio`] when it does not build or open, [`Error::File`] when there is no place for
    /// its store.
    pub fn build(root: &Path) -> Result<Self, Error> {
        let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
        let built = Command::new(cargo)
            .args([
                "build",
                "--quiet",
                "--release",
                "--package",
                "sunbu",
                "--target-dir",
            ])
            .arg(root.join("target"))
            .current_dir(root)
            .status()
            .map_err(|why| Error::Studio(format!("cargo: {why}")))?;
        if !built.success() {
            return Err(Error::Studio("it does not build".into()));
        }
        let name = format!("sunbu{}", std::env::consts::EXE_SUFFIX);
        let program = Self {
            path: root.join("target/release").join(name),
            home: tempfile::tempdir().map_err(Error::file(std::env::temp_dir()))?,
        };
        program.open().map(drop)?;
        Ok(program)
    }

    /// Opens the demo studio, which is there already but for the first time.
    ///
    /// # Errors
    /// [`Error::Studio`] when it does not tell its address.
    pub fn open(&self) -> Result<Studio, Error> {
        let mut child = Command::new(&self.path)
            .args(["demo", "--no-browser", "--port", "0"])
            .current_dir(self.home.path())
            .env("HOME", self.home.path())
            .env_remove("XDG_DATA_HOME")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .map_err(|why| Error::Studio(why.to_string()))?;
        let out = child.stdout.take().map(BufReader::new);
        let mut studio = Studio {
            child,
            out,
            origin: String::new(),
            agent: Agent::config_builder()
                .max_redirects(0)
                .http_status_as_error(false)
                .build()
                .into(),
        };
        let lines = studio.out.iter_mut().flat_map(BufRead::lines);
        let announced = lines.map_while(Result::ok).find_map(|line| address(&line));
        let silent = || Error::Studio("it ended without telling its address".into());
        studio.origin = announced.ok_or_else(silent)?;
        Ok(studio)
    }
}

/// A studio that is open; closed when dropped.
pub struct Studio {
    child: Child,
    /// What it says. Nobody reads on, but closing this end would break what it says next.
    out: Option<BufReader<ChildStdout>>,
    origin: String,
    agent: Agent,
}

impl Studio {
    /// The text at a path, in a language.
    ///
    /// # Errors
    /// [`Error::Studio`] when there is no answer, or another than that all is well.
    pub fn get(&self, path: &str, language: &str) -> Result<String, Error> {
        let mut answer = self.answer(path, language)?;
        if answer.status() != http::StatusCode::OK {
            return Err(Error::Studio(format!("{path}: {}", answer.status())));
        }
        let text = answer.body_mut().read_to_string();
        text.map_err(|why| Error::Studio(format!("{path}: {why}")))
    }

    /// Where a path leads to.
    ///
    /// # Errors
    /// [`Error::Studio`] when it leads nowhere else.
    pub fn sent_on(&self, path: &str) -> Result<String, Error> {
        let answer = self.answer(path, "en")?;
        let to = answer.headers().get(http::header::LOCATION);
        let to = to.and_then(|to| to.to_str().ok()).map(str::to_owned);
        to.ok_or_else(|| Error::Studio(format!("{path} leads nowhere: {}", answer.status())))
    }

    /// The bytes at a path.
    ///
    /// # Errors
    /// [`Error::Studio`] when there is no answer, or another than that all is well.
    pub fn bytes(&self, path: &str) -> Result<Vec<u8>, Error> {
        let mut answer = self.answer(path, "en")?;
        let bytes = answer.body_mut().read_to_vec();
        well(path, answer.status(), http::StatusCode::OK)?;
        bytes.map_err(|why| Error::Studio(format!("{path}: {why}")))
    }

    /// Where a form that is sent leads to.
    ///
    /// # Errors
    /// [`Error::Studio`] when it leads nowhere.
    pub fn send(&self, path: &str, form: &[(&str, &str)]) -> Result<String, Error> {
        let request = self.agent.post(format!("{}{path}", self.origin));
        leads(path, request.send_form(form.iter().copied()))
    }

    /// Where a form of this kind leads to.
    ///
    /// # Errors
    /// [`Error::Studio`] when it leads nowhere.
    pub fn send_bytes(&self, path: &str, kind: &str, form: &[u8]) -> Result<String, Error> {
        let request = self.agent.post(format!("{}{path}", self.origin));
        leads(
            path,
            request.header(http::header::CONTENT_TYPE, kind).send(form),
        )
    }

    /// What is told to a form that is sent.
    ///
    /// # Errors
    /// [`Error::Studio`] when there is no answer, or another than that all is well.
    pub fn told(&self, path: &str, form: &[(&str, &str)]) -> Result<String, Error> {
        let request = self.agent.post(format!("{}{path}", self.origin));
        let answer = request.send_form(form.iter().copied());
        let mut answer = answer.map_err(|why| Error::Studio(format!("{path}: {why}")))?;
        well(path, answer.status(), http::StatusCode::OK)?;
        let text = answer.body_mut().read_to_string();
        text.map_err(|why| Error::Studio(format!("{path}: {why}")))
    }

    fn answer(&self, path: &str, language: &str) -> Result<Response<Body>, Error> {
        self.agent
            .get(format!("{}{path}", self.origin))
            .header(http::header::ACCEPT_LANGUAGE, language)
            .call()
            .map_err(|why| Error::Studio(format!("{path}: {why}")))
    }
}

/// That an answer's status is the one that was waited for.
fn well(path: &str, got: http::StatusCode, wanted: http::StatusCode) -> Result<(), Error> {
    if got == wanted {
        Ok(())
    } else {
        Err(Error::Studio(format!("{path}: {got}")))
    }
}

/// Where the answer to a form leads to.
fn leads(path: &str, answer: Result<Response<Body>, ureq::Error>) -> Result<String, Error> {
    let answer = answer.map_err(|why| Error::Studio(format!("{path}: {why}")))?;
    well(path, answer.status(), http::StatusCode::SEE_OTHER)?;
    let to = answer.headers().get(http::header::LOCATION);
    let to = to.and_then(|to| to.to_str().ok()).map(str::to_owned);
    to.ok_or_else(|| Error::Studio(format!("{path} leads nowhere")))
}

impl Drop for Studio {
    fn drop(&mut self) {
        // Nothing is left to do if it has ended already.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// The address in the line that announces it, without a slash at the end.
fn address(line: &str) -> Option<String> {
    let origin = line.strip_prefix(ANNOUNCEMENT)?;
    Some(origin.trim().trim_end_matches('/').to_owned())
}

#[cfg(test)]
mod tests {
    use super::address;

    #[test]
    fn the_address_is_read_off_the_announcement_alone() {
        let seen = address("Sunbu is open at http://127.0.0.1:40123/");
        assert_eq!(seen.as_deref(), Some("http://127.0.0.1:40123"));
        assert_eq!(address("Stop it with Ctrl-C."), None);
    }
}
