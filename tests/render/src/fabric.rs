//! What things are coloured like: cloths with stripes, checks or small motifs, skin, floor, wall.
//!
//! Colours are shares of red, green and blue light, not display values.

use crate::random::Random;

/// Red, green and blue light, from 0 to 1.
pub(crate) type Light = [f64; 3];

/// How a cloth is patterned.
#[derive(Debug, Clone, Copy)]
enum Pattern {
    Plain,
    /// Lines up the cloth.
    Stripes,
    Checks,
    /// Spots in rows, every second row between those above.
    Spots,
}

/// One cloth: ground, figure, pattern and its size in centimetres.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cloth {
    ground: Light,
    figure: Light,
    pattern: Pattern,
    size: f64,
}

impl Cloth {
    fn random(random: &mut Random, grounds: &[Light]) -> Self {
        let ground = random.one_of(grounds);
        let stronger = random.between(0.35, 1.8);
        Self {
            ground,
            figure: ground.map(|c| (c * stronger).clamp(0.01, 0.9)),
            pattern: random.one_of(&[
                Pattern::Plain,
                Pattern::Stripes,
                Pattern::Checks,
                Pattern::Spots,
            ]),
            size: random.between(1.2, 4.5),
        }
    }

    /// The colour at a place of the cloth, in centimetres.
    pub fn at(&self, [u, v]: [f64; 2]) -> Light {
        let half = |x: f64| (x / self.size).rem_euclid(1.0) < 0.5;
        let is_figure = match self.pattern {
            Pattern::Plain => false,
            Pattern::Stripes => (u / self.size).rem_euclid(1.0) < 0.25,
            Pattern::Checks => half(u) != half(v),
            Pattern::Spots => {
                let row = (v / self.size).floor();
                let x = (u / self.size + 0.5 * row.rem_euclid(2.0)).rem_euclid(1.0) - 0.5;
                let y = (v / self.size).rem_euclid(1.0) - 0.5;
                x.hypot(y) < 0.22
            }
        };
        // A weave of threads too fine to see singly, as a slight unevenness.
        let weave = 1.0 + 0.04 * ((u * 23.0).sin() * (v * 19.0).cos());
        if is_figure { self.figure } else { self.ground }.map(|c| c * weave)
    }
}

/// Everything's colours in one scene.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Wardrobe {
    pub kimono: Cloth,
    pub obi: Cloth,
    pub obiage: Light,
    pub obijime: Light,
    pub juban: Light,
    pub lining: Light,
    pub skin: Light,
    pub hair: Light,
    pub floor: Light,
    pub wall: Light,
    pub frame: Light,
}

impl Wardrobe {
    pub fn random(random: &mut Random) -> Self {
        let kimonos = [
            [0.05, 0.08, 0.19],
            [0.22, 0.05, 0.07],
            [0.10, 0.17, 0.12],
            [0.24, 0.17, 0.28],
            [0.33, 0.28, 0.20],
            [0.06, 0.06, 0.07],
        ];
        let obis = [
            [0.52, 0.40, 0.18],
            [0.60, 0.57, 0.50],
            [0.42, 0.16, 0.10],
            [0.20, 0.30, 0.36],
        ];
        let skin = random.between(0.75, 1.1);
        Self {
            kimono: Cloth::random(random, &kimonos),
            obi: Cloth::random(random, &obis),
            obiage: random.one_of(&[[0.60, 0.35, 0.38], [0.35, 0.50, 0.40], [0.55, 0.5, 0.2]]),
            obijime: random.one_of(&[[0.35, 0.04, 0.04], [0.04, 0.12, 0.10], [0.5, 0.45, 0.3]]),
            juban: [0.82, 0.80, 0.76],
            lining: random.one_of(&[[0.45, 0.20, 0.18], [0.55, 0.50, 0.44]]),
            skin: [0.58, 0.37, 0.26].map(|c| c * skin),
            hair: [0.02, 0.017, 0.015],
            floor: random.one_of(&[[0.38, 0.33, 0.17], [0.30, 0.20, 0.12]]),
            wall: random.one_of(&[[0.66, 0.63, 0.57], [0.52, 0.55, 0.55]]),
            frame: [0.20, 0.12, 0.07],
        }
    }
}
