//! What is wrong with an entry, and what is unusual about one, in words.

use sunbu_core::body::{BodyMeasure, Unlikely};
use sunbu_core::dressing::Decision;
use sunbu_core::garment::{Part, Rule, Warning};
use sunbu_core::measure::LengthError;
use sunbu_core::photo::Mark;
use sunbu_core::problem::{Fault, Problem};

use crate::numbers::plain;
use crate::{Arg, Words};

/// How many characters of the typed text a sentence shows; the field itself keeps it whole.
const SHOWN_CHARS: usize = 60;
/// How many characters of what the reader of a form said: all it ever says of itself, but not a
/// page that it quotes from the file. Its longest list names every quantity, in some 700.
const WHY_CHARS: usize = 1000;

impl Words {
    /// A problem with its place, for files: fields are called by the names they have there.
    pub fn problem(&self, problem: &Problem) -> String {
        let sentence = self.sentence(problem, str::to_owned);
        let line = problem.place.strip_prefix("line ");
        let place = match line {
            Some(line) => self.with("problem-line", &[("line", line.into())]),
            None => problem.place.clone(),
        };
        let args = [("place", (&place).into()), ("sentence", (&sentence).into())];
        self.with("problem-at", &args)
    }

    /// A problem with the name of its place before it, for pages where its field is not in sight.
    pub fn named_problem(&self, problem: &Problem) -> String {
        let (place, sentence) = (self.field(&problem.place), self.fault(problem));
        let args = [("place", (&place).into()), ("sentence", (&sentence).into())];
        self.with("problem-at", &args)
    }

    /// A problem as a sentence beside its field, for forms: other fields are called by name.
    pub fn fault(&self, problem: &Problem) -> String {
        self.sentence(problem, |path| self.field(path))
    }

    /// The name of a field by its path, such as `garment.ushirohaba` or `marks.floor.at.x`; the path
    /// where it has none.
    pub fn field(&self, path: &str) -> String {
        let mark = path.strip_prefix("marks.").unwrap_or_default();
        if let Some(mark) = mark.split('.').next().and_then(Mark::from_key) {
            return self.mark(mark);
        }
        let path_without_sd = path.strip_suffix(".sd").unwrap_or(path);
        let last = path_without_sd
            .rsplit('.')
            .next()
            .unwrap_or(path_without_sd);
        if let Some(measure) = BodyMeasure::from_key(last) {
            self.body_measure(measure)
        } else if let Some(part) = Part::from_key(last) {
            self.part(part)
        } else if let Some(decision) = Decision::from_key(last) {
            self.decision(decision)
        } else {
            path.to_owned()
        }
    }

    fn sentence(&self, problem: &Problem, name: impl Fn(&str) -> String) -> String {
        let typed = shown(&problem.typed);
        let typed = ("typed", Arg::from(&typed));
        let list = |id: &str| {
            let names: Vec<String> = problem.others().iter().map(|path| name(path)).collect();
            self.joined(id, &names)
        };
        match &problem.fault {
            Fault::Missing if measured(&problem.place) => self.get("problem-missing"),
            Fault::Missing => self.get("problem-missing-word"),
            Fault::MissingOneOf { .. } => self.with(
                "problem-missing-one-of",
                &[("others", (&list("list-or")).into())],
            ),
            Fault::Unreadable(why) => {
                let why = self.length_error(why);
                self.with("problem-unreadable", &[("why", (&why).into())])
            }
            Fault::WrongShape { expected } => {
                let expected = self.expected(expected);
                self.with(
                    "problem-wrong-shape",
                    &[typed, ("expected", (&expected).into())],
                )
            }
            Fault::OutOfRange { low_cm, high_cm } => {
                let (low, high) = (plain(*low_cm), plain(*high_cm));
                let args = [typed, ("low", (&low).into()), ("high", (&high).into())];
                self.with("problem-out-of-range", &args)
            }
            Fault::NumberOutOfRange { low, high, unit } => {
                let (low, high) = (plain(*low), plain(*high));
                let unit = if unit.is_empty() {
                    String::new()
                } else {
                    format!(" {unit}")
                };
                let args = [
                    typed,
                    ("low", (&low).into()),
                    ("high", (&high).into()),
                    ("unit", (&unit).into()),
                ];
                self.with("problem-number-out-of-range", &args)
            }
            Fault::Contradiction { args, other, .. } => {
                let sentence = self.with_cm(&problem.code(), args);
                if other.is_empty() {
                    return sentence;
                }
                let others = list("and-then");
                let args = [
                    ("sentence", (&sentence).into()),
                    ("others", (&others).into()),
                ];
                self.with("problem-together", &args)
            }
            Fault::UnknownField { .. } => self.with(
                "problem-unknown-field",
                &[("others", (&list("and-then")).into())],
            ),
            Fault::UnknownChoice { .. } => {
                let others = list("and-then");
                let others = ("others", Arg::from(&others));
                if problem.typed.trim().is_empty() {
                    self.with("problem-no-choice", &[others])
                } else {
                    self.with("problem-unknown-choice", &[typed, others])
                }
            }
            Fault::BadText { most_chars, lines } => {
                let id = if *lines {
                    "problem-bad-text"
                } else {
                    "problem-bad-line"
                };
                self.with(id, &[typed, ("most", (*most_chars).into())])
            }
            Fault::Form { why } => {
                let why = cut(why, WHY_CHARS);
                if problem.typed.is_empty() {
                    self.with("problem-form", &[("why", (&why).into())])
                } else {
                    self.slip(&problem.typed, &shown(&problem.typed), &why)
                }
            }
            Fault::NotText { seems } => {
                let seems = match *seems {
                    "UTF-16" => self.get("encoding-utf-16"),
                    "no text at all" => self.get("encoding-none"),
                    _ => self.get("encoding-other"),
                };
                self.with("problem-not-text", &[("seems", (&seems).into())])
            }
            Fault::TooMuch { most_bytes } => {
                let most = (most_bytes / (1024 * 1024)).max(1);
                self.with("problem-too-much", &[("most", most.into())])
            }
            Fault::TooManyProblems { told } => {
                self.with("problem-too-many", &[("told", (*told).into())])
            }
        }
    }

