//! The mass of a silver coat. The density of silver is a figure of the ledger.

/// Mass of a coat `thickness_um` micrometres thick over `area_cm2`, in grams: density (g/cm3) times
/// volume.
#[must_use]
pub fn coat_g(thickness_um: f64, density: f64, area_cm2: f64) -> f64 {
    thickness_um / 10_000.0 * density * area_cm2
}
