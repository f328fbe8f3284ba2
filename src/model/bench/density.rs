//! The expected density of layered sheet.

/// Density of layered sheet in g/cm3: the sum of volume share times density, exact for layers that do not
/// mix. `core` and `skin` are densities in g/cm3; `skin_share` is the share of the thickness that is skin,
/// clamped to 0 to 1.
#[must_use]
pub fn layered_density(core: f64, skin: f64, skin_share: f64) -> f64 {
    let share = skin_share.clamp(0.0, 1.0);
    core * (1.0 - share) + skin * share
}

/// Share of the thickness of a sheet that is silver: `faces` layers of `skin_um` micrometres in a sheet
/// `sheet_mm` > 0 thick in all. Clamped to 0 to 1.
#[must_use]
pub fn skin_share(skin_um: f64, faces: f64, sheet_mm: f64) -> f64 {
    (faces * skin_um / 1000.0 / sheet_mm).clamp(0.0, 1.0)
}
