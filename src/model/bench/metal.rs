//! Densities, stoichiometry and coats of silver. The handbook values are in the ledger
//! (`metal.*`); the formulas take them as arguments.

/// Thickness of silver used up per thickness of silver sulphide formed (2 Ag + S -> Ag2S):
/// rho(Ag2S) w(Ag) / rho(Ag), with w(Ag) = 2 M(Ag) / (2 M(Ag) + M(S)). Densities in g/cm3, molar
/// masses in g/mol, all > 0.
#[must_use]
pub fn silver_in_sulphide(
    sulphide_density: f64,
    silver_density: f64,
    silver_molar: f64,
    sulphur_molar: f64,
) -> f64 {
    sulphide_density * silver_share(silver_molar, sulphur_molar) / silver_density
}

/// Mass share of silver in silver sulphide.
#[must_use]
pub fn silver_share(silver_molar: f64, sulphur_molar: f64) -> f64 {
    2.0 * silver_molar / (2.0 * silver_molar + sulphur_molar)
}

/// Mass of a coat of `thickness_um` micrometres over `area_cm2`, grams: density (g/cm3) times volume.
/// The same relation as [`deposit_um`], turned round; 0 for no area.
#[must_use]
pub fn coat_g(thickness_um: f64, density: f64, area_cm2: f64) -> f64 {
    thickness_um / 10_000.0 * density * area_cm2
}

/// Mean thickness of `mass_g` of metal of the given density (g/cm3) over `area_cm2` > 0, micrometres.
#[must_use]
pub fn deposit_um(mass_g: f64, density: f64, area_cm2: f64) -> f64 {
    mass_g / (density * area_cm2) * 10_000.0
}

/// Density of an ideal mixture from mass shares that sum to 1 and densities: 1 / sum(w / rho).
#[must_use]
pub fn mixture_density(shares: &[(f64, f64)]) -> f64 {
    1.0 / shares.iter().map(|(w, rho)| w / rho).sum::<f64>()
}
