//! What knowing is worth, and keeping a choice open, against closed forms and quadrature.
//!
//! CONSTRUCTED marks invented inputs. Constants without another source were computed with scipy from
//! the closed forms named.

use leavewell_model::decide::information as info;
use leavewell_model::decide::option::{Waiting, hurdle};
use leavewell_model::maths::{SobolBlock, probit};

use crate::{near, printed};

/// Unit normal linear loss (Raiffa & Schlaifer 1961; printed in many textbooks).
#[test]
fn the_unit_normal_loss_table() {
    for (z, loss) in [
        (0.0, 0.398_942_3),
        (0.1, 0.350_935_3),
        (0.25, 0.286_344_7),
        (0.5, 0.197_796_6),
        (0.75, 0.131_166_9),
        (1.0, 0.083_315_5),
        (1.25, 0.050_586_9),
        (1.5, 0.029_306_8),
        (2.0, 0.008_490_7),
        (2.5, 0.002_004_1),
    ] {
        printed(info::unit_normal_loss(z), loss, 7);
        near(info::unit_normal_loss(-z), loss + z, 1e-7);
    }
    printed(info::unit_normal_loss(3.0), 0.000_382_15, 8);
    for (mean, sd, worth) in [
        (50.0, 100.0, 19.779_66),
        (200.0, 300.0, 45.335_89),
        (1000.0, 500.0, 4.245_351),
    ] {
        near(info::of_normal_gap(mean, sd), worth, 6e-6);
    }
}

/// CONSTRUCTED: gain = -100 + 40 x - 25 y + 10 z, normal inputs with means 5, 2, 3 and standard
/// deviations 2, 3, 4. A linear gain is normal, so every worth has a closed form.
const SLOPES: [f64; 3] = [40.0, -25.0, 10.0];
const MEANS: [f64; 3] = [5.0, 2.0, 3.0];
const SDS: [f64; 3] = [2.0, 3.0, 4.0];

#[test]
fn a_linear_gain_in_closed_form() {
    let mean = -100.0 + SLOPES.iter().zip(MEANS).map(|(b, m)| b * m).sum::<f64>();
    near(mean, 80.0, 1e-12);
    let of = |known: &[usize]| {
        let variance: f64 = known
            .iter()
            .map(|i| (SLOPES[*i] * SDS[*i]) * (SLOPES[*i] * SDS[*i]))
            .sum();
        info::of_normal_gap(mean, variance.sqrt())
    };
    for (known, worth) in [
        (&[0, 1, 2][..], 17.095_032),
        (&[0], 6.665_238),
        (&[1], 5.494_817),
        (&[2], 0.339_628),
        (&[0, 1], 14.899_058),
        (&[0, 2], 9.074_948),
        (&[1, 2], 7.911_373),
    ] {
        printed(of(known), worth, 6);
    }
    // With a correlation of 0.6 between the first two, knowing the first tells next to nothing.
    let told = (SLOPES[0] * SDS[0] + 0.6 * SLOPES[1] * SDS[1]).abs();
    printed(info::of_normal_gap(mean, told), 0.133_620, 6);
    // Readings of the first with noise 6.
    for (n, worth) in [
        (1.0, 0.005_386_842_5),
        (5.0, 0.932_793_586_6),
        (10.0, 2.231_411_645_5),
        (50.0, 5.192_167_971_1),
        (1000.0, 6.578_905_755_9),
    ] {
        let sd = SLOPES[0] * info::preposterior_sd(SDS[0], 6.0, n);
        near(info::of_normal_gap(mean, sd), worth, 1e-7);
    }
}

/// The same on 2^12 points of a scrambled net: within four times the error such a net has shown over
/// 30 scrambles (0.021 for all, 0.017 for the first input, 0.047 for the third).
#[test]
fn the_same_gain_on_draws() {
    for seed in [1, 2, 3] {
        let block = SobolBlock::new(12, seed);
        let inputs: Vec<Vec<f64>> = (0..3)
            .map(|d| {
                block
                    .column(d)
                    .iter()
                    .map(|u| MEANS[d] + SDS[d] * probit(*u))
                    .collect()
            })
            .collect();
        let gain: Vec<f64> = (0..block.len())
            .map(|i| -100.0 + (0..3).map(|d| SLOPES[d] * inputs[d][i]).sum::<f64>())
            .collect();
        let nothing = vec![0.0; gain.len()];
        let acts: [&[f64]; 2] = [&nothing, &gain];
        near(info::of_everything(&acts), 17.095_032, 0.085);
        near(info::of_input(&acts, &inputs[0]), 6.665_238, 0.07);
        near(info::of_input(&acts, &inputs[2]), 0.339_628, 0.19);
        // A reading that tells, 97 times in 100, whether the first input is below 3: one standard
        // deviation down, where the mean gain is 80 (Phi(-1) - phi(1)) in all.
        let low: Vec<f64> = inputs[0]
            .iter()
            .map(|x| if *x < 3.0 { 0.97 } else { 0.03 })
            .collect();
        let high = low.iter().map(|p| 1.0 - p).collect();
        let heard = info::of_answers_on_draws(&acts, &[low, high]);
        let below = 80.0 * (0.158_655_254 - 0.241_970_725);
        near(heard, -(0.97 * below + 0.03 * (80.0 - below)), 0.07);
    }
}

