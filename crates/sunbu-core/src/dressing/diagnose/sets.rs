//! Every set of wrong decisions weighed against what was read, the model taken to be straight.
//!
//! With `r = L^-1 (y - y_plan)` and `U = L^-1 J`, where `LL'` is the covariance of the readings when
//! all is done as planned, a set `S` of wrong decisions with extra amounts `e ~ N(m, D)` gives
//! `r ~ N(U m, I + U D U')`. Against no wrong decision at all its evidence is, with `G = U'U`,
//! `b = U'r`, `M = D^-1 + G` and `h = b + D^-1 m` on the members of `S` alone,
//!
//! ```text
//! ln p(r | S) - ln p(r | none) = (h' M^-1 h - m' D^-1 m - ln det M - ln det D) / 2
//! ```
//!
//! (Woodbury; the matrix determinant lemma), so a set of three costs a Cholesky root of size three.

use nalgebra::{DMatrix, SMatrix, SVector};

use super::belief::Belief;
use super::prior::{Offsets, Question, Stray, WRONG_SHARE};
use crate::dressing::decision::Decision;
use crate::dressing::predict::INPUTS;
use crate::dressing::quantity::Appearance;
use crate::scalar::Dual;

const N: usize = Decision::COUNT;

/// All sets up to this size are weighed.
const ALL_UP_TO: usize = 3;

/// Larger sets are grown from the best, up to this size.
const GREATEST: usize = 6;

/// So many of the best sets of each size are grown by one more.
const GROWN_FROM: usize = 12;

/// A set of wrong decisions, each upward or downward.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Set {
    members: u32,
    upward: u32,
}

impl Set {
    pub(super) const NONE: Self = Self {
        members: 0,
        upward: 0,
    };

    /// Its decisions, each with whether it is upward.
    pub(super) fn members(self) -> impl Iterator<Item = (Decision, bool)> {
        let within = move |d: &&Decision| self.contains(**d);
        let all = Decision::ALL.iter().filter(within);
        all.map(move |&d| (d, self.upward >> d.index() & 1 == 1))
    }

    pub(super) fn contains(self, decision: Decision) -> bool {
        self.members >> decision.index() & 1 == 1
    }
}

/// A set with its evidence and prior, as a logarithm against no wrong decision.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Weighed {
    pub(super) set: Set,
    pub(super) log: f64,
}

/// What was read, in deviations of what is expected when all is done as planned.
pub(super) struct Evidence {
    /// `G`.
    shows: SMatrix<f64, N, N>,
    /// `b`.
    pulls: SVector<f64, N>,
    /// What each decision may have become.
    pub(super) strays: [Stray; N],
    /// Covariance of the readings when all is done as planned.
    pub(super) expected: DMatrix<f64>,
}

impl Evidence {
    /// The evidence of the readings with the model's slopes at the plan.
    pub(super) fn at_plan(question: &Question<'_>, seen: &Appearance<Dual<INPUTS>>) -> Self {
        let mut out = Self::around(question, seen, &[0.0; INPUTS], [Stray::UNSEEN; N]);
        out.strays = std::array::from_fn(|i| question.stray(Decision::ALL[i], out.shows[(i, i)]));
        out
    }

    /// The same evidence with the model's slopes at inputs that are nearer to the truth.
    pub(super) fn at(&self, question: &Question<'_>, belief: &Belief) -> Self {
        Self::around(question, &belief.seen, &belief.offsets, self.strays)
    }

    fn around(
        question: &Question<'_>,
        seen: &Appearance<Dual<INPUTS>>,
        offsets: &Offsets,
        strays: [Stray; N],
    ) -> Self {
        let quantities = question.observed.quantities();
        let jacobian = question.rows(seen);
        let expected = &jacobian * *question.inputs * jacobian.transpose() + &question.noise;
        let moved = SVector::<f64, INPUTS>::from(*offsets);
        let residual = question.residual(seen, offsets) + &jacobian * moved;
        let by_decision = jacobian.columns(0, N).into_owned();
        // A covariance with the finest error of a reading on its diagonal has a root.
        let whitened = expected.clone().cholesky().map(|root| {
            let root = root.l();
            let solve = |m: &DMatrix<f64>| root.solve_lower_triangular(m);
            let residual = DMatrix::from_column_slice(quantities.len(), 1, residual.as_slice());
            (solve(&by_decision), solve(&residual))
        });
        let (mut shows, mut pulls) = (SMatrix::zeros(), SVector::zeros());
        if let Some((Some(columns), Some(residual))) = whitened {
            shows = SMatrix::from_iterator((columns.transpose() * &columns).iter().copied());
            pulls = SVector::from_iterator((columns.transpose() * residual).iter().copied());
        }
        Self {
            strays,
            shows,
            pulls,
            expected,
        }
    }

