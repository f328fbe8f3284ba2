//! Foundations of the answer: Sobol' points, quantiles, tails and weights.
//!
//! Reference values without another source were computed with scipy. Trees, the value of information, weights,
//! risk and sensitivity are checked in the neighbouring files.

use leavewell_model::Draft;
use leavewell_model::counsel::weigh_at_once;
use leavewell_model::identity::{Evidence, interval_with};
use leavewell_model::ledger::{FindingId, Ledger};
use leavewell_model::maths::{
    Beta, SobolBlock, TwoPiece, Z5, Z10, beta_quantile, pert_shapes, probability, probit,
    sobol_u32, tail_mean,
};
use leavewell_model::record::{Answer, Case};
use leavewell_model::terms::Kind;
use leavewell_model::terms::{Goal, Seen, Treatment};

use crate::{near, near_share, printed};

/// The probabilities of the tables of quantiles.
const AT: [f64; 11] = [
    0.001, 0.01, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 0.99, 0.999,
];

/// The first eight unscrambled points in four dimensions (Joe & Kuo 2008, table new-joe-kuo-6), as a set, because
/// the order within a power of two is free.
#[test]
fn first_points_of_the_sequence() {
    let mut expected = [
        [0.0, 0.0, 0.0, 0.0],
        [0.5, 0.5, 0.5, 0.5],
        [0.75, 0.25, 0.25, 0.25],
        [0.25, 0.75, 0.75, 0.75],
        [0.375, 0.375, 0.625, 0.875],
        [0.875, 0.875, 0.125, 0.375],
        [0.625, 0.125, 0.875, 0.625],
        [0.125, 0.625, 0.375, 0.125],
    ]
    .map(|point| point.map(|x| (x * 8.0).to_string()));
    let mut points: [[String; 4]; 8] = std::array::from_fn(|i| {
        std::array::from_fn(|d| {
            let index = u32::try_from(i).unwrap();
            (f64::from(sobol_u32(index, d)) / 4_294_967_296.0 * 8.0).to_string()
        })
    });
    expected.sort();
    points.sort();
    assert_eq!(points, expected);
}

/// Index of the cell that `u` falls in, of `cells` equal cells of [0, 1).
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // u is in (0, 1)
fn cell(u: f64, cells: usize) -> usize {
    (u * cells as f64) as usize
}

/// The property that defines a (0, m, s)-net, for each of 20 dimensions and for the first two
/// together (Niederreiter 1992).
#[test]
fn scrambled_points_stay_a_net() {
    for m in [4_u32, 8, 12] {
        let n = 1_usize << m;
        for seed in [1, 2, 20_240_511] {
            let block = SobolBlock::new(m, seed);
            for d in 0..20 {
                let mut cells: Vec<usize> = block.column(d).iter().map(|u| cell(*u, n)).collect();
                cells.sort_unstable();
                assert!(
                    cells.iter().enumerate().all(|(i, c)| i == *c),
                    "dimension {d}, m {m}, seed {seed}"
                );
            }
            let (x, y) = (block.column(0), block.column(1));
            for k in 0..=m {
                let (across, down) = (1_usize << k, 1_usize << (m - k));
                let mut boxes: Vec<usize> = x
                    .iter()
                    .zip(&y)
                    .map(|(x, y)| cell(*x, across) * down + cell(*y, down))
                    .collect();
                boxes.sort_unstable();
                boxes.dedup();
                assert_eq!(boxes.len(), n, "m {m}, seed {seed}, {across} by {down}");
            }
        }
    }
}

#[test]
fn quantiles_of_the_normal_distribution() {
    let table = [
        -3.090_232_306_167_813,
        -2.326_347_874_040_840_8,
        -1.644_853_626_951_472_9,
        -1.281_551_565_544_600_4,
        -0.674_489_750_196_081_7,
        0.0,
        0.674_489_750_196_081_7,
        1.281_551_565_544_600_4,
        1.644_853_626_951_472_2,
        2.326_347_874_040_840_8,
        3.090_232_306_167_813,
    ];
    for (u, z) in AT.iter().zip(table) {
        near(probit(*u), z, 1e-12);
    }
    for (u, z) in [
        (1e-300, -37.047_096_299_361_2),
        (1e-16, -8.222_082_216_130_435),
        (1e-10, -6.361_340_902_404_056),
        (1e-6, -4.753_424_308_822_899),
        (0.024_25, -1.972_961_051_311_885),
        (0.975_75, 1.972_961_051_311_885),
    ] {
        near_share(probit(u), z, 1e-12);
    }
    for (z, p) in [
        (-5.0, 2.866_515_718_791_933e-7),
        (-3.0, 0.001_349_898_031_630_093_3),
        (-1.0, 0.158_655_253_931_457_07),
        (0.5, 0.691_462_461_274_013_1),
        (1.96, 0.975_002_104_851_779_5),
    ] {
        near_share(probability(z), p, 1e-12);
    }
    near(Z5, probit(0.95), 1e-12);
    near(Z10, probit(0.9), 1e-12);
}

