//! Keeps completed measures possible beside the taped ones.
//!
//! The normal distribution knows no order: far from the population it can put a completed navel
//! below a taped hip. Here completed heights are moved, as little as it takes, until every height of
//! the body is above the one before, and completed lengths are kept inside their accepted range.
//! Taped values are never touched.

use nalgebra::DVector;

use super::measures::{BodyMeasure, Kind};
use super::tape::{LADDER, NECK_STEP_CM};
use BodyMeasure as M;

/// Least distance of a moved height from its neighbour, in centimetres (chosen: small beside any
/// true distance, and enough to lay sections between).
const GAP_CM: f64 = 1.0;

/// Moves completed values to where they are possible; the measures moved.
pub(crate) fn settle(value: &mut DVector<f64>, is_taped: &dyn Fn(BodyMeasure) -> bool) -> Vec<BodyMeasure> {
    let before = value.clone();
    for m in M::ALL {
        if m.kind() != Kind::Height && !is_taped(m) {
            let (low, high) = m.range_cm();
            value[m.index()] = value[m.index()].clamp(low, high);
        }
    }
    settle_neck(value, is_taped);
    settle_ladder(value, is_taped);
    settle_navel(value, is_taped);
    let differs = |m: &BodyMeasure| (value[m.index()] - before[m.index()]).abs() > 1e-9;
    M::ALL.into_iter().filter(differs).collect()
}

/// A completed neck point follows the taped one within the step between them.
fn settle_neck(value: &mut DVector<f64>, is_taped: &dyn Fn(BodyMeasure) -> bool) {
    let (side, back) = (M::SideNeckHeight.index(), M::BackNeckHeight.index());
    if is_taped(M::SideNeckHeight) && !is_taped(M::BackNeckHeight) {
        value[back] = value[back].clamp(value[side] - NECK_STEP_CM, value[side] + NECK_STEP_CM);
    } else if !is_taped(M::SideNeckHeight) {
        value[side] = value[side].clamp(value[back] - NECK_STEP_CM, value[back] + NECK_STEP_CM);
    }
}

/// Raises, then lowers, each run of completed heights between two taped ones.
fn settle_ladder(value: &mut DVector<f64>, is_taped: &dyn Fn(BodyMeasure) -> bool) {
    let side = value[M::SideNeckHeight.index()];
    let mut floor = 0.0;
    let mut run: Vec<usize> = Vec::new();
    for m in LADDER {
        let at = m.index();
        if !is_taped(m) {
            run.push(at);
            continue;
        }
        // the shoulder stays below the lower of the two neck points
        let ceiling = if m == M::BackNeckHeight { value[at].min(side.max(floor + GAP_CM)) } else { value[at] };
        spread(value, &run, floor, ceiling);
        run.clear();
        floor = value[at];
    }
    let (shoulder, stature) = (M::ShoulderHeight.index(), value[M::Stature.index()]);
    let neck = value[M::BackNeckHeight.index()].min(stature - 0.5 * GAP_CM);
    if !is_taped(M::SideNeckHeight) {
        let low = (value[shoulder] + 0.5 * GAP_CM).max(neck - NECK_STEP_CM);
        let high = (neck + NECK_STEP_CM).min(stature - 0.5 * GAP_CM).max(low);
        value[M::SideNeckHeight.index()] = side.clamp(low, high);
    } else if !is_taped(M::ShoulderHeight) && value[shoulder] >= side {
        // lowest place that keeps it above the bust; a taped side neck below a taped bust is refused at entry
        value[shoulder] = side - 0.5 * (side - value[M::BustHeight.index()]).clamp(0.0, 2.0 * GAP_CM);
    }
}

/// Puts the values at `run` in rising order strictly between `floor` and `ceiling`.
fn spread(value: &mut DVector<f64>, run: &[usize], floor: f64, ceiling: f64) {
    if run.is_empty() {
        return;
    }
    #[expect(clippy::cast_precision_loss, reason = "at most eleven")]
    let gap = GAP_CM.min((ceiling - floor) / (run.len() + 1) as f64);
    let mut least = floor + gap;
    for &at in run {
        value[at] = value[at].max(least);
        least = value[at] + gap;
    }
    let mut most = ceiling - gap;
    for &at in run.iter().rev() {
        value[at] = value[at].min(most);
        most = value[at] - gap;
    }
}

/// A completed navel stays between hip and under-bust.
fn settle_navel(value: &mut DVector<f64>, is_taped: &dyn Fn(BodyMeasure) -> bool) {
    if !is_taped(M::NavelHeight) {
        spread(value, &[M::NavelHeight.index()], value[M::HipHeight.index()], value[M::UnderBustHeight.index()]);
    }
}
