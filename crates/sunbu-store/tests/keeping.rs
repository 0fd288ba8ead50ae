//! What is kept comes back as it was.

#![allow(clippy::unwrap_used, missing_docs, dead_code)]

mod studio;

use studio::{NOW, case, garments, people};
use sunbu_core::dressing::Standard;
use sunbu_store::{NewPlan, Store, StoreError};

fn is_send<T: Send>() {}

#[test]
fn everyone_and_every_garment_of_the_demonstration_comes_back_after_reopening() {
    is_send::<Store>();
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let (people, garments) = (people(), garments());
    assert!(
        people.len() >= 2 && garments.len() >= 2,
        "the demonstration is empty"
    );
    let mut store = Store::open(&path, NOW).unwrap();
    let ids: Vec<i64> = people
        .iter()
        .map(|p| store.add_person(p, NOW).unwrap())
        .collect();
    let pieces: Vec<i64> = garments
        .iter()
        .map(|g| store.add_garment(g, NOW).unwrap())
        .collect();
    drop(store);
    let store = Store::open(&path, NOW).unwrap();
    for (id, person) in ids.iter().zip(&people) {
        let kept = store.person(*id).unwrap();
        assert_eq!((kept.revision, &kept.value), (1, person));
    }
    for (id, garment) in pieces.iter().zip(&garments) {
        let kept = store.garment(*id).unwrap();
        assert_eq!((kept.revision, &kept.value), (1, garment));
    }
    assert_eq!(store.people().unwrap().len(), people.len());
    assert_eq!(store.garments().unwrap().len(), garments.len());
}

#[test]
fn a_save_of_what_someone_else_changed_meanwhile_is_refused_and_says_the_revision() {
    let mut store = Store::in_memory().unwrap();
    let mut person = people().remove(0);
    let id = store.add_person(&person, NOW).unwrap();
    person.note = "first".into();
    store.save_person(id, 1, &person, NOW).unwrap();
    let mut other = person.clone();
    other.note = "second".into();
    let refused = store.save_person(id, 1, &other, NOW);
    assert!(
        matches!(refused, Err(StoreError::Stale { current: 2 })),
        "{refused:?}"
    );
    let kept = store.person(id).unwrap();
    assert_eq!(
        (kept.revision, kept.value),
        (2, person),
        "the refused save left no mark"
    );

    let garment = garments().remove(0);
    let piece = store.add_garment(&garment, NOW).unwrap();
    store.save_garment(piece, 1, &garment, NOW).unwrap();
    let refused = store.save_garment(piece, 1, &garment, NOW);
    assert!(
        matches!(refused, Err(StoreError::Stale { current: 2 })),
        "{refused:?}"
    );
    let missing = store.save_person(id + 1, 1, &other, NOW);
    assert!(
        matches!(missing, Err(StoreError::NotFound { .. })),
        "{missing:?}"
    );
}

#[test]
fn a_plan_comes_back_whole_and_outlives_its_garment() {
    let mut store = Store::in_memory().unwrap();
    let (person, garment) = (people().remove(0), garments().remove(0));
    let ids = (
        store.add_person(&person, NOW).unwrap(),
        store.add_garment(&garment, NOW).unwrap(),
    );
    let case = case(&person, &garment, None);
    let new = NewPlan {
        ids,
        dresser: None,
        title: "Tea in May",
        case: &case,
        query: "occasion=formal",
    };
    let id = store.add_plan(&new, NOW).unwrap();
    let kept = store.plan(id).unwrap();
    assert_eq!(
        (kept.case.as_ref(), kept.query.as_str()),
        (Ok(&case), "occasion=formal")
    );
    assert_eq!(kept.row.title, "Tea in May");
    assert_eq!(
        store.plans_of(ids.0, ids.1).unwrap(),
        store.plans().unwrap()
    );
    store.erase_garment(ids.1).unwrap();
    let rows = store.plans_of_person(ids.0).unwrap();
    assert_eq!(rows.len(), 1);
    assert_eq!(
        (rows[0].garment_id, &rows[0].garment),
        (None, &garment.name)
    );
    store.erase_plan(id).unwrap();
    assert!(matches!(store.plan(id), Err(StoreError::NotFound { .. })));
}

#[test]
fn the_own_standard_and_the_dresser_hold_until_taken_back() {
    let mut store = Store::in_memory().unwrap();
    let held = |store: &Store| {
        let own = store.own_standard().unwrap();
        (own.revision, own.value)
    };
    assert_eq!(held(&store), (1, None));
    let own = Standard::customary();
    store.set_standard(1, &own, NOW).unwrap();
    assert_eq!(held(&store), (2, Some(own)));
    store.reset_standard(2).unwrap();
    assert_eq!(held(&store), (3, None));
    let person = people().remove(0);
    let id = store.add_person(&person, NOW).unwrap();
    store.set_dresser(Some(id)).unwrap();
    assert_eq!(store.dresser().unwrap().unwrap().value, person);
    store.erase_person(id).unwrap();
    assert_eq!(store.dresser().unwrap(), None);
    assert!(matches!(
        store.set_dresser(Some(id)),
        Err(StoreError::NotFound { .. })
    ));
}

#[test]
fn all_of_many_are_kept_or_none() {
    let mut store = Store::in_memory().unwrap();
    let (people, mut garments) = (people(), garments());
    store.add_all(&people, &garments, NOW).unwrap();
    let counts = store.counts().unwrap();
    assert_eq!(counts.people, i64::try_from(people.len()).unwrap());
    assert_eq!(counts.garments, i64::try_from(garments.len()).unwrap());
    garments.last_mut().unwrap().name.clear();
    let refused = store.add_all(&people, &garments, NOW);
    assert!(matches!(refused, Err(StoreError::Unfit(_))), "{refused:?}");
    assert_eq!(store.counts().unwrap(), counts);
}

#[test]
fn a_studio_of_a_thousand_garments_is_listed_soon() {
    let mut store = Store::in_memory().unwrap();
    let many = |n: usize, of: usize| (0..n).map(move |i| i % of);
    let (some_people, some_garments) = (people(), garments());
    let people: Vec<_> = many(500, some_people.len())
        .map(|i| some_people[i].clone())
        .collect();
    let garments: Vec<_> = many(1000, some_garments.len())
        .map(|i| some_garments[i].clone())
        .collect();
    store.add_all(&people, &garments, NOW).unwrap();
    let clock = std::time::Instant::now();
    assert_eq!(store.people().unwrap().len(), 500);
    assert_eq!(store.garments().unwrap().len(), 1000);
    let took = clock.elapsed().as_secs_f64();
    println!("500 people and 1000 garments read and checked in {took:.3} s");
    // An optimised build takes about 0.03 s; this leaves room for a plain one on a busy machine.
    assert!(took < 3.0, "{took} s");
}
