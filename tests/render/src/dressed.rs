//! The dressed person as she is photographed: the drape with what hands left askew.

use std::f64::consts::TAU;

use sunbu_core::drape::{Drape, OBI_OUT, Round};
use sunbu_core::dressing::Given;

use crate::build::{Build, Stance};
use crate::people::Real;
use crate::vector::V3;

/// How far the collar stands off the back at the nape, in centimetres, as in the drape.
const NAPE_OUT: f64 = 1.5;
/// Below the nape the cloth comes back to the body within so much, in centimetres.
const NAPE_REACH: f64 = 12.0;
/// How far the obiage stands out over the cloth under it.
pub(crate) const OBIAGE_OUT: f64 = 0.6 * OBI_OUT;

/// Whose collar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Collar {
    Juban,
    Kimono,
}

/// What is not alike on both sides though the plan has it so, in centimetres.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Skews {
    /// The hem higher on the left than on the right, outline to outline.
    pub hem_slant: f64,
    /// The obi's edges higher on the left than on the right.
    pub obi_slant: f64,
    /// The fold's lower edge higher on the left than on the right, beyond the plan's own slant.
    pub fold_slant: f64,
    /// The collars' crossings to the left of the middle.
    pub crossing_off: f64,
    /// How much more of the juban's collar shows on the left than on the right.
    pub han_eri_difference: f64,
}

/// A drape with its asymmetries, and the person's uncovered parts.
#[derive(Debug, Clone)]
pub struct Dressed<'a> {
    /// The drape; its rounds already carry the slants.
    pub drape: Drape<'a>,
    /// What is askew.
    pub skews: Skews,
    pub(crate) build: Build,
    /// Width of the kimono's collar as worn.
    pub(crate) collar_width: f64,
    /// Centre back to the sleeve seam.
    pub(crate) katahaba: f64,
    /// Centre back to the sleeve's end.
    pub(crate) yuki: f64,
    pub(crate) sodetake: f64,
    pub(crate) hip: f64,
}

/// Lengths of the garment that the drape does not know.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Parts {
    pub collar_width: f64,
    pub katahaba: f64,
    pub sodetake: f64,
}

impl<'a> Dressed<'a> {
    pub(crate) fn new(real: &'a Real, parts: Parts, skews: Skews, stance: Stance) -> Self {
        let mut drape = Drape::new(&real.body, &real.fitting, &real.dressing, &real.appearance);
        let slant = |line: Round, by: f64| Round {
            left: line.left + 0.5 * by,
            right: line.right - 0.5 * by,
            ..line
        };
        drape.obi = slant(drape.obi, skews.obi_slant);
        drape.fold = slant(drape.fold, skews.fold_slant + skews.obi_slant);
        let yuki = real.fitting.value(Given::Yuki);
        Self {
            drape,
            skews,
            build: Build::of(&real.body, stance),
            collar_width: parts.collar_width,
            katahaba: parts.katahaba.min(yuki - 10.0),
            yuki,
            sodetake: parts.sodetake,
            hip: real.fitting.value(Given::HipHeight),
        }
    }

    /// Which way round an arc lies, as the share of a turn that its share of each quarter is.
    pub fn turn(&self, s: f64, z: f64) -> f64 {
        let (girth, side) = (self.drape.surface.girth(z), self.drape.surface.side_arc(z));
        let s = s.rem_euclid(girth);
        let (way, mirrored) = if s > 0.5 * girth {
            (girth - s, true)
        } else {
            (s, false)
        };
        let quarter = 0.25 * TAU;
        let turn = if way < side {
            quarter * way / side
        } else {
            quarter * (1.0 + (way - side) / (0.5 * girth - side))
        };
        if mirrored { TAU - turn } else { turn }
    }

    fn askew(&self, s: f64) -> f64 {
        0.5 * self.skews.hem_slant * self.turn(s, self.drape.hem).sin()
    }

    /// Height of the hem of the back and the outer panel at an arc.
    pub fn hem(&self, s: f64) -> f64 {
        self.drape.hem_at(s) + self.askew(s)
    }

    /// Height of the outer panel's corner, and of its collar end.
    pub fn corner(&self) -> (f64, f64) {
        let by = self.askew(self.drape.outer_edge(self.drape.outer_corner));
        (self.drape.outer_corner + by, self.drape.collar_end + by)
    }

    /// Height of the level hem of the back panel at an arc.
    pub fn back_hem(&self, s: f64) -> f64 {
        self.drape.hem + self.askew(s)
    }

    /// Height of the inner panel's hem at an arc on the right or in front: level to the right
    /// side seam, from there straight up to its corner.
    pub fn inner_hem(&self, s: f64) -> f64 {
        let d = &self.drape;
        let (seam, corner) = (d.right_seam(d.hem), d.inner_edge(d.inner_corner));
        let share = ((seam - s) / (seam - corner).max(1.0)).clamp(0.0, 1.0);
        d.hem + share * (d.inner_corner - d.hem) + self.askew(s)
    }

    fn overlap(&self, collar: Collar) -> f64 {
        match collar {
            Collar::Juban => self.drape.juban_overlap,
            Collar::Kimono => self.drape.kimono_overlap,
        }
    }

    /// How far left a collar's inner edge runs at a height; of the one that comes from the left
    /// shoulder, or of the one from the right.
    pub(crate) fn collar_x(&self, collar: Collar, z: f64, left: bool) -> f64 {
        let d = &self.drape;
        let share = ((d.side_neck - z) / (d.side_neck - d.chest_tie)).clamp(0.0, 1.2);
        let x = d.collar_x(self.overlap(collar), z);
        let off = self.skews.crossing_off * share;
        // The juban's collar shows most half way down.
        let bow = match collar {
            Collar::Juban => (4.0 * share * (1.0 - share)).max(0.0),
            Collar::Kimono => 0.0,
        };
        let more = 0.5 * self.skews.han_eri_difference * bow;
        if left { x + off - more } else { off - x - more }
    }

    /// How far left, and how high, the two collars of an overlap cross.
    pub(crate) fn crossing(&self, collar: Collar) -> [f64; 2] {
        let d = &self.drape;
        let (mut low, mut high) = (d.chest_tie - 5.0, d.side_neck);
        for _ in 0..50 {
            let z = 0.5 * (low + high);
            if self.collar_x(collar, z, true) > self.collar_x(collar, z, false) {
                high = z;
            } else {
                low = z;
            }
        }
        [self.collar_x(collar, low, true), low]
    }

    /// A place on the breast by how far left and how high it is.
    pub fn on_breast(&self, left: f64, z: f64) -> V3 {
        let surface = &self.drape.surface;
        surface.at(surface.front_arc(left, z), z, 0.0)
    }

    /// How far the cloth of the back stands off below the nape.
    pub fn nape_out(&self, s: f64, z: f64) -> f64 {
        let low = self.drape.back_neck - self.drape.nape_drop;
        let share = ((z - low + NAPE_REACH) / NAPE_REACH).clamp(0.0, 1.0);
        NAPE_OUT * share * self.turn(s, z).cos().max(0.0)
    }

    /// A place on the back seam above the obi.
    pub fn on_back_seam(&self, z: f64) -> V3 {
        let s = self.drape.back_seam(z);
        self.drape.surface.at(s, z, self.nape_out(s, z))
    }
}
