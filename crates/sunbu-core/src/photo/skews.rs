//! What is not alike on both sides, from the fitted places.

use super::form::Form;
use super::forms::{Forms, ROUND_SD};
use super::mark::{Mark, View};
use super::reading::Skew;

impl Forms<'_, '_> {
    /// One difference between left and right; none where a mark for it is missing.
    pub fn skew(&self, skew: Skew) -> Option<Form> {
        use Mark as M;
        match skew {
            Skew::HemSlant => {
                let hem = self.hem().ok()?;
                let right = self.z(M::HemRight).ok()?;
                let share = self.raise_at(M::HemRight).ok()??;
                let apart = if share < 0.02 {
                    right - hem
                } else {
                    let corner = self.z(M::UwamaeCorner).ok()?;
                    right - hem.times(1.0 - share) - corner.times(share)
                };
                // From behind the hem was read on the middle line.
                let other = match self.view() {
                    View::Back => M::HemCentre,
                    _ => M::HemLeft,
                };
                Some(apart.times(self.whole(M::HemRight, other)?))
            }
            Skew::FoldLean => self.apart(M::FoldRight, M::FoldLeft),
            Skew::ObiSlant => self.apart(M::ObiLowerRight, M::ObiLowerLeft),
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

    fn apart(&self, right: Mark, left: Mark) -> Option<Form> {
        let apart = self.z(right).ok()? - self.z(left).ok()?;
        Some(apart.with_sd(ROUND_SD).times(self.whole(right, left)?))
    }

    /// The slant from her right side to her left over what two marks on the line differ by.
    ///
    /// A line that stands askew by `h` lies `h/2 sin t` higher at the angle `t` from the back, as a
    /// plane cuts an upright tube; two marks a hand's breadth before the sides thus differ by some
    /// four fifths of it.
    fn whole(&self, right: Mark, other: Mark) -> Option<f64> {
        let sine = |mark: Mark| {
            let (s, z) = (self.s(mark).ok()?.value, self.z(mark).ok()?.value);
            Some(self.sitting.drape.turn_at(s, z).sin())
        };
        let apart = sine(other)? - sine(right)?;
        // Marks that close to each other say nothing of the sides.
        (apart > 0.5).then_some(2.0 / apart)
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
