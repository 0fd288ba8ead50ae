//! Why a file is not taken as a photo.
//!
//! Files are unpacked elsewhere; what can be wrong with one is told here, so that words for it can
//! be had without a picture library.

use std::fmt;

use crate::keyed::keyed_enum;

keyed_enum! {
    /// The forms in which a photo is taken.
    PictureFormat {
        /// JPEG (ISO/IEC 10918), what cameras write.
        Jpeg = "jpeg",
        /// PNG (ISO/IEC 15948).
        Png = "png",
        /// WebP (RFC 9649).
        Webp = "webp",
    }
}

keyed_enum! {
    /// What a file holds instead of a photo, as its first bytes tell.
    FileKind {
        /// GIF, still or moving.
        Gif = "gif",
        /// HEIC or HEIF, the usual form of some phones.
        Heic = "heic",
        /// AVIF.
        Avif = "avif",
        /// JPEG XL.
        Jxl = "jxl",
        /// JPEG 2000.
        Jp2 = "jp2",
        /// TIFF, or a camera's raw file, most of which begin as one.
        Tiff = "tiff",
        /// BMP.
        Bmp = "bmp",
        /// A PDF document.
        Pdf = "pdf",
        /// A video.
        Video = "video",
        /// A ZIP archive, or a document of an office program, which is one.
        Zip = "zip",
        /// A web page, a drawing in SVG or another text in angle brackets.
        Markup = "markup",
        /// Any other text.
        Text = "text",
        /// None of these.
        Unknown = "unknown",
    }
}

impl PictureFormat {
    /// Its usual name, the same in every language.
    pub const fn name(self) -> &'static str {
        match self {
            PictureFormat::Jpeg => "JPEG",
            PictureFormat::Png => "PNG",
            PictureFormat::Webp => "WebP",
        }
    }
}

/// Why the bytes of a file are not taken as a photo.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PictureError {
    /// No bytes at all: usually a transfer that broke off at once.
    Empty,
    /// More bytes than any photo needs.
    TooManyBytes {
        /// How many there are.
        bytes: u64,
        /// The most that are read.
        most: u64,
    },
    /// Something else than JPEG, PNG or WebP, whatever its name says.
    OtherKind {
        /// What it seems to be.
        found: FileKind,
    },
    /// Several pictures after one another in one file.
    Animated {
        /// In which form.
        format: PictureFormat,
    },
    /// Too small or too narrow for marks: usually a preview instead of the photo.
    TooSmall {
        /// Width in pixels.
        width: u32,
        /// Height in pixels.
        height: u32,
        /// The least shorter side, in pixels, for a picture of this longer side.
        least: u32,
    },
    /// More pixels than are unpacked: a camera's largest setting, or a file made to fill the memory.
    TooManyPixels {
        /// Width in pixels.
        width: u32,
        /// Height in pixels.
        height: u32,
        /// The most pixels in all that are unpacked for a picture of this depth.
        most: u64,
    },
    /// The file ends before its picture does: usually a transfer that broke off.
    Truncated {
        /// In which form it begins.
        format: PictureFormat,
    },
    /// It begins as a picture of this form and cannot be unpacked: damaged, or of a rare kind.
    Unreadable {
        /// In which form it begins.
        format: PictureFormat,
    },
}

impl PictureError {
    /// Stable name of the kind of error: the end of the key of its message.
    pub const fn code(&self) -> &'static str {
        match self {
            PictureError::Empty => "empty",
            PictureError::TooManyBytes { .. } => "too-many-bytes",
            PictureError::OtherKind { .. } => "other-kind",
            PictureError::Animated { .. } => "animated",
            PictureError::TooSmall { .. } => "too-small",
            PictureError::TooManyPixels { .. } => "too-many-pixels",
            PictureError::Truncated { .. } => "truncated",
            PictureError::Unreadable { .. } => "unreadable",
        }
    }

    /// What was found and what is allowed, by name, as texts for a sentence: `bytes` and `most` in
    /// MB (of 1024 × 1024 bytes), `megapixels` and `most` in megapixels, sizes in pixels.
    pub fn details(&self) -> Vec<(&'static str, String)> {
        match self {
            PictureError::Empty => Vec::new(),
            PictureError::TooManyBytes { bytes, most } => vec![
                // Rounded up, so that what is just too large is not told to be as large as allowed.
                ("bytes", bytes.div_ceil(MEGABYTE).to_string()),
                ("most", (most / MEGABYTE).to_string()),
            ],
            PictureError::OtherKind { found } => vec![("found", found.key().to_owned())],
            PictureError::Animated { format }
            | PictureError::Truncated { format }
            | PictureError::Unreadable { format } => vec![("format", format.name().to_owned())],
            PictureError::TooSmall {
                width,
                height,
                least,
            } => vec![
                ("width", width.to_string()),
                ("height", height.to_string()),
                ("least", least.to_string()),
            ],
            PictureError::TooManyPixels {
                width,
                height,
                most,
            } => vec![
                ("width", width.to_string()),
                ("height", height.to_string()),
                (
                    "megapixels",
                    (u64::from(*width) * u64::from(*height))
                        .div_ceil(MEGAPIXEL)
                        .to_string(),
                ),
                ("most", (most / MEGAPIXEL).to_string()),
            ],
        }
    }
}

const MEGABYTE: u64 = 1024 * 1024;
const MEGAPIXEL: u64 = 1_000_000;

impl fmt::Display for PictureError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let details = self.details();
        let of = |name: &str| {
            let found = details.iter().find(|(known, _)| *known == name);
            found.map_or("", |(_, text)| text.as_str())
        };
        match self {
            PictureError::Empty => write!(out, "the file is empty; send the photo again"),
            PictureError::TooManyBytes { .. } => write!(
                out,
                "the file has {} MB; at most {} MB are read; save the photo smaller, as a JPEG",
                of("bytes"),
                of("most")
            ),
            PictureError::OtherKind { found } => write!(
                out,
                "the file is no JPEG, PNG or WebP but seems to be: {}; save the photo as a JPEG",
                found.key()
            ),
            PictureError::Animated { .. } => write!(
                out,
                "the {} holds several pictures that move; save one of them as a JPEG",
                of("format")
            ),
            PictureError::TooSmall { .. } => write!(
                out,
                "the picture is {} by {} pixels; its shorter side needs at least {}; send the \
                 photo itself and not its preview",
                of("width"),
                of("height"),
                of("least")
            ),
            PictureError::TooManyPixels { .. } => write!(
                out,
                "the picture is {} by {} pixels, {} megapixels; at most {} are unpacked; save it \
                 smaller, or set the camera to a smaller size",
                of("width"),
                of("height"),
                of("megapixels"),
                of("most")
            ),
            PictureError::Truncated { .. } => write!(
                out,
                "the {} ends before its picture does; send it again, whole",
                of("format")
            ),
            PictureError::Unreadable { .. } => write!(
                out,
                "the {} is damaged or of a rare kind; open it in a picture program and save it as \
                 an ordinary JPEG",
                of("format")
            ),
        }
    }
}

impl std::error::Error for PictureError {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_just_over_a_limit_is_not_told_to_be_the_limit() {
        let error = PictureError::TooManyBytes {
            bytes: 40 * MEGABYTE + 1,
            most: 40 * MEGABYTE,
        };
        let text = error.to_string();
        assert!(text.contains("41 MB; at most 40 MB"), "{text}");
        let error = PictureError::TooManyPixels {
            width: 8_001,
            height: 8_000,
            most: 64_000_000,
        };
        let text = error.to_string();
        assert!(text.contains("65 megapixels; at most 64"), "{text}");
    }
}
