//! Ways out: what would free a wish that cannot be met, and by how much.

use std::collections::BTreeMap;

use super::decision::Decision;
use super::given::{Fitting, Given};
use super::plan::{Locks, MET_WITHIN_CM, locked};
use super::predict::predict;
use super::quantity::{Appearance, Quantity};
use super::solve::solve;
use super::standard::{Rules, Target, Way};
use crate::keyed::keyed_enum;

keyed_enum! {
    /// A kind of change, to garment or dressing, that may free a missed wish.
    Remedy {
        /// Let the side seams out: as much as a seam allowance usually holds.
        LetOutSides = "let_out_sides",
        /// Let the sleeve and shoulder seams out.
        LetOutYuki = "let_out_yuki",
        /// A garment wider in the body.
        WiderGarment = "wider_garment",
        /// A garment narrower in the body.
        NarrowerGarment = "narrower_garment",
        /// A longer garment.
        LongerGarment = "longer_garment",
        /// A shorter garment.
        ShorterGarment = "shorter_garment",
        /// A garment with longer sleeves (yuki).
        LongerYuki = "longer_yuki",
        /// A garment with shorter sleeves (yuki).
        ShorterYuki = "shorter_yuki",
        /// More padding than the standard allows at the waist.
        MoreWaistPadding = "more_waist_padding",
        /// Padding round the hip.
        MoreHipPadding = "more_hip_padding",
        /// The waist tie lower than the standard allows.
        LowerKoshihimo = "lower_koshihimo",
        /// The waist tie higher than the standard allows.
        HigherKoshihimo = "higher_koshihimo",
        /// More cloth taken up under the chest tie.
        MoreTakeUp = "more_take_up",
        /// The obi lower.
        LowerObi = "lower_obi",
        /// The obi higher.
        HigherObi = "higher_obi",
        /// The back seam further from the centre at the hip.
        ShiftBackSeam = "shift_back_seam",
    }
}

/// How far one remedy goes for one missed wish.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WayOut {
    /// The change.
    pub remedy: Remedy,
    /// How much of it was tried, in centimetres.
    pub amount: f64,
    /// What is still missed after it, replanned: signed as in a check, zero when it suffices.
    pub left: f64,
}

/// The most of each remedy that is tried, in centimetres.
///
/// Letting out: 4.5 to 6.5 lie inside each back side seam of a 36 to 38 cm bolt (A10, S22), of
/// which 1.1 must stay: 3 per side is counted on here, 6 in all. Yuki: 3 to 4 per side in
/// sleeve and shoulder together (S123, S125). A garment that would have to be longer than by 20, or
/// wider than by 24 all round, is another person's. The rest is chosen: as far as anyone would go.
fn most(remedy: Remedy) -> f64 {
    match remedy {
        Remedy::LetOutSides => 6.0,
        Remedy::LetOutYuki => 3.5,
        Remedy::WiderGarment | Remedy::NarrowerGarment => 24.0,
        Remedy::LongerGarment | Remedy::ShorterGarment => 20.0,
        Remedy::LongerYuki | Remedy::ShorterYuki => 12.0,
        Remedy::MoreWaistPadding => 3.0,
        Remedy::MoreHipPadding => 2.0,
        Remedy::LowerKoshihimo | Remedy::HigherKoshihimo => 6.0,
        Remedy::MoreTakeUp => 12.0,
        Remedy::LowerObi | Remedy::HigherObi => 5.0,
        Remedy::ShiftBackSeam => 4.0,
    }
}

/// Whether a remedy is another garment, which nobody gets to have half of it helped.
fn another_garment(remedy: Remedy) -> bool {
    matches!(
        remedy,
        Remedy::WiderGarment
            | Remedy::NarrowerGarment
            | Remedy::LongerGarment
            | Remedy::ShorterGarment
            | Remedy::LongerYuki
            | Remedy::ShorterYuki
    )
}

