//! A photo as the program keeps it: upright, of a bounded size, and silent about everything else.

use fast_image_resize::images::{TypedImage, TypedImageRef};
use fast_image_resize::pixels::U8x3;
use fast_image_resize::{FilterType, ImageView, ResizeAlg, ResizeOptions, Resizer};
use image::RgbImage;
use jpeg_encoder::{ColorType, Encoder, SamplingFactor};
use sunbu_core::photo::{Gray, PictureError};

use crate::turn::{upright, upright_size};
use crate::{decode, kind};

/// The most bytes of a file: 40 MB. Chosen: a phone's 50-megapixel JPEG has up to 25 MB.
pub const MOST_BYTES: usize = 40 * 1024 * 1024;

/// The most pixels of a picture: 64 million. Chosen: above the 48 and 50 megapixels that phones
/// make in their fine setting, and 192 MB unpacked; their settings of 108 and 200 megapixels are
/// for walls, not for reading a hem.
pub const MOST_PIXELS: u64 = 64_000_000;

/// The most bytes that a picture takes unpacked as its file has it: [`MOST_PIXELS`] with alpha. Half
/// as many pixels of sixteen bits fit in.
pub(crate) const MOST_UNPACKED_BYTES: u64 = 4 * MOST_PIXELS;

/// The longest side of a picture that is kept, in pixels. Chosen: a wearer who fills 3,500 of them is
/// 0.5 mm to the pixel, far finer than a hand marks, and a usual 12-megapixel photo (4,000 by
/// 3,000) stays as it is.
pub const LONGEST_SIDE: u32 = 4096;

/// The least shorter side of a picture, in pixels. Chosen: below it a pixel is over 2 cm of the
/// wearer, and nothing can be read.
pub const LEAST_SHORTER_SIDE: u32 = 64;

/// JPEG quality of what is written. Chosen: edges stay where they are and a 12-megapixel photo is
/// some 3 MB; see the tests for what it does to an edge.
const QUALITY: u8 = 88;

/// A picture in red, green and blue, upright, at most [`LONGEST_SIDE`] pixels long.
///
/// Its size is that of every JPEG made of it.
#[derive(Clone, PartialEq)]
pub struct Picture {
    pub(crate) pixels: RgbImage,
    /// Width and height upright, before it was scaled down.
    pub(crate) whole: [u32; 2],
    pub(crate) focal: Option<f64>,
}

impl Picture {
    /// The upright picture in the bytes of a JPEG, PNG or WebP.
    ///
    /// What the file is, its bytes say and not its name. Orientation is applied, transparency laid on
    /// white, sixteen bits become eight, gray becomes colour without colour; a picture longer than
    /// [`LONGEST_SIDE`] is scaled down. Everything but [`Picture::focal`] is dropped, a colour profile
    /// with it: photos in wide colours look a little duller.
    ///
    /// # Errors
    /// Every [`PictureError`]: see there.
    pub fn read(bytes: &[u8]) -> Result<Picture, PictureError> {
        if bytes.is_empty() {
            return Err(PictureError::Empty);
        }
        if bytes.len() > MOST_BYTES {
            return Err(PictureError::TooManyBytes {
                bytes: bytes.len() as u64,
                most: MOST_BYTES as u64,
            });
        }
        let format = kind::of(bytes).map_err(|found| PictureError::OtherKind { found })?;
        let (pixels, told) = decode::decode(format, bytes)?;
        let whole = upright_size(pixels.dimensions(), told.orientation);
        let pixels = fit(pixels, LONGEST_SIDE); // before it is turned, as there is less to turn then
        Ok(Picture {
            whole,
            pixels: upright(pixels, told.orientation),
            focal: told.focal,
        })
    }

    /// A picture of this width and height from its pixels, three bytes each, row by row: for
    /// pictures that were drawn. None when a side is zero or above [`LONGEST_SIDE`], or `pixels` has
    /// another length.
    pub fn from_rgb([width, height]: [u32; 2], pixels: Vec<u8>) -> Option<Picture> {
        let sides = 1..=LONGEST_SIDE;
        if !sides.contains(&width) || !sides.contains(&height) {
            return None;
        }
        let fits = pixels.len() as u64 == 3 * u64::from(width) * u64::from(height);
        let pixels = fits.then(|| RgbImage::from_raw(width, height, pixels))??;
        Some(Picture {
            pixels,
            whole: [width, height],
            focal: None,
        })
    }

