//! What no longer reads closes nothing but itself, and can be mended or erased.

#![allow(clippy::unwrap_used, missing_docs, dead_code)]

mod studio;

use std::fs;
use std::path::Path;

use rusqlite::Connection;
use studio::{NOW, case, garments, people};
use sunbu_store::{Entry, NewPlan, Store, StoreError};

/// A store with three people and three garments, and the second of each put beyond its limits by
/// another program.
fn with_unread(path: &Path) -> Store {
    let mut store = Store::open(path, NOW).unwrap();
    store
        .add_all(&people()[..3], &garments()[..3], NOW)
        .unwrap();
    changed(
        path,
        "UPDATE person_field SET text = '999 cm' WHERE person_id = 2 AND field = 'stature';
         UPDATE piece_field SET text = 'of gold' WHERE piece_id = 2 AND field = 'mitake';",
    );
    store
}

fn changed(path: &Path, sql: &str) {
    Connection::open(path).unwrap().execute_batch(sql).unwrap();
}

fn word_in_files(directory: &Path, word: &str) -> bool {
    fs::read_dir(directory).unwrap().any(|entry| {
        let bytes = fs::read(entry.unwrap().path()).unwrap();
        bytes
            .windows(word.len())
            .any(|part| part == word.as_bytes())
    })
}

#[test]
fn an_entry_that_does_not_read_stands_beside_the_others_as_it_is_stored() {
    let directory = tempfile::tempdir().unwrap();
    let store = with_unread(&directory.path().join("studio.db"));
    let (listed, hung) = (store.people().unwrap(), store.garments().unwrap());
    let ids: Vec<i64> = listed.read.iter().map(|kept| kept.id).collect();
    assert_eq!((ids.len(), ids.contains(&2)), (2, false), "{ids:?}");
    assert_eq!((hung.len(), hung.read.len(), hung.unread.len()), (3, 2, 1));
    for (unread, entry, name, field, text) in [
        (
            &listed.unread[0],
            Entry::Person,
            &people()[1].name,
            "stature",
            "999 cm",
        ),
        (
            &hung.unread[0],
            Entry::Garment,
            &garments()[1].name,
            "mitake",
            "of gold",
        ),
    ] {
        assert_eq!((unread.entry, unread.id, unread.revision), (entry, 2, 1));
        assert_eq!(unread.name(), name);
        assert_eq!(unread.fields[field], text);
        let places: Vec<&str> = unread.problems.iter().map(|p| p.place.as_str()).collect();
        assert_eq!(places, [field]);
    }
    let Err(StoreError::Unreadable(alone)) = store.person(2) else {
        panic!("it reads");
    };
    assert_eq!(*alone, listed.unread[0]);
}

#[test]
fn a_mended_entry_is_saved_over_the_one_that_does_not_read() {
    let directory = tempfile::tempdir().unwrap();
    let mut store = with_unread(&directory.path().join("studio.db"));
    let mended = people().remove(1);
    store.save_person(2, 1, &mended, NOW).unwrap();
    let kept = store.person(2).unwrap();
    assert_eq!((kept.revision, kept.value), (2, mended));
    assert!(store.people().unwrap().unread.is_empty());
}

#[test]
fn bytes_that_are_no_text_hide_nothing_beside_them() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let store = with_unread(&path);
    changed(
        &path,
        "UPDATE person SET sex = CAST(x'ff' AS TEXT) WHERE id = 3;
         UPDATE person_field SET text = CAST(x'fe31' AS TEXT) WHERE person_id = 1
             AND field = 'stature';",
    );
    let listed = store.people().unwrap();
    let mut ids: Vec<i64> = listed.unread.iter().map(|unread| unread.id).collect();
    ids.sort_unstable();
    assert_eq!((listed.read.len(), ids), (0, vec![1, 2, 3]));
}

#[test]
fn a_dresser_that_does_not_read_can_still_be_named_and_taken_back() {
    let directory = tempfile::tempdir().unwrap();
    let mut store = with_unread(&directory.path().join("studio.db"));
    store.set_dresser(Some(2)).unwrap();
    let dresser = store.dresser();
    assert!(
        matches!(&dresser, Err(StoreError::Unreadable(unread)) if unread.id == 2),
        "{dresser:?}"
    );
    store.set_dresser(None).unwrap();
    assert_eq!(store.dresser().unwrap(), None);
}

