//! The dressed person as patches of triangles.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use sunbu_core::drape::{DRUM_WIDTH, FOLD_OUT, OBI_OUT, OBI_WIDTH, Round, arc_of_angle};

use crate::build::{ANKLE_RADIUS, SLEEVE_LIFT, WRIST_HALF};
use crate::dressed::{Dressed, OBIAGE_OUT};
use crate::vector::{V3, add, times, toward};

/// How much deeper lies what another layer covers, in centimetres.
const UNDER: f64 = 0.35;

/// What a patch is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Stuff {
    /// Back and outer panel; the first extra is the arc past the back seam.
    Outer,
    /// Inner panel; the first extra is the arc past the outer panel's edge.
    Inner,
    Fold,
    Obi,
    Obijime,
    Obiage,
    /// The kimono above the obi, with collars, throat and nape by place.
    Bodice,
    Sleeve,
    Skin,
    Hair,
    Tabi,
    Drum,
    Floor,
    Wall,
    Frame,
    Paper,
}

impl Stuff {
    /// Whether lines are painted on it that are narrower than a triangle.
    pub fn is_lined(self) -> bool {
        matches!(
            self,
            Stuff::Outer | Stuff::Inner | Stuff::Fold | Stuff::Bodice
        )
    }
}

/// A corner of a triangle.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Vertex {
    pub at: V3,
    /// Where on the cloth, in centimetres.
    pub cloth: [f64; 2],
    /// Distances that its painting asks for, in centimetres.
    pub extra: [f64; 2],
}

/// A grid of corners, row by row.
#[derive(Debug, Clone)]
pub(crate) struct Patch {
    pub stuff: Stuff,
    pub columns: usize,
    pub vertices: Vec<Vertex>,
}

impl Patch {
    /// A grid over 0 to 1 in both directions, with so many cells.
    pub fn grid(
        stuff: Stuff,
        across: usize,
        along: usize,
        place: impl Fn(f64, f64) -> Vertex,
    ) -> Self {
        let mut vertices = Vec::with_capacity((across + 1) * (along + 1));
        for j in 0..=along {
            for i in 0..=across {
                vertices.push(place(i as f64 / across as f64, j as f64 / along as f64));
            }
        }
        Self {
            stuff,
            columns: across + 1,
            vertices,
        }
    }

    /// A grid whose cloth is measured in shares of its sides.
    pub fn plain(
        stuff: Stuff,
        across: usize,
        along: usize,
        place: impl Fn(f64, f64) -> V3,
    ) -> Self {
        Self::grid(stuff, across, along, |u, v| Vertex {
            at: place(u, v),
            cloth: [u, v],
            extra: [0.0; 2],
        })
    }

    /// The corners of every triangle, as places in [`Patch::vertices`].
    pub fn triangles(&self) -> impl Iterator<Item = [usize; 3]> + '_ {
        let (n, rows) = (self.columns, self.vertices.len() / self.columns);
        (0..rows - 1).flat_map(move |j| {
            (0..n - 1).flat_map(move |i| {
                let a = j * n + i;
                [[a, a + 1, a + n], [a + 1, a + n + 1, a + n]]
            })
        })
    }
}

/// Everything of the person, with about `fine` cells to a half turn of the body.
pub(crate) fn person(dressed: &Dressed, fine: usize) -> Vec<Patch> {
    let mut out = Vec::new();
    skirt(dressed, fine, &mut out);
    bands(dressed, fine, &mut out);
    out.push(bodice(dressed, fine));
    for left in [true, false] {
        sleeve(dressed, left, fine, &mut out);
        limbs(dressed, left, fine, &mut out);
    }
    head(dressed, fine, &mut out);
    drum(dressed, fine, &mut out);
    out
}

fn skirt(dressed: &Dressed, fine: usize, out: &mut Vec<Patch>) {
    let d = &dressed.drape;
    let top = d.obi.back.max(d.obi.front) + 3.0;
    let below_fold = |s: f64, z: f64| d.fold.at(dressed.turn(s, z)) - z;
    let ramp = |past: f64| past.clamp(0.0, 1.0) * UNDER;
    out.push(Patch::grid(Stuff::Outer, 2 * fine, fine / 2, |u, v| {
        let arc = |z: f64| {
            let low = d.right_seam(z) - d.surface.girth(z);
            low + u * (d.outer_edge(z) - low)
        };
        let bottom = dressed.hem(arc(d.outer_corner));
        let z = bottom + v * (top - bottom);
        let s = arc(z);
        let covered = if s < 0.0 {
            d.outer_edge(z) - s - d.surface.girth(z)
        } else {
            0.0
        };
        Vertex {
            at: d.surface.at(s, z, -ramp(covered)),
            cloth: [s, z],
            extra: [s - d.back_seam(z), below_fold(s, z)],
        }
    }));
    out.push(Patch::grid(Stuff::Inner, fine, fine / 2, |u, v| {
        let arc = |z: f64| d.right_seam(z) + u * (d.inner_edge(z) - d.right_seam(z));
        let bottom = dressed.inner_hem(arc(d.hem));
        let z = bottom + v * (top - bottom);
        let s = arc(z);
        let past = s - d.outer_edge(z);
        Vertex {
            at: d.surface.at(s, z, -ramp(-past)),
            cloth: [s, z],
            extra: [past, below_fold(s, z)],
        }
    }));
}

