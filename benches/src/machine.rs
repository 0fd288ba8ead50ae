//! What the run happened on, in general words, and when.

use std::process::Command;

use serde::Serialize;

/// The machine and the day.
#[derive(Debug, Clone, Serialize)]
pub struct Machine {
    /// Threads that it runs at once.
    pub cores: usize,
    /// Its memory in whole GiB; none where the system does not tell.
    pub memory_gib: Option<u64>,
    /// The system, such as `linux x86_64`.
    pub system: String,
    /// Version of the compiler; none where it is not to be found any more.
    pub rustc: Option<String>,
    /// The day, as ISO 8601.
    pub date: String,
}

impl Machine {
    /// This one, now.
    pub fn here() -> Self {
        Self {
            cores: std::thread::available_parallelism().map_or(1, usize::from),
            memory_gib: std::fs::read_to_string("/proc/meminfo")
                .ok()
                .and_then(|text| memory_gib(&text)),
            system: format!("{} {}", std::env::consts::OS, std::env::consts::ARCH),
            rustc: rustc(),
            date: jiff::Timestamp::now()
                .to_string()
                .chars()
                .take(10)
                .collect(),
        }
    }

    /// One line for people.
    pub fn words(&self) -> String {
        let memory = self
            .memory_gib
            .map_or_else(|| "memory unknown".into(), |gib| format!("{gib} GiB"));
        format!("{} cores, {memory}, {}", self.cores, self.system)
    }
}

/// Memory in whole GiB from the text of `/proc/meminfo`, which counts in units of 1,024 bytes.
fn memory_gib(text: &str) -> Option<u64> {
    let line = text
        .lines()
        .find_map(|line| line.strip_prefix("MemTotal:"))?;
    let units: u64 = line.trim().strip_suffix("kB")?.trim().parse().ok()?;
    Some((units + (1 << 19)) >> 20)
}

fn rustc() -> Option<String> {
    let output = Command::new("rustc").arg("--version").output().ok()?;
    let text = String::from_utf8(output.stdout).ok()?;
    Some(text.split_whitespace().nth(1)?.to_owned())
}

#[cfg(test)]
mod tests {
    use super::{Machine, memory_gib};

    #[test]
    fn memory_is_rounded_to_whole_gib() {
        let text = "Buffers: 1 kB\nMemTotal:       24576000 kB\nMemFree: 3 kB\n";
        assert_eq!(memory_gib(text), Some(23)); // 23.4
        assert_eq!(memory_gib("MemTotal: many kB"), None);
    }

    #[test]
    fn the_day_is_a_day() {
        let date = Machine::here().date;
        let digits = date.chars().filter(char::is_ascii_digit).count();
        assert_eq!((date.len(), digits), (10, 8), "{date}");
    }
}
