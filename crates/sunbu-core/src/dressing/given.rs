//! What a dressing is given: the person, the garment and the constants of the trade, with trust.

use crate::body::{Body, BodyMeasure, Shape};
use crate::garment::{Cloth, Garment, MitakeFrom, Part};
use crate::keyed::keyed_enum;
use crate::measure::{Measured, Origin};

keyed_enum! {
    /// One uncertain number that the dresser's hands cannot change, in centimetres.
    Given {
        /// Height of the back neck point (cervicale).
        BackNeck = "back_neck_height",
        /// Height of the side neck point.
        SideNeck = "side_neck_height",
        /// Height of the under-bust.
        UnderBust = "under_bust_height",
        /// Height of the hip bone, at its point in front.
        HipBone = "hip_bone_height",
        /// Height of the fullest hip.
        HipHeight = "hip_height",
        /// Girth of the fullest hip.
        HipGirth = "hip_girth",
        /// Girth of the waist.
        WaistGirth = "waist_girth",
        /// Girth of the neck base.
        NeckBaseGirth = "neck_base_girth",
        /// Back neck point over the shoulder to the wrist bone, arm lowered 45 degrees.
        SpineToWrist = "spine_to_wrist",
        /// Error of the hull girth at the collar end, beyond what hip height and girth explain.
        HullGirthError = "hull_girth_error",
        /// Error of the side line's arc at the collar end.
        SideArcError = "side_arc_error",
        /// Length of the garment, measured as `MitakeFrom` says.
        Mitake = "mitake",
        /// Centre back to sleeve end.
        Yuki = "yuki",
        /// `b`: back panel width.
        Ushirohaba = "ushirohaba",
        /// `f`: front panel width.
        Maehaba = "maehaba",
        /// `o`: okumi width at the hem.
        Okumihaba = "okumihaba",
        /// `o'`: okumi width at the collar end.
        Aizumahaba = "aizumahaba",
        /// `t`: hem to collar end along the front edge.
        Erishita = "erishita",
        /// Half the neck opening, as cut.
        ErikataAki = "erikata_aki",
        /// `k`: the neck opening set back behind the shoulder ridge.
        Kurikoshi = "kurikoshi",
        /// `delta_b`: extra length of the rounded back.
        BackRounding = "back_rounding",
        /// `delta_bust`: extra length over the bust.
        BustRounding = "bust_rounding",
        /// `m`: shoulder ridge to nape over the skin.
        RidgeToNape = "ridge_to_nape",
        /// `t`: thickness of the layers worn under and with the garment.
        Layers = "layers",
        /// How much higher the obi's lower edge runs at the back than in front.
        ObiRise = "obi_rise",
        /// Hollow of the throat below the side neck point.
        ThroatDrop = "throat_drop",
        /// Chest tie below the under-bust.
        ChestTieDrop = "chest_tie_drop",
    }
}

/// The constants that a studio starts from and that later checks sharpen.
///
/// Returns value and standard deviation in centimetres. `back_rounding`, `bust_rounding` and
/// `ridge_to_nape` are the values of the worked examples in the model chapter; their spreads and
/// the last three rows are chosen ("common practice, no source").
pub fn customary(given: Given) -> Option<Measured> {
    let (value, sd) = match given {
        Given::BackRounding => (1.5, 0.8),
        Given::BustRounding => (3.0, 1.0),
        Given::RidgeToNape => (3.0, 0.7),
        Given::Layers => (0.35, 0.1),
        Given::ObiRise => (2.0, 0.7),
        // The hollow of the throat (suprasternale) lies 6.6 below the back neck point in the
        // survey's means (139.57 - 132.97), and the side neck point 1 below that point.
        Given::ThroatDrop => (5.6, 0.8),
        Given::ChestTieDrop => (0.0, 1.0),
        _ => return None,
    };
    Measured::new(value, sd, Origin::Customary).ok()
}

/// How far above its erishita the collar end usually lies: a hem of 1 and the 3.5 that soft silk,
/// cotton and stiff cloth alike keep of their usual raise, in centimetres.
///
/// Only the deviation of the hull is read there; the cover itself follows the real height.
const COLLAR_END_RISE_CM: f64 = 4.5;

/// A person in a garment: every given number with its joint trust, and the body's shape.
#[derive(Debug, Clone)]
pub struct Fitting {
    values: [f64; Given::COUNT],
    covariance: Vec<f64>,
    origins: [Origin; Given::COUNT],
    shape: Shape,
    shape_hip: (f64, f64),
    mitake_from: MitakeFrom,
    cloth: Cloth,
}

