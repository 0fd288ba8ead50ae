//! Worth wearing? How well a garment can be made to look on a person, and why no better.

use super::decision::Decision;
use super::given::Fitting;
use super::plan::MET_WITHIN_CM;
use super::predict::predict;
use super::quantity::Quantity;
use super::solve::{misses, solve};
use super::standard::{Rules, Target};
use crate::keyed::keyed_enum;

keyed_enum! {
    /// A verdict in words, by how much is off in all.
    Verdict {
        /// Nothing wanted is missed.
        FallsRight = "falls_right",
        /// Small misses that only a trained eye sees.
        WithCare = "with_care",
        /// Misses that show.
        Shows = "shows",
        /// Better left on its hanger.
        LeaveIt = "leave_it",
    }
}

impl Verdict {
    /// The verdict for a root of weighted squared misses, in centimetres.
    ///
    /// The bounds are chosen: 1 cm is about the reading of a practised eye from two steps away;
    /// 5 cm is a hem at the wrong bone.
    pub fn of(off_cm: f64) -> Self {
        match off_cm {
            x if x < 0.1 => Self::FallsRight,
            x if x < 1.5 => Self::WithCare,
            x if x < 5.0 => Self::Shows,
            _ => Self::LeaveIt,
        }
    }
}

keyed_enum! {
    /// How a garment differs from what this person would have cut.
    Cut {
        /// Too narrow round the hip.
        Narrow = "narrow",
        /// Too wide round the hip.
        Wide = "wide",
        /// Too short.
        Short = "short",
        /// Too long.
        Long = "long",
        /// Sleeves too short.
        SleevesShort = "sleeves_short",
        /// Sleeves too long.
        SleevesLong = "sleeves_long",
    }
}

/// Why a garment is no better: the largest first in each list, in centimetres.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Reason {
    /// How its cut differs, each by so much.
    pub cut: Vec<(Cut, f64)>,
    /// What the dresser would do unlike usual, each with its signed difference from the usual.
    pub work: Vec<(Decision, f64)>,
    /// What is still missed, each with its signed miss.
    pub missed: Vec<(Quantity, f64)>,
}

/// How well one fitting can be made to look.
#[derive(Debug, Clone, PartialEq)]
pub struct Worth {
    /// Root of the weighted squared misses, in centimetres: the smaller the better.
    pub off_cm: f64,
    /// Share of the pull toward the usual way, in cm: breaks ties among the flawless.
    pub effort_cm: f64,
    /// The verdict in words.
    pub verdict: Verdict,
    /// Why it is no better.
    pub reason: Reason,
}

impl Worth {
    /// What two fittings are ordered by: misses first, then effort.
    pub fn order(&self) -> (f64, f64) {
        (self.off_cm, self.effort_cm)
    }
}

/// How well this fitting can be made to look under these rules.
pub fn worth(fitting: &Fitting, rules: &Rules) -> Worth {
    let solution = solve(fitting, rules);
    let seen = predict(fitting, &solution.dressing);
    let off = misses(rules, &seen);
    let mut missed: Vec<(&Target, f64)> = rules
        .targets
        .iter()
        .map(|t| (t, t.miss(seen.get(t.quantity))))
        .filter(|(_, miss)| miss.abs() >= MET_WITHIN_CM)
        .collect();
    missed.sort_by(|a, b| {
        let weighted = |(t, miss): &(&Target, f64)| t.weight * miss * miss;
        weighted(b)
            .total_cmp(&weighted(a))
            .then(a.0.quantity.cmp(&b.0.quantity))
    });
    let mut work: Vec<(Decision, f64, f64)> = Decision::ALL
        .iter()
        .map(|&d| {
            let (way, value) = (rules.way(d), solution.dressing.get(d));
            (d, value - way.usual, (value - way.usual).abs() / way.spread)
        })
        .filter(|&(_, by, spreads)| by.abs() >= 0.5 && spreads >= 0.5)
        .collect();
    work.sort_by(|a, b| b.2.total_cmp(&a.2).then(a.0.cmp(&b.0)));
    Worth {
        off_cm: off.sqrt(),
        effort_cm: (solution.objective - off).max(0.0).sqrt(),
        verdict: Verdict::of(off.sqrt()),
        reason: Reason {
            cut: cut(fitting, rules),
            work: work.into_iter().map(|(d, by, _)| (d, by)).collect(),
            missed: missed
                .into_iter()
                .map(|(t, miss)| (t.quantity, miss))
                .collect(),
        },
    }
}

/// How the garment's cut differs from what the usual way of dressing would need.
///
/// Read off the usual dressing: the front cover it gives is what is missing in width, twice the
/// fold it lacks is what is missing in length (one more of garment gives half of fold).
fn cut(fitting: &Fitting, rules: &Rules) -> Vec<(Cut, f64)> {
    let seen = predict(fitting, &rules.usual());
    let miss = |q: Quantity| rules.target(q).map_or(0.0, |t| t.miss(seen.get(q)));
    let signed = |by: f64, over: Cut, under: Cut| if by > 0.0 { (over, by) } else { (under, -by) };
    let mut out = vec![
        signed(miss(Quantity::FrontCover), Cut::Narrow, Cut::Wide),
        signed(2.0 * miss(Quantity::FoldFront), Cut::Long, Cut::Short),
        signed(
            miss(Quantity::SleeveShort),
            Cut::SleevesShort,
            Cut::SleevesLong,
        ),
    ];
    out.retain(|(_, by)| *by >= 0.5);
    out.sort_by(|a, b| b.1.total_cmp(&a.1));
    out
}

/// The order of all fittings, best first, by index; equals keep their order.
///
/// `threads` fittings are planned side by side; the result does not depend on it.
///
/// # Panics
/// Never: planning does not panic, so neither does joining its threads.
pub fn rank(fittings: &[(Fitting, Rules)], threads: usize) -> Vec<(usize, Worth)> {
    let threads = threads.clamp(1, 64);
    let share = fittings.len().div_ceil(threads).max(1);
    let mut out: Vec<(usize, Worth)> = std::thread::scope(|scope| {
        let parts: Vec<_> = fittings
            .chunks(share)
            .map(|part| {
                scope.spawn(move || part.iter().map(|(f, r)| worth(f, r)).collect::<Vec<_>>())
            })
            .collect();
        let joined = parts
            .into_iter()
            .flat_map(|p| p.join().expect("planning never panics"));
        joined.enumerate().collect()
    });
    out.sort_by(|(i, a), (j, b)| {
        let by_worth = a
            .order()
            .partial_cmp(&b.order())
            .unwrap_or(std::cmp::Ordering::Equal);
        by_worth.then(i.cmp(j))
    });
    out
}
