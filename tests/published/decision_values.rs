//! Weights, attitude to risk and sensitivity, against closed forms, published examples and independent
//! programs. CONSTRUCTED marks invented inputs.

use leavewell_model::decide::risk::{
    certain, certain_of_wealth, dominance, judged, least_regret, regrets, tolerance_from_even_bet,
    worst,
};
use leavewell_model::decide::sensitivity::{indices, share_explained, tornado};
use leavewell_model::decide::weights::{
    Acceptability, acceptability, by_order, by_rank_reciprocal, by_rank_sum, efficient,
    exact_acceptability, exponential_value, multiplicative_k, shares, simplex, switch_point,
};
use leavewell_model::decide::{information, risk};
use leavewell_model::maths::{SobolBlock, probit};

use crate::{near, printed};

/// Surrogate weights (Barron & Barrett 1996; Stillwell, Seaver & Edwards 1981).
#[test]
fn weights_from_an_order_alone() {
    for (n, want) in [
        (3, &[0.611_111, 0.277_778, 0.111_111][..]),
        (4, &[0.520_833, 0.270_833, 0.145_833, 0.0625]),
        (5, &[0.456_667, 0.256_667, 0.156_667, 0.09, 0.04]),
    ] {
        for (got, want) in by_order(n).iter().zip(want) {
            near(*got, *want, 5.1e-7);
        }
    }
    for (got, want) in by_rank_sum(4).iter().zip([0.4, 0.3, 0.2, 0.1]) {
        near(*got, want, 1e-12);
    }
    for (got, want) in by_rank_reciprocal(4).iter().zip([0.48, 0.24, 0.16, 0.12]) {
        near(*got, want, 1e-12);
    }
    assert!(by_order(0).is_empty());
}

/// CONSTRUCTED: swing points 100, 60 and 25; then the second thing's range is halved.
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
    near(switch_point([0.9, 0.2], [0.4, 0.7]).unwrap(), 0.5, 1e-12);
    assert_eq!(switch_point([0.9, 0.7], [0.4, 0.2]), None);
}

/// Exponential scales and the multiplicative constant (Keeney & Raiffa 1976); computed with scipy.
#[test]
fn scales_that_bend() {
    for (z, want) in [
        (0.25, [0.455_054, 0.349_932, 0.298_633, 0.165_296]),
        (0.5, [0.731_059, 0.622_459, 0.562_177, 0.377_541]),
        (0.75, [0.898_464, 0.834_704, 0.794_752, 0.650_068]),
    ] {
        for (r, want) in [0.5, 1.0, 2.0, -1.0].into_iter().zip(want) {
            printed(exponential_value(z, r), want, 6);
        }
        for r in [0.0, 1e12, f64::INFINITY, f64::NAN] {
            near(exponential_value(z, r), z, 1e-12);
        }
    }
    near(
        multiplicative_k(&[0.5, 0.4, 0.3]).unwrap(),
        -0.451_562_85,
        5e-9,
    );
    near(
        multiplicative_k(&[0.3, 0.2, 0.1]).unwrap(),
        3.109_099_89,
        5e-9,
    );
    for none in [&[0.5, 0.5][..], &[0.4], &[], &[1.0, 0.2]] {
        assert_eq!(multiplicative_k(none), None);
    }
}

/// Choosing an office (Goodwin & Wright, Decision Analysis for Management Judgment): the printed totals,
/// and the offices no other beats on both benefit and cost.
#[test]
fn choosing_an_office() {
    let weights = [0.32, 0.26, 0.23, 0.1, 0.06, 0.03];
    let offices = [
        [100.0, 60.0, 100.0, 75.0, 0.0, 90.0],
        [20.0, 80.0, 10.0, 30.0, 100.0, 30.0],
        [80.0, 70.0, 0.0, 0.0, 10.0, 100.0],
        [70.0, 50.0, 30.0, 55.0, 30.0, 90.0],
        [40.0, 60.0, 90.0, 100.0, 60.0, 70.0],
        [0.0, 0.0, 70.0, 0.0, 80.0, 0.0],
        [60.0, 100.0, 20.0, 50.0, 50.0, 80.0],
    ];
    let totals: Vec<f64> = offices
        .iter()
        .map(|o| information::now(&weights, &[o]))
        .collect();
    for (got, want) in totals
        .iter()
        .zip([80.8, 39.4, 47.4, 52.3, 64.8, 20.9, 60.2])
    {
        near(*got, want, 1e-9);
    }
    let costs = [30.0, 15.0, 5.0, 12.0, 30.0, 15.0, 10.0];
    assert_eq!(efficient(&totals, &costs), [0, 2, 6]);
}

