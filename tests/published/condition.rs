//! Point counts, measured thickness, the wear model and forecasts of care.
//!
//! Student's t and the exact binomial interval are checked against libraries and the table of the standard,
//! coverage by simulation, the wear model by drawing thickness fields, forecasts by hand.

// The checks may use the functions of the machine they run on: none of their results is stored.
#![allow(clippy::disallowed_methods)]

use leavewell_model::bench::coat_g;
use leavewell_model::ledger::FigureId;
use leavewell_model::ledger::Ledger;
use leavewell_model::maths::student_two_sided;
use leavewell_model::maths::{exact_interval, point_count};
use leavewell_model::silver::{
    Belief, FilmLoss, Habit, Layer, bleed_after, rolled_face_um, years_until,
};
use statrs::distribution::{ContinuousCDF, Normal};

use crate::{layer_with_bleed, near, near_share, printed};

fn figure(id: &str) -> f64 {
    Ledger::standard().find(id).unwrap().value
}

/// A fixed stream of uniform numbers in (0, 1): the 64-bit generator of Knuth (MMIX), upper 53 bits.
struct Stream(u64);

impl Stream {
    fn next(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 11) as f64 + 0.5) / 9_007_199_254_740_992.0
    }

    /// How many of `n` fall below `p`.
    fn below(&mut self, p: f64, n: u32) -> f64 {
        (0..n).filter(|_| self.next() < p).count() as f64
    }
}

/// Multipliers for 95 % intervals: ASTM E562, table of t for n fields, to three decimals; and
/// `scipy.stats.t.ppf(.975, n - 1)`, scipy 1.17.
#[test]
fn multipliers_of_the_standard() {
    for (fields, table, scipy) in [
        (5.0, 2.776, 2.776_445_105_198),
        (10.0, 2.262, 2.262_157_162_798),
        (15.0, 2.145, 2.144_786_687_918),
        (20.0, 2.093, 2.093_024_054_408),
        (25.0, 2.064, 2.063_898_561_628),
        (30.0, 2.045, 2.045_229_642_133),
        (50.0, 2.010, 2.009_575_237_129),
    ] {
        let t = student_two_sided(fields - 1.0, 0.95);
        printed(t, table, 3);
        near(t, scipy, 1e-9);
    }
}

/// `statsmodels.stats.proportion.proportion_confint(x, n, alpha=.05, method='beta')`, 0.14.
#[test]
fn exact_intervals() {
    for (taps, points, low, high) in [
        (0, 100, 0.0, 0.036_216_692_645),
        (1, 25, 0.001_012_199_699, 0.203_516_913_922),
        (6, 100, 0.022_334_886_071, 0.126_029_934_581),
        (10, 100, 0.049_004_689_221, 0.176_222_597_740),
        (33, 50, 0.512_347_512_278, 0.787_945_286_565),
        (399, 400, 0.986_150_230_038, 0.999_936_707_483),
        (2, 10, 0.025_210_726_327, 0.556_095_462_308),
    ] {
        let counted = point_count(f64::from(points), &[f64::from(taps)]).unwrap();
        near(counted.low, low, 1e-10);
        near(counted.high, high, 1e-10);
        assert!(counted.exact && counted.relative_accuracy.is_none());
    }
}

/// Eight fields of 100 points: `scipy.stats.t.interval(.95, 7, loc=mean, scale=sem)`.
#[test]
fn mean_and_interval_over_fields() {
    let counted = point_count(100.0, &[6.0, 4.0, 9.0, 5.0, 6.0, 8.0, 3.0, 7.0]).unwrap();
    near(counted.mean, 0.06, 1e-12);
    near(counted.low, 0.043_279_581_567, 1e-10);
    near(counted.high, 0.076_720_418_433, 1e-10);
    // Percent relative accuracy: half the interval over the mean.
    near(
        counted.relative_accuracy.unwrap(),
        100.0 * 0.016_720_418_433 / 0.06,
        1e-6,
    );
    // By hand: fields of 2 and 4 in 10; mean .3, s = .1414, s/sqrt(2) = .1, t = 12.706.
    let two = point_count(10.0, &[2.0, 4.0]).unwrap();
    near(two.mean, 0.3, 1e-12);
    near(
        two.relative_accuracy.unwrap(),
        100.0 * 1.270_620_473 / 0.3,
        1e-3,
    );
    assert!(two.low.abs() < 1e-12 && (two.high - 1.0).abs() < 1e-12);
}

