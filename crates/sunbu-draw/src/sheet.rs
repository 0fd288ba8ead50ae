//! A sheet for the wall: both views to a stated scale on A4, and what is missed in words.

use sunbu_core::dressing::Check;

use crate::figure::{Drawn, Labels, Parts, Scene, Type, heading, room_for_text};
use crate::hull::View;
use crate::labels::fault_sign;
use crate::legend;
use crate::look::{self, Look};
use crate::svg::{Svg, number};
use crate::text;

/// How an A4 page is turned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Page {
    /// Front and back side by side.
    #[default]
    Landscape,
    /// Front above back.
    Portrait,
}

/// User units of a sheet per millimetre of paper.
const UNITS_PER_MM: f64 = 10.0;
/// Unprinted margin, in user units: 8 mm, what most printers leave.
const MARGIN: f64 = 80.0;
/// Scales tried, largest first: one to this.
const SCALES: [f64; 6] = [10.0, 12.5, 15.0, 20.0, 25.0, 50.0];
/// Font size of the title.
const TITLE: f64 = 52.0;
/// Font size of the text below the figures.
const SMALL: f64 = 27.0;
/// Room for the title.
const HEAD: f64 = 100.0;
/// Least room for legend and text below the figures.
const FOOT: f64 = 110.0;

impl Page {
    /// Width and height in user units (ISO 216: A4 is 210 by 297 mm).
    const fn size(self) -> (f64, f64) {
        match self {
            Page::Landscape => (297.0 * UNITS_PER_MM, 210.0 * UNITS_PER_MM),
            Page::Portrait => (210.0 * UNITS_PER_MM, 297.0 * UNITS_PER_MM),
        }
    }

    /// Type of the labels, 2.5 to 3 mm high, with the least and the most room for their text.
    const fn labels(self) -> (Type, f64, f64) {
        let margin = 0.0;
        match self {
            Page::Landscape => (
                Type {
                    size: 25.0,
                    small: 23.0,
                    room: 0.0,
                    margin,
                },
                235.0,
                330.0,
            ),
            Page::Portrait => (
                Type {
                    size: 30.0,
                    small: 27.0,
                    room: 0.0,
                    margin,
                },
                300.0,
                450.0,
            ),
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
}

/// Both views on one page of A4, to the largest scale of the usual ones that fits.
pub fn sheet(scene: &Scene, page: Page) -> String {
    let parts = Parts::of(scene, scene.shown);
    let (room_x, room_y) = page.room();
    let (ty, least, most) = page.labels();
    let drawn = |scale: f64| {
        let units = 10.0 * UNITS_PER_MM / scale;
        let room = room_for_text(&parts, room_x, units).clamp(least, most);
        let ty = Type { room, ..ty };
        View::ALL.map(|view| Drawn::new(scene, view, Labels::Full, &parts, units, ty))
    };
    let fits = |d: &Drawn| d.width <= room_x + 0.1 && d.height <= room_y;
    let mut scale = SCALES[SCALES.len() - 1];
    let mut views = drawn(scale);
    for &larger in &SCALES {
        let tried = drawn(larger);
        if tried.iter().all(fits) {
            (scale, views) = (larger, tried);
            break;
        }
    }
    let (width, height) = page.size();
    let mut svg = Svg::default();
    svg.open(
        "svg",
        &format!(
            "xmlns=\"http://www.w3.org/2000/svg\" class=\"draw-sheet\" role=\"img\" \
             aria-labelledby=\"sheet-title\" width=\"{}mm\" height=\"{}mm\" viewBox=\"0 0 {} {}\" \
             font-family=\"system-ui, 'Noto Sans JP', IPAexGothic, sans-serif\" lang=\"{}\"",
            number(width / UNITS_PER_MM),
            number(height / UNITS_PER_MM),
            number(width),
            number(height),
            scene.words.lang().code()
        ),
    );
    svg.words("title", "id=\"sheet-title\"", scene.title);
    let paper = format!("width=\"{}\" height=\"{}\"", number(width), number(height));
    svg.empty(
        "rect",
        &format!("{} {paper}", look::PAPER_AREA.attributes()),
    );
    head(&mut svg, scene, page, scale);
    let mut low: f64 = 0.0;
    for (i, (view, d)) in View::ALL.into_iter().zip(views).enumerate() {
        let (column, row) = match page {
            Page::Landscape => (i as f64, 0.0),
            Page::Portrait => (0.0, i as f64),
        };
        let x = MARGIN + column * room_x + 0.5 * (room_x - d.width);
        let y = MARGIN + HEAD + row * room_y;
        low = low.max(y + d.height);
        svg.open(
            "g",
            &format!("transform=\"translate({} {})\"", number(x), number(y)),
        );
        svg.words("title", "", &heading(scene, view));
        svg.raw(&d.finish(&parts, scene, false));
        svg.close();
    }
    foot(&mut svg, scene, page, scale, low);
    svg.finish()
}

/// Title, and the scale in words.
fn head(svg: &mut Svg, scene: &Scene, page: Page, scale: f64) {
    let (width, _) = page.size();
    put(
        svg,
        look::TEXT,
        TITLE,
        "start",
        (MARGIN, MARGIN + TITLE),
        scene.title,
    );
    let scale = scene
        .words
        .with("draw-scale", &[("scale", (&number(scale)).into())]);
    put(
        svg,
        look::SOFT_TEXT,
        SMALL,
        "end",
        (width - MARGIN, MARGIN + TITLE),
        &scale,
    );
    let line = format!(
        "M{} {}H{}",
        number(MARGIN),
        number(MARGIN + TITLE + 22.0),
        number(width - MARGIN)
    );
    svg.empty(
        "path",
        &format!("{} d=\"{line}\"", look::FINE_LINE.attributes()),
    );
}

/// Legend, bar, and every missed wish in words.
fn foot(svg: &mut Svg, scene: &Scene, page: Page, scale: f64, low: f64) {
    let (width, height) = page.size();
    let missed: Vec<&Check> = scene.shown.missed().collect();
    let legend_y = height - MARGIN;
    let units = 10.0 * UNITS_PER_MM / scale;
    let room = width - 2.0 * MARGIN;
    let (wanted, faults) = (scene.wanted.is_some(), !missed.is_empty());
    legend::draw(
        svg,
        scene.words,
        (MARGIN, legend_y),
        room,
        units,
        wanted,
        faults,
    );
    // As many lines as there is paper for, two columns; the figures name every fault anyway.
    let column = 0.5 * room - 60.0;
    let step = SMALL * 1.45;
    let (top, bottom) = (low + step, legend_y - 1.6 * step);
    let (mut x, mut y) = (MARGIN, top);
    for (i, check) in missed.into_iter().enumerate() {
        let lines = text::wrapped(&scene.words.check(check), SMALL, column - 50.0);
        if y + step * (lines.len() as f64 - 1.0) > bottom {
            if x > MARGIN {
                break;
            }
            (x, y) = (MARGIN + 0.5 * room + 30.0, top);
        }
        fault_sign(svg, (x + 18.0, y - 0.34 * SMALL), 24.0, i + 1);
        for line in lines {
            put(svg, look::TEXT, SMALL, "start", (x + 50.0, y), &line);
            y += step;
        }
    }
}

fn put(svg: &mut Svg, look: Look, size: f64, anchor: &str, at: (f64, f64), words: &str) {
    let attributes = format!(
        "{} font-size=\"{}\" text-anchor=\"{anchor}\" x=\"{}\" y=\"{}\"",
        look.attributes(),
        number(size),
        number(at.0),
        number(at.1)
    );
    svg.words("text", &attributes, words);
}
