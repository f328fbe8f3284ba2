//! Mass and thickness of silver, what a cleaning removes, and the wear model.
//!
//! Stoichiometry, mass and thickness are checked against handbook arithmetic. The wear model is our judgement;
//! it is checked against its defining equations, solved here in another way with `statrs` for the normal
//! distribution.

use leavewell_model::bench::coat_g;
use leavewell_model::ledger::FigureId;
use leavewell_model::ledger::Ledger;
use leavewell_model::record::Bleed;
use leavewell_model::silver::{FilmLoss, Layer, bleed_range, film_loss_um};
use leavewell_model::terms::BleedWord;
use statrs::distribution::{Continuous, ContinuousCDF, Normal};

use crate::{layer_with_bleed, near, near_share};

/// Square centimetres in a square foot, and grams in a troy ounce (definitions of 1959).
const FOOT2: f64 = 929.0304;
const TROY_OUNCE: f64 = 31.103_476_8;

fn figure(id: &str) -> f64 {
    Ledger::standard().find(id).unwrap().value
}

fn silver_g(um: f64, area_cm2: f64) -> f64 {
    coat_g(um, figure("metal.silver.density"), area_cm2)
}

/// Silver used up per thickness of silver sulphide formed (2 Ag + S -> Ag2S): density of the sulphide times
/// its mass share of silver over the density of silver. Molar masses by IUPAC: 2 x 107.8682 of
/// 2 x 107.8682 + 32.06 is .870620. The density of acanthite is 7.20 to 7.33 g/cm3 in handbooks (recalled).
#[test]
fn silver_used_up_by_tarnish() {
    let share = 2.0 * 107.8682 / (2.0 * 107.8682 + 32.06);
    near(share, 0.870_620, 5e-7);
    let consumed = |density: f64| density * share / 10.49;
    near(figure("silver.consumed"), consumed(7.23), 0.001);
    let figure = Ledger::standard().figure(FigureId::SILVER_CONSUMED);
    near(figure.low, consumed(7.20), 0.001);
    near(figure.high, consumed(7.32), 0.001);
}

/// Coats of known mass: a troy ounce on a square foot is 31.92 um (the arithmetic of a handbook); 90 g on 24 dm2,
/// the German "90" stamp, is 36 um in the trade (RAL-RG 691 B4, 2011); 10 mg on a spoon of 80 cm2 is .119 um
/// (Lane and Walton 1916, "nearly" 10 mg, as quoted in Metal Record).
#[test]
fn mass_of_a_coat() {
    near_share(silver_g(31.92, FOOT2), TROY_OUNCE, 0.001);
    near_share(silver_g(36.0, 2400.0), 90.0, 0.01);
    near_share(silver_g(0.1192, 80.0), 0.010, 0.001);
    // Six troy ounces for a gross of teaspoons of 50 cm2, and 1 mg/cm2.
    near_share(144.0 * silver_g(24.71, 50.0), 6.0 * TROY_OUNCE, 0.001);
    near_share(silver_g(0.9533, 1.0), 0.001, 0.001);
    // 1,200 cm2 with 20 um.
    near_share(silver_g(20.0, 1200.0), 25.18, 0.001);
}

/// Worked by hand from the middle figures of the ledger.
#[test]
fn silver_removed_by_a_cleaning() {
    let sound = |um| FilmLoss {
        sound_um: um,
        share: 0.0,
    };
    // 14.3 um at .12 um each time with a high-point factor of 3.
    near_share(14.3 / film_loss_um(sound(0.12), 0.0, 0.6, 3.0), 39.7, 0.001);
    // Black tarnish of 200 nm, the middle of its range, holds 120 nm of silver.
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
}

#[test]
fn losses_and_remaining_silver_stay_within_their_bounds() {
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
    // Far more removed than there is: nothing is left, and never a negative amount.
    let layer = layer_with_bleed(10.0, 0.5, 0.1, 0.05);
    let gone = layer.thinned(1000.0);
    assert!((0.0..1e-6).contains(&gone.left_um()), "{}", gone.left_um());
    assert!(gone.bleed() > 0.999);
}

fn standard_normal() -> Normal {
    Normal::new(0.0, 1.0).unwrap()
}

/// Standard deviation of the local thickness, by its definition.
fn spread(mu: f64, t0: f64, k: f64) -> f64 {
    let worn = k * (t0 - mu.max(0.0));
    (worn * worn + 0.01 * t0 * t0).sqrt()
}

/// The root of f = Phi(-mu/s(mu)) with mu in [0, t0], by bisection; f falls as mu rises.
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
            let layer = layer_with_bleed(20.0, k, 0.1, f);
            near(layer.mu_um, mu_by_bisection(20.0, k, f), 1e-6);
            assert!(layer.mu_um <= 20.0);
        }
        near(layer_with_bleed(20.0, k, 0.1, 0.5).mu_um, 0.0, 1e-9);
        // More than half bare: the standard deviation is that at a mean of zero, so mu has a closed form.
        for f in [0.6, 0.8, 0.99] {
            let z = standard_normal().inverse_cdf(f);
            let expected = -z * (k * k + 0.01).sqrt() * 20.0;
            near(layer_with_bleed(20.0, k, 0.1, f).mu_um, expected, 1e-6);
        }
    }
}

/// E max(T, 0) by Simpson's rule over twelve standard deviations, against the closed form.
#[test]
fn silver_left_is_the_mean_of_the_positive_thickness() {
    for (k, f) in [
        (0.15, 0.01),
        (0.5, 0.05),
        (0.5, 0.3),
        (0.7, 0.5),
        (0.3, 0.9),
    ] {
        let layer = layer_with_bleed(20.0, k, 0.1, f);
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

/// E max(T, 0) for a standard deviation of 1 is the unit normal loss: E max(Z + d, 0) for a mean d of 1, .5, 0,
/// -.5 and -1 (Raiffa & Schlaifer 1961 and many textbooks; to seven places by `scipy.stats.norm`).
#[test]
fn silver_left_is_the_unit_normal_loss() {
    for (mean, loss) in [
        (1.0, 1.083_315_5),
        (0.5, 0.697_796_6),
        (0.0, 0.398_942_3),
        (-0.5, 0.197_796_6),
        (-1.0, 0.083_315_5),
    ] {
        // Without unevenness of wear the standard deviation is floor x t0 = 1 um, whatever the mean.
        let layer = Layer {
            t0_um: 10.0,
            k: 0.0,
            mu_um: mean,
            floor: 0.1,
        };
        near(layer.left_um(), loss, 5.1e-8);
        near(layer.left_um_at(layer.bleed(), -mean), loss, 5.1e-8);
    }
}

#[test]
fn the_worst_point_is_the_tenth_percentile_of_what_is_covered() {
    let layer = layer_with_bleed(20.0, 0.5, 0.1, 0.1);
    let law = Normal::new(layer.mu_um, layer.spread_um()).unwrap();
    // A tenth of the nine tenths that are covered lies between nothing and the worst point.
    let share = law.cdf(layer.worst_point_um()) - law.cdf(0.0);
    near(share / 0.9, 0.1, 1e-9);
}

/// Transcription of our judgement of the words for bare metal.
#[test]
fn words_for_bare_metal_as_shares() {
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
    // A share judged by eye is wrong by a factor of up to one and a half, on the bare share or on the covered one,
    // whichever is smaller.
    check(Bleed::Fraction(0.12), 0.08, 0.12, 0.18);
    check(Bleed::Fraction(0.9), 1.0 - 0.15, 0.9, 1.0 - 0.1 / 1.5);
}
