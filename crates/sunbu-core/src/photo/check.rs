//! Whether a shot can be read at all: every fault of its marks at once.

use super::mark::{Mark, Pixel};
use super::shot::Shot;
use crate::problem::{Fault, Problem};

/// A picture's sides, in pixels: smaller ones show too little, larger ones no lens makes.
pub const SIDE_PX: (u32, u32) = (100, 20_000);
/// Focal length over the longer side: from a very wide lens to a long one.
pub const FOCAL_RANGE: (f64, f64) = (0.3, 8.0);
/// Height of the lens above the floor, in centimetres.
pub const LENS_HEIGHT_CM: (f64, f64) = (0.0, 400.0);
/// Length of a tape in the picture, in centimetres.
pub const TAPE_CM: (f64, f64) = (10.0, 300.0);

/// Floor to crown on the picture, over its height: a smaller figure cannot be read.
const LEAST_FIGURE: f64 = 0.15;

/// Everything that is wrong with a shot.
pub(super) fn problems(shot: &Shot) -> Vec<Problem> {
    let mut found = Vec::new();
    let mut range = |place: &str, value: f64, (low, high): (f64, f64), unit: &'static str| {
        if !(low..=high).contains(&value) {
            let fault = Fault::NumberOutOfRange { low, high, unit };
            found.push(Problem::new(place, format!("{value}"), fault));
        }
    };
    for (name, side) in ["size.0", "size.1"].iter().zip(shot.size) {
        let (low, high) = (f64::from(SIDE_PX.0), f64::from(SIDE_PX.1));
        range(name, f64::from(side), (low, high), "px");
    }
    if let Some(focal) = shot.focal {
        range("focal", focal, FOCAL_RANGE, "");
    }
    if let Some(height) = shot.lens_height_cm {
        range("lens_height_cm.value", height.value, LENS_HEIGHT_CM, "cm");
        range("lens_height_cm.sd", height.sd, (0.1, 100.0), "cm");
    }
    if let Some(tape) = &shot.references.tape {
        range("references.tape.length_cm", tape.length_cm, TAPE_CM, "cm");
    }
    for (place, at) in points(shot) {
        for (axis, value) in ["x", "y"].iter().zip(at) {
            let most = f64::from(if *axis == "x" {
                shot.size[0]
            } else {
                shot.size[1]
            });
            range(&format!("{place}.{axis}"), value, (0.0, most), "px");
        }
    }
    if found.is_empty() {
        found.extend(together(shot));
    }
    found
}

/// Every marked point with its place in the file.
fn points(shot: &Shot) -> Vec<(String, Pixel)> {
    let mut all: Vec<(String, Pixel)> = shot
        .marks
        .iter()
        .map(|(mark, placed)| (format!("marks.{}.at", mark.key()), placed.at))
        .collect();
    let references = &shot.references;
    if let Some(corners) = &references.sheet {
        all.extend(
            corners
                .iter()
                .enumerate()
                .map(|(i, at)| (format!("references.sheet.{i}"), *at)),
        );
    }
    if let Some(tape) = &references.tape {
        let ends = tape.ends.iter().enumerate();
        all.extend(ends.map(|(i, at)| (format!("references.tape.ends.{i}"), *at)));
    }
    for (i, line) in references.uprights.iter().enumerate() {
        all.extend(
            line.iter()
                .enumerate()
                .map(|(k, at)| (format!("references.uprights.{i}.{k}"), *at)),
        );
    }
    for (i, pair) in references.levels.iter().enumerate() {
        for (j, line) in pair.iter().enumerate() {
            let ends = line.iter().enumerate();
            all.extend(ends.map(|(k, at)| (format!("references.levels.{i}.{j}.{k}"), *at)));
        }
    }
    all
}

/// What is wrong with marks that are each possible.
fn together(shot: &Shot) -> Vec<Problem> {
    let mut found = Vec::new();
    for &mark in shot.marks.keys() {
        if !mark.shows_in(shot.view) {
            found.push(contradiction(
                format!("marks.{}", mark.key()),
                "mark-not-in-view",
                "cannot be seen from this side; leave it out, or choose the side that the photo shows",
                Vec::new(),
            ));
        }
    }
    let (Some(floor), Some(crown)) = (shot.marks.get(&Mark::Floor), shot.marks.get(&Mark::Crown))
    else {
        for mark in [Mark::Floor, Mark::Crown] {
            if !shot.marks.contains_key(&mark) {
                found.push(Problem::new(
                    format!("marks.{}", mark.key()),
                    "",
                    Fault::Missing,
                ));
            }
        }
        return found;
    };
    let height = f64::from(shot.size[1]);
    if floor.at[1] - crown.at[1] < LEAST_FIGURE * height {
        found.push(contradiction(
            format!("marks.{}", Mark::Crown.key()),
            "crown-not-above-floor",
            "must lie well above the floor mark: at least 15 % of the picture's height; were the two exchanged?",
            vec![format!("marks.{}", Mark::Floor.key())],
        ));
    }
    found
}

fn contradiction(
    place: String,
    code: &'static str,
    english: &'static str,
    other: Vec<String>,
) -> Problem {
    Problem::new(
        place,
        "",
        Fault::Contradiction {
            code,
            english,
            args: Vec::new(),
            other,
        },
    )
}

/// That no camera sees the marks as they were set.
pub(super) fn does_not_fit() -> Problem {
    contradiction(
        "marks".to_owned(),
        "marks-do-not-fit",
        "no lens sees these marks so; check them one by one, floor and crown first",
        Vec::new(),
    )
}
