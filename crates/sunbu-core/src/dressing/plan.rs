//! Plan: the dressing that comes closest to what is wanted, and how sure it is to be seen.

use std::collections::BTreeMap;

use super::decision::{Decision, Dressing};
use super::given::Fitting;
use super::predict::Prediction;
use super::quantity::Quantity;
use super::solve::{misses, solve};
use super::standard::{Rules, Target, Way};
use crate::dressing::predict::predict;

/// Missed by less than this, a wish counts as met: half the spread of a careful tape (0.5).
pub const MET_WITHIN_CM: f64 = 0.25;

/// Decisions that the dresser has set herself, in centimetres.
pub type Locks = BTreeMap<Decision, f64>;

/// Which end of a decision's limits holds it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// It can go no lower.
    Low,
    /// It can go no higher.
    High,
    /// The dresser has locked it.
    Locked,
}

/// So near a limit a decision stands at it, in centimetres: half of the tenth that is shown.
const AT_LIMIT_CM: f64 = 0.05;

/// A decision that stands at its limit, or is locked, while the wishes would push it further.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Binding {
    /// The decision at its limit.
    pub decision: Decision,
    /// Which end holds it.
    pub side: Side,
    /// How much the missed quantity would move per centimetre of freedom, toward its range.
    pub gain: f64,
}

/// A wish at the edge of its range, or beyond, that pays for every centimetre another gains.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rival {
    /// What would suffer.
    pub quantity: Quantity,
    /// How far it would move further out per centimetre that the missed quantity gains, done in
    /// the way most usual for the hands.
    pub cost: f64,
}

/// One wish held against the plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// The wish.
    pub target: Target,
    /// The predicted value, in centimetres.
    pub value: f64,
    /// Its 90 % interval, in centimetres.
    pub interval_90: (f64, f64),
    /// How far it lies outside the range: negative below, positive above, zero when met.
    pub miss: f64,
    /// For a missed wish: the limits that hold it, strongest first.
    pub binding: Vec<Binding>,
    /// For a missed wish: the other wishes that would suffer if it were met, strongest first.
    pub rivals: Vec<Rival>,
}

impl Check {
    /// Whether the wish is met, within [`MET_WITHIN_CM`].
    pub fn met(&self) -> bool {
        self.miss == 0.0
    }
}

/// A dressing, what it will look like, and how that stands to the wishes.
#[derive(Debug, Clone)]
pub struct Plan {
    /// The dressing in numbers.
    pub dressing: Dressing,
    /// What will be seen.
    pub prediction: Prediction,
    /// Every wish, in the order of [`Quantity::ALL`].
    pub checks: Vec<Check>,
    /// What is off in all, in weighted cm²: the measure by which garments are ranked.
    pub misses: f64,
}

impl Plan {
    /// The wishes that cannot be met.
    pub fn missed(&self) -> impl Iterator<Item = &Check> {
        self.checks.iter().filter(|c| !c.met())
    }

    /// The check of one quantity, if the standard wishes for it.
    pub fn check(&self, quantity: Quantity) -> Option<&Check> {
        self.checks.iter().find(|c| c.target.quantity == quantity)
    }
}

/// The rules with locked decisions held where the dresser set them, inside or outside limits.
pub(super) fn locked(rules: &Rules, locks: &Locks) -> Rules {
    locks.iter().fold(rules.clone(), |rules, (&d, &cm)| {
        let way = Way {
            usual: cm,
            low: cm,
            high: cm,
            ..rules.way(d)
        };
        rules.with_way(d, way)
    })
}

/// The best dressing for this fitting under these rules, with the locked decisions kept.
pub fn plan(fitting: &Fitting, rules: &Rules, locks: &Locks) -> Plan {
    let solution = solve(fitting, &locked(rules, locks));
    assess(fitting, rules, locks, solution.dressing)
}

