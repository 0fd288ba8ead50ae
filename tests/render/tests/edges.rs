//! The marks lie on the edges that are painted.

use sunbu_core::photo::{Mark, View};
use sunbu_render::{Picture, Scene};

/// How far to either side of a mark the edge is looked for, in pixels.
const REACH: i32 = 7;

/// Brightness along the way across an edge, each value a mean along the edge.
fn profile(picture: &Picture, at: [f64; 2], across: [f64; 2], moved: f64) -> Vec<[f64; 3]> {
    let along = [-across[1], across[0]];
    (-REACH - 2..=REACH + 2)
        .map(|i| {
            let mut sum = [0.0; 3];
            for k in -4..=4 {
                let (far, aside) = (f64::from(i) + moved, f64::from(k) * 0.5);
                let x = at[0] + far * across[0] + aside * along[0];
                let y = at[1] + far * across[1] + aside * along[1];
                let light = between(picture, x, y);
                for (s, l) in sum.iter_mut().zip(light) {
                    *s += l / 9.0;
                }
            }
            sum
        })
        .collect()
}

/// The picture between the middles of its pixels.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the marks lie on the picture"
)]
fn between(picture: &Picture, x: f64, y: f64) -> [f64; 3] {
    let (x, y) = (x - 0.5, y - 0.5);
    let (x0, y0) = (x.floor(), y.floor());
    let mut out = [0.0; 3];
    for (dx, dy) in [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0)] {
        let share = (1.0 - (x - x0 - dx).abs()) * (1.0 - (y - y0 - dy).abs());
        let pixel = picture.image.get_pixel((x0 + dx) as u32, (y0 + dy) as u32);
        for (o, p) in out.iter_mut().zip(pixel.0) {
            *o += share * f64::from(p);
        }
    }
    out
}

/// Where the picture changes most along a profile, from its middle, and by how much over two
/// pixels.
fn strongest(profile: &[[f64; 3]]) -> (f64, f64) {
    let change = |i: usize| {
        let (a, b) = (profile[i - 1], profile[i + 1]);
        a.iter().zip(b).map(|(a, b)| (a - b).abs()).sum::<f64>()
    };
    let places = 1..profile.len() - 1;
    let best = places
        .max_by(|a, b| change(*a).total_cmp(&change(*b)))
        .expect("a profile has a middle");
    let middle = (profile.len() / 2) as f64;
    (best as f64 - middle, change(best))
}

/// Marks on edges that run level, and on outlines that run up and down.
const LEVEL: [Mark; 5] = [
    Mark::FoldCentre,
    Mark::ObiLowerCentre,
    Mark::ObiUpperCentre,
    Mark::ObiageTop,
    Mark::TareEnd,
];
const UPRIGHT: [Mark; 4] = [
    Mark::HipLeft,
    Mark::HipRight,
    Mark::SeamNape,
    Mark::SeamWaist,
];

/// Of the edges near visible marks, how many are found within 1.5 pixels, of how many.
fn found(picture: &Picture, scene: &Scene, moved: f64) -> (u32, u32) {
    let truth = scene.truth();
    let (sin, cos) = scene.lens.roll.sin_cos();
    let level = LEVEL.map(|m| (m, [sin, cos]));
    let upright = UPRIGHT.map(|m| (m, [cos, -sin]));
    let mut counts = (0, 0);
    for (mark, across) in level.into_iter().chain(upright) {
        let Some(seen) = truth.get(&mark).filter(|s| s.visible) else {
            continue;
        };
        let (off, change) = strongest(&profile(picture, seen.pixel, across, moved));
        counts.1 += 1;
        // Thrice the noise of a mean of nine over three colours.
        if off.abs() <= 1.5 && change > 7.5 {
            counts.0 += 1;
        }
    }
    counts
}

#[test]
fn the_strongest_edge_near_a_mark_is_the_mark() {
    let (mut on, mut beside, mut all) = (0, 0, 0);
    for (seed, view) in [
        (11, View::Front),
        (12, View::Back),
        (13, View::Front),
        (14, View::Back),
        (15, View::Front),
        (16, View::Back),
    ] {
        let scene = Scene::random_from(seed, view);
        let picture = scene.render(seed);
        let (hits, tried) = found(&picture, &scene, 0.0);
        on += hits;
        all += tried;
        // Five pixels off the marks there are no edges, or the test would show nothing.
        beside += found(&picture, &scene, 5.0).0;
    }
    assert!(all >= 20, "only {all} marks were to be seen");
    assert!(on * 100 >= all * 85, "{on} of {all} edges found");
    assert!(
        beside * 3 < all,
        "{beside} of {all} edges found beside the marks"
    );
}

#[test]
fn a_photo_is_packed_as_jpeg_and_the_same_seed_gives_the_same_noise() {
    let scene = Scene::random_from(21, View::Front);
    let (a, b, c) = (scene.render(1), scene.render(1), scene.render(2));
    assert!(a.image == b.image && a.image != c.image);
    let bytes = a.to_jpeg(85).expect("a picture of some megapixels");
    assert_eq!(bytes[..3], [0xFF, 0xD8, 0xFF], "the start of a JPEG file");
    let opened = image::load_from_memory(&bytes).expect("a JPEG file");
    assert_eq!([opened.width(), opened.height()], scene.lens.size);
}
