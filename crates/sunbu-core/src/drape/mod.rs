//! The dressed person as a surface in space, and the lines of her garment on it.
//!
//! One model for everything that is drawn, read off a photo, or rendered. Frame: `x` to the
//! wearer's left of the body's middle, `y` ahead of its side-to-side axis, `z` above the floor,
//! in centimetres; a left-handed frame. Arc `s` runs from 0 at the centre back over the wearer's
//! left side, the centre front and the right side: with the clock, seen from above.

mod collars;
mod lines;
mod round;
mod section;
mod surface;

pub use lines::{DRUM_WIDTH, Drape, Drum, FOLD_OUT, OBI_OUT, OBI_WIDTH};
pub use round::{Round, arc_of_angle};
pub use surface::Surface;

#[cfg(test)]
mod tests;
