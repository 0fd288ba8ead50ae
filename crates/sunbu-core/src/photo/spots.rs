//! The places to mark, where the plan expects them: one list for each side.

use super::camera::Place;
use super::mark::{Mark, View};
use super::spot::{Spot, Together, Where};
use crate::body::{Body, BodyMeasure};
use crate::drape::{Drape, FOLD_OUT, OBI_OUT, OBI_WIDTH, Round};

/// How far the hair stands above the crown, and how surely, in centimetres (chosen).
const HAIR: (f64, f64) = (1.6, 0.9);
/// How far the collars stand out from the surface, in centimetres (chosen).
const COLLAR_OUT: f64 = 0.3;
/// Within so much of the right side line the corner may lie on either side of the outline, in
/// centimetres of arc (chosen: what a turned stance makes).
const MARGIN: f64 = 4.0;
/// A hand's breadth inside the outline, as an arc, and a hand's length above the hem, in centimetres.
const INSET: f64 = 8.0;
const ABOVE_HEM: f64 = 18.0;
/// Outer ankle bone: beyond the middle of the foot, in centimetres (chosen).
const ANKLE_OUT: f64 = 3.3;
/// Width of the collar at the nape, folded as it is worn, in centimetres (S137: about 5.5).
const COLLAR_WIDTH: f64 = 5.5;
/// Arms are lowered by about this much where a photo is taken, in degrees.
const ARM_DOWN_DEG: f64 = 45.0;

/// The lists of one person in one dressing.
pub(super) struct Spots<'a> {
    pub body: &'a Body,
    pub drape: &'a Drape<'a>,
    /// Centre back to sleeve end of the garment, in centimetres.
    pub yuki: f64,
}

