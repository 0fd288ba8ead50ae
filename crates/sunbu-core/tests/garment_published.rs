//! The garment rules and the completion against published rules, tables and worked examples.
//!
//! Sources are named by code and title; the figures stand as published, unless a comment says
//! that they were worked out from a published formula.

use std::fmt::Write as _;

use sunbu_core::garment::rules::{self, BU_CM, SUN_CM};
use sunbu_core::garment::tables::{HIP_TABLE, PUBLISHED, PublishedSheet};
use sunbu_core::garment::{Garment, Part, Sheet};
use sunbu_core::measure::Entry;

fn assert_close(found: f64, published: f64, tolerance: f64, what: &str) {
    assert!(
        (found - published).abs() <= tolerance,
        "{what}: {found} against published {published}, allowed {tolerance}"
    );
}

fn garment(fields: &[(&str, String)]) -> Garment {
    let all = [
        ("kind", "nagagi".to_owned()),
        ("mitake_from", "back_seam".to_owned()),
    ];
    let all = all.iter().chain(fields);
    Sheet::from_fields(all.map(|(name, text)| (*name, Entry::plain(text.clone()))))
        .and_then(|sheet| sheet.complete())
        .unwrap_or_else(|problems| panic!("{fields:?}: {problems:?}"))
}

fn sheet(id: &str) -> &'static PublishedSheet {
    PUBLISHED
        .iter()
        .find(|sheet| sheet.id == id)
        .expect("the table has this column")
}

/// R1: S9, dressing teacher: deriving kimono sizes. R2: S10, how sizes are derived.
/// R3: S6, wasai class notes. R4: S11, kimono size explained.
/// Rows worked out from the formulas, apart from this code.
#[test]
fn the_width_rules_give_the_worked_rows_for_every_hip() {
    // hip, front hip, ushiro, mae R1, mae R2, okumi R2, mae R3, okumi R3, wrap R3
    let rows = [
        [80.0, 34.0, 26.00, 19.0, 20.4, 13.6, 20.32, 15.15, 87.5],
        [85.0, 36.5, 27.25, 21.5, 21.9, 14.6, 21.57, 15.15, 91.2],
        [90.0, 39.0, 28.50, 24.0, 23.4, 15.6, 22.82, 15.15, 95.0],
        [95.0, 41.5, 29.75, 26.5, 24.9, 16.6, 24.07, 15.15, 98.7],
        [100.0, 44.0, 31.00, 29.0, 26.4, 17.6, 27.21, 15.53, 104.7],
        [105.0, 46.5, 32.25, 31.5, 27.9, 18.6, 28.46, 15.91, 108.9],
        [110.0, 49.0, 33.50, 34.0, 29.4, 19.6, 29.71, 15.91, 112.6],
    ];
    for row in rows {
        let hip = row[0];
        let what = |name: &str| format!("{name} at hip {hip}");
        // Rows are written to two decimals, wraps to one.
        assert_close(rules::front_hip(hip), row[1], 1e-9, &what("front hip"));
        for (name, widths) in [
            ("R1", rules::r1(hip)),
            ("R2", rules::r2(hip)),
            ("R3", rules::r3(hip)),
        ] {
            assert_close(widths.ushirohaba, row[2], 1e-9, &what(name));
        }
        assert_close(rules::r1(hip).maehaba, row[3], 1e-9, &what("R1 mae"));
        assert_close(rules::r2(hip).maehaba, row[4], 1e-9, &what("R2 mae"));
        assert_close(rules::r2(hip).okumihaba, row[5], 1e-9, &what("R2 okumi"));
        assert_close(rules::r3(hip).maehaba, row[6], 0.005, &what("R3 mae"));
        assert_close(rules::r3(hip).okumihaba, row[7], 0.005, &what("R3 okumi"));
        assert_close(rules::r3(hip).wrap(), row[8], 0.055, &what("R3 wrap"));
        let (least, most) = rules::r4(hip);
        assert_close(least.ushirohaba, hip / 4.0 + 5.0, 1e-9, &what("R4 least"));
        assert_close(most.ushirohaba, hip / 4.0 + 6.0, 1e-9, &what("R4 most"));
        assert_close(least.maehaba, hip / 4.0, 1e-9, &what("R4 least mae"));
        assert_close(most.maehaba, hip / 4.0 + 1.0, 1e-9, &what("R4 most mae"));
    }
}