/// A band round the body between two heights at each angle, or a ledge between two depths.
fn band(
    dressed: &Dressed,
    stuff: Stuff,
    cells: (usize, usize),
    span: (f64, f64),
    place: impl Fn(f64, f64) -> (f64, f64),
) -> Patch {
    let d = &dressed.drape;
    Patch::grid(stuff, cells.0, cells.1, |u, v| {
        let turn = span.0 + u * (span.1 - span.0);
        let (z, stands) = place(turn, v);
        let (girth, side) = (d.surface.girth(z), d.surface.side_arc(z));
        let s = arc_of_angle(turn, girth, side);
        let s = if turn >= TAU { s + girth } else { s };
        // Counted from the back both ways, so that a pattern runs straight on both sides.
        let from_back = if u > 0.5 && span.1 > PI { s - girth } else { s };
        let from_back = if from_back < -0.5 * girth {
            from_back + girth
        } else {
            from_back
        };
        Vertex {
            at: d.surface.at(s, z, stands),
            cloth: [from_back, z],
            extra: [from_back - d.back_seam(z), d.fold.at(turn) - z],
        }
    })
}

fn bands(dressed: &Dressed, fine: usize, out: &mut Vec<Patch>) {
    let d = &dressed.drape;
    let whole = (0.0, TAU);
    let mix = |a: f64, b: f64, v: f64| a + v * (b - a);
    let wall = |low: Round, high: Round, stands: f64| {
        move |turn: f64, v: f64| (mix(low.at(turn), high.at(turn), v), stands)
    };
    let ledge =
        |line: Round, a: f64, b: f64| move |turn: f64, v: f64| (line.at(turn), mix(a, b, v));
    let (top, cells, thin) = (d.obi_top(), (2 * fine, fine / 6), (2 * fine, 1));
    let mut push = |stuff, cells, place: &dyn Fn(f64, f64) -> (f64, f64)| {
        out.push(band(dressed, stuff, cells, whole, place));
    };
    push(
        Stuff::Fold,
        cells,
        &wall(d.fold, d.obi.raised(2.0), FOLD_OUT),
    );
    push(Stuff::Fold, thin, &ledge(d.fold, -UNDER, FOLD_OUT));
    push(Stuff::Obi, cells, &wall(d.obi, top, OBI_OUT));
    push(Stuff::Obi, thin, &ledge(d.obi, 0.0, OBI_OUT));
    push(Stuff::Obi, thin, &ledge(top, OBI_OUT, 0.0));
    let cord = d.obi.raised(0.5 * OBI_WIDTH - 0.65);
    push(
        Stuff::Obijime,
        (2 * fine, 2),
        &wall(cord, cord.raised(1.3), OBI_OUT + 0.3),
    );
    if d.obiage > 0.1 {
        let front = (FRAC_PI_2, 3.0 * FRAC_PI_2);
        let show = |turn: f64| d.obiage * (0.4 - 0.6 * turn.cos());
        out.push(band(dressed, Stuff::Obiage, (fine, 4), front, |turn, v| {
            (top.at(turn) + mix(-1.0, show(turn), v), OBIAGE_OUT)
        }));
    }
}

fn bodice(dressed: &Dressed, fine: usize) -> Patch {
    let d = &dressed.drape;
    let low = d.obi_top();
    Patch::grid(Stuff::Bodice, 2 * fine, fine / 2, |u, v| {
        let turn = TAU * u;
        let z = (low.at(turn) - 3.0) * (1.0 - v) + d.side_neck * v;
        let (girth, side) = (d.surface.girth(z), d.surface.side_arc(z));
        let s = arc_of_angle(turn, girth, side);
        let s = if u >= 1.0 { s + girth } else { s };
        let from_back = if u > 0.5 { s - girth } else { s };
        let front = if turn.cos() < 0.0 { 1.0 } else { -1.0 };
        Vertex {
            at: d.surface.at(s, z, dressed.nape_out(s, z)),
            cloth: [from_back, z],
            extra: [from_back - d.back_seam(z), front],
        }
    })
}

