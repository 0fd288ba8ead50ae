//! What is not alike on both sides, held against what is let pass.

use crate::fault::Fault;
use crate::measure::Z_90;
use crate::photo::{Reading, Skew, View};

/// One difference between left and right.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Skewed {
    /// Which.
    pub skew: Skew,
    /// The side whose photo shows it best.
    pub view: View,
    /// How much, in centimetres.
    pub cm: f64,
    /// Its standard deviation, in centimetres.
    pub sd: f64,
}

/// What is let pass of a difference, in centimetres (chosen: what is seen from three steps away).
pub fn tolerance(skew: Skew) -> f64 {
    match skew {
        Skew::HemSlant | Skew::ObiSlant | Skew::NapeOff | Skew::SleeveDifference => 1.5,
        Skew::FoldLean | Skew::CrossingOff => 1.0,
        Skew::HanEriDifference => 0.7,
    }
}

impl Skewed {
    /// The 90 % interval, in centimetres.
    pub fn interval_90(&self) -> (f64, f64) {
        (self.cm - Z_90 * self.sd, self.cm + Z_90 * self.sd)
    }

    /// Whether it lies beyond what is let pass by more than reading errs.
    pub fn is_fault(&self) -> bool {
        self.cm.abs() - Z_90 * self.sd > tolerance(self.skew)
    }

    /// Whether it lies beyond what is let pass, but by no more than reading errs.
    pub fn may_be_fault(&self) -> bool {
        self.cm.abs() > tolerance(self.skew) && !self.is_fault()
    }

    /// The fault of the catalogue that it is; none where it has no name of its own.
    pub fn fault(&self) -> Option<Fault> {
        match self.skew {
            Skew::HemSlant => Some(Fault::HemUneven),
            // The fold's slant from front to right is a quantity of the model and judged there.
            Skew::FoldLean | Skew::SleeveDifference => None,
            Skew::ObiSlant => Some(Fault::ObiSlanting),
            Skew::CrossingOff => Some(Fault::CrossingOffCentre),
            Skew::HanEriDifference => Some(Fault::HanEriUneven),
            Skew::NapeOff => Some(Fault::BackSeamOff),
        }
    }
}

/// Each difference once, from the photo that shows it most surely.
pub fn skewed(readings: &[Reading]) -> Vec<Skewed> {
    let one = |skew: &Skew| {
        let all = readings.iter().filter_map(|reading| {
            let known = reading.skews.get(skew)?;
            Some(Skewed {
                skew: *skew,
                view: reading.view,
                cm: known.value,
                sd: known.sd,
            })
        });
        all.min_by(|a, b| a.sd.total_cmp(&b.sd))
    };
    Skew::ALL.iter().filter_map(one).collect()
}
