//! What the lines mean, and a scale bar.

use sunbu_words::Words;

use crate::labels::fault_sign;
use crate::look::{self, Look};
use crate::svg::{Svg, number};
use crate::text;

/// Length of the bar, in centimetres.
const BAR_CM: f64 = 20.0;
/// Length of a line's sample.
const SAMPLE: f64 = 80.0;

/// Line height over font size.
const LEADING: f64 = 1.5;
/// Room between two samples.
const GAP: f64 = 36.0;

/// What the lines of one drawing mean, in as many rows as its width needs.
pub(crate) struct Legend {
    rows: Vec<Vec<(Look, &'static str, String)>>,
    room: f64,
    scale: f64,
    bar: String,
    size: f64,
}

impl Legend {
    /// The legend of a drawing in a font size and a width of user units, `scale` of
    /// them to the centimetre.
    pub fn new(
        words: &Words,
        size: f64,
        room: f64,
        scale: f64,
        wanted: bool,
        faults: bool,
    ) -> Self {
        let mut samples = vec![
            (look::HIDDEN_LINE, "draw-legend-hidden"),
            (look::BODY_LINE, "draw-legend-body"),
        ];
        if wanted {
            samples.push((look::WANTED_LINE, "draw-legend-planned"));
        }
        if faults {
            samples.push((look::FAULT_LINE, "draw-legend-fault"));
        }
        let bar = words.cm(BAR_CM);
        // The last row leaves room for the bar.
        let free = room - text::width(&bar, size) - BAR_CM * scale - 2.0 * GAP;
        let mut rows: Vec<Vec<_>> = vec![Vec::new()];
        let mut taken = 0.0;
        for (look, id) in samples {
            let meaning = words.get(id);
            let width = SAMPLE + 14.0 + text::width(&meaning, size) + GAP;
            if taken + width > free && taken > 0.0 {
                rows.push(Vec::new());
                taken = 0.0;
            }
            taken += width;
            if let Some(row) = rows.last_mut() {
                row.push((look, id, meaning));
            }
        }
        Self {
            rows,
            room,
            scale,
            bar,
            size,
        }
    }

    /// Height of all rows, in user units.
    pub fn height(&self) -> f64 {
        self.size * LEADING * self.rows.len() as f64
    }

    /// Draws the legend with the base line of its last row at `at`, and a bar at its end.
    pub fn draw(&self, svg: &mut Svg, at: (f64, f64)) {
        svg.open("g", "data-part=\"legend\"");
        for (i, row) in self.rows.iter().enumerate() {
            let y = at.1 - self.size * LEADING * (self.rows.len() - 1 - i) as f64;
            let mut x = at.0;
            for (look, id, meaning) in row {
                sample(svg, (x, y - 0.34 * self.size), *look, id);
                put(svg, self.size, (x + SAMPLE + 14.0, y), meaning);
                x += SAMPLE + 14.0 + text::width(meaning, self.size) + GAP;
            }
        }
        self.bar(svg, (at.0 + self.room, at.1));
        svg.close();
    }

    /// A bar of 20 cm with its length, the text's end at `end`.
    fn bar(&self, svg: &mut Svg, end: (f64, f64)) {
        let (right, y) = end;
        let step = 0.5 * BAR_CM * self.scale;
        let left = right - text::width(&self.bar, self.size) - 12.0 - 2.0 * step;
        for (from, look) in [(left, look::DOT_MARK), (left + step, look::PAPER_AREA)] {
            let place = format!(
                "stroke=\"{}\" stroke-width=\"2\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"9\"",
                look::INK.hex,
                number(from),
                number(y - 14.0),
                number(step)
            );
            svg.empty("rect", &format!("{} {place}", look.attributes()));
        }
        put(svg, self.size, (left + 2.0 * step + 12.0, y), &self.bar);
    }
}

/// A sample of a line, with what marks it.
fn sample(svg: &mut Svg, at: (f64, f64), look: Look, id: &str) {
    let (x, y) = at;
    let path = format!("M{} {}h{}", number(x), number(y), number(SAMPLE));
    svg.empty("path", &format!("{} d=\"{path}\"", look.attributes()));
    if id == "draw-legend-planned" {
        for end in [x, x + SAMPLE] {
            let disc = format!("cx=\"{}\" cy=\"{}\" r=\"7\"", number(end), number(y));
            svg.empty(
                "circle",
                &format!("{} {disc}", look::WANTED_MARK.attributes()),
            );
        }
    }
    if id == "draw-legend-fault" {
        fault_sign(svg, (x + 0.5 * SAMPLE, y), 22.0, 1);
    }
}

fn put(svg: &mut Svg, size: f64, at: (f64, f64), words: &str) {
    let attributes = format!(
        "{} font-size=\"{}\" x=\"{}\" y=\"{}\"",
        look::SOFT_TEXT.attributes(),
        number(size),
        number(at.0),
        number(at.1)
    );
    svg.words("text", &attributes, words);
}
