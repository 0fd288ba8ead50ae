//! What the lines mean, and a scale bar.

use sunbu_words::Words;

use crate::labels::fault_sign;
use crate::look::{self, Look};
use crate::svg::{Svg, number};
use crate::text;

/// Font size of the legend, in user units.
const SIZE: f64 = 26.0;
/// Length of a line's sample.
const SAMPLE: f64 = 80.0;

/// A row of samples with their meanings from `at` to the right, and a bar of 20 cm at the end of
/// `room`, for a drawing of `scale` user units to the centimetre.
pub(crate) fn draw(
    svg: &mut Svg,
    words: &Words,
    at: (f64, f64),
    room: f64,
    scale: f64,
    wanted: bool,
    faults: bool,
) {
    let (mut x, y) = at;
    svg.open("g", "data-part=\"legend\"");
    let mut samples: Vec<(Look, &str)> = vec![
        (look::HIDDEN_LINE, "draw-legend-hidden"),
        (look::BODY_LINE, "draw-legend-body"),
    ];
    if wanted {
        samples.push((look::WANTED_LINE, "draw-legend-wanted"));
    }
    if faults {
        samples.push((look::FAULT_LINE, "draw-legend-fault"));
    }
    for (look, id) in samples {
        let meaning = words.get(id);
        let middle = y - 0.34 * SIZE;
        let path = format!("M{} {}h{}", number(x), number(middle), number(SAMPLE));
        svg.empty("path", &format!("{} d=\"{path}\"", look.attributes()));
        if id == "draw-legend-wanted" {
            for end in [x, x + SAMPLE] {
                let disc = format!("cx=\"{}\" cy=\"{}\" r=\"7\"", number(end), number(middle));
                svg.empty(
                    "circle",
                    &format!("{} {disc}", look::WANTED_MARK.attributes()),
                );
            }
        }
        if id == "draw-legend-fault" {
            fault_sign(svg, (x + 0.5 * SAMPLE, middle), 22.0, 1);
        }
        put(
            svg,
            look::SOFT_TEXT,
            (x + SAMPLE + 14.0, y),
            "start",
            &meaning,
        );
        x += SAMPLE + 14.0 + text::width(&meaning, SIZE) + 36.0;
    }
    bar(svg, words, (at.0 + room, y), scale);
    svg.close();
}

/// A bar of 20 cm whose right end is at `end`.
pub(crate) fn bar(svg: &mut Svg, words: &Words, end: (f64, f64), scale: f64) {
    let (right, y) = end;
    let step = 10.0 * scale;
    let label = words.cm(20.0);
    let room = text::width(&label, SIZE) + 12.0;
    let left = right - room - 2.0 * step;
    let half = |from: f64, look: Look| {
        format!(
            "{} stroke=\"{}\" stroke-width=\"2\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"9\"",
            look.attributes(),
            look::INK.hex,
            number(from),
            number(y - 14.0),
            number(step)
        )
    };
    svg.empty("rect", &half(left, look::DOT_MARK));
    svg.empty("rect", &half(left + step, look::PAPER_AREA));
    put(
        svg,
        look::SOFT_TEXT,
        (left + 2.0 * step + 12.0, y),
        "start",
        &label,
    );
}

fn put(svg: &mut Svg, look: Look, at: (f64, f64), anchor: &str, words: &str) {
    let attributes = format!(
        "{} font-size=\"{}\" text-anchor=\"{anchor}\" x=\"{}\" y=\"{}\"",
        look.attributes(),
        number(SIZE),
        number(at.0),
        number(at.1)
    );
    svg.words("text", &attributes, words);
}
