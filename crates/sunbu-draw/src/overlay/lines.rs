//! The lines of a dressing on a photo: their marks, how far they move, and whose they are.

use sunbu_core::check::Advice;
use sunbu_core::dressing::{Decision, Quantity};
use sunbu_core::fault::Fault;
use sunbu_core::photo::{Mark, Moved, Overlay};

/// What moves by less than this is not told to move, in centimetres (chosen: nobody sees it from
/// three steps away, and no photo shows it).
const LEAST_CM: f64 = 0.5;

/// Along which way a line is moved.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    Up,
    Aside,
}

/// A line of the dressing.
pub(super) struct Line {
    pub(super) key: &'static str,
    pub(super) way: Way,
    /// Its marks from one end to the other; those not set are left out.
    pub(super) marks: &'static [Mark],
    /// Where it is told how far it moves: the first of these that is marked.
    pub(super) told_at: &'static [Mark],
}

/// Every line, from the floor up.
pub(super) const LINES: &[Line] = {
    use Mark as M;
    use Way::{Aside, Up};
    const fn line(
        key: &'static str,
        way: Way,
        marks: &'static [Mark],
        told_at: &'static [Mark],
    ) -> Line {
        Line {
            key,
            way,
            marks,
            told_at,
        }
    }
    const HEM: &[M] = &[
        M::HemRight,
        M::UwamaeCorner,
        M::HemCentre,
        M::SeamHem,
        M::HemLeft,
    ];
    const HEM_AT: &[M] = &[M::HemCentre, M::SeamHem, M::HemLeft, M::HemRight];
    const EDGE: &[M] = &[M::UwamaeCorner, M::EdgeAtFold, M::CollarEnd];
    const FOLD: &[M] = &[M::FoldRight, M::FoldCentre, M::FoldLeft];
    const FOLD_AT: &[M] = &[M::FoldCentre, M::FoldRight, M::FoldLeft];
    const OBI: &[M] = &[M::ObiLowerRight, M::ObiLowerCentre, M::ObiLowerLeft];
    const OBI_AT: &[M] = &[M::ObiLowerCentre, M::ObiLowerRight, M::ObiLowerLeft];
    const OBI_TOP: &[M] = &[M::ObiUpperRight, M::ObiUpperCentre, M::ObiUpperLeft];
    const COLLAR: &[M] = &[M::CollarShoulderLeft, M::KimonoCrossing, M::CollarTieLeft];
    const JUBAN: &[M] = &[M::JubanEdgeLeft, M::JubanCrossing, M::JubanEdgeRight];
    &[
        line("hem", Up, HEM, HEM_AT),
        line("corner", Up, &[M::UwamaeCorner], &[M::UwamaeCorner]),
        line("edge", Aside, EDGE, EDGE),
        line("seam", Aside, &[M::SeamHem, M::SeamHip], &[M::SeamHip]),
        line("fold", Up, FOLD, FOLD_AT),
        line("tail", Up, &[M::TareEnd], &[M::TareEnd]),
        line("drum", Up, &[M::DrumBottom], &[M::DrumBottom]),
        line("obi", Up, OBI, OBI_AT),
        line("obi_top", Up, OBI_TOP, &[]),
        line("obiage", Up, &[M::ObiageTop], &[M::ObiageTop]),
        line("drum_top", Up, &[M::DrumTop], &[]),
        line("collars", Up, COLLAR, &[M::KimonoCrossing]),
        line(
            "under_collar",
            Up,
            &[M::CollarShoulderRight, M::KimonoCrossing],
            &[],
        ),
        line("juban", Up, JUBAN, &[M::JubanCrossing]),
        line(
            "seam_top",
            Aside,
            &[M::SeamNape, M::SeamWaist],
            &[M::SeamWaist],
        ),
        line("nape", Up, &[M::Nape], &[M::Nape]),
    ]
};

/// The line at which a piece of advice shows.
pub(super) fn line_of(advice: &Advice) -> Option<&'static str> {
    use Decision as D;
    Some(match advice {
        Advice::Way => return None,
        Advice::Change(change) => match change.decision {
            D::HemHeight => "hem",
            D::UwamaeRaise => "corner",
            D::BackSeamHip => "seam",
            D::BackSeamTop => "seam_top",
            D::KoshihimoBack
            | D::KoshihimoFront
            | D::TakeUpFront
            | D::TakeUpRight
            | D::TakeUpBack => "fold",
            D::NapeDrop => "nape",
            D::JubanOverlap => "juban",
            D::KimonoOverlap => "collars",
            D::ObiLowerEdge => "obi",
            D::DrumHeight => "drum",
            D::TareLength => "tail",
            D::ObiageShow => "obiage",
            D::ShitamaeRaise | D::ShitamaeFoldBack | D::WaistPadding | D::HipPadding => {
                return None;
            }
        },
        Advice::Fault(fault) => match fault {
            Fault::HemUneven => "hem",
            Fault::ObiSlanting => "obi",
            _ => return None,
        },
    })
}

/// The line at which a quantity shows.
pub(super) fn line_of_quantity(quantity: Quantity) -> Option<&'static str> {
    use Quantity as Q;
    Some(match quantity {
        Q::HemBack => "hem",
        Q::UwamaeCorner => "corner",
        Q::FrontCover => "edge",
        Q::BackSeamHip => "seam",
        Q::BackSeamTop | Q::BackSeamBend => "seam_top",
        Q::FoldFront | Q::FoldRight | Q::FoldBack | Q::FoldSlant => "fold",
        Q::NapeDrop => "nape",
        Q::JubanCrossing | Q::JubanShow | Q::JubanHold => "juban",
        Q::KimonoHold => "collars",
        Q::ObiOverHipBone => "obi",
        Q::DrumHeight => "drum",
        Q::TareLength => "tail",
        Q::ObiageShow => "obiage",
        _ => return None,
    })
}

/// The places of a line that were marked, from one end to the other.
pub(super) fn places(overlay: &Overlay, line: &Line) -> Vec<Moved> {
    let marks = line.marks.iter();
    marks
        .filter_map(|mark| overlay.places.get(mark).copied())
        .collect()
}

/// Whether a place moves so far that it is worth a second line.
pub(super) fn is_moved(moved: &Moved) -> bool {
    moved.by_cm.iter().map(|cm| cm * cm).sum::<f64>().sqrt() >= LEAST_CM
}

/// How far a line moves where that is told, in centimetres, and there.
pub(super) fn moves(overlay: &Overlay, line: &Line) -> Option<(f64, Moved)> {
    let mut told_at = line.told_at.iter();
    let moved = *told_at.find_map(|mark| overlay.places.get(mark))?;
    let cm = match line.way {
        Way::Up => moved.by_cm[2],
        Way::Aside => moved.by_cm[0],
    };
    (cm.abs() >= LEAST_CM).then_some((cm, moved))
}
