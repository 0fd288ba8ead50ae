//! The collar triangle: where the collars cross, and what carries them.

use super::{Align, Plate, valued};
use crate::curve::{Pt, pt};
use crate::figure::Scene;
use crate::lines::Lines;
use crate::look;

/// User units to the centimetre.
const SCALE: f64 = 26.0;

/// The collars seen from the front, from the side neck points to the chest tie.
pub fn collar(scene: &Scene) -> String {
    let lines = Lines::new(scene.body, scene.fitting, scene.shown);
    let words = scene.words;
    let n = lines.neck();
    let low = lines.chest_tie;
    let fall = n.z - low;
    let (juban, kimono) = (lines.juban_overlap, lines.kimono_overlap);
    let mut plate = Plate::new(1800.0, 150.0 + fall * SCALE + 150.0, 900.0, 0.0, SCALE);
    // The side neck points lie 130 from the top.
    plate.canvas.paper.floor = 150.0 + n.z * SCALE;
    let end = |w: f64| pt(-w, low);
    let cross = |w: f64| lines.crossing_seen(w);
    // The triangle that carries the kimono collar.
    let triangle = [cross(kimono), end(kimono), end(kimono).mirrored()];
    plate.area(look::CLOTH_AREA, &triangle);
    plate.line(
        look::FLOOR_LINE,
        &[pt(-juban - 3.0, low), pt(juban + 3.0, low)],
    );
    for (w, look) in [(juban, look::SEAM_LINE), (kimono, look::EDGE_LINE)] {
        plate.line(look, &[n, end(w)]);
        plate.line(look, &[n.mirrored(), end(w).mirrored()]);
    }
    for p in [n, n.mirrored(), cross(juban), cross(kimono)] {
        plate.dot(p);
    }
    plate.dimension(
        pt(0.0, n.z + 1.6),
        pt(n.x, n.z + 1.6),
        Align::Middle,
        &valued("n", n.x),
    );
    let under = |w: f64, drop: f64| (pt(-w, low - drop), pt(0.0, low - drop));
    let (a, b) = under(kimono, 1.6);
    plate.dimension(a, b, Align::Middle, "");
    plate.text(
        a,
        (-16.0, 0.0),
        Align::End,
        look::TEXT,
        &valued("w", kimono),
    );
    let (a, b) = under(juban, 3.4);
    plate.dimension(a, b, Align::Middle, "");
    let id = words.with(
        "draw-juban-symbol",
        &[("symbol", (&valued("w", juban)).into())],
    );
    plate.text(b, (16.0, 0.0), Align::Start, look::TEXT, &id);
    // Drop to the crossing and height of the triangle, on the right; the juban's on the left.
    let x = juban + 4.0;
    let drop = n.z - cross(kimono).z;
    for (z, from) in [(n.z, n.x), (cross(kimono).z, 0.0), (low, juban + 3.0)] {
        plate.line(look::LEADER_LINE, &[pt(from, z), pt(x, z)]);
    }
    plate.dimension(
        pt(x, cross(kimono).z),
        pt(x, n.z),
        Align::Start,
        &valued("drop", drop),
    );
    plate.dimension(
        pt(x, low),
        pt(x, cross(kimono).z),
        Align::Start,
        &valued("hold", fall - drop),
    );
    let left = -x;
    let juban_drop = n.z - cross(juban).z;
    for (z, from) in [(n.z, -n.x), (cross(juban).z, 0.0)] {
        plate.line(look::LEADER_LINE, &[pt(from, z), pt(left, z)]);
    }
    let juban_words = words.with(
        "draw-juban-symbol",
        &[("symbol", (&valued("drop", juban_drop)).into())],
    );
    plate.dimension(
        pt(left, cross(juban).z),
        pt(left, n.z),
        Align::End,
        &juban_words,
    );
    let name = |plate: &mut Plate, at: Pt, shift, align, id: &str| {
        plate.text(at, shift, align, look::SOFT_TEXT, &words.get(id));
    };
    name(&mut plate, n, (22.0, -30.0), Align::Start, "draw-side-neck");
    name(
        &mut plate,
        pt(-juban - 3.0, low),
        (0.0, 34.0),
        Align::Start,
        "draw-chest-tie",
    );
    let on_juban = n.toward(end(juban), 0.72).mirrored();
    name(
        &mut plate,
        on_juban,
        (14.0, -20.0),
        Align::Start,
        "draw-juban-collar",
    );
    name(
        &mut plate,
        pt(0.0, low),
        (0.0, -70.0),
        Align::Middle,
        "draw-kimono-collar",
    );
    plate.finish(words, "collar")
}