    /// Width and height in pixels.
    pub fn size(&self) -> [u32; 2] {
        [self.pixels.width(), self.pixels.height()]
    }

    /// Width and height of the upright photo in pixels as its file has it, before it was scaled down
    /// to [`LONGEST_SIDE`]; of a part, that of the part.
    pub fn file_size(&self) -> [u32; 2] {
        self.whole
    }

    /// Red, green and blue of every pixel, row by row from the upper left corner.
    pub fn rgb(&self) -> &[u8] {
        self.pixels.as_raw()
    }

    /// Focal length as a share of the longer side; none when the photo does not say, or was cropped
    /// by whoever edited it.
    ///
    /// From the length on 35 mm film, a whole number of millimetres, so it is known to some 2 %; else
    /// from the lens and the sensor's resolution.
    pub fn focal(&self) -> Option<f64> {
        self.focal
    }

    /// The picture as a JPEG of the same size that says nothing beside it: no Exif, no name, no
    /// place, no preview, no colour profile, no comment.
    ///
    /// # Panics
    /// Never: only pictures beyond 65,535 pixels cannot be written.
    pub fn to_jpeg(&self) -> Vec<u8> {
        let mut bytes = Vec::with_capacity(self.pixels.len() / 8);
        let mut encoder = Encoder::new(&mut bytes, QUALITY);
        // Cameras store one colour for four pixels; a second time it would blur coloured edges more.
        encoder.set_sampling_factor(SamplingFactor::R_4_4_4);
        let [width, height] = self.size().map(|side| u16::try_from(side).unwrap_or(0));
        encoder
            .encode(self.pixels.as_raw(), width, height, ColorType::Rgb)
            .expect("a picture's sides are within what a JPEG can have");
        bytes
    }

    /// The picture scaled down so that its longer side is at most `longest` pixels, one at least.
    #[must_use]
    pub fn scaled(&self, longest: u32) -> Picture {
        Picture {
            pixels: fit(self.pixels.clone(), longest.max(1)),
            ..self.clone()
        }
    }

    /// Brightness of every pixel, with the weights of ITU-R BT.601.
    ///
    /// # Panics
    /// Never: a picture has as many pixels as its sides say.
    pub fn gray(&self) -> Gray {
        #[allow(clippy::cast_possible_truncation)] // the weights add up to one, so 255 is the most
        let luma = |rgb: &[u8]| {
            let [red, green, blue] = [rgb[0], rgb[1], rgb[2]].map(u32::from);
            // 0.299, 0.587 and 0.114 of 65,536, which add up to it.
            ((19_595 * red + 38_470 * green + 7_471 * blue + 32_768) >> 16) as u8
        };
        let gray = self.rgb().chunks_exact(3).map(luma).collect();
        let [width, height] = self.size().map(|side| side as usize);
        Gray::new(width, height, gray).expect("as many pixels as the sides say")
    }
}

impl std::fmt::Debug for Picture {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let [width, height] = self.size();
        write!(out, "Picture({width} by {height}, focal {:?})", self.focal)
    }
}

/// The picture with its longer side at most `longest`, scaled by a cubic filter (Catmull-Rom) as
/// wide as the pixels it makes, so that fine weave does not turn into stripes.
fn fit(picture: RgbImage, longest: u32) -> RgbImage {
    let (width, height) = picture.dimensions();
    let longer = width.max(height);
    if longer <= longest {
        return picture;
    }
    let scaled = |side: u32| {
        let side =
            (u64::from(side) * u64::from(longest) + u64::from(longer) / 2) / u64::from(longer);
        u32::try_from(side).unwrap_or(longest).max(1)
    };
    // The typed call: the other one would be compiled for every kind of pixel there is.
    let mut to = TypedImage::<U8x3>::new(scaled(width), scaled(height));
    let filter = ResizeAlg::Convolution(FilterType::CatmullRom);
    let options = ResizeOptions::new().resize_alg(filter);
    let from = TypedImageRef::<U8x3>::from_buffer(width, height, picture.as_raw())
        .expect("a picture has as many bytes as its sides say");
    Resizer::new()
        .resize_typed(&from, &mut to, &options)
        .expect("both pictures have sides");
    let (width, height) = (to.width(), to.height());
    let bytes = to.pixels().iter().flat_map(|pixel| pixel.0).collect();
    RgbImage::from_raw(width, height, bytes).expect("as many bytes as the sides say")
}
