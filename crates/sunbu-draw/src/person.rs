//! The person: head, neck, hands and feet, schematic and light.
//!
//! Proportions of head, face and foot are from memory and serve the eye alone; stature,
//! shoulders, arms and hands are the body's own.

use std::f64::consts::PI;

use sunbu_core::body::{Body, Figure, Shape};

use crate::canvas::Canvas;
use crate::curve::{Pt, mirrored_back, pt, smooth};
use crate::look;
use crate::view::View;

/// How far the arms are lowered: the way in which the body's yuki is taken, in degrees.
const ARM_DOWN_DEG: f64 = 45.0;
/// Chin to crown, and half the head's breadth, over stature.
const HEAD: (f64, f64) = (0.132, 0.046);
/// Half the neck's breadth over half the neck base's.
const NECK: f64 = 0.82;

/// What is drawn of the person under and beside the cloth.
pub(crate) struct Person<'a> {
    shape: &'a Shape,
    figure: Figure,
}

impl<'a> Person<'a> {
    pub fn of(body: &'a Body) -> Self {
        let shape = body.shape();
        Self {
            shape,
            figure: *shape.figure(),
        }
    }

    /// Crown's height, in centimetres.
    pub fn stature(&self) -> f64 {
        self.figure.stature
    }

    /// Shoulder point at the viewer's right.
    pub fn shoulder(&self) -> Pt {
        pt(self.figure.shoulder[0], self.figure.shoulder[1])
    }

    /// Side neck point at the viewer's right.
    pub fn side_neck(&self) -> Pt {
        pt(self.figure.side_neck[0], self.figure.side_neck[1])
    }

    /// Along the arm at the viewer's right, `reach` from the centre back over the shoulder point:
    /// the way in which yuki is measured.
    pub fn along_arm(&self, reach: f64) -> Pt {
        let (sin, cos) = ARM_DOWN_DEG.to_radians().sin_cos();
        let beyond = reach - self.figure.shoulder[0];
        self.shoulder().moved(beyond * cos, -beyond * sin)
    }

    /// Wrist at the viewer's right.
    pub fn wrist(&self) -> Pt {
        self.along_arm(self.figure.shoulder[0] + self.figure.arm)
    }

    /// The tip of the middle finger at the viewer's right.
    pub fn fingertip(&self) -> Pt {
        self.along_arm(self.figure.shoulder[0] + self.figure.arm + self.figure.hand)
    }

    /// The body's own outline through the cloth, from the shoulder down, as a light line.
    pub fn through_cloth(&self, canvas: &mut Canvas) {
        let (low, high) = self.shape.span();
        let shoulder = self.shoulder();
        let top = high.min(shoulder.z - 3.0);
        let side: Vec<Pt> = crate::lines::heights(low, top)
            .map(|z| pt(0.5 * self.shape.breadth(z), z))
            .collect();
        canvas.line(look::BODY_LINE, "body", &side);
        canvas.line(look::BODY_LINE, "body", &mirrored_back(&side));
    }

    /// Feet in tabi: toes from the front, heels from behind.
    pub fn feet(&self, canvas: &mut Canvas, view: View) {
        let foot = 0.15 * self.figure.stature;
        let middle = 0.026 * self.figure.stature;
        let (half, height) = match view {
            View::Front => (0.19 * foot, 0.27 * foot),
            View::Back => (0.135 * foot, 0.36 * foot),
        };
        for side in [-1.0, 1.0] {
            let at = |dx: f64, z: f64| pt(side * (middle + dx), z);
            let outline = smooth(
                &[
                    at(-0.7 * half, height),
                    at(-0.95 * half, 0.4 * height),
                    at(-0.86 * half, 0.03 * height),
                    at(0.1 * half, -0.01 * height),
                    at(1.1 * half, 0.03 * height),
                    at(1.16 * half, 0.35 * height),
                    at(0.8 * half, height),
                ],
                6,
            );
            canvas.area(look::TABI_AREA, "foot", &outline);
            if view == View::Front {
                // The split between the great toe and the others.
                let split = [at(-0.2 * half, 0.0), at(-0.16 * half, 0.42 * height)];
                canvas.line(look::FINE_LINE, "foot", &split);
            }
        }
    }

