//! Obi, obijime, obiage, drum and tail.

use sunbu_core::drape::{DRUM_WIDTH, Drum, OBI_OUT, OBI_WIDTH, Round};

use crate::canvas::Canvas;
use crate::curve::{Pt, pt};
use crate::lines::Lines;
use crate::look;
use crate::view::View;

/// How much of the te shows at each side of the drum, in centimetres (S53).
const TE_SHOW: f64 = 2.0;
/// Width of the obijime, in centimetres (common practice, no source).
const OBIJIME: f64 = 1.3;

impl Lines<'_> {
    /// The obi round the body, with obiage and obijime.
    pub fn draw_obi(&self, canvas: &mut Canvas, view: View, obiage: f64) {
        let top = self.obi_top();
        let belt = |low: Round, high: Round, out: f64| {
            let mut area = self.round(view, low, out);
            area.extend(self.round(view, high, out).into_iter().rev());
            area
        };
        if view == View::Front && obiage > 0.1 {
            canvas.area(look::OBIAGE_AREA, "obiage", &self.obiage_front(obiage));
        }
        canvas.area(look::OBI_AREA, "obi", &belt(self.obi, top, OBI_OUT));
        for share in [0.14, 0.86] {
            let stripe = self.round(view, self.obi.raised(share * OBI_WIDTH), OBI_OUT);
            canvas.line(look::FINE_LINE, "obi-stripe", &stripe);
        }
        canvas.line(
            look::EDGE_LINE,
            "obi-edge",
            &self.round(view, self.obi, OBI_OUT),
        );
        if view == View::Front {
            let low = self.obi.raised(0.5 * (OBI_WIDTH - OBIJIME));
            canvas.area(
                look::OBIJIME_AREA,
                "obijime",
                &belt(low, low.raised(OBIJIME), OBI_OUT + 0.2),
            );
            let middle = pt(0.0, low.front + 0.5 * OBIJIME);
            let (a, b) = (1.5, 1.15);
            let knot: Vec<Pt> = (0..=24)
                .map(|i| {
                    let (sin, cos) = (std::f64::consts::PI * f64::from(i) / 12.0).sin_cos();
                    middle.moved(
                        a * cos.signum() * cos.abs().sqrt(),
                        b * sin.signum() * sin.abs().sqrt(),
                    )
                })
                .collect();
            canvas.area(look::OBIJIME_AREA, "obijime-knot", &knot);
        }
    }

    /// The obiage above the obi: as wide as it shows in front, less toward the sides, with its
    /// knot tucked into the obi.
    fn obiage_front(&self, show: f64) -> Vec<Pt> {
        let low = self.round(View::Front, self.obi_top().raised(-1.0), OBI_OUT * 0.6);
        let high = self.round(View::Front, self.obi_top(), OBI_OUT * 0.6);
        let last = (high.len() - 1) as f64;
        let mut area = low;
        area.extend(high.iter().enumerate().rev().map(|(i, p)| {
            // Full width in the middle, four tenths of it at the sides.
            let share = (std::f64::consts::PI * i as f64 / last).sin();
            p.moved(0.0, show * (0.4 + 0.6 * share))
        }));
        area
    }

    /// Drum, tail, and the obijime through the drum, seen from behind.
    pub fn draw_drum(&self, canvas: &mut Canvas, drum: Drum, obiage: f64) {
        let half = DRUM_WIDTH / 2.0;
        let box_of = |half: f64, low: f64, high: f64| {
            [
                pt(-half, low),
                pt(half, low),
                pt(half, high),
                pt(-half, high),
            ]
        };
        let te = self.obi.back + 0.5 * OBI_WIDTH - 0.5;
        canvas.area(
            look::OBI_SHADE_AREA,
            "te",
            &box_of(half + TE_SHOW, te - 5.5, te + 5.5),
        );
        if drum.bottom - drum.tail > 0.1 {
            canvas.area(
                look::OBI_SHADE_AREA,
                "tare",
                &box_of(half - 0.3, drum.tail, drum.bottom + 1.0),
            );
        }
        if obiage > 0.1 {
            let top = drum.top + 0.35 * obiage;
            let pillow: Vec<Pt> = (0..=24)
                .map(|i| {
                    let (sin, cos) = (std::f64::consts::PI * f64::from(i) / 24.0).sin_cos();
                    pt(
                        (half - 1.2) * cos,
                        drum.top - 1.6 + (top - drum.top + 2.6) * sin.sqrt(),
                    )
                })
                .collect();
            canvas.area(look::OBIAGE_AREA, "obiage", &pillow);
        }
        let mut body = vec![pt(-half, drum.bottom), pt(half, drum.bottom)];
        body.extend((0..=24).map(|i| {
            let share = f64::from(i) / 24.0;
            let x = half - DRUM_WIDTH * share;
            // The top arches over the pillow by a centimetre, its corners rounded.
            let arch = (1.0 - (x / half).powi(4)).max(0.0).sqrt();
            pt(x, drum.top - 1.6 + 1.6 * arch)
        }));
        canvas.area(look::OBI_AREA, "drum", &body);
        canvas.line(look::EDGE_LINE, "drum-edge", &[body[0], body[1]]);
        let cord = self.obi.back + 0.5 * OBI_WIDTH;
        let (low, high) = (cord - 0.5 * OBIJIME, cord + 0.5 * OBIJIME);
        canvas.area(
            look::OBIJIME_AREA,
            "obijime",
            &box_of(half + 0.2, low, high),
        );
    }
}
