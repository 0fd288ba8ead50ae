//! The check of a finished dressing: begun from a plan or for a stranger, its photos, what the eye
//! saw.

pub(crate) mod begin;
mod checked;
pub(crate) mod eye;
pub(crate) mod list;
pub(crate) mod marking;
mod marking_parts;
pub(crate) mod photos;
pub(crate) mod show;

pub(crate) use checked::{Checked, photo, photo_ids};
