//! What a command works on: the case file as it lies on the disk, and what is asked about it.

use std::fs::File;
use std::io::{ErrorKind, Read};
use std::num::NonZero;
use std::path::Path;

use sunbu_core::body::Body;
use sunbu_core::case::{CaseFile, Fields, MAX_CASE_BYTES, Person, Piece, read_locks};
use sunbu_core::dressing::{Fitting, Hands, Locks, Occasion, Rules, Standard, StandardError};
use sunbu_core::garment::Garment;

use crate::trouble::{Trouble, troubles};

/// Reads a case file; `-` is the standard input.
///
/// # Errors
/// Every problem of the file and in it.
pub fn case(path: &Path) -> Result<CaseFile, Vec<Trouble>> {
    let bytes = bytes(path, MAX_CASE_BYTES).map_err(|trouble| vec![trouble])?;
    CaseFile::parse_bytes(&bytes).map_err(|problems| {
        let file = path.display().to_string();
        let named = |mut problem: sunbu_core::problem::Problem| {
            // The core calls the file “file”; the one who typed its name knows it by that.
            if problem.place == "file" {
                problem.place.clone_from(&file);
            }
            problem
        };
        troubles(problems.into_iter().map(named).collect())
    })
}

/// Reads a standard from a TOML file of its own.
///
/// # Errors
/// Every problem of the file and in it.
pub fn standard(path: &Path) -> Result<Standard, Vec<Trouble>> {
    let bytes = bytes(path, MAX_CASE_BYTES).map_err(|trouble| vec![trouble])?;
    let file = path.display().to_string();
    let form = |why: String| Trouble::at(&file, "", "trouble-standard").with("why", why);
    let text = std::str::from_utf8(&bytes).map_err(|error| vec![form(error.to_string())])?;
    Standard::parse(text).map_err(|error| match error {
        StandardError::Values(problems) => troubles(problems),
        StandardError::Form(why) => vec![match Slip::of(&why) {
            Some(Slip { at: Some(at), why }) => Trouble::at(&file, at.1, "trouble-standard-line")
                .with("line", at.0)
                .with("why", why),
            Some(Slip { at: None, why }) => form(why),
            None => form(why),
        }],
    })
}

/// Where a text is not of the form it should have, out of the block that the reader of TOML prints:
/// a heading with the line's number, the line itself behind a bar, carets below it, the reason.
#[derive(Debug, PartialEq)]
struct Slip<'a> {
    /// Number and text of the line; none where something is missing, which is on no line.
    at: Option<(&'a str, &'a str)>,
    /// The reason, in one line.
    why: String,
}

impl<'a> Slip<'a> {
    /// `None` when the text is no such block.
    fn of(block: &'a str) -> Option<Slip<'a>> {
        let mut lines = block.lines();
        let (_, place) = lines.next()?.split_once("at line ")?;
        let (number, _) = place.split_once(',')?;
        let shown = lines.find_map(|line| line.strip_prefix(number)?.strip_prefix(" | "))?;
        lines.next().filter(|carets| carets.contains('^'))?;
        let why = lines.map(str::trim).collect::<Vec<_>>().join(", ");
        let at = (!why.starts_with("missing field")).then_some((number, shown.trim()));
        Some(Slip { at, why })
    }
}

/// The bytes of a file, but no more than one over `most`; `-` is the standard input.
///
/// # Errors
/// Why it cannot be read.
pub fn bytes(path: &Path, most: usize) -> Result<Vec<u8>, Trouble> {
    let told = |error: std::io::Error| {
        let shown = path.display().to_string();
        let code = match error.kind() {
            ErrorKind::NotFound => "trouble-no-file",
            ErrorKind::PermissionDenied => "trouble-no-permission",
            ErrorKind::IsADirectory => "trouble-folder",
            _ => return Trouble::at(shown, "", "trouble-unread").with("why", error.to_string()),
        };
        Trouble::at(shown, "", code)
    };
    let mut read = Vec::new();
    let most = most as u64 + 1;
    if path.as_os_str() == "-" {
        std::io::stdin()
            .take(most)
            .read_to_end(&mut read)
            .map_err(told)?;
        return Ok(read);
    }
    if path.is_dir() {
        return Err(Trouble::at(
            path.display().to_string(),
            "",
            "trouble-folder",
        ));
    }
    File::open(path)
        .map_err(told)?
        .take(most)
        .read_to_end(&mut read)
        .map_err(told)?;
    Ok(read)
}

/// An occasion by its key.
///
/// # Errors
/// When there is none of this key.
pub fn occasion(key: &str) -> Result<Occasion, Trouble> {
    Occasion::from_key(key).ok_or_else(|| {
        let known: Vec<&str> = Occasion::ALL.iter().map(|o| o.key()).collect();
        Trouble::at("--occasion", key, "trouble-occasion").with("known", known.join(", "))
    })
}

/// Decisions set on the command line, each as `KEY=LENGTH`.
///
/// # Errors
/// Every one that is not of this form, has an unknown key, or no length within reach.
pub fn locks<'a>(set: impl Iterator<Item = &'a str>) -> Result<Locks, Vec<Trouble>> {
    let mut fields = Fields::new();
    let mut wrong = Vec::new();
    for text in set {
        match text.split_once('=') {
            Some((key, length)) if !length.trim().is_empty() => {
                fields.insert(key.trim().to_owned(), length.to_owned());
            }
            _ => wrong.push(Trouble::at("--set", text, "trouble-set")),
        }
    }
    match read_locks(&fields) {
        Ok(locks) if wrong.is_empty() => Ok(locks),
        Ok(_) => Err(wrong),
        Err(problems) => {
            let place = |key: &str| format!("--set {key}");
            wrong.extend(
                problems
                    .into_iter()
                    .map(|p| Trouble::from(p.renamed(place))),
            );
            Err(wrong)
        }
    }
}

