//! What the planner makes of a few decisions while all others stay as they were done.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use nalgebra::{SMatrix, SVector};

use super::belief::Belief;
use super::prior::{Offsets, Question};
use super::report::Finding;
use crate::dressing::decision::{Decision, Dressing};
use crate::dressing::plan::MET_WITHIN_CM;
use crate::dressing::predict::INPUTS;
use crate::dressing::quantity::{Appearance, Quantity};
use crate::dressing::solve::{CENTRE, PULL};
use crate::dressing::walls::{Wall, lowest};
use crate::scalar::Dual;

pub(super) const N: usize = Decision::COUNT;

/// How far a limit gives way per unit of force: see the planner, whose forces are as great.
const LIMIT_GIVES: f64 = 1e-7;

/// A range's end is aimed at this much short of where it counts as met: what the model bends on the
/// way must not push a cure out again.
const SHORT_OF_CM: f64 = 0.1;

/// Passed by less than this, a limit was kept: what limits give, and no more.
pub(super) const KEPT_CM: f64 = 0.01;

/// Rounds of straightening the model for one set.
const ROUNDS: usize = 3;

/// A change of less than this is none, in centimetres: what is shown is rounded to it.
pub(super) const LEAST_CM: f64 = 0.1;

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

/// A dressing as it was done, and what every wish allows to be changed.
pub(super) struct Offers<'a> {
    pub(super) question: &'a Question<'a>,
    pub(super) belief: &'a Belief,
    pub(super) done: Dressing,
    rooms: Vec<Room>,
    /// How quantities change with decisions, as it was done.
    pub(super) slopes: [[f64; N]; Quantity::COUNT],
    /// How far each decision may still go down and up.
    pub(super) reach: [(f64, f64); N],
    /// What is seen with some of the causes as planned, by those.
    known: RefCell<BTreeMap<u32, Rc<Here>>>,
}

/// What is seen after a change.
struct Here {
    change: [f64; N],
    /// How far every quantity has moved.
    moved: [f64; Quantity::COUNT],
    /// How quantities change with decisions there.
    slopes: [[f64; N]; Quantity::COUNT],
    /// Whether it cures all.
    holds: bool,
}

impl<'a> Offers<'a> {
    pub(super) fn new(question: &'a Question<'a>, belief: &'a Belief, faults: &[Finding]) -> Self {
        let done = belief.done(question.planned);
        let mut planned = belief.offsets;
        planned[..N].fill(0.0);
        let planned = question.glance(&planned);
        let rooms = question.rules.targets.iter().map(|target| {
            let quantity = target.quantity;
            let cm = belief.seen.get(quantity).value;
            let fault = faults.iter().any(|f| f.quantity == quantity);
            let short_of = if fault { SHORT_OF_CM } else { 0.0 };
            let slack = MET_WITHIN_CM - short_of;
            // What is no fault to be cured may stay as far out as it is; nothing need be better than
            // planned.
            let stays = |room: f64, planned: f64| {
                let as_it_is = if fault { f64::MIN } else { 0.0 };
                room.max(planned.max(as_it_is) + slack)
            };
            let planned = planned.get(quantity) - cm;
            Room {
                quantity,
                down: target.low.map(|low| stays(cm - low + slack, -planned)),
                up: target.high.map(|high| stays(high - cm + slack, planned)),
                aim: target
                    .off_centre(cm)
                    .filter(|_| fault)
                    .map(|(off, half)| (half, off * half)),
                fault,
            }
        });
        let reach = |d: Decision| {
            let (way, at) = (question.rules.way(d), done.get(d));
            // The plan can be done wherever it lies.
            let planned = question.planned.get(d);
            let (low, high) = (way.low.min(planned), way.high.max(planned));
            ((at - low).max(0.0), (high - at).max(0.0))
        };
        Self {
            rooms: rooms.collect(),
            slopes: slopes(&belief.seen),
            reach: std::array::from_fn(|i| reach(Decision::ALL[i])),
            known: RefCell::default(),
            done,
            question,
            belief,
        }
    }

    /// Everything as planned.
    pub(super) fn back_to_plan(&self) -> [f64; N] {
        std::array::from_fn(|i| -self.belief.offsets[i])
    }

