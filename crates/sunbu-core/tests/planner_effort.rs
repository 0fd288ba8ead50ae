//! How much work a plan is: counted in steps, which are the same on every machine.

use std::collections::BTreeMap;

use sunbu_core::demo;
use sunbu_core::dressing::{Fitting, Occasion, Standard, solve};

/// Half as many again as the longest search when this was written, 38 steps for all its starts. A
/// step takes some 15 microseconds, so this many are still a millisecond.
const MOST_STEPS: usize = 60;

#[test]
fn a_plan_takes_a_few_dozen_steps_for_everybody_in_everything() {
    let people = demo::people().unwrap_or_else(|problems| panic!("{problems:#?}"));
    let garments = demo::garments().unwrap_or_else(|problems| panic!("{problems:#?}"));
    let standard = Standard::customary();
    let mut steps = BTreeMap::new();
    for person in &people {
        let body = person.en.body().expect("demo people complete");
        for garment in &garments {
            let whole = garment.en.garment().expect("demo garments complete");
            let fitting = Fitting::new(&body, &whole);
            // Occasions in turn: all of them everywhere take no longer, and five times the time here.
            let occasion = Occasion::ALL[steps.len() % Occasion::COUNT];
            let rules = standard.rules(occasion, &body, whole.cloth());
            let taken = solve(&fitting, &rules).steps;
            steps.insert((&person.key, &garment.key, occasion.key()), taken);
        }
    }
    let longest = steps.iter().max_by_key(|(_, taken)| **taken);
    let (case, most) = longest.expect("there are plans");
    println!(
        "{} plans, the longest takes {most} steps: {case:?}",
        steps.len()
    );
    assert!(
        *most <= MOST_STEPS,
        "{case:?}: {most} steps, more than {MOST_STEPS}"
    );
}