/// How often the interval contains the true share, over 4,000 counts from a fixed stream. The standard error of
/// such a frequency is about .0035.
#[test]
fn intervals_cover_as_often_as_they_claim() {
    let mut stream = Stream(2024);
    for (fields, points, p) in [
        (1_usize, 400, 0.1),
        (1, 400, 0.3),
        (1, 900, 0.2),
        (10, 100, 0.2),
        (30, 50, 0.1),
        (5, 200, 0.4),
    ] {
        let trials = 4000;
        let hits = (0..trials)
            .filter(|_| {
                let bare: Vec<f64> = (0..fields).map(|_| stream.below(p, points)).collect();
                let counted = point_count(f64::from(points), &bare).unwrap();
                counted.low <= p && p <= counted.high
            })
            .count();
        let share = hits as f64 / f64::from(trials);
        assert!(
            (0.93..=0.97).contains(&share),
            "{fields} fields of {points} at {p}: {share}"
        );
    }
}

/// Tails of the exact interval, by the binomial distribution itself: at each end, a count as extreme as the one
/// seen has a probability of 1 in 40.
#[test]
fn the_ends_of_the_exact_interval_are_the_binomial_tails() {
    let (low, high) = exact_interval(3.0, 20.0);
    let chance = |k: i32, p: f64| {
        let choose = (0..k).fold(1.0, |c, i| c * f64::from(20 - i) / f64::from(i + 1));
        choose * p.powi(k) * (1.0 - p).powi(20 - k)
    };
    near(
        1.0 - (0..3).map(|k| chance(k, low)).sum::<f64>(),
        0.025,
        1e-10,
    );
    near((0..=3).map(|k| chance(k, high)).sum::<f64>(), 0.025, 1e-10);
}

/// The posterior after a reading, against prior times likelihood summed over a grid.
#[test]
fn a_reading_updates_a_belief_by_bayes_rule() {
    for (mean, sd, um, error) in [
        (18.0, 6.0, 9.0, 2.0),
        (5.0, 1.0, 9.0, 4.0),
        (12.0, 3.0, 12.0, 0.5),
    ] {
        let after = Belief {
            mean_um: mean,
            sd_um: sd,
        }
        .updated(um, error);
        let (mut total, mut first, mut second) = (0.0, 0.0, 0.0);
        for i in 0..60_000 {
            let x = -30.0 + f64::from(i) * 0.0015;
            let (a, b) = ((x - mean) / sd, (um - x) / error);
            let weight = (-0.5 * (a * a + b * b)).exp();
            total += weight;
            first += weight * x;
            second += weight * x * x;
        }
        let grid = first / total;
        near(after.mean_um, grid, 1e-6);
        near(after.sd_um, (second / total - grid * grid).sqrt(), 1e-5);
    }
}

/// A field of local thicknesses drawn point by point, against the closed forms, before and after some silver is
/// removed: within four standard errors.
#[test]
fn drawn_fields_agree_with_the_wear_model() {
    let standard = Normal::new(0.0, 1.0).unwrap();
    let mut stream = Stream(7);
    let n = 60_000;
    for (k, f, taken) in [
        (0.15, 0.01, 0.0),
        (0.5, 0.05, 0.0),
        (0.5, 0.05, 2.0),
        (0.7, 0.3, 1.0),
        (0.5, 0.5, 0.0),
        (0.3, 0.8, 0.5),
    ] {
        let layer = layer_with_bleed(20.0, k, 0.1, f).thinned(taken);
        let (mut bare, mut sum, mut squares) = (0.0, 0.0, 0.0);
        for _ in 0..n {
            let t = layer.mu_um + layer.spread_um() * standard.inverse_cdf(stream.next());
            if t < 0.0 {
                bare += 1.0;
            } else {
                sum += t;
                squares += t * t;
            }
        }
        let n = f64::from(n);
        let share = layer.bleed();
        near(bare / n, share, 4.0 * (share * (1.0 - share) / n).sqrt());
        let mean = sum / n;
        near(
            mean,
            layer.left_um(),
            4.0 * ((squares / n - mean * mean) / n).sqrt(),
        );
        if taken <= 0.0 {
            near(share, f, 1e-9);
        }
        // Where silver is, it is thicker than over all.
        near(layer.covered_um(), layer.left_um() / (1.0 - share), 1e-9);
    }
}