    /// All sets worth weighing, likeliest first; the one without any wrong decision among them.
    pub(super) fn weigh(&self) -> Vec<Weighed> {
        let usable: Vec<usize> = (0..N).filter(|&i| self.strays[i].shows()).collect();
        let none = Weighed {
            set: Set::NONE,
            log: 0.0,
        };
        let mut out = vec![none];
        let mut last = vec![none];
        for size in 1..=usable.len().min(GREATEST) {
            let mut next: Vec<Weighed> = Vec::new();
            for from in &last {
                let highest = 32 - from.set.members.leading_zeros();
                for &i in &usable {
                    // Each set once while all are weighed; a grown one may come up twice.
                    let ordered = size > ALL_UP_TO || i >= highest as usize;
                    if ordered && !from.set.contains(Decision::ALL[i]) {
                        next.extend(self.weighed(from.set.members | 1 << i));
                    }
                }
            }
            next.sort_by(best_first);
            next.dedup_by_key(|w| w.set);
            out.extend(&next);
            if size >= ALL_UP_TO {
                next.truncate(GROWN_FROM);
            }
            last = next;
        }
        out.sort_by(best_first);
        out
    }

    /// One set with the directions that its amounts take by themselves; none when there is no room
    /// in such a direction.
    fn weighed(&self, members: u32) -> Option<Weighed> {
        let mut places = [0; GREATEST];
        let mut size = 0;
        for i in (0..N).filter(|i| members >> i & 1 == 1) {
            places[size] = i;
            size += 1;
        }
        let places = &places[..size];
        let wide = |i: usize| {
            let stray = &self.strays[i];
            let far = |s: Option<super::prior::Slab>| s.map_or(0.0, |s| s.middle.abs() + s.sd);
            (0.0, far(stray.up).max(far(stray.down)).powi(2))
        };
        let (_, amounts) = self.gain(places, wide)?;
        let mut upward = 0;
        for (&i, amount) in places.iter().zip(amounts) {
            let up = match (self.strays[i].up, self.strays[i].down) {
                (Some(_), Some(_)) => amount > 0.0,
                (up, _) => up.is_some(),
            };
            upward |= u32::from(up) << i;
        }
        let set = Set { members, upward };
        let (gain, _) = self.gain(places, |i| {
            let slab = self.strays[i].slab(upward >> i & 1 == 1);
            slab.map_or((0.0, 1.0), |s| (s.middle, s.sd * s.sd))
        })?;
        Some(Weighed {
            set,
            log: gain + self.log_prior(set),
        })
    }

    /// Logarithm of a set's prior against that of no wrong decision.
    pub(super) fn log_prior(&self, set: Set) -> f64 {
        let odds = WRONG_SHARE / (1.0 - WRONG_SHARE);
        let share = |(d, up): (Decision, bool)| {
            let slab = self.strays[d.index()].slab(up);
            slab.map_or(0.0, |s| odds * s.share)
        };
        set.members().map(|member| share(member).ln()).sum()
    }

    /// `ln p(r | S) - ln p(r | none)` and the likeliest extra amounts, for normal amounts with the
    /// mean and variance that `slab` gives.
    fn gain(
        &self,
        places: &[usize],
        slab: impl Fn(usize) -> (f64, f64),
    ) -> Option<(f64, [f64; GREATEST])> {
        let mut root = [[0.0; GREATEST]; GREATEST];
        let mut forward = [0.0; GREATEST];
        let mut log = 0.0;
        for (row, &i) in places.iter().enumerate() {
            let (mean, variance) = slab(i);
            let mut right = self.pulls[i] + mean / variance;
            for column in 0..=row {
                let mut sum = self.shows[(i, places[column])];
                if column == row {
                    sum += 1.0 / variance;
                }
                let (left, right) = (&root[row][..column], &root[column][..column]);
                sum -= left.iter().zip(right).map(|(l, r)| l * r).sum::<f64>();
                root[row][column] = if column == row {
                    if sum <= 0.0 || !sum.is_finite() {
                        return None;
                    }
                    sum.sqrt()
                } else {
                    sum / root[column][column]
                };
            }
            for k in 0..row {
                right -= root[row][k] * forward[k];
            }
            forward[row] = right / root[row][row];
            log += 0.5 * (forward[row].powi(2) - mean * mean / variance - variance.ln());
            log -= root[row][row].ln();
        }
        let mut amounts = forward;
        for row in (0..places.len()).rev() {
            for k in row + 1..places.len() {
                amounts[row] -= root[k][row] * amounts[k];
            }
            amounts[row] /= root[row][row];
        }
        log.is_finite().then_some((log, amounts))
    }
}

/// Likeliest first; equals in the order of their decisions.
pub(super) fn best_first(a: &Weighed, b: &Weighed) -> std::cmp::Ordering {
    b.log.total_cmp(&a.log).then(a.set.cmp(&b.set))
}
