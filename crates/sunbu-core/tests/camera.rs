//! The camera's pose against OpenCV's on the same points.

use serde_json::Value;
use sunbu_core::photo::{Camera, View};

const POSES: &str = include_str!("data/camera/poses.json");

fn numbers<const N: usize>(value: &Value) -> [f64; N] {
    std::array::from_fn(|i| value[i].as_f64().expect("a number"))
}

/// `solvePnP` (SQPNP, then its Levenberg-Marquardt refinement) of OpenCV 5.0.0 on twelve seeded
/// sets of places with 1.5 px of noise; `data/camera/make.py` makes them again.
#[test]
fn the_pose_is_the_one_that_opencv_finds() {
    let poses: Value = serde_json::from_str(POSES).expect("the vectors read");
    let cases = poses["cases"].as_array().expect("a list of cases");
    assert_eq!(cases.len(), 12);
    for (i, case) in cases.iter().enumerate() {
        let view = View::from_key(case["view"].as_str().expect("a view")).expect("a view");
        let seen: Vec<([f64; 3], [f64; 2])> = case["places"]
            .as_array()
            .expect("places")
            .iter()
            .zip(case["pixels"].as_array().expect("pixels"))
            .map(|(place, pixel)| (numbers(place), numbers(pixel)))
            .collect();
        // From a start that is well off: straight ahead, 3.5 m away, at the height of the chest.
        let start = Camera {
            focal_px: case["focal_px"].as_f64().expect("a focal length"),
            centre: numbers(&case["centre"]),
            eye: match view {
                View::Back => [0.0, -350.0, 110.0],
                _ => [0.0, 350.0, 110.0],
            },
            azimuth: view.azimuth(),
            tilt: 0.0,
            roll: 0.0,
        };
        let got = Camera::pose(start, &seen, true).expect("a pose");
        let want: [f64; 3] = numbers(&case["eye"]);
        for k in 0..3 {
            // Their refinement stops at steps of 1e-12 of its numbers; the file has 6 decimals.
            assert!(
                (got.eye[k] - want[k]).abs() < 1e-3,
                "case {i}: the lens at {:?}, OpenCV {want:?}",
                got.eye
            );
        }
        let squares = seen.iter().map(|(place, pixel)| {
            let at = got.project(*place).expect("it is before the lens");
            (at[0] - pixel[0]).powi(2) + (at[1] - pixel[1]).powi(2)
        });
        let rms = (squares.sum::<f64>() / seen.len() as f64).sqrt();
        let theirs = case["rms_px"].as_f64().expect("an error");
        assert!(
            (rms - theirs).abs() < 1e-4,
            "case {i}: {rms} px against {theirs} px"
        );
    }
}

#[test]
fn too_few_places_or_all_on_one_line_give_no_pose() {
    let start = Camera {
        focal_px: 2000.0,
        centre: [1000.0, 1500.0],
        eye: [0.0, 300.0, 100.0],
        azimuth: View::Front.azimuth(),
        tilt: 0.0,
        roll: 0.0,
    };
    let line: Vec<_> = (0..6)
        .map(|i| {
            let place = [0.0, 0.0, 30.0 * f64::from(i)];
            (place, start.project(place).expect("it is before the lens"))
        })
        .collect();
    assert_eq!(Camera::pose(start, &line[..3], true), None);
    // Exactly on one line the places leave the camera free to turn about it: it stays where it was.
    if let Some(found) = Camera::pose(start, &line, true) {
        assert_eq!(found, start, "what fits already is not moved");
    }
}
