//! Faults injected into dressings of random people, to see whether they are found again.

#![allow(
    dead_code,
    reason = "not every test that shares this file uses all of it"
)]

use nalgebra::{DMatrix, DVector};
use sunbu_core::body::{BodyMeasure, Sex};
use sunbu_core::dressing::{
    Decision, Diagnosis, Dressing, Fitting, Given, Locks, Observed, Occasion, Quantity, Rules,
    Sight, Standard, diagnose, plan, predict, usual_sd,
};

use super::cases::{People, Random, sheet};

/// What hands that did as planned stay within, in their standard deviations: 95 % of the time.
const HANDS_95: f64 = 1.96;

/// A person in a garment that was cut for her, with a plan.
pub struct Case {
    pub fitting: Fitting,
    pub rules: Rules,
    pub planned: Dressing,
}

impl Case {
    /// One of this seed. Taped are her heights at neck, hip bone and hip, and the girths of hip and
    /// waist.
    pub fn of(people: &People, random: &mut Random) -> Self {
        use BodyMeasure as B;
        let taped = [
            B::Stature,
            B::BackNeckHeight,
            B::HipBoneHeight,
            B::HipHeight,
            B::HipGirth,
            B::WaistGirth,
        ];
        loop {
            let truth = people.draw(random);
            let Some(body) = people.taped(&truth, &taped, 0.5, random) else {
                continue;
            };
            let (stature, hip) = (truth[B::Stature.index()], truth[B::HipGirth.index()]);
            let Ok(garment) = sheet(stature, hip, random).complete() else {
                continue;
            };
            let fitting = Fitting::new(&body, &garment);
            let occasion = random.one_of(Occasion::ALL);
            let rules = Standard::customary().rules(occasion, &body, garment.cloth());
            let planned = plan(&fitting, &rules, &Locks::new()).dressing;
            return Self {
                fitting,
                rules,
                planned,
            };
        }
    }

    /// The readings of photos from the front and from behind, of what `seen` gives.
    pub fn photos(&self, mut seen: impl FnMut(Quantity, f64) -> f64) -> Observed {
        let shown = Quantity::ALL.iter().filter(|&&q| Sight::of(q).is_photo());
        let readings = shown.map(|&q| (q, seen(q, usual_sd(q)), usual_sd(q)));
        Observed::independent(readings).expect("readings that stand")
    }

    /// What is said of this reading.
    pub fn diagnose(&self, observed: &Observed) -> Diagnosis {
        diagnose(&self.fitting, &self.rules, &self.planned, observed)
    }

    /// What is said of a dressing that looks just as planned.
    pub fn as_planned(&self) -> Diagnosis {
        let seen = predict(&self.fitting, &self.planned);
        self.diagnose(&self.photos(|q, _| seen.get(q)))
    }

    /// The person and garment as they may really be, by the trust in what was given.
    pub fn real(&self, random: &mut Random) -> Fitting {
        let all = Given::ALL;
        let covariance = DMatrix::from_fn(all.len(), all.len(), |i, j| {
            // A hundredth of a millimetre on the diagonal makes the root exist.
            let lift = if i == j { 1e-6 } else { 0.0 };
            self.fitting.covariance(all[i], all[j]) + lift
        });
        let root = covariance.cholesky().expect("a covariance").l();
        let off = root * DVector::from_fn(all.len(), |_, _| random.normal());
        all.iter().fold(self.fitting.clone(), |real, &g| {
            let cm = self.fitting.value(g) + off[g.index()];
            real.with(g, cm)
        })
    }
}

/// One dressing with faults.
pub struct Injected {
    pub case: Case,
    /// The decisions that were done wrong, in the order of `Decision::ALL`.
    pub wrong: Vec<Decision>,
    pub done: Dressing,
    pub real: Fitting,
    pub observed: Observed,
}

