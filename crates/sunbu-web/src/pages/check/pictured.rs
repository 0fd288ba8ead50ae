//! A photo of a check with its lines, and the picture of it that may leave the studio.
//!
//! What may leave is painted here: the box over a face is in the pixels before anything is sent.

use axum::response::Response;
use sunbu_core::check::{Report, overlaid};
use sunbu_core::photo::Hidden;
use sunbu_draw::Overlaid;
use sunbu_image::{Area, Picture};
use sunbu_store::Photo;
use sunbu_words::Words;

use super::{Checked, photo, photo_ids};
use crate::answer::jpeg;
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;

/// The colour of the box: a warm grey between cloth and wall, so that it draws no eye (chosen).
const BOX: [u8; 3] = [0x8c, 0x86, 0x7c];

/// Side of the squares in which a JPEG without subsampling is packed, in pixels (ISO/IEC 10918-1
/// A.1.1). A square that the box cuts has traces of the face beside the box, so all of it goes.
const BLOCK: u32 = 8;

/// What is hidden of a photo on everything that may leave the studio; none when all shows.
///
/// As long as nobody has decided, the head is hidden; and the whole picture where it is not known
/// where the head is.
pub(crate) fn covered(photo: &Photo) -> Option<Hidden> {
    if photo.decided {
        return photo.hidden;
    }
    let marked = photo.marking.as_ref().filter(|marking| marking.begun());
    Some(marked.map_or(Hidden::WHOLE, |marking| Hidden::over_head(&marking.shot)))
}

/// The picture of a photo as it may leave the studio.
pub(crate) fn shown(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let photo = photo(room, ask)?;
    let (check, id) = photo_ids(ask)?;
    let kept = room.store().picture(check, id)?;
    Ok(jpeg(painted(&photo, kept)?))
}

/// The JPEG with what is hidden painted over.
///
/// # Errors
/// [`Fault::Broken`] when the kept picture no longer reads: it is better not shown than unpainted.
pub(crate) fn painted(photo: &Photo, kept: Vec<u8>) -> Result<Vec<u8>, Fault> {
    let Some(hidden) = covered(photo) else {
        return Ok(kept);
    };
    let mut picture = Picture::read(&kept).map_err(|_| Fault::Broken)?;
    picture.hide(area(hidden, picture.size()), BOX);
    Ok(picture.to_jpeg())
}

/// The pixels of a box, out to whole squares of the JPEG.
fn area(hidden: Hidden, size: [u32; 2]) -> Area {
    let [left, top, width, height] = hidden.pixels(size);
    let before = |first: u32| first - first % BLOCK;
    let after = |end: u32| end.next_multiple_of(BLOCK);
    let (right, bottom) = (after(left + width), after(top + height));
    let (left, top) = (before(left), before(top));
    Area {
        left,
        top,
        width: right - left,
        height: bottom - top,
    }
}

/// A photo with the lines as seen and as wanted, as SVG; `href` is where the picture is.
pub(crate) fn drawn(
    w: &Words,
    checked: &Checked,
    report: &Report,
    photo: &Photo,
    href: &str,
) -> Result<String, Fault> {
    let marking = photo.marking.as_ref().ok_or(Fault::NotFound)?;
    let shot = marking.seen();
    let overlay = overlaid(&checked.subject(), &shot, report)?;
    Ok(sunbu_draw::overlay(&Overlaid {
        href,
        view: shot.view,
        size: shot.size,
        overlay: &overlay,
        report,
        words: w,
        title: &checked.check.row.title,
        id: &format!("photo-{}", photo.id),
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_box_is_painted_out_to_the_squares_it_cuts() {
        let hidden = Hidden::new(0.101, 0.2, 0.3, 0.1).expect("a box");
        // Of 1000 pixels: from 101 to 401, in squares from 96 to 408.
        let area = area(hidden, [1000, 1000]);
        assert_eq!((area.left, area.width), (96, 312));
        assert_eq!((area.top, area.height), (200, 104));
    }
}
