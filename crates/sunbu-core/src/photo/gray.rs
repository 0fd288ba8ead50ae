//! A picture's brightness, one byte a pixel: what edges are looked for in.

/// Brightness of every pixel, row by row from the upper left corner.
#[derive(Clone, PartialEq, Eq)]
pub struct Gray {
    width: usize,
    height: usize,
    pixels: Vec<u8>,
}

impl Gray {
    /// A picture of this width and height whose rows stand in `pixels` one after another; none
    /// when it has no pixel or `pixels` has another length.
    pub fn new(width: usize, height: usize, pixels: Vec<u8>) -> Option<Self> {
        let right = width > 0 && height > 0 && width.checked_mul(height) == Some(pixels.len());
        right.then_some(Gray {
            width,
            height,
            pixels,
        })
    }

    /// Width in pixels, one at least.
    pub fn width(&self) -> usize {
        self.width
    }

    /// Height in pixels, one at least.
    pub fn height(&self) -> usize {
        self.height
    }

    /// The row of this number from above; empty below the last.
    pub fn row(&self, y: usize) -> &[u8] {
        let start = y.saturating_mul(self.width);
        self.pixels
            .get(start..start.saturating_add(self.width))
            .unwrap_or_default()
    }

    /// Brightness at a place between pixels, from its four neighbours in proportion; beyond the
    /// rim as on it.
    ///
    /// Pixel (0, 0) covers the square from 0 to 1, so its own brightness stands at (0.5, 0.5).
    pub fn at(&self, x: f64, y: f64) -> f64 {
        let (x0, x1, u) = between(x, self.width);
        let (y0, y1, v) = between(y, self.height);
        let (above, below) = (y0 * self.width, y1 * self.width);
        let value = |index: usize| f64::from(self.pixels[index]);
        let upper = value(above + x0) + u * (value(above + x1) - value(above + x0));
        let lower = value(below + x0) + u * (value(below + x1) - value(below + x0));
        upper + v * (lower - upper)
    }
}

impl std::fmt::Debug for Gray {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(out, "Gray({} by {})", self.width, self.height)
    }
}

/// The pixels on both sides of a coordinate and how far it lies from the first to the second.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // bounded by the size just before
fn between(at: f64, size: usize) -> (usize, usize, f64) {
    let last = size - 1;
    // `max` and `min` also turn what is no number into a pixel of the picture.
    let centred = (at - 0.5).max(0.0).min(last as f64);
    let first = centred as usize;
    (first, (first + 1).min(last), centred - first as f64)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wrong_number_of_pixels_is_no_picture() {
        assert!(Gray::new(2, 3, vec![0; 6]).is_some());
        for (width, height, count) in [(2, 3, 5), (2, 3, 7), (0, 3, 0), (2, 0, 0)] {
            assert_eq!(Gray::new(width, height, vec![0; count]), None);
        }
        assert_eq!(Gray::new(usize::MAX, 2, vec![0; 4]), None);
    }

    #[test]
    fn rows_follow_one_another_and_end_with_the_picture() {
        let gray = Gray::new(2, 2, vec![1, 2, 3, 4]).unwrap();
        assert_eq!((gray.row(0), gray.row(1)), (&[1, 2][..], &[3, 4][..]));
        assert!(gray.row(2).is_empty() && gray.row(usize::MAX).is_empty());
    }

    #[test]
    fn brightness_between_pixels_is_in_proportion_and_beyond_the_rim_as_on_it() {
        let gray = Gray::new(2, 2, vec![0, 100, 200, 100]).unwrap();
        for (x, y, wanted) in [
            (0.5, 0.5, 0.0),
            (1.5, 0.5, 100.0),
            (1.0, 0.5, 50.0),
            (1.0, 1.0, 100.0),
            (-7.0, 0.5, 0.0),
            (0.5, 99.0, 200.0),
        ] {
            assert_eq!(gray.at(x, y), wanted, "at {x}, {y}");
        }
        assert!(gray.at(f64::NAN, f64::INFINITY).is_finite());
    }
}
