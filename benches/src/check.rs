//! The check of a finished dressing timed: from what was read off its photos to causes and changes.

use fastrand::Rng;
use serde::Serialize;
use sunbu_core::check::check;
use sunbu_core::dressing::{
    Decision, Dressing, Locks, Observed, Quantity, Sight, diagnose, plan, predict, usual_sd,
};
use sunbu_core::fault::Ticks;
use sunbu_core::photo::{Mark, Marking, Placed, Reading, Shot, Subject, Trust, View, expect, read};
use sunbu_core::problem::Problem;

use crate::cases::{Case, Demo};
use crate::error::Error;
use crate::timing::{OverCases, Times, many};

/// The random numbers of every run, so that all runs time the same dressings.
const SEED: u64 = 0x5EED_C4EC;

/// At most so many decisions of a dressing are wrong.
const MOST_WRONG: usize = 3;

/// A dressing that went wrong, as its photos from the front and from behind were read.
struct Dressed<'a> {
    case: &'a Case,
    planned: Dressing,
    observed: Observed,
}

/// How long diagnoses take.
#[derive(Debug, Clone, Copy, Serialize)]
pub struct CheckTimes {
    /// Of the cases that are planned, many runs each.
    pub diagnose: OverCases,
    /// Of many dressings, each with the quickest of three runs.
    pub everything: OverCases,
    /// The whole check of a photo from the front: lens, reading, diagnosis, advice; of the cases that
    /// are planned.
    pub whole: OverCases,
}

/// Times diagnoses: `runs` of each of these cases, and one of up to `at_most` others.
///
/// # Errors
/// [`Error::Demo`] when a reading does not stand, which none of the demo studio does.
pub fn checks(
    demo: &Demo,
    cases: &[Case],
    runs: usize,
    at_most: usize,
) -> Result<CheckTimes, Error> {
    let mut all = demo.all();
    all.truncate(at_most);
    let mut rng = Rng::with_seed(SEED);
    let mut over = |cases: &[Case], time: &dyn Fn(&Dressed<'_>) -> Times| {
        let dressed = cases.iter().map(|case| dressed(case, &mut rng));
        let times = dressed.map(|dressed| dressed.map(|d| time(&d)));
        let times: Result<Vec<Times>, Error> = times.collect();
        times.map(|times| OverCases::of(&times))
    };
    Ok(CheckTimes {
        diagnose: over(cases, &|dressed| many(runs, || diagnosed(dressed)))?,
        everything: over(&all, &|dressed| {
            let times = many(3, || diagnosed(dressed));
            Times::of(vec![times.least_ms])
        })?,
        whole: whole(demo, cases, runs)?,
    })
}

/// Times whole checks, each of a dressing that went wrong.
fn whole(demo: &Demo, cases: &[Case], runs: usize) -> Result<OverCases, Error> {
    let mut rng = Rng::with_seed(SEED);
    let times = cases.iter().map(|case| {
        let planned = plan(&case.fitting, &case.rules, &Locks::new()).dressing;
        let done = dressed_wrong(case, &planned, &mut rng);
        let of = |planned| Subject {
            body: &demo.people[case.person].1,
            fitting: &case.fitting,
            planned,
        };
        let shot = marked(&of(&done)).map_err(|why| Error::Demo(format!("{why:?}")))?;
        let subject = of(&planned);
        let ticks = Ticks::new();
        Ok(many(runs, || {
            let readings: Vec<Reading> = read(&subject, &shot).into_iter().collect();
            check(&case.fitting, &case.rules, &planned, &readings, &ticks)
        }))
    });
    let times: Result<Vec<Times>, Error> = times.collect();
    times.map(|times| OverCases::of(&times))
}

/// A photo of the dressing as it is expected to look, every place in sight marked.
fn marked(done: &Subject<'_>) -> Result<Shot, Vec<Problem>> {
    let placed = |at: [f64; 2]| Placed {
        at,
        trust: Trust::Sure,
    };
    let mut shot = Marking::new(View::Front, [1500, 2000], Some(0.8)).shot;
    shot.marks.insert(Mark::Floor, placed([750.0, 1850.0]));
    shot.marks.insert(Mark::Crown, placed([752.0, 250.0]));
    for (mark, place) in expect(done, &shot)? {
        if place.in_sight {
            shot.marks.entry(mark).or_insert(placed(place.at));
        }
    }
    Ok(shot)
}

fn diagnosed(dressed: &Dressed<'_>) -> sunbu_core::dressing::Diagnosis {
    let Dressed {
        case,
        planned,
        observed,
    } = dressed;
    diagnose(&case.fitting, &case.rules, planned, observed)
}

/// The plan as hands carry it out, but for up to [`MOST_WRONG`] decisions that are anywhere within
/// their limits.
fn dressed_wrong(case: &Case, planned: &Dressing, rng: &mut Rng) -> Dressing {
    let mut done = Dressing::from_fn(|d| planned.get(d) + case.rules.way(d).hands * normal(rng));
    for _ in 0..rng.usize(0..=MOST_WRONG) {
        let wrong = Decision::ALL[rng.usize(..Decision::COUNT)];
        let way = case.rules.way(wrong);
        done = done.with(wrong, way.low + (way.high - way.low) * rng.f64());
    }
    done
}

/// A case dressed wrong, as its photos were read.
fn dressed<'a>(case: &'a Case, rng: &mut Rng) -> Result<Dressed<'a>, Error> {
    let planned = plan(&case.fitting, &case.rules, &Locks::new()).dressing;
    let done = dressed_wrong(case, &planned, rng);
    let seen = predict(&case.fitting, &done);
    let shown = Quantity::ALL.iter().filter(|&&q| Sight::of(q).is_photo());
    let readings = shown.map(|&q| (q, seen.get(q) + usual_sd(q) * normal(rng), usual_sd(q)));
    let observed = Observed::independent(readings.collect::<Vec<_>>());
    Ok(Dressed {
        case,
        planned,
        observed: observed.map_err(|why| Error::Demo(format!("{}: {why}", case.name)))?,
    })
}

/// Normal with mean zero and deviation one (Box and Muller 1958).
fn normal(rng: &mut Rng) -> f64 {
    let radius = (-2.0 * (1.0 - rng.f64()).ln()).sqrt();
    radius * (std::f64::consts::TAU * rng.f64()).cos()
}
