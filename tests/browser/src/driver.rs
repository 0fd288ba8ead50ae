//! The browser's driver as a child process: started on a free port, ended with all its browsers.

use std::fs::{self, File};
use std::io::{Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpStream};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::thread;
use std::time::Duration;

use tempfile::TempDir;

use crate::error::BrowserError;
use crate::programs;

/// A running driver. Dropping it ends the driver and each browser it started.
pub struct Driver {
    child: Child,
    port: u16,
    /// The driver's log and the browser's profile; removed with the driver.
    folder: TempDir,
}

impl Driver {
    /// Starts a driver and waits until it listens.
    ///
    /// # Errors
    /// [`BrowserError::Missing`] without a driver, [`BrowserError::DriverSilent`] when it does not
    /// come up within 20 s.
    pub fn start() -> Result<Self, BrowserError> {
        let program = programs::chromedriver()?;
        let folder = tempfile::tempdir().map_err(|source| file(std::env::temp_dir(), source))?;
        let log = folder.path().join("driver.log");
        let out = File::create(&log).map_err(|source| file(log.clone(), source))?;
        let child = Command::new(&program)
            .arg("--port=0") // the driver takes a free port and prints which
            .stdin(Stdio::null())
            .stdout(out)
            .stderr(Stdio::null())
            .spawn()
            .map_err(|source| file(program, source))?;
        let mut driver = Self {
            child,
            port: 0,
            folder,
        };
        for _ in 0..400 {
            let said = fs::read_to_string(&log).unwrap_or_default();
            if let Some(port) = port_in(&said) {
                driver.port = port;
                return Ok(driver);
            }
            thread::sleep(Duration::from_millis(50));
        }
        Err(BrowserError::DriverSilent {
            log: fs::read_to_string(&log).unwrap_or_default(),
        })
    }

    /// Where WebDriver commands go.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// An empty folder of its own for the browser's profile.
    pub fn profile(&self) -> PathBuf {
        self.folder.path().join("profile")
    }

    /// Asks the driver to end its browsers and itself; whether it answered.
    fn ask_to_end(&self) -> bool {
        let address = SocketAddr::from((Ipv4Addr::LOCALHOST, self.port));
        let limit = Duration::from_secs(5);
        let Ok(mut stream) = TcpStream::connect_timeout(&address, limit) else {
            return false;
        };
        let request = "GET /shutdown HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n";
        let mut answer = String::new();
        stream.set_read_timeout(Some(limit)).is_ok()
            && stream.write_all(request.as_bytes()).is_ok()
            && stream.read_to_string(&mut answer).is_ok()
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        if self.port != 0 && self.ask_to_end() {
            for _ in 0..100 {
                if let Ok(Some(_)) = self.child.try_wait() {
                    return;
                }
                thread::sleep(Duration::from_millis(50));
            }
        }
        // It did not end by itself. There is nothing left to do if this fails too.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// The port in the driver's "started successfully on port N." line.
fn port_in(said: &str) -> Option<u16> {
    let (_, rest) = said.split_once("started successfully on port ")?;
    rest.split_once('.')?.0.parse().ok()
}

fn file(path: PathBuf, source: std::io::Error) -> BrowserError {
    BrowserError::File { path, source }
}

#[cfg(test)]
mod tests {
    use super::port_in;

    #[test]
    fn the_port_is_the_one_that_was_taken_not_the_one_that_was_asked_for() {
        let said = "Starting ChromeDriver 1.2.3 on port 0\n\
                    ChromeDriver was started successfully on port 42593.\n";
        assert_eq!(port_in(said), Some(42593));
    }

    #[test]
    fn a_line_that_is_still_being_written_holds_no_port_yet() {
        assert_eq!(
            port_in("ChromeDriver was started successfully on port 425"),
            None
        );
    }
}
