//! Reading: what the marks of a photo say in centimetres, and how surely.

use std::collections::BTreeMap;

use nalgebra::DMatrix;

use super::camera::Camera;
use super::form::Form;
use super::mark::{Mark, Pixel, View};
use super::shot::{Known, Shot};
use super::sitting::{Sitting, Subject};
use super::way::{Wrap, exchanged, turned, wrap};
use crate::dressing::{Given, Quantity};
use crate::keyed::keyed_enum;
use crate::problem::Problem;

keyed_enum! {
    /// How far something lies from where it would lie if left and right were alike, in
    /// centimetres: what the dressing's own quantities do not tell.
    Skew {
        /// The hem at the right over the left, beyond what the raised edge makes.
        HemSlant = "hem_slant",
        /// The fold's lower edge at the right over the left.
        FoldLean = "fold_lean",
        /// The obi's lower edge at the right over the left.
        ObiSlant = "obi_slant",
        /// The kimono collars' crossing, to her left of the middle line.
        CrossingOff = "crossing_off",
        /// The juban collar left to see at the left over the right.
        HanEriDifference = "han_eri_difference",
        /// The nape's middle, to her left of the spine.
        NapeOff = "nape_off",
        /// The left sleeve's shortness over the right one's.
        SleeveDifference = "sleeve_difference",
    }
}

/// Why a quantity was not read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unseen {
    /// Cloth lies over it on every photo.
    Covered,
    /// Another side shows it.
    OtherSide(View),
    /// It shows from this side, but a mark for it was left out.
    NotMarked(Mark),
}

/// Deviations of a front edge's raise and of a hem from the plan, in centimetres (chosen).
const RAISE_SD: f64 = 1.5;
const HEM_SD: f64 = 1.5;

/// More than so many deviations off where all other marks put it, a mark is doubted.
const DOUBTFUL: f64 = 4.0;

/// What one photo says.
#[derive(Debug, Clone)]
pub struct Reading {
    /// From which side.
    pub view: View,
    /// Which panel lies on top. When it is the right one, everything else was read as from a
    /// mirror, left and right exchanged.
    pub wrap: Wrap,
    /// The lens.
    pub camera: Camera,
    quantities: Vec<Quantity>,
    values: Vec<f64>,
    covariance: DMatrix<f64>,
    /// What is not alike on both sides.
    pub skews: BTreeMap<Skew, Known>,
    /// What was not read, and why.
    pub unseen: BTreeMap<Quantity, Unseen>,
    /// Marks that no lens could see with all the others.
    pub doubtful: Vec<Mark>,
    /// Where each mark falls when all are taken together, in pixels of the shot as it was given.
    pub fitted: BTreeMap<Mark, Pixel>,
}

impl Reading {
    /// The quantities that were read, in the order of their values and covariance.
    pub fn quantities(&self) -> &[Quantity] {
        &self.quantities
    }

    /// Their values, in centimetres.
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// Their joint covariance, in cm².
    pub fn covariance(&self) -> &DMatrix<f64> {
        &self.covariance
    }

    /// One quantity with its deviation, in centimetres; none when it was not read.
    pub fn get(&self, quantity: Quantity) -> Option<Known> {
        let i = self.quantities.iter().position(|q| *q == quantity)?;
        Some(Known {
            value: self.values[i],
            sd: self.covariance[(i, i)].max(0.0).sqrt(),
        })
    }
}

