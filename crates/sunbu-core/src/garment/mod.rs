//! Garments: what was measured of one, and the whole of it completed from that.
//!
//! A [`Sheet`] holds the taped parts; [`Sheet::complete`] gives the [`Garment`], in which every
//! part has a value, a deviation and an origin. Missing parts come from published proportions
//! ([`rules`]), held against published tables ([`tables`]). Only the women's long kimono and
//! yukata are known here.

mod check;
mod completion;
mod kind;
mod part;
pub mod rules;
mod sheet;
pub mod tables;

pub use check::Warning;
pub use kind::{Cloth, Kind, MitakeFrom};
pub use part::Part;
pub use rules::Rule;
pub(crate) use sheet::part_named;
pub use sheet::{Sheet, TAPE_SD_CM};

use crate::measure::{Length, Measured, Origin};
use crate::problem::{Fault, Problem};
use completion::{Completion, Estimate};

/// Largest deviation taken for a taped part, in cm (chosen: an entry less sure than this says
/// nothing).
const MAX_SD_CM: f64 = 10.0;

/// Width from which a collar is a wide one, folded in half when worn, in cm: the middle between
/// the narrow collar's tip (2 sun) and the wide collar (3 sun) of S2, wasai basics 3.
const WIDE_COLLAR_CM: f64 = 2.5 * rules::SUN_CM;

/// A whole garment: every part with its value, deviation and origin.
#[derive(Debug, Clone, PartialEq)]
pub struct Garment {
    kind: Kind,
    cloth: Cloth,
    mitake_from: MitakeFrom,
    whole: Completion,
}

impl Garment {
    fn from_sheet(sheet: &Sheet) -> Result<Garment, Vec<Problem>> {
        let mut problems = out_of_range(sheet);
        let given = |part| sheet.parts.contains_key(&part);
        if !given(Part::Mitake) {
            problems.push(Problem::new(Part::Mitake.key(), "", Fault::Missing));
        }
        if !given(Part::Ushirohaba) && !given(Part::Maehaba) {
            let others = vec![Part::Maehaba.key().to_owned()];
            problems.push(Problem::new(
                Part::Ushirohaba.key(),
                "",
                Fault::MissingOneOf { others },
            ));
        }
        // Completion clamps nothing that was taped; with a part out of range its sums would
        // only repeat that fault in other words.
        let sound = problems.is_empty();
        problems.extend(check::contradictions(sheet));
        let mut taped = [None; Part::COUNT];
        for (part, reading) in &sheet.parts {
            taped[part.index()] = Some(Estimate {
                cm: reading.length.cm(),
                sd: reading.sd.map_or(TAPE_SD_CM, Length::cm),
                rule: None,
            });
        }
        let whole = completion::complete(&taped, sheet.kind, sheet.mitake_from);
        if let (true, Some(whole)) = (sound, &whole) {
            problems.extend(check::completed_contradictions(sheet, whole));
        }
        match whole {
            Some(whole) if problems.is_empty() => Ok(Garment {
                kind: sheet.kind,
                cloth: sheet.cloth,
                mitake_from: sheet.mitake_from,
                whole,
            }),
            _ => Err(problems),
        }
    }

    /// Kind of garment.
    pub fn kind(&self) -> Kind {
        self.kind
    }

    /// How its cloth handles.
    pub fn cloth(&self) -> Cloth {
        self.cloth
    }

    /// Where its mitake was taken from; [`Garment::part`] gives the mitake from there.
    pub fn mitake_from(&self) -> MitakeFrom {
        self.mitake_from
    }

    /// One part, in cm: `Taped` as entered, `Completed` by a proportion to other parts, or
    /// `Customary`.
    pub fn part(&self, part: Part) -> Measured {
        measured(self.whole.part(part))
    }

    /// The rule that gave a part; `None` when it was taped.
    pub fn completed_by(&self, part: Part) -> Option<&'static Rule> {
        self.whole.part(part).rule
    }

    /// The parts that were not taped, each with its rule, in the order of a sewing sheet.
    pub fn completed(&self) -> impl Iterator<Item = (Part, &'static Rule)> + '_ {
        Part::ALL
            .iter()
            .filter_map(|part| Some((*part, self.completed_by(*part)?)))
    }

    /// Length of the back seam, collar seam to hem, in cm.
    pub fn mitake_back(&self) -> Measured {
        self.mitake(MitakeFrom::BackSeam, self.whole.mitake_back)
    }

    /// Length from the shoulder ridge to the hem, in cm.
    pub fn mitake_shoulder(&self) -> Measured {
        self.mitake(MitakeFrom::Shoulder, self.whole.mitake_shoulder)
    }

    /// The mitake from one place: taped there, or completed by the kurikoshi.
    fn mitake(&self, from: MitakeFrom, value: Estimate) -> Measured {
        if from == self.mitake_from {
            measured(value)
        } else {
            made(value, Origin::Completed)
        }
    }

    /// Hip the widths were likely cut for, in cm, by R1 turned round
    /// (S9, dressing teacher: deriving kimono sizes).
    pub fn likely_hip(&self) -> Measured {
        made(self.whole.hip, Origin::Completed)
    }

    /// Height the length was likely cut for, in cm: the back mitake
    /// (S3, wasai basics 2: women's calculation rules).
    pub fn likely_height(&self) -> Measured {
        made(self.whole.height, Origin::Completed)
    }

    /// Width of the collar as worn at the back, in cm: a wide collar is folded in half.
    pub fn worn_collar_width(&self) -> Measured {
        let sewn = self.whole.part(Part::Erihaba);
        if sewn.cm < WIDE_COLLAR_CM {
            return measured(sewn);
        }
        measured(Estimate {
            cm: sewn.cm / 2.0,
            sd: sewn.sd / 2.0,
            ..sewn
        })
    }

    /// What is unusual about the garment and will trouble its wearer; empty when nothing is.
    pub fn warnings(&self) -> Vec<Warning> {
        check::warnings(&self.whole)
    }
}

/// An estimate as a measured value; its rule says the origin.
fn measured(value: Estimate) -> Measured {
    made(value, value.rule.map_or(Origin::Taped, |rule| rule.origin))
}

fn made(value: Estimate, origin: Origin) -> Measured {
    // Every part of a garment passed its range, and deviations are sums of squares of checked
    // ones, so both are finite and far below the limits of a measured value.
    Measured::new(value.cm, value.sd, origin).expect("the parts of a garment are in range")
}

/// The parts that no real garment has, and deviations that say nothing.
fn out_of_range(sheet: &Sheet) -> Vec<Problem> {
    let mut problems = Vec::new();
    for (part, reading) in &sheet.parts {
        let (low_cm, high_cm) = part.range_cm();
        if !(low_cm..=high_cm).contains(&reading.length.cm()) {
            problems.push(Problem::new(
                part.key(),
                reading.to_string(),
                Fault::OutOfRange { low_cm, high_cm },
            ));
        }
        let Some(sd) = reading.sd else { continue };
        if !(0.0..=MAX_SD_CM).contains(&sd.cm()) {
            problems.push(Problem::new(
                format!("{}.sd", part.key()),
                crate::measure::Written::in_cm(sd).to_string(),
                Fault::OutOfRange {
                    low_cm: 0.0,
                    high_cm: MAX_SD_CM,
                },
            ));
        }
    }
    problems
}
