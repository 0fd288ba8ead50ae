//! The case file: one person, garments, an occasion, and what the dresser has decided herself.
//!
//! It is TOML in the terms of the trade, and the web forms and the store hold the same types:
//!
//! ```toml
//! occasion = "formal"           # indoors, formal, stage, everyday, practice
//! shaku = "kujira"              # which one a bare 尺 is; kane for the carpenter's
//!
//! [person]
//! name = "Tanabe Chiyo"
//! sex = "women"                 # the table that completes her: women, men
//! stature = 158
//! hip_girth = { value = 91, sd = 0.5 }
//! waist_height = "3 shaku 2 sun 5 bu"
//!
//! [garment]                     # or any number of [[garments]]
//! name = "Grey tsumugi"
//! kind = "nagagi"               # nagagi, yukata
//! cloth = "stiff"               # soft, stiff, cotton
//! mitake_from = "back_seam"     # shoulder, back_seam
//! mitake = "4尺1寸5分"
//! ushirohaba = "7寸5分"
//!
//! [dressing]                    # decisions already taken; the planner finds the others
//! nape_drop = 5
//!
//! [dresser]                     # whose hands; the same fields as a person
//! name = "Mori Sayo"
//! sex = "women"
//! stature = 162
//! hip_girth = 93
//! finger_breadth = 1.6
//! ```
//!
//! A `[standard]` table, whole, takes the place of the customary standard. Everything is checked
//! where it comes in, and every problem is told at once: its place, what was typed, what is
//! allowed, the way out. Names that mean nothing here are problems too.

mod fields;
mod hands;
mod locks;
mod person;
mod piece;
mod read;
mod stranger;
mod table;
mod write;

pub use crate::toml_file::MAX_PROBLEMS;
pub use fields::{Fields, MAX_NAME_CHARS, MAX_NOTE_CHARS};
pub use locks::{lock_range_cm, read_locks};
pub use person::Person;
pub use piece::Piece;
pub use read::MAX_CASE_BYTES;
pub use stranger::Stranger;

use crate::dressing::{Locks, Occasion, Standard};

/// A person, garments, an occasion, and what is given beforehand.
#[derive(Debug, Clone, PartialEq)]
pub struct CaseFile {
    /// Who is dressed.
    pub person: Person,
    /// What there is to wear: one at least.
    pub garments: Vec<Piece>,
    /// What for.
    pub occasion: Occasion,
    /// Decisions the dresser has taken herself, in centimetres.
    pub locks: Locks,
    /// Whose hands dress; lengths are given against them.
    pub dresser: Option<Person>,
    /// The standard in force, when it is not the customary one.
    pub standard: Option<Standard>,
}
