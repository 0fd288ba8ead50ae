//! Checks and their photos come back as they were, and no later save overwrites an earlier one.

#![allow(clippy::unwrap_used, missing_docs, dead_code)]

mod studio;

use std::sync::Barrier;
use std::thread;

use studio::{NOW, case, garments, people};
use sunbu_core::case::{CaseFile, Fields, Stranger};
use sunbu_core::dressing::{Decision, Locks, Occasion};
use sunbu_core::fault::{Fault, Ticks};
use sunbu_core::photo::{Hidden, Mark, Marking, Placed, Trust, TypedTape, View};
use sunbu_store::{NewCheck, NewPhoto, NewPlan, Shown, Store, StoreError};

/// A case with every decision taken, and hands that a check does not keep.
fn dressed() -> CaseFile {
    let (mut everyone, garment) = (people(), garments().remove(0));
    let (person, dresser) = (everyone.remove(0), everyone.remove(0));
    let locks: Locks = Decision::ALL
        .iter()
        .map(|&decision| (decision, sunbu_core::case::lock_range_cm(decision).0 + 0.1))
        .collect();
    CaseFile {
        locks,
        ..case(&person, &garment, Some(dresser))
    }
}

/// A store with a person, a plan of hers, and a check begun from it: the numbers of all three.
fn begun(store: &mut Store) -> (i64, i64, i64) {
    let case = dressed();
    let person = store.add_person(&case.person, NOW).unwrap();
    let dresser = store.add_person(&people().remove(1), NOW).unwrap();
    let garment = store.add_garment(&case.garments[0], NOW).unwrap();
    let plan = NewPlan {
        ids: (person, garment),
        dresser: Some(dresser),
        title: "Rehearsal",
        case: &case,
        query: "",
    };
    let plan = store.add_plan(&plan, NOW).unwrap();
    let check = NewCheck::Planned {
        person,
        plan: Some(plan),
        title: "Rehearsal",
        case: &case,
    };
    let check = store.add_check(&check, NOW).unwrap();
    (person, plan, check)
}

fn add(store: &mut Store, check: i64, view: View, jpeg: &[u8]) -> Result<i64, StoreError> {
    let marking = Marking::new(view, [300, 400], Some(0.75));
    let photo = NewPhoto {
        check,
        instead_of: None,
        marking: &marking,
        jpeg,
    };
    store.add_photo(&photo, NOW)
}

/// A photo that takes the place of another.
fn instead_of(marking: &Marking, check: i64, first: i64) -> NewPhoto<'_> {
    NewPhoto {
        check,
        instead_of: Some(first),
        marking,
        jpeg: b"second",
    }
}

/// A studio in a file, with a check that has a photo from the front: its folder, and the numbers of
/// both.
fn photographed() -> (tempfile::TempDir, Store, i64, i64) {
    let directory = tempfile::tempdir().unwrap();
    let mut store = Store::open(&directory.path().join("studio.db"), NOW).unwrap();
    let (_, _, check) = begun(&mut store);
    let first = add(&mut store, check, View::Front, b"Zzyxomachia").unwrap();
    (directory, store, check, first)
}

/// A marking with something in every field.
fn marked(view: View) -> Marking {
    let mut marking = Marking::new(view, [300, 400], Some(0.75));
    for (mark, x) in [(Mark::Floor, 150.25), (Mark::Crown, 151.0)] {
        let placed = Placed {
            at: [x, 10.0],
            trust: Trust::Unsure,
        };
        marking.shot.marks.insert(mark, placed);
        marking.moved.insert(mark);
    }
    marking.left_out.insert(Mark::HemLeft);
    marking.snapping = false;
    marking.lens_height = "4 shaku".into();
    marking.tape = Some(TypedTape {
        ends: [[1.0, 2.0], [3.0, 4.5]],
        length: "half".into(),
    });
    marking.settle();
    marking
}

