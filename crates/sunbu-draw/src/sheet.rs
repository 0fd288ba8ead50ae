//! A sheet for the wall: both views to a stated scale on A4.
//!
//! On a page turned wide the places carry numbers, and below each figure stands what they are; on
//! an upright page the labels stand beside each figure.

use crate::drawn::{Drawn, Type, room_for_text};
use crate::figure::{Labels, Parts, Scene, heading};
use crate::legend::Legend;
use crate::list::List;
use crate::look::{self, Look};
use crate::notes::description;
use crate::svg::{Svg, number};
use crate::view::View;

/// How an A4 page is turned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Page {
    /// Front and back side by side, their numbers explained below.
    #[default]
    Landscape,
    /// Front above back, with full labels.
    Portrait,
}

/// User units of a sheet per millimetre of paper.
const UNITS_PER_MM: f64 = 10.0;
/// Unprinted margin, in user units: 10 mm, more than printers leave.
const MARGIN: f64 = 100.0;
/// Scales tried, largest first: one to this.
const SCALES: [f64; 7] = [10.0, 12.5, 15.0, 17.5, 20.0, 25.0, 50.0];
/// Font size of the title.
const TITLE: f64 = 52.0;
/// Font size of the text below the figures.
const SMALL: f64 = 27.0;
/// Room for the title.
const HEAD: f64 = 100.0;
/// Room for the legend.
const FOOT: f64 = 50.0;
/// Room between the lists of the two views, on a wide page.
const BETWEEN: f64 = 70.0;
/// Type of the labels on an upright page: 2.7 to 3 mm high.
const TYPE: Type = Type {
    size: 30.0,
    small: 27.0,
    room: 0.0,
    margin: 0.0,
    ring: 27.0,
    sign: 24.0,
    legend: 26.0,
};
/// Least and most room for a label's text on an upright page.
const ROOM: (f64, f64) = (300.0, 450.0);

impl Page {
    /// Width and height in user units (ISO 216: A4 is 210 by 297 mm).
    const fn size(self) -> (f64, f64) {
        match self {
            Page::Landscape => (297.0 * UNITS_PER_MM, 210.0 * UNITS_PER_MM),
            Page::Portrait => (210.0 * UNITS_PER_MM, 297.0 * UNITS_PER_MM),
        }
    }

    /// Room of one view: width and height.
    const fn room(self) -> (f64, f64) {
        let (width, height) = self.size();
        let (width, height) = (width - 2.0 * MARGIN, height - 2.0 * MARGIN - HEAD - FOOT);
        match self {
            Page::Landscape => (width / 2.0, height),
            Page::Portrait => (width, height / 2.0),
        }
    }

    /// Where a view's room begins.
    fn corner(self, i: usize) -> (f64, f64) {
        let (width, height) = self.room();
        match self {
            Page::Landscape => (MARGIN + i as f64 * width, MARGIN + HEAD),
            Page::Portrait => (MARGIN, MARGIN + HEAD + i as f64 * height),
        }
    }

    /// A view drawn to a scale of one to `scale`.
    fn drawn(self, scene: &Scene, parts: &Parts, view: View, scale: f64) -> Drawn {
        let units = 10.0 * UNITS_PER_MM / scale;
        let room = room_for_text(parts, self.room().0, units).clamp(ROOM.0, ROOM.1);
        let labels = match self {
            Page::Landscape => Labels::Numbers,
            Page::Portrait => Labels::Full,
        };
        Drawn::new(scene, view, labels, parts, units, Type { room, ..TYPE })
    }
}

