//! The hem as others see it: the same hem against the leg on different sight lines.

use sunbu_core::dressing::{Quantity, hem_as_seen};

use super::{Align, Plate, valued};
use crate::curve::pt;
use crate::figure::Scene;
use crate::look;

/// User units to the centimetre.
const SCALE: f64 = 48.0;
/// How far the hem stands out before the ankle, in centimetres: about a hand's breadth less the
/// layers (chosen for the drawing).
const STANDS_OUT: f64 = 7.0;
/// Slopes of the two sight lines: from seats below a stage, and from a neighbour who stands near.
const SLOPES: [(f64, &str); 2] = [(0.15, "draw-from-below"), (-0.2, "draw-from-near")];

/// The hem from the side: how far a sight line past it meets the leg above or below its height.
pub fn viewer(scene: &Scene) -> String {
    let words = scene.words;
    // A hem at the ankle shows the leg; at the floor there would be nothing to draw.
    let hem = scene.shown.prediction.value(Quantity::HemBack).max(6.0);
    let mut plate = Plate::new(1640.0, 800.0, 1120.0, 740.0, SCALE);
    let high = 12.0;
    plate.line(look::FLOOR_LINE, &[pt(-22.0, 0.0), pt(9.0, 0.0)]);
    let leg = [
        pt(0.0, high),
        pt(0.0, 3.4),
        pt(-0.6, 2.6),
        pt(-4.0, 1.9),
        pt(-7.2, 1.2),
        pt(-7.9, 0.4),
        pt(-7.6, 0.0),
        pt(7.4, 0.0),
        pt(7.8, 1.2),
        pt(7.0, 3.2),
        pt(6.6, high),
    ];
    plate.area(look::SKIN_AREA, &leg);
    let edge = pt(-STANDS_OUT, hem);
    let cloth = [
        edge,
        pt(-STANDS_OUT + 1.2, high),
        pt(-STANDS_OUT + 1.9, high),
        pt(-STANDS_OUT + 0.55, hem),
    ];
    plate.area(look::CLOTH_AREA, &cloth);
    plate.line(look::HIDDEN_LINE, &[edge, pt(0.0, hem)]);
    for (slope, id) in SLOPES {
        let from = pt(edge.x - 14.5, hem - slope * 14.5);
        let on_leg = pt(0.0, hem_as_seen(hem, slope, STANDS_OUT));
        let away = -46.0 * slope.signum();
        plate.line(look::DIMENSION_LINE, &[from, on_leg]);
        plate.dot(on_leg);
        let q = format!("q = {slope}").replace('-', "\u{2212}");
        let who = format!("{} ({q})", words.get(id));
        plate.text(from, (0.0, -away), Align::Start, look::SOFT_TEXT, &who);
        let seen = valued("g + q·l", on_leg.z);
        plate.text(on_leg, (22.0, 0.5 * away), Align::Start, look::TEXT, &seen);
    }
    let g = pt(edge.x - 1.2, 0.0);
    plate.dimension(g, pt(g.x, hem), Align::End, &valued("g", hem));
    plate.dimension(
        pt(edge.x, high + 0.6),
        pt(0.0, high + 0.6),
        Align::Middle,
        &valued("l", STANDS_OUT),
    );
    plate.finish(words, "viewer")
}
