//! What a file is by its first bytes; its name is never asked.
//!
//! The marks are those that each form's standard prescribes: JPEG ISO/IEC 10918-1 B.1, PNG
//! ISO/IEC 15948 section 5.2, WebP RFC 9649 section 2.4, the family of MP4 and HEIF ISO/IEC
//! 14496-12 section 4.3, JPEG XL ISO/IEC 18181-2, JPEG 2000 ISO/IEC 15444-1 annex I, TIFF 6.0
//! section 2, PDF ISO 32000 section 7.5.2.

use sunbu_core::photo::{FileKind, PictureFormat};

/// The form of a photo that is taken, or what the file holds instead.
pub(crate) fn of(bytes: &[u8]) -> Result<PictureFormat, FileKind> {
    let begins = |mark: &[u8]| bytes.starts_with(mark);
    if begins(b"\xFF\xD8") {
        Ok(PictureFormat::Jpeg)
    } else if begins(b"\x89PNG\r\n\x1A\n") {
        Ok(PictureFormat::Png)
    } else if begins(b"RIFF") && bytes.get(8..12) == Some(b"WEBP") {
        Ok(PictureFormat::Webp)
    } else {
        Err(other(bytes))
    }
}

fn other(bytes: &[u8]) -> FileKind {
    const MARKS: [(&[u8], FileKind); 11] = [
        (b"GIF8", FileKind::Gif),
        (b"\xFF\x0A", FileKind::Jxl),
        (b"\0\0\0\x0CJXL ", FileKind::Jxl),
        (b"\0\0\0\x0CjP  ", FileKind::Jp2),
        (b"II*\0", FileKind::Tiff),
        (b"MM\0*", FileKind::Tiff),
        (b"BM", FileKind::Bmp),
        (b"%PDF-", FileKind::Pdf),
        (b"PK\x03\x04", FileKind::Zip),
        (b"\x1A\x45\xDF\xA3", FileKind::Video), // Matroska and WebM
        (b"RIFF", FileKind::Video),             // AVI; WebP was told before
    ];
    if let Some((_, kind)) = MARKS.iter().find(|(mark, _)| bytes.starts_with(mark)) {
        return *kind;
    }
    if bytes.get(4..8) == Some(b"ftyp") {
        return match bytes.get(8..12) {
            Some(b"avif" | b"avis") => FileKind::Avif,
            Some(b"heic" | b"heix" | b"heim" | b"heis" | b"hevc" | b"mif1" | b"msf1") => {
                FileKind::Heic
            }
            _ => FileKind::Video,
        };
    }
    text(bytes)
}

/// Markup or text when the beginning is UTF-8 without control characters.
fn text(bytes: &[u8]) -> FileKind {
    const LOOKED_AT: usize = 1024;
    let start = &bytes[..bytes.len().min(LOOKED_AT)];
    let start = match std::str::from_utf8(start) {
        Ok(text) => text,
        // A letter that the cut goes through is none of the file's faults.
        Err(error) if error.error_len().is_none() => {
            std::str::from_utf8(&start[..error.valid_up_to()]).unwrap_or_default()
        }
        Err(_) => return FileKind::Unknown,
    };
    let start = start.trim_start_matches('\u{FEFF}').trim_start();
    let plain = |c: char| !c.is_control() || c.is_whitespace();
    if start.starts_with('<') {
        FileKind::Markup
    } else if !start.is_empty() && start.chars().all(plain) {
        FileKind::Text
    } else {
        FileKind::Unknown
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn files_are_known_by_what_they_begin_with() {
        for (bytes, kind) in [
            (&b"GIF89a..."[..], FileKind::Gif),
            (b"\0\0\0\x18ftypheic\0\0\0\0", FileKind::Heic),
            (b"\0\0\0\x18ftypmif1\0\0\0\0", FileKind::Heic),
            (b"\0\0\0\x18ftypavif\0\0\0\0", FileKind::Avif),
            (b"\0\0\0\x18ftypisom\0\0\0\0", FileKind::Video),
            (b"%PDF-1.7\n", FileKind::Pdf),
            (b"II*\0\x08\0\0\0", FileKind::Tiff),
            (b"PK\x03\x04\x14\0", FileKind::Zip),
            (b"<svg xmlns=", FileKind::Markup),
            ("\u{FEFF} <?xml".as_bytes(), FileKind::Markup),
            ("着物".as_bytes(), FileKind::Text),
            (b"\x83\x8f\x95\xa8", FileKind::Unknown),
            (b"\0", FileKind::Unknown),
            (b" ", FileKind::Unknown),
        ] {
            assert_eq!(of(bytes), Err(kind), "{bytes:?}");
        }
        assert_eq!(of(b"RIFF\0\0\0\0WEBP"), Ok(PictureFormat::Webp));
        assert_eq!(of(b"RIFF\0\0\0\0AVI "), Err(FileKind::Video));
    }

    #[test]
    fn a_letter_cut_at_the_end_of_what_is_looked_at_leaves_a_text_a_text() {
        for lead in 0..3 {
            let text = format!("{}{}", "x".repeat(lead), "着".repeat(600));
            assert_eq!(of(text.as_bytes()), Err(FileKind::Text), "{lead}");
        }
    }
}
