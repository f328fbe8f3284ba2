//! Planning a stock: public knapsack instances, and invented ones that two independent solvers agree on.
//!
//! `KNAPSACK_01` instances P01 to P08 (a public collection; data of P05, P06 and P08 from memory, every optimum
//! worked out again by dynamic programming or by trying all selections); OR-Library, mknap1, first problem (Petersen
//! 1967, Operations Research 15:1104; Beasley 1990, Journal of the Operational Research Society 41:1069).
//! CONSTRUCTED marks invented inputs, which are no evidence of anything: their optima were found by trying every
//! selection, and again by a constraint solver (OR-tools CP-SAT).

// Whole and half numbers: sums of them are exact.
#![allow(clippy::float_cmp)]

use leavewell_model::decide::stock::{MOST_HELD, Need, Selection, StockChoice, select};

/// Items to take or leave, with their weight in each constraint.
fn items<const K: usize>(profits: &[f64], rows: [&[f64]; K]) -> Vec<Vec<StockChoice<K>>> {
    let choice = |gain, uses| StockChoice {
        gain,
        uses,
        keeps: 0.0,
    };
    profits
        .iter()
        .enumerate()
        .map(|(item, profit)| {
            let weights = std::array::from_fn(|k| rows[k][item]);
            vec![choice(0.0, [0.0; K]), choice(*profit, weights)]
        })
        .collect()
}

fn best<const K: usize>(
    pieces: &[Vec<StockChoice<K>>],
    needs: &[Need],
    limits: [f64; K],
) -> Selection<K> {
    let found = select(pieces, needs, limits, MOST_HELD).expect("sound");
    assert!(found.is_best(), "searched to the end: {found:?}");
    let uses: [f64; K] = std::array::from_fn(|k| {
        let taken = pieces.iter().zip(&found.picks);
        taken.map(|(choices, pick)| choices[*pick].uses[k]).sum()
    });
    assert_eq!(uses, found.uses);
    assert!(uses.iter().zip(limits).all(|(u, l)| *u <= l));
    found
}

fn taken<const K: usize>(found: &Selection<K>) -> String {
    found.picks.iter().map(ToString::to_string).collect()
}

