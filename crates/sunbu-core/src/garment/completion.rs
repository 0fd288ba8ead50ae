//! Completes the parts that were not taped from those that were.
//!
//! What was taped is never touched. A part is completed first from its own garment (a sum, a
//! difference), then by a published proportion to another part, then by the customary value.
//! Its deviation is that of the parts it was made from, joined with the disagreement of the
//! published rules. The order of completion is fixed, so the order of entry cannot matter.

use super::rules::{self, BU_CM, Rule, SUN_CM, spread_among, spread_within};
use super::{Kind, MitakeFrom, Part};

/// A value with its deviation, in cm, and the rule that gave it; no rule when it was taped.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Estimate {
    pub cm: f64,
    pub sd: f64,
    pub rule: Option<&'static Rule>,
}

/// All parts of one garment, completed.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Completion {
    parts: [Estimate; Part::COUNT],
    pub mitake_back: Estimate,
    pub mitake_shoulder: Estimate,
    /// Height the garment was likely cut for.
    pub height: Estimate,
    /// Hip the garment was likely cut for.
    pub hip: Estimate,
}

impl Completion {
    pub fn part(&self, part: Part) -> Estimate {
        self.parts[part.index()]
    }
}

/// The parts known so far.
struct Known {
    parts: [Option<Estimate>; Part::COUNT],
}

impl Known {
    fn get(&self, part: Part) -> Option<Estimate> {
        self.parts[part.index()]
    }

    /// Puts a completed value in, unless the part is already known; gives back what stands.
    /// A proportion is kept within the part's range: a garment at the edge of one range must
    /// not be completed past the edge of another.
    fn fill(&mut self, part: Part, cm: f64, sd: f64, rule: &'static Rule) -> Estimate {
        *self.parts[part.index()].get_or_insert_with(|| {
            let (low, high) = part.range_cm();
            Estimate {
                cm: cm.clamp(low, high),
                sd,
                rule: Some(rule),
            }
        })
    }

    /// Puts in a sum or difference of known parts. It is not kept within the range: out of it
    /// means that the parts contradict each other, which the caller reports.
    fn derive(&mut self, part: Part, cm: f64, sd: f64, rule: &'static Rule) -> Estimate {
        *self.parts[part.index()].get_or_insert(Estimate {
            cm,
            sd,
            rule: Some(rule),
        })
    }
}

fn joined(sds: &[f64]) -> f64 {
    sds.iter().map(|sd| sd * sd).sum::<f64>().sqrt()
}

/// Deviation of the height a garment of one mitake was cut for: the published tolerance of
/// height ± 5 (S11, kimono size explained; S14, kimono glossary), any value equally likely.
fn height_sd() -> f64 {
    spread_within(0.0, -5.0, 5.0)
}

/// Completes `taped`; `None` when the mitake or both body widths are missing.
pub(super) fn complete(
    taped: &[Option<Estimate>; Part::COUNT],
    kind: Kind,
    mitake_from: MitakeFrom,
) -> Option<Completion> {
    let mut known = Known { parts: *taped };
    let mitake = known.get(Part::Mitake)?;
    let (mitake_back, mitake_shoulder) = both_mitakes(&mut known, mitake, mitake_from);
    let height = Estimate {
        cm: mitake_back.cm,
        sd: joined(&[mitake_back.sd, height_sd()]),
        rule: None,
    };
    let hip = widths(&mut known)?;
    front_edge(&mut known, mitake_back, hip);
    shoulder_and_sleeve_widths(&mut known, height);
    sleeve_lengths(&mut known, kind, height);
    neck_and_openings(&mut known, kind, height);

    let mut parts = [mitake; Part::COUNT];
    for (slot, value) in parts.iter_mut().zip(known.parts) {
        *slot = value?;
    }
    Some(Completion {
        parts,
        mitake_back,
        mitake_shoulder,
        height,
        hip,
    })
}

