//! From the marks of a file to a shot of a photo.

use super::super::check::problems;
use super::super::film::share_of_film;
use super::super::mark::{Marks, Pixel, Placed};
use super::super::marking::LENS_HEIGHT_SD_CM;
use super::super::shot::{Known, Line, References, Shot, Tape};
use super::MarksFile;
use crate::measure::Length;
use crate::problem::{Fault, Problem};

impl MarksFile {
    /// These marks on a photo that is read at the size `read`, in pixels, and whose file has
    /// `whole`; `focal` is what the photo says, as in [`Shot::focal`]. What the file says of the
    /// lens goes before it.
    ///
    /// # Errors
    /// Every mark outside the picture, missing, or not to be seen from its side, floor and crown
    /// exchanged, in the pixels of the file; or that the marks belong to a picture of other
    /// proportions.
    pub fn shot(
        &self,
        whole: [u32; 2],
        read: [u32; 2],
        focal: Option<f64>,
    ) -> Result<Shot, Vec<Problem>> {
        let own = self.size.unwrap_or(whole);
        let mut found = Vec::new();
        if !alike(own, read) {
            found.push(of_another_picture(own, whole));
        }
        let shot = self.own(own, focal);
        found.extend(problems(&shot).into_iter().map(as_written));
        if found.is_empty() {
            Ok(scaled(shot, read))
        } else {
            Err(found)
        }
    }

    /// The shot in the pixels of the file.
    fn own(&self, size: [u32; 2], focal: Option<f64>) -> Shot {
        Shot {
            view: self.view,
            size,
            focal: self.focal_mm.map(|mm| share_of_film(mm, size)).or(focal),
            lens_height_cm: self.lens_height.map(|height| Known {
                value: height.length.cm(),
                sd: height.sd.map_or(LENS_HEIGHT_SD_CM, Length::cm),
            }),
            mirrored: self.mirrored,
            references: References {
                tape: self.tape.map(|tape| Tape {
                    ends: tape.ends,
                    length_cm: tape.length.length.cm(),
                }),
                ..self.references.clone()
            },
            marks: self.marks.clone(),
        }
    }

    /// The marks of a shot, for writing, in the pixels of a photo whose file has `whole`: to a
    /// tenth, which is finer than any edge. What else the shot knows is not written.
    pub fn of(shot: &Shot, whole: [u32; 2]) -> MarksFile {
        let shot = scaled(shot.clone(), whole);
        let tenths = |at: Pixel| at.map(|px| (px * 10.0).round() / 10.0);
        let marks = shot.marks.iter().map(|(mark, placed)| {
            let at = tenths(placed.at);
            (*mark, Placed { at, ..*placed })
        });
        MarksFile {
            size: Some(shot.size),
            mirrored: shot.mirrored,
            marks: marks.collect(),
            ..MarksFile::new(shot.view)
        }
    }
}

/// Whether two sizes are those of one picture, as far as whole pixels allow.
fn alike(a: [u32; 2], b: [u32; 2]) -> bool {
    let [width, height] = a.map(f64::from);
    let scale = f64::from(b[1]) / height;
    // Each size may be off by half a pixel, and the half of the first is scaled with it.
    (width * scale - f64::from(b[0])).abs() <= 1.0 + scale * (1.0 + width / height)
}

fn of_another_picture(own: [u32; 2], whole: [u32; 2]) -> Problem {
    let [width, height] = own.map(f64::from);
    let [photo_width, photo_height] = whole.map(f64::from);
    let fault = Fault::Contradiction {
        code: "marks-of-another-picture",
        english: "belongs to a picture of other proportions than this photo, which has {photo_width} \
                  by {photo_height} px upright; name the photo that was marked, whole",
        args: vec![("photo_width", photo_width), ("photo_height", photo_height)],
        other: Vec::new(),
    };
    Problem::new("size", format!("[{width}, {height}]"), fault)
}

/// The problem with its place as the file has it: places of lists are counted from 1.
fn as_written(problem: Problem) -> Problem {
    problem.renamed(|path| {
        let step = |part: &str| match part.parse::<usize>() {
            Ok(place) => (place + 1).to_string(),
            Err(_) => part.to_owned(),
        };
        let path = path
            .replace("size.0", "size.width")
            .replace("size.1", "size.height");
        let parts = path.split('.').filter(|part| *part != "at").map(step);
        parts.collect::<Vec<_>>().join(".")
    })
}

/// The same shot in the pixels of the picture as it is read.
fn scaled(shot: Shot, to: [u32; 2]) -> Shot {
    if shot.size == to {
        return shot;
    }
    let by: [f64; 2] = std::array::from_fn(|i| f64::from(to[i]) / f64::from(shot.size[i]));
    let most = to.map(f64::from);
    let place = |at: Pixel| -> Pixel { std::array::from_fn(|i| (at[i] * by[i]).min(most[i])) };
    let line = |ends: Line| ends.map(place);
    let marks: Marks = shot
        .marks
        .iter()
        .map(|(mark, placed)| {
            let at = place(placed.at);
            (*mark, Placed { at, ..*placed })
        })
        .collect();
    let references = shot.references;
    Shot {
        size: to,
        references: References {
            sheet: references.sheet.map(|corners| corners.map(place)),
            tape: references.tape.map(|tape| Tape {
                ends: line(tape.ends),
                ..tape
            }),
            uprights: references.uprights.into_iter().map(line).collect(),
            levels: references
                .levels
                .into_iter()
                .map(|pair| pair.map(line))
                .collect(),
        },
        marks,
        ..shot
    }
}
