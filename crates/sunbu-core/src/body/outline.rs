//! The outline of a hull section: a convex closed curve with given girth, breadth, depths and side arc.
//!
//! Each half is two quarters of superellipses, `|x/a|^n + |y/b|^n = 1`, that share the half breadth
//! `a` and the exponent `n` and meet at the side line, where the tangent points straight ahead. The
//! height `y_s` of the side line on the side-to-side axis and the exponent are solved so that the
//! back quarter has the side arc and both together half the girth (own construction). For `n >= 1`
//! every quarter is convex, and tangents agree where quarters meet.

use std::f64::consts::FRAC_PI_2;
use std::sync::OnceLock;

use super::hull::Section;

/// Exponents tried: 1 is a rhombus, 24 a rectangle to within 3 % of its corner.
const EXPONENTS: (f64, f64) = (1.0, 24.0);
/// Points of a quarter when its length is measured: a chord shortfall below 0.02 % at exponent 2.
const MEASURE_POINTS: u32 = 40;

/// A closed convex polygon; arc 0 at the centre back, growing over the wearer's left side.
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    points: Vec<[f64; 2]>,
    arc: Vec<f64>,
}

impl Outline {
    /// The outline of a section with at least `n` vertices (a multiple of four, at least 16).
    ///
    /// Its girth is exact. Where a section is not quite possible (the side arc too long for the
    /// depth), the nearest possible curve is scaled to the girth.
    pub(crate) fn of(section: &Section, n: usize) -> Outline {
        let quarter = u32::try_from(n.div_ceil(4))
            .unwrap_or(u32::MAX)
            .clamp(4, 10_000);
        let a = 0.5 * section.breadth;
        let (exponent, side_y) = solve(section, a);
        let mut left = Vec::new();
        let back = quarter_points(a, section.back + side_y, exponent, quarter);
        let front = quarter_points(a, section.front - side_y, exponent, quarter);
        // quarter points run from the axis tip (0, b) to the side (a, 0)
        left.extend(back.iter().map(|[x, y]| [-x, side_y - y]));
        left.extend(front.iter().rev().skip(1).map(|[x, y]| [-x, side_y + y]));
        let mirrored: Vec<[f64; 2]> = left[1..left.len() - 1]
            .iter()
            .rev()
            .map(|[x, y]| [-x, *y])
            .collect();
        left.extend(mirrored);
        let mut outline = Outline {
            arc: cumulative(&left),
            points: left,
        };
        let factor = section.girth / outline.girth_cm();
        for p in &mut outline.points {
            *p = [p[0] * factor, p[1] * factor];
        }
        outline.arc = cumulative(&outline.points);
        outline
    }

    /// The vertices: x to the wearer's right, y forward, in centimetres; not repeated at the end.
    #[must_use]
    pub fn points(&self) -> &[[f64; 2]] {
        &self.points
    }

    /// Length of the closed polygon, in centimetres.
    #[must_use]
    pub fn girth_cm(&self) -> f64 {
        self.arc[self.arc.len() - 1]
    }

    /// The point at arc `s` centimetres from the centre back over the left side; `s` may run round
    /// more than once or backwards.
    #[must_use]
    pub fn point_at(&self, s: f64) -> [f64; 2] {
        let s = if s.is_finite() {
            s.rem_euclid(self.girth_cm())
        } else {
            0.0
        };
        let n = self.points.len();
        let i = (self.arc.partition_point(|&k| k <= s)).clamp(1, n) - 1;
        let (p, q) = (self.points[i], self.points[(i + 1) % n]);
        let length = self.arc[i + 1] - self.arc[i];
        let t = if length > 0.0 {
            (s - self.arc[i]) / length
        } else {
            0.0
        };
        [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]
    }
}

/// Arc at each vertex, and the whole girth last.
fn cumulative(points: &[[f64; 2]]) -> Vec<f64> {
    let mut arc = vec![0.0];
    let mut sum = 0.0;
    for (i, p) in points.iter().enumerate() {
        let q = points[(i + 1) % points.len()];
        sum += (q[0] - p[0]).hypot(q[1] - p[1]);
        arc.push(sum);
    }
    arc
}

/// Points of a quarter from `(0, b)` to `(a, 0)`.
fn quarter_points(a: f64, b: f64, exponent: f64, steps: u32) -> Vec<[f64; 2]> {
    let power = 2.0 / exponent;
    (0..=steps)
        .map(|i| {
            if i == 0 {
                return [0.0, b];
            }
            if i == steps {
                return [a, 0.0];
            }
            let (sin, cos) = (FRAC_PI_2 * f64::from(i) / f64::from(steps)).sin_cos();
            [a * sin.powf(power), b * cos.powf(power)]
        })
        .collect()
}

