//! One photo before it is taken: who, how dressed, in what room, before what lens.

use std::f64::consts::{FRAC_PI_2, PI};

use sunbu_core::dressing::Quantity;
use sunbu_core::garment::Part;
use sunbu_core::photo::{Line, Pixel, View};

use crate::build::{Arm, Build, Stance};
use crate::dressed::{Dressed, Parts, Skews};
use crate::fabric::Wardrobe;
use crate::lens::Lens;
use crate::mesh::{self, Patch};
use crate::people::{self, Real, Subject};
use crate::random::Random;
use crate::raster::Picture;
use crate::room::{self, Room};
use crate::truth::{Finder, Truth};
use crate::vector::V3;

/// Height of the person on the picture, in pixels.
const BODY_PX: f64 = 1500.0;
/// Cells to a half turn of the body, painted and for finding what is hidden.
const FINE: usize = 72;
const COARSE: usize = 36;

/// What is photographed, and how.
#[derive(Debug, Clone)]
pub struct Scene {
    /// From which side.
    pub view: View,
    /// What the reader is given.
    pub subject: Subject,
    /// What is really there.
    pub real: Real,
    /// What is askew.
    pub skews: Skews,
    /// How she stands.
    pub stance: Stance,
    /// The lens.
    pub lens: Lens,
    /// How far to the viewer's right of the feet an A4 sheet stands; none where none does.
    pub sheet_aside: Option<f64>,
    room: Room,
    wardrobe: Wardrobe,
}

impl Scene {
    /// A random person, garment, dressing and lens, from a random side: mostly front or back.
    pub fn random(seed: u64) -> Self {
        let view = match Random::of(seed ^ 0x5EED).unit() {
            u if u < 0.5 => View::Front,
            u if u < 0.8 => View::Back,
            u if u < 0.9 => View::Right,
            _ => View::Left,
        };
        Self::random_from(seed, view)
    }

    /// The same from a given side.
    pub fn random_from(seed: u64, view: View) -> Self {
        let random = &mut Random::of(seed);
        let (subject, real) = people::draw(random);
        let mut arm = || Arm {
            down_deg: 45.0 + 6.0 * random.normal(),
            ahead_deg: 4.0 * random.normal(),
        };
        let arms = [arm(), arm()];
        let stance = Stance {
            arms,
            feet: 4.1 + 0.7 * random.normal().clamp(-2.0, 3.0),
            feet_ahead: random.normal(),
            foot_share: 0.15 + 0.004 * random.normal(),
            hair: random.between(0.3, 3.0),
        };
        let crown = Build::of(&real.body, stance).stature;
        let (lens, room) = loop {
            if let Some(found) = placed(random, view, crown) {
                break found;
            }
        };
        let sheet_aside = (random.unit() < 0.3).then(|| 34.0 * random.one_of(&[-1.0, 1.0]));
        Self {
            view,
            subject,
            real,
            skews: Skews::default(),
            stance,
            lens,
            sheet_aside,
            room,
            wardrobe: Wardrobe::random(random),
        }
    }

