//! The standard in force: what is wanted, how it is usually done, how exactly hands do it.
//!
//! A standard is data (TOML). The shipped one is customary practice with its sources; a studio
//! edits its own copy. Bounds and usual values are resolved for one person, cloth and occasion
//! into [`Rules`], which is all that the planner sees.

use std::collections::{BTreeMap, BTreeSet};

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::decision::{Decision, Dressing};
use super::quantity::Quantity;
use super::standard_check;
use crate::body::{Body, BodyMeasure};
use crate::garment::Cloth;
use crate::keyed::keyed_enum;
use crate::problem::Problem;

keyed_enum! {
    /// The kinds of occasion that a standard tells apart.
    Occasion {
        /// Indoors with footwear off.
        Indoors = "indoors",
        /// Ceremony and formal visits.
        Formal = "formal",
        /// On a stage, seen from below.
        Stage = "stage",
        /// Everyday wear.
        Everyday = "everyday",
        /// Practice at home.
        Practice = "practice",
    }
}

/// A length that may depend on stature: `plus + share * stature`, in centimetres.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(untagged, deny_unknown_fields)]
pub enum Amount {
    /// A plain length.
    Fixed(f64),
    /// A share of stature and a plain length.
    Proportional {
        /// Share of stature.
        stature: f64,
        /// Added to it, in centimetres.
        #[serde(default)]
        plus: f64,
    },
}

impl Amount {
    /// The length for a person of this stature, in centimetres.
    pub fn resolve(self, stature: f64) -> f64 {
        match self {
            Self::Fixed(cm) => cm,
            Self::Proportional {
                stature: share,
                plus,
            } => share * stature + plus,
        }
    }
}

/// One wish of a standard.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wish {
    /// Least wanted value; none where smaller is never worse.
    pub low: Option<Amount>,
    /// Greatest wanted value; none where greater is never worse.
    pub high: Option<Amount>,
    /// How much a miss of 1 cm counts against others.
    pub weight: f64,
    /// Where the wish comes from.
    pub source: String,
}

/// The landmark from which a usual value and its limits count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Datum {
    /// The floor, or zero for what is not a height.
    #[default]
    Floor,
    /// The hip bone, at its point in front.
    HipBone,
}

/// Usual values of the two raises, which depend on how the cloth slides.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ByCloth {
    /// Soft silk.
    pub soft: f64,
    /// Cotton.
    pub cotton: f64,
    /// Stiff cloth.
    pub stiff: f64,
}

/// How one decision is usually taken.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Habit {
    /// The landmark from which all lengths of this habit count.
    #[serde(default)]
    pub from: Datum,
    /// The usual value; zero when left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plus: Option<Amount>,
    /// The usual value by cloth, instead of `plus`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub by_cloth: Option<ByCloth>,
    /// How freely the planner may leave the usual value.
    pub spread: f64,
    /// The least that can be done.
    pub low: f64,
    /// The most that can be done.
    pub high: f64,
    /// Standard deviation with which hands carry it out.
    pub hands: f64,
}

/// What an occasion replaces in the usual way.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HabitChange {
    /// The usual value on this occasion.
    pub plus: Amount,
}

/// What one occasion adds, replaces or leaves out.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OccasionRules {
    /// Wishes of every occasion that do not hold on this one.
    #[serde(default, skip_serializing_if = "BTreeSet::is_empty")]
    pub without: BTreeSet<Quantity>,
    /// Wishes added or replaced.
    #[serde(default)]
    pub targets: BTreeMap<Quantity, Wish>,
    /// Usual values replaced.
    #[serde(default)]
    pub usual: BTreeMap<Decision, HabitChange>,
}

/// A whole standard, as edited by a studio. Checked when read: see [`Standard::parse`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Standard {
    /// The standard's own name.
    pub name: String,
    /// Wishes for every occasion.
    pub targets: BTreeMap<Quantity, Wish>,
    /// The usual way, for every decision.
    pub usual: BTreeMap<Decision, Habit>,
    /// What each occasion changes.
    pub occasions: BTreeMap<Occasion, OccasionRules>,
}

/// Why a standard could not be read.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum StandardError {
    /// The text is not TOML of a standard's form; most often a misspelt key.
    #[error("the standard cannot be read: {0}")]
    Form(String),
    /// Values that contradict each other or are missing, all of them.
    #[error("the standard has values that cannot stand: {}", joined(.0))]
    Values(Vec<Problem>),
}

/// Problems in one line.
fn joined(problems: &[Problem]) -> String {
    let said: Vec<String> = problems.iter().map(ToString::to_string).collect();
    said.join("; ")
}

impl Standard {
    /// The shipped standard: customary practice.
    ///
    /// # Panics
    /// Never in a released build: the tests read the shipped file.
    pub fn customary() -> Self {
        Self::parse(Self::CUSTOMARY_TOML).expect("the shipped standard is read by the tests")
    }

    /// The text of the shipped standard, to start a studio's own copy from.
    pub const CUSTOMARY_TOML: &'static str =
        include_str!("../../../../data/standards/customary.toml");

