//! The arithmetic of a silver coat: its mass, and the charge that deposits it (Faraday's law). Handbook
//! values are figures of the ledger (`metal.*`); the formulas take them as arguments.

/// Mass of a coat `thickness_um` micrometres thick over `area_cm2`, in grams: density (g/cm3) times
/// volume.
#[must_use]
pub fn coat_g(thickness_um: f64, density: f64, area_cm2: f64) -> f64 {
    thickness_um / 10_000.0 * density * area_cm2
}

/// Charge that deposits `mass_g` grams at full efficiency, in ampere-hours: m z F / M / 3600. `molar` is
/// the molar mass in g/mol, `valence` z at least 1, `faraday` in C/mol.
#[must_use]
pub fn charge_ah(mass_g: f64, molar: f64, valence: f64, faraday: f64) -> f64 {
    mass_g * valence * faraday / molar / 3600.0
}

/// Minutes that a charge takes at a current density: 60 Q / (i A), with `milliampere` per cm2 and the
/// area in cm2. `None` unless both are above 0.
#[must_use]
pub fn plating_minutes(ampere_hours: f64, milliampere: f64, area_cm2: f64) -> Option<f64> {
    let ampere = milliampere / 1000.0 * area_cm2;
    (ampere > 0.0).then(|| 60.0 * ampere_hours / ampere)
}
