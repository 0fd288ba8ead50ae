//! The forward model: person, garment and dressing give what is seen.
//!
//! One function, generic over the scalar; the model chapter of the docs derives each equation
//! with a drawing, and uses the symbols that stand here. Arcs run from the centre back over the
//! wearer's left side, the centre front (`P/2`) and the right side back to `P`.

use std::f64::consts::{FRAC_PI_2, TAU};

use super::decision::Decision;
use super::given::{Fitting, Given};
use super::quantity::{Appearance, Quantity};
use crate::garment::rules::NECK_SEAM_CM;
use crate::garment::{Cloth, MitakeFrom};
use crate::scalar::Scalar;

/// Share of a front edge's raise that is left when the cloth has settled.
///
/// Published raises for the same look, inner plus outer edge: soft silk 15 + 10, yukata 10 + 6,
/// stiff cloth 7.5 + 4.5 ("slides less": F6; S28). Stiff cloth is taken to keep all of it; the
/// others keep the share that gives the same taper: 12/25 and 12/16.
pub fn raise_kept(cloth: Cloth) -> f64 {
    match cloth {
        Cloth::Soft => 12.0 / 25.0,
        Cloth::Cotton => 12.0 / 16.0,
        Cloth::Stiff => 1.0,
    }
}

/// The hull of the clothed body at one height.
struct Hull<S> {
    girth: S,
    side_arc: S,
}

/// The hull at height `z`, with layers and hip padding, both in centimetres.
///
/// Padding and layers of thickness `t` add `2 pi t` to the girth of a convex hull, a quarter of
/// it between centre back and side line, where the hull has turned by a right angle. The hull
/// moves up and down with the given hip height and grows with the given hip girth.
fn hull<S: Scalar>(fitting: &Fitting, z: S, given: impl Fn(Given) -> S, padding: S) -> Hull<S> {
    let (hip_height, hip_girth) = fitting.shape_hip();
    let z = z - given(Given::HipHeight).plus(-hip_height);
    let (section, slope) = fitting.shape().at_slope(z.value());
    let scale = given(Given::HipGirth).scale(1.0 / hip_girth);
    let thickness = given(Given::Layers) + padding;
    Hull {
        girth: z.chain(section.girth, slope.girth) * scale + thickness.scale(TAU),
        side_arc: z.chain(section.side_arc, slope.side_arc) * scale + thickness.scale(FRAC_PI_2),
    }
}

/// Where a collar runs, seen from the front: from the side neck point to the chest tie.
struct CollarLine<S> {
    /// Crossing with the other side's collar below the side neck point.
    drop: S,
    /// Height of the triangle in which the two collars overlap.
    hold: S,
    /// Sine of the collar's angle against the vertical.
    lean: S,
}

/// The collar from `half_neck` at the neck to `half_overlap` beyond the centre, `fall` lower.
fn collar_line<S: Scalar>(half_neck: S, half_overlap: S, fall: S) -> CollarLine<S> {
    let across = half_neck + half_overlap;
    let drop = half_neck * fall / across;
    CollarLine {
        drop,
        hold: fall - drop,
        lean: across / (across * across + fall * fall).sqrt(),
    }
}

