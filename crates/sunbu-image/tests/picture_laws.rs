//! The laws of the border, on small files with bytes changed, taken out and put in, and on any bytes.

#[path = "laws/picture.rs"]
mod laws;
mod support;

use std::sync::OnceLock;

use image::{DynamicImage, ImageFormat};
use jpeg_encoder::{ColorType, Encoder};
use proptest::prelude::*;
use support::*;

/// Small files of every kind that is taken.
fn files() -> &'static [Vec<u8>] {
    static FILES: OnceLock<Vec<Vec<u8>>> = OnceLock::new();
    FILES.get_or_init(|| {
        let drawn = quarters(72, 64);
        let whole = DynamicImage::ImageRgb8(drawn.clone());
        let mut exif = Exif::with_orientation(6);
        exif.exif = vec![
            (
                DATE_TIME_ORIGINAL,
                Value::Ascii("2026:11:25 10:30:00".into()),
            ),
            (FOCAL_LENGTH, Value::Ratio(60, 10)),
            (FOCAL_ON_FILM, Value::Short(26)),
            (PLANE_X_RESOLUTION, Value::Ratio(400, 1)),
        ];
        let mut progressive = Vec::new();
        let mut encoder = Encoder::new(&mut progressive, 70);
        encoder.set_progressive(true);
        encoder.set_restart_interval(4);
        encoder
            .encode(drawn.as_raw(), 72, 64, ColorType::Rgb)
            .expect("can be written");
        let mut inks = Vec::new();
        Encoder::new(&mut inks, 70)
            .encode(&[90; 4 * 64 * 64], 64, 64, ColorType::CmykAsYcck)
            .expect("can be written");
        vec![
            jpeg_with_exif(&drawn, &exif),
            progressive,
            inks,
            encoded(&whole.to_luma8().into(), ImageFormat::Jpeg),
            encoded(&whole, ImageFormat::Png),
            encoded(&whole.to_rgba16().into(), ImageFormat::Png),
            encoded(&whole, ImageFormat::WebP),
            encoded(&whole.to_rgba8().into(), ImageFormat::WebP),
        ]
    })
}

/// One change of a file, at a place given as a share of its length.
#[derive(Debug, Clone)]
enum Change {
    Set(f64, u8),
    Flip(f64, u8),
    Cut(f64, usize),
    Double(f64, usize),
    End(f64),
}

fn change() -> impl Strategy<Value = Change> {
    // Most of what a decoder trusts stands at the beginning.
    let place = prop_oneof![0.0..0.2_f64, 0.0..1.0_f64];
    prop_oneof![
        4 => (place.clone(), any::<u8>()).prop_map(|(at, value)| Change::Set(at, value)),
        4 => (place.clone(), 0..8_u8).prop_map(|(at, bit)| Change::Flip(at, bit)),
        1 => (place.clone(), 1..40_usize).prop_map(|(at, count)| Change::Cut(at, count)),
        1 => (place.clone(), 1..40_usize).prop_map(|(at, count)| Change::Double(at, count)),
        1 => place.prop_map(Change::End),
    ]
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a share of a small length
fn changed(mut bytes: Vec<u8>, changes: &[Change]) -> Vec<u8> {
    for change in changes {
        if bytes.is_empty() {
            break;
        }
        let place = |at: f64| ((at * bytes.len() as f64) as usize).min(bytes.len() - 1);
        match *change {
            Change::Set(at, value) => {
                let at = place(at);
                bytes[at] = value;
            }
            Change::Flip(at, bit) => {
                let at = place(at);
                bytes[at] ^= 1 << bit;
            }
            Change::Cut(at, count) => {
                let at = place(at);
                let end = (at + count).min(bytes.len());
                bytes.drain(at..end);
            }
            Change::Double(at, count) => {
                let at = place(at);
                let end = (at + count).min(bytes.len());
                let part = bytes[at..end].to_vec();
                bytes.splice(at..at, part);
            }
            Change::End(at) => {
                let at = place(at);
                bytes.truncate(at);
            }
        }
    }
    bytes
}

#[test]
fn the_files_that_are_changed_are_pictures() {
    for (number, bytes) in files().iter().enumerate() {
        assert!(sunbu_image::Picture::read(bytes).is_ok(), "file {number}");
        laws::check(bytes);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn a_changed_file_is_read_within_the_limits_or_refused(
        number in 0..8_usize,
        changes in prop::collection::vec(change(), 1..6),
    ) {
        laws::check(&changed(files()[number].clone(), &changes));
    }

    #[test]
    fn any_bytes_behind_the_mark_of_a_picture_are_read_or_refused(
        number in 0..8_usize,
        kept in 2..60_usize,
        rest in prop::collection::vec(any::<u8>(), 0..400),
    ) {
        let mut bytes = files()[number][..kept].to_vec();
        bytes.extend(rest);
        laws::check(&bytes);
    }
}