#[test]
fn a_check_of_a_plan_comes_back_whole_without_the_dressers_hands() {
    let mut store = Store::in_memory().unwrap();
    let (person, plan, id) = begun(&mut store);
    let check = store.check(id).unwrap();
    let wanted = CaseFile {
        dresser: None,
        ..dressed()
    };
    assert_eq!(check.shown, Ok(Shown::Planned(Box::new(wanted))));
    assert_eq!((check.ticks.revision, check.ticks.value.len()), (1, 0));
    assert_eq!(
        (
            check.row.person_id,
            check.row.plan_id,
            check.row.views.len()
        ),
        (Some(person), Some(plan), 0)
    );
    let one = std::slice::from_ref(&check.row);
    assert_eq!(store.checks().unwrap(), one);
    assert_eq!(store.checks_of_person(person).unwrap(), one);
    assert_eq!(store.checks_of_plan(plan).unwrap(), one);
    store.erase_plan(plan).unwrap();
    let after = store.check(id).unwrap();
    assert_eq!((after.row.plan_id, after.shown), (None, check.shown));
}

#[test]
fn a_check_of_a_stranger_keeps_the_stature_as_it_was_written() {
    let mut store = Store::in_memory().unwrap();
    for stature in [Some("4 shaku 2 sun 5 bu"), None] {
        let mut fields = Fields::from([("name".to_owned(), "Student 4".to_owned())]);
        fields.extend(stature.map(|text| ("stature".to_owned(), text.to_owned())));
        let stranger = Stranger::from_fields(&fields).unwrap();
        let new = NewCheck::Stranger {
            stranger: &stranger,
            occasion: Occasion::Stage,
        };
        let id = store.add_check(&new, NOW).unwrap();
        let check = store.check(id).unwrap();
        assert_eq!(check.shown, Ok(Shown::Stranger(stranger)));
        assert_eq!(
            (check.row.occasion, check.row.title.as_str()),
            (Some(Occasion::Stage), "Student 4")
        );
    }
}

#[test]
fn a_photo_comes_back_with_every_mark_and_all_that_was_typed() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut store = Store::open(&path, NOW).unwrap();
    let (_, _, check) = begun(&mut store);
    let back = add(&mut store, check, View::Back, b"back").unwrap();
    let front = add(&mut store, check, View::Front, b"front").unwrap();
    let revision = store
        .save_marking((check, front), 1, &marked(View::Front))
        .unwrap();
    drop(store);
    let store = Store::open(&path, NOW).unwrap();
    let kept = store.photo(check, front).unwrap();
    assert_eq!((kept.revision, revision), (2, 2));
    assert_eq!(kept.marking, Some(marked(View::Front)));
    assert_eq!(store.picture(check, front).unwrap(), b"front");
    assert_eq!(store.picture(check, back).unwrap(), b"back");
    let views: Vec<i64> = store.photos(check).unwrap().iter().map(|p| p.id).collect();
    assert_eq!(views, [front, back]);
    assert_eq!(store.checks().unwrap()[0].views, [View::Front, View::Back]);
    // Of another check it is not.
    for missing in [
        store.photo(check + 1, front).map(drop),
        store.picture(check + 1, front).map(drop),
    ] {
        assert!(matches!(
            missing,
            Err(StoreError::NotFound { what: "photo" })
        ));
    }
}

#[test]
fn a_box_over_a_face_is_kept_with_its_photo_and_hides_all_once_it_no_longer_reads() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut store = Store::open(&path, NOW).unwrap();
    let (_, _, check) = begun(&mut store);
    let photo = add(&mut store, check, View::Front, b"jpeg").unwrap();
    let hidden = |store: &Store| store.photo(check, photo).unwrap().hidden;
    let decided = |store: &Store| store.photo(check, photo).unwrap().decided;
    assert_eq!((hidden(&store), decided(&store)), (None, false));
    let face = Hidden::new(0.4, 0.05, 0.2, 0.15).unwrap();
    store.hide((check, photo), Some(face)).unwrap();
    assert_eq!(hidden(&store), Some(face));
    assert_eq!(
        store.photo(check, photo).unwrap().revision,
        1,
        "no marks were saved"
    );
    let wrong = store.hide((check + 1, photo), None).unwrap_err();
    assert!(
        matches!(wrong, StoreError::NotFound { what: "photo" }),
        "{wrong}"
    );
    let other = rusqlite::Connection::open(&path).unwrap();
    let sql = "UPDATE photo SET hidden_json = '{\"left\": 0.4}'";
    other.execute(sql, []).unwrap();
    assert_eq!(hidden(&store), Some(Hidden::WHOLE));
    store.hide((check, photo), None).unwrap();
    assert_eq!((hidden(&store), decided(&store)), (None, true));
}

