//! The state of a plan's page as its address holds it: occasion, every decision, locks.
//!
//! Parsed once here and written once here. A number that cannot be read keeps its text, and the
//! page shows it in its field with a sentence.

use std::collections::{BTreeMap, BTreeSet};

use sunbu_core::case::{Fields, read_locks};
use sunbu_core::dressing::{Decision, Dressing, Locks, Occasion, Rules, Way};
use sunbu_core::problem::Fault::UnknownChoice;
use sunbu_core::problem::Problem;

/// What the address says.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct State {
    /// The occasion; indoors when it is not said.
    pub occasion: Occasion,
    /// The decisions that are given, in cm.
    pub values: BTreeMap<Decision, f64>,
    /// The decisions that are to stay as they are.
    pub locked: BTreeSet<Decision>,
    /// Whether the planner is to set all that is not locked.
    pub ask: bool,
    /// Decisions whose text cannot be taken, with what is wrong with it.
    pub unread: BTreeMap<Decision, Problem>,
    /// What is wrong with the occasion, where it is none that is known.
    pub unknown_occasion: Option<Problem>,
}

/// The tenth of a centimetre nearest to a planned number that its limits allow: rounding must not
/// carry a number that stands at a limit beyond it.
fn tenth_within(cm: f64, way: Way) -> f64 {
    let (least, most) = ((way.low * 10.0).ceil(), (way.high * 10.0).floor());
    let tenths = (cm * 10.0).round();
    let inside = if least <= most {
        tenths.clamp(least, most)
    } else {
        tenths
    };
    // Minus nothing is nothing.
    inside / 10.0 + 0.0
}

/// The occasion that a text of an address names; none for an empty one.
///
/// # Errors
/// What is wrong with it, at the field `occasion`, when there is none of this name.
pub(crate) fn occasion(text: &str) -> Result<Option<Occasion>, Box<Problem>> {
    if text.is_empty() {
        return Ok(None);
    }
    let unknown = || {
        let allowed = Occasion::ALL.iter().map(|o| o.key().to_owned()).collect();
        Box::new(Problem::new("occasion", text, UnknownChoice { allowed }))
    };
    Occasion::from_key(text).map(Some).ok_or_else(unknown)
}

impl State {
    /// Reads the pairs of a query or form; names that are none of ours are passed over, so that
    /// a form may carry more than the state.
    pub fn read(pairs: &[(String, String)]) -> Self {
        let mut state = Self {
            occasion: Occasion::Indoors,
            values: BTreeMap::new(),
            locked: BTreeSet::new(),
            ask: false,
            unread: BTreeMap::new(),
            unknown_occasion: None,
        };
        for (name, text) in pairs {
            match name.as_str() {
                "occasion" => state.read_occasion(text),
                "lock" => state.locked.extend(Decision::from_key(text)),
                "ask" => state.ask = true,
                _ => {
                    if let Some(decision) = Decision::from_key(name) {
                        state.read_value(decision, text);
                    }
                }
            }
        }
        // An address without numbers, as from the list of garments, asks for the plan.
        state.ask |= state.values.is_empty() && state.unread.is_empty();
        // The planner replaces a wrong number, but not one that it is told to keep, and it does
        // not plan for an occasion that nobody knows.
        let kept = state.unread.keys().any(|d| state.locked.contains(d));
        state.ask &= !kept && state.unknown_occasion.is_none();
        state
    }

    /// Reads the occasion; without a text it is as if it were not said.
    fn read_occasion(&mut self, text: &str) {
        match occasion(text) {
            Ok(Some(occasion)) => self.occasion = occasion,
            Ok(None) => {}
            Err(unknown) => self.unknown_occasion = Some(*unknown),
        }
    }

    /// Everything that is wrong, each at the name of its field; nothing when the planner is asked
    /// for what is.
    pub fn problems(&self) -> Vec<&Problem> {
        if self.ask {
            return Vec::new();
        }
        self.unknown_occasion
            .iter()
            .chain(self.unread.values())
            .collect()
    }

    /// Reads one number as a case file's locks are read; an empty field is as usual.
    fn read_value(&mut self, decision: Decision, text: &str) {
        match read_locks(&Fields::from([(
            decision.key().to_owned(),
            text.to_owned(),
        )])) {
            Ok(read) => self.values.extend(read),
            Err(problems) => {
                self.unread.extend(
                    problems
                        .into_iter()
                        .next()
                        .map(|problem| (decision, problem)),
                );
            }
        }
    }

    /// The decisions that the planner must keep: locked, and with a number.
    pub fn locks(&self) -> Locks {
        let kept = self
            .locked
            .iter()
            .filter_map(|d| Some((*d, *self.values.get(d)?)));
        kept.collect()
    }

    /// The dressing as set by hand; what is not given is as usual.
    pub fn dressing(&self, rules: &Rules) -> Dressing {
        Dressing::from_fn(|d| self.values.get(&d).copied().unwrap_or(rules.way(d).usual))
    }

