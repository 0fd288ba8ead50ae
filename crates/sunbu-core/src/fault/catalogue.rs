//! The catalogue as data: read from TOML once, checked as a whole.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::keys::{Area, Cause, Fault};
use crate::dressing::{Caution, Decision, Given, Quantity, Sight, StepId};
use crate::photo::View;

/// The shipped files, one an area.
const SHIPPED: [(Area, &str); Area::COUNT] = [
    (Area::Hem, include_str!("../../../../data/faults/hem.toml")),
    (
        Area::Fold,
        include_str!("../../../../data/faults/fold.toml"),
    ),
    (
        Area::Collar,
        include_str!("../../../../data/faults/collar.toml"),
    ),
    (
        Area::SleeveBack,
        include_str!("../../../../data/faults/sleeve_back.toml"),
    ),
    (Area::Obi, include_str!("../../../../data/faults/obi.toml")),
];

/// To which side a value is wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Too {
    /// Too little of it.
    Low,
    /// Too much of it.
    High,
    /// Either side of where it belongs is wrong.
    Off,
}

/// What a fault comes from, as far as the program has a name for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged, deny_unknown_fields)]
pub enum Link {
    /// The dresser's hands: this decision was taken too low or too high.
    Decision {
        /// Which decision.
        decision: Decision,
        /// To which side it was wrong.
        too: Too,
    },
    /// The person or the garment brings it along.
    Given {
        /// Which measure.
        given: Given,
        /// To which side it is unlike what the dressing would need.
        too: Too,
    },
    /// A cause that the model does not know.
    Cause {
        /// Which.
        cause: Cause,
    },
}

/// A quantity of the model whose miss is this fault.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Judged {
    /// The quantity.
    pub quantity: Quantity,
    /// The side on which it misses its wish: low or high, never off.
    pub too: Too,
}

/// One fault of the catalogue.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Where on the figure it lies.
    pub area: Area,
    /// From which sides it is seen; at least one.
    pub views: Vec<View>,
    /// The misses that are this fault; empty when the model has no quantity for it.
    pub measured: Vec<Judged>,
    /// What it comes from, likeliest first; at least one.
    pub causes: Vec<Link>,
    /// The step of dressing at which it is put right.
    pub cure: StepId,
    /// Codes of `docs/sources.md`; empty for common practice without source.
    pub sources: Vec<String>,
    /// What to mind, where the fault or its cure can hurt.
    pub cautions: Vec<Caution>,
}

impl Entry {
    /// Whether only the eye can judge it on a photo: the model has no quantity for it, or none that
    /// a photo shows.
    pub fn by_eye(&self) -> bool {
        let mut measured = self.measured.iter();
        !measured.any(|judged| Sight::of(judged.quantity).is_photo())
    }
}

/// An entry as it stands in a file; the file says the area.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    views: Vec<View>,
    #[serde(default)]
    measured: Vec<Judged>,
    causes: Vec<Link>,
    cure: StepId,
    sources: Vec<String>,
    #[serde(default)]
    cautions: Vec<Caution>,
}

/// Every fault with its entry.
#[derive(Debug, Clone, PartialEq)]
pub struct Catalogue {
    /// In the order of [`Fault::ALL`].
    entries: Vec<Entry>,
}

/// Why a catalogue could not be read.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum CatalogueError {
    /// A file is not TOML of a catalogue's form; most often a misspelt key.
    #[error("the faults of area {} cannot be read: {why}", .area.key())]
    Form {
        /// Which file.
        area: Area,
        /// What the reader of the form said.
        why: String,
    },
    /// Entries that are missing or cannot stand, all of them.
    #[error("the catalogue has entries that cannot stand: {}", joined(.0))]
    Entries(Vec<Slip>),
}

/// What is wrong with one entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum Slip {
    /// No area has this fault.
    #[error("{} is in no area; write its table", .0.key())]
    Missing(Fault),
    /// Two areas have this fault.
    #[error("{} is in two areas; keep one", .0.key())]
    Twice(Fault),
    /// It is seen from no side.
    #[error("{} names no view; name at least one of front, back, right, left", .0.key())]
    NoView(Fault),
    /// It comes from nothing.
    #[error("{} names no cause; name at least one", .0.key())]
    NoCause(Fault),
    /// A measured miss without a side.
    #[error("{}: {} can be judged low or high, not off; write both sides instead", .0.key(), .1.key())]
    Sideless(Fault, Quantity),
}

/// Slips in one line.
fn joined(slips: &[Slip]) -> String {
    let said: Vec<String> = slips.iter().map(ToString::to_string).collect();
    said.join("; ")
}

