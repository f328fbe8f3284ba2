//! Student's t distribution: for a normal variable whose standard deviation is estimated from few numbers.

use super::beta::Beta;

/// Student's t distribution with location `at` and scale `scale`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StudentT {
    /// Degrees of freedom, at least 1.
    pub df: f64,
    /// Location: the median.
    pub at: f64,
    /// Scale, > 0. The standard deviation is larger.
    pub scale: f64,
}

impl StudentT {
    /// The `u` quantile. If B is beta distributed with both shapes df/2, then sqrt(df) (2B - 1) /
    /// (2 sqrt(B (1 - B))) has the t distribution (Jones & Faddy 2003, J. R. Statist. Soc. B 65:159, equal
    /// shapes). B is clamped to [1e-12, 1 - 1e-12], so the result is finite.
    #[must_use]
    pub fn quantile(&self, u: f64) -> f64 {
        let shape = 0.5 * self.df;
        self.at + self.scale * standard(self.df, Beta::new(shape, shape).quantile(u, f64::NAN))
    }

    /// Distribution function at `x`, by the same relation.
    #[must_use]
    pub fn cdf(&self, x: f64) -> f64 {
        let t = (x - self.at) / self.scale;
        let shape = 0.5 * self.df;
        // Computed from the smaller tail, so that neither tail is lost in rounding.
        let far = 0.5 * (1.0 - t.abs() / (self.df + t * t).sqrt());
        let tail = Beta::new(shape, shape).cdf(far);
        if t < 0.0 { tail } else { 1.0 - tail }
    }
}

/// The t with P(|T| <= t) = `within` for `freedom` degrees of freedom. `within` is in [0, 1).
///
/// Fewer than 1 degree of freedom counts as 1; `within` is clamped to 1 - 1e-9, so the result is finite.
#[must_use]
pub fn student_two_sided(freedom: f64, within: f64) -> f64 {
    let law = StudentT {
        df: freedom.max(1.0),
        at: 0.0,
        scale: 1.0,
    };
    law.quantile(0.5 + 0.5 * within.clamp(0.0, 1.0 - 1e-9))
}

/// The t deviate with `df` degrees of freedom for a beta deviate with both shapes df/2.
#[must_use]
pub fn standard(df: f64, beta: f64) -> f64 {
    let b = beta.clamp(1e-12, 1.0 - 1e-12);
    df.sqrt() * (2.0 * b - 1.0) / (2.0 * (b * (1.0 - b)).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_and_two_degrees_of_freedom_match_their_closed_forms() {
        // One degree of freedom: the Cauchy distribution. Two: t = within sqrt(2/(1 - within^2)).
        for within in [0.1_f64, 0.5, 0.9, 0.95] {
            let cauchy = libm::tan(core::f64::consts::FRAC_PI_2 * within);
            assert!((student_two_sided(1.0, within) / cauchy - 1.0).abs() < 1e-10);
            let two = within * (2.0 / (1.0 - within * within)).sqrt();
            assert!((student_two_sided(2.0, within) / two - 1.0).abs() < 1e-10);
        }
        assert!(student_two_sided(5.0, 0.0).abs() < 1e-7);
        assert!(student_two_sided(0.0, 1.0).is_finite());
    }

    #[test]
    fn quantile_inverts_the_distribution_function_and_both_are_symmetric() {
        let law = StudentT {
            df: 5.3,
            at: 2.0,
            scale: 0.4,
        };
        assert!((law.quantile(0.5) - 2.0).abs() < 1e-12);
        for u in [1e-6, 0.01, 0.1, 0.4, 0.77, 0.999] {
            let x = law.quantile(u);
            assert!((law.cdf(x) - u).abs() < 1e-11, "{u}");
            assert!((x + law.quantile(1.0 - u) - 4.0).abs() < 1e-6);
        }
        assert!(law.quantile(0.0).is_finite() && law.quantile(1.0).is_finite());
    }
}
