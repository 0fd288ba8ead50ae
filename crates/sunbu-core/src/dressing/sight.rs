//! The hem as others see it: where it stands against the leg for an eye anywhere in the room.
//!
//! The hem stands out before the ankle, so a sight line past its edge meets the leg higher or lower
//! than the hem hangs: higher from below a stage, lower for somebody who stands close by and looks
//! down. Reckoned on the real hem: the plane upright through eye and ankle bone cuts the hem of the
//! clothed surface at one place, and the straight line from the eye through that place is followed
//! to the bone's upright. The short formula, [`hem_as_seen`] with the slope taken to the wearer's
//! middle and the depth of the hem at the middle line, is off by less than a millimetre for an eye
//! below a stage, by 2 mm for a camera 3 m away, and by nearly 2 cm for a neighbour at 1 m; the
//! tests hold these bounds.
//!
//! What stays uncertain is how the skirt hangs: the hem's reach before the bone is given 2 cm of
//! deviation (chosen), which weighs by the slope.

use thiserror::Error;

use super::decision::Dressing;
use super::forward::hem_as_seen;
use super::given::Fitting;
use super::predict::Prediction;
use super::quantity::Quantity;
use crate::body::{Body, BodyMeasure};
use crate::drape::Drape;
use crate::keyed::keyed_enum;
use crate::photo::View;

/// Half the distance between the outer ankle bones of somebody standing with the feet together, in
/// centimetres: an ankle of 6.5 and half the gap (from memory). A centimetre more or less moves the
/// hem's reach before the bone by some millimetres.
const HALF_ANKLES_CM: f64 = 7.5;

/// How far a tabi reaches above the ankle bone, in centimetres (from memory).
pub const TABI_ABOVE_ANKLE_CM: f64 = 4.0;

/// Deviation of how far the hem stands out before the bone, in centimetres (chosen: the skirt's
/// folds and the stance move it by as much).
const STANDS_OUT_SD_CM: f64 = 2.0;

/// Places round the hem between which the sight line is looked for.
const PLACES: usize = 48;

/// Allowed height of an eye above the viewer's own floor, in centimetres: a camera on the ground to
/// one held high.
pub const EYE_CM: (f64, f64) = (0.0, 400.0);
/// Allowed distance of the eye from the wearer's middle, in centimetres: nearer it would be in her
/// clothes, farther nobody sees an ankle.
pub const DISTANCE_CM: (f64, f64) = (50.0, 10_000.0);
/// Allowed height of the viewer's floor over the wearer's, in centimetres.
pub const FLOOR_CM: (f64, f64) = (-1_000.0, 1_000.0);

/// Somebody who looks at the hem: an eye and where it is. All in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Viewer {
    eye: f64,
    distance: f64,
    floor: f64,
}

/// Why a viewer cannot be.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("{field} is {value} cm; it lies between {low} and {high} cm")]
pub struct ViewerError {
    /// `eye_cm`, `distance_cm` or `floor_cm`.
    pub field: &'static str,
    /// What was given.
    pub value: f64,
    /// The least allowed.
    pub low: f64,
    /// The most allowed.
    pub high: f64,
}

impl Viewer {
    /// An eye `eye_cm` above the viewer's floor and `distance_cm` level from the wearer's middle;
    /// that floor lies `floor_cm` above the wearer's, below a stage less than nothing.
    ///
    /// # Errors
    /// [`ViewerError`] with the first field that is no number or out of its range.
    pub fn new(eye_cm: f64, distance_cm: f64, floor_cm: f64) -> Result<Self, ViewerError> {
        for (field, value, (low, high)) in [
            ("eye_cm", eye_cm, EYE_CM),
            ("distance_cm", distance_cm, DISTANCE_CM),
            ("floor_cm", floor_cm, FLOOR_CM),
        ] {
            if !(low..=high).contains(&value) {
                return Err(ViewerError {
                    field,
                    value,
                    low,
                    high,
                });
            }
        }
        Ok(Self {
            eye: eye_cm,
            distance: distance_cm,
            floor: floor_cm,
        })
    }

