//! What a check finds, in words: faults, causes, doubts, corrections, left against right, and what
//! was not to be seen.

use sunbu_core::check::{Skewed, WrongWay, named, tolerance};
use sunbu_core::dressing::{
    Cause, Change, Check, Decision, Diagnosis, Doubt, Finding, Quantity, Rules, Sight, Tell,
    usual_sd,
};
use sunbu_core::photo::{Mark, Skew, Unseen, View};

use crate::Words;
use crate::numbers::{decimals, fixed, sd_of};
use crate::plan::sentence;

/// A cause that makes less of a fault than this share is not named with it: less is within what
/// the hands leave (chosen).
const LEAST_SHARE: f64 = 0.1;

/// From this share on a cause makes more than all of a fault.
const MORE_THAN_ALL: f64 = 1.05;

impl Words {
    /// Which sides show right over left, and what that may be, of those said to come from a mirror
    /// in a sentence of their own; none where none does.
    pub fn wrong_way(&self, wrong: &[WrongWay]) -> Option<String> {
        let said = [(false, "check-way"), (true, "check-way-mirrored")];
        let said = said.into_iter().filter_map(|(mirrored, id)| {
            let views = wrong.iter().filter(|way| way.mirrored == mirrored);
            let views: Vec<String> = views.map(|way| self.view(way.view)).collect();
            let listed = self.listed(&views);
            (!views.is_empty()).then(|| self.with(id, &[("views", (&listed).into())]))
        });
        let said: Vec<String> = said.collect();
        (!said.is_empty()).then(|| self.sentences(&said))
    }

    /// A reading outside its range: the catalogue's name for it, then value, interval, range and by
    /// how much it is off.
    pub fn finding(&self, finding: &Finding, rules: &Rules) -> String {
        let line = self.finding_line(finding, rules);
        let names: Vec<String> = self.finding_names(finding);
        if names.is_empty() {
            return line;
        }
        let name = self.listed(&names);
        let args = [("name", (&name).into()), ("line", (&line).into())];
        self.with("check-finding-named", &args)
    }

    /// What the catalogue calls a reading outside its range, in the order of cure; it may have no
    /// name for it.
    pub fn finding_names(&self, finding: &Finding) -> Vec<String> {
        let found = named(finding.quantity, finding.miss);
        found.into_iter().map(|f| self.fault_name(f)).collect()
    }

    /// Value, interval, range and miss of a reading, as a plan says it of a wish.
    pub fn finding_line(&self, finding: &Finding, rules: &Rules) -> String {
        match held(finding, rules) {
            Some(check) => self.check(&check),
            None => self.difference(finding),
        }
    }

    /// A reading to stand beside its wanted range, with as many digits as are known.
    pub fn finding_value(&self, finding: &Finding, rules: &Rules) -> String {
        match held(finding, rules) {
            Some(check) => self.check_value(&check),
            None => self.value_in(finding.cm, finding.interval_90),
        }
    }

    /// By how much a reading misses its range.
    pub fn finding_miss(&self, finding: &Finding, rules: &Rules) -> String {
        match held(finding, rules) {
            Some(check) => self.check_miss(&check),
            None => String::new(),
        }
    }

    /// A fault for inside a sentence: “fold (ohashori) in front 2 cm too long”.
    pub fn finding_short(&self, finding: &Finding) -> String {
        self.fault_short(finding.quantity, finding.miss)
    }

    fn fault_short(&self, quantity: Quantity, miss: f64) -> String {
        let (what, miss) = (self.quantity_short(quantity), self.miss(quantity, miss));
        self.with(
            "check-fault-short",
            &[("what", (&what).into()), ("miss", (&miss).into())],
        )
    }

    /// A reading beside what the plan would have shown: “…, 2.1 cm more than planned”.
    pub fn difference(&self, finding: &Finding) -> String {
        let by = finding.cm - finding.planned;
        let sideways = matches!(
            finding.quantity,
            Quantity::BackSeamHip | Quantity::BackSeamTop | Quantity::BackSeamBend
        );
        let id = match (sideways, by > 0.0) {
            (false, true) => "check-difference-more",
            (false, false) => "check-difference-less",
            (true, true) => "check-difference-left",
            (true, false) => "check-difference-right",
        };
        let what = self.quantity(finding.quantity);
        let value = self.value_in(finding.cm, finding.interval_90);
        let interval = self.interval(finding.interval_90);
        let amount = self.amount(by, finding.interval_90);
        let args = [
            ("what", (&what).into()),
            ("value", (&value).into()),
            ("interval", (&interval).into()),
            ("amount", (&amount).into()),
        ];
        self.with(id, &args)
    }

