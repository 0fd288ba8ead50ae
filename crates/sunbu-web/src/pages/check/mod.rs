//! The check of a finished dressing: begun from a plan or for a stranger, its photos, what the eye
//! saw, what it all comes to, and the sheet to hand over.

pub(crate) mod begin;
mod checked;
pub(crate) mod eye;
pub(crate) mod face;
pub(crate) mod list;
pub(crate) mod marking;
mod marking_parts;
pub(crate) mod photos;
pub(crate) mod pictured;
pub(crate) mod report;
pub(crate) mod sheet;
pub(crate) mod show;
mod told;

pub(crate) use checked::{Checked, Read, photo, photo_ids};
