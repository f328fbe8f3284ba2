//! Weights, attitude to risk and sensitivity, against closed forms, published examples and independent
//! programs. CONSTRUCTED marks invented inputs.

use leavewell_model::decide::information;
use leavewell_model::decide::risk::{
    certain, dominance, judged, regrets, tolerance_from_even_bet, worst,
};
use leavewell_model::decide::sensitivity::{Bar, share_explained, sorted};
use leavewell_model::decide::weights::{
    Acceptability, Order, acceptability, by_order, shares, simplex,
};
use leavewell_model::maths::{SobolBlock, probit};

use crate::decision_trees::perfect_information;
use crate::{near, printed};

/// Rank-order centroid weights (Barron & Barrett 1996).
#[test]
fn weights_from_a_ranking() {
    for (n, want) in [
        (3, &[0.611_111, 0.277_778, 0.111_111][..]),
        (4, &[0.520_833, 0.270_833, 0.145_833, 0.0625]),
        (5, &[0.456_667, 0.256_667, 0.156_667, 0.09, 0.04]),
    ] {
        for (got, want) in by_order(n).iter().zip(want) {
            near(*got, *want, 5.1e-7);
        }
    }
    assert!(by_order(0).is_empty());
}

/// CONSTRUCTED: swing points 100, 60 and 25; then the range of the second criterion is halved.
#[test]
fn weights_from_swings_belong_to_their_ranges() {
    let before = shares(&[100.0, 60.0, 25.0]);
    for (got, want) in before.iter().zip([0.540_541, 0.324_324, 0.135_135]) {
        printed(*got, want, 6);
    }
    let after = shares(&[before[0], 0.5 * before[1], before[2]]);
    for (got, want) in after.iter().zip([0.645_161, 0.193_548, 0.161_290]) {
        printed(*got, want, 6);
    }
    assert_eq!(shares(&[0.0, 0.0]), [0.5, 0.5]);
    assert_eq!(shares(&[f64::NAN, -3.0, 2.0]), [0.0, 0.0, 1.0]);
}

fn check(got: &Acceptability, ranks: &[&[f64]], tolerance: f64) {
    for (row, want) in got.ranks.iter().zip(ranks) {
        for (got, want) in row.iter().zip(*want) {
            near(*got, *want, tolerance);
        }
    }
}

/// CONSTRUCTED: the shares as fractions, from exact rational clipping of the triangle of weights, against a
/// sample of 2^16 weights.
#[test]
fn ranks_over_all_weights_of_two_criteria() {
    let values = [[1.0, 0.0], [0.0, 1.0], [0.6, 0.6], [0.7, 0.2]].map(|v| v.to_vec());
    let want: [&[f64]; 4] = [
        &[2.0 / 5.0, 0.1, 0.1, 2.0 / 5.0],
        &[2.0 / 5.0, 0.1, 1.0 / 30.0, 7.0 / 15.0],
        &[0.2, 0.6, 0.2, 0.0],
        &[0.0, 0.2, 2.0 / 3.0, 2.0 / 15.0],
    ];
    let sampled = acceptability(&values, &simplex(2, 16, Order::Free, 1));
    check(&sampled, &want, 1e-4);
    let centres: Vec<Option<f64>> = sampled
        .central
        .iter()
        .map(|c| c.as_ref().map(|w| w[0]))
        .collect();
    near(centres[0].unwrap(), 0.8, 1e-4);
    near(centres[1].unwrap(), 0.2, 1e-4);
    near(centres[2].unwrap(), 0.5, 1e-4);
    assert_eq!(centres[3], None);
}