/// What is to be said of one dressing under these rules: prediction and every wish; what the
/// dresser has locked is told apart from what the rules do not allow.
pub fn assess(fitting: &Fitting, rules: &Rules, locks: &Locks, dressing: Dressing) -> Plan {
    let rules = &locked(rules, locks);
    let prediction = Prediction::new(fitting, &dressing, |d| rules.way(d).hands);
    let mut checks: Vec<Check> = rules
        .targets
        .iter()
        .map(|target| {
            let value = prediction.value(target.quantity);
            let miss = Some(target.miss(value))
                .filter(|m| m.abs() >= MET_WITHIN_CM)
                .unwrap_or(0.0);
            Check {
                target: target.clone(),
                value,
                interval_90: prediction.interval_90(target.quantity),
                miss,
                binding: binding(&prediction, rules, &dressing, target.quantity, miss),
                rivals: rivals(&prediction, rules, &dressing, target.quantity, miss),
            }
        })
        .collect();
    checks.sort_by_key(|c| c.target.quantity);
    let misses = misses(rules, &predict(fitting, &dressing));
    Plan {
        dressing,
        prediction,
        checks,
        misses,
    }
}

/// The wishes that would pay if a missed quantity were brought into its range, strongest first.
///
/// The cheapest way to move the quantity by 1 cm, in spreads of the hands' usual way, is along
/// `spread² * slope` over the decisions that are free to go there. A rival is a wish within
/// 0.5 cm of its edge, or outside, that this would push further out by a fifth or more.
fn rivals(
    prediction: &Prediction,
    rules: &Rules,
    dressing: &Dressing,
    quantity: Quantity,
    miss: f64,
) -> Vec<Rival> {
    if miss == 0.0 {
        return Vec::new();
    }
    let direction = Decision::ALL.iter().map(|&d| {
        let (way, value) = (rules.way(d), dressing.get(d));
        let step = -miss.signum() * prediction.slope(quantity, d) * way.spread.powi(2);
        let free = if step < 0.0 {
            value > way.low + 1e-9
        } else {
            value < way.high - 1e-9
        };
        if free { step } else { 0.0 }
    });
    let direction: Vec<f64> = direction.collect();
    let moved = |q: Quantity| {
        let term = |&d: &Decision| prediction.slope(q, d) * direction[d.index()];
        Decision::ALL.iter().map(term).sum::<f64>()
    };
    let gained = moved(quantity).abs();
    if gained < 1e-12 {
        return Vec::new();
    }
    let mut out: Vec<(f64, Rival)> = rules
        .targets
        .iter()
        .filter(|t| t.quantity != quantity)
        .filter_map(|t| {
            let (value, by) = (prediction.value(t.quantity), moved(t.quantity) / gained);
            let out = if by < 0.0 {
                t.low.map(|l| l - value)
            } else {
                t.high.map(|h| value - h)
            };
            (out? > -0.5 && by.abs() >= 0.2).then_some((
                t.weight * by * by,
                Rival {
                    quantity: t.quantity,
                    cost: by.abs(),
                },
            ))
        })
        .collect();
    out.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.quantity.cmp(&b.1.quantity)));
    out.into_iter().map(|(_, rival)| rival).collect()
}

/// The limits that hold a missed quantity, strongest first.
fn binding(
    prediction: &Prediction,
    rules: &Rules,
    dressing: &Dressing,
    quantity: Quantity,
    miss: f64,
) -> Vec<Binding> {
    if miss == 0.0 {
        return Vec::new();
    }
    let mut out: Vec<Binding> = Decision::ALL
        .iter()
        .filter_map(|&decision| {
            let (way, value) = (rules.way(decision), dressing.get(decision));
            // The quantity must move against the miss for the freedom to help.
            let toward = -miss.signum() * prediction.slope(quantity, decision);
            let side = match () {
                () if toward == 0.0 => return None,
                () if way.low >= way.high => Side::Locked,
                () if value <= way.low + AT_LIMIT_CM && toward < 0.0 => Side::Low,
                () if value >= way.high - AT_LIMIT_CM && toward > 0.0 => Side::High,
                () => return None,
            };
            Some(Binding {
                decision,
                side,
                gain: toward.abs(),
            })
        })
        .collect();
    out.sort_by(|a, b| b.gain.total_cmp(&a.gain).then(a.decision.cmp(&b.decision)));
    out
}
