//! Numbers with their unit and their trust, with no more digits than are known.

use sunbu_core::dressing::{Against, HandUnit, StepNumber, StepValue, Target};
use sunbu_core::measure::Z_90;

use crate::Words;

/// From this standard deviation on, in centimetres, a tenth of a centimetre says nothing and
/// whole centimetres are shown. Just below one, so that what prints as `± 1.0` does not occur.
const WHOLE_FROM_SD_CM: f64 = 0.95;

/// How many decimals of a centimetre a value of this deviation deserves.
pub(crate) fn decimals(sd_cm: f64) -> usize {
    usize::from(sd_cm < WHOLE_FROM_SD_CM)
}

/// Half the width of a 90 % interval, as a deviation.
pub(crate) fn sd_of((low, high): (f64, f64)) -> f64 {
    (high - low) / (2.0 * Z_90)
}

/// The number with so many decimals and the sign U+2212 where it shows as less than zero.
pub(crate) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{:.decimals$}", value.abs());
    let is_zero = text.bytes().all(|b| matches!(b, b'0' | b'.'));
    if value < 0.0 && !is_zero {
        format!("\u{2212}{text}")
    } else {
        text
    }
}

/// The number as it reads with so many decimals.
pub(crate) fn rounded(value: f64, decimals: usize) -> f64 {
    // By way of the text, so that it is rounded just as it is shown.
    format!("{value:.decimals$}").parse().unwrap_or(value)
}

