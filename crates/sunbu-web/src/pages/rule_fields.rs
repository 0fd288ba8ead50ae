//! The fields of the house rules, as a standard fills them and as they stand on a page.
//!
//! On the page of one occasion every row shows what holds there. A row is kept as that
//! occasion's own only where it differs from the rule for every occasion, so that it follows
//! that rule as long as nobody departs from it. An emptied row departs from it, too: the wish
//! does not hold there. A usual value is never absent, so an emptied one is that of every
//! occasion.

use std::collections::BTreeMap;

use maud::{Markup, html};
use sunbu_core::dressing::{Amount, Decision, Habit, Occasion, Quantity, Standard, Wish};
use sunbu_words::Words;

use crate::amount;
use crate::parts::{Wrong, field_faults, field_id, is_bad};

/// Texts by field name.
pub(crate) type Typed = BTreeMap<String, String>;

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
pub(super) fn wish(standard: &Standard, scope: Scope, quantity: Quantity) -> Option<&Wish> {
    let rules = match scope {
        Scope::Every => None,
        Scope::On(occasion) => standard.occasions.get(&occasion),
    };
    let general = standard.targets.get(&quantity);
    rules.map_or(general, |rules| {
        let general = general.filter(|_| !rules.without.contains(&quantity));
        rules.targets.get(&quantity).or(general)
    })
}

/// Name of a field of a wish.
pub(super) fn wish_field(quantity: Quantity, part: &str) -> String {
    format!("{}.{part}", quantity.key())
}

/// Name of a field of a way.
pub(super) fn way_field(decision: Decision, part: &str) -> String {
    format!("do.{}.{part}", decision.key())
}

/// A field's row and column in words; none when no form has it.
pub(crate) fn label(w: &Words, name: &str) -> Option<String> {
    let (row, part) = name.rsplit_once('.')?;
    let row = match row.strip_prefix("do.") {
        Some(key) => w.decision(Decision::from_key(key)?),
        None => w.quantity(Quantity::from_key(row)?),
    };
    let parts = [
        "low", "high", "weight", "plus", "soft", "cotton", "stiff", "spread", "hands",
    ];
    let part = parts.iter().find(|known| **known == part)?;
    Some(format!("{row}, {}", w.get(&format!("rules-{part}"))))
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
                            @match wish(standard, scope, q) {
                                Some(wish) => (wish.source),
                                None if standard.targets.contains_key(&q) => (w.get("rules-without")),
                                None => "",
                            }
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