/// The mitake from the back seam and from the shoulder; the one not taped by the kurikoshi.
fn both_mitakes(
    known: &mut Known,
    mitake: Estimate,
    mitake_from: MitakeFrom,
) -> (Estimate, Estimate) {
    // 5 to 8 bu are in use (S4, S5, S18); 7 is the default of S1, S5 and S6.
    let kurikoshi = known.fill(
        Part::Kurikoshi,
        7.0 * BU_CM,
        spread_within(7.0 * BU_CM, 5.0 * BU_CM, 8.0 * BU_CM),
        &rules::KURIKOSHI_STANDARD,
    );
    let step = rules::shoulder_over_back(kurikoshi.cm);
    let other_sd = joined(&[mitake.sd, kurikoshi.sd]);
    let shifted = |by: f64| Estimate {
        cm: mitake.cm + by,
        sd: other_sd,
        rule: None,
    };
    match mitake_from {
        MitakeFrom::BackSeam => (mitake, shifted(step)),
        MitakeFrom::Shoulder => (shifted(-step), mitake),
    }
}

/// Ushirohaba and maehaba, and the hip they were cut for; `None` when neither is known.
fn widths(known: &mut Known) -> Option<Estimate> {
    // R4 (S11) sets the back at a quarter of the hip plus 5 to 6: the hip read off a taped
    // back panel is that uncertain, times 4.
    let back_rule_sd = spread_within(6.0, 5.0, 6.0);
    let (back, hip_cm) = match (known.get(Part::Ushirohaba), known.get(Part::Maehaba)) {
        (Some(back), _) => (back, rules::hip_of_ushirohaba(back.cm)),
        (None, Some(front)) => {
            let hip_cm = rules::hip_of_maehaba(front.cm);
            let back_cm = rules::r1(hip_cm).ushirohaba;
            let opinions = rules::ushiro_opinions(front.cm);
            let back = known.fill(
                Part::Ushirohaba,
                back_cm,
                joined(&[front.sd, spread_among(back_cm, &opinions)]),
                &rules::USHIRO_OF_MAE,
            );
            (back, hip_cm)
        }
        (None, None) => return None,
    };
    let hip = Estimate {
        cm: hip_cm,
        sd: 4.0 * joined(&[back.sd, back_rule_sd]),
        rule: None,
    };
    // The maehaba moves about a quarter as much as the hip it is read for.
    let front_cm = rules::mae_by_hip(hip.cm);
    let opinions = rules::mae_opinions(hip.cm);
    let front = known.fill(
        Part::Maehaba,
        front_cm,
        joined(&[hip.sd / 4.0, spread_among(front_cm, &opinions)]),
        &rules::MAE_OF_USHIRO,
    );
    // mae to mae − 4 bu is in use (S16, S17, S18); most often the 4 bu.
    known.fill(
        Part::Dakihaba,
        front.cm - 4.0 * BU_CM,
        joined(&[front.sd, spread_within(-4.0 * BU_CM, -4.0 * BU_CM, 0.0)]),
        &rules::DAKI_OF_MAE,
    );
    Some(hip)
}

/// Okumihaba, aizumahaba, erishita.
fn front_edge(known: &mut Known, mitake_back: Estimate, hip: Estimate) {
    let by_hip = rules::okumi_by_hip(hip.cm);
    // 15 cm in most rules whatever the hip (S9, S11); S6 widens it with the hip up to 4.3 sun.
    let okumi_sd = spread_among(by_hip, &[15.0, by_hip]);
    let okumi = match known.get(Part::Aizumahaba) {
        Some(aizuma) if aizuma.cm > by_hip => known.fill(
            Part::Okumihaba,
            aizuma.cm,
            joined(&[aizuma.sd, okumi_sd]),
            &rules::OKUMI_OF_AIZUMA,
        ),
        _ => known.fill(Part::Okumihaba, by_hip, okumi_sd, &rules::OKUMI_HIP),
    };
    // Equal to 3 bu less is in use (S5, S6, S12, S14, S18, S135), down to 5 bu less (S2, S110).
    let (less, rule) = if hip.cm >= 100.0 {
        (0.0, &rules::AIZUMA_EQUAL)
    } else {
        (2.0 * BU_CM, &rules::AIZUMA_OF_OKUMI)
    };
    let sd = joined(&[okumi.sd, spread_within(-less, -5.0 * BU_CM, 0.0)]);
    known.fill(Part::Aizumahaba, okumi.cm - less, sd, rule);
    let collar_end = rules::erishita_by_mitake(mitake_back.cm);
    let opinions = rules::erishita_opinions(mitake_back.cm);
    known.fill(
        Part::Erishita,
        collar_end,
        joined(&[mitake_back.sd / 2.0, spread_among(collar_end, &opinions)]),
        &rules::ERISHITA_HALF,
    );
}