    /// Height of the eye above the wearer's floor, in centimetres.
    pub fn height_cm(&self) -> f64 {
        self.eye + self.floor
    }

    /// Level distance of the eye from the wearer's middle, in centimetres.
    pub fn distance_cm(&self) -> f64 {
        self.distance
    }

    /// Where the eye is when it looks at this side of her: left, ahead, up.
    fn at(&self, from: View) -> [f64; 3] {
        let (d, z) = (self.distance, self.height_cm());
        match from {
            View::Front => [0.0, d, z],
            View::Back => [0.0, -d, z],
            View::Left => [d, 0.0, z],
            View::Right => [-d, 0.0, z],
        }
    }
}

keyed_enum! {
    /// The viewers that a dresser asks about.
    Onlooker {
        /// In a front seat below a stage.
        BelowStage = "below_stage",
        /// Standing before her, near enough to touch.
        Neighbour = "neighbour",
        /// A camera.
        Camera = "camera",
    }
}

impl Onlooker {
    /// Where this viewer's eye usually is.
    ///
    /// Below a stage: the eye of somebody seated 115 above her floor (from memory), the stage 120
    /// above it, 3 m away; on a lower stage that eye is above the stage's floor, and no more of the
    /// leg shows than hangs free. A neighbour: a woman of 161 whose eye is 11 below her crown (from
    /// memory), 1 m away. A camera: held at the height of the waist, 3 m away. Common practice, no
    /// source, but for what is from memory.
    pub const fn viewer(self) -> Viewer {
        let (eye, distance, floor) = match self {
            Onlooker::BelowStage => (115.0, 300.0, -120.0),
            Onlooker::Neighbour => (150.0, 100.0, 0.0),
            Onlooker::Camera => (95.0, 300.0, 0.0),
        };
        Viewer {
            eye,
            distance,
            floor,
        }
    }
}

/// What shows of the leg below the hem.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Leg {
    /// The ankle bone is covered.
    Covered,
    /// The ankle bone shows, and no more of the leg than the tabi covers.
    Tabi,
    /// Skin shows above the tabi.
    Skin,
}

/// The hem as one viewer sees it, at the ankle bone where most of the leg shows. In centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HemSeen {
    /// How high the hem hangs where the sight line passes it.
    pub hem_cm: f64,
    /// How far it stands out there before the ankle bone, along the sight line's plan.
    pub stands_out_cm: f64,
    /// How much the sight line rises toward her for each centimetre: below zero, it looks down.
    pub slope: f64,
    /// Where it meets the upright through the ankle bone, above her floor; below zero, the hem
    /// hides the floor there too.
    pub at_leg_cm: f64,
    /// Standard deviation of [`Self::at_leg_cm`].
    pub at_leg_sd_cm: f64,
    /// How much of the leg above the ankle bone shows; below zero, by how much the bone is covered.
    pub bare_cm: f64,
    /// Standard deviation of [`Self::bare_cm`].
    pub bare_sd_cm: f64,
}

impl HemSeen {
    /// What shows of the leg.
    pub fn leg(&self) -> Leg {
        match self.bare_cm {
            bare if bare > TABI_ABOVE_ANKLE_CM => Leg::Skin,
            bare if bare > 0.0 => Leg::Tabi,
            _ => Leg::Covered,
        }
    }
}

