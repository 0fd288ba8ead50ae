//! One scalar for the model: plain `f64` predicts, a dual number gives the exact Jacobian.
//!
//! A dual number carries a value and its partial derivatives with respect to `N` inputs; every
//! operation applies the chain rule, so the derivatives are exact to rounding (forward-mode
//! differentiation). The tests hold them to central differences.

use std::ops::{Add, Div, Mul, Neg, Sub};

/// What the forward model may do with a number.
pub trait Scalar:
    Copy
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Div<Output = Self>
    + Neg<Output = Self>
{
    /// A constant, with no derivative.
    fn constant(value: f64) -> Self;

    /// The plain value.
    fn value(self) -> f64;

    /// `f(self)` for a function known by its value and slope at `self.value()`.
    fn chain(self, value: f64, slope: f64) -> Self;

    /// The square root; the model only takes it of sums of squares well above zero.
    fn sqrt(self) -> Self {
        let root = self.value().sqrt();
        self.chain(root, 0.5 / root)
    }

    /// This number times a plain factor.
    fn scale(self, factor: f64) -> Self {
        self.chain(self.value() * factor, factor)
    }

    /// This number plus a plain term.
    fn plus(self, term: f64) -> Self {
        self.chain(self.value() + term, 1.0)
    }
}

impl Scalar for f64 {
    fn constant(value: f64) -> Self {
        value
    }
    fn value(self) -> f64 {
        self
    }
    fn chain(self, value: f64, _slope: f64) -> Self {
        value
    }
}

/// A value and its partial derivatives with respect to `N` inputs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dual<const N: usize> {
    /// The value itself.
    pub value: f64,
    /// Partial derivatives, in the order of the inputs.
    pub grad: [f64; N],
}

impl<const N: usize> Dual<N> {
    /// The input number `index`: its own derivative is one.
    ///
    /// # Panics
    /// When `index` is not below `N`.
    pub fn input(value: f64, index: usize) -> Self {
        let mut grad = [0.0; N];
        grad[index] = 1.0;
        Self { value, grad }
    }

    /// `value` with the gradient `a * self.grad + b * other.grad`.
    fn combine(self, other: Self, value: f64, a: f64, b: f64) -> Self {
        let mut grad = self.grad;
        for (g, o) in grad.iter_mut().zip(other.grad) {
            *g = a * *g + b * o;
        }
        Self { value, grad }
    }
}

impl<const N: usize> Scalar for Dual<N> {
    fn constant(value: f64) -> Self {
        Self {
            value,
            grad: [0.0; N],
        }
    }
    fn value(self) -> f64 {
        self.value
    }
    fn chain(self, value: f64, slope: f64) -> Self {
        Self {
            value,
            grad: self.grad.map(|g| slope * g),
        }
    }
}

impl<const N: usize> Add for Dual<N> {
    type Output = Self;
    fn add(self, o: Self) -> Self {
        self.combine(o, self.value + o.value, 1.0, 1.0)
    }
}

impl<const N: usize> Sub for Dual<N> {
    type Output = Self;
    fn sub(self, o: Self) -> Self {
        self.combine(o, self.value - o.value, 1.0, -1.0)
    }
}

impl<const N: usize> Mul for Dual<N> {
    type Output = Self;
    fn mul(self, o: Self) -> Self {
        self.combine(o, self.value * o.value, o.value, self.value)
    }
}

impl<const N: usize> Div for Dual<N> {
    type Output = Self;
    fn div(self, o: Self) -> Self {
        let quotient = self.value / o.value;
        self.combine(o, quotient, 1.0 / o.value, -quotient / o.value)
    }
}

impl<const N: usize> Neg for Dual<N> {
    type Output = Self;
    fn neg(self) -> Self {
        self.chain(-self.value, -1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A function that uses every operation.
    fn f<S: Scalar>(x: S, y: S) -> S {
        ((x * y - x / y).sqrt() + (-y).scale(0.3).plus(2.0)) * x
    }

    #[test]
    fn derivatives_agree_with_central_differences() {
        let (x, y, step) = (3.2, 1.7, 1e-5);
        let got = f(Dual::<2>::input(x, 0), Dual::<2>::input(y, 1));
        let want = [
            (f(x + step, y) - f(x - step, y)) / (2.0 * step),
            (f(x, y + step) - f(x, y - step)) / (2.0 * step),
        ];
        assert_eq!(got.value.to_bits(), f(x, y).to_bits());
        for (g, w) in got.grad.into_iter().zip(want) {
            // Central differences err by step² times the third derivative: about 1e-9 here.
            assert!((g - w).abs() < 1e-8, "dual {g} against difference {w}");
        }
    }

    #[test]
    fn a_constant_has_no_derivative() {
        assert_eq!(Dual::<3>::constant(4.0).grad, [0.0; 3]);
    }
}