fn sleeve(dressed: &Dressed, left: bool, fine: usize, out: &mut Vec<Patch>) {
    let b = &dressed.build;
    let across = b.across_arm(left);
    let ridge = |u: f64| {
        let reach = dressed.katahaba + u * (dressed.yuki - dressed.katahaba);
        b.along_arm(left, reach, SLEEVE_LIFT)
    };
    let neck = dressed
        .drape
        .nape_line(if left { FRAC_PI_2 } else { -FRAC_PI_2 });
    let shoulder = add(b.shoulder(left), [0.0, 0.0, 0.8]);
    let yoke = |u: f64| {
        if u < 0.5 {
            toward(neck, shoulder, 2.0 * u)
        } else {
            toward(shoulder, ridge(0.0), 2.0 * u - 1.0)
        }
    };
    for sign in [1.0, -1.0] {
        let hung = |at: V3, drop: f64, swell: f64| {
            let aside = sign * swell * (1.0 - (-drop / 1.2).exp());
            add(add(at, times(across, aside)), [0.0, 0.0, -drop])
        };
        let cloth = |place: &dyn Fn(f64, f64) -> V3, u: f64, v: f64, wide: f64, long: f64| Vertex {
            at: place(u, v),
            cloth: [wide * u, long * v * v],
            extra: [0.0; 2],
        };
        let (wide, long) = (dressed.yuki - dressed.katahaba, dressed.sodetake);
        let hanging = |u: f64, v: f64| hung(ridge(u), long * v * v, 3.4);
        out.push(Patch::grid(Stuff::Sleeve, fine / 4, fine / 4, |u, v| {
            cloth(&hanging, u, v, wide, long)
        }));
        let over = |u: f64, v: f64| hung(yoke(u), 23.0 * v * v, 3.4 * u);
        out.push(Patch::grid(Stuff::Sleeve, fine / 4, fine / 4, |u, v| {
            cloth(&over, u, v, dressed.katahaba, 23.0)
        }));
    }
}

/// An ellipsoid by its middle and three half axes, from `from` to `to` of the way down.
fn ball(stuff: Stuff, fine: usize, middle: V3, axes: [V3; 3], (from, to): (f64, f64)) -> Patch {
    Patch::plain(stuff, fine, fine / 2, |u, v| {
        let (sin_u, cos_u) = (TAU * u).sin_cos();
        let (sin_v, cos_v) = (PI * (from + v * (to - from))).sin_cos();
        let [a, b, c] = axes;
        let ring = add(times(a, sin_v * cos_u), times(b, sin_v * sin_u));
        add(middle, add(ring, times(c, cos_v)))
    })
}

/// A tube from one ellipse to another, each with its middle and the same directions.
fn tube(stuff: Stuff, fine: usize, ends: [V3; 2], axes: [V3; 2], radii: [[f64; 2]; 2]) -> Patch {
    Patch::plain(stuff, fine, 4, |u, v| {
        let (sin, cos) = (TAU * u).sin_cos();
        let r = |i: usize| radii[0][i] + v * (radii[1][i] - radii[0][i]);
        let ring = add(times(axes[0], r(0) * cos), times(axes[1], r(1) * sin));
        add(toward(ends[0], ends[1], v), ring)
    })
}

fn limbs(dressed: &Dressed, left: bool, fine: usize, out: &mut Vec<Patch>) {
    let b = &dressed.build;
    let (over, across, along) = (b.over_arm(left), b.across_arm(left), b.arm(left));
    let wrist = b.along_arm(left, b.reach(), 0.0);
    let elbow = b.along_arm(left, dressed.yuki.min(b.reach()) - 8.0, 0.0);
    let round = fine / 4;
    out.push(tube(
        Stuff::Skin,
        round,
        [elbow, wrist],
        [over, across],
        [[1.9, 2.2], [WRIST_HALF, 2.3]],
    ));
    let half = 0.5 * b.hand;
    out.push(ball(
        Stuff::Skin,
        round,
        add(wrist, times(along, 0.96 * half)),
        [times(over, 1.7), times(across, 4.0), times(along, half)],
        (0.0, 1.0),
    ));
    let (heel, toe) = b.foot();
    let (x, length) = (b.ankle(left)[0], toe - heel);
    let x = x - x.signum() * ANKLE_RADIUS;
    out.push(ball(
        Stuff::Tabi,
        round,
        [x, heel + 0.5 * length, 0.0],
        [[4.4, 0.0, 0.0], [0.0, 0.5 * length, 0.0], [0.0, 0.0, 5.6]],
        (0.0, 0.5),
    ));
    let at = |z: f64| [x, heel + 0.25 * length, z];
    out.push(tube(
        Stuff::Tabi,
        round,
        [at(1.0), at(35.0)],
        [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0]],
        [[ANKLE_RADIUS, 4.0], [ANKLE_RADIUS, 4.2]],
    ));
}

