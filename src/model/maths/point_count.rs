//! Bare metal by counting: a grid of points is laid over a part and the points that fall on bare
//! metal are counted.

use super::{beta_quantile, student_two_sided};

/// How sure the interval is: both standards of counting use 95 in 100.
const WITHIN: f64 = 0.95;

/// What a count says of the bare share of a part.
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
    /// Percent relative accuracy after ASTM E562: half the interval over the mean, in hundredths;
    /// `None` where the mean is nothing or the interval is the exact one.
    pub relative_accuracy: Option<f64>,
    /// The interval is the exact binomial one, not the one from field to field.
    pub exact: bool,
}

/// Why a count cannot be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CountFault {
    /// A field has no points.
    NoPoints,
    /// Nothing was counted.
    NoFields,
    /// Points come whole.
    NotWhole,
    /// More points on metal than there are points, in this field (from 0).
    TooMany {
        /// Which field.
        field: usize,
    },
}

/// Share and interval from fields of `points` points each, `bare[i]` of them on bare metal.
///
/// Two fields or more: mean over fields, and Student's t with one degree less than there are fields
/// times the standard error of the mean (ASTM E562, sections on calculation), held within 0 to 1.
/// One field, or fields that all agree, tell nothing of how fields differ: then all points are taken
/// together and the interval is the exact binomial one (Clopper and Pearson 1934, Biometrika 26:404),
/// which never covers less than it says.
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

/// The exact binomial interval for `taps` of `points`, 0 <= taps <= points, points >= 1: the ends are
/// quantiles of beta laws (Clopper and Pearson 1934).
#[must_use]
pub fn exact_interval(taps: f64, points: f64) -> (f64, f64) {
    let tail = (1.0 - WITHIN) / 2.0;
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
    fn what_cannot_be_counted_is_refused() {
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
    fn the_ends_of_a_single_field() {
        // None of n: the upper end is 1 - .025^(1/n); all of n: the lower end is .025^(1/n).
        let none = point_count(100.0, &[0.0]).unwrap();
        let root = libm::pow(0.025, 0.01);
        assert!(none.low.abs() < 1e-12 && (none.high - (1.0 - root)).abs() < 1e-9);
        let all = point_count(100.0, &[100.0]).unwrap();
        assert!((all.high - 1.0).abs() < 1e-12 && (all.low - root).abs() < 1e-9);
    }

    #[test]
    fn fields_that_agree_are_counted_together() {
        let alike = point_count(50.0, &[2.0, 2.0]).unwrap();
        assert!(alike.exact && alike.low > 0.0 && alike.high > alike.mean);
        let apart = point_count(50.0, &[2.0, 3.0]).unwrap();
        assert!(!apart.exact);
    }
}
