//! What pages share: the frame, fields with their faults, and how numbers stand in tables.

use maud::{DOCTYPE, Markup, html};
use sunbu_core::problem::{Fault, Problem};
use sunbu_words::{Lang, Words};

use crate::ask::Ask;
use crate::assets;

/// The page's place in the menu.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Here {
    Home,
    People,
    Garments,
    Plans,
    Checks,
    Rules,
    Settings,
}

impl Here {
    const MENU: [(Self, &'static str, &'static str); 7] = [
        (Self::Home, "/", "page-menu-home"),
        (Self::People, "/people", "page-menu-people"),
        (Self::Garments, "/garments", "page-menu-garments"),
        (Self::Plans, "/plans", "page-menu-plans"),
        (Self::Checks, "/checks", "page-menu-checks"),
        (Self::Rules, "/rules", "page-menu-rules"),
        (Self::Settings, "/settings", "page-menu-settings"),
    ];
}

/// What a page brings to the frame.
pub(crate) struct Frame<'a> {
    /// The page's own title, also its first heading unless the body has one.
    pub title: &'a str,
    /// Where it stands in the menu.
    pub here: Here,
    /// Scripts it needs, by asset name.
    pub scripts: &'a [&'a str],
    /// Style sheets it needs beside that of every page, by asset name.
    pub styles: &'a [&'a str],
    /// Class of the main part, for pages with a layout of their own.
    pub class: Option<&'a str>,
}

impl<'a> Frame<'a> {
    /// A page with the usual frame and no script.
    pub fn new(title: &'a str, here: Here) -> Self {
        Self {
            title,
            here,
            scripts: &[],
            styles: &[],
            class: None,
        }
    }

    /// The same with these scripts.
    #[must_use]
    pub fn with(self, scripts: &'a [&'a str]) -> Self {
        Self { scripts, ..self }
    }

    /// The same with these style sheets.
    #[must_use]
    pub fn styled(self, styles: &'a [&'a str]) -> Self {
        Self { styles, ..self }
    }
}

/// A whole page. `?done=…` in the request's query names the change that led here.
pub(crate) fn frame(ask: &Ask, frame: &Frame<'_>, body: &Markup) -> Markup {
    let w = ask.words();
    let done = ask.queried("done").filter(|done| DONE.contains(done));
    html! {
        (DOCTYPE)
        html lang=(ask.lang.code()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (frame.title) " – Sunbu" }
                link rel="stylesheet" href=(assets::path("style.css"));
                @for style in frame.styles {
                    link rel="stylesheet" href=(assets::path(style));
                }
                link rel="icon" href=(assets::path("icon.svg")) type="image/svg+xml";
                @for script in frame.scripts {
                    script type="module" src=(assets::path(script)) {}
                }
            }
            body {
                a.skip href="#main" { (w.get("page-skip")) }
                header.top {
                    div.top-in {
                        a.brand href="/" { "Sunbu" span lang="ja" { "寸分" } }
                        nav aria-label=(w.get("page-menu")) {
                            ul {
                                @for (here, path, id) in Here::MENU {
                                    li {
                                        a href=(path) aria-current=[(here == frame.here).then_some("page")] {
                                            (w.get(id))
                                        }
                                    }
                                }
                            }
                        }
                        (tongue(ask))
                    }
                }
                main #main tabindex="-1" class=[frame.class] {
                    @if let Some(done) = done {
                        p.notice role="status" { (w.get(&format!("page-done-{done}"))) }
                    }
                    (body)
                }
                footer.foot { (w.get("page-foot")) }
            }
        }
    }
}

/// The changes a page may say it has just made.
const DONE: [&str; 7] = [
    "saved",
    "saved-twin",
    "added",
    "added-twin",
    "erased",
    "kept",
    "reset",
];

/// The switch to the other language, in that language.
fn tongue(ask: &Ask) -> Markup {
    let others = Lang::ALL.iter().copied().filter(|lang| *lang != ask.lang);
    html! {
        @for lang in others {
            form.tongue method="post" action="/language" {
                input type="hidden" name="back" value=(ask.path_and_query);
                button name="lang" value=(lang.code()) lang=(lang.code()) {
                    (Words::of(lang).language_name())
                }
            }
        }
    }
}

/// What is wrong with one field, in words.
pub(crate) struct Wrong {
    /// Name of the field.
    pub place: String,
    /// What the field is called.
    pub label: String,
    /// What is wrong and the way out.
    pub sentence: String,
    /// Name and words of every other field that it is wrong together with.
    pub others: Vec<(String, String)>,
}

impl Wrong {
    /// Whether the field has a part in it.
    fn is_of(&self, place: &str) -> bool {
        self.place == place || self.others.iter().any(|(other, _)| other == place)
    }
}

/// What is wrong with an entry; `label` gives a field's name in words.
pub(crate) fn wrongs(
    w: &Words,
    problems: &[Problem],
    label: impl Fn(&str) -> String,
) -> Vec<Wrong> {
    let wrong = |problem: &Problem| Wrong {
        place: problem.place.clone(),
        label: label(&problem.place),
        sentence: w.fault(problem),
        others: match &problem.fault {
            Fault::Contradiction { other, .. } => {
                let named = other.iter().map(|place| (place.clone(), label(place)));
                named.collect()
            }
            _ => Vec::new(),
        },
    };
    problems.iter().map(wrong).collect()
}

/// The summary of faults at the top of a form: each leads to its field.
pub(crate) fn fault_summary(w: &Words, wrongs: &[Wrong]) -> Markup {
    html! {
        @if !wrongs.is_empty() {
            section.errors role="alert" tabindex="-1" aria-labelledby="errors" {
                h2 #errors { (w.with("form-errors", &[("count", wrongs.len().into())])) }
                ul {
                    @for wrong in wrongs {
                        li {
                            a href={ "#" (field_id(&wrong.place)) } { (wrong.label) }
                            @for (place, label) in &wrong.others {
                                " · " a href={ "#" (field_id(place)) } { (label) }
                            }
                            ": " (wrong.sentence)
                        }
                    }
                }
            }
        }
    }
}

/// The id of the input of a field.
pub(crate) fn field_id(place: &str) -> String {
    format!("f-{}", place.replace('.', "-"))
}

/// The faults of one field, each a sentence before its input.
pub(crate) fn field_faults(wrongs: &[Wrong], place: &str) -> Markup {
    let own: Vec<&Wrong> = wrongs.iter().filter(|wrong| wrong.is_of(place)).collect();
    html! {
        @if !own.is_empty() {
            div id={ (field_id(place)) "-wrong" } {
                @for wrong in own { p.wrong { (wrong.sentence) } }
            }
        }
    }
}

/// Whether a field is at fault.
pub(crate) fn is_bad(wrongs: &[Wrong], place: &str) -> bool {
    wrongs.iter().any(|wrong| wrong.is_of(place))
}
