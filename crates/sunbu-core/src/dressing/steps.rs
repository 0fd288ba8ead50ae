//! A plan as steps in the order in which one dresses, each with its numbers and cautions.
//!
//! Steps carry no words: a locale gives them. The order follows the garments from the skin out
//! and each garment from hem to collar, since a fault is mostly made a step earlier or a garment
//! below.

use super::against::{Against, Hands, height_by_body, length_by_hand};
use super::decision::Decision;
use super::plan::Plan;
use super::quantity::Quantity;
use crate::body::Body;
use crate::keyed::keyed_enum;
use crate::measure::Z_90;

keyed_enum! {
    /// One step of dressing.
    StepId {
        /// Pad the trunk toward a straight cylinder.
        Padding = "padding",
        /// Juban: nape, collars, their crossing, its tie.
        Juban = "juban",
        /// Kimono on: sleeves, back seam, collar ends level.
        PutOn = "put_on",
        /// Hem height, back and sides level.
        Hem = "hem",
        /// Outer panel: find the front cover and remember it.
        FrontCover = "front_cover",
        /// Inner panel: wrap, then raise its front edge.
        Shitamae = "shitamae",
        /// Outer panel: wrap, then raise its front edge.
        Uwamae = "uwamae",
        /// Waist tie.
        Koshihimo = "koshihimo",
        /// Smooth the fold, front and back, through the side openings.
        Fold = "fold",
        /// Kimono collars on the juban's.
        Collar = "collar",
        /// Take up what is too long and tie the chest.
        TakeUp = "take_up",
        /// Obi round the body.
        Obi = "obi",
        /// Drum and tail.
        Drum = "drum",
        /// Obiage.
        Obiage = "obiage",
        /// Look at the whole.
        Look = "look",
    }
}

keyed_enum! {
    /// A caution that belongs to a step.
    Caution {
        /// Ties and padding must let her breathe: a finger under each cord, a deep breath.
        TightTies = "tight_ties",
        /// Pale, sick or dizzy: sit down, loosen, call for qualified help.
        Fainting = "fainting",
        /// Pregnancy: ask the doctor first; no cord across the belly.
        Pregnancy = "pregnancy",
        /// Heat and layers: drink, shade, loosen.
        Heat = "heat",
        /// A hem at the floor on stairs and escalators.
        LongHem = "long_hem",
        /// Children.
        Children = "children",
    }
}

/// What a step's number is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StepValue {
    /// Something the hands do.
    Do(Decision),
    /// Something to see when it is done.
    See(Quantity),
}

impl StepValue {
    /// The stable name of the decision or quantity.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Do(decision) => decision.key(),
            Self::See(quantity) => quantity.key(),
        }
    }
}

/// One number of a step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StepNumber {
    /// What it is about.
    pub value: StepValue,
    /// The number, in centimetres.
    pub cm: f64,
    /// What to expect nine times in ten, in centimetres.
    pub interval_90: (f64, f64),
    /// The same against body or hand; none where neither comes near enough.
    pub against: Option<Against>,
}

/// One step with its numbers and cautions.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Which step.
    pub id: StepId,
    /// Its numbers, the ones to do before the ones to see.
    pub numbers: Vec<StepNumber>,
    /// Cautions to show with it.
    pub cautions: &'static [Caution],
}

/// The plan in dressing order; `hands` are the dresser's own, `body` the dressed person's.
///
/// Decisions that change nothing (no padding, no folding back) are left out.
pub fn steps(
    plan: &Plan,
    body: &Body,
    hands: &Hands,
    spread: impl Fn(Decision) -> f64,
) -> Vec<Step> {
    let number = |value: StepValue| {
        let (cm, sd) = match value {
            StepValue::Do(d) => (plan.dressing.get(d), spread(d)),
            StepValue::See(q) => (plan.prediction.value(q), plan.prediction.sd(q)),
        };
        let against = match value {
            // A difference of girths is nothing that a hand can be laid along.
            StepValue::See(Quantity::TrunkStep) => None,
            height if is_height(height) => height_by_body(cm, body, hands),
            _ => length_by_hand(cm, hands),
        };
        StepNumber {
            value,
            cm,
            interval_90: (cm - Z_90 * sd, cm + Z_90 * sd),
            against,
        }
    };
    StepId::ALL
        .iter()
        .map(|&id| {
            let (values, cautions) = contents(id);
            let idle = |v: &StepValue| match v {
                StepValue::Do(d) if optional(*d) => plan.dressing.get(*d).abs() >= 0.25,
                _ => true,
            };
            let numbers = values
                .iter()
                .filter(|v| idle(v))
                .map(|&v| number(v))
                .collect();
            Step {
                id,
                numbers,
                cautions,
            }
        })
        .collect()
}

