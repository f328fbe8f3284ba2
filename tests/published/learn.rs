//! The solver, the scores and the intervals behind learning, compared with published worked examples.
//!
//! Open data are used as published tables of a few numbers, or as sums of squares and products computed
//! independently.

#![allow(clippy::disallowed_methods)] // an oracle on the machine it runs on

use leavewell_model::learn::student4::{WIDER, crps};
use leavewell_model::learn::{Fit, FitSetup, Observation, Tails, fit};
use leavewell_model::maths::{Beta, SquareMatrix, exact_interval};

use crate::near;

/// The shifts an observation depends on, the observed value, and its standard deviation.
type Row = (Vec<(usize, f64)>, f64, f64);

/// Almost no precision: the shift is free.
const FREE: f64 = 1e-14;

fn diagonal(precision: &[f64]) -> SquareMatrix {
    SquareMatrix::from_cells(
        precision.len(),
        |i, j| {
            if i == j { precision[i] } else { 0.0 }
        },
    )
}

/// Normal observations of rows with known standard deviations, as in a textbook.
fn normal(precision: &[f64], rows: &[Row]) -> Fit {
    let before = FitSetup {
        precision: diagonal(precision),
        shifts: precision.len(),
        tails: Tails::Normal,
        kappa_weight: 2.0,
        groups: 1,
        rounds: 2,
    };
    fit(&before, &observations(rows))
}

fn observations(rows: &[Row]) -> Vec<Observation> {
    rows.iter()
        .map(|(row, y, sd)| Observation {
            row: row.clone(),
            y: *y,
            sd: *sd,
            group: 0,
            weight: 1.0,
            censored: false,
        })
        .collect()
}

/// Rubin 1981, Journal of Educational Statistics 6:377, table 1: effects in eight schools with their
/// standard errors. With the spread between schools held fixed, Gelman and others 2013, Bayesian Data
/// Analysis, section 5.5, prints 7.7 and 4.1 for no spread.
#[test]
fn eight_schools() {
    let effects = [28.0, 8.0, -3.0, 7.0, -1.0, 1.0, 18.0, 12.0];
    let errors = [15.0, 10.0, 16.0, 11.0, 9.0, 11.0, 10.0, 18.0];
    let schools = || effects.iter().zip(errors).enumerate();
    let alike: Vec<_> = schools()
        .map(|(_, (y, se))| (vec![(0, 1.0)], *y, se))
        .collect();
    let pooled = normal(&[FREE], &alike);
    near(pooled.mean[0], 7.685_617, 1e-6);
    near(pooled.covariance.at(0, 0).sqrt(), 4.071_919, 1e-6);
    // With a spread of 5, each school keeps part of its own effect.
    let mut precision = vec![FREE];
    precision.extend([1.0 / 25.0; 8]);
    let apart: Vec<_> = schools()
        .map(|(n, (y, se))| (vec![(0, 1.0), (n + 1, 1.0)], *y, se))
        .collect();
    let partly = normal(&precision, &apart);
    let printed = [
        9.865_885, 7.880_787, 6.885_593, 7.705_267, 5.763_487, 6.677_870, 9.880_787, 8.148_191,
    ];
    for (n, want) in printed.into_iter().enumerate() {
        near(partly.mean[0] + partly.mean[n + 1], want, 1e-5);
    }
}

