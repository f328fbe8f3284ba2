//! Plating arithmetic: Faraday's law and surfaces.

use leavewell_model::bench::{charge_ah, coat_g, plating_minutes, turned_cm2};
use leavewell_model::ledger::Ledger;

use crate::{near, near_share};

fn figure(id: &str) -> f64 {
    Ledger::standard().value(id)
}

fn silver_charge_ah(mass_g: f64) -> f64 {
    charge_ah(
        mass_g,
        figure("metal.silver.molar"),
        figure("plating.valence"),
        figure("metal.faraday"),
    )
}

/// A plating vendor's tutorial: 4.026 g of silver for each ampere-hour, and .639 um for an ampere on a square
/// decimetre in a minute.
#[test]
fn charge_of_a_silver_coat() {
    near_share(silver_charge_ah(4.026), 1.0, 1e-3);
    near(silver_charge_ah(4.0247), 1.0, 2e-5);
    let minute = coat_g(0.639, figure("metal.silver.density"), 100.0);
    near_share(60.0 * silver_charge_ah(minute), 1.0, 1e-3);
    // 25.18 g need 6 A for 1.0426 hours.
    near_share(silver_charge_ah(25.18), 6.0 * 1.0426, 1e-3);
}

/// 10 mA on each square centimetre deposits .6395 um a minute, so 20 um take 31.3 minutes, whatever the area.
#[test]
fn time_of_a_coat_does_not_depend_on_the_area() {
    for area in [10.0, 620.0] {
        let mass = coat_g(20.0, figure("metal.silver.density"), area);
        let minutes = plating_minutes(silver_charge_ah(mass), 10.0, area);
        near(minutes.unwrap(), 20.0 / 0.6395, 0.02);
    }
    assert_eq!(plating_minutes(1.0, 0.0, 100.0), None);
    assert_eq!(plating_minutes(1.0, 10.0, 0.0), None);
}

/// Euclid: a frustum with radii of 3 and 6 cm and a height of 4 cm has a slant of 5 cm and a side of 45 pi.
#[test]
fn side_of_a_frustum() {
    near(
        turned_cm2(&[(30.0, 0.0), (60.0, 40.0)]),
        45.0 * core::f64::consts::PI,
        1e-9,
    );
}