#[track_caller]
fn check_pert(low: f64, mode: f64, high: f64, quantiles: [f64; 11]) {
    let (a, b) = pert_shapes((mode - low) / (high - low));
    for (u, want) in AT.iter().zip(quantiles) {
        let got = low + (high - low) * beta_quantile(a, b, *u, f64::NAN);
        near_share(got, want, 1e-7);
    }
}

#[test]
fn quantiles_of_pert_distributions() {
    check_pert(
        100.0,
        200.0,
        400.0,
        [
            105.698_223_945_414_9,
            115.709_065_019_398_71,
            132.849_717_599_498_32,
            145.908_308_102_943_78,
            173.966_712_749_064_7,
            212.743_752_101_236_3,
            255.599_006_615_747_73,
            293.337_009_286_174_1,
            313.986_215_963_964_36,
            346.606_040_612_749_67,
            372.272_747_073_560_25,
        ],
    );
    let (a, b) = pert_shapes(1.0 / 3.0);
    near(a, 7.0 / 3.0, 1e-12);
    near(b, 11.0 / 3.0, 1e-12);
    near_share(Beta::new(a, b).cdf(1.0 / 3.0), 0.416_789_799_290_327, 1e-9);
    near_share(
        Beta::new(a, b).cdf(2.0 / 3.0),
        0.918_524_395_731_901_7,
        1e-9,
    );
    // Symmetric: Beta(3, 3), to the seven decimals of the table.
    let half = [
        0.047_551_9,
        0.105_639_8,
        0.189_255_4,
        0.246_636_5,
        0.359_436_2,
        0.5,
    ];
    for (i, want) in half.into_iter().enumerate() {
        printed(beta_quantile(3.0, 3.0, AT[i], f64::NAN), want, 7);
        printed(beta_quantile(3.0, 3.0, AT[10 - i], f64::NAN), 1.0 - want, 7);
    }
    // The mode at the lower end: Beta(1, 5) has 1 - (1 - u)^(1/5).
    let (a, b) = pert_shapes(0.0);
    printed(beta_quantile(a, b, 0.5, f64::NAN), 0.129_449_4, 7);
    near_share(
        beta_quantile(a, b, 1.0 - 0.3_f64 * 0.3 * 0.3 * 0.3 * 0.3, 0.1),
        0.7,
        1e-9,
    );
}

#[test]
fn the_incomplete_beta_function() {
    near(Beta::new(2.0, 3.0).cdf(0.4), 0.5248, 1e-12);
    printed(Beta::new(0.5, 0.5).cdf(0.3), 0.369_010_1, 7);
    printed(Beta::new(8.0, 2.0).cdf(0.9), 0.774_841_0, 7);
    printed(Beta::new(7.0 / 3.0, 11.0 / 3.0).cdf(0.5), 0.721_442_2, 7);
}

/// The lognormal distribution with 10th percentile 150 and 90th percentile 600.
#[test]
fn quantiles_of_a_range_as_entered() {
    let table = [
        56.3951, 85.2460, 123.2405, 150.0, 208.2989, 300.0, 432.0714, 600.0, 730.2794, 1055.7683,
        1595.8837,
    ];
    let range = TwoPiece::new(150.0, 300.0, 600.0, Z10);
    for (u, want) in AT.iter().zip(table) {
        printed(range.at(probit(*u)), want, 4);
    }
    // Three equal numbers are that number in every draw.
    for z in [-8.0, -1.0, 0.0, 3.0] {
        near(TwoPiece::new(70.0, 70.0, 70.0, Z10).at(z), 70.0, 1e-12);
    }
}

/// CONSTRUCTED: -100, 0, 50 and 200 with chances .05, .25, .4 and .3, as twenty equal draws; if the tail ends
/// inside an atom, the atom is split (Rockafellar & Uryasev 2002).
#[test]
fn the_mean_of_the_worst_outcomes_splits_an_atom() {
    let sample: Vec<f64> = [(-100.0, 1), (0.0, 5), (50.0, 8), (200.0, 6)]
        .into_iter()
        .flat_map(|(x, times)| std::iter::repeat_n(x, times))
        .collect();
    for (alpha, want) in [
        (0.05, -100.0),
        (0.1, -50.0),
        (0.25, -20.0),
        (0.5, 10.0),
        (1.0, 75.0),
    ] {
        near(tail_mean(&sample, alpha), want, 1e-9);
    }
}

