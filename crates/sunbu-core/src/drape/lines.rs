//! The lines of a dressed garment on its surface: hem, edges, seams, tie, fold, obi, drum.
//!
//! Every height and arc is read from what was predicted and decided; nothing is worked out here
//! but where between the predicted places a line runs.

use std::f64::consts::TAU;

use super::round::angle_of_arc;
use super::{Round, Surface, arc_of_angle};
use crate::body::Body;
use crate::dressing::{Appearance, Decision, Dressing, Fitting, Given, Quantity};

/// Width of the obi as it lies round the body, in centimetres (S50, S55, S56: 15 to 15.7).
pub const OBI_WIDTH: f64 = 15.5;
/// How far the obi stands out from the cloth under it, in centimetres (chosen for the eye).
pub const OBI_OUT: f64 = 1.1;
/// How far the double fold stands out, in centimetres (chosen for the eye).
pub const FOLD_OUT: f64 = 0.5;
/// Width of drum and tail: the obi's full width, in centimetres (S50, S55, S56: about 30).
pub const DRUM_WIDTH: f64 = 30.0;
/// How far the drum's top stands above the obi, for the pillow, in centimetres (chosen).
const PILLOW: f64 = 4.0;
/// How far the drum stands out behind the obi, at its top for the pillow and at its lower fold,
/// and the tail's end behind the cloth there, in centimetres (chosen for the eye).
const DRUM_OUT: (f64, f64, f64) = (8.0, 6.0, 2.0);

/// Drum and tail: their heights, in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drum {
    /// Upper edge.
    pub top: f64,
    /// Lower fold.
    pub bottom: f64,
    /// Lower end of the tail (tare).
    pub tail: f64,
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

/// The lines of one dressing; heights and arcs in centimetres.
#[derive(Debug, Clone)]
pub struct Drape<'a> {
    /// The surface that they lie on.
    pub surface: Surface<'a>,
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
    /// Drum and tail.
    pub drum: Drum,
    /// Width of the obiage left to see above the obi, at the front.
    pub obiage: f64,
    /// Back seam's arc at the hip.
    pub back_seam_hip: f64,
    /// Back seam's arc above the fold.
    pub back_seam_top: f64,
    /// Half the breadth of the neck's base.
    pub half_neck: f64,
    /// The side neck point's height.
    pub side_neck: f64,
    /// The back neck point's height.
    pub back_neck: f64,
    /// Nape drop.
    pub nape_drop: f64,
    /// The chest tie's height.
    pub chest_tie: f64,
    /// Half the overlap of the juban's collars at the chest tie.
    pub juban_overlap: f64,
    /// Half the overlap of the kimono's collars at the chest tie.
    pub kimono_overlap: f64,
    widths: Widths,
}

impl<'a> Drape<'a> {
    /// The lines of this dressing, whose `appearance` was predicted, on this person.
    pub fn new(
        body: &Body,
        fitting: &'a Fitting,
        dressing: &Dressing,
        appearance: &Appearance,
    ) -> Self {
        use Quantity as Q;
        let seen = |q: Q| appearance.get(q);
        let done = |d: Decision| dressing.get(d);
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
        let drum_top = obi.raised(OBI_WIDTH).back + PILLOW;
        let drum_bottom = drum_top - seen(Q::DrumHeight);
        Self {
            surface: Surface::new(body, fitting, dressing, appearance),
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
            drum: Drum {
                top: drum_top,
                bottom: drum_bottom,
                tail: drum_bottom - seen(Q::TareLength),
            },
            obiage: seen(Q::ObiageShow),
            back_seam_hip: seen(Q::BackSeamHip),
            back_seam_top: seen(Q::BackSeamTop),
            half_neck: given(Given::NeckBaseGirth) / TAU,
            side_neck: given(Given::SideNeck),
            back_neck: given(Given::BackNeck),
            nape_drop: seen(Q::NapeDrop),
            chest_tie: given(Given::UnderBust) - given(Given::ChestTieDrop),
            juban_overlap: done(Decision::JubanOverlap),
            kimono_overlap: done(Decision::KimonoOverlap),
            widths,
        }
    }

    /// Upper edge of the obi.
    pub fn obi_top(&self) -> Round {
        self.obi.raised(OBI_WIDTH)
    }

    /// Height of the hem of the outer panel and the back at an arc: level to the left side seam,
    /// from there straight up to the raised corner.
    pub fn hem_at(&self, s: f64) -> f64 {
        let width = self.widths.front + self.widths.okumi_hem;
        let share = ((s - self.left_seam()) / width).clamp(0.0, 1.0);
        self.hem + share * (self.outer_corner - self.hem)
    }

