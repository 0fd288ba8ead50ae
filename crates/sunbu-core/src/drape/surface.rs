//! The clothed hull: where a place on it lies in space, and where a viewer sees it end.
//!
//! From the skirt's top upward the hull is the body's, with the layers and the padding that are
//! worn, up to the shoulder; from there it goes over in straight lines into the neck's base, a
//! bare circle. Below its top the skirt hangs as a cone: the section there, scaled to the loop
//! that the raised front edges leave. Arc and height give one place, so a line that runs round
//! the side goes out of sight where the cloth does.

use std::f64::consts::{FRAC_PI_2, TAU};

use super::section::{Level, Spot};
use crate::body::{Body, BodyMeasure, Shape};
use crate::dressing::{Appearance, Decision, Dressing, Fitting, Given, Quantity};

/// Vertices asked of the body's outline.
const VERTICES: usize = 96;
/// Where an outline of the section is looked for before it is found exactly: eighths of its arcs,
/// of which a convex section as seen from afar turns away in two.
const EIGHTHS: usize = 8;

/// How the skirt narrows below its top.
#[derive(Debug, Clone, Copy)]
struct Skirt {
    top: f64,
    hem: f64,
    loss: f64,
}

/// The base of the neck: its height, how far its middle lies ahead, its radius.
#[derive(Debug, Clone, Copy)]
struct Neck {
    z: f64,
    ahead: f64,
    radius: f64,
}

/// The hull of the clothed body of one dressing.
#[derive(Debug, Clone)]
pub struct Surface<'a> {
    shape: &'a Shape,
    scale: f64,
    /// How much higher the given hip lies than the shape's.
    shift: f64,
    layers: f64,
    /// Up to which height the hip's padding counts, and its thickness.
    hip: (f64, f64),
    /// Height of the waist, and thickness of its padding.
    waist: (f64, f64),
    under_bust: f64,
    skirt: Skirt,
    shoulder: f64,
    neck: Neck,
    levels: Vec<Level>,
}

/// The section at one height, between two levels.
struct Slice<'s> {
    low: &'s Level,
    high: &'s Level,
    t: f64,
    /// What the mean of the levels is scaled by, side to side and front to back.
    scale: [f64; 2],
    girth: f64,
    side: f64,
}

impl<'a> Surface<'a> {
    /// The surface of `body` in this dressing, whose `appearance` was predicted.
    ///
    /// Hip height and hip girth are the fitting's: the shape moves and grows with them as it does
    /// in the forward model.
    pub fn new(
        body: &Body,
        fitting: &'a Fitting,
        dressing: &Dressing,
        appearance: &Appearance,
    ) -> Self {
        let shape = fitting.shape();
        let figure = shape.figure();
        let hip = fitting.value(Given::HipHeight);
        let (shape_hip, shape_girth) = fitting.shape_hip();
        let hem = appearance.get(Quantity::HemBack);
        let end = fitting.value(Given::Erishita) + appearance.get(Quantity::UwamaeCorner);
        let waist = body.measure(BodyMeasure::WaistHeight).value_cm();
        let shift = hip - shape_hip;
        let shoulder = (shape.span().1 + shift).max(waist + 12.0);
        let radius = fitting.value(Given::NeckBaseGirth) / TAU;
        let mut surface = Self {
            shape,
            scale: fitting.value(Given::HipGirth) / shape_girth,
            shift,
            layers: fitting.value(Given::Layers),
            hip: (hip.max(end), dressing.get(Decision::HipPadding)),
            waist: (waist, dressing.get(Decision::WaistPadding)),
            under_bust: fitting.value(Given::UnderBust),
            // The cover at the collar end is the body's, so the cone begins no higher than that.
            skirt: Skirt {
                top: hip.min(end).max(hem + 10.0),
                hem,
                loss: appearance.get(Quantity::HemTaper),
            },
            shoulder,
            neck: Neck {
                z: fitting.value(Given::SideNeck).max(shoulder + 1.0),
                ahead: figure.back_neck[0] + radius,
                radius,
            },
            levels: Vec::new(),
        };
        let bust = body.measure(BodyMeasure::BustHeight).value_cm();
        surface.lay_levels(dressing.get(Decision::ObiLowerEdge), bust);
        surface
    }

