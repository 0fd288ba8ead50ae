//! A person's body: what was taped, what a population says of the rest, and the hull cloth lies on.
//!
//! [`Tape`] holds what was taped, [`Population`] completes it to a [`Body`], whose [`Shape`] gives
//! girth, breadth, depth and side line of the convex hull at every height.
//!
//! ```
//! use sunbu_core::body::{BodyMeasure, Population, Sex, Tape};
//!
//! let tape = Tape::of(Sex::Women)
//!     .with(BodyMeasure::Stature, 158.0)
//!     .with(BodyMeasure::HipGirth, 91.0)
//!     .build()
//!     .map_err(|problems| format!("{problems:?}"))?;
//! let body = Population::shipped(Sex::Women).complete(&tape)?;
//! let waist = body.measure(BodyMeasure::WaistHeight);
//! assert!(94.0 < waist.value_cm() && waist.value_cm() < 102.0);
//! let (z, shape) = (0.5 * 158.0, body.shape());
//! assert!(shape.side_arc(z) < shape.girth(z) / 2.0);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod completion;
mod hull;
mod measures;
mod order;
mod outline;
mod population;
mod possible;
mod ridge;
mod shape;
mod silhouette;
mod smooth;
mod tape;

pub use completion::{Body, BodyError, UNLIKELY_DEVIATIONS, Unlikely};
pub use hull::{HullError, HullTable, RATIO_NAMES, RATIOS, ReferenceBody, Section, Stretch};
pub use measures::{BodyMeasure, Kind, Sex};
pub use outline::Outline;
pub use population::{Population, PopulationError, RowSource};
pub use possible::MAX_SD_CM;
pub use shape::Shape;
pub use silhouette::Figure;
pub use tape::{Tape, TapeBuilder};
