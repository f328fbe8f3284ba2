//! The temperature field in a piece of known size, and how far a temperature reaches in it.
//!
//! Steady fin solutions with an insulated end (Incropera et al., Fundamentals of Heat and Mass Transfer,
//! extended surfaces: straight fin with adiabatic tip, annular fin). A small piece is hotter throughout
//! than a wide sheet, because the heat has nowhere to go. The solutions are steady, so they are an upper
//! bound for brief heating, and they say nothing about a flame that washes over the whole piece.

use super::bessel::{bessel_i0, bessel_i1, bessel_k0, bessel_k1};

/// Beyond this many lengths the far end changes less than one part in 10^12.
const FAR: f64 = 28.0;

/// The shape of the metal around the hot spot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Spread {
    /// Heat flows one way: a seam, a rim, a spout, a strap, a solid handle.
    Strip {
        /// Length of the metal, mm; > 0.
        end_mm: f64,
    },
    /// Heat flows outward in all directions from a patch on a body or a tray.
    Disk {
        /// Radius of the hot patch, mm; > 0.
        patch_mm: f64,
        /// Distance from the edge of the patch to the end of the metal, mm; > 0.
        end_mm: f64,
    },
}

/// How the temperature falls away from a hot spot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatField {
    /// Decay length, mm; > 0. See [`sheet_length_mm`] and [`rod_length_mm`].
    pub length_mm: f64,
    /// The shape of the metal.
    pub spread: Spread,
}

/// How far a temperature reaches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// The joint itself is not that hot.
    Never,
    /// To this distance from the edge of the hot spot, mm.
    To(f64),
    /// All the metal there is gets that hot.
    Whole,
}

/// Decay length of a sheet that loses heat from both faces, in mm, sqrt(k t / 2h): conductivity in
/// W/(m K), thickness in mm, heat loss of each face in W/(m2 K), all > 0 (Incropera et al., extended
/// surfaces).
#[must_use]
pub fn sheet_length_mm(conductivity: f64, thickness_mm: f64, loss: f64) -> f64 {
    (conductivity * thickness_mm / 1000.0 / (2.0 * loss)).sqrt() * 1000.0
}

/// Decay length of a solid round bar in mm, sqrt(k D / 4h): conductivity in W/(m K), diameter in mm, heat
/// loss in W/(m2 K), all > 0 (Incropera et al., pin fin).
#[must_use]
pub fn rod_length_mm(conductivity: f64, diameter_mm: f64, loss: f64) -> f64 {
    (conductivity * diameter_mm / 1000.0 / (4.0 * loss)).sqrt() * 1000.0
}

impl HeatField {
    /// Share of the excess temperature of the joint that remains at a distance from the edge of the hot
    /// spot: 1 at the edge, falling from there. A distance beyond the end counts as the end, a negative
    /// one as 0.
    ///
    /// Strip: cosh((E - x)/L) / cosh(E/L). Disk, r = a + x, R = a + E:
    /// (K0(r/L) I1(R/L) + I0(r/L) K1(R/L)) over the same at r = a.
    #[must_use]
    pub fn left(&self, distance_mm: f64) -> f64 {
        let l = self.length_mm;
        let share = match self.spread {
            Spread::Strip { end_mm } => {
                let x = distance_mm.clamp(0.0, end_mm.max(0.0));
                (libm::exp(-x / l) + libm::exp(-(2.0 * end_mm - x) / l))
                    / (1.0 + libm::exp(-2.0 * end_mm / l))
            }
            Spread::Disk { patch_mm, end_mm } => {
                let x = distance_mm.clamp(0.0, end_mm.max(0.0));
                let (a, r, edge) = (patch_mm / l, (patch_mm + x) / l, (patch_mm + end_mm) / l);
                if r - a > FAR {
                    0.0
                } else if edge - a > FAR {
                    bessel_k0(r) / bessel_k0(a)
                } else {
                    let (i1, k1) = (bessel_i1(edge), bessel_k1(edge));
                    (bessel_k0(r) * i1 + bessel_i0(r) * k1)
                        / (bessel_k0(a) * i1 + bessel_i0(a) * k1)
                }
            }
        };
        // Only values far outside any real piece overflow the functions.
        if share.is_finite() {
            share.clamp(0.0, 1.0)
        } else {
            0.0
        }
    }

    /// Temperature at a distance from the edge of the hot spot, C.
    #[must_use]
    pub fn at_c(&self, joint_c: f64, ambient_c: f64, distance_mm: f64) -> f64 {
        ambient_c + (joint_c - ambient_c) * self.left(distance_mm)
    }

    /// How far `threshold_c` reaches, by bisection to 1e-9 of the extent of the metal. A joint no hotter
    /// than the air or the threshold gives [`Reach::Never`]; otherwise a threshold no hotter than the air
    /// gives [`Reach::Whole`].
    #[must_use]
    pub fn reach(&self, joint_c: f64, ambient_c: f64, threshold_c: f64) -> Reach {
        let end = match self.spread {
            Spread::Strip { end_mm } | Spread::Disk { end_mm, .. } => end_mm,
        };
        let holds = [joint_c, ambient_c, threshold_c, end, self.length_mm]
            .iter()
            .all(|v| v.is_finite())
            && end > 0.0
            && self.length_mm > 0.0;
        if !holds || joint_c <= ambient_c || joint_c <= threshold_c {
            return Reach::Never;
        }
        let share = (threshold_c - ambient_c) / (joint_c - ambient_c);
        if self.left(end) >= share {
            return Reach::Whole;
        }
        let (mut near, mut far) = (0.0, end);
        for _ in 0..60 {
            let middle = f64::midpoint(near, far);
            if self.left(middle) >= share {
                near = middle;
            } else {
                far = middle;
            }
        }
        Reach::To(f64::midpoint(near, far))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn disk(end_mm: f64) -> HeatField {
        HeatField {
            length_mm: 126.65,
            spread: Spread::Disk {
                patch_mm: 5.0,
                end_mm,
            },
        }
    }

    #[test]
    fn cold_joints_reach_nowhere_and_small_pieces_heat_through() {
        assert_eq!(disk(60.0).reach(150.0, 20.0, 183.0), Reach::Never);
        assert_eq!(disk(60.0).reach(183.0, 20.0, 183.0), Reach::Never);
        assert_eq!(disk(60.0).reach(10.0, 20.0, 5.0), Reach::Never);
        assert_eq!(disk(60.0).reach(700.0, 20.0, 183.0), Reach::Whole);
        assert_eq!(disk(60.0).reach(230.0, 20.0, 20.0), Reach::Whole);
        assert_eq!(disk(0.0).reach(700.0, 20.0, 183.0), Reach::Never);
        assert_eq!(disk(f64::NAN).reach(700.0, 20.0, 183.0), Reach::Never);
    }

    #[test]
    fn a_small_piece_is_hotter_than_a_wide_sheet() {
        for x in [1.0, 10.0, 50.0] {
            assert!(disk(60.0).left(x) > disk(1e5).left(x));
        }
    }

    #[test]
    fn temperature_falls_from_the_edge_to_the_end() {
        for field in [
            disk(60.0),
            disk(4_000.0),
            HeatField {
                length_mm: 30.0,
                spread: Spread::Strip { end_mm: 90.0 },
            },
        ] {
            assert!((field.left(0.0) - 1.0).abs() < 1e-12);
            let mut last = 1.0;
            for step in 1..=100 {
                let now = field.left(f64::from(step));
                assert!(now <= last && now >= 0.0, "{step}: {now} after {last}");
                last = now;
            }
        }
    }
}