    /// The same state with what is not given as usual.
    #[must_use]
    pub fn completed(mut self, rules: &Rules) -> Self {
        for &decision in Decision::ALL {
            if !self.unread.contains_key(&decision) {
                let way = rules.way(decision);
                self.values
                    .entry(decision)
                    .or_insert(tenth_within(way.usual, way));
            }
        }
        self
    }

    /// The same state with every decision as in `dressing`, to the tenth of a centimetre that a
    /// hand can set; locked ones keep the number that was typed.
    #[must_use]
    pub fn dressed(mut self, dressing: &Dressing, rules: &Rules) -> Self {
        let locks = self.locks();
        for &decision in Decision::ALL {
            let cm = locks.get(&decision).copied();
            let tenth = tenth_within(dressing.get(decision), rules.way(decision));
            self.values.insert(decision, cm.unwrap_or(tenth));
        }
        self.unread.clear();
        self.ask = false;
        self
    }

    /// The text of one decision's field: what was typed, else its number.
    pub fn text(&self, decision: Decision) -> String {
        match (self.unread.get(&decision), self.values.get(&decision)) {
            (Some(problem), _) => problem.typed.clone(),
            (None, Some(cm)) => cm.to_string(),
            (None, None) => String::new(),
        }
    }

    /// The state as a query, read back the same by [`Self::read`].
    pub fn query(&self) -> String {
        let mut out = form_urlencoded::Serializer::new(String::new());
        let unknown = self.unknown_occasion.as_ref();
        let occasion = unknown.map_or(self.occasion.key(), |problem| &problem.typed);
        out.append_pair("occasion", occasion);
        for &decision in Decision::ALL {
            if self.values.contains_key(&decision) || self.unread.contains_key(&decision) {
                out.append_pair(decision.key(), &self.text(decision));
            }
        }
        for decision in &self.locked {
            out.append_pair("lock", decision.key());
        }
        out.finish()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ask::pairs;

    #[test]
    fn a_state_written_reads_back_the_same() {
        let text = "occasion=formal&hem_height=1.5&back_seam_hip=-2&tare_length=7.25\
                    &lock=hem_height&lock=tare_length";
        let state = State::read(&pairs(text.as_bytes()));
        assert_eq!(state.occasion, Occasion::Formal);
        assert_eq!(state.values.len(), 3);
        assert_eq!(state.locks()[&Decision::TareLength], 7.25);
        assert_eq!(State::read(&pairs(state.query().as_bytes())), state);
    }

    #[test]
    fn nonsense_keeps_its_text_and_is_no_number() {
        for bad in ["abc", "1e999", "NaN", "inf", "251", "-1e9", "3 ells"] {
            let query = format!(
                "hem_height={}&occasion=nowhere&lock=nothing&x=y",
                bad.replace(' ', "+")
            );
            let state = State::read(&pairs(query.as_bytes()));
            assert_eq!(state.values.get(&Decision::HemHeight), None, "{bad}");
            assert_eq!(state.text(Decision::HemHeight), bad);
            assert_eq!(state.occasion, Occasion::Indoors);
            let places: Vec<_> = state.problems().iter().map(|p| p.place.as_str()).collect();
            assert_eq!(places, ["occasion", "hem_height"], "{bad}");
            assert_eq!(
                State::read(&pairs(state.query().as_bytes())),
                State {
                    ask: false,
                    ..state.clone()
                }
            );
            assert!(
                !state.ask,
                "a page with a wrong number is shown, not planned over: {bad}"
            );
        }
    }

    #[test]
    fn the_planner_replaces_a_wrong_number_unless_it_is_to_be_kept() {
        assert!(
            State::read(&pairs(b"hem_height=99&ask=1"))
                .problems()
                .is_empty()
        );
        let kept = State::read(&pairs(b"hem_height=99&lock=hem_height&ask=1"));
        assert!(!kept.ask, "there is no number to keep");
        assert_eq!(kept.problems().len(), 1);
    }

    #[test]
    fn rounding_never_carries_a_planned_number_beyond_its_limits() {
        let way = |low, high| Way {
            usual: low,
            spread: 1.0,
            low,
            high,
            hands: 1.0,
        };
        assert_eq!(
            tenth_within(85.74, way(85.74, 100.0)).to_bits(),
            85.8_f64.to_bits()
        );
        assert_eq!(
            tenth_within(99.96, way(80.0, 99.96)).to_bits(),
            99.9_f64.to_bits()
        );
        assert_eq!(
            tenth_within(-0.01, way(-3.0, 3.0)).to_bits(),
            0.0_f64.to_bits()
        );
        assert_eq!(
            tenth_within(2.34, way(0.0, 3.0)).to_bits(),
            2.3_f64.to_bits()
        );
    }

    #[test]
    fn an_address_without_numbers_asks_for_the_plan() {
        assert!(State::read(&pairs(b"occasion=stage")).ask);
        assert!(State::read(&pairs(b"hem_height=")).ask);
        assert!(!State::read(&pairs(b"hem_height=1")).ask);
    }
}
