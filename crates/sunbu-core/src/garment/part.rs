//! The parts of a women's long kimono: their names and the ranges real ones lie in.

use crate::keyed::keyed_enum;

keyed_enum! {
    /// One sewn (finished) measure of a garment, by the trade's name.
    ///
    /// The order is the order of a sewing sheet: lengths, sleeve, widths, front edge, neck.
    Part {
        /// Length to the hem, from the shoulder ridge or from the back collar seam.
        Mitake = "mitake",
        /// Back seam to sleeve end along the shoulder; katahaba plus sodehaba.
        Yuki = "yuki",
        /// Shoulder width: back seam to the sleeve seam.
        Katahaba = "katahaba",
        /// Sleeve width: sleeve seam to sleeve end.
        Sodehaba = "sodehaba",
        /// Sleeve drop: shoulder ridge to the sleeve's lower edge.
        Sodetake = "sodetake",
        /// Opening for the hand, from the shoulder ridge down.
        Sodeguchi = "sodeguchi",
        /// Length over which the sleeve is sewn to the body, from the shoulder ridge down.
        Sodetsuke = "sodetsuke",
        /// Open edge of the sleeve below the sodetsuke, on the body's side.
        Furi = "furi",
        /// Opening in the side seam under the sleeve.
        Miyatsukuchi = "miyatsukuchi",
        /// Width of one back panel at the hip: back seam to side seam.
        Ushirohaba = "ushirohaba",
        /// Width of one front panel at the hip: side seam to okumi seam.
        Maehaba = "maehaba",
        /// Front width at the chest.
        Dakihaba = "dakihaba",
        /// Width of the overlap panel at the hem.
        Okumihaba = "okumihaba",
        /// Width of the overlap panel at the collar end.
        Aizumahaba = "aizumahaba",
        /// Hem to the collar's end along the front edge; also tsumashita.
        Erishita = "erishita",
        /// Shoulder ridge down to the point where the overlap panel begins.
        Okumisagari = "okumisagari",
        /// Half the neck opening, as cut.
        ErikataAki = "erikata_aki",
        /// How far the neck opening is set back behind the shoulder ridge, as cut.
        Kurikoshi = "kurikoshi",
        /// Extra depth of the neck opening at the back seam.
        Tsukekomi = "tsukekomi",
        /// Width of the collar at the back as sewn; a wide collar is folded in half when worn.
        Erihaba = "erihaba",
    }
}

impl Part {
    /// Lowest and highest value taken for a women's long kimono, in centimetres.
    ///
    /// Chosen wide of everything published: below and above the Edo and the modern table of
    /// S110 (Dressing school: measurements, Edo and modern table), the sleeves up to an
    /// o-furisode's 3 shaku 2 sun, the widths from a narrow old garment to a hip of about 150.
    pub fn range_cm(self) -> (f64, f64) {
        match self {
            Part::Mitake => (95.0, 210.0),
            Part::Yuki => (45.0, 90.0),
            Part::Katahaba | Part::Sodehaba => (20.0, 48.0),
            Part::Sodetake => (30.0, 125.0),
            Part::Sodeguchi => (12.0, 40.0),
            Part::Sodetsuke => (12.0, 35.0),
            Part::Furi => (0.0, 115.0),
            Part::Miyatsukuchi => (5.0, 25.0),
            Part::Ushirohaba => (19.0, 45.0),
            Part::Maehaba => (14.0, 40.0),
            Part::Dakihaba => (12.0, 42.0),
            Part::Okumihaba => (8.0, 22.0),
            Part::Aizumahaba => (7.0, 22.0),
            Part::Erishita => (40.0, 120.0),
            Part::Okumisagari => (12.0, 35.0),
            Part::ErikataAki => (6.0, 13.0),
            Part::Kurikoshi => (0.0, 8.0),
            Part::Tsukekomi => (0.0, 4.0),
            Part::Erihaba => (4.0, 16.0),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_part_has_a_range_that_a_published_sheet_fits_in() {
        use crate::garment::tables::PUBLISHED;
        for part in Part::ALL {
            let (low, high) = part.range_cm();
            assert!(0.0 <= low && low < high, "{}: {low} to {high}", part.key());
            for sheet in PUBLISHED {
                let Some((least, most)) = sheet.range(*part) else {
                    continue;
                };
                let within = low <= least && most <= high;
                assert!(within, "{}: {least} to {most} in {}", part.key(), sheet.id);
            }
        }
    }
}
