//! The lines of a dressed garment on its hull: hem, edges, seams, tie, fold, obi, collars.
//!
//! Every height and arc is read from the prediction and the dressing; nothing is worked out here
//! but where between the predicted places a line runs.

use sunbu_core::body::Body;
use sunbu_core::dressing::{Decision, Fitting, Given, Plan, Quantity};

use crate::curve::{Pt, pt};
use crate::hull::{Hull, Seen, View};

/// Width of the obi as it lies round the body, in centimetres (S50, S55, S56: 15 to 15.7).
pub(crate) const OBI_WIDTH: f64 = 15.5;
/// How far the obi stands out from the cloth under it, in centimetres (chosen for the eye).
pub(crate) const OBI_OUT: f64 = 1.1;
/// How far the double fold stands out, in centimetres (chosen for the eye).
pub(crate) const FOLD_OUT: f64 = 0.5;
/// Places along a line that runs round half the body.
const ROUND_STEPS: u32 = 72;
/// Distance of places along a line that runs up the body, in centimetres.
const UP_STEP: f64 = 1.5;

/// Heights of a line that runs round the body, at its four sides, in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Round {
    pub back: f64,
    pub left: f64,
    pub front: f64,
    pub right: f64,
}

impl Round {
    /// A line alike on both sides, there as high as the mean of front and back.
    pub fn even(back: f64, front: f64) -> Self {
        let side = 0.5 * (back + front);
        Self {
            back,
            left: side,
            front,
            right: side,
        }
    }

    /// The same line higher by `by`.
    pub fn raised(self, by: f64) -> Self {
        Self {
            back: self.back + by,
            left: self.left + by,
            front: self.front + by,
            right: self.right + by,
        }
    }

    /// The height at an angle: 0 at the back, a quarter turn at the left side.
    ///
    /// The one sum of sines and cosines of the angle and of twice the angle that meets all four
    /// sides: no corners, and nothing beyond what the four say.
    pub fn at(self, angle: f64) -> f64 {
        let Self {
            back,
            left,
            front,
            right,
        } = self;
        let mean = 0.25 * (back + left + front + right);
        let twice = 0.25 * (back + front - left - right);
        mean + 0.5 * (back - front) * angle.cos()
            + 0.5 * (left - right) * angle.sin()
            + twice * (2.0 * angle).cos()
    }
}

/// The lines of one plan.
#[derive(Debug, Clone)]
pub(crate) struct Lines<'a> {
    pub hull: Hull<'a>,
    /// Hem at the back.
    pub hem: f64,
    /// Outer corner's height.
    pub outer_corner: f64,
    /// Inner corner's height.
    pub inner_corner: f64,
    /// Outer collar end's height.
    pub collar_end: f64,
    /// Waist tie.
    pub tie: Round,
    /// Lower edge of the fold.
    pub fold: Round,
    /// Lower edge of the obi.
    pub obi: Round,
    /// Back seam at the hip and above the fold.
    pub seam: (f64, f64),
    /// Half the breadth of the neck, and the side neck point's height.
    pub neck: Pt,
    /// The back neck point's height.
    pub back_neck: f64,
    /// Nape drop.
    pub nape_drop: f64,
    /// The chest tie's height.
    pub chest_tie: f64,
    /// Half overlaps of juban and kimono.
    pub overlap: (f64, f64),
    widths: Widths,
}

#[derive(Debug, Clone, Copy)]
struct Widths {
    back: f64,
    front: f64,
    okumi_hem: f64,
    okumi_end: f64,
    erishita: f64,
    folded_back: f64,
}

impl<'a> Lines<'a> {
    /// The lines of a plan for this person in this garment.
    pub fn new(body: &Body, fitting: &'a Fitting, plan: &Plan) -> Self {
        use Quantity as Q;
        let seen = |q: Q| plan.prediction.value(q);
        let done = |d: Decision| plan.dressing.get(d);
        let given = |g: Given| fitting.value(g);
        let obi_front = done(Decision::ObiLowerEdge);
        let obi = Round::even(obi_front + given(Given::ObiRise), obi_front);
        let (fold_front, fold_back) =
            (obi.front - seen(Q::FoldFront), obi.back - seen(Q::FoldBack));
        let fold = Round {
            right: obi.right - seen(Q::FoldRight),
            ..Round::even(fold_back, fold_front)
        };
        let outer_corner = seen(Q::UwamaeCorner);
        let widths = Widths {
            back: given(Given::Ushirohaba),
            front: given(Given::Maehaba),
            okumi_hem: given(Given::Okumihaba),
            okumi_end: given(Given::Aizumahaba),
            erishita: given(Given::Erishita),
            folded_back: done(Decision::ShitamaeFoldBack),
        };
        Self {
            hull: Hull::new(body, fitting, &plan.dressing, &plan.prediction),
            hem: seen(Q::HemBack),
            outer_corner,
            inner_corner: outer_corner + seen(Q::ShitamaeAboveUwamae),
            collar_end: widths.erishita + outer_corner,
            tie: Round::even(
                done(Decision::KoshihimoBack),
                done(Decision::KoshihimoFront),
            ),
            fold,
            obi,
            seam: (seen(Q::BackSeamHip), seen(Q::BackSeamTop)),
            neck: pt(
                given(Given::NeckBaseGirth) / std::f64::consts::TAU,
                given(Given::SideNeck),
            ),
            back_neck: given(Given::BackNeck),
            nape_drop: seen(Q::NapeDrop),
            chest_tie: given(Given::UnderBust) - given(Given::ChestTieDrop),
            overlap: (done(Decision::JubanOverlap), done(Decision::KimonoOverlap)),
            widths,
        }
    }