/// The step in which a decision is made: the first, where a later one only takes it over from the
/// garment below.
///
/// # Panics
/// Never: every decision is made in a step, which a test holds.
pub fn step_of(decision: Decision) -> StepId {
    let made = |id: &&StepId| contents(**id).0.contains(&StepValue::Do(decision));
    let step = StepId::ALL.iter().find(made);
    *step.expect("every decision is made in a step")
}

/// The cautions that belong to a step.
pub fn cautions(id: StepId) -> &'static [Caution] {
    contents(id).1
}

/// Whether a decision of (nearly) nothing needs no mention.
fn optional(decision: Decision) -> bool {
    use Decision as D;
    matches!(
        decision,
        D::ShitamaeFoldBack
            | D::BackSeamHip
            | D::BackSeamTop
            | D::TakeUpFront
            | D::TakeUpRight
            | D::TakeUpBack
            | D::WaistPadding
            | D::HipPadding
    )
}

/// Whether a number is a height that a landmark can mark.
fn is_height(value: StepValue) -> bool {
    use Decision as D;
    matches!(
        value,
        StepValue::Do(D::KoshihimoBack | D::KoshihimoFront | D::ObiLowerEdge)
    )
}

/// Numbers and cautions of each step.
fn contents(id: StepId) -> (&'static [StepValue], &'static [Caution]) {
    use Caution as C;
    use Decision as D;
    use Quantity as Q;
    use StepValue::{Do, See};
    match id {
        StepId::Padding => (
            &[Do(D::WaistPadding), Do(D::HipPadding), See(Q::TrunkStep)],
            &[C::Heat, C::Pregnancy, C::Children],
        ),
        StepId::Juban => (
            &[
                Do(D::NapeDrop),
                Do(D::JubanOverlap),
                See(Q::JubanCrossing),
                See(Q::JubanHold),
            ],
            &[C::TightTies],
        ),
        StepId::PutOn => (&[Do(D::BackSeamTop), See(Q::SleeveShort)], &[]),
        StepId::Hem => (&[Do(D::HemHeight)], &[C::LongHem]),
        StepId::FrontCover => (&[See(Q::FrontCover), Do(D::BackSeamHip)], &[]),
        StepId::Shitamae => (
            &[
                Do(D::ShitamaeRaise),
                Do(D::ShitamaeFoldBack),
                See(Q::InnerCover),
            ],
            &[],
        ),
        StepId::Uwamae => (
            &[
                Do(D::UwamaeRaise),
                See(Q::UwamaeCorner),
                See(Q::CollarEndClearance),
            ],
            &[C::LongHem],
        ),
        StepId::Koshihimo => (
            &[Do(D::KoshihimoBack), Do(D::KoshihimoFront)],
            &[C::TightTies, C::Pregnancy, C::Fainting],
        ),
        StepId::Fold => (
            &[See(Q::ClothFront), See(Q::ClothRight), See(Q::ClothBack)],
            &[],
        ),
        StepId::Collar => (
            &[
                Do(D::NapeDrop),
                Do(D::KimonoOverlap),
                See(Q::JubanShow),
                See(Q::KimonoHold),
            ],
            &[],
        ),
        StepId::TakeUp => (
            &[
                Do(D::TakeUpFront),
                Do(D::TakeUpRight),
                Do(D::TakeUpBack),
                See(Q::FoldFront),
            ],
            &[C::TightTies],
        ),
        StepId::Obi => (
            &[
                Do(D::ObiLowerEdge),
                See(Q::FoldFront),
                See(Q::CollarEndVisible),
            ],
            &[C::TightTies, C::Fainting, C::Heat, C::Pregnancy],
        ),
        StepId::Drum => (&[Do(D::DrumHeight), Do(D::TareLength)], &[]),
        StepId::Obiage => (&[Do(D::ObiageShow)], &[]),
        StepId::Look => (
            &[
                See(Q::HemBack),
                See(Q::FrontCover),
                See(Q::FoldFront),
                See(Q::FoldSlant),
            ],
            &[C::Fainting, C::LongHem, C::Children],
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::{StepId, step_of};
    use crate::dressing::decision::Decision;

    #[test]
    fn every_decision_is_made_in_a_step_and_the_nape_with_the_juban() {
        let steps: Vec<StepId> = Decision::ALL.iter().map(|&d| step_of(d)).collect();
        assert_eq!(steps.len(), Decision::COUNT);
        assert_eq!(step_of(Decision::NapeDrop), StepId::Juban);
        assert!(step_of(Decision::HemHeight) < step_of(Decision::KoshihimoBack));
        assert!(step_of(Decision::KoshihimoBack) < step_of(Decision::ObiLowerEdge));
    }
}