/// Least relief for each centimetre of a remedy that makes it worth naming: how many centimetres
/// all misses together get smaller.
///
/// Chosen: length gives half a centimetre of fold, width half of cover, a tie or an obi half or a
/// whole one. Below a fifth nobody would go to the trouble.
const WORTH_IT: f64 = 0.2;

/// What is seen to be off in all, in centimetres: every miss, whatever its weight.
fn off(rules: &Rules, seen: &Appearance) -> f64 {
    rules
        .targets
        .iter()
        .map(|t| t.miss(seen.get(t.quantity)).abs())
        .sum()
}

/// Fitting and rules with `amount` centimetres of a remedy carried out.
fn carried_out(fitting: &Fitting, rules: &Rules, remedy: Remedy, amount: f64) -> (Fitting, Rules) {
    let longer = |given: Given, by: f64| fitting.clone().with(given, fitting.value(given) + by);
    let wider = |by: f64| {
        // Both back panels and both fronts grow alike: a quarter of the whole on each.
        let front = fitting.value(Given::Maehaba) + by / 4.0;
        longer(Given::Ushirohaba, by / 4.0).with(Given::Maehaba, front)
    };
    // What the dresser has locked stays so: no remedy may undo her own choice.
    let freed = |decisions: &[Decision], down: f64, up: f64| {
        decisions.iter().fold(rules.clone(), |rules, &d| {
            let way = rules.way(d);
            if way.low >= way.high {
                return rules;
            }
            let (low, high) = (way.low - down, way.high + up);
            rules.with_way(d, Way { low, high, ..way })
        })
    };
    let lower = |decisions: &[Decision]| freed(decisions, amount, 0.0);
    let higher = |decisions: &[Decision]| freed(decisions, 0.0, amount);
    let tie = [Decision::KoshihimoBack, Decision::KoshihimoFront];
    let take_up = [
        Decision::TakeUpFront,
        Decision::TakeUpRight,
        Decision::TakeUpBack,
    ];
    let same = || (fitting.clone(), rules.clone());
    match remedy {
        Remedy::LetOutSides | Remedy::WiderGarment => (wider(amount), rules.clone()),
        Remedy::NarrowerGarment => (wider(-amount), rules.clone()),
        Remedy::LongerGarment => (longer(Given::Mitake, amount), rules.clone()),
        Remedy::ShorterGarment => (longer(Given::Mitake, -amount), rules.clone()),
        Remedy::LetOutYuki | Remedy::LongerYuki => (longer(Given::Yuki, amount), rules.clone()),
        Remedy::ShorterYuki => (longer(Given::Yuki, -amount), rules.clone()),
        Remedy::MoreWaistPadding => (same().0, higher(&[Decision::WaistPadding])),
        Remedy::MoreHipPadding => (same().0, higher(&[Decision::HipPadding])),
        Remedy::LowerKoshihimo => (same().0, lower(&tie)),
        Remedy::HigherKoshihimo => (same().0, higher(&tie)),
        Remedy::MoreTakeUp => (same().0, higher(&take_up)),
        Remedy::LowerObi => (same().0, lower(&[Decision::ObiLowerEdge])),
        Remedy::HigherObi => (same().0, higher(&[Decision::ObiLowerEdge])),
        Remedy::ShiftBackSeam => (same().0, freed(&[Decision::BackSeamHip], amount, amount)),
    }
}

/// The ways out of the missed wishes of one fitting.
///
/// What a remedy does to the whole dressing is planned once and judged for every wish: asking for
/// all missed wishes costs little more than asking for one.
#[derive(Debug)]
pub struct WaysOut<'a> {
    fitting: &'a Fitting,
    rules: Rules,
    before: Appearance,
    /// What is seen after a remedy, by its amount's bits: bisections meet at the same amounts.
    tried: BTreeMap<(Remedy, u64), Appearance>,
}