    /// Upper edge of the obi.
    pub fn obi_top(&self) -> Round {
        self.obi.raised(OBI_WIDTH)
    }

    /// Arc of the outer front edge at a height; above the collar end, of the collar, which runs
    /// straight over the body to the side neck point.
    pub fn outer_edge(&self, z: f64) -> f64 {
        let edge = |z: f64| self.okumi_seam() + self.okumi(z - self.outer_corner);
        let end = self.collar_end;
        if z <= end {
            return edge(z);
        }
        let past_middle = edge(end) - 0.5 * self.hull.girth(end);
        let share = (z - end) / (self.neck.z - end).max(1.0);
        0.5 * self.hull.girth(z) + past_middle - share * (past_middle + self.neck.x)
    }

    /// Arc of the inner front edge at a height; it runs round the other way.
    pub fn inner_edge(&self, z: f64) -> f64 {
        let Widths {
            back,
            front,
            folded_back,
            ..
        } = self.widths;
        let width = back + front + self.okumi(z - self.inner_corner) - folded_back;
        self.hull.girth(z) + self.seam.0 - width
    }

    /// Arc of the left side seam.
    pub fn left_seam(&self) -> f64 {
        self.seam.0 + self.widths.back
    }

    /// Arc of the right side seam at a height.
    pub fn right_seam(&self, z: f64) -> f64 {
        self.hull.girth(z) + self.seam.0 - self.widths.back
    }

    /// Arc of the outer okumi seam.
    pub fn okumi_seam(&self) -> f64 {
        self.left_seam() + self.widths.front
    }

    /// Okumi width so far above the corner along the edge, as the model has it.
    fn okumi(&self, above: f64) -> f64 {
        let Widths {
            okumi_hem,
            okumi_end,
            erishita,
            ..
        } = self.widths;
        okumi_hem + (above / erishita).clamp(0.0, 1.0) * (okumi_end - okumi_hem)
    }

    /// Height of the hem of the outer panel and the back at an arc: level to the left side seam,
    /// from there straight up to the raised corner.
    pub fn hem_at(&self, s: f64) -> f64 {
        let width = self.widths.front + self.widths.okumi_hem;
        let share = ((s - self.left_seam()) / width).clamp(0.0, 1.0);
        self.hem + share * (self.outer_corner - self.hem)
    }

    /// A place on the surface as a point of the view.
    pub fn point(&self, view: View, s: f64, z: f64) -> Pt {
        pt(view.x(self.hull.project(s, z).left), z)
    }

    /// The half of a line round the body that faces the viewer, from the viewer's left to the
    /// right, standing out by `out` centimetres.
    pub fn round(&self, view: View, line: Round, out: f64) -> Vec<Pt> {
        (0..=ROUND_STEPS)
            .map(|k| {
                let share = f64::from(k) / f64::from(ROUND_STEPS);
                let p = self.round_at(view, line, out, share);
                pt(p.x, p.z)
            })
            .collect()
    }

    /// The point of a line round the body a share of the way from the viewer's left silhouette
    /// to the right one.
    pub fn round_at(&self, view: View, line: Round, out: f64, share: f64) -> Pt {
        use std::f64::consts::PI;
        // The wearer's right is at the viewer's left in front, her left at the back.
        let turn = match view {
            View::Front => 1.5 * PI - PI * share,
            View::Back => 0.5 * PI - PI * share,
        };
        let z = line.at(turn);
        let (girth, side) = (self.hull.girth(z), self.hull.side_arc(z));
        let s = arc_of_angle(turn, girth, side);
        let half = self.hull.half_breadth(z);
        pt(
            view.x(self.hull.project(s, z).left) * (half + out) / half,
            z,
        )
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
            let seen = self.hull.project(arc(z), z);
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
            .map(|z| pt(self.hull.half_breadth(z), z))
            .collect()
    }
}

/// The arc at an angle counted evenly within each quarter between back, sides and front.
pub(crate) fn arc_of_angle(angle: f64, girth: f64, side: f64) -> f64 {
    use std::f64::consts::{FRAC_PI_2, TAU};
    let angle = angle.rem_euclid(TAU);
    let (turned, mirror) = if angle > 0.5 * TAU {
        (TAU - angle, true)
    } else {
        (angle, false)
    };
    let s = if turned <= FRAC_PI_2 {
        side * turned / FRAC_PI_2
    } else {
        side + (0.5 * girth - side) * (turned - FRAC_PI_2) / FRAC_PI_2
    };
    if mirror { girth - s } else { s }
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