/// R1 as its source sums it up (S9, dressing teacher: deriving kimono sizes): all the cloth
/// round the body is hip + front hip + 6.
#[test]
fn the_first_rule_sums_up_as_its_source_says() {
    for hip in [80.0, 88.5, 95.0, 110.0] {
        let all_round = rules::r1(hip).all_round();
        let published = hip + rules::front_hip(hip) + 6.0;
        assert_close(all_round, published, 1e-9, "cloth all round");
    }
}

/// R5 (S8, deciding kimono sizes from three measures): hip 90, wrap 94.
/// R6 (S13, know your sizes: front and back widths): front 6.0 to 6.5 sun, then back 8.0.
/// R7 (S1, online dressing school, lesson 104): 2 more is easier to wear.
#[test]
fn the_rules_of_the_wrap_give_their_published_figures() {
    assert_close(rules::r5_wrap(90.0), 94.0, 1e-9, "R5 at hip 90");
    let start = rules::Widths {
        ushirohaba: 7.5 * SUN_CM,
        maehaba: 6.0 * SUN_CM,
        okumihaba: 4.0 * SUN_CM,
    };
    let half = rules::r6_widened(start, start.wrap() + 0.5 * SUN_CM);
    assert_close(half.maehaba, 6.5 * SUN_CM, 1e-9, "R6 front first");
    assert_close(half.ushirohaba, 7.5 * SUN_CM, 1e-9, "R6 back untouched");
    let whole = rules::r6_widened(start, start.wrap() + 1.5 * SUN_CM);
    assert_close(whole.maehaba, 6.5 * SUN_CM, 1e-9, "R6 front full");
    assert_close(whole.ushirohaba, 8.0 * SUN_CM, 1e-9, "R6 back next");
    assert_eq!(rules::r6_widened(start, 50.0), start, "nothing is narrowed");
    assert_close(rules::r7_wrap(94.0), 96.0, 1e-9, "R7");
}

/// Table A: S7, guide to kimono sizes: hip table. Ease: wrap less the middle hip.
#[test]
fn the_hip_table_has_its_published_wrap_and_falling_ease() {
    let published = [
        (92.0, 8.0),
        (94.5, 5.5),
        (97.8, 2.8),
        (102.5, 2.5),
        (105.8, 2.8),
    ];
    for (row, (wrap, ease)) in HIP_TABLE.iter().zip(published) {
        // One decimal is published.
        assert_close(row.widths.wrap(), wrap, 0.05, "wrap");
        assert_close(row.widths.wrap() - row.hip_middle(), ease, 0.05, "ease");
        assert_close(
            rules::mae_by_hip(row.hip_middle()),
            row.widths.maehaba,
            1e-9,
            "maehaba",
        );
    }
}

/// Table A (S7) against the completion: the back panel of each row gives its front panel.
#[test]
fn the_back_panel_of_every_hip_table_row_gives_its_front_panel() {
    for row in HIP_TABLE {
        let back = row.widths.ushirohaba;
        let whole = garment(&[("mitake", "160".into()), ("ushirohaba", back.to_string())]);
        let hip = whole.likely_hip();
        let (low, high) = hip.interval_90();
        assert!(
            low <= row.hip_cm.0 && row.hip_cm.1 <= high,
            "hip {low} to {high} against {:?}",
            row.hip_cm
        );
        let front = whole.part(Part::Maehaba);
        // The rule for the back (R1) and the table differ by up to 0.5 cm, 2 of hip, which is
        // 0.5 in front and in the steep stretch about hip 97 twice that.
        assert_close(front.value_cm(), row.widths.maehaba, 0.6, "maehaba");
        let okumi = whole.part(Part::Okumihaba);
        // Sources write the 4 sun (15.15) as 15; at a hip of 103 this table alone has 4.2 sun.
        assert_close(okumi.value_cm(), row.widths.okumihaba, 0.55, "okumihaba");
    }
}

