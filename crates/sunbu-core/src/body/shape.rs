//! The hull of one body as smooth functions of height, from above the ankle to the shoulder.
//!
//! Hull: the convex hull of trunk and both legs, without the arms, since cloth and ties feel the
//! hull and not the skin. Frame: z up from the floor, x to the wearer's right, y forward from the
//! body's side-to-side axis, which stands near the middle of the ankles; centimetres. Left and
//! right are alike.
//!
//! The side line is the middle of the band that lies within 3 mm of the outermost point. The
//! outermost point itself is no good mark: on the hip of the reference bodies that band is 4 to
//! 6 cm wide, and which of its ends is outermost turns on a millimetre of thigh or buttock. A hand
//! laid on the side cannot tell either.

use std::sync::OnceLock;

use nalgebra::{DMatrix, DVector};

use super::hull::{HullTable, Knot, Section, Stretch};
use super::measures::BodyMeasure;
use super::outline::Outline;
use super::silhouette::Figure;
use super::smooth::Smooth;
use BodyMeasure as M;

const SHIPPED: &str = include_str!("../../../../data/hull/women.toml");

/// Least distance of two levels over the stature, 0.25 cm at 158; closer ones are left out (chosen,
/// so that a slope between two landmarks taped almost at one height stays bounded).
const LEAST_STEP: f64 = 0.0016;

/// How near to an end of its stretch, as a share of it, a girth taped inside begins to lose its say
/// to the landmark there (chosen; the navels of the reference bodies keep 0.23 from the waist).
const FADE: f64 = 0.15;

/// Girth over the circumference of the ellipse of the same breadth and depth: least and most.
///
/// The levels of the reference bodies have 1.007 (waist) to 1.136 (bust); a hair more is let stand.
const GIRTH_OVER_ELLIPSE: (f64, f64) = (1.005, 1.15);

/// Side arc over girth: far outside what any reference body has (0.18 to 0.26).
const SIDE_SHARE: (f64, f64) = (0.15, 0.30);

/// The hull of one body.
#[derive(Debug, Clone)]
pub struct Shape {
    girth: Smooth,
    breadth: Smooth,
    front: Smooth,
    back: Smooth,
    side_arc: Smooth,
    girth_sd: Smooth,
    girth_landmark_sd: Smooth,
    side_arc_sd: Smooth,
    figure: Figure,
}

impl HullTable {
    /// The table that comes with the program, fitted to the reference bodies (women).
    ///
    /// # Panics
    /// Never in a built program: a test reads the table.
    #[must_use]
    #[expect(
        clippy::expect_used,
        reason = "the text is compiled in and read by a test"
    )]
    pub fn shipped() -> &'static HullTable {
        static TABLE: OnceLock<HullTable> = OnceLock::new();
        TABLE.get_or_init(|| HullTable::parse(SHIPPED).expect("the shipped hull table reads"))
    }
}

impl Shape {
    /// The hull of a body whose measures are complete.
    pub(crate) fn of(
        table: &HullTable,
        value: &DVector<f64>,
        covariance: &DMatrix<f64>,
        is_taped: &dyn Fn(BodyMeasure) -> bool,
    ) -> Shape {
        let measure = |m: BodyMeasure| value[m.index()];
        let mut knots = spaced(table.knots(&measure), LEAST_STEP * measure(M::Stature));
        if is_taped(M::FullestGirth) {
            meet_fullest(&mut knots, measure(M::FullestGirth), is_taped(M::HipGirth));
        }
        if is_taped(M::NavelGirth) {
            let (low, high) = (measure(M::HipHeight), measure(M::WaistHeight));
            meet(
                &mut knots,
                measure(M::NavelHeight),
                measure(M::NavelGirth),
                low,
                high,
            );
        }
        for knot in &mut knots {
            make_possible(&mut knot.section);
        }
        let z: Vec<f64> = knots.iter().map(|k| k.z).collect();
        let curve = |part: &dyn Fn(&Knot) -> f64| {
            Smooth::through(&z, &knots.iter().map(part).collect::<Vec<_>>())
        };
        let girth = curve(&|k| k.section.girth);
        let girth_landmark_sd =
            curve(&|k| girth_landmark_sd(k, girth.at_slope(k.z).1, value, covariance));
        Shape {
            breadth: curve(&|k| k.section.breadth),
            front: curve(&|k| k.section.front),
            back: curve(&|k| k.section.back),
            side_arc: curve(&|k| k.section.side_arc),
            side_arc_sd: curve(&|k| k.side_error * k.section.girth),
            girth_sd: curve(&|k| k.girth_error * k.section.girth),
            girth_landmark_sd,
            girth,
            figure: Figure::of(&measure),
        }
    }

