//! Arithmetic on places and directions in space.

/// A place or a direction, in centimetres.
pub type V3 = [f64; 3];

#[inline]
pub fn add(a: V3, b: V3) -> V3 {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

#[inline]
pub fn sub(a: V3, b: V3) -> V3 {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

#[inline]
pub fn times(a: V3, k: f64) -> V3 {
    [a[0] * k, a[1] * k, a[2] * k]
}

#[inline]
pub fn dot(a: V3, b: V3) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

#[inline]
pub fn cross(a: V3, b: V3) -> V3 {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

#[inline]
pub fn length(a: V3) -> f64 {
    dot(a, a).sqrt()
}

#[inline]
pub fn unit(a: V3) -> V3 {
    times(a, 1.0 / length(a).max(1e-12))
}

/// The place a share `t` of the way from `a` to `b`.
#[inline]
pub fn toward(a: V3, b: V3, t: f64) -> V3 {
    add(a, times(sub(b, a), t))
}