    /// How every quantity moves with a change of the decisions, on the true model.
    pub(super) fn moved(&self, change: &[f64; N]) -> [f64; Quantity::COUNT] {
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
    pub(super) fn holds(&self, change: &[f64; N]) -> bool {
        let moved = self.moved(change);
        self.rooms.iter().all(|room| {
            let by = moved[room.quantity.index()];
            let slack = if room.fault { SHORT_OF_CM } else { KEPT_CM };
            room.up.is_none_or(|up| by <= up + slack)
                && room.down.is_none_or(|down| -by <= down + slack)
        })
    }

    pub(super) fn may_move(&self, i: usize) -> bool {
        let (down, up) = self.reach[i];
        down.max(up) > LEAST_CM
    }

    /// Whether the set could cure every fault if nothing else stood in its way.
    pub(super) fn may_reach(&self, members: &[usize]) -> bool {
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

    /// The least change of these decisions between the walls, of those that `free` lets move; none
    /// when they cannot all be kept.
    pub(super) fn change<const K: usize>(
        &self,
        members: &[usize; K],
        free: u32,
    ) -> Option<[f64; N]> {
        let freed = members.iter().filter(|&&i| free >> i & 1 == 1);
        let freed = freed.fold(0, |mask, &i| mask | 1 << i);
        // Causes are tried as planned first: what the model bends from there is less than from here.
        let mut here = self.undone(freed);
        if here.holds {
            return Some(here.change);
        }
        for round in 0..ROUNDS {
            let step = self.step(members, free, &here)?;
            let mut next = here.change;
            for (&i, by) in members.iter().zip(step.iter()) {
                let (down, up) = self.reach[i];
                next[i] = (next[i] + by).clamp(-down, up);
            }
            if self.holds(&next) {
                return Some(next);
            }
            if round == 0 && !self.holds_straight(&here, &next) {
                return None;
            }
            if round + 1 < ROUNDS {
                here = Rc::new(self.here(next));
            }
        }
        None
    }

    /// The causes among these decisions as planned, everything else as it was done.
    fn undone(&self, freed: u32) -> Rc<Here> {
        let is_cause = |&i: &usize| self.belief.set.contains(Decision::ALL[i]);
        let mut change = [0.0; N];
        let mut causes = 0;
        for i in (0..N).filter(|i| freed >> i & 1 == 1).filter(is_cause) {
            let (down, up) = self.reach[i];
            change[i] = (-self.belief.offsets[i]).clamp(-down, up);
            causes |= 1 << i;
        }
        let mut known = self.known.borrow_mut();
        let here = known
            .entry(causes)
            .or_insert_with(|| Rc::new(self.here(change)));
        Rc::clone(here)
    }

    /// What is seen after a change, and its slopes there.
    fn here(&self, change: [f64; N]) -> Here {
        Here {
            slopes: slopes(&self.question.look(&self.with(&change))),
            moved: self.moved(&change),
            holds: self.holds(&change),
            change,
        }
    }

    /// Whether a change from here to `next` may hold, the model taken to be straight but for three
    /// tenths of every move.
    fn holds_straight(&self, here: &Here, next: &[f64; N]) -> bool {
        self.rooms.iter().all(|room| {
            let q = room.quantity.index();
            let step = here.change.iter().zip(next).zip(&here.slopes[q]);
            let step: f64 = step.map(|((a, n), slope)| slope * (n - a)).sum();
            let by = here.moved[q] + step;
            let slack = KEPT_CM + 0.3 * step.abs();
            room.up.is_none_or(|up| by <= up + slack)
                && room.down.is_none_or(|down| -by <= down + slack)
        })
    }

    /// The planner's step from here: a bowl between walls, which the walls' forces solve.
    fn step<const K: usize>(
        &self,
        members: &[usize; K],
        free: u32,
        here: &Here,
    ) -> Option<SVector<f64, K>> {
        let (slopes, moved, at) = (&here.slopes, &here.moved, &here.change);
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
            let (down, up) = self.reach[i];
            let mut slope = SVector::zeros();
            slope[k] = 1.0;
            if is_free(i) {
                gradient[k] += stiffness * (at[i] + off_plan);
                push(&mut walls, slope, up - at[i]);
                push(&mut walls, -slope, down + at[i]);
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
            if let Some(up) = room.up {
                push(&mut walls, slope, up - moved[q]);
            }
            if let Some(down) = room.down {
                push(&mut walls, -slope, down + moved[q]);
            }
        }
        lowest(hessian, &gradient, &walls, &mut Vec::new())
    }
}

fn slopes(seen: &Appearance<Dual<INPUTS>>) -> [[f64; N]; Quantity::COUNT] {
    std::array::from_fn(|q| {
        let dual = seen.get(Quantity::ALL[q]);
        std::array::from_fn(|i| dual.grad[i])
    })
}

fn push<const K: usize>(walls: &mut Vec<Wall<K>>, slope: SVector<f64, K>, bound: f64) {
    walls.push(Wall {
        slope,
        bound,
        give: LIMIT_GIVES,
    });
}
