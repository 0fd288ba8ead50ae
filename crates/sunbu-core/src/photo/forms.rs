//! Each quantity as a straight function of what was fitted.

use super::form::Form;
use super::mark::{Mark, View};
use super::reading::Unseen;
use super::sitting::Sitting;
use crate::dressing::{Given, Quantity};

/// How far a line round the body lies at its outline from where it lies at the side itself, and an
/// edge from the side line that the hull was foretold to have, in centimetres (chosen).
pub(super) const ROUND_SD: f64 = 0.15;
/// How far a fold in front may be from the plan, where only the back is seen, in centimetres.
const HIDDEN_SD: f64 = 1.0;
const SIDE_SD: f64 = 0.5;
/// Deviations of a front edge's raise and of a hem from the plan, in centimetres (chosen).
const RAISE_SD: f64 = 1.5;
const HEM_SD: f64 = 1.5;

/// Further than so much from the right side line, a corner lies clearly on one side of it, in
/// centimetres of arc.
const CLEAR: f64 = 4.0;

/// Quantities from the fitted places.
pub(super) struct Forms<'a, 's> {
    pub sitting: &'a Sitting<'s>,
}

impl Forms<'_, '_> {
    fn view(&self) -> View {
        self.sitting.view
    }

    /// A height, where the mark was set.
    pub fn z(&self, mark: Mark) -> Result<Form, Unseen> {
        if !mark.shows_in(self.view()) {
            let other = View::ALL.iter().copied().find(|v| mark.shows_in(*v));
            return Err(other.map_or(Unseen::Covered, Unseen::OtherSide));
        }
        self.sitting.height(mark).ok_or(Unseen::NotMarked(mark))
    }

    /// An arc, where the mark was set on the surface.
    pub fn s(&self, mark: Mark) -> Result<Form, Unseen> {
        self.z(mark)?;
        self.sitting.arc(mark).ok_or(Unseen::NotMarked(mark))
    }

    /// One of a free place's coordinates, where the mark was set.
    pub fn coordinate(&self, mark: Mark, k: usize) -> Result<Form, Unseen> {
        self.z(mark)?;
        self.sitting
            .coordinate(mark, k)
            .ok_or(Unseen::NotMarked(mark))
    }

    fn given(&self, given: Given) -> Form {
        Form::given(self.sitting.subject.fitting, given)
    }