/// Nodes and weights of Gauss-Legendre quadrature with eight points on -1 to 1 (Abramowitz & Stegun
/// 1964, table 25.4).
const GAUSS: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_5),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_26),
];

/// Nodes and weights over the pieces between `ends`.
fn nodes(ends: &[f64]) -> Vec<(f64, f64)> {
    ends.windows(2)
        .flat_map(|e| {
            let (centre, half) = (0.5 * (e[0] + e[1]), 0.5 * (e[1] - e[0]));
            GAUSS.into_iter().flat_map(move |(x, w)| {
                [(centre - half * x, half * w), (centre + half * x, half * w)]
            })
        })
        .collect()
}

/// CONSTRUCTED: three acts worth 0, 60x - 30 and 80xy - 35, x Beta(4, 4) and y Beta(6, 2). The states
/// are quadrature nodes, so the sums are the integrals.
#[test]
fn three_acts_not_linear() {
    let beta_x = |x: f64| 140.0 * x * x * x * (1.0 - x) * (1.0 - x) * (1.0 - x);
    let beta_y = |y: f64| 42.0 * y * y * y * y * y * (1.0 - y);
    let worth = |chances: &[f64], acts: [Vec<f64>; 3]| {
        let rows: Vec<&[f64]> = acts.iter().map(Vec::as_slice).collect();
        info::of_state(chances, &rows)
    };
    // Only x known: y at its mean 3/4.
    let x = nodes(&[0.0, 0.5, 35.0 / 60.0, 1.0]);
    let chances: Vec<f64> = x.iter().map(|(x, w)| w * beta_x(*x)).collect();
    let rows = |f: &dyn Fn(f64) -> f64| x.iter().map(|(x, _)| f(*x)).collect::<Vec<f64>>();
    let acts = [
        rows(&|_| 0.0),
        rows(&|x| 60.0 * x - 30.0),
        rows(&|x| 60.0 * x - 35.0),
    ];
    near(worth(&chances, acts), 4.101_562_5, 1e-7);
    // Only y known: x at its mean 1/2.
    let y = nodes(&[0.0, 0.875, 1.0]);
    let chances: Vec<f64> = y.iter().map(|(y, w)| w * beta_y(*y)).collect();
    let acts = [
        vec![0.0; y.len()],
        vec![0.0; y.len()],
        y.iter().map(|(y, _)| 40.0 * y - 35.0).collect(),
    ];
    near(worth(&chances, acts), 0.399_568_68, 1e-7);
    // Both known: each y cuts x where the best act changes.
    let mut ends: Vec<f64> = (0..=24).map(|i| f64::from(i) / 24.0).collect();
    ends.extend([0.4375, 0.8125, 0.875]);
    ends.sort_by(f64::total_cmp);
    let mut chances = Vec::new();
    let mut acts = [Vec::new(), Vec::new(), Vec::new()];
    for (y, wy) in nodes(&ends) {
        let mut cuts = vec![0.0, 0.5, 1.0];
        cuts.extend(
            [35.0 / (80.0 * y), 5.0 / (80.0 * y - 60.0)]
                .into_iter()
                .filter(|c| (0.0..1.0).contains(c)),
        );
        cuts.sort_by(f64::total_cmp);
        for (x, wx) in nodes(&cuts) {
            chances.push(wx * wy * beta_x(x) * beta_y(y));
            acts[0].push(0.0);
            acts[1].push(60.0 * x - 30.0);
            acts[2].push(80.0 * x * y - 35.0);
        }
    }
    near(worth(&chances, acts), 4.550_367_88, 1e-7);
}

