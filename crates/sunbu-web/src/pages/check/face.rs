//! The box over a face: where it lies, typed in per cent of the picture or dragged by a script.

use axum::http::StatusCode;
use axum::response::Response;
use maud::{Markup, html};
use sunbu_core::photo::Hidden;
use sunbu_store::Photo;
use sunbu_words::Words;

use super::photo_ids;
use super::pictured::covered;
use super::sheet;
use crate::amount::number;
use crate::answer::go;
use crate::app::Room;
use crate::ask::Ask;
use crate::error::Fault;

/// The fields of a box with the least and the most of each, in per cent of the picture.
const SIDES: [(&str, f64, f64); 4] = [
    ("left", 0.0, 99.0),
    ("top", 0.0, 99.0),
    ("width", 1.0, 100.0),
    ("height", 1.0, 100.0),
];

/// A box as it was sent and could not be kept.
pub(crate) struct Refused {
    /// Whose it is.
    photo: i64,
    typed: [String; 4],
    /// Which of the fields no number within its limits stands in.
    wrong: [bool; 4],
}

/// Keeps what is hidden of a photo, or that nothing is.
pub(crate) fn save(room: &Room, ask: &Ask) -> Result<Response, Fault> {
    let (check, id) = photo_ids(ask)?;
    let hidden = match ask.sent("face") {
        Some("show") => None,
        Some("hide") => match sent(ask, id) {
            Ok(hidden) => Some(hidden),
            Err(refused) => {
                // Nothing is refused of a photo that is not there.
                room.store().photo(check, id)?;
                return sheet::draw(room, ask, StatusCode::UNPROCESSABLE_ENTITY, Some(&refused));
            }
        },
        _ => return Err(Fault::NotFound),
    };
    room.store().hide((check, id), hidden)?;
    Ok(go(&format!("/checks/{check}/sheet?done=saved#face-{id}")))
}

/// The box that was typed.
fn sent(ask: &Ask, photo: i64) -> Result<Hidden, Refused> {
    let typed = SIDES.map(|(name, ..)| ask.sent(name).unwrap_or_default().trim().to_owned());
    let mut shares = [0.0; 4];
    let mut wrong = [false; 4];
    for (i, (_, low, high)) in SIDES.into_iter().enumerate() {
        match number(&typed[i]).filter(|percent| (low..=high).contains(percent)) {
            Some(percent) => shares[i] = percent / 100.0,
            None => wrong[i] = true,
        }
    }
    let [left, top, width, height] = shares;
    let hidden = Hidden::new(left, top, width, height).filter(|_| !wrong.contains(&true));
    hidden.ok_or(Refused {
        photo,
        typed,
        wrong,
    })
}

/// Whether a face shows, in one line with its sign.
fn state(w: &Words, photo: &Photo) -> String {
    match (photo.decided, photo.hidden) {
        (false, _) => format!("■ {}", w.get("sheet-face-undecided")),
        (true, Some(_)) => format!("■ {}", w.get("sheet-face-covered")),
        (true, None) => format!("○ {}", w.get("sheet-face-shown")),
    }
}

/// The choice for one photo. The picture beside it is the one that leaves the studio.
pub(crate) fn part(w: &Words, photo: &Photo, refused: Option<&Refused>) -> Markup {
    let own = refused.filter(|refused| refused.photo == photo.id);
    let path = format!("/checks/{}/photos/{}", photo.check, photo.id);
    let size = photo.marking.as_ref().map(|marking| marking.shot.size);
    let shows = own.is_none() && covered(photo).is_none();
    let texts = texts(photo, own);
    let wrong = own.map_or([false; 4], |own| own.wrong);
    let labels = [
        "sheet-face-left",
        "sheet-face-top",
        "sheet-face-width",
        "sheet-face-height",
    ];
    html! {
        form.face id={ "face-" (photo.id) } method="post" action={ (path) "/hidden" } tabindex="-1" {
            h3 { (w.view(photo.view)) }
            p.soft { (state(w, photo)) }
            div.stage {
                img src={ (path) "/shown.jpg" } alt=(w.view(photo.view))
                    width=[size.map(|s| s[0])] height=[size.map(|s| s[1])];
                button.face-box type="button" hidden aria-label=(w.get("sheet-face-box")) { span.grip aria-hidden="true" {} }
            }
            div.pick role="group" aria-label=(w.get("sheet-faces")) {
                @for (value, id, on) in [("hide", "sheet-face-hide", !shows), ("show", "sheet-face-show", shows)] {
                    label { input type="radio" name="face" value=(value) checked[on]; (w.get(id)) }
                }
            }
            div.sides-of {
                @for (i, (name, low, high)) in SIDES.into_iter().enumerate() {
                    @let id = format!("face-{}-{name}", photo.id);
                    div.field.bad[wrong[i]] {
                        label for=(id) { (w.get(labels[i])) }
                        @if wrong[i] { p.wrong id={ (id) "-wrong" } { (told(w, &texts[i], low, high)) } }
                        span.percent {
                            input type="text" inputmode="decimal" id=(id) name=(name) value=(texts[i])
                                autocomplete="off" aria-invalid=[wrong[i].then_some("true")]
                                aria-describedby=[wrong[i].then(|| format!("{id}-wrong"))];
                            "%"
                        }
                    }
                }
            }
            div.acts { button { (w.get("sheet-face-save")) } }
        }
    }
}

fn told(w: &Words, typed: &str, low: f64, high: f64) -> String {
    let (low, high) = (format!("{low:.0}"), format!("{high:.0}"));
    let args = [
        ("typed", typed.into()),
        ("low", (&low).into()),
        ("high", (&high).into()),
    ];
    w.with("sheet-face-number", &args)
}

/// What stands in the fields: what was typed, or the box as it is; where all shows, the box that
/// would be over the head.
fn texts(photo: &Photo, refused: Option<&Refused>) -> [String; 4] {
    if let Some(refused) = refused {
        return refused.typed.clone();
    }
    let head = || photo.marking.as_ref().map(|m| Hidden::over_head(&m.shot));
    let hidden = covered(photo).or_else(head).unwrap_or(Hidden::WHOLE);
    hidden.shares().map(percent)
}

/// A share in per cent, to a tenth: finer than a hand drags.
fn percent(share: f64) -> String {
    let text = format!("{:.1}", 100.0 * share);
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_are_written_in_per_cent_without_idle_digits() {
        for (share, text) in [(0.25, "25"), (0.4567, "45.7"), (0.0, "0"), (1.0, "100")] {
            assert_eq!(percent(share), text, "{share}");
        }
    }
}
