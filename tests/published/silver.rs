//! Silver per face, what a cleaning takes, and the wear model.
//!
//! Stoichiometry and densities are checked against handbook arithmetic; the wear model
//! (our judgement) against its defining equations, solved here another way, with `statrs` for the
//! normal law.
//!
//! Left out, because the program has no function of its own for it: the triangular law. Rolled sheet
//! and the colour of thin films are in `condition.rs`.

use leavewell_model::bench::{deposit_um, mixture_density, silver_in_sulphide, silver_share};
use leavewell_model::ledger::Ledger;
use leavewell_model::record::{Bleed, BleedWord};
use leavewell_model::silver::{FilmLoss, Layer, bleed_range, film_loss_um};
use statrs::distribution::{Continuous, ContinuousCDF, Normal};

use crate::{near, near_share, printed};

/// Square centimetres in a square foot; grams in a troy ounce and in a pound (definitions of 1959).
const FOOT2: f64 = 929.0304;
const TROY_OUNCE: f64 = 31.103_476_8;
const POUND: f64 = 453.592_37;

fn figure(id: &str) -> f64 {
    Ledger::standard().value(id)
}

/// Mass share of silver in its sulphide, from the molar masses (IUPAC, by way of the `periodictable`
/// library).
fn silver_in_film() -> f64 {
    silver_share(figure("metal.silver.molar"), figure("metal.sulphur.molar"))
}

fn ratio() -> f64 {
    silver_in_sulphide(
        figure("metal.silver_sulphide.density"),
        figure("metal.silver.density"),
        figure("metal.silver.molar"),
        figure("metal.sulphur.molar"),
    )
}

fn silver_um(mass_g: f64, area_cm2: f64) -> f64 {
    deposit_um(mass_g, figure("metal.silver.density"), area_cm2)
}

#[test]
fn silver_sulphide_is_mostly_silver() {
    // 2 x 107.8682 + 32.06 = 247.7964 g/mol.
    near_share(
        2.0 * figure("metal.silver.molar") + figure("metal.sulphur.molar"),
        247.7964,
        1e-9,
    );
    printed(silver_in_film(), 0.870_620, 6);
    // 7.23 x .870620 / 10.49, and the same at the ends of the density's range.
    near(100.0 * ratio(), 60.006, 0.001);
    near(figure("silver.consumed"), ratio(), 0.001);
    let at = |density| {
        silver_in_sulphide(
            density,
            10.49,
            figure("metal.silver.molar"),
            figure("metal.sulphur.molar"),
        )
    };
    printed(at(7.20), 0.5976, 4);
    printed(at(7.317), 0.6073, 4);
}

/// Handbook arithmetic from a gain of sulphur to what it used up and what it made.
#[test]
fn sulphur_taken_up() {
    let check = |sulphur_g: f64, area_cm2: f64, silver_g: f64, silver_nm: f64, film_nm: f64| {
        let share = silver_in_film();
        let film = sulphur_g / (1.0 - share);
        near_share(film * share, silver_g, 0.001);
        near_share(1000.0 * silver_um(film * share, area_cm2), silver_nm, 0.001);
        near_share(
            1000.0 * deposit_um(film, figure("metal.silver_sulphide.density"), area_cm2),
            film_nm,
            0.001,
        );
    };
    // 100 mg/m2 of sulphur.
    check(0.1, 10_000.0, 0.672_91, 64.15, 106.9);
    // 208 ug/cm2 of sulphur.
    check(208e-6, 1.0, 208e-6 * 6.7291, 1334.0, 2224.0);
}

/// 200 angstrom of film in 30 days, the upper end of the mildest class of ANSI/ISA-71.04, over a
/// year of 365.25 days.
#[test]
fn a_year_at_the_end_of_the_mildest_class() {
    let film_nm = 20.0 * 365.25 / 30.0;
    near(film_nm, 243.5, 0.05);
    near(film_nm * ratio(), 146.1, 0.15);
}

