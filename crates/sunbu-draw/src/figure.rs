//! The figure: one view of a dressed person with its numbers, as one SVG.

use sunbu_core::body::Body;
use sunbu_core::drape::Drum;
use sunbu_core::dressing::{Fitting, Given, Plan, Quantity};
use sunbu_core::garment::Garment;
use sunbu_words::Words;

use crate::drawn::{Drawn, ON_PAGE, ON_PHONE};
use crate::lines::Lines;
use crate::notes::description;
use crate::person::Person;
use crate::svg::{Svg, UNITS_PER_CM, number};
use crate::upper::Sleeve;
use crate::view::View;

/// What is drawn.
#[derive(Clone, Copy)]
pub struct Scene<'a> {
    /// The person.
    pub body: &'a Body,
    /// The garment.
    pub garment: &'a Garment,
    /// The person in the garment.
    pub fitting: &'a Fitting,
    /// The dressing that is drawn, with its prediction and its checks.
    pub shown: &'a Plan,
    /// The dressing it is held against, as a second line; none when there is nothing to compare.
    pub wanted: Option<&'a Plan>,
    /// The language.
    pub words: &'a Words,
    /// Who wears what, in the reader's language.
    pub title: &'a str,
}

/// How the numbers are given.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Labels {
    /// Name, value and interval beside the figure.
    #[default]
    Full,
    /// Numbers only, for a narrow page that lists [`notes()`](crate::notes()) beside or below.
    Numbers,
    /// None.
    Bare,
}

/// How a figure is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Style<'a> {
    /// How the numbers are given.
    pub labels: Labels,
    /// Start of the ids in the drawing: two figures on one page need two of them.
    pub id: &'a str,
}

impl Default for Style<'_> {
    fn default() -> Self {
        Self {
            labels: Labels::Full,
            id: "figure",
        }
    }
}

/// The pieces that all drawing starts from.
pub(crate) struct Parts<'a> {
    pub lines: Lines<'a>,
    pub person: Person<'a>,
    pub sleeve: Sleeve,
    pub drum: Drum,
    pub obiage: f64,
    pub collar_width: f64,
}

impl<'a> Parts<'a> {
    pub fn of(scene: &Scene<'a>, plan: &Plan) -> Self {
        let lines = Lines::new(scene.body, scene.fitting, plan);
        let person = Person::of(scene.body);
        let seen = |q: Quantity| plan.prediction.value(q);
        let drum = lines.drum;
        Self {
            sleeve: Sleeve::of(&person, scene.garment, scene.fitting.value(Given::Yuki)),
            person,
            drum,
            obiage: seen(Quantity::ObiageShow),
            collar_width: scene.garment.worn_collar_width().value_cm(),
            lines,
        }
    }
}

/// One view of the scene as an SVG document.
///
/// One user unit is a millimetre on the body. `<title>` and `<desc>` say in words what the
/// drawing shows, numbers included.
pub fn figure(scene: &Scene, view: View, style: Style) -> String {
    let parts = Parts::of(scene, scene.shown);
    let ty = match style.labels {
        Labels::Numbers => ON_PHONE,
        Labels::Full | Labels::Bare => ON_PAGE,
    };
    let drawn = Drawn::new(scene, view, style.labels, &parts, UNITS_PER_CM, ty);
    let mut svg = Svg::default();
    let (width, height) = (drawn.width, drawn.height);
    let key = format!("{}-{}", style.id, view.key());
    svg.open(
        "svg",
        &format!(
            "xmlns=\"http://www.w3.org/2000/svg\" class=\"draw-figure\" role=\"img\" \
             aria-labelledby=\"{key}-title\" aria-describedby=\"{key}-desc\" \
             viewBox=\"0 0 {} {}\" font-family=\"system-ui, 'Noto Sans JP', IPAexGothic, \
             sans-serif\" lang=\"{}\"",
            number(width),
            number(height),
            scene.words.lang().code()
        ),
    );
    svg.words(
        "title",
        &format!("id=\"{key}-title\""),
        &heading(scene, view),
    );
    svg.words(
        "desc",
        &format!("id=\"{key}-desc\""),
        &description(scene, view, &parts),
    );
    svg.raw(&drawn.finish(&parts, scene, true));
    svg.finish()
}

/// The view's heading: who wears what, seen from where.
pub(crate) fn heading(scene: &Scene, view: View) -> String {
    let id = match view {
        View::Front => "draw-title-front",
        View::Back => "draw-title-back",
    };
    scene.words.with(id, &[("title", scene.title.into())])
}
