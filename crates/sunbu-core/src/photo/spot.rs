//! Where a mark is expected, and how freely it may lie elsewhere.

use super::camera::Place;
use super::mark::Mark;
use crate::drape::Surface;

/// How the surface may differ from the one that the tape foretells: relative breadth, relative
/// depth, and the relative width of the skirt at the hem and of the trunk under the obi.
pub(super) const SHAPE: usize = 4;

/// Standard deviations of [`SHAPE`].
///
/// Breadth and depth of a hull with a known girth miss by 2 and 3 % on the reference bodies; the
/// loop of a hem is left by the hands to within some 2 cm of 85, and a girth just above the hip is
/// foretold to within some 2.5 cm of 85 (chosen).
pub(super) const SHAPE_SD: [f64; SHAPE] = [0.018, 0.027, 0.022, 0.03];

/// An expected place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Where {
    /// Anywhere in the room; its three coordinates are its own.
    Free(Place),
    /// On the surface: arc, height, and how far outside; arc and height are its own.
    Lying { s: f64, z: f64, out: f64 },
    /// On the outline as the lens sees it: height, how far outside, which side; the height is its
    /// own.
    Outline { z: f64, out: f64, left: bool },
}

/// Marks that move together: where one hem lies higher than planned, the rest of it mostly does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Together {
    Alone,
    Hem,
    Fold,
    Obi,
}

/// A mark, its expected place, and the deviations of its own coordinates in their order.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spot {
    pub mark: Mark,
    pub at: Where,
    pub sd: [f64; 3],
    pub together: Together,
}

impl Where {
    /// How many coordinates are its own.
    pub fn own(&self) -> usize {
        match self {
            Self::Free(_) => 3,
            Self::Lying { .. } => 2,
            Self::Outline { .. } => 1,
        }
    }

    /// Which of them is the height.
    pub fn height(&self) -> usize {
        self.own() - 1
    }

    /// Its height when none of its own coordinates is moved.
    pub fn z(&self) -> f64 {
        match *self {
            Self::Free([_, _, z]) | Self::Lying { z, .. } | Self::Outline { z, .. } => z,
        }
    }
}

/// The surface with its leeway.
pub(super) struct Bent<'a> {
    pub surface: &'a Surface<'a>,
    pub hem: f64,
    pub obi: f64,
}

impl Bent<'_> {
    /// Breadth and depth at a height over those of the surface.
    pub fn stretch(&self, z: f64, shape: &[f64]) -> [f64; 2] {
        let top = self.surface.skirt_top();
        let share = ((top - z) / (top - self.hem).max(1.0)).clamp(0.0, 1.1);
        let trunk = ((z - top) / (self.obi - top).max(1.0)).clamp(0.0, 1.0);
        let both = 1.0 + share * shape[2] + trunk * shape[3];
        [(1.0 + shape[0]) * both, (1.0 + shape[1]) * both]
    }

    /// The arc at which the outline lies, for a lens at `eye`.
    fn outline(&self, z: f64, out: f64, left: bool, shape: &[f64], eye: Place) -> f64 {
        let [across, ahead] = self.stretch(z, shape);
        // Stretching the body is shrinking the room about it.
        let eye = [eye[0] / across, eye[1] / ahead, eye[2]];
        self.surface.silhouette(z, out, eye, left)
    }

    /// The arc of an outline; nothing for other places.
    pub fn arc(&self, at: &Where, own: &[f64], shape: &[f64], eye: Place) -> f64 {
        match *at {
            Where::Outline { z, out, left } => self.outline(z + own[0], out, left, shape, eye),
            _ => 0.0,
        }
    }

    /// A place in the room for a lens at `eye`.
    pub fn placed(&self, at: &Where, own: &[f64], shape: &[f64], eye: Place) -> Place {
        self.place(at, own, shape, self.arc(at, own, shape, eye))
    }

    /// A place in the room; `arc` is the outline's, found before.
    pub fn place(&self, at: &Where, own: &[f64], shape: &[f64], arc: f64) -> Place {
        let on = |s: f64, z: f64, out: f64| {
            let [x, y, z] = self.surface.at(s, z, out);
            let [across, ahead] = self.stretch(z, shape);
            [x * across, y * ahead, z]
        };
        match *at {
            Where::Free(p) => std::array::from_fn(|i| p[i] + own[i]),
            Where::Lying { s, z, out } => on(s + own[0], z + own[1], out),
            Where::Outline { z, out, .. } => on(arc, z + own[0], out),
        }
    }
}