#[test]
fn thickness_from_mass_and_area() {
    // One troy ounce a square foot: 33.48 mg/cm2.
    near_share(1000.0 * TROY_OUNCE / FOOT2, 33.48, 0.001);
    near_share(silver_um(TROY_OUNCE, FOOT2), 31.92, 0.001);
    // The German "90" stamp: 90 g on 24 dm2; the trade says 36 um (RAL-RG 691 B4, 2011).
    near_share(silver_um(90.0, 2400.0), 35.75, 0.001);
    // Six troy ounces a gross of teaspoons of 50 cm2.
    near_share(silver_um(6.0 * TROY_OUNCE / 144.0, 50.0), 24.71, 0.001);
    // "Nearly" 10 mg from a spoon of 80 cm2 (Lane and Walton 1916, as quoted in Metal Record).
    near_share(silver_um(0.010, 80.0), 0.1192, 0.001);
    // 1 mg/cm2.
    near_share(silver_um(0.001, 1.0), 0.9533, 0.001);
    // Ten ounces of sterling on eight pounds of copper, one sheet on the other: 1 to 13.49.
    let sterling = deposit_um(10.0 * TROY_OUNCE, 10.357, 100.0);
    let copper = deposit_um(8.0 * POUND, figure("metal.copper.density"), 100.0);
    near_share(sterling / copper, 0.0742, 0.001);
}

#[test]
fn density_of_sterling() {
    // A metals supplier's data sheet says 10.36; the ideal mixture gives 10.357.
    let sterling = mixture_density(&[
        (0.925, figure("metal.silver.density")),
        (0.075, figure("metal.copper.density")),
    ]);
    near(sterling, 10.357, 0.001);
    // 20 um of it weigh 20.71 mg/cm2 and hold as much silver as 18.27 um fine.
    near_share(sterling * 20e-4 * 1000.0, 20.71, 0.001);
    near_share(silver_um(sterling * 20e-4 * 0.925, 1.0), 18.27, 0.001);
}

/// Computed from the figures of the ledger.
#[test]
fn what_a_cleaning_takes() {
    let sound = |um| FilmLoss {
        sound_um: um,
        share: 0.0,
    };
    // 14.3 um at .12 um a time with a high-point factor of 3.
    near_share(14.3 / film_loss_um(sound(0.12), 0.0, 0.6, 3.0), 39.7, 0.001);
    // Black tarnish in the middle of its range holds 120 nm of silver.
    let film = FilmLoss {
        sound_um: 0.0,
        share: 1.0,
    };
    let held = film_loss_um(
        film,
        figure("silver.film.black"),
        figure("silver.consumed"),
        1.0,
    );
    near_share(held, 0.120, 0.001);
    // Whiting with the tarnish of the 1916 test added back: the total that was weighed.
    let whiting = FilmLoss {
        sound_um: figure("silver.loss.whiting.um"),
        share: figure("silver.loss.whiting.share"),
    };
    near(
        film_loss_um(whiting, 50.0, figure("silver.consumed"), 1.0),
        0.119,
        0.002,
    );
}

#[test]
fn losses_and_what_remains_keep_their_bounds() {
    for film in [0.0, 14.0, 200.0, 1000.0] {
        for h in [1.0, 2.5, 5.0] {
            let loss = FilmLoss {
                sound_um: 0.06,
                share: 1.0,
            };
            assert!(film_loss_um(loss, film, 0.6, h) >= 0.06 * h - 1e-12);
            let nothing = FilmLoss {
                sound_um: 0.0,
                share: 1.0,
            };
            near(film_loss_um(nothing, 0.0, 0.6, h), 0.0, 0.0);
        }
    }
    // Far more taken than there is: nothing is left, and never less than nothing.
    let layer = Layer::from_bleed(10.0, 0.5, 0.1, 0.05);
    let gone = layer.thinned(1000.0);
    assert!((0.0..1e-6).contains(&gone.left_um()), "{}", gone.left_um());
    assert!(gone.bleed() > 0.999);
}

fn standard_normal() -> Normal {
    Normal::new(0.0, 1.0).unwrap()
}

/// The spread of the local thickness, by its definition.
fn spread(mu: f64, t0: f64, k: f64) -> f64 {
    let worn = k * (t0 - mu.max(0.0));
    (worn * worn + 0.01 * t0 * t0).sqrt()
}

