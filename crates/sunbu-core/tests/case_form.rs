//! The same entries through a form: fields by name, each text as typed.

#[path = "support/whole_case.rs"]
mod whole_case;

use sunbu_core::case::{CaseFile, Fields, Person, Piece, read_locks};
use sunbu_core::dressing::Decision;
use sunbu_core::measure::{Length, Script};
use sunbu_core::problem::Fault;
use whole_case::{WHOLE, faults};

fn fields(pairs: &[(&str, &str)]) -> Fields {
    pairs
        .iter()
        .map(|(name, text)| ((*name).to_owned(), (*text).to_owned()))
        .collect()
}

#[test]
fn a_form_is_read_as_a_file_is() {
    let form = fields(&[
        ("name", " Tanabe Chiyo "),
        ("sex", "women"),
        ("stature", "１５８"),
        ("hip_girth", "91 cm"),
        ("hip_girth.sd", "5 mm"),
        ("waist_height", "95.5"),
        ("spine_to_wrist", "一尺八寸"),
        ("bust_girth", ""),
        ("bust_girth.sd", " "),
        ("note", "left shoulder lower"),
    ]);
    let person = Person::from_fields(&form).unwrap();
    assert_eq!(person, CaseFile::parse(WHOLE).unwrap().person);
    for script in [Script::Latin, Script::Kanji] {
        let again = person.to_fields_in(script);
        assert_eq!(Person::from_fields(&again).unwrap(), person, "{again:#?}");
    }
    person.check().unwrap();
}

#[test]
fn a_wrong_form_comes_back_with_every_text_it_held() {
    let form = fields(&[
        ("name", "Chiyo"),
        ("sex", "women"),
        ("stature", "1尺"),
        ("hip_girth", "９１ cm"),
        ("hip_girth.sd", "-1"),
        ("waist_height", "96"),
        ("hip_height", "3尺"),
        ("bust_girth.sd", "1"),
        ("revision", "3"),
    ]);
    let found = Person::from_fields(&form).unwrap_err();
    assert_eq!(
        faults(&found),
        [
            ("bust_girth", "problem-missing".into()),
            ("hip_girth.sd", "problem-unreadable".into()),
            ("revision", "problem-unknown-field".into()),
            ("stature", "problem-out-of-range".into()),
            ("hip_height", "problem-contradiction-heights-order".into()),
        ]
    );
    for problem in &found {
        let typed = form.get(&problem.place).map_or("", String::as_str);
        assert_eq!(problem.typed, typed, "{}", problem.place);
    }
}

#[test]
fn a_piece_form_needs_kind_and_datum_and_is_checked_whole() {
    let good = fields(&[
        ("name", "Grey"),
        ("kind", "nagagi"),
        ("mitake_from", "shoulder"),
        ("mitake", "4尺2寸"),
        ("maehaba", "6寸"),
    ]);
    let piece = Piece::from_fields(&good).unwrap();
    assert_eq!(Piece::from_fields(&piece.to_fields()).unwrap(), piece);
    assert_eq!(
        Piece::from_fields(&piece.to_fields_in(Script::Kanji)).unwrap(),
        piece
    );
    let mut bad = good;
    bad.extend(fields(&[
        ("kind", "coat"),
        ("yuki", "70"),
        ("katahaba", "30"),
        ("sodehaba", "33"),
    ]));
    let found = Piece::from_fields(&bad).unwrap_err();
    assert!(
        found.iter().any(|p| p.place == "kind" && p.typed == "coat"),
        "{found:#?}"
    );
    let Some(split) = found
        .iter()
        .find(|p| matches!(p.fault, Fault::Contradiction { .. }))
    else {
        panic!("yuki is not katahaba and sodehaba: {found:#?}")
    };
    assert_eq!(split.typed, *bad.get(&split.place).unwrap());
}

#[test]
fn locks_take_lengths_below_zero_and_keep_planned_values_to_the_last_digit() {
    let planned = 1.0 / 3.0;
    let form = fields(&[
        ("back_seam_hip", "-3寸"),
        ("nape_drop", &planned.to_string()),
        ("tare_length", ""),
    ]);
    let locks = read_locks(&form).unwrap();
    assert_eq!(
        locks[&Decision::BackSeamHip],
        Length::from_kujira_bu(-30).cm()
    );
    assert_eq!(locks[&Decision::NapeDrop], planned);
    assert_eq!(locks.len(), 2);
    let found = read_locks(&fields(&[
        ("nape_drop", "nan"),
        ("hip_padding", "-1"),
        ("obi", "3"),
    ]));
    assert_eq!(
        faults(&found.unwrap_err()),
        [
            ("hip_padding", "problem-out-of-range".into()),
            ("nape_drop", "problem-unreadable".into()),
            ("obi", "problem-unknown-field".into()),
        ]
    );
}
