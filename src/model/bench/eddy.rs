//! How deep an eddy-current meter sees, and its scale.

/// Magnetic constant in H/m times the units used below: 4 pi 1e-7 H/m, with MS/m, kHz and mm, gives
/// depth in mm as 1 / sqrt(pi f sigma mu0) with this factor.
const MU0_MS_KHZ_MM: f64 = 4.0 * std::f64::consts::PI * 1e-4;

/// Conductivity in MS/m from per cent of the International Annealed Copper Standard; `standard` is
/// what 100 % stands for (58.0 MS/m: International Electrotechnical Commission, IEC 60028, 1925).
#[must_use]
pub fn ms_per_m(percent_iacs: f64, standard: f64) -> f64 {
    percent_iacs / 100.0 * standard
}

/// Depth at which eddy currents have fallen to 1/e, mm: 1 / sqrt(pi f mu0 sigma), for flat
/// non-magnetic metal much thicker than that (Jackson, Classical Electrodynamics, 3rd ed., 1999,
/// 5.18). `conductivity_ms_m` in MS/m and `khz` > 0; infinite where either is 0 or less.
#[must_use]
pub fn skin_depth_mm(conductivity_ms_m: f64, khz: f64) -> f64 {
    let product = std::f64::consts::PI * khz * MU0_MS_KHZ_MM * conductivity_ms_m;
    if product > 0.0 {
        1.0 / product.sqrt()
    } else {
        f64::INFINITY
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_conductor_no_limit() {
        assert!(skin_depth_mm(0.0, 60.0).is_infinite());
        assert!(skin_depth_mm(58.0, 0.0).is_infinite());
        assert!(skin_depth_mm(58.0, 60.0) < skin_depth_mm(58.0, 15.0));
    }
}
