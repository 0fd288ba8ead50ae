//! The slope of a row of values, smoothed.

/// Slope at each value, per step: the correlation with the derivative of a Gaussian of this deviation,
/// cut off at four deviations, its Gaussian scaled to a sum of one; beyond the ends as at them.
///
/// A deviation that is not above zero counts as the least there is.
pub fn slope(values: &[f64], deviation: f64) -> Vec<f64> {
    let weights = weights(deviation);
    let Some(last) = values.len().checked_sub(1) else {
        return Vec::new();
    };
    let at = |here: usize| {
        let pairs = (1..).zip(&weights).map(|(off, weight)| {
            let after = values[(here + off).min(last)];
            let before = values[here.saturating_sub(off)];
            weight * (after - before)
        });
        pairs.sum()
    };
    (0..values.len()).map(at).collect()
}

/// What a value one step away counts, two steps away, and so on; on the other side the opposite.
pub(super) fn weights(deviation: f64) -> Vec<f64> {
    const LEAST: f64 = 0.1;
    const CUT: f64 = 4.0;
    let deviation = if deviation > LEAST { deviation } else { LEAST };
    let bell: Vec<f64> = (1_u32..)
        .map(f64::from)
        .take_while(|off| *off <= CUT * deviation + 0.5)
        .map(|off| (-0.5 * (off / deviation).powi(2)).exp())
        .collect();
    let sum = 1.0 + 2.0 * bell.iter().sum::<f64>();
    let spread = deviation * deviation * sum;
    (1_u32..)
        .zip(bell)
        .map(|(off, height)| f64::from(off) * height / spread)
        .collect()
}
