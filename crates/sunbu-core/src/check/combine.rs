//! Several photos of one dressing taken together.

use nalgebra::{DMatrix, DVector};

use crate::dressing::{Fitting, Given, Observed, Quantity};
use crate::photo::Reading;

/// Nothing is read finer than half a millimetre, in centimetres.
const FINEST_CM: f64 = 0.05;

/// What all readings say together: each quantity weighed by how surely each photo shows it.
///
/// With readings `y_i` that pick their quantities by `H_i`, err by `R_i` and move with the givens by
/// `K_i`, the error of all is `C = (sum H_i' R_i^-1 H_i)^-1`, the value `C sum H_i' R_i^-1 y_i`, and it
/// moves with the givens by `C sum H_i' R_i^-1 K_i`: marks err anew on every photo, while body and
/// garment are the same on all.
///
/// Where photos contradict each other so much that together they read longer than anything of a
/// dressed person, the one that shows most is taken alone.
pub fn combine(fitting: &Fitting, readings: &[Reading]) -> Observed {
    let quantities: Vec<Quantity> = Quantity::ALL
        .iter()
        .copied()
        .filter(|q| readings.iter().any(|r| r.quantities().contains(q)))
        .collect();
    let n = quantities.len();
    let mut information = DMatrix::<f64>::zeros(n, n);
    let mut weighed = DVector::<f64>::zeros(n);
    let mut by_given = DMatrix::<f64>::zeros(n, Given::COUNT);
    for reading in readings {
        let m = reading.quantities().len();
        let own = reading.observed.own_covariance();
        let noise = own + DMatrix::identity(m, m) * FINEST_CM.powi(2);
        let Some(inverse) = noise.cholesky().map(|c| c.inverse()) else {
            continue;
        };
        let place = |q: &Quantity| quantities.iter().position(|p| p == q);
        let places: Vec<usize> = reading.quantities().iter().filter_map(place).collect();
        let pull = &inverse * DVector::from_column_slice(reading.values());
        let moved = &inverse * reading.observed.by_given();
        for (i, &a) in places.iter().enumerate() {
            weighed[a] += pull[i];
            for (j, &b) in places.iter().enumerate() {
                information[(a, b)] += inverse[(i, j)];
            }
            for g in 0..Given::COUNT {
                by_given[(a, g)] += moved[(i, g)];
            }
        }
    }
    let own = information
        .cholesky()
        .map_or_else(|| DMatrix::identity(n, n), |c| c.inverse());
    let values = (&own * weighed).iter().copied().collect();
    let by_given = &own * by_given;
    let even = (&own + own.transpose()) * 0.5;
    let joined = Observed::reckoned(quantities, values, even, by_given, fitting);
    joined.unwrap_or_else(|_| fullest(readings))
}

/// What the photo says that shows the most.
fn fullest(readings: &[Reading]) -> Observed {
    let fullest = readings.iter().max_by_key(|r| r.quantities().len());
    fullest.map_or_else(Observed::nothing, |reading| reading.observed.clone())
}
