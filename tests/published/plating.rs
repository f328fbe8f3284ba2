//! Plating arithmetic: coats and surfaces.

use leavewell_model::bench::{coat_g, deposit_um, turned_cm2};
use leavewell_model::ledger::Ledger;

use crate::near;

fn figure(id: &str) -> f64 {
    Ledger::standard().value(id)
}

/// The German stamp "90": 90 g on 24 dm2 (RAL-RG 691 B4) is a mean of 36 um in the trade.
#[test]
fn the_ninety_stamp() {
    let um = deposit_um(90.0, figure("metal.silver.density"), 2400.0);
    near(um, 35.75, 0.01);
    near(um, 36.0, 0.3);
    near(
        coat_g(um, figure("metal.silver.density"), 2400.0),
        90.0,
        1e-9,
    );
}

/// Euclid: a frustum with radii 3 and 6 cm and a height of 4 cm has a slant of 5 cm and a side of
/// 45 pi.
#[test]
fn a_frustum() {
    near(
        turned_cm2(&[(30.0, 0.0), (60.0, 40.0)]),
        45.0 * core::f64::consts::PI,
        1e-9,
    );
}