impl Spots<'_> {
    /// Every place that may be marked from this side.
    pub fn of(&self, view: View) -> Vec<Spot> {
        let shown = Mark::ALL.iter().filter(|mark| mark.shows_in(view));
        shown.map(|&mark| self.spot(mark, view)).collect()
    }

    fn spot(&self, mark: Mark, view: View) -> Spot {
        let free = |at: Place, sd: [f64; 3]| (Where::Free(at), sd, Together::Alone);
        let (at, sd, together) = match mark {
            Mark::Floor => free(self.floor(view), [1.5, 1.2, 0.05]),
            Mark::Crown => {
                let figure = self.body.shape().figure();
                let own = self.body.measure(BodyMeasure::Stature).sd_cm();
                let z = figure.stature + HAIR.0;
                free(
                    [0.0, figure.crown_ahead(), z],
                    [1.5, 1.5, own.hypot(HAIR.1)],
                )
            }
            Mark::AnkleLeft => self.ankle(1.0),
            Mark::AnkleRight => self.ankle(-1.0),
            Mark::HemLeft => self.hem(view, true),
            Mark::HemRight => self.hem(view, false),
            Mark::HemCentre => self.hem_centre(view),
            Mark::UwamaeCorner => self.edge(self.drape.outer_corner, 0.0),
            Mark::EdgeAtFold => self.edge(self.drape.fold.right, 0.0),
            Mark::CollarEnd => self.edge(self.drape.collar_end, 0.0),
            Mark::SkirtLeft => self.skirt(true),
            Mark::SkirtRight => self.skirt(false),
            Mark::HipLeft => self.hip(true),
            Mark::HipRight => self.hip(false),
            Mark::FoldLeft => self.beside(view, self.drape.fold, FOLD_OUT, true),
            Mark::FoldRight => self.beside(view, self.drape.fold, FOLD_OUT, false),
            Mark::FoldCentre => self.middle(view, self.drape.fold, FOLD_OUT, 1.5, Together::Fold),
            Mark::ObiLowerLeft => self.beside(view, self.drape.obi, OBI_OUT, true),
            Mark::ObiLowerRight => self.beside(view, self.drape.obi, OBI_OUT, false),
            Mark::ObiLowerCentre => self.middle(view, self.drape.obi, OBI_OUT, 0.8, Together::Obi),
            Mark::ObiSideLeft => self.obi_side(true),
            Mark::ObiSideRight => self.obi_side(false),
            Mark::ObiUpperLeft => self.beside(view, self.drape.obi_top(), OBI_OUT, true),
            Mark::ObiUpperRight => self.beside(view, self.drape.obi_top(), OBI_OUT, false),
            Mark::ObiUpperCentre => {
                self.middle(view, self.drape.obi_top(), OBI_OUT, 0.8, Together::Obi)
            }
            Mark::ObiageTop => {
                let top = self.drape.obi_top().raised(self.drape.obiage);
                self.middle(View::Front, top, 0.5 * OBI_OUT, 1.5, Together::Obi)
            }
            Mark::KimonoCrossing => self.crossing(self.drape.kimono_overlap),
            Mark::JubanCrossing => self.crossing(self.drape.juban_overlap),
            Mark::CollarShoulderLeft => self.collar_shoulder(true),
            Mark::CollarShoulderRight => self.collar_shoulder(false),
            Mark::CollarTieLeft => self.collar_tie(true),
            Mark::CollarTieRight => self.collar_tie(false),
            Mark::JubanEdgeLeft => self.juban_edge(true),
            Mark::JubanEdgeRight => self.juban_edge(false),
            Mark::Nape => free(self.drape.nape(), [1.5, 1.5, 3.0]),
            Mark::SeamNape => self.seam(self.drape.nape()[2] - COLLAR_WIDTH, 2.0),
            Mark::SeamWaist => self.seam(self.drape.drum.top, 3.0),
            Mark::SeamHip => self.seam(self.body.value_cm(BodyMeasure::HipHeight), 3.0),
            Mark::SeamHem => self.seam(self.drape.hem, 1.5),
            Mark::DrumTop => free(
                self.drape.drum_at(0.0, self.drape.drum.top),
                [2.0, 2.0, 3.0],
            ),
            Mark::DrumBottom => free(
                self.drape.drum_at(0.0, self.drape.drum.bottom),
                [2.0, 2.0, 3.0],
            ),
            Mark::TareEnd => free(
                self.drape.drum_at(0.0, self.drape.drum.tail),
                [2.0, 2.0, 3.0],
            ),
            Mark::SleeveEndLeft => self.arm(1.0, self.yuki),
            Mark::SleeveEndRight => self.arm(-1.0, self.yuki),
            Mark::WristLeft => self.arm(1.0, self.body.value_cm(BodyMeasure::SpineToWrist)),
            Mark::WristRight => self.arm(-1.0, self.body.value_cm(BodyMeasure::SpineToWrist)),
        };
        Spot {
            mark,
            at,
            sd,
            together,
        }
    }

    fn floor(&self, view: View) -> Place {
        let figure = self.body.shape().figure();
        match view {
            View::Front => [0.0, figure.toes_ahead(), 0.0],
            View::Back => [0.0, -figure.heel_behind(), 0.0],
            View::Right => [-figure.foot_beside() - ANKLE_OUT, 0.0, 0.0],
            View::Left => [figure.foot_beside() + ANKLE_OUT, 0.0, 0.0],
        }
    }

    fn ankle(&self, left: f64) -> Expected {
        let beside = self.body.shape().figure().foot_beside() + ANKLE_OUT;
        let bone = self.body.measure(BodyMeasure::AnkleHeight);
        let at = [left * beside, 0.0, bone.value_cm()];
        (
            Where::Free(at),
            [2.0, 2.0, bone.sd_cm().hypot(0.5)],
            Together::Alone,
        )
    }

    /// The arc a hand's breadth inside the outline, on the half that this side shows. The outline is
    /// taken to lie at the side line; how far it lies beside it is the mark's own.
    fn inside(&self, view: View, z: f64, left: bool) -> f64 {
        let (girth, side) = (self.drape.surface.girth(z), self.drape.surface.side_arc(z));
        let inward = match view {
            View::Back => -INSET,
            View::Front | View::Right | View::Left => INSET,
        };
        if left {
            side + inward
        } else {
            girth - side - inward
        }
    }

    /// A line round the body, a hand's breadth inside its outline.
    fn beside(&self, view: View, line: Round, out: f64, left: bool) -> Expected {
        let s = self.inside(view, if left { line.left } else { line.right }, left);
        let z = self.drape.height_on(line, s);
        let (sd, together) = if out == FOLD_OUT {
            (1.5, Together::Fold)
        } else {
            (0.8, Together::Obi)
        };
        (Where::Lying { s, z, out }, [3.0, sd, 0.0], together)
    }

    /// The hem's height at an arc, and its deviation: the outer panel's where its edge lies well
    /// behind it, the back panel's where it ends well before it, and between the two in the margin,
    /// where either may be.
    fn hem_at(&self, s: f64) -> (f64, f64) {
        let z = self.drape.hem;
        let past = self.drape.outer_edge(self.drape.outer_corner) - s;
        let share = (0.5 + 0.5 * past / MARGIN).clamp(0.0, 1.0);
        let raised = self.drape.hem_at(s) - z;
        (
            z + share * raised,
            1.5 + 2.0 * share * (1.0 - share) * raised,
        )
    }

    fn hem(&self, view: View, left: bool) -> Expected {
        let s = self.inside(view, self.drape.hem, left);
        let (z, sd) = self.hem_at(s);
        (
            Where::Lying { s, z, out: 0.0 },
            [3.0, sd, 0.0],
            Together::Hem,
        )
    }

    fn obi_side(&self, left: bool) -> Expected {
        let line = self.drape.obi.raised(0.5 * OBI_WIDTH);
        let z = if left { line.left } else { line.right };
        outline(z, OBI_OUT, left, 3.0)
    }

    fn skirt(&self, left: bool) -> Expected {
        outline(self.drape.hem + ABOVE_HEM, 0.0, left, 3.0)
    }

    fn hem_centre(&self, view: View) -> Expected {
        let surface = &self.drape.surface;
        let (girth, side) = (
            surface.girth(self.drape.hem),
            surface.side_arc(self.drape.hem),
        );
        let s = match view {
            View::Front => 0.5 * girth,
            View::Back => 0.0,
            View::Right => girth - side,
            View::Left => side,
        };
        let (z, sd) = self.hem_at(s);
        (
            Where::Lying { s, z, out: 0.0 },
            [1.5, sd, 0.0],
            Together::Hem,
        )
    }

    /// A place on the outer front edge.
    fn edge(&self, z: f64, out: f64) -> Expected {
        let s = self.drape.outer_edge(z);
        (Where::Lying { s, z, out }, [4.0, 3.0, 0.0], Together::Alone)
    }

    fn hip(&self, left: bool) -> Expected {
        outline(self.body.value_cm(BodyMeasure::HipHeight), 0.0, left, 2.0)
    }

    /// A line round the body where it faces the lens.
    fn middle(&self, view: View, line: Round, out: f64, sd: f64, together: Together) -> Expected {
        let surface = &self.drape.surface;
        let z = match view {
            View::Front => line.front,
            View::Back => line.back,
            View::Right => line.right,
            View::Left => line.left,
        };
        let (girth, side) = (surface.girth(z), surface.side_arc(z));
        let s = match view {
            View::Front => 0.5 * girth,
            View::Back => 0.0,
            View::Right => girth - side,
            View::Left => side,
        };
        (Where::Lying { s, z, out }, [1.5, sd, 0.0], together)
    }

    fn crossing(&self, overlap: f64) -> Expected {
        let at = self
            .drape
            .collar(overlap, self.drape.crossing(overlap), true, COLLAR_OUT);
        (
            Where::Free([0.0, at[1], at[2]]),
            [2.0, 1.0, 3.0],
            Together::Alone,
        )
    }

    fn collar_shoulder(&self, left: bool) -> Expected {
        let overlap = self.drape.kimono_overlap;
        let at = self
            .drape
            .collar(overlap, self.drape.side_neck, left, COLLAR_OUT);
        (Where::Free(at), [1.5, 1.5, 1.5], Together::Alone)
    }

    /// The collar from the left shoulder runs over the other one down to the obiage; the other is
    /// hidden by it where they cross.
    fn collar_tie(&self, left: bool) -> Expected {
        let overlap = self.drape.kimono_overlap;
        let z = if left {
            self.drape.obi_top().front + self.drape.obiage
        } else {
            self.drape.crossing(overlap)
        };
        let at = self.drape.collar(overlap, z, left, COLLAR_OUT);
        (Where::Free(at), [2.0, 1.0, 2.0], Together::Alone)
    }

    fn juban_edge(&self, left: bool) -> Expected {
        let overlap = self.drape.juban_overlap;
        let z = 0.5 * (self.drape.side_neck + self.drape.crossing(overlap));
        let at = self.drape.collar(overlap, z, left, COLLAR_OUT);
        (Where::Free(at), [2.0, 1.0, 2.0], Together::Alone)
    }

    fn seam(&self, z: f64, sd: f64) -> Expected {
        let s = self.drape.back_seam(z);
        (
            Where::Lying { s, z, out: 0.0 },
            [3.0, sd, 0.0],
            Together::Alone,
        )
    }

    /// A place on the middle line of an arm, `reach` from the centre back.
    fn arm(&self, left: f64, reach: f64) -> Expected {
        let figure = self.body.shape().figure();
        let [beside, height] = figure.shoulder;
        let (sin, cos) = ARM_DOWN_DEG.to_radians().sin_cos();
        let beyond = reach - beside;
        let at = [left * (beside + beyond * cos), 0.0, height - beyond * sin];
        (Where::Free(at), [15.0, 0.7, 15.0], Together::Alone)
    }
}

type Expected = (Where, [f64; 3], Together);

/// A place on the outline, its height as free as said.
fn outline(z: f64, out: f64, left: bool, sd: f64) -> Expected {
    let at = Where::Outline { z, out, left };
    (at, [sd, 0.0, 0.0], Together::Alone)
}
