//! Makes the files of the tests: pictures by the encoders, what cameras write beside them by hand.

#![allow(dead_code)] // each test uses a part
#![allow(clippy::cast_possible_truncation)] // all pictures and segments here are small

use std::io::Cursor;

use image::{DynamicImage, ImageFormat, RgbImage};
use jpeg_encoder::{ColorType, Encoder, SamplingFactor};

/// Four fields of one colour each, so that every turn and mirroring can be told from any other.
pub fn quarters(width: u32, height: u32) -> RgbImage {
    RgbImage::from_fn(width, height, |x, y| {
        image::Rgb(match (2 * x < width, 2 * y < height) {
            (true, true) => RED,
            (false, true) => GREEN,
            (true, false) => BLUE,
            (false, false) => WHITE,
        })
    })
}

pub const RED: [u8; 3] = [220, 30, 40];
pub const GREEN: [u8; 3] = [40, 180, 60];
pub const BLUE: [u8; 3] = [30, 60, 200];
pub const WHITE: [u8; 3] = [240, 240, 240];

/// A JPEG with these further segments: number of the APP marker and contents.
pub fn jpeg(picture: &RgbImage, segments: &[(u8, Vec<u8>)]) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, 95);
    encoder.set_sampling_factor(SamplingFactor::R_4_4_4);
    for (number, contents) in segments {
        encoder
            .add_app_segment(*number, contents.clone())
            .expect("short enough");
    }
    let (width, height) = (picture.width() as u16, picture.height() as u16);
    encoder
        .encode(picture.as_raw(), width, height, ColorType::Rgb)
        .expect("a JPEG can have this size");
    bytes
}

/// A JPEG with this Exif data.
pub fn jpeg_with_exif(picture: &RgbImage, exif: &Exif) -> Vec<u8> {
    let mut contents = b"Exif\0\0".to_vec();
    contents.extend(exif.bytes());
    jpeg(picture, &[(1, contents)])
}

/// A picture in another form, as the encoders write it.
pub fn encoded(picture: &DynamicImage, format: ImageFormat) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    picture
        .write_to(&mut bytes, format)
        .expect("can be written");
    bytes.into_inner()
}

/// The value of one tag.
#[derive(Clone)]
pub enum Value {
    Short(u16),
    Long(u32),
    Ratio(u32, u32),
    Ascii(String),
}

/// Exif data laid out by hand after CIPA DC-008 section 4.6: a TIFF head, IFD0, and below it the
/// Exif and the GPS directory.
#[derive(Clone, Default)]
pub struct Exif {
    pub main: Vec<(u16, Value)>,
    pub exif: Vec<(u16, Value)>,
    pub gps: Vec<(u16, Value)>,
}

pub const ORIENTATION: u16 = 0x0112;
pub const MAKE: u16 = 0x010F;
pub const ARTIST: u16 = 0x013B;
pub const DATE_TIME_ORIGINAL: u16 = 0x9003;
pub const FOCAL_LENGTH: u16 = 0x920A;
pub const PIXEL_X: u16 = 0xA002;
pub const PIXEL_Y: u16 = 0xA003;
pub const PLANE_X_RESOLUTION: u16 = 0xA20E;
pub const PLANE_Y_RESOLUTION: u16 = 0xA20F;
pub const PLANE_UNIT: u16 = 0xA210;
pub const FOCAL_ON_FILM: u16 = 0xA405;
pub const SERIAL: u16 = 0xA431;
pub const GPS_LATITUDE_REF: u16 = 0x0001;
pub const GPS_AREA: u16 = 0x001C;

impl Exif {
    pub fn with_orientation(value: u16) -> Exif {
        Exif {
            main: vec![(ORIENTATION, Value::Short(value))],
            ..Exif::default()
        }
    }

    pub fn bytes(&self) -> Vec<u8> {
        const EXIF_POINTER: u16 = 0x8769;
        const GPS_POINTER: u16 = 0x8825;
        let mut main = self.main.clone();
        main.sort_by_key(|(tag, _)| *tag);
        main.push((EXIF_POINTER, Value::Long(0)));
        main.push((GPS_POINTER, Value::Long(0)));
        let exif_at = 8 + directory(&main, 8).len();
        let gps_at = exif_at + directory(&self.exif, exif_at).len();
        let pointers = main.len() - 2;
        main[pointers].1 = Value::Long(exif_at as u32);
        main[pointers + 1].1 = Value::Long(gps_at as u32);
        let mut bytes = b"MM\0*\0\0\0\x08".to_vec();
        bytes.extend(directory(&main, 8));
        bytes.extend(directory(&self.exif, exif_at));
        bytes.extend(directory(&self.gps, gps_at));
        bytes
    }
}

/// One directory that begins at this place, with the values that do not fit into it behind it.
fn directory(fields: &[(u16, Value)], at: usize) -> Vec<u8> {
    let mut entries = (fields.len() as u16).to_be_bytes().to_vec();
    let values_at = at + 2 + 12 * fields.len() + 4;
    let mut values = Vec::new();
    for (tag, value) in fields {
        let (kind, count, mut data) = match value {
            Value::Short(number) => (3_u16, 1, number.to_be_bytes().to_vec()),
            Value::Long(number) => (4, 1, number.to_be_bytes().to_vec()),
            Value::Ratio(over, under) => (5, 1, [over.to_be_bytes(), under.to_be_bytes()].concat()),
            Value::Ascii(text) => (2, text.len() + 1, [text.as_bytes(), b"\0"].concat()),
        };
        entries.extend(tag.to_be_bytes());
        entries.extend(kind.to_be_bytes());
        entries.extend((count as u32).to_be_bytes());
        if data.len() > 4 {
            entries.extend(((values_at + values.len()) as u32).to_be_bytes());
            values.extend(data);
        } else {
            data.resize(4, 0);
            entries.extend(data);
        }
    }
    entries.extend([0; 4]); // no further directory
    entries.extend(values);
    entries
}

/// Whether two colours are alike, as far as a JPEG keeps them.
pub fn alike(one: [u8; 3], other: [u8; 3]) -> bool {
    one.iter().zip(other).all(|(a, b)| a.abs_diff(b) <= 6)
}
