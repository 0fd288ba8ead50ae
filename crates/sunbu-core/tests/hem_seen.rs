//! The hem as others see it: signs, a second road to each number, and how far the short formula is
//! off.

use sunbu_core::body::{Body, BodyMeasure, Population, Sex, Tape};
use sunbu_core::drape::Drape;
use sunbu_core::dressing::{
    Decision, Dressing, Fitting, HemSeen, Leg, Occasion, Onlooker, Prediction, Standard, Viewer,
    hem_as_seen, hem_seen,
};
use sunbu_core::garment::{Cloth, Garment, Sheet};
use sunbu_core::photo::View;

struct Case {
    body: Body,
    fitting: Fitting,
    dressing: Dressing,
    prediction: Prediction,
}

impl Case {
    fn new(stature: f64, hip: f64, hem: f64, raise: f64) -> Self {
        let tape = Tape::of(Sex::Women)
            .with(BodyMeasure::Stature, stature)
            .with(BodyMeasure::HipGirth, hip)
            .build()
            .expect("a possible body");
        let body = Population::shipped(Sex::Women)
            .complete(&tape)
            .expect("a possible body");
        let sheet: Sheet = toml::from_str(
            "kind='nagagi'\nmitake_from='back_seam'\nmitake=157\nushirohaba=28.5\nmaehaba=22.8\n\
             okumihaba=15.2\naizumahaba=14.0\nkurikoshi=2.6\nerishita=80",
        )
        .expect("a sheet");
        let garment: Garment = sheet.complete().expect("a garment");
        let fitting = Fitting::new(&body, &garment);
        let rules = Standard::customary().rules(Occasion::Everyday, &body, Cloth::Soft);
        let dressing = rules
            .usual()
            .with(Decision::HemHeight, hem)
            .with(Decision::UwamaeRaise, raise);
        let prediction = Prediction::new(&fitting, &dressing, |d| rules.way(d).hands);
        Self {
            body,
            fitting,
            dressing,
            prediction,
        }
    }

    fn seen(&self, viewer: Viewer, from: View) -> HemSeen {
        hem_seen(
            &self.body,
            &self.fitting,
            &self.dressing,
            &self.prediction,
            viewer,
            from,
        )
    }

    fn drape(&self) -> Drape<'_> {
        Drape::new(
            &self.body,
            &self.fitting,
            &self.dressing,
            &self.prediction.appearance(),
        )
    }
}

fn ordinary() -> Case {
    Case::new(160.0, 90.0, 2.0, 8.0)
}

fn eye(height: f64, distance: f64) -> Viewer {
    Viewer::new(height.max(0.0), distance, height.min(0.0)).expect("a viewer")
}

#[test]
fn from_below_more_of_the_leg_shows_and_from_close_by_less() {
    let case = ordinary();
    for &from in View::ALL {
        let of = |onlooker: Onlooker| case.seen(onlooker.viewer(), from);
        let [stage, neighbour, camera] =
            [Onlooker::BelowStage, Onlooker::Neighbour, Onlooker::Camera].map(of);
        assert!(
            stage.at_leg_cm > stage.hem_cm,
            "{from:?}: below a stage {} against a hem of {}",
            stage.at_leg_cm,
            stage.hem_cm
        );
        assert!(
            neighbour.at_leg_cm < camera.at_leg_cm && camera.at_leg_cm < camera.hem_cm,
            "{from:?}: neighbour {}, camera {}, hem {}",
            neighbour.at_leg_cm,
            camera.at_leg_cm,
            camera.hem_cm
        );
    }
}

#[test]
fn the_nearer_an_eye_above_the_less_and_the_nearer_an_eye_below_the_more() {
    let case = ordinary();
    let at = |height: f64, distance: f64| case.seen(eye(height, distance), View::Back).at_leg_cm;
    for (far, near) in [(400.0, 200.0), (200.0, 100.0), (100.0, 60.0)] {
        assert!(at(150.0, near) < at(150.0, far), "from above at {near}");
        assert!(at(-30.0, near) > at(-30.0, far), "from below at {near}");
    }
    // From very far away every sight line is level.
    let far = case.seen(eye(150.0, 10_000.0), View::Back);
    assert!((far.at_leg_cm - far.hem_cm).abs() < 0.3, "{far:?}");
}

#[test]
fn an_eye_level_with_the_hem_sees_it_where_it_hangs() {
    let case = ordinary();
    let level = case.seen(eye(2.0, 200.0), View::Back);
    assert!((level.hem_cm - 2.0).abs() < 1e-9, "{level:?}");
    assert!((level.at_leg_cm - 2.0).abs() < 1e-9, "{level:?}");
    assert_eq!(level.leg(), Leg::Covered);
}

#[test]
fn the_worked_example_comes_out() {
    // By hand, hem 2 above the floor, from behind: at the ankle bones it stands out l behind them. A
    // camera at 95 and 300 away: slope (2 - 95) / (distance from lens to hem), which is 300 - l but
    // for the bone's 7.5 beside the middle line (a tenth of a millimetre), and 2 + slope * l.
    let seen = ordinary().seen(Onlooker::Camera.viewer(), View::Back);
    let l = seen.stands_out_cm;
    assert!((6.0..16.0).contains(&l), "the hem stands out {l}");
    let by_hand = 2.0 - 93.0 / (300.0 - l) * l;
    assert!(
        (seen.at_leg_cm - by_hand).abs() < 0.02,
        "{} against {by_hand}",
        seen.at_leg_cm
    );
}

