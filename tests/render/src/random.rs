//! Random numbers from a seed, the same on every machine.

/// A small generator (SplitMix64, Steele, Lea and Flood 2014).
#[derive(Debug, Clone)]
pub struct Random(u64);

impl Random {
    /// The generator of this seed.
    pub fn of(seed: u64) -> Self {
        Self(seed)
    }

    /// Sixty-four random bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// Even over 0 to 1.
    pub fn unit(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Even over a range.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// Normal with mean zero and deviation one (Box and Muller 1958).
    pub fn normal(&mut self) -> f64 {
        let radius = (-2.0 * (1.0 - self.unit()).ln()).sqrt();
        radius * (std::f64::consts::TAU * self.unit()).cos()
    }

    /// One of a list.
    ///
    /// # Panics
    /// When the list is empty.
    pub fn one_of<T: Copy>(&mut self, list: &[T]) -> T {
        let last = list.len() - 1;
        let place = self.unit() * list.len() as f64;
        list[(0..last).find(|&i| place < (i + 1) as f64).unwrap_or(last)]
    }
}
