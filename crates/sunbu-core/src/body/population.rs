//! A population table: means, deviations and correlations of every body measure, read from TOML.
//!
//! The table is data: [`Population::shipped`] gives the two that come with the program, and any
//! other of the same form can be put in their place with [`Population::parse`]. Its rows are
//! `[[measure]]` with `key`, `mean_cm`, `sd_cm`, optional `shift_cm` with `shift_source`, `source`,
//! and `correlation` with the rows above it. Every [`BodyMeasure`] must have one row.

use std::sync::OnceLock;

use nalgebra::{DMatrix, DVector};
use serde::Deserialize;

use super::measures::{BodyMeasure, Sex};

const WOMEN: &str = include_str!("../../../../data/population/women.toml");
const MEN: &str = include_str!("../../../../data/population/men.toml");

/// Why a population table was refused.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum PopulationError {
    /// The text is not TOML, or a field is missing, unknown, or of the wrong kind.
    #[error("population table cannot be read: {0}")]
    Syntax(String),
    /// A row's key is not the key of a body measure, or comes twice.
    #[error("population table, row {row}: key `{key}` is unknown or comes twice")]
    Key {
        /// Row counted from 1.
        row: usize,
        /// The key found.
        key: String,
    },
    /// A body measure has no row.
    #[error("population table: no row for `{key}`")]
    MissingRow {
        /// The key of the measure.
        key: &'static str,
    },
    /// A number is out of its range.
    #[error("population table, `{key}`: {field} is {value}, allowed {allowed}")]
    Number {
        /// The key of the row.
        key: &'static str,
        /// The field.
        field: &'static str,
        /// The value found.
        value: f64,
        /// The allowed range in words.
        allowed: &'static str,
    },
    /// A row has more or fewer correlations than there are rows above it.
    #[error(
        "population table, `{key}`: {found} correlations, expected {expected}, one for each row above"
    )]
    CorrelationCount {
        /// The key of the row.
        key: &'static str,
        /// How many there are.
        found: usize,
        /// How many there should be.
        expected: usize,
    },
    /// The correlations contradict each other: no population can have them.
    #[error("population table: the correlations contradict each other (not positive definite)")]
    NotPositiveDefinite,
}

/// Where the numbers of one measure come from.
#[derive(Debug, Clone, PartialEq)]
pub struct RowSource {
    /// Source of mean, deviation and correlations.
    pub source: String,
    /// Centimetres added to the mean, and why; `None` when the row has no shift.
    pub shift: Option<(f64, String)>,
}

/// Means and covariance of all body measures in a population, in centimetres.
#[derive(Debug, Clone)]
pub struct Population {
    name: String,
    sex: Sex,
    source: String,
    people: u32,
    note: String,
    rows: Vec<RowSource>,
    mean: DVector<f64>,
    covariance: DMatrix<f64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    name: String,
    sex: Sex,
    source: String,
    people: u32,
    #[serde(default)]
    note: String,
    apply_shift: bool,
    #[serde(default)]
    measure: Vec<FileRow>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FileRow {
    key: String,
    mean_cm: f64,
    sd_cm: f64,
    #[serde(default)]
    shift_cm: f64,
    shift_source: Option<String>,
    source: String,
    correlation: Vec<f64>,
}

impl Population {
    /// The table that comes with the program for this sex.
    ///
    /// # Panics
    /// Never in a built program: a test reads both tables.
    #[must_use]
    #[expect(
        clippy::expect_used,
        reason = "the text is compiled in and read by a test"
    )]
    pub fn shipped(sex: Sex) -> &'static Population {
        static TABLES: OnceLock<[Population; 2]> = OnceLock::new();
        let read = |text| Population::parse(text).expect("a shipped population table reads");
        let [women, men] = TABLES.get_or_init(|| [read(WOMEN), read(MEN)]);
        match sex {
            Sex::Women => women,
            Sex::Men => men,
        }
    }

    /// Reads a table.
    ///
    /// # Errors
    /// [`PopulationError`] for the first thing wrong: syntax, an unknown, double or missing row, a
    /// number out of range, or correlations no population can have.
    pub fn parse(toml: &str) -> Result<Population, PopulationError> {
        let file: File =
            toml::from_str(toml).map_err(|e| PopulationError::Syntax(e.to_string()))?;
        let n = BodyMeasure::COUNT;
        let mut place: Vec<BodyMeasure> = Vec::with_capacity(n);
        for (i, row) in file.measure.iter().enumerate() {
            match BodyMeasure::from_key(&row.key) {
                Some(m) if !place.contains(&m) => place.push(m),
                _ => {
                    return Err(PopulationError::Key {
                        row: i + 1,
                        key: row.key.clone(),
                    });
                }
            }
        }
        if let Some(missing) = BodyMeasure::ALL
            .iter()
            .copied()
            .find(|m| !place.contains(m))
        {
            return Err(PopulationError::MissingRow { key: missing.key() });
        }
        let mut rows = vec![
            RowSource {
                source: String::new(),
                shift: None
            };
            n
        ];
        let mut mean = DVector::zeros(n);
        let mut covariance = DMatrix::zeros(n, n);
        for (i, (row, &m)) in file.measure.into_iter().zip(&place).enumerate() {
            check(
                m,
                "mean_cm",
                row.mean_cm,
                "the accepted range of the measure",
                m.range_cm(),
            )?;
            check(
                m,
                "sd_cm",
                row.sd_cm,
                "above 0 to 50",
                (f64::MIN_POSITIVE, 50.0),
            )?;
            check(m, "shift_cm", row.shift_cm, "-10 to 10", (-10.0, 10.0))?;
            if row.correlation.len() != i {
                let found = row.correlation.len();
                return Err(PopulationError::CorrelationCount {
                    key: m.key(),
                    found,
                    expected: i,
                });
            }
            let at = m.index();
            mean[at] = row.mean_cm + if file.apply_shift { row.shift_cm } else { 0.0 };
            covariance[(at, at)] = row.sd_cm * row.sd_cm;
            for (&r, &above) in row.correlation.iter().zip(&place) {
                check(m, "correlation", r, "-1 to 1", (-1.0, 1.0))?;
                let other = above.index();
                let shared = r * row.sd_cm * covariance[(other, other)].sqrt();
                covariance[(at, other)] = shared;
                covariance[(other, at)] = shared;
            }
            let shift =
                (row.shift_cm != 0.0).then(|| (row.shift_cm, row.shift_source.unwrap_or_default()));
            rows[at] = RowSource {
                source: row.source,
                shift,
            };
        }
        if covariance.clone().cholesky().is_none() {
            return Err(PopulationError::NotPositiveDefinite);
        }
        Ok(Population {
            name: file.name,
            sex: file.sex,
            source: file.source,
            people: file.people,
            note: file.note,
            rows,
            mean,
            covariance,
        })
    }

    /// The table's name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Whose table it is.
    #[must_use]
    pub fn sex(&self) -> Sex {
        self.sex
    }

    /// Where the table comes from.
    #[must_use]
    pub fn source(&self) -> &str {
        &self.source
    }

    /// How many people were measured.
    #[must_use]
    pub fn people(&self) -> u32 {
        self.people
    }

    /// What to bear in mind when reading results made with it; may be empty.
    #[must_use]
    pub fn note(&self) -> &str {
        &self.note
    }

    /// Where one measure's numbers come from.
    #[must_use]
    pub fn row(&self, measure: BodyMeasure) -> &RowSource {
        &self.rows[measure.index()]
    }

    /// Mean of a measure in centimetres, shift included when the table applies it.
    #[must_use]
    pub fn mean_cm(&self, measure: BodyMeasure) -> f64 {
        self.mean[measure.index()]
    }

    /// Covariance of two measures over the population, in square centimetres.
    #[must_use]
    pub fn covariance(&self, a: BodyMeasure, b: BodyMeasure) -> f64 {
        self.covariance[(a.index(), b.index())]
    }
}

