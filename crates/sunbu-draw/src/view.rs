//! From which side the figure is seen, and where a place on the surface is then.

/// From which side the figure is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum View {
    /// The wearer faces the viewer: her left is at the viewer's right.
    Front,
    /// The wearer's back: her left is at the viewer's left.
    Back,
}

impl View {
    /// Both views.
    pub const ALL: [View; 2] = [View::Front, View::Back];

    /// `front` or `back`, as in file names.
    pub const fn key(self) -> &'static str {
        match self {
            View::Front => "front",
            View::Back => "back",
        }
    }

    /// What lies `left` centimetres to the wearer's left, to the viewer's right.
    pub(crate) const fn x(self, left: f64) -> f64 {
        match self {
            View::Front => left,
            View::Back => -left,
        }
    }
}

/// A place on the surface as it is seen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// To the wearer's left of the body's middle, in centimetres.
    pub left: f64,
    /// Ahead of the body's side-to-side axis, in centimetres.
    pub ahead: f64,
    /// Whether it lies on the front half; the back half is seen from behind.
    pub front: bool,
}

impl Seen {
    /// Whether the place faces the viewer.
    pub const fn visible(&self, view: View) -> bool {
        matches!(
            (view, self.front),
            (View::Front, true) | (View::Back, false)
        )
    }
}