/// Efron & Morris 1975, J. Am. Statist. Ass. 70:311, table 1: hits in 45 tries, and the share in the rest
/// of the season. Their shrinkage, given to the solver as a spread, gives their estimates; on the scale
/// of arcsines the squared error falls by a factor of 3.50, as they print.
#[test]
fn efron_and_morris() {
    let hits = [
        18.0, 17.0, 16.0, 15.0, 14.0, 14.0, 13.0, 12.0, 11.0, 11.0, 10.0, 10.0, 10.0, 10.0, 10.0,
        9.0, 8.0, 7.0,
    ];
    let season = [
        0.346, 0.298, 0.276, 0.222, 0.273, 0.270, 0.263, 0.210, 0.269, 0.230, 0.264, 0.256, 0.303,
        0.264, 0.226, 0.285, 0.316, 0.200,
    ];
    let estimates = |y: &[f64], variance: f64| {
        let mean = y.iter().sum::<f64>() / 18.0;
        let squares: f64 = y.iter().map(|y| (y - mean) * (y - mean)).sum();
        let kept = 1.0 - 15.0 * variance / squares;
        let mut precision = vec![FREE];
        precision.extend([(1.0 - kept) / (kept * variance); 18]);
        let rows: Vec<_> = y
            .iter()
            .enumerate()
            .map(|(n, y)| (vec![(0, 1.0), (n + 1, 1.0)], *y, variance.sqrt()))
            .collect();
        let fitted = normal(&precision, &rows).mean;
        let each: Vec<f64> = (1..=18).map(|n| fitted[0] + fitted[n]).collect();
        (kept, each)
    };
    let shares: Vec<f64> = hits.iter().map(|hits| hits / 45.0).collect();
    let mean = shares.iter().sum::<f64>() / 18.0;
    let (kept, each) = estimates(&shares, mean * (1.0 - mean) / 45.0);
    near(kept, 0.211_653, 1e-6);
    near(each[0], 0.293_914, 1e-6);
    near(each[17], 0.242_176, 1e-6);
    let turned = |share: f64| 45.0_f64.sqrt() * (2.0 * share - 1.0).asin();
    let x: Vec<f64> = shares.iter().map(|share| turned(*share)).collect();
    let (_, each) = estimates(&x, 1.0);
    let error = |of: &[f64]| -> f64 {
        of.iter()
            .zip(season)
            .map(|(x, true_share)| (x - turned(true_share)).powi(2))
            .sum()
    };
    near(error(&x), 17.5707, 5e-5);
    near(error(&each), 4.9989, 5e-5);
    near(error(&x) / error(&each), 3.5149, 5e-5);
}

/// Koop 2003, Bayesian Econometrics, chapter 3: prices of 546 houses on lot size, bedrooms, bathrooms and
/// storeys, with his informative prior; the posterior means of his table 3.1. The input is the sums of
/// squares and products (data of Anglin & Gençay 1996, J. Appl. Econometrics 11:633).
#[test]
fn koops_houses() {
    let products = [
        [546.0, 2_812_045.0, 1_619.0, 702.0, 987.0],
        [
            2_812_045.0,
            17_044_775_719.0,
            8_470_593.0,
            3_730_502.0,
            5_169_155.0,
        ],
        [1_619.0, 8_470_593.0, 5_097.0, 2_157.0, 3_069.0],
        [702.0, 3_730_502.0, 2_157.0, 1_040.0, 1_346.0],
        [987.0, 5_169_155.0, 3_069.0, 1_346.0, 2_195.0],
    ];
    let with_price = [
        37_194_392.0,
        208_467_020_390.0,
        114_221_276.0,
        51_597_484.0,
        72_557_718.0,
    ];
    let before = [0.0, 10.0, 5_000.0, 10_000.0, 10_000.0];
    let spread = [2.4, 6e-7, 0.15, 0.6, 0.6];
    // Five observations with these sums: a square root of the matrix of products, by Cholesky factorisation.
    let mut root = [[0.0_f64; 5]; 5];
    let mut target = [0.0_f64; 5];
    for i in 0..5 {
        for j in i..5 {
            let sum: f64 = (0..i).map(|k| root[k][i] * root[k][j]).sum();
            let left: f64 = products[i][j] - sum;
            root[i][j] = if i == j {
                left.sqrt()
            } else {
                left / root[i][i]
            };
        }
        let sum: f64 = (0..i).map(|k| root[k][i] * target[k]).sum();
        target[i] = (with_price[i] - sum) / root[i][i];
    }
    // Shifts from the prior means, each in units of its own spread.
    let scale = spread.map(f64::sqrt);
    let rows: Vec<_> = (0..5)
        .map(|k| {
            let row = (k..5).map(|j| (j, root[k][j] * scale[j])).collect();
            let y = target[k] - (0..5).map(|j| root[k][j] * before[j]).sum::<f64>();
            (row, y, 1.0)
        })
        .collect();
    let fitted = normal(&[1.0; 5], &rows);
    let printed = [
        -4_035.052_8,
        5.431_623_5,
        2_886.812_2,
        16_965.235_4,
        7_641.234_2,
    ];
    for j in 0..5 {
        let found = before[j] + scale[j] * fitted.mean[j];
        near(found, printed[j], 2e-6 * printed[j].abs());
    }
}