    /// Arc of the outer front edge at a height; above the collar end, of the collar, which runs
    /// straight over the body to the side neck point.
    pub fn outer_edge(&self, z: f64) -> f64 {
        let edge = |z: f64| self.okumi_seam() + self.okumi(z - self.outer_corner);
        let end = self.collar_end;
        if z <= end {
            return edge(z);
        }
        let past_middle = edge(end) - 0.5 * self.surface.girth(end);
        let share = (z - end) / (self.side_neck - end).max(1.0);
        0.5 * self.surface.girth(z) + past_middle - share * (past_middle + self.half_neck)
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
        self.surface.girth(z) + self.back_seam_hip - width
    }

    /// Arc of the left side seam.
    pub fn left_seam(&self) -> f64 {
        self.back_seam_hip + self.widths.back
    }

    /// Arc of the right side seam at a height.
    pub fn right_seam(&self, z: f64) -> f64 {
        self.surface.girth(z) + self.back_seam_hip - self.widths.back
    }

    /// Arc of the outer okumi seam.
    pub fn okumi_seam(&self) -> f64 {
        self.left_seam() + self.widths.front
    }

    /// Arc of the back seam at a height: from its place at the tie straight to the one above the
    /// fold, which it has reached at the obi's upper edge.
    pub fn back_seam(&self, z: f64) -> f64 {
        let (low, high) = (self.tie.back, self.obi_top().back);
        let share = ((z - low) / (high - low)).clamp(0.0, 1.0);
        self.back_seam_hip + share * (self.back_seam_top - self.back_seam_hip)
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

    /// The angle of an arc at a height: 0 at the back, a quarter turn at the left side.
    pub fn turn_at(&self, s: f64, z: f64) -> f64 {
        angle_of_arc(s, self.surface.girth(z), self.surface.side_arc(z))
    }

    /// The height of a line round the body at an arc, in centimetres.
    pub fn height_on(&self, line: Round, s: f64) -> f64 {
        let z = 0.25 * (line.back + line.left + line.front + line.right);
        line.at(self.turn_at(s, z))
    }

    /// The place of a line round the body at an angle (0 at the back, a quarter turn at the left
    /// side), standing out by `out` centimetres.
    pub fn round_at(&self, line: Round, turn: f64, out: f64) -> [f64; 3] {
        let z = line.at(turn);
        let (girth, side) = (self.surface.girth(z), self.surface.side_arc(z));
        self.surface.at(arc_of_angle(turn, girth, side), z, out)
    }

    /// The place of a line round the body where an eye at `eye` sees the body end on the wearer's
    /// left, or on her right: on the line, standing out by `out` centimetres.
    pub fn round_silhouette(&self, line: Round, out: f64, eye: [f64; 3], left: bool) -> [f64; 3] {
        let mut z = if left { line.left } else { line.right };
        let mut s = 0.0;
        // The line is nearly level, so the height found last moves the arc by very little.
        for _ in 0..3 {
            s = self.surface.silhouette(z, out, eye, left);
            let (girth, side) = (self.surface.girth(z), self.surface.side_arc(z));
            z = line.at(angle_of_arc(s, girth, side));
        }
        self.surface.at(s, z, out)
    }

    /// The place on the drum or its tail at a height, so far to the wearer's left of the middle.
    ///
    /// Both hang as boards behind the obi: the pillow holds the drum off at its top, and the tail
    /// lies nearly on the cloth.
    pub fn drum_at(&self, left: f64, z: f64) -> [f64; 3] {
        let Drum { top, bottom, tail } = self.drum;
        let (at_top, at_bottom, at_tail) = DRUM_OUT;
        let behind = |z: f64, out: f64| self.surface.at(0.0, z, out)[1];
        let obi = behind(self.obi.back + 0.5 * OBI_WIDTH, OBI_OUT);
        let between = |low: (f64, f64), high: (f64, f64)| {
            let t = (z - low.0) / (high.0 - low.0).max(0.1);
            low.1 + t * (high.1 - low.1)
        };
        let bottom_at = (bottom, obi - at_bottom);
        let ahead = if z >= bottom {
            between(bottom_at, (top, obi - at_top))
        } else {
            let end = behind(tail, FOLD_OUT + at_tail).max(obi - at_bottom - 4.0);
            between((tail, end), bottom_at)
        };
        [left, ahead, z]
    }
}
