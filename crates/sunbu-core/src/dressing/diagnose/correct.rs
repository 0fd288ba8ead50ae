//! The fewest changes to what was done that bring all faults into their ranges.
//!
//! Every set of decisions of size one, two, three and so on is offered to the planner with all other
//! decisions held as they were done, until a set brings every fault within its range (to
//! [`MET_WITHIN_CM`], as a plan counts it) and no other wish out of its own, or further out. Sets are
//! weighed with the same bowl between walls as a plan ([`super::super::walls`]), here with the ends
//! of the ranges as limits, and checked on the true model. The first size at which one does is the
//! smallest there is.
//!
//! Where the garment or the person allows no dressing without a fault, the search aims at what a
//! change of everything could reach, and says what is left.

use nalgebra::{SMatrix, SVector};

use super::belief::Belief;
use super::prior::{Offsets, Question};
use super::report::{Change, Correction, Finding};
use crate::dressing::decision::{Decision, Dressing};
use crate::dressing::plan::MET_WITHIN_CM;
use crate::dressing::quantity::{Appearance, Quantity};
use crate::dressing::solve::{CENTRE, PULL};
use crate::dressing::steps::step_of;
use crate::dressing::walls::{Wall, lowest};

const N: usize = Decision::COUNT;

/// Sets up to this size are all tried. A larger one is found by leaving out of a change of
/// everything what can be left out, which is small, but perhaps not the smallest.
const ALL_UP_TO: usize = 4;

/// How far a limit gives way per unit of force: see the planner, whose forces are as great.
const LIMIT_GIVES: f64 = 1e-7;

/// How far the end of a fault's range gives way when everything may move: hardly, but before a limit
/// does.
const FAULTS_GIVE: f64 = 1e-4;

/// A range's end is aimed at this much short of where it counts as met: what the model bends on the
/// way must not push a cure out again.
const SHORT_OF_CM: f64 = 0.1;

/// Passed by less than this, a limit was kept: what limits give, and no more.
const KEPT_CM: f64 = 0.01;

/// Rounds of straightening the model for one set.
const ROUNDS: usize = 3;

/// A change of less than this is none, in centimetres: what is shown is rounded to it.
const LEAST_CM: f64 = 0.1;

/// What one wish allows, as offsets from where its quantity is.
struct Room {
    quantity: Quantity,
    /// How far it may go down, below zero for a fault above its range that must.
    down: Option<f64>,
    /// How far it may go up.
    up: Option<f64>,
    /// Half the width of its range and how far its middle lies off, for a fault in a closed range.
    aim: Option<(f64, f64)>,
    fault: bool,
}

/// The search for one diagnosis.
struct Search<'a> {
    question: &'a Question<'a>,
    belief: &'a Belief,
    done: Dressing,
    rooms: Vec<Room>,
    /// How quantities change with decisions, as it was done.
    slopes: [[f64; N]; Quantity::COUNT],
    /// How far each decision may still go down and up.
    reach: [(f64, f64); N],
}

/// The fewest changes; none when there is no fault.
pub(super) fn correction(
    question: &Question<'_>,
    belief: &Belief,
    faults: &[Finding],
) -> Option<Correction> {
    if faults.is_empty() {
        return None;
    }
    let mut search = Search::new(question, belief, faults);
    let everything = search.everything();
    search.allow(&everything);
    let change = search
        .smallest()
        .unwrap_or_else(|| search.trimmed(everything));
    Some(search.told(&change, faults))
}

impl<'a> Search<'a> {
    fn new(question: &'a Question<'a>, belief: &'a Belief, faults: &[Finding]) -> Self {
        let done = belief.done(question.planned);
        let rooms = question.rules.targets.iter().map(|target| {
            let quantity = target.quantity;
            let cm = belief.seen.get(quantity).value;
            let fault = faults.iter().any(|f| f.quantity == quantity);
            let short_of = if fault { SHORT_OF_CM } else { 0.0 };
            let slack = MET_WITHIN_CM - short_of;
            // What lies outside already, and is no fault to be cured, may stay there.
            let stays = |room: f64| if fault { room } else { room.max(slack) };
            Room {
                quantity,
                down: target.low.map(|low| stays(cm - low + slack)),
                up: target.high.map(|high| stays(high - cm + slack)),
                aim: target
                    .off_centre(cm)
                    .filter(|_| fault)
                    .map(|(off, half)| (half, off * half)),
                fault,
            }
        });
        let reach = |d: Decision| {
            let (way, at) = (question.rules.way(d), done.get(d));
            ((at - way.low).max(0.0), (way.high - at).max(0.0))
        };
        Self {
            rooms: rooms.collect(),
            slopes: slopes(&belief.seen),
            reach: std::array::from_fn(|i| reach(Decision::ALL[i])),
            done,
            question,
            belief,
        }
    }