/// What a photo says of the dressing.
///
/// # Errors
/// Everything that is wrong with the shot: marks outside the picture, missing, exchanged or not
/// to be seen from its side, sizes that no picture has, or marks that no lens sees so.
pub fn read(subject: &Subject<'_>, shot: &Shot) -> Result<Reading, Vec<Problem>> {
    let way = wrap(shot);
    let straight = match (way, shot.mirrored) {
        (Wrap::RightOverLeft, false) => exchanged(shot),
        (Wrap::RightOverLeft, true) => Shot {
            marks: exchanged(shot).marks,
            ..shot.clone()
        },
        (_, true) => turned(shot),
        (_, false) => shot.clone(),
    };
    let sitting = Sitting::new(subject, &straight)?;
    let forms = Forms { sitting: &sitting };
    let mut unseen = BTreeMap::new();
    let mut read: Vec<(Quantity, Form)> = Vec::new();
    for &quantity in Quantity::ALL {
        match forms.quantity(quantity) {
            Ok(form) => read.push((quantity, form)),
            Err(why) => {
                unseen.insert(quantity, why);
            }
        }
    }
    let between = |a: &Form, b: &Form| a.covariance(b, &sitting.fit.covariance, subject.fitting);
    let n = read.len();
    let covariance = DMatrix::from_fn(n, n, |i, j| {
        let own = if i == j {
            read[i].1.own_variance()
        } else {
            0.0
        };
        between(&read[i].1, &read[j].1) + own
    });
    let skews = Skew::ALL.iter().filter_map(|&skew| {
        let form = forms.skew(skew)?;
        let sd = (between(&form, &form) + form.own_variance())
            .max(0.0)
            .sqrt();
        Some((
            skew,
            Known {
                value: form.value,
                sd,
            },
        ))
    });
    let flipped = straight != *shot && !(shot.mirrored && way == Wrap::RightOverLeft);
    let width = f64::from(shot.size[0]);
    let fitted = sitting.fitted().map(|(mark, [x, y])| {
        let mark = if way == Wrap::RightOverLeft {
            mark.mirrored()
        } else {
            mark
        };
        (mark, [if flipped { width - x } else { x }, y])
    });
    Ok(Reading {
        view: shot.view,
        wrap: way,
        camera: sitting.fit.camera,
        values: read.iter().map(|(_, form)| form.value).collect(),
        quantities: read.iter().map(|(quantity, _)| *quantity).collect(),
        covariance,
        skews: skews.collect(),
        unseen,
        doubtful: sitting
            .off()
            .filter(|(_, off)| *off > DOUBTFUL)
            .map(|(mark, _)| mark)
            .collect(),
        fitted: fitted.collect(),
    })
}

/// Quantities from the fitted places.
struct Forms<'a, 's> {
    sitting: &'a Sitting<'s>,
}

impl Forms<'_, '_> {
    fn view(&self) -> View {
        self.sitting.view
    }

    /// A height, where the mark was set.
    fn z(&self, mark: Mark) -> Result<Form, Unseen> {
        if !mark.shows_in(self.view()) {
            let other = View::ALL.iter().copied().find(|v| mark.shows_in(*v));
            return Err(other.map_or(Unseen::Covered, Unseen::OtherSide));
        }
        self.sitting.height(mark).ok_or(Unseen::NotMarked(mark))
    }

    /// An arc, where the mark was set on the surface.
    fn s(&self, mark: Mark) -> Result<Form, Unseen> {
        self.z(mark)?;
        self.sitting.arc(mark).ok_or(Unseen::NotMarked(mark))
    }

    /// One of a free place's coordinates, where the mark was set.
    fn coordinate(&self, mark: Mark, k: usize) -> Result<Form, Unseen> {
        self.z(mark)?;
        self.sitting
            .coordinate(mark, k)
            .ok_or(Unseen::NotMarked(mark))
    }

    fn given(&self, given: Given) -> Form {
        Form::given(self.sitting.subject.fitting, given)
    }

