//! The fewest changes to what was done that bring all faults into their ranges.
//!
//! Every set of decisions of size one, two, three and so on is offered to the planner with all other
//! decisions held as they were done, until a set brings every fault within its range (to
//! [`MET_WITHIN_CM`], as a plan counts it) and no other wish out of its own, or further out than it
//! was. What even the plan leaves, on this person in this garment, need not be better than the plan:
//! it is the best dressing there is, and what stays of a fault with it is told as left. Sets are
//! weighed with the same bowl between walls as a plan ([`super::super::walls`]), here with the ends
//! of the ranges as limits, and checked on the true model. The first size at which one holds is the
//! smallest there is.

use super::belief::Belief;
use super::offers::{KEPT_CM, LEAST_CM, N, Offers};
use super::prior::Question;
use super::report::{Change, Correction, Finding};
use crate::dressing::decision::Decision;
use crate::dressing::plan::MET_WITHIN_CM;
use crate::dressing::steps::step_of;

/// Sets up to this size are all tried. A larger one is found by going back to the plan with
/// everything and leaving out what can be left out, which is small, but perhaps not the smallest.
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
    let search = Offers::new(question, belief, faults);
    let change = search.smallest().unwrap_or_else(|| search.trimmed());
    Some(search.told(&change, faults))
}

impl Offers<'_> {
    /// The best change within the smallest size that holds; none up to [`ALL_UP_TO`].
    fn smallest(&self) -> Option<[f64; N]> {
        if self.holds(&[0.0; N]) {
            return Some([0.0; N]);
        }
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
            [a] => self.change(&[a], free),
            [a, b] => self.change(&[a, b], free),
            [a, b, c] => self.change(&[a, b, c], free),
            [a, b, c, d] => self.change(&[a, b, c, d], free),
            _ => None,
        }
    }

    /// Goes back to the plan with everything and leaves out, one after the other, what can be left
    /// out: what is done earliest first, since undoing it undoes all that lies over it, and causes
    /// last.
    fn trimmed(&self) -> [f64; N] {
        let is_cause = |i: usize| self.belief.set.contains(Decision::ALL[i]);
        let mut order: Vec<usize> = (0..N).collect();
        order.sort_by_key(|&i| (is_cause(i), step_of(Decision::ALL[i]), i));
        let all = std::array::from_fn(|i| i);
        let (mut free, mut best) = (u32::MAX, self.back_to_plan());
        for i in order {
            let fewer = free & !(1 << i);
            if let Some(change) = self.change::<N>(&all, fewer) {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;
    use crate::dressing::diagnose::prior::Question;
    use crate::dressing::diagnose::sets::{Evidence, Set};
    use crate::dressing::diagnose::{Sight, findings, usual_sd};
    use crate::dressing::predict::{INPUTS, predict};
    use crate::dressing::{Dressing, Fitting, Locks, Observed, Occasion, Quantity, Standard, plan};

    /// Whether a change of these decisions holds anywhere on a grid over all they can do.
    fn on_a_grid(offers: &Offers<'_>, members: &[usize]) -> bool {
        const ALONG: u32 = 48;
        let Some((&first, rest)) = members.split_first() else {
            return offers.holds(&[0.0; N]);
        };
        let at = |i: usize, k: u32| {
            let (down, up) = offers.reach[i];
            (down + up) * f64::from(k) / f64::from(ALONG) - down
        };
        let along = |k: u32| {
            let mut change = [0.0; N];
            change[first] = at(first, k);
            match *rest {
                [] => offers.holds(&change),
                [second] => (0..=ALONG).any(|l| {
                    change[second] = at(second, l);
                    offers.holds(&change)
                }),
                _ => panic!("the grid has two directions at most"),
            }
        };
        (0..=ALONG).any(along)
    }

    /// The demo studio's first people in their own garments, with decisions put wrong.
    fn with_wrong(mut look: impl FnMut(&Offers<'_>, &[f64; N])) {
        let people = demo::people().expect("the demo studio reads");
        let garments = demo::garments().expect("the demo studio reads");
        let wrongs: [&[(Decision, f64)]; 6] = [
            &[(Decision::HemHeight, 5.0)],
            &[(Decision::KoshihimoFront, -6.0)],
            &[(Decision::NapeDrop, -4.0), (Decision::TareLength, 4.0)],
            &[(Decision::HemHeight, 4.5), (Decision::ObiLowerEdge, 6.0)],
            &[(Decision::BackSeamHip, 4.0), (Decision::KimonoOverlap, 8.0)],
            &[
                (Decision::UwamaeRaise, -6.0),
                (Decision::ObiLowerEdge, -6.0),
                (Decision::DrumHeight, 6.0),
            ],
        ];
        for (k, wrong) in wrongs.iter().cycle().take(18).enumerate() {
            let body = people[k % people.len()].en.body().expect("a body");
            let garment = garments[(5 * k) % garments.len()].en.garment();
            let garment = garment.expect("a garment");
            let fitting = Fitting::new(&body, &garment);
            let rules = Standard::customary().rules(Occasion::Formal, &body, garment.cloth());
            let planned = plan(&fitting, &rules, &Locks::new()).dressing;
            let done = wrong.iter().fold(planned, |done: Dressing, &(d, by)| {
                done.with(d, planned.get(d) + by)
            });
            let seen = predict(&fitting, &done);
            let read = Quantity::ALL.iter().filter(|&&q| Sight::of(q).is_photo());
            let observed = Observed::independent(read.map(|&q| (q, seen.get(q), usual_sd(q))));
            let observed = observed.expect("readings that stand");
            let question = Question::new(&fitting, &rules, &planned, &observed);
            let at_plan = question.look(&[0.0; INPUTS]);
            let evidence = Evidence::at_plan(&question, &at_plan);
            let set = evidence.weigh().first().map_or(Set::NONE, |w| w.set);
            let start = (&[0.0; INPUTS], &at_plan);
            let belief = Belief::of(&question, &evidence, set, start).expect("a belief");
            let found = findings::findings(&question, &belief, &at_plan, &evidence.expected);
            let offers = Offers::new(&question, &belief, &found.faults);
            if let Some(change) = offers.smallest() {
                look(&offers, &change);
            }
        }
    }

    #[test]
    fn no_smaller_set_of_changes_cures_all_anywhere_on_a_grid() {
        let (mut seen, mut by_size) = (0, [0; ALL_UP_TO + 1]);
        with_wrong(|offers, change| {
            let size = change.iter().filter(|c| **c != 0.0).count();
            by_size[size] += 1;
            assert!(offers.holds(change));
            seen += 1;
            for one in 0..N {
                if size > 1 {
                    assert!(!on_a_grid(offers, &[one]), "{one} alone does, not {size}");
                }
                for two in one + 1..N {
                    if size > 2 {
                        let both = [one, two];
                        assert!(!on_a_grid(offers, &both), "{both:?} do, not {size}");
                    }
                }
            }
        });
        assert!(by_size[1] > 0 && by_size[2] > 2, "{by_size:?} of {seen}");
    }

    #[test]
    fn the_grid_finds_a_cure_where_there_is_one() {
        // Or the test above could not fail.
        let (mut seen, mut found) = (0, 0);
        with_wrong(|offers, change| {
            let members: Vec<usize> = (0..N).filter(|&i| change[i] != 0.0).collect();
            if (1..=2).contains(&members.len()) {
                seen += 1;
                found += usize::from(on_a_grid(offers, &members));
            }
        });
        assert!(10 * found >= 8 * seen && seen > 3, "{found} of {seen}");
    }
}
