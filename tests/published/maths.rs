//! The mathematics compared with independent libraries: `statrs`, `scipy` and R.

use leavewell_model::maths::{self, exact_interval, phi, probability, probit, sobol_u32};
use statrs::distribution::{Beta, Continuous, ContinuousCDF, Normal};

use crate::{near, near_share, printed};

#[test]
fn the_normal_distribution_matches_statrs() {
    let law = Normal::new(0.0, 1.0).unwrap();
    for i in -800..=800 {
        let z = f64::from(i) / 100.0;
        // The library's error function is accurate to about 2e-11.
        near(probability(z), law.cdf(z), 1e-10);
        near(phi(z), law.pdf(z), 1e-14);
    }
}

#[test]
fn the_normal_quantile_matches_reference_values() {
    let law = Normal::new(0.0, 1.0).unwrap();
    for i in 1..2000 {
        let p = f64::from(i) / 2000.0;
        near(probit(p), law.inverse_cdf(p), 1e-8);
    }
    for p in [1e-12, 1e-9, 1e-6, 1e-4, 1.0 - 1e-4, 1.0 - 1e-9] {
        near_share(probit(p), law.inverse_cdf(p), 1e-8);
    }
}

#[test]
fn the_beta_distribution_matches_reference_values() {
    let shapes = [
        (1.0, 1.0),
        (1.0, 5.0),
        (5.0, 1.0),
        (7.0 / 3.0, 11.0 / 3.0),
        (3.0, 3.0),
        (1.4, 4.6),
        (0.5, 0.5),
        (8.0, 2.0),
        (40.0, 2.0),
        (200.0, 300.0),
    ];
    for (a, b) in shapes {
        let law = Beta::new(a, b).unwrap();
        for i in 1..200 {
            let x = f64::from(i) / 200.0;
            near(maths::Beta::new(a, b).cdf(x), law.cdf(x), 1e-11);
        }
    }
}

/// 682 successes in 925 trials: 95 % interval by `binom.test(682, 925)` in R (its documented example, from
/// Conover 1971), and by `scipy.stats.binomtest(682, 925).proportion_ci(.95, "exact")`, scipy 1.17.
#[test]
fn the_exact_interval_of_682_in_925() {
    let (low, high) = exact_interval(682.0, 925.0);
    printed(low, 0.707_668_3, 7);
    printed(high, 0.765_406_6, 7);
}

/// The unscrambled sequence in all 48 dimensions and 4,096 points, compared with the sums that
/// `sobol_sums.py` computes with scipy. A sum weights each point by its index, so that a swapped or wrong
/// point shows up.
#[test]
fn sobol_points_agree_with_scipy_in_every_dimension() {
    let sums = include_str!("sobol_sums.txt");
    let sums: Vec<u64> = sums
        .lines()
        .filter(|line| !line.starts_with('#'))
        .map(|line| line.parse().unwrap())
        .collect();
    assert_eq!(sums.len(), maths::MAX_DIMENSIONS);
    for (dimension, sum) in sums.into_iter().enumerate() {
        let found: u64 = (0..4096_u32)
            // Gray code: the order that scipy uses.
            .map(|i| u64::from(i + 1) * u64::from(sobol_u32(i ^ (i >> 1), dimension)))
            .sum();
        assert_eq!(found, sum, "dimension {dimension}");
    }
}
