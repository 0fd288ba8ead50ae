//! Lines that run once round the body.

use std::f64::consts::{FRAC_PI_2, TAU};

/// Heights of a line that runs round the body, at its four sides, in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Round {
    /// At the centre back.
    pub back: f64,
    /// At the left side.
    pub left: f64,
    /// At the centre front.
    pub front: f64,
    /// At the right side.
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
    #[must_use]
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

/// The arc at an angle counted evenly within each quarter between back, sides and front; `side`
/// is the arc from the centre back to the left side line. All but the angle in centimetres.
pub fn arc_of_angle(angle: f64, girth: f64, side: f64) -> f64 {
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

/// The angle of an arc, counted as [`arc_of_angle`] does; from nothing to a whole turn.
pub(super) fn angle_of_arc(s: f64, girth: f64, side: f64) -> f64 {
    let s = s.rem_euclid(girth);
    let (turned, mirror) = if s > 0.5 * girth {
        (girth - s, true)
    } else {
        (s, false)
    };
    let angle = if turned <= side {
        FRAC_PI_2 * turned / side
    } else {
        FRAC_PI_2 * (1.0 + (turned - side) / (0.5 * girth - side))
    };
    if mirror { TAU - angle } else { angle }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_meets_its_four_sides() {
        let line = Round {
            back: 84.0,
            left: 81.5,
            front: 80.0,
            right: 79.0,
        };
        for (turn, want) in [(0.0, 84.0), (1.0, 81.5), (2.0, 80.0), (3.0, 79.0)] {
            let got = line.at(turn * FRAC_PI_2);
            assert!((got - want).abs() < 1e-9, "{got} against {want}");
        }
    }

    #[test]
    fn an_angle_goes_to_its_arc_and_back() {
        for i in 0..40 {
            let want = TAU * f64::from(i) / 40.0;
            let got = angle_of_arc(arc_of_angle(want, 92.0, 21.0), 92.0, 21.0);
            assert!((got - want).abs() < 1e-9, "{got} against {want}");
        }
    }
}
