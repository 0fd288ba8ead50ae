//! Lengths, their units, and how far each is trusted.
//!
//! A [`Length`] is exact in every unit of the trade: centimetres, kujira-shaku for cloth,
//! kane-shaku for wood, inches. [`parse_length`] reads what people write and [`format_length`]
//! writes it back. A [`Measured`] is a number with its deviation and where it came from; there
//! the model's `f64` centimetres begin.

mod error;
mod fold;
mod format;
mod length;
mod lex;
mod measured;
mod parse;
mod reading;
mod unit;
mod written;

pub use error::LengthError;
pub use format::{Notation, Precision, Script, format_length};
pub use length::Length;
pub use measured::{Measured, MeasuredError, Origin, Z_90};
pub use parse::{MAX_TEXT_BYTES, parse_length, parse_signed_length};
pub use reading::{Entry, Reading};
pub use unit::{Shaku, Unit};
pub use written::Written;
