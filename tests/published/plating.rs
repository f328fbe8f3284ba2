//! Plating arithmetic: surfaces. The mass of a coat is checked with the silver.

use leavewell_model::bench::turned_cm2;

use crate::near;

/// Euclid: a frustum with radii of 3 and 6 cm and a height of 4 cm has a slant of 5 cm and a side of 45 pi.
#[test]
fn side_of_a_frustum() {
    near(
        turned_cm2(&[(30.0, 0.0), (60.0, 40.0)]),
        45.0 * core::f64::consts::PI,
        1e-9,
    );
}
