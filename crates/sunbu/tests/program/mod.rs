//! The real program, run as its users run it.
#![allow(dead_code)] // each test file uses its own part

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// What a run left behind.
#[derive(Debug)]
pub struct Ran {
    pub code: Option<i32>,
    pub out: String,
    pub err: String,
}

/// Runs the program in English with these arguments.
pub fn sunbu<S: AsRef<std::ffi::OsStr>>(arguments: &[S]) -> Ran {
    run(arguments, b"")
}

/// Runs the program in English with these arguments and this on its standard input.
pub fn run<S: AsRef<std::ffi::OsStr>>(arguments: &[S], input: &[u8]) -> Ran {
    let mut child = command()
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    let mut stdin = child.stdin.take().expect("a pipe");
    // A program that does not read its input may have ended before all of it is written.
    let _ = stdin.write_all(input);
    drop(stdin);
    let output = child.wait_with_output().expect("the program ends");
    Ran {
        code: output.status.code(),
        out: String::from_utf8(output.stdout).expect("the program writes UTF-8"),
        err: String::from_utf8(output.stderr).expect("the program writes UTF-8"),
    }
}

/// The program with an environment that chooses English.
pub fn command() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_sunbu"));
    command.env("LC_ALL", "C.UTF-8");
    command
}

/// An example of the repository.
pub fn example(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(name)
}

/// A file in a folder of its own, removed with the returned guard.
pub fn file(bytes: &[u8]) -> (tempfile::TempDir, String) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("case.toml");
    std::fs::write(&path, bytes).expect("a file");
    (folder, path.to_str().expect("UTF-8").to_owned())
}