    /// A difference without its sign, with as many digits as an interval of its width allows.
    fn amount(&self, cm: f64, interval: (f64, f64)) -> String {
        let places = decimals(sd_of(interval));
        if places == 0 && cm.abs() < 0.5 {
            return self.with("cm-under", &[("value", "1".into())]);
        }
        let text = fixed(cm.abs(), places);
        self.with("cm", &[("value", (&text).into())])
    }

    /// What the hands did unlike the plan, by a signed amount as one says it: “hem set 4 cm higher
    /// than planned”.
    pub fn deed(&self, decision: Decision, by_cm: f64) -> String {
        self.deed_by(decision, by_cm, &self.rough(by_cm.abs()))
    }

    fn deed_by(&self, decision: Decision, by_cm: f64, amount: &str) -> String {
        let way = if by_cm > 0.0 { "over" } else { "under" };
        let id = format!("done-{}.{way}", decision.key());
        self.with(&id, &[("amount", amount.into())])
    }

    /// A cause with its amount, 90 % interval and how sure it is: “Hem set 4.0 cm higher than planned
    /// (3.1–4.9 cm), very likely”.
    pub fn cause(&self, cause: &Cause) -> String {
        let (low, high) = cause.interval_90;
        // The words say the direction, so the interval is told along it.
        let along = if cause.amount > 0.0 {
            (low, high)
        } else {
            (-high, -low)
        };
        let amount = self.amount(cause.amount, along);
        let deed = sentence(&self.deed_by(cause.decision, cause.amount, &amount));
        let (interval, sure) = (self.interval(along), self.sureness(cause.probability));
        let args = [
            ("deed", (&deed).into()),
            ("interval", (&interval).into()),
            ("sure", (&sure).into()),
        ];
        self.with("check-cause", &args)
    }

    /// A cause and the share that it has in each fault it explains.
    pub fn cause_explains(&self, cause: &Cause, diagnosis: &Diagnosis) -> String {
        let told = self.cause(cause);
        let shares = self.shares(cause.decision, diagnosis);
        if shares.is_empty() {
            return told;
        }
        let shares = self.listed(&shares);
        let args = [("cause", (&told).into()), ("shares", (&shares).into())];
        self.with("check-cause-explains", &args)
    }

    /// The share that a decision has in each fault: “90 % of “fold (ohashori) in front 2 cm too
    /// long””, in tens, since no more is known.
    pub fn shares(&self, decision: Decision, diagnosis: &Diagnosis) -> Vec<String> {
        let findings = diagnosis.faults.iter().chain(&diagnosis.perhaps);
        let share = |finding: &Finding| {
            let share = share_of(finding, decision)?;
            let fault = self.finding_short(finding);
            let fault = ("fault", (&fault).into());
            if share > MORE_THAN_ALL {
                return Some(self.with("check-share-more", &[fault]));
            }
            let percent = format!("{:.0}", (share * 10.0).round() * 10.0);
            Some(self.with("check-share", &[("percent", (&percent).into()), fault]))
        };
        findings.filter_map(share).collect()
    }

    /// The faults that no cause explains, one line each.
    pub fn unexplained(&self, diagnosis: &Diagnosis) -> Vec<String> {
        let by_none = |finding: &&Finding| {
            let mut causes = diagnosis.causes.iter();
            !causes.any(|cause| share_of(finding, cause.decision).is_some())
        };
        let line = |finding: &Finding| {
            let fault = self.finding_short(finding);
            sentence(&self.with("check-unexplained", &[("fault", (&fault).into())]))
        };
        diagnosis.faults.iter().filter(by_none).map(line).collect()
    }

    /// How sure something is that has this probability.
    pub fn sureness(&self, probability: f64) -> String {
        self.get(match probability {
            p if p >= 0.95 => "check-sure-certain",
            p if p >= 0.8 => "check-sure-very",
            p if p >= 0.5 => "check-sure-likely",
            _ => "check-sure-perhaps",
        })
    }

