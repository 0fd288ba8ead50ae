//! How hulls of bodies run between the taped places: a regression on reference bodies.
//!
//! Levels are laid at fixed fractions between landmarks (floor, hip, waist, under-bust, bust,
//! shoulder). At each level five things are predicted from five ratios of girths and stature:
//!
//! - girth, as the logarithm of its ratio to the straight line between the landmarks' girths
//!   (at a landmark the ratio is one: a taped girth is met exactly);
//! - breadth, front and back extent, and side arc, each as a share of the girth.
//!
//! The regression is ridge regression on standardised ratios, so that seventeen bodies do not
//! dictate what more would contradict. The penalties were chosen by leave-one-out error; between 1
//! and 30 that error changes by less than a tenth, so nothing hangs on them.

use serde::{Deserialize, Serialize};

use super::measures::BodyMeasure;
use BodyMeasure as M;

/// Ridge penalty for girths, in bodies (chosen, see the module head).
const GIRTH_PENALTY: f64 = 3.0;
/// Ridge penalty for the shares of the girth, in bodies (chosen, see the module head).
const SHARE_PENALTY: f64 = 10.0;
/// Hull girth at the shoulder point over stature, where the last straight line ends (the mean of
/// the reference bodies just below it; the regression carries what is left).
const SHOULDER_GIRTH_OVER_STATURE: f64 = 0.5;
/// How far from the reference bodies a ratio still speaks, in their deviations (chosen).
const RATIO_REACH: f64 = 3.0;

/// Number of ratios a level is predicted from.
pub const RATIOS: usize = 5;

/// The ratios, by name in the table's file.
pub const RATIO_NAMES: [&str; RATIOS] = [
    "hip_over_stature",
    "waist_over_hip",
    "bust_over_hip",
    "navel_over_hip",
    "fullest_over_hip",
];

/// A stretch of the body between two landmarks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Stretch {
    /// Floor to hip: both legs in one hull.
    FloorToHip,
    /// Hip to waist.
    HipToWaist,
    /// Waist to under-bust.
    WaistToUnderBust,
    /// Under-bust to bust.
    UnderBustToBust,
    /// Bust to shoulder point.
    BustToShoulder,
}

/// Where levels are laid, as a share of the way up each stretch.
const LEVELS: [(Stretch, &[f64]); 5] = [
    (
        Stretch::FloorToHip,
        &[
            0.12, 0.18, 0.25, 0.32, 0.40, 0.47, 0.55, 0.63, 0.72, 0.80, 0.86, 0.91, 0.96,
        ],
    ),
    (
        Stretch::HipToWaist,
        &[0.0, 0.15, 0.30, 0.45, 0.60, 0.75, 0.90],
    ),
    (Stretch::WaistToUnderBust, &[0.0, 0.5]),
    (Stretch::UnderBustToBust, &[0.0, 0.5]),
    (
        Stretch::BustToShoulder,
        &[0.0, 0.17, 0.33, 0.50, 0.67, 0.83, 0.98],
    ),
];

/// One horizontal section of a convex hull, in centimetres.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Section {
    /// Length of the closed curve.
    pub girth: f64,
    /// Side to side.
    pub breadth: f64,
    /// Reach ahead of the body's side-to-side axis.
    pub front: f64,
    /// Reach behind that axis.
    pub back: f64,
    /// Arc from the centre back to the side line, over the left side.
    pub side_arc: f64,
}

/// A body whose hull is known, for fitting and for checking.
#[derive(Debug, Clone)]
pub struct ReferenceBody {
    /// Its name.
    pub name: String,
    /// Value of each measure that is known, in centimetres.
    pub measures: Vec<(BodyMeasure, f64)>,
    /// Sections from low to high: height in centimetres, section.
    pub sections: Vec<(f64, Section)>,
}

impl ReferenceBody {
    /// A measure's value in centimetres; `None` when it is not known of this body.
    #[must_use]
    pub fn measure(&self, measure: BodyMeasure) -> Option<f64> {
        self.measures
            .iter()
            .find(|(m, _)| *m == measure)
            .map(|(_, v)| *v)
    }

