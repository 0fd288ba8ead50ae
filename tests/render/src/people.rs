//! Who is photographed: what the reader is told of her, and what is really so.

use std::sync::OnceLock;

use nalgebra::{DMatrix, DVector};
use sunbu_core::body::{Body, BodyMeasure as M, Population, Sex, Tape};
use sunbu_core::dressing::{
    Appearance, Decision, Dressing, Fitting, Given, Locks, Occasion, Rules, Standard, plan, predict,
};
use sunbu_core::garment::{Cloth, Garment, Kind, MitakeFrom, Part, Sheet, TAPE_SD_CM, rules::r3};
use sunbu_core::measure::{Length, Reading, Unit};

use crate::random::Random;

/// What a dresser usually tapes.
pub(crate) const USUAL: [M; 8] = [
    M::Stature,
    M::BackNeckHeight,
    M::WaistHeight,
    M::HipBoneHeight,
    M::BustGirth,
    M::UnderBustGirth,
    M::WaistGirth,
    M::HipGirth,
];

/// What the reader of a photo is given.
#[derive(Debug, Clone)]
pub struct Subject {
    /// The body as it was completed from the tape.
    pub body: Body,
    /// The garment as it was taped.
    pub garment: Garment,
    /// Both together.
    pub fitting: Fitting,
    /// The wishes and ways in force.
    pub rules: Rules,
    /// The dressing as it was planned.
    pub planned: Dressing,
}

/// What is really there.
#[derive(Debug, Clone)]
pub struct Real {
    /// The body, with every measure known.
    pub body: Body,
    /// The garment's parts as they were cut, and the constants as this person has them.
    pub fitting: Fitting,
    /// The dressing as the hands did it.
    pub dressing: Dressing,
    /// What is then seen, in centimetres.
    pub appearance: Appearance,
}

impl Real {
    /// This body in this garment, dressed so.
    pub fn new(body: Body, fitting: Fitting, dressing: Dressing) -> Self {
        let appearance = predict(&fitting, &dressing);
        Self {
            body,
            fitting,
            dressing,
            appearance,
        }
    }
}

/// One random person in a garment mostly cut for her, planned, and dressed by hands.
pub(crate) fn draw(random: &mut Random) -> (Subject, Real) {
    loop {
        if let Some(found) = attempt(random) {
            return found;
        }
    }
}

/// None when the readings contradict each other.
fn attempt(random: &mut Random) -> Option<(Subject, Real)> {
    let truth = draw_body(random);
    let body = taped(&truth, &USUAL, 0.5, random)?;
    let true_body = taped(&truth, M::ALL, 0.01, random)?;
    let cut = sheet(
        truth[M::Stature.index()] + 3.0 * random.normal(),
        truth[M::HipGirth.index()] + 3.0 * random.normal(),
        random,
    );
    let mut read = cut.clone();
    for reading in read.parts.values_mut() {
        let cm = reading.length.cm() + TAPE_SD_CM * random.normal();
        reading.length = Length::from_cm(cm).ok()?;
    }
    let garment = read.complete().ok()?;
    let fitting = Fitting::new(&body, &garment);
    let occasion = random.one_of(Occasion::ALL);
    let rules = Standard::customary().rules(occasion, &body, garment.cloth());
    let planned = plan(&fitting, &rules, &Locks::new()).dressing;

    let mut real = Fitting::new(&true_body, &garment);
    for &given in Given::ALL {
        let cut = Part::from_key(given.key()).and_then(|p| cut.parts.get(&p));
        let drawn = match (given, cut) {
            (_, Some(reading)) => reading.length.cm(),
            // The surface is the table's own for this body; it has no error of its own.
            (Given::HullGirthError | Given::SideArcError, _) => 0.0,
            _ if M::from_key(given.key()).is_some() => continue,
            _ => real.value(given) + real.covariance(given, given).sqrt() * random.normal(),
        };
        real = real.with(given, drawn);
    }
    let done = Dressing::from_fn(|d: Decision| {
        let meant = planned.get(d);
        let done = meant + rules.way(d).hands * random.normal();
        // What is not there at all cannot be done badly, and no length is less than nothing.
        if meant == 0.0 && rules.way(d).low == 0.0 {
            0.0
        } else if rules.way(d).low >= 0.0 {
            done.max(0.0)
        } else {
            done
        }
    });
    Some((
        Subject {
            body,
            garment,
            fitting,
            rules,
            planned,
        },
        Real::new(true_body, real, done),
    ))
}

/// All measures of one person of the population of women, in centimetres.
fn draw_body(random: &mut Random) -> Vec<f64> {
    static PEOPLE: OnceLock<(DVector<f64>, DMatrix<f64>)> = OnceLock::new();
    let (mean, root) = PEOPLE.get_or_init(|| {
        let people = Population::shipped(Sex::Women);
        let n = M::COUNT;
        let mean = DVector::from_fn(n, |i, _| people.mean_cm(M::ALL[i]));
        let covariance = DMatrix::from_fn(n, n, |i, j| people.covariance(M::ALL[i], M::ALL[j]));
        // A measure computed from others makes the matrix barely singular; a tenth of a
        // millimetre of its own is far below anything that is seen.
        let covariance = covariance + DMatrix::identity(n, n) * 1e-4;
        let root = covariance
            .cholesky()
            .expect("a covariance with 1e-4 added has a root");
        (mean, root.l())
    });
    let z = DVector::from_fn(mean.len(), |_, _| random.normal());
    (mean + root * z).iter().copied().collect()
}

fn taped(truth: &[f64], which: &[M], sd: f64, random: &mut Random) -> Option<Body> {
    let tape = which.iter().fold(Tape::of(Sex::Women), |tape, &m| {
        tape.with_sd(m, truth[m.index()] + sd * random.normal(), sd)
    });
    Population::shipped(Sex::Women)
        .complete(&tape.build().ok()?)
        .ok()
}

/// A garment cut for somebody of this height and hip, in centimetres.
fn sheet(height: f64, hip: f64, random: &mut Random) -> Sheet {
    let widths = r3(hip);
    let reading = |cm: f64| Reading {
        length: Length::from_cm(cm).expect("a length of a garment"),
        unit: Unit::Centimetre,
        sd: None,
    };
    let parts = [
        (Part::Mitake, height + 2.0 * random.normal()),
        (Part::Ushirohaba, widths.ushirohaba + 0.5 * random.normal()),
        (Part::Maehaba, widths.maehaba + 0.5 * random.normal()),
        (Part::Yuki, 0.4 * height + 2.0 + random.normal()),
    ];
    Sheet {
        kind: Kind::Nagagi,
        cloth: random.one_of(&[Cloth::Soft, Cloth::Stiff, Cloth::Cotton]),
        mitake_from: MitakeFrom::BackSeam,
        parts: parts.into_iter().map(|(p, cm)| (p, reading(cm))).collect(),
    }
}