#[test]
#[allow(clippy::too_many_lines)] // one worked example after another
fn ranks_over_all_weights_of_three_criteria() {
    let values = [
        [0.9, 0.2, 0.3],
        [0.5, 0.7, 0.4],
        [0.2, 0.5, 1.0],
        [0.55, 0.5, 0.55],
    ]
    .map(|v| v.to_vec());
    let free: [&[f64]; 4] = [
        &[
            3254.0 / 11997.0,
            1_050_047.0 / 23_706_072.0,
            2_318_569.0 / 19_755_060.0,
            431.0 / 760.0,
        ],
        &[
            9877.0 / 36378.0,
            9_072_449.0 / 48_382_740.0,
            1_107_503.0 / 2_687_930.0,
            49.0 / 380.0,
        ],
        &[
            1319.0 / 2914.0,
            49237.0 / 442_928.0,
            292_881.0 / 2_214_640.0,
            231.0 / 760.0,
        ],
        &[
            289.0 / 62651.0,
            899_011_181.0 / 1_368_297_840.0,
            462_974_899.0 / 1_368_297_840.0,
            0.0,
        ],
    ];
    let ordered: [&[f64]; 4] = [
        &[
            2452.0 / 3225.0,
            31021.0 / 248_325.0,
            5809.0 / 79464.0,
            1.0 / 24.0,
        ],
        &[
            22397.0 / 103_071.0,
            282_637.0 / 721_497.0,
            5531.0 / 14147.0,
            0.0,
        ],
        &[
            206.0 / 18377.0,
            1497.0 / 459_425.0,
            767.0 / 28200.0,
            23.0 / 24.0,
        ],
        &[
            12996.0 / 1_162_075.0,
            6_136_826.0 / 12_782_825.0,
            282_741.0 / 555_775.0,
            0.0,
        ],
    ];
    let centres = [
        [
            [0.650_6, 0.164_6, 0.184_7],
            [0.253_1, 0.615_0, 0.131_9],
            [0.190_4, 0.266_0, 0.543_6],
            [0.420_1, 0.282_4, 0.297_5],
        ],
        [
            [0.661_8, 0.243_3, 0.094_9],
            [0.456_5, 0.394_6, 0.148_9],
            [0.360_6, 0.329_8, 0.309_6],
            [0.416_9, 0.300_7, 0.282_4],
        ],
    ];
    let holistic = [
        [0.339_886, 0.533_862, 0.570_833, 0.555_418],
        [0.867_958, 0.608_777, 0.022_448, 0.500_817],
    ];
    let first_beats = [
        [0.0, 0.355_555_555_6, 0.35, 0.314_102_564_1],
        [0.0, 0.761_904_761_9, 0.958_333_333_3, 0.883_636_363_6],
    ];
    let samples = [(Order::Free, free), (Order::Falling, ordered)];
    for (i, (order, want)) in samples.into_iter().enumerate() {
        let sampled = acceptability(&values, &simplex(3, 16, order, 1));
        check(&sampled, &want, 5e-4);
        // A centre is a mean over the weights that put the option first, so the smaller their share, the
        // rougher the estimate.
        for (option, want) in centres[i].into_iter().enumerate() {
            let rough = (2e-4 / sampled.ranks[option][0]).max(1e-3);
            for (g, w) in sampled.central[option].as_ref().unwrap().iter().zip(want) {
                near(*g, w, rough);
            }
        }
        for (got, want) in sampled.holistic().iter().zip(holistic[i]) {
            near(*got, want, 5e-4);
        }
        for (got, want) in sampled.beats[0].iter().zip(first_beats[i]) {
            near(*got, want, 5e-4);
        }
    }
}

/// Certainty equivalents: the closed form for the normal distribution, and CONSTRUCTED small cases (numpy).
#[test]
fn certainty_equivalents() {
    let block = SobolBlock::new(16, 3);
    let z: Vec<f64> = block.column(0).iter().map(|u| probit(*u)).collect();
    for (mean, sd, tolerance, want) in [
        (100.0, 50.0, 100.0, 87.5),
        (100.0, 50.0, 1000.0, 98.75),
        (500.0, 200.0, 500.0, 460.0),
        (0.0, 10.0, 20.0, -2.5),
    ] {
        let draws: Vec<f64> = z.iter().map(|z| mean + sd * z).collect();
        near(certain(&draws, &[], tolerance), want, 0.001 * sd);
    }
    let (x, p) = ([100.0, 200.0, 400.0], [0.2, 0.5, 0.3]);
    for (tolerance, want) in [
        (50.0, 165.761_74),
        (100.0, 191.910_51),
        (500.0, 228.085_97),
        (10_000.0, 239.381_09),
        (f64::INFINITY, 240.0),
        (0.0, 240.0),
    ] {
        near(certain(&x, &p, tolerance), want, 5.1e-6);
    }
    // Large sums do not overflow.
    near(certain(&[-1e6, -1e6], &[], 1.0), -1e6, 1e-6);
    printed(1.0 / tolerance_from_even_bet(1.0), 0.962_424, 6);
}

/// A triangular distribution from 100 over 200 to 400 at constant tolerance (scipy quadrature).
#[test]
fn the_certainty_equivalent_of_a_triangular_distribution() {
    let block = SobolBlock::new(14, 3);
    let draws: Vec<f64> = block
        .column(0)
        .iter()
        .map(|u| {
            if *u < 1.0 / 3.0 {
                100.0 + (u * 30_000.0).sqrt()
            } else {
                400.0 - ((1.0 - u) * 60_000.0).sqrt()
            }
        })
        .collect();
    for (tolerance, want) in [(50.0, 200.855_49), (100.0, 215.396_78), (500.0, 229.496_68)] {
        near(certain(&draws, &[], tolerance), want, 0.01);
    }
}