impl Injected {
    /// One to three wrong decisions of those that show, each off by its tolerance times `least` or
    /// more, up to two spreads of its way more; the others within what hands allow.
    pub fn of(people: &People, seed: u64, least: f64) -> Self {
        let random = &mut Random::of(seed);
        let case = Case::of(people, random);
        let shown = case.as_planned().shown;
        let can: Vec<Decision> = shown
            .iter()
            .filter(|s| s.can_be_told)
            .map(|s| s.decision)
            .collect();
        let count = random.one_of(&[1, 2, 3]);
        let mut wrong: Vec<Decision> = Vec::new();
        while wrong.len() < count {
            let drawn = random.one_of(&can);
            if !wrong.contains(&drawn) {
                wrong.push(drawn);
            }
        }
        wrong.sort();
        let done = Dressing::from_fn(|d| {
            let (way, planned) = (case.rules.way(d), case.planned.get(d));
            if !wrong.contains(&d) {
                let by = loop {
                    let by = random.normal();
                    if by.abs() < HANDS_95 {
                        break by;
                    }
                };
                return (planned + by * way.hands).clamp(way.low, way.high);
            }
            let tolerance = shown[d.index()].tolerance * least;
            let rooms = [(1.0, way.high - planned), (-1.0, planned - way.low)];
            let rooms: Vec<(f64, f64)> = rooms.into_iter().filter(|r| r.1 > tolerance).collect();
            let (sign, room) = random.one_of(&rooms);
            let far = room.min(tolerance + 2.0 * way.spread);
            planned + sign * random.between(tolerance, far)
        });
        let real = case.real(random);
        let seen = predict(&real, &done);
        let observed = case.photos(|q, sd| seen.get(q) + sd * random.normal());
        Self {
            case,
            wrong,
            done,
            real,
            observed,
        }
    }

    /// Done less planned, in centimetres.
    pub fn amount(&self, decision: Decision) -> f64 {
        self.done.get(decision) - self.case.planned.get(decision)
    }
}

/// How the right set of causes stands in a diagnosis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Told.
    Right,
    /// Named second.
    Second,
    /// Named further down among what cannot be told apart.
    Named,
    /// Not named.
    Missed,
}

/// Where the right set stands.
pub fn standing(diagnosis: &Diagnosis, wrong: &[Decision]) -> Standing {
    let sorted = |decisions: &mut dyn Iterator<Item = Decision>| {
        let mut out: Vec<Decision> = decisions.collect();
        out.sort();
        out
    };
    if sorted(&mut diagnosis.causes.iter().map(|c| c.decision)) == wrong {
        return Standing::Right;
    }
    let named = diagnosis
        .doubts
        .iter()
        .position(|doubt| sorted(&mut doubt.causes.iter().map(|c| c.0)) == wrong);
    match named {
        Some(0) => Standing::Second,
        Some(_) => Standing::Named,
        None => Standing::Missed,
    }
}

/// What came of many cases.
#[derive(Debug, Clone, Default)]
pub struct Score {
    pub cases: usize,
    pub right: usize,
    pub second: usize,
    pub named: usize,
    pub missed: usize,
    /// Errors of the amounts of rightly told causes, ascending, in centimetres.
    pub amounts: Vec<f64>,
    /// How many amounts lay in their 90 % interval.
    pub inside: usize,
}

impl Score {
    /// Share of the cases, in percent.
    pub fn percent(&self, count: usize) -> f64 {
        100.0 * count as f64 / self.cases as f64
    }

    /// An amount's error that so many of 100 amounts stay below, in centimetres.
    pub fn amount_error(&self, of_100: usize) -> f64 {
        self.amounts[of_100 * (self.amounts.len() - 1) / 100]
    }

    fn add(&mut self, injected: &Injected) {
        let diagnosis = injected.case.diagnose(&injected.observed);
        self.cases += 1;
        match standing(&diagnosis, &injected.wrong) {
            Standing::Right => self.right += 1,
            Standing::Second => self.second += 1,
            Standing::Named => self.named += 1,
            Standing::Missed => self.missed += 1,
        }
        for cause in &diagnosis.causes {
            if injected.wrong.contains(&cause.decision) {
                let truth = injected.amount(cause.decision);
                self.amounts.push((cause.amount - truth).abs());
                let (low, high) = cause.interval_90;
                self.inside += usize::from((low..=high).contains(&truth));
            }
        }
    }

    fn join(mut self, other: Self) -> Self {
        self.cases += other.cases;
        self.right += other.right;
        self.second += other.second;
        self.named += other.named;
        self.missed += other.missed;
        self.inside += other.inside;
        self.amounts.extend(other.amounts);
        self.amounts.sort_by(f64::total_cmp);
        self
    }
}

/// The score of `cases` injected cases whose amounts begin at `least` tolerances.
pub fn score(cases: u64, least: f64) -> Score {
    let half = |from: u64| {
        let people = People::of(Sex::Women);
        let mut out = Score::default();
        for seed in (from..cases).step_by(2) {
            out.add(&Injected::of(&people, seed, least));
        }
        out
    };
    std::thread::scope(|scope| {
        let other = scope.spawn(|| half(1));
        half(0).join(other.join().expect("no thread panicked"))
    })
}
