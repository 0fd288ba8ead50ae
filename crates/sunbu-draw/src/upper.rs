//! The upper half: shoulders, sleeves, collars.

use sunbu_core::drape::OBI_OUT;
use sunbu_core::garment::{Garment, Part};

use crate::canvas::Canvas;
use crate::curve::{Pt, mirrored_back, pt, smooth};
use crate::lines::Lines;
use crate::look;
use crate::person::Person;
use crate::view::View;

/// How far cloth lies above the arm's middle line, in centimetres (chosen for the eye).
const OVER_ARM: f64 = 2.2;
/// Radius of the sleeve's lower outer corner: 5 bu, the usual one (S2), in centimetres.
const SLEEVE_CORNER: f64 = 1.9;

/// One sleeve at the viewer's right.
#[derive(Debug, Clone)]
pub(crate) struct Sleeve {
    /// Where the sleeve seam meets the shoulder ridge.
    pub seam: Pt,
    /// The sleeve end on the ridge: as far from the centre back as the garment's yuki.
    pub end: Pt,
    /// The wrist bone, on the same line.
    pub wrist: Pt,
    sodetake: f64,
    sodetsuke: f64,
    sodeguchi: f64,
}

impl Sleeve {
    pub fn of(person: &Person, garment: &Garment, yuki: f64) -> Self {
        let part = |p: Part| garment.part(p).value_cm();
        let lift = |p: Pt| {
            let up = OVER_ARM * std::f64::consts::FRAC_1_SQRT_2;
            p.moved(up, up)
        };
        Self {
            seam: lift(person.along_arm(part(Part::Katahaba).min(yuki - 10.0))),
            end: lift(person.along_arm(yuki)),
            wrist: lift(person.wrist()),
            sodetake: part(Part::Sodetake),
            sodetsuke: part(Part::Sodetsuke),
            sodeguchi: part(Part::Sodeguchi),
        }
    }

    /// How far the sleeve reaches to the viewer's right, and its lowest point.
    pub fn reach(&self) -> Pt {
        pt(self.end.x.max(self.wrist.x), self.end.z - self.sodetake)
    }

    fn outline(&self) -> Vec<Pt> {
        let drop = |p: Pt, by: f64| p.moved(0.0, -by);
        let (outer, inner) = (
            drop(self.end, self.sodetake),
            drop(self.seam, self.sodetake),
        );
        // Threads hang straight down; the lower outer corner is sewn round.
        let down = drop(self.end, self.sodetake - 2.0 * SLEEVE_CORNER);
        let along = outer.toward(inner, 1.6 * SLEEVE_CORNER / outer.distance(inner));
        let mut out = vec![self.seam, self.end];
        out.extend(rounded(down, outer, along));
        // Between the corners the lower edge sags a little below the straight line.
        out.extend(rounded(
            along,
            along.toward(inner, 0.5).moved(0.0, -1.2),
            inner,
        ));
        out
    }

    fn draw(&self, canvas: &mut Canvas, view: View, mirrored: bool) {
        let turned = |points: Vec<Pt>| {
            if mirrored {
                points.iter().map(|p| p.mirrored()).collect()
            } else {
                points
            }
        };
        canvas.area(look::CLOTH_AREA, "sleeve", &turned(self.outline()));
        let down = |p: Pt, by: f64| p.moved(0.0, -by);
        // The hand's opening: from its end down the sleeve is sewn shut.
        let opening = down(self.end, self.sodeguchi);
        canvas.line(
            look::FINE_LINE,
            "sodeguchi",
            &turned(vec![opening, opening.moved(-2.0, 0.3)]),
        );
        if view == View::Front {
            let slit = turned(vec![
                self.end.moved(-0.9, -1.2),
                down(self.end, self.sodeguchi).moved(-0.9, 0.5),
            ]);
            canvas.line(look::FINE_LINE, "sodeguchi", &slit);
        }
        let joint = down(self.seam, self.sodetsuke);
        canvas.line(
            look::FINE_LINE,
            "sodetsuke",
            &turned(vec![joint, joint.moved(1.6, 0.0)]),
        );
    }
}

/// A bend from `a` to `b` drawn toward `corner`: a quadratic Bezier curve.
fn rounded(a: Pt, corner: Pt, b: Pt) -> impl Iterator<Item = Pt> {
    (0..=10).map(move |i| {
        let t = f64::from(i) / 10.0;
        a.toward(corner, t).toward(corner.toward(b, t), t)
    })
}

/// A collar's inner edge and band, seen from the front on the wearer's left.
struct Band {
    /// From the side neck point down to where the obi covers it.
    inner: Vec<Pt>,
    outer: Vec<Pt>,
}

