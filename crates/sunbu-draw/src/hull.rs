//! The clothed hull, and where a place on its surface is seen.
//!
//! Arc `s` runs from 0 at the centre back over the wearer's left side, the centre front and the
//! right side. From the skirt's top upward the hull is the body's, with the layers and the
//! padding that are worn; below it the skirt hangs as a cone: the section at its top, scaled to
//! the loop that the raised front edges leave. Arc and height give one place, so a line that
//! runs round the side goes out of sight where the cloth does.

use std::f64::consts::{FRAC_PI_2, TAU};

use sunbu_core::body::{Body, BodyMeasure, Shape};
use sunbu_core::dressing::{Decision, Dressing, Fitting, Given, Prediction, Quantity};

/// Places along each quarter of a section: neighbours at the hip are about 1 cm apart.
const QUARTER: usize = 24;
/// Vertices asked of the body's outline.
const VERTICES: usize = 96;

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

/// The section at one height: half of it, resampled at equal arcs in each quarter.
#[derive(Debug, Clone)]
struct Level {
    z: f64,
    /// From the centre back to the left side line.
    back: Vec<[f64; 2]>,
    /// From the left side line to the centre front.
    front: Vec<[f64; 2]>,
}

/// How the skirt narrows below its top.
#[derive(Debug, Clone, Copy)]
struct Skirt {
    top: f64,
    hem: f64,
    loss: f64,
}

/// The hull of the clothed body of one dressing.
#[derive(Debug, Clone)]
pub struct Hull<'a> {
    shape: &'a Shape,
    scale: f64,
    layers: f64,
    /// Up to which height the hip's padding counts, and its thickness.
    hip: (f64, f64),
    /// Height of the waist, and thickness of its padding.
    waist: (f64, f64),
    under_bust: f64,
    skirt: Skirt,
    levels: Vec<Level>,
}

impl<'a> Hull<'a> {
    /// The hull of `body` in this dressing.
    pub fn new(
        body: &Body,
        fitting: &'a Fitting,
        dressing: &Dressing,
        prediction: &Prediction,
    ) -> Self {
        let shape = fitting.shape();
        let hip = fitting.value(Given::HipHeight);
        let taped = body.measure(BodyMeasure::HipHeight).value_cm();
        let hem = prediction.value(Quantity::HemBack);
        let end = fitting.value(Given::Erishita) + prediction.value(Quantity::UwamaeCorner);
        let waist = body.measure(BodyMeasure::WaistHeight).value_cm();
        let obi = dressing.get(Decision::ObiLowerEdge);
        let mut hull = Self {
            shape,
            scale: fitting.value(Given::HipGirth) / shape.girth(taped),
            layers: fitting.value(Given::Layers),
            hip: (hip.max(end), dressing.get(Decision::HipPadding)),
            waist: (waist, dressing.get(Decision::WaistPadding)),
            under_bust: fitting.value(Given::UnderBust),
            // The cover at the collar end is the body's, so the cone begins no higher than that.
            skirt: Skirt {
                top: hip.min(end).max(hem + 10.0),
                hem,
                loss: prediction.value(Quantity::HemTaper),
            },
            levels: Vec::new(),
        };
        let top = hull.skirt.top;
        // An outline takes time, so few are made: where lines run close together.
        let mut heights = vec![top, obi, obi + 6.0, waist.max(obi) + 8.0];
        if obi - top > 8.0 {
            heights.push(0.5 * (top + obi));
        }
        heights.sort_by(f64::total_cmp);
        heights.dedup_by(|b, a| *b - *a < 2.0);
        hull.levels = heights.into_iter().map(|z| hull.level(z)).collect();
        hull
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
        let arc = self.shape.side_arc(at) * self.scale + self.thickness(at) * FRAC_PI_2;
        arc * self.narrowing(z)
    }

