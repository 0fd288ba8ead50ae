//! Where each number has its place on the figure.

use sunbu_core::drape::{DRUM_WIDTH, Drum};
use sunbu_core::dressing::{Decision, Plan, Quantity, StepValue};

use crate::curve::{Pt, pt};
use crate::labels::Side;
use crate::lines::Lines;
use crate::upper::Sleeve;
use crate::view::View;

/// A place of a number: what is measured there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Place {
    /// From one point to another, as a dimension line with ends.
    Span(Pt, Pt),
    /// At a point.
    At(Pt),
}

impl Place {
    /// The middle, where the leader starts.
    pub fn middle(self) -> Pt {
        match self {
            Place::Span(a, b) => a.toward(b, 0.5),
            Place::At(p) => p,
        }
    }
}

/// A number with its place.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Mark {
    pub value: StepValue,
    pub place: Place,
    pub side: Side,
    /// Whether it is shown when nothing is amiss with it.
    pub always: bool,
}

fn upright(x: f64, low: f64, high: f64) -> Place {
    Place::Span(pt(x, low), pt(x, high))
}

fn level(z: f64, from: f64, to: f64) -> Place {
    Place::Span(pt(from, z), pt(to, z))
}

fn see(value: Quantity, place: Place, side: Side, always: bool) -> Mark {
    Mark {
        value: StepValue::See(value),
        place,
        side,
        always,
    }
}

fn done(value: Decision, place: Place, side: Side) -> Mark {
    Mark {
        value: StepValue::Do(value),
        place,
        side,
        always: true,
    }
}

/// All places of a view.
pub(crate) fn marks(
    lines: &Lines,
    view: View,
    plan: &Plan,
    sleeve: &Sleeve,
    drum: Drum,
) -> Vec<Mark> {
    match view {
        View::Front => front(lines, plan, sleeve),
        View::Back => back(lines, plan, drum),
    }
}

fn front(lines: &Lines, plan: &Plan, sleeve: &Sleeve) -> Vec<Mark> {
    use Quantity as Q;
    use Side::{Left, Right};
    const ALWAYS: bool = true;
    const WHEN_MISSED: bool = false;
    let view = View::Front;
    let seen = |q: Q| plan.prediction.value(q);
    let half = |z: f64| lines.surface.half_breadth(z);
    let end = lines.collar_end_point(view);
    let cover_x = if lines.collar_end_faces(view) {
        end.x
    } else {
        -half(end.z)
    };
    let corner = lines.front_hem().last().map_or(0.0, |p| p.x);
    let inner_corner = lines.point(
        view,
        lines.inner_edge(lines.inner_corner),
        lines.inner_corner,
    );
    let hip = lines.surface.skirt_top();
    let inner_hip = lines.point(view, lines.inner_edge(hip), hip);
    let right_seam = lines.point(view, lines.right_seam(hip), hip - 3.0);
    let edge_hip = lines.point(view, lines.outer_edge(hip), hip - 3.0);
    let right = -half(lines.obi.right);
    let top = lines.obi_top();
    let crossing = lines.crossing_seen(lines.juban_overlap);
    let throat = crossing.z + seen(Q::JubanCrossing);
    let kimono = lines.crossing_seen(lines.kimono_overlap);
    let juban_side = |overlap: f64, z: f64| pt(-lines.collar_x(overlap, z), z);
    let show_z = crossing.z + 2.0;
    let (a, b) = (
        juban_side(lines.juban_overlap, show_z),
        juban_side(lines.kimono_overlap, show_z),
    );
    let wrist = sleeve.end.mirrored().moved(-1.2, -1.2);
    let wrist_bone = sleeve.wrist.mirrored().moved(-1.2, -1.2);
    vec![
        see(Q::JubanShow, Place::Span(a, b), Left, ALWAYS),
        see(Q::SleeveShort, Place::Span(wrist, wrist_bone), Left, ALWAYS),
        see(
            Q::FoldRight,
            upright(right + 2.2, lines.fold.right, lines.obi.right),
            Left,
            ALWAYS,
        ),
        see(
            Q::CollarEndClearance,
            upright(cover_x + 2.6, end.z, lines.tie.right),
            Left,
            ALWAYS,
        ),
        see(
            Q::FrontCover,
            level(end.z, cover_x, -half(end.z)),
            Left,
            ALWAYS,
        ),
        see(
            Q::CollarEndVisible,
            upright(cover_x - 1.4, end.z, lines.fold.right),
            Left,
            WHEN_MISSED,
        ),
        see(
            Q::FoldSlant,
            Place::At(pt(0.5 * right, 0.5 * (lines.fold.right + lines.fold.front))),
            Left,
            WHEN_MISSED,
        ),
        see(
            Q::ClothRight,
            Place::At(pt(0.9 * right, lines.obi.right + 5.0)),
            Left,
            WHEN_MISSED,
        ),
        see(
            Q::BulkRight,
            Place::At(pt(0.8 * right, lines.obi.right + 3.0)),
            Left,
            WHEN_MISSED,
        ),
        see(
            Q::WrapEase,
            Place::Span(right_seam, edge_hip),
            Left,
            WHEN_MISSED,
        ),
        see(
            Q::UwamaeCorner,
            upright(corner - 1.6, 0.0, lines.outer_corner),
            Left,
            ALWAYS,
        ),
        see(
            Q::JubanCrossing,
            upright(0.0, crossing.z, throat),
            Right,
            ALWAYS,
        ),
        see(
            Q::JubanHold,
            Place::At(crossing.moved(0.6, -2.0)),
            Right,
            WHEN_MISSED,
        ),
        see(
            Q::KimonoHold,
            Place::At(kimono.moved(0.9, -2.0)),
            Right,
            WHEN_MISSED,
        ),
        see(
            Q::ObiageShow,
            upright(4.5, top.front, top.front + seen(Q::ObiageShow)),
            Right,
            ALWAYS,
        ),
        see(
            Q::BulkFront,
            Place::At(pt(5.0, lines.obi.front + 4.0)),
            Right,
            WHEN_MISSED,
        ),
        see(
            Q::ClothFront,
            Place::At(pt(3.0, lines.obi.front + 5.0)),
            Right,
            WHEN_MISSED,
        ),
        see(
            Q::TrunkStep,
            Place::At(pt(half(lines.obi.left) * 0.9, lines.obi.left + 8.0)),
            Right,
            WHEN_MISSED,
        ),
        see(
            Q::ObiOverHipBone,
            Place::At(pt(0.8 * half(lines.obi.front), lines.obi.left)),
            Right,
            WHEN_MISSED,
        ),
        done(
            Decision::ObiLowerEdge,
            Place::At(lines.round_seen(view, lines.obi, 0.0, 0.78)),
            Right,
        ),
        see(
            Q::FoldFront,
            upright(1.5, lines.fold.front, lines.obi.front),
            Right,
            ALWAYS,
        ),
        see(
            Q::KoshihimoSlope,
            Place::At(lines.round_seen(view, lines.tie, 0.0, 0.95)),
            Right,
            WHEN_MISSED,
        ),
        done(
            Decision::KoshihimoFront,
            Place::At(lines.round_seen(view, lines.tie, 0.0, 0.62)),
            Right,
        ),
        see(Q::InnerCover, level(hip, 0.0, inner_hip.x), Right, ALWAYS),
        see(
            Q::ShitamaeAboveUwamae,
            upright(inner_corner.x, lines.outer_corner, lines.inner_corner),
            Right,
            ALWAYS,
        ),
        see(
            Q::HemTaper,
            Place::At(pt(half(22.0), 22.0)),
            Right,
            WHEN_MISSED,
        ),
    ]
}

