//! What is not alike on both sides, from the fitted places.

use super::form::Form;
use super::forms::{Forms, ROUND_SD};
use super::mark::Mark;
use super::reading::Skew;

impl Forms<'_, '_> {
    /// One difference between left and right; none where a mark for it is missing.
    pub fn skew(&self, skew: Skew) -> Option<Form> {
        use Mark as M;
        match skew {
            Skew::HemSlant => self.hem_slant(),
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

    /// How much higher the hem stands at her right side than at her left, beyond what the raised
    /// front edge makes.
    ///
    /// A hem that stands askew by `h` lies `h/2 sin t` lower at the angle `t` from the back, as a
    /// plane cuts an upright tube. With the level hem `z0`, the corner's raise `r` and the shares `a`
    /// and `b` of it that the hem has at the left and the right mark, and the sines `l`, `m` and `c`
    /// of left, right and corner without their signs,
    ///
    /// `left = z0 + a r - h/2 l`, `right = z0 + b r + h/2 m`, `corner = z0 + r + h/2 c`.
    ///
    /// Without `z0` and `r` these leave `h`, but for a corner on the right side, with which the hem
    /// rises whether it is raised or askew: then only a photo from behind tells.
    fn hem_slant(&self) -> Option<Form> {
        use Mark as M;
        let (left, right) = (self.z(M::HemLeft).ok()?, self.z(M::HemRight).ok()?);
        let a = self.raise_at(M::HemLeft).ok()??;
        let b = self.raise_at(M::HemRight).ok()??;
        let (l, m) = (self.sine(M::HemLeft)?, -self.sine(M::HemRight)?);
        if a.max(b) < 0.02 {
            return scaled(right - left, l + m);
        }
        let (corner, c) = (self.z(M::UwamaeCorner).ok()?, -self.sine(M::UwamaeCorner)?);
        let told = (1.0 - a) * (m - b * c) + (1.0 - b) * (l + a * c);
        let apart = right.times(1.0 - a) - left.times(1.0 - b) - corner.times(b - a);
        scaled(apart, told)
    }

    /// How much higher a line round her is at her right side than at her left, from a mark on either.
    fn apart(&self, right: Mark, left: Mark) -> Option<Form> {
        let apart = self.z(right).ok()? - self.z(left).ok()?;
        let told = self.sine(left)? - self.sine(right)?;
        scaled(apart.with_sd(ROUND_SD), told)
    }

    /// The sine of a mark's angle from the back: 1 at her left side, -1 at her right.
    fn sine(&self, mark: Mark) -> Option<f64> {
        let (s, z) = (self.s(mark).ok()?.value, self.z(mark).ok()?.value);
        Some(self.sitting.drape.turn_at(s, z).sin())
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

/// A slant from side to side, from a difference that holds `told` halves of it; none where it holds
/// too little to tell.
fn scaled(apart: Form, told: f64) -> Option<Form> {
    /// Half of what two marks a hand's breadth before either side hold.
    const LEAST: f64 = 0.8;
    (told > LEAST).then(|| apart.times(2.0 / told))
}
