//! The hem as others see it, of a dressing that was planned or done; and from a place that is typed.

use maud::{Markup, html};
use sunbu_core::body::Body;
use sunbu_core::dressing::{
    DISTANCE_CM, EYE_CM, Fitting, Onlooker, Plan, Viewer, ViewerError, hem_seen,
};
use sunbu_core::measure::{Shaku, parse_signed_length};
use sunbu_core::photo::View;
use sunbu_core::problem::{Fault, Problem};
use sunbu_words::Words;

/// The fields of a place, with the range of each in centimetres.
const FIELDS: [(&str, (f64, f64)); 2] = [("eye", EYE_CM), ("distance", DISTANCE_CM)];

/// The place that the query names, as it was typed.
pub(crate) struct Place {
    /// Height of the eye and its distance, as typed; both empty when nothing was.
    typed: [String; 2],
    /// What they read as; none when nothing was typed or something is wrong.
    viewer: Option<Viewer>,
    wrong: Vec<Problem>,
}

impl Place {
    /// Reads the pairs of a query. A place needs both its lengths; when neither is typed there is
    /// none, and nothing is wrong.
    pub fn read(query: &[(String, String)]) -> Self {
        let typed = FIELDS.map(|(name, _)| {
            let pair = query.iter().find(|(key, _)| key == name);
            pair.map_or("", |(_, text)| text.trim()).to_owned()
        });
        let mut wrong = Vec::new();
        if typed.iter().all(String::is_empty) {
            return Self {
                typed,
                viewer: None,
                wrong,
            };
        }
        let mut cm = [None; 2];
        for (i, (name, range)) in FIELDS.into_iter().enumerate() {
            match length(&typed[i], range) {
                Ok(length) => cm[i] = Some(length),
                Err(fault) => wrong.push(Problem::new(name, typed[i].clone(), fault)),
            }
        }
        let viewer = match cm {
            [Some(eye), Some(distance)] => Viewer::new(eye, distance, 0.0)
                .map_err(|error| wrong.push(refused(&error, &typed)))
                .ok(),
            _ => None,
        };
        Self {
            typed,
            viewer,
            wrong,
        }
    }

    /// The pairs for an address that keeps the place, with an ampersand before each; empty when
    /// nothing was typed.
    pub fn query(&self) -> String {
        let pairs = FIELDS.iter().zip(&self.typed);
        let pairs = pairs.filter(|(_, typed)| !typed.is_empty());
        pairs
            .map(|((name, _), typed)| {
                let typed: String = form_urlencoded::byte_serialize(typed.as_bytes()).collect();
                format!("&{name}={typed}")
            })
            .collect()
    }

    /// What is wrong with each field, in words; empty where nothing is.
    pub fn wrongs(&self, w: &Words) -> [(&'static str, String); 2] {
        FIELDS.map(|(name, _)| {
            let own = self.wrong.iter().find(|problem| problem.place == name);
            (
                name,
                own.map_or_else(String::new, |problem| w.fault(problem)),
            )
        })
    }
}

/// Reads a length within a range.
fn length(typed: &str, (low_cm, high_cm): (f64, f64)) -> Result<f64, Fault> {
    if typed.is_empty() {
        return Err(Fault::Missing);
    }
    let read = parse_signed_length(typed, Shaku::Kujira).map_err(Fault::Unreadable)?;
    let cm = read.length.cm();
    if (low_cm..=high_cm).contains(&cm) {
        Ok(cm)
    } else {
        Err(Fault::OutOfRange { low_cm, high_cm })
    }
}

/// A place that the core refuses, at the field it names.
fn refused(error: &ViewerError, typed: &[String; 2]) -> Problem {
    let i = usize::from(error.field != "eye_cm");
    let fault = Fault::OutOfRange {
        low_cm: error.low,
        high_cm: error.high,
    };
    Problem::new(FIELDS[i].0, typed[i].clone(), fault)
}

/// What each of them sees of a dressing, as a list; the typed place first.
pub(crate) fn sights(
    w: &Words,
    (body, fitting): (&Body, &Fitting),
    plan: &Plan,
    place: &Place,
) -> Markup {
    let own = place.viewer.map(|viewer| (w.get("seen-own"), viewer));
    let usual = Onlooker::ALL.iter();
    let usual = usual.map(|&onlooker| (w.onlooker(onlooker), onlooker.viewer()));
    let see = |viewer: Viewer| {
        let Plan {
            dressing,
            prediction,
            ..
        } = plan;
        hem_seen(body, fitting, dressing, prediction, viewer, View::Front)
    };
    html! {
        ul.seen {
            @for (who, viewer) in own.into_iter().chain(usual) {
                li {
                    strong { (who) } " " span.soft { "(" (w.viewer(&viewer)) ")" }
                    br;
                    (w.hem_seen(&see(viewer)))
                }
            }
        }
    }
}

/// The fields for a place of one's own; `form` is the id of the form that sends them where they do
/// not stand in it.
pub(crate) fn fields(w: &Words, place: &Place, form: Option<&str>) -> Markup {
    let labels = ["seen-eye", "seen-distance"];
    let wrongs = place.wrongs(w);
    html! {
        p.soft { (w.get("seen-own-how")) }
        div.place {
            @for (i, (name, (low, high))) in FIELDS.into_iter().enumerate() {
                @let wrong = &wrongs[i].1;
                div.field.bad[!wrong.is_empty()] {
                    label for=(name) { (w.get(labels[i])) }
                    p.wrong id={ (name) "-wrong" } aria-live="polite" { (wrong) }
                    span.row {
                        input type="text" id=(name) name=(name) value=(place.typed[i]) form=[form]
                            autocomplete="off" aria-invalid=[(!wrong.is_empty()).then_some("true")]
                            aria-describedby={ (name) "-range " (name) "-wrong" };
                        span.small #{ (name) "-range" } { (range(w, low, high)) }
                    }
                }
            }
            button form=[form] { (w.get("seen-look")) }
        }
    }
}

fn range(w: &Words, low: f64, high: f64) -> String {
    let high = w.cm(high);
    let low = format!("{low:.0}");
    w.with(
        "seen-range",
        &[("low", (&low).into()), ("high", (&high).into())],
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ask::pairs;

    #[test]
    fn a_place_is_read_in_any_unit_and_keeps_what_was_typed() {
        let place = Place::read(&pairs("eye=1.6+m&distance=3+m".as_bytes()));
        let viewer = place.viewer.expect("a place");
        assert!((viewer.height_cm() - 160.0).abs() < 1e-9, "{viewer:?}");
        assert_eq!(place.query(), "&eye=1.6+m&distance=3+m");
        let none = Place::read(&pairs(b"eye=&distance="));
        assert!(none.viewer.is_none() && none.wrong.is_empty());
        assert_eq!(none.query(), "");
    }

    #[test]
    fn each_wrong_field_is_told_and_half_a_place_is_none() {
        for (query, wrong) in [
            ("eye=160", vec!["distance"]),
            ("eye=high&distance=3 m", vec!["eye"]),
            ("eye=-1&distance=1 cm", vec!["eye", "distance"]),
        ] {
            let place = Place::read(&pairs(query.as_bytes()));
            let found: Vec<&str> = place.wrong.iter().map(|p| p.place.as_str()).collect();
            assert_eq!(found, wrong, "{query}");
            assert!(place.viewer.is_none(), "{query}");
        }
    }
}
