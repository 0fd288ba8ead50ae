//! A check with photos whose truth is known, put into a store before it is served: a person of the
//! renderer, dressed as planned but for what is told, marked as a hand marks.
#![allow(dead_code)] // each test program uses its own part

use sunbu_core::case::Stranger;
use sunbu_core::dressing::{Decision, Occasion};
use sunbu_core::fault::{Fault, Ticks};
use sunbu_core::photo::{Marking, Shot, View};
use sunbu_render::{Scene, Told};
use sunbu_store::{NewCheck, NewPhoto, Store};

/// When everything was kept.
const NOW: &str = "2026-03-01T09:30:00+09:00";
/// Whom all photos show.
const SEED: u64 = 7;

/// The hem set 5 cm too high and the obi 4 cm too low.
pub const OFF: [(Decision, f64); 2] = [(Decision::HemHeight, 5.0), (Decision::ObiLowerEdge, -4.0)];

/// Her from one side, dressed as planned but for these changes.
pub fn scene(view: View, off: &[(Decision, f64)]) -> Scene {
    Scene::random_from(SEED, view).off(off)
}

/// The person of this number from one side, every decision done `off_cm` off the plan.
pub fn everywhere_off(seed: u64, view: View, off_cm: f64) -> Scene {
    Scene::random_from(seed, view).everywhere_off(seed, off_cm)
}

/// Her photo as a JPEG.
pub fn jpeg(scene: &Scene, seed: u64) -> Vec<u8> {
    scene.render(seed).to_jpeg(90).expect("a JPEG")
}

/// A studio with her, her garment, and check 1 of her as she was to be dressed.
pub fn studio(scene: &Scene) -> Store {
    let case = scene.case(["Mori Sayo", "Grey tsumugi"]);
    let mut store = Store::in_memory().expect("a store in memory");
    let person = store.add_person(&case.person, NOW).expect("added");
    for piece in &case.garments {
        store.add_garment(piece, NOW).expect("added");
    }
    let check = NewCheck::Planned {
        person,
        plan: None,
        title: "After the rehearsal",
        case: &case,
    };
    assert_eq!(store.add_check(&check, NOW).expect("begun"), 1);
    store
}

/// The scene as a hand marks it.
pub fn shot(scene: &Scene) -> Shot {
    let told = Told {
        focal: true,
        sheet: false,
    };
    scene.marked(told, SEED)
}

/// A check of hers without photos; a person is added for it.
pub fn check(store: &mut Store, names: [&str; 2]) -> i64 {
    let case = scene(View::Front, &OFF).case(names);
    let person = store.add_person(&case.person, NOW).expect("a person");
    let check = NewCheck::Planned {
        person,
        plan: None,
        title: &names.join(" · "),
        case: &case,
    };
    store.add_check(&check, NOW).expect("a check")
}

/// A check of a stranger without photos, named as she named herself.
pub fn stranger(store: &mut Store, name: &str) -> i64 {
    let fields = [("name", name), ("sex", "women")];
    let fields = fields.map(|(name, text)| (name.to_owned(), text.to_owned()));
    let stranger = Stranger::from_fields(&fields.into()).expect("a stranger");
    let check = NewCheck::Stranger {
        stranger: &stranger,
        occasion: Occasion::Indoors,
    };
    store.add_check(&check, NOW).expect("a check")
}

/// Puts a photo in, marked with these marks.
pub fn photo(store: &mut Store, check: i64, shot: &Shot, jpeg: &[u8]) -> i64 {
    let photo = bare_photo(store, check, shot, jpeg);
    let marking = Marking {
        shot: shot.clone(),
        moved: shot.marks.keys().copied().collect(),
        ..Marking::new(shot.view, shot.size, shot.focal)
    };
    let saved = store.save_marking((check, photo), 1, &marking);
    saved.expect("the marks");
    photo
}

/// Puts a photo in that nobody has marked.
pub fn bare_photo(store: &mut Store, check: i64, shot: &Shot, jpeg: &[u8]) -> i64 {
    let new = NewPhoto {
        check,
        instead_of: None,
        marking: &Marking::new(shot.view, shot.size, shot.focal),
        jpeg,
    };
    store.add_photo(&new, NOW).expect("a photo")
}

/// Ticks what the eye saw.
pub fn tick(store: &mut Store, check: i64, seen: &[Fault]) {
    let ticks: Ticks = seen.iter().copied().collect();
    let revision = store.check(check).expect("the check").ticks.revision;
    store.save_ticks(check, revision, &ticks).expect("ticks");
}
