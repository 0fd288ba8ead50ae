//! What a photo says of itself: the lens is read, everything else is gone.

mod support;

use sunbu_image::Picture;
use support::*;

fn read(exif: &Exif) -> Picture {
    Picture::read(&jpeg_with_exif(&quarters(128, 96), exif)).expect("a picture")
}

fn with(fields: Vec<(u16, Value)>) -> Exif {
    Exif {
        exif: fields,
        ..Exif::default()
    }
}

fn near(found: Option<f64>, wanted: f64, what: &str) {
    let found = found.unwrap_or(f64::NAN);
    assert!(
        (found - wanted).abs() < 0.0005,
        "{what}: {found} against {wanted}"
    );
}

#[test]
fn the_length_on_film_is_read_along_the_diagonal_of_the_sensor() {
    // 26 mm over the film's 43.27 mm diagonal; a 4:3 picture's longer side is 0.8 of its own.
    let wanted = 26.0 / 43.2666 / 0.8;
    let exif = with(vec![(FOCAL_ON_FILM, Value::Short(26))]);
    near(read(&exif).focal(), wanted, "4:3");

    // On the film's own 3:2 it is the share of 36 mm.
    let bytes = jpeg_with_exif(&quarters(150, 100), &exif);
    near(Picture::read(&bytes).unwrap().focal(), 26.0 / 36.0, "3:2");
    // 16:9 is 4:3 cut above and below: the longer side is the same.
    let bytes = jpeg_with_exif(&quarters(160, 90), &exif);
    near(Picture::read(&bytes).unwrap().focal(), wanted, "16:9");
    // A square is 4:3 cut at the ends: three quarters of the longer side are left.
    let bytes = jpeg_with_exif(&quarters(96, 96), &exif);
    near(
        Picture::read(&bytes).unwrap().focal(),
        wanted * 4.0 / 3.0,
        "1:1",
    );
}

#[test]
fn without_it_the_sensors_resolution_gives_the_same() {
    // 6.0 mm in front of 4,000 pixels at 400 to the millimetre: 10 mm, so 0.6.
    let per = |unit: u16, resolution: u32| {
        with(vec![
            (FOCAL_LENGTH, Value::Ratio(60, 10)),
            (PIXEL_X, Value::Long(4_000)),
            (PIXEL_Y, Value::Long(3_000)),
            (PLANE_X_RESOLUTION, Value::Ratio(resolution, 1)),
            (PLANE_Y_RESOLUTION, Value::Ratio(resolution, 1)),
            (PLANE_UNIT, Value::Short(unit)),
        ])
    };
    near(read(&per(2, 10_160)).focal(), 0.6, "in inches");
    near(read(&per(3, 4_000)).focal(), 0.6, "in centimetres");
    assert_eq!(read(&per(9, 4_000)).focal(), None, "an unknown unit");
}

#[test]
fn a_turned_phone_has_the_same_lens() {
    let mut exif = Exif::with_orientation(6);
    exif.exif = vec![(FOCAL_ON_FILM, Value::Short(26))];
    let picture = read(&exif);
    assert_eq!(picture.size(), [96, 128]);
    near(picture.focal(), 26.0 / 43.2666 / 0.8, "upright");
}

#[test]
fn a_lens_that_cannot_be_or_a_cropped_photo_tells_no_focal_length() {
    for (what, fields) in [
        ("zero is unknown", vec![(FOCAL_ON_FILM, Value::Short(0))]),
        ("no such lens", vec![(FOCAL_ON_FILM, Value::Short(65_535))]),
        (
            "nothing below the line",
            vec![
                (FOCAL_LENGTH, Value::Ratio(6, 0)),
                (PLANE_X_RESOLUTION, Value::Ratio(400, 1)),
            ],
        ),
        (
            "cropped by 25 %",
            vec![
                (PIXEL_X, Value::Long(4_000)),
                (PIXEL_Y, Value::Long(4_000)),
                (FOCAL_ON_FILM, Value::Short(26)),
            ],
        ),
    ] {
        assert_eq!(read(&with(fields)).focal(), None, "{what}");
    }
}

#[test]
fn own_data_that_is_broken_does_not_lose_the_picture() {
    let whole = Exif::with_orientation(6).bytes();
    for cut in 0..whole.len() {
        let contents = [b"Exif\0\0", &whole[..cut]].concat();
        let bytes = jpeg(&quarters(128, 96), &[(1, contents)]);
        assert!(Picture::read(&bytes).is_ok(), "cut to {cut} bytes");
    }
}

/// The markers of a JPEG up to its picture.
fn markers(bytes: &[u8]) -> Vec<u8> {
    let mut found = Vec::new();
    let mut at = 2;
    loop {
        assert_eq!(bytes[at], 0xFF);
        found.push(bytes[at + 1]);
        if bytes[at + 1] == 0xDA {
            return found;
        }
        at += 2 + usize::from(u16::from_be_bytes([bytes[at + 2], bytes[at + 3]]));
    }
}

#[test]
fn nothing_personal_is_left_in_what_is_written() {
    let secrets = [
        "MAKER7",
        "NAME-OF-SOMEBODY",
        "SERIAL-4711",
        "AT-HOME",
        "XMP-PLACE",
        "IPTC-NAME",
        "2026:11:25 10:30:59",
    ];
    let exif = Exif {
        main: vec![
            (MAKE, Value::Ascii(secrets[0].into())),
            (ARTIST, Value::Ascii(secrets[1].into())),
        ],
        exif: vec![
            (DATE_TIME_ORIGINAL, Value::Ascii(secrets[6].into())),
            (SERIAL, Value::Ascii(secrets[2].into())),
        ],
        gps: vec![
            (GPS_LATITUDE_REF, Value::Ascii("N".into())),
            (GPS_AREA, Value::Ascii(secrets[3].into())),
        ],
    };
    let xmp = format!("http://ns.adobe.com/xap/1.0/\0<x>{}</x>", secrets[4]);
    let iptc = format!("Photoshop 3.0\x008BIM{}", secrets[5]);
    let exif = [b"Exif\0\0".to_vec(), exif.bytes()].concat();
    let mut bytes = jpeg(
        &quarters(128, 96),
        &[(1, exif), (1, xmp.into_bytes()), (13, iptc.into_bytes())],
    );
    bytes.extend(b"A-VIDEO-BEHIND-THE-PICTURE");
    let holds = |bytes: &[u8], text: &str| bytes.windows(text.len()).any(|w| w == text.as_bytes());
    for secret in secrets {
        assert!(holds(&bytes, secret), "the file should have had {secret}");
    }

    let written = Picture::read(&bytes).unwrap().to_jpeg();
    for secret in secrets.iter().chain(&["Exif", "A-VIDEO", "xap", "8BIM"]) {
        assert!(!holds(&written, secret), "{secret} was kept");
    }
    // JFIF's head, tables, frame, scan: no other APP segment and no comment.
    let allowed = [0xE0, 0xDB, 0xC0, 0xC4, 0xDA];
    let found = markers(&written);
    assert!(found.iter().all(|m| allowed.contains(m)), "{found:02X?}");
    assert_eq!(
        &written[written.len() - 2..],
        b"\xFF\xD9",
        "nothing behind the end"
    );
}
