//! Where the photo is taken: floor, a wall with its skirting, a door frame, an A4 sheet.

use crate::build::Build;
use crate::mesh::{Patch, Stuff, Vertex};
use crate::vector::{V3, add, times};

/// Sides of an A4 sheet, in centimetres (ISO 216).
pub(crate) const A4: [f64; 2] = [21.0, 29.7];

/// A room about the wearer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Room {
    /// Direction of the wall from her, as [`crate::Lens::pan`] counts directions, in radians.
    pub pan: f64,
    /// How far behind her the wall is, in centimetres.
    pub wall: f64,
    /// Where the door begins, along the wall to the viewer's right, in centimetres.
    pub door: f64,
}

impl Room {
    /// A place by how far along the wall to the viewer's right it lies, how far toward the wall,
    /// how high.
    pub fn place(&self, right: f64, toward: f64, z: f64) -> V3 {
        let (sin, cos) = self.pan.sin_cos();
        add(
            add(
                times([cos, sin, 0.0], right),
                times([sin, -cos, 0.0], toward),
            ),
            [0.0, 0.0, z],
        )
    }

    /// The two inner edges of the door frame, each from its foot upward.
    pub fn uprights(&self) -> [[V3; 2]; 2] {
        [self.door, self.door + 82.0].map(|x| {
            [
                self.place(x, self.wall - 1.0, 12.0),
                self.place(x, self.wall - 1.0, 185.0),
            ]
        })
    }

    /// The skirting's upper edge, and the floor's edge under it.
    pub fn levels(&self) -> [[V3; 2]; 2] {
        [8.0, 0.0].map(|z| {
            [
                self.place(-90.0, self.wall - 1.0, z),
                self.place(90.0, self.wall - 1.0, z),
            ]
        })
    }

    pub fn patches(&self, distance: f64) -> Vec<Patch> {
        let flat = |stuff, cells, place: &dyn Fn(f64, f64) -> (V3, [f64; 2])| {
            Patch::grid(stuff, cells, cells, |u, v| {
                let (at, cloth) = place(u, v);
                Vertex {
                    at,
                    cloth,
                    extra: [0.0; 2],
                }
            })
        };
        let wide = |u: f64| (2.0 * u - 1.0) * 420.0;
        let near = 40.0 - distance;
        let mut out = vec![
            flat(Stuff::Floor, 32, &|u, v| {
                let (x, y) = (wide(u), near + v * (self.wall - near));
                (self.place(x, y, 0.0), [x, y])
            }),
            flat(Stuff::Wall, 8, &|u, v| {
                let (x, z) = (wide(u), 330.0 * v);
                (self.place(x, self.wall, z), [x, z])
            }),
        ];
        let mut bar = |x: (f64, f64), z: (f64, f64)| {
            out.push(flat(Stuff::Frame, 2, &|u, v| {
                let (x, z) = (x.0 + u * (x.1 - x.0), z.0 + v * (z.1 - z.0));
                (self.place(x, self.wall - 1.0, z), [x, z])
            }));
        };
        bar((-420.0, self.door - 7.0), (0.0, 8.0));
        bar((self.door + 89.0, 420.0), (0.0, 8.0));
        bar((self.door - 7.0, self.door), (0.0, 200.0));
        bar((self.door + 82.0, self.door + 89.0), (0.0, 200.0));
        bar((self.door, self.door + 82.0), (193.0, 200.0));
        out
    }
}

/// The corners of an A4 sheet stood upright on the floor beside the feet, facing a lens that looks
/// along `pan`, its middle so far to the viewer's right: upper left, upper right, lower right,
/// lower left as the picture shows them.
pub(crate) fn sheet(build: &Build, pan: f64, aside: f64) -> [V3; 4] {
    let (heel, toe) = build.foot();
    let (sin, cos) = pan.sin_cos();
    // As near to the lens as the feet reach, and a finger more.
    let reach = 0.5 * (toe - heel) * cos.abs() + (build.stance().feet + 5.0) * sin.abs() + 1.0;
    let feet = [0.0, 0.5 * (heel + toe), 0.0];
    let middle = add(
        feet,
        add(
            times([sin, -cos, 0.0], -reach),
            times([cos, sin, 0.0], aside),
        ),
    );
    let at = |x: f64, z: f64| add(middle, [x * cos, x * sin, z]);
    let half = 0.5 * A4[0];
    [
        at(-half, A4[1]),
        at(half, A4[1]),
        at(half, 0.0),
        at(-half, 0.0),
    ]
}
