//! `sunbu help`: commands, and topics that belong to no command alone.

use clap::ArgMatches;
use sunbu_core::body::BodyMeasure;
use sunbu_core::case::lock_range_cm;
use sunbu_core::dressing::{Decision, Occasion, Standard};
use sunbu_core::fault::{Area, Catalogue, Fault};
use sunbu_core::garment::Part;
use sunbu_core::photo::{Mark, View};
use sunbu_words::{Lang, Words};

use super::text;
use crate::answer::Answer;
use crate::cli;
use crate::page::Page;
use crate::trouble::Trouble;

/// The topics.
pub const TOPICS: [&str; 8] = [
    "case",
    "measures",
    "parts",
    "decisions",
    "standard",
    "photos",
    "marks",
    "faults",
];

/// Columns of a list's keys: the longest, and a blank.
const COLUMN: usize = 24;

/// Shows the help of the program, of a command, or of a topic.
pub fn run(words: &Words, given: &ArgMatches) -> Answer {
    let Some(asked) = text(given, "topic") else {
        return Answer::Done(cli::long_help(words, None).unwrap_or_default());
    };
    match topic(words, asked).or_else(|| cli::long_help(words, Some(asked))) {
        Some(help) => Answer::Done(help),
        None => {
            let trouble =
                Trouble::at("help", asked, "trouble-topic").with("known", TOPICS.join(", "));
            Answer::bad_input(words, &[trouble], false)
        }
    }
}

fn topic(words: &Words, name: &str) -> Option<String> {
    Some(match name {
        "case" => annotated_case(words.lang()).to_owned(),
        "measures" => measures(words),
        "parts" => parts(words),
        "decisions" => decisions(words),
        "standard" => standard(words),
        "photos" => words.get("topic-photos") + "\n",
        "marks" => marks(words),
        "faults" => faults(words),
        _ => return None,
    })
}

/// An example of a case file with everything explained beside it: it is a case file itself.
fn annotated_case(lang: Lang) -> &'static str {
    match lang {
        Lang::En => include_str!("../../../../examples/annotated.toml"),
        Lang::Ja => include_str!("../../../../examples/annotated.ja.toml"),
    }
}

/// One entry of a list: the key, the name, how it is taken, and what is taken for it.
fn entry(words: &Words, page: &mut Page, key: &str, name: &str, how: &str, range: (f64, f64)) {
    page.item(&format!("{key:<COLUMN$}"), name);
    let blank = " ".repeat(COLUMN);
    if !how.is_empty() {
        page.paragraph(&blank, how);
    }
    page.paragraph(&blank, &words.range(Some(range.0), Some(range.1)));
}

fn measures(words: &Words) -> String {
    let mut page = Page::new();
    page.paragraph("", &words.get("topic-measures"));
    page.gap();
    for measure in BodyMeasure::ALL.iter().copied() {
        let (name, how) = (words.body_measure(measure), words.body_measure_how(measure));
        entry(
            words,
            &mut page,
            measure.key(),
            &name,
            &how,
            measure.range_cm(),
        );
    }
    page.into_text()
}

fn parts(words: &Words) -> String {
    let mut page = Page::new();
    page.paragraph("", &words.get("topic-parts"));
    page.gap();
    for part in Part::ALL.iter().copied() {
        entry(
            words,
            &mut page,
            part.key(),
            &words.part(part),
            &words.part_how(part),
            part.range_cm(),
        );
    }
    page.into_text()
}

fn decisions(words: &Words) -> String {
    let mut page = Page::new();
    page.paragraph("", &words.get("topic-decisions"));
    page.gap();
    for decision in Decision::ALL.iter().copied() {
        let name = words.decision(decision);
        entry(
            words,
            &mut page,
            decision.key(),
            &name,
            "",
            lock_range_cm(decision),
        );
    }
    page.into_text()
}

/// The places to mark, side by side with the sides that show them.
fn marks(words: &Words) -> String {
    let mut page = Page::new();
    page.paragraph("", &words.get("topic-marks"));
    page.gap();
    for &mark in Mark::ALL {
        page.item(&format!("{:<COLUMN$}", mark.key()), &words.mark(mark));
        let blank = " ".repeat(COLUMN);
        page.paragraph(&blank, &words.mark_hint(mark));
        let sides = View::ALL.iter().filter(|view| mark.shows_in(**view));
        let sides: Vec<&str> = sides.map(|view| view.key()).collect();
        page.paragraph(&blank, &sides.join(", "));
    }
    page.into_text()
}

/// The faults that can be ticked as seen by eye, by area.
fn faults(words: &Words) -> String {
    let mut page = Page::new();
    page.paragraph("", &words.get("topic-faults"));
    for &area in Area::ALL {
        page.heading(&words.fault_area(area));
        let of_area = Fault::ALL.iter().copied();
        let of_area = of_area.filter(|fault| Catalogue::shipped().entry(*fault).area == area);
        for fault in of_area {
            page.item(
                &format!("{:<COLUMN$}", fault.key()),
                &words.fault_name(fault),
            );
            page.paragraph(&" ".repeat(COLUMN), &words.fault_sign(fault));
        }
    }
    page.into_text()
}

fn standard(words: &Words) -> String {
    let mut page = Page::new();
    page.paragraph("# ", &words.get("topic-standard"));
    for occasion in Occasion::ALL.iter().copied() {
        page.paragraph(
            "#   ",
            &format!("{:<12}{}", occasion.key(), words.occasion(occasion)),
        );
    }
    page.gap();
    page.into_text() + Standard::CUSTOMARY_TOML
}

#[cfg(test)]
mod tests {
    use super::*;
    use sunbu_core::case::CaseFile;

    #[test]
    fn the_annotated_case_reads_as_the_same_case_in_every_language() {
        let read = |lang| CaseFile::parse(annotated_case(lang)).expect("the example is a case");
        let (english, japanese) = (read(Lang::En), read(Lang::Ja));
        assert_eq!(english.person.measures, japanese.person.measures);
        assert_eq!(english.locks, japanese.locks);
        let sheets = |case: &CaseFile| -> Vec<_> {
            case.garments
                .iter()
                .map(|piece| piece.sheet.clone())
                .collect()
        };
        assert_eq!(sheets(&english), sheets(&japanese));
    }

    #[test]
    fn the_standard_shown_as_help_can_be_read_as_a_standard() {
        for &lang in Lang::ALL {
            let shown = standard(Words::of(lang));
            assert_eq!(Standard::parse(&shown), Ok(Standard::customary()));
        }
    }
}
