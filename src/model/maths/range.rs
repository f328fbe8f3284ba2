//! Distributions for ranges as users and sources state them: a median with a lower and an upper percentile.

/// z of the 95th percentile of N(0, 1).
pub const Z5: f64 = 1.644_853_626_951_472_7;
/// z of the 90th percentile of N(0, 1).
pub const Z10: f64 = 1.281_551_565_544_600_4;

/// Slopes of the two-piece distribution: the change of the median (or of its logarithm) per unit of z, below
/// and above it. The form is two-piece lognormal, or two-piece normal where `low` is not above zero. `z_end`
/// is the z of `high`, and minus the z of `low`.
#[must_use]
pub fn two_piece_slopes(low: f64, middle: f64, high: f64, z_end: f64) -> (f64, f64) {
    if low > 0.0 {
        (
            libm::log(middle / low) / z_end,
            libm::log(high / middle) / z_end,
        )
    } else {
        ((middle - low) / z_end, (high - middle) / z_end)
    }
}

/// A two-piece distribution prepared for many draws. Requires low <= middle <= high; three equal numbers give
/// a point mass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TwoPiece {
    middle: f64,
    down: f64,
    up: f64,
    /// Least value of the two-piece normal form; `None` for the lognormal form.
    least: Option<f64>,
}

impl TwoPiece {
    /// The distribution with these three points; `z_end` is the z of `high`, and minus the z of `low`.
    #[must_use]
    pub fn new(low: f64, middle: f64, high: f64, z_end: f64) -> Self {
        let (down, up) = two_piece_slopes(low, middle, high, z_end);
        Self {
            middle,
            down,
            up,
            least: (low <= 0.0).then_some(low.min(0.0)),
        }
    }

    /// The value at the standard normal deviate `z`; never negative unless `low` is.
    #[must_use]
    pub fn at(&self, z: f64) -> f64 {
        let step = z * if z < 0.0 { self.down } else { self.up };
        self.least.map_or_else(
            || self.middle * libm::exp(step),
            |least| (self.middle + step).max(least),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::maths::probit;

    #[test]
    fn the_distribution_has_the_stated_percentiles() {
        for (low, mid, high) in [
            (5.0, 15.0, 40.0),
            (0.0, 1.0, 9.6),
            (200.0, 300.0, 310.0),
            (7.0, 7.0, 7.0),
        ] {
            let law = TwoPiece::new(low, mid, high, Z10);
            let at = |p: f64| law.at(probit(p));
            assert!(
                (at(0.1) - low).abs() < 1e-9
                    && (at(0.5) - mid).abs() < 1e-9
                    && (at(0.9) - high).abs() < 1e-9
            );
        }
    }

    #[test]
    fn a_range_from_zero_is_never_negative() {
        assert!(TwoPiece::new(0.0, 0.0, 30.0, Z10).at(-6.0).abs() < 1e-12);
        assert!(TwoPiece::new(0.0, 1.0, 30.0, Z10).at(-6.0) >= 0.0);
    }
}
