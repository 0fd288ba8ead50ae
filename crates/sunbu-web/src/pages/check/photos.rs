//! The photos of a check: taken in, shown, erased.

use axum::http::StatusCode;
use axum::response::Response;
use sunbu_core::photo::{Marking, View};
use sunbu_image::Picture;
use sunbu_store::{NewPhoto, StoreError};

use super::photo_ids;
use super::show::{Refused, draw};
use crate::answer::{go, jpeg};
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;

/// Takes a photo in. Of what the camera wrote about it only the focal length is kept.
pub(crate) fn add(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let w = ask.words();
    let check = ask.id("check").ok_or(Fault::NotFound)?;
    let view = ask.sent("view").and_then(View::from_key);
    let view = view.ok_or(Fault::NotFound)?;
    let instead_of = ask.sent("instead_of").and_then(|id| id.parse().ok());
    let refused = |why: String| {
        let refused = Refused {
            photo: Some((view, why)),
            ..Refused::default()
        };
        draw(room, ask, StatusCode::UNPROCESSABLE_ENTITY, &refused)
    };
    let picture = match Picture::read(ask.file().unwrap_or_default()) {
        Ok(picture) => picture,
        Err(why) => return refused(w.picture_error(&why)),
    };
    let photo = NewPhoto {
        check,
        instead_of,
        marking: &Marking::new(view, picture.size(), picture.focal()),
        jpeg: &picture.to_jpeg(),
    };
    match room.store().add_photo(&photo, &room.now()) {
        Ok(id) => {
            // What was unpacked here is marked next.
            room.grays.put(id, picture.gray());
            return Ok(go(&format!("/checks/{check}/photos/{id}")));
        }
        Err(StoreError::Taken { .. }) => {}
        Err(other) => return Err(other.into()),
    }
    refused(w.get("checks-side-taken"))
}

/// The picture as it is kept.
pub(crate) fn picture(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let (check, photo) = photo_ids(ask)?;
    Ok(jpeg(room.store().picture(check, photo)?))
}

/// Erases a photo with its marks.
pub(crate) fn erase(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let (check, photo) = photo_ids(ask)?;
    room.store().erase_photo(check, photo)?;
    room.grays.forget(photo);
    Ok(go(&format!("/checks/{check}?done=erased")))
}
