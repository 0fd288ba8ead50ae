//! Photos with known truth: a person, a garment and a dressing from the model's surface, seen
//! through a real lens.
//!
//! The surface is the core's drape, which a photo's reading stands on as well; everything else
//! is this package's own plain arithmetic: the lens, the outlines (the widest of many sight
//! lines), what hides what (rays against the triangles that are painted). So a reading can be
//! held against it. Frame: the wearer's, `x` to her left, `y` ahead, `z` up, in centimetres.

mod build;
mod case;
mod dressed;
mod fabric;
mod lens;
mod marked;
mod mesh;
mod paint;
mod people;
mod random;
mod raster;
mod room;
mod scene;
mod truth;
mod vector;

pub use build::{Arm, Stance};
pub use dressed::{Dressed, Skews};
pub use lens::Lens;
pub use marked::{Figures, MARK_PX, Miss, Told, misses};
pub use people::{Real, Subject};
pub use random::Random;
pub use raster::Picture;
pub use scene::Scene;
pub use truth::{Seen, Truth};
