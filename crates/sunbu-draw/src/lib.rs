//! Figures, charts and sheets as SVG from core values.
