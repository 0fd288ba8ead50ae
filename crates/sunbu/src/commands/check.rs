//! `sunbu check`: what photos of a finished dressing show, why, and what to change first.

use std::path::{Path, PathBuf};

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use clap::ArgMatches;
use sunbu_core::check::{self, Report, overlaid};
use sunbu_core::dressing::{Locks, assess};
use sunbu_core::fault::Ticks;
use sunbu_core::photo::{Hidden, Reading, Shot, read};
use sunbu_draw::Overlaid;
use sunbu_image::{Area, Picture, png_of_svg};
use sunbu_words::Words;

use super::output::is_same;
use super::photo::{self, Shown};
use crate::answer::Answer;
use crate::report::check::{CheckReport, Checked};
use crate::report::text;
use crate::say;
use crate::seen_by;
use crate::trouble::{Trouble, troubles_of};

/// Width of an overlay as PNG, in pixels. Chosen: its letters are then read on a phone.
const OVERLAY_PX: u32 = 1600;

/// Colour of the box over a face: a gray that is no skin and no hair. Chosen.
const HIDDEN_RGB: [u8; 3] = [128; 3];

/// Checks, and says it in words or as a document.
pub fn run(words: &Words, given: &ArgMatches) -> Answer {
    let json = given.get_flag("json");
    match answer(words, given, json) {
        Ok(answer) => answer,
        Err(troubles) => Answer::bad_input(words, &troubles, json),
    }
}

/// One photo of the check.
pub struct Taken {
    /// Its file.
    pub file: String,
    /// The photo.
    picture: Picture,
    /// With its marks.
    pub shot: Shot,
    /// What it says.
    pub reading: Reading,
}

fn answer(words: &Words, given: &ArgMatches, json: bool) -> Result<Answer, Vec<Trouble>> {
    let mut wrong = Vec::new();
    let files = pairs(given).map_err(|trouble| wrong.push(trouble)).ok();
    let overlays = overlays(given).map_err(|found| wrong.extend(found)).ok();
    let eyes = seen_by::asked(given)
        .map_err(|found| wrong.extend(found))
        .ok();
    let shown = Shown::of(given).map_err(|found| wrong.extend(found)).ok();
    let mut shots = Vec::new();
    let mut ticks = Ticks::new();
    for (photo, marks) in files.iter().flatten() {
        match shot(photo, marks, &mut ticks) {
            Ok(shot) => shots.push((photo, marks, shot)),
            Err(found) => wrong.extend(found),
        }
    }
    let (Some(overlays), Some(eyes), Some(shown)) = (overlays, eyes, shown) else {
        return Err(wrong);
    };
    let mut taken = Vec::new();
    for (photo, marks, (picture, shot)) in shots {
        match read(&shown.subject(), &shot) {
            Ok(reading) => taken.push(Taken {
                file: photo.display().to_string(),
                picture,
                shot,
                reading,
            }),
            Err(found) => wrong.extend(troubles_of(&marks.display().to_string(), found)),
        }
    }
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let readings: Vec<Reading> = taken.iter().map(|one| one.reading.clone()).collect();
    let report = check::check(
        &shown.fitting,
        &shown.rules,
        &shown.planned,
        &readings,
        &ticks,
    );
    let done = assess(
        &shown.fitting,
        &shown.rules,
        &Locks::new(),
        report.diagnosis.done,
    );
    let sights = seen_by::sights(
        &eyes,
        (&shown.body, &shown.fitting),
        &done.dressing,
        &done.prediction,
    );
    let checked = Checked {
        shown: &shown,
        taken: &taken,
        ticks: &ticks,
        report: &report,
        sights: &sights,
    };
    let mut said = if json {
        text(&CheckReport::of(words, &checked))
    } else {
        say::check::page(words, &checked)
    };
    let hides_face = given.get_flag("hide-face");
    for (file, one) in overlays.iter().zip(&taken) {
        write(file, &drawn(words, &shown, &report, one, hides_face)?)?;
        if !json {
            let name = file.display().to_string();
            said += &(words.with("cli-written", &[("file", (&name).into())]) + "\n");
        }
    }
    let left = report.diagnosis.correction.iter().flat_map(|c| &c.left);
    Ok(match left.count() {
        0 => Answer::Done(said),
        _ => Answer::CannotBeMet(said),
    })
}

/// All files given for one option.
fn all<'a>(given: &'a ArgMatches, name: &str) -> Vec<&'a PathBuf> {
    given
        .get_many::<PathBuf>(name)
        .unwrap_or_default()
        .collect()
}

