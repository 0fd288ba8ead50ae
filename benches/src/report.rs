//! The figures of one run: as JSON, as lines on the screen, and as a chapter of the book.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::check::CheckTimes;
use crate::error::Error;
use crate::machine::Machine;
use crate::photo::PhotoTimes;
use crate::planner::{PlanTimes, RankTimes};
use crate::reference::{AGREED_CM, AGREED_SHARE, Comparison, WORSE_SHARE};
use crate::studio::StudioTimes;
use crate::timing::OverCases;

/// The chapter with a name in braces wherever a figure goes.
const TEMPLATE: &str = include_str!("performance.template");

/// All figures of one run.
#[derive(Debug, Serialize)]
pub struct Report {
    /// What it ran on, and when.
    pub machine: Machine,
    /// Whether it was only a little of everything.
    pub quick: bool,
    /// One plan and its parts.
    pub plans: PlanTimes,
    /// The same plan once more, when everything else was done: what the machine's other work does
    /// to the figures.
    pub plan_again: OverCases,
    /// Everybody in everything on every occasion.
    pub everything: OverCases,
    /// From what was read off photos to causes and changes.
    pub checks: CheckTimes,
    /// Many garments for one person.
    pub ranking: RankTimes,
    /// A photo taken in, and its marks brought to their edges.
    pub photo: PhotoTimes,
    /// The general solver; none when it was left out.
    pub reference: Option<Comparison>,
    /// The studio from outside; none when it was left out.
    pub studio: Option<StudioTimes>,
}

/// One promise: no longer than so.
#[derive(Debug, Clone, Serialize)]
pub struct Target {
    /// What, in words.
    pub what: String,
    /// The limit, in milliseconds.
    pub limit_ms: f64,
    /// What was measured, in milliseconds.
    pub measured_ms: f64,
}

impl Target {
    /// Whether the promise was kept.
    pub fn met(&self) -> bool {
        self.measured_ms < self.limit_ms
    }
}

impl Report {
    /// Every promise with what was measured.
    pub fn targets(&self) -> Vec<Target> {
        let mut out = vec![
            Target {
                what: "one plan with Jacobian and intervals".into(),
                limit_ms: 1.0,
                measured_ms: self.plans.plan.typical_ms,
            },
            Target {
                what: format!("the slowest of {} plans", thousands(self.everything.cases)),
                limit_ms: 1.0,
                measured_ms: self.everything.slowest_ms,
            },
            Target {
                what: format!(
                    "ranking {} garments for one person on {} threads",
                    thousands(self.ranking.garments),
                    self.ranking.threads
                ),
                limit_ms: 500.0,
                measured_ms: self.ranking.from_sheets.median_ms,
            },
            Target {
                what: "a photo of 12 megapixels read, turned, stripped and written again".into(),
                limit_ms: 1000.0,
                measured_ms: self.photo.ready.median_ms,
            },
            Target {
                what: "a mark brought to its edge, in whichever direction".into(),
                limit_ms: 5.0,
                measured_ms: self.photo.snap_anywhere.median_ms,
            },
            Target {
                what: format!(
                    "a photo checked: lens, reading, diagnosis, the slowest of {}",
                    self.checks.whole.cases
                ),
                limit_ms: 20.0,
                measured_ms: self.checks.whole.slowest_ms,
            },
            Target {
                what: "a dressing diagnosed from what its photos were read to show".into(),
                limit_ms: 5.0,
                measured_ms: self.checks.diagnose.typical_ms,
            },
            Target {
                what: format!(
                    "the slowest of {} diagnoses",
                    thousands(self.checks.everything.cases)
                ),
                limit_ms: 20.0,
                measured_ms: self.checks.everything.slowest_ms,
            },
        ];
        if let Some(StudioTimes {
            pages,
            marking,
            start,
        }) = &self.studio
        {
            let redraw = pages.slower_redraw();
            out.push(Target {
                what: format!("a slider's redraw, the slowest of {} plans", redraw.cases),
                limit_ms: 10.0,
                measured_ms: redraw.slowest_ms,
            });
            out.push(Target {
                what: "a photo of 12 megapixels on its page, from sending it to its picture".into(),
                limit_ms: 1000.0,
                measured_ms: marking.ready.median_ms,
            });
            out.push(Target {
                what: "a mark moved by hand: to its edge, all others after it, saved, answered"
                    .into(),
                limit_ms: 100.0,
                measured_ms: marking.nudge.median_ms,
            });
            out.push(Target {
                what: "from the start of the studio to its first page".into(),
                limit_ms: 300.0,
                measured_ms: start.median_ms,
            });
        }
        out
    }

