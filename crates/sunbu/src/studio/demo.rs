//! The demo studio: invented people and garments, a dresser, and a few plans already kept.

use std::path::Path;

use sunbu_core::case::{CaseFile, Person, Piece};
use sunbu_core::demo::{garments, people};
use sunbu_core::dressing::{Fitting, Locks, Occasion, Standard, rank};
use sunbu_store::{Kept, NewPlan, Store, StoreError};
use sunbu_words::Words;

use super::{now, troubled};
use crate::input;
use crate::trouble::{Trouble, troubles};

/// How many people have a plan kept when the demo opens.
const PLANNED: usize = 3;

/// Fills an empty studio, names in the language of the run, and tells whether it did: where there
/// are people or garments already, invented ones do not belong among them.
///
/// # Errors
/// What the store has against it.
pub fn fill(store: &mut Store, path: &Path, words: &Words) -> Result<bool, Vec<Trouble>> {
    let told = |error: StoreError| troubled(path, error);
    let counts = store.counts().map_err(told)?;
    if counts.people + counts.garments > 0 {
        return Ok(false);
    }
    let language = words.lang().code();
    let said = people().map_err(troubles)?;
    let invited: Vec<Person> = said
        .iter()
        .map(|demo| demo.said(language).clone())
        .collect();
    let said = garments().map_err(troubles)?;
    let hung: Vec<Piece> = said
        .iter()
        .map(|demo| demo.said(language).clone())
        .collect();
    let now = now();
    store.add_all(&invited, &hung, &now).map_err(told)?;
    let (kept, kept_garments) = (
        store.people().map_err(told)?.read,
        store.garments().map_err(told)?.read,
    );
    // The store lists by name; the demo's order says who runs the studio: the first, and her
    // hands are taped.
    let id_of = |person: &Person| {
        kept.iter()
            .find(|one| one.value == *person)
            .map(|one| one.id)
    };
    let dresser = invited.first();
    let dresser_id = dresser.and_then(id_of);
    store.set_dresser(dresser_id).map_err(told)?;
    for person in invited.iter().take(PLANNED) {
        let Some(id) = id_of(person) else { continue };
        let Some(best) = best_for(person, &kept_garments)? else {
            continue;
        };
        let (garment_id, piece) = (best.id, &best.value);
        let case = CaseFile {
            person: person.clone(),
            garments: vec![piece.clone()],
            occasion: Occasion::Indoors,
            locks: Locks::new(),
            dresser: dresser.cloned(),
            standard: None,
        };
        let (person, garment) = (&person.name, &piece.name);
        let title = words.with(
            "cli-title",
            &[("person", person.into()), ("garment", garment.into())],
        );
        let plan = NewPlan {
            ids: (id, garment_id),
            dresser: dresser_id,
            title: &title,
            case: &case,
            query: "occasion=indoors",
        };
        store.add_plan(&plan, &now).map_err(told)?;
    }
    Ok(true)
}

/// The garment that can be made to look best on this person indoors.
fn best_for<'a>(
    person: &Person,
    kept: &'a [Kept<Piece>],
) -> Result<Option<&'a Kept<Piece>>, Vec<Trouble>> {
    let (body, standard) = (person.body().map_err(troubles)?, Standard::customary());
    let mut fittings = Vec::new();
    for piece in kept {
        let garment = piece.value.garment().map_err(troubles)?;
        let rules = standard.rules(Occasion::Indoors, &body, garment.cloth());
        fittings.push((Fitting::new(&body, &garment), rules));
    }
    let best = rank(&fittings, input::threads()).first().map(|&(at, _)| at);
    Ok(best.and_then(|at| kept.get(at)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use sunbu_core::body::BodyMeasure;
    use sunbu_words::Lang;

    #[test]
    fn the_demo_has_people_garments_a_dresser_with_hands_and_plans() {
        for &lang in Lang::ALL {
            let mut store = Store::in_memory().expect("memory");
            let filled = fill(&mut store, Path::new("demo"), Words::of(lang));
            assert_eq!(filled, Ok(true));
            let counts = store.counts().expect("counts");
            assert!(counts.people >= 12 && counts.garments >= 40, "{counts:?}");
            assert_eq!(counts.plans, 3);
            let dresser = store
                .dresser()
                .expect("a dresser")
                .expect("one is set")
                .value;
            assert!(
                dresser.measures.contains_key(&BodyMeasure::HandBreadth),
                "{}",
                dresser.name
            );
        }
    }

    #[test]
    fn a_studio_with_somebody_in_it_is_not_filled_with_invented_people() {
        let words = Words::of(Lang::En);
        let mut store = Store::in_memory().expect("memory");
        assert_eq!(fill(&mut store, Path::new("demo"), words), Ok(true));
        let before = store.counts().expect("counts");
        assert_eq!(fill(&mut store, Path::new("demo"), words), Ok(false));
        assert_eq!(store.counts().expect("counts"), before);
    }
}