    /// Half the breadth of the clothed hull at a height, in centimetres.
    pub fn half_breadth(&self, z: f64) -> f64 {
        let at = z.max(self.skirt.top);
        (0.5 * self.shape.breadth(at) * self.scale + self.thickness(at)) * self.narrowing(z)
    }

    /// Height of the skirt's top: the hip, or the collar end where that is lower.
    pub fn skirt_top(&self) -> f64 {
        self.skirt.top
    }

    fn body_girth(&self, z: f64) -> f64 {
        self.shape.girth(z) * self.scale + self.thickness(z) * TAU
    }

    /// The skirt's loop at a height over the girth at its top.
    fn narrowing(&self, z: f64) -> f64 {
        let Skirt { top, hem, loss } = self.skirt;
        let whole = self.body_girth(top);
        let share = ((top - z) / (top - hem)).clamp(0.0, 1.1);
        // No loop is tighter than half the hip: there the legs would not fit into it.
        (1.0 - share * loss / whole).max(0.5)
    }

    /// Where arc `s` at height `z` is seen: `s` may run round more than once or backwards.
    pub fn project(&self, s: f64, z: f64) -> Seen {
        let (girth, side) = (self.girth(z), self.side_arc(z));
        let s = if s.is_finite() {
            s.rem_euclid(girth)
        } else {
            0.0
        };
        let (turned, mirror) = if s > 0.5 * girth {
            (girth - s, -1.0)
        } else {
            (s, 1.0)
        };
        let front = turned > side;
        let share = if front {
            (turned - side) / (0.5 * girth - side)
        } else {
            turned / side
        };
        let [left, ahead] = self.place(front, share.clamp(0.0, 1.0), z);
        Seen {
            left: mirror * left,
            ahead,
            front,
        }
    }

    /// The place a share of the way along the left back or the left front quarter.
    fn place(&self, front: bool, share: f64, z: f64) -> [f64; 2] {
        let at = z.max(self.skirt.top);
        let above = self.levels.partition_point(|l| l.z <= at);
        let (low, high) = (above.saturating_sub(1), above.min(self.levels.len() - 1));
        let on = |level: &Level| {
            let points = if front { &level.front } else { &level.back };
            let place = share * QUARTER as f64;
            let i = whole_steps(place);
            let t = place - i as f64;
            let (p, q) = (points[i], points[i + 1]);
            [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]
        };
        let (a, b) = (&self.levels[low], &self.levels[high]);
        let t = if b.z > a.z {
            ((at - a.z) / (b.z - a.z)).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let (p, q) = (on(a), on(b));
        let half = |l: &Level| l.front[0][0];
        let mixed = half(a) + t * (half(b) - half(a));
        // Between two levels the breadth is the body's own, not the mean of theirs.
        let breadth = self.half_breadth(at) / mixed;
        let narrow = self.narrowing(z);
        [
            (p[0] + t * (q[0] - p[0])) * breadth * narrow,
            (p[1] + t * (q[1] - p[1])) * narrow,
        ]
    }

    /// The section at one height, moved outward by what is worn and resampled.
    fn level(&self, z: f64) -> Level {
        let outline = self.shape.outline(z, VERTICES);
        let points = outline.points();
        let half = points.len() / 2;
        let thickness = self.thickness(z);
        // The outline runs from the centre back over the left side, which it counts negative.
        let left: Vec<[f64; 2]> = points[..=half]
            .iter()
            .map(|p| [-p[0] * self.scale, p[1] * self.scale])
            .collect();
        let moved: Vec<[f64; 2]> = (0..=half)
            .map(|i| {
                let [dx, dy] = match i {
                    0 => [1.0, 0.0],
                    i if i == half => [-1.0, 0.0],
                    i => [
                        left[i + 1][0] - left[i - 1][0],
                        left[i + 1][1] - left[i - 1][1],
                    ],
                };
                let length = dx.hypot(dy).max(1e-9);
                // Walking from the back over the left to the front, outward is to the right.
                [
                    left[i][0] + thickness * dy / length,
                    left[i][1] - thickness * dx / length,
                ]
            })
            .collect();
        let side = points.len() / 4;
        Level {
            z,
            back: resampled(&moved[..=side]),
            front: resampled(&moved[side..]),
        }
    }
}

/// The step of a quarter that holds `place`, counted in steps from the quarter's start.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "0 to QUARTER"
)]
fn whole_steps(place: f64) -> usize {
    (place.max(0.0) as usize).min(QUARTER - 1)
}

