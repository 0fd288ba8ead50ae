//! What is no photo, or too much of one, is refused with the reason before memory is taken for it.

mod support;

use image::{DynamicImage, ImageFormat};
use sunbu_image::{FileKind, MOST_BYTES, MOST_PIXELS, Picture, PictureError, PictureFormat};
use support::*;

fn refused(bytes: &[u8]) -> PictureError {
    Picture::read(bytes).expect_err("this is no photo that is taken")
}

fn in_every_format() -> [(PictureFormat, Vec<u8>); 3] {
    let drawn = quarters(96, 64);
    let whole = DynamicImage::ImageRgb8(drawn.clone());
    [
        (PictureFormat::Jpeg, jpeg(&drawn, &[])),
        (PictureFormat::Png, encoded(&whole, ImageFormat::Png)),
        (PictureFormat::Webp, encoded(&whole, ImageFormat::WebP)),
    ]
}

#[test]
fn nothing_at_all_and_too_much_are_told_apart_from_a_picture() {
    assert_eq!(refused(b""), PictureError::Empty);
    let mut bytes = vec![0; MOST_BYTES + 1];
    bytes[..3].copy_from_slice(b"\xFF\xD8\xFF");
    assert_eq!(
        refused(&bytes),
        PictureError::TooManyBytes {
            bytes: 41_943_041,
            most: 41_943_040
        }
    );
    // One byte less is looked at, and is no JPEG.
    let format = PictureFormat::Jpeg;
    assert_eq!(
        refused(&bytes[..MOST_BYTES]),
        PictureError::Unreadable { format }
    );
}

