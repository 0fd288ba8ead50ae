//! Drives the studio's pages in the system's Chromium, as a person at a phone or a desk would.
//!
//! A [`Browser`] has a [`View`] (the size of the screen and the reader's language), visits pages,
//! and tells what is wrong with the one it shows: [`Browser::audit`] runs the accessibility rules
//! of WCAG 2.2 at levels A and AA, [`Browser::sideways_scroll`] finds what is too wide, and
//! [`Browser::console_errors`] what the page itself complained of. [`Studio`] is the program under
//! test. [`visit()`] puts them together for one page.
//!
//! Nothing here is ever skipped: without a browser, its driver or the accessibility rules a test
//! fails, and says what to install.

mod audit;
mod browser;
mod driver;
mod error;
mod programs;
mod studio;
mod visit;

pub use audit::{Culprit, Violation, as_list};
pub use browser::{Browser, Language, View};
pub use error::{BrowserError, StudioError};
pub use studio::Studio;
pub use visit::{Page, VIEWS, visit};
