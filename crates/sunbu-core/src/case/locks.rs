//! Locks: the decisions that the dresser has taken herself, as typed.

use std::collections::BTreeSet;

use super::MAX_PROBLEMS;
use super::fields::{Fields, Reader};
use crate::dressing::{Decision, Locks};
use crate::problem::{Fault, Problem};

/// Reads locked decisions from form fields: a length at a decision's key locks it, an empty field
/// leaves it to the planner. Lengths may be below zero where the decision may.
///
/// # Errors
/// Every problem of every field at once: unknown names, texts that are no length, lengths outside
/// [`lock_range_cm`].
pub fn read_locks(fields: &Fields) -> Result<Locks, Vec<Problem>> {
    locks(fields, &BTreeSet::new())
}

pub(super) fn locks(fields: &Fields, broken: &BTreeSet<String>) -> Result<Locks, Vec<Problem>> {
    let mut reader = Reader::new(fields, broken);
    let mut locks = Locks::new();
    let mut unknown = 0;
    for (field, typed) in reader.decisions() {
        let Some(decision) = Decision::from_key(field) else {
            unknown += 1;
            if unknown > MAX_PROBLEMS {
                break; // garbage has endless names
            }
            let known = Decision::ALL.iter().map(|d| d.key().to_owned()).collect();
            reader.push(Problem::new(field, typed, Fault::UnknownField { known }));
            continue;
        };
        if typed.trim().is_empty() {
            continue;
        }
        let Some(cm) = reader.signed_cm(field, typed) else {
            continue;
        };
        let (low_cm, high_cm) = lock_range_cm(decision);
        if (low_cm..=high_cm).contains(&cm) {
            locks.insert(decision, cm);
        } else {
            reader.push(Problem::new(
                field,
                typed,
                Fault::OutOfRange { low_cm, high_cm },
            ));
        }
    }
    let problems = reader.problems();
    if problems.is_empty() {
        Ok(locks)
    } else {
        Err(problems)
    }
}

/// Lowest and highest value at which a decision may be locked, in centimetres.
///
/// Chosen wide: what hands can do on this person is for the standard's limits to say, and a lock
/// may go beyond them. This keeps out slips of the pen and wrong units.
pub fn lock_range_cm(decision: Decision) -> (f64, f64) {
    match decision {
        Decision::KoshihimoBack | Decision::KoshihimoFront | Decision::ObiLowerEdge => {
            (20.0, 160.0)
        }
        Decision::HemHeight => (-20.0, 80.0),
        Decision::BackSeamHip | Decision::BackSeamTop => (-30.0, 30.0),
        Decision::UwamaeRaise | Decision::ShitamaeRaise => (-10.0, 60.0),
        Decision::TakeUpFront
        | Decision::TakeUpRight
        | Decision::TakeUpBack
        | Decision::DrumHeight
        | Decision::TareLength => (0.0, 60.0),
        Decision::ShitamaeFoldBack
        | Decision::NapeDrop
        | Decision::JubanOverlap
        | Decision::KimonoOverlap
        | Decision::ObiageShow => (0.0, 30.0),
        Decision::WaistPadding | Decision::HipPadding => (0.0, 15.0),
    }
}