    /// Girth of the hull at height `z`, in centimetres.
    #[must_use]
    pub fn girth(&self, z: f64) -> f64 {
        self.girth.at(z)
    }

    /// Breadth from side to side, in centimetres.
    #[must_use]
    pub fn breadth(&self, z: f64) -> f64 {
        self.breadth.at(z)
    }

    /// Reach ahead of the side-to-side axis, in centimetres.
    #[must_use]
    pub fn depth_front(&self, z: f64) -> f64 {
        self.front.at(z)
    }

    /// Reach behind the side-to-side axis, in centimetres.
    #[must_use]
    pub fn depth_back(&self, z: f64) -> f64 {
        self.back.at(z)
    }

    /// Arc from the centre back to the left side line, in centimetres; the right side line is at
    /// `girth - side_arc`.
    #[must_use]
    pub fn side_arc(&self, z: f64) -> f64 {
        self.side_arc.at(z)
    }

    /// The section at a height, in centimetres.
    #[must_use]
    pub fn at(&self, z: f64) -> Section {
        self.at_slope(z).0
    }

    /// The section at a height and its change per centimetre of height. Both are continuous.
    #[must_use]
    pub fn at_slope(&self, z: f64) -> (Section, Section) {
        let [g, b, f, k, s] = [
            &self.girth,
            &self.breadth,
            &self.front,
            &self.back,
            &self.side_arc,
        ]
        .map(|c| c.at_slope(z));
        (
            Section {
                girth: g.0,
                breadth: b.0,
                front: f.0,
                back: k.0,
                side_arc: s.0,
            },
            Section {
                girth: g.1,
                breadth: b.1,
                front: f.1,
                back: k.1,
                side_arc: s.1,
            },
        )
    }

    /// Deviation of the girth at a height when the girths and heights it hangs on are right, in
    /// centimetres: what the hull does between landmarks, as found on reference bodies left out of
    /// the fit. Nothing at hip, waist, under-bust and bust themselves.
    #[must_use]
    pub fn girth_sd(&self, z: f64) -> f64 {
        self.girth_sd.at(z)
    }

    /// Deviation of the girth at a height with everything in it, in centimetres: the girths and
    /// heights it hangs on, and the hull between them.
    #[must_use]
    pub fn girth_whole_sd(&self, z: f64) -> f64 {
        self.girth_sd(z).hypot(self.girth_landmark_sd.at(z))
    }

    /// Deviation of the side arc at a height when the girth is right, in centimetres, as found on
    /// reference bodies left out of the fit. An error of the girth shifts the side arc by its share.
    #[must_use]
    pub fn side_arc_sd(&self, z: f64) -> f64 {
        self.side_arc_sd.at(z)
    }

    /// Lowest and highest height the hull is known for, in centimetres; beyond, it stays as there.
    #[must_use]
    pub fn span(&self) -> (f64, f64) {
        self.girth.span()
    }

    /// The outline of the section at a height, with at least `n` vertices.
    #[must_use]
    pub fn outline(&self, z: f64, n: usize) -> Outline {
        Outline::of(&self.at(z), n)
    }

    /// Landmarks and schematic head, arms and shoulders for a drawing.
    #[must_use]
    pub fn figure(&self) -> &Figure {
        &self.figure
    }

    /// Right half of the body seen from the front, floor to crown: half breadth and height, in
    /// centimetres. Feet, shoulders, neck and head are schematic.
    #[must_use]
    pub fn front_silhouette(&self) -> Vec<[f64; 2]> {
        self.figure.front(&|z| 0.5 * self.breadth(z), self.span())
    }

    /// The body seen from its right side, once round: forward reach and height, in centimetres,
    /// from the floor up the front over the crown down the back. Feet, neck and head are schematic.
    #[must_use]
    pub fn side_silhouette(&self) -> Vec<[f64; 2]> {
        self.figure.side(
            &|z| self.depth_front(z),
            &|z| self.depth_back(z),
            self.span(),
        )
    }
}

/// The levels without those too close to the one below; a landmark ousts what lies below it.
fn spaced(all: Vec<Knot>, least_step: f64) -> Vec<Knot> {
    let mut kept: Vec<Knot> = Vec::with_capacity(all.len());
    for knot in all {
        while kept
            .last()
            .is_some_and(|k| knot.z - k.z < least_step && knot.at == 0.0 && k.at != 0.0)
        {
            kept.pop();
        }
        if kept.last().is_none_or(|k| knot.z - k.z >= least_step) {
            kept.push(knot);
        }
    }
    kept
}