/// Value and mean of the worst share, for distributions with closed forms on 2^16 equal steps of probability.
#[test]
#[allow(clippy::disallowed_methods)]
fn the_worst_share_has_its_closed_forms() {
    let u: Vec<f64> = (0..65_536)
        .map(|i| (f64::from(i) + 0.5) / 65_536.0)
        .collect();
    let of = |f: &dyn Fn(f64) -> f64| u.iter().map(|u| f(*u)).collect::<Vec<f64>>();
    let normal = of(&|u| 100.0 + 50.0 * probit(u));
    let lognormal = of(&|u| (5.0 + 0.5 * probit(u)).exp());
    let uniform = of(&|u| u);
    let exponential = of(&|u| -(1.0 - u).ln());
    for (draws, alpha, edge, tail) in [
        (&normal, 0.05, 17.7573, -3.135_64),
        (&normal, 0.1, 35.9224, 12.2508),
        (&normal, 0.25, 66.2755, 36.4447),
        (&lognormal, 0.05, 65.2074, 53.7561),
        (&lognormal, 0.1, 78.1964, 62.9160),
        (&lognormal, 0.25, 105.9275, 80.7905),
        (&uniform, 0.05, 0.05, 0.025),
        (&uniform, 0.25, 0.25, 0.125),
        (&exponential, 0.05, 0.051_293_3, 0.025_427_4),
        (&exponential, 0.1, 0.105_360_5, 0.051_755_4),
        (&exponential, 0.25, 0.287_682_1, 0.136_953_8),
    ] {
        let (got_edge, got_tail) = worst(draws, &[], alpha);
        near(got_edge, edge, 6e-4 * edge.abs().max(0.5));
        near(got_tail, tail, 3e-4 * tail.abs().max(10.0));
    }
    // CONSTRUCTED, with unequal chances: if the share ends inside an atom, the atom is split.
    let (x, p) = ([-100.0, 0.0, 50.0, 200.0], [0.05, 0.25, 0.4, 0.3]);
    for (alpha, want) in [
        (0.05, -100.0),
        (0.1, -50.0),
        (0.25, -20.0),
        (0.5, 10.0),
        (1.0, 75.0),
    ] {
        near(worst(&x, &p, alpha).1, want, 1e-9);
    }
}

/// CONSTRUCTED: which of two risks is better whatever the attitude to risk.
#[test]
fn dominance_of_one_risk_over_another() {
    let d = dominance(&[1.0, 4.0, 6.0], &[1.0, 3.0, 5.0]);
    assert!(d.first && d.second && d.against == 0.0);
    let d = dominance(&[2.0, 4.0], &[1.0, 5.0]);
    assert!(!d.first && d.second);
    near(d.against, 0.5, 1e-12);
    let d = dominance(&[1.0, 10.0], &[2.0, 3.0]);
    assert!(!d.first && !d.second);
    near(d.against, 0.125, 1e-12);
    // Normal distributions: first-order dominance needs an equal standard deviation, second-order one that is
    // no greater.
    let net = SobolBlock::new(10, 4);
    let normal = |mean: f64, sd: f64| -> Vec<f64> {
        net.column(0)
            .iter()
            .map(|u| mean + sd * probit(*u))
            .collect()
    };
    let order = |a: &[f64], b: &[f64]| {
        let d = dominance(a, b);
        (d.first, d.second)
    };
    assert_eq!(order(&normal(10.0, 3.0), &normal(9.0, 3.0)), (true, true));
    assert_eq!(order(&normal(10.0, 2.0), &normal(10.0, 3.0)), (false, true));
    assert_eq!(order(&normal(10.0, 4.0), &normal(9.0, 3.0)), (false, false));
}

