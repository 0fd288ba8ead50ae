//! A scene as a dresser marks it on its photo, and what the marks then read as.

use sunbu_core::dressing::Quantity;
use sunbu_core::measure::Z_90;
use sunbu_core::photo::{Mark, Marks, Placed, Reading, References, Shot, Subject, Trust, read};
use sunbu_core::problem::Problem;

use crate::{Random, Scene};

/// Deviation of a mark on either axis, in pixels, at 1,500 px of body height.
pub const MARK_PX: f64 = 2.0;
/// A guessed mark is off as by so many more hands: by 8 px in all.
const GUESSES: u32 = 15;

/// What the reader is told beside the marks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Told {
    /// The focal length, as a photo's own data say it: a whole number of millimetres.
    pub focal: bool,
    /// The corners of the A4 sheet, where one stands at the feet.
    pub sheet: bool,
}

impl Scene {
    /// The photo as a dresser marks it: every place in sight, each off by hand; where hem or hair
    /// hide floor or crown, she guesses and says so.
    pub fn marked(&self, told: Told, seed: u64) -> Shot {
        let random = &mut Random::of(seed ^ 0xD157);
        let mut off = |at: [f64; 2]| at.map(|v| v + MARK_PX * random.normal());
        let [width, height] = self.lens.size;
        let inside = |at: [f64; 2]| {
            (0.0..=f64::from(width)).contains(&at[0]) && (0.0..=f64::from(height)).contains(&at[1])
        };
        let mut marks = Marks::new();
        for (mark, seen) in self.truth() {
            let guessed = !seen.visible && matches!(mark, Mark::Floor | Mark::Crown);
            if !seen.visible && !guessed {
                continue;
            }
            let mut at = off(seen.pixel);
            for _ in 0..if guessed { GUESSES } else { 0 } {
                at = off(at);
            }
            if inside(at) {
                let trust = if guessed { Trust::Unsure } else { Trust::Sure };
                marks.insert(mark, Placed { at, trust });
            }
        }
        let corners = self.sheet().filter(|_| told.sheet);
        let corners = corners.map(|corners| corners.map(&mut off));
        let share = self.lens.focal_px / f64::from(width.max(height));
        Shot {
            view: self.view,
            size: self.lens.size,
            focal: told.focal.then(|| (36.0 * share).round() / 36.0),
            lens_height_cm: None,
            mirrored: false,
            references: References {
                sheet: corners.filter(|corners| corners.iter().all(|at| inside(*at))),
                ..References::default()
            },
            marks,
        }
    }

    /// What a shot of this scene reads as.
    ///
    /// # Errors
    /// What the reader refuses.
    pub fn read(&self, shot: &Shot) -> Result<Reading, Vec<Problem>> {
        let subject = Subject {
            body: &self.subject.body,
            fitting: &self.subject.fitting,
            planned: &self.subject.planned,
        };
        read(&subject, shot)
    }
}

/// One length that was read, against the truth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Miss {
    /// Which.
    pub quantity: Quantity,
    /// Read less true, in centimetres.
    pub off: f64,
    /// The deviation that the reader stated, in centimetres.
    pub sd: f64,
    /// Whether it is not in sight and was inferred: the cover where the fold hides the collar end.
    pub inferred: bool,
}

impl Miss {
    /// Whether it is a length in sight within a metre of the floor: heights and widths of hem, fold,
    /// edges, seams and obi. Loops and tapers are girths, which no single place of a photo shows.
    pub fn is_low_length(&self) -> bool {
        use Quantity as Q;
        if self.inferred {
            return false;
        }
        matches!(
            self.quantity,
            Q::HemBack
                | Q::UwamaeCorner
                | Q::FrontCover
                | Q::BackSeamHip
                | Q::CollarEndVisible
                | Q::FoldFront
                | Q::FoldRight
                | Q::FoldBack
                | Q::FoldSlant
                | Q::ObiOverHipBone
                | Q::TareLength
        )
    }
}

/// What so many random scenes read as, and how many were refused.
pub fn misses(photos: u64, told: Told) -> (Vec<Miss>, u64) {
    let mut out = Vec::new();
    let mut refused = 0;
    for seed in 0..photos {
        let scene = Scene::random(seed);
        let shot = scene.marked(told, seed);
        let Ok(reading) = scene.read(&shot) else {
            refused += 1;
            continue;
        };
        let hidden = !shot.marks.contains_key(&Mark::CollarEnd);
        for &quantity in reading.quantities() {
            if let Some(known) = reading.get(quantity) {
                out.push(Miss {
                    quantity,
                    off: known.value - scene.quantity(quantity),
                    sd: known.sd,
                    inferred: hidden && quantity == Quantity::FrontCover,
                });
            }
        }
    }
    (out, refused)
}

/// How far off readings are, and how honest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figures {
    /// How many.
    pub count: usize,
    /// Half of them are off by less, in centimetres.
    pub median: f64,
    /// Nineteen in twenty are off by less, in centimetres.
    pub p95: f64,
    /// The mean error with its sign, in centimetres.
    pub bias: f64,
    /// The share of truths inside the stated 90 % intervals.
    pub inside: f64,
}

impl Figures {
    /// Of these.
    pub fn of<'a>(misses: impl IntoIterator<Item = &'a Miss>) -> Self {
        let misses: Vec<&Miss> = misses.into_iter().collect();
        let mut off: Vec<f64> = misses.iter().map(|m| m.off.abs()).collect();
        off.sort_by(f64::total_cmp);
        let count = misses.len();
        let at = |percent: usize| off.get(count * percent / 100).copied().unwrap_or(f64::NAN);
        let n = count.max(1) as f64;
        let inside = misses.iter().filter(|m| m.off.abs() <= Z_90 * m.sd).count();
        Self {
            count,
            median: at(50),
            p95: at(95),
            bias: misses.iter().map(|m| m.off).sum::<f64>() / n,
            inside: inside as f64 / n,
        }
    }
}