    /// A standard from its TOML text.
    ///
    /// # Errors
    /// [`StandardError::Form`] when the text is not of a standard's form;
    /// [`StandardError::Values`] with every number that is none or beyond a body's size, every range
    /// that is empty, every usual value outside its limits, and every decision without a usual way.
    pub fn parse(text: &str) -> Result<Self, StandardError> {
        let standard: Self =
            toml::from_str(text).map_err(|e| StandardError::Form(e.to_string().trim().into()))?;
        let problems = standard_check::problems(&standard);
        if problems.is_empty() {
            Ok(standard)
        } else {
            Err(StandardError::Values(problems))
        }
    }

    /// The TOML text of this standard, read back as the same by [`Self::parse`].
    ///
    /// # Panics
    /// Never: every field of a standard has a TOML form.
    pub fn to_toml(&self) -> String {
        toml::to_string(self).expect("every field of a standard has a TOML form")
    }

    /// The rules for one person, cloth and occasion.
    pub fn rules(&self, occasion: Occasion, body: &Body, cloth: Cloth) -> Rules {
        let stature = body.measure(BodyMeasure::Stature).value_cm();
        let hip_bone = body.measure(BodyMeasure::HipBoneHeight).value_cm();
        let changes = self.occasions.get(&occasion);
        let mut wishes = self.targets.clone();
        if let Some(changes) = changes {
            wishes.retain(|quantity, _| !changes.without.contains(quantity));
            wishes.extend(changes.targets.iter().map(|(&q, w)| (q, w.clone())));
        }
        let targets = wishes
            .into_iter()
            .map(|(quantity, wish)| Target {
                quantity,
                low: wish.low.map(|a| a.resolve(stature)),
                high: wish.high.map(|a| a.resolve(stature)),
                weight: wish.weight,
                source: wish.source,
            })
            .collect();
        let habit = |decision: Decision| {
            let habit = &self.usual[&decision];
            let datum = match habit.from {
                Datum::Floor => 0.0,
                Datum::HipBone => hip_bone,
            };
            let by_cloth = habit.by_cloth.map(|b| match cloth {
                Cloth::Soft => b.soft,
                Cloth::Cotton => b.cotton,
                Cloth::Stiff => b.stiff,
            });
            let changed = changes.and_then(|c| c.usual.get(&decision)).map(|c| c.plus);
            let plus = changed.or(habit.plus).map(|a| a.resolve(stature));
            let (low, high) = (datum + habit.low, datum + habit.high);
            let usual = datum + changed.map_or(by_cloth.or(plus), |_| plus).unwrap_or(0.0);
            Way {
                usual: usual.clamp(low, high),
                spread: habit.spread,
                low,
                high,
                hands: habit.hands,
            }
        };
        Rules {
            targets,
            ways: std::array::from_fn(|i| habit(Decision::ALL[i])),
        }
    }
}

/// One wish resolved for a person: all in centimetres.
#[derive(Debug, Clone, PartialEq)]
pub struct Target {
    /// What is wished for.
    pub quantity: Quantity,
    /// Least wanted value; none where smaller is never worse.
    pub low: Option<f64>,
    /// Greatest wanted value; none where greater is never worse.
    pub high: Option<f64>,
    /// How much a miss of 1 cm counts against others.
    pub weight: f64,
    /// Where the wish comes from.
    pub source: String,
}

impl Target {
    /// How far `value` lies outside the range: negative below it, positive above, zero inside.
    pub fn miss(&self, value: f64) -> f64 {
        match (self.low, self.high) {
            (Some(low), _) if value < low => value - low,
            (_, Some(high)) if value > high => value - high,
            _ => 0.0,
        }
    }
}

impl Target {
    /// Distance of `value` from the middle of the range in half widths, and the half width in
    /// centimetres; none for a range open at one end or without width.
    pub fn off_centre(&self, value: f64) -> Option<(f64, f64)> {
        let (low, high) = (self.low?, self.high?);
        let half_width = 0.5 * (high - low);
        (half_width > 0.0).then(|| ((value - low) / half_width - 1.0, half_width))
    }
}

/// The usual way of one decision, resolved for a person: all in centimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Way {
    /// The usual value.
    pub usual: f64,
    /// How freely the planner may leave it.
    pub spread: f64,
    /// The least that can be done.
    pub low: f64,
    /// The most that can be done.
    pub high: f64,
    /// Standard deviation with which hands carry it out.
    pub hands: f64,
}

/// A standard resolved for one person, cloth and occasion.
#[derive(Debug, Clone, PartialEq)]
pub struct Rules {
    /// Every wish.
    pub targets: Vec<Target>,
    ways: [Way; Decision::COUNT],
}

impl Rules {
    /// The usual way of one decision.
    pub fn way(&self, decision: Decision) -> Way {
        self.ways[decision.index()]
    }

    /// The same rules with one decision's way replaced.
    #[must_use]
    pub fn with_way(mut self, decision: Decision, way: Way) -> Self {
        self.ways[decision.index()] = way;
        self
    }

    /// The wish for one quantity, if there is one.
    pub fn target(&self, quantity: Quantity) -> Option<&Target> {
        self.targets.iter().find(|t| t.quantity == quantity)
    }

    /// Every decision at its usual value.
    pub fn usual(&self) -> Dressing {
        Dressing::from_fn(|d| self.way(d).usual)
    }
}
