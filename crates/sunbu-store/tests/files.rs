//! Which files are opened, and which copies are believed.

#![allow(clippy::unwrap_used, missing_docs, dead_code)]

mod studio;

use std::fs;
use std::path::Path;

use studio::{NOW, people};
use sunbu_store::{Store, StoreError, restore};

fn filled(path: &Path) -> Store {
    let mut store = Store::open(path, NOW).unwrap();
    for person in people() {
        store.add_person(&person, NOW).unwrap();
    }
    store
}

#[test]
fn a_store_of_a_newer_version_is_refused_and_left_as_it_was() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    drop(filled(&path));
    let other = rusqlite::Connection::open(&path).unwrap();
    other.pragma_update(None, "user_version", 99).unwrap();
    drop(other);
    let before = fs::read(&path).unwrap();
    let refused = Store::open(&path, NOW).unwrap_err();
    assert!(
        matches!(refused, StoreError::Newer { found: 99, .. }),
        "{refused}"
    );
    assert!(refused.to_string().contains("version 99"), "{refused}");
    assert_eq!(fs::read(&path).unwrap(), before);
}

#[test]
fn a_file_that_is_something_else_is_refused_and_left_as_it_was() {
    let directory = tempfile::tempdir().unwrap();
    let database = directory.path().join("other.db");
    let other = rusqlite::Connection::open(&database).unwrap();
    other
        .execute_batch("CREATE TABLE recipe (name TEXT)")
        .unwrap();
    drop(other);
    let letter = directory.path().join("letter.txt");
    fs::write(&letter, "Thank you for the lesson. ".repeat(200)).unwrap();
    for path in [database, letter] {
        let before = fs::read(&path).unwrap();
        let refused = Store::open(&path, NOW).unwrap_err();
        assert!(matches!(refused, StoreError::NotOurs { .. }), "{refused}");
        assert_eq!(fs::read(&path).unwrap(), before, "{}", path.display());
    }
}

#[test]
fn a_backup_holds_what_the_store_holds_and_can_be_restored() {
    let directory = tempfile::tempdir().unwrap();
    let (path, copy) = (
        directory.path().join("studio.db"),
        directory.path().join("copy.db"),
    );
    let mut store = filled(&path);
    let before = store.people().unwrap();
    let counts = store.backup(&copy).unwrap();
    assert_eq!(counts.people, i64::try_from(before.len()).unwrap());
    let again = store.backup(&copy);
    assert!(matches!(again, Err(StoreError::Exists(_))), "{again:?}");
    store.erase_person(before.read[0].id).unwrap();
    drop(store);
    assert_eq!(restore(&copy, &path).unwrap(), counts);
    assert_eq!(Store::open(&path, NOW).unwrap().people().unwrap(), before);
}

#[test]
fn a_store_that_is_open_is_not_replaced() {
    let directory = tempfile::tempdir().unwrap();
    let (path, copy) = (
        directory.path().join("studio.db"),
        directory.path().join("copy.db"),
    );
    let store = filled(&path);
    store.backup(&copy).unwrap();
    let refused = restore(&copy, &path);
    assert!(matches!(refused, Err(StoreError::InUse)), "{refused:?}");
    assert_eq!(store.people().unwrap().len(), people().len());
}

#[test]
fn a_backup_cut_short_or_overwritten_is_refused_and_the_store_stays() {
    let directory = tempfile::tempdir().unwrap();
    let (path, copy) = (
        directory.path().join("studio.db"),
        directory.path().join("copy.db"),
    );
    let store = filled(&path);
    let before = store.people().unwrap();
    store.backup(&copy).unwrap();
    drop(store);
    let whole = fs::read(&copy).unwrap();
    for length in [whole.len() - 4096, whole.len() / 2, 5000, 50, 0] {
        fs::write(&copy, &whole[..length]).unwrap();
        let refused = restore(&copy, &path);
        assert!(
            refused.is_err(),
            "cut to {length} of {} bytes: {refused:?}",
            whole.len()
        );
    }
    let mut scratched = whole.clone();
    let (from, to) = (4096, whole.len() - 4096);
    scratched[from..to].fill(0xA5);
    fs::write(&copy, &scratched).unwrap();
    assert!(restore(&copy, &path).is_err(), "overwritten in the middle");
    assert_eq!(Store::open(&path, NOW).unwrap().people().unwrap(), before);
}