#[test]
fn the_later_of_two_savers_of_marks_or_ticks_is_told_and_changes_nothing() {
    let mut store = Store::in_memory().unwrap();
    let (_, _, check) = begun(&mut store);
    let photo = add(&mut store, check, View::Front, b"front").unwrap();
    let ids = (check, photo);
    store.save_marking(ids, 1, &marked(View::Front)).unwrap();
    let other = Marking::new(View::Front, [300, 400], None);
    let late = store.save_marking(ids, 1, &other);
    assert!(
        matches!(late, Err(StoreError::Stale { current: 2 })),
        "{late:?}"
    );
    assert_eq!(
        store.photo(check, photo).unwrap().marking,
        Some(marked(View::Front))
    );
    let ticks = Ticks::from([Fault::HemUneven]);
    store.save_ticks(check, 1, &ticks).unwrap();
    let late = store.save_ticks(check, 1, &Ticks::new());
    assert!(
        matches!(late, Err(StoreError::Stale { current: 2 })),
        "{late:?}"
    );
    assert_eq!(store.check(check).unwrap().ticks.value, ticks);
    for gone in [
        store.save_marking((check, photo + 1), 1, &other).map(drop),
        store.save_ticks(check + 1, 1, &ticks),
    ] {
        assert!(matches!(gone, Err(StoreError::NotFound { .. })), "{gone:?}");
    }
}

#[test]
fn side_size_and_lens_of_a_photo_never_change_with_its_marks() {
    let mut store = Store::in_memory().unwrap();
    let (_, _, check) = begun(&mut store);
    let photo = add(&mut store, check, View::Front, b"front").unwrap();
    let mut other = marked(View::Back);
    (other.shot.size, other.shot.focal) = ([9, 9], None);
    store.save_marking((check, photo), 1, &other).unwrap();
    let kept = store.photo(check, photo).unwrap().marking;
    assert_eq!(kept, Some(marked(View::Front)));
}

#[test]
fn a_side_has_one_photo_and_the_next_takes_its_place_only_when_it_is_named() {
    let (directory, mut store, check, first) = photographed();
    let path = directory.path().join("studio.db");
    let taken = add(&mut store, check, View::Front, b"second");
    assert!(
        matches!(taken, Err(StoreError::Taken { by }) if by == first),
        "{taken:?}"
    );
    let marking = Marking::new(View::Front, [300, 400], None);
    let instead = instead_of(&marking, check, first);
    let second = store.add_photo(&instead, NOW).unwrap();
    assert_ne!(first, second);
    assert_eq!(store.photos(check).unwrap().len(), 1);
    let left = std::fs::read(&path).unwrap();
    let there = left.windows(11).any(|part| part == b"Zzyxomachia");
    assert!(!there, "the replaced picture is left in the file");
    // One that was replaced meanwhile does not give its place twice.
    let late = store.add_photo(&instead, NOW);
    assert!(
        matches!(late, Err(StoreError::Taken { by }) if by == second),
        "{late:?}"
    );
    let nowhere = add(&mut store, check + 1, View::Front, b"third");
    assert!(
        matches!(nowhere, Err(StoreError::NotFound { what: "check" })),
        "{nowhere:?}"
    );
}

