//! People of very different builds for the drape's tests.

use super::{Drape, Surface};
use crate::body::{Body, BodyMeasure as M, Population, Sex, Tape};
use crate::dressing::{
    Appearance, Dressing, Fitting, Locks, Occasion, Quantity, Standard, plan, predict,
};
use crate::garment::Sheet;
use crate::measure::Entry;

/// One person in one garment, dressed as planned.
pub(super) struct Person {
    pub name: &'static str,
    body: Body,
    fitting: Fitting,
    pub dressing: Dressing,
    pub appearance: Appearance,
}

impl Person {
    fn new(name: &'static str, tape: &[(M, f64)], parts: [f64; 4]) -> Self {
        let tape = tape
            .iter()
            .fold(Tape::of(Sex::Women), |t, &(m, cm)| t.with(m, cm));
        let body = Population::shipped(Sex::Women)
            .complete(&tape.build().expect("a possible tape"))
            .expect("a body");
        let names = ["mitake", "ushirohaba", "maehaba", "yuki"];
        let mut fields = vec![
            ("kind", Entry::plain("nagagi")),
            ("mitake_from", Entry::plain("back_seam")),
        ];
        fields.extend(
            names
                .into_iter()
                .zip(parts)
                .map(|(name, cm)| (name, Entry::plain(cm.to_string()))),
        );
        let garment = Sheet::from_fields(fields)
            .and_then(|s| s.complete())
            .expect("a garment");
        let fitting = Fitting::new(&body, &garment);
        let rules = Standard::customary().rules(Occasion::Indoors, &body, garment.cloth());
        let dressing = plan(&fitting, &rules, &Locks::new()).dressing;
        Self {
            name,
            appearance: predict(&fitting, &dressing),
            body,
            fitting,
            dressing,
        }
    }

    pub fn surface(&self) -> Surface<'_> {
        Surface::new(&self.body, &self.fitting, &self.dressing, &self.appearance)
    }

    pub fn drape(&self) -> Drape<'_> {
        Drape::new(&self.body, &self.fitting, &self.dressing, &self.appearance)
    }
}

/// An ordinary build, a slim one in a wide garment, a stout one in a narrow garment, a short one
/// in a long garment and a tall one in a short garment.
pub(super) fn people() -> Vec<Person> {
    vec![
        Person::new(
            "ordinary",
            &[(M::Stature, 158.0), (M::HipGirth, 91.0)],
            [158.0, 29.0, 23.5, 66.0],
        ),
        Person::new(
            "slim in wide",
            &[
                (M::Stature, 163.0),
                (M::HipGirth, 84.0),
                (M::WaistGirth, 60.0),
                (M::BustGirth, 78.0),
            ],
            [166.0, 31.0, 26.0, 68.0],
        ),
        Person::new(
            "stout in narrow",
            &[
                (M::Stature, 155.0),
                (M::HipGirth, 112.0),
                (M::WaistGirth, 96.0),
                (M::BustGirth, 110.0),
            ],
            [160.0, 29.5, 24.0, 64.0],
        ),
        Person::new(
            "short in long",
            &[(M::Stature, 146.0), (M::HipGirth, 88.0)],
            [168.0, 30.0, 24.0, 67.0],
        ),
        Person::new(
            "tall in short",
            &[(M::Stature, 176.0), (M::HipGirth, 97.0)],
            [150.0, 28.5, 22.5, 62.0],
        ),
    ]
}

#[test]
fn the_outer_edge_lies_a_front_cover_before_the_right_side_line() {
    for person in people() {
        let drape = person.drape();
        let z = drape.collar_end;
        let right = drape.surface.girth(z) - drape.surface.side_arc(z);
        let got = right - drape.outer_edge(z);
        let want = person.appearance.get(Quantity::FrontCover);
        assert!(
            (got - want).abs() < 0.1,
            "{}: {got} against {want}",
            person.name
        );
    }
}

#[test]
fn collars_of_one_overlap_meet_in_the_middle_where_the_model_crosses_them() {
    for person in people() {
        let drape = person.drape();
        for overlap in [drape.juban_overlap, drape.kimono_overlap] {
            let z = drape.crossing(overlap);
            let got = drape.collar_x(overlap, z);
            assert!(got.abs() < 1e-9, "{}: {got} against 0", person.name);
            let p = drape.collar(overlap, z, true, 0.0);
            assert!(p[0].abs() < 1e-3 && p[1] > 3.0, "{}: {p:?}", person.name);
        }
    }
}

#[test]
fn the_collar_at_the_back_is_lowest_at_the_nape_and_ends_at_the_side_neck_points() {
    for person in people() {
        let drape = person.drape();
        let nape = drape.nape();
        let want = drape.back_neck - drape.nape_drop;
        assert!((nape[2] - want).abs() < 1e-9, "{} against {want}", nape[2]);
        assert!(nape[1] < 0.0 && nape[0].abs() < 1e-9, "{nape:?}");
        let side = drape.nape_line(std::f64::consts::FRAC_PI_2);
        let want = drape.collar(drape.kimono_overlap, drape.side_neck, true, 0.0);
        for (got, want) in side.into_iter().zip(want) {
            assert!(
                (got - want).abs() < 1e-3,
                "{}: {got} against {want}",
                person.name
            );
        }
    }
}