impl Lines<'_> {
    fn band(&self, overlap: f64, width: f64, shoulder: Pt, low: f64) -> Band {
        let at = |z: f64| pt(self.collar_x(overlap, z), z);
        let (top, bottom) = (at(self.neck().z), at(low));
        let length = top.distance(bottom).max(1.0);
        let (out_x, out_z) = ((top.z - bottom.z) / length, (bottom.x - top.x) / length);
        let off = |p: Pt| p.moved(width * out_x, width * out_z);
        // The band comes over the shoulder ridge, so its outer edge starts on it.
        let ridge = self.neck().toward(
            shoulder,
            width / out_x / (shoulder.x - self.neck().x).max(width),
        );
        let outer_low = off(bottom).toward(
            off(top),
            (low - off(bottom).z) / (off(top).z - off(bottom).z),
        );
        Band {
            inner: vec![top, bottom],
            outer: vec![pt(ridge.x, ridge.z), outer_low],
        }
    }

    /// Shoulders and body of the garment, above the obi.
    fn bodice(&self, person: &Person, sleeve: &Sleeve) -> Vec<Pt> {
        let shoulder = person.shoulder().moved(0.3, 0.5);
        let top = self.obi_top();
        let waist = top.left.max(top.back) - 2.0;
        let half = self.surface.half_breadth(waist) + OBI_OUT * 0.5;
        let under_arm = sleeve.seam.moved(0.0, -(sleeve.seam.z - waist) * 0.62);
        // Cloth spans the hollow between neck and shoulder and falls off gently beyond.
        let ridge = [
            self.neck().moved(0.0, 0.3),
            shoulder,
            shoulder.toward(sleeve.seam, 0.45).moved(0.7, 0.7),
            sleeve.seam,
        ];
        let mut right = smooth(&ridge, 8);
        right.push(under_arm);
        right.extend(rounded(under_arm, pt(half + 1.5, waist + 7.0), pt(half, waist)).skip(1));
        let mut all = right.clone();
        all.extend(mirrored_back(&right));
        all
    }

    /// Shoulders, sleeves and collars.
    pub fn draw_upper(
        &self,
        canvas: &mut Canvas,
        view: View,
        person: &Person,
        sleeve: &Sleeve,
        collar_width: f64,
    ) {
        canvas.area(look::CLOTH_AREA, "bodice", &self.bodice(person, sleeve));
        match view {
            View::Front => self.draw_front_collars(canvas, person, collar_width),
            View::Back => self.draw_nape(canvas, person, collar_width),
        }
        sleeve.draw(canvas, view, false);
        sleeve.draw(canvas, view, true);
    }

    fn draw_front_collars(&self, canvas: &mut Canvas, person: &Person, width: f64) {
        let (juban, kimono) = (self.juban_overlap, self.kimono_overlap);
        let low = self.obi_top().front - 1.0;
        let shoulder = person.shoulder();
        let n = self.neck();
        // Inside the kimono's collars the juban's are seen, inside those the skin.
        let opening = [n, n.mirrored(), self.crossing_seen(kimono)];
        canvas.area(look::JUBAN_AREA, "juban", &opening);
        let skin = [
            n.moved(0.0, 0.6),
            n.moved(0.0, 0.6).mirrored(),
            n.mirrored(),
            self.crossing_seen(juban),
            n,
        ];
        canvas.area(look::SKIN_AREA, "throat", &skin);
        // The left collar runs on over the right one until the right kimono collar covers it.
        let share = 2.0 * n.x / (2.0 * n.x + juban + kimono);
        let z = n.z - share * (n.z - self.chest_tie);
        canvas.line(
            look::SEAM_LINE,
            "juban-left",
            &[n, pt(self.collar_x(juban, z), z)],
        );
        canvas.line(
            look::SEAM_LINE,
            "juban-right",
            &[n.mirrored(), self.crossing_seen(juban)],
        );
        let band = self.band(kimono, width, shoulder, low);
        let outline = |band: &Band| {
            let mut points = band.inner.clone();
            points.extend(band.outer.iter().rev());
            points
        };
        let left = outline(&band);
        let right: Vec<Pt> = left.iter().map(|p| p.mirrored()).collect();
        canvas.area(look::COLLAR_AREA, "collar-right", &right);
        // The left front lies over the right one: cloth to the right of its collar hides it.
        let end = band.outer[1];
        let side = self.surface.half_breadth(low);
        let cloth = [
            band.outer[0],
            end,
            pt(side, low),
            pt(side, self.neck().z - 14.0),
        ];
        canvas.area(look::COVER_AREA, "left-front", &cloth);
        canvas.area(look::COLLAR_AREA, "collar-left", &left);
    }

    /// The collar's line at the back: half an ellipse from side neck point to side neck point,
    /// lowest at the nape drop. `wider` and `lower` move it outward.
    pub fn nape_line(&self, wider: f64, lower: f64) -> Vec<Pt> {
        let bottom = self.back_neck - self.nape_drop - lower;
        let (half, deep) = (self.neck().x + wider, self.neck().z - bottom);
        (0..=48_u32)
            .map(|i| {
                let (sin, cos) = (std::f64::consts::PI * (f64::from(i) / 48.0 - 0.5)).sin_cos();
                pt(half * sin, self.neck().z - deep * cos)
            })
            .collect()
    }

    fn draw_nape(&self, canvas: &mut Canvas, person: &Person, width: f64) {
        let inner = self.nape_line(0.0, 0.0);
        let outer = self.nape_line(width * 0.72, width);
        let ridge = self.neck().toward(
            person.shoulder(),
            width * 0.72 / (person.shoulder().x - self.neck().x).max(width),
        );
        let mut band = outer.clone();
        band.retain(|p| p.z < ridge.z);
        let mut whole = vec![ridge.mirrored()];
        whole.extend(band);
        whole.push(ridge);
        whole.extend(inner.iter().rev());
        canvas.area(look::SKIN_AREA, "nape", &inner);
        canvas.area(look::COLLAR_AREA, "collar-back", &whole);
        let (top, low) = (
            self.back_neck - self.nape_drop - width,
            self.obi_top().back - 1.0,
        );
        if top > low {
            let seam = self.upward(View::Back, low, top, |z| self.back_seam(z));
            canvas.lines(look::SEAM_LINE, "back-seam-top", &seam);
        }
    }
}
