//! The words that fields of the documents may hold, for their schemas.

use schemars::{Schema, SchemaGenerator, json_schema};
use sunbu_core::body::BodyMeasure;
use sunbu_core::dressing::{
    Caution, Cut, Decision, HandUnit, Landmark, Occasion, Quantity, Remedy, StepId, Verdict,
};
use sunbu_core::fault::Fault;
use sunbu_core::garment::{Cloth, Kind, MitakeFrom, Part};
use sunbu_core::photo::{Mark, Skew, View};
use sunbu_words::Lang;

fn one_of(keys: impl Iterator<Item = &'static str>) -> Schema {
    let keys: Vec<&str> = keys.collect();
    json_schema!({ "type": "string", "enum": keys })
}

macro_rules! keyed {
    ($($(#[$doc:meta])* $name:ident $of:ident $key:ident;)*) => {
        $(
            $(#[$doc])*
            pub fn $name(_: &mut SchemaGenerator) -> Schema {
                one_of($of::ALL.iter().map(|member| member.$key()))
            }
        )*
    };
}

keyed! {
    /// Measures of the body.
    measure BodyMeasure key;
    /// Cautions.
    caution Caution key;
    /// How the cloth handles.
    cloth Cloth key;
    /// How a garment's cut differs.
    cut Cut key;
    /// What the hands decide.
    decision Decision key;
    /// Parts of the hand.
    hand_unit HandUnit key;
    /// Faults of the catalogue.
    fault Fault key;
    /// Kinds of garment.
    kind Kind key;
    /// Landmarks of the body.
    landmark Landmark key;
    /// Languages.
    lang Lang code;
    /// Places marked on a photo.
    mark Mark key;
    /// From where a garment's length was taken.
    mitake_from MitakeFrom key;
    /// Occasions.
    occasion Occasion key;
    /// Parts of a garment.
    part Part key;
    /// What is seen.
    quantity Quantity key;
    /// Kinds of change.
    remedy Remedy key;
    /// Differences between left and right.
    skew Skew key;
    /// Steps.
    step StepId key;
    /// Sides of a photo.
    view View key;
    /// Verdicts.
    verdict Verdict key;
}

/// Where a number came from.
pub fn origin(_: &mut SchemaGenerator) -> Schema {
    one_of(["taped", "completed", "photo", "customary", "learned"].into_iter())
}

/// Which population table completes a person.
pub fn sex(_: &mut SchemaGenerator) -> Schema {
    one_of(["women", "men"].into_iter())
}

/// Which end of its limits holds a decision.
pub fn side(_: &mut SchemaGenerator) -> Schema {
    one_of(["low", "high", "locked"].into_iter())
}

/// Whether a step's number is done or seen.
pub fn about(_: &mut SchemaGenerator) -> Schema {
    one_of(["do", "see"].into_iter())
}

/// Landmarks of the body, or none.
pub fn landmark_or_none(generator: &mut SchemaGenerator) -> Schema {
    let landmark = landmark(generator);
    json_schema!({ "anyOf": [landmark, { "type": "null" }] })
}

/// Which panel a photo shows on top.
pub fn wrap(_: &mut SchemaGenerator) -> Schema {
    one_of(["left_over_right", "right_over_left", "untold"].into_iter())
}

/// What kind of change is advised.
pub fn advice(_: &mut SchemaGenerator) -> Schema {
    one_of(["way", "change", "fault"].into_iter())
}

/// Why something was not read.
pub fn unseen(_: &mut SchemaGenerator) -> Schema {
    one_of(["covered", "other_side", "not_marked"].into_iter())
}
