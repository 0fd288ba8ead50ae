//! The planner timed: one plan and its parts, and the ranking of many garments.

use serde::Serialize;
use sunbu_core::body::Body;
use sunbu_core::dressing::{
    Fitting, Locks, Occasion, Prediction, Rules, Standard, Worth, assess, plan, predict, rank,
    worth,
};
use sunbu_core::garment::Sheet;

use crate::cases::{Case, Demo};
use crate::studio::Visits;
use crate::timing::{OverCases, Times, many};

/// How much is timed: all of it, or a little to see that it works.
#[derive(Debug, Clone, Copy)]
pub struct Amount {
    /// Runs of each case.
    pub runs: usize,
    /// Cases.
    pub cases: usize,
    /// Cases of everybody in everything.
    pub everything: usize,
    /// Garments to rank.
    pub rack: usize,
    /// Rankings.
    pub rankings: usize,
    /// Random dressings of each case at which the two models are compared.
    pub dressings: usize,
    /// Runs of each case by the reference solver.
    pub reference_runs: usize,
    /// Photos taken in.
    pub photos: usize,
    /// How much of the studio is timed.
    pub visits: Visits,
}

impl Amount {
    /// What the published figures come from.
    pub const FULL: Self = Self {
        runs: 200,
        cases: 40,
        everything: 3000,
        rack: 1000,
        rankings: 15,
        dressings: 100,
        reference_runs: 5,
        photos: 15,
        visits: Visits {
            plans: 40,
            moves: 25,
            pages: 3,
            photos: 9,
            starts: 15,
        },
    };

    /// Enough to see that everything works.
    pub const QUICK: Self = Self {
        runs: 5,
        cases: 6,
        everything: 30,
        rack: 40,
        rankings: 3,
        dressings: 20,
        reference_runs: 1,
        photos: 2,
        visits: Visits {
            plans: 3,
            moves: 3,
            pages: 1,
            photos: 1,
            starts: 2,
        },
    };
}

/// How long plans take.
#[derive(Debug, Clone, Serialize)]
pub struct PlanTimes {
    /// A whole plan: optimum, Jacobian, intervals, every wish judged, the limits that bind.
    pub plan: OverCases,
    /// The optimum with the verdict on the garment: what ranking does for each.
    pub worth: OverCases,
    /// A dressing given by hand judged: Jacobian, intervals, wishes. What a slider needs.
    pub assess: OverCases,
    /// Jacobian and intervals alone.
    pub prediction: OverCases,
    /// The model with plain numbers.
    pub predict: OverCases,
}

/// Times plans over these cases.
pub fn plans(cases: &[Case], amount: Amount) -> PlanTimes {
    PlanTimes {
        plan: over(cases, amount.runs, |case| {
            plan(&case.fitting, &case.rules, &Locks::new())
        }),
        worth: over(cases, amount.runs, |case| worth(&case.fitting, &case.rules)),
        assess: over(cases, amount.runs, |case| {
            assess(
                &case.fitting,
                &case.rules,
                &Locks::new(),
                case.rules.usual(),
            )
        }),
        prediction: over(cases, amount.runs, |case| {
            let hands = |decision| case.rules.way(decision).hands;
            Prediction::new(&case.fitting, &case.rules.usual(), hands)
        }),
        predict: over(cases, amount.runs, |case| {
            predict(&case.fitting, &case.rules.usual())
        }),
    }
}

/// Plans everybody in everything on every occasion, or what fits into so many cases; each counts
/// with the quickest of three runs, so that the slowest is slow of itself and not by what else the
/// machine was doing.
pub fn everything(demo: &Demo, at_most: usize) -> OverCases {
    let mut all = demo.all();
    all.truncate(at_most);
    let quickest = |case: &Case| {
        let times = many(3, || plan(&case.fitting, &case.rules, &Locks::new()));
        Times::of(vec![times.least_ms])
    };
    OverCases::of(&all.iter().map(quickest).collect::<Vec<_>>())
}

fn over<T>(cases: &[Case], runs: usize, work: impl Fn(&Case) -> T) -> OverCases {
    let times = cases.iter().map(|case| many(runs, || work(case)));
    OverCases::of(&times.collect::<Vec<_>>())
}

/// How long rankings take.
#[derive(Debug, Clone, Serialize)]
pub struct RankTimes {
    /// How many garments.
    pub garments: usize,
    /// How many threads.
    pub threads: usize,
    /// From the sheets as they are stored to the order: garments completed, fitted and planned.
    pub from_sheets: Times,
    /// The planning and ordering alone.
    pub order: Times,
    /// The same on one thread.
    pub order_on_one: Times,
}

/// One person and a rack of garments.
pub struct Rack<'a> {
    body: &'a Body,
    standard: &'a Standard,
    sheets: Vec<Sheet>,
}

impl<'a> Rack<'a> {
    /// The rack of the first person of the demo studio.
    pub fn of(demo: &'a Demo, count: usize) -> Self {
        Self {
            body: &demo.people[0].1,
            standard: &demo.standard,
            sheets: demo.rack(count),
        }
    }

    /// Every garment of the rack on the person.
    ///
    /// # Panics
    /// Never: sheets on a rack were completed once before they were hung there.
    pub fn fittings(&self) -> Vec<(Fitting, Rules)> {
        let fitted = |sheet: &Sheet| {
            let garment = sheet.complete().expect("sheets on a rack are complete");
            let rules = self
                .standard
                .rules(Occasion::Everyday, self.body, garment.cloth());
            (Fitting::new(self.body, &garment), rules)
        };
        self.sheets.iter().map(fitted).collect()
    }

    fn order(&self, threads: usize) -> Vec<(usize, Worth)> {
        rank(&self.fittings(), threads)
    }
}

/// Times the ranking of a rack.
pub fn ranking(rack: &Rack<'_>, threads: usize, amount: Amount) -> RankTimes {
    let fittings = rack.fittings();
    RankTimes {
        garments: fittings.len(),
        threads,
        from_sheets: many(amount.rankings, || rack.order(threads)),
        order: many(amount.rankings, || rank(&fittings, threads)),
        order_on_one: many(amount.rankings, || rank(&fittings, 1)),
    }
}