impl Fitting {
    /// This person in this garment, with the customary constants.
    pub fn new(body: &Body, garment: &Garment) -> Self {
        let mut values = [0.0; Given::COUNT];
        let mut covariance = vec![0.0; Given::COUNT * Given::COUNT];
        let mut origins = [Origin::Customary; Given::COUNT];
        let mut set = |given: Given, m: Measured| {
            let i = given.index();
            values[i] = m.value_cm();
            covariance[i * Given::COUNT + i] = m.sd_cm().powi(2);
            origins[i] = m.origin();
        };
        for &given in Given::ALL {
            if let Some(measure) = body_measure(given) {
                set(given, body.measure(measure));
            } else if let Some(part) = garment_part(given) {
                set(given, garment.part(part));
            } else if let Some(constant) = customary(given) {
                set(given, constant);
            }
        }
        let shape = body.shape().clone();
        let hip = body.measure(BodyMeasure::HipHeight);
        let shape_hip = (hip.value_cm(), shape.girth(hip.value_cm()));
        let collar_end = values[Given::Erishita.index()] + COLLAR_END_RISE_CM;
        let end_sd = garment.part(Part::Erishita).sd_cm();
        let height_sd = hip.sd_cm().hypot(end_sd);
        for (given, sd) in [
            (
                Given::HullGirthError,
                unexplained_girth_sd(body, shape_hip, collar_end, height_sd),
            ),
            (Given::SideArcError, shape.side_arc_sd(collar_end)),
        ] {
            covariance[given.index() * (Given::COUNT + 1)] = sd * sd;
            origins[given.index()] = Origin::Completed;
        }
        for &a in Given::ALL {
            for &b in Given::ALL {
                if let (Some(ma), Some(mb)) = (body_measure(a), body_measure(b)) {
                    covariance[a.index() * Given::COUNT + b.index()] = body.covariance(ma, mb);
                }
            }
        }
        Self {
            values,
            covariance,
            origins,
            shape_hip,
            shape,
            mitake_from: garment.mitake_from(),
            cloth: garment.cloth(),
        }
    }

    /// The same fitting with one given number replaced, its trust unchanged.
    #[must_use]
    pub fn with(mut self, given: Given, cm: f64) -> Self {
        self.values[given.index()] = cm;
        self
    }

    /// One given number with its trust.
    ///
    /// # Panics
    /// Never: values and variances come from checked measures.
    pub fn given(&self, given: Given) -> Measured {
        let (value, sd) = (self.value(given), self.covariance(given, given).sqrt());
        Measured::new(value, sd, self.origins[given.index()])
            .expect("values and variances were checked when the fitting was made")
    }

    /// One given number, in centimetres.
    pub fn value(&self, given: Given) -> f64 {
        self.values[given.index()]
    }

    /// Covariance of two given numbers, in cm².
    pub fn covariance(&self, a: Given, b: Given) -> f64 {
        self.covariance[a.index() * Given::COUNT + b.index()]
    }

    /// All given numbers in the order of [`Given::ALL`], in centimetres.
    pub fn values(&self) -> &[f64; Given::COUNT] {
        &self.values
    }

    /// The body's hull.
    pub fn shape(&self) -> &Shape {
        &self.shape
    }

    /// Height and girth of the hull's hip, in centimetres: the shape moves and grows from there
    /// when the given hip does.
    pub fn shape_hip(&self) -> (f64, f64) {
        self.shape_hip
    }

    /// From where the garment's length was taken.
    pub fn mitake_from(&self) -> MitakeFrom {
        self.mitake_from
    }

    /// How the cloth behaves.
    pub fn cloth(&self) -> Cloth {
        self.cloth
    }
}

/// Deviation of the hull girth at the collar end that the forward model's own slopes leave out.
///
/// The body states the deviation of its girth with all causes in it; the two that the forward
/// model follows itself, hip height and hip girth, are taken out, so that they are not counted
/// twice. What a slope cannot see is put in: just above the hip the hull's curve bends, and a
/// collar end that may lie higher or lower by `height_sd` meets more girths than its slope says.
/// That is the mean square of both ways, less the square of the slope's.
fn unexplained_girth_sd(body: &Body, shape_hip: (f64, f64), z: f64, height_sd: f64) -> f64 {
    let shape = body.shape();
    let (section, slope) = shape.at_slope(z);
    let by_height = slope.girth * body.measure(BodyMeasure::HipHeight).sd_cm();
    let share = section.girth / shape_hip.1;
    let by_girth = share * body.measure(BodyMeasure::HipGirth).sd_cm();
    let own = shape.girth_whole_sd(z).powi(2) - by_height.powi(2) - by_girth.powi(2);
    let moved = |by: f64| (shape.girth(z + by) - section.girth).powi(2);
    let bend = 0.5 * (moved(height_sd) + moved(-height_sd)) - (slope.girth * height_sd).powi(2);
    (own.max(0.0) + bend.max(0.0)).sqrt()
}

/// The body measure behind a given number.
fn body_measure(given: Given) -> Option<BodyMeasure> {
    Some(match given {
        Given::BackNeck => BodyMeasure::BackNeckHeight,
        Given::SideNeck => BodyMeasure::SideNeckHeight,
        Given::UnderBust => BodyMeasure::UnderBustHeight,
        Given::HipBone => BodyMeasure::HipBoneHeight,
        Given::HipHeight => BodyMeasure::HipHeight,
        Given::HipGirth => BodyMeasure::HipGirth,
        Given::WaistGirth => BodyMeasure::WaistGirth,
        Given::NeckBaseGirth => BodyMeasure::NeckBaseGirth,
        Given::SpineToWrist => BodyMeasure::SpineToWrist,
        _ => return None,
    })
}

/// The part of the garment behind a given number.
fn garment_part(given: Given) -> Option<Part> {
    Some(match given {
        Given::Mitake => Part::Mitake,
        Given::Yuki => Part::Yuki,
        Given::Ushirohaba => Part::Ushirohaba,
        Given::Maehaba => Part::Maehaba,
        Given::Okumihaba => Part::Okumihaba,
        Given::Aizumahaba => Part::Aizumahaba,
        Given::Erishita => Part::Erishita,
        Given::ErikataAki => Part::ErikataAki,
        Given::Kurikoshi => Part::Kurikoshi,
        _ => return None,
    })
}
