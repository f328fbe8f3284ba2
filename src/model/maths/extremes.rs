//! Lower and upper limits on a number.
//!
//! `f64::max` and `f64::min` test for NaN first. In the browser each is a function call, which dominates
//! their cost in a loop over draws; these two functions are one comparison each.

/// `x`, but at least `least`. A NaN in either argument gives `x`.
#[inline]
#[must_use]
pub fn at_least(x: f64, least: f64) -> f64 {
    if x < least { least } else { x }
}

/// `x`, but at most `most`. A NaN in either argument gives `x`.
#[inline]
#[must_use]
pub fn at_most(x: f64, most: f64) -> f64 {
    if x > most { most } else { x }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_agree_with_the_standard_library_except_for_nan() {
        let some = [-2.5, -0.0, 0.0, 1.0, f64::INFINITY, f64::NEG_INFINITY];
        for (a, b) in some.into_iter().flat_map(|a| some.map(|b| (a, b))) {
            assert!(at_least(a, b) >= b && at_most(a, b) <= b);
            assert_eq!(
                at_least(a, b).partial_cmp(&a.max(b)),
                Some(std::cmp::Ordering::Equal)
            );
            assert_eq!(
                at_most(a, b).partial_cmp(&a.min(b)),
                Some(std::cmp::Ordering::Equal)
            );
        }
        assert!(at_least(f64::NAN, 0.0).is_nan() && at_most(f64::NAN, 0.0).is_nan());
    }
}
