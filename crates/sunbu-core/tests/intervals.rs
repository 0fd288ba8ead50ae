//! Do the stated 90 % intervals hold nine truths in ten? Simulated from tape to dressing.
//!
//! Each round draws a person from the population, tapes some of her measures with a tape's
//! error, does the same with a garment, plans, lets hands of known spread carry the plan out,
//! and asks whether what is then really seen lies in the interval that was stated before.

mod support {
    pub mod cases;
}

use std::sync::Mutex;

use sunbu_core::body::{BodyMeasure, Sex};
use sunbu_core::dressing::{
    Decision, Dressing, Fitting, Given, Locks, Occasion, Plan, Quantity, Standard, plan, predict,
};
use sunbu_core::garment::Part;
use sunbu_core::measure::Length;
use support::cases::{People, Random, sheet};

const ROUNDS: u64 = 10_000;
const TAPE_SD: f64 = 0.5;

/// What the dresser tapes: always stature and hip, each of the others every second time.
const SOMETIMES: [BodyMeasure; 7] = [
    BodyMeasure::BackNeckHeight,
    BodyMeasure::HipBoneHeight,
    BodyMeasure::HipHeight,
    BodyMeasure::WaistGirth,
    BodyMeasure::BustGirth,
    BodyMeasure::SpineToWrist,
    BodyMeasure::WaistHeight,
];

/// Which of a plan's intervals hold what is really seen; none when the readings were refused.
fn round(people: &People, seed: u64) -> Option<Vec<(Quantity, bool)>> {
    let random = &mut Random::of(seed);
    let truth = people.draw(random);
    let all: Vec<BodyMeasure> = BodyMeasure::ALL.to_vec();
    let taped: Vec<BodyMeasure> = [BodyMeasure::Stature, BodyMeasure::HipGirth]
        .into_iter()
        .chain(SOMETIMES.into_iter().filter(|_| random.unit() < 0.5))
        .collect();
    let body = people.taped(&truth, &taped, TAPE_SD, random)?;
    let true_body = people.taped(&truth, &all, 0.01, random)?;

    let other = people.draw(random);
    let (stature, hip) = (BodyMeasure::Stature.index(), BodyMeasure::HipGirth.index());
    let cut = sheet(other[stature], other[hip], random);
    let mut read = cut.clone();
    for reading in read.parts.values_mut() {
        let cm = reading.length.cm() + sunbu_core::garment::TAPE_SD_CM * random.normal();
        reading.length = Length::from_cm(cm).ok()?;
    }
    let garment = read.complete().ok()?;

    let fitting = Fitting::new(&body, &garment);
    let rules = Standard::customary().rules(Occasion::Indoors, &body, garment.cloth());
    let planned = plan(&fitting, &rules, &Locks::new());

    let mut real = Fitting::new(&true_body, &garment);
    for &given in Given::ALL {
        let part = Part::from_key(given.key());
        let sd = real.covariance(given, given).sqrt();
        let taped_part = part.and_then(|p| cut.parts.get(&p));
        let drawn = match taped_part {
            Some(reading) => reading.length.cm(),
            // True to the body as it was drawn; everything else as its own deviation says.
            None if BodyMeasure::from_key(given.key()).is_some() => continue,
            None => real.value(given) + sd * random.normal(),
        };
        real = real.with(given, drawn);
    }
    let done = Dressing::from_fn(|d: Decision| {
        planned.dressing.get(d) + rules.way(d).hands * random.normal()
    });
    Some(held(&planned, &real, &done))
}

fn held(planned: &Plan, real: &Fitting, done: &Dressing) -> Vec<(Quantity, bool)> {
    let seen = predict(real, done);
    Quantity::ALL
        .iter()
        .map(|&q| {
            let (low, high) = planned.prediction.interval_90(q);
            (q, (low..=high).contains(&seen.get(q)))
        })
        .collect()
}

#[test]
fn stated_intervals_hold_nine_truths_in_ten() {
    let counts = Mutex::new((vec![(0_u32, 0_u32); Quantity::COUNT], 0_u32));
    std::thread::scope(|scope| {
        for half in 0..2 {
            let counts = &counts;
            scope.spawn(move || {
                let people = People::of(Sex::Women);
                for seed in (half..ROUNDS).step_by(2) {
                    let result = round(&people, seed);
                    let mut counts = counts.lock().expect("no thread panicked");
                    match result {
                        None => counts.1 += 1,
                        Some(held) => {
                            for (q, inside) in held {
                                let (all, good) = &mut counts.0[q.index()];
                                *all += 1;
                                *good += u32::from(inside);
                            }
                        }
                    }
                }
            });
        }
    });
    let (counts, refused) = counts.into_inner().expect("no thread panicked");
    let share = |(all, good): (u32, u32)| f64::from(good) / f64::from(all);
    println!(
        "share of truths inside the stated 90 % interval, {ROUNDS} rounds, {refused} refused:"
    );
    for &q in Quantity::ALL {
        println!("  {:24} {:.3}", q.key(), share(counts[q.index()]));
    }
    let total = counts.iter().fold((0, 0), |(a, g), c| (a + c.0, g + c.1));
    println!("  {:24} {:.3}", "all", share(total));
    assert!(
        u64::from(refused) < ROUNDS / 10,
        "{refused} of {ROUNDS} refused: too few left"
    );
    assert!(
        (0.88..=0.92).contains(&share(total)),
        "all: {:.3}",
        share(total)
    );
    for &q in Quantity::ALL {
        // Ten thousand rounds have 0.003 of noise.
        let got = share(counts[q.index()]);
        assert!(
            (0.88..=0.92).contains(&got),
            "{}: {got:.3} of truths inside",
            q.key()
        );
    }
}
