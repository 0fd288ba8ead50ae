//! Reading: what the marks of a photo say in centimetres, and how surely.

use std::collections::BTreeMap;

use nalgebra::DMatrix;

use super::camera::Camera;
use super::check::does_not_fit;
use super::form::Form;
use super::forms::Forms;
use super::mark::{Mark, Pixel, View};
use super::shot::{Known, Shot};
use super::sitting::{Sitting, Subject};
use super::way::{Wrap, straight, torn};
use crate::dressing::{Fitting, Given, Observed, ObservedError, Quantity};
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
    /// Whether the photo was said to come from a mirror.
    pub mirrored: bool,
    /// The lens.
    pub camera: Camera,
    /// What was read, with its joint error.
    pub observed: Observed,
    /// What is not alike on both sides.
    pub skews: BTreeMap<Skew, Known>,
    /// What was not read, and why.
    pub unseen: BTreeMap<Quantity, Unseen>,
    /// Marks that no lens could see with all the others, and those of a front edge that lie on both
    /// sides of her.
    pub doubtful: Vec<Mark>,
    /// Where each mark falls when all are taken together, in pixels of the shot as it was given.
    pub fitted: BTreeMap<Mark, Pixel>,
}

impl Reading {
    /// The quantities that were read, in the order of their values and covariance.
    pub fn quantities(&self) -> &[Quantity] {
        self.observed.quantities()
    }

    /// Their values, in centimetres.
    pub fn values(&self) -> &[f64] {
        self.observed.values()
    }

    /// Their joint covariance, in cm².
    pub fn covariance(&self) -> &DMatrix<f64> {
        self.observed.covariance()
    }

    /// One quantity with its deviation, in centimetres; none when it was not read.
    pub fn get(&self, quantity: Quantity) -> Option<Known> {
        let (value, sd) = self.observed.reading(quantity)?;
        Some(Known { value, sd })
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
    let observed = observed(&read, &sitting.fit.covariance, subject.fitting)
        .map_err(|_| vec![does_not_fit()])?;
    let skews = Skew::ALL.iter().filter_map(|&skew| {
        let form = forms.skew(skew)?;
        let variance = form.variance(&sitting.fit.covariance, subject.fitting);
        let sd = variance.max(0.0).sqrt();
        Some((
            skew,
            Known {
                value: form.value,
                sd,
            },
        ))
    });
    let mut doubtful: Vec<Mark> = sitting
        .off()
        .filter(|(_, off)| *off > DOUBTFUL)
        .map(|(mark, _)| straight.name(mark))
        .collect();
    for mark in torn(shot) {
        if !doubtful.contains(&mark) {
            doubtful.push(mark);
        }
    }
    let fitted = sitting
        .fitted()
        .map(|(mark, at)| (straight.name(mark), straight.back(at)));
    Ok(Reading {
        view: shot.view,
        wrap: straight.way,
        mirrored: shot.mirrored,
        camera: sitting.fit.camera,
        observed,
        skews: skews.collect(),
        unseen,
        doubtful,
        fitted: fitted.collect(),
    })
}

/// What was read, with the error of fitting and that of what is given apart.
///
/// # Errors
/// When something reads longer than anything of a dressed person: marks scattered at random do.
fn observed(
    read: &[(Quantity, Form)],
    fitted: &DMatrix<f64>,
    fitting: &Fitting,
) -> Result<Observed, ObservedError> {
    let n = read.len();
    let own = DMatrix::from_fn(n, n, |i, j| {
        let alone = if i == j {
            read[i].1.own_variance()
        } else {
            0.0
        };
        read[i].1.fitted_covariance(&read[j].1, fitted) + alone
    });
    let by_given = DMatrix::from_fn(n, Given::COUNT, |i, g| read[i].1.by(Given::ALL[g]));
    let quantities = read.iter().map(|(quantity, _)| *quantity).collect();
    let values = read.iter().map(|(_, form)| form.value).collect();
    Observed::reckoned(quantities, values, own, by_given, fitting)
}
