//! What is timed: the people and garments of the demo studio, and a rack of many more garments.

use fastrand::Rng;
use sunbu_core::body::Body;
use sunbu_core::demo;
use sunbu_core::dressing::{Dressing, Fitting, Occasion, Rules, Standard};
use sunbu_core::garment::{Garment, Part, Sheet};
use sunbu_core::measure::Entry;

use crate::error::Error;

/// The random numbers of every run, so that all runs time the same garments.
const SEED: u64 = 0x5EED_5312;

/// The demo studio, completed.
pub struct Demo {
    /// Its people by key.
    pub people: Vec<(String, Body)>,
    /// Its garments by key.
    pub garments: Vec<(String, Garment)>,
    /// The customary standard.
    pub standard: Standard,
}

/// One person in one garment on one occasion.
pub struct Case {
    /// The three by their keys.
    pub name: String,
    /// The person's place in [`Demo::people`].
    pub person: usize,
    /// The person in the garment.
    pub fitting: Fitting,
    /// What is wanted.
    pub rules: Rules,
}

impl Demo {
    /// Reads and completes it.
    ///
    /// # Errors
    /// [`Error::Demo`] when it does not read or complete, which a test of the core rules out.
    pub fn read() -> Result<Self, Error> {
        let unread = |problems| Error::Demo(format!("{problems:?}"));
        let people = demo::people().map_err(unread)?;
        let people = people.into_iter().map(|person| {
            let body = person.en.body().map_err(unread)?;
            Ok((person.key, body))
        });
        let garments = demo::garments().map_err(unread)?;
        let garments = garments.into_iter().map(|garment| {
            let whole = garment.en.garment().map_err(unread)?;
            Ok((garment.key, whole))
        });
        Ok(Self {
            people: people.collect::<Result<_, Error>>()?,
            garments: garments.collect::<Result<_, Error>>()?,
            standard: Standard::customary(),
        })
    }

    /// One person in one garment on one occasion, the first two by their places.
    pub fn case(&self, person: usize, garment: usize, occasion: Occasion) -> Case {
        let (person_key, body) = &self.people[person];
        let (garment_key, whole) = &self.garments[garment];
        Case {
            name: format!("{person_key} in {garment_key}, {}", occasion.key()),
            person,
            fitting: Fitting::new(body, whole),
            rules: self.standard.rules(occasion, body, whole.cloth()),
        }
    }

    /// Every garment once, up to `count`, on people and occasions in turn.
    pub fn spread(&self, count: usize) -> Vec<Case> {
        (0..self.garments.len().min(count))
            .map(|i| {
                // 7 has no divisor in common with the fifteen people, so all of them come up.
                let person = (7 * i) % self.people.len();
                self.case(person, i, Occasion::ALL[i % Occasion::COUNT])
            })
            .collect()
    }

    /// Everybody in everything on every occasion.
    pub fn all(&self) -> Vec<Case> {
        let mut out = Vec::new();
        for person in 0..self.people.len() {
            for garment in 0..self.garments.len() {
                out.extend(
                    Occasion::ALL
                        .iter()
                        .map(|&occasion| self.case(person, garment, occasion)),
                );
            }
        }
        out
    }

    /// The sheets of `count` garments like those of the demo studio, each with other measures.
    ///
    /// Length, widths and yuki are moved at random by up to 8, 1.5 and 3 cm; what no garment can
    /// have is drawn again.
    ///
    /// # Panics
    /// When the demo studio has no garment.
    pub fn rack(&self, count: usize) -> Vec<Sheet> {
        const MOVED: [(Part, f64); 6] = [
            (Part::Mitake, 8.0),
            (Part::Yuki, 3.0),
            (Part::Ushirohaba, 1.5),
            (Part::Maehaba, 1.5),
            (Part::Okumihaba, 0.8),
            (Part::Erishita, 3.0),
        ];
        let mut rng = Rng::with_seed(SEED);
        let mut out = Vec::with_capacity(count);
        for (_, garment) in self.garments.iter().cycle() {
            if out.len() == count {
                break;
            }
            let choices = [
                ("kind", garment.kind().key()),
                ("cloth", garment.cloth().key()),
                ("mitake_from", garment.mitake_from().key()),
            ];
            let choices = choices.map(|(name, key)| (name, Entry::plain(key)));
            let parts = MOVED.map(|(part, by)| {
                let cm = garment.part(part).value_cm() + by * (2.0 * rng.f64() - 1.0);
                (part.key(), Entry::plain(format!("{cm:.1} cm")))
            });
            out.extend(Sheet::from_fields(choices.into_iter().chain(parts)));
        }
        out
    }
}

/// `count` dressings of a case, every decision anywhere within its limits.
pub fn random_dressings(case: &Case, count: usize) -> Vec<Dressing> {
    let mut rng = Rng::with_seed(SEED);
    let mut drawn = || {
        Dressing::from_fn(|decision| {
            let way = case.rules.way(decision);
            way.low + (way.high - way.low) * rng.f64()
        })
    };
    (0..count).map(|_| drawn()).collect()
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::Demo;

    #[test]
    fn the_rack_is_full_and_the_same_every_time_but_no_two_garments_are() {
        let demo = Demo::read().unwrap();
        let rack = demo.rack(200);
        assert_eq!(rack.len(), 200);
        assert_eq!(rack, demo.rack(200));
        let different: BTreeSet<String> = rack.iter().map(|sheet| format!("{sheet:?}")).collect();
        assert_eq!(different.len(), 200);
    }

    #[test]
    fn the_spread_has_everybody_and_every_occasion_in_it() {
        let demo = Demo::read().unwrap();
        let cases = demo.spread(usize::MAX);
        assert_eq!(cases.len(), demo.garments.len());
        let people: BTreeSet<usize> = cases.iter().map(|case| case.person).collect();
        assert_eq!(people.len(), demo.people.len());
        assert_eq!(demo.spread(3).len(), 3);
    }
}