/// The same on draws: each input sorted and binned. Error shown by such nets with smooth regression,
/// 30 scrambles: below 0.02; the bins here are coarser, so 0.08.
#[test]
fn three_acts_on_draws() {
    use leavewell_model::maths::beta_quantile;
    let block = SobolBlock::new(12, 5);
    let quantiles = |d: usize, a: f64, b: f64| -> Vec<f64> {
        block
            .column(d)
            .iter()
            .map(|u| beta_quantile(a, b, *u, f64::NAN))
            .collect()
    };
    let (x, y) = (quantiles(0, 4.0, 4.0), quantiles(1, 6.0, 2.0));
    let nothing = vec![0.0; x.len()];
    let first: Vec<f64> = x.iter().map(|x| 60.0 * x - 30.0).collect();
    let second: Vec<f64> = x.iter().zip(&y).map(|(x, y)| 80.0 * x * y - 35.0).collect();
    let acts: [&[f64]; 3] = [&nothing, &first, &second];
    near(info::of_everything(&acts), 4.550_367_88, 0.02);
    near(info::of_input(&acts, &x), 4.101_562_5, 0.08);
    near(info::of_input(&acts, &y), 0.399_568_68, 0.2);
}

/// CONSTRUCTED: 100 p - 60 against nothing, p Beta(3, 2), after n trials: the answers are the numbers of
/// successes, with their beta-binomial chances and posterior means as states.
#[test]
fn trials_of_an_unknown_chance() {
    for (n, worth) in [
        (1_u32, 4.0),
        (2, 4.571_429),
        (3, 5.142_857),
        (5, 5.714_286),
        (10, 6.713_287),
        (20, 7.399_209),
        (50, 7.904_607),
    ] {
        // The state is p on a fine grid of Gauss nodes; the answers are binomial given p.
        let grid: Vec<f64> = (0..=30).map(|i| f64::from(i) / 30.0).collect();
        let states = nodes(&grid);
        let chances: Vec<f64> = states
            .iter()
            .map(|(p, w)| w * 12.0 * p * p * (1.0 - p))
            .collect();
        let gain: Vec<f64> = states.iter().map(|(p, _)| 100.0 * p - 60.0).collect();
        let nothing = vec![0.0; gain.len()];
        let answers: Vec<Vec<f64>> = (0..=n)
            .map(|k| {
                let ways: f64 = (0..k)
                    .map(|i| f64::from(n - i) / f64::from(i + 1))
                    .product();
                states
                    .iter()
                    .map(|(p, _)| {
                        let power = |x: f64, m: u32| (0..m).fold(1.0, |y, _| y * x);
                        ways * power(*p, k) * power(1.0 - p, n - k)
                    })
                    .collect()
            })
            .collect();
        let got = info::of_answers(&chances, &[&nothing, &gain], &answers);
        near(got, worth, 5.1e-7);
    }
    // All of it known: the integral of (100 p - 60) from 0.6 on.
    let states = nodes(&[0.0, 0.6, 1.0]);
    let chances: Vec<f64> = states
        .iter()
        .map(|(p, w)| w * 12.0 * p * p * (1.0 - p))
        .collect();
    let gain: Vec<f64> = states.iter().map(|(p, _)| 100.0 * p - 60.0).collect();
    let nothing = vec![0.0; gain.len()];
    near(info::of_state(&chances, &[&nothing, &gain]), 8.2944, 5e-7);
}

/// CONSTRUCTED inputs to the thresholds of Pauker & Kassirer 1980 (NEJM 302:1109). At each end of the
/// zone, testing is worth exactly as much as the act beside it.
#[test]
fn when_to_treat_and_when_to_test() {
    let choice = info::TreatOrTest {
        benefit: 1000.0,
        harm: 1500.0,
        fee: 60.0,
        sensitivity: 0.9,
        specificity: 0.9,
    };
    near(choice.treat_above(), 0.6, 5e-7);
    let (low, high) = choice.test_between();
    near(low, 0.2, 5e-7);
    printed(high, 0.889_655, 6);
    let testing = |p: f64| p * 0.9 * 1000.0 - (1.0 - p) * 0.1 * 1500.0 - 60.0;
    near(testing(low), 0.0, 1e-9);
    near(testing(high), 1000.0 * high - 1500.0 * (1.0 - high), 1e-9);
    near(testing(0.6), 420.0, 1e-9);
}