/// Lange, Little & Taylor 1989, J. Am. Statist. Ass. 84:881: the stack-loss data of Brownlee 1960 with errors
/// from a t with four degrees of freedom. Reference digits from an independent run of their algorithm.
#[test]
fn stack_loss_with_heavy_tails() {
    let air = [
        80, 80, 75, 62, 62, 62, 62, 62, 58, 58, 58, 58, 58, 58, 50, 50, 50, 50, 50, 56, 70,
    ];
    let water = [
        27, 27, 25, 24, 22, 23, 24, 24, 23, 18, 18, 17, 18, 19, 18, 18, 19, 19, 20, 20, 20,
    ];
    let acid = [
        89, 88, 90, 87, 87, 87, 93, 93, 87, 80, 89, 88, 82, 93, 89, 86, 72, 79, 80, 82, 91,
    ];
    let loss = [
        42, 37, 37, 28, 18, 18, 19, 20, 15, 14, 14, 13, 11, 12, 8, 7, 8, 8, 9, 15, 15,
    ];
    // A scatter whose kappa is the scale of the t.
    let rows: Vec<_> = (0..21)
        .map(|n| {
            let row = [1, air[n], water[n], acid[n]];
            let row = row.iter().enumerate().map(|(j, x)| (j, f64::from(*x)));
            (row.collect(), f64::from(loss[n]), WIDER)
        })
        .collect();
    let before = FitSetup {
        precision: diagonal(&[FREE; 4]),
        shifts: 4,
        tails: Tails::Student,
        kappa_weight: 0.0,
        groups: 1,
        rounds: 2_000,
    };
    let fitted = fit(&before, &observations(&rows));
    for (found, want) in fitted
        .mean
        .iter()
        .zip([-40.068_093, 0.857_091, 0.745_269, -0.115_125])
    {
        near(*found, want, 2e-5);
    }
    near(fitted.kappa2[0].sqrt(), 2.024_534, 1e-6);
    assert!(fitted.last_step < 1e-9);
    // The last observation has the least weight, as they find: it hardly pulls.
    let pulls: Vec<f64> = fitted.pulls.iter().map(|pull| pull.curvature).collect();
    let least = pulls.iter().copied().fold(f64::MAX, f64::min);
    assert!((pulls[20] - least).abs() < 1e-12, "{pulls:?}");
}

/// Gneiting & Raftery 2007, J. Am. Statist. Ass. 102:359: the score is the integral of the squared distance
/// of two distribution functions. Reference digits of that integral for the t with four degrees of freedom.
#[test]
fn the_score_of_a_t() {
    for (d, want) in [
        (0.0, 0.263_689_221_8),
        (1.0, 0.605_330_008_3),
        (3.0, 2.314_540_301_1),
        (-2.0, 1.385_009_565_4),
    ] {
        near(crps(d), want, 1e-10);
    }
}

/// Clopper & Pearson 1934, Biometrika 26:404, and the beta distribution after 4 tumours in 14 rats on a
/// prior of 1.4 and 8.6 (Gelman and others 2013, Bayesian Data Analysis, section 5.1).
#[test]
fn intervals_of_counts() {
    for (hits, of, low, high) in [
        (0.0, 10.0, 0.0, 0.308_497),
        (16.0, 20.0, 0.563_386, 0.942_666),
        (24.0, 30.0, 0.614_333, 0.922_864),
        (80.0, 100.0, 0.708_157, 0.873_344),
        (100.0, 100.0, 0.963_783, 1.0),
    ] {
        let (found_low, found_high) = exact_interval(hits, of);
        near(found_low, low, 1e-6);
        near(found_high, high, 1e-6);
    }
    let rats = Beta::new(1.4 + 4.0, 8.6 + 10.0);
    for (u, want) in [(0.05, 0.101_726), (0.5, 0.217_274), (0.95, 0.374_769)] {
        near(rats.quantile(u, f64::NAN), want, 1e-6);
    }
}
