//! The marks of a photo: its page, and each move of a hand on it.
//!
//! The script of the page sends the whole marking with every change, one change at a time; what
//! comes back is the same with everything else brought in line. A change that was saved already, and
//! whose answer was lost on the way, is answered again.

use axum::http::StatusCode;
use axum::response::Response;
use serde_json::{Value, json};
use sunbu_core::photo::{Gray, Mark, Marking, Placing};
use sunbu_image::Picture;
use sunbu_store::{Photo, StoreError};
use sunbu_words::Words;

use super::{Checked, marking_parts, photo, photo_ids};
use crate::answer::{json as answer, json_with, page};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;
use crate::parts::{Frame, Here, frame};

/// The longest marking that is read, in bytes: all marks and many references take a tenth of it.
const MOST_BYTES: usize = 64 * 1024;

/// The page of one photo.
pub(crate) fn show(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let checked = Checked::look_up(room, ask)?;
    let photo = photo(room, ask)?;
    let photos = room.store().photos(photo.check)?;
    let title = w.with("marking-title", &[("view", (&w.view(photo.view)).into())]);
    let answered = photo.marking.as_ref().map(|marking| {
        // No page waits for the photo to be unpacked: it is done while the page is on its way.
        warm(room, photo.check, photo.id);
        let placing = marking.foresee(&checked.subject());
        said(w, photo.revision, marking, &placing)
    });
    let next = photos.iter().find(|other| {
        let begun = other.marking.as_ref().map(Marking::begun);
        other.id != photo.id && begun == Some(false)
    });
    let body = marking_parts::body(w, &checked.check.row.title, &photo, answered.as_ref(), next);
    let frame_of = Frame {
        class: Some("marking"),
        ..Frame::new(&title, Here::Checks)
            .with(&["marking.js"])
            .styled(&["marking.css"])
    };
    Ok(page(frame(ask, &frame_of, &body)))
}

/// One change of the marks, saved; the answer is JSON whatever happens to them.
pub(crate) fn place(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let checked = Checked::look_up(room, ask)?;
    let photo = photo(room, ask)?;
    let Some(kept) = photo.marking.clone() else {
        return Ok(refused(w, "checks-marks-unread"));
    };
    let Some(Change {
        revision,
        mut marking,
        hands,
        turn,
    }) = Change::read(ask)
    else {
        return Ok(refused(w, "marking-nonsense"));
    };
    // Side, size and lens are the photo's own.
    (marking.shot.view, marking.shot.size) = (kept.shot.view, kept.shot.size);
    marking.shot.focal = kept.shot.focal;
    if turn {
        marking.turn();
    }
    let gray = gray(room, photo.check, photo.id)?;
    let subject = checked.subject();
    let placing = marking.place(&subject, &gray, &hands);
    let ids = photo_ids(ask)?;
    if revision != photo.revision && marking == kept {
        return Ok(answer(&said(w, photo.revision, &kept, &placing)));
    }
    let saved = room.store().save_marking(ids, revision, &marking);
    match saved {
        Ok(revision) => Ok(answer(&said(w, revision, &marking, &placing))),
        Err(StoreError::Stale { .. }) => Ok(stale(w, &checked, room.store().photo(ids.0, ids.1)?)),
        Err(other) => Err(other.into()),
    }
}

/// A change as it was sent.
struct Change {
    /// The save that it was made on.
    revision: i64,
    marking: Marking,
    /// Marks that hands have just set, to go to their edges.
    hands: Vec<Mark>,
    /// Whether left and right are to be exchanged.
    turn: bool,
}

impl Change {
    /// None when it is no marking at all: no script of ours sends such a thing.
    fn read(ask: &Ask) -> Option<Self> {
        let text = ask
            .sent("marking")
            .filter(|text| text.len() <= MOST_BYTES)?;
        let hands = ask.sent("hands").unwrap_or_default().split(',');
        Some(Self {
            revision: ask.sent("revision")?.parse().ok()?,
            marking: serde_json::from_str(text).ok()?,
            hands: hands.filter_map(Mark::from_key).collect(),
            turn: ask.sent("turn") == Some("1"),
        })
    }
}

/// What the script is told: the marking with its revision, where each mark is expected, and what is
/// wrong, each in words and with its place.
fn said(w: &Words, revision: i64, marking: &Marking, placing: &Placing) -> Value {
    let expected = placing.expected.iter();
    let expected = expected.map(|(mark, place)| (mark.key().to_owned(), json!(place.at)));
    let problems = placing.problems.iter().map(|problem| {
        let mark = problem.place.strip_prefix("marks.").unwrap_or_default();
        let mark = mark.split('.').next().and_then(Mark::from_key);
        let label = mark.map(|mark| w.mark(mark));
        json!({ "place": problem.place, "label": label, "sentence": w.fault(problem) })
    });
    json!({
        "revision": revision,
        "marking": marking,
        "expected": expected.collect::<serde_json::Map<_, _>>(),
        "problems": problems.collect::<Vec<_>>(),
    })
}

/// Somebody saved other marks meanwhile: these, to choose between.
fn stale(w: &Words, checked: &Checked, photo: Photo) -> Response {
    let Some(marking) = photo.marking else {
        return refused(w, "checks-marks-unread");
    };
    let placing = marking.foresee(&checked.subject());
    let told = said(w, photo.revision, &marking, &placing);
    json_with(StatusCode::CONFLICT, &told)
}

fn refused(w: &Words, id: &str) -> Response {
    let told = json!({ "refused": w.get(id) });
    json_with(StatusCode::UNPROCESSABLE_ENTITY, &told)
}

/// The brightness of a photo: from memory, else unpacked and kept there.
fn gray(room: &Room, check: i64, photo: i64) -> Result<std::sync::Arc<Gray>, Fault> {
    if let Some(gray) = room.grays.get(photo) {
        return Ok(gray);
    }
    let jpeg = room.store().picture(check, photo)?;
    // We wrote it ourselves; that it no longer reads is a fault of the disk.
    let picture = Picture::read(&jpeg).map_err(|_| Fault::Broken)?;
    Ok(room.grays.put(photo, picture.gray()))
}

/// Unpacks a photo on a thread of its own, unless it is kept already.
fn warm(room: &Room, check: i64, photo: i64) {
    if room.grays.get(photo).is_none() {
        let room = room.clone();
        // Whatever goes wrong there goes wrong again, and is told, at the first mark.
        std::thread::spawn(move || drop(gray(&room, check, photo)));
    }
}
