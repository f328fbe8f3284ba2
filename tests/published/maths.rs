//! The mathematics against an independent library, `statrs`.

use leavewell_model::maths::{beta_cdf, phi, probability, probit};
use statrs::distribution::{Beta, Continuous, ContinuousCDF, Normal};

use crate::{near, near_share};

#[test]
fn the_normal_law() {
    let law = Normal::new(0.0, 1.0).unwrap();
    for i in -800..=800 {
        let z = f64::from(i) / 100.0;
        // The library's error function is good to about 2e-11.
        near(probability(z), law.cdf(z), 1e-10);
        near(phi(z), law.pdf(z), 1e-14);
    }
}

#[test]
fn the_inverse_of_the_normal_law() {
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
fn the_beta_law() {
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
            near(beta_cdf(a, b, x), law.cdf(x), 1e-11);
        }
    }
}
