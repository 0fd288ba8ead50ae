//! Measured causes and faults seen by eye, in one list in dressing order.

use std::collections::BTreeSet;

use super::catalogue::Catalogue;
use super::keys::Fault;
use crate::dressing::StepId;

/// The faults that were ticked as seen by eye; in files and JSON a list of keys.
pub type Ticks = BTreeSet<Fault>;

/// One row of the joint list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Finding {
    /// The measured cause of this place in the list that was given.
    Measured(usize),
    /// A fault seen by eye.
    ByEye(Fault),
}

/// Measured causes and ticked faults, ordered by the step at which each is put right.
///
/// `measured` is the step of each measured cause, in the order in which the diagnosis has them.
/// Within a step the measured ones come first, since they say by how much, and keep their order;
/// then come the ticked ones in the order of the catalogue. Every measured cause and every ticked
/// fault is in the list exactly once.
pub fn mixed(
    catalogue: &Catalogue,
    measured: impl IntoIterator<Item = StepId>,
    ticked: &Ticks,
) -> Vec<Finding> {
    let measured = measured.into_iter().enumerate();
    let mut rows: Vec<(StepId, Finding)> = measured
        .map(|(index, step)| (step, Finding::Measured(index)))
        .collect();
    rows.extend(
        ticked
            .iter()
            .map(|&fault| (catalogue.entry(fault).cure, Finding::ByEye(fault))),
    );
    // Stable: what stands first above stays first within its step.
    rows.sort_by_key(|(step, _)| *step);
    rows.into_iter().map(|(_, finding)| finding).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn measured_causes_and_ticked_faults_come_in_the_order_of_dressing() {
        let ticked = Ticks::from([Fault::ObiageUntidy, Fault::FoldBulky, Fault::JubanBelowHem]);
        let steps = [StepId::TakeUp, StepId::Hem, StepId::Fold, StepId::Fold];
        let rows = mixed(Catalogue::shipped(), steps, &ticked);
        assert_eq!(
            rows,
            [
                Finding::ByEye(Fault::JubanBelowHem),
                Finding::Measured(1),
                Finding::Measured(2),
                Finding::Measured(3),
                Finding::ByEye(Fault::FoldBulky),
                Finding::Measured(0),
                Finding::ByEye(Fault::ObiageUntidy),
            ]
        );
    }

    #[test]
    fn nothing_measured_and_nothing_ticked_give_an_empty_list() {
        let none: [StepId; 0] = [];
        assert_eq!(mixed(Catalogue::shipped(), none, &Ticks::new()), []);
    }

    #[test]
    fn ticks_are_kept_as_a_list_of_keys() {
        let ticked = Ticks::from([Fault::FoldBulky, Fault::HemUneven]);
        let text = serde_json::to_string(&ticked).expect("keys are text");
        assert_eq!(text, r#"["hem_uneven","fold_bulky"]"#);
        assert_eq!(serde_json::from_str::<Ticks>(&text).expect("keys"), ticked);
        assert!(serde_json::from_str::<Ticks>(r#"["no_such_fault"]"#).is_err());
    }
}
