//! Stores of every released version open and are read as they were.
//!
//! `released/NNNN.sql` is a store of version NNNN as the program of its time left it.

#![allow(clippy::unwrap_used, missing_docs, dead_code)]

mod studio;

use std::fs;
use std::path::{Path, PathBuf};

use rusqlite::Connection;
use studio::NOW;
use sunbu_core::body::BodyMeasure;
use sunbu_core::case::CaseFile;
use sunbu_core::dressing::{Decision, Occasion};
use sunbu_core::fault::{Fault, Ticks};
use sunbu_core::garment::Part;
use sunbu_core::measure::{Length, Unit};
use sunbu_core::photo::{Mark, View};
use sunbu_store::{Shown, Store};

fn released() -> Vec<(i64, PathBuf)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/released");
    let mut files: Vec<(i64, PathBuf)> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .map(|path| {
            (
                path.file_stem().unwrap().to_str().unwrap().parse().unwrap(),
                path,
            )
        })
        .collect();
    files.sort();
    files
}

/// The released store as a file again.
fn revived(dump: &Path, at: &Path) {
    let connection = Connection::open(at).unwrap();
    connection
        .execute_batch(&fs::read_to_string(dump).unwrap())
        .unwrap();
}

/// Everything the database says of its tables, with the words and comments they were made by.
fn schema(path: &Path) -> Vec<String> {
    let connection = Connection::open(path).unwrap();
    let mut statement = connection
        .prepare("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name")
        .unwrap();
    statement
        .query_map([], |row| row.get(0))
        .unwrap()
        .map(Result::unwrap)
        .collect()
}

#[test]
fn there_is_a_store_of_every_version() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("new.db");
    drop(Store::open(&path, NOW).unwrap());
    let connection = Connection::open(&path).unwrap();
    let newest: i64 = connection
        .pragma_query_value(None, "user_version", |row| row.get(0))
        .unwrap();
    let versions: Vec<i64> = released().into_iter().map(|(version, _)| version).collect();
    assert_eq!(versions, (1..=newest).collect::<Vec<_>>());
}

#[test]
fn a_released_store_has_the_tables_of_a_new_one_after_it_was_opened() {
    let directory = tempfile::tempdir().unwrap();
    let new = directory.path().join("new.db");
    drop(Store::open(&new, NOW).unwrap());
    for (version, dump) in released() {
        let old = directory.path().join(format!("{version}.db"));
        revived(&dump, &old);
        drop(Store::open(&old, NOW).unwrap());
        // Also finds a migration that was changed after its release.
        assert_eq!(schema(&old), schema(&new), "version {version}");
    }
}

#[test]
fn what_was_kept_in_every_version_is_read_as_it_was() {
    let directory = tempfile::tempdir().unwrap();
    for (version, dump) in released() {
        let path = directory.path().join(format!("{version}.db"));
        revived(&dump, &path);
        let store = Store::open(&path, NOW).unwrap();
        let people = store.people().unwrap().read;
        let garments = store.garments().unwrap().read;
        let names: Vec<(&str, i64)> = people
            .iter()
            .map(|kept| (kept.value.name.as_str(), kept.revision))
            .collect();
        assert_eq!(names, [("Goro", 1), ("Mori Sayo", 1), ("田辺 千代", 2)]);
        let chiyo = &people[2].value;
        assert_eq!(chiyo.note, "left shoulder lower\nshort steps");
        let hip = chiyo.measures[&BodyMeasure::HipGirth];
        assert_eq!(
            (hip.length, hip.sd),
            (Length::from_mm(910), Some(Length::from_mm(5)))
        );
        let waist = chiyo.measures[&BodyMeasure::WaistHeight];
        assert_eq!(
            (waist.length, waist.unit),
            (Length::from_kujira_bu(252), Unit::KujiraShaku)
        );
        let yuki = chiyo.measures[&BodyMeasure::SpineToWrist];
        assert_eq!(
            (yuki.length, yuki.unit),
            (Length::from_kane_bu(226), Unit::KaneShaku)
        );
        assert_eq!(garments.len(), 1);
        let mitake = garments[0].value.sheet.parts[&Part::Mitake];
        assert_eq!(mitake.length, Length::from_kujira_bu(415));
        assert_eq!(store.dresser().unwrap().unwrap().value.name, "Mori Sayo");
        let own = store.own_standard().unwrap();
        let name = own.value.map(|standard| standard.name);
        // The first version had no revision and begins at the first; the second kept one.
        let revision = if version == 1 { 1 } else { 3 };
        assert_eq!(
            (own.revision, name.as_deref()),
            (revision, Some("house of the three pines"))
        );
        let plans = store.plans().unwrap();
        let titles: Vec<&str> = plans.iter().map(|row| row.title.as_str()).collect();
        assert_eq!(titles, ["夏祭り", "Tea in May"]);
        assert_eq!(
            (plans[0].garment_id, plans[0].garment.as_str()),
            (None, "藍の浴衣")
        );
        let tea = store.plan(plans[1].id).unwrap();
        let case = tea.case.unwrap();
        assert_eq!(tea.row.made_at, "2001-02-03T04:05:06+09:00");
        assert_eq!((case.occasion, &case.person), (Occasion::Formal, chiyo));
        assert_eq!(
            case.locks[&Decision::NapeDrop],
            16.0 / 3.0,
            "to the last digit"
        );
        assert_eq!(tea.query, "occasion=formal&nape_drop=5.333");
        let checks = store.checks().unwrap();
        let titles: Vec<&str> = checks.iter().map(|row| row.title.as_str()).collect();
        if version < 3 {
            assert!(titles.is_empty(), "{titles:?}");
            continue;
        }
        assert_eq!(titles, ["生徒 四", "Tea in May"]);
        let check = store.check(checks[1].id).unwrap();
        assert_eq!(check.row.plan_id, Some(plans[1].id));
        let as_planned = CaseFile {
            dresser: None,
            ..case
        };
        assert_eq!(check.shown, Ok(Shown::Planned(Box::new(as_planned))));
        let ticks = Ticks::from([Fault::HemUneven, Fault::FoldBulky]);
        assert_eq!((check.ticks.revision, check.ticks.value), (2, ticks));
        let front = &store.photos(check.row.id).unwrap()[0];
        assert_eq!((front.revision, front.view), (4, View::Front));
        let marking = front.marking.as_ref().unwrap();
        assert_eq!(marking.shot.marks[&Mark::HemLeft].at, [40.25, 86.0]);
        assert_eq!(marking.lens_height, "140 cm");
        let picture = store.picture(check.row.id, front.id).unwrap();
        assert_eq!(picture.len(), 12);
        // From the fourth version on a face can be hidden; before, nothing was.
        let hidden = front.hidden.map(|hidden| hidden.shares());
        let wanted = (version >= 4).then_some([0.25, 0.125, 0.25, 0.125]);
        assert_eq!(hidden, wanted, "version {version}");
        let Ok(Shown::Stranger(student)) = store.check(checks[0].id).unwrap().shown else {
            panic!("a stranger was checked");
        };
        let stature = student.stature.map(|reading| reading.length);
        assert_eq!(stature, Some(Length::from_kujira_bu(415)));
    }
}