/// Yuki, katahaba, sodehaba.
fn shoulder_and_sleeve_widths(known: &mut Known, height: Estimate) {
    let yuki = known.get(Part::Yuki);
    let shoulder = known.get(Part::Katahaba);
    let sleeve = known.get(Part::Sodehaba);
    // Between halves and 5 bu to the sleeve the difference of the two is 0 to 10 bu (S3, S6).
    let difference = 5.5 * BU_CM;
    let difference_sd = spread_within(difference, 0.0, 10.0 * BU_CM);
    match (yuki, shoulder, sleeve) {
        (_, Some(shoulder), Some(sleeve)) => {
            let sd = joined(&[shoulder.sd, sleeve.sd]);
            known.derive(Part::Yuki, shoulder.cm + sleeve.cm, sd, &rules::YUKI_SUM);
        }
        (Some(yuki), Some(shoulder), None) => {
            let sd = joined(&[yuki.sd, shoulder.sd]);
            known.derive(
                Part::Sodehaba,
                yuki.cm - shoulder.cm,
                sd,
                &rules::SLEEVE_REST,
            );
        }
        (Some(yuki), None, Some(sleeve)) => {
            let sd = joined(&[yuki.sd, sleeve.sd]);
            known.derive(
                Part::Katahaba,
                yuki.cm - sleeve.cm,
                sd,
                &rules::SHOULDER_REST,
            );
        }
        (None, Some(shoulder), None) => {
            let sd = joined(&[shoulder.sd, difference_sd]);
            let sleeve = known.fill(
                Part::Sodehaba,
                shoulder.cm + difference,
                sd,
                &rules::SLEEVE_FROM_SHOULDER,
            );
            let yuki_sd = joined(&[2.0 * shoulder.sd, difference_sd]);
            known.derive(
                Part::Yuki,
                shoulder.cm + sleeve.cm,
                yuki_sd,
                &rules::YUKI_SUM,
            );
        }
        (None, None, Some(sleeve)) => {
            let sd = joined(&[sleeve.sd, difference_sd]);
            let shoulder = known.fill(
                Part::Katahaba,
                sleeve.cm - difference,
                sd,
                &rules::SHOULDER_FROM_SLEEVE,
            );
            let yuki_sd = joined(&[2.0 * sleeve.sd, difference_sd]);
            known.derive(
                Part::Yuki,
                shoulder.cm + sleeve.cm,
                yuki_sd,
                &rules::YUKI_SUM,
            );
        }
        (yuki, None, None) => {
            // The older way of measuring, arm horizontal, gives about 4 less (S64).
            let yuki = yuki.unwrap_or_else(|| {
                known.fill(
                    Part::Yuki,
                    rules::yuki_by_height(height.cm),
                    joined(&[0.4 * height.sd, spread_within(0.0, -4.0, 0.0)]),
                    &rules::YUKI_HEIGHT,
                )
            });
            let sleeve_cm = rules::sodehaba_s14(yuki.cm);
            let opinions = rules::sodehaba_opinions(yuki.cm);
            let sd = joined(&[yuki.sd / 2.0, spread_among(sleeve_cm, &opinions)]);
            let sleeve = known.fill(Part::Sodehaba, sleeve_cm, sd, &rules::SLEEVE_SPLIT);
            known.derive(
                Part::Katahaba,
                yuki.cm - sleeve.cm,
                sd,
                &rules::SHOULDER_REST,
            );
        }
    }
}

