//! The garment's lines as a viewer sees them.
//!
//! Where they lie in space is the drape's; here they are only cut to what faces the viewer.

use std::ops::Deref;

use sunbu_core::body::Body;
use sunbu_core::drape::{Drape, Round};
use sunbu_core::dressing::{Fitting, Plan};

use crate::curve::{Pt, pt};
use crate::view::{Seen, View};

/// Places along a line that runs round half the body.
const ROUND_STEPS: u32 = 72;
/// Distance of places along a line that runs up the body, in centimetres.
const UP_STEP: f64 = 1.5;

/// The lines of one plan, to be drawn.
#[derive(Debug, Clone)]
pub(crate) struct Lines<'a>(Drape<'a>);

impl<'a> Deref for Lines<'a> {
    type Target = Drape<'a>;

    fn deref(&self) -> &Self::Target {
        &self.0
    }
}

impl<'a> Lines<'a> {
    /// The lines of a plan for this person in this garment.
    pub fn new(body: &Body, fitting: &'a Fitting, plan: &Plan) -> Self {
        Self(Drape::new(
            body,
            fitting,
            &plan.dressing,
            &plan.prediction.appearance(),
        ))
    }

    /// The side neck point at the viewer's right.
    pub fn neck(&self) -> Pt {
        pt(self.half_neck, self.side_neck)
    }

    /// Where the two collars of an overlap cross, as a point of the view.
    pub fn crossing_seen(&self, overlap: f64) -> Pt {
        pt(0.0, self.crossing(overlap))
    }

    /// Where arc `s` at height `z` is seen.
    pub fn seen(&self, s: f64, z: f64) -> Seen {
        let [left, ahead, _] = self.surface.at(s, z, 0.0);
        Seen {
            left,
            ahead,
            front: self.surface.in_front(s, z),
        }
    }

    /// A place on the surface as a point of the view.
    pub fn point(&self, view: View, s: f64, z: f64) -> Pt {
        pt(view.x(self.seen(s, z).left), z)
    }

    /// The half of a line round the body that faces the viewer, from the viewer's left to the
    /// right, standing out by `out` centimetres.
    pub fn round(&self, view: View, line: Round, out: f64) -> Vec<Pt> {
        (0..=ROUND_STEPS)
            .map(|k| {
                let share = f64::from(k) / f64::from(ROUND_STEPS);
                let p = self.round_seen(view, line, out, share);
                pt(p.x, p.z)
            })
            .collect()
    }

    /// The point of a line round the body a share of the way from the viewer's left silhouette
    /// to the right one.
    pub fn round_seen(&self, view: View, line: Round, out: f64, share: f64) -> Pt {
        use std::f64::consts::PI;
        // The wearer's right is at the viewer's left in front, her left at the back.
        let turn = match view {
            View::Front => 1.5 * PI - PI * share,
            View::Back => 0.5 * PI - PI * share,
        };
        let [left, _, z] = Drape::round_at(self, line, turn, out);
        pt(view.x(left), z)
    }

    /// The visible runs of a line up the body: `arc` gives its place at each height.
    pub fn upward(
        &self,
        view: View,
        low: f64,
        high: f64,
        arc: impl Fn(f64) -> f64,
    ) -> Vec<Vec<Pt>> {
        let at = |z: f64| -> (Pt, Seen) {
            let seen = self.seen(arc(z), z);
            (pt(view.x(seen.left), z), seen)
        };
        let mut runs = Vec::new();
        let mut run: Vec<Pt> = Vec::new();
        let mut before: Option<(f64, bool)> = None;
        for z in heights(low, high) {
            let (p, seen) = at(z);
            let visible = seen.visible(view);
            if let Some((below, was)) = before.filter(|b| b.1 != visible) {
                // Where the line goes round the side, found to well below a hair line.
                let (mut a, mut b) = (below, z);
                for _ in 0..12 {
                    let middle = 0.5 * (a + b);
                    if at(middle).1.visible(view) == was {
                        a = middle
                    } else {
                        b = middle
                    }
                }
                run.push(at(0.5 * (a + b)).0);
                if was {
                    runs.push(std::mem::take(&mut run));
                }
            }
            if visible {
                run.push(p);
            }
            before = Some((z, visible));
        }
        runs.push(run);
        runs.retain(|r| r.len() > 1);
        runs
    }

    /// The silhouette at the viewer's right from `low` up to `high`.
    pub fn silhouette(&self, low: f64, high: f64) -> Vec<Pt> {
        heights(low, high)
            .map(|z| pt(self.surface.half_breadth(z), z))
            .collect()
    }
}

/// Heights from `low` to `high`, both included, evenly spaced.
pub(crate) fn heights(low: f64, high: f64) -> impl Iterator<Item = f64> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "1 to 400"
    )]
    let steps = ((high - low) / UP_STEP).ceil().clamp(1.0, 400.0) as u32;
    (0..=steps).map(move |i| low + (high - low) * f64::from(i) / f64::from(steps))
}