    /// What a field of the wrong shape takes. The core says it in English, and of few kinds.
    fn expected(&self, expected: &str) -> String {
        self.get(match expected {
            text if text.starts_with("a length") => "expected-length",
            text if text.starts_with("a text ") => "expected-text",
            text if text.starts_with("texts") => "expected-texts",
            text if text.starts_with("tables") => "expected-tables",
            text if text.starts_with("true") => "expected-truth",
            text if text.starts_with("a number") => "expected-number",
            text if text.starts_with("a width") => "expected-size",
            text if text.starts_with("a place such as [1510, 3830], or") => "expected-mark",
            text if text.starts_with("a place") => "expected-place",
            text if text.starts_with("four places") => "expected-sheet",
            text if text.starts_with("lines") => "expected-lines",
            text if text.starts_with("pairs") => "expected-pairs",
            text if text.starts_with("a tape") => "expected-tape",
            _ => "expected-table",
        })
    }

    /// Why a text is not a length.
    pub fn length_error(&self, error: &LengthError) -> String {
        let details: Vec<(&str, String)> = error
            .details()
            .into_iter()
            .map(|(name, detail)| match name {
                "unit" | "outer" | "first" | "second" => {
                    (name, self.get(&format!("length-unit-{detail}")))
                }
                _ => (name, shown(&detail)),
            })
            .collect();
        let args: Vec<(&str, Arg<'_>)> = details
            .iter()
            .map(|(name, detail)| (*name, detail.into()))
            .collect();
        self.with(&format!("length-error-{}", error.code()), &args)
    }

    /// What is unusual about a garment and will trouble its wearer.
    pub fn warning(&self, warning: &Warning) -> String {
        self.with_cm(&format!("warning-{}", warning.code), &warning.args)
    }

    /// The published proportion that gave a part which was not taped.
    pub fn rule(&self, rule: &Rule) -> String {
        self.get(&format!("rule-{}", rule.code))
    }

    /// A taped value that the others make unlikely.
    pub fn unlikely(&self, unlikely: &Unlikely) -> String {
        let what = self.body_measure(unlikely.measure);
        let value = self.cm(unlikely.value_cm);
        let expected = self.length(unlikely.expected_cm, unlikely.sd_cm);
        let args = [
            ("what", (&what).into()),
            ("value", (&value).into()),
            ("expected", (&expected).into()),
        ];
        self.with("unlikely", &args)
    }

    /// A message whose arguments are numbers of centimetres.
    fn with_cm(&self, id: &str, args: &[(&'static str, f64)]) -> String {
        let texts: Vec<(&str, String)> = args.iter().map(|&(name, cm)| (name, plain(cm))).collect();
        let args: Vec<(&str, Arg<'_>)> = texts
            .iter()
            .map(|(name, text)| (*name, text.into()))
            .collect();
        self.with(id, &args)
    }
}

/// Whether what belongs at this path is found with a tape.
fn measured(path: &str) -> bool {
    let path = path.strip_suffix(".value").unwrap_or(path);
    let last = path.rsplit('.').next().unwrap_or(path);
    BodyMeasure::from_key(last).is_some() || Part::from_key(last).is_some()
}

/// A text as a sentence quotes it: cut short, with a stand-in for every control character.
pub(crate) fn shown(text: &str) -> String {
    cut(text, SHOWN_CHARS)
}

fn cut(text: &str, most: usize) -> String {
    let printable = |c: char| {
        if c.is_control() {
            char::REPLACEMENT_CHARACTER
        } else {
            c
        }
    };
    let mut chars = text.trim().chars().map(printable);
    let mut start: String = chars.by_ref().take(most).collect();
    if chars.next().is_some() {
        start.push('…');
    }
    start
}
