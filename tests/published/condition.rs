//! Counting points, measured thickness, the wear of a field, forecasts of care and the colours of
//! tarnish.
//!
//! Student's t and the exact binomial interval are checked against libraries and the table of the
//! standard, coverage by simulation, the wear model by drawing fields, forecasts by hand.

// The oracle may use the machine's own functions: nothing of it is kept.
#![allow(clippy::disallowed_methods)]

use leavewell_model::bench::deposit_um;
use leavewell_model::ledger::Ledger;
use leavewell_model::maths::student_two_sided;
use leavewell_model::maths::{exact_interval, point_count};
use leavewell_model::silver::{
    Belief, FilmLoss, Habit, Layer, bleed_after, rolled_face_um, years_until,
};
use statrs::distribution::{ContinuousCDF, Normal};

use crate::{near, near_share, printed};

fn figure(id: &str) -> f64 {
    Ledger::standard().value(id)
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

/// How often the interval holds the true share, over 4,000 counts from a fixed stream; the error of
/// such a count of hits is about a third of a hundredth.
#[test]
fn intervals_cover_what_they_say() {
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

/// Tails of the exact interval, by the binomial law itself: at the lower end so many taps or more
/// come 1 time in 40.
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

/// The belief after a reading, against the product of prior and likelihood summed over a grid.
#[test]
fn a_reading_is_taken_in_by_the_rule_of_bayes() {
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

/// A field of local thicknesses drawn point by point, against the closed forms, before and after
/// some has been taken: within four standard errors.
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
        let layer = Layer::from_bleed(20.0, k, 0.1, f).thinned(taken);
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
fn more_taken_more_tarnish_or_more_bare_never_leaves_more() {
    let mut last_left = 1.0;
    for f in [1e-6, 0.001, 0.01, 0.1, 0.3, 0.5, 0.7, 0.95, 0.999] {
        let layer = Layer::from_bleed(20.0, 0.5, 0.1, f);
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

/// A layer that wears evenly (k = 0): s = 2 um for 20 um, so mu = 2 z um and every step can be
/// worked by hand.
fn even_layer() -> Layer {
    // Phi(-2) = .022750132: mu = 4 um.
    let layer = Layer::from_bleed(20.0, 0.0, 0.1, 0.022_750_132);
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

/// Worked by hand with the middle figures of the ledger; no library stands behind these.
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
    near(paste.film_at_cleaning_nm().unwrap(), 20.0, 1e-9);

    // 3. Bag, and chalk once in three years: .06/3 + .6 x 4/1000 = .0224; 4/.0224 = 178.57 years.
    let chalk = kept(figure("silver.setting.bag"), 1.0 / 3.0, sound("chalk"), 1.0);
    let a_year = chalk.silver_um_per_year(consumed, h("body"));
    near(a_year, 0.0224, 1e-9);
    near(half(a_year), 178.571, 0.01);
    near(chalk.film_at_cleaning_nm().unwrap(), 12.0, 1e-9);

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
    // Bare already, and nothing going.
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

/// Limits of the classes of air as they are recalled, turned into tarnish a year: losses of silver in
/// mg/m2 for ISO 11844-1, angstrom of film in 30 days for ANSI/ISA-71.04. This checks the
/// arithmetic, not that the limits are right: both are marked as from memory.
#[test]
fn classes_of_air() {
    let ledger = Ledger::standard();
    let film_nm = |silver_mg_m2: f64| {
        let um = deposit_um(
            silver_mg_m2 / 1000.0,
            figure("metal.silver.density"),
            10_000.0,
        );
        1000.0 * um / figure("silver.consumed")
    };
    for (id, least, most) in [
        ("ic1", 0.0, 170.0),
        ("ic2", 170.0, 670.0),
        ("ic3", 670.0, 3000.0),
        ("ic4", 3000.0, 6700.0),
        ("ic5", 6700.0, 16_700.0),
    ] {
        let air = ledger.figure(&format!("silver.air.{id}"));
        near(air.low, film_nm(least), 0.6);
        near(air.high, film_nm(most), 0.6);
    }
    let year = |angstrom: f64| angstrom / 10.0 * 365.25 / 30.0;
    for (id, least, most) in [
        ("g1", 0.0, 200.0),
        ("g2", 200.0, 1000.0),
        ("g3", 1000.0, 2000.0),
    ] {
        let air = ledger.figure(&format!("silver.air.{id}"));
        near_share(air.low, year(least), 0.001);
        near_share(air.high, year(most), 0.001);
    }
    for f in ledger.figures().filter(|f| f.id.starts_with("silver.air.")) {
        assert_eq!(f.tag, leavewell_model::ledger::Tag::Memory, "{}", f.id);
    }
    // A year at the end of the mildest class of ISA is past where black begins.
    assert!(ledger.figure("silver.air.g1").high > figure("silver.film.black"));
}

/// Photon energy in eV with n and k of silver (Johnson and Christy 1972, Phys. Rev. B 6:4370).
const SILVER: [(f64, f64, f64); 15] = [
    (1.64, 0.03, 5.242),
    (1.76, 0.04, 4.838),
    (1.88, 0.05, 4.483),
    (2.01, 0.06, 4.152),
    (2.14, 0.05, 3.858),
    (2.26, 0.06, 3.586),
    (2.38, 0.05, 3.324),
    (2.50, 0.05, 3.093),
    (2.63, 0.05, 2.869),
    (2.75, 0.04, 2.657),
    (2.88, 0.04, 2.462),
    (3.00, 0.05, 2.275),
    (3.12, 0.05, 2.070),
    (3.25, 0.05, 1.864),
    (3.37, 0.07, 1.657),
];

#[derive(Clone, Copy)]
struct Complex(f64, f64);

impl Complex {
    fn plus(self, o: Self) -> Self {
        Self(self.0 + o.0, self.1 + o.1)
    }
    fn minus(self, o: Self) -> Self {
        Self(self.0 - o.0, self.1 - o.1)
    }
    fn times(self, o: Self) -> Self {
        Self(self.0 * o.0 - self.1 * o.1, self.0 * o.1 + self.1 * o.0)
    }
    fn over(self, o: Self) -> Self {
        let d = o.0 * o.0 + o.1 * o.1;
        let up = self.times(Self(o.0, -o.1));
        Self(up.0 / d, up.1 / d)
    }
}

fn silver_at(nm: f64) -> Complex {
    let wave = |row: &(f64, f64, f64)| 1_239.841_98 / row.0;
    let i = SILVER.iter().position(|r| wave(r) <= nm).unwrap();
    let (a, b) = (SILVER[i - 1], SILVER[i]);
    let w = (nm - wave(&b)) / (wave(&a) - wave(&b));
    Complex(b.1 + w * (a.1 - b.1), b.2 + w * (a.2 - b.2))
}

/// Reflectance of a smooth film on silver, light falling straight on it (Airy's formula).
fn reflectance(nm: f64, film: Complex, film_nm: f64) -> f64 {
    let (one, metal) = (Complex(1.0, 0.0), silver_at(nm));
    let upper = one.minus(film).over(one.plus(film));
    let lower = film.minus(metal).over(film.plus(metal));
    let path = 4.0 * std::f64::consts::PI * film_nm / nm;
    let fade = (-path * film.1).exp();
    let turn = Complex(fade * (path * film.0).cos(), fade * (path * film.0).sin());
    let back = lower.times(turn);
    let r = upper.plus(back).over(one.plus(upper.times(back)));
    r.0 * r.0 + r.1 * r.1
}

/// CIE 1931 colour matching (Wyman, Sloan and Shirley 2013, J. Computer Graphics Techniques 2(2)).
fn matching(nm: f64) -> [f64; 3] {
    let bell = |centre: f64, below: f64, above: f64| {
        let t = (nm - centre) / if nm < centre { below } else { above };
        (-0.5 * t * t).exp()
    };
    [
        1.056 * bell(599.8, 37.9, 31.0) + 0.362 * bell(442.0, 16.0, 26.7)
            - 0.065 * bell(501.1, 20.4, 26.2),
        0.821 * bell(568.8, 46.9, 40.5) + 0.286 * bell(530.9, 16.3, 31.1),
        1.217 * bell(437.0, 11.8, 36.0) + 0.681 * bell(459.0, 26.0, 13.8),
    ]
}

/// CIE Lab of a film under light of equal energy, 400 to 700 nm in steps of 5. The film's n is
/// constant and its k falls in a straight line; both are a guess.
fn lab(n: f64, k: (f64, f64), film_nm: f64) -> [f64; 3] {
    let (mut got, mut white) = ([0.0; 3], [0.0; 3]);
    for step in 0..=60 {
        let nm = 400.0 + 5.0 * f64::from(step);
        let film = Complex(n, k.0 + (k.1 - k.0) * (nm - 400.0) / 300.0);
        let r = reflectance(nm, film, film_nm);
        for (i, m) in matching(nm).into_iter().enumerate() {
            got[i] += r * m;
            white[i] += m;
        }
    }
    let curve = |t: f64| {
        if t > 216.0 / 24_389.0 {
            t.cbrt()
        } else {
            (24_389.0 / 27.0 * t + 16.0) / 116.0
        }
    };
    let [x, y, z] = [0, 1, 2].map(|i| curve(got[i] / white[i]));
    [116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)]
}

/// How far 5 nm of film differ from bare silver to the eye, for three guesses of the film's optics;
/// the same by numpy from the same table.
#[test]
fn a_film_of_five_nanometres_can_be_seen() {
    for (n, k, want) in [
        (2.6, (0.8, 0.3), 8.8),
        (2.9, (1.0, 0.3), 12.9),
        (3.2, (1.2, 0.5), 17.5),
    ] {
        let (a, b) = (lab(n, k, 5.0), lab(n, k, 0.0));
        let far = (0..3)
            .map(|i| (a[i] - b[i]) * (a[i] - b[i]))
            .sum::<f64>()
            .sqrt();
        near(far, want, 0.1);
    }
}

/// The ledger's usual film of each stage has the colour of its name, by the middle guess of the
/// optics: hue in degrees of CIE Lab. Black needs roughness, which no smooth film has.
#[test]
fn stages_of_tarnish_have_their_colours() {
    for (stage, from, to) in [
        ("faint_yellow", 78.0, 96.0),
        ("yellow_gold", 78.0, 96.0),
        ("brown", 20.0, 75.0),
        ("purple", 300.0, 345.0),
        ("blue", 245.0, 298.0),
    ] {
        let [_, a, b] = lab(2.9, (1.0, 0.3), figure(&format!("silver.film.{stage}")));
        let hue = (b.atan2(a).to_degrees() + 360.0) % 360.0;
        assert!((from..=to).contains(&hue), "{stage}: {hue}");
        assert!((a * a + b * b).sqrt() > 8.0, "{stage}");
    }
    let bright = lab(2.9, (1.0, 0.3), figure("silver.film.bright"));
    assert!(bright[0] > 90.0, "{bright:?}");
}
