//! What is erased is gone: from the store, and from the bytes of its files.

#![allow(clippy::unwrap_used, missing_docs, dead_code)]

mod studio;

use std::fs;
use std::path::Path;

use studio::{NOW, case, garments, people};
use sunbu_core::body::BodyMeasure;
use sunbu_core::measure::{Length, Reading, Unit};
use sunbu_store::{NewPlan, Store, StoreError};

/// How often the word stands in the store's files, its log among them.
fn found_in_files(directory: &Path, word: &str) -> usize {
    fs::read_dir(directory)
        .unwrap()
        .map(|entry| {
            let bytes = fs::read(entry.unwrap().path()).unwrap();
            bytes
                .windows(word.len())
                .filter(|part| *part == word.as_bytes())
                .count()
        })
        .sum()
}

#[test]
fn an_erased_person_leaves_no_byte_of_the_name_in_the_file_or_the_log() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut store = Store::open(&path, NOW).unwrap();
    let mut everyone = people();
    let (mut gone, stays) = (everyone.remove(0), everyone.remove(0));
    gone.name = "Zzyxomachia".into();
    gone.note = "Quibberwocky ".repeat(100);
    let garment = garments().remove(0);
    let id = store.add_person(&gone, NOW).unwrap();
    let other = store.add_person(&stays, NOW).unwrap();
    let piece = store.add_garment(&garment, NOW).unwrap();
    for revision in 1..=5 {
        store.save_person(id, revision, &gone, NOW).unwrap();
    }
    store.set_dresser(Some(id)).unwrap();
    let own = case(&gone, &garment, None);
    let by_her = case(&stays, &garment, Some(gone.clone()));
    store
        .add_plan(
            &NewPlan {
                ids: (id, piece),
                dresser: None,
                title: "own",
                case: &own,
                query: "",
            },
            NOW,
        )
        .unwrap();
    let kept = store
        .add_plan(
            &NewPlan {
                ids: (other, piece),
                dresser: Some(id),
                title: "hers",
                case: &by_her,
                query: "",
            },
            NOW,
        )
        .unwrap();
    for word in ["Zzyxomachia", "Quibberwocky"] {
        assert!(
            found_in_files(directory.path(), word) > 0,
            "{word} was never written"
        );
    }
    // As it is left by a migration.
    fs::copy(&path, directory.path().join("studio.db.version-1")).unwrap();
    store.erase_person(id).unwrap();
    for word in ["Zzyxomachia", "Quibberwocky"] {
        assert_eq!(found_in_files(directory.path(), word), 0, "{word} is left");
    }
    let plans = store.plans().unwrap();
    assert_eq!(plans.iter().map(|row| row.id).collect::<Vec<_>>(), [kept]);
    assert_eq!(
        store.plan(kept).unwrap().case,
        Ok(case(&stays, &garment, None))
    );
    assert!(
        found_in_files(directory.path(), &stays.name) > 0,
        "the other person stays"
    );
}

#[test]
fn an_erasing_held_up_by_a_reader_says_so_and_is_finished_by_closing_and_opening() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut store = Store::open(&path, NOW).unwrap();
    let mut gone = people().remove(0);
    gone.name = "Zzyxomachia".into();
    let id = store.add_person(&gone, NOW).unwrap();
    let reader = rusqlite::Connection::open(&path).unwrap();
    reader
        .execute_batch("BEGIN; SELECT count(*) FROM person;")
        .unwrap();
    let held = store.erase_person(id);
    assert!(matches!(held, Err(StoreError::Traces(_))), "{held:?}");
    assert!(matches!(store.person(id), Err(StoreError::NotFound { .. })));
    drop((reader, store));
    let store = Store::open(&path, NOW).unwrap();
    assert!(store.people().unwrap().is_empty());
    assert_eq!(found_in_files(directory.path(), "Zzyxomachia"), 0);
}

