//! What was read of a finished dressing: values with their joint error.

use nalgebra::DMatrix;
use thiserror::Error;

use crate::dressing::given::{Fitting, Given};
use crate::dressing::quantity::Quantity;

/// No length of a dressed person is greater, in centimetres; no reading may be.
pub const GREATEST_CM: f64 = 500.0;

/// How far two halves of a covariance may differ, and how far it may fall short of one, by share of
/// its greatest variance: what rounding does, and no more.
const ROUNDING: f64 = 1e-9;

/// Quantities as they were read off a dressed person, with their joint error. Checked.
#[derive(Debug, Clone, PartialEq)]
pub struct Observed {
    quantities: Vec<Quantity>,
    values: Vec<f64>,
    /// Of the values as lengths of the dressing.
    covariance: DMatrix<f64>,
    /// Of the values with the givens as they were taken to be.
    own: DMatrix<f64>,
    /// How each value moves with each given.
    by_given: DMatrix<f64>,
}

/// Why readings cannot stand.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum ObservedError {
    /// Not one value for each quantity.
    #[error("{quantities} quantities were read, but {values} values are given: give one for each")]
    Count {
        /// How many quantities.
        quantities: usize,
        /// How many values.
        values: usize,
    },
    /// A covariance of another size.
    #[error(
        "the covariance has {rows} rows and {columns} columns: {wanted} readings need {wanted} of \
         each"
    )]
    Size {
        /// Its rows.
        rows: usize,
        /// Its columns.
        columns: usize,
        /// How many there should be.
        wanted: usize,
    },
    /// A quantity that stands there twice.
    #[error("{} was read twice: join both readings into one with its error", .0.key())]
    Twice(Quantity),
    /// A value that is no number, or none of a dressed person.
    #[error(
        "{} reads {cm} cm: give a number from -{GREATEST_CM} to {GREATEST_CM} cm",
        quantity.key()
    )]
    Value {
        /// Which.
        quantity: Quantity,
        /// What was read, in centimetres.
        cm: f64,
    },
    /// An error that is no number, or greater than anything read.
    #[error(
        "the covariance of {} and {} is {cm2} cm²: give a number from -{most} to {most} cm²",
        a.key(), b.key(), most = GREATEST_CM * GREATEST_CM
    )]
    Covariance {
        /// The one.
        a: Quantity,
        /// The other.
        b: Quantity,
        /// What was given, in cm².
        cm2: f64,
    },
    /// A matrix that is the covariance of nothing.
    #[error(
        "the covariance of the readings is none: it must be symmetric, and no sum of readings may \
         have a variance below zero"
    )]
    NoCovariance,
}

impl Observed {
    /// Readings in centimetres with their joint error in cm², in the same order.
    ///
    /// # Errors
    /// [`ObservedError`] when there is not one value for each quantity, a quantity twice, a number
    /// that is none or beyond [`GREATEST_CM`], or a matrix that is no covariance (symmetric, positive
    /// semidefinite).
    pub fn new(
        quantities: Vec<Quantity>,
        values: Vec<f64>,
        covariance: DMatrix<f64>,
    ) -> Result<Self, ObservedError> {
        let wanted = quantities.len();
        if values.len() != wanted {
            return Err(ObservedError::Count {
                quantities: wanted,
                values: values.len(),
            });
        }
        let (rows, columns) = covariance.shape();
        if (rows, columns) != (wanted, wanted) {
            return Err(ObservedError::Size {
                rows,
                columns,
                wanted,
            });
        }
        for (i, &quantity) in quantities.iter().enumerate() {
            if quantities[..i].contains(&quantity) {
                return Err(ObservedError::Twice(quantity));
            }
            let cm = values[i];
            if !(-GREATEST_CM..=GREATEST_CM).contains(&cm) {
                return Err(ObservedError::Value { quantity, cm });
            }
            for (j, &other) in quantities.iter().enumerate() {
                let cm2 = covariance[(i, j)];
                let most = GREATEST_CM * GREATEST_CM;
                if !(-most..=most).contains(&cm2) {
                    return Err(ObservedError::Covariance {
                        a: quantity,
                        b: other,
                        cm2,
                    });
                }
            }
        }
        if !is_covariance(&covariance) {
            return Err(ObservedError::NoCovariance);
        }
        let by_given = DMatrix::zeros(quantities.len(), Given::COUNT);
        Ok(Self {
            quantities,
            values,
            own: covariance.clone(),
            covariance,
            by_given,
        })
    }

