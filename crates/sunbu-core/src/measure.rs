//! Lengths, their units, and how far each is trusted.