    /// The section at a height, straight between the two nearest; the end sections beyond the ends.
    ///
    /// # Panics
    /// When the body has no section.
    #[must_use]
    pub fn section(&self, z: f64) -> Section {
        let i = self
            .sections
            .partition_point(|(k, _)| *k <= z)
            .clamp(1, self.sections.len() - 1);
        let ((z0, a), (z1, b)) = (self.sections[i - 1], self.sections[i]);
        let t = ((z - z0) / (z1 - z0)).clamp(0.0, 1.0);
        let mix = |u: f64, v: f64| u + t * (v - u);
        Section {
            girth: mix(a.girth, b.girth),
            breadth: mix(a.breadth, b.breadth),
            front: mix(a.front, b.front),
            back: mix(a.back, b.back),
            side_arc: mix(a.side_arc, b.side_arc),
        }
    }
}

/// Why a table of hulls cannot be made or read.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum HullError {
    /// Fewer than three bodies: no spread to learn from.
    #[error("{found} reference bodies; at least 3 are needed")]
    TooFewBodies {
        /// How many were given.
        found: usize,
    },
    /// A body lacks a measure the regression uses.
    #[error("reference body {body} has no {key}")]
    MissingMeasure {
        /// The body.
        body: String,
        /// Key of the measure.
        key: &'static str,
    },
    /// The file is not TOML of the expected form.
    #[error("hull table cannot be read: {0}")]
    Syntax(String),
    /// The levels do not rise, or there is none at a landmark.
    #[error(
        "hull table: levels must rise from floor to shoulder, one at the start of each stretch above the floor"
    )]
    Levels,
}

/// A linear rule: value at the mean ratios, change per deviation of each ratio, leave-one-out error.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub(crate) struct Rule {
    pub(crate) at_mean: f64,
    pub(crate) per_deviation: [f64; RATIOS],
    pub(crate) error_sd: f64,
}

impl Rule {
    fn at(&self, ratios: &[f64; RATIOS]) -> f64 {
        self.at_mean
            + self
                .per_deviation
                .iter()
                .zip(ratios)
                .map(|(b, x)| b * x)
                .sum::<f64>()
    }
}

/// Mean and deviation of a ratio over the reference bodies.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub(crate) struct Spread {
    mean: f64,
    sd: f64,
}

/// One level: where it lies and its five rules.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub(crate) struct Level {
    pub(crate) stretch: Stretch,
    pub(crate) at: f64,
    pub(crate) log_girth: Rule,
    pub(crate) breadth: Rule,
    pub(crate) front: Rule,
    pub(crate) back: Rule,
    pub(crate) side_arc: Rule,
}

/// The fitted table; as TOML it is data of the program.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HullTable {
    source: String,
    ratios: Vec<Spread>,
    levels: Vec<Level>,
}

/// A level of one body: height, section, and how sure both are.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Knot {
    pub(crate) stretch: Stretch,
    pub(crate) at: f64,
    pub(crate) z: f64,
    pub(crate) section: Section,
    /// Relative error of the girth when the landmarks' girths are right.
    pub(crate) girth_error: f64,
    /// Error of the side arc as a share of the girth.
    pub(crate) side_error: f64,
}

impl Stretch {
    /// Heights of its ends, in centimetres.
    fn heights(self, value: &dyn Fn(BodyMeasure) -> f64) -> (f64, f64) {
        let (low, high) = self.landmarks();
        (
            if self == Self::FloorToHip {
                0.0
            } else {
                value(low)
            },
            value(high),
        )
    }

    /// Landmarks at its ends; the floor has none, so the lowest stretch names the hip twice.
    pub(crate) fn landmarks(self) -> (BodyMeasure, BodyMeasure) {
        match self {
            Self::FloorToHip => (M::HipHeight, M::HipHeight),
            Self::HipToWaist => (M::HipHeight, M::WaistHeight),
            Self::WaistToUnderBust => (M::WaistHeight, M::UnderBustHeight),
            Self::UnderBustToBust => (M::UnderBustHeight, M::BustHeight),
            Self::BustToShoulder => (M::BustHeight, M::ShoulderHeight),
        }
    }

