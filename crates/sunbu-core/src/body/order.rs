//! Keeps completed measures possible beside the taped ones.
//!
//! The normal distribution knows no order: far from the population it can put a completed navel
//! below a taped hip. Here completed heights are moved, as little as it takes, until every height of
//! the body is above the one before, and completed lengths are kept inside their accepted range.
//! Taped values are never touched.

use nalgebra::DVector;

use super::measures::{BodyMeasure, Kind};
use super::possible::{LADDER, NECK_STEP_CM};
use BodyMeasure as M;

/// Least distance of a moved height from its neighbour, in centimetres (chosen: small beside any
/// true distance, and enough to lay sections between).
const GAP_CM: f64 = 1.0;

/// Moves completed values to where they are possible; the measures moved.
pub(crate) fn settle(
    value: &mut DVector<f64>,
    is_taped: &dyn Fn(BodyMeasure) -> bool,
) -> Vec<BodyMeasure> {
    let before = value.clone();
    for &m in M::ALL {
        if m.kind() != Kind::Height && !is_taped(m) {
            let (low, high) = m.range_cm();
            value[m.index()] = value[m.index()].clamp(low, high);
        }
    }
    settle_ladder(value, is_taped);
    settle_neck(value, is_taped);
    if !is_taped(M::NavelHeight) {
        spread(
            value,
            &[M::NavelHeight.index()],
            value[M::HipHeight.index()],
            value[M::UnderBustHeight.index()],
        );
    }
    let differs = |m: &BodyMeasure| (value[m.index()] - before[m.index()]).abs() > 1e-9;
    M::ALL.iter().copied().filter(differs).collect()
}

/// Puts each run of completed heights between two taped ones into rising order.
fn settle_ladder(value: &mut DVector<f64>, is_taped: &dyn Fn(BodyMeasure) -> bool) {
    let mut floor = 0.0;
    let mut run: Vec<usize> = Vec::new();
    for m in LADDER {
        // the shoulder must stay below both neck points: of two taped ones the lower is the rung
        let rung = match m {
            M::BackNeckHeight => [m, M::SideNeckHeight]
                .into_iter()
                .filter(|&neck| is_taped(neck))
                .min_by(|a, b| value[a.index()].total_cmp(&value[b.index()]))
                .unwrap_or(m),
            other => other,
        };
        if is_taped(rung) {
            spread(value, &run, floor, value[rung.index()]);
            run.clear();
            floor = value[rung.index()];
        } else {
            run.push(rung.index());
        }
    }
}

/// Keeps a completed neck point above the shoulder, below the crown, and a step at most from the other.
fn settle_neck(value: &mut DVector<f64>, is_taped: &dyn Fn(BodyMeasure) -> bool) {
    let (follower, leader) = match (is_taped(M::SideNeckHeight), is_taped(M::BackNeckHeight)) {
        (true, true) => return,
        (true, false) => (M::BackNeckHeight, M::SideNeckHeight),
        (false, _) => (M::SideNeckHeight, M::BackNeckHeight),
    };
    let at = value[leader.index()];
    let low = (0.5 * (value[M::ShoulderHeight.index()] + at)).max(at - NECK_STEP_CM);
    let high = (0.5 * (at + value[M::Stature.index()])).min(at + NECK_STEP_CM);
    value[follower.index()] = value[follower.index()].clamp(low, high);
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
