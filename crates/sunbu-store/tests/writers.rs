//! Two programs on one file: nobody's save is lost without being told.

#![allow(clippy::unwrap_used, missing_docs, dead_code)]

mod studio;

use std::sync::Barrier;
use std::thread;

use studio::{NOW, people};
use sunbu_core::dressing::Standard;
use sunbu_store::{Store, StoreError};

#[test]
fn the_later_of_two_saves_is_told_and_can_look_at_both() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let (mut one, mut two) = (
        Store::open(&path, NOW).unwrap(),
        Store::open(&path, NOW).unwrap(),
    );
    let id = one.add_person(&people().remove(0), NOW).unwrap();
    let (mut hers, mut his) = (one.person(id).unwrap(), two.person(id).unwrap());
    hers.value.note = "left shoulder lower".into();
    his.value.note = "short steps".into();
    one.save_person(id, hers.revision, &hers.value, NOW)
        .unwrap();
    let late = two.save_person(id, his.revision, &his.value, NOW);
    assert!(
        matches!(late, Err(StoreError::Stale { current: 2 })),
        "{late:?}"
    );
    assert_eq!(
        two.person(id).unwrap().value,
        hers.value,
        "the other version is there to see"
    );
    two.save_person(id, 2, &his.value, NOW).unwrap();
    assert_eq!(one.person(id).unwrap().value, his.value);
    two.erase_person(id).unwrap();
    let late = one.save_person(id, 3, &hers.value, NOW);
    assert!(matches!(late, Err(StoreError::NotFound { .. })), "{late:?}");
}

#[test]
fn the_later_of_two_changes_of_the_house_rules_is_told() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let (mut one, mut two) = (
        Store::open(&path, NOW).unwrap(),
        Store::open(&path, NOW).unwrap(),
    );
    let read = two.own_standard().unwrap().revision;
    let named = |name: &str| Standard {
        name: name.into(),
        ..Standard::customary()
    };
    one.set_standard(read, &named("hers"), NOW).unwrap();
    for late in [
        two.set_standard(read, &named("his"), NOW),
        two.reset_standard(read),
    ] {
        assert!(
            matches!(late, Err(StoreError::Stale { current }) if current == read + 1),
            "{late:?}"
        );
    }
    let own = two.own_standard().unwrap();
    assert_eq!(own.value, Some(named("hers")), "the refused left no mark");
    // Taken back and set again, it is not what was read before.
    two.reset_standard(own.revision).unwrap();
    let late = one.set_standard(own.revision, &named("hers"), NOW);
    assert!(matches!(late, Err(StoreError::Stale { .. })), "{late:?}");
    assert_eq!(one.own_standard().unwrap().value, None);
}

/// Without the revision, one writer would overwrite what the other counted.
#[test]
fn writers_that_count_together_lose_nothing() {
    const EACH: usize = 100;
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let id = Store::open(&path, NOW)
        .unwrap()
        .add_person(&people().remove(0), NOW)
        .unwrap();
    let mut person = Store::open(&path, NOW).unwrap().person(id).unwrap();
    person.value.note = "0".into();
    Store::open(&path, NOW)
        .unwrap()
        .save_person(id, 1, &person.value, NOW)
        .unwrap();
    let start = Barrier::new(2);
    let count = || {
        let mut store = Store::open(&path, NOW).unwrap();
        start.wait();
        let (mut counted, mut stale) = (0, 0);
        while counted < EACH {
            let mut kept = store.person(id).unwrap();
            let next = kept.value.note.parse::<usize>().unwrap() + 1;
            kept.value.note = next.to_string();
            match store.save_person(id, kept.revision, &kept.value, NOW) {
                Ok(()) => counted += 1,
                Err(StoreError::Stale { .. }) => stale += 1,
                Err(other) => panic!("{other}"),
            }
        }
        stale
    };
    let stale = thread::scope(|scope| {
        let (one, two) = (scope.spawn(count), scope.spawn(count));
        one.join().unwrap() + two.join().unwrap()
    });
    let kept = Store::open(&path, NOW).unwrap().person(id).unwrap();
    println!(
        "{} saves by two writers, {stale} told that they were late",
        2 * EACH
    );
    assert_eq!(kept.value.note, (2 * EACH).to_string());
}

#[test]
fn a_file_held_by_another_program_is_named_as_in_use() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut store = Store::open(&path, NOW).unwrap();
    let other = rusqlite::Connection::open(&path).unwrap();
    other.execute_batch("BEGIN IMMEDIATE").unwrap();
    let refused = store.add_person(&people().remove(0), NOW).unwrap_err();
    assert!(matches!(refused, StoreError::InUse), "{refused:?}");
    assert!(refused.to_string().contains("another program"), "{refused}");
    drop(other);
    store.add_person(&people().remove(0), NOW).unwrap();
}
