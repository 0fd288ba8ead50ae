//! What a drawing of the body needs beyond the hull: feet, shoulders, arms, neck and head.
//!
//! Schematic: the hull ends at ankle and shoulder and has no arms. Neck and head proportions are
//! from memory and serve the eye only; nothing is computed from them.

use super::measures::BodyMeasure;
use BodyMeasure as M;

/// Chin to crown over stature.
const HEAD_HEIGHT: f64 = 0.138;
/// Half the head's breadth over stature.
const HEAD_HALF_BREADTH: f64 = 0.047;
/// Half the head's depth over stature.
const HEAD_HALF_DEPTH: f64 = 0.058;
/// Half the neck's breadth over the half breadth at its base.
const NECK_OVER_BASE: f64 = 0.86;
/// How far the head's middle stands ahead of the axis, over stature.
const HEAD_FORWARD: f64 = 0.012;
/// How far the back neck point stands behind the axis, over stature (mean of the reference bodies).
const NAPE_BEHIND: f64 = 0.013;
/// Toes ahead of the axis and heel behind it, over stature (foot 0.15 of stature).
const TOES_AHEAD: f64 = 0.105;
const HEEL_BEHIND: f64 = 0.045;
/// Distance of drawn points, in centimetres.
const STEP_CM: f64 = 1.0;
/// Points of half a head.
const HEAD_STEPS: u32 = 24;

/// Landmarks of a drawn body, in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// Stature.
    pub stature: f64,
    /// Side neck point on the right: half the neck base's breadth, height.
    pub side_neck: [f64; 2],
    /// Back neck point: forward of the axis (negative: behind), height.
    pub back_neck: [f64; 2],
    /// Right shoulder point: half the shoulder breadth, height.
    pub shoulder: [f64; 2],
    /// Shoulder point to wrist, with the arm straight.
    pub arm: f64,
    /// Wrist to fingertip.
    pub hand: f64,
    /// Ankle height.
    pub ankle: f64,
}

impl Figure {
    pub(crate) fn of(measure: &dyn Fn(BodyMeasure) -> f64) -> Figure {
        let stature = measure(M::Stature);
        let half_shoulder = 0.5 * measure(M::ShoulderBreadth);
        let shoulder = [half_shoulder, measure(M::ShoulderHeight)];
        // a neck base is nearly round, and its side point lies on the shoulder ridge
        let half_neck =
            (measure(M::NeckBaseGirth) / std::f64::consts::TAU).min(0.8 * half_shoulder);
        let side_neck = [half_neck, measure(M::SideNeckHeight)];
        Figure {
            stature,
            side_neck,
            back_neck: [-NAPE_BEHIND * stature, measure(M::BackNeckHeight)],
            shoulder,
            arm: (measure(M::SpineToWrist) - half_shoulder).max(0.1 * stature),
            hand: measure(M::HandLength),
            ankle: measure(M::AnkleHeight),
        }
    }

    /// Points of the right arm's middle line, lowered by `angle_deg` below the horizontal: shoulder
    /// point, wrist, fingertip, seen from the front.
    #[must_use]
    pub fn arm_line(&self, angle_deg: f64) -> [[f64; 2]; 3] {
        let (sin, cos) = angle_deg.to_radians().sin_cos();
        let at = |reach: f64| {
            [
                self.shoulder[0] + reach * cos,
                self.shoulder[1] - reach * sin,
            ]
        };
        [self.shoulder, at(self.arm), at(self.arm + self.hand)]
    }

    pub(crate) fn front(
        &self,
        half_breadth: &dyn Fn(f64) -> f64,
        (low, high): (f64, f64),
    ) -> Vec<[f64; 2]> {
        let mut line = vec![[0.0, 0.0], [half_breadth(low), 0.0]];
        line.extend(
            heights(low, high.min(self.shoulder[1] - STEP_CM)).map(|z| [half_breadth(z), z]),
        );
        line.push(self.shoulder);
        line.push(self.side_neck);
        let chin = (1.0 - HEAD_HEIGHT) * self.stature;
        let neck = NECK_OVER_BASE * self.side_neck[0];
        line.push([neck, 0.5 * (chin + self.side_neck[1]).max(chin)]);
        line.extend(
            self.head(HEAD_HALF_BREADTH * self.stature)
                .filter(|p| p[0] >= neck || p[1] > self.stature - 0.5 * HEAD_HEIGHT * self.stature),
        );
        line
    }

    pub(crate) fn side(
        &self,
        front: &dyn Fn(f64) -> f64,
        back: &dyn Fn(f64) -> f64,
        (low, high): (f64, f64),
    ) -> Vec<[f64; 2]> {
        let top = high.min(self.shoulder[1] - STEP_CM);
        let middle = HEAD_FORWARD * self.stature;
        let neck = NECK_OVER_BASE * self.side_neck[0];
        let above = 0.5 * (self.side_neck[1] + (1.0 - HEAD_HEIGHT) * self.stature);
        let mut line = vec![
            [TOES_AHEAD * self.stature, 0.0],
            [0.8 * TOES_AHEAD * self.stature, 0.35 * self.ankle],
        ];
        line.extend(heights(low, top).map(|z| [front(z), z]));
        line.push([neck, self.side_neck[1]]);
        line.push([middle + 0.8 * neck, above]);
        let head: Vec<[f64; 2]> = self.head(HEAD_HALF_DEPTH * self.stature).collect();
        line.extend(head.iter().map(|p| [middle + p[0], p[1]]));
        line.extend(head.iter().rev().skip(1).map(|p| [middle - p[0], p[1]]));
        line.push([middle - neck, above.max(self.back_neck[1])]);
        line.push(self.back_neck);
        let down: Vec<[f64; 2]> = heights(low, top).map(|z| [-back(z), z]).collect();
        line.extend(down.into_iter().rev());
        line.push([-HEEL_BEHIND * self.stature, 0.0]);
        line
    }

    /// Half a head from chin to crown: reach from its middle line, height.
    fn head(&self, half: f64) -> impl Iterator<Item = [f64; 2]> + use<> {
        let (rise, stature) = (0.5 * HEAD_HEIGHT * self.stature, self.stature);
        (0..=HEAD_STEPS).map(move |i| {
            let (sin, cos) =
                (std::f64::consts::PI * f64::from(i) / f64::from(HEAD_STEPS)).sin_cos();
            [half * sin, stature - rise - rise * cos]
        })
    }
}

/// Heights from low to high, both included, a step apart.
fn heights(low: f64, high: f64) -> impl Iterator<Item = f64> {
    let mut z = low;
    std::iter::from_fn(move || {
        let now = (z < high).then_some(z)?;
        z += STEP_CM;
        Some(now)
    })
    .chain(std::iter::once(high.max(low)))
}