/// The same by another road: the hem as a chain of 4,000 short lines, each tried for a crossing with
/// the plan of the sight line to the bone, and the height there prolonged by similar triangles.
fn by_chain(case: &Case, eye: [f64; 3], bone: f64) -> f64 {
    const LINES: usize = 4_000;
    let drape = case.drape();
    let girth = drape.surface.girth(drape.hem);
    let place = |i: usize| {
        let s = girth * i as f64 / LINES as f64;
        let hem = if s > drape.outer_edge(drape.outer_corner) {
            drape.hem
        } else {
            drape.hem_at(s)
        };
        drape.surface.at(s, hem, 0.0)
    };
    let to_bone = [bone - eye[0], -eye[1]];
    for i in 0..LINES {
        let (p, q) = (place(i), place(i + 1));
        let d = [q[0] - p[0], q[1] - p[1]];
        let off = [p[0] - eye[0], p[1] - eye[1]];
        let det = to_bone[1] * d[0] - to_bone[0] * d[1];
        // How far along the sight line, and along the short line, they cross.
        let t = (off[1] * d[0] - off[0] * d[1]) / det;
        let u = (to_bone[0] * off[1] - to_bone[1] * off[0]) / det;
        if (0.0..1.0).contains(&t) && (0.0..=1.0).contains(&u) {
            let z = p[2] + u * (q[2] - p[2]);
            return eye[2] + (z - eye[2]) / t;
        }
    }
    panic!("the sight line misses the hem");
}

#[test]
fn a_chain_of_short_lines_gives_the_same_heights() {
    for case in [
        ordinary(),
        Case::new(150.0, 84.0, 5.0, 4.0),
        Case::new(168.0, 108.0, 0.0, 12.0),
    ] {
        for &onlooker in Onlooker::ALL {
            let viewer = onlooker.viewer();
            let (d, z) = (viewer.distance_cm(), viewer.height_cm());
            for (from, eye, bones) in [
                (View::Front, [0.0, d, z], vec![-7.5, 7.5]),
                (View::Back, [0.0, -d, z], vec![-7.5, 7.5]),
                (View::Left, [d, 0.0, z], vec![7.5]),
                (View::Right, [-d, 0.0, z], vec![-7.5]),
            ] {
                let wanted = bones
                    .into_iter()
                    .map(|bone| by_chain(&case, eye, bone))
                    .fold(f64::MIN, f64::max);
                let got = case.seen(viewer, from).at_leg_cm;
                // Short lines of a quarter of a millimetre cut the curve by far less than this.
                assert!(
                    (got - wanted).abs() < 0.01,
                    "{onlooker:?} {from:?}: {got} against {wanted}"
                );
            }
        }
    }
}

#[test]
fn the_short_formula_serves_afar_and_fails_close_by() {
    let mut worst = [0.0_f64; Onlooker::COUNT];
    for hip in [84.0, 90.0, 108.0] {
        let case = Case::new(160.0, hip, 2.0, 8.0);
        let drape = case.drape();
        let depth = drape.surface.at(0.0, drape.hem, 0.0)[1].abs();
        for &onlooker in Onlooker::ALL {
            let viewer = onlooker.viewer();
            let slope = (drape.hem - viewer.height_cm()) / viewer.distance_cm();
            let short = hem_as_seen(drape.hem, slope, depth);
            let off = (short - case.seen(viewer, View::Back).at_leg_cm).abs();
            worst[onlooker.index()] = worst[onlooker.index()].max(off);
        }
    }
    let [stage, neighbour, camera] = worst;
    assert!(stage < 0.05, "below a stage {stage}");
    assert!(camera < 0.3, "camera {camera}");
    assert!((1.0..2.5).contains(&neighbour), "neighbour {neighbour}");
}

#[test]
fn a_higher_hem_shows_tabi_and_then_skin() {
    let legs: Vec<Leg> = [2.0, 8.0, 14.0]
        .iter()
        .map(|&hem| {
            Case::new(160.0, 90.0, hem, 0.0)
                .seen(Onlooker::BelowStage.viewer(), View::Back)
                .leg()
        })
        .collect();
    assert_eq!(legs, [Leg::Covered, Leg::Tabi, Leg::Skin]);
}

#[test]
fn the_deviation_grows_with_the_slope_and_is_never_less_than_the_hems() {
    let case = ordinary();
    let hem = case.prediction.sd(sunbu_core::dressing::Quantity::HemBack);
    let level = case.seen(eye(2.0, 200.0), View::Back);
    let near = case.seen(Onlooker::Neighbour.viewer(), View::Back);
    assert!((level.at_leg_sd_cm - hem).abs() < 1e-9, "{level:?}");
    // 2 cm of reach weigh by the slope; nothing else is added.
    let wanted = hem.hypot(2.0 * near.slope);
    assert!((near.at_leg_sd_cm - wanted).abs() < 1e-9, "{near:?}");
    assert!(near.bare_sd_cm > near.at_leg_sd_cm);
}

#[test]
fn a_viewer_nowhere_is_refused_with_field_value_and_range() {
    for (eye, distance, floor, field) in [
        (-1.0, 300.0, 0.0, "eye_cm"),
        (150.0, 10.0, 0.0, "distance_cm"),
        (150.0, f64::NAN, 0.0, "distance_cm"),
        (150.0, 300.0, -5_000.0, "floor_cm"),
        (f64::INFINITY, 300.0, 0.0, "eye_cm"),
    ] {
        let error = Viewer::new(eye, distance, floor).expect_err(field);
        assert_eq!(error.field, field);
        let told = error.to_string();
        assert!(told.contains(field) && told.contains("between"), "{told}");
    }
    for &onlooker in Onlooker::ALL {
        let viewer = onlooker.viewer();
        let floor = viewer.height_cm().min(0.0);
        let again = Viewer::new(viewer.height_cm() - floor, viewer.distance_cm(), floor);
        assert!(again.is_ok(), "{onlooker:?}");
    }
}
