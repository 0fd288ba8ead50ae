//! What is erased is gone: from the store, and from the bytes of its files.

#![allow(clippy::unwrap_used, missing_docs, dead_code)]

mod studio;

use std::fs;
use std::path::Path;

use studio::{NOW, case, garments, people};
use sunbu_core::body::BodyMeasure;
use sunbu_core::case::CaseFile;
use sunbu_core::measure::{Length, Reading, Unit};
use sunbu_core::photo::{Mark, Marking, Placed, Trust, View};
use sunbu_store::{NewCheck, NewPhoto, NewPlan, Store, StoreError};

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
    let check = with_photo(&mut store, id, &own);
    let by_others = with_photo(&mut store, other, &by_her);
    let words = ["Zzyxomachia", "Quibberwocky", "Wumbletophoto", "4242.125"];
    for word in words {
        assert!(
            found_in_files(directory.path(), word) > 0,
            "{word} was never written"
        );
    }
    // As it is left by a migration.
    fs::copy(&path, directory.path().join("studio.db.version-1")).unwrap();
    assert!(store.check(check).is_ok());
    store.erase_photo(by_others, by_others).unwrap();
    store.erase_person(id).unwrap();
    for word in words {
        assert_eq!(found_in_files(directory.path(), word), 0, "{word} is left");
    }
    assert!(matches!(
        store.check(check),
        Err(StoreError::NotFound { .. })
    ));
    assert!(store.check(by_others).is_ok(), "the other's check stays");
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

/// A check of somebody with a photo, whose pixels and marks can be found again; its number, which is
/// that of the photo, too.
fn with_photo(store: &mut Store, person: i64, case: &CaseFile) -> i64 {
    let new = NewCheck::Planned {
        person,
        plan: None,
        title: "after the rehearsal",
        case,
    };
    let check = store.add_check(&new, NOW).unwrap();
    let mut marking = Marking::new(View::Front, [3000, 4000], None);
    let jpeg = "Wumbletophoto".repeat(10_000);
    let photo = NewPhoto {
        check,
        instead_of: None,
        marking: &marking,
        jpeg: jpeg.as_bytes(),
    };
    let photo = store.add_photo(&photo, NOW).unwrap();
    let at = [1.0, 4242.125];
    let trust = Trust::Sure;
    let placed = Placed { at, trust };
    marking.shot.marks.insert(Mark::Floor, placed);
    store.save_marking((check, photo), 1, &marking).unwrap();
    assert_eq!(check, photo);
    check
}

#[test]
fn an_erased_check_leaves_no_byte_of_its_photos_and_marks() {
    let directory = tempfile::tempdir().unwrap();
    let mut store = Store::open(&directory.path().join("studio.db"), NOW).unwrap();
    let (person, garment) = (people().remove(0), garments().remove(0));
    let id = store.add_person(&person, NOW).unwrap();
    let check = with_photo(&mut store, id, &case(&person, &garment, None));
    let words = ["Wumbletophoto", "4242.125", "after the rehearsal"];
    gone_after(directory.path(), &words, || {
        store.erase_check(check).unwrap();
    });
    for again in [store.erase_check(check), store.erase_photo(check, check)] {
        assert!(
            matches!(again, Err(StoreError::NotFound { .. })),
            "{again:?}"
        );
    }
    assert!(store.person(id).is_ok());
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
