//! A whole check in words: sections in the order in which they are read.

use sunbu_core::check::{Report, Skewed};
use sunbu_core::dressing::{Decision, Rules};
use sunbu_core::fault::{Fault, Finding as Row};

use crate::{Advised, Words};

/// One part of a report.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Section {
    /// Its heading.
    pub title: String,
    /// What it says; at least one line.
    pub lines: Vec<String>,
}

impl Words {
    /// Everything that a check says, the most needed first; sections with nothing to say are left
    /// out.
    pub fn report(&self, report: &Report, rules: &Rules) -> Vec<Section> {
        let diagnosis = &report.diagnosis;
        let advised = self.advised(report);
        let mut out = Vec::new();
        let mut add = |heading: &str, lines: Vec<String>| {
            if !lines.is_empty() {
                let title = self.get(heading);
                out.push(Section { title, lines });
            }
        };
        let lines = |found: &[sunbu_core::dressing::Finding], say: &dyn Fn(&_) -> String| {
            found.iter().map(say).collect::<Vec<String>>()
        };
        add(
            "check-h-way",
            self.wrong_way(&report.wrong_way).into_iter().collect(),
        );
        add("check-h-advice", self.advice_lines(report, &advised));
        let is_read = !report.observed.quantities().is_empty();
        if is_read {
            add("check-h-good", vec![self.good_line(report, rules)]);
        }
        let mut faults = lines(&diagnosis.faults, &|f| self.finding(f, rules));
        if !is_read {
            faults.push(self.get("check-nothing-read"));
        } else if faults.is_empty() {
            faults.push(self.get("check-no-faults"));
        }
        add("check-h-faults", faults);
        let perhaps = |f: &_| {
            let line = self.finding(f, rules);
            self.with("check-perhaps", &[("line", (&line).into())])
        };
        add("check-h-perhaps", lines(&diagnosis.perhaps, &perhaps));
        add("check-h-causes", self.rows(report));
        let doubts = diagnosis.doubts.iter();
        add(
            "check-h-doubts",
            doubts.map(|d| self.doubt(d, diagnosis)).collect(),
        );
        add("check-h-correction", self.corrections(report));
        add("check-h-skews", self.skew_lines(report));
        add(
            "check-h-differences",
            lines(&diagnosis.differences, &|f| self.difference(f)),
        );
        add("check-h-unseen", self.unseen_lines(report));
        add("check-h-hidden", self.hidden(report).into_iter().collect());
        let doubtful = report.doubtful.iter();
        add(
            "check-h-doubtful",
            doubtful.map(|&(v, m)| self.doubtful(v, m)).collect(),
        );
        let cautions = Self::cautions_of(&advised);
        let mut minded: Vec<String> = cautions.iter().map(|&c| self.caution(c)).collect();
        if !minded.is_empty() {
            minded.push(self.cautions_note());
        }
        add("check-h-cautions", minded);
        out
    }

    /// The thing well done, or that there is none yet.
    pub fn good_line(&self, report: &Report, rules: &Rules) -> String {
        match &report.good {
            Some(good) => self.good(good, rules),
            None => self.get("check-nothing-good"),
        }
    }

    fn advice_lines(&self, report: &Report, advised: &[Advised]) -> Vec<String> {
        if advised.is_empty() {
            return vec![self.nothing_to_change(report)];
        }
        let mut lines: Vec<String> = Vec::new();
        for (place, one) in advised.iter().enumerate() {
            let number = (place + 1).to_string();
            let mut said = vec![self.with(
                "message-one",
                &[("number", (&number).into()), ("title", (&one.title).into())],
            )];
            said.push(self.with("check-advice-why", &[("why", (&one.why).into())]));
            if let Some(now) = &one.now {
                said.push(self.with("check-advice-now", &[("how", now.into())]));
            }
            said.push(self.with("check-advice-next", &[("how", (&one.practise).into())]));
            lines.push(self.sentences(&said));
        }
        lines.extend(self.more(report));
        lines
    }

