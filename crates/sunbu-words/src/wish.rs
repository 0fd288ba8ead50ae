//! What is said of a wish: value, range, met or missed, and by how much.

use std::cmp::Ordering;

use sunbu_core::dressing::{Check, Quantity, Target};

use crate::Words;
use crate::numbers::{decimals, fixed, rounded, sd_of};

/// What lies less than this outside a range reads as its end, in centimetres: half a tenth.
const LEAST_SHOWN_CM: f64 = 0.05;

impl Words {
    /// A wish in one line: value, 90 % interval, wanted range, and met or by how much not.
    pub fn check(&self, check: &Check) -> String {
        let what = self.quantity(check.target.quantity);
        let value = self.check_value(check);
        let interval = self.interval(check.interval_90);
        let range = self.target_range(&check.target);
        let verdict = self.check_verdict(check);
        let args = [
            ("what", (&what).into()),
            ("value", (&value).into()),
            ("interval", (&interval).into()),
            ("range", (&range).into()),
            ("verdict", (&verdict).into()),
        ];
        self.with("check-line", &args)
    }

    /// A value to stand beside its wanted range: with as many digits as its interval allows, and
    /// a tenth where whole centimetres would seem to tell another verdict.
    pub fn check_value(&self, check: &Check) -> String {
        let value = fixed(check.value, beside_range(check));
        self.with("cm", &[("value", (&value).into())])
    }

    /// The same with its standard deviation: `14.3 ± 6 cm`.
    pub fn check_length(&self, check: &Check) -> String {
        let sd = sd_of(check.interval_90);
        self.uncertain(check.value, beside_range(check), sd)
    }

    /// Whether a wish is met: “met”, “met, within a few millimetres” where the value lies outside
    /// the range and yet counts as met, or by how much it is missed.
    pub fn check_verdict(&self, check: &Check) -> String {
        if !check.met() {
            return self.check_miss(check);
        }
        let outside = check.target.miss(check.value).abs() >= LEAST_SHOWN_CM
            || shown_side(check, beside_range(check)) != Ordering::Equal;
        self.get(if outside {
            "check-nearly-met"
        } else {
            "check-met"
        })
    }

    /// By how much a wish is missed, such as “0.8 cm too long”, with as many digits as its
    /// interval allows.
    pub fn check_miss(&self, check: &Check) -> String {
        let known_to_tenths = decimals(sd_of(check.interval_90)) == 1;
        let amount = match check.miss.abs() {
            _ if known_to_tenths => self.cm(check.miss.abs().max(0.1)),
            small if small < 0.95 => self.with("cm-under", &[("value", "1".into())]),
            large => self.with("cm", &[("value", (&format!("{large:.0}")).into())]),
        };
        self.missed_by(check.target.quantity, check.miss, &amount)
    }

    /// A miss in words: above or below the wanted range by its sign, by an amount with unit.
    fn missed_by(&self, quantity: Quantity, sign: f64, amount: &str) -> String {
        let way = if sign > 0.0 { "over" } else { "under" };
        self.with(
            &format!("quantity-{}.{way}", quantity.key()),
            &[("amount", amount.into())],
        )
    }

    /// A miss in centimetres, signed, as one says it: “4 cm short”.
    pub fn miss(&self, quantity: Quantity, miss_cm: f64) -> String {
        self.missed_by(quantity, miss_cm, &self.rough(miss_cm.abs()))
    }
}

/// Decimals of a check's value beside its range: those its interval allows, but one where whole
/// centimetres would put it on another side of the range than the verdict does.
fn beside_range(check: &Check) -> usize {
    let told = if check.met() {
        Ordering::Equal
    } else {
        check.miss.total_cmp(&0.0)
    };
    let known = decimals(sd_of(check.interval_90));
    known.max(usize::from(shown_side(check, known) != told))
}

