//! The document of a ranking: all garments for one person, or all people for one garment.

use schemars::JsonSchema;
use serde::Serialize;
use sunbu_core::dressing::{Occasion, Verdict, Worth};
use sunbu_words::Words;

use super::{cm, keys};

/// How well garments can be made to look on a person, or one garment on people, best first.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct RankReport {
    /// The language of the texts.
    #[schemars(schema_with = "keys::lang")]
    pub lang: &'static str,
    /// What the dressing is for.
    #[schemars(schema_with = "keys::occasion")]
    occasion: &'static str,
    /// The name of the standard in force.
    standard: String,
    /// What the rows are.
    rows_are: Side,
    /// Whom or what they are ranked for.
    ranked_for: String,
    /// Whether at least one row meets every wish.
    met: bool,
    /// Best first.
    rows: Vec<Row>,
    /// Names of the studio's entries that are not ranked, because they cannot be read as they are
    /// kept.
    left_out: Vec<String>,
}

/// What the rows of a ranking are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// Garments, for one person.
    Garments,
    /// People, for one garment.
    People,
}

/// How well one fitting can be made to look.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Row {
    /// Place in the ranking, from 1.
    #[schemars(range(min = 1))]
    place: usize,
    name: String,
    #[schemars(schema_with = "keys::verdict")]
    verdict: &'static str,
    /// Root of the weighted squared misses: the smaller the better.
    #[schemars(range(min = 0.0))]
    off_cm: f64,
    /// Share of the pull toward the usual way: breaks ties among the flawless.
    #[schemars(range(min = 0.0))]
    effort_cm: f64,
    /// Why it is no better, in one line.
    reason: String,
    /// How its cut differs.
    cut: Vec<CutPart>,
    /// What the hands would do unlike usual.
    work: Vec<WorkPart>,
    /// What would still be missed.
    missed: Vec<MissedPart>,
}

/// One difference of cut.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct CutPart {
    #[schemars(schema_with = "keys::cut")]
    cut: &'static str,
    by_cm: f64,
}

/// One thing done unlike usual.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct WorkPart {
    #[schemars(schema_with = "keys::decision")]
    decision: &'static str,
    /// Signed difference from the usual.
    by_cm: f64,
}

/// One wish still missed.
#[derive(Debug, Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
struct MissedPart {
    #[schemars(schema_with = "keys::quantity")]
    quantity: &'static str,
    /// Signed: negative below the range, positive above it.
    miss_cm: f64,
}

impl Row {
    /// The row of one fitting.
    pub fn of(words: &Words, place: usize, name: &str, worth: &Worth) -> Row {
        let reason = &worth.reason;
        let cut = |&(cut, by): &(sunbu_core::dressing::Cut, f64)| CutPart {
            cut: cut.key(),
            by_cm: cm(by),
        };
        Row {
            place,
            name: name.to_owned(),
            verdict: worth.verdict.key(),
            off_cm: cm(worth.off_cm),
            effort_cm: cm(worth.effort_cm),
            reason: words.reason(worth),
            cut: reason.cut.iter().map(cut).collect(),
            work: reason
                .work
                .iter()
                .map(|&(d, by)| WorkPart {
                    decision: d.key(),
                    by_cm: cm(by),
                })
                .collect(),
            missed: reason
                .missed
                .iter()
                .map(|&(q, miss)| MissedPart {
                    quantity: q.key(),
                    miss_cm: cm(miss),
                })
                .collect(),
        }
    }
}

/// A ranking that was made.
#[derive(Debug)]
pub struct Ranked<'a> {
    /// What for.
    pub occasion: Occasion,
    /// The standard's name.
    pub standard: &'a str,
    /// What the rows are.
    pub rows_are: Side,
    /// Whom or what they are ranked for.
    pub ranked_for: &'a str,
    /// Names with their worth, best first.
    pub rows: &'a [(String, Worth)],
    /// Names of the entries that do not read.
    pub left_out: &'a [String],
}

impl Ranked<'_> {
    /// Whether at least one row meets every wish.
    pub fn met(&self) -> bool {
        self.rows
            .iter()
            .any(|(_, worth)| worth.verdict == Verdict::FallsRight)
    }
}

impl RankReport {
    /// The document of a ranking.
    pub fn of(words: &Words, ranked: &Ranked<'_>) -> RankReport {
        let row =
            |(at, (name, worth)): (usize, &(String, Worth))| Row::of(words, at + 1, name, worth);
        RankReport {
            lang: words.lang().code(),
            occasion: ranked.occasion.key(),
            standard: ranked.standard.to_owned(),
            rows_are: ranked.rows_are,
            ranked_for: ranked.ranked_for.to_owned(),
            met: ranked.met(),
            rows: ranked.rows.iter().enumerate().map(row).collect(),
            left_out: ranked.left_out.to_vec(),
        }
    }
}
