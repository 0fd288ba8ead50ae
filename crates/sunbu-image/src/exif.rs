//! What a photo says of itself that is needed: which way up, through what lens.
//!
//! Tags as in CIPA DC-008 (Exif 3.0). Nothing else is looked at, and nothing is kept as it stood.

use exif::{Exif, In, Reader, Tag, Value};
use image::metadata::Orientation;
use sunbu_core::photo::{FOCAL_RANGE, share_of_film};

/// What is needed of a photo's own data.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Told {
    /// How to turn it upright.
    pub orientation: Orientation,
    /// Focal length as a share of the longer side; none when it is not told or cannot be true.
    pub focal: Option<f64>,
}

impl Told {
    /// What a file without such data says.
    pub fn nothing() -> Self {
        Told {
            orientation: Orientation::NoTransforms,
            focal: None,
        }
    }

    /// Reads the data (a TIFF structure) of a picture of this width and height. What cannot be read
    /// is as if it were not there.
    pub fn read(data: Vec<u8>, size: [u32; 2]) -> Self {
        let mut reader = Reader::new();
        reader.continue_on_error(true);
        // One bad tag among many good ones is common in edited photos.
        let read = reader
            .read_raw(data)
            .or_else(|error| error.distill_partial_result(|_| {}));
        let Ok(told) = read else {
            return Told::nothing();
        };
        Told {
            orientation: uint(&told, Tag::Orientation)
                .and_then(|value| u8::try_from(value).ok())
                .and_then(Orientation::from_exif)
                .unwrap_or(Orientation::NoTransforms),
            focal: focal(&told, size),
        }
    }
}

fn uint(told: &Exif, tag: Tag) -> Option<u32> {
    told.get_field(tag, In::PRIMARY)?.value.get_uint(0)
}

/// A fraction that is a number above zero.
fn ratio(told: &Exif, tag: Tag) -> Option<f64> {
    let Value::Rational(values) = &told.get_field(tag, In::PRIMARY)?.value else {
        return None;
    };
    let value = values.first()?.to_f64();
    (value.is_finite() && value > 0.0).then_some(value)
}

/// Focal length as a share of the longer side of this picture.
fn focal(told: &Exif, size: [u32; 2]) -> Option<f64> {
    let lens_made = lens_made(told).unwrap_or(size);
    // A picture with other sides than the lens made was cropped: its middle lies elsewhere, too.
    // Rounding to a multiple of 16 pixels moves the sides of a small photo by less than this.
    const SAME: f64 = 0.02;
    if (elongation(size) / elongation(lens_made) - 1.0).abs() > SAME {
        return None;
    }
    let share = from_film(told, lens_made).or_else(|| from_sensor(told, lens_made))?;
    // What the reader of photos would refuse is as good as not told.
    let (least, most) = FOCAL_RANGE;
    (least..=most).contains(&share).then_some(share)
}

/// Width and height as the camera wrote them, before anybody edited the file.
fn lens_made(told: &Exif) -> Option<[u32; 2]> {
    let width = uint(told, Tag::PixelXDimension)?;
    let height = uint(told, Tag::PixelYDimension)?;
    (width > 0 && height > 0).then_some([width, height])
}

/// Longer side over shorter.
fn elongation([width, height]: [u32; 2]) -> f64 {
    f64::from(width.max(height)) / f64::from(width.min(height).max(1))
}

/// From the focal length on 35 mm film.
fn from_film(told: &Exif, size: [u32; 2]) -> Option<f64> {
    let film_mm = uint(told, Tag::FocalLengthIn35mmFilm).filter(|&mm| mm > 0)?;
    Some(share_of_film(f64::from(film_mm), size))
}

/// From the focal length itself and how many pixels the sensor has on a length.
fn from_sensor(told: &Exif, size: [u32; 2]) -> Option<f64> {
    let focal_mm = ratio(told, Tag::FocalLength)?;
    let unit_mm = match uint(told, Tag::FocalPlaneResolutionUnit) {
        None | Some(2) => 25.4, // inches, also when nothing is said
        Some(3) => 10.0,
        // In use beside the two of the standard (from memory).
        Some(4) => 1.0,
        Some(_) => return None,
    };
    let [width, height] = size;
    let (longer, tag) = if width >= height {
        (width, Tag::FocalPlaneXResolution)
    } else {
        (height, Tag::FocalPlaneYResolution)
    };
    let pixels_per_mm = ratio(told, tag)? / unit_mm;
    Some(focal_mm * pixels_per_mm / f64::from(longer))
}