    /// The sections that all others lie between.
    fn lay_levels(&mut self, obi: f64, bust: f64) {
        let (top, waist) = (self.skirt.top, self.waist.0);
        // An outline takes time, so few are made: where lines run close together.
        let mut heights = vec![top, obi, obi + 6.0, waist.max(obi) + 8.0];
        if obi - top > 8.0 {
            heights.push(0.5 * (top + obi));
        }
        heights.extend([self.under_bust, bust, self.shoulder]);
        heights.retain(|&z| z >= top && z <= self.shoulder);
        heights.sort_by(f64::total_cmp);
        heights.dedup_by(|b, a| *b - *a < 2.0 && *b < self.shoulder);
        self.levels = heights
            .into_iter()
            .map(|z| {
                let outline = self.shape.outline(z - self.shift, VERTICES);
                Level::of_outline(z, &outline, self.scale, self.thickness(z))
            })
            .collect();
        let Neck { z, ahead, radius } = self.neck;
        self.levels.push(Level::circle(z, ahead, radius));
    }

    /// Thickness of what is worn over the body at a height, in centimetres.
    ///
    /// The hip's padding counts up to the collar end, as in the model; above it the padding goes
    /// over into the waist's in a straight line, and to none at the under-bust.
    pub fn thickness(&self, z: f64) -> f64 {
        let (hip, waist, top) = (self.hip, self.waist, (self.under_bust, 0.0));
        let between = |a: (f64, f64), b: (f64, f64)| {
            let t = ((z - a.0) / (b.0 - a.0).max(1.0)).clamp(0.0, 1.0);
            a.1 + t * (b.1 - a.1)
        };
        let padding = match z {
            z if z <= hip.0 => hip.1,
            z if z < waist.0 => between(hip, waist),
            _ => between(waist, top),
        };
        self.layers + padding
    }

    /// Girth of the clothed hull at a height, in centimetres; the skirt's loop below its top.
    pub fn girth(&self, z: f64) -> f64 {
        self.body_girth(z.max(self.skirt.top)) * self.narrowing(z)
    }

    /// Arc from the centre back to the left side line, in centimetres.
    pub fn side_arc(&self, z: f64) -> f64 {
        let at = z.max(self.skirt.top);
        let arc = |z: f64| {
            self.shape.side_arc(z - self.shift) * self.scale + self.thickness(z) * FRAC_PI_2
        };
        self.to_neck(at, arc, self.neck.radius * FRAC_PI_2) * self.narrowing(z)
    }

    /// Half the breadth of the clothed hull at a height, in centimetres.
    pub fn half_breadth(&self, z: f64) -> f64 {
        let at = z.max(self.skirt.top);
        let half =
            |z: f64| 0.5 * self.shape.breadth(z - self.shift) * self.scale + self.thickness(z);
        self.to_neck(at, half, self.neck.radius) * self.narrowing(z)
    }

    /// Height of the skirt's top, in centimetres: the hip, or the collar end where that is lower.
    pub fn skirt_top(&self) -> f64 {
        self.skirt.top
    }

    /// Height of the shoulder, up to which the hull is the body's, in centimetres.
    pub fn shoulder(&self) -> f64 {
        self.shoulder
    }

    fn body_girth(&self, z: f64) -> f64 {
        let girth =
            |z: f64| self.shape.girth(z - self.shift) * self.scale + self.thickness(z) * TAU;
        self.to_neck(z, girth, self.neck.radius * TAU)
    }

    /// What the hull has at a height; from the shoulder up straight to what the neck has.
    fn to_neck(&self, z: f64, hull: impl Fn(f64) -> f64, neck: f64) -> f64 {
        if z <= self.shoulder {
            return hull(z);
        }
        let share = ((z - self.shoulder) / (self.neck.z - self.shoulder)).min(1.0);
        let low = hull(self.shoulder);
        low + share * (neck - low)
    }

