//! How deep an eddy-current meter sees, and its scale.

use crate::ledger::Ledger;
use crate::record::hundredths;

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

/// How deep a meter sees into metal of this conductivity, in words, and how thick the metal has to be.
/// `khz` of `None` is the usual frequency.
#[must_use]
pub fn how_deep_it_sees(percent_iacs: f64, khz: Option<f64>, ledger: &Ledger) -> String {
    let own = |id: &str| ledger.value(&format!("measure.iacs.{id}"));
    let khz = khz.unwrap_or_else(|| own("khz"));
    let depth = skin_depth_mm(ms_per_m(percent_iacs, own("standard")), khz);
    if !depth.is_finite() {
        return "Without a conductivity and a frequency above 0 nothing can be said of the depth."
            .to_owned();
    }
    format!(
        "At {} kHz the meter's currents fall to about a third within {} mm of this metal. A meter wants about {} mm of it \
         (recalled from a standard, to be verified); thinner sheet reads low.",
        hundredths(khz),
        hundredths(depth),
        hundredths(depth * own("depths")),
    )
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
