//! What is wrong with the input of a command: an entry of a file, or the file or argument itself.

use sunbu_core::photo::PictureError;
use sunbu_core::problem::Problem;
use sunbu_words::{Arg, Words};

/// How many characters of the typed text a sentence shows, chosen well above any name and any line
/// that a person writes.
const SHOWN_CHARS: usize = 200;

/// One thing wrong with the input.
#[derive(Debug, Clone, PartialEq)]
pub enum Trouble {
    /// An entry of a case.
    Entry(Box<Problem>),
    /// An entry of one of several files.
    EntryOf {
        /// The file and the entry's place in it.
        place: String,
        /// The file.
        file: String,
        /// What is wrong.
        problem: Box<Problem>,
    },
    /// A file that is no photo.
    Picture {
        /// The file.
        file: String,
        /// Why it is none.
        why: PictureError,
    },
    /// Something around it: a file that is not there, a name that nothing has.
    Around {
        /// The file or the argument.
        place: String,
        /// What stood there.
        typed: String,
        /// The message for it, in `cli.ftl`.
        code: &'static str,
        /// What the message fills in besides `$typed`.
        args: Vec<(&'static str, Filled)>,
    },
}

/// What a message fills in.
#[derive(Debug, Clone, PartialEq)]
pub enum Filled {
    /// A text.
    Text(String),
    /// How many of something, which also chooses singular or plural.
    Count(usize),
}

impl Trouble {
    /// Something wrong at `place` (a file or an argument), where `typed` stood.
    pub fn at(place: impl Into<String>, typed: impl Into<String>, code: &'static str) -> Trouble {
        Trouble::Around {
            place: place.into(),
            typed: typed.into(),
            code,
            args: Vec::new(),
        }
    }

    /// The same with one more thing for its message to fill in.
    #[must_use]
    pub fn with(self, name: &'static str, value: impl Into<String>) -> Trouble {
        self.filling(name, Filled::Text(value.into()))
    }

    /// The same with how many there are of something.
    #[must_use]
    pub fn counting(self, name: &'static str, count: usize) -> Trouble {
        self.filling(name, Filled::Count(count))
    }

    fn filling(mut self, name: &'static str, filled: Filled) -> Trouble {
        if let Trouble::Around { args, .. } = &mut self {
            args.push((name, filled));
        }
        self
    }

    /// The path of the field, the file, or the argument.
    pub fn place(&self) -> &str {
        match self {
            Trouble::Entry(problem) => &problem.place,
            Trouble::EntryOf { place, .. } | Trouble::Around { place, .. } => place,
            Trouble::Picture { file, .. } => file,
        }
    }

    /// What stood there, as it was typed.
    pub fn typed(&self) -> &str {
        match self {
            Trouble::Entry(problem) | Trouble::EntryOf { problem, .. } => &problem.typed,
            Trouble::Picture { .. } => "",
            Trouble::Around { typed, .. } => typed,
        }
    }

    /// The stable name of the kind of problem.
    pub fn code(&self) -> String {
        match self {
            Trouble::Entry(problem) | Trouble::EntryOf { problem, .. } => problem.code(),
            Trouble::Picture { why, .. } => format!("picture-{}", why.code()),
            Trouble::Around { code, .. } => (*code).to_owned(),
        }
    }

    /// The problem in one line, its place first.
    pub fn said(&self, words: &Words) -> String {
        match self {
            Trouble::Entry(problem) => words.problem(problem),
            Trouble::EntryOf { file, problem, .. } => {
                let sentence = words.problem(problem);
                at(words, file, &sentence)
            }
            Trouble::Picture { file, why } => at(words, file, &words.picture_error(why)),
            Trouble::Around {
                place,
                typed,
                code,
                args,
            } => {
                let mut typed = typed.replace(char::is_control, "\u{fffd}");
                if let Some((end, _)) = typed.char_indices().nth(SHOWN_CHARS) {
                    typed.truncate(end);
                    typed.push('…');
                }
                let mut all = vec![("typed", (&typed).into())];
                // A reason from elsewhere may come in several lines; a problem has one.
                let args: Vec<(&str, Filled)> = args
                    .iter()
                    .map(|(name, filled)| (*name, filled.on_one_line()))
                    .collect();
                all.extend(args.iter().map(|(name, filled)| (*name, filled.into())));
                let sentence = words.with(code, &all);
                at(words, place, &sentence)
            }
        }
    }
}

/// A sentence with its place before it.
fn at(words: &Words, place: &str, sentence: &str) -> String {
    let all = [("place", place.into()), ("sentence", sentence.into())];
    words.with("problem-at", &all)
}

impl Filled {
    fn on_one_line(&self) -> Filled {
        match self {
            Filled::Text(text) => {
                Filled::Text(text.split_whitespace().collect::<Vec<_>>().join(" "))
            }
            Filled::Count(count) => Filled::Count(*count),
        }
    }
}

impl<'a> From<&'a Filled> for Arg<'a> {
    fn from(filled: &'a Filled) -> Self {
        match filled {
            Filled::Text(text) => Arg::Text(text),
            Filled::Count(count) => Arg::Count(*count),
        }
    }
}

impl From<Problem> for Trouble {
    fn from(problem: Problem) -> Trouble {
        Trouble::Entry(Box::new(problem))
    }
}

/// Every problem as trouble.
pub fn troubles(problems: Vec<Problem>) -> Vec<Trouble> {
    problems.into_iter().map(Trouble::from).collect()
}

/// Every problem of one of several files as trouble.
pub fn troubles_of(file: &str, problems: Vec<Problem>) -> Vec<Trouble> {
    let of = |problem: Problem| match problem.place.as_str() {
        // The core calls the file “file”; the one who typed its name knows it by that.
        "file" => Trouble::from(Problem {
            place: file.to_owned(),
            ..problem
        }),
        place => Trouble::EntryOf {
            place: format!("{file}: {place}"),
            file: file.to_owned(),
            problem: Box::new(problem),
        },
    };
    problems.into_iter().map(of).collect()
}