    /// Measures whose girths stand at its lower and upper end, and a factor for the upper one.
    pub(crate) fn girths(self) -> (BodyMeasure, BodyMeasure, f64) {
        match self {
            Self::FloorToHip => (M::HipGirth, M::HipGirth, 1.0),
            Self::HipToWaist => (M::HipGirth, M::WaistGirth, 1.0),
            Self::WaistToUnderBust => (M::WaistGirth, M::UnderBustGirth, 1.0),
            Self::UnderBustToBust => (M::UnderBustGirth, M::BustGirth, 1.0),
            Self::BustToShoulder => (M::BustGirth, M::Stature, SHOULDER_GIRTH_OVER_STATURE),
        }
    }

    fn line(self, at: f64, value: &dyn Fn(BodyMeasure) -> f64) -> (f64, f64) {
        let ((z0, z1), (low, high, factor)) = (self.heights(value), self.girths());
        let (g0, g1) = (value(low), factor * value(high));
        (z0 + at * (z1 - z0), g0 + at * (g1 - g0))
    }
}

/// The five ratios of a body.
fn ratios_of(value: &dyn Fn(BodyMeasure) -> f64) -> [f64; RATIOS] {
    let hip = value(M::HipGirth);
    [
        hip / value(M::Stature),
        value(M::WaistGirth) / hip,
        value(M::BustGirth) / hip,
        value(M::NavelGirth) / hip,
        value(M::FullestGirth) / hip,
    ]
}

const NEEDED: [BodyMeasure; 12] = [
    M::Stature,
    M::HipGirth,
    M::WaistGirth,
    M::BustGirth,
    M::UnderBustGirth,
    M::NavelGirth,
    M::FullestGirth,
    M::HipHeight,
    M::WaistHeight,
    M::UnderBustHeight,
    M::BustHeight,
    M::ShoulderHeight,
];

impl HullTable {
    /// The table fitted to these bodies.
    ///
    /// # Errors
    /// [`HullError::TooFewBodies`] below three, [`HullError::MissingMeasure`] when a body lacks a
    /// landmark or girth.
    pub fn fit(bodies: &[ReferenceBody], source: &str) -> Result<HullTable, HullError> {
        if bodies.len() < 3 {
            return Err(HullError::TooFewBodies {
                found: bodies.len(),
            });
        }
        for body in bodies {
            if let Some(m) = NEEDED.into_iter().find(|&m| body.measure(m).is_none()) {
                return Err(HullError::MissingMeasure {
                    body: body.name.clone(),
                    key: m.key(),
                });
            }
        }
        let all: Vec<[f64; RATIOS]> = bodies
            .iter()
            .map(|b| ratios_of(&|m| b.measure(m).unwrap_or(f64::NAN)))
            .collect();
        let ratios = (0..RATIOS).map(|k| Spread::of(&all, k)).collect::<Vec<_>>();
        let mut levels = Vec::new();
        for (stretch, shares) in LEVELS {
            for &at in shares {
                let seen: Vec<(f64, Section)> = bodies
                    .iter()
                    .map(|b| {
                        let (z, line) = stretch.line(at, &|m| b.measure(m).unwrap_or(f64::NAN));
                        (line, b.section(z))
                    })
                    .collect();
                let rule = |penalty: f64, part: &dyn Fn(&(f64, Section)) -> f64| {
                    super::ridge::fit(&all, &seen.iter().map(part).collect::<Vec<_>>(), penalty)
                };
                let is_landmark = at == 0.0 && stretch != Stretch::FloorToHip;
                let exact = Rule {
                    at_mean: 0.0,
                    per_deviation: [0.0; RATIOS],
                    error_sd: 0.0,
                };
                levels.push(Level {
                    stretch,
                    at,
                    log_girth: if is_landmark {
                        exact
                    } else {
                        rule(GIRTH_PENALTY, &|(line, s)| (s.girth / line).ln())
                    },
                    breadth: rule(SHARE_PENALTY, &|(_, s)| s.breadth / s.girth),
                    front: rule(SHARE_PENALTY, &|(_, s)| s.front / s.girth),
                    back: rule(SHARE_PENALTY, &|(_, s)| s.back / s.girth),
                    side_arc: rule(SHARE_PENALTY, &|(_, s)| s.side_arc / s.girth),
                });
            }
        }
        Ok(HullTable {
            source: source.to_owned(),
            ratios,
            levels,
        })
    }

