//! The lowest point of a bowl between walls that give way.
//!
//! Minimise over `x`
//!
//! ```text
//! x'Hx / 2 + g'x + sum_j max(0, a_j'x - b_j)^2 / (2 give_j)
//! ```
//!
//! Wall `j` stands at `a_j'x = b_j`; whoever passes it is pushed back, the harder the less it gives.
//! A wall that hardly gives is a limit.
//!
//! Steps that look at the curvature at one point go wrong here: just before a steep wall nothing is
//! seen of it, and the step ends far behind it. So walls are found by their forces instead. With
//! `f_j >= 0` the force with which wall `j` pushes back, the lowest point is
//! `x = -H^-1 (g + sum_j f_j a_j)`; a wall that pushes is passed by `give_j f_j`, one that is not
//! passed does not push. That is a least-squares problem in forces that are not below zero, which
//! the active set method of Lawson and Hanson (Solving Least Squares Problems, 1974, chapter 23)
//! solves in finitely many steps, however steep the walls. All of it happens in coordinates in which
//! the bowl is round, `y = L'x` with `H = LL'`.

use nalgebra::{DMatrix, DVector, SMatrix, SVector};

/// How far a wall may be passed and still count as not passed, in the unit of `b`: far below what a
/// tape or an eye tells in centimetres, far above rounding.
const TOUCH: f64 = 1e-9;

/// One wall: `slope'x <= bound` but for what it gives.
#[derive(Debug, Clone)]
pub(super) struct Wall<const N: usize> {
    /// `a`: how fast it is approached along each variable.
    pub(super) slope: SVector<f64, N>,
    /// `b`: where it stands.
    pub(super) bound: f64,
    /// How far it gives way per unit of force; above zero.
    pub(super) give: f64,
}

/// The lowest point; `None` when `hessian` is not positive definite.
///
/// `pushing` are the walls that are likely to push, by their places, such as those of a similar
/// problem; it is left with those that do. Any guess gives the same point, a good one sooner.
pub(super) fn lowest<const N: usize>(
    hessian: SMatrix<f64, N, N>,
    gradient: &SVector<f64, N>,
    walls: &[Wall<N>],
    pushing: &mut Vec<usize>,
) -> Option<SVector<f64, N>> {
    let root = hessian.cholesky()?.unpack();
    let mut balance = Balance {
        walls,
        bottom: -root.solve_lower_triangular(gradient)?,
        root,
        pushing: Vec::with_capacity(2 * N),
    };
    for wall in std::mem::take(pushing) {
        if wall < walls.len() {
            balance.add(wall);
        }
    }
    balance.settle();
    // Each round adds the wall that is passed furthest. Rounds end by themselves; the count only
    // ends the search should rounding ever make it go in circles.
    for _ in 0..4 * walls.len() {
        let Some(wall) = balance.furthest_passed() else {
            break;
        };
        balance.add(wall);
        balance.settle();
    }
    pushing.extend(balance.pushing.iter().map(|p| p.wall));
    Some(balance.at())
}

/// A wall that pushes.
struct Pushing<const N: usize> {
    wall: usize,
    force: f64,
    /// How the lowest point moves against its force, where the bowl is round: `L^-1 a`.
    moves: SVector<f64, N>,
    /// How far the lowest point goes back from this wall per unit of force of each earlier one,
    /// and of its own with what it gives.
    back: Vec<f64>,
    /// How far the bottom of the bowl lies behind it.
    behind: f64,
}

/// The lowest point between the walls that push.
struct Balance<'a, const N: usize> {
    walls: &'a [Wall<N>],
    /// `L`.
    root: SMatrix<f64, N, N>,
    /// The bottom of the bowl, where it is round.
    bottom: SVector<f64, N>,
    pushing: Vec<Pushing<N>>,
}