fn check(got: &Acceptability, ranks: &[&[f64]], tolerance: f64) {
    for (row, want) in got.ranks.iter().zip(ranks) {
        for (got, want) in row.iter().zip(*want) {
            near(*got, *want, tolerance);
        }
    }
}

/// CONSTRUCTED: the shares as fractions, from exact rational clipping of the triangle of weights.
#[test]
fn ranks_over_all_weights_of_two_things() {
    let values = [[1.0, 0.0], [0.0, 1.0], [0.6, 0.6], [0.7, 0.2]].map(|v| v.to_vec());
    let want: [&[f64]; 4] = [
        &[2.0 / 5.0, 0.1, 0.1, 2.0 / 5.0],
        &[2.0 / 5.0, 0.1, 1.0 / 30.0, 7.0 / 15.0],
        &[0.2, 0.6, 0.2, 0.0],
        &[0.0, 0.2, 2.0 / 3.0, 2.0 / 15.0],
    ];
    let exact = exact_acceptability(&values, false).unwrap();
    check(&exact, &want, 1e-12);
    let centres: Vec<Option<f64>> = exact
        .central
        .iter()
        .map(|c| c.as_ref().map(|w| w[0]))
        .collect();
    near(centres[0].unwrap(), 0.8, 1e-12);
    near(centres[1].unwrap(), 0.2, 1e-12);
    near(centres[2].unwrap(), 0.5, 1e-12);
    assert_eq!(centres[3], None);
    check(
        &acceptability(&values, &simplex(2, 16, false, 1)),
        &want,
        0.001,
    );
}

#[test]
#[allow(clippy::too_many_lines)] // one worked example after another
fn ranks_over_all_weights_of_three_things() {
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
    for (i, (in_order, want)) in [(false, free), (true, ordered)].into_iter().enumerate() {
        let exact = exact_acceptability(&values, in_order).unwrap();
        check(&exact, &want, 1e-12);
        for (got, want) in exact.central.iter().zip(centres[i]) {
            for (g, w) in got.as_ref().unwrap().iter().zip(want) {
                printed(*g, w, 4);
            }
        }
        for (got, want) in exact.holistic().iter().zip(holistic[i]) {
            printed(*got, want, 6);
        }
        for (got, want) in exact.beats[0].iter().zip(first_beats[i]) {
            near(*got, want, 1e-9);
        }
        check(
            &acceptability(&values, &simplex(3, 16, in_order, 1)),
            &want,
            0.001,
        );
    }
    assert_eq!(exact_acceptability(&vec![vec![1.0; 4]; 3], false), None);
    assert_eq!(exact_acceptability(&vec![vec![1.0, 0.0]; 7], false), None);
}

/// Certainty equivalents: closed form for the normal law, and CONSTRUCTED small cases (numpy).
#[test]
fn what_a_risk_is_worth_for_sure() {
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
    for (aversion, want) in [
        (0.0, 240.0),
        (0.5, 227.137_08),
        (1.0, 214.354_69),
        (2.0, 190.476_19),
        (5.0, 144.022_63),
    ] {
        near(certain_of_wealth(&x, &p, aversion).unwrap(), want, 5.1e-6);
    }
    assert_eq!(certain_of_wealth(&[0.0, 5.0], &[], 1.0), None);
    // Lognormal: exp(m + (1 - g) s^2/2).
    let log: Vec<f64> = z.iter().map(|z| libm_exp(5.0 + 0.5 * z)).collect();
    for (aversion, want) in [
        (0.0, 168.174_14),
        (0.5, 157.984_99),
        (1.0, 148.413_16),
        (2.0, 130.974_15),
        (4.0, 102.002_77),
    ] {
        near(certain_of_wealth(&log, &[], aversion).unwrap(), want, 0.02);
    }
    // Sums far from 0 do not overflow.
    near(certain(&[-1e6, -1e6], &[], 1.0), -1e6, 1e-6);
    printed(1.0 / tolerance_from_even_bet(1.0), 0.962_424, 6);
}