    /// The change that cures most when every decision may move.
    fn everything(&self) -> [f64; N] {
        let members = std::array::from_fn(|i| i);
        self.change::<N>(&members, u32::MAX, FAULTS_GIVE)
            .unwrap_or([0.0; N])
    }

    /// Allows every fault what even a change of everything leaves of it.
    fn allow(&mut self, everything: &[f64; N]) {
        let moved = self.moved(everything);
        for room in self.rooms.iter_mut().filter(|r| r.fault) {
            let by = moved[room.quantity.index()];
            // A tenth more, so that a set need not move everything for the last of it.
            let allowed = |over: f64| {
                if over > KEPT_CM {
                    over + SHORT_OF_CM
                } else {
                    0.0
                }
            };
            room.up = room.up.map(|up| up + allowed(by - up));
            room.down = room.down.map(|down| down + allowed(-by - down));
        }
    }

    /// How every quantity moves with a change of the decisions, on the true model.
    fn moved(&self, change: &[f64; N]) -> [f64; Quantity::COUNT] {
        let offsets = self.with(change);
        let seen = self.question.glance(&offsets);
        std::array::from_fn(|q| {
            seen.get(Quantity::ALL[q]) - self.belief.seen.get(Quantity::ALL[q]).value
        })
    }

    fn with(&self, change: &[f64; N]) -> Offsets {
        let mut offsets = self.belief.offsets;
        for (offset, by) in offsets.iter_mut().zip(change) {
            *offset += by;
        }
        offsets
    }

