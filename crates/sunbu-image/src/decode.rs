//! Unpacks one picture within its limits: looked through first, measured by its header second,
//! unpacked last.

use std::io::Cursor;

use image::codecs::{jpeg::JpegDecoder, png::PngDecoder, webp::WebPDecoder};
use image::{DynamicImage, ImageDecoder, ImageError, Limits, RgbImage};
use sunbu_core::photo::{PictureError, PictureFormat};

use crate::exif::Told;
use crate::picture::{LEAST_SHORTER_SIDE, LONGEST_SIDE, MOST_PIXELS, MOST_UNPACKED_BYTES};
use crate::whole;

/// The picture as the file has it, not yet upright, with what the file says of it.
///
/// # Errors
/// Every [`PictureError`] but those of an empty, too long or foreign file, which were asked before.
pub(crate) fn decode(
    format: PictureFormat,
    bytes: &[u8],
) -> Result<(RgbImage, Told), PictureError> {
    whole::check(format, bytes)?;
    if let (PictureFormat::Png, Some(size)) = (format, whole::png_size(bytes)) {
        check_size(size, 1)?;
    }
    let unreadable = |_: ImageError| PictureError::Unreadable { format };
    let mut limits = Limits::no_limits();
    limits.max_alloc = Some(MOST_UNPACKED_BYTES);
    let data = Cursor::new(bytes);
    let mut decoder: Box<dyn ImageDecoder + '_> = match format {
        PictureFormat::Jpeg => Box::new(JpegDecoder::new(data).map_err(unreadable)?),
        PictureFormat::Png => {
            Box::new(PngDecoder::with_limits(data, limits.clone()).map_err(unreadable)?)
        }
        PictureFormat::Webp => Box::new(WebPDecoder::new(data).map_err(unreadable)?),
    };
    let (width, height) = decoder.dimensions();
    check_size([width, height], decoder.color_type().bytes_per_pixel())?;
    decoder.set_limits(limits).map_err(unreadable)?;
    // A file whose own data cannot be read is a picture all the same.
    let told = match decoder.exif_metadata() {
        Ok(Some(data)) => Told::read(data, [width, height]),
        _ => Told::nothing(),
    };
    let unpacked = DynamicImage::from_decoder(decoder).map_err(unreadable)?;
    Ok((on_white(unpacked), told))
}

/// Whether a picture of this size is unpacked: asked of the header, before any memory is taken.
fn check_size([width, height]: [u32; 2], bytes_per_pixel: u8) -> Result<(), PictureError> {
    let most = MOST_PIXELS.min(MOST_UNPACKED_BYTES / u64::from(bytes_per_pixel).max(1));
    if u64::from(width) * u64::from(height) > most {
        return Err(PictureError::TooManyPixels {
            width,
            height,
            most,
        });
    }
    // Enough must be left of the shorter side once the longer is at its longest.
    let scaled = u64::from(LEAST_SHORTER_SIDE) * u64::from(width.max(height));
    let scaled = scaled.div_ceil(u64::from(LONGEST_SIDE));
    let least = LEAST_SHORTER_SIDE.max(u32::try_from(scaled).unwrap_or(u32::MAX));
    if width.min(height) < least {
        return Err(PictureError::TooSmall {
            width,
            height,
            least,
        });
    }
    Ok(())
}

/// Eight bits of red, green and blue; what can be seen through is laid on white paper.
fn on_white(picture: DynamicImage) -> RgbImage {
    if !picture.color().has_alpha() {
        return picture.into_rgb8();
    }
    let picture = picture.into_rgba8();
    let mut laid = RgbImage::new(picture.width(), picture.height());
    for (to, from) in laid.pixels_mut().zip(picture.pixels()) {
        let [red, green, blue, alpha] = from.0.map(u32::from);
        to.0 = [red, green, blue].map(|colour| {
            let mixed = (colour * alpha + 255 * (255 - alpha) + 127) / 255;
            u8::try_from(mixed).unwrap_or(u8::MAX)
        });
    }
    laid
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_taken_up_to_the_limit_and_not_a_pixel_beyond() {
        assert_eq!(check_size([8_000, 8_000], 3), Ok(()));
        let most = 64_000_000;
        assert_eq!(
            check_size([8_001, 8_000], 3),
            Err(PictureError::TooManyPixels {
                width: 8_001,
                height: 8_000,
                most
            })
        );
        // Sixteen bits and alpha take eight bytes, so a half of it is unpacked.
        assert_eq!(check_size([8_000, 4_000], 8), Ok(()));
        assert!(check_size([8_000, 4_001], 8).is_err());
        assert!(check_size([u32::MAX, u32::MAX], 3).is_err());
    }

    #[test]
    fn a_picture_must_be_wide_enough_for_marks_also_once_it_is_scaled() {
        assert_eq!(check_size([64, 4_096], 3), Ok(()));
        assert!(check_size([63, 100], 3).is_err());
        assert_eq!(
            check_size([65, 8_192], 3),
            Err(PictureError::TooSmall {
                width: 65,
                height: 8_192,
                least: 128
            })
        );
        assert!(check_size([0, 0], 3).is_err());
    }
}
