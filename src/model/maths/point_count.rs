//! Point counting: a grid of points is laid over a part, and the points that fall on bare metal are
//! counted.

use super::{beta_quantile, student_two_sided};

/// Confidence level of the interval; both standards for counting use 95 %.
const WITHIN: f64 = 0.95;

/// What a count says about the bare share of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PointCount {
    /// Fields counted.
    pub fields: usize,
    /// Lower end of the 95 % interval of the share, 0 to 1.
    pub low: f64,
    /// Mean share, 0 to 1.
    pub mean: f64,
    /// Upper end, 0 to 1.
    pub high: f64,
    /// Percent relative accuracy by ASTM E562: half the interval over the mean, in per cent; `None` when the
    /// interval is the exact binomial one.
    pub relative_accuracy: Option<f64>,
    /// Whether the interval is the exact binomial one, not the one from the variation between fields.
    pub exact: bool,
}

/// Why a count cannot be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CountFault {
    /// A field has no points.
    NoPoints,
    /// Nothing was counted.
    NoFields,
    /// A count is negative or not a whole number.
    NotWhole,
    /// A field has more points on bare metal than it has points.
    TooMany {
        /// Index of the field, from 0.
        field: usize,
    },
}

/// Bare share and its interval from fields of `points` points each, of which `bare[i]` fall on bare metal.
///
/// For two or more fields: the mean over fields, plus or minus the standard error of the mean times Student's
/// t with n - 1 degrees of freedom for n fields (ASTM E562, sections on calculation), clamped to 0 to 1. A
/// single field, or fields that all agree, say nothing about how fields differ. Then all points are pooled
/// and the interval is the exact binomial one (Clopper and Pearson 1934, Biometrika 26:404), which never
/// covers less than it claims.
///
/// # Errors
/// See [`CountFault`].
pub fn point_count(points: f64, bare: &[f64]) -> Result<PointCount, CountFault> {
    if points < 1.0 {
        return Err(CountFault::NoPoints);
    }
    let Some(first) = bare.first() else {
        return Err(CountFault::NoFields);
    };
    let mut taps = 0.0;
    let mut alike = true;
    for (field, x) in bare.iter().enumerate() {
        if x.fract() != 0.0 || points.fract() != 0.0 || *x < 0.0 {
            return Err(CountFault::NotWhole);
        }
        if *x > points {
            return Err(CountFault::TooMany { field });
        }
        taps += x;
        alike &= (x - first).abs() < 0.5;
    }
    let fields = bare.len();
    let n = fields as f64;
    let mean = taps / (n * points);
    if alike {
        let (low, high) = exact_interval(taps, n * points);
        return Ok(PointCount {
            fields,
            low,
            mean,
            high,
            relative_accuracy: None,
            exact: true,
        });
    }
    let squares: f64 = bare
        .iter()
        .map(|x| (x / points - mean) * (x / points - mean))
        .sum();
    let half = student_two_sided(n - 1.0, WITHIN) * (squares / (n - 1.0)).sqrt() / n.sqrt();
    Ok(PointCount {
        fields,
        low: (mean - half).max(0.0),
        mean,
        high: (mean + half).min(1.0),
        relative_accuracy: Some(100.0 * half / mean),
        exact: false,
    })
}

/// The exact binomial interval of a share: `taps` of `points`, with 0 <= taps <= points and points >= 1. The
/// ends are quantiles of beta distributions (Clopper and Pearson 1934).
#[must_use]
pub fn exact_interval(taps: f64, points: f64) -> (f64, f64) {
    exact_interval_within(taps, points, WITHIN)
}

/// The exact binomial interval at another confidence level, `within` in (0, 1).
#[must_use]
pub fn exact_interval_within(taps: f64, points: f64, within: f64) -> (f64, f64) {
    let tail = (1.0 - within) / 2.0;
    let low = if taps <= 0.0 {
        0.0
    } else {
        beta_quantile(taps, points - taps + 1.0, tail, f64::NAN)
    };
    let high = if taps >= points {
        1.0
    } else {
        beta_quantile(taps + 1.0, points - taps, 1.0 - tail, f64::NAN)
    };
    (low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn invalid_counts_are_refused() {
        assert_eq!(point_count(0.0, &[0.0]), Err(CountFault::NoPoints));
        assert_eq!(point_count(25.0, &[]), Err(CountFault::NoFields));
        assert_eq!(
            point_count(25.0, &[25.0, 26.0]),
            Err(CountFault::TooMany { field: 1 })
        );
        for (points, bare) in [(25.0, 2.5), (25.5, 2.0), (25.0, -1.0)] {
            let fault = point_count(points, &[3.0, bare]);
            assert_eq!(fault, Err(CountFault::NotWhole));
        }
        assert!(point_count(25.0, &[25.0, 24.0]).is_ok());
    }

    #[test]
    fn a_field_with_none_or_all_bare_has_a_one_sided_interval() {
        // None of n: the upper end is 1 - .025^(1/n). All of n: the lower end is .025^(1/n).
        let none = point_count(100.0, &[0.0]).unwrap();
        let root = libm::pow(0.025, 0.01);
        assert!(none.low.abs() < 1e-12 && (none.high - (1.0 - root)).abs() < 1e-9);
        let all = point_count(100.0, &[100.0]).unwrap();
        assert!((all.high - 1.0).abs() < 1e-12 && (all.low - root).abs() < 1e-9);
    }

    #[test]
    fn fields_that_agree_are_pooled() {
        let alike = point_count(50.0, &[2.0, 2.0]).unwrap();
        assert!(alike.exact && alike.low > 0.0 && alike.high > alike.mean);
        let apart = point_count(50.0, &[2.0, 3.0]).unwrap();
        assert!(!apart.exact);
    }
}
