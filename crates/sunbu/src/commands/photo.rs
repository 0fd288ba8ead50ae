//! Photos as they lie on the disk, and whom they show: one of a case, or a stranger.

use std::path::Path;

use clap::ArgMatches;
use sunbu_core::body::{Body, Sex};
use sunbu_core::case::{Fields, Stranger as Told};
use sunbu_core::check::{Stranger, stranger};
use sunbu_core::dressing::{self, Dressing, Fitting, Locks, Occasion, Rules, Standard};
use sunbu_core::photo::{self, MAX_MARKS_BYTES, MarksFile};
use sunbu_image::{MOST_BYTES, Picture};

use super::{AskedOne, asked_one, path, text};
use crate::input;
use crate::trouble::{Trouble, troubles, troubles_of};

/// Reads a photo.
///
/// # Errors
/// Why the file cannot be read, or is none.
pub fn picture(file: &Path) -> Result<Picture, Trouble> {
    let bytes = input::bytes(file, MOST_BYTES)?;
    Picture::read(&bytes).map_err(|why| Trouble::Picture {
        file: file.display().to_string(),
        why,
    })
}

/// Reads a marks file.
///
/// # Errors
/// Every problem of the file and in it.
pub fn marks(file: &Path) -> Result<MarksFile, Vec<Trouble>> {
    let bytes = input::bytes(file, MAX_MARKS_BYTES).map_err(|trouble| vec![trouble])?;
    MarksFile::parse_bytes(&bytes).map_err(|found| troubles_of(&file.display().to_string(), found))
}

/// Whom photos show, and how she was to be dressed.
pub struct Shown {
    /// Her name and that of the garment; none for a stranger.
    pub names: Option<(String, String)>,
    /// Her body.
    pub body: Body,
    /// She in her garment.
    pub fitting: Fitting,
    /// The wishes and the usual way.
    pub rules: Rules,
    /// The dressing that was meant.
    pub planned: Dressing,
    /// What for.
    pub occasion: Occasion,
    /// The standard's name.
    pub standard: String,
}

impl Shown {
    /// Whom the command line says.
    ///
    /// # Errors
    /// Everything wrong with the case, or with what was told of a stranger.
    pub fn of(given: &ArgMatches) -> Result<Shown, Vec<Trouble>> {
        if given.get_flag("stranger") {
            return Self::stranger(given);
        }
        let AskedOne {
            subject,
            locks,
            asked,
        } = asked_one(given)?;
        let planned = dressing::plan(&subject.fitting, &subject.rules, &locks).dressing;
        Ok(Shown {
            names: Some((subject.person.name, subject.piece.name)),
            body: subject.body,
            fitting: subject.fitting,
            rules: subject.rules,
            planned,
            occasion: asked.occasion,
            standard: asked.standard.name,
        })
    }

    /// Somebody whom nobody has measured: the likeliest body in the likeliest garment.
    fn stranger(given: &ArgMatches) -> Result<Shown, Vec<Trouble>> {
        let mut wrong = Vec::new();
        let occasion = match text(given, "occasion").map(input::occasion) {
            None => Occasion::Indoors,
            Some(Ok(occasion)) => occasion,
            Some(Err(trouble)) => {
                wrong.push(trouble);
                Occasion::Indoors
            }
        };
        let standard = match path(given, "standard").map(input::standard) {
            None => Standard::customary(),
            Some(Ok(standard)) => standard,
            Some(Err(found)) => {
                wrong.extend(found);
                Standard::customary()
            }
        };
        let told = told(given).map_err(|found| wrong.extend(found)).ok();
        let (Some(told), true) = (told, wrong.is_empty()) else {
            return Err(wrong);
        };
        let known = Stranger {
            stature: told.stature,
        };
        let (body, garment) = stranger(told.sex, &known).map_err(troubles)?;
        let fitting = Fitting::new(&body, &garment);
        let rules = standard.rules(occasion, &body, garment.cloth());
        let planned = dressing::plan(&fitting, &rules, &Locks::new()).dressing;
        Ok(Shown {
            names: None,
            body,
            fitting,
            rules,
            planned,
            occasion,
            standard: standard.name,
        })
    }

    /// As the reader of photos takes her.
    pub fn subject(&self) -> photo::Subject<'_> {
        photo::Subject {
            body: &self.body,
            fitting: &self.fitting,
            planned: &self.planned,
        }
    }
}

/// What is told of a stranger, read as the studio reads it.
fn told(given: &ArgMatches) -> Result<Told, Vec<Trouble>> {
    let mut fields = Fields::from([
        // A stranger of the command line has no name and needs none.
        ("name".to_owned(), "-".to_owned()),
        (
            "sex".to_owned(),
            text(given, "sex").unwrap_or(Sex::Women.key()).to_owned(),
        ),
    ]);
    if let Some(stature) = text(given, "stature") {
        fields.insert("stature".to_owned(), stature.to_owned());
    }
    Told::from_fields(&fields).map_err(|found| {
        let named = found
            .into_iter()
            .map(|p| p.renamed(|path| format!("--{path}")));
        troubles(named.collect())
    })
}