/// The same the other way: a front panel gives the back panel (R1, S9, within the table of S7).
#[test]
fn the_front_panel_of_every_hip_table_row_gives_its_back_panel() {
    for row in HIP_TABLE {
        let front = row.widths.maehaba;
        let whole = garment(&[("mitake", "160".into()), ("maehaba", front.to_string())]);
        // R1's back panel for the row's hip and the table's differ by up to half a centimetre.
        assert_close(
            whole.part(Part::Ushirohaba).value_cm(),
            row.widths.ushirohaba,
            0.5,
            "ushirohaba",
        );
        assert_close(whole.likely_hip().value_cm(), row.hip_middle(), 1e-6, "hip");
    }
}

/// Table B (S5, standard sizes of kimono, women, by height) and G (S8, deciding kimono sizes
/// from three measures): the yuki is the sum of its parts; and the yuki rule of S3 (wasai
/// basics 2) gives Table B's yuki.
#[test]
fn the_published_yuki_is_the_sum_of_its_parts_and_follows_the_height() {
    for id in ["B-150", "B-160", "B-170", "C", "D", "G-standard", "G-L"] {
        let sheet = sheet(id);
        let middle = |part| sheet.middle(part).expect("the column has it");
        let sum = middle(Part::Katahaba) + middle(Part::Sodehaba);
        assert_close(sum, middle(Part::Yuki), 1e-9, id);
    }
    for (height, yuki) in [
        (150.0, 62.0),
        (155.0, 64.0),
        (160.0, 66.0),
        (165.0, 68.0),
        (170.0, 70.0),
    ] {
        assert_close(rules::yuki_by_height(height), yuki, 1e-9, "yuki by height");
    }
}

/// Worked example A (S6b, wasai academy: deriving mae and ushiro widths): hip 95 gives 29.75,
/// 7.85 sun; the maehaba 1.5 sun less (6.35 sun, worked out from it).
#[test]
fn worked_example_a_widths_for_hip_95() {
    let widths = rules::r3(95.0);
    assert_close(widths.ushirohaba, 29.75, 1e-9, "ushirohaba");
    assert_close(widths.ushirohaba / SUN_CM, 7.85, 0.005, "ushirohaba in sun");
    assert_close(widths.maehaba, 24.07, 0.005, "maehaba");
    assert_close(widths.maehaba / SUN_CM, 6.35, 0.005, "maehaba in sun");
    assert_close(
        rules::hip_of_ushirohaba(29.75),
        95.0,
        1e-9,
        "hip turned round",
    );
}

/// Worked example B (S6c, wasai academy: dakihaba from bust): bust 88 gives 24.0.
#[test]
fn worked_example_b_dakihaba_for_bust_88() {
    assert_close(rules::daki_by_bust(88.0, 24.0), 24.0, 1e-9, "dakihaba");
    // S6: kept within 3 bu of the maehaba.
    assert_close(
        rules::daki_by_bust(110.0, 24.0),
        24.0 + 3.0 * BU_CM,
        1e-9,
        "upper end",
    );
    assert_close(
        rules::daki_by_bust(70.0, 24.0),
        24.0 - 3.0 * BU_CM,
        1e-9,
        "lower end",
    );
}

