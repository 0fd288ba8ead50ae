//! Where every mark really is, on the picture and in space.
//!
//! Outlines are found by trying many places round the body for the widest sight line; what is
//! hidden is found by rays against the triangles that are painted.

use std::collections::BTreeMap;
use std::f64::consts::{PI, TAU};

use sunbu_core::drape::{DRUM_WIDTH, FOLD_OUT, OBI_OUT, OBI_WIDTH, Round, arc_of_angle};
use sunbu_core::photo::{Mark, View};

use crate::dressed::{Collar, Dressed, OBIAGE_OUT};
use crate::lens::Lens;
use crate::mesh::Patch;
use crate::vector::{V3, add, cross, dot, length, sub, times};

/// Places tried round the body for the widest sight line: 0.02 cm apart.
const TRIED: u32 = 720;
/// A hand's breadth along a line, and a hand's length above the hem, in centimetres.
const HAND: f64 = 8.0;
const HAND_LENGTH: f64 = 18.0;
/// What lies nearer before a mark than this does not hide it, in centimetres.
fn spare(mark: Mark) -> f64 {
    match mark {
        // Hair and brow hide the crown itself, but a hand that marks knows where it is.
        Mark::Crown => f64::MAX,
        // The collar stands up from the ring that the surface has for the neck's base.
        Mark::CollarShoulderLeft | Mark::CollarShoulderRight => 9.0,
        // At an outline the cloth itself comes so near to the sight line.
        _ => 2.5,
    }
}

/// How far above an edge a place is marked that is to be just above it, in centimetres.
const JUST: f64 = 0.3;

/// One mark as it really is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seen {
    /// On the picture, in pixels.
    pub pixel: [f64; 2],
    /// In the wearer's frame, in centimetres.
    pub world: [f64; 3],
    /// Whether nothing hides it and it lies on the picture.
    pub visible: bool,
}

/// Every mark that the view can show.
pub type Truth = BTreeMap<Mark, Seen>;

/// Finds the marks of one dressed person before one lens.
pub(crate) struct Finder<'a> {
    pub dressed: &'a Dressed<'a>,
    pub lens: &'a Lens,
    pub view: View,
}

