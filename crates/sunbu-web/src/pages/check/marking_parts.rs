//! What the page of a photo's marks is built from; its script fills in where they are.

use maud::{Markup, html};
use serde_json::{Value, json};
use sunbu_core::photo::{Mark, Marking, Trust, View};
use sunbu_store::Photo;
use sunbu_words::Words;

/// The page's main part. `answered` is what the script is told of the marks as they are; none when
/// they no longer read. `next` is another photo that waits for its marks.
pub(super) fn body(
    w: &Words,
    check: &str,
    photo: &Photo,
    answered: Option<&Value>,
    next: Option<&Photo>,
) -> Markup {
    let (home, path) = (
        format!("/checks/{}", photo.check),
        format!("/checks/{}/photos/{}", photo.check, photo.id),
    );
    let ways = ways_on(w, &home, next);
    html! {
        p.crumb { a href=(home) { (check) } }
        h1 { (w.view(photo.view)) }
        @match (answered, &photo.marking) {
            (Some(answered), Some(marking)) => {
                noscript { p.warn { (w.get("marking-no-script")) } }
                div #marking data-path=(path) data-photo={ (photo.id) "-" (photo.added_at) }
                    data-state=(answered) data-words=(words(w)) {
                    (told(w))
                    div.desk {
                        (stage(w, photo, marking, &path, &ways))
                        div.side {
                            (selected(w))
                            (marks(w, photo.view, marking))
                            (references(w, marking))
                        }
                    }
                }
            }
            _ => {
                p.errors { (w.get("checks-marks-unread")) }
                img src={ (path) "/picture.jpg" } alt=(w.view(photo.view));
            }
        }
        (ways)
    }
}

/// Where to go from here: what the photos say, another photo, the check. Below the photo, and again
/// below the list, which is long on a phone.
fn ways_on(w: &Words, home: &str, next: Option<&Photo>) -> Markup {
    html! {
        div.acts.ways-on {
            a.button.main-act href={ (home) "/report" } { (w.get("checks-report")) }
            @if let Some(next) = next {
                a.button href={ (home) "/photos/" (next.id) } {
                    (w.with("marking-next", &[("view", (&w.view(next.view)).into())]))
                }
            }
            a.button href=(home) { (w.get("marking-back")) }
        }
    }
}

/// What is to be done next, what could not be done, and a choice between two people's marks.
fn told(w: &Words) -> Markup {
    html! {
        p #task role="status" {}
        p.warn #kept-here role="alert" hidden {}
        div.errors #wrong role="alert" hidden { ul #wrong-list {} }
        section.warn #stale role="alert" hidden {
            h2 { (w.get("marking-stale")) }
            p { (w.get("marking-stale-how")) }
            div.acts {
                button #keep-mine type="button" { (w.get("marking-stale-mine")) }
                button #take-theirs type="button" { (w.get("marking-stale-theirs")) }
            }
        }
    }
}

/// The picture in its frame, with what is drawn over it and the tools below it.
fn stage(w: &Words, photo: &Photo, marking: &Marking, path: &str, ways: &Markup) -> Markup {
    let [width, height] = marking.shot.size;
    html! {
        div.look {
            div.tools role="toolbar" aria-label=(w.get("marking-tools")) hidden {
                button #undo type="button" { (w.get("marking-undo")) }
                button #smaller type="button" { (w.get("marking-smaller")) }
                button #larger type="button" { (w.get("marking-larger")) }
                span.soft #saved {}
            }
            div.frame #frame tabindex="0" role="group" aria-label=(w.get("marking-picture")) aria-describedby="keys" {
                div.stage #stage {
                    img #photo src={ (path) "/picture.jpg" } alt=(w.view(photo.view)) width=(width) height=(height);
                    svg #over viewBox={ "0 0 " (width) " " (height) } aria-hidden="true" {}
                }
            }
            canvas #loupe width="320" height="320" hidden aria-hidden="true" {}
            p.soft.small #keys { (w.get("marking-keys")) }
            ul.legend aria-label=(w.get("marking-legend")) {
                @for (shape, id) in [("hand", "marking-by-hand"), ("follows", "marking-follows"), ("guess", "marking-guess"), ("unsure", "marking-unsure")] {
                    li { span.shape data-shape=(shape) aria-hidden="true" {} (w.get(id)) }
                }
            }
            (ways)
        }
    }
}

/// The mark under the hand: its name, where to put it, what can be done with it.
fn selected(w: &Words) -> Markup {
    html! {
        section.chosen #chosen aria-live="polite" hidden {
            h2 #chosen-name {}
            p #chosen-hint {}
            p.soft #chosen-state {}
            div.acts {
                button.main-act type="button" data-act="sure" { (w.get("marking-call-sure")) }
                button type="button" data-act="unsure" { (w.get("marking-call-unsure")) }
                button type="button" data-act="follow" { (w.get("marking-let-follow")) }
                button type="button" data-act="out" { (w.get("marking-leave-out")) }
                button type="button" data-act="again" { (w.get("marking-again")) }
            }
        }
    }
}

