//! What a standard may hold: finite numbers of a body's size, ranges that are not empty, a usual
//! way for everything.
//!
//! A standard is typed by people, in a form or as TOML, and drives every plan: a number that is
//! none, or as large as a house, must be told at the border and never reach the planner.

use super::decision::Decision;
use super::quantity::Quantity;
use super::standard::{Amount, Habit, Occasion, Standard, Wish};
use crate::problem::{Fault, Problem};

/// Farthest a bound or usual value may lie from zero, in centimetres: above the tallest person.
pub const MOST_CM: f64 = 250.0;

/// Heaviest weight of a wish: a hundred times that of an ordinary one.
pub const MOST_WEIGHT: f64 = 100.0;

/// Least and greatest spread, of the usual way and of hands, in centimetres.
pub const SPREAD_CM: (f64, f64) = (0.01, 100.0);

/// Statures for which an amount is looked at, in centimetres: the small, the middling, the tall.
const STATURES: [f64; 3] = [130.0, 160.0, 190.0];

/// Everything that is wrong with a standard, each at its place in the TOML text.
pub(super) fn problems(standard: &Standard) -> Vec<Problem> {
    let mut out = Vec::new();
    for (quantity, wish) in &standard.targets {
        check_wish(&mut out, &format!("targets.{}", quantity.key()), wish);
    }
    for &decision in Decision::ALL {
        let place = format!("usual.{}", decision.key());
        match standard.usual.get(&decision) {
            None => out.push(Problem::new(place, "", Fault::Missing)),
            Some(habit) => check_habit(&mut out, &place, habit),
        }
    }
    for &occasion in Occasion::ALL {
        let place = format!("occasions.{}", occasion.key());
        let Some(rules) = standard.occasions.get(&occasion) else {
            out.push(Problem::new(place, "", Fault::Missing));
            continue;
        };
        for (quantity, wish) in &rules.targets {
            check_wish(&mut out, &wish_place(&place, *quantity), wish);
        }
        for &quantity in &rules.without {
            if rules.targets.contains_key(&quantity) {
                let fault = Fault::Contradiction {
                    code: "wish-and-without",
                    english: "a wish of the occasion stands under this name, too; leave one of \
                              them out",
                    args: Vec::new(),
                    other: vec![wish_place(&place, quantity)],
                };
                let place = format!("{place}.without");
                out.push(Problem::new(place, quantity.key(), fault));
            }
        }
        for (decision, change) in &rules.usual {
            let place = format!("{place}.usual.{}.plus", decision.key());
            let sane = check_amount(&mut out, &place, Some(change.plus));
            if let Some(habit) = standard.usual.get(decision).filter(|_| sane) {
                check_usual(&mut out, &place, change.plus, habit);
            }
        }
    }
    out
}

fn wish_place(place: &str, quantity: Quantity) -> String {
    format!("{place}.targets.{}", quantity.key())
}

/// One number within its bounds, or a problem; not a number is never within.
fn within(out: &mut Vec<Problem>, place: &str, value: f64, (low, high): (f64, f64)) -> bool {
    let good = (low..=high).contains(&value);
    if !good {
        let fault = Fault::OutOfRange {
            low_cm: low,
            high_cm: high,
        };
        out.push(Problem::new(place, value.to_string(), fault));
    }
    good
}

/// An amount that every stature makes a length, or a problem.
fn check_amount(out: &mut Vec<Problem>, place: &str, amount: Option<Amount>) -> bool {
    let Some(amount) = amount else { return true };
    let wrong = STATURES
        .map(|stature| amount.resolve(stature))
        .into_iter()
        .find(|cm| !(-MOST_CM..=MOST_CM).contains(cm));
    wrong.is_none_or(|cm| within(out, place, cm, (-MOST_CM, MOST_CM)))
}

fn check_wish(out: &mut Vec<Problem>, place: &str, wish: &Wish) {
    let low = check_amount(out, &format!("{place}.low"), wish.low);
    let high = check_amount(out, &format!("{place}.high"), wish.high);
    if let (Some(from), Some(to), true) = (wish.low, wish.high, low && high) {
        for stature in STATURES {
            if check_order(out, place, from.resolve(stature), to.resolve(stature)) {
                break;
            }
        }
    }
    if !(0.0..=MOST_WEIGHT).contains(&wish.weight) {
        let fault = Fault::Contradiction {
            code: "weight-range",
            english: "a weight lies from 0 to {most}",
            args: vec![("most", MOST_WEIGHT)],
            other: Vec::new(),
        };
        out.push(Problem::new(
            format!("{place}.weight"),
            wish.weight.to_string(),
            fault,
        ));
    }
}

fn check_habit(out: &mut Vec<Problem>, place: &str, habit: &Habit) {
    let most = (-MOST_CM, MOST_CM);
    let low = within(out, &format!("{place}.low"), habit.low, most);
    let high = within(out, &format!("{place}.high"), habit.high, most);
    let ordered = low && high && !check_order(out, place, habit.low, habit.high);
    within(out, &format!("{place}.spread"), habit.spread, SPREAD_CM);
    within(out, &format!("{place}.hands"), habit.hands, SPREAD_CM);
    let by_cloth = habit.by_cloth.map(|by| {
        [
            ("soft", by.soft),
            ("cotton", by.cotton),
            ("stiff", by.stiff),
        ]
        .map(|(name, cm)| (format!("{place}.by_cloth.{name}"), Amount::Fixed(cm)))
    });
    let plus = habit.plus.map(|amount| (format!("{place}.plus"), amount));
    for (place, amount) in plus.into_iter().chain(by_cloth.into_iter().flatten()) {
        if check_amount(out, &place, Some(amount)) && ordered {
            check_usual(out, &place, amount, habit);
        }
    }
}

/// Tells a range that is empty; whether it is.
fn check_order(out: &mut Vec<Problem>, place: &str, low: f64, high: f64) -> bool {
    let empty = low > high;
    if empty {
        let fault = Fault::Contradiction {
            code: "range-empty",
            english: "the least, {low} cm, lies above the most, {high} cm; exchange them or \
                      leave one out",
            args: vec![("low", low), ("high", high)],
            other: Vec::new(),
        };
        out.push(Problem::new(place, "", fault));
    }
    empty
}

/// Tells a usual value outside its own limits, which no plan could keep.
///
/// Looked at for the middling stature: at the ends a value in proportion is held by its limits.
fn check_usual(out: &mut Vec<Problem>, place: &str, usual: Amount, habit: &Habit) {
    let cm = usual.resolve(STATURES[1]);
    if !(habit.low..=habit.high).contains(&cm) {
        let fault = Fault::Contradiction {
            code: "usual-outside",
            english: "the usual value, {usual} cm, lies outside its limits of {low} to {high} cm; \
                      change it or the limits",
            args: vec![("usual", cm), ("low", habit.low), ("high", habit.high)],
            other: Vec::new(),
        };
        out.push(Problem::new(place, cm.to_string(), fault));
    }
}
