//! How many taps a photo from the front takes until all marks stand where they should, on dressings
//! that are off by two centimetres everywhere: `cargo run -p sunbu-render --example taps -- FIRST_SEED
//! COUNT`. Counted are upload, floor, crown, each mark that is dragged or left out, and the report.

use sunbu_core::photo::{Edge, Gray, Mark, Marking, Placed, Placing, Subject, Trust, View};
use sunbu_render::{Scene, Truth};

/// How far off a mark may stay, in pixels at 1,500 from floor to crown.
const OFF_PX: f64 = 8.0;

fn main() {
    let mut numbers = std::env::args()
        .skip(1)
        .map_while(|a| a.parse::<u64>().ok());
    let (first, count) = (numbers.next().unwrap_or(1), numbers.next().unwrap_or(1));
    for seed in first..first + count {
        println!(
            "{seed}: {}",
            taps(
                &Scene::random_from(seed, View::Front).everywhere_off(seed, 2.0),
                seed
            )
        );
    }
}

fn taps(scene: &Scene, seed: u64) -> String {
    let (truth, gray) = (scene.truth(), scene.render(seed).gray());
    let subject = Subject {
        body: &scene.subject.body,
        fitting: &scene.subject.fitting,
        planned: &scene.subject.planned,
    };
    let mut marking = Marking::new(View::Front, scene.lens.size, None);
    let mut told = vec!["upload".to_owned()];
    let mut placing = Placing::default();
    for mark in [Mark::Floor, Mark::Crown] {
        placing = hand(&mut marking, mark, &truth, &subject, &gray);
        told.push(mark.key().to_owned());
    }
    let shown = marking.shot.marks.keys().copied();
    let hidden = shown.filter(|mark| !truth[mark].visible && !marking.moved.contains(mark));
    let hidden: Vec<Mark> = hidden.collect();
    told.extend(hidden.iter().map(|mark| format!("{} left out", mark.key())));
    marking.left_out.extend(hidden);
    while let Some(mark) = worst(&marking, &truth, &placing) {
        if marking.moved.contains(&mark) {
            break; // where its own edge is not the true one, a second drag ends there again
        }
        placing = hand(&mut marking, mark, &truth, &subject, &gray);
        told.push(mark.key().to_owned());
    }
    told.push("report".to_owned());
    format!("{} taps: {}", told.len(), told.join(", "))
}

/// Sets a mark where it belongs.
fn hand(
    marking: &mut Marking,
    mark: Mark,
    truth: &Truth,
    subject: &Subject<'_>,
    gray: &Gray,
) -> Placing {
    let (at, trust) = (truth[&mark].pixel, Trust::Sure);
    marking.shot.marks.insert(mark, Placed { at, trust });
    marking.moved.insert(mark);
    marking.place(subject, gray, &[mark])
}

/// The mark furthest off, beyond what may stay; across its edge where it lies on one.
fn worst(marking: &Marking, truth: &Truth, placing: &Placing) -> Option<Mark> {
    let [floor, crown] = [Mark::Floor, Mark::Crown].map(|mark| truth[&mark].pixel);
    let tall = (floor[0] - crown[0]).hypot(floor[1] - crown[1]);
    let marks = marking.shot.marks.iter();
    let off = marks.filter(|(mark, _)| truth[mark].visible);
    let off = off.map(|(&mark, placed)| {
        let to = truth[&mark].pixel;
        let [dx, dy] = [placed.at[0] - to[0], placed.at[1] - to[1]];
        let far = match placing.expected.get(&mark).map(|place| place.edge) {
            Some(Edge::Across([x, y])) => (dx * x + dy * y).abs(),
            _ => dx.hypot(dy),
        };
        (mark, far)
    });
    off.filter(|(_, far)| *far > OFF_PX * tall / 1500.0)
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(mark, _)| mark)
}