    /// Readings that were reckoned with what is given of body and garment: an obi's height over the
    /// hip bone, read off a photo, is its height over the floor less that of the bone as it was taped
    /// or foretold. `own` is their joint error in cm² were the givens known; `by_given` has a row for
    /// each reading and a column for each given: how the reading moves with it. Where the dressing
    /// hangs on the same given, the two errors are one and not two.
    ///
    /// # Errors
    /// As [`Self::new`]; [`ObservedError::Size`] also where `by_given` has another shape.
    pub fn reckoned(
        quantities: Vec<Quantity>,
        values: Vec<f64>,
        own: DMatrix<f64>,
        by_given: DMatrix<f64>,
        fitting: &Fitting,
    ) -> Result<Self, ObservedError> {
        let (rows, columns) = by_given.shape();
        if (rows, columns) != (quantities.len(), Given::COUNT) {
            return Err(ObservedError::Size {
                rows,
                columns,
                wanted: quantities.len(),
            });
        }
        let plain = Self::new(quantities, values, own)?;
        let covariance = &plain.own + shared(&by_given, fitting);
        let whole = Self::new(plain.quantities, plain.values, covariance)?;
        Ok(Self {
            own: plain.own,
            by_given,
            ..whole
        })
    }

    /// Nothing read at all.
    pub fn nothing() -> Self {
        Self {
            quantities: Vec::new(),
            values: Vec::new(),
            covariance: DMatrix::zeros(0, 0),
            own: DMatrix::zeros(0, 0),
            by_given: DMatrix::zeros(0, Given::COUNT),
        }
    }

    /// Readings whose errors have nothing to do with each other: value and standard deviation of
    /// each, in centimetres.
    ///
    /// # Errors
    /// As [`Self::new`].
    pub fn independent(
        readings: impl IntoIterator<Item = (Quantity, f64, f64)>,
    ) -> Result<Self, ObservedError> {
        let readings: Vec<_> = readings.into_iter().collect();
        let count = readings.len();
        let covariance = DMatrix::from_fn(count, count, |i, j| match i == j {
            true => readings[i].2 * readings[i].2,
            false => 0.0,
        });
        let (quantities, values) = readings.iter().map(|&(q, cm, _)| (q, cm)).unzip();
        Self::new(quantities, values, covariance)
    }

    /// What was read, in the order given.
    pub fn quantities(&self) -> &[Quantity] {
        &self.quantities
    }

    /// The readings, in centimetres.
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// Their joint error as lengths of the dressing, in cm².
    pub fn covariance(&self) -> &DMatrix<f64> {
        &self.covariance
    }

    /// Their joint error were the givens known, in cm².
    pub fn own_covariance(&self) -> &DMatrix<f64> {
        &self.own
    }

    /// How each reading moves with each given, in centimetres to the given's unit.
    pub fn by_given(&self) -> &DMatrix<f64> {
        &self.by_given
    }

    /// One reading with its standard deviation, in centimetres; none where it was not read.
    pub fn reading(&self, quantity: Quantity) -> Option<(f64, f64)> {
        let place = self.quantities.iter().position(|&q| q == quantity)?;
        let variance = self.covariance[(place, place)];
        Some((self.values[place], variance.max(0.0).sqrt()))
    }
}