    fn quantity(&self, quantity: Quantity) -> Result<Form, Unseen> {
        use Mark as M;
        use Quantity as Q;
        let collar = |mark: M| Ok(self.given(Given::SideNeck) - self.z(mark)?);
        Ok(match quantity {
            Q::HemBack => self.hem()?,
            Q::UwamaeCorner => self.z(M::UwamaeCorner)?,
            Q::HemTaper | Q::HemLoop => self.skirt(quantity)?,
            Q::FrontCover => self.cover()?,
            Q::BackSeamHip => self.s(M::SeamHip)?,
            Q::BackSeamTop => self.s(M::SeamWaist)?,
            Q::BackSeamBend => self.s(M::SeamHip)? - self.s(M::SeamWaist)?,
            Q::CollarEndVisible => self.z(M::FoldRight)? - self.z(M::CollarEnd)?,
            Q::FoldFront => self.fold(M::ObiLowerCentre, M::FoldCentre)?,
            Q::FoldRight => self.fold(M::ObiLowerRight, M::FoldRight)?,
            Q::FoldSlant => {
                self.fold(M::ObiLowerRight, M::FoldRight)?
                    - self.fold(M::ObiLowerCentre, M::FoldCentre)?
            }
            // The left side runs midway between front and back, as the model has it.
            Q::FoldBack => {
                let left = self.fold(M::ObiLowerLeft, M::FoldLeft)?;
                left.times(2.0) - self.fold(M::ObiLowerCentre, M::FoldCentre)?
            }
            Q::NapeDrop => self.given(Given::BackNeck) - self.z(M::Nape)?,
            Q::JubanCrossing => collar(M::JubanCrossing)? - self.given(Given::ThroatDrop),
            Q::JubanShow => {
                let apart = self.z(M::JubanCrossing)? - self.z(M::KimonoCrossing)?;
                self.across_collar(apart, collar(M::KimonoCrossing)?)
            }
            Q::JubanHold | Q::KimonoHold => {
                let mark = if quantity == Q::JubanHold {
                    M::JubanCrossing
                } else {
                    M::KimonoCrossing
                };
                let tie = self.given(Given::UnderBust) - self.given(Given::ChestTieDrop);
                self.z(mark)? - tie
            }
            Q::ObiOverHipBone => self.z(M::ObiLowerCentre)? - self.given(Given::HipBone),
            Q::SleeveShort => self.sleeves()?,
            Q::DrumHeight => self.z(M::DrumTop)? - self.z(M::DrumBottom)?,
            Q::TareLength => self.z(M::DrumBottom)? - self.z(M::TareEnd)?,
            Q::ObiageShow => self.z(M::ObiageTop)? - self.z(M::ObiUpperCentre)?,
            Q::ShitamaeAboveUwamae
            | Q::InnerCover
            | Q::WrapEase
            | Q::KoshihimoOverHipBone
            | Q::KoshihimoSlope
            | Q::CollarEndClearance
            | Q::ClothFront
            | Q::ClothRight
            | Q::ClothBack
            | Q::BulkFront
            | Q::BulkRight
            | Q::BulkBack
            | Q::RidgeSetback
            | Q::TrunkStep => return Err(Unseen::Covered),
        })
    }

    /// Upper edge less lower edge.
    fn fold(&self, obi: Mark, fold: Mark) -> Result<Form, Unseen> {
        Ok(self.z(obi)? - self.z(fold)?)
    }

    /// The hem at the back: marked there, or from its left end, where the raised front has lifted
    /// it by a known share of the corner's raise.
    fn hem(&self) -> Result<Form, Unseen> {
        if self.view() == View::Back {
            return self.z(Mark::HemCentre);
        }
        if self.view() == View::Right {
            return Err(Unseen::OtherSide(View::Back));
        }
        let mark = if self.view() == View::Left {
            Mark::HemCentre
        } else {
            Mark::HemLeft
        };
        let left = self.z(mark)?;
        let drape = &self.sitting.drape;
        let share = (drape.hem_at(drape.surface.side_arc(drape.hem)) - drape.hem)
            / (drape.outer_corner - drape.hem).max(0.1);
        if share < 0.02 {
            return Ok(left);
        }
        let corner = self.z(Mark::UwamaeCorner)?;
        Ok((left - corner.times(share)).times(1.0 / (1.0 - share)))
    }