fn marks(w: &Words, view: View, marking: &Marking) -> Markup {
    let shown = Mark::ALL.iter().filter(|mark| mark.shows_in(view));
    html! {
        h2 { (w.get("marking-marks")) }
        ul.marks #marks {
            @for (i, &mark) in shown.enumerate() {
                li id={ "mark-" (mark.key()) } data-mark=(mark.key()) {
                    button.pick-mark type="button" aria-pressed="false" {
                        span.no aria-hidden="true" { (i + 1) }
                        span.shape data-shape="none" aria-hidden="true" {}
                        span.name { (w.mark(mark)) }
                        span.small.state { (w.get(state(marking, mark))) }
                    }
                    button.row-act type="button" hidden {}
                    p.small.soft.hint { (w.mark_hint(mark)) }
                }
            }
        }
    }
}

/// How a mark is, without a script.
fn state(marking: &Marking, mark: Mark) -> &'static str {
    if marking.left_out.contains(&mark) {
        return "marking-left-out";
    }
    match marking.shot.marks.get(&mark) {
        None => "marking-not-in-sight",
        Some(placed) => match (marking.moved.contains(&mark), placed.trust) {
            (true, Trust::Sure) => "marking-by-hand",
            (true, Trust::Unsure) => "marking-unsure",
            (false, Trust::Sure) => "marking-follows",
            (false, Trust::Unsure) => "marking-guess",
        },
    }
}

/// What else is known in the picture, and how marks are set.
fn references(w: &Words, marking: &Marking) -> Markup {
    let tape = marking.tape.as_ref().map(|tape| tape.length.as_str());
    html! {
        h2 { (w.get("marking-known")) }
        p.soft { (w.get("marking-known-how")) }
        div.field {
            label.keep {
                input #snapping type="checkbox" checked[marking.snapping];
                (w.get("marking-snapping"))
            }
            p.how { (w.get("marking-snapping-how")) }
        }
        div.field {
            label.keep {
                input #mirrored type="checkbox" checked[marking.shot.mirrored];
                (w.get("marking-mirrored"))
            }
            p.how { (w.get("marking-mirrored-how")) }
        }
        div.field data-problem="lens_height" {
            label for="lens-height" { (w.get("marking-lens-height")) }
            p.how { (w.get("marking-lens-height-how")) }
            p.wrong id="lens-height-wrong" {}
            input id="lens-height" type="text" inputmode="text" autocomplete="off" value=(marking.lens_height)
                aria-describedby="lens-height-wrong";
        }
        div.field #sheet {
            p { strong { (w.get("marking-sheet")) } }
            p.how { (w.get("marking-sheet-how")) }
            div.acts {
                button type="button" data-refer="sheet" { (w.get("marking-sheet-set")) }
                button type="button" data-drop="sheet" hidden { (w.get("marking-sheet-drop")) }
            }
        }
        div.field #tape data-problem="tape_length" {
            p { strong { (w.get("marking-tape")) } }
            p.how { (w.get("marking-tape-how")) }
            div.acts {
                button type="button" data-refer="tape" { (w.get("marking-tape-set")) }
                button type="button" data-drop="tape" hidden { (w.get("marking-tape-drop")) }
            }
            div #tape-read hidden {
                label for="tape-length" { (w.get("marking-tape-length")) }
                p.wrong id="tape-length-wrong" {}
                input id="tape-length" type="text" autocomplete="off" value=(tape.unwrap_or_default())
                    aria-describedby="tape-length-wrong";
            }
        }
    }
}

/// The words that the script says, by the names it knows them by.
fn words(w: &Words) -> Value {
    let ids = [
        "tap-floor",
        "tap-crown",
        "tap-mark",
        "tap-sheet-1",
        "tap-sheet-2",
        "tap-sheet-3",
        "tap-sheet-4",
        "tap-tape-1",
        "tap-tape-2",
        "ready",
        "by-hand",
        "follows",
        "guess",
        "unsure",
        "left-out",
        "not-in-sight",
        "not-yet",
        "leave-out",
        "again",
        "by-hand-now",
        "saving",
        "saved",
        "lost",
        "gone",
    ];
    let mut words = serde_json::Map::new();
    for id in ids {
        words.insert(id.to_owned(), json!(w.get(&format!("marking-{id}"))));
    }
    let lines = [Mark::Floor, Mark::Crown].map(|mark| (mark.key(), w.mark_hint(mark)));
    for (key, hint) in lines {
        words.insert(format!("hint-{key}"), json!(hint));
    }
    Value::Object(words)
}
