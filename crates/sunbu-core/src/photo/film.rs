//! Focal lengths as they are told on 35 mm film.

/// Diagonal of the 36 by 24 mm of the film to which lenses are compared, in mm.
const FILM_DIAGONAL_MM: f64 = 43.266_615_305_567_87; // = sqrt(36. * 36. + 24. * 24.)

/// The focal length as a share of the longer side of a picture of this size, from its length in
/// millimetres on 35 mm film, which gives the same angle over the diagonal of the sensor (common
/// practice of makers; the standard, CIPA DC-008, says "equivalent" and no more).
///
/// On a picture of the film's own sides, 3:2, this is the number over 36; on one of 4:3 over 34.6.
pub fn share_of_film(film_mm: f64, [width, height]: [u32; 2]) -> f64 {
    let elongation = f64::from(width.max(height)) / f64::from(width.min(height).max(1));
    film_mm / FILM_DIAGONAL_MM * diagonal(elongation)
}

/// The sensor's diagonal over the picture's longer side.
///
/// Sensors are 3:2 or 4:3. A longer picture is a 4:3 one of a phone cut above and below, so the
/// longer side is the sensor's; a squarer one is it cut at the ends, so the shorter side is.
fn diagonal(elongation: f64) -> f64 {
    const LONGEST_SENSOR: f64 = 1.55;
    const SHORTEST_SENSOR: f64 = 1.25;
    const PHONE: f64 = 4.0 / 3.0;
    let whole = |elongation: f64| 1.0_f64.hypot(1.0 / elongation);
    if elongation > LONGEST_SENSOR {
        whole(PHONE)
    } else if elongation < SHORTEST_SENSOR {
        whole(PHONE) * PHONE / elongation
    } else {
        whole(elongation)
    }
}