/// Worked example E: a yuki of 1-7.5 is split 8.8 + 8.7 by S3 (wasai basics 2), 9.0 + 8.5 by
/// S63b (measuring support), 9.25 + 8.25 by S6 (wasai class notes), 9.0 to 9.05 by S14 (kimono
/// glossary).
#[test]
fn worked_example_e_four_answers_to_one_sleeve() {
    let yuki = 17.5 * SUN_CM;
    let sun = |cm: f64| cm / SUN_CM;
    assert_close(sun(rules::sodehaba_s3(yuki)), 8.8, 1e-9, "S3");
    assert_close(sun(rules::sodehaba_s63b(yuki)), 9.0, 1e-9, "S63b");
    assert_close(sun(rules::sodehaba_s6(yuki)), 9.25, 1e-9, "S6");
    assert_close(
        sun(rules::sodehaba_s14(yuki)),
        9.025,
        1e-9,
        "S14, between 9.0 and 9.05",
    );
    // All four lie in the 90 % interval of what is completed.
    let whole = garment(&[
        ("mitake", "160".into()),
        ("ushirohaba", "29".into()),
        ("yuki", "1 shaku 7 sun 5 bu".into()),
    ]);
    let (low, high) = whole.part(Part::Sodehaba).interval_90();
    for answer in rules::sodehaba_opinions(yuki) {
        assert!(
            (low..=high).contains(&answer),
            "{answer} outside {low} to {high}"
        );
    }
}

/// The rest of S3's rule (wasai basics 2): 8.5 sun for 1-6.5 to 1-7.0, else halves with the odd
/// bu to the sleeve; and S63b's rows (measuring support).
#[test]
fn sleeve_splits_follow_their_tables() {
    for (yuki_sun, sleeve_sun) in [
        (16.5, 8.5),
        (17.0, 8.5),
        (17.1, 8.6),
        (16.4, 8.2),
        (18.0, 9.0),
    ] {
        let found = rules::sodehaba_s3(yuki_sun * SUN_CM) / SUN_CM;
        assert_close(found, sleeve_sun, 1e-9, &format!("S3 at {yuki_sun} sun"));
    }
    for (yuki_sun, sleeve_sun) in [(16.5, 8.5), (17.0, 8.8), (17.5, 9.0), (18.0, 9.0)] {
        let found = rules::sodehaba_s63b(yuki_sun * SUN_CM) / SUN_CM;
        assert_close(found, sleeve_sun, 1e-9, &format!("S63b at {yuki_sun} sun"));
    }
}

/// Worked example F and its line of bolts (S123, tailoring studio: yuki limit from bolt width).
#[test]
fn worked_example_f_the_bolt_limits_the_yuki() {
    for (bolt, yuki) in [
        (34.0, 63.0),
        (36.0, 67.0),
        (38.0, 71.0),
        (39.8, 74.6),
        (42.0, 79.0),
    ] {
        assert_close(rules::yuki_limit(bolt), yuki, 1e-9, "yuki limit");
    }
}

/// Kurikoshi identity (S18, tailor's notes: names and sizes): with the shoulder mitake 1 sun
/// over the back mitake the kurikoshi is 7 bu.
#[test]
fn shoulder_and_back_mitake_differ_by_one_sun_for_the_usual_kurikoshi() {
    let whole = garment(&[("mitake", "4 shaku".into()), ("maehaba", "23".into())]);
    let step = whole.mitake_shoulder().value_cm() - whole.mitake_back().value_cm();
    assert_close(step, SUN_CM, 1e-9, "shoulder less back");
    let from_shoulder: Vec<(&str, String)> = vec![
        ("mitake", "4 shaku 1 sun".into()),
        ("maehaba", "23".into()),
        ("kurikoshi", "7 bu".into()),
    ];
    let fields = from_shoulder
        .iter()
        .map(|(name, text)| (*name, Entry::plain(text.clone())));
    let fields = fields.chain([
        ("kind", Entry::plain("nagagi")),
        ("mitake_from", Entry::plain("shoulder")),
    ]);
    let other = Sheet::from_fields(fields)
        .and_then(|sheet| sheet.complete())
        .expect("a plain sheet");
    assert_close(
        other.mitake_back().value_cm(),
        whole.mitake_back().value_cm(),
        1e-9,
        "the same garment from the shoulder and from the back",
    );
}