    /// What does not hold, one sentence each; empty when all is well.
    pub fn faults(&self) -> Vec<String> {
        let missed = self.targets().into_iter().filter(|target| !target.met());
        let missed = missed.map(|target| {
            let (what, limit, measured) = (target.what, target.limit_ms, target.measured_ms);
            format!("{what}: {} ms, not under {limit} ms", ms(measured))
        });
        let reference = self.reference.iter().flat_map(Comparison::faults);
        missed.chain(reference).collect()
    }

    /// The main figures, one a line.
    pub fn lines(&self) -> Vec<String> {
        let mut out = vec![format!("{}, {}", self.machine.words(), self.machine.date)];
        for target in self.targets() {
            let sign = if target.met() { "met" } else { "MISSED" };
            let (what, limit) = (target.what, target.limit_ms);
            let measured = ms(target.measured_ms);
            out.push(format!("{sign:<7}{measured:>8} ms of {limit} ms  {what}"));
        }
        for solver in self
            .reference
            .iter()
            .flat_map(|reference| &reference.solvers)
        {
            let (took, times) = (solver.times.typical_ms, self.times_over(solver.times));
            let took = ms(took);
            out.push(format!(
                "       {took:>8} ms, {times} times a plan  {}",
                solver.name
            ));
        }
        out
    }

    /// The chapter of the book.
    ///
    /// # Errors
    /// [`Error::Template`] when it asks for a figure that was not measured.
    pub fn chapter(&self) -> Result<String, Error> {
        fill(TEMPLATE, &self.figures())
    }

    fn times_over(&self, theirs: OverCases) -> String {
        ratio(theirs.typical_ms / self.plans.plan.typical_ms)
    }

    /// Every figure that the chapter may ask for, as text.
    fn figures(&self) -> BTreeMap<String, String> {
        let mut out = BTreeMap::new();
        let mut put = |name: &str, value: String| out.insert(name.to_owned(), value);
        let machine = &self.machine;
        put("machine", machine.words());
        put("date", machine.date.clone());
        put(
            "rustc",
            machine.rustc.clone().unwrap_or_else(|| "unknown".into()),
        );
        let mut over = |name: &str, times: &OverCases| {
            put(name, ms(times.typical_ms));
            put(&format!("{name}.slowest"), ms(times.slowest_ms));
            put(&format!("{name}.least"), ms(times.least_ms));
            put(&format!("{name}.cases"), thousands(times.cases));
        };
        over("plan", &self.plans.plan);
        over("plan.again", &self.plan_again);
        over("worth", &self.plans.worth);
        over("assess", &self.plans.assess);
        over("prediction", &self.plans.prediction);
        over("predict", &self.plans.predict);
        over("everything", &self.everything);
        over("diagnose", &self.checks.diagnose);
        over("diagnose.all", &self.checks.everything);
        over("check", &self.checks.whole);
        if let Some(StudioTimes {
            pages,
            marking,
            start,
        }) = &self.studio
        {
            over("redraw", &pages.redraw);
            over("redraw.ja", &pages.redraw_ja);
            over("ask", &pages.ask);
            over("ways", &pages.ways_out);
            over("page", &pages.page);
            over("worth.page", &pages.worth);
            put("marking", ms(marking.ready.median_ms));
            put("marking.most", ms(marking.ready.most_ms));
            put("nudge", ms(marking.nudge.median_ms));
            put("nudge.most", ms(marking.nudge.most_ms));
            put("redraw.kb", two_digits(pages.redraw_kb));
            put("start", ms(start.median_ms));
            put("start.least", ms(start.least_ms));
            put("start.most", ms(start.most_ms));
            put("start.runs", start.runs.to_string());
        }
        let targets = self.targets();
        let targets = targets.iter().map(|target| {
            let (limit, measured) = (target.limit_ms, ms(target.measured_ms));
            let sign = if target.met() { "" } else { " (missed)" };
            format!("| {} | {limit} ms | {measured} ms{sign} |\n", target.what)
        });
        let targets = targets.collect::<String>().trim_end().to_owned();
        put("targets", targets);
        let ranking = &self.ranking;
        put("rank.garments", thousands(ranking.garments));
        put("rank.threads", ranking.threads.to_string());
        for (name, times) in [
            ("rank", &ranking.from_sheets),
            ("rank.order", &ranking.order),
            ("rank.one", &ranking.order_on_one),
        ] {
            put(name, ms(times.median_ms));
            put(&format!("{name}.least"), ms(times.least_ms));
        }
        let photo = &self.photo;
        put("photo.mb", two_digits(photo.file_mb));
        for (name, times) in [
            ("photo.read", &photo.read),
            ("photo.gray", &photo.gray),
            ("photo.write", &photo.write),
            ("photo.ready", &photo.ready),
            ("snap", &photo.snap),
            ("snap.anywhere", &photo.snap_anywhere),
            ("snap.corner", &photo.snap_corner),
        ] {
            put(name, ms(times.median_ms));
            put(&format!("{name}.least"), ms(times.least_ms));
        }
        let Some(reference) = &self.reference else {
            return out;
        };
        put("python", reference.versions.python.clone());
        put("numpy", reference.versions.numpy.clone());
        put("scipy", reference.versions.scipy.clone());
        put("dressings", thousands(reference.dressings));
        put("apart.cm", format!("{:.0e}", reference.apart_cm));
        put("apart.share", format!("{:.0e}", reference.apart_share));
        put("agreed.cm", format!("{AGREED_CM:.0e}"));
        put("agreed.share", format!("{AGREED_SHARE:.0e}"));
        put("worse.share", percent(WORSE_SHARE));
        put("rack", ms(reference.rack_ms));
        put("rack.processes", reference.rack_processes.to_string());
        put(
            "rack.times",
            ratio(reference.rack_ms / ranking.order.median_ms),
        );
        put("rack.better", percent(reference.rack_better_share.max(0.0)));
        let rows = reference.solvers.iter().map(|solver| {
            format!(
                "| {} | {} | {} | {} | {} | {} |\n",
                solver.name,
                ms(solver.times.typical_ms),
                ms(solver.times.slowest_ms),
                self.times_over(solver.times),
                percent(solver.better_share.max(0.0)),
                percent(solver.worse_share.max(0.0)),
            )
        });
        put("solvers", rows.collect::<String>().trim_end().to_owned());
        if let Some(first) = reference.solvers.first() {
            put("times", self.times_over(first.times));
        }
        out
    }
}

