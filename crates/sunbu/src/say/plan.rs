//! A plan in words: what it is computed from, how the garment falls, wishes, ways out, steps.

use sunbu_core::body::BodyMeasure;
use sunbu_core::dressing::{Check, Given};
use sunbu_core::garment::Part;
use sunbu_core::measure::{Measured, Origin};
use sunbu_words::Words;

use crate::page::Page;
use crate::report::plan::Planned;
use crate::seen_by;

/// How many limits, rivals and ways out are named of each missed wish.
const NAMED: usize = 3;

/// The whole page.
pub fn page(words: &Words, planned: &Planned<'_>) -> String {
    let mut page = Page::new();
    head(words, &mut page, planned);
    computed_from(words, &mut page, planned);
    wishes(words, &mut page, planned);
    missed(words, &mut page, planned);
    seen_by::say(words, &mut page, planned.sights);
    locked(words, &mut page, planned);
    steps(words, &mut page, planned);
    page.into_text()
}

fn head(words: &Words, page: &mut Page, planned: &Planned<'_>) {
    let (person, garment) = (&planned.subject.person.name, &planned.subject.piece.name);
    let args = [("person", person.into()), ("garment", garment.into())];
    page.heading(&words.with("cli-title", &args));
    let occasion = words.occasion(planned.occasion);
    let standard = words.standard(planned.standard);
    let args = [
        ("occasion", (&occasion).into()),
        ("standard", (&standard).into()),
    ];
    page.paragraph("", &words.with("cli-under", &args));
    page.gap();
    let verdict = words.verdict(planned.worth.verdict);
    let reason = words.reason(planned.worth);
    let args = [("verdict", (&verdict).into()), ("reason", (&reason).into())];
    page.paragraph("", &words.with("cli-verdict", &args));
    let warnings = planned.subject.garment.warnings();
    let unusual = planned
        .subject
        .body
        .unlikely()
        .iter()
        .map(|u| words.unlikely(u));
    for text in unusual.chain(warnings.iter().map(|w| words.warning(w))) {
        page.item("! ", &text);
    }
}

/// What was taped and what was completed, of all that the model uses.
fn computed_from(words: &Words, page: &mut Page, planned: &Planned<'_>) {
    page.heading(&words.get("cli-from"));
    let mut given = |name: String, measured: Measured| {
        let value = words.length(measured.value_cm(), measured.sd_cm());
        let origin = words.origin(measured.origin());
        let args = [
            ("name", (&name).into()),
            ("value", (&value).into()),
            ("origin", (&origin).into()),
        ];
        // Said by a sign as well as by the word, so that a glance finds what to tape next.
        let sign = if measured.origin() == Origin::Taped {
            "  "
        } else {
            "~ "
        };
        page.item(sign, &words.with("cli-given", &args));
    };
    for known in Given::ALL.iter().copied() {
        if let Some(measure) = BodyMeasure::from_key(known.key()) {
            given(
                words.body_measure(measure),
                planned.subject.body.measure(measure),
            );
        }
    }
    for known in Given::ALL.iter().copied() {
        if let Some(part) = Part::from_key(known.key()) {
            given(words.part(part), planned.subject.garment.part(part));
        }
    }
}

fn wishes(words: &Words, page: &mut Page, planned: &Planned<'_>) {
    page.heading(&words.get("cli-wishes"));
    for check in &planned.plan.checks {
        let sign = if check.met() { "+ " } else { "x " };
        page.item(sign, &words.check(check));
    }
}

fn missed(words: &Words, page: &mut Page, planned: &Planned<'_>) {
    let mut missed = planned.plan.missed().peekable();
    if missed.peek().is_none() {
        return;
    }
    page.heading(&words.get("cli-missed"));
    for check in missed {
        why(words, page, planned, check);
    }
}

/// Why one wish is missed, and what would free it.
fn why(words: &Words, page: &mut Page, planned: &Planned<'_>, check: &Check) {
    let quantity = check.target.quantity;
    let (what, miss) = (words.quantity(quantity), words.check_miss(check));
    let args = [("what", (&what).into()), ("miss", (&miss).into())];
    page.item("x ", &words.with("cli-missed-what", &args));
    let mut list = |id: &str, texts: Vec<String>| {
        if texts.is_empty() {
            return;
        }
        page.paragraph("    ", &words.get(id));
        for text in texts.iter().take(NAMED) {
            page.item("    - ", text);
        }
    };
    list(
        "cli-held-by",
        check.binding.iter().map(|b| words.binding(b)).collect(),
    );
    list(
        "cli-rivals",
        check.rivals.iter().map(|r| words.rival(r)).collect(),
    );
    let ways = planned
        .ways_out
        .iter()
        .filter(|(q, _)| *q == quantity)
        .flat_map(|(_, ways)| ways);
    let ways: Vec<String> = ways.map(|way| words.way_out(way)).collect();
    if ways.is_empty() {
        page.paragraph("    ", &words.get("cli-no-way-out"));
    } else {
        list("cli-ways-out", ways);
    }
}

fn locked(words: &Words, page: &mut Page, planned: &Planned<'_>) {
    if planned.locks.is_empty() {
        return;
    }
    page.heading(&words.get("cli-locked"));
    for (&decision, &cm) in planned.locks {
        let (name, value) = (words.decision(decision), words.cm(cm));
        let args = [("name", (&name).into()), ("value", (&value).into())];
        page.item("= ", &words.with("cli-set", &args));
    }
}

fn steps(words: &Words, page: &mut Page, planned: &Planned<'_>) {
    page.heading(&words.get("cli-steps"));
    let hands = match planned.dresser {
        Some(name) => words.with("cli-hands-of", &[("name", name.into())]),
        None => words.get("cli-own-hands"),
    };
    page.paragraph("", &hands);
    let mut cautions = Vec::new();
    for (at, step) in planned.steps.iter().enumerate() {
        page.gap();
        page.item(&format!("{:>2}. ", at + 1), &words.step_title(step.id));
        page.paragraph("    ", &words.step_text(step.id));
        for number in &step.numbers {
            page.item("    - ", &words.number(number));
        }
        for &caution in step.cautions {
            // Said where it is first needed: the same three lines at every step are not read.
            if !cautions.contains(&caution) {
                cautions.push(caution);
                page.item("    ! ", &words.caution(caution));
            }
        }
    }
    page.gap();
    page.paragraph("", &words.cautions_note());
}
