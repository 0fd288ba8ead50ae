//! A lens as a pinhole: where a place in space falls on the upright picture.
//!
//! The wearer's frame is left-handed (left, ahead, up), so what lies to her left is at the right
//! of somebody who stands before her.

use crate::vector::{V3, add, dot, sub, times};

/// Where a lens stands, where it looks, how far the picture lies behind it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lens {
    /// Distance of the picture from the pinhole, in pixels.
    pub focal_px: f64,
    /// Where the pinhole is, in centimetres in the wearer's frame.
    pub position: [f64; 3],
    /// Direction it looks in, in radians: 0 is straight back through somebody who faces the
    /// lens, and it grows as the lens turns to its own right; half a turn looks at her back.
    pub pan: f64,
    /// How far it looks up, in radians.
    pub tilt: f64,
    /// How far it is turned with the clock about its axis, seen by the photographer, in radians.
    pub roll: f64,
    /// Width and height of the picture, in pixels; the axis meets it in the middle.
    pub size: [u32; 2],
}

/// The directions of a lens: to the picture's right, up, and ahead.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Axes {
    pub right: V3,
    pub up: V3,
    pub ahead: V3,
}

impl Lens {
    pub(crate) fn axes(&self) -> Axes {
        let (sin_pan, cos_pan) = self.pan.sin_cos();
        let (sin_tilt, cos_tilt) = self.tilt.sin_cos();
        let (sin_roll, cos_roll) = self.roll.sin_cos();
        let right = [cos_pan, sin_pan, 0.0];
        let level = [sin_pan, -cos_pan, 0.0];
        let ahead = add(times(level, cos_tilt), [0.0, 0.0, sin_tilt]);
        let up = add(times(level, -sin_tilt), [0.0, 0.0, cos_tilt]);
        Axes {
            // Turned with the clock, its right hand goes down.
            right: add(times(right, cos_roll), times(up, -sin_roll)),
            up: add(times(up, cos_roll), times(right, sin_roll)),
            ahead,
        }
    }

    /// Where a place falls on the picture, in pixels from its upper left corner, and how far
    /// ahead of the lens it lies, in centimetres; none for what lies behind the lens.
    pub fn project(&self, place: [f64; 3]) -> Option<([f64; 2], f64)> {
        let Axes { right, up, ahead } = self.axes();
        let way = sub(place, self.position);
        let depth = dot(way, ahead);
        if depth < 1e-6 {
            return None;
        }
        let scale = self.focal_px / depth;
        Some((
            [
                0.5 * f64::from(self.size[0]) + scale * dot(way, right),
                0.5 * f64::from(self.size[1]) - scale * dot(way, up),
            ],
            depth,
        ))
    }

    /// Whether a pixel lies on the picture.
    pub fn holds(&self, pixel: [f64; 2]) -> bool {
        (0..2).all(|i| (0.0..f64::from(self.size[i])).contains(&pixel[i]))
    }

    /// Focal length as a share of the picture's longer side.
    pub fn focal_share(&self) -> f64 {
        self.focal_px / f64::from(self.size[0].max(self.size[1]))
    }
}

#[cfg(test)]
mod tests {
    use std::f64::consts::{FRAC_PI_2, PI};

    use super::*;

    fn lens(position: V3, pan: f64) -> Lens {
        Lens {
            focal_px: 1000.0,
            position,
            pan,
            tilt: 0.0,
            roll: 0.0,
            size: [800, 1000],
        }
    }

    #[track_caller]
    fn assert_at(lens: &Lens, place: V3, want: [f64; 2]) {
        let (got, _) = lens.project(place).expect("before the lens");
        let off = (got[0] - want[0]).hypot(got[1] - want[1]);
        assert!(off < 1e-6, "{got:?} against {want:?}");
    }

    #[test]
    fn places_fall_where_they_do_by_hand() {
        // Three metres before her, one up: 30 cm to her left are a tenth, so 100 pixels.
        let front = lens([0.0, 300.0, 100.0], 0.0);
        assert_at(&front, [0.0, 0.0, 100.0], [400.0, 500.0]);
        assert_at(&front, [30.0, 0.0, 100.0], [500.0, 500.0]);
        assert_at(&front, [0.0, 0.0, 160.0], [400.0, 300.0]);
        // 50 cm nearer, the same 30 cm are 120 pixels.
        assert_at(&front, [30.0, 50.0, 100.0], [520.0, 500.0]);
        let back = lens([0.0, -300.0, 100.0], PI);
        assert_at(&back, [30.0, 0.0, 100.0], [300.0, 500.0]);
        // From her right side what lies ahead of her is at the viewer's right.
        let right = lens([-300.0, 0.0, 100.0], FRAC_PI_2);
        assert_at(&right, [0.0, 30.0, 100.0], [500.0, 500.0]);
        let left = lens([300.0, 0.0, 100.0], -FRAC_PI_2);
        assert_at(&left, [0.0, 30.0, 100.0], [300.0, 500.0]);
        assert_eq!(front.project([0.0, 400.0, 100.0]), None);
    }

    #[test]
    fn a_lens_that_looks_down_or_is_turned_moves_the_picture_the_other_way() {
        // Looking 3 down on 4 ahead, the axis meets the floor 400 before a height of 300.
        let down = Lens {
            tilt: -(0.75_f64).atan(),
            ..lens([0.0, 400.0, 300.0], 0.0)
        };
        assert_at(&down, [0.0, 0.0, 0.0], [400.0, 500.0]);
        // A place 125 above along the slope's normal (0, 0.6, 0.8): depth stays 500.
        assert_at(&down, [0.0, -75.0, 100.0], [400.0, 250.0]);
        let turned = Lens {
            roll: FRAC_PI_2,
            ..lens([0.0, 300.0, 100.0], 0.0)
        };
        assert_at(&turned, [0.0, 0.0, 160.0], [200.0, 500.0]);
        assert_at(&turned, [30.0, 0.0, 100.0], [400.0, 400.0]);
    }
}
