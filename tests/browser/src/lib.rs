//! Drives the studio's pages in the system's Chromium, as a person at a phone or a desk would.
//!
//! A [`Browser`] has a [`View`] (the size of the screen and the reader's language), visits pages,
//! and tells what is wrong with the one it shows: [`Browser::audit`] runs the accessibility rules
//! of WCAG 2.2 at levels A and AA, [`Browser::sideways_scroll`] finds what is too wide, and
//! [`Browser::console_errors`] what the page itself complained of. [`Studio`] is the program under
//! test. [`visit()`] puts them together for one page.
//!
//! ```no_run
//! use sunbu_browser_tests::{Browser, Page, Studio, VIEWS, visit};
//!
//! # async fn every_page_is_right() -> Result<(), Box<dyn std::error::Error>> {
//! let studio = Studio::demo("target/debug/sunbu")?; // in tests: env!("CARGO_BIN_EXE_sunbu")
//! let pages = [Page::new("/"), Page::new("/nowhere").with_status(404)];
//! for view in VIEWS {
//!     let browser = Browser::open(view).await?;
//!     for page in &pages {
//!         let faults = visit(&browser, studio.origin(), page).await?;
//!         assert!(faults.is_empty(), "{}", faults.join("\n"));
//!     }
//! }
//! # Ok(())
//! # }
//! ```
//!
//! Nothing here is ever skipped: without a browser, its driver or the accessibility rules a test
//! fails, and says what to install.

mod audit;
mod browser;
mod driver;
mod error;
mod fingers;
mod programs;
mod studio;
mod visit;

pub use audit::{Culprit, Violation, as_list};
pub use browser::{Browser, Language, View};
pub use error::{BrowserError, StudioError};
pub use fingers::Spot;
pub use studio::Studio;
pub use visit::{Page, VIEWS, visit};