/// The one garment of a case that is meant: the only one, or the one of this name or number.
///
/// # Errors
/// When there are several and none is named, or none or several have the name.
pub fn the_garment<'a>(case: &'a CaseFile, named: Option<&str>) -> Result<&'a Piece, Trouble> {
    let names = || {
        case.garments
            .iter()
            .map(|p| p.name.as_str())
            .collect::<Vec<_>>()
            .join(", ")
    };
    let Some(named) = named else {
        return match case.garments.as_slice() {
            [only] => Ok(only),
            _ => Err(Trouble::at("--garment", "", "trouble-which-garment").with("known", names())),
        };
    };
    let mut found = case.garments.iter().filter(|piece| piece.name == named);
    let by_number = || {
        let number: usize = named.parse().ok()?;
        case.garments.get(number.checked_sub(1)?)
    };
    match (found.next().or_else(by_number), found.next()) {
        (Some(piece), None) => Ok(piece),
        (Some(_), Some(_)) => Err(Trouble::at("--garment", named, "trouble-same-name")),
        (None, _) => {
            Err(Trouble::at("--garment", named, "trouble-no-garment").with("known", names()))
        }
    }
}

/// One person in one garment, completed, with the rules that hold for them.
#[derive(Debug)]
pub struct Subject {
    /// Who is dressed, as entered.
    pub person: Person,
    /// The completed body.
    pub body: Body,
    /// What is worn, as entered.
    pub piece: Piece,
    /// The completed garment.
    pub garment: Garment,
    /// Both together.
    pub fitting: Fitting,
    /// The wishes and the usual way, resolved.
    pub rules: Rules,
}

impl Subject {
    /// Completes a person and a garment that were checked when they were read.
    ///
    /// # Errors
    /// What a person or garment that was put together otherwise has against itself.
    pub fn new(
        person: &Person,
        piece: &Piece,
        standard: &Standard,
        occasion: Occasion,
    ) -> Result<Subject, Vec<Trouble>> {
        let (body, garment) = match (person.body(), piece.garment()) {
            (Ok(body), Ok(garment)) => (body, garment),
            (body, garment) => {
                let found = body.err().into_iter().chain(garment.err()).flatten();
                return Err(found.map(Trouble::from).collect());
            }
        };
        let fitting = Fitting::new(&body, &garment);
        let rules = standard.rules(occasion, &body, garment.cloth());
        let (person, piece) = (person.clone(), piece.clone());
        Ok(Subject {
            person,
            body,
            piece,
            garment,
            fitting,
            rules,
        })
    }
}

/// Whose hands lengths are given against: the dresser's, or those of the one who is dressed.
///
/// # Errors
/// What the dresser's measures have against themselves.
pub fn hands(dresser: Option<&Person>, dressed: &Body) -> Result<Hands, Vec<Trouble>> {
    match dresser {
        Some(dresser) => dresser
            .body()
            .map(|body| Hands::of(&body))
            .map_err(troubles),
        None => Ok(Hands::of(dressed)),
    }
}

/// How many things may be worked on side by side.
pub fn threads() -> usize {
    std::thread::available_parallelism().map_or(1, NonZero::get)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What is told of this text: line, text, and reason.
    fn told(text: &str) -> (String, String, String) {
        match Standard::parse(text) {
            Err(StandardError::Form(block)) => {
                let slip = Slip::of(&block).expect("the reader's block");
                let (line, shown) = slip.at.unwrap_or_default();
                (line.to_owned(), shown.to_owned(), slip.why)
            }
            other => panic!("{text}: {other:?}"),
        }
    }

    #[test]
    fn a_slip_in_a_standard_is_told_by_line_text_and_reason() {
        for (text, line, shown, why) in [
            (
                "name = \"x\"\n[targets.fold_front]\n  low = 4尺\n",
                "3",
                "low = 4尺",
                "string values must be quoted, expected literal string",
            ),
            (
                "name = \"x\"\nheight = 3\n",
                "2",
                "height = 3",
                "unknown field `height`, expected one of `name`, `targets`, `usual`, `occasions`",
            ),
            // A bar and a caret of its own do not mislead.
            (
                "name = \"a | ^ b\" d\n",
                "1",
                "name = \"a | ^ b\" d",
                "unexpected key or value, expected newline, `#`",
            ),
            // What is missing is on no line.
            ("name = \"x\"\n", "", "", "missing field `targets`"),
        ] {
            let want = (line.to_owned(), shown.to_owned(), why.to_owned());
            assert_eq!(told(text), want);
        }
    }
}
