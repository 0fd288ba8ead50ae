//! Several photos of one dressing taken together.

use nalgebra::{DMatrix, DVector};

use crate::dressing::{Observed, Quantity};
use crate::photo::Reading;

/// Nothing is read finer than half a millimetre, in centimetres.
const FINEST_CM: f64 = 0.05;

/// What all readings say together: each quantity weighed by how surely each photo shows it.
///
/// With readings `y_i` of covariance `R_i` that pick their quantities by `H_i`, the covariance of
/// all is `C = (sum H_i' R_i^-1 H_i)^-1` and the value `C sum H_i' R_i^-1 y_i`. Photos are taken to
/// err independently; what they share of the body's own error is small against the marks'.
///
/// # Panics
/// Never: a reading's covariance is a covariance, and its values are finite.
pub fn combine(readings: &[Reading]) -> Observed {
    let quantities: Vec<Quantity> = Quantity::ALL
        .iter()
        .copied()
        .filter(|q| readings.iter().any(|r| r.quantities().contains(q)))
        .collect();
    let n = quantities.len();
    let mut information = DMatrix::<f64>::zeros(n, n);
    let mut weighed = DVector::<f64>::zeros(n);
    for reading in readings {
        let m = reading.quantities().len();
        let noise = reading.covariance() + DMatrix::identity(m, m) * FINEST_CM.powi(2);
        let Some(inverse) = noise.cholesky().map(|c| c.inverse()) else {
            continue;
        };
        let place = |q: &Quantity| quantities.iter().position(|p| p == q);
        let places: Vec<usize> = reading.quantities().iter().filter_map(place).collect();
        let values = DVector::from_column_slice(reading.values());
        let pull = &inverse * values;
        for (i, &a) in places.iter().enumerate() {
            weighed[a] += pull[i];
            for (j, &b) in places.iter().enumerate() {
                information[(a, b)] += inverse[(i, j)];
            }
        }
    }
    let covariance = information
        .cholesky()
        .map_or_else(|| DMatrix::identity(n, n), |c| c.inverse());
    let values = &covariance * weighed;
    let even = (&covariance + covariance.transpose()) * 0.5;
    Observed::new(quantities, values.iter().copied().collect(), even)
        .expect("sums of covariances are one")
}
