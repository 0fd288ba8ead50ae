//! `sunbu plan`: how one person is best dressed in one garment.

use clap::ArgMatches;
use sunbu_core::dressing::{self, WaysOut, steps, worth};
use sunbu_words::Words;

use super::{AskedOne, asked_one};
use crate::answer::Answer;
use crate::input;
use crate::report::plan::{PlanReport, Planned};
use crate::report::text;
use crate::say;
use crate::seen_by;
use crate::trouble::Trouble;

/// Plans, and says it in words or as a document.
pub fn run(words: &Words, given: &ArgMatches) -> Answer {
    let json = given.get_flag("json");
    match answer(words, given, json) {
        Ok(answer) => answer,
        Err(troubles) => Answer::bad_input(words, &troubles, json),
    }
}

fn answer(words: &Words, given: &ArgMatches, json: bool) -> Result<Answer, Vec<Trouble>> {
    let AskedOne {
        subject,
        locks,
        asked,
    } = asked_one(given)?;
    let dresser = asked.case.dresser.as_ref();
    let hands = input::hands(dresser, &subject.body)?;
    let eyes = seen_by::asked(given)?;
    let (fitting, rules) = (&subject.fitting, &subject.rules);
    let plan = dressing::plan(fitting, rules, &locks);
    let mut ways_out = WaysOut::new(fitting, rules, &locks);
    let ways_out: Vec<_> = plan
        .missed()
        .map(|check| check.target.quantity)
        .map(|quantity| (quantity, ways_out.of(quantity)))
        .collect();
    let planned = Planned {
        subject: &subject,
        occasion: asked.occasion,
        standard: &asked.standard.name,
        locks: &locks,
        worth: &worth(fitting, rules),
        plan: &plan,
        ways_out: &ways_out,
        sights: &seen_by::sights(
            &eyes,
            (&subject.body, fitting),
            &plan.dressing,
            &plan.prediction,
        ),
        steps: &steps(&plan, &subject.body, &hands, |d| rules.way(d).hands),
        dresser: dresser.map(|dresser| dresser.name.as_str()),
    };
    let said = if json {
        text(&PlanReport::of(words, &planned))
    } else {
        say::plan::page(words, &planned)
    };
    Ok(match plan.missed().next() {
        None => Answer::Done(said),
        Some(_) => Answer::CannotBeMet(said),
    })
}
