//! Everything a check is made from, looked up and completed.

use sunbu_core::body::Body;
use sunbu_core::case::{CaseFile, Stranger};
use sunbu_core::check::{self, Report};
use sunbu_core::dressing::{self, Dressing, Fitting, Locks, Occasion, Rules, Standard};
use sunbu_core::garment::Garment;
use sunbu_core::photo::{self, Reading, Subject};
use sunbu_core::problem::Problem;
use sunbu_store::{Check, Photo, Shown};
use sunbu_words::Words;

use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;

/// A check with whom it shows, completed.
pub(crate) struct Checked {
    /// As it is kept.
    pub check: Check,
    /// What the dressing is judged for.
    pub occasion: Occasion,
    /// The body of whom it shows.
    pub body: Body,
    /// She in her garment.
    pub fitting: Fitting,
    /// The rules for her, cloth and occasion.
    pub rules: Rules,
    /// The dressing that was meant.
    pub planned: Dressing,
}

/// The photos of a check as far as they are marked and read.
pub(crate) struct Read {
    /// The photos that were read, with what each says.
    pub read: Vec<(Photo, Reading)>,
    /// The photos that do not read yet, and why; without a problem where floor or crown is not
    /// marked, or the marks are no longer understood.
    pub unread: Vec<(Photo, Vec<Problem>)>,
}

impl Read {
    /// What the photos say, in their order.
    pub fn readings(&self) -> Vec<Reading> {
        self.read
            .iter()
            .map(|(_, reading)| reading.clone())
            .collect()
    }
}

impl Checked {
    /// The check of the path.
    ///
    /// # Errors
    /// [`Fault::NotFound`], or [`Fault::Kept`] when whom it shows no longer reads.
    pub fn look_up(room: &Room, ask: &Ask) -> Result<Self, Fault> {
        let id = ask.id("check").ok_or(Fault::NotFound)?;
        let store = room.store();
        let (check, own) = (store.check(id)?, store.own_standard()?.value);
        drop(store);
        Self::of(check, own)
    }

    fn of(check: Check, own: Option<Standard>) -> Result<Self, Fault> {
        match check.shown.clone()? {
            Shown::Planned(case) => Self::planned(check, &case),
            Shown::Stranger(stranger) => Self::stranger(check, &stranger, own),
        }
    }

    /// Somebody of the studio, under the rules that were kept with the check.
    fn planned(check: Check, case: &CaseFile) -> Result<Self, Fault> {
        let piece = case.garments.first().ok_or(Fault::NotFound)?;
        let (body, cut) = (case.person.body()?, piece.garment()?);
        let standard = case.standard.clone().unwrap_or_else(Standard::customary);
        let bare = Self::dressed(check, case.occasion, body, &cut, &standard);
        let planned = dressing::plan(&bare.fitting, &bare.rules, &case.locks).dressing;
        Ok(Self { planned, ..bare })
    }

    /// Somebody known from the photo alone, under the house rules as they are now.
    fn stranger(check: Check, told: &Stranger, own: Option<Standard>) -> Result<Self, Fault> {
        let known = check::Stranger {
            stature: told.stature,
        };
        let (body, cut) = check::stranger(told.sex, &known)?;
        let standard = own.unwrap_or_else(Standard::customary);
        let occasion = check.row.occasion.unwrap_or(Occasion::Indoors);
        Ok(Self::dressed(check, occasion, body, &cut, &standard))
    }

    /// With the dressing that the planner would choose.
    fn dressed(
        check: Check,
        occasion: Occasion,
        body: Body,
        cut: &Garment,
        standard: &Standard,
    ) -> Self {
        let fitting = Fitting::new(&body, cut);
        let rules = standard.rules(occasion, &body, cut.cloth());
        let planned = dressing::plan(&fitting, &rules, &Locks::new()).dressing;
        Self {
            check,
            occasion,
            body,
            fitting,
            rules,
            planned,
        }
    }

    /// As the reader of photos takes her.
    pub fn subject(&self) -> Subject<'_> {
        Subject {
            body: &self.body,
            fitting: &self.fitting,
            planned: &self.planned,
        }
    }

    /// Whether nothing is known of her but the photo.
    pub fn is_stranger(&self) -> bool {
        self.check.row.person_id.is_none()
    }

    /// The message on how little is known of a stranger.
    pub fn stranger_id(&self) -> &'static str {
        match &self.check.shown {
            Ok(Shown::Stranger(told)) if told.stature.is_some() => "report-stranger-stature",
            _ => "report-stranger",
        }
    }

    /// Reads the photos.
    pub fn read(&self, photos: Vec<Photo>) -> Read {
        let (mut read, mut unread) = (Vec::new(), Vec::new());
        for photo in photos {
            let marked = photo.marking.as_ref().filter(|marking| marking.begun());
            match marked.map(|marking| photo::read(&self.subject(), &marking.seen())) {
                Some(Ok(reading)) => read.push((photo, reading)),
                Some(Err(problems)) => unread.push((photo, problems)),
                None => unread.push((photo, Vec::new())),
            }
        }
        Read { read, unread }
    }

    /// What the photos and the eye come to.
    pub fn report(&self, readings: &[Reading]) -> Report {
        let ticks = &self.check.ticks.value;
        check::check(&self.fitting, &self.rules, &self.planned, readings, ticks)
    }
}

/// The numbers of check and photo in the path.
pub(crate) fn photo_ids(ask: &Ask) -> Result<(i64, i64), Fault> {
    ask.id("check").zip(ask.id("photo")).ok_or(Fault::NotFound)
}

/// The photo of the path.
pub(crate) fn photo(room: &Room, ask: &Ask) -> Result<Photo, Fault> {
    let (check, photo) = photo_ids(ask)?;
    Ok(room.store().photo(check, photo)?)
}

/// Whom a check shows, what for and when, in one line.
pub(crate) fn about(w: &Words, row: &sunbu_store::CheckRow) -> String {
    let occasion = row
        .occasion
        .map_or_else(|| w.get("unread-occasion"), |occasion| w.occasion(occasion));
    let who = match row.person_id {
        Some(_) => format!("{} · {}", row.person, row.garment),
        None => w.get("checks-stranger"),
    };
    format!("{who} · {occasion}")
}
