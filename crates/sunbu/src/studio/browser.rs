//! Opening the system's browser.

use std::process::{Command, Stdio};

/// Asks the system to show `address` in its browser, and does not wait for it.
///
/// A machine without one is no error: the address is on the page above.
pub fn show(address: &str) {
    let mut command = if cfg!(windows) {
        let mut command = Command::new("cmd");
        // The empty text is the window's title, which `start` takes first.
        command.args(["/C", "start", ""]);
        command
    } else if cfg!(target_os = "macos") {
        Command::new("open")
    } else {
        Command::new("xdg-open")
    };
    let quiet = command
        .arg(address)
        .stdin(Stdio::null())
        .stdout(Stdio::null());
    if let Ok(mut child) = quiet.stderr(Stdio::null()).spawn() {
        // The opener ends by itself; waiting for it keeps the system's table of processes clean.
        std::thread::spawn(move || child.wait());
    }
}