/// Scales the levels between `low` and `high`, most near `z`, so that the girth at `z` is `girth`.
///
/// Where `z` comes near one of the two, the landmark there decides more and more, and alone beyond it.
fn meet(knots: &mut [Knot], z: f64, girth: f64, low: f64, high: f64) {
    let share = (z - low) / (high - low);
    let say = (share.min(1.0 - share) / FADE).clamp(0.0, 1.0);
    if say <= 0.0 {
        return;
    }
    let weight = |k: f64| {
        if k < z {
            (k - low) / (z - low)
        } else {
            (high - k) / (high - z)
        }
    };
    let now = |knots: &[Knot]| {
        let heights: Vec<f64> = knots.iter().map(|k| k.z).collect();
        let girths: Vec<f64> = knots.iter().map(|k| k.section.girth).collect();
        Smooth::through(&heights, &girths).at(z)
    };
    let before = now(knots);
    let wanted = before + say * (girth - before);
    // the curve between levels bends with them, so the girth is met in a few rounds
    for _ in 0..8 {
        let excess = wanted / now(knots) - 1.0;
        for knot in knots.iter_mut().filter(|k| low < k.z && k.z < high) {
            scale(&mut knot.section, 1.0 + excess * weight(knot.z));
        }
    }
}

/// Scales the fullest level between thigh and belly, and its neighbours less, to the fullest girth.
fn meet_fullest(knots: &mut [Knot], girth: f64, hip_is_taped: bool) {
    let around = |k: &Knot| match k.stretch {
        Stretch::FloorToHip => k.at > 0.8,
        Stretch::HipToWaist => k.at < 0.7,
        _ => false,
    };
    let fixed = |k: &Knot| hip_is_taped && k.stretch == Stretch::HipToWaist && k.at == 0.0;
    let free = (0..knots.len()).filter(|&i| around(&knots[i]) && !fixed(&knots[i]));
    let Some(top) = free.max_by(|&i, &j| knots[i].section.girth.total_cmp(&knots[j].section.girth))
    else {
        return;
    };
    let excess = girth / knots[top].section.girth - 1.0;
    for (i, share) in [(top.wrapping_sub(1), 0.5), (top, 1.0), (top + 1, 0.5)] {
        if let Some(knot) = knots.get_mut(i).filter(|k| !fixed(k)) {
            scale(&mut knot.section, 1.0 + share * excess);
        }
    }
}

fn scale(section: &mut Section, factor: f64) {
    for part in [
        &mut section.girth,
        &mut section.breadth,
        &mut section.front,
        &mut section.back,
        &mut section.side_arc,
    ] {
        *part *= factor;
    }
}

/// Brings breadth, depth and side arc to where a convex curve of this girth can have them.
fn make_possible(section: &mut Section) {
    let ratio = section.girth / ellipse(section.breadth, section.front + section.back);
    let factor = ratio / ratio.clamp(GIRTH_OVER_ELLIPSE.0, GIRTH_OVER_ELLIPSE.1);
    section.breadth *= factor;
    section.front *= factor;
    section.back *= factor;
    section.side_arc = section
        .side_arc
        .clamp(SIDE_SHARE.0 * section.girth, SIDE_SHARE.1 * section.girth);
}

/// Circumference of an ellipse by its two diameters: Ramanujan 1914, second formula (from memory),
/// within 0.05 % down to a line.
pub(crate) fn ellipse(breadth: f64, depth: f64) -> f64 {
    let h = ((breadth - depth) / (breadth + depth)).powi(2);
    0.5 * std::f64::consts::PI
        * (breadth + depth)
        * (1.0 + 3.0 * h / (10.0 + (4.0 - 3.0 * h).sqrt()))
}

/// Deviation of a level's girth from the girths and heights it hangs on alone.
fn girth_landmark_sd(
    knot: &Knot,
    slope: f64,
    value: &DVector<f64>,
    covariance: &DMatrix<f64>,
) -> f64 {
    let pair = |(low, a): (BodyMeasure, f64), (high, b): (BodyMeasure, f64)| {
        let (i, j) = (low.index(), high.index());
        a * a * covariance[(i, i)] + b * b * covariance[(j, j)] + 2.0 * a * b * covariance[(i, j)]
    };
    let (low, high, factor) = knot.stretch.girths();
    let line = (1.0 - knot.at) * value[low.index()] + knot.at * factor * value[high.index()];
    let ratio = knot.section.girth / line;
    let of_girths = ratio * ratio * pair((low, 1.0 - knot.at), (high, knot.at * factor));
    let (low, high) = knot.stretch.landmarks();
    // the floor does not err
    let low_share = if knot.stretch == Stretch::FloorToHip {
        0.0
    } else {
        1.0 - knot.at
    };
    let of_heights = slope * slope * pair((low, low_share), (high, knot.at));
    (of_girths + of_heights).max(0.0).sqrt()
}