#[test]
fn a_document_is_told_by_its_content_whatever_its_name_was() {
    for (bytes, found) in [
        (&b"%PDF-1.7\n1 0 obj"[..], FileKind::Pdf),
        (b"GIF89a\x01\0\x01\0", FileKind::Gif),
        (b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", FileKind::Heic),
        (
            b"<svg xmlns='http://www.w3.org/2000/svg'/>",
            FileKind::Markup,
        ),
        (b"\0", FileKind::Unknown),
    ] {
        assert_eq!(refused(bytes), PictureError::OtherKind { found });
    }
}

#[test]
fn a_file_cut_anywhere_is_never_taken_for_a_picture() {
    for (format, bytes) in in_every_format() {
        let mut truncated = 0;
        for cut in 1..bytes.len() {
            match refused(&bytes[..cut]) {
                PictureError::Truncated { format: told } => {
                    assert_eq!(told, format);
                    truncated += 1;
                }
                // So short that its form cannot be told.
                PictureError::OtherKind { .. } => assert!(cut < 12, "{format:?} cut to {cut}"),
                other => panic!("{format:?} cut to {cut}: {other:?}"),
            }
        }
        assert!(truncated + 12 >= bytes.len(), "{format:?}: {truncated}");
    }
}

/// A JPEG whose header says it has this size, whatever its packed picture has.
fn jpeg_that_claims([width, height]: [u16; 2]) -> Vec<u8> {
    let mut bytes = jpeg(&quarters(96, 64), &[]);
    let frame = bytes
        .windows(2)
        .position(|w| w == b"\xFF\xC0")
        .expect("a frame");
    bytes[frame + 5..frame + 7].copy_from_slice(&height.to_be_bytes());
    bytes[frame + 7..frame + 9].copy_from_slice(&width.to_be_bytes());
    bytes
}

/// The check sum at the end of a PNG's chunk (ISO/IEC 15948 annex D).
fn check_sum(bytes: &[u8]) -> u32 {
    let step = |crc: u32, _| (crc >> 1) ^ (0xEDB8_8320 & (crc & 1).wrapping_neg());
    !bytes
        .iter()
        .fold(!0, |crc, &byte| (0..8).fold(crc ^ u32::from(byte), step))
}

fn png_that_claims([width, height]: [u32; 2]) -> Vec<u8> {
    let mut bytes = encoded(&quarters(96, 64).into(), ImageFormat::Png);
    bytes[16..20].copy_from_slice(&width.to_be_bytes());
    bytes[20..24].copy_from_slice(&height.to_be_bytes());
    let sum = check_sum(&bytes[12..29]);
    bytes[29..33].copy_from_slice(&sum.to_be_bytes());
    bytes
}

#[test]
fn a_gigantic_size_in_the_header_is_refused_at_once_and_with_its_numbers() {
    let began = std::time::Instant::now();
    for (bytes, width, height) in [
        (jpeg_that_claims([65_500, 65_500]), 65_500, 65_500),
        (jpeg_that_claims([8_001, 8_000]), 8_001, 8_000),
        (
            png_that_claims([2_000_000_000, 2_000_000_000]),
            2_000_000_000,
            2_000_000_000,
        ),
        (png_that_claims([8_001, 8_000]), 8_001, 8_000),
    ] {
        assert_eq!(
            refused(&bytes),
            PictureError::TooManyPixels {
                width,
                height,
                most: MOST_PIXELS
            }
        );
    }
    // Unpacking any of them takes a good part of a second, and the largest more memory than there is.
    let took = began.elapsed();
    assert!(took.as_millis() < 500, "took {took:?}");
}

#[test]
fn a_small_file_that_unpacks_to_ten_times_its_claim_fills_no_memory() {
    // A PNG of 64 by 64 pixels whose packed data holds a hundred times as many: the rest is not
    // unpacked into the picture.
    let large = encoded(&quarters(640, 640).into(), ImageFormat::Png);
    let mut bytes = large;
    bytes[16..20].copy_from_slice(&64_u32.to_be_bytes());
    bytes[20..24].copy_from_slice(&64_u32.to_be_bytes());
    let sum = check_sum(&bytes[12..29]);
    bytes[29..33].copy_from_slice(&sum.to_be_bytes());
    if let Ok(picture) = Picture::read(&bytes) {
        assert_eq!(picture.size(), [64, 64]);
    }
}

#[test]
fn a_preview_is_too_small_and_a_thread_too_narrow() {
    let least = 64;
    for [width, height] in [[60, 40], [63, 200], [1, 1]] {
        let drawn = DynamicImage::ImageRgb8(quarters(width, height));
        assert_eq!(
            refused(&encoded(&drawn, ImageFormat::Png)),
            PictureError::TooSmall {
                width,
                height,
                least
            }
        );
    }
    let no_pixel = refused(&jpeg_that_claims([0, 0]));
    assert!(
        matches!(
            no_pixel,
            PictureError::Unreadable { .. } | PictureError::TooSmall { .. }
        ),
        "{no_pixel:?}"
    );
}

#[test]
fn moving_pictures_are_told_as_such() {
    let mut moving = Vec::new();
    let mut encoder = png::Encoder::new(&mut moving, 64, 64);
    encoder.set_animated(2, 0).unwrap();
    let mut writer = encoder.write_header().unwrap();
    for _ in 0..2 {
        writer.write_image_data(&[128; 64 * 64]).unwrap();
    }
    writer.finish().unwrap();
    let format = PictureFormat::Png;
    assert_eq!(refused(&moving), PictureError::Animated { format });

    // RFC 9649 section 2.7: the extended head with the flag of animation.
    let mut moving = b"RIFF\x16\0\0\0WEBPVP8X\x0A\0\0\0\x02\0\0\0".to_vec();
    moving.extend([63, 0, 0, 63, 0, 0]);
    let format = PictureFormat::Webp;
    assert_eq!(refused(&moving), PictureError::Animated { format });
}

#[test]
fn rare_kinds_of_jpeg_are_refused_as_such() {
    let format = PictureFormat::Jpeg;
    let ordinary = jpeg(&quarters(96, 64), &[]);
    let frame = ordinary.windows(2).position(|w| w == b"\xFF\xC0").unwrap();
    for (what, place, value) in [
        ("twelve bits", frame + 4, 12),
        ("lossless", frame + 1, 0xC3),
        ("arithmetic", frame + 1, 0xC9),
        ("two colours", frame + 9, 2),
    ] {
        let mut bytes = ordinary.clone();
        bytes[place] = value;
        assert_eq!(
            Picture::read(&bytes).map(|_| ()),
            Err(PictureError::Unreadable { format }),
            "{what}"
        );
    }
}

#[test]
fn every_refusal_names_what_was_found_and_says_what_to_do() {
    for error in [
        refused(b""),
        refused(b"%PDF-1.7"),
        refused(&jpeg_that_claims([65_500, 65_500])),
        refused(&in_every_format()[0].1[..200]),
        refused(&encoded(&quarters(60, 40).into(), ImageFormat::Png)),
    ] {
        let text = error.to_string();
        for (name, detail) in error.details() {
            assert!(text.contains(&detail), "{name} {detail:?} is not in {text}");
        }
        assert!(text.contains("send") || text.contains("save"), "{text}");
    }
}