/// Each photo with its marks.
fn pairs(given: &ArgMatches) -> Result<Vec<(&Path, &Path)>, Trouble> {
    let (photos, marks) = (all(given, "photo"), all(given, "marks"));
    if photos.len() != marks.len() {
        return Err(Trouble::at("--marks", "", "trouble-marks-count")
            .counting("photos", photos.len())
            .counting("marks", marks.len()));
    }
    let pairs = photos.into_iter().zip(marks);
    Ok(pairs.map(|(p, m)| (p.as_path(), m.as_path())).collect())
}

/// The files to draw the photos' lines into: each one of its own, and none that is read here.
fn overlays(given: &ArgMatches) -> Result<Vec<PathBuf>, Vec<Trouble>> {
    let files = all(given, "overlay");
    let mut wrong = Vec::new();
    let photos = all(given, "photo").len();
    if !files.is_empty() && files.len() != photos {
        wrong.push(
            Trouble::at("--overlay", "", "trouble-overlay-count")
                .counting("photos", photos)
                .counting("overlays", files.len()),
        );
    }
    let read = ["photo", "marks", "case", "standard"].map(|name| all(given, name));
    for (place, file) in files.iter().enumerate() {
        let typed = file.display().to_string();
        if kind(file).is_none() {
            let typed = typed.clone();
            wrong.push(Trouble::at("--overlay", typed, "trouble-overlay-kind"));
        }
        if let Some(over) = read.iter().flatten().find(|other| is_same(file, other)) {
            let over = over.display().to_string();
            wrong.push(Trouble::at(&typed, "", "trouble-over-input").with("file", over));
        }
        if files[..place].iter().any(|other| is_same(file, other)) {
            wrong.push(Trouble::at(&typed, "", "trouble-overlay-twice"));
        }
    }
    if wrong.is_empty() {
        Ok(files.into_iter().cloned().collect())
    } else {
        Err(wrong)
    }
}

/// As what an overlay is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Svg,
    Png,
}

fn kind(file: &Path) -> Option<Kind> {
    let ending = file.extension()?.to_str()?.to_ascii_lowercase();
    match ending.as_str() {
        "svg" => Some(Kind::Svg),
        "png" => Some(Kind::Png),
        _ => None,
    }
}

/// A photo with its marks on it; what the eye saw of it goes into `ticks`.
fn shot(photo: &Path, marks: &Path, ticks: &mut Ticks) -> Result<(Picture, Shot), Vec<Trouble>> {
    let (picture, marked) = match (photo::picture(photo), photo::marks(marks)) {
        (Ok(picture), Ok(marked)) => (picture, marked),
        (picture, marked) => {
            let found = marked.err().into_iter().flatten();
            return Err(picture.err().into_iter().chain(found).collect());
        }
    };
    ticks.extend(&marked.seen);
    let shot = marked
        .shot(picture.file_size(), picture.size(), picture.focal())
        .map_err(|found| troubles_of(&marks.display().to_string(), found))?;
    Ok((picture, shot))
}

/// The photo with its lines as seen and as wanted, as SVG. It is called by the occasion and the side:
/// whoever is sent it need not learn whom it shows.
fn drawn(
    words: &Words,
    shown: &Shown,
    report: &Report,
    one: &Taken,
    hides_face: bool,
) -> Result<String, Vec<Trouble>> {
    let places = overlaid(&shown.subject(), &one.shot, report)
        .map_err(|found| troubles_of(&one.file, found))?;
    let mut picture = one.picture.clone();
    if hides_face {
        let [left, top, width, height] = Hidden::over_head(&one.shot).pixels(picture.size());
        let area = Area {
            left,
            top,
            width,
            height,
        };
        picture.hide(area, HIDDEN_RGB);
    }
    let jpeg = STANDARD.encode(picture.to_jpeg());
    Ok(sunbu_draw::overlay(&Overlaid {
        href: &format!("data:image/jpeg;base64,{jpeg}"),
        view: one.shot.view,
        size: one.shot.size,
        overlay: &places,
        report,
        words,
        title: &words.occasion(shown.occasion),
        id: "overlay",
    }))
}

/// Writes a drawing into a file, as what its name says.
fn write(file: &Path, svg: &str) -> Result<(), Vec<Trouble>> {
    let name = file.display().to_string();
    let unwritten =
        |why: String| vec![Trouble::at(&name, "", "trouble-unwritten").with("why", why)];
    let bytes = match kind(file) {
        Some(Kind::Png) => png_of_svg(svg, OVERLAY_PX).map_err(|e| unwritten(e.to_string()))?,
        _ => format!("{svg}\n").into_bytes(),
    };
    std::fs::write(file, bytes).map_err(|error| unwritten(error.to_string()))
}