    /// The dressed person.
    pub fn dressed(&self) -> Dressed<'_> {
        let garment = &self.subject.garment;
        let parts = Parts {
            collar_width: garment.worn_collar_width().value_cm(),
            katahaba: garment.part(Part::Katahaba).value_cm(),
            sodetake: garment.part(Part::Sodetake).value_cm(),
        };
        Dressed::new(&self.real, parts, self.skews, self.stance)
    }

    /// Where every mark really is.
    pub fn truth(&self) -> Truth {
        let dressed = self.dressed();
        let finder = Finder {
            dressed: &dressed,
            lens: &self.lens,
            view: self.view,
        };
        finder.truth(&mesh::person(&dressed, COARSE))
    }

    /// What is really seen of the dressing, in centimetres; what is askew comes on top of it.
    pub fn quantity(&self, quantity: Quantity) -> f64 {
        self.real.appearance.get(quantity)
    }

    /// The corners of the A4 sheet on the picture, in the order of
    /// [`sunbu_core::photo::References::sheet`]; none where there is no sheet.
    pub fn sheet(&self) -> Option<[Pixel; 4]> {
        let corners = self.sheet_corners()?;
        let mut out = [[0.0; 2]; 4];
        for (pixel, corner) in out.iter_mut().zip(corners) {
            *pixel = self.lens.project(corner)?.0;
        }
        Some(out)
    }

    fn sheet_corners(&self) -> Option<[V3; 4]> {
        let build = Build::of(&self.real.body, self.stance);
        self.sheet_aside
            .map(|aside| room::sheet(&build, self.lens.pan, aside))
    }

    /// The upright edges of the door frame on the picture, as far as they lie on it.
    pub fn uprights(&self) -> Vec<Line> {
        self.room
            .uprights()
            .iter()
            .filter_map(|ends| self.line(ends))
            .collect()
    }

    /// The two level edges of the skirting on the picture, when they lie on it.
    pub fn levels(&self) -> Option<[Line; 2]> {
        let [upper, lower] = self.room.levels();
        Some([self.line(&upper)?, self.line(&lower)?])
    }

    fn line(&self, ends: &[V3; 2]) -> Option<Line> {
        let a = self.lens.project(ends[0])?.0;
        let b = self.lens.project(ends[1])?.0;
        (self.lens.holds(a) && self.lens.holds(b)).then_some([a, b])
    }

    /// The photo; `seed` makes the sensor's noise.
    pub fn render(&self, seed: u64) -> Picture {
        let dressed = self.dressed();
        let mut patches = mesh::person(&dressed, FINE);
        let [x, y, _] = self.lens.position;
        patches.extend(self.room.patches(x.hypot(y)));
        if let Some([a, b, c, d]) = self.sheet_corners() {
            patches.push(Patch::plain(mesh::Stuff::Paper, 2, 2, |u, v| {
                let mix = |p: V3, q: V3, t: f64| crate::vector::toward(p, q, t);
                mix(mix(a, b, u), mix(d, c, u), v)
            }));
        }
        Picture::paint(&self.lens, &patches, &dressed, &self.wardrobe, seed)
    }
}

/// A lens and a room about a person of this height; none when she would not be whole on the
/// picture, or would fill too little of it for anybody to take it so.
fn placed(random: &mut Random, view: View, crown: f64) -> Option<(Lens, Room)> {
    let squarely = match view {
        View::Front => 0.0,
        View::Right => FRAC_PI_2,
        View::Back => PI,
        View::Left => -FRAC_PI_2,
    };
    let yaw = random.between(-10.0, 10.0).to_radians();
    let distance = random.between(220.0, 500.0);
    let height = random.between(60.0, 170.0);
    let focal_share = random.between(0.6, 1.6);
    let share = focal_share * crown / distance;
    if !(0.5..0.92).contains(&share) {
        return None;
    }
    let focal_px = BODY_PX * distance / crown;
    let long = (focal_px / focal_share).round();
    let wide = (0.75 * long).round();
    let pan = squarely + yaw;
    let aside = random.between(-0.05, 0.05) * wide / focal_px;
    let aim = 0.5 * crown + random.between(-0.06, 0.06) * crown;
    let tilt = ((aim - height) / distance).atan();
    let most = 10.0_f64.to_radians();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "some thousands of pixels"
    )]
    let size = [wide as u32, long as u32];
    let lens = Lens {
        focal_px,
        position: [-distance * pan.sin(), distance * pan.cos(), height],
        pan: pan + aside,
        tilt: tilt.clamp(-most, most),
        roll: (1.6 * random.normal()).clamp(-4.0, 4.0).to_radians(),
        size,
    };
    let whole = [[0.0, 0.0, -9.0], [0.0, 0.0, crown + 8.0]]
        .iter()
        .all(|&p| lens.project(p).is_some_and(|(pixel, _)| lens.holds(pixel)));
    let room = Room {
        pan: pan - yaw + random.between(-0.03, 0.03),
        wall: random.between(60.0, 220.0),
        door: random.between(55.0, 90.0) * random.one_of(&[-2.3, 1.0]),
    };
    whole.then_some((lens, room))
}
