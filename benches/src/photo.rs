//! A photo from the phone timed: taken in, written again, and a mark brought to its edge.

use serde::Serialize;
use sunbu_core::photo::edge::{snap, snap_corner};
use sunbu_image::Picture;

use crate::error::Error;
use crate::timing::{Times, many};

/// Width and height of a phone's usual photo, in pixels.
const SIZE: [u32; 2] = [4000, 3000];
/// How far a mark may be moved, in pixels: as on the page.
const REACH_PX: f64 = 10.0;

/// How long a photo takes.
#[derive(Debug, Clone, Serialize)]
pub struct PhotoTimes {
    /// The file in megabytes (of a million bytes).
    pub file_mb: f64,
    /// From the bytes of the file to an upright picture.
    pub read: Times,
    /// Brightness of it, for the edges.
    pub gray: Times,
    /// The clean JPEG of it.
    pub write: Times,
    /// All three, one after another: ready for marking.
    pub ready: Times,
    /// One mark to its edge, the direction known.
    pub snap: Times,
    /// The same in whichever direction.
    pub snap_anywhere: Times,
    /// One mark to a corner.
    pub snap_corner: Times,
}

/// Times a photo of twelve megapixels that was taken upright: with the phone turned, and so with the
/// longest way to an upright picture.
///
/// # Errors
/// [`Error::Photo`] when the photo is not read.
pub fn photo(runs: usize) -> Result<PhotoTimes, Error> {
    let (file, _) = phone_photo()?;
    let read = || Picture::read(&file).map_err(|why| Error::Photo(why.to_string()));
    let picture = read()?;
    let gray = picture.gray();
    let at = [0.5 * gray.width() as f64 + 3.0, 0.5 * gray.height() as f64];
    let times = 20 * runs;
    Ok(PhotoTimes {
        file_mb: file.len() as f64 / 1e6,
        read: many(runs, read),
        gray: many(runs, || picture.gray()),
        write: many(runs, || picture.to_jpeg()),
        ready: many(runs, || {
            let picture = read()?;
            Ok::<_, Error>((picture.gray(), picture.to_jpeg()))
        }),
        snap: many(times, || snap(&gray, at, Some([1.0, 0.0]), REACH_PX)),
        snap_anywhere: many(times, || snap(&gray, at, None, REACH_PX)),
        snap_corner: many(times, || snap_corner(&gray, at, REACH_PX)),
    })
}

/// The file that a phone held upright makes, and the size of its picture upright.
///
/// # Errors
/// [`Error::Photo`] when it cannot be drawn.
pub fn phone_photo() -> Result<(Vec<u8>, [u32; 2]), Error> {
    let [width, height] = SIZE;
    Ok((turned(&drawn()?.to_jpeg()), [height, width]))
}

/// A picture with as much in it as a photo: broad light, weave, the noise of a sensor.
fn drawn() -> Result<Picture, Error> {
    let [width, height] = SIZE;
    let mut random = fastrand::Rng::with_seed(12);
    let mut pixels = Vec::with_capacity(3 * width as usize * height as usize);
    for y in 0..height {
        for x in 0..width {
            let light = 40.0 * (f64::from(x) / 300.0).sin() * (f64::from(y) / 200.0).cos();
            let weave = if (x / 5 + y / 7) % 2 == 0 { 8.0 } else { -8.0 };
            let noise = 8.0 * random.f64();
            for colour in [0.9, 1.0, 1.1] {
                let value = colour * (120.0 + light + weave + noise);
                #[expect(
                    clippy::cast_possible_truncation,
                    clippy::cast_sign_loss,
                    reason = "between 50 and 220"
                )]
                pixels.push(value as u8);
            }
        }
    }
    Picture::from_rgb(SIZE, pixels).ok_or_else(|| Error::Photo("it cannot be drawn".into()))
}

/// The JPEG with the one Exif entry that a phone held upright writes: orientation 6.
fn turned(jpeg: &[u8]) -> Vec<u8> {
    const EXIF: &[u8] = b"\xFF\xE1\0\x22Exif\0\0MM\0*\0\0\0\x08\
        \0\x01\x01\x12\0\x03\0\0\0\x01\0\x06\0\0\0\0\0\0";
    let (start, rest) = jpeg.split_at(2);
    [start, EXIF, rest].concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_photo_is_one_that_must_be_turned() {
        let small = Picture::from_rgb([80, 64], vec![90; 3 * 80 * 64]).unwrap();
        let picture = Picture::read(&turned(&small.to_jpeg())).unwrap();
        assert_eq!(picture.size(), [64, 80]);
    }
}
