//! A studio that is open, asked as a browser asks.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, ChildStdout, Command, ExitStatus, Stdio};
use std::time::{Duration, Instant};

/// What the line with the address begins with.
const OPEN_AT: &str = "Sunbu is open at http://";

/// A studio in a process of its own.
pub struct Studio {
    child: Child,
    out: BufReader<ChildStdout>,
    /// Host and port.
    pub host: String,
    /// From the start of the process to the line with the address.
    pub took: Duration,
}

/// The program with data, temporary files and home in this folder.
pub fn at_home(home: &Path) -> Command {
    let mut command = crate::program::command();
    command
        .env("HOME", home)
        .env_remove("XDG_DATA_HOME")
        .env("TMPDIR", home)
        .current_dir(home);
    command
}

impl Studio {
    /// Starts the program and waits for its address.
    pub fn start(home: &Path, arguments: &[&str]) -> Studio {
        Studio::start_as(at_home(home), arguments)
    }

    /// Starts the program so that a terminal that closes does not end it.
    pub fn start_to_outlive(home: &Path, arguments: &[&str]) -> Studio {
        let plain = at_home(home);
        let mut command = Command::new("nohup");
        command.arg(plain.get_program()).current_dir(home);
        for (name, value) in plain.get_envs() {
            match value {
                Some(value) => command.env(name, value),
                None => command.env_remove(name),
            };
        }
        Studio::start_as(command, arguments)
    }

    fn start_as(mut command: Command, arguments: &[&str]) -> Studio {
        let began = Instant::now();
        let mut child = command
            .args(arguments)
            .arg("--no-browser")
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the program starts");
        let mut out = BufReader::new(child.stdout.take().expect("a pipe"));
        let mut line = String::new();
        out.read_line(&mut line).expect("UTF-8");
        let took = began.elapsed();
        let Some(host) = line.strip_prefix(OPEN_AT) else {
            let mut complaint = String::new();
            let mut err = child.stderr.take().expect("a pipe");
            err.read_to_string(&mut complaint).expect("UTF-8");
            panic!("{line}{complaint}");
        };
        let host = host.trim_end().trim_end_matches('/').to_owned();
        Studio {
            child,
            out,
            host,
            took,
        }
    }

    /// The whole answer to a request for a page: head and body.
    pub fn page(&self, path: &str, language: &str) -> String {
        let mut stream = TcpStream::connect(&self.host).expect("the studio listens");
        let host = &self.host;
        write!(
            stream,
            "GET {path} HTTP/1.1\r\nHost: {host}\r\nAccept-Language: {language}\r\n\
             Connection: close\r\n\r\n"
        )
        .expect("the studio reads");
        let mut answer = String::new();
        stream.read_to_string(&mut answer).expect("a page is UTF-8");
        answer
    }

    /// Stops it; what it complained of while it was open.
    pub fn complaints(mut self) -> String {
        let mut err = self.child.stderr.take().expect("a pipe");
        let (status, _) = self.stop("-INT");
        assert!(status.success());
        let mut complaints = String::new();
        err.read_to_string(&mut complaints).expect("UTF-8");
        complaints
    }

    /// Sends it this signal.
    pub fn signal(&self, signal: &str) {
        let id = self.child.id().to_string();
        let sent = Command::new("kill")
            .args([signal, &id])
            .status()
            .expect("kill runs");
        assert!(sent.success(), "the studio had ended before");
    }

    /// Sends it this signal and waits until it ends; what else it had printed.
    pub fn stop(mut self, signal: &str) -> (ExitStatus, String) {
        self.signal(signal);
        let began = Instant::now();
        loop {
            if let Some(status) = self.child.try_wait().expect("a child") {
                let mut rest = String::new();
                self.out.read_to_string(&mut rest).expect("UTF-8");
                return (status, rest);
            }
            // Answers under way get three seconds; chosen well above that.
            assert!(
                began.elapsed() < Duration::from_secs(20),
                "the studio does not stop"
            );
            std::thread::sleep(Duration::from_millis(20));
        }
    }
}

impl Drop for Studio {
    fn drop(&mut self) {
        // It may have ended already, which is what is wanted.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
