//! From triangles to a picture: nearest surface by depth, two by two samples to the pixel, light,
//! the sensor's noise.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::{ImageResult, RgbImage};
use sunbu_core::photo::Gray;

use crate::dressed::Dressed;
use crate::fabric::Wardrobe;
use crate::lens::Lens;
use crate::mesh::{Patch, Stuff, Vertex};
use crate::paint::Painter;
use crate::random::Random;
use crate::vector::{V3, add, cross, dot, length, sub, times, unit};

/// Samples to a pixel, each way.
const FINER: usize = 2;
/// Rows of pixels painted at once.
const STRIP: usize = 128;
/// Deviation of the sensor's noise, in display values of 255.
const NOISE: f64 = 2.5;
/// Where the light comes from: from the lens's left, above.
const LIGHT: [f64; 3] = [-0.45, 0.75, 0.6];

/// The light of what lies beyond the room.
const BEYOND: [f64; 3] = [0.55, 0.56, 0.58];

/// A photo.
#[derive(Debug, Clone)]
pub struct Picture {
    /// Its pixels, upright.
    pub image: RgbImage,
}

/// A corner as the lens sees it: sample place, one over its depth, outward direction.
#[derive(Clone, Copy)]
struct Corner {
    at: [f64; 2],
    near: f64,
    normal: V3,
}

struct Triangle {
    patch: usize,
    corners: [usize; 3],
}

/// The patches as the lens sees them.
struct View<'a> {
    patches: &'a [Patch],
    corners: Vec<Vec<Option<Corner>>>,
    triangles: Vec<Triangle>,
    eye: V3,
    light: V3,
}

impl Picture {
    /// Its brightness, with the weights of ITU-R BT.601.
    ///
    /// # Panics
    /// Never: a picture has as many pixels as its sides say.
    pub fn gray(&self) -> Gray {
        let luma = |pixel: &image::Rgb<u8>| {
            let [red, green, blue] = pixel.0.map(u32::from);
            u8::try_from((299 * red + 587 * green + 114 * blue + 500) / 1000).unwrap_or(u8::MAX)
        };
        let pixels = self.image.pixels().map(luma).collect();
        let [width, height] = [self.image.width() as usize, self.image.height() as usize];
        Gray::new(width, height, pixels).expect("as many pixels as the sides say")
    }

    pub(crate) fn paint(
        lens: &Lens,
        patches: &[Patch],
        dressed: &Dressed,
        wardrobe: &Wardrobe,
        seed: u64,
    ) -> Self {
        let view = View::of(lens, patches);
        let painter = Painter { dressed, wardrobe };
        let [width, height] = lens.size.map(|n| n as usize);
        let strips = height.div_ceil(STRIP);
        let mut in_strip = vec![Vec::new(); strips];
        for (i, triangle) in view.triangles.iter().enumerate() {
            let rows = view.at(triangle).map(|c| c.at[1] / (FINER * STRIP) as f64);
            let low = rows.iter().copied().fold(f64::MAX, f64::min);
            let high = rows.iter().copied().fold(f64::MIN, f64::max);
            for strip in cells(low, high, strips) {
                in_strip[strip].push(i);
            }
        }
        let mut random = Random::of(seed);
        let bright = Display::new();
        let mut image = RgbImage::new(lens.size[0], lens.size[1]);
        for (strip, own) in in_strip.iter().enumerate() {
            let first = strip * STRIP;
            let rows = STRIP.min(height - first);
            let columns = width * FINER;
            let nearest = view.strip(own, first * FINER, rows * FINER, columns);
            for y in 0..rows {
                for x in 0..width {
                    let at = y * FINER * columns + x * FINER;
                    let four = [at, at + 1, at + columns, at + columns + 1];
                    let light = view.pixel(x, first + y, four.map(|k| nearest[k].1), &painter);
                    let noise = NOISE * quick_normal(&mut random);
                    let pixel = light.map(|c| bright.of(c, noise));
                    #[expect(clippy::cast_possible_truncation, reason = "within the size")]
                    image.put_pixel(x as u32, (first + y) as u32, image::Rgb(pixel));
                }
            }
        }
        Self { image }
    }

    /// The photo as a JPEG file of this quality, 1 to 100.
    ///
    /// # Errors
    /// When the picture cannot be encoded.
    pub fn to_jpeg(&self, quality: u8) -> ImageResult<Vec<u8>> {
        let mut bytes = Cursor::new(Vec::new());
        JpegEncoder::new_with_quality(&mut bytes, quality).encode_image(&self.image)?;
        Ok(bytes.into_inner())
    }
}

