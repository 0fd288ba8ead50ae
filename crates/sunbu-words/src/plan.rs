//! What is said of a plan: wishes met or missed, what holds them, ways out, and worth.

use sunbu_core::dressing::{
    Binding, Check, Cut, Decision, Quantity, Remedy, Rival, Side, Verdict, WayOut, Worth,
};

use crate::Words;
use crate::numbers::{decimals, sd_of};

/// How many things of each kind the one line of a reason names.
const NAMED: usize = 2;

impl Words {
    /// A wish in one line: value, 90 % interval, wanted range, and met or by how much not.
    pub fn check(&self, check: &Check) -> String {
        let what = self.quantity(check.target.quantity);
        let value = self.value_in(check.value, check.interval_90);
        let interval = self.interval(check.interval_90);
        let range = self.target_range(&check.target);
        let mut args = vec![
            ("what", (&what).into()),
            ("value", (&value).into()),
            ("interval", (&interval).into()),
            ("range", (&range).into()),
        ];
        if check.met() {
            return self.with("check-met", &args);
        }
        let miss = self.check_miss(check);
        args.push(("miss", (&miss).into()));
        self.with("check-missed", &args)
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

    /// What the hands do unlike usual, by a signed difference: “back seam 2 cm to the left”.
    pub fn work(&self, decision: Decision, by_cm: f64) -> String {
        let way = if by_cm > 0.0 { "over" } else { "under" };
        let amount = self.rough(by_cm.abs());
        self.with(
            &format!("decision-{}.{way}", decision.key()),
            &[("amount", (&amount).into())],
        )
    }

    /// How a garment's cut differs: “3 cm narrow”.
    pub fn cut(&self, cut: Cut, by_cm: f64) -> String {
        let amount = self.rough(by_cm);
        self.with(
            &format!("cut-{}", cut.key()),
            &[("amount", (&amount).into())],
        )
    }

    /// A limit that holds a missed wish.
    pub fn binding(&self, binding: &Binding) -> String {
        let decision = self.decision(binding.decision);
        // A slope known to a tenth is as good as the model's linear part gets.
        let gain = self.cm(binding.gain);
        let id = match binding.side {
            Side::Low => "binding-low",
            Side::High => "binding-high",
            Side::Locked => "binding-locked",
        };
        self.with(
            id,
            &[("decision", (&decision).into()), ("gain", (&gain).into())],
        )
    }

    /// A wish that would suffer if a missed one were met.
    pub fn rival(&self, rival: &Rival) -> String {
        let (what, cost) = (self.quantity(rival.quantity), self.cm(rival.cost));
        self.with(
            "rival",
            &[("what", (&what).into()), ("cost", (&cost).into())],
        )
    }

    /// A way out: “a garment 4 cm wider all round would meet it”, “letting the sides out 6 cm
    /// all round leaves 2 cm missing”.
    pub fn way_out(&self, way: &WayOut) -> String {
        let remedy = self.remedy(way.remedy, way.amount);
        if way.left == 0.0 {
            return self.with("way-out-enough", &[("remedy", (&remedy).into())]);
        }
        let left = self.rough(way.left.abs());
        let args = [("remedy", (&remedy).into()), ("left", (&left).into())];
        self.with("way-out-left", &args)
    }

    /// A remedy by its amount in centimetres, said in halves: less than it takes would not do.
    pub fn remedy(&self, remedy: Remedy, amount_cm: f64) -> String {
        let amount = self.cm((amount_cm * 2.0).ceil() / 2.0);
        self.with(
            &format!("remedy-{}", remedy.key()),
            &[("amount", (&amount).into())],
        )
    }

    /// Why a garment is no better, in one line: “3 cm narrow: back seam 2 cm to the left, cover
    /// still 4 cm short”.
    pub fn reason(&self, worth: &Worth) -> String {
        let reason = &worth.reason;
        let still = if reason.work.is_empty() {
            "reason-off"
        } else {
            "reason-still"
        };
        let mut rest: Vec<String> = reason
            .work
            .iter()
            .take(NAMED)
            .map(|&(d, by)| self.work(d, by))
            .collect();
        rest.extend(reason.missed.iter().take(NAMED).map(|&(q, by)| {
            let (what, miss) = (self.quantity_short(q), self.miss(q, by));
            self.with(still, &[("what", (&what).into()), ("miss", (&miss).into())])
        }));
        let usual = reason.cut.is_empty() && rest.is_empty();
        if reason.missed.is_empty() {
            rest.push(self.get(match (worth.verdict, usual, rest.is_empty()) {
                (Verdict::FallsRight, true, _) => "reason-as-usual",
                (Verdict::FallsRight, false, true) => "reason-all-met",
                (Verdict::FallsRight, false, false) => "reason-then-met",
                // What is too small to be named is still not nothing.
                _ => "reason-nearly-met",
            }));
        }
        let rest = self.listed(&rest);
        let cuts: Vec<String> = reason
            .cut
            .iter()
            .take(NAMED)
            .map(|&(cut, by)| self.cut(cut, by))
            .collect();
        if cuts.is_empty() {
            return rest;
        }
        let cut = self.listed(&cuts);
        self.with(
            "reason-cut",
            &[("cut", (&cut).into()), ("rest", (&rest).into())],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Lang;
    use sunbu_core::dressing::{Reason, Target};

    fn worth(off_cm: f64, reason: Reason) -> Worth {
        Worth {
            off_cm,
            effort_cm: 1.0,
            verdict: Verdict::of(off_cm),
            reason,
        }
    }

    #[test]
    fn the_reason_for_a_narrow_garment_names_cut_work_and_what_is_left() {
        let narrow = worth(
            4.0,
            Reason {
                cut: vec![(Cut::Narrow, 3.2)],
                work: vec![(Decision::BackSeamHip, 2.1)],
                missed: vec![(Quantity::FrontCover, 3.8)],
            },
        );
        assert_eq!(
            Words::of(Lang::En).reason(&narrow),
            "3 cm narrow: back seam 2 cm to the left, cover still 4 cm short"
        );
        assert_eq!(
            Words::of(Lang::Ja).reason(&narrow),
            "身幅が3 cm足りない：背縫いを2 cm左へ、上前のかぶりはなお4 cm足りない"
        );
    }

    #[test]
    fn a_garment_that_falls_right_says_so() {
        assert_eq!(
            Words::of(Lang::En).reason(&worth(0.0, Reason::default())),
            "all is met in the usual way"
        );
        let cut = Reason {
            cut: vec![(Cut::Long, 4.0)],
            ..Reason::default()
        };
        assert_eq!(
            Words::of(Lang::En).reason(&worth(0.0, cut.clone())),
            "4 cm long: all is met"
        );
        assert_eq!(
            Words::of(Lang::En).reason(&worth(0.3, cut)),
            "4 cm long: all is met but for a few millimetres"
        );
    }

    #[test]
    fn ways_out_that_suffice_and_that_do_not_read_differently() {
        let words = Words::of(Lang::En);
        let enough = WayOut {
            remedy: Remedy::WiderGarment,
            amount: 4.0,
            left: 0.0,
        };
        assert_eq!(
            words.way_out(&enough),
            "a garment 4 cm wider all round would meet it"
        );
        let little_more = WayOut {
            remedy: Remedy::LongerYuki,
            amount: 3.66,
            left: 0.0,
        };
        assert_eq!(
            words.way_out(&little_more),
            "a garment with 4 cm more yuki would meet it"
        );
        let not = WayOut {
            remedy: Remedy::LetOutSides,
            amount: 6.0,
            left: 2.0,
        };
        assert_eq!(
            words.way_out(&not),
            "letting the sides out 6 cm all round leaves 2 cm missing"
        );
        assert_eq!(
            Words::of(Lang::Ja).way_out(&not),
            "脇を一周で6 cm出せば外れが2 cmに減る"
        );
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
