//! The wrap from above: where the panels land on the hull at the height of the collar end.

use sunbu_core::dressing::{Given, Quantity};

use super::{Align, Plate, valued};
use crate::curve::{Pt, pt};
use crate::figure::Scene;
use crate::lines::Lines;
use crate::look;

/// User units to the centimetre.
const SCALE: f64 = 22.0;
/// How far the panels are drawn off the hull, in centimetres, so that they can be told apart.
const INNER_OUT: f64 = 1.5;
const OUTER_OUT: f64 = 3.0;

/// The section at the collar end seen from above, the front below: the wearer's left is at the
/// viewer's right, as in the front view.
pub fn wrap(scene: &Scene) -> String {
    let lines = Lines::new(scene.body, scene.fitting, scene.shown);
    let words = scene.words;
    let z = lines.collar_end;
    let (girth, side) = (lines.surface.girth(z), lines.surface.side_arc(z));
    let seam = lines.back_seam_hip;
    let (outer_end, inner_end) = (lines.outer_edge(z), lines.inner_edge(z));
    let mut plate = Plate::new(1700.0, 880.0, 850.0, 430.0, SCALE);
    // A place on the hull, moved outward along the line from the middle of the section.
    let at = |s: f64, out: f64| -> Pt {
        let p = lines.seen(s, z);
        let far = p.left.hypot(p.ahead).max(1e-6);
        pt(p.left * (far + out) / far, -p.ahead * (far + out) / far)
    };
    let run = |from: f64, to: f64, out: f64| -> Vec<Pt> {
        let share = |i: u32| from + (to - from) * f64::from(i) / 160.0;
        (0..=160).map(|i| at(share(i), out)).collect()
    };
    // Text outside the outer panel, turned away from it.
    let outside = |plate: &mut Plate, s: f64, look, words: &str| {
        let p = at(s, OUTER_OUT + 1.0);
        let align = match p.x {
            x if x > 5.0 => Align::Start,
            x if x < -5.0 => Align::End,
            _ => Align::Middle,
        };
        plate.text(p, (0.0, -1.6 * p.z), align, look, words);
    };
    plate.area(look::SKIN_AREA, &run(0.0, girth, 0.0));
    plate.line(look::SEAM_LINE, &run(inner_end, girth + seam, INNER_OUT));
    plate.line(look::EDGE_LINE, &run(seam, outer_end, OUTER_OUT));
    plate.line(look::EDGE_LINE, &[at(seam, INNER_OUT), at(seam, OUTER_OUT)]);
    // Seams across the panels, and the outer panel's widths.
    let front = scene.fitting.value(Given::Maehaba);
    let ticks = [
        (lines.left_seam(), OUTER_OUT),
        (lines.okumi_seam(), OUTER_OUT),
        (outer_end, OUTER_OUT),
        (lines.right_seam(z), INNER_OUT),
        (lines.right_seam(z) - front, INNER_OUT),
        (inner_end, INNER_OUT),
    ];
    for (s, out) in ticks {
        plate.line(look::EDGE_LINE, &[at(s, out - 0.6), at(s, out + 0.6)]);
    }
    for (from, to, symbol) in [
        (seam, lines.left_seam(), "b"),
        (lines.left_seam(), lines.okumi_seam(), "f"),
        (lines.okumi_seam(), outer_end, "o\u{2032}"),
    ] {
        outside(
            &mut plate,
            0.5 * (from + to),
            look::TEXT,
            &valued(symbol, to - from),
        );
    }
    if seam.abs() > 0.05 {
        let p = at(seam, OUTER_OUT + 1.0);
        plate.text(
            p,
            (0.0, -12.0),
            Align::Middle,
            look::TEXT,
            &valued("c", seam),
        );
    }
    // Front cover, and how far the inner panel reaches.
    plate.line(look::FAULT_LINE, &run(outer_end, girth - side, OUTER_OUT));
    let x = valued("x", scene.shown.prediction.value(Quantity::FrontCover));
    outside(
        &mut plate,
        0.5 * (outer_end + girth - side),
        look::FAULT_TEXT,
        &x,
    );
    plate.line(look::WANTED_LINE, &run(inner_end, 0.5 * girth, -1.4));
    let y = valued("y", 0.5 * girth - inner_end);
    let beside = at(inner_end + 0.22 * (0.5 * girth - inner_end), -1.4);
    plate.text(beside, (-18.0, 0.0), Align::End, look::WANTED_TEXT, &y);
    // Landmarks and edges.
    for (s, id, align, shift) in [
        (0.0, "draw-centre-back", Align::Middle, (0.0, 34.0)),
        (
            0.5 * girth,
            "draw-centre-front",
            Align::Middle,
            (0.0, -64.0),
        ),
        (side, "draw-left-side", Align::End, (-26.0, 0.0)),
        (girth - side, "draw-right-side", Align::Start, (26.0, 0.0)),
    ] {
        plate.dot(at(s, 0.0));
        plate.text(at(s, 0.0), shift, align, look::SOFT_TEXT, &words.get(id));
    }
    let girth_words = valued("P", girth);
    plate.text(
        pt(0.0, 0.0),
        (0.0, 0.0),
        Align::Middle,
        look::TEXT,
        &girth_words,
    );
    let far = lines.surface.half_breadth(z) + 6.0;
    for (end, sign, align, id) in [
        (
            at(outer_end, OUTER_OUT + 0.6),
            -1.0,
            Align::End,
            "draw-outer-edge",
        ),
        (
            at(inner_end, INNER_OUT + 0.6),
            1.0,
            Align::Start,
            "draw-inner-edge",
        ),
    ] {
        let bend = pt(sign * far, end.z - 4.0);
        plate.line(look::LEADER_LINE, &[end, bend]);
        plate.text(bend, (sign * 10.0, 6.0), align, look::TEXT, &words.get(id));
    }
    plate.finish(words, "wrap")
}
