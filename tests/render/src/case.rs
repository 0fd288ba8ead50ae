//! A scene as the files of the program tell it: who was to be dressed how, and what went otherwise.

use std::collections::BTreeMap;

use sunbu_core::body::Sex;
use sunbu_core::case::{CaseFile, Person, Piece};
use sunbu_core::dressing::{Decision, Dressing, Occasion};
use sunbu_core::garment::{Part, Sheet};
use sunbu_core::measure::{Length, Reading, Unit};

use crate::people::{Real, USUAL};
use crate::{Random, Scene};

/// Deviations of what was taped of body and garment, in centimetres.
const BODY_SD: f64 = 0.5;
const GARMENT_SD: f64 = 0.3;

impl Scene {
    /// The same person dressed as planned but for these changes, in centimetres.
    #[must_use]
    pub fn off(self, changes: &[(Decision, f64)]) -> Self {
        let planned = self.subject.planned;
        let done = changes.iter().fold(planned, |done, &(decision, by)| {
            done.with(decision, planned.get(decision) + by)
        });
        self.done(done)
    }

    /// The same with every decision `off_cm` off the plan, to either side of it as `seed` has it.
    #[must_use]
    pub fn everywhere_off(self, seed: u64, off_cm: f64) -> Self {
        let random = &mut Random::of(seed ^ 0x7A95);
        let side = |_: &Decision| off_cm * random.one_of(&[-1.0, 1.0]);
        let off: Vec<f64> = Decision::ALL.iter().map(side).collect();
        let changes: Vec<(Decision, f64)> = Decision::ALL.iter().copied().zip(off).collect();
        self.off(&changes)
    }

    fn done(mut self, done: Dressing) -> Self {
        self.real = Real::new(self.real.body.clone(), self.real.fitting.clone(), done);
        self
    }

    /// Her case under these names of person and garment: what a dresser usually tapes, and the plan
    /// with every decision taken.
    ///
    /// # Panics
    /// Never: people and garments of the renderer have measures that can be.
    pub fn case(&self, [person, garment]: [&str; 2]) -> CaseFile {
        let reading = |cm: f64, sd: f64| Reading {
            length: Length::from_cm(cm).expect("a length"),
            unit: Unit::Centimetre,
            sd: Some(Length::from_cm(sd).expect("a deviation")),
        };
        let subject = &self.subject;
        let measures = USUAL.map(|m| (m, reading(subject.body.value_cm(m), BODY_SD)));
        let whole = &subject.garment;
        let taped = Part::ALL.iter().copied();
        let taped = taped.filter(|&part| whole.completed_by(part).is_none());
        let parts: BTreeMap<Part, Reading> = taped
            .map(|part| (part, reading(whole.part(part).value_cm(), GARMENT_SD)))
            .collect();
        let decisions = Decision::ALL.iter();
        CaseFile {
            person: Person {
                name: person.to_owned(),
                sex: Sex::Women,
                measures: measures.into(),
                note: String::new(),
            },
            garments: vec![Piece {
                name: garment.to_owned(),
                sheet: Sheet {
                    kind: whole.kind(),
                    cloth: whole.cloth(),
                    mitake_from: whole.mitake_from(),
                    parts,
                },
                note: String::new(),
            }],
            occasion: Occasion::Indoors,
            locks: decisions.map(|&d| (d, subject.planned.get(d))).collect(),
            dresser: None,
            standard: None,
        }
    }
}