/// The hem of this dressing as `viewer` sees it `from` one side.
///
/// `prediction` is that of the same fitting and dressing. From the front and from behind both ankle
/// bones are looked at, from the side the nearer one.
pub fn hem_seen(
    body: &Body,
    fitting: &Fitting,
    dressing: &Dressing,
    prediction: &Prediction,
    viewer: Viewer,
    from: View,
) -> HemSeen {
    let drape = Drape::new(body, fitting, dressing, &prediction.appearance());
    let eye = viewer.at(from);
    let bones: &[f64] = match from {
        View::Front | View::Back => &[-HALF_ANKLES_CM, HALF_ANKLES_CM],
        View::Left => &[HALF_ANKLES_CM],
        View::Right => &[-HALF_ANKLES_CM],
    };
    let seen = bones.iter().map(|&left| {
        let hem = hem_before(&drape, [left, 0.0], eye);
        let stands_out = (hem[0] - left).hypot(hem[1]);
        let away = (eye[0] - hem[0]).hypot(eye[1] - hem[1]);
        let slope = (hem[2] - eye[2]) / away;
        (hem[2], stands_out, slope)
    });
    let at_leg = |&(hem, out, slope): &(f64, f64, f64)| hem_as_seen(hem, slope, out);
    let most = seen.max_by(|a, b| at_leg(a).total_cmp(&at_leg(b)));
    let (hem_cm, stands_out_cm, slope) = most.unwrap_or((drape.hem, 0.0, 0.0));
    let at_leg_cm = hem_as_seen(hem_cm, slope, stands_out_cm);
    let ankle = body.measure(BodyMeasure::AnkleHeight);
    let at_leg_sd_cm = hem_sd(prediction, hem_cm).hypot(slope * STANDS_OUT_SD_CM);
    HemSeen {
        hem_cm,
        stands_out_cm,
        slope,
        at_leg_cm,
        at_leg_sd_cm,
        bare_cm: at_leg_cm - ankle.value_cm(),
        bare_sd_cm: at_leg_sd_cm.hypot(ankle.sd_cm()),
    }
}

/// The place of the hem between an upright at `bone` and the eye: left, ahead, up. The bone itself,
/// at the hem's height, where the hem does not stand out before it.
fn hem_before(drape: &Drape, bone: [f64; 2], eye: [f64; 3]) -> [f64; 3] {
    let toward = [eye[0] - bone[0], eye[1] - bone[1]];
    let length = toward[0].hypot(toward[1]);
    let place = |s: f64| drape.surface.at(s, hem_at(drape, s), 0.0);
    // How far a place lies beside the line from the bone to the eye, and how far along it.
    let beside = |p: [f64; 3]| {
        let (x, y) = (p[0] - bone[0], p[1] - bone[1]);
        let across = (x * toward[1] - y * toward[0]) / length;
        let along = (x * toward[0] + y * toward[1]) / length;
        (across, along)
    };
    let girth = drape.surface.girth(drape.hem);
    let arc = |i: usize| girth * i as f64 / PLACES as f64;
    for i in 0..PLACES {
        let (mut a, mut b) = (arc(i), arc(i + 1));
        let (from, to) = (beside(place(a)), beside(place(b)));
        if from.0 * to.0 > 0.0 || from.1.max(to.1) <= 0.0 {
            continue;
        }
        // So many halvings of 2 cm leave less than a micrometre.
        for _ in 0..24 {
            let middle = 0.5 * (a + b);
            if beside(place(middle)).0 * from.0 > 0.0 {
                a = middle;
            } else {
                b = middle;
            }
        }
        return place(0.5 * (a + b));
    }
    [bone[0], bone[1], drape.hem]
}

/// Height of the hem that is seen at an arc: the outer panel's up to its edge, beyond it the back's.
fn hem_at(drape: &Drape, s: f64) -> f64 {
    if s > drape.outer_edge(drape.outer_corner) {
        drape.hem
    } else {
        drape.hem_at(s)
    }
}

/// Deviation of the hem at a place where it hangs this high, between back and outer corner.
fn hem_sd(prediction: &Prediction, hem: f64) -> f64 {
    let (back, corner) = (Quantity::HemBack, Quantity::UwamaeCorner);
    let (low, high) = (prediction.value(back), prediction.value(corner));
    let raise = high - low;
    let share = if raise.abs() > 1e-6 {
        ((hem - low) / raise).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let rest = 1.0 - share;
    let variance = rest * rest * prediction.covariance(back, back)
        + 2.0 * rest * share * prediction.covariance(back, corner)
        + share * share * prediction.covariance(corner, corner);
    variance.max(0.0).sqrt()
}
