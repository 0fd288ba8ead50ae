//! What the command line asks for.

use crate::error::Error;

/// Printed by `--help`.
pub const HELP: &str = "\
Measures how fast plans, rankings and the studio are, beside a general solver.

    cargo run --release -p sunbu-benches [-- OPTIONS]

All figures go to target/bench.json, the main ones to the screen.

    --quick               a little of everything, to see that it works
    --without-reference   leave out the general solver, which needs Python with numpy and scipy:
                          python3 -m pip install numpy scipy
    --without-studio      leave out the studio, which is built and opened for it
    --write               write docs/performance.md as well; only after a whole run

Exit codes: 0 all targets met and all checks held, 1 not so, 2 the run could not be carried out.
";

/// The command line, read.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Arguments {
    /// Tell what there is and do nothing.
    pub help: bool,
    /// A little of everything.
    pub quick: bool,
    /// Without the general solver.
    pub without_reference: bool,
    /// Without the studio.
    pub without_studio: bool,
    /// Write the chapter.
    pub write: bool,
}

impl Arguments {
    /// Reads the words after the program's name.
    ///
    /// # Errors
    /// [`Error::Arguments`] for an unknown word, or for a chapter asked of half a run.
    pub fn read(words: impl IntoIterator<Item = String>) -> Result<Self, Error> {
        let mut out = Self::default();
        for word in words {
            let flag = match word.as_str() {
                "--help" | "-h" => &mut out.help,
                "--quick" => &mut out.quick,
                "--without-reference" => &mut out.without_reference,
                "--without-studio" => &mut out.without_studio,
                "--write" => &mut out.write,
                _ => return Err(Error::Arguments(format!("unknown: {word}"))),
            };
            *flag = true;
        }
        if out.write && (out.quick || out.without_reference || out.without_studio) {
            let why = "--write takes a whole run: leave out --quick and everything --without";
            return Err(Error::Arguments(why.into()));
        }
        Ok(out)
    }
}

#[cfg(test)]
mod tests {
    use super::{Arguments, HELP};

    fn read(words: &[&str]) -> Result<Arguments, String> {
        let words = words.iter().map(|&word| word.to_owned());
        Arguments::read(words).map_err(|why| why.to_string())
    }

    #[test]
    fn every_option_that_help_names_is_understood() {
        let named = HELP
            .split_whitespace()
            .filter(|word| word.starts_with("--"));
        let mut named: Vec<&str> = named
            .map(|word| word.trim_end_matches([',', '.']))
            .collect();
        named.retain(|word| !["--release", "--"].contains(word));
        assert!(named.len() >= 3, "{named:?}");
        for word in named {
            let read = read(&[word]);
            assert!(
                read.is_ok_and(|read| read != Arguments::default()),
                "{word}"
            );
        }
    }

    #[test]
    fn half_a_run_writes_no_chapter_and_unknown_words_are_refused() {
        assert!(read(&["--write"]).unwrap().write);
        for words in [&["--write", "--quick"][..], &["--fast"], &["quick"]] {
            assert!(read(words).is_err(), "{words:?}");
        }
    }
}
