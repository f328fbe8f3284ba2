//! Heat reach in wide sheets and the Bessel functions behind it.

use leavewell_model::bench::{HeatField, Reach, Spread, bessel_k0, bessel_k1, sheet_length_mm};

use crate::{near, near_share};

/// The decay length in copper of .8 mm that loses 10 W/(m2 K) from each face (conductivity: Incropera
/// et al., Table A.1).
fn copper_mm() -> f64 {
    sheet_length_mm(401.0, 0.8, 10.0)
}

/// Reference values computed with scipy.special.
#[test]
fn bessel_functions() {
    for (x, k0) in [(0.1, 2.427_069), (1.0, 0.421_024), (2.0, 0.113_894)] {
        near(bessel_k0(x), k0, 1e-6);
    }
    for (x, k1) in [(0.1, 9.853_845), (1.0, 0.601_907)] {
        near(bessel_k1(x), k1, 1e-6);
    }
}

/// K0(x) is the integral over t from 0 of exp(-x cosh t). The trapezium rule is almost exact for this
/// integrand (Abramowitz & Stegun 1964, 9.6.24). The table of coefficients promises 2e-7.
#[test]
fn bessel_functions_against_their_integral() {
    #[allow(clippy::disallowed_methods)] // an oracle on the machine it runs on
    let integral = |x: f64, order: f64| -> f64 {
        let step = 0.01;
        (0..1500)
            .map(|i| {
                let t = f64::from(i) * step;
                let weight = if i == 0 { 0.5 } else { 1.0 };
                weight * (-x * t.cosh()).exp() * (order * t).cosh() * step
            })
            .sum()
    };
    for x in [0.02, 0.05, 0.3, 0.9, 1.5, 1.99, 2.01, 3.0, 6.0] {
        near(bessel_k0(x), integral(x, 0.0), 3e-7);
        near_share(bessel_k1(x), integral(x, 1.0), 1e-6);
    }
}

/// How far heat reaches in a sheet or strip without an end, in air of 20 C, mm.
fn reach_mm(length_mm: f64, spread: Spread, from_c: f64, to_c: f64) -> f64 {
    match (HeatField { length_mm, spread }).reach(from_c, 20.0, to_c) {
        Reach::To(x) => x,
        other => panic!("{other:?}"),
    }
}

/// Steady sheet losing heat from both faces (Incropera et al., extended surfaces): distances computed
/// from the closed forms with scipy.
#[track_caller]
fn check_disk(length_mm: f64, patch_mm: f64, from_c: f64, to_c: f64, radius_mm: f64) {
    let spread = Spread::Disk {
        patch_mm,
        end_mm: 1e6,
    };
    near(
        patch_mm + reach_mm(length_mm, spread, from_c, to_c),
        radius_mm,
        0.01,
    );
}

#[test]
fn heat_round_a_spot() {
    near(copper_mm(), 126.65, 0.01);
    check_disk(copper_mm(), 5.0, 700.0, 183.0, 73.57);
    check_disk(sheet_length_mm(401.0, 0.8, 50.0), 5.0, 700.0, 183.0, 42.44);
    check_disk(sheet_length_mm(24.9, 0.8, 10.0), 5.0, 700.0, 183.0, 28.98);
    check_disk(copper_mm(), 10.0, 700.0, 183.0, 91.47);
    check_disk(copper_mm(), 5.0, 240.0, 183.0, 11.98);
    // Beyond the edge of a patch of 5 mm.
    check_disk(copper_mm(), 5.0, 230.0, 183.0, 5.0 + 5.63);
    check_disk(copper_mm(), 5.0, 250.0, 183.0, 5.0 + 8.37);
    check_disk(copper_mm(), 5.0, 700.0, 183.0, 5.0 + 68.57);
    check_disk(copper_mm(), 5.0, 700.0, 327.0, 5.0 + 27.67);
}

#[test]
fn heat_along_a_seam() {
    for (from, to, reach) in [
        (230.0, 183.0, 32.09),
        (250.0, 183.0, 43.61),
        (700.0, 183.0, 180.90),
        (700.0, 327.0, 100.72),
    ] {
        let strip = Spread::Strip { end_mm: 1e6 };
        near(reach_mm(copper_mm(), strip, from, to), reach, 0.01);
    }
}
