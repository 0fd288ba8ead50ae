//! People and garments for tests and examples: very different builds, fitting and ill-fitting.

use sunbu_core::body::{Body, BodyMeasure, Population, Sex, Tape};
use sunbu_core::dressing::{
    Decision, Dressing, Fitting, Locks, Occasion, Plan, Rules, Standard, plan,
};
use sunbu_core::garment::{Garment, Sheet};
use sunbu_core::measure::Entry;
use sunbu_draw::Scene;
use sunbu_words::{Lang, Words};

/// One person in one garment, planned.
pub struct Bench {
    pub body: Body,
    pub garment: Garment,
    pub fitting: Fitting,
    pub rules: Rules,
    pub plan: Plan,
}

impl Bench {
    pub fn new(tape: &[(BodyMeasure, f64)], parts: &[(&str, f64)], occasion: Occasion) -> Self {
        let tape = tape
            .iter()
            .fold(Tape::of(Sex::Women), |t, &(m, cm)| t.with(m, cm));
        let tape = tape.build().expect("a possible tape");
        let body = Population::shipped(Sex::Women)
            .complete(&tape)
            .expect("a body");
        let mut fields = vec![
            ("kind", Entry::plain("nagagi")),
            ("mitake_from", Entry::plain("back_seam")),
        ];
        fields.extend(
            parts
                .iter()
                .map(|&(name, cm)| (name, Entry::plain(cm.to_string()))),
        );
        let garment = Sheet::from_fields(fields)
            .and_then(|s| s.complete())
            .expect("a garment");
        let fitting = Fitting::new(&body, &garment);
        let rules = Standard::customary().rules(occasion, &body, garment.cloth());
        let plan = plan(&fitting, &rules, &Locks::new());
        Self {
            body,
            garment,
            fitting,
            rules,
            plan,
        }
    }

    /// A person of ordinary build in a garment cut for her.
    pub fn ordinary() -> Self {
        Self::new(
            &[(BodyMeasure::Stature, 158.0), (BodyMeasure::HipGirth, 91.0)],
            &[
                ("mitake", 158.0),
                ("ushirohaba", 29.0),
                ("maehaba", 23.5),
                ("yuki", 66.0),
            ],
            Occasion::Indoors,
        )
    }

    /// The plan's dressing as hands may miss it: hem high, tie high in front, little nape drop, back
    /// seam to the left.
    pub fn off(&self) -> Dressing {
        self.plan
            .dressing
            .with(Decision::HemHeight, 5.0)
            .with(Decision::KoshihimoFront, 96.0)
            .with(Decision::NapeDrop, 3.0)
            .with(Decision::BackSeamHip, 4.0)
    }

    /// A dressing with every decision somewhere within its limits.
    pub fn random(&self, seeded: &mut Seeded) -> Dressing {
        Dressing::from_fn(|d| {
            let way = self.rules.way(d);
            seeded.between(way.low, way.high)
        })
    }

    /// The scene in a language, without a wanted plan.
    pub fn scene_in(&self, lang: Lang) -> Scene<'_> {
        Scene {
            body: &self.body,
            garment: &self.garment,
            fitting: &self.fitting,
            shown: &self.plan,
            wanted: None,
            words: Words::of(lang),
            title: match lang {
                Lang::En => "Hanae in the indigo komon",
                Lang::Ja => "はなえさん・藍の小紋",
            },
        }
    }

    /// The scene in English, without a wanted plan.
    pub fn scene(&self) -> Scene<'_> {
        self.scene_in(Lang::En)
    }

    /// Named people in garments: fitting, narrow, wide, short and long ones.
    pub fn gallery() -> Vec<(&'static str, Bench)> {
        use BodyMeasure as M;
        let bench =
            |tape: &[(M, f64)], parts: &[(&str, f64)], occasion| Bench::new(tape, parts, occasion);
        vec![
            ("ordinary", Self::ordinary()),
            (
                "slim-in-wide",
                bench(
                    &[
                        (M::Stature, 163.0),
                        (M::HipGirth, 84.0),
                        (M::WaistGirth, 60.0),
                        (M::BustGirth, 78.0),
                    ],
                    &[
                        ("mitake", 166.0),
                        ("ushirohaba", 31.0),
                        ("maehaba", 26.0),
                        ("yuki", 68.0),
                    ],
                    Occasion::Formal,
                ),
            ),
            (
                "stout-in-narrow",
                bench(
                    &[
                        (M::Stature, 155.0),
                        (M::HipGirth, 112.0),
                        (M::WaistGirth, 96.0),
                        (M::BustGirth, 110.0),
                    ],
                    &[
                        ("mitake", 160.0),
                        ("ushirohaba", 29.5),
                        ("maehaba", 24.0),
                        ("yuki", 64.0),
                    ],
                    Occasion::Indoors,
                ),
            ),
            (
                "short-in-long",
                bench(
                    &[(M::Stature, 146.0), (M::HipGirth, 88.0)],
                    &[
                        ("mitake", 168.0),
                        ("ushirohaba", 30.0),
                        ("maehaba", 24.0),
                        ("yuki", 67.0),
                    ],
                    Occasion::Everyday,
                ),
            ),
            (
                "tall-in-short",
                bench(
                    &[(M::Stature, 176.0), (M::HipGirth, 97.0)],
                    &[
                        ("mitake", 150.0),
                        ("ushirohaba", 28.5),
                        ("maehaba", 22.5),
                        ("yuki", 62.0),
                    ],
                    Occasion::Stage,
                ),
            ),
        ]
    }
}

/// A small generator of seeded numbers from 0 to 1: Knuth's linear congruence for 64 bits.
pub struct Seeded(pub u64);

impl Seeded {
    fn next(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    /// A number from `low` to `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.next()
    }
}