impl Finder<'_> {
    /// The horizontal bearing of a place from the lens, growing to the viewer's right; 0 at the
    /// body's middle.
    fn bearing(&self, place: V3) -> f64 {
        let eye = self.lens.position;
        let angle = |p: V3| (p[1] - eye[1]).atan2(p[0] - eye[0]);
        let turned = angle(place) - angle([0.0; 3]);
        // Left, ahead, up is a left-handed frame: angles from left to ahead run with the clock.
        (turned + 3.0 * PI).rem_euclid(TAU) - PI
    }

    /// The turns at which a closed line ends on the wearer's left and right; from the side, at
    /// the viewer's left and right.
    fn ends(&self, line: impl Fn(f64) -> V3) -> [V3; 2] {
        let widest = |sign: f64| {
            let at = |turn: f64| sign * self.bearing(line(turn));
            let tried = (0..TRIED).map(|i| TAU * f64::from(i) / f64::from(TRIED));
            let best = tried
                .max_by(|a, b| at(*a).total_cmp(&at(*b)))
                .unwrap_or_default();
            // Between the neighbours the bearing has one summit.
            let step = TAU / f64::from(TRIED);
            let (mut low, mut high) = (best - step, best + step);
            for _ in 0..40 {
                let (a, b) = (low + (high - low) / 3.0, high - (high - low) / 3.0);
                if at(a) < at(b) { low = a } else { high = b }
            }
            line(0.5 * (low + high))
        };
        let (left, right) = (widest(-1.0), widest(1.0));
        match self.view {
            // Her left is at the right of one who stands before her.
            View::Front => [right, left],
            View::Back | View::Right | View::Left => [left, right],
        }
    }

    /// The places a hand's breadth inside both ends of a line, on the side that faces the lens.
    fn inside(&self, line: impl Fn(f64) -> V3) -> [V3; 2] {
        let facing = match self.view {
            View::Front => PI,
            View::Back => 0.0,
            View::Right => 1.5 * PI,
            View::Left => 0.5 * PI,
        };
        let apart = |a: V3, b: V3| length(sub(a, b));
        let growing = self.bearing(line(facing + 0.1)) > self.bearing(line(facing));
        self.ends(&line).map(|end| {
            // The turns from the middle to this end, and back along the line by a hand.
            let sign = if (self.bearing(end) > 0.0) == growing {
                1.0
            } else {
                -1.0
            };
            let at = |i: u32| line(facing + sign * PI * f64::from(i) / f64::from(TRIED));
            let nearest =
                (0..TRIED).min_by(|&a, &b| apart(at(a), end).total_cmp(&apart(at(b), end)));
            let (mut i, mut passed) = (nearest.unwrap_or_default(), 0.0);
            while passed < HAND && i > 0 {
                passed += apart(at(i), at(i - 1));
                i -= 1;
            }
            at(i)
        })
    }

    /// The middle of a line: on the middle line, or from the side midway between its ends.
    fn middle(&self, line: impl Fn(f64) -> V3) -> V3 {
        match self.view {
            View::Front => line(PI),
            View::Back => line(0.0),
            View::Right | View::Left => {
                let ends = self.ends(&line).map(|p| self.bearing(p));
                let wanted = 0.5 * (ends[0] + ends[1]);
                let (mut low, mut high) = match self.view {
                    View::Right => (PI, TAU),
                    _ => (0.0, PI),
                };
                let growing = self.bearing(line(high)) > self.bearing(line(low));
                for _ in 0..50 {
                    let turn = 0.5 * (low + high);
                    if (self.bearing(line(turn)) < wanted) == growing {
                        low = turn;
                    } else {
                        high = turn;
                    }
                }
                line(0.5 * (low + high))
            }
        }
    }

    /// A line round the body, `out` from the surface.
    fn round(&self, line: Round, out: f64) -> impl Fn(f64) -> V3 {
        let surface = &self.dressed.drape.surface;
        move |turn: f64| {
            let z = line.at(turn);
            surface.at(
                arc_of_angle(turn, surface.girth(z), surface.side_arc(z)),
                z,
                out,
            )
        }
    }

    /// The hem as a closed line: of the back on the right, of the outer panel in front.
    fn hem(&self) -> impl Fn(f64) -> V3 {
        let dressed = self.dressed;
        let d = &dressed.drape;
        move |turn: f64| {
            let (girth, side) = (d.surface.girth(d.hem), d.surface.side_arc(d.hem));
            let s = arc_of_angle(turn, girth, side);
            // Where the outer panel ends or the right side begins, the back's lower hem is seen.
            let outer = s < d.outer_edge(d.outer_corner) && s < girth - side;
            let z = if outer {
                dressed.hem(s)
            } else {
                dressed.back_hem(s)
            };
            d.surface.at(s * d.surface.girth(z) / girth, z, 0.0)
        }
    }

    /// The body's outline at one height, over the fold where that hangs so low.
    fn outline(&self, z: f64) -> [V3; 2] {
        let d = &self.dressed.drape;
        let surface = &d.surface;
        let (girth, side) = (surface.girth(z), surface.side_arc(z));
        self.ends(move |turn: f64| {
            let under_fold = z < d.fold.at(turn);
            let out = if under_fold { 0.0 } else { FOLD_OUT };
            surface.at(arc_of_angle(turn, girth, side), z, out)
        })
    }

    /// Where the back seam comes out above the obi or, as the lens sees it, above the drum.
    fn seam_above_drum(&self) -> V3 {
        let d = &self.dressed.drape;
        let half = 0.5 * DRUM_WIDTH;
        let pixel = |p: V3| self.lens.project(p).map_or([0.0, f64::MAX], |p| p.0);
        let [a, b] = [-half, half].map(|x| pixel(d.drum_at(x, d.drum.top)));
        let is_above = |p: [f64; 2]| {
            let share = (p[0] - a[0]) / (b[0] - a[0]);
            p[1] < a[1] + share * (b[1] - a[1])
        };
        let (mut low, mut high) = (d.obi_top().back, d.back_neck - d.nape_drop);
        for _ in 0..50 {
            let z = 0.5 * (low + high);
            if is_above(pixel(self.dressed.on_back_seam(z))) {
                high = z;
            } else {
                low = z;
            }
        }
        // Seen from above, the pillow fills the way from the drum to the back.
        self.dressed.on_back_seam(high.max(d.drum.top) + JUST)
    }

    /// Where a collar from the left or the right shoulder goes under the obi, the obiage, or the
    /// other collar.
    fn collar_tie(&self, left: bool) -> V3 {
        let (dressed, d) = (self.dressed, &self.dressed.drape);
        let top = d.obi_top();
        let covered = |z: f64| {
            let x = dressed.collar_x(Collar::Kimono, z, left);
            let (girth, s) = (d.surface.girth(z), d.surface.front_arc(x, z));
            let turn = dressed.turn(s, z);
            let show = if d.obiage > 0.1 {
                d.obiage * (0.4 - 0.6 * turn.cos())
            } else {
                0.0
            };
            debug_assert!(s <= girth);
            z < top.at(turn) + show
        };
        let (mut low, mut high) = (d.chest_tie.min(top.front) - 5.0, d.side_neck);
        for _ in 0..50 {
            let z = 0.5 * (low + high);
            if covered(z) {
                low = z;
            } else {
                high = z;
            }
        }
        let crossing = dressed.crossing(Collar::Kimono)[1];
        let z = if left { low } else { low.max(crossing) };
        dressed.on_breast(dressed.collar_x(Collar::Kimono, z, left), z)
    }

    /// Where the outer front edge goes under the fold, as the lens sees it: the fold stands out
    /// before it.
    fn edge_at_fold(&self) -> V3 {
        let d = &self.dressed.drape;
        let edge = |z: f64| d.surface.at(d.outer_edge(z), z, 0.0);
        let fold = self.round(d.fold, FOLD_OUT);
        let height = |p: V3| self.lens.project(p).map_or(0.0, |(pixel, _)| pixel[1]);
        let is_below = |z: f64| {
            let turn = self.dressed.turn(d.outer_edge(z), z);
            let wanted = self.bearing(edge(z));
            let (mut low, mut high) = (turn - 0.5, turn + 0.5);
            let growing = self.bearing(fold(high)) > self.bearing(fold(low));
            for _ in 0..40 {
                let middle = 0.5 * (low + high);
                if (self.bearing(fold(middle)) < wanted) == growing {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            height(edge(z)) > height(fold(low))
        };
        let around = d.fold.right;
        let (mut low, mut high) = (around - 12.0, around + 12.0);
        for _ in 0..40 {
            let z = 0.5 * (low + high);
            if is_below(z) {
                low = z;
            } else {
                high = z;
            }
        }
        edge(low)
    }

    fn floor(&self) -> V3 {
        let b = &self.dressed.build;
        let (heel, toe) = b.foot();
        let under = |[x, y, _]: V3| [x, y, 0.0];
        match self.view {
            View::Front => [0.0, toe, 0.0],
            View::Back => [0.0, heel, 0.0],
            View::Right => under(b.ankle(false)),
            View::Left => under(b.ankle(true)),
        }
    }

    /// Where a mark is in space.
    #[allow(clippy::too_many_lines, reason = "one line for each mark")]
    pub fn world(&self, mark: Mark) -> V3 {
        use Mark as M;
        let (dressed, d) = (self.dressed, &self.dressed.drape);
        let b = &dressed.build;
        let ([left, right], top) = ([0, 1], d.obi_top());
        let breast = |collar: Collar, z: f64, left: bool| {
            dressed.on_breast(dressed.collar_x(collar, z, left), z)
        };
        let crossed = |collar: Collar| {
            let [x, z] = dressed.crossing(collar);
            dressed.on_breast(x, z)
        };
        let shown = |left: bool| {
            let z = 0.5 * (d.side_neck + dressed.crossing(Collar::Juban)[1]);
            breast(Collar::Juban, z, left)
        };
        let edge = |z: f64| d.surface.at(d.outer_edge(z), z, 0.0);
        match mark {
            M::Floor => self.floor(),
            M::Crown => b.crown(),
            M::AnkleLeft => b.ankle(true),
            M::AnkleRight => b.ankle(false),
            M::HemLeft => self.inside(self.hem())[left],
            M::HemCentre => self.middle(self.hem()),
            M::HemRight => self.inside(self.hem())[right],
            M::UwamaeCorner => edge(dressed.corner().0),
            M::EdgeAtFold => self.edge_at_fold(),
            M::CollarEnd => edge(dressed.corner().1),
            M::SkirtLeft => self.outline(d.hem + HAND_LENGTH)[left],
            M::SkirtRight => self.outline(d.hem + HAND_LENGTH)[right],
            M::HipLeft => self.outline(dressed.hip)[left],
            M::HipRight => self.outline(dressed.hip)[right],
            M::FoldLeft => self.inside(self.round(d.fold, FOLD_OUT))[left],
            M::FoldCentre => self.middle(self.round(d.fold, FOLD_OUT)),
            M::FoldRight => self.inside(self.round(d.fold, FOLD_OUT))[right],
            M::ObiLowerLeft => self.inside(self.round(d.obi, OBI_OUT))[left],
            M::ObiLowerCentre => self.middle(self.round(d.obi, OBI_OUT)),
            M::ObiLowerRight => self.inside(self.round(d.obi, OBI_OUT))[right],
            M::ObiSideLeft => self.ends(self.round(d.obi.raised(0.5 * OBI_WIDTH), OBI_OUT))[left],
            M::ObiSideRight => self.ends(self.round(d.obi.raised(0.5 * OBI_WIDTH), OBI_OUT))[right],
            M::ObiUpperLeft => self.inside(self.round(top, OBI_OUT))[left],
            M::ObiUpperCentre => self.middle(self.round(top, OBI_OUT)),
            M::ObiUpperRight => self.inside(self.round(top, OBI_OUT))[right],
            M::ObiageTop => self.round(top.raised(d.obiage), OBIAGE_OUT)(PI),
            M::KimonoCrossing => crossed(Collar::Kimono),
            M::JubanCrossing => crossed(Collar::Juban),
            M::CollarShoulderLeft => breast(Collar::Kimono, d.side_neck, true),
            M::CollarShoulderRight => breast(Collar::Kimono, d.side_neck, false),
            M::CollarTieLeft => self.collar_tie(true),
            M::CollarTieRight => self.collar_tie(false),
            M::JubanEdgeLeft => shown(true),
            M::JubanEdgeRight => shown(false),
            M::Nape => d.nape_line(0.0),
            M::SeamNape => dressed.on_back_seam(d.back_neck - d.nape_drop - dressed.collar_width),
            M::SeamWaist => self.seam_above_drum(),
            M::SeamHip => {
                let z = dressed.hip;
                let (s, under) = (d.back_seam(z), z < d.fold.back);
                d.surface.at(s, z, if under { 0.0 } else { FOLD_OUT })
            }
            M::SeamHem => {
                let z = dressed.back_hem(d.back_seam_hip);
                d.surface.at(d.back_seam(z), z, 0.0)
            }
            M::DrumTop => d.drum_at(0.0, d.drum.top),
            M::DrumBottom => d.drum_at(0.0, d.drum.bottom),
            M::TareEnd => add(d.drum_at(0.0, d.drum.tail), [0.0, 1.0, 0.0]),
            M::SleeveEndLeft => b.along_arm(true, dressed.yuki, crate::build::SLEEVE_LIFT),
            M::SleeveEndRight => b.along_arm(false, dressed.yuki, crate::build::SLEEVE_LIFT),
            M::WristLeft => b.wrist(true),
            M::WristRight => b.wrist(false),
        }
    }

    /// Every mark that the view can show, hidden or not by `before`.
    pub fn truth(&self, before: &[Patch]) -> Truth {
        let screen = Screen::of(self.lens, before);
        let marks = Mark::ALL.iter().filter(|m| m.shows_in(self.view));
        marks
            .filter_map(|&mark| {
                let world = self.world(mark);
                let (pixel, _) = self.lens.project(world)?;
                let hidden = screen.hides(self.lens.position, world, pixel, spare(mark));
                let visible = self.lens.holds(pixel) && !hidden;
                let seen = Seen {
                    pixel,
                    world,
                    visible,
                };
                Some((mark, seen))
            })
            .collect()
    }
}

/// The triangles before a lens, with the box that each takes on the picture.
struct Screen {
    boxes: Vec<[f64; 4]>,
    corners: Vec<[V3; 3]>,
}

impl Screen {
    fn of(lens: &Lens, patches: &[Patch]) -> Self {
        let (mut boxes, mut corners) = (Vec::new(), Vec::new());
        for patch in patches {
            let pixels: Vec<Option<[f64; 2]>> = patch
                .vertices
                .iter()
                .map(|v| lens.project(v.at).map(|p| p.0))
                .collect();
            for t in patch.triangles() {
                let [Some(a), Some(b), Some(c)] = t.map(|i| pixels[i]) else {
                    continue;
                };
                let least = |i: usize| a[i].min(b[i]).min(c[i]);
                let most = |i: usize| a[i].max(b[i]).max(c[i]);
                boxes.push([least(0), least(1), most(0), most(1)]);
                corners.push(t.map(|i| patch.vertices[i].at));
            }
        }
        Self { boxes, corners }
    }

    /// Whether a triangle lies clearly before a place, as seen from `eye`.
    fn hides(&self, eye: V3, place: V3, [x, y]: [f64; 2], spare: f64) -> bool {
        let way = sub(place, eye);
        let far = length(way);
        let within = |b: &[f64; 4]| b[0] <= x && x <= b[2] && b[1] <= y && y <= b[3];
        self.boxes
            .iter()
            .zip(&self.corners)
            .filter(|(b, _)| within(b))
            .any(|(_, corners)| {
                hit(eye, times(way, 1.0 / far), corners).is_some_and(|at| at < far - spare)
            })
    }
}

/// How far along a ray it meets a triangle (Moller and Trumbore 1997, from memory).
fn hit(eye: V3, ray: V3, [a, b, c]: &[V3; 3]) -> Option<f64> {
    let (ab, ac) = (sub(*b, *a), sub(*c, *a));
    let p = cross(ray, ac);
    let whole = dot(ab, p);
    if whole.abs() < 1e-12 {
        return None;
    }
    let from = sub(eye, *a);
    let u = dot(from, p) / whole;
    let q = cross(from, ab);
    let v = dot(ray, q) / whole;
    let inside = (0.0..=1.0).contains(&u) && v >= 0.0 && u + v <= 1.0;
    inside.then(|| dot(ac, q) / whole).filter(|t| *t > 0.0)
}
