//! Lengths as straight functions of what was fitted and of what was given, with their covariance.

use std::ops::{Add, Sub};

use nalgebra::DMatrix;

use crate::dressing::{Fitting, Given};

/// A length, and how fitted unknowns and given numbers move it.
#[derive(Debug, Clone)]
pub(super) struct Form {
    pub value: f64,
    by_fitted: Vec<(usize, f64)>,
    by_given: Vec<(Given, f64)>,
    /// Variance of its own, in cm².
    own: f64,
}

impl Form {
    /// A length that moves with one unknown.
    pub fn of(value: f64, unknown: usize) -> Self {
        Self {
            value,
            by_fitted: vec![(unknown, 1.0)],
            by_given: Vec::new(),
            own: 0.0,
        }
    }

    /// A given number as it is taken to be.
    pub fn given(fitting: &Fitting, given: Given) -> Self {
        Self {
            value: fitting.value(given),
            by_fitted: Vec::new(),
            by_given: vec![(given, 1.0)],
            own: 0.0,
        }
    }

    /// A plain number.
    pub fn plain(value: f64) -> Self {
        Self {
            value,
            by_fitted: Vec::new(),
            by_given: Vec::new(),
            own: 0.0,
        }
    }

    /// The same with a deviation of its own added.
    pub fn with_sd(mut self, sd: f64) -> Self {
        self.own += sd * sd;
        self
    }

    /// The length times a factor.
    pub fn times(mut self, factor: f64) -> Self {
        self.value *= factor;
        self.by_fitted.iter_mut().for_each(|(_, by)| *by *= factor);
        self.by_given.iter_mut().for_each(|(_, by)| *by *= factor);
        self.own *= factor * factor;
        self
    }

    /// A function of the length, straight about where it is.
    pub fn through(self, value: f64, slope: f64) -> Self {
        let mut out = self.times(slope);
        out.value = value;
        out
    }

    /// How it moves with a given.
    pub fn by(&self, given: Given) -> f64 {
        let own = self.by_given.iter().filter(|(g, _)| *g == given);
        own.map(|(_, by)| by).sum()
    }

    /// Covariance with another, of what was fitted alone; with itself, its variance.
    pub fn fitted_covariance(&self, other: &Form, fitted: &DMatrix<f64>) -> f64 {
        let by_fitted = self.by_fitted.iter().map(|&(i, a)| {
            let terms = other.by_fitted.iter().map(|&(j, b)| b * fitted[(i, j)]);
            a * terms.sum::<f64>()
        });
        by_fitted.sum()
    }

    /// Variance, of what was fitted, what is given, and its own.
    pub fn variance(&self, fitted: &DMatrix<f64>, fitting: &Fitting) -> f64 {
        let by_given = self.by_given.iter().map(|&(g, a)| {
            let terms = self.by_given.iter();
            a * terms
                .map(|&(h, b)| b * fitting.covariance(g, h))
                .sum::<f64>()
        });
        self.fitted_covariance(self, fitted) + by_given.sum::<f64>() + self.own
    }

    /// Its own variance, beside what it has in common with others.
    pub fn own_variance(&self) -> f64 {
        self.own
    }
}

impl Add for Form {
    type Output = Form;
    fn add(mut self, other: Form) -> Form {
        self.value += other.value;
        self.by_fitted.extend(other.by_fitted);
        self.by_given.extend(other.by_given);
        self.own += other.own;
        self
    }
}

impl Sub for Form {
    type Output = Form;
    fn sub(self, other: Form) -> Form {
        self + other.times(-1.0)
    }
}
