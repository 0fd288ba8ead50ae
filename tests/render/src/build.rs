//! The parts of the person that the cloth does not cover: head, neck, arms, hands, feet.
//!
//! Proportions are chosen for the eye; heights and reaches are the body's own measures.

use sunbu_core::body::{Body, BodyMeasure as M};

use crate::vector::{V3, add, cross, times, unit};

/// How far the sleeve's ridge lies above the arm's middle line, in centimetres.
pub(crate) const SLEEVE_LIFT: f64 = 2.2;
/// Half the wrist's thickness, in centimetres.
pub(crate) const WRIST_HALF: f64 = 1.6;

/// How one arm is held.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arm {
    /// Below the horizontal, in degrees.
    pub down_deg: f64,
    /// Ahead of the plane of the shoulders, in degrees.
    pub ahead_deg: f64,
}

/// How the person stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stance {
    /// The left arm and the right one.
    pub arms: [Arm; 2],
    /// How far each foot's middle line lies from the middle, in centimetres.
    pub feet: f64,
    /// How far both feet stand ahead of the usual place, in centimetres.
    pub feet_ahead: f64,
    /// Length of the foot over stature.
    pub foot_share: f64,
    /// How far the hair stands above the crown, in centimetres.
    pub hair: f64,
}

impl Default for Stance {
    fn default() -> Self {
        let arm = Arm {
            down_deg: 45.0,
            ahead_deg: 0.0,
        };
        Self {
            arms: [arm; 2],
            feet: 4.1,
            feet_ahead: 0.0,
            foot_share: 0.15,
            hair: 1.0,
        }
    }
}

/// The uncovered parts of one person as she stands.
#[derive(Debug, Clone)]
pub(crate) struct Build {
    pub stature: f64,
    half_shoulder: f64,
    shoulder: f64,
    reach: f64,
    pub hand: f64,
    ankle: f64,
    stance: Stance,
}

impl Build {
    pub fn of(body: &Body, stance: Stance) -> Self {
        let cm = |m: M| body.value_cm(m);
        let half_shoulder = 0.5 * cm(M::ShoulderBreadth);
        Self {
            stature: cm(M::Stature),
            half_shoulder,
            shoulder: cm(M::ShoulderHeight),
            reach: cm(M::SpineToWrist),
            hand: cm(M::HandLength),
            ankle: cm(M::AnkleHeight),
            stance,
        }
    }

    pub fn stance(&self) -> &Stance {
        &self.stance
    }

    fn side(left: bool) -> f64 {
        if left { 1.0 } else { -1.0 }
    }

    /// The shoulder point.
    pub fn shoulder(&self, left: bool) -> V3 {
        [Self::side(left) * self.half_shoulder, -0.5, self.shoulder]
    }

    /// Along an arm from the shoulder point, of length one.
    pub fn arm(&self, left: bool) -> V3 {
        let Arm {
            down_deg,
            ahead_deg,
        } = self.stance.arms[usize::from(!left)];
        let (sin, cos) = down_deg.to_radians().sin_cos();
        let (ahead, across) = ahead_deg.to_radians().sin_cos();
        [Self::side(left) * cos * across, cos * ahead, -sin]
    }

    /// Outward from the arm's upper side, of length one.
    pub fn over_arm(&self, left: bool) -> V3 {
        let arm = self.arm(left);
        let k = arm[2];
        unit([-arm[0] * k, -arm[1] * k, 1.0 - arm[2] * k])
    }

    /// Level and across the arm.
    pub fn across_arm(&self, left: bool) -> V3 {
        unit(cross(self.arm(left), [0.0, 0.0, 1.0]))
    }

    /// On the arm, `reach` from the centre back over the shoulder point, `out` above its middle
    /// line: the way in which yuki is measured.
    pub fn along_arm(&self, left: bool, reach: f64, out: f64) -> V3 {
        let at = add(
            self.shoulder(left),
            times(self.arm(left), reach - self.half_shoulder),
        );
        add(at, times(self.over_arm(left), out))
    }

    /// The wrist bone, on the arm's upper side.
    pub fn wrist(&self, left: bool) -> V3 {
        self.along_arm(left, self.reach, WRIST_HALF)
    }

    /// The reach of the wrist from the centre back.
    pub fn reach(&self) -> f64 {
        self.reach
    }

    /// The crown.
    pub fn crown(&self) -> V3 {
        [0.0, self.head_ahead(), self.stature + self.stance.hair]
    }

    /// How far ahead the head's middle lies.
    pub fn head_ahead(&self) -> f64 {
        0.012 * self.stature
    }

    /// Heel and toe of the feet, ahead of the axis.
    pub fn foot(&self) -> (f64, f64) {
        let length = self.stance.foot_share * self.stature;
        let heel = -0.3 * length + self.stance.feet_ahead;
        (heel, heel + length)
    }

    /// The outer bone of an ankle.
    pub fn ankle(&self, left: bool) -> V3 {
        let (heel, toe) = self.foot();
        let out = self.stance.feet + ANKLE_RADIUS;
        [
            Self::side(left) * out,
            heel + 0.25 * (toe - heel),
            self.ankle,
        ]
    }
}

/// Half the breadth of the leg at the ankle bone, in centimetres.
pub(crate) const ANKLE_RADIUS: f64 = 3.3;
