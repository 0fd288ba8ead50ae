//! When a check asks for nothing: nothing was read, nothing is sure, nothing would help, or all is
//! well. Each is another sentence, in the report as in the message.

use sunbu_core::check::{Report, Skewed};

use crate::Words;

/// The messages that say why there is nothing to change.
struct Ids {
    /// Nothing was read.
    unread: &'static str,
    /// Faults stay whatever is changed.
    stays: &'static str,
    /// Left and right differ, and the catalogue has no name for it.
    skews: &'static str,
    /// Something may be at fault.
    unsure: &'static str,
    /// All is well.
    well: &'static str,
}

const REPORT: Ids = Ids {
    unread: "check-nothing-read-yet",
    stays: "check-nothing-helps",
    skews: "check-nothing-skews",
    unsure: "check-nothing-sure",
    well: "check-nothing-to-change",
};

const MESSAGE: Ids = Ids {
    unread: "message-nothing-read",
    stays: "message-stays",
    skews: "message-skews",
    unsure: "message-nothing-sure",
    well: "message-nothing",
};

impl Words {
    /// Why nothing is to be changed, of a check that has nothing to advise.
    pub fn nothing_to_change(&self, report: &Report) -> String {
        self.nothing(report, &REPORT)
    }

    /// The same as it is told to whoever was dressed. With right over left there is something to
    /// change: then only what stays is told, if anything does.
    pub(crate) fn nothing_to_ask(&self, report: &Report) -> Option<String> {
        let is_told = report.wrong_way.is_empty() || !self.staying(report, &MESSAGE).is_empty();
        is_told.then(|| self.nothing(report, &MESSAGE))
    }

    fn nothing(&self, report: &Report, ids: &Ids) -> String {
        if report.observed.quantities().is_empty() && report.skews.is_empty() {
            return self.get(ids.unread);
        }
        let staying = self.staying(report, ids);
        if !staying.is_empty() {
            return self.sentences(&staying);
        }
        let is_unsure =
            !report.diagnosis.perhaps.is_empty() || report.skews.iter().any(Skewed::may_be_fault);
        self.get(if is_unsure { ids.unsure } else { ids.well })
    }

    /// What is at fault and no advice is for, in a sentence for each kind; empty when nothing is.
    fn staying(&self, report: &Report, ids: &Ids) -> Vec<String> {
        let faults = report.diagnosis.faults.iter();
        let faults: Vec<String> = faults.map(|fault| self.finding_short(fault)).collect();
        let skews = report.skews.iter().filter(|s| s.is_fault());
        let skews = skews.filter(|s| s.fault().is_none());
        let skews: Vec<String> = skews.map(|skewed| self.skew_line(skewed)).collect();
        let mut said = Vec::new();
        for (id, name, all) in [(ids.stays, "faults", faults), (ids.skews, "skews", skews)] {
            if !all.is_empty() {
                let listed = self.listed(&all);
                said.push(self.with(id, &[(name, (&listed).into())]));
            }
        }
        said
    }
}
