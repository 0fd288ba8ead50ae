//! The surface against second roads: lengths round, widest sight lines, places found again.

use super::super::tests::people;
use super::*;

#[test]
fn a_section_is_as_long_round_as_the_model_says() {
    for person in people() {
        let surface = person.surface();
        let levels = surface.levels();
        for level in &levels[..levels.len() - 1] {
            let side = surface.side_arc(level.z);
            let want = [side, 0.5 * surface.girth(level.z) - side];
            for (got, want) in level.lengths().into_iter().zip(want) {
                // Chords of a quarter fall short by 0.1 %.
                assert!(
                    (got / want - 1.0).abs() < 3e-3,
                    "{} at {:.1}: {got} against {want}",
                    person.name,
                    level.z
                );
            }
        }
    }
}

#[test]
fn arcs_between_the_outlines_are_kept_within_a_twentyfifth() {
    for person in people() {
        let surface = person.surface();
        let top = person.dressing.get(Decision::ObiLowerEdge) + 6.0;
        let mut z = surface.skirt.hem;
        while z < top {
            let girth = surface.girth(z);
            let want = girth / 200.0;
            for i in 0..200 {
                let at = |i: i32| surface.at(want * f64::from(i), z, 0.0);
                let (a, b) = (at(i), at(i + 1));
                let step = (b[0] - a[0]).hypot(b[1] - a[1]);
                assert!(
                    step < 1.04 * want,
                    "{} at {z:.1}, {i}: {step} against {want}",
                    person.name
                );
            }
            z += 1.0;
        }
    }
}

#[test]
fn an_outline_is_where_no_sight_line_to_the_section_lies_further_out() {
    for person in people() {
        let surface = person.surface();
        for eye in [
            [20.0, 300.0, 120.0],
            [-40.0, -250.0, 90.0],
            [-320.0, 15.0, 140.0],
            [280.0, 60.0, 70.0],
        ] {
            for z in [3.0, 40.0, 85.0, 110.0, 125.0] {
                let out = 0.7;
                // The second road: the widest of very many sight lines.
                let to_middle = f64::atan2(-eye[1], -eye[0]);
                let bearing = |s: f64| {
                    let p = surface.at(s, z, out);
                    let angle = (p[1] - eye[1]).atan2(p[0] - eye[0]) - to_middle;
                    (angle + 3.0 * std::f64::consts::PI).rem_euclid(TAU)
                };
                let girth = surface.girth(z);
                let all: Vec<f64> = (0..4000)
                    .map(|i| bearing(girth * f64::from(i) / 4000.0))
                    .collect();
                let most = all.iter().copied().fold(f64::MIN, f64::max);
                let least = all.iter().copied().fold(f64::MAX, f64::min);
                let [left, right] = surface.outlines(z, out, eye).map(bearing);
                // With x to the wearer's left bearings grow with the clock, to the viewer's
                // right.
                for (got, want) in [(left, least), (right, most)] {
                    // Normals are means over neighbours 1 cm apart: well under half a
                    // millimetre at three metres.
                    assert!(
                        (got - want).abs() < 1.5e-4,
                        "{} at {z} from {eye:?}: {got} against {want}",
                        person.name
                    );
                }
            }
        }
    }
}

#[test]
fn left_is_the_wearers_from_before_and_from_behind() {
    for person in people() {
        let surface = person.surface();
        for eye in [[10.0, 300.0, 120.0], [10.0, -300.0, 120.0]] {
            let [left, right] =
                [true, false].map(|l| surface.at(surface.silhouette(80.0, 0.0, eye, l), 80.0, 0.0));
            assert!(left[0] > 10.0 && right[0] < -10.0, "{left:?} {right:?}");
        }
    }
}

#[test]
fn a_place_on_the_front_is_found_by_how_far_left_it_lies() {
    for person in people() {
        let surface = person.surface();
        for z in [85.0, 110.0, 120.0, 130.0] {
            for left in [-6.0, -1.0, 0.0, 3.0, 7.5] {
                let most = surface.half_breadth(z);
                let left = f64::clamp(left, -most, most);
                let p = surface.at(surface.front_arc(left, z), z, 0.0);
                assert!((p[0] - left).abs() < 1e-3, "{} against {left}", p[0]);
                assert!(p[1] > 0.0 || z > 125.0, "{p:?} lies behind");
            }
        }
    }
}
