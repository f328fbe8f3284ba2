//! Student's t law: the one quantile an interval needs.

use super::beta::Beta;

/// The t with P(|T| <= t) = `within` for `freedom` >= 1 degrees of freedom; `within` in [0, 1).
///
/// P(|T| > t) is the regularised incomplete beta function at freedom/(freedom + t^2) with shapes
/// freedom/2 and 1/2 (Abramowitz and Stegun 1964, 26.7.1). Solved by bisection, which always
/// returns; relative error below 1e-12. `freedom` below 1 counts as 1; `within` is held below
/// 1 - 1e-9, so the result is finite.
#[must_use]
pub fn student_two_sided(freedom: f64, within: f64) -> f64 {
    let freedom = freedom.max(1.0);
    let outside = 1.0 - within.clamp(0.0, 1.0 - 1e-9);
    let law = Beta::new(freedom / 2.0, 0.5);
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..200 {
        let middle = f64::midpoint(low, high);
        if law.cdf(middle) < outside {
            low = middle;
        } else {
            high = middle;
        }
    }
    let x = f64::midpoint(low, high).max(f64::MIN_POSITIVE);
    (freedom * (1.0 - x) / x).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closed_forms() {
        // One degree of freedom is the Cauchy law, two have t = within sqrt(2/(1 - within^2)).
        for within in [0.1_f64, 0.5, 0.9, 0.95] {
            let cauchy = libm::tan(core::f64::consts::FRAC_PI_2 * within);
            assert!((student_two_sided(1.0, within) / cauchy - 1.0).abs() < 1e-10);
            let two = within * (2.0 / (1.0 - within * within)).sqrt();
            assert!((student_two_sided(2.0, within) / two - 1.0).abs() < 1e-10);
        }
        assert!(student_two_sided(5.0, 0.0).abs() < 1e-7);
        assert!(student_two_sided(0.0, 1.0).is_finite());
    }
}
