//! What the numbers on a wide sheet are: two columns below each view.

use crate::drawn::number_ring;
use crate::figure::{Parts, Scene, heading};
use crate::labels::fault_sign;
use crate::look::{self, Look};
use crate::notes::{Note, noted};
use crate::svg::{Svg, escape, number};
use crate::text;
use crate::view::View;

/// Font size, in user units: 2.5 mm.
const SIZE: f64 = 25.0;
/// Line height over font size.
const LEADING: f64 = 1.42;
/// Room before the text, for the number, over the font size.
const INDENT: f64 = 2.1;
/// Room between the two columns of a view.
const GAP: f64 = 40.0;

/// The rows of one view, ready to be set in a width.
pub(crate) struct List {
    heading: String,
    columns: [Vec<Row>; 2],
    width: f64,
}

/// One line of a column.
struct Row {
    words: String,
    /// Bold words after those.
    then: String,
    look: Look,
    mark: Mark,
}

/// What stands before a line.
#[derive(Clone, Copy)]
enum Mark {
    None,
    Number(usize),
    Fault(usize),
}

impl List {
    /// What a view's numbers are, in a width of user units.
    pub fn new(scene: &Scene, view: View, parts: &Parts, width: f64) -> Self {
        let room = 0.5 * (width - GAP) - INDENT * SIZE;
        let mut blocks: Vec<Vec<Row>> = noted(scene, view, parts)
            .iter()
            .map(|(note, _)| rows(note, room))
            .collect();
        let whole: usize = blocks.iter().map(Vec::len).sum();
        // The first column takes the odd line.
        let (mut taken, mut here) = (0, 0);
        for block in &blocks {
            if 2 * taken >= whole {
                break;
            }
            taken += block.len();
            here += 1;
        }
        let rest = blocks.split_off(here);
        Self {
            heading: heading(scene, view),
            columns: [blocks, rest].map(|b| b.into_iter().flatten().collect()),
            width,
        }
    }

    /// Height of the list, in user units.
    pub fn height(&self) -> f64 {
        let lines = self.columns.iter().map(Vec::len).max().unwrap_or(0);
        SIZE * LEADING * (lines as f64 + 1.6)
    }

    /// Draws the list with its upper left corner at `at`.
    pub fn draw(&self, svg: &mut Svg, at: (f64, f64)) {
        svg.open(
            "g",
            &format!("data-part=\"list\" font-size=\"{}\"", number(SIZE)),
        );
        let first = at.1 + SIZE;
        let title = Row {
            words: String::new(),
            then: self.heading.clone(),
            look: look::TEXT,
            mark: Mark::None,
        };
        title.draw(svg, (at.0 - INDENT * SIZE, first));
        for (i, column) in self.columns.iter().enumerate() {
            let x = at.0 + i as f64 * 0.5 * (self.width + GAP);
            for (k, row) in column.iter().enumerate() {
                row.draw(svg, (x, first + SIZE * LEADING * (k as f64 + 1.3)));
            }
        }
        svg.close();
    }
}

impl Row {
    fn draw(&self, svg: &mut Svg, at: (f64, f64)) {
        let middle = (at.0 + 0.8 * SIZE, at.1 - 0.36 * SIZE);
        match self.mark {
            Mark::Number(n) => number_ring(svg, middle, 0.64 * SIZE, n),
            Mark::Fault(n) => fault_sign(svg, middle, 0.85 * SIZE, n),
            Mark::None => {}
        }
        let [x, y] = [at.0 + INDENT * SIZE, at.1].map(number);
        svg.open(
            "text",
            &format!("{} x=\"{x}\" y=\"{y}\"", self.look.attributes()),
        );
        svg.raw(&escape(&self.words));
        if !self.then.is_empty() {
            let gap = if self.words.is_empty() { "" } else { " " };
            svg.raw(gap);
            svg.words("tspan", "font-weight=\"600\"", &self.then);
        }
        svg.close();
    }
}

/// The rows of one note: name and amount on one line where they have room.
fn rows(note: &Note, room: f64) -> Vec<Row> {
    let row = |words: String, then: String, look: Look| Row {
        words,
        then,
        look,
        mark: Mark::None,
    };
    let amount = match &note.interval {
        Some(interval) => format!("{} ({interval})", note.amount),
        None => note.amount.clone(),
    };
    let wide = |words: &str, then: &str| {
        text::width(words, SIZE) + text::width(then, SIZE) * text::BOLD + 0.4 * SIZE
    };
    let mut out: Vec<Row> = text::wrapped(&note.name, SIZE, room)
        .into_iter()
        .map(|words| row(words, String::new(), look::TEXT))
        .collect();
    if let Some(first) = out.first_mut() {
        first.mark = Mark::Number(note.number);
    }
    match out.last_mut().filter(|l| wide(&l.words, &amount) <= room) {
        Some(last) => last.then = amount,
        None => out.push(row(String::new(), amount, look::TEXT)),
    }
    if let Some(wanted) = &note.wanted {
        match out.last_mut().filter(|l| {
            note.fault.is_none() && wide(&l.words, &l.then) + text::width(wanted, SIZE) <= room
        }) {
            Some(last) => last.then = format!("{}, {wanted}", last.then),
            None => out.push(row(wanted.clone(), String::new(), look::WANTED_TEXT)),
        }
    }
    if let Some((n, fault)) = &note.fault {
        for (i, words) in text::wrapped(fault, SIZE * text::BOLD, room)
            .into_iter()
            .enumerate()
        {
            let mut line = row(String::new(), words, look::FAULT_TEXT);
            if i == 0 {
                line.mark = Mark::Fault(*n);
            }
            out.push(line);
        }
    }
    out
}
