//! What to change and how to practise it, and the message that says so to a student.

use sunbu_core::check::{Advice, Good, Report};
use sunbu_core::dressing::{Caution, Change, Check, Rules, cautions};
use sunbu_core::fault::{Catalogue, Fault};

use crate::Words;
use crate::plan::sentence;

/// One thing to change, ready to stand on a page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Advised {
    /// What to do, without a full stop: “Set the hem 4 cm lower”.
    pub title: String,
    /// Why, in a sentence or two.
    pub why: String,
    /// What helps on the spot; none where only doing it anew does.
    pub now: Option<String>,
    /// How to practise it.
    pub practise: String,
    /// What to mind with it.
    pub cautions: Vec<Caution>,
}

impl Words {
    /// The things to change of a check, first things first.
    pub fn advised(&self, report: &Report) -> Vec<Advised> {
        let advice = report.advice.iter();
        advice.map(|one| self.advised_one(one, report)).collect()
    }

    fn advised_one(&self, advice: &Advice, report: &Report) -> Advised {
        match advice {
            Advice::Way => Advised {
                title: self.get("check-way-title"),
                why: self.get(if all_mirrored(report) {
                    "check-way-why-mirrored"
                } else {
                    "check-way-why"
                }),
                now: None,
                practise: self.get("check-way-practise"),
                cautions: Vec::new(),
            },
            Advice::Change(change) => Advised {
                title: self.todo(change),
                why: self.why_of_change(change, report),
                now: None,
                practise: self.practise(change.decision),
                cautions: cautions(change.step).to_vec(),
            },
            Advice::Fault(fault) => Advised {
                title: self.fault_name(*fault),
                why: self.why_of_fault(*fault, report),
                now: Some(self.fault_now(*fault)),
                practise: self.fault_next(*fault),
                cautions: Catalogue::shipped().entry(*fault).cautions.clone(),
            },
        }
    }

    fn why_of_change(&self, change: &Change, report: &Report) -> String {
        let mut faults = self.cures(change, &report.diagnosis);
        if faults.is_empty() {
            // It makes room for the others; what it puts right is how it was done.
            faults.push(self.deed(change.decision, change.from - change.to));
        }
        let faults = sentence(&self.listed(&faults));
        self.with("check-why-cures", &[("faults", (&faults).into())])
    }

    fn why_of_fault(&self, fault: Fault, report: &Report) -> String {
        let measured = report.skews.iter();
        let mut measured = measured.filter(|s| s.is_fault() && s.fault() == Some(fault));
        let sign = match measured.next() {
            Some(skewed) => {
                let line = sentence(&self.skew_line(skewed));
                self.with("check-why-cures", &[("faults", (&line).into())])
            }
            None => self.fault_sign(fault),
        };
        self.sentences(&[sign, self.fault_causes(fault)])
    }

    /// The cautions of all advice, each once, in the order of their list.
    pub fn cautions_of(advised: &[Advised]) -> Vec<Caution> {
        let all = Caution::ALL.iter().copied();
        all.filter(|c| advised.iter().any(|a| a.cautions.contains(c)))
            .collect()
    }

    /// The thing that is well done: value and range.
    pub fn good(&self, good: &Good, rules: &Rules) -> String {
        let what = sentence(&self.quantity_short(good.quantity));
        let Some(target) = rules.target(good.quantity) else {
            return what;
        };
        let check = Check {
            target: target.clone(),
            value: good.cm,
            interval_90: good.interval_90,
            miss: 0.0,
            binding: Vec::new(),
            rivals: Vec::new(),
        };
        let (value, range) = (self.check_value(&check), self.target_range(target));
        let args = [
            ("what", (&what).into()),
            ("value", (&value).into()),
            ("range", (&range).into()),
        ];
        self.with("check-good", &args)
    }

    /// A plain message to send: one good thing, at most three things to change, why, and how to
    /// practise, with every caution that belongs to it. It names amounts to change and no measure of
    /// the body.
    ///
    /// `name` is whom it is for; without one it greets without a name.
    pub fn message(&self, report: &Report, name: Option<&str>, photos: usize) -> String {
        let mut parts: Vec<String> = Vec::new();
        let mut opening = vec![match name.map(str::trim).filter(|n| !n.is_empty()) {
            Some(name) => self.with("message-hello", &[("name", name.into())]),
            None => self.get("message-hello-all"),
        }];
        if photos > 0 {
            opening.push(self.with("message-thanks", &[("count", photos.into())]));
        }
        parts.push(opening.join("\n"));
        if !report.wrong_way.is_empty() {
            parts.push(self.get(if all_mirrored(report) {
                "message-way-mirrored"
            } else {
                "message-way"
            }));
        }
        if let Some(good) = &report.good {
            let what = self.quantity_short(good.quantity);
            parts.push(self.with("message-good", &[("what", (&what).into())]));
        }
        // The way round is said above, with what the dead have to do with it.
        let asked: Vec<Advised> = report
            .advice
            .iter()
            .filter(|one| !matches!(one, Advice::Way))
            .map(|one| self.advised_one(one, report))
            .collect();
        if asked.is_empty() {
            parts.extend(self.nothing_to_ask(report));
        } else {
            parts.push(self.with("message-changes", &[("count", asked.len().into())]));
        }
        for (place, one) in asked.iter().enumerate() {
            parts.push(self.message_one(place + 1, one));
        }
        if report.more > 0 {
            parts.push(self.get("message-more"));
        }
        // All of them: whoever reads the message has no page with the steps beside it.
        let minded = Self::cautions_of(&asked);
        parts.extend(minded.iter().map(|&caution| self.caution(caution)));
        if !minded.is_empty() {
            parts.push(self.cautions_note());
        }
        parts.push(self.get("message-bye"));
        parts.join("\n\n") + "\n"
    }

    fn message_one(&self, place: usize, one: &Advised) -> String {
        let number = place.to_string();
        let args = [("number", (&number).into()), ("title", (&one.title).into())];
        let mut lines = vec![self.with("message-one", &args)];
        lines.push(self.with("check-advice-why", &[("why", (&one.why).into())]));
        if let Some(now) = &one.now {
            lines.push(self.with("check-advice-now", &[("how", now.into())]));
        }
        lines.push(self.with("message-practise", &[("how", (&one.practise).into())]));
        lines.join("\n")
    }
}

/// Whether each photo that shows right over left was said to come from a mirror.
fn all_mirrored(report: &Report) -> bool {
    report.wrong_way.iter().all(|way| way.mirrored)
}
