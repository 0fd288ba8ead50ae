//! The form of a marks file, for its schema. The file is TOML; what is read of it is read by the
//! core, which also tells what no schema can: whether marks lie on their photo.

use std::collections::BTreeMap;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use sunbu_core::photo::{FOCAL_MM, Mark, SIDE_PX};

use super::keys;

/// The marks of one photo, as TOML.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
#[expect(
    dead_code,
    reason = "stands for the form of a file that the core reads"
)]
pub struct MarksForm {
    /// From which side the photo shows her.
    #[schemars(schema_with = "keys::view")]
    view: String,
    /// Width and height of the picture that the pixels belong to; the photo's own where it is left
    /// out. A smaller or larger copy of the photo will do.
    #[schemars(schema_with = "size")]
    #[serde(default)]
    size: Option<[u32; 2]>,
    /// Whether the picture was taken in a mirror, so that left and right are exchanged.
    #[serde(default)]
    mirrored: bool,
    /// How high the lens stood above the floor.
    #[schemars(schema_with = "measured")]
    #[serde(default)]
    lens_height: Option<()>,
    /// Focal length as on 35 mm film, in millimetres, where the photo itself does not say.
    #[schemars(schema_with = "focal")]
    #[serde(default)]
    focal_35mm: Option<f64>,
    /// Faults seen by eye.
    #[schemars(schema_with = "faults")]
    #[serde(default)]
    seen: Vec<String>,
    /// What else in the picture has a known size or direction.
    #[serde(default)]
    references: ReferencesForm,
    /// The marks; floor and crown must be among them.
    #[schemars(schema_with = "marks")]
    #[serde(default)]
    marks: BTreeMap<String, ()>,
}

/// Things of known size or direction in the picture.
#[derive(Default, JsonSchema)]
#[schemars(deny_unknown_fields)]
#[expect(
    dead_code,
    reason = "stands for the form of a file that the core reads"
)]
struct ReferencesForm {
    /// The corners of an A4 sheet stood upright on the floor at the feet, long side up: upper left,
    /// upper right, lower right, lower left.
    #[schemars(schema_with = "sheet")]
    #[serde(default)]
    sheet: Option<()>,
    /// A tape held upright with its zero on the floor at the feet.
    #[serde(default)]
    tape: Option<TapeForm>,
    /// Edges that stand upright, each by its two ends.
    #[schemars(schema_with = "lines")]
    #[serde(default)]
    uprights: Vec<()>,
    /// Pairs of level edges that run side by side.
    #[schemars(schema_with = "pairs")]
    #[serde(default)]
    levels: Vec<()>,
}

/// A tape in the picture.
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
#[expect(
    dead_code,
    reason = "stands for the form of a file that the core reads"
)]
struct TapeForm {
    /// Its lower and its upper marked end.
    #[schemars(schema_with = "line")]
    ends: (),
    /// How much it reads between them.
    #[schemars(schema_with = "length")]
    length: (),
}

/// Exactly so many of something.
fn several(what: Schema, count: usize) -> Schema {
    json_schema!({ "type": "array", "items": what, "minItems": count, "maxItems": count })
}

fn place(_: &mut SchemaGenerator) -> Schema {
    let px = json_schema!({ "type": "number", "minimum": 0, "maximum": SIDE_PX.1 });
    several(px, 2)
}

fn size(_: &mut SchemaGenerator) -> Schema {
    let px = json_schema!({ "type": "integer", "minimum": SIDE_PX.0, "maximum": SIDE_PX.1 });
    several(px, 2)
}

fn focal(_: &mut SchemaGenerator) -> Schema {
    json_schema!({ "type": "number", "minimum": FOCAL_MM.0, "maximum": FOCAL_MM.1 })
}

/// A number of centimetres, or a length as people write it.
fn length(_: &mut SchemaGenerator) -> Schema {
    json_schema!({ "type": ["number", "string"] })
}

fn measured(generator: &mut SchemaGenerator) -> Schema {
    let length = length(generator);
    json_schema!({
        "anyOf": [length.clone(), {
            "type": "object",
            "properties": { "value": length.clone(), "sd": length },
            "required": ["value"],
            "additionalProperties": false,
        }]
    })
}

fn faults(generator: &mut SchemaGenerator) -> Schema {
    let fault = keys::fault(generator);
    json_schema!({ "type": "array", "items": fault })
}

fn sheet(generator: &mut SchemaGenerator) -> Schema {
    several(place(generator), 4)
}

fn line(generator: &mut SchemaGenerator) -> Schema {
    several(place(generator), 2)
}

fn lines(generator: &mut SchemaGenerator) -> Schema {
    let line = line(generator);
    json_schema!({ "type": "array", "items": line })
}

fn pairs(generator: &mut SchemaGenerator) -> Schema {
    let pair = several(line(generator), 2);
    json_schema!({ "type": "array", "items": pair })
}

/// A place for each mark, or a place that is said to be unsure.
fn marks(generator: &mut SchemaGenerator) -> Schema {
    let at = place(generator);
    let mark = json_schema!({
        "anyOf": [at.clone(), {
            "type": "object",
            "properties": { "at": at, "unsure": { "type": "boolean" } },
            "required": ["at"],
            "additionalProperties": false,
        }]
    });
    let all = Mark::ALL
        .iter()
        .map(|m| (m.key().to_owned(), mark.clone().to_value()));
    let all: serde_json::Map<String, serde_json::Value> = all.collect();
    json_schema!({
        "type": "object",
        "properties": all,
        "required": [Mark::Floor.key(), Mark::Crown.key()],
        "additionalProperties": false,
    })
}
