//! The dressing model, run in three directions: predict, plan, and judge what is worth wearing.

mod against;
mod decision;
mod diagnose;
mod forward;
mod given;
mod local;
mod plan;
mod predict;
mod quantity;
mod sight;
mod solve;
mod standard;
mod standard_check;
mod steps;
mod walls;
mod ways_out;
mod worth;

pub use against::{Against, HandUnit, Hands, Landmark, height_by_body, length_by_hand};
pub use decision::{Decision, Dressing};
pub use diagnose::{
    Cause, Change, Correction, Diagnosis, Doubt, Finding, GREATEST_CM, Observed, ObservedError,
    Parts, RIVAL_ODDS, Shown, Sight, Tell, WRONG_SHARE, diagnose, usual_sd,
};
pub use forward::{appearance, hem_as_seen, raise_kept};
pub use given::{Fitting, Given, customary};
pub use plan::{Binding, Check, Locks, MET_WITHIN_CM, Plan, Rival, Side, assess, plan};
pub use predict::{INPUTS, Prediction, predict};
pub use quantity::{Appearance, Quantity};
pub use sight::{
    DISTANCE_CM, EYE_CM, FLOOR_CM, HemSeen, Leg, Onlooker, TABI_ABOVE_ANKLE_CM, Viewer,
    ViewerError, hem_seen,
};
pub use solve::{CENTRE, PULL, Solution, misses, objective, solve};
pub use standard::{
    Amount, ByCloth, Datum, Habit, HabitChange, Occasion, OccasionRules, Rules, Standard,
    StandardError, Target, Way, Wish,
};
pub use standard_check::{MOST_CM, MOST_WEIGHT, SPREAD_CM};
pub use steps::{Caution, Step, StepId, StepNumber, StepValue, cautions, step_of, steps};
pub use ways_out::{Remedy, WayOut, WaysOut, ways_out};
pub use worth::{Cut, Reason, Verdict, Worth, rank, worth};