/// Lower tail of N(100, 50^2): mean - sd phi(z)/alpha, on a net with that distribution (computed with scipy).
#[test]
fn the_mean_of_the_worst_tenth_of_a_normal_distribution() {
    let block = SobolBlock::new(14, 1);
    let sample: Vec<f64> = block
        .column(0)
        .iter()
        .map(|u| 100.0 + 50.0 * probit(*u))
        .collect();
    near(tail_mean(&sample, 0.05), -3.135_640_375, 0.05);
    near(tail_mean(&sample, 0.1), 12.250_834_034, 0.05);
    near(tail_mean(&sample, 0.25), 36.444_685_463, 0.05);
}

/// A finding recorded twice counts once.
#[test]
fn the_same_finding_twice_is_one_finding() {
    let ledger = Ledger::standard();
    let of = |ids: &[&'static str]| {
        let answers: Vec<Answer> = ids
            .iter()
            .map(|id| Answer {
                id: FindingId::parse(id).unwrap(),
                seen: Seen::Yes,
                part: None,
            })
            .collect();
        let evidence = Evidence {
            answers: &answers,
            readings: &[],
            came_from: None,
        };
        interval_with(&evidence, ledger).base
    };
    for (once, twice) in [
        (&["C01"][..], &["C01", "C01"][..]),
        (
            &["C01", "S03", "M04"][..],
            &["S03", "C01", "M04", "C01", "S03"][..],
        ),
    ] {
        for kind in Kind::ALL {
            near(of(twice).of(kind), of(once).of(kind), 1e-12);
        }
    }
}

/// Rank-order centroid weights (Barron & Barrett 1996): .4567/.2567/.1567/.09/.04 of five, and so on. The
/// score of leaving a piece alone exposes them, because leaving keeps all originality and every later choice
/// and costs nothing.
#[track_caller]
fn check_weights(goal: Goal, whole: f64, fitness: f64, stability: f64) {
    // CONSTRUCTED: a worn piece, so that fitness is neither 0 nor 1.
    let text = r#"{"format":"leavewell-case","version":1,
        "piece":{"form":"tray"},
        "findings":[{"id":"M01","answer":"seen"}],
        "parts":[{"part":"body","bleed":"much","tarnish":"black","joint":"grey_repair"}],
        "market":{"likely":300,"route":"private"}}"#;
    let (case, problems) = Draft::parse(text).unwrap().read();
    assert!(problems.is_empty());
    let mut case: Case = case;
    case.aim.goal = Some(goal);
    let report = weigh_at_once(&case, Vec::new());
    let leave = report
        .courses
        .iter()
        .find(|c| c.steps == [Treatment::Leave])
        .unwrap();
    near(leave.originality, 1.0, 1e-12);
    assert!(leave.fitness > 0.05 && leave.stability > 0.05 && leave.stability < 0.95);
    near(
        leave.score,
        whole + fitness * leave.fitness + stability * leave.stability,
        1e-6,
    );
}

#[test]
fn weights_of_the_aims() {
    // Keep and show: originality, fitness, stability, cost, later choice.
    check_weights(
        Goal::KeepShow,
        0.456_667 + 0.09 + 0.04,
        0.256_667,
        0.156_667,
    );
    // Keep and use: fitness, stability, originality, cost, later choice.
    check_weights(Goal::KeepUse, 0.156_667 + 0.09 + 0.04, 0.456_667, 0.256_667);
    // Study: originality, later choice, stability, cost.
    check_weights(Goal::Study, 0.520_833 + 0.270_833 + 0.0625, 0.0, 0.145_833);
    // Insure: originality, stability, cost.
    check_weights(Goal::Insure, 0.611_111 + 0.111_111, 0.0, 0.277_778);
}

/// The user's own weights reach the score: all weight on originality, which leaving a piece alone preserves.
#[test]
fn own_weights_reach_the_score() {
    let score = |weights: &str| {
        let text = format!(
            r#"{{"format":"leavewell-case","version":1,"piece":{{"form":"tray"}},
            "parts":[{{"part":"body","bleed":"much"}}],"market":{{"likely":300}},
            "aim":{{"goal":"keep_show"{weights}}}}}"#
        );
        let (case, problems) = Draft::parse(&text).unwrap().read();
        let report = weigh_at_once(&case, Vec::new());
        let leave = report
            .courses
            .iter()
            .find(|c| c.steps == [Treatment::Leave])
            .unwrap();
        (leave.score, problems)
    };
    let only =
        r#","weights":{"originality":100,"fitness":"0","stability":0,"cost":0,"retreatability":0}"#;
    near(score(only).0, 1.0, 1e-9);
    let (usual, none) = score("");
    assert!(none.is_empty() && usual < 0.99);
    // An unusable entry is reported, and the usual weights remain.
    let (same, problems) = score(r#","weights":{"originality":101}"#);
    near(same, usual, 0.0);
    assert_eq!(problems[0].field, "aim.weights.originality");
    let (same, problems) = score(r#","weights":"heavy""#);
    near(same, usual, 0.0);
    assert_eq!(problems[0].field, "aim.weights");
}
