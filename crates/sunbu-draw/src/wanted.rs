//! The wanted dressing over the shown one: a second line of its own dash, with rings at its ends.

use sunbu_core::drape::{DRUM_WIDTH, FOLD_OUT, OBI_OUT};

use crate::canvas::Canvas;
use crate::curve::{Pt, pt};
use crate::figure::Parts;
use crate::look;
use crate::view::View;

/// A wanted line nearer than this to the shown one is left out, in centimetres: it could not be
/// told apart on paper at a tenth.
const APART_CM: f64 = 0.2;

/// Draws the lines by which two dressings are compared, where they differ.
pub(crate) fn draw(canvas: &mut Canvas, view: View, shown: &Parts, wanted: &Parts) {
    canvas.svg.open("g", "data-part=\"wanted\"");
    for (now, then) in compared(view, shown)
        .into_iter()
        .zip(compared(view, wanted))
    {
        let (name, now) = now;
        if !apart(&now, &then.1) {
            continue;
        }
        for run in then.1 {
            canvas.line(look::WANTED_LINE, name, &run);
            for end in [run.first(), run.last()].into_iter().flatten() {
                canvas.disc(look::WANTED_MARK, "wanted-end", *end, 7.0);
            }
        }
    }
    canvas.svg.close();
}

/// Whether two lines differ enough to be drawn both.
fn apart(a: &[Vec<Pt>], b: &[Vec<Pt>]) -> bool {
    let ends = |runs: &[Vec<Pt>]| -> Vec<Pt> {
        let three = |r: &Vec<Pt>| {
            [
                r.first().copied(),
                r.get(r.len() / 2).copied(),
                r.last().copied(),
            ]
        };
        runs.iter().flat_map(three).flatten().collect()
    };
    let (a, b) = (ends(a), ends(b));
    a.len() != b.len() || a.iter().zip(&b).any(|(p, q)| p.distance(*q) > APART_CM)
}

/// The lines of one dressing, each with its name; the same names in the same order for all.
fn compared(view: View, parts: &Parts) -> Vec<(&'static str, Vec<Vec<Pt>>)> {
    let lines = &parts.lines;
    let mut all = vec![
        (
            "wanted-fold-edge",
            vec![lines.round(view, lines.fold, FOLD_OUT)],
        ),
        (
            "wanted-obi-edge",
            vec![lines.round(view, lines.obi, OBI_OUT)],
        ),
        ("wanted-tie", vec![lines.round(view, lines.tie, 0.0)]),
        ("wanted-outer-edge", lines.outer_edge_runs(view)),
    ];
    match view {
        View::Front => {
            let kimono = lines.kimono_overlap;
            let low = lines.obi_top().front;
            all.push(("wanted-hem", vec![lines.front_hem()]));
            let end = pt(lines.collar_x(kimono, low), low);
            all.push(("wanted-collar", vec![vec![lines.neck(), end]]));
        }
        View::Back => {
            let half = DRUM_WIDTH / 2.0;
            let across = |z: f64| vec![vec![pt(-half, z), pt(half, z)]];
            all.push(("wanted-hem", vec![lines.back_hem()]));
            all.push(("wanted-nape", vec![lines.nape_line(0.0, 0.0)]));
            all.push(("wanted-drum", across(parts.drum.bottom)));
            all.push(("wanted-tail", across(parts.drum.tail)));
            let seam = lines.upward(view, lines.hem, lines.fold.back, |z| lines.back_seam(z));
            all.push(("wanted-back-seam", seam));
        }
    }
    all
}