/// Erishita: S6 (wasai class notes: half the mitake), S17 (padding maker's notes: 4-0 gives
/// 2-0.5), S9 and S14 (ceiling about 2-2), V12 of S16 (dressing teacher's notes: 2-2 chosen).
#[test]
fn the_erishita_is_half_the_mitake_under_its_ceiling() {
    assert_close(rules::erishita_by_mitake(160.0), 80.0, 1e-9, "S6");
    let opinions = rules::erishita_opinions(40.0 * SUN_CM);
    assert_close(opinions[1] / SUN_CM, 20.5, 1e-9, "S17");
    assert_close(rules::erishita_by_mitake(175.0), 83.33, 0.005, "ceiling");
    let v12 = sheet("V12")
        .middle(Part::Erishita)
        .expect("its only figure");
    assert_close(
        rules::ERISHITA_CEILING_CM,
        v12,
        0.3,
        "V12, written with 38 cm a shaku",
    );
}

/// Every figure of Tables B to H and of the single cases, completed from the sheet's mitake and
/// back width alone (a sheet without one of them gets a mitake of 158 or a back of 29, which
/// nothing then judged depends on).
#[test]
fn completion_covers_the_published_sheets() {
    let mut report = String::new();
    let (mut judged, mut within_sd, mut missed_in_all) = (0_usize, 0_usize, 0.0);
    for sheet in PUBLISHED {
        let mitake = sheet.middle(Part::Mitake);
        let back = sheet.middle(Part::Ushirohaba);
        let whole = garment(&[
            ("mitake", mitake.unwrap_or(158.0).to_string()),
            ("ushirohaba", back.unwrap_or(29.0).to_string()),
        ]);
        for (part, low, high) in sheet.parts {
            let by_mitake = [
                Part::Yuki,
                Part::Katahaba,
                Part::Sodehaba,
                Part::Sodetake,
                Part::Sodetsuke,
                Part::Erishita,
                Part::Okumisagari,
            ];
            let by_back = [Part::Maehaba, Part::Okumihaba, Part::Aizumahaba];
            if matches!(part, Part::Mitake | Part::Ushirohaba)
                || (mitake.is_none() && by_mitake.contains(part))
                || (back.is_none() && by_back.contains(part))
            {
                continue;
            }
            judged += 1;
            let value = whole.part(*part);
            let (from, to) = value.interval_90();
            let missed = (low - value.value_cm())
                .max(value.value_cm() - high)
                .max(0.0);
            missed_in_all += missed;
            within_sd += usize::from(missed <= value.sd_cm());
            // A published range is met when the interval reaches it; 0.25 cm for figures
            // rounded to half centimetres.
            if to + 0.25 < *low || high + 0.25 < from {
                writeln!(
                    report,
                    "{} ({}) {}: {:.1} ± {:.1} gives {from:.1} to {to:.1} against {low:.1} to \
                     {high:.1}",
                    sheet.id,
                    sheet.source.code,
                    part.key(),
                    value.value_cm(),
                    value.sd_cm(),
                )
                .expect("a String takes all text");
            }
        }
    }
    let mean = missed_in_all / judged as f64;
    println!(
        "{judged} published figures, {within_sd} within one deviation, missed by {mean:.2} cm \
         on average"
    );
    assert!(report.is_empty(), "outside the 90 % interval:\n{report}");
    assert!(judged >= 80, "only {judged} figures were judged");
    // Two thirds would be the share of a normal error; the sheets are ordinary ones, from which
    // the rules were drawn, so more must lie there.
    assert!(
        3 * within_sd >= 2 * judged,
        "{within_sd} of {judged} within one deviation"
    );
    // Wide intervals alone must not pass: on average within the rounding to whole centimetres.
    assert!(mean <= 0.5, "missed by {mean} cm on average");
}
