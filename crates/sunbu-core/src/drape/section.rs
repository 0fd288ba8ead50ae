//! One level section of the clothed body, as points and outward normals at equal shares of each
//! quarter.

use std::f64::consts::FRAC_PI_2;

use crate::body::Outline;

/// Places along each quarter of a section: neighbours at the hip are about 1 cm apart.
const QUARTER: usize = 24;

/// A place of a section and the outward direction there, of length one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spot {
    pub point: [f64; 2],
    pub normal: [f64; 2],
}

impl Spot {
    /// The spot a share of the way to `other`; the normal's length is left as it comes.
    pub fn toward(self, other: Spot, t: f64) -> Spot {
        let mix = |a: [f64; 2], b: [f64; 2]| [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
        Spot {
            point: mix(self.point, other.point),
            normal: mix(self.normal, other.normal),
        }
    }
}

/// The left half of the section at one height, resampled at equal arcs in each quarter.
#[derive(Debug, Clone)]
pub(super) struct Level {
    pub z: f64,
    /// From the centre back over the left side line, at [`QUARTER`], to the centre front.
    spots: Vec<Spot>,
}

impl Level {
    /// A body's outline scaled and then moved outward by `thickness`.
    pub fn of_outline(z: f64, outline: &Outline, scale: f64, thickness: f64) -> Self {
        let points = outline.points();
        let half = points.len() / 2;
        // The outline runs from the centre back over the left side, which it counts negative.
        let left: Vec<[f64; 2]> = points[..=half]
            .iter()
            .map(|p| [-p[0] * scale, p[1] * scale])
            .collect();
        let moved: Vec<[f64; 2]> = left
            .iter()
            .zip(normals(&left))
            .map(|(p, n)| [p[0] + thickness * n[0], p[1] + thickness * n[1]])
            .collect();
        let side = points.len() / 4;
        let mut spots = resampled(&moved[..=side]);
        spots.extend(resampled(&moved[side..]).into_iter().skip(1));
        Self::of_points(z, spots)
    }

    /// A circle about a point of the middle plane.
    pub fn circle(z: f64, ahead: f64, radius: f64) -> Self {
        let turn = |i: usize| FRAC_PI_2 * i as f64 / QUARTER as f64;
        let at = |i: usize| [radius * turn(i).sin(), ahead - radius * turn(i).cos()];
        Self::of_points(z, (0..=2 * QUARTER).map(at).collect())
    }

    fn of_points(z: f64, points: Vec<[f64; 2]>) -> Self {
        let spots = points
            .iter()
            .zip(normals(&points))
            .map(|(&point, normal)| Spot { point, normal })
            .collect();
        Self { z, spots }
    }

    /// The spot a share of the way along the back or the front quarter of the left half.
    pub fn at(&self, front: bool, share: f64) -> Spot {
        let place = share * QUARTER as f64;
        let i = whole_steps(place);
        let first = if front { QUARTER } else { 0 } + i;
        self.spots[first].toward(self.spots[first + 1], place - i as f64)
    }

    /// Half the breadth at the side line.
    pub fn half_breadth(&self) -> f64 {
        self.spots[QUARTER].point[0]
    }

    /// Lengths of the back and the front quarter.
    #[cfg(test)]
    pub fn lengths(&self) -> [f64; 2] {
        let length = |spots: &[Spot]| {
            spots
                .windows(2)
                .map(|w| {
                    let (p, q) = (w[0].point, w[1].point);
                    (q[0] - p[0]).hypot(q[1] - p[1])
                })
                .sum()
        };
        [
            length(&self.spots[..=QUARTER]),
            length(&self.spots[QUARTER..]),
        ]
    }
}

/// Outward directions along a left half that runs from the centre back to the centre front.
fn normals(points: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let last = points.len() - 1;
    (0..=last)
        .map(|i| {
            // On the middle line the section turns straight back or ahead.
            let [dx, dy] = match i {
                0 => [1.0, 0.0],
                i if i == last => [-1.0, 0.0],
                i => [
                    points[i + 1][0] - points[i - 1][0],
                    points[i + 1][1] - points[i - 1][1],
                ],
            };
            let length = dx.hypot(dy).max(1e-9);
            // Walking from the back over the left to the front, outward is to the right.
            [dy / length, -dx / length]
        })
        .collect()
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
