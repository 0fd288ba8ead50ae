//! The three balances: what each path over the body leaves as cloth above the tie.

use sunbu_core::drape::OBI_WIDTH;
use sunbu_core::dressing::{Decision, Quantity};

use super::{Align, Plate, valued};
use crate::curve::{Pt, pt, smooth};
use crate::figure::Scene;
use crate::lines::{Lines, heights};
use crate::look;
use crate::view::View;

/// User units to the centimetre.
const SCALE: f64 = 8.0;
/// How far the layers of the fold are drawn apart, in centimetres.
const APART: f64 = 1.6;

/// The dressed body from its right side, facing the viewer's right, with the cloth of the back and
/// front paths, the fold, and the collar's path along the right side.
pub fn balances(scene: &Scene) -> String {
    let lines = Lines::new(scene.body, scene.fitting, scene.shown);
    let words = scene.words;
    let seen = |q: Quantity| scene.shown.prediction.value(q);
    let done = |d: Decision| scene.shown.dressing.get(d);
    let shape = scene.body.shape();
    let top = shape.figure().stature + 4.0;
    let mut plate = Plate::new(1750.0, 60.0 + top * SCALE + 50.0, 875.0, 0.0, SCALE);
    plate.canvas.paper.floor = 60.0 + top * SCALE;
    plate.line(look::FLOOR_LINE, &[pt(-34.0, 0.0), pt(34.0, 0.0)]);
    let body: Vec<Pt> = shape
        .side_silhouette()
        .iter()
        .map(|p| pt(p[0], p[1]))
        .collect();
    plate.area(look::SKIN_AREA, &body);

    // How far cloth lies ahead of the axis at a height, on the front (+1) or the back (-1).
    let surface = |sign: f64, z: f64| -> f64 {
        let at = z.max(lines.surface.skirt_top());
        let s = if sign > 0.0 {
            0.5 * lines.surface.girth(at)
        } else {
            0.0
        };
        lines.seen(s, at).ahead + sign * 0.6
    };
    let ridge = pt(-0.5 * seen(Quantity::RidgeSetback), lines.neck().z + 0.6);
    let paths = [
        (1.0, lines.tie.front, lines.fold.front, front_hem(&lines)),
        (-1.0, lines.tie.back, lines.fold.back, lines.hem),
    ];
    let chest = lines.obi.front + OBI_WIDTH;
    for (sign, tie, fold, hem) in paths {
        let skirt: Vec<Pt> = heights(hem, tie).map(|z| pt(surface(sign, z), z)).collect();
        plate.line(look::EDGE_LINE, &skirt);
        // From the tie down to the fold's lower edge and up again over it.
        let out = |z: f64, layers: f64| pt(surface(sign, z) + sign * APART * layers, z);
        let mut loop_line: Vec<Pt> = vec![out(tie, 0.0)];
        loop_line.extend(smooth(
            &[
                out(tie - 0.6, 0.7),
                out(0.5 * (tie + fold), 0.9),
                out(fold + 0.8, 1.0),
                out(fold, 1.5),
                out(fold + 0.8, 2.0),
                out(0.5 * (tie + fold), 2.0),
                out(tie, 1.9),
                out(chest, 0.9),
            ],
            8,
        ));
        let shoulder = [
            out(chest, 0.9),
            pt(surface(sign, chest + 10.0), chest + 10.0),
            if sign > 0.0 {
                pt(surface(1.0, chest) * 0.75, lines.neck().z - 8.0)
            } else {
                out(lines.neck().z - 12.0, 0.3)
            },
            if sign > 0.0 {
                ridge
            } else {
                pt(
                    surface(-1.0, lines.neck().z - 12.0) * 0.9,
                    lines.back_neck - lines.nape_drop,
                )
            },
        ];
        plate.line(look::EDGE_LINE, &loop_line);
        plate.line(look::EDGE_LINE, &smooth(&shoulder, 8));
    }
    for (sign, z) in [(1.0, lines.obi.front), (-1.0, lines.obi.back)] {
        let x = |z: f64| surface(sign, z) + sign * 2.4 * APART;
        let band = [
            pt(x(z), z),
            pt(x(z) + sign * 1.6, z),
            pt(x(z + OBI_WIDTH) + sign * 1.6, z + OBI_WIDTH),
            pt(x(z + OBI_WIDTH), z + OBI_WIDTH),
        ];
        plate.area(look::OBI_AREA, &band);
    }
    // The waist tie round the body, and the collar's path on the right side.
    plate.line(
        look::HIDDEN_LINE,
        &[
            pt(surface(-1.0, lines.tie.back), lines.tie.back),
            pt(surface(1.0, lines.tie.front), lines.tie.front),
        ],
    );
    let end = lines.seen(lines.outer_edge(lines.collar_end), lines.collar_end);
    let collar = [pt(0.0, lines.neck().z), pt(end.ahead, lines.collar_end)];
    plate.line(look::WANTED_LINE, &collar);
    plate.dot(collar[1]);
    let at = collar[0].toward(collar[1], 0.42);
    plate.line(look::LEADER_LINE, &[at, pt(26.0, at.z + 4.0)]);
    let path = words.with(
        "draw-right-path",
        &[("symbol", (&valued("E", seen(Quantity::ClothRight))).into())],
    );
    plate.text(
        pt(26.0, at.z + 4.0),
        (8.0, 0.0),
        Align::Start,
        look::WANTED_TEXT,
        &path,
    );

    // Heights: the front's at the viewer's right, the back's at the left.
    let levels = |plate: &mut Plate, sign: f64, rows: &[(f64, f64, f64, String)]| {
        for (x, low, high, symbol) in rows {
            let align = if sign > 0.0 { Align::Start } else { Align::End };
            for z in [low, high] {
                plate.line(look::LEADER_LINE, &[pt(sign * 15.0, *z), pt(sign * x, *z)]);
            }
            plate.dimension(pt(sign * x, *low), pt(sign * x, *high), align, symbol);
        }
    };
    let (obi, tie) = (lines.obi.front, lines.tie.front);
    levels(
        &mut plate,
        1.0,
        &[
            (
                24.0,
                lines.fold.front,
                obi,
                valued("v", seen(Quantity::FoldFront)),
            ),
            (41.0, lines.fold.front, tie, String::new()),
            (59.0, 0.0, tie, valued("h_f", tie)),
            (84.0, 0.0, obi, valued("z_o", obi)),
        ],
    );
    let half = valued("(E \u{2212} u) / 2", tie - lines.fold.front);
    plate.text(pt(41.0, tie), (0.0, -26.0), Align::Start, look::TEXT, &half);
    let neck = lines.back_neck;
    levels(
        &mut plate,
        -1.0,
        &[
            (
                24.0,
                lines.fold.back,
                lines.obi.back,
                valued("v", seen(Quantity::FoldBack)),
            ),
            (46.0, 0.0, lines.tie.back, valued("h", lines.tie.back)),
            (
                24.0,
                neck - lines.nape_drop,
                neck,
                valued("e", lines.nape_drop),
            ),
            (66.0, 0.0, neck, valued("z_back_neck", neck)),
        ],
    );
    let hem = valued("g", done(Decision::HemHeight));
    plate.text(
        pt(surface(-1.0, 4.0), 0.5 * lines.hem),
        (-40.0, -14.0),
        Align::End,
        look::TEXT,
        &hem,
    );
    let front = words.with(
        "draw-front-path",
        &[("symbol", (&valued("E", seen(Quantity::ClothFront))).into())],
    );
    plate.text(
        pt(26.0, lines.neck().z + 8.0),
        (8.0, 0.0),
        Align::Start,
        look::TEXT,
        &front,
    );
    let back = words.with(
        "draw-back-path",
        &[("symbol", (&valued("E", seen(Quantity::ClothBack))).into())],
    );
    plate.text(
        pt(-26.0, lines.neck().z + 14.0),
        (-8.0, 0.0),
        Align::End,
        look::TEXT,
        &back,
    );
    plate.finish(words, "balances")
}

/// Height of the hem at the centre front.
fn front_hem(lines: &Lines) -> f64 {
    let middle = lines.point(View::Front, 0.5 * lines.surface.girth(lines.hem), lines.hem);
    lines
        .front_hem()
        .into_iter()
        .min_by(|a, b| (a.x - middle.x).abs().total_cmp(&(b.x - middle.x).abs()))
        .map_or(lines.hem, |p| p.z)
}