/// Refuses a number outside `low..=high`, and what is no number.
fn check(
    m: BodyMeasure,
    field: &'static str,
    value: f64,
    allowed: &'static str,
    (low, high): (f64, f64),
) -> Result<(), PopulationError> {
    if (low..=high).contains(&value) {
        Ok(())
    } else {
        Err(PopulationError::Number {
            key: m.key(),
            field,
            value,
            allowed,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shipped_tables_read_and_name_a_source_for_every_row() {
        for sex in [Sex::Women, Sex::Men] {
            let table = Population::shipped(sex);
            assert_eq!(table.sex(), sex);
            for &m in BodyMeasure::ALL {
                assert!(!table.row(m).source.is_empty(), "{}", m.key());
            }
        }
    }

    #[test]
    fn the_means_are_those_of_the_published_survey() {
        // ANSUR II summary, women and men: stature 162.85 and 175.62, back neck height of women 139.57, hip 102.12 cm.
        let (women, men) = (
            Population::shipped(Sex::Women),
            Population::shipped(Sex::Men),
        );
        for (table, m, published) in [
            (women, BodyMeasure::Stature, 162.85),
            (men, BodyMeasure::Stature, 175.62),
            (women, BodyMeasure::HipGirth, 102.12),
            (women, BodyMeasure::BackNeckHeight, 139.57),
        ] {
            let got = table.mean_cm(m);
            assert!(
                (got - published).abs() < 0.006,
                "{}: {got} against {published}",
                m.key()
            ); // rounding of the summary
        }
    }

    #[test]
    fn the_shift_is_added_only_when_the_table_says_so() {
        let with = Population::parse(WOMEN).unwrap();
        let without =
            Population::parse(&WOMEN.replace("apply_shift = true", "apply_shift = false")).unwrap();
        for &m in BodyMeasure::ALL {
            let want = with.row(m).shift.as_ref().map_or(0.0, |s| s.0);
            let got = with.mean_cm(m) - without.mean_cm(m);
            assert!(
                (got - want).abs() < 1e-12,
                "{}: {got} against {want}",
                m.key()
            );
        }
        assert!(
            (with.mean_cm(BodyMeasure::NavelHeight) - without.mean_cm(BodyMeasure::NavelHeight)
                + 1.2)
                .abs()
                < 1e-12
        );
    }

    #[test]
    fn broken_tables_are_refused_with_the_place() {
        let cases = [
            ("not toml at all [", "cannot be read"),
            (
                &WOMEN.replacen("key = \"stature\"", "key = \"hight\"", 1),
                "row 1: key `hight`",
            ),
            (
                &WOMEN.replacen("key = \"waist_girth\"", "key = \"hip_girth\"", 1),
                "comes twice",
            ),
            (
                &WOMEN.replacen("sd_cm = 6.4200", "sd_cm = nan", 1),
                "sd_cm is NaN",
            ),
            (
                &WOMEN.replacen("correlation = [0.984243]", "correlation = []", 1),
                "0 correlations, expected 1",
            ),
            (
                &WOMEN.replacen("correlation = [0.984243]", "correlation = [-0.984243]", 1),
                "contradict",
            ),
            (
                &WOMEN[..WOMEN.rfind("[[measure]]").unwrap()],
                "no row for `finger_breadth`",
            ),
        ];
        for (text, part) in cases {
            let said = Population::parse(text).unwrap_err().to_string();
            assert!(said.contains(part), "{part} in: {said}");
        }
    }
}
