//! What colour one place of the scene has before light falls on it.

use crate::dressed::{Collar, Dressed};
use crate::fabric::{Light, Wardrobe};
use crate::mesh::{Stuff, Vertex};

/// Half the breadth of a drawn seam, in centimetres.
const SEAM_HALF: f64 = 0.08;

/// Paints the places of one scene.
pub(crate) struct Painter<'a> {
    pub dressed: &'a Dressed<'a>,
    pub wardrobe: &'a Wardrobe,
}

fn shaded(light: Light, by: f64) -> Light {
    light.map(|c| c * by)
}

/// Darker near the edge of what lies above: `past` centimetres from it, within `reach`.
fn in_shadow(past: f64, reach: f64, dark: f64) -> f64 {
    if (0.0..reach).contains(&past) {
        dark + (1.0 - dark) * past / reach
    } else {
        1.0
    }
}

impl Painter<'_> {
    /// The colour of a place; `inside` tells that the cloth is seen from its inner side.
    pub fn at(&self, stuff: Stuff, place: &Vertex, inside: bool) -> Light {
        let w = self.wardrobe;
        let [a, b] = place.extra;
        match stuff {
            Stuff::Outer | Stuff::Inner if inside => w.lining,
            Stuff::Outer => {
                let light = shaded(w.kimono.at(place.cloth), in_shadow(b, 1.4, 0.45));
                shaded(light, seam(a))
            }
            Stuff::Inner => {
                let light = shaded(w.kimono.at(place.cloth), in_shadow(b, 1.4, 0.45));
                shaded(light, in_shadow(a, 1.0, 0.4))
            }
            Stuff::Fold => {
                // The fold is cut of the same cloth but lies turned, so its pattern is shifted.
                let [s, z] = place.cloth;
                let light = w.kimono.at([s + 0.7, z + 1.3]);
                shaded(light, 1.12 * seam(a))
            }
            Stuff::Obi | Stuff::Drum => w.obi.at(place.cloth),
            Stuff::Obijime => w.obijime,
            Stuff::Obiage => w.obiage,
            Stuff::Bodice if b > 0.0 => self.breast(place),
            Stuff::Bodice => self.upper_back(place),
            Stuff::Sleeve => w.kimono.at(place.cloth),
            Stuff::Skin => w.skin,
            Stuff::Hair => w.hair,
            Stuff::Tabi => [0.80, 0.80, 0.82],
            Stuff::Floor => {
                let [x, y] = place.cloth;
                let border = (x / 91.0).rem_euclid(1.0) < 0.03;
                let grain = 1.0 + 0.05 * (y * 6.0).sin();
                shaded(w.floor, if border { 0.3 } else { grain })
            }
            Stuff::Wall => {
                let [x, z] = place.cloth;
                shaded(w.wall, 1.0 + 0.02 * (x * 0.31).sin() * (z * 0.23).cos())
            }
            Stuff::Frame => w.frame,
            Stuff::Paper => [0.85, 0.85, 0.85],
        }
    }

    /// Throat, collars and cloth of the front by place.
    fn breast(&self, place: &Vertex) -> Light {
        let (w, dressed) = (self.wardrobe, self.dressed);
        let [x, _, z] = place.at;
        let d = &dressed.drape;
        let lean = {
            let (across, fall) = (d.half_neck + d.kimono_overlap, d.side_neck - d.chest_tie);
            fall / across.hypot(fall)
        };
        // How far outside each collar's inner edge the place lies.
        let past = |collar: Collar, left: bool| {
            let edge = dressed.collar_x(collar, z, left);
            lean * if left { x - edge } else { edge - x }
        };
        let band = |past: f64, light: Light, width: f64| {
            let edge = past < 0.12 || (width - past).abs() < 0.12;
            shaded(light, if edge { 0.55 } else { 1.0 })
        };
        let width = dressed.collar_width;
        let collar = shaded(w.kimono.at([x, 0.3 * z]), 1.25);
        for left in [true, false] {
            let past = past(Collar::Kimono, left);
            if (0.0..width).contains(&past) {
                return band(past, collar, width);
            }
            if past >= width {
                return shaded(w.kimono.at(place.cloth), in_shadow(past - width, 0.6, 0.6));
            }
        }
        for left in [true, false] {
            let past = past(Collar::Juban, left);
            if past >= 0.0 {
                return band(past, w.juban, f64::MAX);
            }
        }
        w.skin
    }

    /// Nape, collar and cloth of the back by place.
    fn upper_back(&self, place: &Vertex) -> Light {
        let (w, dressed) = (self.wardrobe, self.dressed);
        let [x, _, z] = place.at;
        let d = &dressed.drape;
        let line = |wider: f64, lower: f64| {
            let low = d.back_neck - d.nape_drop - lower;
            let share = x / (d.half_neck + wider);
            (share.abs() < 1.0)
                .then(|| d.side_neck - (d.side_neck - low) * (1.0 - share * share).sqrt())
        };
        let width = dressed.collar_width;
        if line(0.0, 0.0).is_some_and(|low| z > low) {
            return w.skin;
        }
        if let Some(low) = line(0.72 * width, width)
            && z > low
        {
            let edge = z - low < 0.15;
            let light = shaded(w.kimono.at([z, x]), 1.25);
            return shaded(light, if edge { 0.5 } else { 1.0 });
        }
        shaded(w.kimono.at(place.cloth), seam(place.extra[0]))
    }
}

/// Dark on the back seam's line.
fn seam(past: f64) -> f64 {
    if past.abs() < SEAM_HALF { 0.25 } else { 1.0 }
}