    /// Another explanation of the same readings, how likely it is beside the one told, and what
    /// would decide.
    pub fn doubt(&self, doubt: &Doubt, diagnosis: &Diagnosis) -> String {
        let told = |d: Decision| diagnosis.causes.iter().find(|c| c.decision == d);
        let turned =
            |&(d, by): &(Decision, f64)| told(d).is_some_and(|c| (c.amount > 0.0) != (by > 0.0));
        let others = doubt.causes.iter();
        let others = others.filter(|cause| told(cause.0).is_none() || turned(cause));
        let others: Vec<String> = others.map(|&(d, by)| self.deed(d, by)).collect();
        let gone = |c: &&Cause| {
            doubt.without.contains(&c.decision)
                || doubt.causes.iter().any(|o| o.0 == c.decision && turned(o))
        };
        let gone = diagnosis.causes.iter().filter(gone);
        let gone: Vec<String> = gone.map(|c| self.deed(c.decision, c.amount)).collect();
        let id = match (gone.is_empty(), others.is_empty()) {
            (true, _) if diagnosis.causes.is_empty() => "check-doubt-single",
            (true, _) => "check-doubt-besides",
            (false, true) => "check-doubt-without",
            (false, false) => "check-doubt-instead",
        };
        let (gone, others) = (self.listed(&gone), self.listed(&others));
        let odds = self.odds(doubt.odds);
        let all = [
            ("told", (&gone).into()),
            ("other", (&others).into()),
            ("odds", (&odds).into()),
        ];
        let doubted = self.with(id, &all);
        let tell = match &doubt.tell {
            Some(tell) => self.tell(tell),
            None => self.get("check-tell-none"),
        };
        self.sentences(&[doubted, tell])
    }

    fn odds(&self, odds: f64) -> String {
        self.get(match odds {
            o if o >= 0.7 => "check-odds-same",
            o if o >= 0.35 => "check-odds-half",
            o if o >= 0.15 => "check-odds-fifth",
            _ => "check-odds-tenth",
        })
    }

    /// What would decide between two explanations, and how each would show.
    pub fn tell(&self, tell: &Tell) -> String {
        let what = lower(&self.quantity(tell.quantity));
        let places = decimals(usual_sd(tell.quantity));
        let cm = |value: f64| self.with("cm", &[("value", (&fixed(value, places)).into())]);
        let (told, other) = (cm(tell.if_told), cm(tell.if_other));
        let mut args = vec![
            ("what", (&what).into()),
            ("told", (&told).into()),
            ("other", (&other).into()),
        ];
        match tell.sight {
            Sight::Photo(views) => {
                let views: Vec<String> = views.iter().map(|&v| self.side_seen_from(v)).collect();
                let views = self.joined("check-or", &views);
                args.push(("views", (&views).into()));
                self.with("check-tell-photo", &args)
            }
            Sight::Felt => self.with("check-tell-felt", &args),
            Sight::Opened => self.with("check-tell-opened", &args),
        }
    }

    /// What the hands decide, short, for inside a sentence: “waist tie (koshihimo) in front”.
    pub fn decision_short(&self, decision: Decision) -> String {
        self.get(&format!("todo-{}", decision.key()))
    }

    /// From a side, for inside a sentence.
    fn side_seen_from(&self, view: View) -> String {
        self.get(match view {
            View::Front => "check-from-front",
            View::Back => "check-from-back",
            View::Right => "check-from-right",
            View::Left => "check-from-left",
        })
    }

    /// What to do, by an amount as one says it: “Set the hem 4 cm lower”.
    pub fn todo(&self, change: &Change) -> String {
        let by = change.to - change.from;
        let way = if by > 0.0 { "over" } else { "under" };
        let amount = self.rough(by.abs());
        let id = format!("todo-{}.{way}", change.decision.key());
        self.with(&id, &[("amount", (&amount).into())])
    }

    /// How to practise a decision.
    pub fn practise(&self, decision: Decision) -> String {
        self.get(&format!("todo-{}.practise", decision.key()))
    }

    /// A change from how it was done to how it should be, and the faults it helps.
    pub fn change(&self, change: &Change, diagnosis: &Diagnosis) -> String {
        let cause = diagnosis
            .causes
            .iter()
            .find(|c| c.decision == change.decision);
        let places = cause.map_or(1, |c| decimals(c.sd));
        let lies = |cm: f64| self.lies(change.decision, cm, places);
        let (to_do, from, to) = (self.todo(change), lies(change.from), lies(change.to));
        let args = [
            ("do", (&to_do).into()),
            ("from", (&from).into()),
            ("to", (&to).into()),
        ];
        let told = self.with("check-change", &args);
        let cures = self.cures(change, diagnosis);
        if cures.is_empty() {
            return told;
        }
        let faults = self.listed(&cures);
        let args = [("change", (&told).into()), ("faults", (&faults).into())];
        self.with("check-change-cures", &args)
    }

    /// The faults that a change helps, each for inside a sentence.
    pub fn cures(&self, change: &Change, diagnosis: &Diagnosis) -> Vec<String> {
        let cured = diagnosis.faults.iter();
        let cured = cured.filter(|fault| change.cures.contains(&fault.quantity));
        cured.map(|fault| self.finding_short(fault)).collect()
    }

