//! The lines of a photo as they are and as the corrections would have them.

use super::{Advice, Report};
use crate::dressing::Dressing;
use crate::photo::{Overlay, Shot, Skew, Subject, overlay};
use crate::problem::Problem;

impl Report {
    /// The dressing as it would be with every change made that is advised; as it was done when there
    /// is none.
    pub fn corrected(&self) -> Dressing {
        let changes = self.advice.iter().filter_map(|advice| match advice {
            Advice::Change(change) => Some(change),
            Advice::Way | Advice::Fault(_) => None,
        });
        changes.fold(self.diagnosis.done, |dressing, change| {
            dressing.with(change.decision, change.to)
        })
    }

    /// What is to be made level: the differences between left and right that are faults.
    pub fn to_level(&self) -> Vec<Skew> {
        let faults = self.skews.iter().filter(|skewed| skewed.is_fault());
        faults.map(|skewed| skewed.skew).collect()
    }
}

/// The places of one photo of a check, as they are seen and as they are wanted.
///
/// # Errors
/// As [`crate::photo::read`].
pub fn overlaid(
    subject: &Subject<'_>,
    shot: &Shot,
    report: &Report,
) -> Result<Overlay, Vec<Problem>> {
    let pair = (&report.diagnosis.done, &report.corrected());
    overlay(subject, shot, pair, &report.to_level())
}