/// Both views on one page of A4, to the largest of the usual scales that fits.
pub fn sheet(scene: &Scene, page: Page) -> String {
    let parts = Parts::of(scene, scene.shown);
    let (room_x, mut room_y) = page.room();
    let mut lists = Vec::new();
    if page == Page::Landscape {
        lists = View::ALL
            .map(|v| List::new(scene, v, &parts, room_x - 0.5 * BETWEEN))
            .into();
    }
    let listed = lists.iter().map(List::height).fold(0.0, f64::max);
    room_y -= listed;
    let fits = |d: &Drawn| d.width <= room_x + 0.1 && d.height <= room_y + 0.1;
    let mut scale = SCALES[SCALES.len() - 1];
    let mut views = View::ALL.map(|view| page.drawn(scene, &parts, view, scale));
    for &larger in &SCALES {
        let tried = View::ALL.map(|view| page.drawn(scene, &parts, view, larger));
        if tried.iter().all(fits) {
            (scale, views) = (larger, tried);
            break;
        }
    }
    let mut svg = Svg::default();
    open(&mut svg, scene, page, &parts);
    head(&mut svg, scene, page, scale);
    for (i, (view, drawn)) in View::ALL.into_iter().zip(views).enumerate() {
        let (x, y) = page.corner(i);
        let x = x + 0.5 * (room_x - drawn.width);
        let move_to = format!("transform=\"translate({} {})\"", number(x), number(y));
        svg.open("g", &move_to);
        svg.words("title", "", &heading(scene, view));
        svg.raw(&drawn.finish(&parts, scene, false));
        svg.close();
    }
    let (width, height) = page.size();
    for (i, list) in lists.iter().enumerate() {
        let x = MARGIN + i as f64 * (room_x + 0.5 * BETWEEN);
        list.draw(&mut svg, (x, height - MARGIN - FOOT - listed));
    }
    let missed = scene.shown.missed().next().is_some();
    let units = 10.0 * UNITS_PER_MM / scale;
    let room = width - 2.0 * MARGIN;
    let legend = Legend::new(
        scene.words,
        TYPE.legend,
        room,
        units,
        scene.wanted.is_some(),
        missed,
    );
    legend.draw(&mut svg, (MARGIN, height - MARGIN));
    svg.finish()
}

/// The document's head: size, title and description.
fn open(svg: &mut Svg, scene: &Scene, page: Page, parts: &Parts) {
    let (width, height) = page.size();
    let [w, h] = [width, height].map(number);
    let [mm_x, mm_y] = [width / UNITS_PER_MM, height / UNITS_PER_MM].map(number);
    svg.open(
        "svg",
        &format!(
            "xmlns=\"http://www.w3.org/2000/svg\" class=\"draw-sheet\" role=\"img\" \
             aria-labelledby=\"sheet-title\" aria-describedby=\"sheet-desc\" \
             width=\"{mm_x}mm\" height=\"{mm_y}mm\" viewBox=\"0 0 {w} {h}\" \
             font-family=\"system-ui, 'Noto Sans JP', IPAexGothic, sans-serif\" lang=\"{}\"",
            scene.words.lang().code()
        ),
    );
    svg.words("title", "id=\"sheet-title\"", scene.title);
    let said =
        View::ALL.map(|v| format!("{}: {}", heading(scene, v), description(scene, v, parts)));
    svg.words("desc", "id=\"sheet-desc\"", &said.join(". "));
    let ground = look::PAPER_AREA.attributes();
    svg.empty("rect", &format!("{ground} width=\"{w}\" height=\"{h}\""));
}

/// Title, and the scale in words.
fn head(svg: &mut Svg, scene: &Scene, page: Page, scale: f64) {
    let (width, _) = page.size();
    let (right, y) = (width - MARGIN, MARGIN + TITLE * 0.6);
    put(svg, look::TEXT, TITLE, "start", (MARGIN, y), scene.title);
    let scale = number(scale);
    let scale = scene
        .words
        .with("draw-scale", &[("scale", (&scale).into())]);
    put(svg, look::SOFT_TEXT, SMALL, "end", (right, y), &scale);
    let line = format!("M{} {}H{}", number(MARGIN), number(y + 26.0), number(right));
    let look = look::FINE_LINE.attributes();
    svg.empty("path", &format!("{look} d=\"{line}\""));
}

/// A line of text.
pub(crate) fn put(svg: &mut Svg, look: Look, size: f64, anchor: &str, at: (f64, f64), words: &str) {
    let attributes = format!(
        "{} font-size=\"{}\" text-anchor=\"{anchor}\" x=\"{}\" y=\"{}\"",
        look.attributes(),
        number(size),
        number(at.0),
        number(at.1)
    );
    svg.words("text", &attributes, words);
}