#[test]
fn a_photo_replaced_while_another_program_reads_is_kept_and_the_old_one_goes_on_closing() {
    let (directory, mut store, check, first) = photographed();
    let path = directory.path().join("studio.db");
    let reader = rusqlite::Connection::open(&path).unwrap();
    reader
        .execute_batch("BEGIN; SELECT count(*) FROM photo;")
        .unwrap();
    let marking = Marking::new(View::Front, [300, 400], None);
    let instead = instead_of(&marking, check, first);
    let second = store.add_photo(&instead, NOW).unwrap();
    assert_eq!(store.picture(check, second).unwrap(), b"second");
    drop((reader, store));
    let store = Store::open(&path, NOW).unwrap();
    assert_eq!(store.photos(check).unwrap().len(), 1);
    for file in std::fs::read_dir(directory.path()).unwrap() {
        let bytes = std::fs::read(file.unwrap().path()).unwrap();
        let there = bytes.windows(11).any(|part| part == b"Zzyxomachia");
        assert!(!there, "the replaced picture is left");
    }
}

#[test]
fn a_check_is_begun_only_of_what_is_there() {
    let mut store = Store::in_memory().unwrap();
    let (person, plan, _) = begun(&mut store);
    let case = dressed();
    for (person, plan, what) in [(99, None, "person"), (person, Some(plan + 1), "plan")] {
        let new = NewCheck::Planned {
            person,
            plan,
            title: "late",
            case: &case,
        };
        let refused = store.add_check(&new, NOW);
        assert!(
            matches!(refused, Err(StoreError::NotFound { what: told }) if told == what),
            "{refused:?}"
        );
    }
}

/// Without the revision, one writer would overwrite the marks of the other.
#[test]
fn two_writers_of_one_photo_lose_no_mark() {
    const EACH: usize = 40;
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut store = Store::open(&path, NOW).unwrap();
    let (_, _, check) = begun(&mut store);
    let photo = add(&mut store, check, View::Front, b"front").unwrap();
    let start = Barrier::new(2);
    let count = || {
        let mut store = Store::open(&path, NOW).unwrap();
        start.wait();
        let mut counted = 0;
        while counted < EACH {
            let kept = store.photo(check, photo).unwrap();
            let mut marking = kept.marking.unwrap();
            let next = marking.lens_height.len() + 1;
            marking.lens_height = "x".repeat(next);
            match store.save_marking((check, photo), kept.revision, &marking) {
                Ok(_) => counted += 1,
                Err(StoreError::Stale { .. }) => {}
                Err(other) => panic!("{other}"),
            }
        }
    };
    thread::scope(|scope| {
        scope.spawn(count);
        scope.spawn(count);
    });
    let kept = store.photo(check, photo).unwrap();
    assert_eq!(kept.marking.unwrap().lens_height.len(), 2 * EACH);
}

#[test]
fn what_no_longer_reads_is_told_and_closes_nothing_but_itself() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut store = Store::open(&path, NOW).unwrap();
    let (_, _, check) = begun(&mut store);
    let front = add(&mut store, check, View::Front, b"front").unwrap();
    let back = add(&mut store, check, View::Back, b"back").unwrap();
    rusqlite::Connection::open(&path)
        .unwrap()
        .execute_batch(
            "UPDATE checkup SET case_toml = 'person = 3', occasion = 'moonwalk', \
             ticks_json = '[\"hem_uneven\", \"of_tomorrow\"]'; \
             UPDATE photo SET marking_json = '{}' WHERE view = 'front';",
        )
        .unwrap();
    let read = store.check(check).unwrap();
    assert!(read.shown.is_err(), "{:?}", read.shown);
    assert_eq!(read.row.occasion, None);
    assert_eq!(read.ticks.value, Ticks::from([Fault::HemUneven]));
    let photos = store.photos(check).unwrap();
    assert_eq!((photos[0].id, &photos[0].marking), (front, &None));
    assert!(photos[1].marking.is_some());
    assert_eq!(store.picture(check, front).unwrap(), b"front");
    let refused = store.save_marking((check, front), 1, &marked(View::Front));
    assert!(
        matches!(refused, Err(StoreError::Damaged(_))),
        "{refused:?}"
    );
    store.erase_photo(check, front).unwrap();
    store.erase_photo(check, back).unwrap();
    store.erase_check(check).unwrap();
}
