//! The fault catalogue: every fault that the trade names, how it is seen, where it comes from, and
//! the step of dressing at which it is cured.
//!
//! Faults that the model measures are linked to its quantities, and their causes to the decisions
//! and measures behind them; the others, and those whose quantities no photo shows, are a checklist
//! for the eye. Both sort into one list in
//! dressing order, since a fault is mostly made a step earlier, or a garment below, than it shows.
//! Words are a locale's.

mod catalogue;
mod keys;
mod mixed;

pub use catalogue::{Catalogue, CatalogueError, Entry, Judged, Link, Slip, Too};
pub use keys::{Area, Cause, Fault};
pub use mixed::{Finding, Ticks, mixed};
