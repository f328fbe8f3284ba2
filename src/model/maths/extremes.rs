//! A number held at or above, or at or below, another.
//!
//! The library's `max` and `min` ask first whether either is no number at all, which in the browser
//! takes a call each time; in a loop over draws that is most of what they cost.

/// `x`, but not less than `least`. Where either is no number, `x`.
#[inline]
#[must_use]
pub fn at_least(x: f64, least: f64) -> f64 {
    if x < least { least } else { x }
}

/// `x`, but not more than `most`. Where either is no number, `x`.
#[inline]
#[must_use]
pub fn at_most(x: f64, most: f64) -> f64 {
    if x > most { most } else { x }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_held_as_the_library_holds_them() {
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