#[test]
fn more_removed_more_tarnish_or_more_bare_metal_never_leaves_more_silver() {
    let mut last_left = 1.0;
    for f in [1e-6, 0.001, 0.01, 0.1, 0.3, 0.5, 0.7, 0.95, 0.999] {
        let layer = layer_with_bleed(20.0, 0.5, 0.1, f);
        near(layer.thinned(0.0).bleed(), f, 1e-9);
        assert!((0.0..=last_left).contains(&layer.left_fraction()), "{f}");
        last_left = layer.left_fraction();
        // More cleanings, and more taken by each.
        for d in [0.05, 0.1, 0.4] {
            let (mut left, mut bare) = (layer.left_um(), f);
            for n in 1..80 {
                let now = layer.thinned(f64::from(n) * d);
                assert!(now.left_um() <= left && bleed_after(&layer, f, f64::from(n) * d) >= bare);
                left = now.left_um();
                bare = bleed_after(&layer, f, f64::from(n) * d);
            }
        }
        assert!(layer.thinned(0.4).left_um() <= layer.thinned(0.1).left_um());
    }
    let habit = |film, n| {
        Habit {
            film_nm_per_year: film,
            cleanings_per_year: n,
            loss: FilmLoss {
                sound_um: 0.06,
                share: 1.0,
            },
        }
        .silver_um_per_year(0.6, 1.0)
    };
    assert!(habit(80.0, 2.0) > habit(80.0, 1.0) && habit(90.0, 1.0) > habit(80.0, 1.0));
}

/// A layer that wears evenly (k = 0). Of 20 um, s is 2 um and mu is -2 z um, so every step can be worked by
/// hand.
fn even_layer() -> Layer {
    // Phi(-2) = .022750132: mu = 4 um.
    let layer = layer_with_bleed(20.0, 0.0, 0.1, 0.022_750_132);
    near(layer.mu_um, 4.0, 1e-6);
    layer
}

fn kept(film_nm_per_year: f64, cleanings_per_year: f64, sound_um: f64, share: f64) -> Habit {
    Habit {
        film_nm_per_year,
        cleanings_per_year,
        loss: FilmLoss { sound_um, share },
    }
}

/// Worked by hand with the middle figures of the ledger.
#[test]
fn forecasts_by_hand() {
    let layer = even_layer();
    let h = |part: &str| figure(&format!("silver.high_point.{part}"));
    let sound = |way: &str| figure(&format!("silver.loss.{way}.um"));
    let consumed = figure("silver.consumed");
    let half = |um| years_until(&layer, 0.5, um).unwrap();

    // 1. A mean of 14.3 um at .12 um a time and a factor of 3: 39.7 times.
    let thick = Layer {
        mu_um: 14.3,
        ..layer
    };
    near(thick.times_until(0.5, 0.12 * 3.0).unwrap(), 39.7, 0.05);

    // 2. Paste four times a year in a usual home, on the body:
    //    4 x .15 + .6 x 80/1000 = .648 um a year; 4/.648 = 6.173 years until half is bare.
    let paste = kept(figure("silver.setting.home"), 4.0, sound("paste"), 1.0);
    let a_year = paste.silver_um_per_year(consumed, h("body"));
    near(a_year, 0.648, 1e-9);
    near(half(a_year), 6.1728, 0.001);

    // 3. Bag, and chalk once in three years: .06/3 + .6 x 4/1000 = .0224; 4/.0224 = 178.57 years.
    let chalk = kept(figure("silver.setting.bag"), 1.0 / 3.0, sound("chalk"), 1.0);
    let a_year = chalk.silver_um_per_year(consumed, h("body"));
    near(a_year, 0.0224, 1e-9);
    near(half(a_year), 178.571, 0.01);

    // 4. Kitchen, never cleaned, at an edge: .6 x 300/1000 x 5 = .9; 4/.9 = 4.444 years.
    let kitchen = kept(figure("silver.setting.kitchen"), 0.0, sound("paste"), 1.0);
    let a_year = kitchen.silver_um_per_year(consumed, h("edge"));
    near(a_year, 0.9, 1e-9);
    near(half(a_year), 4.4444, 0.001);

    // 5. The bath with foil once a year gives four fifths of the tarnish back:
    //    .001 + .2 x .6 x 80/1000 = .0106; on a rim, 2.5 times as much: .0265.
    let foil = kept(
        figure("silver.setting.home"),
        1.0,
        sound("foil_bath"),
        figure("silver.loss.foil_bath.share"),
    );
    near(foil.silver_um_per_year(consumed, h("rim")), 0.0265, 1e-9);

    // 6. From 2.2750 % to twice that: z goes from -2 to -1.69022 (normal table: Phi(-1.69) = .0455),
    //    so .6196 um have to go; at .648 um a year in .956 years.
    let twice = years_until(&layer, 2.0 * 0.022_750_132, 0.648).unwrap();
    near(twice, 2.0 * (2.0 - 1.6902) / 0.648, 0.001);
    // Already bare, and nothing removed.
    near(years_until(&layer, 0.01, 0.648).unwrap(), 0.0, 0.0);
    assert_eq!(years_until(&layer, 0.5, 0.0), None);
}