impl<'a> WaysOut<'a> {
    /// Plans the fitting as it is, locked decisions kept.
    pub fn new(fitting: &'a Fitting, rules: &Rules, locks: &Locks) -> Self {
        let rules = locked(rules, locks);
        let before = predict(fitting, &solve(fitting, &rules).dressing);
        Self {
            fitting,
            rules,
            before,
            tried: BTreeMap::new(),
        }
    }

    /// What is seen when the dressing is planned again with `amount` centimetres of a remedy.
    fn replanned(&mut self, remedy: Remedy, amount: f64) -> Appearance {
        let (fitting, rules) = (self.fitting, &self.rules);
        *self
            .tried
            .entry((remedy, amount.to_bits()))
            .or_insert_with(|| {
                let (fitting, freed) = carried_out(fitting, rules, remedy, amount);
                predict(&fitting, &solve(&fitting, &freed).dressing)
            })
    }

    /// Every remedy that takes at least a third off the miss of `quantity`, gives a fifth of what
    /// it takes or more, suffices where it is another garment, and does not make all misses together worse, best first; none when the
    /// wish is met or there is no such wish.
    ///
    /// Each remedy is tried at its most and, where that suffices or goes too far, at the least
    /// amount that suffices, found to 0.1 cm by bisection; after each the whole dressing is
    /// planned again, so a remedy that only moves the trouble elsewhere is not praised.
    pub fn of(&mut self, quantity: Quantity) -> Vec<WayOut> {
        let Some(target) = self.rules.target(quantity).cloned() else {
            return Vec::new();
        };
        let now = target.miss(self.before.get(quantity));
        if now.abs() < MET_WITHIN_CM {
            return Vec::new();
        }
        let total = off(&self.rules, &self.before);
        let mut out: Vec<WayOut> = Remedy::ALL
            .iter()
            .filter_map(|&remedy| {
                let (amount, seen) = self.least(remedy, &target, now);
                let left = target.miss(seen.get(quantity));
                let gained = now.abs() - left.abs();
                let suffices = left.abs() < MET_WITHIN_CM;
                let helps = (suffices || !another_garment(remedy))
                    && gained >= now.abs() / 3.0
                    && total - off(&self.rules, &seen) >= WORTH_IT * amount;
                let left = if suffices { 0.0 } else { left };
                helps.then_some(WayOut {
                    remedy,
                    amount,
                    left,
                })
            })
            .collect();
        out.sort_by(|a, b| {
            let key = |w: &WayOut| (w.left.abs(), w.amount);
            key(a)
                .partial_cmp(&key(b))
                .unwrap_or(std::cmp::Ordering::Equal)
                .then(a.remedy.cmp(&b.remedy))
        });
        out
    }

    /// The least amount of a remedy that brings a wish missed by `now` to the near end of its
    /// range, and what is then seen; the most of it where even that does not.
    ///
    /// The near end, since too much of a remedy goes past the range (a yuki 20 cm longer) or
    /// spoils the rest.
    fn least(&mut self, remedy: Remedy, target: &Target, now: f64) -> (f64, Appearance) {
        let reaches = |seen: &Appearance| {
            let left = target.miss(seen.get(target.quantity));
            left.abs() < MET_WITHIN_CM || left.signum() != now.signum()
        };
        let (mut short, mut enough) = (0.0, most(remedy));
        let mut seen = self.replanned(remedy, enough);
        while reaches(&seen) && enough - short > 0.1 {
            let middle = 0.5 * (short + enough);
            let tried = self.replanned(remedy, middle);
            if reaches(&tried) {
                (enough, seen) = (middle, tried);
            } else {
                short = middle;
            }
        }
        (enough, seen)
    }
}

/// The ways out of one missed wish; see [`WaysOut::of`].
pub fn ways_out(
    fitting: &Fitting,
    rules: &Rules,
    locks: &Locks,
    quantity: Quantity,
) -> Vec<WayOut> {
    WaysOut::new(fitting, rules, locks).of(quantity)
}
