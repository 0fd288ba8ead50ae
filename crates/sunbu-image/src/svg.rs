//! Drawings as pictures: SVG to PNG with the fonts of this machine.

use std::fmt;
use std::sync::{Arc, OnceLock};

use resvg::tiny_skia::{Color, Pixmap, Transform};
use resvg::usvg::fontdb::{self, Family};
use resvg::usvg::{ImageHrefResolver, Options, Tree};

/// The longest side of a drawing's picture, in pixels. Chosen: A4 at 600 dots per inch.
const LONGEST_DRAWN_SIDE: u32 = 7016; // = 29.7 / 2.54 * 600., rounded up

/// Why a drawing gives no picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SvgError {
    /// It is no SVG that can be read; what the reader said, in English.
    Unreadable {
        /// What the reader said.
        why: String,
    },
    /// A side of the picture would have no pixel, or too many.
    Size {
        /// Width in pixels.
        width: u64,
        /// Height in pixels.
        height: u64,
        /// The longest side that is drawn.
        most: u32,
    },
}

impl fmt::Display for SvgError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SvgError::Unreadable { why } => write!(out, "the drawing cannot be read: {why}"),
            SvgError::Size {
                width,
                height,
                most,
            } => write!(
                out,
                "the picture would be {width} by {height} pixels; each side has 1 to {most}"
            ),
        }
    }
}

impl std::error::Error for SvgError {}

/// The drawing as a PNG of this width on white, its height in proportion.
///
/// Letters come from the fonts installed here, sans serif where the drawing names none that is.
/// Pictures inside it must be in it (data addresses, JPEG, PNG or WebP): no file and no address
/// elsewhere is opened, whatever the drawing says.
///
/// # Errors
/// [`SvgError::Unreadable`] for text that is no SVG, [`SvgError::Size`] when a side would have no
/// pixel or more than are drawn.
pub fn png_of_svg(svg: &str, width_px: u32) -> Result<Vec<u8>, SvgError> {
    let unreadable = |why: String| SvgError::Unreadable { why };
    let options = Options {
        font_family: SANS.to_owned(),
        fontdb: fonts(),
        image_href_resolver: ImageHrefResolver {
            resolve_data: ImageHrefResolver::default_data_resolver(),
            resolve_string: Box::new(|_, _| None),
        },
        ..Options::default()
    };
    let tree = Tree::from_str(svg, &options).map_err(|error| unreadable(error.to_string()))?;
    let scale = width_px as f32 / tree.size().width();
    let height = (tree.size().height() * scale).round();
    // A float becomes the nearest whole number there is, zero when it is none.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let height_px = height as u64;
    let size = SvgError::Size {
        width: u64::from(width_px),
        height: height_px,
        most: LONGEST_DRAWN_SIDE,
    };
    let sides = 1..=u64::from(LONGEST_DRAWN_SIDE);
    if !sides.contains(&u64::from(width_px)) || !sides.contains(&height_px) {
        return Err(size);
    }
    let height_px = u32::try_from(height_px).unwrap_or(LONGEST_DRAWN_SIDE);
    let mut picture = Pixmap::new(width_px, height_px).ok_or(size)?;
    picture.fill(Color::WHITE);
    resvg::render(
        &tree,
        Transform::from_scale(scale, scale),
        &mut picture.as_mut(),
    );
    picture
        .encode_png()
        .map_err(|error| unreadable(error.to_string()))
}

/// The family for letters whose drawing names none.
const SANS: &str = "sans-serif";

/// The fonts of this machine, looked for once.
fn fonts() -> Arc<fontdb::Database> {
    static FONTS: OnceLock<Arc<fontdb::Database>> = OnceLock::new();
    FONTS.get_or_init(|| Arc::new(installed())).clone()
}

/// The installed fonts, with one of them for each of the two general names that a drawing ends its
/// list with: a machine need not have those that the names usually stand for, and no letter would
/// show.
fn installed() -> fontdb::Database {
    let mut fonts = fontdb::Database::new();
    fonts.load_system_fonts();
    if let Some(family) = stand_in(&fonts, Family::SansSerif, ["gothic", "sans"]) {
        fonts.set_sans_serif_family(family);
    }
    if let Some(family) = stand_in(&fonts, Family::Serif, ["mincho", "serif"]) {
        fonts.set_serif_family(family);
    }
    fonts
}

/// The family to use for a general name that no installed font goes by: one with Japanese letters,
/// with one of these words in its name, as far as there is one. None when none is needed, or
/// nothing installed.
fn stand_in(fonts: &fontdb::Database, general: Family<'_>, words: [&str; 2]) -> Option<String> {
    let query = fontdb::Query {
        families: &[general],
        ..fontdb::Query::default()
    };
    if fonts.query(&query).is_some() {
        return None;
    }
    let upright = fonts
        .faces()
        .filter(|face| face.style == fontdb::Style::Normal);
    let best = upright.min_by_key(|face| {
        let name = family(face);
        let lower = name.to_lowercase();
        let named = words.iter().any(|word| lower.contains(word));
        let weight = face.weight.0.abs_diff(fontdb::Weight::NORMAL.0);
        (!is_japanese(fonts, face.id), !named, weight, name)
    })?;
    Some(family(best))
}

fn family(face: &fontdb::FaceInfo) -> String {
    face.families
        .first()
        .map_or_else(String::new, |(name, _)| name.clone())
}

/// Whether the font has the letters of the trade, by two of them.
fn is_japanese(fonts: &fontdb::Database, id: fontdb::ID) -> bool {
    let has = |data: &[u8], index: u32| {
        let face = ttf_parser::Face::parse(data, index).ok()?;
        Some(
            "帯お"
                .chars()
                .all(|letter| face.glyph_index(letter).is_some()),
        )
    };
    fonts.with_face_data(id, has).flatten().unwrap_or(false)
}