    /// Whether a change brings all within what is allowed, on the true model.
    fn holds(&self, change: &[f64; N]) -> bool {
        let moved = self.moved(change);
        self.rooms.iter().all(|room| {
            let by = moved[room.quantity.index()];
            let slack = if room.fault { SHORT_OF_CM } else { KEPT_CM };
            room.up.is_none_or(|up| by <= up + slack)
                && room.down.is_none_or(|down| -by <= down + slack)
        })
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
                if best.is_none_or(|(least, _, _)| foreign <= least) && self.may_reach(&members) {
                    if let Some(change) = self.offered(&members) {
                        // Sets of causes come first, earlier ones before later ones.
                        if foreign == 0 {
                            return Some(change);
                        }
                        let work = self.work(&change);
                        if best.is_none_or(|(f, w, _)| (foreign, work) < (f, w)) {
                            best = Some((foreign, work, change));
                        }
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

    fn may_move(&self, i: usize) -> bool {
        let (down, up) = self.reach[i];
        down.max(up) > LEAST_CM
    }

    /// Whether the set could cure every fault if nothing else stood in its way.
    fn may_reach(&self, members: &[usize]) -> bool {
        // The girth under the collar end bends: a half more than its slope says.
        let most = |q: Quantity, sign: f64| {
            let of = |&i: &usize| {
                let slope = sign * self.slopes[q.index()][i];
                let (down, up) = self.reach[i];
                if slope > 0.0 {
                    slope * up
                } else {
                    -slope * down
                }
            };
            1.5 * members.iter().map(of).sum::<f64>() + KEPT_CM
        };
        self.rooms.iter().filter(|r| r.fault).all(|room| {
            room.up.is_none_or(|up| most(room.quantity, -1.0) >= -up)
                && room
                    .down
                    .is_none_or(|down| most(room.quantity, 1.0) >= -down)
        })
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

    /// The least change of these decisions between the walls; faults' ranges give way by `gives`.
    /// With ranges that are limits, none when they cannot all be kept.
    fn change<const K: usize>(
        &self,
        members: &[usize; K],
        free: u32,
        gives: f64,
    ) -> Option<[f64; N]> {
        let mut slopes = self.slopes;
        let mut at = [0.0; N];
        let mut moved = [0.0; Quantity::COUNT];
        let strict = gives <= LIMIT_GIVES;
        for round in 0..ROUNDS {
            let step = self.step(members, free, gives, (&slopes, &at, &moved))?;
            let mut next = at;
            for (&i, by) in members.iter().zip(step.iter()) {
                let (down, up) = self.reach[i];
                next[i] = (at[i] + by).clamp(-down, up);
            }
            if strict && round == 0 && !self.holds_straight(&next) {
                return None;
            }
            if strict && self.holds(&next) {
                return Some(next);
            }
            at = next;
            let seen = self.question.look(&self.with(&at));
            slopes = self::slopes(&seen);
            moved = self.moved(&at);
        }
        (!strict).then_some(at)
    }

    /// Whether a change would hold if the model were straight; the collar end's girth is left to the
    /// true model, as it bends.
    fn holds_straight(&self, change: &[f64; N]) -> bool {
        self.rooms.iter().all(|room| {
            let slopes = &self.slopes[room.quantity.index()];
            let by: f64 = slopes.iter().zip(change).map(|(s, c)| s * c).sum();
            let slack = KEPT_CM + 0.1 * by.abs();
            room.up.is_none_or(|up| by <= up + slack)
                && room.down.is_none_or(|down| -by <= down + slack)
        })
    }

    fn step<const K: usize>(
        &self,
        members: &[usize; K],
        free: u32,
        gives: f64,
        (slopes, at, moved): (
            &[[f64; N]; Quantity::COUNT],
            &[f64; N],
            &[f64; Quantity::COUNT],
        ),
    ) -> Option<SVector<f64, K>> {
        let is_free = |i: usize| free >> i & 1 == 1;
        let mut hessian = SMatrix::<f64, K, K>::zeros();
        let mut gradient = SVector::<f64, K>::zeros();
        let mut walls = Vec::with_capacity(2 * (self.rooms.len() + K));
        for (k, &i) in members.iter().enumerate() {
            let stiffness = PULL / self.question.rules.way(Decision::ALL[i]).spread.powi(2);
            hessian[(k, k)] += stiffness;
            // A cause is drawn back to the plan, everything else to what was done.
            let off_plan = match self.belief.set.contains(Decision::ALL[i]) {
                true => self.belief.offsets[i],
                false => 0.0,
            };
            gradient[k] += stiffness * (at[i] + off_plan);
            let (down, up) = self.reach[i];
            let mut slope = SVector::zeros();
            slope[k] = 1.0;
            if is_free(i) {
                push(&mut walls, slope, up - at[i], LIMIT_GIVES);
                push(&mut walls, -slope, down + at[i], LIMIT_GIVES);
            }
        }
        for room in &self.rooms {
            let q = room.quantity.index();
            let slope = SVector::<f64, K>::from_fn(|k, _| match is_free(members[k]) {
                true => slopes[q][members[k]],
                false => 0.0,
            });
            if slope.iter().all(|s| *s == 0.0) {
                continue;
            }
            if let Some((half, off)) = room.aim {
                let stiffness = CENTRE / half.powi(2);
                gradient.axpy(stiffness * (off + moved[q]), &slope, 1.0);
                hessian.ger(stiffness, &slope, &slope, 1.0);
            }
            let give = if room.fault { gives } else { LIMIT_GIVES };
            if let Some(up) = room.up {
                push(&mut walls, slope, up - moved[q], give);
            }
            if let Some(down) = room.down {
                push(&mut walls, -slope, down + moved[q], give);
            }
        }
        lowest(hessian, &gradient, &walls, &mut Vec::new())
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

fn slopes(
    seen: &Appearance<crate::scalar::Dual<{ crate::dressing::predict::INPUTS }>>,
) -> [[f64; N]; Quantity::COUNT] {
    std::array::from_fn(|q| {
        let dual = seen.get(Quantity::ALL[q]);
        std::array::from_fn(|i| dual.grad[i])
    })
}

fn push<const K: usize>(walls: &mut Vec<Wall<K>>, slope: SVector<f64, K>, bound: f64, give: f64) {
    walls.push(Wall { slope, bound, give });
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