    /// A fault that stays whatever is changed.
    pub fn left(&self, quantity: Quantity, miss: f64) -> String {
        let fault = sentence(&self.fault_short(quantity, miss));
        self.with("check-left", &[("fault", (&fault).into())])
    }

    /// Where a decision lies: a length, or a side of the middle.
    fn lies(&self, decision: Decision, cm: f64, places: usize) -> String {
        let text = fixed(cm, places);
        let sideways = matches!(decision, Decision::BackSeamHip | Decision::BackSeamTop);
        let is_zero = text.bytes().all(|b| matches!(b, b'0' | b'.'));
        if !sideways {
            return self.with("cm", &[("value", (&text).into())]);
        }
        if is_zero {
            return self.get("check-centred");
        }
        let amount = fixed(cm.abs(), places);
        let amount = self.with("cm", &[("value", (&amount).into())]);
        let id = if cm > 0.0 {
            "check-to-left"
        } else {
            "check-to-right"
        };
        self.with(id, &[("amount", (&amount).into())])
    }

    /// What a difference between left and right is called.
    pub fn skew_name(&self, skew: Skew) -> String {
        self.get(&format!("skew-{}", skew.key()))
    }

    /// A difference between left and right: which way, by how much, and whether it passes.
    pub fn skewed(&self, skewed: &Skewed) -> String {
        let (low, high) = skewed.interval_90();
        let along = if skewed.cm > 0.0 {
            (low, high)
        } else {
            (-high, -low)
        };
        let line = sentence(&self.skew_line(skewed));
        let (interval, most) = (self.interval(along), self.cm(tolerance(skewed.skew)));
        let id = if skewed.is_fault() {
            "check-skew-fault"
        } else if skewed.may_be_fault() {
            "check-skew-perhaps"
        } else {
            "check-skew-passes"
        };
        let args = [
            ("line", (&line).into()),
            ("interval", (&interval).into()),
            ("most", (&most).into()),
        ];
        self.with(id, &args)
    }

    /// Which way and by how much, for inside a sentence.
    pub(crate) fn skew_line(&self, skewed: &Skewed) -> String {
        let way = if skewed.cm > 0.0 { "over" } else { "under" };
        let amount = self.amount(skewed.cm, skewed.interval_90());
        let id = format!("skew-{}.{way}", skewed.skew.key());
        self.with(&id, &[("amount", (&amount).into())])
    }

    /// Why something was not read, and what would show it.
    pub fn unseen_why(&self, quantity: Quantity, why: Unseen) -> String {
        match why {
            Unseen::Covered => self.get(match Sight::of(quantity) {
                Sight::Felt => "check-unseen-felt",
                Sight::Opened => "check-unseen-opened",
                Sight::Photo(_) => "check-unseen-covered",
            }),
            Unseen::OtherSide(view) => {
                let view = self.side_seen_from(view);
                self.with("check-unseen-view", &[("view", (&view).into())])
            }
            Unseen::NotMarked(mark) => {
                let mark = self.mark(mark);
                self.with("check-unseen-mark", &[("mark", (&mark).into())])
            }
        }
    }

    /// A mark that does not fit with the others.
    pub fn doubtful(&self, view: View, mark: Mark) -> String {
        let (view, mark) = (self.view(view), self.mark(mark));
        let args = [("view", (&view).into()), ("mark", (&mark).into())];
        self.with("check-doubtful", &args)
    }

    /// Sentences after one another: with a space between them where the language has one.
    pub(crate) fn sentences(&self, sentences: &[String]) -> String {
        self.joined("check-sentences", sentences)
    }
}

/// The text with a small letter first, where the language has such: it stands in a sentence.
fn lower(text: &str) -> String {
    let mut chars = text.chars();
    let first: String = chars
        .next()
        .into_iter()
        .flat_map(char::to_lowercase)
        .collect();
    first + chars.as_str()
}

/// A reading as a wish is judged, where there is a wish.
fn held(finding: &Finding, rules: &Rules) -> Option<Check> {
    Some(Check {
        target: rules.target(finding.quantity)?.clone(),
        value: finding.cm,
        interval_90: finding.interval_90,
        miss: finding.miss,
        binding: Vec::new(),
        rivals: Vec::new(),
    })
}

/// The share of a cause in a reading's difference from the plan, where it is worth naming.
fn share_of(finding: &Finding, decision: Decision) -> Option<f64> {
    let mut parts = finding.parts.causes.iter();
    let (_, part) = parts.find(|(d, _)| *d == decision)?;
    finding.share(*part).filter(|share| *share >= LEAST_SHARE)
}