/// Length of a quarter, in centimetres.
///
/// The same points as [`quarter_points`] gives, with the sines' logarithms taken once: this is
/// what an outline spends its time on. The cosines are the sines in reverse.
fn quarter_length(a: f64, b: f64, exponent: f64) -> f64 {
    const N: usize = MEASURE_POINTS as usize;
    static LOG_SINES: OnceLock<[f64; N + 1]> = OnceLock::new();
    let logs = LOG_SINES
        .get_or_init(|| std::array::from_fn(|i| (FRAC_PI_2 * i as f64 / N as f64).sin().ln()));
    let power = 2.0 / exponent;
    let mut sines = [0.0; N + 1];
    for (sine, log) in sines.iter_mut().zip(logs).skip(1) {
        *sine = (power * log).exp();
    }
    (0..N)
        .map(|i| {
            let across = a * (sines[i + 1] - sines[i]);
            let along = b * (sines[N - i] - sines[N - i - 1]);
            (across * across + along * along).sqrt()
        })
        .sum()
}

/// Exponent and place of the side line by Newton's method, where it gets there: on bodies in four
/// to six steps, a tenth of the work of the search in [`solve`].
///
/// Unknown are `1/n`, in which lengths run nearly straight, and the side line's place; to be met
/// are the arcs of the back and of the front quarter. `None` at the rim of the possible.
fn newton(section: &Section, a: f64) -> Option<(f64, f64)> {
    let (back_arc, front_arc) = (section.side_arc, 0.5 * section.girth - section.side_arc);
    let misses = |inverse: f64, y: f64| {
        [
            quarter_length(a, section.back + y, 1.0 / inverse) - back_arc,
            quarter_length(a, section.front - y, 1.0 / inverse) - front_arc,
        ]
    };
    let margin = 0.05 * (section.front + section.back);
    let (mut inverse, mut y) = (0.45, 0.5 * (section.front - section.back));
    for _ in 0..12 {
        let now = misses(inverse, y);
        if now.iter().all(|m| m.abs() < 1e-9) {
            return Some((1.0 / inverse, y));
        }
        // Forward differences: their error only slows the last steps.
        let (step_i, step_y) = (1e-6, 1e-5);
        let by_inverse = misses(inverse + step_i, y);
        let by_y = misses(inverse, y + step_y);
        let slope = |k: usize| {
            (
                (by_inverse[k] - now[k]) / step_i,
                (by_y[k] - now[k]) / step_y,
            )
        };
        let ((p, q), (r, s)) = (slope(0), slope(1));
        let det = p * s - q * r;
        inverse -= (s * now[0] - q * now[1]) / det;
        y -= (p * now[1] - r * now[0]) / det;
        let possible = (1.0 / EXPONENTS.1..=1.0 / EXPONENTS.0).contains(&inverse)
            && (margin - section.back..=section.front - margin).contains(&y);
        if !possible {
            return None;
        }
    }
    None
}

/// Exponent and place of the side line.
fn solve(section: &Section, a: f64) -> (f64, f64) {
    newton(section, a).unwrap_or_else(|| search(section, a))
}

/// Exponent and place of the side line by search, one within the other: it always ends.
fn search(section: &Section, a: f64) -> (f64, f64) {
    let half = 0.5 * section.girth;
    let margin = 0.05 * (section.front + section.back);
    let side_at = |exponent: f64| {
        let split = |y: f64| {
            let back = quarter_length(a, section.back + y, exponent);
            let front = quarter_length(a, section.front - y, exponent);
            back / (back + front) - section.side_arc / half
        };
        root(split, margin - section.back, section.front - margin)
    };
    let misses = |exponent: f64| {
        let y = side_at(exponent);
        quarter_length(a, section.back + y, exponent)
            + quarter_length(a, section.front - y, exponent)
            - half
    };
    let exponent = root(misses, EXPONENTS.0, EXPONENTS.1);
    (exponent, side_at(exponent))
}

