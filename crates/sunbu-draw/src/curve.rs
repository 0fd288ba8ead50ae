//! Lines on the figure: points as the viewer sees them, runs of what is seen, paths.

use crate::svg::number;

/// A point of a view, in centimetres: `x` to the viewer's right of the body's middle, `z` above
/// the floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pt {
    /// To the viewer's right of the body's middle.
    pub x: f64,
    /// Above the floor.
    pub z: f64,
}

/// A point.
pub(crate) const fn pt(x: f64, z: f64) -> Pt {
    Pt { x, z }
}

impl Pt {
    /// The point a share `t` of the way to `other`.
    pub fn toward(self, other: Pt, t: f64) -> Pt {
        pt(
            self.x + t * (other.x - self.x),
            self.z + t * (other.z - self.z),
        )
    }

    /// The same point moved.
    pub fn moved(self, dx: f64, dz: f64) -> Pt {
        pt(self.x + dx, self.z + dz)
    }

    /// Distance to another point, in centimetres.
    pub fn distance(self, other: Pt) -> f64 {
        (other.x - self.x).hypot(other.z - self.z)
    }

    /// The point mirrored left to right.
    pub fn mirrored(self) -> Pt {
        pt(-self.x, self.z)
    }
}

/// Points left to right mirrored, in reverse order: closes an outline drawn for one side.
pub(crate) fn mirrored_back(points: &[Pt]) -> Vec<Pt> {
    points.iter().rev().map(|p| p.mirrored()).collect()
}

/// How far a simplified line may leave the full one, in centimetres: a tenth of a hair line.
const TOLERANCE_CM: f64 = 0.012;

/// The line with the points left out that do not bend it: Douglas and Peucker's way (1973).
pub(crate) fn simplified(points: &[Pt]) -> Vec<Pt> {
    if points.len() < 3 {
        return points.to_vec();
    }
    let mut keep = vec![false; points.len()];
    let last = points.len() - 1;
    keep[0] = true;
    keep[last] = true;
    let mut spans = vec![(0, last)];
    while let Some((a, b)) = spans.pop() {
        let far = (a + 1..b)
            .map(|i| (i, off_line(points[i], points[a], points[b])))
            .max_by(|p, q| p.1.total_cmp(&q.1));
        if let Some((i, off)) = far.filter(|f| f.1 > TOLERANCE_CM) {
            keep[i] = true;
            spans.push((a, i));
            spans.push((i, b));
            debug_assert!(off.is_finite());
        }
    }
    points
        .iter()
        .zip(keep)
        .filter_map(|(p, k)| k.then_some(*p))
        .collect()
}

/// Distance of `p` from the stretch `a` to `b`.
fn off_line(p: Pt, a: Pt, b: Pt) -> f64 {
    let (dx, dz) = (b.x - a.x, b.z - a.z);
    let length = dx * dx + dz * dz;
    if length == 0.0 {
        return p.distance(a);
    }
    let t = (((p.x - a.x) * dx + (p.z - a.z) * dz) / length).clamp(0.0, 1.0);
    p.distance(a.toward(b, t))
}

/// Where a view's points go on paper: user units, y down.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Paper {
    /// User units of the body's middle from the left.
    pub middle: f64,
    /// User units of the floor from the top.
    pub floor: f64,
    /// User units per centimetre of body.
    pub scale: f64,
}

impl Paper {
    pub fn x(&self, p: Pt) -> f64 {
        self.middle + p.x * self.scale
    }

    pub fn y(&self, p: Pt) -> f64 {
        self.floor - p.z * self.scale
    }

    /// Path data of a line; joined at its end when `closed`.
    pub fn path(&self, points: &[Pt], closed: bool) -> String {
        let mut out = String::new();
        let (mut x0, mut y0) = (String::new(), String::new());
        for (i, p) in simplified(points).into_iter().enumerate() {
            let (x, y) = (number(self.x(p)), number(self.y(p)));
            if i > 0 && x == x0 && y == y0 {
                continue;
            }
            out.push(if i == 0 { 'M' } else { 'L' });
            out.push_str(&x);
            out.push(' ');
            out.push_str(&y);
            (x0, y0) = (x, y);
        }
        if closed {
            out.push('Z');
        }
        out
    }
}

/// A smooth line through the points: Catmull and Rom's spline, `steps` stretches for each span.
pub(crate) fn smooth(points: &[Pt], steps: u32) -> Vec<Pt> {
    let n = points.len();
    if n < 3 {
        return points.to_vec();
    }
    let mut out = Vec::with_capacity(n * steps as usize);
    for i in 0..n - 1 {
        let (p1, p2) = (points[i], points[i + 1]);
        // At the ends the spline goes on as straight as it came.
        let p0 = if i == 0 {
            p2.toward(p1, 2.0)
        } else {
            points[i - 1]
        };
        let p3 = if i + 2 == n {
            p1.toward(p2, 2.0)
        } else {
            points[i + 2]
        };
        for k in 0..steps {
            let t = f64::from(k) / f64::from(steps);
            let blend = |a: f64, b: f64, c: f64, d: f64| {
                0.5 * (2.0 * b
                    + (c - a) * t
                    + (2.0 * a - 5.0 * b + 4.0 * c - d) * t * t
                    + (3.0 * b - a - 3.0 * c + d) * t * t * t)
            };
            out.push(pt(
                blend(p0.x, p1.x, p2.x, p3.x),
                blend(p0.z, p1.z, p2.z, p3.z),
            ));
        }
    }
    out.push(points[n - 1]);
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_simplified_circle_stays_within_the_tolerance() {
        let circle: Vec<Pt> = (0..=720)
            .map(|i| {
                let (sin, cos) = (f64::from(i) * std::f64::consts::PI / 360.0).sin_cos();
                pt(20.0 * cos, 20.0 * sin)
            })
            .collect();
        let few = simplified(&circle);
        // A chord over an angle 2a leaves the circle by r (1 - cos a): 91 chords would do, and
        // halving stretches until they do takes fewer than twice as many.
        let least = std::f64::consts::PI / (1.0 - TOLERANCE_CM / 20.0).acos();
        let got = few.len() as f64 - 1.0;
        assert!(
            (least..2.0 * least).contains(&got),
            "{got} chords against {least:.1}"
        );
        for p in &circle {
            let off = few
                .windows(2)
                .map(|w| off_line(*p, w[0], w[1]))
                .fold(f64::MAX, f64::min);
            assert!(
                off <= TOLERANCE_CM + 1e-12,
                "{off} cm off against {TOLERANCE_CM}"
            );
        }
    }

    #[test]
    fn a_smooth_line_passes_through_its_points_and_keeps_straight_lines_straight() {
        let line = [pt(0.0, 0.0), pt(1.0, 2.0), pt(2.0, 4.0), pt(3.0, 6.0)];
        for p in smooth(&line, 5) {
            assert!((p.z - 2.0 * p.x).abs() < 1e-12, "{p:?} leaves z = 2x");
        }
        let bent = [pt(0.0, 0.0), pt(1.0, 3.0), pt(4.0, 1.0)];
        let through = smooth(&bent, 4);
        assert!(bent.iter().all(|p| through.contains(p)), "{through:?}");
    }
}