impl<'a> View<'a> {
    fn of(lens: &Lens, patches: &'a [Patch]) -> Self {
        let corner = |v: &Vertex, normal: V3| {
            let (pixel, depth) = lens.project(v.at)?;
            (depth > 5.0).then(|| Corner {
                at: pixel.map(|p| p * FINER as f64),
                near: 1.0 / depth,
                normal,
            })
        };
        let corners: Vec<Vec<Option<Corner>>> = patches
            .iter()
            .map(|patch| {
                let normals = normals(patch);
                patch
                    .vertices
                    .iter()
                    .zip(normals)
                    .map(|(v, n)| corner(v, n))
                    .collect()
            })
            .collect();
        let mut triangles = Vec::new();
        for (i, patch) in patches.iter().enumerate() {
            for t in patch.triangles() {
                if t.iter().all(|&k| corners[i][k].is_some()) {
                    triangles.push(Triangle {
                        patch: i,
                        corners: t,
                    });
                }
            }
        }
        let axes = lens.axes();
        let light = add(
            add(times(axes.right, LIGHT[0]), times(axes.up, LIGHT[1])),
            times(axes.ahead, -LIGHT[2]),
        );
        Self {
            patches,
            corners,
            triangles,
            eye: lens.position,
            light: unit(light),
        }
    }

    fn at(&self, triangle: &Triangle) -> [Corner; 3] {
        triangle.corners.map(|k| {
            self.corners[triangle.patch][k].expect("triangles have only corners before the lens")
        })
    }

    /// How near the nearest surface is at every sample of a strip, and which triangle it is.
    fn strip(&self, own: &[usize], first: usize, rows: usize, columns: usize) -> Vec<(f64, u32)> {
        let mut nearest = vec![(0.0_f64, u32::MAX); rows * columns];
        for &index in own {
            let [a, b, c] = self.at(&self.triangles[index]);
            let Some(shares) = Shares::of([a.at, b.at, c.at]) else {
                continue;
            };
            let span = |i: usize| {
                let values = [a.at[i], b.at[i], c.at[i]];
                (
                    values.iter().copied().fold(f64::MAX, f64::min),
                    values.iter().copied().fold(f64::MIN, f64::max),
                )
            };
            let ((x0, x1), (y0, y1)) = (span(0), span(1));
            let columns_in = cells(x0, x1, columns);
            for y in cells(y0 - first as f64, y1 - first as f64, rows) {
                let row = (first + y) as f64 + 0.5;
                let start = shares.at([columns_in.start as f64 + 0.5, row]);
                let next = shares.at([columns_in.start as f64 + 1.5, row]);
                let step = [0, 1, 2].map(|i| next[i] - start[i]);
                let cells = &mut nearest[y * columns..][columns_in.clone()];
                for (k, cell) in cells.iter_mut().enumerate() {
                    let [p, q, r] = [0, 1, 2].map(|i| start[i] + k as f64 * step[i]);
                    if p < 0.0 || q < 0.0 || r < 0.0 {
                        continue;
                    }
                    let near = p * a.near + q * b.near + r * c.near;
                    if near > cell.0 {
                        *cell = (near, u32::try_from(index).unwrap_or(u32::MAX));
                    }
                }
            }
        }
        nearest
    }

    /// The light of one pixel, from its four samples: cloth that is painted by lines is shaded at
    /// each of them, other things once for what the pixel has of them.
    fn pixel(&self, x: usize, y: usize, indices: [u32; 4], painter: &Painter) -> [f64; 3] {
        let mut sum = [0.0_f64; 3];
        let mut last: Option<(usize, [f64; 3])> = None;
        for (i, index) in indices.into_iter().enumerate() {
            let light = match self.triangles.get(index as usize) {
                None => BEYOND,
                Some(triangle) => {
                    let stuff = self.patches[triangle.patch].stuff;
                    match last.filter(|l| l.0 == triangle.patch && !stuff.is_lined()) {
                        Some((_, light)) => light,
                        None => {
                            let at = [
                                (x * FINER + i % 2) as f64 + 0.5,
                                (y * FINER + i / 2) as f64 + 0.5,
                            ];
                            let light = self.shade(triangle, at, painter);
                            last = Some((triangle.patch, light));
                            light
                        }
                    }
                }
            };
            for (part, own) in sum.iter_mut().zip(light) {
                *part += 0.25 * own;
            }
        }
        sum
    }

