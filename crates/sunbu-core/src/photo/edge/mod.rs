//! Finds the nearest strong edge in a picture, finer than its pixels.
//!
//! The slope of brightness is the derivative of a Gaussian (J. Canny, "A computational approach to
//! edge detection", IEEE PAMI 8, 1986, section IV), taken across the expected edge from means along
//! it, so that weave and noise cancel and the edge does not. It is taken at two widths. The wide one
//! chooses: stripes, whose slopes cancel over a few pixels, count little in it. The narrow one then
//! places the edge, at the summit of a parabola through its three highest values.
//!
//! Where two edges meet, the corner is the place nearest to all tangents in its neighbourhood
//! (W. Förstner and E. Gülch, "A fast operator for detection and precise location of distinct
//! points, corners and centres of circular features", ISPRS 1987).

mod across;
mod corner;
mod slope;

use super::expect::Edge;
use super::gray::Gray;
use super::mark::Pixel;

pub use across::snap;
pub use corner::snap_corner;
pub use slope::slope;

/// The strong edge near a place where this is expected, at most `reach_px` pixels from it; none where
/// nothing stands out, or nothing sharp is expected.
pub fn to_edge(gray: &Gray, at: Pixel, expected: Edge, reach_px: f64) -> Option<Pixel> {
    let found = match expected {
        Edge::Across(across) => snap(gray, at, Some(across), reach_px),
        Edge::Corner => snap_corner(gray, at, reach_px),
        Edge::Soft => None,
    };
    found.map(|snap| snap.at)
}

/// The longest way a mark is moved, in pixels, whatever was asked for: it bounds the time. Chosen.
pub const MOST_REACH_PX: f64 = 40.0;

/// An edge that a mark was moved to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Snap {
    /// Where it is.
    pub at: Pixel,
    /// How much brighter one side is than the other, in the 256 steps of a picture.
    pub strength: f64,
}

/// Steps of brightness below which nothing is an edge. Chosen: noise of five steps, as of a phone
/// indoors, leaves less after the means.
const LEAST_STRENGTH: f64 = 4.0;

/// What an edge of this strength counts at this distance from the mark.
///
/// Two strong edges count nearly the same, so that the nearer is taken; of a weak and a strong one
/// the strong. The hand is seldom off by all of the reach. Both numbers were chosen on rendered
/// photos, where half or twice as much gave up to two in a hundred more wrong edges.
fn worth(strength: f64, distance_px: f64, reach_px: f64) -> f64 {
    const STRONG: f64 = 30.0;
    let far = distance_px / reach_px;
    strength / (strength + STRONG) * (-0.5 * far * far).exp()
}

/// The reach as it is used; none when it is no way at all, or the place is none.
fn usable(at: Pixel, reach_px: f64) -> Option<f64> {
    let real = at.iter().all(|part| part.is_finite()) && reach_px.is_finite();
    (real && reach_px > 0.0).then(|| reach_px.min(MOST_REACH_PX))
}

/// How far the summit of a parabola through three values lies from the middle one, in steps; the
/// middle one is the highest.
fn summit(before: f64, middle: f64, after: f64) -> f64 {
    let bend = before - 2.0 * middle + after;
    if bend < 0.0 {
        (0.5 * (before - after) / bend).clamp(-0.5, 0.5)
    } else {
        0.0
    }
}
