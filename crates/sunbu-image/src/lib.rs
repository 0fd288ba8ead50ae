//! Pictures at the border: photos in, clean pictures out.
//!
//! [`Picture::read`] takes the bytes of a JPEG, PNG or WebP, of whatever name, within limits of
//! size, and gives an upright picture with its focal length. Nothing else of the file is kept: what
//! is written again has no place, hour, name, number or preview in it. [`png_of_svg`] turns a
//! drawing into a picture.

mod change;
mod decode;
mod exif;
mod kind;
mod picture;
mod svg;
mod turn;
mod whole;

pub use change::Area;
pub use picture::{LEAST_SHORTER_SIDE, LONGEST_SIDE, MOST_BYTES, MOST_PIXELS, Picture};
pub use sunbu_core::photo::{FileKind, PictureError, PictureFormat};
pub use svg::{SvgError, png_of_svg};
