//! What cannot be true of one garment, and what is true but will trouble its wearer.

use std::fmt;

use serde::ser::SerializeStruct;
use serde::{Serialize, Serializer};

use super::completion::Completion;
use super::rules::{self, BU_CM, SUN_CM};
use super::{Part, Sheet};
use crate::problem::{Fault, Problem, fill_in};
use crate::source::{self, Source};

/// How far sums of taped parts may be off, in cm: the slips of three tapes (chosen), or twice
/// their joint deviation where a larger one was said.
const SLACK_CM: f64 = 1.0;

/// Something unusual about a garment that does not stop a plan but the dresser should know.
#[derive(Debug, Clone, PartialEq)]
pub struct Warning {
    /// Short name, the end of its message id `warning-…`.
    pub code: &'static str,
    /// The sentence in English; `{name}` stands for the argument of that name.
    pub english: &'static str,
    /// The numbers in it, in centimetres.
    pub args: Vec<(&'static str, f64)>,
    /// The parts it is about.
    pub parts: Vec<Part>,
    /// Where the limit is published.
    pub sources: &'static [Source],
}

impl fmt::Display for Warning {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str(&fill_in(self.english, &self.args))
    }
}

/// As JSON: `code`, the English `message`, `parts`, `sources`.
impl Serialize for Warning {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut object = serializer.serialize_struct("Warning", 4)?;
        object.serialize_field("code", self.code)?;
        object.serialize_field("message", &self.to_string())?;
        object.serialize_field("parts", &self.parts)?;
        object.serialize_field("sources", self.sources)?;
        object.end()
    }
}

/// Collects the contradictions of one sheet.
struct Collector<'a> {
    sheet: &'a Sheet,
    problems: Vec<Problem>,
}

