//! From the fields of the house rules to a standard: every field by itself, then all together.

use std::collections::BTreeMap;

use sunbu_core::dressing::{
    Amount, ByCloth, Decision, Habit, HabitChange, MOST_CM, MOST_WEIGHT, Occasion, OccasionRules,
    Quantity, SPREAD_CM, Standard, StandardError, Wish,
};
use sunbu_core::problem::Problem;
use sunbu_words::Words;

use super::rule_fields::{Scope, Typed, way_field, wish, wish_field};
use crate::amount;
use crate::parts::Wrong;

/// Source of a wish that the studio has changed.
const HOUSE: &str = "house rule";

/// Reads fields one by one and gathers what is wrong.
struct Reader<'a> {
    typed: &'a Typed,
    words: &'a Words,
    wrongs: Vec<Wrong>,
}

impl Reader<'_> {
    fn text(&self, name: &str) -> &str {
        self.typed.get(name).map_or("", |text| text.trim())
    }

    fn wrong(&mut self, name: &str, label: &str, id: &str) {
        let typed = self.typed.get(name).cloned().unwrap_or_default();
        let sentence = self.words.with(id, &[("typed", (&typed).into())]);
        self.wrongs.push(Wrong {
            place: name.to_owned(),
            label: label.to_owned(),
            sentence,
            others: Vec::new(),
        });
    }

    /// An amount that may be left out.
    fn amount(&mut self, name: &str, label: &str) -> Option<Amount> {
        if self.text(name).is_empty() {
            return None;
        }
        let amount = amount::parse(self.text(name));
        if amount.is_none() {
            self.wrong(name, label, "rules-no-amount");
        }
        amount
    }

    /// A number from `low` to `high`; zero stands in for a wrong one, which is told.
    fn number(&mut self, name: &str, label: &str, low: f64, high: f64) -> f64 {
        let read = amount::number(self.text(name));
        self.within(name, label, read, (low, high), "rules-no-number")
    }

    /// A length from `low` to `high`, in centimetres; zero stands in for a wrong one, which is
    /// told.
    fn length_cm(&mut self, name: &str, label: &str, low: f64, high: f64) -> f64 {
        let read = amount::length_cm(self.text(name));
        self.within(name, label, read, (low, high), "rules-no-length")
    }

    fn within(
        &mut self,
        name: &str,
        label: &str,
        read: Option<f64>,
        (low, high): (f64, f64),
        id: &str,
    ) -> f64 {
        if let Some(n) = read.filter(|n| (low..=high).contains(n)) {
            return n;
        }
        let typed = self.typed.get(name).cloned().unwrap_or_default();
        let [low, high] = [low, high].map(|bound| bound.to_string());
        let args = [
            ("typed", (&typed).into()),
            ("low", (&low).into()),
            ("high", (&high).into()),
        ];
        self.wrongs.push(Wrong {
            place: name.into(),
            label: label.into(),
            sentence: self.words.with(id, &args),
            others: Vec::new(),
        });
        0.0
    }
}

/// The standard with the fields of a scope in it, or everything wrong with them.
pub(crate) fn read(
    standard: &Standard,
    scope: Scope,
    typed: &Typed,
    words: &Words,
) -> Result<Standard, Vec<Wrong>> {
    let mut reader = Reader {
        typed,
        words,
        wrongs: Vec::new(),
    };
    let mut out = standard.clone();
    for &quantity in Quantity::ALL {
        let read = read_wish(&mut reader, quantity, wish(standard, scope, quantity));
        match scope {
            Scope::Every => put(&mut out.targets, quantity, read),
            Scope::On(occasion) => {
                let rules = out.occasions.entry(occasion).or_default();
                read_on(rules, quantity, read, standard.targets.get(&quantity));
            }
        }
    }
    for (&decision, habit) in &standard.usual {
        match scope {
            Scope::Every => {
                out.usual
                    .insert(decision, read_habit(&mut reader, decision, habit));
            }
            Scope::On(occasion) => {
                let label = words.decision(decision);
                let plus = reader.amount(&way_field(decision, "plus"), &label);
                let own = plus.filter(|plus| habit.plus != Some(*plus));
                let changes = &mut out.occasions.entry(occasion).or_default().usual;
                put(changes, decision, own.map(|plus| HabitChange { plus }));
            }
        }
    }
    if !reader.wrongs.is_empty() {
        return Err(reader.wrongs);
    }
    // Numbers that are each possible must also go together, on this page and on the others.
    match Standard::parse(&out.to_toml()) {
        Ok(checked) => Ok(checked),
        Err(StandardError::Values(problems)) => {
            Err(problems.iter().map(|p| together(words, scope, p)).collect())
        }
        // What the core writes it reads; should it not, nothing is stored.
        Err(StandardError::Form(why)) => Err(vec![Wrong {
            place: String::new(),
            label: scope.title(words),
            sentence: why,
            others: Vec::new(),
        }]),
    }
}

