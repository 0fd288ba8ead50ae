//! The fields of the house rules, and their way to a standard and back.
//!
//! On the page of one occasion every row shows what holds there. A row is kept as that
//! occasion's own only where it differs from the rule for every occasion, so that it follows
//! that rule as long as nobody departs from it.

use std::collections::BTreeMap;

use maud::{Markup, html};
use sunbu_core::dressing::{
    Amount, ByCloth, Decision, Habit, HabitChange, MOST_CM, MOST_WEIGHT, Occasion, Quantity,
    SPREAD_CM, Standard, Wish,
};
use sunbu_words::Words;

use crate::amount;
use crate::parts::{Wrong, field_faults, field_id, is_bad};

/// Texts by field name.
pub(crate) type Typed = BTreeMap<String, String>;

/// Source of a wish that the studio has changed.
const HOUSE: &str = "house rule";

/// Whose rules a page edits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Scope {
    /// Those of every occasion.
    Every,
    /// Those of one occasion.
    On(Occasion),
}

impl Scope {
    /// The scope of this name in an address.
    pub fn of(name: Option<&str>) -> Option<Self> {
        match name? {
            "every" => Some(Self::Every),
            key => Occasion::from_key(key).map(Self::On),
        }
    }

    /// Its name in an address.
    pub fn key(self) -> &'static str {
        match self {
            Self::Every => "every",
            Self::On(occasion) => occasion.key(),
        }
    }

    /// Its name in words.
    pub fn title(self, w: &Words) -> String {
        match self {
            Self::Every => w.get("rules-every"),
            Self::On(occasion) => w.occasion(occasion),
        }
    }
}

/// The wish that holds in a scope.
fn wish(standard: &Standard, scope: Scope, quantity: Quantity) -> Option<&Wish> {
    let own = match scope {
        Scope::Every => None,
        Scope::On(o) => standard
            .occasions
            .get(&o)
            .and_then(|rules| rules.targets.get(&quantity)),
    };
    own.or_else(|| standard.targets.get(&quantity))
}

/// Name of a field of a wish.
fn wish_field(quantity: Quantity, part: &str) -> String {
    format!("{}.{part}", quantity.key())
}

/// Name of a field of a way.
fn way_field(decision: Decision, part: &str) -> String {
    format!("do.{}.{part}", decision.key())
}

/// Every field with its text.
pub(crate) fn fields(standard: &Standard, scope: Scope, stature: &str) -> Typed {
    let mut out = Typed::new();
    let text = |a: Option<Amount>| a.map(|a| amount::text(a, stature)).unwrap_or_default();
    for &q in Quantity::ALL {
        let Some(wish) = wish(standard, scope, q) else {
            continue;
        };
        out.insert(wish_field(q, "low"), text(wish.low));
        out.insert(wish_field(q, "high"), text(wish.high));
        out.insert(wish_field(q, "weight"), wish.weight.to_string());
    }
    for (&d, habit) in &standard.usual {
        if let Scope::On(occasion) = scope {
            let change = standard
                .occasions
                .get(&occasion)
                .and_then(|rules| rules.usual.get(&d));
            out.insert(
                way_field(d, "plus"),
                text(change.map(|c| c.plus).or(habit.plus)),
            );
            continue;
        }
        match habit.by_cloth {
            Some(by) => {
                for (part, cm) in [
                    ("soft", by.soft),
                    ("cotton", by.cotton),
                    ("stiff", by.stiff),
                ] {
                    out.insert(way_field(d, part), cm.to_string());
                }
            }
            None => {
                out.insert(
                    way_field(d, "plus"),
                    text(habit.plus.or(Some(Amount::Fixed(0.0)))),
                );
            }
        }
        for (part, cm) in [
            ("low", habit.low),
            ("high", habit.high),
            ("spread", habit.spread),
            ("hands", habit.hands),
        ] {
            out.insert(way_field(d, part), cm.to_string());
        }
    }
    out
}

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
                let own = read.filter(|wish| standard.targets.get(&quantity) != Some(wish));
                put(
                    &mut out.occasions.entry(occasion).or_default().targets,
                    quantity,
                    own,
                );
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
    if reader.wrongs.is_empty() {
        Ok(out)
    } else {
        Err(reader.wrongs)
    }
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

