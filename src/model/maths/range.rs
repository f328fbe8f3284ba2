//! Ranges as people and sources give them: a middle with a lower and an upper percentile.

/// z of the 95th percentile of N(0, 1).
pub const Z5: f64 = 1.644_853_626_951_472_7;
/// z of the 90th percentile of N(0, 1).
pub const Z10: f64 = 1.281_551_565_544_600_4;

/// Slopes of the two-piece law: what to add to the middle (or to its logarithm) for each unit of z
/// below and above it. Two-piece lognormal with the middle as median; two-piece linear where `low`
/// is not above zero. `z_end` is the z at which low and high stand.
#[must_use]
pub fn two_piece_slopes(low: f64, middle: f64, high: f64, z_end: f64) -> (f64, f64) {
    if low > 0.0 {
        (libm::log(middle / low) / z_end, libm::log(high / middle) / z_end)
    } else {
        ((middle - low) / z_end, (high - middle) / z_end)
    }
}

/// The value of the two-piece law at the standard normal deviate `z`; never below zero when `low`
/// is not below zero. Needs low <= middle <= high. low = middle = high is a point.
#[must_use]
pub fn two_piece(low: f64, middle: f64, high: f64, z_end: f64, z: f64) -> f64 {
    let (down, up) = two_piece_slopes(low, middle, high, z_end);
    let step = z * if z < 0.0 { down } else { up };
    if low > 0.0 { middle * libm::exp(step) } else { (middle + step).max(low.min(0.0)) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::maths::probit;

    #[test]
    fn the_stated_percentiles_come_back() {
        for (low, mid, high) in [(5.0, 15.0, 40.0), (0.0, 1.0, 9.6), (200.0, 300.0, 310.0), (7.0, 7.0, 7.0)] {
            let at = |p: f64| two_piece(low, mid, high, Z10, probit(p));
            assert!((at(0.1) - low).abs() < 1e-9 && (at(0.5) - mid).abs() < 1e-9 && (at(0.9) - high).abs() < 1e-9);
        }
    }

    #[test]
    fn a_range_from_zero_never_goes_below_it() {
        assert!(two_piece(0.0, 0.0, 30.0, Z10, -6.0).abs() < 1e-12);
        assert!(two_piece(0.0, 1.0, 30.0, Z10, -6.0) >= 0.0);
    }
}
