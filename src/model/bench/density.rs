//! What layered sheet should weigh.

/// Density of sheet in layers, g/cm3: sum of volume share times density, exact for layers that do not
/// mix. `skin_share` is the share of the thickness that is skin, held to 0 to 1.
#[must_use]
pub fn layered_density(core: f64, skin: f64, skin_share: f64) -> f64 {
    let share = skin_share.clamp(0.0, 1.0);
    core * (1.0 - share) + skin * share
}

/// Share of a sheet's whole thickness that is silver: `faces` layers of `skin_um` in `sheet_mm` > 0,
/// held to 0 to 1.
#[must_use]
pub fn skin_share(skin_um: f64, faces: f64, sheet_mm: f64) -> f64 {
    (faces * skin_um / 1000.0 / sheet_mm).clamp(0.0, 1.0)
}
