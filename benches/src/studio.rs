//! The studio timed from outside: how long the program as it is shipped takes to answer over HTTP,
//! and from its start to its first page.

use std::path::Path;

use serde::Serialize;

use crate::error::Error;
use crate::marking::{MarkingTimes, marking};
use crate::program::{Program, Studio};
use crate::timing::{OverCases, Times, once};

/// How much of the studio is timed.
#[derive(Debug, Clone, Copy)]
pub struct Visits {
    /// Plans whose sliders are moved.
    pub plans: usize,
    /// How often a slider of each is moved.
    pub moves: usize,
    /// How often other pages of each are asked for.
    pub pages: usize,
    /// How many photos are taken in and marked.
    pub photos: usize,
    /// How often the studio is started.
    pub starts: usize,
}

/// How long the studio takes.
#[derive(Debug, Clone, Serialize)]
pub struct StudioTimes {
    /// Its answers.
    #[serde(flatten)]
    pub pages: PageTimes,
    /// Photos on their pages.
    pub marking: MarkingTimes,
    /// From the start of the program to the end of its first page, on a demo studio that is there
    /// already.
    pub start: Times,
}

/// How long answers take, from the request to the last byte.
#[derive(Debug, Clone, Serialize)]
pub struct PageTimes {
    /// A slider's redraw: figure, numbers and steps, in English.
    pub redraw: OverCases,
    /// The same in Japanese.
    pub redraw_ja: OverCases,
    /// The usual size of that answer in English, in units of 1,000 bytes.
    pub redraw_kb: f64,
    /// "Ask the plan": the planner sets the sliders, then the same.
    pub ask: OverCases,
    /// The ways out of every missed wish, asked for when the hands rest.
    pub ways_out: OverCases,
    /// The whole page of a plan, ways out and all.
    pub page: OverCases,
    /// All garments of the demo studio ranked for one person.
    pub worth: OverCases,
}

impl PageTimes {
    /// A slider's redraw in the language in which it takes longer.
    pub fn slower_redraw(&self) -> OverCases {
        let (en, ja) = (self.redraw, self.redraw_ja);
        if en.slowest_ms < ja.slowest_ms {
            ja
        } else {
            en
        }
    }
}

/// Times the studio.
///
/// # Errors
/// [`Error::Studio`] when it does not build, start or answer; [`Error::File`] when there is no
/// place for its store.
pub fn studio(root: &Path, visits: Visits) -> Result<StudioTimes, Error> {
    let program = Program::build(root)?;
    let open = program.open()?;
    let pages = pages(&open, visits)?;
    let marking = marking(&open, visits.photos)?;
    drop(open);
    let started = |_| {
        let (ms, page) = once(|| program.open()?.get("/", "en"));
        page.map(|_| ms)
    };
    let start = (0..visits.starts).map(started).collect::<Result<_, _>>()?;
    Ok(StudioTimes {
        pages,
        marking,
        start: Times::of(start),
    })
}

fn pages(open: &Studio, visits: Visits) -> Result<PageTimes, Error> {
    let plans = (0..visits.plans).map(|i| Sliders::of(open, i));
    let plans: Vec<Sliders> = plans.collect::<Result<_, _>>()?;
    let over = |runs, language, path: &dyn Fn(&Sliders, usize) -> String| {
        let times = plans.iter().map(|plan| {
            open.get(&path(plan, 0), language)?; // not counted, as with every other figure
            let visit = |i| {
                let path = path(plan, i);
                let (ms, page) = once(|| open.get(&path, language));
                page.map(|_| ms)
            };
            let runs = (1..=runs).map(visit).collect::<Result<Vec<f64>, Error>>();
            runs.map(Times::of)
        });
        let times: Vec<Times> = times.collect::<Result<_, Error>>()?;
        Ok::<_, Error>(OverCases::of(&times))
    };
    let sizes = plans.iter().map(|plan| {
        let answer = open.get(&plan.at("/redraw", 0), "en")?;
        #[expect(clippy::cast_precision_loss, reason = "far below 2^52 bytes")]
        Ok(answer.len() as f64 / 1e3)
    });
    let sizes: Vec<f64> = sizes.collect::<Result<_, Error>>()?;
    Ok(PageTimes {
        redraw: over(visits.moves, "en", &|plan, i| plan.at("/redraw", i))?,
        redraw_ja: over(visits.moves, "ja", &|plan, i| plan.at("/redraw", i))?,
        redraw_kb: Times::of(sizes).median_ms,
        ask: over(visits.pages, "en", &|plan, i| {
            plan.at("/redraw", i) + "&ask=1"
        })?,
        ways_out: over(visits.pages, "en", &|plan, i| plan.at("/ways-out", i))?,
        page: over(visits.pages, "en", &|plan, i| plan.at("", i))?,
        worth: over(visits.pages, "en", &|plan, _| plan.worth.clone())?,
    })
}

/// The sliders of one person in one garment.
struct Sliders {
    path: String,
    /// Where they stand, but for the hem.
    query: String,
    /// Where the hem stands, in centimetres.
    hem: f64,
    /// The page that ranks all garments for the person.
    worth: String,
}

impl Sliders {
    /// Those of the plan number `i`, other people in other garments each time, where the planner
    /// has set them.
    fn of(open: &Studio, i: usize) -> Result<Self, Error> {
        // The demo studio has 15 people and 40 garments, numbered from 1; 7 and 15 have nothing in
        // common, so all people come up.
        let person = 1 + (7 * i) % 15;
        let path = format!("/people/{person}/in/{}", 1 + i % 40);
        let address = open.sent_on(&path)?;
        let (_, query) = address.split_once('?').ok_or_else(|| {
            Error::Studio(format!("{path} leads to {address}, which has no numbers"))
        })?;
        let (hem, rest): (Vec<&str>, Vec<&str>) = query
            .split('&')
            .partition(|pair| pair.starts_with("hem_height="));
        let hem = hem
            .first()
            .and_then(|pair| pair.split_once('=')?.1.parse().ok());
        Ok(Self {
            hem: hem.ok_or_else(|| Error::Studio(format!("{address} has no hem")))?,
            query: rest.join("&"),
            worth: format!("/people/{person}/worth"),
            path,
        })
    }

    /// The address of a page of this plan after the hem's slider has been moved the `moved`-th time.
    fn at(&self, page: &str, moved: usize) -> String {
        // Up and down by millimetres, so that no two answers in a row are the same.
        let by = [0.0, 0.3, 0.6, 0.4, 0.1][moved % 5];
        let hem = self.hem + by;
        format!("{}{page}?{}&hem_height={hem:.1}", self.path, self.query)
    }
}