/// CONSTRUCTED: three acts in three states.
#[test]
fn the_least_mean_regret_is_the_value_of_perfect_information() {
    let pays: [&[f64]; 3] = [
        &[60.0, 60.0, 60.0],
        &[100.0, 40.0, -20.0],
        &[180.0, 20.0, -120.0],
    ];
    let chances = [0.4, 0.35, 0.25];
    let table = regrets(&pays);
    let expected: Vec<f64> = table
        .iter()
        .map(|row| information::now(&chances, &[row]))
        .collect();
    for (got, want) in expected.iter().zip([48.0, 59.0, 59.0]) {
        near(*got, want, 1e-9);
    }
    let greatest = table
        .iter()
        .map(|row| row.iter().copied().fold(0.0, f64::max));
    for (got, want) in greatest.zip([120.0, 80.0, 180.0]) {
        near(got, want, 1e-9);
    }
    near(perfect_information(&chances, &pays), 48.0, 1e-9);
    // With equal chances, the first act is best by the mean, the second by the greatest regret.
    let ways = judged(&pays, 50.0, 0.34);
    assert_eq!(
        (ways.mean, ways.certain, ways.worst, ways.regret),
        (0, 0, 0, 1)
    );
    let only = judged(&pays[..1], 50.0, 0.1);
    assert_eq!(
        (only.mean, only.certain, only.worst, only.regret),
        (0, 0, 0, 0)
    );
}

fn angle(u: f64) -> f64 {
    core::f64::consts::PI * (2.0 * u - 1.0)
}

/// The first-order indices of Ishigami's function with a = 7 and b = 0.1 have a closed form (Ishigami & Homma
/// 1990). Estimates from 2^12 draws in 32 bins are a little low, because they miss the variation within a
/// bin.
#[test]
#[allow(clippy::disallowed_methods)]
fn share_explained_by_each_input_of_ishigami() {
    let f = |u: &[f64]| {
        let (a, b, c) = (angle(u[0]), angle(u[1]), angle(u[2]));
        let fourth = c * c * c * c;
        a.sin() + 7.0 * b.sin() * b.sin() + 0.1 * fourth * a.sin()
    };
    let block = SobolBlock::new(12, 9);
    let inputs: Vec<Vec<f64>> = (0..3).map(|d| block.column(d)).collect();
    let out: Vec<f64> = (0..block.len())
        .map(|i| f(&[inputs[0][i], inputs[1][i], inputs[2][i]]))
        .collect();
    for (d, want) in [0.313_905, 0.442_411, 0.0].into_iter().enumerate() {
        near(share_explained(&inputs[d], &out).unwrap(), want, 0.012);
    }
}

/// Product of two normal inputs with means 3 and 2 and standard deviations 1 and 1/2: 8/13 and 9/26.
#[test]
fn share_explained_by_each_factor_of_a_product() {
    let block = SobolBlock::new(12, 9);
    let first: Vec<f64> = block.column(0).iter().map(|u| 3.0 + probit(*u)).collect();
    let second: Vec<f64> = block
        .column(1)
        .iter()
        .map(|u| 2.0 + 0.5 * probit(*u))
        .collect();
    let out: Vec<f64> = first.iter().zip(&second).map(|(x, y)| x * y).collect();
    near(share_explained(&first, &out).unwrap(), 8.0 / 13.0, 0.01);
    near(share_explained(&second, &out).unwrap(), 9.0 / 26.0, 0.01);
}

/// A constant output has no variance to explain.
#[test]
fn a_constant_has_no_explained_share() {
    assert_eq!(share_explained(&[1.0, 2.0, 3.0], &[5.0; 3]), None);
}

/// CONSTRUCTED: value times what is kept, minus cost, minus probability times loss; each input at its low and
/// high end, as bars of a tornado chart.
#[test]
fn bars_of_a_tornado_are_sorted_by_length() {
    let ends = [
        (92.5, 475.0),
        (160.0, 260.0),
        (250.0, 150.0),
        (242.5, 190.0),
        (234.0, 190.0),
    ];
    let mut bars: Vec<Bar> = [4, 2, 0, 3, 1]
        .map(|input: usize| Bar {
            input,
            at_low: ends[input].0,
            at_high: ends[input].1,
        })
        .into();
    sorted(&mut bars);
    // The second and third are equally long and keep the order of the inputs.
    let order: Vec<usize> = bars.iter().map(|b| b.input).collect();
    assert_eq!(order, [0, 1, 2, 3, 4]);
    // Against a next-best option worth 200 every bar crosses; at 240 the last one does not.
    assert!(bars.iter().all(|b| b.crosses(200.0)));
    let crossing: Vec<bool> = bars.iter().map(|b| b.crosses(240.0)).collect();
    assert_eq!(crossing, [true, true, true, true, false]);
    assert!(!bars[4].crosses(190.0));
    // A difference in the last digit is rounding, not an order.
    let mut even = [(1, 0.3), (0, 0.1 + 0.2)].map(|(input, at_high)| Bar {
        input,
        at_low: 0.0,
        at_high,
    });
    sorted(&mut even);
    assert_eq!(even.map(|b| b.input), [0, 1]);
}