/// The number to a tenth, without the tenth where it is none.
pub(crate) fn plain(value: f64) -> String {
    let text = fixed(value, 1);
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

impl Words {
    /// A length to a tenth of a centimetre, as read off a tape: `157.4 cm`, `161 cm`.
    pub fn cm(&self, cm: f64) -> String {
        self.with("cm", &[("value", (&plain(cm)).into())])
    }

    /// An amount as one says it: whole centimetres from two on, else to a tenth.
    pub fn rough(&self, cm: f64) -> String {
        // 1.95 is where a tenth begins to round to two.
        let text = if cm.abs() >= 1.95 {
            fixed(cm, 0)
        } else {
            plain(cm)
        };
        self.with("cm", &[("value", (&text).into())])
    }

    /// A length with its standard deviation, both in centimetres: `23.9 ± 0.8 cm`, from a
    /// deviation of about one `24 ± 1 cm`. One that shows as none is left out.
    pub fn length(&self, cm: f64, sd_cm: f64) -> String {
        self.uncertain(cm, decimals(sd_cm), sd_cm)
    }

    /// A length with so many decimals and its standard deviation.
    pub(crate) fn uncertain(&self, cm: f64, places: usize, sd_cm: f64) -> String {
        let value = fixed(cm, places);
        if sd_cm < 0.05 {
            return self.with("cm", &[("value", (&value).into())]);
        }
        let sd = fixed(sd_cm, decimals(sd_cm));
        self.with(
            "cm-uncertain",
            &[("value", (&value).into()), ("sd", (&sd).into())],
        )
    }

    /// A 90 % interval in centimetres: `22.5–25.3 cm`, whole where its deviation is about one.
    pub fn interval(&self, interval: (f64, f64)) -> String {
        let places = decimals(sd_of(interval));
        let (low, high) = (fixed(interval.0, places), fixed(interval.1, places));
        // A dash beside a minus sign is hard to read.
        let signed = [&low, &high]
            .iter()
            .any(|text| text.starts_with('\u{2212}'));
        let id = if signed {
            "interval-signed"
        } else {
            "interval"
        };
        self.with(id, &[("low", (&low).into()), ("high", (&high).into())])
    }

    /// A value with as many digits as its 90 % interval allows.
    pub fn value_in(&self, cm: f64, interval: (f64, f64)) -> String {
        self.with(
            "cm",
            &[("value", (&fixed(cm, decimals(sd_of(interval)))).into())],
        )
    }

    /// A number of a plan, one way wherever it stands. What the hands decide is set, not estimated,
    /// and is said as it was set, to a tenth; what will be seen, with as many digits as its 90 %
    /// interval allows.
    pub fn planned(&self, value: StepValue, cm: f64, interval: (f64, f64)) -> String {
        match value {
            StepValue::Do(_) => self.cm(cm),
            StepValue::See(_) => self.value_in(cm, interval),
        }
    }

    /// The planner's number beside one that is shown, to the same digits: “planned 6.5 cm”; none
    /// where the two read the same or lie nearer than the last digit can tell.
    pub fn planned_apart(
        &self,
        value: StepValue,
        planned: f64,
        shown: f64,
        interval: (f64, f64),
    ) -> Option<String> {
        let places = match value {
            StepValue::Do(_) => 1,
            StepValue::See(_) => decimals(sd_of(interval)),
        };
        let last_digit = if places == 0 { 1.0 } else { 0.1 };
        let told = self.planned(value, planned, interval);
        let apart =
            (planned - shown).abs() >= last_digit && told != self.planned(value, shown, interval);
        apart.then(|| self.with("draw-planned-value", &[("value", (&told).into())]))
    }

    /// A wanted range, open on either side: `5 to 7 cm`, `at least 9 cm`.
    pub fn range(&self, low: Option<f64>, high: Option<f64>) -> String {
        let (low, high) = (low.map(plain), high.map(plain));
        match (&low, &high) {
            (Some(low), Some(high)) => {
                self.with("range-both", &[("low", low.into()), ("high", high.into())])
            }
            (Some(low), None) => self.with("range-from", &[("low", low.into())]),
            (None, Some(high)) => self.with("range-to", &[("high", high.into())]),
            (None, None) => self.get("range-open"),
        }
    }

    /// The range of a wish.
    pub fn target_range(&self, target: &Target) -> String {
        self.range(target.low, target.high)
    }

    /// One number of a step: name, value, against body or hand, 90 % interval.
    pub fn number(&self, number: &StepNumber) -> String {
        let what = self.step_value(number.value);
        let value = self.planned(number.value, number.cm, number.interval_90);
        let interval = self.interval(number.interval_90);
        let mut args = vec![
            ("what", (&what).into()),
            ("value", (&value).into()),
            ("interval", (&interval).into()),
        ];
        match number.against.as_ref().map(|against| self.against(against)) {
            None => self.with("number", &args),
            Some(against) => {
                args.push(("against", (&against).into()));
                self.with("number-against", &args)
            }
        }
    }

    /// What a step's number is about.
    pub fn step_value(&self, value: StepValue) -> String {
        match value {
            StepValue::Do(decision) => self.decision(decision),
            StepValue::See(quantity) => self.quantity(quantity),
        }
    }

    /// A length as hands find it: “two fingers above the hip bone”, 腰骨の指2本上.
    pub fn against(&self, against: &Against) -> String {
        match *against {
            Against::Hand { unit, count } => self.hands(unit, count),
            Against::Body { landmark, fingers } => {
                let landmark = self.landmark(landmark);
                let landmark = ("landmark", (&landmark).into());
                if fingers == 0.0 {
                    return self.with("against-at", &[landmark]);
                }
                let id = if fingers > 0.0 {
                    "against-above"
                } else {
                    "against-below"
                };
                let fingers = self.hands(HandUnit::Finger, fingers.abs());
                self.with(id, &[landmark, ("fingers", (&fingers).into())])
            }
        }
    }

    /// So many of a part of the hand, in halves.
    fn hands(&self, unit: HandUnit, count: f64) -> String {
        let id = match unit {
            HandUnit::Finger => "fingers",
            HandUnit::IndexFinger => "index-fingers",
            HandUnit::Fist => "fists",
        };
        let half = if count.fract() == 0.0 { "" } else { "h" };
        let key = format!("n{}{half}", count.trunc());
        self.with(
            id,
            &[("count", (&key).into()), ("number", (&plain(count)).into())],
        )
    }

    /// The parts after one another with the language's comma.
    pub fn listed(&self, parts: &[String]) -> String {
        self.joined("and-then", parts)
    }

    /// The parts joined two by two through a message with `$first` and `$next`.
    pub(crate) fn joined(&self, id: &str, parts: &[String]) -> String {
        let mut parts = parts.iter();
        let first = parts.next().cloned().unwrap_or_default();
        parts.fold(first, |first, next| {
            self.with(id, &[("first", (&first).into()), ("next", next.into())])
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Lang;
    use sunbu_core::dressing::{Decision, Landmark, Quantity};

    #[test]
    fn a_decided_height_reads_as_it_was_set_in_a_step_as_anywhere() {
        let words = Words::of(Lang::En);
        let step = |value: StepValue, cm: f64, sd: f64| {
            words.number(&StepNumber {
                value,
                cm,
                interval_90: (cm - Z_90 * sd, cm + Z_90 * sd),
                against: None,
            })
        };
        let tie = StepValue::Do(Decision::KoshihimoFront);
        for (cm, sd) in [(93.5, 1.0), (93.46, 1.0), (100.0, 0.5), (0.04, 0.5)] {
            let (told, set) = (step(tie, cm, sd), words.cm(cm));
            assert!(told.contains(&format!(": {set} (")), "{set} in {told}");
        }
        // What is only foreseen has no more digits than are known.
        let fold = StepValue::See(Quantity::FoldFront);
        assert!(step(fold, 6.46, 1.0).contains(": 6 cm ("));
    }

    #[test]
    fn the_planners_number_is_said_only_where_it_can_be_told_apart() {
        let (en, ja) = (Words::of(Lang::En), Words::of(Lang::Ja));
        let fold = StepValue::See(Quantity::FoldFront);
        let whole = |planned, shown: f64| {
            en.planned_apart(fold, planned, shown, (shown - 2.5, shown + 2.5))
        };
        // On either side of a half, and yet as near as one can tell.
        assert_eq!(whole(7.6, 7.4), None);
        assert_eq!(whole(6.6, 7.4), None);
        assert_eq!(whole(6.4, 7.4).as_deref(), Some("planned 6 cm"));
        let tie = StepValue::Do(Decision::KoshihimoBack);
        let set = |words: &Words, planned| words.planned_apart(tie, planned, 93.5, (93.5, 93.5));
        assert_eq!(set(en, 93.44), None);
        assert_eq!(set(en, 94.0).as_deref(), Some("planned 94 cm"));
        assert_eq!(set(ja, 94.0).as_deref(), Some("案では94 cm"));
    }

    #[test]
    fn a_length_shows_a_tenth_only_while_the_deviation_is_below_about_one() {
        let words = Words::of(Lang::En);
        for (cm, sd, want) in [
            (23.94, 0.84, "23.9 ± 0.8 cm"),
            (23.94, 0.949, "23.9 ± 0.9 cm"),
            (23.94, 0.95, "24 ± 1 cm"),
            (23.94, 7.6, "24 ± 8 cm"),
            (23.94, 0.0, "23.9 cm"),
            (-0.04, 0.2, "0.0 ± 0.2 cm"),
            (-3.26, 0.2, "\u{2212}3.3 ± 0.2 cm"),
        ] {
            assert_eq!(words.length(cm, sd), want, "{cm} ± {sd}");
        }
    }

    #[test]
    fn an_interval_is_rounded_by_its_own_width_and_never_dashes_beside_a_minus() {
        let words = Words::of(Lang::En);
        assert_eq!(words.interval((22.52, 25.28)), "22.5–25.3 cm");
        assert_eq!(words.interval((20.4, 27.4)), "20–27 cm");
        assert_eq!(words.interval((-2.0, 0.4)), "\u{2212}2.0 to 0.4 cm");
        assert_eq!(
            Words::of(Lang::Ja).interval((22.52, 25.28)),
            "22.5〜25.3 cm"
        );
    }

    #[test]
    fn hands_and_body_read_as_one_says_them() {
        let above = Against::Body {
            landmark: Landmark::HipBone,
            fingers: 2.0,
        };
        assert_eq!(
            Words::of(Lang::En).against(&above),
            "two fingers above the hip bone"
        );
        assert_eq!(Words::of(Lang::Ja).against(&above), "腰骨の指2本上");
        let at = Against::Body {
            landmark: Landmark::Navel,
            fingers: 0.0,
        };
        assert_eq!(Words::of(Lang::En).against(&at), "at the navel");
        let below = Against::Body {
            landmark: Landmark::Waist,
            fingers: -0.5,
        };
        assert_eq!(
            Words::of(Lang::En).against(&below),
            "half a finger below the waist"
        );
        let fists = Against::Hand {
            unit: HandUnit::Fist,
            count: 4.5,
        };
        assert_eq!(Words::of(Lang::En).against(&fists), "4.5 light fists");
        assert_eq!(Words::of(Lang::Ja).against(&fists), "軽く握ったこぶし4.5個");
    }

    #[test]
    fn amounts_are_said_in_whole_centimetres_from_two_on() {
        let words = Words::of(Lang::Ja);
        assert_eq!(words.rough(3.4), "3 cm");
        assert_eq!(words.rough(1.96), "2 cm");
        assert_eq!(words.rough(0.66), "0.7 cm");
        assert_eq!(words.cm(157.4), "157.4 cm");
        assert_eq!(words.cm(161.0), "161 cm");
    }

    #[test]
    fn a_range_open_on_one_side_says_so() {
        let words = Words::of(Lang::En);
        assert_eq!(words.range(Some(5.0), Some(7.0)), "5 to 7 cm");
        assert_eq!(words.range(None, Some(3.0)), "at most 3 cm");
        assert_eq!(words.range(Some(9.0), None), "at least 9 cm");
        assert_eq!(words.range(None, None), "any");
    }
}