/// A store in a file with somebody, a garment of an unusual name and measure, and a plan of
/// another garment with an unusual title and measure; the numbers of garment and plan.
fn with_marks(path: &Path) -> (Store, i64, i64) {
    let mut store = Store::open(path, NOW).unwrap();
    let (person, mut garment) = (people().remove(0), garments().remove(0));
    let worn = garment.clone();
    garment.name = "Zzyxomachia".into();
    garment.sheet.parts.insert(
        sunbu_core::garment::Part::Mitake,
        Reading {
            length: Length::from_cm(161.2345).unwrap(),
            unit: Unit::Centimetre,
            sd: None,
        },
    );
    let gone = store.add_garment(&garment, NOW).unwrap();
    store.save_garment(gone, 1, &garment, NOW).unwrap();
    let ids = (
        store.add_person(&person, NOW).unwrap(),
        store.add_garment(&worn, NOW).unwrap(),
    );
    let mut then = case(&person, &worn, None);
    then.person.measures.insert(
        BodyMeasure::Stature,
        Reading {
            length: Length::from_cm(157.6543).unwrap(),
            unit: Unit::Centimetre,
            sd: None,
        },
    );
    let plan = NewPlan {
        ids,
        dresser: None,
        title: "Quibberwocky",
        case: &then,
        query: "occasion=formal&nape_drop=5.4321",
    };
    let plan = store.add_plan(&plan, NOW).unwrap();
    (store, gone, plan)
}

/// That every word stood in the files, and after the erasing none does.
fn gone_after(directory: &Path, words: &[&str], erasing: impl FnOnce()) {
    for word in words {
        let times = found_in_files(directory, word);
        assert!(times > 0, "{word} was never written");
    }
    erasing();
    for word in words {
        let times = found_in_files(directory, word);
        assert_eq!(times, 0, "{word} is left {times} times");
    }
}

#[test]
fn an_erased_garment_leaves_no_byte_of_its_name_and_measures() {
    let directory = tempfile::tempdir().unwrap();
    let (mut store, garment, plan) = with_marks(&directory.path().join("studio.db"));
    let words = ["Zzyxomachia", "161.23"];
    gone_after(directory.path(), &words, || {
        store.erase_garment(garment).unwrap();
    });
    let again = store.erase_garment(garment);
    assert!(
        matches!(again, Err(StoreError::NotFound { .. })),
        "{again:?}"
    );
    assert_eq!(store.plan(plan).unwrap().row.title, "Quibberwocky");
}

#[test]
fn an_erased_plan_leaves_no_byte_of_its_title_and_measures() {
    let directory = tempfile::tempdir().unwrap();
    let (mut store, garment, plan) = with_marks(&directory.path().join("studio.db"));
    let words = ["Quibberwocky", "157.65", "nape_drop=5.4321"];
    gone_after(directory.path(), &words, || store.erase_plan(plan).unwrap());
    let again = store.erase_plan(plan);
    assert!(
        matches!(again, Err(StoreError::NotFound { .. })),
        "{again:?}"
    );
    assert_eq!(store.garment(garment).unwrap().value.name, "Zzyxomachia");
}

#[test]
fn hands_go_with_the_dresser_who_gave_them_whoever_dresses_now() {
    let mut store = Store::in_memory().unwrap();
    let (everyone, garment) = (people(), garments().remove(0));
    let ids: Vec<i64> = everyone[..3]
        .iter()
        .map(|person| store.add_person(person, NOW).unwrap())
        .collect();
    let piece = store.add_garment(&garment, NOW).unwrap();
    store.set_dresser(Some(ids[1])).unwrap();
    // Made while the second dressed, kept after another window chose the third.
    let made = case(&everyone[0], &garment, Some(everyone[1].clone()));
    store.set_dresser(Some(ids[2])).unwrap();
    let plan = NewPlan {
        ids: (ids[0], piece),
        dresser: Some(ids[1]),
        title: "hers",
        case: &made,
        query: "",
    };
    let id = store.add_plan(&plan, NOW).unwrap();
    store.erase_person(ids[2]).unwrap();
    assert_eq!(store.plan(id).unwrap().case.unwrap().dresser, made.dresser);
    store.erase_person(ids[1]).unwrap();
    assert_eq!(store.plan(id).unwrap().case.unwrap().dresser, None);
    // Erased before the plan is kept, or not named at all: the measures are not taken in again.
    for dresser in [Some(ids[1]), None] {
        let late = store.add_plan(&NewPlan { dresser, ..plan }, NOW);
        assert!(
            matches!(late, Err(StoreError::NotFound { what: "dresser" })),
            "{dresser:?}: {late:?}"
        );
    }
}
