//! How far from a heated joint the metal still exceeds a temperature.
//!
//! Steady fin solutions for a wide sheet that loses heat from both faces (Incropera et al., Fundamentals
//! of Heat and Mass Transfer, extended surfaces). They are an upper bound for brief heating, and say
//! nothing about a flame that washes over the whole piece.

use super::bessel::bessel_k0;

/// A sheet of metal and its heat loss to the air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    /// Conductivity, W/(m K); > 0.
    pub conductivity: f64,
    /// Thickness, mm; > 0.
    pub thickness_mm: f64,
    /// Heat loss per face, W/(m2 K); > 0.
    pub loss: f64,
    /// Ambient temperature, C.
    pub ambient_c: f64,
}

impl Sheet {
    /// The length over which the excess temperature in a strip falls to 1/e, in mm: sqrt(k t / 2h).
    #[must_use]
    pub fn length_mm(&self) -> f64 {
        sheet_length_mm(self.conductivity, self.thickness_mm, self.loss)
    }

    /// (Tc - Ta) / (Tj - Ta). At 1 or more the threshold is never reached.
    fn ratio(&self, joint_c: f64, threshold_c: f64) -> f64 {
        if joint_c <= self.ambient_c {
            f64::INFINITY
        } else {
            (threshold_c - self.ambient_c) / (joint_c - self.ambient_c)
        }
    }
}

/// [`Sheet::length_mm`] from the three numbers: W/(m K), mm and W/(m2 K), all > 0.
#[must_use]
pub fn sheet_length_mm(conductivity: f64, thickness_mm: f64, loss: f64) -> f64 {
    (conductivity * thickness_mm / 1000.0 / (2.0 * loss)).sqrt() * 1000.0
}

/// Distance in mm along a strip (seam, rim, spout) at which the temperature falls to `threshold_c` when
/// its end is held at `joint_c`: L ln((Tj - Ta)/(Tc - Ta)). 0 when the joint is not hotter than the
/// threshold; infinite when the threshold is not above ambient.
#[must_use]
pub fn strip_reach_mm(sheet: Sheet, joint_c: f64, threshold_c: f64) -> f64 {
    let ratio = sheet.ratio(joint_c, threshold_c);
    if ratio >= 1.0 {
        0.0
    } else if ratio <= 0.0 {
        f64::INFINITY
    } else {
        -sheet.length_mm() * libm::log(ratio)
    }
}

/// The same around a hot round patch of radius `patch_mm` in a wide sheet, in mm from the edge of the
/// patch: the root of K0(r/L)/K0(a/L) = (Tc - Ta)/(Tj - Ta), by bisection to 1e-9 of L.
#[must_use]
pub fn disk_reach_mm(sheet: Sheet, patch_mm: f64, joint_c: f64, threshold_c: f64) -> f64 {
    let ratio = sheet.ratio(joint_c, threshold_c);
    if ratio >= 1.0 {
        return 0.0;
    }
    if ratio <= 0.0 {
        return f64::INFINITY;
    }
    let l = sheet.length_mm();
    let wanted = ratio * bessel_k0(patch_mm / l);
    // Heat spreads out in the plane, so it falls faster than along a strip, whose reach is a bound.
    let (mut near, mut far) = (
        patch_mm,
        patch_mm + strip_reach_mm(sheet, joint_c, threshold_c),
    );
    for _ in 0..100 {
        let middle = f64::midpoint(near, far);
        if bessel_k0(middle / l) > wanted {
            near = middle;
        } else {
            far = middle;
        }
        if far - near < 1e-9 * l {
            break;
        }
    }
    f64::midpoint(near, far) - patch_mm
}

#[cfg(test)]
mod tests {
    use super::*;

    const COPPER: Sheet = Sheet {
        conductivity: 401.0,
        thickness_mm: 0.8,
        loss: 10.0,
        ambient_c: 20.0,
    };

    #[test]
    fn a_cold_joint_reaches_nowhere_and_an_ambient_threshold_everywhere() {
        assert!(disk_reach_mm(COPPER, 5.0, 150.0, 183.0).abs() < 1e-12);
        assert!(strip_reach_mm(COPPER, 10.0, 183.0).abs() < 1e-12);
        assert!(disk_reach_mm(COPPER, 5.0, 230.0, 20.0).is_infinite());
    }

    #[test]
    fn reach_falls_with_loss_and_threshold_and_rises_with_thickness_conductivity_and_heat() {
        let base = disk_reach_mm(COPPER, 5.0, 230.0, 183.0);
        assert!(
            disk_reach_mm(
                Sheet {
                    loss: 50.0,
                    ..COPPER
                },
                5.0,
                230.0,
                183.0
            ) < base
        );
        assert!(disk_reach_mm(COPPER, 5.0, 230.0, 200.0) < base);
        assert!(
            disk_reach_mm(
                Sheet {
                    thickness_mm: 1.2,
                    ..COPPER
                },
                5.0,
                230.0,
                183.0
            ) > base
        );
        assert!(
            disk_reach_mm(
                Sheet {
                    conductivity: 450.0,
                    ..COPPER
                },
                5.0,
                230.0,
                183.0
            ) > base
        );
        assert!(disk_reach_mm(COPPER, 5.0, 260.0, 183.0) > base);
    }
}