/// The text with every `{name}` replaced.
fn fill(template: &str, figures: &BTreeMap<String, String>) -> Result<String, Error> {
    let mut out = String::new();
    let mut rest = template;
    while let Some((before, after)) = rest.split_once('{') {
        let missing = || Error::Template(after.chars().take(30).collect());
        let (name, after) = after.split_once('}').ok_or_else(missing)?;
        out.push_str(before);
        out.push_str(
            figures
                .get(name)
                .ok_or_else(|| Error::Template(name.into()))?,
        );
        rest = after;
    }
    out.push_str(rest);
    Ok(out)
}

/// Milliseconds with two digits that count, which is all that a shared machine gives.
fn ms(value: f64) -> String {
    two_digits(value)
}

/// How many times, with two digits that count.
fn ratio(value: f64) -> String {
    two_digits(value)
}

fn two_digits(value: f64) -> String {
    if value <= 0.0 || !value.is_finite() {
        return value.to_string();
    }
    let exponent = value.log10().floor();
    let step = 10_f64.powf(exponent - 1.0);
    let rounded = (value / step).round() * step;
    match exponent {
        e if e >= 1.0 => format!("{rounded:.0}"),
        e if e >= 0.0 => format!("{rounded:.1}"),
        e if e >= -1.0 => format!("{rounded:.2}"),
        e if e >= -2.0 => format!("{rounded:.3}"),
        _ => format!("{rounded:.5}"),
    }
}

/// A share in percent, with no more digits than it needs.
fn percent(share: f64) -> String {
    match share * 100.0 {
        0.0 => "0 %".into(),
        p if p < 0.01 => "below 0.01 %".into(),
        p => format!("{} %", two_digits(p)),
    }
}

/// A number with a comma after the thousands.
fn thousands(number: usize) -> String {
    match (number / 1000, number % 1000) {
        (0, rest) => rest.to_string(),
        (thousands, rest) => format!("{thousands},{rest:03}"),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::{fill, percent, thousands, two_digits};

    #[test]
    fn figures_have_two_digits_that_count() {
        let seen = [0.001_54, 0.078_27, 0.638, 7.727, 24.315, 149.4, 12_724.0].map(two_digits);
        assert_eq!(
            seen,
            ["0.00150", "0.078", "0.64", "7.7", "24", "150", "13000"]
        );
        assert_eq!(
            [0.0, 0.000_02, 0.001_65, 2.4].map(percent),
            ["0 %", "below 0.01 %", "0.17 %", "240 %"]
        );
        assert_eq!([7, 1000, 3040].map(thousands), ["7", "1,000", "3,040"]);
    }

    #[test]
    fn a_figure_that_was_not_measured_is_named() {
        let figures = BTreeMap::from([("plan".to_owned(), "0.08".to_owned())]);
        assert_eq!(fill("in {plan} ms", &figures).unwrap(), "in 0.08 ms");
        for template in ["{rank} ms", "an open {plan"] {
            let why = fill(template, &figures).unwrap_err().to_string();
            assert!(why.contains("rank") || why.contains("plan"), "{why}");
        }
    }
}