#[test]
fn erasing_reads_nothing_of_what_it_erases() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut store = with_unread(&path);
    let word = "Zzyxomachia";
    changed(
        &path,
        &format!(
            "UPDATE person SET note = '{word}', sex = CAST(x'ff' AS TEXT) WHERE id = 2;
             UPDATE piece SET note = '{word}' WHERE id = 2;"
        ),
    );
    assert!(word_in_files(directory.path(), word));
    store.erase_person(2).unwrap();
    store.erase_garment(2).unwrap();
    assert!(!word_in_files(directory.path(), word), "{word} is left");
    assert_eq!(
        (
            store.people().unwrap().len(),
            store.garments().unwrap().len()
        ),
        (2, 2)
    );
    assert!(store.people().unwrap().unread.is_empty());
}

#[test]
fn a_dressers_measures_leave_the_plans_of_others_whether_or_not_those_read() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut store = Store::open(&path, NOW).unwrap();
    let (everyone, garment) = (people(), garments().remove(0));
    let mut dresser = everyone[1].clone();
    dresser.name = "Zzyxomachia".into();
    let hers = store.add_person(&everyone[0], NOW).unwrap();
    let by = store.add_person(&dresser, NOW).unwrap();
    let piece = store.add_garment(&garment, NOW).unwrap();
    let made = case(&everyone[0], &garment, Some(dresser));
    let plan = NewPlan {
        ids: (hers, piece),
        dresser: Some(by),
        title: "Tea in May",
        case: &made,
        query: "occasion=formal",
    };
    let ids: Vec<i64> = (0..4)
        .map(|_| store.add_plan(&plan, NOW).unwrap())
        .collect();
    // One that reads, one for an occasion that nobody knows, one that is no TOML, one no text.
    changed(
        &path,
        &format!(
            "UPDATE plan SET case_toml = replace(case_toml, 'occasion = \"', 'occasion = \"no_')
                 WHERE id = {};
             UPDATE plan SET case_toml = case_toml || '[[[' WHERE id = {};
             UPDATE plan SET case_toml = CAST(x'ff' AS TEXT) || case_toml WHERE id = {};",
            ids[1], ids[2], ids[3]
        ),
    );
    let reads = |store: &Store| {
        let plan = |id: &i64| store.plan(*id).unwrap().case.is_ok();
        ids.iter().map(plan).collect::<Vec<bool>>()
    };
    assert_eq!(reads(&store), [true, false, false, false]);
    store.erase_person(by).unwrap();
    assert!(!word_in_files(directory.path(), "Zzyxomachia"));
    assert_eq!(reads(&store), [true, false, false, false]);
    let rows = store.plans().unwrap();
    assert_eq!(rows.len(), 4, "every plan is still listed");
    assert!(rows.iter().all(|row| row.title == "Tea in May"));
    // What is known to be the other person's own stays where it can be told apart.
    let stored = |id: i64| -> String {
        let connection = Connection::open(&path).unwrap();
        let sql = "SELECT case_toml FROM plan WHERE id = ?1";
        connection.query_row(sql, [id], |row| row.get(0)).unwrap()
    };
    let partly = stored(ids[1]);
    assert!(
        partly.contains(&everyone[0].name) && partly.contains("no_"),
        "{partly}"
    );
    assert_eq!(
        (stored(ids[2]), stored(ids[3])),
        (String::new(), String::new())
    );
}

#[test]
fn a_plan_that_does_not_read_is_listed_looked_at_and_erased() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut store = Store::open(&path, NOW).unwrap();
    let (person, garment) = (people().remove(0), garments().remove(0));
    let ids = (
        store.add_person(&person, NOW).unwrap(),
        store.add_garment(&garment, NOW).unwrap(),
    );
    let made = case(&person, &garment, None);
    let plan = NewPlan {
        ids,
        dresser: None,
        title: "Tea in May",
        case: &made,
        query: "occasion=formal",
    };
    let id = store.add_plan(&plan, NOW).unwrap();
    changed(
        &path,
        "UPDATE plan SET occasion = 'parade', case_toml = 'occasion = \"parade\"'",
    );
    let rows = store.plans().unwrap();
    assert_eq!(
        (rows[0].title.as_str(), rows[0].occasion),
        ("Tea in May", None)
    );
    let kept = store.plan(id).unwrap();
    assert_eq!(
        (kept.query.as_str(), kept.row.person_id),
        ("occasion=formal", Some(ids.0))
    );
    let problems = kept.case.unwrap_err();
    assert!(
        problems.iter().any(|p| p.typed.contains("parade")),
        "{problems:?}"
    );
    store.erase_plan(id).unwrap();
    assert!(store.plans().unwrap().is_empty());
}