    /// The share of the corner's raise that the hem has at its right end: none where the outer
    /// panel ends before it.
    fn raise_at_right(&self) -> f64 {
        let drape = &self.sitting.drape;
        let side = drape.surface.girth(drape.hem) - drape.surface.side_arc(drape.hem);
        if drape.outer_edge(drape.outer_corner) < side {
            return 0.0;
        }
        (drape.hem_at(side) - drape.hem) / (drape.outer_corner - drape.hem).max(0.1)
    }

    /// The hem's loop, and how much less it is than the girth at the hip.
    fn skirt(&self, quantity: Quantity) -> Result<Form, Unseen> {
        // Both outlines of hem and hip together say how wide the skirt is below.
        for mark in [Mark::HemLeft, Mark::HemRight, Mark::HipLeft, Mark::HipRight] {
            self.z(mark)?;
        }
        let drape = &self.sitting.drape;
        let top = drape.surface.girth(drape.surface.skirt_top());
        let loop_cm = drape.surface.girth(drape.hem);
        let [across, ahead, skirt] = [0, 1, 2].map(|k| self.sitting.shape(k));
        let size = (across.clone() + ahead.clone()).times(0.5);
        // Products of leeways of some per cent are left out.
        let hem = Form::plain(loop_cm) + (size.clone() + skirt).times(loop_cm);
        let hip = Form::plain(top) + size.times(top);
        Ok(match quantity {
            Quantity::HemLoop => hem,
            _ => hip - hem,
        })
    }

    /// The front cover: along the surface from the outer edge to the right side line, at the
    /// height of the collar end. Where the fold hides the end, the edge is followed up under it to
    /// where the end must be: as far above the hem as the plan has it, give or take a raise.
    fn cover(&self) -> Result<Form, Unseen> {
        let drape = &self.sitting.drape;
        let surface = &drape.surface;
        let (mark, at) = match self.s(Mark::CollarEnd) {
            Ok(_) => (Mark::CollarEnd, drape.collar_end),
            Err(_) => (Mark::EdgeAtFold, drape.fold.right),
        };
        let s = self.s(mark)?;
        let end = if mark == Mark::CollarEnd {
            self.z(mark)?
        } else {
            let erishita = self.given(Given::Erishita);
            let raise = Form::plain(drape.collar_end - drape.hem - erishita.value);
            let over_hem = erishita + raise;
            match self.hem() {
                Ok(hem) => hem + over_hem.with_sd(RAISE_SD),
                Err(_) => {
                    let hem = Form::plain(drape.hem);
                    hem + over_hem.with_sd(RAISE_SD.hypot(HEM_SD))
                }
            }
        };
        // Along the edge from where it was marked up to the collar end the okumi narrows.
        let narrowing = drape.outer_edge(drape.collar_end) - drape.outer_edge(at);
        let side = |z: f64| surface.girth(z) - surface.side_arc(z);
        let (value, slope) = (
            side(end.value),
            side(end.value + 0.5) - side(end.value - 0.5),
        );
        let stretch = self.sitting.stretch_ahead(end.value);
        let nominal = end.through(value, slope) - s - Form::plain(narrowing);
        Ok(nominal.times(stretch) - self.given(Given::SideArcError))
    }

    /// A height between two crossings as a width across the kimono collar, which runs straight
    /// from the side neck point to its crossing `drop` below: `apart n / sqrt(n² + drop²)`.
    fn across_collar(&self, apart: Form, drop: Form) -> Form {
        let neck = self
            .given(Given::NeckBaseGirth)
            .times(1.0 / std::f64::consts::TAU);
        let (a, n, d) = (apart.value, neck.value, drop.value);
        let length = n.hypot(d).max(1.0);
        let by_drop = -a * n * d / length.powi(3);
        let by_neck = a * d * d / length.powi(3);
        apart.times(n / length) + drop.through(0.0, by_drop) + neck.through(0.0, by_neck)
    }

