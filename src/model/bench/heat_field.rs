//! How heat thins out in a piece of stated size, and how far a temperature gets in it.
//!
//! Steady fin solutions with an end that lets no heat out (Incropera et al., Fundamentals of Heat and
//! Mass Transfer, extended surfaces: straight fin with adiabatic tip, annular fin). A small piece is
//! hotter all over than a wide sheet would be, because the heat has nowhere to go; these forms see
//! that, the wide sheet of [`super::disk_reach_mm`] does not. Still steady, so an upper bound for
//! brief heating, and no help against a flame that washes over the whole piece.

use super::bessel::{bessel_i0, bessel_i1, bessel_k0, bessel_k1};

/// Beyond this many lengths the far end is not felt: the last part in 10^12.
const FAR: f64 = 28.0;

/// The way the metal lies round the hot place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Spread {
    /// Heat runs one way: a seam, a rim, a spout, a strap, a solid handle.
    Strip {
        /// How far the metal goes on, mm; > 0.
        end_mm: f64,
    },
    /// Heat runs out all round from a patch on a body or a tray.
    Disk {
        /// Radius of the hot patch, mm; > 0.
        patch_mm: f64,
        /// How far the metal goes on beyond the patch's edge, mm; > 0.
        end_mm: f64,
    },
}

/// The fall of temperature away from a hot place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// The length over which heat thins out, mm; > 0. See [`super::Sheet::length_mm`] and
    /// [`rod_length_mm`].
    pub length_mm: f64,
    /// The way the metal lies.
    pub spread: Spread,
}

/// How far a temperature gets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// The joint itself is not that hot.
    Never,
    /// To this distance from the edge of the hot place, mm.
    To(f64),
    /// All the metal there is gets that hot.
    Whole,
}

/// sqrt(k D / 4h) for a solid round bar, mm: conductivity in W/(m K), diameter in mm, loss in
/// W/(m2 K), all > 0 (Incropera et al., pin fin).
#[must_use]
pub fn rod_length_mm(conductivity: f64, diameter_mm: f64, loss: f64) -> f64 {
    (conductivity * diameter_mm / 1000.0 / (4.0 * loss)).sqrt() * 1000.0
}

impl Field {
    /// The share of the joint's excess temperature that is left at a distance from the edge of the hot
    /// place: 1 there, falling steadily. Distances beyond the end count as the end, below 0 as 0.
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
        // Only figures far outside any real piece leave the range of the functions.
        if share.is_finite() {
            share.clamp(0.0, 1.0)
        } else {
            0.0
        }
    }

    /// Temperature at a distance, C.
    #[must_use]
    pub fn at_c(&self, joint_c: f64, ambient_c: f64, distance_mm: f64) -> f64 {
        ambient_c + (joint_c - ambient_c) * self.left(distance_mm)
    }

    /// How far `threshold_c` gets, by bisection to 1e-9 of the metal's extent. A joint no hotter than
    /// the air or than the threshold gives [`Reach::Never`]; a threshold no hotter than the air gives
    /// [`Reach::Whole`] otherwise.
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

    fn disk(end_mm: f64) -> Field {
        Field {
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
    fn a_small_piece_is_hotter_than_a_wide_one() {
        for x in [1.0, 10.0, 50.0] {
            assert!(disk(60.0).left(x) > disk(1e5).left(x));
        }
    }

    #[test]
    fn the_fall_is_steady_from_the_edge_to_the_end() {
        for field in [
            disk(60.0),
            disk(4_000.0),
            Field {
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
