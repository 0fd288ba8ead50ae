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
/// Middle of a foot beside the body's middle, over stature.
const FOOT_BESIDE: f64 = 0.026;
/// Armpit below the shoulder point, over stature (the survey: 135.1 and 123.9 at 162.8 of stature).
const ARMPIT_BELOW: f64 = 0.059;
/// Hollow of the throat below the side neck point, over stature.
const THROAT_BELOW: f64 = 0.035;
/// Where the drawn back leaves the hull for the nape, below the shoulder point, over stature.
const NAPE_BLEND: f64 = 0.02;
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

    /// How far the toes' tips reach ahead of the axis.
    #[must_use]
    pub fn toes_ahead(&self) -> f64 {
        TOES_AHEAD * self.stature
    }

    /// How far the heels reach behind it.
    #[must_use]
    pub fn heel_behind(&self) -> f64 {
        HEEL_BEHIND * self.stature
    }

    /// How far the middle of a foot stands beside the body's middle.
    #[must_use]
    pub fn foot_beside(&self) -> f64 {
        FOOT_BESIDE * self.stature
    }

    /// How far the crown lies ahead of the axis.
    #[must_use]
    pub fn crown_ahead(&self) -> f64 {
        HEAD_FORWARD * self.stature
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
        // above the armpit the hull was cut where the arm begins; the shoulder is rounded in there
        let armpit = (self.shoulder[1] - ARMPIT_BELOW * self.stature).min(high);
        let mut line = vec![[0.0, 0.0], [half_breadth(low), 0.0]];
        line.extend(heights(low, armpit).map(|z| [half_breadth(z), z]));
        let [reach, top] = self.shoulder;
        let rise = top - armpit;
        let inner = half_breadth(armpit);
        line.extend(
            [(0.45, 0.30), (0.80, 0.60), (0.97, 0.85)]
                .map(|(out, up)| [inner + out * (reach - inner), armpit + up * rise]),
        );
        line.push(self.shoulder);
        line.push(self.side_neck);
        let neck = NECK_OVER_BASE * self.side_neck[0];
        let jaw = (1.0 - 0.8 * HEAD_HEIGHT) * self.stature;
        line.push([neck, (0.3 * self.side_neck[1] + 0.7 * jaw).min(jaw)]);
        line.extend(
            self.head(HEAD_HALF_BREADTH * self.stature)
                .filter(|p| p[1] > jaw),
        );
        line
    }

    pub(crate) fn side(
        &self,
        front: &dyn Fn(f64) -> f64,
        back: &dyn Fn(f64) -> f64,
        (low, high): (f64, f64),
    ) -> Vec<[f64; 2]> {
        let throat = self.side_neck[1] - THROAT_BELOW * self.stature;
        let middle = HEAD_FORWARD * self.stature;
        let neck = NECK_OVER_BASE * self.side_neck[0];
        let jaw = (1.0 - 0.8 * HEAD_HEIGHT) * self.stature;
        let toes = TOES_AHEAD * self.stature;
        let mut line = vec![[toes, 0.0], [0.8 * toes, 0.35 * self.ankle]];
        line.extend(heights(low, high.min(throat - STEP_CM)).map(|z| [front(z), z]));
        line.push([middle + 0.9 * neck, throat]);
        line.push([middle + 0.8 * neck, throat + 0.8 * (jaw - throat)]);
        let head: Vec<[f64; 2]> = self
            .head(HEAD_HALF_DEPTH * self.stature)
            .filter(|p| p[1] > jaw)
            .collect();
        line.extend(head.iter().map(|p| [middle + p[0], p[1]]));
        line.extend(head.iter().rev().skip(1).map(|p| [middle - p[0], p[1]]));
        line.push([middle - neck, 0.4 * self.back_neck[1] + 0.6 * jaw]);
        line.push(self.back_neck);
        // from the nape straight to the upper back, where the hull takes over
        let upper_back = self.shoulder[1] - NAPE_BLEND * self.stature;
        let down: Vec<[f64; 2]> = heights(low, high.min(upper_back))
            .map(|z| [-back(z), z])
            .collect();
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