/// The root of f = Phi(-mu/s(mu)) with mu in [0, t0], by bisection: f falls as mu rises.
fn mu_by_bisection(t0: f64, k: f64, f: f64) -> f64 {
    let (mut low, mut high) = (0.0, t0);
    for _ in 0..200 {
        let middle = f64::midpoint(low, high);
        if standard_normal().cdf(-middle / spread(middle, t0, k)) > f {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

#[test]
fn the_mean_thickness_solves_its_equation() {
    for k in [0.15, 0.3, 0.5, 0.7] {
        for f in [1e-6, 0.001, 0.005, 0.01, 0.05, 0.1, 0.18, 0.3, 0.45, 0.499] {
            let layer = Layer::from_bleed(20.0, k, 0.1, f);
            near(layer.mu_um, mu_by_bisection(20.0, k, f), 1e-6);
            assert!(layer.mu_um <= 20.0);
        }
        near(Layer::from_bleed(20.0, k, 0.1, 0.5).mu_um, 0.0, 1e-9);
        // More than half bare: the spread is that of a mean of nothing, so mu is in closed form.
        for f in [0.6, 0.8, 0.99] {
            let z = standard_normal().inverse_cdf(f);
            let expected = -z * (k * k + 0.01).sqrt() * 20.0;
            near(Layer::from_bleed(20.0, k, 0.1, f).mu_um, expected, 1e-6);
        }
    }
}

/// E max(T, 0) by Simpson's rule over twelve spreads, against the closed form.
#[test]
fn what_is_left_is_the_mean_of_what_is_not_gone() {
    for (k, f) in [
        (0.15, 0.01),
        (0.5, 0.05),
        (0.5, 0.3),
        (0.7, 0.5),
        (0.3, 0.9),
    ] {
        let layer = Layer::from_bleed(20.0, k, 0.1, f);
        let (mu, s) = (layer.mu_um, layer.spread_um());
        near(s, spread(mu, 20.0, k), 1e-9);
        let law = Normal::new(mu, s).unwrap();
        let top = mu.max(0.0) + 12.0 * s;
        let steps = 20_000;
        let width = top / f64::from(steps);
        let sum: f64 = (0..=steps)
            .map(|i| {
                let t = f64::from(i) * width;
                let weight = if i == 0 || i == steps {
                    1.0
                } else if i % 2 == 1 {
                    4.0
                } else {
                    2.0
                };
                weight * t * law.pdf(t)
            })
            .sum();
        near(layer.left_um(), (sum * width / 3.0).min(20.0), 1e-5);
        near(layer.left_fraction(), layer.left_um() / 20.0, 1e-12);
    }
}

#[test]
fn the_worst_point_is_the_tenth_percentile_of_what_is_covered() {
    let layer = Layer::from_bleed(20.0, 0.5, 0.1, 0.1);
    let law = Normal::new(layer.mu_um, layer.spread_um()).unwrap();
    // A tenth of the nine tenths that are covered lies between nothing and the worst point.
    let share = law.cdf(layer.worst_point_um()) - law.cdf(0.0);
    near(share / 0.9, 0.1, 1e-9);
}

/// The words for bare metal as shares: judgement, one row a word.
#[test]
fn words_for_bare_metal() {
    let check = |bleed, low: f64, likely: f64, high: f64| {
        let r = bleed_range(Some(bleed), Ledger::standard());
        near(r.low, low, 1e-12);
        near(r.likely, likely, 1e-12);
        near(r.high, high, 1e-12);
    };
    check(Bleed::Word(BleedWord::None), 0.0, 0.001, 0.005);
    check(Bleed::Word(BleedWord::Slight), 0.005, 0.01, 0.02);
    check(Bleed::Word(BleedWord::Some), 0.02, 0.05, 0.10);
    check(Bleed::Word(BleedWord::Much), 0.10, 0.18, 0.30);
    check(Bleed::Word(BleedWord::Most), 0.30, 0.45, 0.80);
    // A share judged by eye: two thirds to one and a half of what was said.
    check(Bleed::Fraction(0.12), 0.08, 0.12, 0.18);
    check(Bleed::Fraction(0.9), 0.6, 0.9, 0.99);
}
