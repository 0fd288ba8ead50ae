//! One invented woman in a garment that fits, dressed and photographed: what checks in tests are
//! made of. The places marked are those that the program itself expects of the dressing.

use sunbu_core::body::{Body, BodyMeasure, Population, Sex, Tape};
use sunbu_core::check::{Report, check};
use sunbu_core::dressing::{Dressing, Fitting, Locks, Occasion, Rules, Standard, plan};
use sunbu_core::fault::Ticks;
use sunbu_core::garment::Sheet;
use sunbu_core::photo::{
    Mark, Marks, Placed, Reading, References, Shot, Subject, Trust, View, expect, read,
};

/// She in her garment, and the plan.
pub struct Checked {
    pub body: Body,
    pub fitting: Fitting,
    pub rules: Rules,
    pub planned: Dressing,
}

impl Checked {
    /// Stature 160, hip 92, in a garment in which every wish can be met.
    pub fn woman() -> Self {
        Self::in_sleeves(67.5)
    }

    /// The same with half the garment's span (yuki) of so many centimetres.
    pub fn in_sleeves(yuki: f64) -> Self {
        let tape = Tape::of(Sex::Women)
            .with(BodyMeasure::Stature, 160.0)
            .with(BodyMeasure::HipGirth, 92.0)
            .build()
            .expect("a tape");
        let body = Population::shipped(Sex::Women)
            .complete(&tape)
            .expect("a body");
        let sheet: Sheet = toml::from_str(&format!(
            "kind='nagagi'\nmitake_from='back_seam'\nmitake=154\nyuki={yuki}\nushirohaba=29.5\n\
             maehaba=23.5\nokumihaba=15.2\naizumahaba=14.0\nkurikoshi=2.6\nerishita=80",
        ))
        .expect("a sheet");
        let garment = sheet.complete().expect("a garment");
        let fitting = Fitting::new(&body, &garment);
        let rules = Standard::customary().rules(Occasion::Indoors, &body, garment.cloth());
        let planned = plan(&fitting, &rules, &Locks::new()).dressing;
        Self {
            body,
            fitting,
            rules,
            planned,
        }
    }

    /// Whom her photos show.
    pub fn subject<'a>(&'a self, dressing: &'a Dressing) -> Subject<'a> {
        Subject {
            body: &self.body,
            fitting: &self.fitting,
            planned: dressing,
        }
    }

    /// The photo of a dressing from one side, every place in sight marked where it is.
    pub fn photo(&self, done: &Dressing, view: View) -> Shot {
        let placed = |[x, y]: [f64; 2]| Placed {
            at: [x, y],
            trust: Trust::Sure,
        };
        let mut shot = Shot {
            view,
            size: [1500, 2000],
            focal: Some(0.8),
            lens_height_cm: None,
            mirrored: false,
            references: References::default(),
            marks: Marks::from([
                (Mark::Floor, placed([750.0, 1850.0])),
                (Mark::Crown, placed([752.0, 250.0])),
            ]),
        };
        let expected = expect(&self.subject(done), &shot).expect("floor and crown are enough");
        for (mark, place) in expected.into_iter().filter(|(_, e)| e.in_sight) {
            shot.marks.entry(mark).or_insert(placed(place.at));
        }
        shot
    }

    /// What a shot says, held against the plan.
    pub fn read(&self, shot: &Shot) -> Reading {
        read(&self.subject(&self.planned), shot).expect("it reads")
    }

    /// The check of these shots and ticks.
    pub fn report(&self, shots: &[Shot], ticks: &Ticks) -> Report {
        let readings: Vec<Reading> = shots.iter().map(|shot| self.read(shot)).collect();
        check(&self.fitting, &self.rules, &self.planned, &readings, ticks)
    }
}