/// The project that may be put off (Dixit & Pindyck 1994, ch. 2), with its two option values.
#[test]
fn a_project_that_may_be_put_off() {
    let at = |cost: f64| Waiting {
        gain_now: -cost + 200.0 + 2000.0 - (-cost / 1.1 + 2000.0),
        chances: vec![0.5, 0.5],
        acted: vec![-cost / 1.1 + 3000.0, -cost / 1.1 + 1000.0],
        kept: vec![0.0, 0.0],
    };
    let worth = at(1600.0).worth();
    near(worth.act_now, 600.0, 1e-9);
    near(worth.closed_loop, 772.727, 5e-4);
    near(worth.option, 172.727, 5e-4);
    near(worth.open_loop, 545.454_545, 5e-6);
    near(worth.quasi_option, 227.272_727, 5e-6);
    assert!(!worth.acts_now());
    // The cost at which a project that may wait is worth what this one is without waiting: 1980.
    near(at(1980.0).worth().closed_loop, 600.0, 1e-9);
}

/// CONSTRUCTED: "act" is a restoration that cannot be undone.
fn restoration(gain_now: f64) -> Waiting {
    Waiting {
        gain_now,
        chances: vec![0.7, 0.3],
        acted: vec![100.0, -20.0],
        kept: vec![60.0, 140.0],
    }
}

#[test]
fn keeping_a_choice_open_is_worth_something() {
    let worth = restoration(30.0).worth();
    for (got, want) in [
        (worth.act_now, 94.0),
        (worth.open_loop, 84.0),
        (worth.closed_loop, 112.0),
        (worth.quasi_option, 28.0),
        (worth.option, 18.0),
        (worth.break_even_blind, 20.0),
        (worth.break_even, 48.0),
    ] {
        near(got, want, 1e-9);
    }
    assert!(!worth.acts_now());
    assert!(!restoration(47.9).worth().acts_now());
    assert!(restoration(48.1).worth().acts_now());
}

#[test]
fn learning_that_changes_nothing_is_worth_nothing() {
    let worth = Waiting {
        gain_now: 5.0,
        chances: vec![0.7, 0.3],
        acted: vec![100.0, 90.0],
        kept: vec![60.0, 80.0],
    }
    .worth();
    near(worth.open_loop, 97.0, 1e-9);
    near(worth.quasi_option, 0.0, 1e-9);
    near(worth.option, -5.0, 1e-9);
    assert!(worth.acts_now());
}

/// Learning with a signal right a share q of the time: a weak signal has no option value at all.
#[test]
fn a_weak_signal_keeps_no_option_alive() {
    for (q, quasi) in [
        (0.5, 0.0),
        (0.6, 0.0),
        (0.7, 5.2),
        (0.8, 12.8),
        (0.9, 20.4),
        (1.0, 28.0),
    ] {
        let answers = [vec![q, 1.0 - q], vec![1.0 - q, q]];
        near(
            restoration(30.0).worth_with(&answers).quasi_option,
            quasi,
            1e-9,
        );
    }
}

/// The option without end (Dixit & Pindyck 1994, ch. 5; the first line is its base case).
#[test]
fn the_option_without_end() {
    for (rate, payout, spread, root, multiple) in [
        (0.04, 0.04, 0.2, 2.0, 2.0),
        (0.04, 0.04, 0.4, 1.366_025, 3.732_051),
        (0.04, 0.08, 0.2, 3.561_553, 1.390_388),
        (0.04, 0.04, 0.1, 3.372_281, 1.421_535),
        (0.05, 0.03, 0.3, 1.367_856, 3.718_451),
    ] {
        let (b, h) = hurdle(rate, payout, spread).unwrap();
        near(b, root, 6e-7);
        near(h, multiple, 6e-7);
    }
    let (b, h) = hurdle(0.04, 0.04, 0.2).unwrap();
    near(b, 2.0, 1e-9);
    near(h, 2.0, 1e-9);
    for (rate, payout, spread) in [(0.0, 0.04, 0.2), (0.04, 0.0, 0.2), (0.04, 0.04, 0.0)] {
        assert_eq!(hurdle(rate, payout, spread), None);
    }
}

/// Nothing is shown that is not above the spread over scrambles.
#[test]
fn what_is_below_the_noise_is_not_shown() {
    assert_eq!(info::above_noise(&[0.0; 8]), None);
    assert_eq!(info::above_noise(&[0.0, 0.0, 0.0, 1.0]), None);
    near(
        info::above_noise(&[0.9, 1.0, 1.1, 1.0]).unwrap(),
        1.0,
        1e-12,
    );
}
