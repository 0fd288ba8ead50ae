//! Who looks at the hem: `--seen-by`, and what they see.

use clap::ArgMatches;
use schemars::JsonSchema;
use serde::Serialize;
use sunbu_core::body::Body;
use sunbu_core::dressing::{
    Dressing, Fitting, HemSeen, Onlooker, Prediction, Viewer, ViewerError, hem_seen,
};
use sunbu_core::measure::{Shaku, Z_90, parse_signed_length};
use sunbu_core::photo::View;
use sunbu_words::Words;

use crate::page::Page;
use crate::report::{Interval, cm};
use crate::trouble::Trouble;

/// Somebody who looks from the front.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Eye {
    /// Who it is; none when only the place of the eye was given.
    onlooker: Option<Onlooker>,
    viewer: Viewer,
}

/// The eyes that were asked for, in their order.
///
/// # Errors
/// Every one that is neither a known onlooker nor `EYE,DISTANCE[,FLOOR]` within reach.
pub fn asked(given: &ArgMatches) -> Result<Vec<Eye>, Vec<Trouble>> {
    let mut wrong = Vec::new();
    let all = given.get_many::<String>("seen-by").unwrap_or_default();
    let eyes = all
        .filter_map(|text| eye(text).map_err(|trouble| wrong.push(trouble)).ok())
        .collect();
    if wrong.is_empty() {
        Ok(eyes)
    } else {
        Err(wrong)
    }
}

fn eye(text: &str) -> Result<Eye, Trouble> {
    if let Some(onlooker) = Onlooker::from_key(text.trim()) {
        return Ok(Eye {
            onlooker: Some(onlooker),
            viewer: onlooker.viewer(),
        });
    }
    let known: Vec<&str> = Onlooker::ALL.iter().map(|o| o.key()).collect();
    let no_eye =
        || Trouble::at("--seen-by", text, "trouble-seen-by").with("known", known.join(", "));
    let length = |part: &str| parse_signed_length(part, Shaku::Kujira).map(|w| w.length.cm());
    let read: Result<Vec<f64>, _> = text.split(',').map(length).collect();
    let viewer = match *read.map_err(|_| no_eye())?.as_slice() {
        [eye, distance] => Viewer::new(eye, distance, 0.0),
        [eye, distance, floor] => Viewer::new(eye, distance, floor),
        _ => return Err(no_eye()),
    };
    let viewer = viewer.map_err(
        |ViewerError {
             field, low, high, ..
         }| {
            let code = match field {
                "eye_cm" => "trouble-seen-by-eye",
                "distance_cm" => "trouble-seen-by-distance",
                _ => "trouble-seen-by-floor",
            };
            Trouble::at("--seen-by", text, code)
                .with("low", low.to_string())
                .with("high", high.to_string())
        },
    )?;
    Ok(Eye {
        onlooker: None,
        viewer,
    })
}

/// What one of them sees.
#[derive(Debug, Clone, Copy)]
pub struct Sight {
    eye: Eye,
    seen: HemSeen,
}

/// What each of them sees of a dressing; `prediction` is that of the same dressing.
pub fn sights(
    eyes: &[Eye],
    (body, fitting): (&Body, &Fitting),
    dressing: &Dressing,
    prediction: &Prediction,
) -> Vec<Sight> {
    let sight = |eye: &Eye| Sight {
        eye: *eye,
        seen: hem_seen(body, fitting, dressing, prediction, eye.viewer, View::Front),
    };
    eyes.iter().map(sight).collect()
}

/// What they see, as a part of a page; nothing when nobody looks.
pub fn say(words: &Words, page: &mut Page, sights: &[Sight]) {
    if sights.is_empty() {
        return;
    }
    page.heading(&words.get("cli-seen-by"));
    for Sight { eye, seen } in sights {
        let (place, sentence) = (words.viewer(&eye.viewer), words.hem_seen(seen));
        let place = ("place", (&place).into());
        let sentence = ("sentence", (&sentence).into());
        let line = match eye.onlooker {
            Some(onlooker) => {
                let who = words.onlooker(onlooker);
                words.with(
                    "cli-seen-by-one",
                    &[("who", (&who).into()), place, sentence],
                )
            }
            None => words.with("cli-seen-by-eye", &[place, sentence]),
        };
        page.item("- ", &line);
    }
}

/// The hem as one eye before her sees it.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct SeenBy {
    /// Who it is; none when only the place of the eye was given.
    onlooker: Option<&'static str>,
    /// Height of the eye above the floor she stands on.
    eye_height_cm: f64,
    /// How far away, level.
    #[schemars(range(min = 0.0))]
    distance_cm: f64,
    /// Where on the leg the hem is seen, above her floor.
    at_leg_cm: f64,
    at_leg_interval_90: Interval,
    /// How much of the leg shows above the ankle bone; below zero, by how much it is covered.
    bare_cm: f64,
    bare_interval_90: Interval,
    sentence: String,
}

/// What they see, as parts of a document.
pub fn documents(words: &Words, sights: &[Sight]) -> Vec<SeenBy> {
    let about = |value: f64, sd: f64| Interval::from((value - Z_90 * sd, value + Z_90 * sd));
    let one = |Sight { eye, seen }: &Sight| SeenBy {
        onlooker: eye.onlooker.map(Onlooker::key),
        eye_height_cm: cm(eye.viewer.height_cm()),
        distance_cm: cm(eye.viewer.distance_cm()),
        at_leg_cm: cm(seen.at_leg_cm),
        at_leg_interval_90: about(seen.at_leg_cm, seen.at_leg_sd_cm),
        bare_cm: cm(seen.bare_cm),
        bare_interval_90: about(seen.bare_cm, seen.bare_sd_cm),
        sentence: words.hem_seen(seen),
    };
    sights.iter().map(one).collect()
}