    /// The skirt's loop at a height over the girth at its top.
    fn narrowing(&self, z: f64) -> f64 {
        let Skirt { top, hem, loss } = self.skirt;
        let whole = self.body_girth(top);
        let share = ((top - z) / (top - hem)).clamp(0.0, 1.1);
        // No loop is tighter than half the hip: there the legs would not fit into it.
        (1.0 - share * loss / whole).max(0.5)
    }

    /// The place at arc `s` and height `z`, moved outward by `out` centimetres along the
    /// section's normal: to the wearer's left, ahead, above the floor. `s` may run round more
    /// than once or backwards; one that is no number is the centre back.
    pub fn at(&self, s: f64, z: f64, out: f64) -> [f64; 3] {
        let Spot { point, normal } = self.slice(z).at(s);
        [point[0] + out * normal[0], point[1] + out * normal[1], z]
    }

    /// The outward direction of the section at arc `s` and height `z`: to the wearer's left and
    /// ahead, of length one.
    pub fn normal(&self, s: f64, z: f64) -> [f64; 2] {
        self.slice(z).at(s).normal
    }

    /// Whether the place lies on the front half, before the side lines.
    pub fn in_front(&self, s: f64, z: f64) -> bool {
        let (girth, side) = (self.girth(z), self.side_arc(z));
        let s = wrapped(s, girth);
        s.min(girth - s) > side
    }

    /// Whether the section at arc `s` and height `z` faces a viewer whose eye is at `eye`.
    pub fn faces(&self, s: f64, z: f64, eye: [f64; 3]) -> bool {
        self.slice(z).at(s).facing(0.0, eye) > 0.0
    }

    /// The arcs at which the section at height `z`, moved outward by `out`, turns away from an
    /// eye: where the outermost sight lines touch it, at the viewer's left and at her right.
    ///
    /// A section is convex, so an eye outside it sees exactly one stretch. For an eye inside
    /// there is no outline; both arcs are then the section's side lines.
    pub fn outlines(&self, z: f64, out: f64, eye: [f64; 3]) -> [f64; 2] {
        let slice = self.slice(z);
        let (girth, side) = (slice.girth, slice.side);
        let arc = |i: usize| {
            let turn = TAU * (i % EIGHTHS) as f64 / EIGHTHS as f64;
            let s = super::arc_of_angle(turn, girth, side);
            if i < EIGHTHS { s } else { s + girth }
        };
        let facing = |s: f64| slice.at(s).facing(out, eye);
        // Arcs run with the clock as seen from above: what comes to face the viewer while they
        // grow is at her right.
        let (mut left, mut right) = (girth - side, side);
        let mut below = (arc(0), facing(arc(0)));
        for i in 1..=EIGHTHS {
            let here = (arc(i), facing(arc(i)));
            match (below.1 > 0.0, here.1 > 0.0) {
                (true, false) => left = root(facing, below, here),
                (false, true) => right = root(facing, below, here),
                _ => {}
            }
            below = here;
        }
        [left, right]
    }

    /// The arc at which the section at height `z`, moved outward by `out`, touches the outermost
    /// sight line from `eye` on the wearer's left, or on her right.
    ///
    /// Seen from the side both outlines lie near the middle line; then [`Surface::outlines`]
    /// tells them apart by the viewer's hands.
    pub fn silhouette(&self, z: f64, out: f64, eye: [f64; 3], left: bool) -> f64 {
        let [a, b] = self.outlines(z, out, eye);
        let (xa, xb) = (self.at(a, z, out)[0], self.at(b, z, out)[0]);
        if (xa > xb) == left { a } else { b }
    }

    /// The arc on the front half at which the surface at height `z` lies `left` centimetres to
    /// the wearer's left; the side line where the section is no broader than that.
    pub fn front_arc(&self, left: f64, z: f64) -> f64 {
        let slice = self.slice(z);
        let x = |share: f64| slice.spot(true, share).point[0];
        let wanted = left.abs();
        // From the side line to the centre front a section only grows narrower.
        let (mut a, mut b) = (0.0, 1.0);
        if wanted < x(0.0) {
            // So many halvings leave less than a micrometre of a quarter.
            for _ in 0..24 {
                let middle = 0.5 * (a + b);
                if x(middle) > wanted {
                    a = middle;
                } else {
                    b = middle;
                }
            }
        }
        let turned = slice.side + 0.5 * (a + b) * (0.5 * slice.girth - slice.side);
        let turned = if wanted < x(0.0) { turned } else { slice.side };
        if left < 0.0 {
            slice.girth - turned
        } else {
            turned
        }
    }