    /// The light that a place of a triangle sends to the lens.
    fn shade(&self, triangle: &Triangle, at: [f64; 2], painter: &Painter) -> [f64; 3] {
        let corners = self.at(triangle);
        let patch = &self.patches[triangle.patch];
        let Some(shares) = Shares::of(corners.map(|c| c.at)) else {
            return [0.0; 3];
        };
        // In space, shares of the picture count by nearness.
        let raw = shares.at(at);
        let weights = [0, 1, 2].map(|i| raw[i] * corners[i].near);
        let whole: f64 = weights.iter().sum();
        let mut place = Vertex {
            at: [0.0; 3],
            cloth: [0.0; 2],
            extra: [0.0; 2],
        };
        let mut normal = [0.0; 3];
        for i in 0..3 {
            let k = weights[i] / whole;
            let v = &patch.vertices[triangle.corners[i]];
            place.at = add(place.at, times(v.at, k));
            normal = add(normal, times(corners[i].normal, k));
            for j in 0..2 {
                place.cloth[j] += k * v.cloth[j];
                place.extra[j] += k * v.extra[j];
            }
        }
        let toward = dot(normal, sub(self.eye, place.at));
        let normal = times(normal, toward.signum() / length(normal).max(1e-9));
        let falls = 0.5 + 0.5 * dot(normal, self.light).max(0.0);
        // The outer panel's arcs grow with the clock, the inner one's against it.
        let inside = match patch.stuff {
            Stuff::Outer => toward > 0.0,
            _ => toward < 0.0,
        };
        let light = painter.at(patch.stuff, &place, inside);
        light.map(|c| c * falls)
    }
}

/// Directions square to a grid at its corners, by the neighbours there; to which side they point
/// hangs on the way that the grid runs.
fn normals(patch: &Patch) -> Vec<V3> {
    let n = patch.columns;
    let rows = patch.vertices.len() / n;
    let at = |i: usize, j: usize| patch.vertices[j * n + i].at;
    (0..patch.vertices.len())
        .map(|k| {
            let (i, j) = (k % n, k / n);
            let across = sub(at((i + 1).min(n - 1), j), at(i.saturating_sub(1), j));
            let along = sub(at(i, (j + 1).min(rows - 1)), at(i, j.saturating_sub(1)));
            unit(cross(along, across))
        })
        .collect()
}

/// Shares of a triangle's corners at a place of the picture.
struct Shares {
    corners: [[f64; 2]; 3],
    whole: f64,
}

impl Shares {
    fn of(corners: [[f64; 2]; 3]) -> Option<Self> {
        let whole = twice_area(corners[0], corners[1], corners[2]);
        (whole.abs() > 1e-9).then_some(Self { corners, whole })
    }

    fn at(&self, p: [f64; 2]) -> [f64; 3] {
        let [a, b, c] = self.corners;
        [
            twice_area(p, b, c) / self.whole,
            twice_area(a, p, c) / self.whole,
            twice_area(a, b, p) / self.whole,
        ]
    }
}

fn twice_area(a: [f64; 2], b: [f64; 2], c: [f64; 2]) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])
}

/// The whole cells that a stretch touches, within `count`.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held within the count"
)]
fn cells(low: f64, high: f64, count: usize) -> std::ops::Range<usize> {
    let last = count as f64;
    let first = low.floor().clamp(0.0, last) as usize;
    let end = (high.floor() + 1.0).clamp(0.0, last) as usize;
    first..end
}

/// Nearly normal: the sum of four even numbers, scaled.
fn quick_normal(random: &mut Random) -> f64 {
    let bits = random.bits();
    let sum: u64 = (0..4).map(|i| (bits >> (16 * i)) & 0xFFFF).sum();
    (sum as f64 / 65_536.0 - 2.0) * 3.0_f64.sqrt()
}

/// Light as display values: the power 1/2.2 of sRGB, in steps fine enough for the dark end.
struct Display(Vec<f64>);

impl Display {
    const STEPS: usize = 4096;

    fn new() -> Self {
        let value = |i: usize| 255.0 * (i as f64 / Self::STEPS as f64).powf(1.0 / 2.2);
        Self((0..=Self::STEPS).map(value).collect())
    }

    /// The display value of a share of light, with noise on it.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "held within the table and within 0 to 255"
    )]
    fn of(&self, light: f64, noise: f64) -> u8 {
        let step = (light.clamp(0.0, 1.0) * Self::STEPS as f64) as usize;
        (self.0[step] + noise).round().clamp(0.0, 255.0) as u8
    }
}