/// A contradiction of a standard at the field of this page that leads out of it.
fn together(w: &Words, scope: Scope, problem: &Problem) -> Wrong {
    let mut names: Vec<&str> = problem.place.split('.').collect();
    let mut occasion = None;
    if let ["occasions", key, ..] = names[..] {
        occasion = Occasion::from_key(key);
        names.drain(..2);
    }
    let elsewhere = occasion.filter(|&o| scope != Scope::On(o));
    let (place, label) = match names[..] {
        ["targets", key, ref part @ ..] => {
            let label = Quantity::from_key(key).map_or(key.to_owned(), |q| w.quantity(q));
            (format!("{key}.{}", part.last().unwrap_or(&"low")), label)
        }
        ["usual", key, ref part @ ..] => {
            let label = Decision::from_key(key).map_or(key.to_owned(), |d| w.decision(d));
            // The value of an occasion stands on its own page; here are the limits.
            let part = match (elsewhere, part.last()) {
                (None, Some(part)) => part,
                _ => "low",
            };
            (format!("do.{key}.{part}"), label)
        }
        _ => (problem.place.clone(), problem.place.clone()),
    };
    let label = match elsewhere {
        Some(occasion) => w.with(
            "name-told-apart",
            &[
                ("name", (&label).into()),
                ("telling", (&w.occasion(occasion)).into()),
            ],
        ),
        None => label,
    };
    Wrong {
        place,
        label,
        sentence: w.fault(problem),
        others: Vec::new(),
    }
}

/// Puts what was read of a wish into the rules of an occasion: nothing of its own where it is the
/// general wish, and an emptied row shuts the general wish out.
fn read_on(
    rules: &mut OccasionRules,
    quantity: Quantity,
    read: Option<Wish>,
    general: Option<&Wish>,
) {
    let emptied = read.is_none() && general.is_some();
    if emptied {
        rules.without.insert(quantity);
    } else {
        rules.without.remove(&quantity);
    }
    let numbers = |wish: &Wish| (wish.low, wish.high, wish.weight);
    let own = read.filter(|wish| {
        // A row with the general numbers under a source of its own stays until it is changed.
        general.map(numbers) != Some(numbers(wish)) || rules.targets.get(&quantity) == Some(wish)
    });
    put(&mut rules.targets, quantity, own);
}

fn put<K: Ord, V>(map: &mut BTreeMap<K, V>, key: K, value: Option<V>) {
    match value {
        Some(value) => map.insert(key, value),
        None => map.remove(&key),
    };
}

/// A wish; none when its row was left empty.
fn read_wish(reader: &mut Reader<'_>, quantity: Quantity, now: Option<&Wish>) -> Option<Wish> {
    let label = reader.words.quantity(quantity);
    let [low_at, high_at, weight_at] = ["low", "high", "weight"].map(|p| wish_field(quantity, p));
    if [&low_at, &high_at, &weight_at]
        .iter()
        .all(|name| reader.text(name).is_empty())
    {
        return None;
    }
    let low = reader.amount(&low_at, &label);
    let high = reader.amount(&high_at, &label);
    let weight = reader.number(&weight_at, &label, 0.0, MOST_WEIGHT);
    if let (Some(low), Some(high)) = (low, high)
        && [130.0, 160.0, 190.0]
            .iter()
            .any(|&s| low.resolve(s) > high.resolve(s))
    {
        reader.wrong(&low_at, &label, "rules-low-above-high");
    }
    let source = match now {
        Some(now) if (now.low, now.high, now.weight) == (low, high, weight) => now.source.clone(),
        _ => HOUSE.to_owned(),
    };
    Some(Wish {
        low,
        high,
        weight,
        source,
    })
}

/// The usual way of one decision.
fn read_habit(reader: &mut Reader<'_>, decision: Decision, now: &Habit) -> Habit {
    let label = reader.words.decision(decision);
    let (most, (least, wide)) = (MOST_CM, SPREAD_CM);
    let mut cm = |part: &str, low: f64, high: f64| {
        reader.length_cm(&way_field(decision, part), &label, low, high)
    };
    let (low, high) = (cm("low", -most, most), cm("high", -most, most));
    let (spread, hands) = (cm("spread", least, wide), cm("hands", least, wide));
    let by_cloth = now.by_cloth.map(|_| ByCloth {
        soft: cm("soft", -most, most),
        cotton: cm("cotton", -most, most),
        stiff: cm("stiff", -most, most),
    });
    let plus = match by_cloth {
        Some(_) => now.plus,
        None => reader.amount(&way_field(decision, "plus"), &label),
    };
    if low > high {
        reader.wrong(&way_field(decision, "low"), &label, "rules-low-above-high");
    }
    Habit {
        from: now.from,
        plus,
        by_cloth,
        spread,
        low,
        high,
        hands,
    }
}