    /// How far one sleeve stays short of its wrist: along the arm as both marks show it.
    fn sleeve(&self, end: Mark, wrist: Mark) -> Result<Form, Unseen> {
        let out = if end == Mark::SleeveEndLeft {
            1.0
        } else {
            -1.0
        };
        let x = self.coordinate(wrist, 0)? - self.coordinate(end, 0)?;
        let z = self.coordinate(wrist, 2)? - self.coordinate(end, 2)?;
        // The arm's own way, from the shoulder to the wrist.
        let [beside, height] = self.sitting.subject.body.shape().figure().shoulder;
        let (dx, dz) = (
            self.coordinate(wrist, 0)?.value - out * beside,
            self.coordinate(wrist, 2)?.value - height,
        );
        let length = dx.hypot(dz).max(1.0);
        Ok(x.times(dx / length) + z.times(dz / length))
    }

    fn sleeves(&self) -> Result<Form, Unseen> {
        let left = self.sleeve(Mark::SleeveEndLeft, Mark::WristLeft);
        let right = self.sleeve(Mark::SleeveEndRight, Mark::WristRight);
        match (left, right) {
            (Ok(a), Ok(b)) => Ok((a + b).times(0.5)),
            (Ok(one), Err(_)) | (Err(_), Ok(one)) => Ok(one),
            (Err(why), Err(_)) => Err(why),
        }
    }

    fn skew(&self, skew: Skew) -> Option<Form> {
        use Mark as M;
        match skew {
            Skew::HemSlant => {
                let hem = self.hem().ok()?;
                let right = self.z(M::HemRight).ok()?;
                let share = self.raise_at_right();
                if share < 0.02 {
                    return Some(right - hem);
                }
                let corner = self.z(M::UwamaeCorner).ok()?;
                Some(right - hem.times(1.0 - share) - corner.times(share))
            }
            Skew::FoldLean => Some(self.z(M::FoldRight).ok()? - self.z(M::FoldLeft).ok()?),
            Skew::ObiSlant => Some(self.z(M::ObiLowerRight).ok()? - self.z(M::ObiLowerLeft).ok()?),
            Skew::CrossingOff => self.coordinate(M::KimonoCrossing, 0).ok(),
            Skew::HanEriDifference => Some(
                self.han_eri(M::JubanEdgeLeft, M::CollarShoulderLeft, M::CollarTieLeft)?
                    - self.han_eri(M::JubanEdgeRight, M::CollarShoulderRight, M::CollarTieRight)?,
            ),
            Skew::NapeOff => self.coordinate(M::Nape, 0).ok(),
            Skew::SleeveDifference => Some(
                self.sleeve(M::SleeveEndLeft, M::WristLeft).ok()?
                    - self.sleeve(M::SleeveEndRight, M::WristRight).ok()?,
            ),
        }
    }

    /// Width of the juban collar left to see where its edge was marked: from there straight to the
    /// kimono collar's line from the shoulder to the chest tie, as seen from the front.
    fn han_eri(&self, edge: Mark, shoulder: Mark, tie: Mark) -> Option<Form> {
        let at = |mark: Mark, k: usize| self.coordinate(mark, k).ok();
        let (ax, az) = (at(shoulder, 0)?, at(shoulder, 2)?);
        let (bx, bz) = (at(tie, 0)?, at(tie, 2)?);
        let (px, pz) = (at(edge, 0)?, at(edge, 2)?);
        let (dx, dz) = (bx.value - ax.value, bz.value - az.value);
        let length = dx.hypot(dz).max(1.0);
        // Straight about where the marks are: the share of the way down the line is kept.
        let share = (((px.value - ax.value) * dx + (pz.value - az.value) * dz) / (length * length))
            .clamp(0.0, 1.0);
        let on = |a: Form, b: Form| a.times(1.0 - share) + b.times(share);
        let (ox, oz) = (px - on(ax, bx), pz - on(az, bz));
        let inward = if edge == Mark::JubanEdgeLeft {
            1.0
        } else {
            -1.0
        };
        Some(ox.times(inward * dz / length) - oz.times(inward * dx / length))
    }
}
