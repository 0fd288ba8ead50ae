//! The studio from the outside: where it lies, opening it for the browser, the demo in it.

mod browser;
mod clock;
mod demo;
mod file;
mod serve;

pub use clock::now;
pub use demo::fill;
pub use file::{existing, fresh, restore_into, shown_name, troubled};
pub use serve::{Door, open};