impl Collector<'_> {
    fn cm(&self, part: Part) -> Option<f64> {
        self.sheet
            .parts
            .get(&part)
            .map(|reading| reading.length.cm())
    }

    /// What a sum of these parts may be off by, in cm.
    fn slack(&self, parts: &[Part]) -> f64 {
        let variance: f64 = parts
            .iter()
            .filter_map(|part| self.sheet.parts.get(part)?.sd)
            .map(|sd| sd.cm() * sd.cm())
            .sum();
        SLACK_CM.max(2.0 * variance.sqrt())
    }

    /// Reports the contradiction at the first of `parts` that was taped, naming the others.
    fn report(
        &mut self,
        code: &'static str,
        english: &'static str,
        args: &[(&'static str, f64)],
        parts: &[Part],
    ) {
        let mut taped = parts
            .iter()
            .filter(|part| self.sheet.parts.contains_key(part));
        let Some(at) = taped.next() else { return };
        let other = taped.map(|part| part.key().to_owned()).collect();
        let typed = self.sheet.parts[at].to_string();
        self.problems.push(Problem::new(
            at.key(),
            typed,
            Fault::Contradiction {
                code,
                english,
                args: args.to_vec(),
                other,
            },
        ));
    }
}

/// Contradictions among the taped parts alone.
pub(super) fn contradictions(sheet: &Sheet) -> Vec<Problem> {
    use Part::{
        Aizumahaba, Furi, Katahaba, Okumihaba, Sodeguchi, Sodehaba, Sodetake, Sodetsuke, Yuki,
    };
    let mut found = Collector {
        sheet,
        problems: Vec::new(),
    };
    if let (Some(yuki), Some(shoulder), Some(sleeve)) =
        (found.cm(Yuki), found.cm(Katahaba), found.cm(Sodehaba))
        && (yuki - shoulder - sleeve).abs() > found.slack(&[Yuki, Katahaba, Sodehaba])
    {
        found.report(
            "yuki-split",
            "yuki is {yuki} cm but katahaba and sodehaba add up to {sum} cm; tape all three \
             again, or leave the doubtful one out",
            &[("yuki", yuki), ("sum", shoulder + sleeve)],
            &[Yuki, Katahaba, Sodehaba],
        );
    }
    if let (Some(drop), Some(joint), Some(furi)) =
        (found.cm(Sodetake), found.cm(Sodetsuke), found.cm(Furi))
        && (drop - joint - furi).abs() > found.slack(&[Sodetake, Sodetsuke, Furi])
    {
        found.report(
            "sodetake-split",
            "sodetake is {sodetake} cm but sodetsuke and furi add up to {sum} cm; tape all \
             three again, or leave the doubtful one out",
            &[("sodetake", drop), ("sum", joint + furi)],
            &[Sodetake, Sodetsuke, Furi],
        );
    } else if let (Some(drop), Some(joint)) = (found.cm(Sodetake), found.cm(Sodetsuke))
        && joint > drop + found.slack(&[Sodetake, Sodetsuke])
    {
        found.report(
            "sodetsuke-over-sodetake",
            "sodetsuke {sodetsuke} cm is longer than the whole sleeve, sodetake {sodetake} cm; \
             tape both again from the shoulder ridge",
            &[("sodetsuke", joint), ("sodetake", drop)],
            &[Sodetsuke, Sodetake],
        );
    }
    if let (Some(mouth), Some(drop)) = (found.cm(Sodeguchi), found.cm(Sodetake))
        && mouth > drop + found.slack(&[Sodeguchi, Sodetake])
    {
        found.report(
            "sodeguchi-over-sodetake",
            "sodeguchi {sodeguchi} cm is longer than the whole sleeve, sodetake {sodetake} cm; \
             tape both again from the shoulder ridge",
            &[("sodeguchi", mouth), ("sodetake", drop)],
            &[Sodeguchi, Sodetake],
        );
    }
    if let (Some(upper), Some(lower)) = (found.cm(Aizumahaba), found.cm(Okumihaba))
        && upper > lower + found.slack(&[Aizumahaba, Okumihaba])
    {
        found.report(
            "aizuma-over-okumi",
            "aizumahaba {aizumahaba} cm, at the collar end, is wider than okumihaba \
             {okumihaba} cm, at the hem; the overlap panel narrows upwards, so the two may \
             have been exchanged",
            &[("aizumahaba", upper), ("okumihaba", lower)],
            &[Aizumahaba, Okumihaba],
        );
    }
    found.problems
}

/// Contradictions that show only in the completed garment: a collar end too high, and sums
/// and differences that no garment has.
pub(super) fn completed_contradictions(sheet: &Sheet, whole: &Completion) -> Vec<Problem> {
    use Part::{
        Erishita, Furi, Katahaba, Mitake, Okumisagari, Sodehaba, Sodetake, Sodetsuke, Yuki,
    };
    let mut found = Collector {
        sheet,
        problems: Vec::new(),
    };
    let back = whole.mitake_back.cm;
    let shoulder = whole.mitake_shoulder.cm;
    let collar_end = whole.part(Erishita).cm;
    let okumi_point = shoulder - whole.part(Okumisagari).cm;
    if collar_end >= back {
        found.report(
            "collar-end-above-garment",
            "the collar would end {erishita} cm above the hem, but the back is only \
             {mitake} cm long; tape erishita from the hem along the front edge to the end of \
             the collar",
            &[("erishita", collar_end), ("mitake", back)],
            &[Erishita, Mitake],
        );
    } else if collar_end > okumi_point {
        found.report(
            "collar-end-above-okumi",
            "the collar would end {erishita} cm above the hem, above the point of the okumi \
             at {okumi} cm; tape erishita from the hem along the front edge, and mitake again",
            &[("erishita", collar_end), ("okumi", okumi_point)],
            &[Erishita, Mitake, Okumisagari],
        );
    }
    for (part, basis) in [
        (Yuki, [Katahaba, Sodehaba]),
        (Katahaba, [Yuki, Sodehaba]),
        (Sodehaba, [Yuki, Katahaba]),
        (Sodetake, [Sodetsuke, Furi]),
        (Sodetsuke, [Furi, Sodetake]),
    ] {
        let value = whole.part(part);
        let (low, high) = part.range_cm();
        if value.rule.is_some() && !(low..=high).contains(&value.cm) {
            let (code, english) = match part {
                Yuki => (
                    "yuki-impossible",
                    "katahaba and sodehaba make a yuki of {value} cm; {low} to {high} cm is \
                     possible",
                ),
                Katahaba => (
                    "katahaba-impossible",
                    "yuki and sodehaba leave a katahaba of {value} cm; {low} to {high} cm is \
                     possible",
                ),
                Sodehaba => (
                    "sodehaba-impossible",
                    "yuki and katahaba leave a sodehaba of {value} cm; {low} to {high} cm is \
                     possible",
                ),
                Sodetsuke => (
                    "sodetsuke-impossible",
                    "furi and sodetake leave a sodetsuke of {value} cm; {low} to {high} cm is \
                     possible",
                ),
                _ => (
                    "sodetake-impossible",
                    "sodetsuke and furi make a sodetake of {value} cm; {low} to {high} cm is \
                     possible",
                ),
            };
            let args = [("value", value.cm), ("low", low), ("high", high)];
            found.report(code, english, &args, &basis);
        }
    }
    found.problems
}

/// What the dresser should know of a garment before wearing it.
pub(super) fn warnings(whole: &Completion) -> Vec<Warning> {
    let cm = |part| whole.part(part).cm;
    let taped = |part| whole.part(part).rule.is_none();
    let mut found = Vec::new();
    let drag = cm(Part::Katahaba) - cm(Part::Ushirohaba);
    // A completed shoulder or back is too unsure for a limit of millimetres.
    let shoulder_known = taped(Part::Katahaba) || taped(Part::Yuki) && taped(Part::Sodehaba);
    if shoulder_known && taped(Part::Ushirohaba) {
        let args = vec![
            ("difference", drag),
            ("katahaba", cm(Part::Katahaba)),
            ("ushirohaba", cm(Part::Ushirohaba)),
        ];
        let parts = vec![Part::Katahaba, Part::Ushirohaba];
        if drag > SUN_CM {
            found.push(Warning {
                code: "shoulder-drag",
                english: "the shoulder is {difference} cm wider than the back panel; over \
                          3.8 cm the allowance inside the side seam drags",
                args,
                parts,
                sources: &[source::S6, source::S22],
            });
        } else if drag > 8.0 * BU_CM {
            found.push(Warning {
                code: "shoulder-drag-slight",
                english: "the shoulder is {difference} cm wider than the back panel; up to \
                          3 cm is best, 3.8 cm still good",
                args,
                parts,
                sources: &[source::S6, source::S22],
            });
        }
    }
    if taped(Part::Erishita) && cm(Part::Erishita) > rules::ERISHITA_CEILING_CM + SLACK_CM {
        found.push(Warning {
            code: "erishita-long",
            english: "the collar ends {erishita} cm above the hem, over the customary 83 cm; \
                      the waist tie may miss it, and then the front does not settle",
            args: vec![("erishita", cm(Part::Erishita))],
            parts: vec![Part::Erishita],
            sources: &[source::S9, source::S14, source::S17],
        });
    }
    if taped(Part::Dakihaba) {
        let difference = cm(Part::Dakihaba) - cm(Part::Maehaba);
        let args = vec![
            ("dakihaba", cm(Part::Dakihaba)),
            ("maehaba", cm(Part::Maehaba)),
        ];
        let parts = vec![Part::Dakihaba, Part::Maehaba];
        // Published: maehaba less 4 bu to the maehaba (S16), kept within 3 bu of it (S6c).
        if difference > 3.0 * BU_CM {
            found.push(Warning {
                code: "dakihaba-wide",
                english: "dakihaba {dakihaba} cm is wide for a maehaba of {maehaba} cm; the \
                          collar may bag at the chest",
                args,
                parts,
                sources: &[source::S6C, source::S17B],
            });
        } else if difference < -(4.0 * BU_CM + SLACK_CM) {
            found.push(Warning {
                code: "dakihaba-narrow",
                english: "dakihaba {dakihaba} cm is narrow for a maehaba of {maehaba} cm; the \
                          collar may not settle",
                args,
                parts,
                sources: &[source::S16, source::F16],
            });
        }
    }
    let finished = cm(Part::Kurikoshi) + cm(Part::Tsukekomi);
    if taped(Part::Kurikoshi) && finished > SUN_CM + SLACK_CM {
        found.push(Warning {
            code: "neck-deep",
            english: "the neck opening sits {finished} cm behind the shoulder ridge, kurikoshi \
                      and tsukekomi together; up to 3.8 cm is customary",
            args: vec![("finished", finished)],
            parts: vec![Part::Kurikoshi, Part::Tsukekomi],
            sources: &[source::S21],
        });
    }
    found
}