/// Fused plate of .6 mm with a fortieth of the copper's thickness on each face: 14.29 um; and the
/// other cells of that table, worked out as t r/(1 + r) and t r/(1 + 2 r).
#[test]
fn silver_on_rolled_sheet() {
    near_share(rolled_face_um(0.6, 1.0 / 40.0, 2.0), 14.29, 0.001);
    printed(rolled_face_um(0.5, 1.0 / 40.0, 1.0), 12.2, 1);
    printed(rolled_face_um(1.0, 1.0 / 40.0, 2.0), 23.8, 1);
    // Ten ounces of sterling on eight pounds of copper are .0742 of its volume.
    printed(rolled_face_um(0.5, 0.074_15, 1.0), 34.5, 1);
    printed(rolled_face_um(1.0, 0.074_15 / 2.0, 2.0), 34.5, 1);
}

/// Limits of the classes of air as recalled, converted to tarnish per year: loss of silver in mg/m2 for
/// ISO 11844-1, angstrom of film in 30 days for ANSI/ISA-71.04. This checks the conversion, not the limits:
/// the ledger marks both as recalled.
#[test]
fn classes_of_air_are_converted_to_tarnish_per_year() {
    let ledger = Ledger::standard();
    // A micrometre of silver on a square metre weighs so many milligrams.
    let per_um = 1000.0 * coat_g(1.0, figure("metal.silver.density"), 10_000.0);
    let film_nm = |silver_mg_m2: f64| 1000.0 * silver_mg_m2 / per_um / figure("silver.consumed");
    for (id, least, most) in [
        ("ic1", 0.0, 170.0),
        ("ic2", 170.0, 670.0),
        ("ic3", 670.0, 3000.0),
        ("ic4", 3000.0, 6700.0),
        ("ic5", 6700.0, 16_700.0),
    ] {
        let air = ledger.find(&format!("silver.air.{id}")).unwrap();
        near(air.low, film_nm(least), 0.6);
        near(air.high, film_nm(most), 0.6);
    }
    let year = |angstrom: f64| angstrom / 10.0 * 365.25 / 30.0;
    for (id, least, most) in [
        ("g1", 0.0, 200.0),
        ("g2", 200.0, 1000.0),
        ("g3", 1000.0, 2000.0),
    ] {
        let air = ledger.find(&format!("silver.air.{id}")).unwrap();
        near_share(air.low, year(least), 0.001);
        near_share(air.high, year(most), 0.001);
    }
    for f in ledger.figures().filter(|f| f.id.starts_with("silver.air.")) {
        assert_eq!(f.tag, leavewell_model::ledger::Tag::Memory, "{}", f.id);
    }
    // A year at the upper end of the mildest ISA class is past the beginning of black.
    assert!(ledger.figure(FigureId::SILVER_AIR_G1).high > figure("silver.film.black"));
}
