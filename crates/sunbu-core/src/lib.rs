//! The dressing model: measures, bodies, garments, and what dressing makes of them.
//!
//! Pure: no files, clock, network, locale or HTML. Heights are above the floor on which the
//! person is dressed; left and right are the wearer's; lengths inside the numerics are `f64`
//! centimetres and say so in their names or docs.

pub mod body;
pub mod case;
pub mod check;
pub mod demo;
pub mod drape;
pub mod dressing;
pub mod fault;
pub mod garment;
mod keyed;
pub mod measure;
pub mod photo;
pub mod problem;
pub mod scalar;
pub mod source;
mod toml_file;