impl<const N: usize> Balance<'_, N> {
    fn at(&self) -> SVector<f64, N> {
        let mut at = self.bottom;
        for p in &self.pushing {
            at.axpy(-p.force, &p.moves, 1.0);
        }
        // The root of a positive definite matrix has no zero on its diagonal.
        self.root.tr_solve_lower_triangular(&at).unwrap_or(at)
    }

    /// The wall that is passed furthest, of those that do not push.
    fn furthest_passed(&self) -> Option<usize> {
        let at = self.at();
        let mut furthest = (TOUCH, None);
        for (place, wall) in self.walls.iter().enumerate() {
            let by = wall.slope.dot(&at) - wall.bound;
            if by > furthest.0 && self.pushing.iter().all(|p| p.wall != place) {
                furthest = (by, Some(place));
            }
        }
        furthest.1
    }

    fn add(&mut self, place: usize) {
        let wall = &self.walls[place];
        let moves = self.root.solve_lower_triangular(&wall.slope);
        let moves = moves.unwrap_or(wall.slope); // as in `at`
        let mut back: Vec<f64> = self.pushing.iter().map(|p| moves.dot(&p.moves)).collect();
        back.push(moves.norm_squared() + wall.give);
        self.pushing.push(Pushing {
            wall: place,
            force: 0.0,
            behind: moves.dot(&self.bottom) - wall.bound,
            moves,
            back,
        });
    }

    fn remove(&mut self, place: usize) {
        self.pushing.remove(place);
        for later in &mut self.pushing[place..] {
            later.back.remove(place);
        }
    }

    /// Sets the forces so that every pushing wall is passed by just what it gives, and lets go of
    /// those that would have to pull for that.
    fn settle(&mut self) {
        while !self.pushing.is_empty() {
            let count = self.pushing.len();
            let back = DMatrix::from_fn(count, count, |i, j| self.pushing[i.max(j)].back[i.min(j)]);
            let behind = DVector::from_fn(count, |i, _| self.pushing[i].behind);
            let Some(factor) = back.cholesky() else {
                // Two walls on one line that give less than rounding: the older one holds both.
                self.pushing.pop();
                continue;
            };
            let wanted = factor.solve(&behind);
            // As far toward the wanted forces as none of them pulls; the first to do so is let go.
            let mut first = (1.0, None);
            for (place, (p, &to)) in self.pushing.iter().zip(&wanted).enumerate() {
                if to <= 0.0 {
                    let share = p.force / (p.force - to).max(f64::MIN_POSITIVE);
                    if first.1.is_none() || share < first.0 {
                        first = (share, Some(place));
                    }
                }
            }
            for (p, &to) in self.pushing.iter_mut().zip(&wanted) {
                p.force += first.0 * (to - p.force);
            }
            match first.1 {
                Some(place) => self.remove(place),
                None => return,
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{TOUCH, Wall, lowest};
    use nalgebra::{Matrix2, SMatrix, SVector, Vector2};

    fn wall(slope: [f64; 2], bound: f64, give: f64) -> Wall<2> {
        Wall {
            slope: Vector2::from(slope),
            bound,
            give,
        }
    }

    #[test]
    fn without_a_wall_in_the_way_it_is_the_bottom_of_the_bowl() {
        let walls = [wall([1.0, 0.0], 3.0, 1e-6), wall([-1.0, 1.0], 9.0, 0.5)];
        let hessian = Matrix2::new(2.0, 0.0, 0.0, 4.0);
        let gradient = Vector2::new(-4.0, 8.0);
        let mut pushing = vec![1, 0, 7]; // a guess that is wrong altogether
        let got = lowest(hessian, &gradient, &walls, &mut pushing).unwrap();
        assert!((got - Vector2::new(2.0, -2.0)).norm() < 1e-12, "{got}");
        assert_eq!(pushing, [0; 0]);
    }

    #[test]
    fn a_wall_is_passed_by_what_it_gives() {
        // In one direction: (x - 5)^2 / 2 with a wall at 2. One that gives 1 per unit of force adds
        // (x - 2)^2 / 2, so the lowest point is half way; one that gives next to nothing is a limit.
        for (give, want) in [(1e-9, 2.0), (1.0, 3.5)] {
            let walls = [wall([1.0, 0.0], 2.0, give)];
            let gradient = Vector2::new(-5.0, 0.0);
            let got = lowest(Matrix2::identity(), &gradient, &walls, &mut Vec::new()).unwrap();
            assert!((got[0] - want).abs() < 1e-8, "{} against {want}", got[0]);
        }
    }

    #[test]
    fn two_limits_on_one_line_are_one() {
        let walls = [wall([1.0, 0.0], 2.0, 1e-8), wall([2.0, 0.0], 4.0, 1e-8)];
        let gradient = Vector2::new(-5.0, 0.0);
        let got = lowest(Matrix2::identity(), &gradient, &walls, &mut Vec::new()).unwrap();
        assert!((got[0] - 2.0).abs() < 1e-6, "{got}");
    }

    #[test]
    fn a_bowl_without_a_bottom_has_no_lowest_point() {
        let hessian = Matrix2::new(1.0, 0.0, 0.0, -1.0);
        let got = lowest(hessian, &Vector2::zeros(), &[], &mut Vec::new());
        assert!(got.is_none(), "{got:?}");
    }

    /// A small generator of random numbers (SplitMix64), between -1 and 1.
    fn random(state: &mut u64) -> f64 {
        *state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = *state;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 52) as f64 - 1.0
    }

    #[test]
    fn the_slope_vanishes_at_the_lowest_point_of_random_bowls_between_steep_walls() {
        const N: usize = 8;
        let (mut state, mut held) = (1, 0);
        for _ in 0..500 {
            let root = SMatrix::<f64, N, N>::from_fn(|_, _| random(&mut state));
            let hessian = root * root.transpose() * 0.1 + SMatrix::identity() * 1e-3;
            let gradient = SVector::<f64, N>::from_fn(|_, _| random(&mut state));
            let walls: Vec<Wall<N>> = (0..30)
                .map(|i| Wall {
                    slope: SVector::from_fn(|_, _| random(&mut state)),
                    bound: random(&mut state),
                    give: [0.5, 0.01, 1e-4][i % 3],
                })
                .collect();
            let mut guess = vec![3, 4, 20];
            let at = lowest(hessian, &gradient, &walls, &mut guess).unwrap();
            let same = lowest(hessian, &gradient, &walls, &mut Vec::new()).unwrap();
            // A wall that is passed by less than TOUCH counts as not passed, on one way and not on
            // the other; the bowl is flat enough to make some of these of it.
            let apart = (at - same).norm();
            assert!(apart < 100.0 * TOUCH, "with a guess {at}, without {same}");
            let mut slope = hessian * at + gradient;
            for wall in &walls {
                let passed = (wall.slope.dot(&at) - wall.bound).max(0.0);
                slope += wall.slope * (passed / wall.give);
            }
            // Each of the 30 walls may lack the force of TOUCH, on slopes no longer than the root
            // of 8; the forces themselves are thousands.
            let bound = 30.0 * 8.0_f64.sqrt() * TOUCH / 1e-4;
            let slope = slope.norm();
            assert!(slope < bound, "slope {slope}, bound {bound}");
            held += guess.len();
        }
        assert!(held > 500, "walls push in these problems: {held}");
    }
}
