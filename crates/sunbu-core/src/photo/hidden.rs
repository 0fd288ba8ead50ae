//! The part of a photo that nobody is to see: a box over a face.

use serde::{Deserialize, Serialize};

use super::mark::Mark;
use super::shot::Shot;

/// A box on a picture, each number a share of the picture's width or height.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Sides", into = "Sides")]
pub struct Hidden {
    left: f64,
    top: f64,
    width: f64,
    height: f64,
}

/// The numbers of a [`Hidden`] as they are written.
#[derive(Debug, Clone, Copy, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Sides {
    left: f64,
    top: f64,
    width: f64,
    height: f64,
}

impl TryFrom<Sides> for Hidden {
    type Error = &'static str;

    fn try_from(sides: Sides) -> Result<Self, Self::Error> {
        Self::new(sides.left, sides.top, sides.width, sides.height)
            .ok_or("shares of the picture, from 0 to 1, with a width and a height")
    }
}

impl From<Hidden> for Sides {
    fn from(hidden: Hidden) -> Self {
        Self {
            left: hidden.left,
            top: hidden.top,
            width: hidden.width,
            height: hidden.height,
        }
    }
}

/// No box is narrower or lower, as a share of the picture: it could not be taken hold of.
const LEAST: f64 = 0.01;

/// A head with its hair over the stature, seen from any side (from memory: a head is an eighth of a
/// grown figure; hair stands off it).
const HEAD: (f64, f64) = (0.15, 0.16);

impl Hidden {
    /// The whole picture.
    pub const WHOLE: Self = Self {
        left: 0.0,
        top: 0.0,
        width: 1.0,
        height: 1.0,
    };

    /// A box; brought within the picture, and none when it has no size or a number is none.
    pub fn new(left: f64, top: f64, width: f64, height: f64) -> Option<Self> {
        let all = [left, top, width, height];
        if !all.iter().all(|v| v.is_finite()) || width <= 0.0 || height <= 0.0 {
            return None;
        }
        let (width, height) = (width.clamp(LEAST, 1.0), height.clamp(LEAST, 1.0));
        Some(Self {
            left: left.clamp(0.0, 1.0 - width),
            top: top.clamp(0.0, 1.0 - height),
            width,
            height,
        })
    }

    /// A box over the head, from floor and crown; a part of the middle above where they were not
    /// marked.
    pub fn over_head(shot: &Shot) -> Self {
        let [width, height] = shot.size.map(f64::from);
        let at = |mark: Mark| shot.marks.get(&mark).map(|placed| placed.at);
        let found = at(Mark::Floor).zip(at(Mark::Crown)).and_then(|(f, c)| {
            let tall = (f[0] - c[0]).hypot(f[1] - c[1]);
            let (wide, high) = (HEAD.0 * tall, HEAD.1 * tall);
            let (left, top) = (c[0] - 0.5 * wide, c[1] - 0.02 * tall);
            Self::new(left / width, top / height, wide / width, high / height)
        });
        found.unwrap_or(Self {
            left: 0.4,
            top: 0.05,
            width: 0.2,
            height: 0.15,
        })
    }

    /// Left, top, width and height as shares of the picture.
    pub fn shares(&self) -> [f64; 4] {
        [self.left, self.top, self.width, self.height]
    }

    /// The same in pixels of a picture of this size, rounded outward: left, top, width, height.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "shares of a picture lie within it"
    )]
    pub fn pixels(&self, [width, height]: [u32; 2]) -> [u32; 4] {
        let along = |start: f64, long: f64, whole: u32| {
            let first = (start * f64::from(whole)).floor() as u32;
            let end = ((start + long) * f64::from(whole)).ceil() as u32;
            (first, end.min(whole) - first)
        };
        let (left, wide) = along(self.left, self.width, width);
        let (top, high) = along(self.top, self.height, height);
        [left, top, wide, high]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_box_lies_within_its_picture_and_hides_every_pixel_it_touches() {
        let hidden = Hidden::new(0.9, -0.3, 0.25, 0.1).expect("a box");
        assert_eq!(hidden.shares(), [0.75, 0.0, 0.25, 0.1]);
        let third = Hidden::new(1.0 / 3.0, 0.5, 1.0 / 3.0, 0.001).expect("a box");
        // 100 pixels: from 33.3 to 66.7 touches 33 to 66, 34 of them; 1 % of 100 is one.
        assert_eq!(third.pixels([100, 100]), [33, 50, 34, 1]);
        for pixels in [1, 7, 4000] {
            let [left, top, width, height] = hidden.pixels([pixels, pixels]);
            assert!(left + width <= pixels && top + height <= pixels && width > 0);
        }
    }

    #[test]
    fn what_is_no_box_is_none_and_is_not_read_back() {
        assert_eq!(Hidden::new(0.1, 0.1, 0.0, 0.2), None);
        assert_eq!(Hidden::new(f64::NAN, 0.1, 0.2, 0.2), None);
        let text = r#"{"left":0.1,"top":0.1,"width":-1.0,"height":0.2}"#;
        assert!(serde_json::from_str::<Hidden>(text).is_err());
        let hidden = Hidden::new(0.1, 0.2, 0.3, 0.4).expect("a box");
        let kept = serde_json::to_string(&hidden).expect("numbers");
        assert_eq!(serde_json::from_str::<Hidden>(&kept).ok(), Some(hidden));
    }
}