    /// How far ahead the middle of the neck's base lies, in centimetres.
    pub(super) fn neck_ahead(&self) -> f64 {
        self.neck.ahead
    }

    fn slice(&self, z: f64) -> Slice<'_> {
        let at = z.max(self.skirt.top);
        let above = self.levels.partition_point(|l| l.z <= at);
        let low = &self.levels[above.saturating_sub(1)];
        let high = &self.levels[above.min(self.levels.len() - 1)];
        let t = if high.z > low.z {
            ((at - low.z) / (high.z - low.z)).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let mixed = low.half_breadth() + t * (high.half_breadth() - low.half_breadth());
        // Between two levels the breadth is the body's own, not the mean of theirs.
        let narrow = self.narrowing(z);
        Slice {
            low,
            high,
            t,
            scale: [self.half_breadth(at) / mixed * narrow, narrow],
            girth: self.girth(z),
            side: self.side_arc(z),
        }
    }

    #[cfg(test)]
    pub(super) fn levels(&self) -> &[Level] {
        &self.levels
    }
}

impl Slice<'_> {
    /// The spot at an arc.
    fn at(&self, s: f64) -> Spot {
        let (girth, side) = (self.girth, self.side);
        let s = wrapped(s, girth);
        let (turned, mirror) = if s > 0.5 * girth {
            (girth - s, -1.0)
        } else {
            (s, 1.0)
        };
        let mut spot = if turned > side {
            self.spot(true, (turned - side) / (0.5 * girth - side))
        } else {
            self.spot(false, turned / side)
        };
        spot.point[0] *= mirror;
        spot.normal[0] *= mirror;
        spot
    }

    /// The spot a share of the way along the left back or the left front quarter.
    fn spot(&self, front: bool, share: f64) -> Spot {
        let share = share.clamp(0.0, 1.0);
        let Spot { point, normal } = self
            .low
            .at(front, share)
            .toward(self.high.at(front, share), self.t);
        let [across, along] = self.scale;
        // Where a curve is stretched its normals are squeezed.
        let (nx, ny) = (normal[0] / across, normal[1] / along);
        let length = nx.hypot(ny).max(1e-9);
        Spot {
            point: [point[0] * across, point[1] * along],
            normal: [nx / length, ny / length],
        }
    }
}

impl Spot {
    /// How far the eye lies outside the tangent of the section moved outward by `out`.
    fn facing(&self, out: f64, eye: [f64; 3]) -> f64 {
        let [nx, ny] = self.normal;
        nx * (eye[0] - self.point[0]) + ny * (eye[1] - self.point[1]) - out
    }
}

/// An arc within once round.
fn wrapped(s: f64, girth: f64) -> f64 {
    if s.is_finite() {
        s.rem_euclid(girth)
    } else {
        0.0
    }
}

/// Where a continuous function changes its sign between two places: false position with the
/// Illinois rule (Dowell and Jarratt 1971, from memory), to a thousandth of a millimetre.
fn root(f: impl Fn(f64) -> f64, a: (f64, f64), b: (f64, f64)) -> f64 {
    let (mut a, mut b) = (a, b);
    for _ in 0..40 {
        if (b.0 - a.0).abs() < 1e-4 {
            break;
        }
        let s = (a.0 * b.1 - b.0 * a.1) / (b.1 - a.1);
        let here = (s, f(s));
        if here.1.abs() < 1e-7 {
            return s;
        }
        if (here.1 > 0.0) == (b.1 > 0.0) {
            a.1 *= 0.5;
            b = here;
        } else {
            (a, b) = (b, here);
        }
    }
    b.0
}

#[cfg(test)]
mod tests;