/// The table of wishes.
pub(crate) fn wishes(
    w: &Words,
    standard: &Standard,
    scope: Scope,
    typed: &Typed,
    wrongs: &[Wrong],
) -> Markup {
    let columns = [
        ("low", "rules-low"),
        ("high", "rules-high"),
        ("weight", "rules-weight"),
    ];
    html! {
        table.cards.rules {
            thead {
                tr {
                    th scope="col" { (w.get("col-wish")) }
                    @for (_, id) in columns { th scope="col" { (w.get(id)) } }
                    th scope="col" { (w.get("rules-source")) }
                }
            }
            tbody {
                @for &q in Quantity::ALL {
                    @let label = w.quantity(q);
                    tr {
                        th scope="row" { (label) }
                        @for (part, id) in columns {
                            (cell(w, &wish_field(q, part), &label, id, typed, wrongs))
                        }
                        td.small data-name=(w.get("rules-source")) {
                            @if let Some(wish) = wish(standard, scope, q) { (wish.source) }
                        }
                    }
                }
            }
        }
    }
}

/// The table of usual ways.
pub(crate) fn ways(
    w: &Words,
    standard: &Standard,
    scope: Scope,
    typed: &Typed,
    wrongs: &[Wrong],
) -> Markup {
    html! {
        @for (&d, habit) in &standard.usual {
            @let label = w.decision(d);
            fieldset.rules {
                legend { (label) }
                p.soft { (w.get(match habit.from {
                    sunbu_core::dressing::Datum::Floor => "rules-from-floor",
                    sunbu_core::dressing::Datum::HipBone => "rules-from-hip-bone",
                })) }
                div.pick {
                    @for (part, id) in way_parts(scope, habit) {
                        (knob(w, &way_field(d, part), id, typed, wrongs))
                    }
                }
            }
        }
    }
}

/// The fields of a way in a scope, with their words.
fn way_parts(scope: Scope, habit: &Habit) -> Vec<(&'static str, &'static str)> {
    let mut parts = match (scope, habit.by_cloth) {
        (Scope::Every, Some(_)) => {
            vec![
                ("soft", "rules-soft"),
                ("cotton", "rules-cotton"),
                ("stiff", "rules-stiff"),
            ]
        }
        _ => vec![("plus", "rules-plus")],
    };
    if scope == Scope::Every {
        parts.extend([
            ("low", "rules-least"),
            ("high", "rules-most"),
            ("spread", "rules-spread"),
            ("hands", "rules-hands"),
        ]);
    }
    parts
}

fn input(name: &str, label: Option<String>, typed: &Typed, wrongs: &[Wrong]) -> Markup {
    let (id, bad) = (field_id(name), is_bad(wrongs, name));
    html! {
        input.long type="text" id=(id) name=(name) value=(typed.get(name).map_or("", String::as_str))
            autocomplete="off" aria-label=[label] aria-invalid=[bad.then_some("true")]
            aria-describedby=[bad.then(|| format!("{id}-wrong"))];
    }
}

fn cell(w: &Words, name: &str, what: &str, id: &str, typed: &Typed, wrongs: &[Wrong]) -> Markup {
    let column = w.get(id);
    html! {
        td.bad[is_bad(wrongs, name)] data-name=(column) {
            (field_faults(wrongs, name))
            (input(name, Some(format!("{what}: {column}")), typed, wrongs))
        }
    }
}

fn knob(w: &Words, name: &str, id: &str, typed: &Typed, wrongs: &[Wrong]) -> Markup {
    html! {
        div.bad[is_bad(wrongs, name)] {
            label for=(field_id(name)) { (w.get(id)) }
            (field_faults(wrongs, name))
            (input(name, None, typed, wrongs))
        }
    }
}