    /// Reads a table.
    ///
    /// # Errors
    /// [`HullError::Syntax`] or [`HullError::Levels`].
    pub fn parse(text: &str) -> Result<HullTable, HullError> {
        let table: HullTable =
            toml::from_str(text).map_err(|e| HullError::Syntax(e.to_string()))?;
        let rises = table.levels.windows(2).all(|w| {
            (w[0].stretch as u8, w[0].at) < (w[1].stretch as u8, w[1].at)
                && (0.0..1.0).contains(&w[1].at)
        });
        let landmarks = table.levels.iter().filter(|l| l.at == 0.0).count();
        if table.ratios.len() == RATIOS && rises && landmarks == LEVELS.len() - 1 {
            Ok(table)
        } else {
            Err(HullError::Levels)
        }
    }

    /// The table as TOML, its numbers rounded to a millionth: a thousandth of a millimetre of hull.
    ///
    /// # Errors
    /// [`HullError::Syntax`] when a number cannot be written.
    pub fn to_toml(&self) -> Result<String, HullError> {
        let mut rounded = self.clone();
        for spread in &mut rounded.ratios {
            (spread.mean, spread.sd) = (millionth(spread.mean), millionth(spread.sd));
        }
        for l in &mut rounded.levels {
            for rule in [
                &mut l.log_girth,
                &mut l.breadth,
                &mut l.front,
                &mut l.back,
                &mut l.side_arc,
            ] {
                rule.at_mean = millionth(rule.at_mean);
                rule.per_deviation = rule.per_deviation.map(millionth);
                rule.error_sd = millionth(rule.error_sd);
            }
        }
        toml::to_string(&rounded).map_err(|e| HullError::Syntax(e.to_string()))
    }

    /// The levels of one body, from low to high.
    pub(crate) fn knots(&self, value: &dyn Fn(BodyMeasure) -> f64) -> Vec<Knot> {
        let raw = ratios_of(value);
        let ratios: [f64; RATIOS] = std::array::from_fn(|k| {
            ((raw[k] - self.ratios[k].mean) / self.ratios[k].sd).clamp(-RATIO_REACH, RATIO_REACH)
        });
        self.levels
            .iter()
            .map(|level| {
                let (z, line) = level.stretch.line(level.at, value);
                let girth = line * level.log_girth.at(&ratios).exp();
                let section = Section {
                    girth,
                    breadth: girth * level.breadth.at(&ratios),
                    front: girth * level.front.at(&ratios),
                    back: girth * level.back.at(&ratios),
                    side_arc: girth * level.side_arc.at(&ratios),
                };
                let (girth_error, side_error) = (level.log_girth.error_sd, level.side_arc.error_sd);
                Knot {
                    stretch: level.stretch,
                    at: level.at,
                    z,
                    section,
                    girth_error,
                    side_error,
                }
            })
            .collect()
    }
}

fn millionth(x: f64) -> f64 {
    (x * 1e6).round() / 1e6
}

impl Spread {
    #[expect(clippy::cast_precision_loss, reason = "a handful of bodies")]
    fn of(all: &[[f64; RATIOS]], k: usize) -> Spread {
        let n = all.len() as f64;
        let mean = all.iter().map(|r| r[k]).sum::<f64>() / n;
        let sd = (all.iter().map(|r| (r[k] - mean).powi(2)).sum::<f64>() / n).sqrt();
        Spread {
            mean,
            sd: sd.max(1e-9),
        }
    }
}
