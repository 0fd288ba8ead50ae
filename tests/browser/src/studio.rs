//! The program under test, as a process of its own on a free port with a store of its own.

use std::io::{BufRead, BufReader, Read};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::{self, Receiver, RecvTimeoutError, Sender};
use std::thread;
use std::time::{Duration, Instant};

use tempfile::TempDir;

use crate::error::StudioError;

/// The line that tells the address begins with this, followed by the address alone.
const ANNOUNCEMENT: &str = "Sunbu is open at ";

/// How long to wait for it. An unoptimised build on a busy two-core machine is far slower than
/// what a dresser has; how fast the studio starts is measured elsewhere.
const LIMIT: Duration = Duration::from_secs(60);

/// A studio that is open; closed when dropped.
pub struct Studio {
    child: Child,
    origin: String,
    /// Its home folder, where whatever it stores by default is put; removed with it.
    home: TempDir,
}

impl Studio {
    /// Opens the demo studio with the given program, `env!("CARGO_BIN_EXE_sunbu")` in its tests.
    ///
    /// # Errors
    /// Those of [`Studio::run`].
    pub fn demo(program: impl AsRef<Path>) -> Result<Self, StudioError> {
        Self::run(program, &["demo", "--no-browser", "--port", "0"])
    }

    /// Runs the program with these arguments and waits until it tells its address. It gets an
    /// empty home folder and no terminal.
    ///
    /// # Errors
    /// [`StudioError::Start`] when the program cannot be run, [`StudioError::NoAddress`] when it
    /// ends or stays silent instead of telling an address.
    pub fn run(program: impl AsRef<Path>, arguments: &[&str]) -> Result<Self, StudioError> {
        Self::run_within(program.as_ref(), arguments, LIMIT)
    }

    fn run_within(
        program: &Path,
        arguments: &[&str],
        limit: Duration,
    ) -> Result<Self, StudioError> {
        let start = |source| StudioError::Start {
            program: program.to_path_buf(),
            source,
        };
        let home = tempfile::tempdir().map_err(start)?;
        let mut child = Command::new(program)
            .args(arguments)
            .current_dir(home.path())
            .env("HOME", home.path())
            .env_remove("XDG_DATA_HOME")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .map_err(start)?;
        let (lines, heard) = mpsc::channel();
        if let Some(out) = child.stdout.take() {
            listen(out, lines.clone());
        }
        if let Some(err) = child.stderr.take() {
            listen(err, lines);
        }
        let mut studio = Self {
            child,
            origin: String::new(),
            home,
        };
        studio.origin = address(&heard, limit).map_err(|said| StudioError::NoAddress {
            seconds: limit.as_secs(),
            said,
        })?;
        Ok(studio)
    }

    /// Its address without a slash at the end, such as `http://127.0.0.1:40123`.
    pub fn origin(&self) -> &str {
        &self.origin
    }

    /// The whole address of a path that begins with a slash.
    pub fn url(&self, path: &str) -> String {
        format!("{}{path}", self.origin)
    }

    /// Its home folder.
    pub fn home(&self) -> &Path {
        self.home.path()
    }

    /// The number of its process, for tests that kill it.
    pub fn id(&self) -> u32 {
        self.child.id()
    }
}

impl Drop for Studio {
    fn drop(&mut self) {
        // Nothing is left to do if it has ended already.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Passes on each line, and goes on reading when nobody listens: a full pipe would stop the studio.
fn listen(stream: impl Read + Send + 'static, lines: Sender<String>) {
    thread::spawn(move || {
        for line in BufReader::new(stream).lines().map_while(Result::ok) {
            let _ = lines.send(line);
        }
    });
}

/// The announced address, or else all that was said.
fn address(heard: &Receiver<String>, limit: Duration) -> Result<String, String> {
    let start = Instant::now();
    let mut said = Vec::new();
    loop {
        match heard.recv_timeout(limit.saturating_sub(start.elapsed())) {
            Ok(line) => match line.strip_prefix(ANNOUNCEMENT) {
                Some(origin) => return Ok(origin.trim().trim_end_matches('/').to_owned()),
                None => said.push(line),
            },
            Err(RecvTimeoutError::Timeout | RecvTimeoutError::Disconnected) => {
                return Err(said.join("\n"));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;
    use std::time::{Duration, Instant};

    use super::Studio;
    use crate::error::StudioError;

    fn shell(script: &str, limit: Duration) -> Result<Studio, StudioError> {
        Studio::run_within(Path::new("/bin/sh"), &["-c", script], limit)
    }

    #[test]
    fn the_address_is_read_among_other_lines_and_a_home_folder_is_given() {
        let script = "echo warming up; echo noise >&2; echo \"$HOME\" > here; \
                      echo 'Sunbu is open at http://127.0.0.1:40123/'; exec sleep 60";
        let studio = shell(script, Duration::from_secs(20)).unwrap();
        assert_eq!(studio.url("/people"), "http://127.0.0.1:40123/people");
        let home = std::fs::read_to_string(studio.home().join("here")).unwrap();
        assert_eq!(Path::new(home.trim()), studio.home());
    }

    #[test]
    fn a_studio_that_ends_at_once_is_quoted_without_waiting() {
        let start = Instant::now();
        let error = shell("echo the port is taken >&2", Duration::from_secs(60))
            .err()
            .unwrap();
        assert!(error.to_string().contains("the port is taken"), "{error}");
        assert!(
            start.elapsed() < Duration::from_secs(30),
            "waited {:?}",
            start.elapsed()
        );
    }

    #[test]
    fn a_silent_studio_is_given_up_and_ended() {
        let error = shell("echo hello; exec sleep 60", Duration::from_secs(1))
            .err()
            .unwrap();
        assert!(
            error.to_string().contains("within 1 s; it said: hello"),
            "{error}"
        );
    }
}
