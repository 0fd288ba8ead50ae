//! The lower half: skirt, hem, front edge, seams, collar end, fold.

use sunbu_core::drape::{FOLD_OUT, Round};

use crate::canvas::Canvas;
use crate::curve::{Pt, mirrored_back, pt};
use crate::lines::{Lines, heights};
use crate::look;
use crate::view::View;

impl Lines<'_> {
    /// The hem that faces the viewer in front: from the wearer's left silhouette to the outer
    /// corner, or to the right silhouette where the corner lies behind it. From the viewer's
    /// right to the left.
    pub fn front_hem(&self) -> Vec<Pt> {
        let (girth, side) = (
            self.surface.girth(self.hem),
            self.surface.side_arc(self.hem),
        );
        let corner = self.outer_edge(self.outer_corner);
        let end = corner.min(girth - side);
        let steps = 60_u32;
        (0..=steps)
            .map(|i| {
                let s = side + (end - side) * f64::from(i) / f64::from(steps);
                self.point(View::Front, s, self.hem_at(s))
            })
            .collect()
    }

    /// The level hem of the back: as seen in front to the right of the outer edge and under the
    /// raised front, and as seen from behind.
    pub fn back_hem(&self) -> Vec<Pt> {
        self.round(View::Back, Round::even(self.hem, self.hem), 0.0)
    }

    /// The part of the outer panel that has come round to the back, seen from behind: its hem
    /// from the right silhouette to the corner. Empty where the corner lies in front.
    pub fn hem_round_the_side(&self) -> Vec<Pt> {
        let (girth, side) = (
            self.surface.girth(self.hem),
            self.surface.side_arc(self.hem),
        );
        let corner = self.outer_edge(self.outer_corner);
        if corner <= girth - side {
            return Vec::new();
        }
        let steps = 24_u32;
        (0..=steps)
            .map(|i| {
                let s = girth - side + (corner - girth + side) * f64::from(i) / f64::from(steps);
                self.point(View::Back, s, self.hem_at(s))
            })
            .collect()
    }

    /// The outer front edge from the hem's corner to the collar end, and the collar from there
    /// where the fold leaves some of it to see.
    pub fn outer_edge_runs(&self, view: View) -> Vec<Vec<Pt>> {
        let top = self.collar_end.max(self.fold.right);
        self.upward(view, self.outer_corner, top, |z| self.outer_edge(z))
    }

    /// The outer collar end.
    pub fn collar_end_point(&self, view: View) -> Pt {
        self.point(view, self.outer_edge(self.collar_end), self.collar_end)
    }

    /// Whether the outer collar end faces the viewer.
    pub fn collar_end_faces(&self, view: View) -> bool {
        self.seen(self.outer_edge(self.collar_end), self.collar_end)
            .visible(view)
    }

    /// The skirt: cloth, hem, edge and seams.
    pub fn draw_skirt(&self, canvas: &mut Canvas, view: View) {
        let top = self.obi.back.max(self.obi.front) + 2.0;
        let side = self.silhouette(self.hem, top);
        let left = mirrored_back(&side);
        let back_hem = self.back_hem();
        match view {
            View::Front => {
                // What is seen of the inside of the back under the raised front.
                let mut inside = back_hem.clone();
                inside.extend([pt(side[0].x, self.outer_corner + 6.0)]);
                inside.extend([pt(-side[0].x, self.outer_corner + 6.0)]);
                canvas.area(look::LINING_AREA, "inside", &inside);
                self.back_beside_the_edge(canvas, &side, top);
                let mut front = side.clone();
                front.extend(self.outer_boundary(top));
                let mut hem = self.front_hem();
                hem.reverse();
                front.extend(hem.iter().copied());
                canvas.area(look::CLOTH_AREA, "uwamae", &front);
                canvas.line(look::HEM_LINE, "hem", &hem);
            }
            View::Back => {
                let mut cloth = side.clone();
                cloth.extend(left);
                cloth.extend(back_hem.iter().copied());
                canvas.area(look::CLOTH_AREA, "back", &cloth);
                canvas.line(look::HEM_LINE, "hem", &back_hem);
                canvas.line(look::HEM_LINE, "hem-uwamae", &self.hem_round_the_side());
                let seam = self.upward(view, self.hem, self.fold.back.max(self.tie.back), |z| {
                    self.back_seam(z)
                });
                canvas.lines(look::SEAM_LINE, "back-seam", &seam);
            }
        }
        self.seams(canvas, view);
        canvas.lines(look::EDGE_LINE, "outer-edge", &self.outer_edge_runs(view));
    }

    /// The boundary of the outer panel at the viewer's left, from `top` down to the corner: the
    /// silhouette where the edge lies behind it.
    fn outer_boundary(&self, top: f64) -> Vec<Pt> {
        let mut down: Vec<Pt> = heights(self.outer_corner, top)
            .map(|z| {
                let seen = self.seen(self.outer_edge(z), z);
                pt(
                    if seen.front {
                        seen.left
                    } else {
                        -self.surface.half_breadth(z)
                    },
                    z,
                )
            })
            .collect();
        down.reverse();
        down
    }

    /// The right back panel, seen in front beside the outer edge.
    fn back_beside_the_edge(&self, canvas: &mut Canvas, side: &[Pt], top: f64) {
        let mut panel = mirrored_back(side);
        let corner = self.outer_edge(self.outer_corner);
        let inner = self.point(View::Front, corner, self.hem);
        let hem = self.front_of_back_hem(corner);
        panel.extend(hem.iter().copied());
        panel.extend([inner, pt(0.0, self.outer_corner), pt(0.0, top)]);
        canvas.area(look::SHADE_AREA, "beside", &panel);
        canvas.line(look::HEM_LINE, "hem-beside", &hem);
    }

    /// The level hem in front between the right silhouette and the outer corner.
    fn front_of_back_hem(&self, corner: f64) -> Vec<Pt> {
        let (girth, side) = (
            self.surface.girth(self.hem),
            self.surface.side_arc(self.hem),
        );
        let right = girth - side;
        if corner >= right {
            return Vec::new();
        }
        (0..=16_u32)
            .map(|i| {
                let s = right + (corner - right) * f64::from(i) / 16.0;
                self.point(View::Front, s, self.hem)
            })
            .collect()
    }

    /// Side seams and the outer okumi seam.
    fn seams(&self, canvas: &mut Canvas, view: View) {
        let top = self.fold.front.min(self.fold.back);
        let left_low = self.hem_at(self.left_seam());
        let left = self.upward(view, left_low, top, |_| self.left_seam());
        canvas.lines(look::SEAM_LINE, "left-seam", &left);
        let okumi_low = self.hem_at(self.okumi_seam());
        let okumi_top = self.collar_end.min(self.fold.front);
        let okumi = self.upward(view, okumi_low, okumi_top, |_| self.okumi_seam());
        canvas.lines(look::SEAM_LINE, "okumi-seam", &okumi);
        // The right side seam is seen where the outer panel does not lie over it.
        let covered =
            |p: &Pt| p.z >= self.outer_corner && self.right_seam(p.z) <= self.outer_edge(p.z);
        for run in self.upward(view, self.hem, top, |z| self.right_seam(z)) {
            let open: Vec<Vec<Pt>> = run
                .split(covered)
                .filter(|r| r.len() > 1)
                .map(<[Pt]>::to_vec)
                .collect();
            canvas.lines(look::SEAM_LINE, "right-seam", &open);
        }
    }

    /// The fold that hangs over the skirt, from the obi down to its lower edge.
    pub fn draw_fold(&self, canvas: &mut Canvas, view: View) {
        let low = self.round(view, self.fold, FOLD_OUT);
        let high = self.round(view, self.obi.raised(2.0), FOLD_OUT);
        let mut area = low.clone();
        area.extend(high.into_iter().rev());
        canvas.area(look::CLOTH_AREA, "fold", &area);
        if view == View::Back {
            let seam = self.upward(view, self.fold.back, self.obi.back, |z| self.back_seam(z));
            canvas.lines(look::SEAM_LINE, "back-seam", &seam);
        }
        canvas.line(look::EDGE_LINE, "fold-edge", &low);
    }

    /// The waist tie and the inner front edge, which the cloth hides.
    pub fn draw_hidden(&self, canvas: &mut Canvas, view: View) {
        canvas.line(look::HIDDEN_LINE, "tie", &self.round(view, self.tie, 0.0));
        if view == View::Front {
            let top = self.fold.front;
            let inner = self.upward(view, self.inner_corner, top, |z| self.inner_edge(z));
            canvas.lines(look::HIDDEN_LINE, "inner-edge", &inner);
        }
        let end = self.collar_end;
        if self.fold.right < end && self.collar_end_faces(view) {
            let hidden = self.upward(view, self.fold.right.max(self.outer_corner), end, |z| {
                self.outer_edge(z)
            });
            canvas.lines(look::HIDDEN_LINE, "outer-edge-hidden", &hidden);
        }
    }

    /// The collar end's mark: a diamond, hollow where the fold hides it.
    pub fn draw_collar_end(&self, canvas: &mut Canvas, view: View) {
        if !self.collar_end_faces(view) {
            return;
        }
        let at = self.collar_end_point(view);
        let r = 0.95;
        let diamond = [
            at.moved(0.0, r),
            at.moved(r, 0.0),
            at.moved(0.0, -r),
            at.moved(-r, 0.0),
        ];
        let hidden = self.fold.right < self.collar_end;
        let look = if hidden {
            look::NUMBER_MARK
        } else {
            look::DOT_MARK
        };
        canvas.area(look, "collar-end", &diamond);
    }
}
