//! Predicts each reference body from tape measures alone, with a table of hulls that never saw it.

use std::sync::OnceLock;

use sunbu_core::body::{
    Body, BodyMeasure, HullTable, Population, ReferenceBody, Section, Sex, Tape,
};

use super::reference_bodies::{self, Checked};
use BodyMeasure as M;

/// Thickness of the layers under and with the kimono, in centimetres, as in the worked example of
/// the model chapter.
const LAYERS_CM: f64 = 0.35;

/// A set of measures a dresser might tape.
pub struct TapeSet {
    pub name: &'static str,
    pub measures: &'static [BodyMeasure],
}

pub const LEAST: TapeSet = TapeSet {
    name: "least",
    measures: &[M::Stature, M::HipGirth],
};

pub const USUAL: TapeSet = TapeSet {
    name: "usual",
    measures: &[
        M::Stature,
        M::BackNeckHeight,
        M::WaistHeight,
        M::HipBoneHeight,
        M::BustGirth,
        M::UnderBustGirth,
        M::WaistGirth,
        M::HipGirth,
    ],
};

pub const FULL: TapeSet = TapeSet {
    name: "full",
    measures: &[
        M::Stature,
        M::BackNeckHeight,
        M::ShoulderHeight,
        M::BustHeight,
        M::UnderBustHeight,
        M::WaistHeight,
        M::NavelHeight,
        M::HipBoneHeight,
        M::HipHeight,
        M::BustGirth,
        M::UnderBustGirth,
        M::WaistGirth,
        M::NavelGirth,
        M::HipGirth,
        M::FullestGirth,
    ],
};

/// How one body came out. Errors are predicted less true, in centimetres.
pub struct Outcome {
    pub name: String,
    pub hip: f64,
    /// Height at which the outer edge is looked for.
    pub z: f64,
    /// How far in front of the right side line the edge lands, predicted.
    pub cover: f64,
    /// Its error, side line in the middle of the outermost band.
    pub landing: f64,
    /// Its error, side line at the outermost vertex.
    pub landing_outermost: f64,
    /// Error of the section there.
    pub error: Section,
    /// Root mean square errors over the sections of three stretches: legs to 0.45 of the stature,
    /// trunk to 0.72 (about the bust), shoulder to 0.82.
    pub stretches: [Section; 3],
    /// Girth errors over their stated deviation at every section.
    pub girth_scores: Vec<f64>,
}

/// The reference bodies, each with the table fitted to the sixteen others.
pub fn bodies() -> &'static [(Checked, HullTable)] {
    static BODIES: OnceLock<Vec<(Checked, HullTable)>> = OnceLock::new();
    BODIES.get_or_init(|| {
        let all = reference_bodies::read();
        let without = |i: usize| -> Vec<ReferenceBody> {
            (0..all.len())
                .filter(|&j| j != i)
                .map(|j| all[j].body.clone())
                .collect()
        };
        let fit = |i| HullTable::fit(&without(i), "all reference bodies but one").expect("a table");
        let tables: Vec<HullTable> = (0..all.len()).map(fit).collect();
        all.into_iter().zip(tables).collect()
    })
}

/// Every body predicted from a set of measures, each by the table that never saw it.
pub fn outcomes(set: &TapeSet) -> Vec<Outcome> {
    let one =
        |(truth, table): &(Checked, HullTable)| outcome(truth, &predict(&truth.body, set, table));
    bodies().iter().map(one).collect()
}

/// A body completed from nothing but the named measures.
pub fn predict(truth: &ReferenceBody, set: &TapeSet, table: &HullTable) -> Body {
    let taped = set.measures.iter().fold(Tape::of(Sex::Women), |tape, &m| {
        tape.with(
            m,
            truth
                .measure(m)
                .expect("every reference body has the measure"),
        )
    });
    let tape = taped.build().expect("a reference body is possible");
    Population::shipped(Sex::Women)
        .complete_with(&tape, table)
        .expect("a completed body")
}

/// Width of the outer side, back seam to collar end, by the rule of the wasai class (S6) for this hip.
fn garment_width(hip: f64) -> f64 {
    let sun = 2500.0 / 660.0; // 25/66 m is ten sun
    let ushirohaba = hip / 4.0 + 6.0;
    let maehaba = ushirohaba - if hip < 100.0 { 1.5 * sun } else { sun };
    let aizumahaba = 3.7 * sun;
    ushirohaba + maehaba + aizumahaba
}

/// How far in front of the right side line the edge of such a garment lands, layers worn, back seam
/// in the middle. Half of what the layers add to the girth lies between centre back and side line
/// on either side, so a quarter of it is added to each quarter.
fn cover(section: &Section, hip: f64) -> f64 {
    let added = std::f64::consts::TAU * LAYERS_CM;
    let side_right = section.girth + added - (section.side_arc + added / 4.0);
    side_right - garment_width(hip)
}

fn outcome(truth: &Checked, body: &Body) -> Outcome {
    let known = &truth.body;
    let hip = known.measure(M::HipGirth).expect("a hip girth");
    let stature = known.measure(M::Stature).expect("a stature");
    // the collar end: half the stature above the hem, 1 more for the raise (S3, S10 and facts of S14)
    let z = 0.5 * stature + 1.0;
    let here = body.shape().at(z);
    let mut sums = [[0.0; 6]; 3];
    let mut girth_scores = Vec::new();
    for (height, section) in &known.sections {
        let got = body.shape().at(*height);
        let share = height / stature;
        if !(0.06..0.82).contains(&share) {
            continue;
        }
        let k = usize::from(share >= 0.45) + usize::from(share >= 0.72);
        let error = less(&got, section);
        let errors = [
            error.girth,
            error.breadth,
            error.front,
            error.back,
            error.side_arc,
        ];
        for (sum, error) in sums[k].iter_mut().zip(errors) {
            *sum += error * error;
        }
        sums[k][5] += 1.0;
        girth_scores.push(errors[0] / body.shape().girth_whole_sd(*height));
    }
    let stretches = sums.map(|s| {
        let rms = |i: usize| (s[i] / s[5]).sqrt();
        Section {
            girth: rms(0),
            breadth: rms(1),
            front: rms(2),
            back: rms(3),
            side_arc: rms(4),
        }
    });
    Outcome {
        name: known.name.clone(),
        hip,
        z,
        cover: cover(&here, hip),
        landing: cover(&here, hip) - cover(&known.section(z), hip),
        landing_outermost: cover(&here, hip) - cover(&truth.outermost.section(z), hip),
        error: less(&here, &known.section(z)),
        stretches,
        girth_scores,
    }
}

/// What one section is more than another.
fn less(a: &Section, b: &Section) -> Section {
    Section {
        girth: a.girth - b.girth,
        breadth: a.breadth - b.breadth,
        front: a.front - b.front,
        back: a.back - b.back,
        side_arc: a.side_arc - b.side_arc,
    }
}

/// Median and greatest of the absolute values.
pub fn median_and_worst(values: impl Iterator<Item = f64>) -> (f64, f64) {
    let mut sizes: Vec<f64> = values.map(f64::abs).collect();
    sizes.sort_by(f64::total_cmp);
    let n = sizes.len();
    (0.5 * (sizes[(n - 1) / 2] + sizes[n / 2]), sizes[n - 1])
}