impl Catalogue {
    /// The catalogue that comes with the program.
    ///
    /// # Panics
    /// Never in a released build: the tests read the shipped files.
    pub fn shipped() -> &'static Catalogue {
        static CATALOGUE: OnceLock<Catalogue> = OnceLock::new();
        CATALOGUE.get_or_init(|| {
            Self::parse(&SHIPPED).expect("the shipped catalogue is read by the tests")
        })
    }

    /// A catalogue from the TOML texts of its areas.
    ///
    /// # Errors
    /// [`CatalogueError::Form`] for the first text that is not of a catalogue's form;
    /// [`CatalogueError::Entries`] with every fault that is missing or there twice, seen from
    /// nowhere, caused by nothing, or judged without a side.
    pub fn parse(texts: &[(Area, &str)]) -> Result<Self, CatalogueError> {
        let mut found: BTreeMap<Fault, Entry> = BTreeMap::new();
        let mut slips = Vec::new();
        for &(area, text) in texts {
            let rows: BTreeMap<Fault, Row> =
                toml::from_str(text).map_err(|e| CatalogueError::Form {
                    area,
                    why: e.to_string().trim().into(),
                })?;
            for (fault, row) in rows {
                check(&mut slips, fault, &row);
                if found.insert(fault, entry(area, row)).is_some() {
                    slips.push(Slip::Twice(fault));
                }
            }
        }
        let missing = Fault::ALL.iter().filter(|f| !found.contains_key(f));
        slips.extend(missing.map(|&fault| Slip::Missing(fault)));
        if slips.is_empty() {
            // A map by key is in the order of declaration, and every key is there.
            let entries = found.into_values().collect();
            Ok(Self { entries })
        } else {
            Err(CatalogueError::Entries(slips))
        }
    }

    /// The entry of a fault.
    pub fn entry(&self, fault: Fault) -> &Entry {
        &self.entries[fault.index()]
    }

    /// The faults to look for by eye from this side, in the order in which they are cured.
    pub fn by_eye(&self, view: View) -> Vec<Fault> {
        let seen = Fault::ALL.iter().copied().filter(|&fault| {
            let entry = self.entry(fault);
            entry.by_eye() && entry.views.contains(&view)
        });
        self.in_order_of_cure(seen)
    }

    /// The faults that a quantity is when it misses its wish upward, or downward, in the order in
    /// which they are cured; empty for what is no fault by itself.
    pub fn of_quantity(&self, quantity: Quantity, too_high: bool) -> Vec<Fault> {
        let too = if too_high { Too::High } else { Too::Low };
        let judged = Judged { quantity, too };
        let found = Fault::ALL
            .iter()
            .copied()
            .filter(|&fault| self.entry(fault).measured.contains(&judged));
        self.in_order_of_cure(found)
    }

    /// These faults in the order in which they are cured, those of one step as they were given.
    pub fn in_order_of_cure(&self, faults: impl IntoIterator<Item = Fault>) -> Vec<Fault> {
        let mut faults: Vec<Fault> = faults.into_iter().collect();
        faults.sort_by_key(|&fault| self.entry(fault).cure);
        faults
    }

    /// Causes that several of these faults share, the one behind most of them first.
    ///
    /// Only causes that the model does not know: shared decisions are the diagnosis' to find.
    pub fn shared_causes(&self, faults: impl IntoIterator<Item = Fault>) -> Vec<(Cause, usize)> {
        let mut times: BTreeMap<Cause, usize> = BTreeMap::new();
        for fault in faults {
            for link in &self.entry(fault).causes {
                if let Link::Cause { cause } = link {
                    *times.entry(*cause).or_default() += 1;
                }
            }
        }
        let mut shared: Vec<(Cause, usize)> = times.into_iter().filter(|(_, n)| *n > 1).collect();
        shared.sort_by_key(|(_, n)| std::cmp::Reverse(*n));
        shared
    }
}

fn entry(area: Area, row: Row) -> Entry {
    Entry {
        area,
        views: row.views,
        measured: row.measured,
        causes: row.causes,
        cure: row.cure,
        sources: row.sources,
        cautions: row.cautions,
    }
}

fn check(slips: &mut Vec<Slip>, fault: Fault, row: &Row) {
    if row.views.is_empty() {
        slips.push(Slip::NoView(fault));
    }
    if row.causes.is_empty() {
        slips.push(Slip::NoCause(fault));
    }
    let sideless = row.measured.iter().filter(|judged| judged.too == Too::Off);
    slips.extend(sideless.map(|judged| Slip::Sideless(fault, judged.quantity)));
}