    pub fn quantity(&self, quantity: Quantity) -> Result<Form, Unseen> {
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
            Q::CollarEndVisible => self.collar_end()?,
            Q::FoldFront => self.fold_front()?,
            Q::FoldRight => self.fold_right()?,
            Q::FoldSlant => self.fold_right()? - self.fold_front()?,
            Q::FoldBack => {
                self.facing(View::Back)?;
                let [back, _] = self.folds_round()?;
                back
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
            Q::ObiOverHipBone => self.obi_front()? - self.given(Given::HipBone),
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

    /// The obi's lower edge less the fold's, where both were marked.
    fn fold(&self, obi: Mark, fold: Mark) -> Result<Form, Unseen> {
        Ok(self.z(obi)? - self.z(fold)?)
    }

    /// The fold at the centre back and at the right side, from the marks on both sides.
    ///
    /// The fold's length runs round the body as a [`Round`](crate::drape::Round) with its left side
    /// midway between front and back, as the model has it: at an angle it is a mean of front, back and
    /// right with known weights. The front is marked, or from behind as planned, and the marks on both
    /// sides give two equations for the other two.
    fn folds_round(&self) -> Result<[Form; 2], Unseen> {
        let drape = &self.sitting.drape;
        let front = match self.view() {
            View::Front => self.fold_front()?,
            _ => Form::plain(drape.obi.front - drape.fold.front).with_sd(HIDDEN_SD),
        };
        let equation = |obi: Mark, fold: Mark| -> Result<([f64; 2], Form), Unseen> {
            let length = self.fold(obi, fold)?;
            let (s, z) = (self.s(fold)?.value, self.z(fold)?.value);
            let turn = drape.turn_at(s, z);
            let ((sin, cos), twice) = (turn.sin_cos(), (2.0 * turn).cos());
            let even = 0.375 + 0.25 * sin + 0.125 * twice;
            let weights = [even + 0.5 * cos, 0.25 - 0.5 * sin - 0.25 * twice];
            Ok((weights, length - front.clone().times(even - 0.5 * cos)))
        };
        let ([a, b], at_left) = equation(Mark::ObiLowerLeft, Mark::FoldLeft)?;
        let ([c, d], at_right) = equation(Mark::ObiLowerRight, Mark::FoldRight)?;
        let determinant = a * d - b * c;
        if determinant.abs() < 0.05 {
            return Err(Unseen::NotMarked(Mark::FoldRight));
        }
        let back = at_left.clone().times(d / determinant) - at_right.clone().times(b / determinant);
        let right = at_right.times(a / determinant) - at_left.times(c / determinant);
        Ok([back.with_sd(ROUND_SD), right.with_sd(ROUND_SD)])
    }

    fn fold_front(&self) -> Result<Form, Unseen> {
        self.facing(View::Front)?;
        self.fold(Mark::ObiLowerCentre, Mark::FoldCentre)
    }

    fn fold_right(&self) -> Result<Form, Unseen> {
        match self.view() {
            View::Right => self.fold(Mark::ObiLowerCentre, Mark::FoldCentre),
            View::Front | View::Back => {
                let [_, right] = self.folds_round()?;
                Ok(right)
            }
            View::Left => Err(Unseen::OtherSide(View::Right)),
        }
    }

    /// The collar end below the fold's edge at the right side.
    fn collar_end(&self) -> Result<Form, Unseen> {
        let end = self.z(Mark::CollarEnd)?;
        if self.view() == View::Right {
            return Ok(self.z(Mark::FoldCentre)? - end);
        }
        // The obi goes on to the side as planned, and the fold hangs from it.
        let drape = &self.sitting.drape;
        let s = self.s(Mark::ObiLowerRight)?.value;
        let on = Form::plain(drape.obi.right - drape.height_on(drape.obi, s));
        Ok(self.z(Mark::ObiLowerRight)? + on - self.fold_right()? - end)
    }

    /// The obi's lower edge in front; from a side, where it runs half its rise higher.
    fn obi_front(&self) -> Result<Form, Unseen> {
        let seen = self.z(Mark::ObiLowerCentre)?;
        Ok(match self.view() {
            View::Right | View::Left => seen - self.given(Given::ObiRise).times(0.5),
            View::Front | View::Back => seen,
        })
    }

    fn facing(&self, view: View) -> Result<(), Unseen> {
        if self.view() == view {
            return Ok(());
        }
        Err(Unseen::OtherSide(view))
    }

    /// The hem at the back: marked there, or from a mark on the left, where the raised front has lifted
    /// it by a known share of the corner's raise.
    pub fn hem(&self) -> Result<Form, Unseen> {
        match self.view() {
            View::Back => return self.z(Mark::HemCentre),
            View::Right => return Err(Unseen::OtherSide(View::Back)),
            View::Front | View::Left => {}
        }
        let mark = match self.view() {
            View::Left => Mark::HemCentre,
            _ => Mark::HemLeft,
        };
        let left = self.z(mark)?;
        let share = self.raise_at(mark)?.unwrap_or(0.0);
        if share < 0.02 {
            return Ok(left);
        }
        let drape = &self.sitting.drape;
        let Ok(corner) = self.z(Mark::UwamaeCorner) else {
            // Mostly the corner has gone round the side; it is as far above the hem as planned.
            let raise = Form::plain(share * (drape.outer_corner - drape.hem));
            return Ok((left - raise).with_sd(share * RAISE_SD));
        };
        Ok((left - corner.times(share)).times(1.0 / (1.0 - share)))
    }

    /// The share of the corner's raise that the hem has at a mark: none where the outer panel ends well
    /// before it, unknown where it ends about there.
    pub fn raise_at(&self, mark: Mark) -> Result<Option<f64>, Unseen> {
        let drape = &self.sitting.drape;
        let s = self.s(mark)?.value;
        let past = drape.outer_edge(drape.outer_corner) - s;
        if past < -CLEAR {
            return Ok(Some(0.0));
        }
        let raise = (drape.outer_corner - drape.hem).max(0.1);
        Ok((past > CLEAR).then(|| (drape.hem_at(s) - drape.hem) / raise))
    }

    /// The hem's loop, and how much less it is than the girth at the hip.
    fn skirt(&self, quantity: Quantity) -> Result<Form, Unseen> {
        // Both outlines of hem and hip together say how wide the skirt is below.
        for mark in [
            Mark::SkirtLeft,
            Mark::SkirtRight,
            Mark::HipLeft,
            Mark::HipRight,
        ] {
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
        let line = self.given(Given::SideArcError).with_sd(SIDE_SD);
        Ok(nominal.times(stretch) - line)
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
    pub fn sleeve(&self, end: Mark, wrist: Mark) -> Result<Form, Unseen> {
        // From the side the arm comes toward the lens, and what is short of it shows least.
        if matches!(self.view(), View::Right | View::Left) {
            return Err(Unseen::OtherSide(View::Front));
        }
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
}
