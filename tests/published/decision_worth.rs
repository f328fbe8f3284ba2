//! The value of information and of keeping a choice open, compared with closed forms and quadrature.
//!
//! CONSTRUCTED marks invented inputs. Constants without another source were computed with scipy from the
//! closed forms named.

use leavewell_model::decide::information as info;
use leavewell_model::decide::option::Waiting;
use leavewell_model::maths::{SobolBlock, probit};

use crate::decision_trees::{certain_answers, perfect_information};
use crate::near;

/// CONSTRUCTED: gain = -100 + 40 x - 25 y + 10 z, with normal inputs of means 5, 2, 3 and standard deviations
/// 2, 3, 4. A linear gain is normal, so the value of knowing an input has a closed form: sd L(|mean|/sd),
/// with the unit normal loss L(u) = phi(u) - u (1 - Phi(u)) where sd is that of the part that becomes known
/// (Raiffa & Schlaifer 1961).
const SLOPES: [f64; 3] = [40.0, -25.0, 10.0];
const MEANS: [f64; 3] = [5.0, 2.0, 3.0];
const SDS: [f64; 3] = [2.0, 3.0, 4.0];

/// The unit normal loss: E max(Z + d, 0) for d = 1, .5, 0, -.5, -1 (printed in many textbooks; to seven
/// places by `scipy.stats.norm`), as the value of the better of two acts, on 2^14 points of a net.
#[test]
fn the_better_of_two_acts_is_worth_the_unit_normal_loss() {
    let z: Vec<f64> = SobolBlock::new(14, 1)
        .column(0)
        .iter()
        .map(|u| probit(*u))
        .collect();
    let nothing = vec![0.0; z.len()];
    for (d, loss) in [
        (1.0, 1.083_315_5),
        (0.5, 0.697_796_6),
        (0.0, 0.398_942_3),
        (-0.5, 0.197_796_6),
        (-1.0, 0.083_315_5),
    ] {
        let gain: Vec<f64> = z.iter().map(|z| z + d).collect();
        let best_now = f64::max(0.0, d);
        near(
            best_now + info::of_everything(&[&nothing, &gain]),
            loss,
            3e-5,
        );
    }
}

/// A linear gain on 2^12 points of a scrambled net, compared with the closed form.
#[test]
fn a_linear_gain_on_draws_agrees_with_its_closed_form() {
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
        // A reading that is right 97 times in 100 about whether the first input is below 3, one standard
        // deviation below its mean. The gain integrated below 3 is 80 (Phi(-1) - phi(1)).
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

/// Nodes and weights over the intervals between `ends`.
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

/// CONSTRUCTED: three acts worth 0, 60x - 30 and 80xy - 35, with x from Beta(4, 4) and y from Beta(6, 2). The
/// states are quadrature nodes, so the sums are the integrals.
#[test]
fn three_acts_by_quadrature() {
    let beta_x = |x: f64| 140.0 * x * x * x * (1.0 - x) * (1.0 - x) * (1.0 - x);
    let beta_y = |y: f64| 42.0 * y * y * y * y * y * (1.0 - y);
    let worth = |chances: &[f64], acts: [Vec<f64>; 3]| {
        let rows: Vec<&[f64]> = acts.iter().map(Vec::as_slice).collect();
        perfect_information(chances, &rows)
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

/// The same on draws, with each input sorted and binned. The error of such nets with smooth regression is
/// below 0.02 over 30 scrambles; the bins here are coarser, so the tolerance is 0.08.
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

/// CONSTRUCTED: 100 p - 60 or nothing, with p from Beta(3, 2), after n trials. The answers are the numbers of
/// successes, with their beta-binomial chances and posterior means as states.
#[test]
fn trials_of_an_unknown_probability() {
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
    // p known completely: the integral of (100 p - 60) from 0.6 on.
    let states = nodes(&[0.0, 0.6, 1.0]);
    let chances: Vec<f64> = states
        .iter()
        .map(|(p, w)| w * 12.0 * p * p * (1.0 - p))
        .collect();
    let gain: Vec<f64> = states.iter().map(|(p, _)| 100.0 * p - 60.0).collect();
    let nothing = vec![0.0; gain.len()];
    near(
        perfect_information(&chances, &[&nothing, &gain]),
        8.2944,
        5e-7,
    );
}

/// The project that can be put off (Dixit & Pindyck 1994, ch. 2), with both of its option values.
#[test]
fn a_project_that_can_be_put_off() {
    let at = |cost: f64| Waiting {
        gain_now: -cost + 200.0 + 2000.0 - (-cost / 1.1 + 2000.0),
        chances: vec![0.5, 0.5],
        acted: vec![-cost / 1.1 + 3000.0, -cost / 1.1 + 1000.0],
        kept: vec![0.0, 0.0],
    };
    let worth = at(1600.0).worth_with(&certain_answers(2));
    near(worth.act_now, 600.0, 1e-9);
    near(worth.closed_loop, 772.727, 5e-4);
    near(worth.option, 172.727, 5e-4);
    near(worth.open_loop, 545.454_545, 5e-6);
    near(worth.quasi_option, 227.272_727, 5e-6);
    assert!(!worth.acts_now());
    // A project that can wait at a cost of 1600 is worth as much as one that cannot at a cost of 1980.
    near(
        at(1980.0).worth_with(&certain_answers(2)).closed_loop,
        600.0,
        1e-9,
    );
}

/// CONSTRUCTED: acting is a restoration that cannot be undone.
fn restoration(gain_now: f64) -> Waiting {
    Waiting {
        gain_now,
        chances: vec![0.7, 0.3],
        acted: vec![100.0, -20.0],
        kept: vec![60.0, 140.0],
    }
}

#[test]
fn keeping_a_choice_open_has_a_value() {
    let worth = restoration(30.0).worth_with(&certain_answers(2));
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
    assert!(!restoration(47.9).worth_with(&certain_answers(2)).acts_now());
    assert!(restoration(48.1).worth_with(&certain_answers(2)).acts_now());
}

#[test]
fn learning_that_changes_nothing_is_worth_nothing() {
    let worth = Waiting {
        gain_now: 5.0,
        chances: vec![0.7, 0.3],
        acted: vec![100.0, 90.0],
        kept: vec![60.0, 80.0],
    }
    .worth_with(&certain_answers(2));
    near(worth.open_loop, 97.0, 1e-9);
    near(worth.quasi_option, 0.0, 1e-9);
    near(worth.option, -5.0, 1e-9);
    assert!(worth.acts_now());
}

/// Learning from a signal that is right with probability q: a weak signal has no quasi-option value.
#[test]
fn a_weak_signal_has_no_quasi_option_value() {
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

/// An estimate is shown only when it exceeds its standard deviation over scrambles.
#[test]
fn estimates_within_the_noise_are_not_shown() {
    assert_eq!(info::above_noise(&[0.0; 8]), None);
    assert_eq!(info::above_noise(&[0.0, 0.0, 0.0, 1.0]), None);
    near(
        info::above_noise(&[0.9, 1.0, 1.1, 1.0]).unwrap(),
        1.0,
        1e-12,
    );
}