#[allow(clippy::disallowed_methods)] // a test may ask the machine
fn libm_exp(x: f64) -> f64 {
    x.exp()
}

/// A triangular law from 100 over 200 to 400 at constant tolerance (scipy quadrature).
#[test]
fn a_triangular_risk() {
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

/// The worst share of laws with closed forms, on 2^16 even steps of each (value and mean of the tail).
#[test]
#[allow(clippy::disallowed_methods)]
fn the_worst_share() {
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
    // CONSTRUCTED, with chances of their own: an atom is split where the share ends inside it.
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

/// CONSTRUCTED: which of two risks is better whatever one's taste.
#[test]
fn one_risk_beside_another() {
    let d = dominance(&[1.0, 4.0, 6.0], &[1.0, 3.0, 5.0]);
    assert!(d.first && d.second && d.against == 0.0);
    let d = dominance(&[2.0, 4.0], &[1.0, 5.0]);
    assert!(!d.first && d.second);
    near(d.against, 0.5, 1e-12);
    let d = dominance(&[1.0, 10.0], &[2.0, 3.0]);
    assert!(!d.first && !d.second);
    near(d.against, 0.125, 1e-12);
    // Normal laws: the first order needs equal spread, the second no greater one.
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
fn regret_and_what_knowing_is_worth_are_one() {
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
    let (act, regret) = least_regret(&pays);
    assert_eq!(act, 1);
    near(regret, 80.0, 1e-9);
    near(information::of_state(&chances, &pays), 48.0, 1e-9);
    // Equal chances: by the mean the first, by the greatest regret the second.
    let ways = judged(&pays, 50.0, 0.34);
    assert_eq!(
        (ways.mean, ways.certain, ways.worst, ways.regret),
        (0, 0, 0, 1)
    );
    assert!(!ways.agree());
    assert!(risk::judged(&pays[..1], 50.0, 0.1).agree());
}

fn angle(u: f64) -> f64 {
    core::f64::consts::PI * (2.0 * u - 1.0)
}

/// Ishigami's function, a = 7 and b = 0.1 (Ishigami & Homma 1990): closed form, and the tolerance that a
/// widely used Python library (`SALib` 1.6.0) keeps with as many points.
#[test]
#[allow(clippy::disallowed_methods)]
fn indices_of_ishigami() {
    let f = |u: &[f64]| {
        let (a, b, c) = (angle(u[0]), angle(u[1]), angle(u[2]));
        let fourth = c * c * c * c;
        a.sin() + 7.0 * b.sin() * b.sin() + 0.1 * fourth * a.sin()
    };
    let got = indices(&f, 3, 12, 1).unwrap();
    for (g, want) in got.first.iter().zip([0.313_905, 0.442_411, 0.0]) {
        near(*g, want, 0.01);
    }
    for (g, want) in got.total.iter().zip([0.557_589, 0.442_411, 0.243_684]) {
        near(*g, want, 0.01);
    }
    // From draws alone: what one input explains by itself.
    let block = SobolBlock::new(12, 9);
    let inputs: Vec<Vec<f64>> = (0..3).map(|d| block.column(d)).collect();
    let out: Vec<f64> = (0..block.len())
        .map(|i| f(&[inputs[0][i], inputs[1][i], inputs[2][i]]))
        .collect();
    for (d, want) in [0.313_905, 0.442_411, 0.0].into_iter().enumerate() {
        near(share_explained(&inputs[d], &out).unwrap(), want, 0.02);
    }
}

/// The g-function (Sobol' 1998): V(i) = 1/(3 (1 + a)^2).
#[test]
fn indices_of_the_g_function() {
    for (a, first, total) in [
        (
            &[0.0, 1.0, 4.5, 9.0, 99.0, 99.0, 99.0, 99.0][..],
            &[
                0.716_192, 0.179_048, 0.023_676, 0.007_162, 7e-5, 7e-5, 7e-5, 7e-5,
            ][..],
            &[
                0.787_144, 0.242_198, 0.034_317, 0.010_460, 1e-4, 1e-4, 1e-4, 1e-4,
            ][..],
        ),
        (
            &[0.0, 1.0, 9.0],
            &[0.741_962, 0.185_491, 0.007_420],
            &[0.806_472, 0.248_145, 0.010_717],
        ),
        (&[0.5; 3], &[0.288_484; 3], &[0.380_293; 3]),
    ] {
        let f = |u: &[f64]| {
            u.iter()
                .zip(a)
                .map(|(u, a)| ((4.0 * u - 2.0).abs() + a) / (1.0 + a))
                .product()
        };
        let got = indices(&f, a.len(), 12, 1).unwrap();
        for (g, want) in got.first.iter().zip(first) {
            near(*g, *want, 0.01);
        }
        for (g, want) in got.total.iter().zip(total) {
            near(*g, *want, 0.01);
        }
    }
}

/// Product of two normal inputs, means 3 and 2, standard deviations 1 and 1/2: 8/13 and 9/26.
#[test]
fn indices_of_a_product() {
    let f = |u: &[f64]| (3.0 + probit(u[0])) * (2.0 + 0.5 * probit(u[1]));
    let got = indices(&f, 2, 12, 1).unwrap();
    near(got.first[0], 8.0 / 13.0, 0.01);
    near(got.first[1], 9.0 / 26.0, 0.01);
    near(got.total[0], 8.0 / 13.0 + 1.0 / 26.0, 0.01);
}

/// A known trap of sensitivity libraries: dividing by a variance of nothing.
#[test]
fn a_constant_has_no_indices() {
    assert_eq!(indices(&|_| 4.0, 3, 8, 1), None);
    assert_eq!(indices(&|u| u[0], 0, 8, 1), None);
    assert_eq!(indices(&|u| u[0], 17, 8, 1), None);
    assert_eq!(share_explained(&[1.0, 2.0, 3.0], &[5.0; 3]), None);
}

/// CONSTRUCTED: value times what is kept, less cost, less the chance of a loss.
#[test]
fn a_tornado_in_order() {
    let f = |x: &[f64]| x[0] * x[1] - x[2] - x[3] * x[4];
    let bars = tornado(
        &f,
        &[400.0, 0.85, 90.0, 0.2, 150.0],
        &[250.0, 0.7, 60.0, 0.05, 80.0],
        &[700.0, 0.95, 160.0, 0.4, 300.0],
    );
    let want = [
        (0, 92.5, 475.0),
        (1, 160.0, 260.0),
        (2, 250.0, 150.0),
        (3, 242.5, 190.0),
        (4, 234.0, 190.0),
    ];
    for (bar, (input, low, high)) in bars.iter().zip(want) {
        assert_eq!(bar.input, input);
        near(bar.at_low, low, 1e-9);
        near(bar.at_high, high, 1e-9);
    }
    // Shares of the sum of squared swings.
    let all: f64 = bars.iter().map(|b| b.swing() * b.swing()).sum();
    for (bar, share) in bars.iter().zip([0.8556, 0.0585, 0.0585, 0.0161, 0.0113]) {
        printed(bar.swing() * bar.swing() / all, share, 4);
    }
    // Against a next-best option worth 200: value, keep, cost, p and loss all cross; at 240 not the last.
    assert!(bars.iter().all(|b| b.crosses(200.0)));
    let crossing: Vec<bool> = bars.iter().map(|b| b.crosses(240.0)).collect();
    assert_eq!(crossing, [true, true, true, true, false]);
    assert!(!bars[4].crosses(190.0));
}
