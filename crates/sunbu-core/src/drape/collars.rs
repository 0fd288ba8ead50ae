//! The collars above the obi, from the front and round the nape.

use std::f64::consts::FRAC_PI_2;

use super::Drape;

/// How far the collar drawn down the back stands off it at the nape, in centimetres: about a
/// finger (chosen for the eye).
const NAPE_OUT: f64 = 1.5;

impl Drape<'_> {
    /// A collar of the wearer's left at a height, as centimetres to her left: straight from the
    /// side neck point to `overlap` beyond the centre at the chest tie.
    pub fn collar_x(&self, overlap: f64, z: f64) -> f64 {
        let share = (self.side_neck - z) / (self.side_neck - self.chest_tie);
        self.half_neck - share * (self.half_neck + overlap)
    }

    /// The height at which the two collars of an overlap cross.
    pub fn crossing(&self, overlap: f64) -> f64 {
        let share = self.half_neck / (self.half_neck + overlap);
        self.side_neck - share * (self.side_neck - self.chest_tie)
    }

    /// The place of a collar's inner edge at a height, of the collar that comes from the left
    /// shoulder or from the right one, standing out by `out` centimetres.
    pub fn collar(&self, overlap: f64, z: f64, left: bool, out: f64) -> [f64; 3] {
        let x = self.collar_x(overlap, z);
        let x = if left { x } else { -x };
        let mut p = self.surface.at(self.surface.front_arc(x, z), z, out);
        if p[0] * x <= 0.0 || p[0].abs() < x.abs() {
            p[0] = x;
        }
        p
    }

    /// The kimono collar's upper edge at the centre back.
    pub fn nape(&self) -> [f64; 3] {
        self.nape_line(0.0)
    }

    /// The kimono collar's upper edge behind the neck: half an ellipse from side neck point to
    /// side neck point, lowest at the nape. `turn` is 0 at the nape, a quarter turn at the left
    /// side neck point, a quarter turn less than nothing at the right one.
    pub fn nape_line(&self, turn: f64) -> [f64; 3] {
        let (sin, cos) = turn.clamp(-FRAC_PI_2, FRAC_PI_2).sin_cos();
        let low = self.back_neck - self.nape_drop;
        let behind = self.surface.at(0.0, low, NAPE_OUT)[1];
        let beside = self.surface.neck_ahead();
        [
            self.half_neck * sin,
            beside + (behind - beside) * cos,
            self.side_neck - (self.side_neck - low) * cos,
        ]
    }
}
