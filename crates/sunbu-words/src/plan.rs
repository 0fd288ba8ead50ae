//! What is said of a plan: what holds a missed wish, ways out, and what a garment is worth.

use sunbu_core::dressing::{Binding, Cut, Decision, Remedy, Rival, Side, Verdict, WayOut, Worth};

use crate::Words;

/// How many things of each kind the one line of a reason names.
const NAMED: usize = 2;

impl Words {
    /// What the hands do unlike usual, by a signed difference: “back seam 2 cm to the left”.
    pub fn work(&self, decision: Decision, by_cm: f64) -> String {
        let way = if by_cm > 0.0 { "over" } else { "under" };
        let amount = self.rough(by_cm.abs());
        self.with(
            &format!("decision-{}.{way}", decision.key()),
            &[("amount", (&amount).into())],
        )
    }

    /// How a garment's cut differs: “3 cm too narrow round the hip”.
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

    /// Why a garment is no better, in one line: “3 cm too narrow round the hip: back seam 2 cm to the
    /// left, outer edge (uwamae) from the side line still 4 cm too far in front”. It begins like a
    /// sentence, since it follows one or stands alone.
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
            return sentence(&rest);
        }
        let cut = self.listed(&cuts);
        sentence(&self.with(
            "reason-cut",
            &[("cut", (&cut).into()), ("rest", (&rest).into())],
        ))
    }
}

/// The text with a capital first.
pub(crate) fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    let first: String = chars
        .next()
        .into_iter()
        .flat_map(char::to_uppercase)
        .collect();
    first + chars.as_str()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Lang;
    use sunbu_core::dressing::{Quantity, Reason};

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
            "3 cm too narrow round the hip: back seam 2 cm to the left, \
             outer edge (uwamae) from the side line still 4 cm too far in front"
        );
        assert_eq!(
            Words::of(Lang::Ja).reason(&narrow),
            "身幅が3 cm足りない：背縫いを2 cm左へ、上前の端（脇線から）はなお4 cm手前すぎる"
        );
    }

    #[test]
    fn a_reason_begins_with_a_capital_and_names_what_is_short_or_wide() {
        let reason = |cut| Reason {
            cut,
            ..Reason::default()
        };
        let said = |lang, cut| Words::of(lang).reason(&worth(0.0, reason(cut)));
        let both = || vec![(Cut::SleevesShort, 6.2), (Cut::Short, 6.0)];
        assert_eq!(
            said(Lang::En, both()),
            "Sleeves 6 cm short, garment 6 cm short: all is met"
        );
        assert_eq!(
            said(Lang::Ja, both()),
            "裄が6 cm足りない、身丈が6 cm足りない：すべて納まる"
        );
        for &cut in Cut::ALL {
            let text = Words::of(Lang::En).cut(cut, 10.0);
            let what = ["garment", "sleeves", "round the hip"];
            assert!(what.iter().any(|w| text.contains(w)), "{text}: what is?");
            let said = said(Lang::En, vec![(cut, 10.0)]);
            assert!(!said.starts_with(char::is_lowercase), "{said}");
        }
    }

    #[test]
    fn a_garment_that_falls_right_says_so() {
        assert_eq!(
            Words::of(Lang::En).reason(&worth(0.0, Reason::default())),
            "All is met in the usual way"
        );
        let cut = Reason {
            cut: vec![(Cut::Long, 4.0)],
            ..Reason::default()
        };
        assert_eq!(
            Words::of(Lang::En).reason(&worth(0.0, cut.clone())),
            "Garment 4 cm long: all is met"
        );
        assert_eq!(
            Words::of(Lang::En).reason(&worth(0.3, cut)),
            "Garment 4 cm long: all is met but for a few millimetres"
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
}