/// `QUARTER + 1` points at equal arcs along a line.
fn resampled(line: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let step = |i: usize| (line[i + 1][0] - line[i][0]).hypot(line[i + 1][1] - line[i][1]);
    let whole: f64 = (0..line.len() - 1).map(step).sum();
    let (mut i, mut passed) = (0, 0.0);
    (0..=QUARTER)
        .map(|k| {
            let wanted = whole * k as f64 / QUARTER as f64;
            while i + 2 < line.len() && passed + step(i) < wanted {
                passed += step(i);
                i += 1;
            }
            let length = step(i);
            let t = if length > 0.0 {
                ((wanted - passed) / length).clamp(0.0, 1.0)
            } else {
                0.0
            };
            let (p, q) = (line[i], line[i + 1]);
            [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(line: &[[f64; 2]]) -> f64 {
        line.windows(2)
            .map(|w| (w[1][0] - w[0][0]).hypot(w[1][1] - w[0][1]))
            .sum()
    }

    #[test]
    fn the_drawn_section_is_as_long_round_as_the_model_says() {
        for (name, bench) in crate::bench::Bench::gallery() {
            let plan = &bench.plan;
            let hull = Hull::new(
                &bench.body,
                &bench.fitting,
                &plan.dressing,
                &plan.prediction,
            );
            for level in &hull.levels {
                let side = hull.side_arc(level.z);
                let want = [side, 0.5 * hull.girth(level.z) - side];
                let got = [&level.back, &level.front].map(|line| length(line));
                for (got, want) in got.into_iter().zip(want) {
                    // Chords of a quarter fall short by 0.1 %.
                    assert!(
                        (got / want - 1.0).abs() < 2e-3,
                        "{name}: {got} against {want}"
                    );
                }
            }
        }
    }
    #[test]
    fn arcs_between_the_outlines_are_kept_within_a_twentyfifth() {
        for (name, bench) in crate::bench::Bench::gallery() {
            let plan = &bench.plan;
            let hull = Hull::new(
                &bench.body,
                &bench.fitting,
                &plan.dressing,
                &plan.prediction,
            );
            // Above that only the silhouette is drawn, and the breadth is the body's own.
            let top = plan.dressing.get(Decision::ObiLowerEdge) + 6.0;
            let mut z = hull.skirt.hem;
            while z < top {
                let girth = hull.girth(z);
                let place = |i: i32| hull.project(girth * f64::from(i) / 200.0, z);
                for i in 0..200 {
                    let (a, b) = (place(i), place(i + 1));
                    let step = (b.left - a.left).hypot(b.ahead - a.ahead);
                    let want = girth / 200.0;
                    assert!(
                        step < 1.04 * want,
                        "{name} at {z:.1}, {i}: {step} against {want}"
                    );
                }
                z += 1.0;
            }
        }
    }

    #[test]
    fn the_outer_edge_lies_a_front_cover_before_the_right_side_line() {
        for (name, bench) in crate::bench::Bench::gallery() {
            let lines = crate::lines::Lines::new(&bench.body, &bench.fitting, &bench.plan);
            let z = lines.collar_end;
            let right = lines.hull.girth(z) - lines.hull.side_arc(z);
            let got = right - lines.outer_edge(z);
            let want = bench.plan.prediction.value(Quantity::FrontCover);
            assert!((got - want).abs() < 0.1, "{name}: {got} against {want}");
        }
    }
}
