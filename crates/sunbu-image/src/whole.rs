//! Looks through a file before anything of it is unpacked: is it whole, does it move, how large
//! does its header say it is?
//!
//! Decoders fill in what is missing at the end of a JPEG with gray; a photo without feet would be
//! measured. So the end of the picture is looked for first: the marker EOI (ISO/IEC 10918-1
//! B.1.1.3), the chunk IEND (ISO/IEC 15948 section 11.2.5), the length of the RIFF (RFC 9649
//! section 2.4). What follows the end, a video or a depth map in some phones' files, is not read.

use sunbu_core::photo::{PictureError, PictureFormat};

/// The most scans of a JPEG. Chosen: progressive photos have about ten; each costs a pass over the
/// whole picture, however few bytes it has.
const MOST_SCANS: usize = 100;

/// Whether the file is whole and shows one still picture.
///
/// # Errors
/// `Truncated`, `Animated`, or `Unreadable` when the parts of the file do not follow one another as
/// its form wants.
pub(crate) fn check(format: PictureFormat, bytes: &[u8]) -> Result<(), PictureError> {
    match format {
        PictureFormat::Jpeg => jpeg(bytes),
        PictureFormat::Png => png(bytes),
        PictureFormat::Webp => webp(bytes),
    }
}

/// Walks the segments up to the end of the picture.
fn jpeg(bytes: &[u8]) -> Result<(), PictureError> {
    const FORMAT: PictureFormat = PictureFormat::Jpeg;
    const TRUNCATED: PictureError = PictureError::Truncated { format: FORMAT };
    const UNREADABLE: PictureError = PictureError::Unreadable { format: FORMAT };
    let mut at = 2;
    let mut scans = 0;
    loop {
        // Any number of 0xFF may stand before a marker.
        let marks = bytes.get(at..).unwrap_or_default();
        let fill = marks.iter().take_while(|&&byte| byte == 0xFF).count();
        let marker = *marks.get(fill).ok_or(TRUNCATED)?;
        if fill == 0 {
            return Err(UNREADABLE);
        }
        at += fill + 1;
        match marker {
            0xD9 if scans == 0 => return Err(UNREADABLE),
            0xD9 => return Ok(()),
            0x01 | 0xD0..=0xD8 => continue,
            _ => {}
        }
        let length = bytes.get(at..at + 2).ok_or(TRUNCATED)?;
        let length = usize::from(u16::from_be_bytes([length[0], length[1]]));
        if length < 2 {
            return Err(UNREADABLE);
        }
        at += length;
        if at > bytes.len() {
            return Err(TRUNCATED);
        }
        if marker == 0xDA {
            scans += 1;
            if scans > MOST_SCANS {
                return Err(UNREADABLE);
            }
            at += scan_length(&bytes[at..]).ok_or(TRUNCATED)?;
        }
    }
}

/// How many bytes of packed picture come before the next marker; none when no marker comes.
fn scan_length(scan: &[u8]) -> Option<usize> {
    let mut at = 0;
    loop {
        at += scan.get(at..)?.iter().position(|&byte| byte == 0xFF)?;
        match scan.get(at + 1)? {
            0xFF => at += 1,               // fill
            0x00 | 0xD0..=0xD7 => at += 2, // a stuffed byte, a restart
            _ => return Some(at),
        }
    }
}

/// Walks the chunks up to the last.
fn png(bytes: &[u8]) -> Result<(), PictureError> {
    const FORMAT: PictureFormat = PictureFormat::Png;
    const TRUNCATED: PictureError = PictureError::Truncated { format: FORMAT };
    let mut at = 8;
    loop {
        let head = bytes.get(at..at + 8).ok_or(TRUNCATED)?;
        let length = u32::from_be_bytes([head[0], head[1], head[2], head[3]]);
        let length = usize::try_from(length).unwrap_or(usize::MAX);
        // Head, contents, and four bytes of check sum.
        at = at.saturating_add(length).saturating_add(12);
        if at > bytes.len() {
            return Err(TRUNCATED);
        }
        match &head[4..] {
            b"acTL" => return Err(PictureError::Animated { format: FORMAT }),
            b"IEND" => return Ok(()),
            _ => {}
        }
    }
}

/// The width and height that a PNG's first chunk tells (ISO/IEC 15948 section 11.2.2), which must be
/// known before the decoder makes room for a row; none when another chunk comes first.
pub(crate) fn png_size(bytes: &[u8]) -> Option<[u32; 2]> {
    let head = bytes.get(12..24)?;
    let side = |at: usize| u32::from_be_bytes([head[at], head[at + 1], head[at + 2], head[at + 3]]);
    head.starts_with(b"IHDR").then(|| [side(4), side(8)])
}

/// Holds the length in the file's head to the file, and looks for the flag of movement.
fn webp(bytes: &[u8]) -> Result<(), PictureError> {
    const FORMAT: PictureFormat = PictureFormat::Webp;
    const MOVES: u8 = 0b0000_0010;
    let truncated = PictureError::Truncated { format: FORMAT };
    let Some(head) = bytes.get(..16) else {
        return Err(truncated);
    };
    let length = u32::from_le_bytes([head[4], head[5], head[6], head[7]]);
    let length = usize::try_from(length).unwrap_or(usize::MAX);
    if length.saturating_add(8) > bytes.len() {
        return Err(truncated);
    }
    let flags = bytes.get(20).copied().unwrap_or_default();
    if &head[12..] == b"VP8X" && flags & MOVES != 0 {
        return Err(PictureError::Animated { format: FORMAT });
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_scan_ends_at_the_first_marker_that_is_no_restart_and_no_stuffed_byte() {
        assert_eq!(scan_length(b"\x12\xFF\x00\xFF\xD3\x34\xFF\xD9"), Some(6));
        assert_eq!(scan_length(b"\x12\xFF\xFF\xD9"), Some(2));
        assert_eq!(scan_length(b"\x12\x34"), None);
        assert_eq!(scan_length(b"\x12\xFF"), None);
    }

    #[test]
    fn a_picture_of_endless_scans_is_refused() {
        let mut bytes = b"\xFF\xD8".to_vec();
        for _ in 0..=MOST_SCANS {
            bytes.extend(b"\xFF\xDA\0\x02\0");
        }
        bytes.extend(b"\xFF\xD9");
        let format = PictureFormat::Jpeg;
        assert_eq!(
            check(format, &bytes),
            Err(PictureError::Unreadable { format })
        );
    }
}
