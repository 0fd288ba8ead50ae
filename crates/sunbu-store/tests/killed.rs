//! What was acknowledged is there after the program is killed at any moment.

#![allow(clippy::unwrap_used, missing_docs, dead_code)]

mod studio;

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};
use std::thread;
use std::time::Duration;

use studio::{NOW, people};
use sunbu_core::case::{Fields, Stranger};
use sunbu_core::dressing::Occasion;
use sunbu_core::photo::{Marking, View};
use sunbu_store::{NewCheck, NewPhoto, Store};

/// Names the store the child is to write, and makes it the child.
const CHILD: &str = "SUNBU_STORE_TEST_CHILD";
const ROUNDS: u64 = 40;
/// A picture of many pages of the file, so that a kill falls among them.
static JPEG: [u8; 200_000] = [7; 200_000];

/// Saves without end, telling each save once it is acknowledged.
#[test]
#[ignore = "started and killed by the other test"]
fn writer_to_be_killed() {
    let path = std::env::var_os(CHILD).expect("the killing test says which store to write");
    let mut store = Store::open(Path::new(&path), NOW).unwrap();
    let mut person = people().remove(0);
    let mut out = std::io::stdout();
    let named = Fields::from([("name".to_owned(), "Student 4".to_owned())]);
    let stranger = Stranger::from_fields(&named).unwrap();
    let mut marking = Marking::new(View::Front, [3000, 4000], None);
    loop {
        let id = store.add_person(&person, NOW).unwrap();
        for revision in 1..=3 {
            person.note = format!("revision {}", revision + 1);
            store.save_person(id, revision, &person, NOW).unwrap();
            writeln!(out, "saved {id} {}", revision + 1).unwrap();
            out.flush().unwrap();
        }
        let check = NewCheck::Stranger {
            stranger: &stranger,
            occasion: Occasion::Stage,
        };
        let check = store.add_check(&check, NOW).unwrap();
        let photo = NewPhoto {
            check,
            instead_of: None,
            marking: &marking,
            jpeg: &JPEG,
        };
        let photo = store.add_photo(&photo, NOW).unwrap();
        for revision in 1..=3 {
            marking.lens_height = format!("{} cm", revision + 1);
            let ids = (check, photo);
            store.save_marking(ids, revision, &marking).unwrap();
            writeln!(out, "marked {check} {photo} {}", revision + 1).unwrap();
            out.flush().unwrap();
        }
    }
}

#[test]
fn every_acknowledged_save_outlives_a_kill_at_any_moment() {
    let directory = tempfile::tempdir().unwrap();
    let path = directory.path().join("studio.db");
    let mut acknowledged: BTreeMap<i64, i64> = BTreeMap::new();
    let mut marked: BTreeMap<(i64, i64), i64> = BTreeMap::new();
    for round in 0..ROUNDS {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["writer_to_be_killed", "--exact", "--ignored", "--nocapture"])
            .env(CHILD, &path)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        let output = child.stdout.take().unwrap();
        let (first, seen) = std::sync::mpsc::channel();
        let reader = thread::spawn(move || {
            let (mut lines, mut marks) = (Vec::new(), Vec::new());
            for line in BufReader::new(output).lines().map_while(Result::ok) {
                // The last line may be cut by the kill; only a whole one has its newline and all
                // three words, and a shorter number would only ask for less.
                let words: Vec<&str> = line.split(' ').collect();
                let number = |text: &str| text.parse::<i64>().unwrap();
                match words[..] {
                    ["saved", id, revision] => {
                        lines.push((number(id), number(revision)));
                        let _ = first.send(());
                    }
                    ["marked", check, photo, revision] => {
                        marks.push(((number(check), number(photo)), number(revision)));
                    }
                    _ => {}
                }
            }
            (lines, marks)
        });
        seen.recv_timeout(Duration::from_secs(60)).unwrap();
        // Moments that fall differently within a save each round.
        thread::sleep(Duration::from_micros(500 + 1_850 * round));
        child.kill().unwrap();
        child.wait().unwrap();
        let (lines, marks) = reader.join().unwrap();
        acknowledged.extend(lines);
        marked.extend(marks);
        let store = Store::open(&path, NOW).unwrap();
        for (id, revision) in &acknowledged {
            let kept = store.person(*id).unwrap();
            assert!(
                kept.revision >= *revision,
                "round {round}: person {id} was acknowledged at {revision} and is at {}",
                kept.revision
            );
            if kept.revision > 1 {
                assert_eq!(kept.value.note, format!("revision {}", kept.revision));
            }
        }
        for ((check, photo), revision) in &marked {
            let kept = store.photo(*check, *photo).unwrap();
            assert!(
                kept.revision >= *revision,
                "round {round}: marks of photo {photo} were acknowledged at {revision} and are at {}",
                kept.revision
            );
            if kept.revision > 1 {
                let text = format!("{} cm", kept.revision);
                assert_eq!(kept.marking.unwrap().lens_height, text);
            }
            assert_eq!(store.picture(*check, *photo).unwrap(), JPEG);
        }
        let copy = directory.path().join(format!("copy-{round}.db"));
        store.backup(&copy).unwrap();
        let raw = rusqlite::Connection::open(&path).unwrap();
        let said: String = raw
            .query_row("PRAGMA integrity_check", [], |row| row.get(0))
            .unwrap();
        assert_eq!(said, "ok", "round {round}");
    }
    let saves: i64 = acknowledged.values().map(|revision| revision - 1).sum();
    println!(
        "{saves} acknowledged saves and marks of {} photos over {ROUNDS} kills, none lost",
        marked.len()
    );
    assert!(
        saves >= i64::try_from(ROUNDS).unwrap(),
        "only {saves} saves were acknowledged"
    );
    assert!(!marked.is_empty(), "no marks were acknowledged");
}

#[test]
fn a_program_killed_while_it_makes_the_store_leaves_one_that_opens() {
    let directory = tempfile::tempdir().unwrap();
    let mut begun = 0;
    for round in 0..ROUNDS {
        let path = directory.path().join(format!("{round}.db"));
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["writer_to_be_killed", "--exact", "--ignored", "--nocapture"])
            .env(CHILD, &path)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        // From before the file is there until after the first saves.
        thread::sleep(Duration::from_micros(600 * round));
        child.kill().unwrap();
        child.wait().unwrap();
        begun += usize::from(path.exists());
        let mut store = Store::open(&path, NOW).unwrap();
        let before = store.people().unwrap().len();
        let person = people().remove(0);
        let id = store.add_person(&person, NOW).unwrap();
        assert_eq!(store.person(id).unwrap().value, person, "round {round}");
        assert_eq!(store.people().unwrap().len(), before + 1, "round {round}");
    }
    println!("{begun} of {ROUNDS} stores were begun when the program was killed");
    assert!(begun > 0, "the program was always killed before it began");
}