/// Capacity, weights, profits, optimum, and the one selection that reaches it.
type Instance = (f64, &'static [f64], &'static [f64], f64, &'static str);

const KNAPSACK_01: [Instance; 8] = [
    (
        165.0,
        &[23., 31., 29., 44., 53., 38., 63., 85., 89., 82.],
        &[92., 57., 49., 68., 60., 43., 67., 84., 87., 72.],
        309.0,
        "1111010000",
    ),
    (
        26.0,
        &[12., 7., 11., 8., 9.],
        &[24., 13., 23., 15., 16.],
        51.0,
        "01110",
    ),
    (
        190.0,
        &[56., 59., 80., 64., 75., 17.],
        &[50., 50., 64., 46., 50., 5.],
        150.0,
        "110010",
    ),
    (
        50.0,
        &[31., 10., 20., 19., 4., 3., 6.],
        &[70., 20., 39., 37., 7., 5., 10.],
        107.0,
        "1001000",
    ),
    (
        104.0,
        &[25., 35., 45., 5., 25., 3., 2., 2.],
        &[350., 400., 450., 20., 70., 8., 5., 5.],
        900.0,
        "10111011",
    ),
    (
        170.0,
        &[41., 50., 49., 59., 55., 57., 60.],
        &[442., 525., 511., 593., 546., 564., 617.],
        1735.0,
        "0101001",
    ),
    (
        750.0,
        &[
            70., 73., 77., 80., 82., 87., 90., 94., 98., 106., 110., 113., 115., 118., 120.,
        ],
        &[
            135., 139., 149., 150., 156., 163., 173., 184., 192., 201., 210., 214., 221., 229.,
            240.,
        ],
        1458.0,
        "101010111000011",
    ),
    (
        6_404_180.0,
        &[
            382_745., 799_601., 909_247., 729_069., 467_902., 44_328., 34_610., 698_150., 823_460.,
            903_959., 853_665., 551_830., 610_856., 670_702., 488_960., 951_111., 323_046.,
            446_298., 931_161., 31_385., 496_951., 264_724., 224_916., 169_684.,
        ],
        &[
            825_594., 1_677_009., 1_676_628., 1_523_970., 943_972., 97_426., 69_666., 1_296_457.,
            1_679_693., 1_902_996., 1_844_992., 1_049_289., 1_252_836., 1_319_836., 953_277.,
            2_067_538., 675_367., 853_655., 1_826_027., 65_731., 901_489., 577_243., 466_257.,
            369_261.,
        ],
        13_549_094.0,
        "110111000110100100000111",
    ),
];

#[test]
fn public_instances_with_one_budget_reach_their_optimum() {
    for (capacity, weights, profits, optimum, selection) in KNAPSACK_01 {
        let found = best(&items(profits, [weights]), &[], [capacity]);
        assert_eq!((found.gain, taken(&found).as_str()), (optimum, selection));
    }
}

/// The bound at the best price is the one from taking items in order of profit per weight, and a part of the
/// first that does not fit (Dantzig 1957, Operations Research 5:266).
#[test]
fn the_price_of_a_budget_is_the_profit_per_weight_of_what_fits_in_part() {
    let (capacity, weights, profits, optimum, _) = KNAPSACK_01[6];
    let found = best(&items(profits, [weights]), &[], [capacity]);
    let mut order: Vec<usize> = (0..weights.len()).collect();
    order.sort_by(|a, b| (profits[*b] / weights[*b]).total_cmp(&(profits[*a] / weights[*a])));
    let mut left = capacity;
    let in_part = order.into_iter().find(|item| {
        left -= weights[*item];
        left < 0.0
    });
    let in_part = in_part.expect("not all fit");
    let price = profits[in_part] / weights[in_part];
    assert!((found.prices[0] - price).abs() < 1e-6, "{:?}", found.prices);
    // As printed by the collection's own relaxation: 1461.504.
    let whole: f64 = (profits.iter().zip(weights))
        .map(|(p, w)| (p - price * w).max(0.0))
        .sum::<f64>()
        + price * capacity;
    assert!((whole - 1_461.504_347_826).abs() < 1e-6 && whole >= optimum);
}

#[test]
fn ten_budgets_at_once_reach_the_published_optimum() {
    let found = best(
        &items(
            &[100., 600., 1200., 2400., 500., 2000.],
            [
                &[8., 12., 13., 64., 22., 41.],
                &[8., 12., 13., 75., 22., 41.],
                &[3., 6., 4., 18., 6., 4.],
                &[5., 10., 8., 32., 6., 12.],
                &[5., 13., 8., 42., 6., 20.],
                &[5., 13., 8., 48., 6., 20.],
                &[0., 0., 0., 0., 8., 0.],
                &[3., 0., 4., 0., 8., 0.],
                &[3., 2., 4., 0., 8., 4.],
                &[3., 2., 4., 8., 8., 4.],
            ],
        ),
        &[],
        [80., 96., 20., 36., 44., 48., 10., 18., 22., 24.],
    );
    assert_eq!((found.gain, taken(&found).as_str()), (3800.0, "011001"));
}

/// CONSTRUCTED: some items need others.
#[test]
fn an_item_is_taken_only_with_what_it_needs() {
    let pieces = items(&[2., 7., 9., 1., 12., 4.], [&[3., 2., 4., 1., 5., 2.]]);
    let need = |piece, of| Need {
        piece,
        choices: vec![1],
        of,
        one_of: vec![1],
    };
    let needs = [need(1, 0), need(2, 0), need(4, 3), need(5, 1)];
    let found = best(&pieces, &needs, [10.0]);
    assert_eq!((found.gain, taken(&found).as_str()), (19.0, "111100"));
    assert_eq!(best(&pieces, &[], [10.0]).gain, 24.0);
}

/// CONSTRUCTED: five pieces; for each choice gain, money, hours. Leaving alone comes first.
fn five_pieces() -> Vec<Vec<StockChoice<2>>> {
    let all: [&[(f64, f64, f64)]; 5] = [
        &[
            (0., 0., 0.),
            (60., 15., 2.),
            (140., 70., 3.),
            (190., 80., 5.),
            (95., 160., 1.),
        ],
        &[(0., 0., 0.), (35., 10., 1.), (110., 60., 4.)],
        &[(0., 0., 0.), (80., 25., 3.), (30., 220., 1.)],
        &[(0., 0., 0.), (40., 12., 1.5), (65., 55., 2.)],
        &[(0., 0., 0.), (55., 20., 2.5), (120., 75., 3.5)],
    ];
    all.iter()
        .map(|choices| {
            let made = |(gain, money, hours): &(f64, f64, f64)| StockChoice {
                gain: *gain,
                uses: [*money, *hours],
                keeps: 0.0,
            };
            choices.iter().map(made).collect()
        })
        .collect()
}

#[test]
fn two_budgets_reach_the_optimum_found_by_trying_everything() {
    let pieces = five_pieces();
    // The second piece is cleaned only if the third is.
    let need = [Need {
        piece: 1,
        choices: vec![1],
        of: 2,
        one_of: vec![1],
    }];
    for (money, hours, gain) in [
        (100.0, 8.0, 245.0),
        (200.0, 8.0, 300.0),
        (200.0, 12.0, 415.0),
        (300.0, 14.0, 465.0),
        (135.0, 7.0, 255.0),
        (80.0, 4.0, 175.0),
        (100.0, 6.0, 225.0),
    ] {
        assert_eq!(best(&pieces, &[], [money, hours]).gain, gain);
    }
    for (money, hours, gain) in [(80.0, 4.0, 140.0), (100.0, 6.0, 220.0)] {
        assert_eq!(best(&pieces, &need, [money, hours]).gain, gain);
    }
    let all = best(&pieces, &[], [f64::INFINITY; 2]);
    assert_eq!((all.gain, all.uses), (565.0, [295.0, 17.5]));
    assert_eq!(
        all.prices, [0.0; 2],
        "where nothing binds, more is worth nothing"
    );
}

#[test]
fn more_money_gains_more_until_the_hours_bind() {
    let pieces = five_pieces();
    let curve: Vec<f64> = (0..=16)
        .map(|step| best(&pieces, &[], [25.0 * f64::from(step), 12.0]).gain)
        .collect();
    let rising = [0., 95., 175., 235., 270., 325., 365., 380., 415.];
    assert_eq!(curve[..9], rising);
    assert!(curve[9..].iter().all(|gain| *gain == 415.0), "{curve:?}");
    // Money left over costs nothing more; another hour would bring something.
    let end = best(&pieces, &[], [400.0, 12.0]);
    assert!(
        end.prices[0].abs() < 1e-6 && end.prices[1] > 1.0,
        "{:?}",
        end.prices
    );
}

#[test]
fn ties_go_to_the_cheaper_and_then_to_what_leaves_more_choice() {
    let choice = |gain, money, keeps| StockChoice {
        gain,
        uses: [money],
        keeps,
    };
    let nothing = choice(0.0, 0.0, 1.0);
    let cheaper = vec![nothing, choice(50.0, 20.0, 1.0), choice(50.0, 10.0, 0.0)];
    assert_eq!(best(&[cheaper], &[], [100.0]).picks, [2]);
    let gentler = vec![nothing, choice(50.0, 10.0, 0.2), choice(50.0, 10.0, 0.8)];
    assert_eq!(best(&[gentler], &[], [100.0]).picks, [2]);
}

#[test]
fn senseless_input_is_refused() {
    let piece = |uses| {
        vec![
            StockChoice {
                gain: 0.0,
                uses: [0.0],
                keeps: 0.0,
            },
            StockChoice {
                gain: 1.0,
                uses: [uses],
                keeps: 0.0,
            },
        ]
    };
    let refused = |pieces: &[Vec<StockChoice<1>>], needs: &[Need], limit: f64| {
        select(pieces, needs, [limit], MOST_HELD).is_none()
    };
    assert!(!refused(&[piece(1.0)], &[], 1.0));
    assert!(refused(&[piece(-1.0)], &[], 1.0));
    assert!(refused(&[piece(f64::NAN)], &[], 1.0));
    assert!(refused(&[piece(1.0)], &[], -1.0));
    assert!(refused(&[piece(1.0)], &[], f64::NAN));
    assert!(refused(&[Vec::new()], &[], 1.0));
    let need = Need {
        piece: 0,
        choices: vec![1],
        of: 7,
        one_of: vec![1],
    };
    assert!(refused(&[piece(1.0)], &[need], 1.0));
}
