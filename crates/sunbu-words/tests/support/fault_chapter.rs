//! The chapter of the book on faults, put together from the catalogue and its words.

use std::fmt::Write as _;

use sunbu_core::fault::{Area, Catalogue, Entry, Fault, Link, Too};
use sunbu_words::{Lang, Words};

/// Where the chapter lies, seen from the package.
pub const CHAPTER: &str = "../../docs/faults.md";

const HEAD: &str = "\
# Faults: what can be wrong, why, and what helps

Made by `cargo run -p sunbu-words --example fault_chapter`; a test holds that it is up to date. The
catalogue is data, one file an area in `data/faults/`; its words in both languages are
`locales/*/faults.ftl`.

A fault is **measured** when a photo shows a quantity of the model that judges it: then a check says by
how much, and finds the causes itself. The others are a checklist **for the eye**. Some of them hang on
quantities that the model has and no photo shows, since cloth lies over them: a plan foresees these
faults, and in a check the eye looks for them. Both kinds go into one list, in the order of the dressing
steps at which they are put right: a fault is mostly made a step earlier, or a garment below, than it
shows. Left and right are the wearer's.

Nearly every fault is mended from two places, the fold (ohashori) and the side opening
(miyatsukuchi), and most come from four things: a loose waist tie, a loose obijime, missing padding,
and big movements of the arms (F3). The causes of a fault with a quantity that the model knows are held
against it by a test: each of its quantities is moved that way by at least one of them, and by none
of them the other way.

Where a fault or its cure can hurt, the cautions named here are shown with it; they are customary, no
medical advice, and what a doctor, a qualified first-aider or the rules of the place say comes first.
Codes are those of [Sources](sources.md); a row without one is common practice, no source.
";

/// The whole chapter.
pub fn chapter() -> String {
    let (en, ja) = (Words::of(Lang::En), Words::of(Lang::Ja));
    let catalogue = Catalogue::shipped();
    let by_eye = Fault::ALL.iter().map(|&f| catalogue.entry(f));
    let by_eye = by_eye.filter(|entry| entry.by_eye());
    let foreseen = by_eye.clone().filter(|entry| !entry.measured.is_empty());
    let mut page = HEAD.to_owned();
    let _ = writeln!(
        page,
        "\n{} faults: {} measured, {} for the eye; {} of these a plan foresees.",
        Fault::COUNT,
        Fault::COUNT - by_eye.clone().count(),
        by_eye.count(),
        foreseen.count()
    );
    for &area in Area::ALL {
        let title = en.fault_area(area);
        let _ = writeln!(page, "\n## {title}\n");
        page.push_str(
            "| fault | seen | comes from | on the spot | next time | put right at | sources |\n",
        );
        page.push_str("| --- | --- | --- | --- | --- | --- | --- |\n");
        for &fault in Fault::ALL {
            let entry = catalogue.entry(fault);
            if entry.area == area {
                row(&mut page, en, ja, fault, entry);
            }
        }
    }
    page
}

fn row(page: &mut String, en: &Words, ja: &Words, fault: Fault, entry: &Entry) {
    let views: Vec<&str> = entry.views.iter().map(|v| v.key()).collect();
    let judged: Vec<String> = entry
        .measured
        .iter()
        .map(|judged| {
            let quantity = en.quantity_short(judged.quantity);
            format!("{quantity}, {}", side(judged.too))
        })
        .collect();
    let judged = if judged.is_empty() {
        "by eye".to_owned()
    } else if entry.by_eye() {
        format!("by eye; in a plan: {}", judged.join("; "))
    } else {
        format!("measured: {}", judged.join("; "))
    };
    let linked: Vec<String> = entry.causes.iter().filter_map(link).collect();
    let linked = if linked.is_empty() {
        String::new()
    } else {
        format!(" In the model: {}.", linked.join("; "))
    };
    let cautions: Vec<&str> = entry.cautions.iter().map(|c| c.key()).collect();
    let cautions = if cautions.is_empty() {
        String::new()
    } else {
        format!(" Caution: {}.", cautions.join(", ").replace('_', " "))
    };
    let sources = if entry.sources.is_empty() {
        "common practice, no source".to_owned()
    } else {
        entry.sources.join(" ")
    };
    let _ = writeln!(
        page,
        "| **{}** {} `{}` | {} From {}; {judged}. | {}{linked} | {}{cautions} | {} | {} | {sources} |",
        en.fault_name(fault),
        ja.fault_name(fault),
        fault.key(),
        en.fault_sign(fault),
        views.join(", "),
        en.fault_causes(fault),
        en.fault_now(fault),
        en.fault_next(fault),
        en.step_title(entry.cure),
    );
}

/// A link to the model: `hem_height high`; none for a cause outside it.
fn link(link: &Link) -> Option<String> {
    let (key, too) = match *link {
        Link::Decision { decision, too } => (decision.key(), too),
        Link::Given { given, too } => (given.key(), too),
        Link::Cause { .. } => return None,
    };
    Some(format!("`{key}` {}", side(too)))
}

fn side(too: Too) -> &'static str {
    match too {
        Too::Low => "low",
        Too::High => "high",
        Too::Off => "off",
    }
}