/// Where a check's value with so many decimals lies to a reader of the range: below, inside, above.
fn shown_side(check: &Check, decimals: usize) -> Ordering {
    let (value, Target { low, high, .. }) = (rounded(check.value, decimals), &check.target);
    // Bounds are shown to a tenth.
    if low.is_some_and(|low| value < rounded(low, 1)) {
        Ordering::Less
    } else if high.is_some_and(|high| value > rounded(high, 1)) {
        Ordering::Greater
    } else {
        Ordering::Equal
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Lang;
    use sunbu_core::dressing::MET_WITHIN_CM;

    #[test]
    fn a_larger_front_cover_is_an_edge_too_far_in_front_and_a_smaller_one_too_far_behind() {
        let words = Words::of(Lang::En);
        let cover = |value: f64| {
            let check = Check {
                target: Target {
                    quantity: Quantity::FrontCover,
                    ..held(value, 0.5, Some(2.0), Some(5.0)).target
                },
                ..held(value, 0.5, Some(2.0), Some(5.0))
            };
            (
                words.check(&check),
                Words::of(Lang::Ja).check_verdict(&check),
            )
        };
        let (front, front_ja) = cover(6.0);
        assert_eq!(
            front,
            "Front cover: outer edge in front of the right side line: 6.0 cm (5.2–6.8 cm), \
             wanted 2 to 5 cm: 1 cm too far in front"
        );
        assert_eq!(front_ja, "1 cm手前すぎる");
        let (behind, behind_ja) = cover(-1.0);
        assert!(behind.ends_with(": 3 cm too far behind"), "{behind}");
        assert_eq!(behind_ja, "3 cm後ろへ回りすぎる");
        for &lang in Lang::ALL {
            let short = Words::of(lang).quantity_short(Quantity::FrontCover);
            // A cover of 6 cm would sound like more cloth than one of 5 cm; it is less.
            assert!(
                !["cover", "かぶり"].iter().any(|c| short.contains(c)),
                "{short}"
            );
        }
    }

    /// A wish held against a value of this deviation, met or missed as the planner judges it.
    fn held(value: f64, sd: f64, low: Option<f64>, high: Option<f64>) -> Check {
        let target = Target {
            quantity: Quantity::FoldBack,
            low,
            high,
            weight: 1.0,
            source: String::new(),
        };
        let miss = target.miss(value);
        Check {
            value,
            interval_90: (value - 1.645 * sd, value + 1.645 * sd),
            miss: if miss.abs() < MET_WITHIN_CM {
                0.0
            } else {
                miss
            },
            target,
            binding: Vec::new(),
            rivals: Vec::new(),
        }
    }

    #[test]
    fn value_range_and_verdict_agree_as_they_are_shown() {
        let words = Words::of(Lang::En);
        for (value, sd, low, high, shown, verdict) in [
            (
                7.7,
                1.5,
                Some(4.5),
                Some(7.5),
                "7.7 cm",
                "met, within a few millimetres",
            ),
            (7.54, 1.5, Some(4.5), Some(7.5), "7.5 cm", "met"),
            (7.4, 1.5, Some(4.5), Some(7.5), "7 cm", "met"),
            (4.3, 1.5, Some(4.2), Some(7.5), "4.3 cm", "met"),
            (
                14.3,
                5.0,
                None,
                Some(14.0),
                "14.3 cm",
                "under 1 cm too long",
            ),
            (
                14.2,
                5.0,
                None,
                Some(14.0),
                "14 cm",
                "met, within a few millimetres",
            ),
            (15.6, 5.0, None, Some(14.0), "16 cm", "2 cm too long"),
            (
                -1.3,
                2.0,
                Some(-1.0),
                None,
                "\u{2212}1.3 cm",
                "under 1 cm too short",
            ),
            (
                7.56,
                0.5,
                Some(4.5),
                Some(7.5),
                "7.6 cm",
                "met, within a few millimetres",
            ),
        ] {
            let check = held(value, sd, low, high);
            assert_eq!(words.check_value(&check), shown, "{value}");
            assert_eq!(words.check_verdict(&check), verdict, "{value}");
            let line = words.check(&check);
            let told =
                line.contains(&format!(": {shown} (")) && line.ends_with(&format!(": {verdict}"));
            assert!(told, "{line}");
        }
        assert_eq!(
            words.check_length(&held(14.3, 5.0, None, Some(14.0))),
            "14.3 ± 5 cm"
        );
    }

    #[test]
    fn no_value_is_shown_on_another_side_of_its_range_than_its_verdict() {
        let (low, high) = (4.5, 7.5);
        for hundredths in -200..1400 {
            let value = f64::from(hundredths) / 100.0;
            for sd in [0.3, 0.94, 0.96, 4.0] {
                let check = held(value, sd, Some(low), Some(high));
                let shown = Words::of(Lang::En).check_value(&check);
                let shown: f64 = shown
                    .trim_end_matches(" cm")
                    .replace('\u{2212}', "-")
                    .parse()
                    .expect("a number");
                let verdict = Words::of(Lang::En).check_verdict(&check);
                let outside = (shown - high).max(low - shown);
                let agrees = match verdict.as_str() {
                    "met" => outside <= 0.0,
                    // A quarter of a centimetre, as rounded to a tenth.
                    "met, within a few millimetres" => outside < 0.35,
                    too_long if too_long.ends_with("too long") => shown > high,
                    _ => shown < low,
                };
                assert!(agrees, "{value} ± {sd}: {shown}, {verdict}");
            }
        }
    }

    #[test]
    fn a_miss_smaller_than_the_trust_in_it_has_no_tenths() {
        let target = Target {
            quantity: Quantity::FoldFront,
            low: Some(5.0),
            high: Some(7.0),
            weight: 1.0,
            source: String::new(),
        };
        let check = |interval_90: (f64, f64)| Check {
            target: target.clone(),
            value: 7.8,
            interval_90,
            miss: 0.8,
            binding: Vec::new(),
            rivals: Vec::new(),
        };
        let words = Words::of(Lang::En);
        assert_eq!(
            words.check(&check((6.9, 8.7))),
            "Fold (ohashori) in front: 7.8 cm (6.9–8.7 cm), wanted 5 to 7 cm: 0.8 cm too long"
        );
        assert_eq!(
            words.check(&check((4.8, 10.8))),
            "Fold (ohashori) in front: 8 cm (5–11 cm), wanted 5 to 7 cm: under 1 cm too long"
        );
    }
}
