//! Random people, garments and standards from a seed, for simulations.

#![allow(
    dead_code,
    reason = "not every test that shares this file uses all of it"
)]

use nalgebra::{DMatrix, DVector};
use sunbu_core::body::{Body, BodyMeasure, Population, Sex, Tape};
use sunbu_core::dressing::{Occasion, Rules, Standard};
use sunbu_core::garment::{Cloth, Garment, Kind, MitakeFrom, Part, Sheet};
use sunbu_core::measure::{Length, Reading, Unit};

/// A small generator of random numbers (SplitMix64, Steele, Lea and Flood 2014): the same
/// numbers on every machine.
pub struct Random(u64);

impl Random {
    /// The generator of this seed.
    pub fn of(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// Even over 0 to 1.
    pub fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    /// Even over a range.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// Normal with mean zero and deviation one (Box and Muller 1958).
    pub fn normal(&mut self) -> f64 {
        let radius = (-2.0 * (1.0 - self.unit()).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.unit()).cos()
    }

    /// One of a list.
    pub fn one_of<T: Copy>(&mut self, list: &[T]) -> T {
        let left = usize::try_from(self.next() >> 32).expect("32 bits") % list.len();
        list[left]
    }
}

/// Draws whole bodies from a population.
pub struct People {
    sex: Sex,
    mean: DVector<f64>,
    root: DMatrix<f64>,
}

impl People {
    /// The people of the shipped table.
    pub fn of(sex: Sex) -> Self {
        let population = Population::shipped(sex);
        let all = BodyMeasure::ALL;
        let mean = DVector::from_fn(all.len(), |i, _| population.mean_cm(all[i]));
        let covariance = DMatrix::from_fn(all.len(), all.len(), |i, j| {
            population.covariance(all[i], all[j])
        });
        // A measure that is computed from others makes the covariance barely singular; a tenth
        // of a millimetre of independent spread is far below anything tested.
        let covariance = covariance + DMatrix::identity(all.len(), all.len()) * 1e-4;
        let root = covariance.cholesky().expect("a covariance matrix").l();
        Self { sex, mean, root }
    }

    /// All measures of one person, in the order of `BodyMeasure::ALL`, in centimetres.
    pub fn draw(&self, random: &mut Random) -> Vec<f64> {
        let z = DVector::from_fn(self.mean.len(), |_, _| random.normal());
        (&self.mean + &self.root * z).iter().copied().collect()
    }

    /// A body completed from these measures of a person, each read with its deviation; none
    /// when the readings contradict each other.
    pub fn taped(
        &self,
        truth: &[f64],
        taped: &[BodyMeasure],
        sd: f64,
        random: &mut Random,
    ) -> Option<Body> {
        let tape = taped.iter().fold(Tape::of(self.sex), |tape, &m| {
            tape.with_sd(m, truth[m.index()] + sd * random.normal(), sd)
        });
        Population::shipped(self.sex)
            .complete(&tape.build().ok()?)
            .ok()
    }
}

/// A taped reading in centimetres.
pub fn reading(cm: f64) -> Reading {
    let length = Length::from_cm(cm).expect("a length of a garment");
    Reading {
        length,
        unit: Unit::Centimetre,
        sd: None,
    }
}

/// A garment cut for somebody of this height and hip, in centimetres, with cutting errors.
pub fn sheet(height: f64, hip: f64, random: &mut Random) -> Sheet {
    let widths = sunbu_core::garment::rules::r3(hip);
    let parts = [
        (Part::Mitake, height + 2.0 * random.normal()),
        (Part::Ushirohaba, widths.ushirohaba + 0.5 * random.normal()),
        (Part::Maehaba, widths.maehaba + 0.5 * random.normal()),
        (Part::Yuki, 0.4 * height + 2.0 + random.normal()),
    ];
    Sheet {
        kind: random.one_of(&[Kind::Nagagi, Kind::Yukata]),
        cloth: random.one_of(&[Cloth::Soft, Cloth::Stiff, Cloth::Cotton]),
        mitake_from: random.one_of(&[MitakeFrom::Shoulder, MitakeFrom::BackSeam]),
        parts: parts
            .into_iter()
            .map(|(part, cm)| (part, reading(cm)))
            .collect(),
    }
}

/// A person, a garment that was mostly cut for somebody else, and a studio's own standard.
pub fn case(people: &People, random: &mut Random) -> (Body, Garment, Rules) {
    loop {
        let truth = people.draw(random);
        let taped = [
            BodyMeasure::Stature,
            BodyMeasure::HipGirth,
            BodyMeasure::WaistGirth,
        ];
        let Some(body) = people.taped(&truth, &taped, 0.3, random) else {
            continue;
        };
        let other = people.draw(random);
        let (stature, hip) = (BodyMeasure::Stature.index(), BodyMeasure::HipGirth.index());
        let mixed = |i: usize| 0.5 * (truth[i] + other[i]);
        let Ok(garment) = sheet(mixed(stature), mixed(hip), random).complete() else {
            continue;
        };
        let occasion = random.one_of(Occasion::ALL);
        let mut rules = Standard::customary().rules(occasion, &body, garment.cloth());
        for target in &mut rules.targets {
            let moved = 0.5 * random.normal();
            target.low = target.low.map(|cm| cm + moved);
            target.high = target.high.map(|cm| cm + moved);
            target.weight *= (0.5 * random.normal()).exp();
        }
        return (body, garment, rules);
    }
}