    /// Both hands, from the wrist on.
    pub fn hands(&self, canvas: &mut Canvas) {
        let (sin, cos) = ARM_DOWN_DEG.to_radians().sin_cos();
        let wrist = self.wrist();
        let hand = self.figure.hand;
        // `along` toward the fingertips, `out` away from the body.
        let at = |along: f64, out: f64| {
            wrist.moved(
                hand * (along * cos + out * sin),
                hand * (-along * sin + out * cos),
            )
        };
        let outline = smooth(
            &[
                at(-1.5, 0.09),
                at(-0.8, 0.1),
                at(0.0, 0.11),
                at(0.3, 0.19),
                at(0.62, 0.18),
                at(0.95, 0.09),
                at(1.0, 0.03),
                at(0.93, -0.05),
                at(0.62, -0.12),
                at(0.56, -0.2),
                at(0.36, -0.26),
                at(0.2, -0.19),
                at(0.0, -0.13),
                at(-0.8, -0.21),
                at(-1.5, -0.24),
            ],
            5,
        );
        canvas.area(look::SKIN_AREA, "hand", &outline);
        canvas.area(look::SKIN_AREA, "hand", &mirrored_back(&outline));
    }

    /// The neck, down to what the collar shows of it.
    pub fn neck(&self, canvas: &mut Canvas) {
        let stature = self.figure.stature;
        let chin = stature - HEAD.0 * stature;
        let base = self.side_neck();
        let neck = NECK * base.x;
        let right = smooth(
            &[
                pt(neck * 0.98, chin + 0.25 * HEAD.0 * stature),
                pt(neck, 0.5 * (chin + base.z) + 0.5),
                pt(neck * 1.06, base.z + 1.2),
                base.moved(0.4, -0.3),
            ],
            6,
        );
        let mut outline = right.clone();
        outline.extend(mirrored_back(&right));
        canvas.area(look::SKIN_AREA, "neck", &outline);
    }

    /// The head: a face without features, or hair put up.
    pub fn head(&self, canvas: &mut Canvas, view: View) {
        let stature = self.figure.stature;
        let (height, half) = (HEAD.0 * stature, HEAD.1 * stature);
        let face: Vec<Pt> = (0..=48)
            .map(|i| {
                let (sin, cos) = (PI * f64::from(i) / 24.0).sin_cos();
                // Narrower toward the chin.
                let taper = 1.0 - 0.2 * (1.0 + cos) * 0.5 * (1.0 + cos) * 0.5;
                pt(
                    half * sin * taper,
                    stature - 0.5 * height - 0.5 * height * cos,
                )
            })
            .collect();
        match view {
            View::Front => {
                canvas.area(look::SKIN_AREA, "face", &face);
                canvas.area(look::HAIR_AREA, "hair", &self.hair_front(half, height));
            }
            View::Back => {
                let hairline = stature - 0.86 * height;
                let hair: Vec<Pt> = face
                    .iter()
                    .map(|p| pt(p.x * 1.05, p.z.max(hairline)))
                    .collect();
                canvas.area(look::HAIR_AREA, "hair", &hair);
                let bun = pt(0.0, stature - 0.52 * height);
                let ring: Vec<Pt> = (0..=32)
                    .map(|i| {
                        let (sin, cos) = (PI * f64::from(i) / 16.0).sin_cos();
                        bun.moved(0.5 * half * sin, 0.21 * height * cos)
                    })
                    .collect();
                canvas.area(look::HAIR_AREA, "hair", &ring);
            }
        }
    }

    /// Hair put up, seen from the front: a cap over the forehead.
    fn hair_front(&self, half: f64, height: f64) -> Vec<Pt> {
        let top = self.figure.stature;
        let at = |x: f64, down: f64| pt(x * half, top - down * height);
        let inner = smooth(
            &[
                at(0.97, 0.52),
                at(0.84, 0.36),
                at(0.5, 0.24),
                at(0.0, 0.205),
            ],
            6,
        );
        let outer = smooth(
            &[
                at(0.0, -0.045),
                at(0.55, -0.005),
                at(0.95, 0.16),
                at(1.07, 0.36),
                at(0.97, 0.52),
            ],
            6,
        );
        let mut half_cap = outer;
        half_cap.extend(inner.into_iter().skip(1));
        let mut cap = half_cap.clone();
        cap.extend(mirrored_back(&half_cap));
        cap
    }
}