fn back(lines: &Lines, plan: &Plan, drum: Drum) -> Vec<Mark> {
    use Quantity as Q;
    use Side::{Left, Right};
    const ALWAYS: bool = true;
    const WHEN_MISSED: bool = false;
    let view = View::Back;
    let seen = |q: Q| plan.prediction.value(q);
    let half = |z: f64| lines.surface.half_breadth(z);
    let nape = lines.back_neck - lines.nape_drop;
    let beside = 0.5 * DRUM_WIDTH;
    let side = half(lines.obi.back).max(beside + 2.0);
    let seam_low = 0.5 * (lines.fold.back.min(drum.tail) + lines.hem) + 12.0;
    let seam_top = 0.5 * (nape - 6.0 + drum.top);
    // To the wearer's left is to the viewer's left.
    let at = |c: f64| view.x(c);
    let fold_x = -(half(lines.fold.back) - 0.6).max(beside + 1.2);
    vec![
        see(
            Q::NapeDrop,
            upright(-1.2, nape, lines.back_neck),
            Left,
            ALWAYS,
        ),
        see(
            Q::RidgeSetback,
            Place::At(pt(-lines.neck().x - 5.0, lines.neck().z - 1.5)),
            Left,
            WHEN_MISSED,
        ),
        see(
            Q::BulkBack,
            Place::At(pt(-side, lines.obi.back + 6.0)),
            Left,
            WHEN_MISSED,
        ),
        see(
            Q::ClothBack,
            Place::At(pt(-side, lines.obi.back + 4.0)),
            Left,
            WHEN_MISSED,
        ),
        done(
            Decision::KoshihimoBack,
            Place::At(lines.round_seen(view, lines.tie, 0.0, 0.12)),
            Left,
        ),
        see(
            Q::KoshihimoOverHipBone,
            Place::At(lines.round_seen(view, lines.tie, 0.0, 0.05)),
            Left,
            WHEN_MISSED,
        ),
        see(
            Q::FoldBack,
            upright(fold_x, lines.fold.back, lines.obi.back),
            Left,
            ALWAYS,
        ),
        see(
            Q::BackSeamHip,
            level(seam_low, 0.0, at(seen(Q::BackSeamHip))),
            Left,
            ALWAYS,
        ),
        see(Q::HemLoop, Place::At(pt(-half(8.0), 8.0)), Left, ALWAYS),
        see(
            Q::BackSeamTop,
            level(seam_top, 0.0, at(seen(Q::BackSeamTop))),
            Right,
            ALWAYS,
        ),
        see(
            Q::BackSeamBend,
            Place::At(pt(
                at(0.5 * (seen(Q::BackSeamHip) + seen(Q::BackSeamTop))),
                lines.fold.back,
            )),
            Right,
            WHEN_MISSED,
        ),
        see(
            Q::DrumHeight,
            upright(beside + 1.2, drum.bottom, drum.top),
            Right,
            ALWAYS,
        ),
        see(
            Q::TareLength,
            upright(beside + 1.2, drum.tail, drum.bottom),
            Right,
            ALWAYS,
        ),
        see(Q::HemBack, upright(0.0, 0.0, lines.hem), Right, ALWAYS),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_quantity_has_a_place_in_one_view() {
        let bench = crate::bench::Bench::ordinary();
        let scene = bench.scene();
        let parts = crate::figure::Parts::of(&scene, scene.shown);
        for &q in Quantity::ALL {
            let places = View::ALL
                .iter()
                .flat_map(|&v| marks(&parts.lines, v, scene.shown, &parts.sleeve, parts.drum))
                .filter(|m| m.value == StepValue::See(q))
                .count();
            assert_eq!(places, 1, "{} has {places} places", q.key());
        }
    }
}
