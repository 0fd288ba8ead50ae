//! The fewest changes to what was done that bring all faults into their ranges.
//!
//! Every set of decisions of size one, two, three and so on is offered to the planner with all other
//! decisions held as they were done, until a set brings every fault within its range (to
//! [`MET_WITHIN_CM`], as a plan counts it) and no other wish out of its own, or further out than it
//! was, or than it would be with the causes undone. Sets are
//! weighed with the same bowl between walls as a plan ([`super::super::walls`]), here with the ends
//! of the ranges as limits, and checked on the true model. The first size at which one does is the
//! smallest there is.
//!
//! Where the garment or the person allows no dressing without a fault, the search aims at what a
//! change of everything could reach, and says what is left.

use super::belief::Belief;
use super::offers::{FAULTS_GIVE, KEPT_CM, LEAST_CM, LIMIT_GIVES, Offers};
use super::prior::Question;
use super::report::{Change, Correction, Finding};
use crate::dressing::decision::Decision;
use crate::dressing::plan::MET_WITHIN_CM;
use crate::dressing::steps::step_of;

const N: usize = Decision::COUNT;

/// Sets up to this size are all tried. A larger one is found by leaving out of a change of
/// everything what can be left out, which is small, but perhaps not the smallest.
const ALL_UP_TO: usize = 4;

/// The fewest changes; none when there is no fault.
pub(super) fn correction(
    question: &Question<'_>,
    belief: &Belief,
    faults: &[Finding],
) -> Option<Correction> {
    if faults.is_empty() {
        return None;
    }
    let mut search = Offers::new(question, belief, faults);
    let everything = search.everything();
    search.allow(&everything);
    let change = search
        .smallest()
        .unwrap_or_else(|| search.trimmed(everything));
    Some(search.told(&change, faults))
}

impl Offers<'_> {
    /// The change that cures most when every decision may move.
    fn everything(&self) -> [f64; N] {
        let members = std::array::from_fn(|i| i);
        self.change::<N>(&members, u32::MAX, FAULTS_GIVE)
            .unwrap_or([0.0; N])
    }

    /// The best change within the smallest size that holds; none up to [`ALL_UP_TO`].
    fn smallest(&self) -> Option<[f64; N]> {
        let is_cause = |i: usize| self.belief.set.contains(Decision::ALL[i]);
        let mut order: Vec<usize> = (0..N).filter(|&i| self.may_move(i)).collect();
        order.sort_by_key(|&i| (!is_cause(i), step_of(Decision::ALL[i]), i));
        let causes = order.iter().filter(|&&i| is_cause(i)).count();
        for size in 1..=ALL_UP_TO.min(order.len()) {
            let mut best: Option<(usize, f64, [f64; N])> = None;
            let mut places: Vec<usize> = (0..size).collect();
            loop {
                let members: Vec<usize> = places.iter().map(|&p| order[p]).collect();
                let foreign = places.iter().filter(|&&p| p >= causes).count();
                let worse = best.is_some_and(|(least, _, _)| foreign > least);
                let able = !worse && self.may_reach(&members);
                if let Some(change) = able.then(|| self.offered(&members)).flatten() {
                    // Sets of causes come first, earlier ones before later ones.
                    if foreign == 0 {
                        return Some(change);
                    }
                    let work = self.work(&change);
                    if best.is_none_or(|(f, w, _)| (foreign, work) < (f, w)) {
                        best = Some((foreign, work, change));
                    }
                }
                if !next(&mut places, order.len()) {
                    break;
                }
            }
            if let Some((_, _, change)) = best {
                return Some(change);
            }
        }
        None
    }

    /// The change that the planner makes with these decisions alone, if it cures all.
    fn offered(&self, members: &[usize]) -> Option<[f64; N]> {
        let free = u32::MAX;
        match *members {
            [a] => self.change(&[a], free, LIMIT_GIVES),
            [a, b] => self.change(&[a, b], free, LIMIT_GIVES),
            [a, b, c] => self.change(&[a, b, c], free, LIMIT_GIVES),
            [a, b, c, d] => self.change(&[a, b, c, d], free, LIMIT_GIVES),
            _ => None,
        }
    }

    /// Leaves out of a change of everything, one after the other, what can be left out: what is
    /// done latest first, since undoing less is less work, and causes last.
    fn trimmed(&self, everything: [f64; N]) -> [f64; N] {
        let is_cause = |i: usize| self.belief.set.contains(Decision::ALL[i]);
        let mut order: Vec<usize> = (0..N).collect();
        order.sort_by_key(|&i| (is_cause(i), step_of(Decision::ALL[i]), i));
        let all = std::array::from_fn(|i| i);
        let (mut free, mut best) = (u32::MAX, everything);
        for i in order {
            let fewer = free & !(1 << i);
            if let Some(change) = self.change::<N>(&all, fewer, LIMIT_GIVES) {
                (free, best) = (fewer, change);
            }
        }
        best
    }

    /// How much is done in a change, in squared spreads of the usual way.
    fn work(&self, change: &[f64; N]) -> f64 {
        let of = |(&d, by): (&Decision, &f64)| (by / self.question.rules.way(d).spread).powi(2);
        Decision::ALL.iter().zip(change).map(of).sum()
    }

    fn told(&self, change: &[f64; N], faults: &[Finding]) -> Correction {
        let moved = self.moved(change);
        let left = faults.iter().filter_map(|fault| {
            let target = self.question.rules.target(fault.quantity)?;
            let q = fault.quantity;
            let miss = target.miss(self.belief.seen.get(q).value + moved[q.index()]);
            (miss.abs() > MET_WITHIN_CM + KEPT_CM).then_some((q, miss))
        });
        let mut changes: Vec<Change> = Decision::ALL
            .iter()
            .filter(|d| change[d.index()].abs() >= LEAST_CM)
            .map(|&decision| {
                let by = change[decision.index()];
                let helps = |fault: &&Finding| {
                    let slope = self.slopes[fault.quantity.index()][decision.index()];
                    -fault.miss.signum() * slope * by >= LEAST_CM
                };
                let from = self.done.get(decision);
                Change {
                    decision,
                    step: step_of(decision),
                    from,
                    to: from + by,
                    cures: faults.iter().filter(helps).map(|f| f.quantity).collect(),
                }
            })
            .collect();
        changes.sort_by_key(|c| (c.step, c.decision));
        Correction {
            changes,
            left: left.collect(),
        }
    }
}

/// The next of all ascending choices from `count`; false after the last.
fn next(places: &mut [usize], count: usize) -> bool {
    let size = places.len();
    for k in (0..size).rev() {
        if places[k] < count - size + k {
            places[k] += 1;
            for later in k + 1..size {
                places[later] = places[later - 1] + 1;
            }
            return true;
        }
    }
    false
}
