//! Many runs of one thing, told by their median, their least and their greatest.
//!
//! Plain medians instead of a benchmark library: one run has to time functions, another program
//! and answers over HTTP side by side, on a machine that may be doing something else as well, and
//! to set them in relation. A library times functions alone and keeps its results to itself.

use std::hint::black_box;
use std::time::Instant;

use serde::Serialize;

/// How long something took, over several runs.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Times {
    /// The middle one, in milliseconds.
    pub median_ms: f64,
    /// The quickest, in milliseconds: the nearest to an idle machine.
    pub least_ms: f64,
    /// The slowest, in milliseconds: the machine's other work is in it.
    pub most_ms: f64,
    /// How many runs.
    pub runs: usize,
}

impl Times {
    /// What these runs, in milliseconds, have in common.
    ///
    /// # Panics
    /// When there is none.
    pub fn of(mut runs_ms: Vec<f64>) -> Self {
        runs_ms.sort_by(f64::total_cmp);
        let (first, last) = (0, runs_ms.len() - 1);
        Self {
            median_ms: 0.5 * (runs_ms[last / 2] + runs_ms[last.div_ceil(2)]),
            least_ms: runs_ms[first],
            most_ms: runs_ms[last],
            runs: runs_ms.len(),
        }
    }
}

/// One run of `work`, in milliseconds, with what it gave.
pub fn once<T>(work: impl FnOnce() -> T) -> (f64, T) {
    let start = Instant::now();
    let given = black_box(work());
    (start.elapsed().as_secs_f64() * 1e3, given)
}

/// `runs` runs of `work`, after one that is not counted.
pub fn many<T>(runs: usize, mut work: impl FnMut() -> T) -> Times {
    drop(black_box(work()));
    Times::of((0..runs.max(1)).map(|_| once(&mut work).0).collect())
}

/// The same work on several cases: the times of the usual case and of the slowest one.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct OverCases {
    /// The middle one of the cases' medians, in milliseconds.
    pub typical_ms: f64,
    /// The greatest of the cases' medians, in milliseconds.
    pub slowest_ms: f64,
    /// The middle one of the cases' quickest runs, in milliseconds.
    pub least_ms: f64,
    /// How many cases.
    pub cases: usize,
}

impl OverCases {
    /// What the times of these cases have in common.
    ///
    /// # Panics
    /// When there is none.
    pub fn of(cases: &[Times]) -> Self {
        let medians = Times::of(cases.iter().map(|t| t.median_ms).collect());
        let least = Times::of(cases.iter().map(|t| t.least_ms).collect());
        Self {
            typical_ms: medians.median_ms,
            slowest_ms: medians.most_ms,
            least_ms: least.median_ms,
            cases: cases.len(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{OverCases, Times, many};

    #[test]
    fn the_median_of_an_even_number_lies_between_the_two_in_the_middle() {
        let times = Times::of(vec![4.0, 1.0, 9.0, 2.0]);
        let seen = (times.median_ms, times.least_ms, times.most_ms, times.runs);
        assert_eq!(seen, (3.0, 1.0, 9.0, 4));
        assert_eq!(Times::of(vec![7.0]).median_ms, 7.0);
    }

    #[test]
    fn the_first_run_is_not_counted() {
        let mut calls = 0;
        let times = many(5, || calls += 1);
        assert_eq!((times.runs, calls), (5, 6));
        assert!(times.least_ms <= times.median_ms && times.median_ms <= times.most_ms);
    }

    #[test]
    fn the_slowest_case_is_told_by_its_median_and_not_by_one_bad_run() {
        let cases = [
            Times::of(vec![1.0, 1.0, 50.0]),
            Times::of(vec![3.0, 2.0, 3.0]),
            Times::of(vec![2.0, 2.0, 2.0]),
        ];
        let over = OverCases::of(&cases);
        assert_eq!(
            (over.typical_ms, over.slowest_ms, over.cases),
            (2.0, 3.0, 3)
        );
        assert_eq!(over.least_ms, 2.0);
    }
}