/// Root of a rising function by false position with the Illinois step; the nearer end when there is none.
fn root(f: impl Fn(f64) -> f64, low: f64, high: f64) -> f64 {
    let (mut x0, mut x1) = (low, high);
    let (mut f0, mut f1) = (f(x0), f(x1));
    if f0 >= 0.0 {
        return low;
    }
    if f1 <= 0.0 {
        return high;
    }
    // false position gains more than a digit a step here; sixty steps bound it even by halving alone
    for _ in 0..60 {
        let x = (x0 * f1 - x1 * f0) / (f1 - f0);
        let y = f(x);
        if y.abs() < 1e-9 || (x1 - x0) < 1e-10 {
            return x;
        }
        if y < 0.0 {
            (x0, f0) = (x, y);
            f1 *= 0.5;
        } else {
            (x1, f1) = (x, y);
            f0 *= 0.5;
        }
    }
    0.5 * (x0 + x1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::TAU;

    #[test]
    fn a_circle_comes_out_as_a_circle() {
        let r = 14.0;
        let section = Section {
            girth: TAU * r,
            breadth: 2.0 * r,
            front: r,
            back: r,
            side_arc: TAU * r / 4.0,
        };
        let outline = Outline::of(&section, 400);
        for p in outline.points() {
            let got = p[0].hypot(p[1]);
            // the length of a quarter is measured on 40 chords, short by 0.006 %; the exponent takes that up
            assert!((got - r).abs() < 0.01, "radius {got} against {r}");
        }
    }

    #[test]
    fn girth_breadth_depth_and_side_arc_are_those_asked_for_and_the_polygon_is_convex() {
        let section = Section {
            girth: 92.0,
            breadth: 33.5,
            front: 10.4,
            back: 11.0,
            side_arc: 23.4,
        };
        let outline = Outline::of(&section, 240);
        let p = outline.points();
        assert!(
            (outline.girth_cm() - 92.0).abs() < 1e-9,
            "girth {} against 92",
            outline.girth_cm()
        );
        let reach = |f: &dyn Fn(&[f64; 2]) -> f64| p.iter().map(f).fold(f64::MIN, f64::max);
        for (got, want, name) in [
            (reach(&|p| p[0]) - -reach(&|p| -p[0]), 33.5, "breadth"),
            (reach(&|p| p[1]), 10.4, "front"),
            (reach(&|p| -p[1]), 11.0, "back"),
            (
                -outline.point_at(23.4)[0],
                16.75,
                "half breadth at the side arc",
            ),
        ] {
            // chords of both polygons against each other: below 0.02 % of the girth
            assert!((got - want).abs() < 0.02, "{name}: {got} against {want}");
        }
        for i in 0..p.len() {
            let (a, b, c) = (p[i], p[(i + 1) % p.len()], p[(i + 2) % p.len()]);
            let turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
            assert!(turn <= 1e-12, "vertex {i} turns the wrong way: {turn}");
        }
    }

    #[test]
    fn a_quarter_is_as_long_as_its_points_say() {
        for (a, b, exponent) in [
            (17.0, 11.0, 2.0),
            (12.0, 20.0, 1.0),
            (16.0, 9.0, 3.7),
            (5.0, 5.0, 24.0),
        ] {
            let points = quarter_points(a, b, exponent, MEASURE_POINTS);
            let want: f64 = points
                .windows(2)
                .map(|w| (w[1][0] - w[0][0]).hypot(w[1][1] - w[0][1]))
                .sum();
            let got = quarter_length(a, b, exponent);
            // A power taken through its logarithm differs in the last digits alone.
            assert!((got - want).abs() < 1e-11, "{got} against {want}");
        }
    }

    #[test]
    fn newton_and_the_search_find_the_same_curve() {
        for (girth, breadth, front, back, side_arc) in [
            (92.0, 33.5, 10.4, 11.0, 23.4),
            (70.0, 25.0, 11.0, 6.0, 16.5),
            (64.0, 23.8, 11.8, 3.9, 14.6),
            (110.0, 38.0, 14.0, 15.5, 27.9),
            (45.0, 16.0, 5.9, 4.6, 11.0),
        ] {
            let section = Section {
                girth,
                breadth,
                front,
                back,
                side_arc,
            };
            let want = search(&section, 0.5 * breadth);
            let got = newton(&section, 0.5 * breadth).expect("a possible section");
            // Both stop within about 1e-6 of the arcs asked for; 1e-4 cm is not seen.
            assert!(
                (got.0 - want.0).abs() < 1e-4,
                "exponent {} against {}",
                got.0,
                want.0
            );
            assert!(
                (got.1 - want.1).abs() < 1e-4,
                "place {} against {}",
                got.1,
                want.1
            );
        }
    }

    #[test]
    fn arcs_wrap_round_and_mirror() {
        let section = Section {
            girth: 70.0,
            breadth: 25.0,
            front: 11.0,
            back: 6.0,
            side_arc: 16.5,
        };
        let outline = Outline::of(&section, 160);
        for k in 0..40 {
            let s = f64::from(k) * 1.7;
            let (left, right) = (outline.point_at(s), outline.point_at(-s));
            assert!(
                (left[0] + right[0]).abs() < 1e-9 && (left[1] - right[1]).abs() < 1e-9,
                "{left:?} {right:?}"
            );
            let round = outline.point_at(s + 140.0);
            assert!((left[0] - round[0]).abs() < 1e-9, "{left:?} {round:?}");
        }
    }
}