fn head(dressed: &Dressed, fine: usize, out: &mut Vec<Patch>) {
    let (b, d) = (&dressed.build, &dressed.drape);
    let (stature, ahead) = (b.stature, b.head_ahead());
    let (half, deep, rise) = (0.047 * stature, 0.058 * stature, 0.069 * stature);
    let axes = |x: f64, y: f64, z: f64| [[x, 0.0, 0.0], [0.0, y, 0.0], [0.0, 0.0, z]];
    let round = fine / 2;
    out.push(ball(
        Stuff::Skin,
        round,
        [0.0, ahead, stature - rise],
        axes(half, deep, rise),
        (0.0, 1.0),
    ));
    let hair = b.stance().hair;
    let tall = 0.6 * (2.0 * rise);
    out.push(ball(
        Stuff::Hair,
        round,
        [0.0, ahead - 1.6, stature + hair - 0.5 * tall - 0.2],
        axes(half + 0.9, deep + 0.4, 0.5 * tall + 0.2),
        (0.0, 1.0),
    ));
    // Behind, the hair goes down to the nape.
    out.push(ball(
        Stuff::Hair,
        round,
        [0.0, ahead - 0.36 * deep, stature - 1.02 * rise],
        axes(half + 0.3, 0.7 * deep, 0.84 * rise),
        (0.0, 1.0),
    ));
    out.push(ball(
        Stuff::Hair,
        round / 2,
        [0.0, ahead - deep - 1.0, stature - 0.9 * rise],
        axes(4.2, 3.4, 4.6),
        (0.0, 1.0),
    ));
    let beside = d.nape_line(FRAC_PI_2);
    let neck = 0.86 * beside[0];
    out.push(tube(
        Stuff::Skin,
        round,
        [
            [0.0, beside[1] - 1.0, d.side_neck - 9.0],
            [0.0, ahead + 0.5, stature - 1.5 * rise],
        ],
        [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0]],
        [[neck, neck], [0.9 * neck, neck]],
    ));
}

fn drum(dressed: &Dressed, fine: usize, out: &mut Vec<Patch>) {
    let d = &dressed.drape;
    let half = 0.5 * DRUM_WIDTH;
    let (top, bottom, tail) = (d.drum.top, d.drum.bottom, d.drum.tail);
    let board = |low: f64, high: f64, half: f64, nearer: f64| {
        Patch::grid(Stuff::Drum, fine / 4, fine / 4, |u, v| {
            let (x, z) = ((2.0 * u - 1.0) * half, low + v * (high - low));
            let at = d.drum_at(x, z);
            Vertex {
                at: add(at, [0.0, nearer, 0.0]),
                cloth: [x, z],
                extra: [0.0; 2],
            }
        })
    };
    out.push(board(bottom, top, half, 0.0));
    if bottom - tail > 0.1 {
        out.push(board(tail, bottom + 2.0, half - 0.2, 1.0));
    }
    let middle = d.obi.back + 0.5 * OBI_WIDTH;
    out.push(board(middle - 5.5, middle + 5.5, half + 2.0, 1.5));
    // The pillow and the folded cloth fill the way from the board to the obi.
    let behind = |z: f64| d.surface.at(0.0, z, 0.0)[1] + 3.0;
    let inward = |x: f64, z: f64, v: f64| {
        let at = d.drum_at(x, z);
        [x * (1.0 - 0.3 * v), at[1] + v * (behind(z) - at[1]), z]
    };
    out.push(Patch::plain(Stuff::Obiage, fine / 4, 3, |u, v| {
        inward((2.0 * u - 1.0) * half, top, v)
    }));
    for x in [-half, half] {
        out.push(Patch::plain(Stuff::Drum, 3, fine / 4, |u, v| {
            inward(x, bottom + v * (top - bottom), u)
        }));
    }
    out.push(Patch::plain(Stuff::Drum, fine / 4, 3, |u, v| {
        inward((2.0 * u - 1.0) * half, bottom, v)
    }));
}