/// Sodetake, sodetsuke, furi, sodeguchi.
fn sleeve_lengths(known: &mut Known, kind: Kind, height: Estimate) {
    let fill_sodetsuke = |known: &mut Known| {
        // 5.5 and 6 sun are both standard (S2, S6).
        let joint = rules::sodetsuke_by_height(height.cm);
        known.fill(
            Part::Sodetsuke,
            joint,
            spread_among(joint, &[5.5 * SUN_CM, 6.0 * SUN_CM]),
            &rules::SODETSUKE_HEIGHT,
        )
    };
    let drop = known.get(Part::Sodetake);
    let joint = known.get(Part::Sodetsuke);
    let furi = known.get(Part::Furi);
    let drop = match (drop, joint, furi) {
        (Some(drop), None, Some(furi)) => {
            let sd = joined(&[drop.sd, furi.sd]);
            known.derive(
                Part::Sodetsuke,
                drop.cm - furi.cm,
                sd,
                &rules::SODETSUKE_REST,
            );
            drop
        }
        (None, joint, Some(furi)) => {
            let joint = joint.unwrap_or_else(|| fill_sodetsuke(known));
            let sd = joined(&[joint.sd, furi.sd]);
            known.derive(Part::Sodetake, joint.cm + furi.cm, sd, &rules::SODETAKE_SUM)
        }
        (drop, _, furi) => {
            let drop = drop.unwrap_or_else(|| fill_sodetake(known, kind, height));
            let joint = fill_sodetsuke(known);
            if furi.is_none() {
                let sd = joined(&[drop.sd, joint.sd]);
                // A sodetsuke taped a few millimetres over the sodetake is a slip: no furi.
                let open = (drop.cm - joint.cm).max(0.0);
                known.derive(Part::Furi, open, sd, &rules::FURI_REST);
            }
            drop
        }
    };
    // 22.5 to 23 is published (S1, S2, S5, S6d); a short sleeve cannot have a longer opening.
    known.fill(
        Part::Sodeguchi,
        (6.0 * SUN_CM).min(drop.cm),
        spread_within(6.0 * SUN_CM, 22.5, 23.0),
        &rules::SODEGUCHI_STANDARD,
    );
}

fn fill_sodetake(known: &mut Known, kind: Kind, height: Estimate) -> Estimate {
    // Height ÷ 3 (S14) and height × 0.3 (S3) are in use beside the standard 1-3; yukata
    // sleeves also at 1-2 (FS2, S4).
    let mut opinions = vec![13.0 * SUN_CM, height.cm / 3.0, 0.3 * height.cm];
    if kind == Kind::Yukata {
        opinions.push(12.0 * SUN_CM);
    }
    known.fill(
        Part::Sodetake,
        13.0 * SUN_CM,
        spread_among(13.0 * SUN_CM, &opinions),
        &rules::SODETAKE_STANDARD,
    )
}

/// Miyatsukuchi, okumisagari, erikata-aki, tsukekomi, erihaba.
fn neck_and_openings(known: &mut Known, kind: Kind, height: Estimate) {
    // 3.5 sun with a sodetsuke of 6 (S2), 4 otherwise.
    known.fill(
        Part::Miyatsukuchi,
        4.0 * SUN_CM,
        spread_among(4.0 * SUN_CM, &[3.5 * SUN_CM, 4.0 * SUN_CM]),
        &rules::MIYATSUKUCHI_STANDARD,
    );
    let okumi_point = rules::okumisagari_by_height(height.cm);
    known.fill(
        Part::Okumisagari,
        okumi_point,
        spread_among(okumi_point, &[5.5 * SUN_CM, 6.0 * SUN_CM]),
        &rules::OKUMISAGARI_HEIGHT,
    );
    // 2.2 to 2.5 sun (S5, S15b, S20).
    known.fill(
        Part::ErikataAki,
        2.3 * SUN_CM,
        spread_within(2.3 * SUN_CM, 2.2 * SUN_CM, 2.5 * SUN_CM),
        &rules::ERIKATA_AKI_STANDARD,
    );
    // 3 to 5 bu, up to 7 (S2, S20).
    known.fill(
        Part::Tsukekomi,
        4.0 * BU_CM,
        spread_within(4.0 * BU_CM, 3.0 * BU_CM, 7.0 * BU_CM),
        &rules::TSUKEKOMI_STANDARD,
    );
    // Long kimono have the wide collar, yukata the narrow one sewn in half (S2 gives both
    // widths; which garment has which is common practice, no source).
    match kind {
        Kind::Nagagi => known.fill(Part::Erihaba, 3.0 * SUN_CM, BU_CM, &rules::ERIHABA_WIDE),
        Kind::Yukata => known.fill(Part::Erihaba, 1.5 * SUN_CM, BU_CM, &rules::ERIHABA_NARROW),
    };
}
