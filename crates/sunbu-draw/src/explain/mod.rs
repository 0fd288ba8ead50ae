//! The model drawn: the wrap from above, the three balances, the collars, the hem as it is seen.
//!
//! Each drawing takes a real fitting, so that its lengths are true to scale and its numbers are
//! those of the model. The symbols are the ones of the model chapter.

mod balances;
mod collar;
mod viewer;
mod wrap;

pub use balances::balances;
pub use collar::collar;
pub use viewer::viewer;
pub use wrap::wrap;

use sunbu_words::Words;

use crate::canvas::Canvas;
use crate::curve::{Paper, Pt};
use crate::look::{self, Look};
use crate::svg::{Svg, number};

/// Font size of names, in user units.
const SIZE: f64 = 30.0;
/// Half the length of a tick across the end of a dimension, in user units.
const TICK: f64 = 9.0;

/// How a text stands to its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Align {
    Start,
    Middle,
    End,
}

/// One explaining drawing in the making: lengths in centimetres, text at points.
struct Plate {
    canvas: Canvas,
    width: f64,
    height: f64,
}

impl Plate {
    /// A plate of `width` by `height` user units, the origin of its centimetres at `middle` from
    /// the left and `floor` from the top, `scale` user units to the centimetre.
    fn new(width: f64, height: f64, middle: f64, floor: f64, scale: f64) -> Self {
        let paper = Paper {
            middle,
            floor,
            scale,
        };
        Self {
            canvas: Canvas::new(paper),
            width,
            height,
        }
    }

    fn line(&mut self, look: Look, points: &[Pt]) {
        self.canvas.line(look, "line", points);
    }

    fn area(&mut self, look: Look, points: &[Pt]) {
        self.canvas.area(look, "area", points);
    }

    fn dot(&mut self, at: Pt) {
        self.canvas.disc(look::DOT_MARK, "dot", at, 6.0);
    }

    /// A text whose middle line lies at the point's height, moved by user units.
    fn text(&mut self, at: Pt, (dx, dy): (f64, f64), align: Align, look: Look, words: &str) {
        let anchor = match align {
            Align::Start => "start",
            Align::Middle => "middle",
            Align::End => "end",
        };
        let paper = self.canvas.paper;
        let attributes = format!(
            "{} font-size=\"{}\" text-anchor=\"{anchor}\" x=\"{}\" y=\"{}\"",
            look.attributes(),
            number(SIZE),
            number(paper.x(at) + dx),
            number(paper.y(at) + dy + 0.35 * SIZE)
        );
        self.canvas.svg.words("text", &attributes, words);
    }

    /// A dimension between two points, with ticks across its ends and a symbol beside its middle.
    fn dimension(&mut self, a: Pt, b: Pt, align: Align, words: &str) {
        self.line(look::DIMENSION_LINE, &[a, b]);
        let length = a.distance(b).max(1e-9);
        let tick = TICK / self.canvas.paper.scale / length;
        let (dx, dz) = ((b.z - a.z) * tick, (a.x - b.x) * tick);
        for end in [a, b] {
            self.line(
                look::DIMENSION_LINE,
                &[end.moved(dx, dz), end.moved(-dx, -dz)],
            );
        }
        let shift = match align {
            Align::Start => (16.0, 0.0),
            Align::Middle => (0.0, -24.0),
            Align::End => (-16.0, 0.0),
        };
        self.text(a.toward(b, 0.5), shift, align, look::TEXT, words);
    }

    /// The finished drawing with its title and description.
    fn finish(self, words: &Words, id: &str) -> String {
        let mut svg = Svg::default();
        let (w, h) = (number(self.width), number(self.height));
        svg.open(
            "svg",
            &format!(
                "xmlns=\"http://www.w3.org/2000/svg\" class=\"draw-figure\" role=\"img\" \
                 aria-labelledby=\"{id}-title\" aria-describedby=\"{id}-desc\" \
                 viewBox=\"0 0 {w} {h}\" font-family=\"system-ui, 'Noto Sans JP', IPAexGothic, \
                 sans-serif\" lang=\"{}\"",
                words.lang().code()
            ),
        );
        let title = words.get(&format!("draw-{id}"));
        svg.words("title", &format!("id=\"{id}-title\""), &title);
        let description = words.get(&format!("draw-{id}.desc"));
        svg.words("desc", &format!("id=\"{id}-desc\""), &description);
        let ground = look::PAPER_AREA.attributes();
        svg.empty("rect", &format!("{ground} width=\"{w}\" height=\"{h}\""));
        svg.raw(&self.canvas.svg.finish());
        svg.finish()
    }
}

/// A symbol with its value: `x = 3.1`.
fn valued(symbol: &str, cm: f64) -> String {
    let rounded = number(cm);
    format!("{symbol} = {}", rounded.replace('-', "\u{2212}"))
}
