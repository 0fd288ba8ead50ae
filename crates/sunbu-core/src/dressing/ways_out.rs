//! Ways out: what would free a wish that cannot be met, and by how much.

use super::decision::Decision;
use super::given::{Fitting, Given};
use super::plan::{Locks, MET_WITHIN_CM, Side, locked};
use super::predict::predict;
use super::quantity::{Appearance, Quantity};
use super::solve::{misses, solve};
use super::standard::{Rules, Way};
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
/// sleeve and shoulder together (S123, S125). The rest is chosen: as far as anyone would go.
fn most(remedy: Remedy) -> f64 {
    match remedy {
        Remedy::LetOutSides => 6.0,
        Remedy::LetOutYuki => 3.5,
        Remedy::WiderGarment | Remedy::NarrowerGarment => 24.0,
        Remedy::LongerGarment | Remedy::ShorterGarment => 40.0,
        Remedy::LongerYuki | Remedy::ShorterYuki => 20.0,
        Remedy::MoreWaistPadding => 3.0,
        Remedy::MoreHipPadding => 2.0,
        Remedy::LowerKoshihimo | Remedy::HigherKoshihimo => 6.0,
        Remedy::MoreTakeUp => 12.0,
        Remedy::LowerObi | Remedy::HigherObi => 5.0,
        Remedy::ShiftBackSeam => 4.0,
    }
}

/// Fitting and rules with `amount` centimetres of a remedy carried out.
fn carried_out(fitting: &Fitting, rules: &Rules, remedy: Remedy, amount: f64) -> (Fitting, Rules) {
    let longer = |given: Given, by: f64| fitting.clone().with(given, fitting.value(given) + by);
    let wider = |by: f64| {
        // Both back panels and both fronts grow alike: a quarter of the whole on each.
        let front = fitting.value(Given::Maehaba) + by / 4.0;
        longer(Given::Ushirohaba, by / 4.0).with(Given::Maehaba, front)
    };
    let freed = |decisions: &[Decision], side: Side| {
        decisions.iter().fold(rules.clone(), |rules, &d| {
            let way = rules.way(d);
            let way = match side {
                Side::Low => Way {
                    low: way.low - amount,
                    ..way
                },
                Side::High => Way {
                    high: way.high + amount,
                    ..way
                },
            };
            rules.with_way(d, way)
        })
    };
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
        Remedy::MoreWaistPadding => (same().0, freed(&[Decision::WaistPadding], Side::High)),
        Remedy::MoreHipPadding => (same().0, freed(&[Decision::HipPadding], Side::High)),
        Remedy::LowerKoshihimo => (same().0, freed(&tie, Side::Low)),
        Remedy::HigherKoshihimo => (same().0, freed(&tie, Side::High)),
        Remedy::MoreTakeUp => (same().0, freed(&take_up, Side::High)),
        Remedy::LowerObi => (same().0, freed(&[Decision::ObiLowerEdge], Side::Low)),
        Remedy::HigherObi => (same().0, freed(&[Decision::ObiLowerEdge], Side::High)),
        Remedy::ShiftBackSeam => {
            let left = freed(&[Decision::BackSeamHip], Side::High);
            let way = left.way(Decision::BackSeamHip);
            let both = Way {
                low: way.low - amount,
                ..way
            };
            (same().0, left.with_way(Decision::BackSeamHip, both))
        }
    }
}

/// Every remedy that takes at least a tenth off the miss of `quantity` without making all
/// misses together worse, best first.
///
/// Each remedy is tried at its most and, where that suffices or goes too far, at the least amount
/// that suffices, found to 0.1 cm by bisection; after each the whole dressing is planned again, so a remedy
/// that only moves the trouble elsewhere is not praised.
pub fn ways_out(
    fitting: &Fitting,
    rules: &Rules,
    locks: &Locks,
    quantity: Quantity,
) -> Vec<WayOut> {
    let rules = locked(rules, locks);
    let Some(target) = rules.target(quantity) else {
        return Vec::new();
    };
    let start = solve(fitting, &rules).dressing;
    let all_in_all = |seen: &Appearance| misses(&rules, seen);
    let replanned = |remedy: Remedy, amount: f64| {
        let (fitting, freed) = carried_out(fitting, &rules, remedy, amount);
        let seen = predict(&fitting, &solve(&fitting, &freed).dressing);
        (target.miss(seen.get(quantity)), all_in_all(&seen))
    };
    let before = predict(fitting, &start);
    let (now, total) = (target.miss(before.get(quantity)), all_in_all(&before));
    if now.abs() < MET_WITHIN_CM {
        return Vec::new();
    }
    let mut out: Vec<WayOut> = Remedy::ALL
        .iter()
        .filter_map(|&remedy| {
            let most = most(remedy);
            let helps = |(left, after): (f64, f64)| left.abs() <= 0.9 * now.abs() && after < total;
            let at_most = replanned(remedy, most);
            // Too much of a remedy may spoil the rest or go past the range (a yuki 20 cm longer),
            // so the least that brings the quantity to the near end of its range is sought; where
            // even the most does not, the most is judged.
            let reaches = |left: f64| left.abs() < MET_WITHIN_CM || left.signum() != now.signum();
            let (mut short, mut enough) = (0.0, most);
            if reaches(at_most.0) {
                while enough - short > 0.1 {
                    let middle = 0.5 * (short + enough);
                    if reaches(replanned(remedy, middle).0) {
                        enough = middle;
                    } else {
                        short = middle;
                    }
                }
            }
            let after = if enough < most {
                replanned(remedy, enough)
            } else {
                at_most
            };
            let left = Some(after.0)
                .filter(|l| l.abs() >= MET_WITHIN_CM)
                .unwrap_or(0.0);
            helps(after).then_some(WayOut {
                remedy,
                amount: enough,
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