/// What is seen of this dressing on this person in this garment, in centimetres.
///
/// `decided` and `given` give each input as the scalar that is asked for: plain numbers, or dual
/// numbers whose derivatives are wanted.
pub fn appearance<S: Scalar>(
    fitting: &Fitting,
    decided: impl Fn(Decision) -> S,
    given: impl Fn(Given) -> S + Copy,
) -> Appearance<S> {
    use Decision as D;
    use Given as G;
    use Quantity as Q;

    let kept = raise_kept(fitting.cloth());
    let hem = decided(D::HemHeight);
    let outer_raise = decided(D::UwamaeRaise).scale(kept);
    let inner_raise = decided(D::ShitamaeRaise).scale(kept);
    let (back_width, front_width) = (given(G::Ushirohaba), given(G::Maehaba));
    let seam = decided(D::BackSeamHip);

    // Widths.
    let collar_end = given(G::Erishita) + outer_raise + hem;
    let at_end = hull(fitting, collar_end, given, decided(D::HipPadding));
    let at_hip = hull(fitting, given(G::HipHeight), given, decided(D::HipPadding));
    let girth = at_hip.girth;
    let front_edge = front_width + given(G::Aizumahaba);
    let width = back_width + front_edge;
    let right_side =
        at_end.girth + given(G::HullGirthError) - at_end.side_arc - given(G::SideArcError);
    let front_cover = right_side - (seam + width);
    let width_at_hip = back_width + front_width + okumi_at(given, given(G::HipHeight) - hem);
    let inner_cover = width_at_hip - decided(D::ShitamaeFoldBack) - seam - girth.scale(0.5);
    let wrap_ease = back_width + width - girth;
    let hem_width = back_width + front_width + given(G::Okumihaba);
    let winding = (outer_raise * (given(G::HipHeight) - hem)).scale(2.0) / (hem_width * hem_width);
    let hem_loop = girth / winding.plus(1.0);

    // Lengths.
    let (back_length, shoulder_length) = lengths(fitting, given);
    let setback = decided(D::NapeDrop) + given(G::RidgeToNape) - given(G::Kurikoshi);
    let left_seam = seam + back_width;
    let front_share = (girth.scale(0.5) - left_seam) / front_edge;
    let cloth_back =
        back_length + hem - (given(G::BackNeck) - decided(D::NapeDrop)) - given(G::BackRounding);
    let front_hem = hem + outer_raise * front_share;
    let cloth_front =
        shoulder_length - setback + front_hem - given(G::SideNeck) - given(G::BustRounding);
    let neck = given(G::NeckBaseGirth).scale(1.0 / TAU);
    let collar_fall = given(G::SideNeck) - collar_end;
    let collar_reach = seam + width - girth.scale(0.5) + neck;
    let body_path = (collar_fall * collar_fall + collar_reach * collar_reach).sqrt();
    let collar_drop = shoulder_length - given(G::Erishita);
    let collar_slant = front_edge - (back_width - given(G::ErikataAki));
    let cloth_path = (collar_drop * collar_drop + collar_slant * collar_slant).sqrt();
    let cloth_right = cloth_path - setback - body_path - given(G::BustRounding);

    // The fold: cloth above the tie hangs as a double fold below it.
    let (tie_back, tie_front) = (decided(D::KoshihimoBack), decided(D::KoshihimoFront));
    let tie_right = (tie_back + tie_front).scale(0.5);
    let obi_front = decided(D::ObiLowerEdge);
    let obi_right = obi_front + given(G::ObiRise).scale(0.5);
    let obi_back = obi_front + given(G::ObiRise);
    let fold = |obi: S, tie: S, cloth: S, taken: S| obi - tie + (cloth - taken).scale(0.5);
    let fold_front = fold(obi_front, tie_front, cloth_front, decided(D::TakeUpFront));
    let fold_right = fold(obi_right, tie_right, cloth_right, decided(D::TakeUpRight));
    let fold_back = fold(obi_back, tie_back, cloth_back, decided(D::TakeUpBack));

    // Collars.
    let fall = given(G::SideNeck) - (given(G::UnderBust) - given(G::ChestTieDrop));
    let juban = collar_line(neck, decided(D::JubanOverlap), fall);
    let kimono = collar_line(neck, decided(D::KimonoOverlap), fall);

    let padded_waist =
        given(G::WaistGirth) + (given(G::Layers) + decided(D::WaistPadding)).scale(TAU);

    Appearance(std::array::from_fn(|i| match Q::ALL[i] {
        Q::HemBack => hem,
        Q::UwamaeCorner => hem + outer_raise,
        Q::ShitamaeAboveUwamae => inner_raise - outer_raise,
        Q::HemTaper => girth - hem_loop,
        Q::HemLoop => hem_loop,
        Q::FrontCover => front_cover,
        Q::InnerCover => inner_cover,
        Q::WrapEase => wrap_ease,
        Q::BackSeamHip => seam,
        Q::BackSeamTop => decided(D::BackSeamTop),
        Q::BackSeamBend => seam - decided(D::BackSeamTop),
        Q::KoshihimoOverHipBone => tie_back - given(G::HipBone),
        Q::KoshihimoSlope => tie_back - tie_front,
        Q::CollarEndClearance => tie_right - collar_end,
        Q::CollarEndVisible => obi_right - fold_right - collar_end,
        Q::FoldFront => fold_front,
        Q::FoldRight => fold_right,
        Q::FoldBack => fold_back,
        Q::FoldSlant => fold_right - fold_front,
        Q::ClothFront => cloth_front,
        Q::ClothRight => cloth_right,
        Q::ClothBack => cloth_back,
        Q::BulkFront => decided(D::TakeUpFront),
        Q::BulkRight => decided(D::TakeUpRight),
        Q::BulkBack => decided(D::TakeUpBack),
        Q::NapeDrop => decided(D::NapeDrop),
        Q::RidgeSetback => setback,
        Q::JubanCrossing => juban.drop - given(G::ThroatDrop),
        Q::JubanShow => (kimono.drop - juban.drop) * kimono.lean,
        Q::JubanHold => juban.hold,
        Q::KimonoHold => kimono.hold,
        Q::ObiOverHipBone => obi_front - given(G::HipBone),
        Q::TrunkStep => girth - padded_waist,
        Q::SleeveShort => given(G::SpineToWrist) - given(G::Yuki),
        Q::DrumHeight => decided(D::DrumHeight),
        Q::TareLength => decided(D::TareLength),
        Q::ObiageShow => decided(D::ObiageShow),
    }))
}

/// Back length (collar seam to hem) and shoulder length (ridge to hem), in centimetres.
fn lengths<S: Scalar>(fitting: &Fitting, given: impl Fn(Given) -> S) -> (S, S) {
    let (mitake, neck) = (
        given(Given::Mitake),
        given(Given::Kurikoshi).plus(NECK_SEAM_CM),
    );
    match fitting.mitake_from() {
        MitakeFrom::BackSeam => (mitake, mitake + neck),
        MitakeFrom::Shoulder => (mitake - neck, mitake),
    }
}

/// Okumi width `above_hem` centimetres above the hem: straight from okumihaba at the hem to
/// aizumahaba at the collar end, and no narrower above it.
fn okumi_at<S: Scalar>(given: impl Fn(Given) -> S, above_hem: S) -> S {
    let end = given(Given::Erishita);
    if above_hem.value() >= end.value() {
        return given(Given::Aizumahaba);
    }
    let share = above_hem / end;
    given(Given::Okumihaba) + (given(Given::Aizumahaba) - given(Given::Okumihaba)) * share
}

/// Height at which a viewer sees the hem against the leg, in centimetres above the floor.
///
/// `slope` is how steeply the sight line to the hem rises (positive below a stage, negative for
/// a neighbour looking down): (hem height - eye height) / distance. `stands_out` is how far the
/// hem stands out before the ankle.
pub fn hem_as_seen<S: Scalar>(hem: S, slope: S, stands_out: S) -> S {
    hem + slope * stands_out
}
