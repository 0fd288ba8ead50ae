//! Every refusal of a photo is said in both languages, with what was found and what is allowed.

use sunbu_core::photo::{FileKind, PictureError, PictureFormat};
use sunbu_words::{Lang, Words};

fn every_error() -> Vec<PictureError> {
    let kinds = FileKind::ALL
        .iter()
        .map(|&found| PictureError::OtherKind { found });
    let formats = PictureFormat::ALL.iter().flat_map(|&format| {
        [
            PictureError::Animated { format },
            PictureError::Truncated { format },
            PictureError::Unreadable { format },
        ]
    });
    let others = [
        PictureError::Empty,
        PictureError::TooManyBytes {
            bytes: 50 * 1024 * 1024,
            most: 40 * 1024 * 1024,
        },
        PictureError::TooSmall {
            width: 60,
            height: 40,
            least: 64,
        },
        PictureError::TooManyPixels {
            width: 12_000,
            height: 9_000,
            most: 64_000_000,
        },
    ];
    kinds.chain(formats).chain(others).collect()
}

#[test]
fn every_refusal_is_said_in_every_language_with_all_its_numbers() {
    for &lang in Lang::ALL {
        let words = Words::of(lang);
        for error in every_error() {
            let text = words.picture_error(&error);
            for (name, detail) in error.details() {
                let said = name == "found" || text.contains(&detail);
                assert!(said, "{name} {detail:?} is not in {text:?}");
            }
        }
    }
}

#[test]
fn a_phones_own_form_is_told_with_the_way_out() {
    let error = PictureError::OtherKind {
        found: FileKind::Heic,
    };
    let text = Words::of(Lang::En).picture_error(&error);
    assert!(
        text.contains("HEIC") && text.contains("save it as a JPEG"),
        "{text}"
    );
}
