//! What a view is drawn on: areas and lines in centimetres, put on paper as paths.

use crate::curve::{Paper, Pt};
use crate::look::Look;
use crate::svg::{Svg, number};

/// A drawing in the making, with the place of the body on its paper.
pub(crate) struct Canvas {
    pub svg: Svg,
    pub paper: Paper,
}

impl Canvas {
    pub fn new(paper: Paper) -> Self {
        Self {
            svg: Svg::default(),
            paper,
        }
    }

    /// A filled area; `part` names what it is, for pages and tests.
    pub fn area(&mut self, look: Look, part: &str, outline: &[Pt]) {
        self.put(look, part, outline, true);
    }

    /// A line.
    pub fn line(&mut self, look: Look, part: &str, points: &[Pt]) {
        self.put(look, part, points, false);
    }

    /// Several lines that are one thing.
    pub fn lines(&mut self, look: Look, part: &str, runs: &[Vec<Pt>]) {
        for run in runs {
            self.line(look, part, run);
        }
    }

    fn put(&mut self, look: Look, part: &str, points: &[Pt], closed: bool) {
        if points.len() < 2 {
            return;
        }
        let data = self.paper.path(points, closed);
        let ends = if closed {
            " stroke-linejoin=\"round\""
        } else {
            " stroke-linejoin=\"round\" stroke-linecap=\"round\""
        };
        let attributes = format!(
            "{} data-part=\"{part}\"{ends} d=\"{data}\"",
            look.attributes()
        );
        self.svg.empty("path", &attributes);
    }

    /// A disc of a radius in user units.
    pub fn disc(&mut self, look: Look, part: &str, at: Pt, radius: f64) {
        let attributes = format!(
            "{} data-part=\"{part}\" cx=\"{}\" cy=\"{}\" r=\"{}\"",
            look.attributes(),
            number(self.paper.x(at)),
            number(self.paper.y(at)),
            number(radius)
        );
        self.svg.empty("circle", &attributes);
    }
}
