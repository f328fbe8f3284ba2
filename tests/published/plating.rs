//! Plating arithmetic: Faraday's law and surfaces.

use leavewell_model::bench::{
    charge_ah, coat_g, deposit_um, plated_mass_g, plating_minutes, turned_cm2,
};
use leavewell_model::ledger::Ledger;

use crate::{near, near_share};

fn figure(id: &str) -> f64 {
    Ledger::standard().value(id)
}

/// A plating vendor's tutorial: 4.026 g of silver for each ampere-hour, and .639 um for an ampere on
/// a square decimetre in a minute.
#[test]
fn silver_by_charge() {
    let mass = plated_mass_g(
        1.0,
        figure("metal.silver.molar"),
        figure("plating.valence"),
        figure("metal.faraday"),
    );
    near_share(mass, 4.026, 1e-3);
    near(mass, 4.0247, 1e-4);
    // One minute of one ampere over 100 cm2.
    near(
        deposit_um(mass / 60.0, figure("metal.silver.density"), 100.0),
        0.639,
        1e-3,
    );
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

/// The relations undo one another.
#[test]
fn charge_and_mass_undo_each_other() {
    let (molar, faraday) = (figure("metal.silver.molar"), figure("metal.faraday"));
    let charge = charge_ah(13.0, molar, 1.0, faraday);
    near(plated_mass_g(charge, molar, 1.0, faraday), 13.0, 1e-12);
    // 10 mA on each cm2 lays .639 um a minute, so 20 um take 31.3 minutes, whatever the area.
    for area in [10.0, 620.0] {
        let mass = coat_g(20.0, figure("metal.silver.density"), area);
        let minutes = plating_minutes(charge_ah(mass, molar, 1.0, faraday), 10.0, area);
        near(minutes.unwrap_or(0.0), 20.0 / 0.6395, 0.02);
    }
    assert_eq!(plating_minutes(1.0, 0.0, 100.0), None);
    assert_eq!(plating_minutes(1.0, 10.0, 0.0), None);
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
