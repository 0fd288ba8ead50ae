//! Names of the core's keyed members, and how the tape takes a measure.

use sunbu_core::body::{BodyMeasure, Sex};
use sunbu_core::dressing::{
    Caution, Decision, HandUnit, Landmark, Occasion, Quantity, StepId, Verdict,
};
use sunbu_core::garment::{Cloth, Kind, MitakeFrom, Part};
use sunbu_core::measure::{Origin, Unit};

use crate::Words;

impl Words {
    fn named(&self, kind: &str, key: &str) -> String {
        self.get(&format!("{kind}-{key}"))
    }

    /// What is seen, such as “Fold (ohashori) in front”.
    pub fn quantity(&self, quantity: Quantity) -> String {
        self.named("quantity", quantity.key())
    }

    /// What is seen, short, for inside a sentence: “fold (ohashori) in front”.
    pub fn quantity_short(&self, quantity: Quantity) -> String {
        self.get(&format!("quantity-{}.short", quantity.key()))
    }

    /// What the hands decide, such as “Height of the waist tie (koshihimo) at the back”.
    pub fn decision(&self, decision: Decision) -> String {
        self.named("decision", decision.key())
    }

    /// A measure of the body.
    pub fn body_measure(&self, measure: BodyMeasure) -> String {
        self.named("measure", measure.key())
    }

    /// How a measure of the body is taped.
    pub fn body_measure_how(&self, measure: BodyMeasure) -> String {
        self.get(&format!("measure-{}.how", measure.key()))
    }

    /// A part of a garment, with its trade name.
    pub fn part(&self, part: Part) -> String {
        self.named("part", part.key())
    }

    /// How a part of a garment is taped.
    pub fn part_how(&self, part: Part) -> String {
        self.get(&format!("part-{}.how", part.key()))
    }

    /// An occasion.
    pub fn occasion(&self, occasion: Occasion) -> String {
        self.named("occasion", occasion.key())
    }

    /// A verdict on how well a garment can be made to look.
    pub fn verdict(&self, verdict: Verdict) -> String {
        self.named("verdict", verdict.key())
    }

    /// The name of a standard: the shipped one in this language, a studio's own as it is.
    pub fn standard(&self, name: &str) -> String {
        match name {
            "customary" => self.get("standard-customary"),
            own => own.to_owned(),
        }
    }

    /// A landmark of the body.
    pub fn landmark(&self, landmark: Landmark) -> String {
        self.named("landmark", landmark.key())
    }

    /// A part of the hand used as a measure.
    pub fn hand_unit(&self, unit: HandUnit) -> String {
        self.named("hand", unit.key())
    }

    /// The title of a step.
    pub fn step_title(&self, step: StepId) -> String {
        self.named("step", step.key())
    }

    /// A caution, as a sentence or two.
    pub fn caution(&self, caution: Caution) -> String {
        self.named("caution", caution.key())
    }

    /// Kind of garment.
    pub fn kind(&self, kind: Kind) -> String {
        self.named("kind", kind.key())
    }

    /// How a garment's cloth handles.
    pub fn cloth(&self, cloth: Cloth) -> String {
        self.named("cloth", cloth.key())
    }

    /// From where the length of a garment was taken.
    pub fn mitake_from(&self, from: MitakeFrom) -> String {
        self.named("mitake_from", from.key())
    }

    /// Which population table completes a person.
    pub fn sex(&self, sex: Sex) -> String {
        self.get(match sex {
            Sex::Women => "sex-women",
            Sex::Men => "sex-men",
        })
    }

    /// Where a number came from: taped, completed, …
    pub fn origin(&self, origin: Origin) -> String {
        self.get(match origin {
            Origin::Taped => "origin-taped",
            Origin::Completed => "origin-completed",
            Origin::Photo => "origin-photo",
            Origin::Customary => "origin-customary",
            Origin::Learned => "origin-learned",
        })
    }

    /// A unit in which lengths are kept and shown.
    pub fn unit(&self, unit: Unit) -> String {
        self.get(match unit {
            Unit::Centimetre => "unit-centimetre",
            Unit::KujiraShaku => "unit-kujira_shaku",
            Unit::KaneShaku => "unit-kane_shaku",
        })
    }
}
