//! Bad input: every problem told at once, exit code 2, never a panic.

mod program;

use program::{Ran, example, file, run, sunbu};

/// Exit code 2, nothing on stdout, no panic, and these parts in the complaint.
fn refused(ran: &Ran, parts: &[&str]) {
    assert_eq!(ran.code, Some(2), "{ran:?}");
    assert!(ran.out.is_empty(), "{}", ran.out);
    assert!(
        !ran.err.is_empty() && !ran.err.contains("panicked"),
        "{}",
        ran.err
    );
    for part in parts {
        assert!(ran.err.contains(part), "no “{part}” in: {}", ran.err);
    }
}

/// All commands that read a case.
fn all_commands(bytes: &[u8], parts: &[&str]) {
    let (_folder, path) = file(bytes);
    for command in ["plan", "rank", "figure"] {
        refused(&sunbu(&[command, &path]), parts);
        refused(&run(&[command, "-"], bytes), parts);
    }
}

const GOOD: &str = r#"
occasion = "formal"
[person]
name = "P"
sex = "women"
stature = 160
hip_girth = 90
[garment]
name = "G"
kind = "nagagi"
mitake_from = "shoulder"
mitake = 160
ushirohaba = 29
"#;

#[test]
fn the_case_that_the_others_spoil_is_good() {
    let (_folder, path) = file(GOOD.as_bytes());
    let ran = sunbu(&["plan", &path]);
    assert!(matches!(ran.code, Some(0 | 1)), "{}", ran.err);
}

#[test]
fn a_file_that_is_not_there_and_a_folder_are_named() {
    let folder = tempfile::tempdir().expect("a folder");
    let missing = folder.path().join("nothing.toml");
    let missing = missing.to_str().expect("UTF-8");
    refused(&sunbu(&["plan", missing]), &[missing, "no such file"]);
    let folder = folder.path().to_str().expect("UTF-8");
    refused(&sunbu(&["rank", folder]), &[folder, "is a folder"]);
}

#[test]
fn bytes_that_are_no_text_are_refused() {
    let garbage: Vec<u8> = (0..=255).cycle().take(5000).collect();
    all_commands(&garbage, &["no UTF-8 text"]);
    all_commands(b"\x7fELF\x02\x01\x01\0\0\0\0", &["no text at all"]);
    // Müller in Latin-1.
    all_commands(b"[person]\nname = \"M\xfcller\"\n", &["another encoding"]);
    let utf16: Vec<u8> = [0xfeff_u16]
        .into_iter()
        .chain(GOOD.encode_utf16())
        .flat_map(u16::to_le_bytes)
        .collect();
    all_commands(&utf16, &["UTF-16"]);
    // 着物 in Shift JIS.
    all_commands(
        b"[person]\nname = \"\x92\x85\x95\xa8\"\n",
        &["another encoding"],
    );
}

#[test]
fn ten_megabytes_are_refused_without_being_worked_through() {
    let started = std::time::Instant::now();
    all_commands(&vec![b'a'; 10 * 1024 * 1024], &["at most 4 MB"]);
    all_commands(
        "stature = 1\n".repeat(900_000).as_bytes(),
        &["at most 4 MB"],
    );
    // Twelve runs; chosen far above what a busy machine needs to read ten megabytes.
    assert!(started.elapsed().as_secs() < 60, "{:?}", started.elapsed());
}

#[test]
fn numbers_that_are_none_or_far_off_keep_what_was_typed() {
    for (typed, part) in [
        ("nan", "cannot be read as a length"),
        ("inf", "cannot be read as a length"),
        ("-160", "below zero"),
        ("1e300", "too long to be a length"),
        ("99999999999999999999999999", "longer than 100 m"),
        ("1600", "outside the allowed"),
        ("\"160 cm 3 shaku\"", "mixes cm and shaku"),
        ("\"4尺 5 ft\"", "mixes shaku and ft"),
        ("\"tall\"", "cannot be read as a length"),
        ("true", "does not belong here"),
        ("[160]", "does not belong here"),
        ("{ value = 160, sd = -1 }", "below zero"),
        ("{ value = 160, sd = nan }", "cannot be read as a length"),
        ("1979-05-27", "does not belong here"),
    ] {
        let bad = GOOD.replace("stature = 160", &format!("stature = {typed}"));
        all_commands(bad.as_bytes(), &["person.stature", part]);
    }
}

#[test]
fn an_empty_body_an_empty_file_and_unknown_keys_are_told() {
    all_commands(b"", &["person", "garment"]);
    all_commands(
        b"[person]\n[garment]\n",
        &["person.name", "person.stature", "garment.mitake"],
    );
    let unknown = GOOD.replace("[garment]", "height = 160\n[garment]\ncolour = 3");
    all_commands(
        unknown.as_bytes(),
        &["person.height", "garment.colour", "the fields are"],
    );
    all_commands(format!("{GOOD}[extra]\n").as_bytes(), &["extra"]);
    all_commands(b"[person\nname = ", &["person"]);
}

#[test]
fn every_problem_of_a_case_is_told_in_one_go() {
    let bad = GOOD
        .replace("\"formal\"", "\"party\"")
        .replace("\"women\"", "\"girl\"")
        .replace("hip_girth = 90", "hip_girth = 9")
        .replace("\"nagagi\"", "\"haori\"")
        .replace("mitake = 160", "mitake = 16\nyuki = \"1 ell\"");
    all_commands(
        bad.as_bytes(),
        &[
            "“party”",
            "indoors, formal",
            "“girl”",
            "“9”",
            "“haori”",
            "“16”",
            "“ell”",
        ],
    );
}

