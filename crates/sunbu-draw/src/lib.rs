//! Drawings as SVG from core values: the dressed figure to scale, sheets, and the model's own
//! figures. Knows no page and does no sums of its own beyond where a line is seen.

mod canvas;
mod curve;
mod drawn;
pub mod explain;
mod feedback;
mod figure;
mod labels;
mod legend;
mod lines;
mod list;
mod look;
mod marks;
mod notes;
mod obi;
mod overlay;
mod person;
mod sheet;
mod skirt;
mod svg;
mod text;
mod upper;
mod view;
mod wanted;

// The tests inside share their people with those outside, and both call the crate by its name.
#[cfg(test)]
extern crate self as sunbu_draw;
#[cfg(test)]
#[path = "../tests/bench/mod.rs"]
#[allow(dead_code)]
mod bench;

pub use curve::Pt;
pub use feedback::{Feedback, feedback};
pub use figure::{Labels, Scene, Style, figure};
pub use look::stylesheet;
pub use notes::{Note, notes};
pub use overlay::{Overlaid, overlay};
pub use sheet::{Page, sheet};
pub use svg::UNITS_PER_CM;
pub use view::View;