/// The part of a joint error that comes from what is given, in cm².
pub(crate) fn shared(by_given: &DMatrix<f64>, fitting: &Fitting) -> DMatrix<f64> {
    let given = DMatrix::from_fn(Given::COUNT, Given::COUNT, |i, j| {
        fitting.covariance(Given::ALL[i], Given::ALL[j])
    });
    let whole = by_given * given * by_given.transpose();
    (&whole + whole.transpose()) * 0.5
}

/// Whether a matrix of finite numbers is symmetric and positive semidefinite, up to rounding.
///
/// One that is, with a little added to its diagonal, has a Cholesky root; one with a direction of
/// clearly negative variance has none.
fn is_covariance(matrix: &DMatrix<f64>) -> bool {
    let greatest = matrix.diagonal().iter().fold(0.0_f64, |g, &v| g.max(v));
    let slack = ROUNDING * greatest;
    let apart = (matrix - matrix.transpose()).amax();
    if apart > slack {
        return false;
    }
    if greatest == 0.0 {
        return matrix.amax() == 0.0;
    }
    let count = matrix.nrows();
    let lifted = matrix + DMatrix::identity(count, count) * slack;
    lifted.cholesky().is_some()
}

#[cfg(test)]
mod tests {
    use super::*;
    use Quantity as Q;

    fn error(quantities: &[Q], values: &[f64], covariance: &[f64]) -> ObservedError {
        let count = (1..=2)
            .find(|n| n * n == covariance.len())
            .expect("a square");
        let covariance = DMatrix::from_row_slice(count, count, covariance);
        Observed::new(quantities.to_vec(), values.to_vec(), covariance)
            .expect_err("readings that cannot stand")
    }

    #[test]
    fn what_cannot_stand_is_refused_with_its_name_and_value() {
        let one = |cm, cm2| error(&[Q::HemBack], &[cm], &[cm2]).to_string();
        assert!(one(f64::NAN, 1.0).contains("hem_back reads NaN cm"));
        assert!(one(501.0, 1.0).contains("hem_back reads 501 cm"));
        assert!(one(1.0, f64::INFINITY).contains("inf"));
        assert_eq!(
            error(&[Q::HemBack], &[1.0], &[-0.1]),
            ObservedError::NoCovariance
        );
        let two = [Q::HemBack, Q::FoldFront];
        let skew = [1.0, 0.5, 0.4, 1.0];
        assert_eq!(error(&two, &[1.0, 2.0], &skew), ObservedError::NoCovariance);
        let too_close = [1.0, 1.1, 1.1, 1.0];
        assert_eq!(
            error(&two, &[1.0, 2.0], &too_close),
            ObservedError::NoCovariance
        );
        let eye = [1.0, 0.0, 0.0, 1.0];
        let twice = error(&[Q::HemBack, Q::HemBack], &[1.0, 2.0], &eye);
        assert_eq!(twice, ObservedError::Twice(Q::HemBack));
        assert!(matches!(
            error(&two, &[1.0], &eye),
            ObservedError::Count { .. }
        ));
        assert!(matches!(
            error(&two, &[1.0, 2.0], &[1.0]),
            ObservedError::Size { .. }
        ));
    }

    #[test]
    fn readings_that_hang_together_wholly_are_a_covariance() {
        // One scale error moves all three: rank one, which rounding must not refuse.
        let scale = nalgebra::DVector::from_vec(vec![0.3, 1.7, 0.9]);
        let covariance = &scale * scale.transpose();
        let quantities = vec![Q::HemBack, Q::FoldFront, Q::FoldRight];
        let read = Observed::new(quantities, vec![1.0, 6.0, 6.0], covariance).expect("stands");
        let (cm, sd) = read.reading(Q::FoldFront).expect("was read");
        assert!((cm, sd) == (6.0, 1.7), "{cm} and {sd}");
        assert_eq!(read.reading(Q::TareLength), None);
    }

    #[test]
    fn nothing_read_is_a_reading_too() {
        assert!(Observed::independent([]).is_ok());
    }
}
