//! A photo while it is being marked: what a hand has set, what follows it, what was typed.
//!
//! A hand sets the floor and the crown; everything else is expected from them and from every mark
//! that a hand has moved since. What a hand has set stays where it was set.

use std::collections::{BTreeMap, BTreeSet};

use serde::{Deserialize, Serialize};

use super::check::{LENS_HEIGHT_CM, TAPE_CM};
use super::expect::{Edge, Expected, FIRST, expect};
use super::mark::{Mark, Marks, Pixel, Placed, Trust, View};
use super::shot::{Known, Line, References, Shot, Tape};
use super::sitting::Subject;
use crate::measure::{Shaku, parse_length};
use crate::problem::{Fault, Problem};

/// Deviation of the height of a lens that was measured with a tape while a hand held the camera, in
/// centimetres (chosen).
pub(super) const LENS_HEIGHT_SD_CM: f64 = 3.0;

/// Marks that only a hand places: from the front and from behind the sleeves mostly hang over the
/// obi's outline (in 11 of 16 rendered photos).
const BY_HAND: [Mark; 2] = [Mark::ObiSideLeft, Mark::ObiSideRight];

/// A shot with how its marks came to be where they are.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Marking {
    /// The shot as it is read.
    pub shot: Shot,
    /// Marks that a hand has set or spoken for; the others follow.
    #[serde(default)]
    pub moved: BTreeSet<Mark>,
    /// Marks that a hand has taken away; they are not placed again.
    #[serde(default)]
    pub left_out: BTreeSet<Mark>,
    /// Whether marks go to the nearest strong edge.
    #[serde(default = "yes")]
    pub snapping: bool,
    /// How high the lens stood above the floor, as it was typed; empty when nobody knows.
    #[serde(default)]
    pub lens_height: String,
    /// A tape in the picture; none when there is none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tape: Option<TypedTape>,
}

/// A tape in the picture, as it was marked and typed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TypedTape {
    /// Its lower and its upper marked end.
    pub ends: Line,
    /// How much it reads between them, as it was typed.
    pub length: String,
}

fn yes() -> bool {
    true
}

impl Marking {
    /// A photo without marks: `size` in pixels, `focal` as in [`Shot::focal`].
    pub fn new(view: View, size: [u32; 2], focal: Option<f64>) -> Self {
        Self {
            shot: Shot {
                view,
                size,
                focal,
                lens_height_cm: None,
                mirrored: false,
                references: References::default(),
                marks: Marks::new(),
            },
            moved: BTreeSet::new(),
            left_out: BTreeSet::new(),
            snapping: true,
            lens_height: String::new(),
            tape: None,
        }
    }

    /// Whether the marks that come first are set, so that all others can be placed.
    pub fn begun(&self) -> bool {
        FIRST.iter().all(|mark| self.shot.marks.contains_key(mark))
    }

    /// Whether a hand has set a mark, or said that it is right where it stands.
    fn is_by_hand(&self, mark: Mark) -> bool {
        FIRST.contains(&mark) || self.moved.contains(&mark)
    }

    /// How many of the marks a hand has set, and how many there are.
    pub fn by_hand(&self) -> (usize, usize) {
        let marks = &self.shot.marks;
        let set = marks.keys().filter(|mark| self.is_by_hand(**mark));
        (set.count(), marks.len())
    }

    /// The shot as it is to be read: without the marks that stand where the plan has them and where
    /// neither an edge nor a hand says so. To read those would be to read the plan.
    pub fn seen(&self) -> Shot {
        let mut shot = self.shot.clone();
        let is_seen = |placed: &Placed| placed.trust == Trust::Sure;
        shot.marks
            .retain(|mark, placed| is_seen(placed) || self.is_by_hand(*mark));
        shot
    }

    /// Brings the shot in line with what was typed and left out, and tells what could not be read.
    /// A length that cannot be read, or is none that is possible, is not used; its text stays.
    pub fn settle(&mut self) -> Vec<Problem> {
        let mut problems = Vec::new();
        let mut length = |place: &str, text: &str, range: (f64, f64)| match read(text, range) {
            Ok(cm) => cm,
            Err(fault) => {
                problems.push(Problem::new(place, text, fault));
                None
            }
        };
        let height = length("lens_height", &self.lens_height, LENS_HEIGHT_CM);
        self.shot.lens_height_cm = height.map(|value| Known {
            value,
            sd: LENS_HEIGHT_SD_CM,
        });
        self.shot.references.tape = self.tape.as_ref().and_then(|tape| {
            let length_cm = length("tape_length", &tape.length, TAPE_CM)?;
            Some(Tape {
                ends: tape.ends,
                length_cm,
            })
        });
        let left_out = &self.left_out;
        self.shot.marks.retain(|mark, _| !left_out.contains(mark));
        let marks = &self.shot.marks;
        self.moved.retain(|mark| marks.contains_key(mark));
        problems
    }

    /// Exchanges left and right, as in a mirror: what a hand has set on one side of the wearer it
    /// has set on the other.
    pub fn turn(&mut self) {
        self.shot.mirrored = !self.shot.mirrored;
        let marks = std::mem::take(&mut self.shot.marks);
        self.shot.marks = marks
            .into_iter()
            .map(|(mark, placed)| (mark.mirrored(), placed))
            .collect();
        for set in [&mut self.moved, &mut self.left_out] {
            *set = set.iter().map(|mark| mark.mirrored()).collect();
        }
    }

    /// Places every mark that no hand has set or left out where it is expected to be in sight;
    /// `snap` may move it to an edge nearby, and one that finds none is unsure. Answers where every
    /// mark is expected, also those that are not in sight.
    ///
    /// Without floor and crown nothing is expected, and nothing placed.
    ///
    /// # Errors
    /// As [`expect`]; the marks then stay as they are.
    pub fn follow(
        &mut self,
        subject: &Subject<'_>,
        snap: impl Fn(Pixel, Edge) -> Option<Pixel>,
    ) -> Result<BTreeMap<Mark, Expected>, Vec<Problem>> {
        if !self.begun() {
            return Ok(BTreeMap::new());
        }
        let mut set = self.shot.clone();
        set.marks.retain(|mark, _| self.is_by_hand(*mark));
        let expected = expect(subject, &set)?;
        for (&mark, place) in &expected {
            if self.is_by_hand(mark) || self.left_out.contains(&mark) {
                continue;
            }
            if !place.in_sight || BY_HAND.contains(&mark) {
                self.shot.marks.remove(&mark);
                continue;
            }
            let [width, height] = self.shot.size.map(f64::from);
            let inside = |[x, y]: &Pixel| (0.0..=width).contains(x) && (0.0..=height).contains(y);
            let snapped = self.snapping.then(|| snap(place.at, place.edge)).flatten();
            let snapped = snapped.filter(inside);
            // Where no edge was found there is only the plan, which is no reading.
            let (at, trust) = match snapped {
                Some(at) => (at, Trust::Sure),
                None => (place.at, Trust::Unsure),
            };
            self.shot.marks.insert(mark, Placed { at, trust });
        }
        Ok(expected)
    }
}

/// A typed length in centimetres; none when nothing was typed.
fn read(text: &str, (low_cm, high_cm): (f64, f64)) -> Result<Option<f64>, Fault> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let written = parse_length(text, Shaku::Kujira).map_err(Fault::Unreadable)?;
    let cm = written.length.cm();
    if (low_cm..=high_cm).contains(&cm) {
        Ok(Some(cm))
    } else {
        Err(Fault::OutOfRange { low_cm, high_cm })
    }
}
