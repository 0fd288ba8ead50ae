//! Reading: what the marks of a photo say in centimetres, and how surely.

use std::collections::BTreeMap;

use nalgebra::DMatrix;

use super::camera::Camera;
use super::form::Form;
use super::forms::Forms;
use super::mark::{Mark, Pixel, View};
use super::shot::{Known, Shot};
use super::sitting::{Sitting, Subject};
use super::way::{Wrap, straight};
use crate::dressing::Quantity;
use crate::keyed::keyed_enum;
use crate::problem::Problem;

keyed_enum! {
    /// How far something lies from where it would lie if left and right were alike, in
    /// centimetres: what the dressing's own quantities do not tell.
    Skew {
        /// The hem at the right over the left, beyond what the raised edge makes.
        HemSlant = "hem_slant",
        /// The fold's lower edge at the right over the left.
        FoldLean = "fold_lean",
        /// The obi's lower edge at the right over the left.
        ObiSlant = "obi_slant",
        /// The kimono collars' crossing, to her left of the middle line.
        CrossingOff = "crossing_off",
        /// The juban collar left to see at the left over the right.
        HanEriDifference = "han_eri_difference",
        /// The nape's middle, to her left of the spine.
        NapeOff = "nape_off",
        /// The left sleeve's shortness over the right one's.
        SleeveDifference = "sleeve_difference",
    }
}

/// Why a quantity was not read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unseen {
    /// Cloth lies over it on every photo.
    Covered,
    /// Another side shows it.
    OtherSide(View),
    /// It shows from this side, but a mark for it was left out.
    NotMarked(Mark),
}

/// More than so many deviations off where all other marks put it, a mark is doubted.
const DOUBTFUL: f64 = 4.0;

/// What one photo says.
#[derive(Debug, Clone)]
pub struct Reading {
    /// From which side.
    pub view: View,
    /// Which panel lies on top. When it is the right one, everything else was read as from a
    /// mirror, left and right exchanged.
    pub wrap: Wrap,
    /// The lens.
    pub camera: Camera,
    quantities: Vec<Quantity>,
    values: Vec<f64>,
    covariance: DMatrix<f64>,
    /// What is not alike on both sides.
    pub skews: BTreeMap<Skew, Known>,
    /// What was not read, and why.
    pub unseen: BTreeMap<Quantity, Unseen>,
    /// Marks that no lens could see with all the others.
    pub doubtful: Vec<Mark>,
    /// Where each mark falls when all are taken together, in pixels of the shot as it was given.
    pub fitted: BTreeMap<Mark, Pixel>,
}

impl Reading {
    /// The quantities that were read, in the order of their values and covariance.
    pub fn quantities(&self) -> &[Quantity] {
        &self.quantities
    }

    /// Their values, in centimetres.
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// Their joint covariance, in cm².
    pub fn covariance(&self) -> &DMatrix<f64> {
        &self.covariance
    }

    /// One quantity with its deviation, in centimetres; none when it was not read.
    pub fn get(&self, quantity: Quantity) -> Option<Known> {
        let i = self.quantities.iter().position(|q| *q == quantity)?;
        Some(Known {
            value: self.values[i],
            sd: self.covariance[(i, i)].max(0.0).sqrt(),
        })
    }
}

/// What a photo says of the dressing.
///
/// # Errors
/// Everything that is wrong with the shot: marks outside the picture, missing, exchanged or not
/// to be seen from its side, sizes that no picture has, or marks that no lens sees so.
pub fn read(subject: &Subject<'_>, shot: &Shot) -> Result<Reading, Vec<Problem>> {
    let straight = straight(shot);
    let sitting = Sitting::new(subject, &straight.shot)?;
    let forms = Forms { sitting: &sitting };
    let mut unseen = BTreeMap::new();
    let mut read: Vec<(Quantity, Form)> = Vec::new();
    for &quantity in Quantity::ALL {
        match forms.quantity(quantity) {
            Ok(form) => read.push((quantity, form)),
            Err(why) => {
                unseen.insert(quantity, why);
            }
        }
    }
    let between = |a: &Form, b: &Form| a.covariance(b, &sitting.fit.covariance, subject.fitting);
    let n = read.len();
    let covariance = DMatrix::from_fn(n, n, |i, j| {
        let own = if i == j {
            read[i].1.own_variance()
        } else {
            0.0
        };
        between(&read[i].1, &read[j].1) + own
    });
    let skews = Skew::ALL.iter().filter_map(|&skew| {
        let form = forms.skew(skew)?;
        let sd = (between(&form, &form) + form.own_variance())
            .max(0.0)
            .sqrt();
        Some((
            skew,
            Known {
                value: form.value,
                sd,
            },
        ))
    });
    let fitted = sitting
        .fitted()
        .map(|(mark, at)| (straight.name(mark), straight.back(at)));
    Ok(Reading {
        view: shot.view,
        wrap: straight.way,
        camera: sitting.fit.camera,
        values: read.iter().map(|(_, form)| form.value).collect(),
        quantities: read.iter().map(|(quantity, _)| *quantity).collect(),
        covariance,
        skews: skews.collect(),
        unseen,
        doubtful: sitting
            .off()
            .filter(|(_, off)| *off > DOUBTFUL)
            .map(|(mark, _)| straight.name(mark))
            .collect(),
        fitted: fitted.collect(),
    })
}