#[test]
fn wrong_arguments_are_told_with_the_way_to_the_help() {
    for arguments in [
        &["plan"][..],
        &["fly"],
        &["plan", "x", "--wings"],
        &["plan", "x", "--lang", "de"],
        &["plan", "x", "--set"],
        &["figure", "x", "--view", "side"],
    ] {
        refused(&sunbu(arguments), &["sunbu help"]);
    }
    refused(
        &sunbu(&["schema", "dress"]),
        &["dress", "plan, rank, check, marks, problems"],
    );
    refused(&sunbu(&["help", "flying"]), &["flying", "measures"]);
    refused(&sunbu::<&str>(&[]), &["Commands"]);
    let path = example("annotated.toml");
    let path = path.to_str().expect("UTF-8");
    refused(
        &sunbu(&["plan", path, "--occasion", "party"]),
        &["party", "indoors"],
    );
    refused(
        &sunbu(&[
            "plan",
            path,
            "--set",
            "nape",
            "--set",
            "wings=3",
            "--set",
            "nape_drop=300",
        ]),
        &["“nape”", "--set wings", "“300”", "0 to 30 cm"],
    );
    let (_folder, standard) = file(b"name = 'x'");
    refused(
        &sunbu(&["plan", path, "--standard", &standard]),
        &[&standard, "cannot be read"],
    );
}

#[test]
fn a_complaint_is_in_the_language_that_was_asked_for() {
    let (_folder, path) = file(GOOD.replace("hip_girth = 90", "hip_girth = 9").as_bytes());
    let ran = sunbu(&["plan", &path, "--lang", "ja"]);
    refused(&ran, &["person.hip_girth", "メジャー"]);
    let ran = sunbu(&["plan", &path, "--lang", "ja", "--wings"]);
    refused(&ran, &["オプション"]);
}

#[test]
fn nothing_a_file_can_hold_spoils_the_terminal() {
    let bad = GOOD.replace("\"nagagi\"", "\"\\u001b[31mred\\u0007\"");
    let (_folder, path) = file(bad.as_bytes());
    let ran = sunbu(&["plan", &path]);
    refused(&ran, &["red"]);
    assert!(!ran.err.contains(['\u{1b}', '\u{7}']), "{:?}", ran.err);
}

#[test]
fn a_length_without_its_quotes_is_shown_with_them_in_the_readers_language() {
    let slip = GOOD.replace(
        "stature = 160",
        "stature = 160\nhip_bone_height = 4尺 # sewn",
    );
    let better = "hip_bone_height = \"4尺\"\n";
    all_commands(
        slip.as_bytes(),
        &[
            "line 7: “hip_bone_height = 4尺 # sewn”",
            "in quotes",
            better,
        ],
    );
    let (_folder, path) = file(slip.as_bytes());
    let ran = sunbu(&["plan", &path, "--lang", "ja"]);
    refused(&ran, &["7行目：", "引用符で囲んで", better]);
    assert!(!ran.err.contains("literal"), "{}", ran.err);
    // Written so, it is read.
    let mended = slip.replace("4尺", "\"2尺4寸\"");
    let (_folder, path) = file(mended.as_bytes());
    let ran = sunbu(&["plan", &path]);
    assert!(matches!(ran.code, Some(0 | 1)), "{}", ran.err);
    let twice = GOOD.replace("stature = 160", "stature = 160\nstature = 161");
    all_commands(
        twice.as_bytes(),
        &["“stature = 161” is given a second time"],
    );
}

#[test]
fn a_reason_of_the_reader_is_not_cut_off() {
    let escaped = GOOD.replace("\"P\"", "\"\\q\"");
    let (_folder, path) = file(escaped.as_bytes());
    let ran = sunbu(&["plan", &path]);
    refused(&ran, &["line 4", "missing escaped value", "`U`"]);
    assert!(!ran.err.contains('…'), "{}", ran.err);
}

#[test]
fn a_slip_in_a_standard_is_told_in_one_clean_line() {
    let path = example("annotated.toml");
    let path = path.to_str().expect("UTF-8");
    let good = sunbu(&["help", "standard"]).out;
    let slip = good.replacen("low = 0", "low = 4尺", 1);
    let line = 1 + slip
        .lines()
        .position(|l| l.contains("4尺"))
        .expect("the slip");
    let (_folder, standard) = file(slip.as_bytes());
    for (lang, said) in [
        ("en", format!("line {line}, “")),
        ("ja", format!("{line}行目「")),
    ] {
        let ran = sunbu(&["plan", path, "--standard", &standard, "--lang", lang]);
        refused(&ran, &[&standard, &said, "low = 4尺"]);
        let raw = ["TOML parse error", " | ", "^"];
        assert!(
            !raw.iter().any(|part| ran.err.contains(part)),
            "{}",
            ran.err
        );
        assert_eq!(ran.err.lines().count(), 1, "{}", ran.err);
    }
    let (_folder, standard) = file("=".repeat(100_000).as_bytes());
    let ran = sunbu(&["plan", path, "--standard", &standard]);
    refused(&ran, &["line 1, “===="]);
    assert!(ran.err.len() < 1000, "{} bytes", ran.err.len());
}