    /// How many more things there would be to change; none when all were told.
    pub fn more(&self, report: &Report) -> Option<String> {
        (report.more > 0).then(|| self.with("check-more", &[("count", report.more.into())]))
    }

    /// Measured causes and what the eye saw, in dressing order, then what nothing explains.
    pub fn rows(&self, report: &Report) -> Vec<String> {
        let diagnosis = &report.diagnosis;
        let mut lines: Vec<String> = report
            .rows
            .iter()
            .filter_map(|row| match row {
                Row::Measured(place) => {
                    let cause = diagnosis.causes.get(*place)?;
                    Some(self.cause_explains(cause, diagnosis))
                }
                Row::ByEye(fault) => Some(self.by_eye(*fault)),
            })
            .collect();
        if diagnosis.causes.is_empty() && !diagnosis.faults.is_empty() {
            lines.push(self.get("check-no-causes"));
        } else {
            lines.extend(self.unexplained(diagnosis));
        }
        lines
    }

    /// A fault seen by eye, with where it comes from.
    pub fn by_eye(&self, fault: Fault) -> String {
        let (name, causes) = (self.fault_name(fault), self.fault_causes(fault));
        let args = [("what", (&name).into()), ("why", (&causes).into())];
        self.with("check-eye", &args)
    }

    /// Left against right: what differs, one line each, then what does not as far as reading can
    /// tell.
    pub fn skew_lines(&self, report: &Report) -> Vec<String> {
        let is_alike = |skewed: &&Skewed| {
            let (low, high) = skewed.interval_90();
            !skewed.is_fault() && low <= 0.0 && high >= 0.0
        };
        let (alike, unlike): (Vec<&Skewed>, Vec<&Skewed>) = report.skews.iter().partition(is_alike);
        let mut lines: Vec<String> = unlike.into_iter().map(|s| self.skewed(s)).collect();
        if !alike.is_empty() {
            let names: Vec<String> = alike.iter().map(|s| self.skew_name(s.skew)).collect();
            let skews = self.listed(&names);
            lines.push(self.with("check-skew-alike", &[("skews", (&skews).into())]));
        }
        lines
    }

    /// What was not to be seen: each reason once, with all that it hid.
    pub fn unseen_lines(&self, report: &Report) -> Vec<String> {
        let mut reasons: Vec<(String, Vec<String>)> = Vec::new();
        for (&quantity, &why) in &report.unseen {
            let (why, what) = (
                self.unseen_why(quantity, why),
                self.quantity_short(quantity),
            );
            match reasons.iter_mut().find(|(reason, _)| *reason == why) {
                Some((_, hidden)) => hidden.push(what),
                None => reasons.push((why, vec![what])),
            }
        }
        let line = |(why, hidden): (String, Vec<String>)| {
            let what = self.listed(&hidden);
            let args = [("why", (&why).into()), ("what", (&what).into())];
            self.with("check-unseen", &args)
        };
        reasons.into_iter().map(line).collect()
    }

    /// The fewest changes, and the faults that stay even so.
    pub fn corrections(&self, report: &Report) -> Vec<String> {
        let diagnosis = &report.diagnosis;
        let Some(correction) = &diagnosis.correction else {
            return Vec::new();
        };
        let changes = correction.changes.iter();
        let changes = changes.map(|change| self.change(change, diagnosis));
        let left = correction.left.iter();
        let left = left.map(|&(quantity, miss)| self.left(quantity, miss));
        changes.chain(left).collect()
    }

    /// The decisions that nothing read can show to be wrong; none when all show, or when nothing was
    /// read at all.
    pub fn hidden(&self, report: &Report) -> Option<String> {
        if report.observed.quantities().is_empty() {
            return None;
        }
        let hidden: Vec<Decision> = report.diagnosis.hidden().collect();
        let names: Vec<String> = hidden.iter().map(|&d| self.decision_short(d)).collect();
        let listed = self.listed(&names);
        (!names.is_empty()).then(|| self.with("check-hidden", &[("decisions", (&listed).into())]))
    }
}
