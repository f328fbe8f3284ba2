//! How long a case takes: the answer a screen waits for, the search for what would change it, and the plan
//! for a whole shelf.
//!
//! `cargo bench -p leavewell-model`. Compare ratios within one run; machines are noisy.

use leavewell_model::counsel::{weigh_at_once, what_would_change};
use leavewell_model::decide::information::{of_everything, of_input};
use leavewell_model::decide::risk::certain;
use leavewell_model::decide::stock::{MOST_HELD, StockChoice, select};
use leavewell_model::decide::weights::{acceptability, shares};
use leavewell_model::learn::{
    Observed, PieceEvidence, PricedState, Scatter, Shift, Teaching, Topic,
};
use leavewell_model::ledger::{FigureId, FindingId};
use leavewell_model::value::Class;
use leavewell_model::{Case, Draft};

fn main() {
    divan::main();
}

const CASES: [(&str, &str); 4] = [
    (
        "six_faults",
        include_str!("../../../tests/cases/six_faults_teapot.json"),
    ),
    (
        "basket",
        include_str!("../../../tests/cases/cake_basket.json"),
    ),
    (
        "teapot",
        include_str!("../../../tests/cases/leaking_teapot.json"),
    ),
    ("tray", include_str!("../../../tests/cases/worn_tray.json")),
];

fn draft(name: &str) -> Draft {
    let text = CASES
        .iter()
        .find(|(n, _)| *n == name)
        .map_or("", |(_, text)| *text);
    Draft::parse(text).unwrap_or_default()
}

fn case(name: &str) -> Case {
    draft(name).read().0
}

/// Weighs records one after the other, each with one change from the one before, as a screen does while
/// somebody works; once round first, which fills the shared columns.
fn bench_changes(bencher: divan::Bencher, name: &str, change: fn(&mut Draft, usize)) {
    let mut draft = draft(name);
    let cases: Vec<Case> = (0..30)
        .map(|i| {
            change(&mut draft, i);
            draft.read().0
        })
        .collect();
    for case in &cases {
        let _ = weigh_at_once(case, Vec::new());
    }
    let mut next = cases.iter().cycle();
    bencher.bench_local(|| next.next().map(|case| weigh_at_once(case, Vec::new())));
}

#[divan::bench(args = ["basket", "teapot", "tray", "six_faults"])]
fn answer_after_a_look(bencher: divan::Bencher, name: &str) {
    bench_changes(bencher, name, |draft, i| {
        let finding = [
            FindingId::S01,
            FindingId::S02,
            FindingId::M02,
            FindingId::C02,
            FindingId::S05,
        ][i % 5];
        draft.set_answer(
            finding,
            ["seen", "absent", "unsure"][(i % 5 + i / 5) % 3],
            "",
        );
    });
}

#[divan::bench(args = ["basket", "teapot", "tray", "six_faults"])]
fn answer_after_a_change_of_bare_metal(bencher: divan::Bencher, name: &str) {
    bench_changes(bencher, name, |draft, i| {
        draft.set_part("body", "bleed", &format!("0.{:02}", 2 + 3 * (i % 30)));
    });
}

#[divan::bench(args = ["basket", "teapot", "tray", "six_faults"])]
fn answer_after_a_change_of_the_guess(bencher: divan::Bencher, name: &str) {
    bench_changes(bencher, name, |draft, i| {
        draft.set("market.likely", &(300 + i).to_string());
    });
}

#[divan::bench(args = ["basket", "teapot", "tray", "six_faults"], sample_count = 10)]
fn search_for_changes(bencher: divan::Bencher, name: &str) {
    let case = case(name);
    bencher.bench(|| what_would_change(&case));
}

/// A kernel with the arithmetic of one answer and nothing else, to set the others against.
#[divan::bench]
fn sixty_thousand_exponentials() -> f64 {
    (0..60_000).map(|i| libm::exp(f64::from(i) * 1e-5)).sum()
}

/// Columns of numbers that any program can make alike: a hundred times the fraction of
/// (i + 1)(a + 1) times the golden section. `tests/published/speed.py` makes the same.
fn columns(count: u32) -> Vec<Vec<f64>> {
    (0..count)
        .map(|a| {
            (0..4096)
                .map(|i| {
                    let x = f64::from(i + 1) * f64::from(a + 1) * 0.618_033_988_749_895;
                    100.0 * (x - x.floor())
                })
                .collect()
        })
        .collect()
}

fn slices(columns: &[Vec<f64>]) -> Vec<&[f64]> {
    columns.iter().map(Vec::as_slice).collect()
}

#[divan::bench]
fn kernel_worth_of_everything(bencher: divan::Bencher) {
    let acts = columns(20);
    bencher.bench(|| of_everything(&slices(&acts)));
}

#[divan::bench]
fn kernel_worth_of_input(bencher: divan::Bencher) {
    let acts = columns(20);
    bencher.bench(|| of_input(&slices(&acts), &acts[0]));
}

#[divan::bench]
fn kernel_certainty_equivalents(bencher: divan::Bencher) {
    let acts = columns(20);
    bencher.bench(|| acts.iter().map(|a| certain(a, &[], 50.0)).sum::<f64>());
}

#[divan::bench]
fn kernel_ranks_over_weights(bencher: divan::Bencher) {
    let values: Vec<Vec<f64>> = columns(5)[..5].iter().map(|c| c[..5].to_vec()).collect();
    let held = columns(5);
    let weights: Vec<Vec<f64>> = (0..4096)
        .map(|i| shares(&held.iter().map(|c| c[i]).collect::<Vec<f64>>()))
        .collect();
    bencher.bench(|| acceptability(&values, &weights));
}

/// A stock with up to six choices a piece, from a fixed sequence of numbers; gains go about with costs.
fn stock(pieces: usize) -> Vec<Vec<StockChoice<2>>> {
    let mut seed = 1_u64;
    let mut below = move |most: u32| {
        seed = seed * 16_807 % 2_147_483_647;
        u32::try_from(seed % u64::from(most)).unwrap_or(0)
    };
    let nothing = StockChoice {
        gain: 0.0,
        uses: [0.0; 2],
        keeps: 1.0,
    };
    (0..pieces)
        .map(|_| {
            let count = below(7);
            let choices = (0..count).map(|_| {
                let money = 20.0 + f64::from(below(30_000)) / 100.0;
                let hours = [0.25, 0.75, 2.5, 8.0, 24.0];
                StockChoice {
                    gain: money * (0.5 + f64::from(below(2_000)) / 1_000.0),
                    uses: [money, hours.get(below(5) as usize).copied().unwrap_or(1.0)],
                    keeps: 0.5,
                }
            });
            std::iter::once(nothing).chain(choices).collect()
        })
        .collect()
}

#[divan::bench(args = [10, 100, 1_000])]
fn plan_of_a_shelf(bencher: divan::Bencher, pieces: usize) {
    let stock = stock(pieces);
    let limits = [40.0 * pieces as f64, 1.5 * pieces as f64];
    bencher.bench_local(|| select(&stock, &[], limits, MOST_HELD));
}

/// Closed pieces that each tell a price and a bill, over every class and many degrees of wear.
fn closed_pieces(count: usize) -> Vec<PieceEvidence> {
    let seen = |topic, row, y, scatter| Observed {
        topic,
        row,
        y,
        sd: 0.6,
        scatter,
        weight: 1.0,
        censored: false,
    };
    (0..count)
        .map(|number| {
            let class = Class::ALL[number % Class::ALL.len()];
            let code = [class.code(), " bare=0.", &(number % 60 + 10).to_string()].concat();
            let rows = match PricedState::parse(&code) {
                Some(state) => {
                    state
                        .multiplier(Some(number % 3).filter(|_| number % 5 < 3))
                        .1
                }
                None => Vec::new(),
            };
            let mut row = rows;
            row.push((Shift::Guess(class), 1.0));
            let y = 0.4 * libm::sin(number as f64);
            let bill = vec![(Shift::Cost(FigureId::COST_T14A), 1.0)];
            PieceEvidence {
                id: format!("{number:05}"),
                name: String::new(),
                seen: vec![
                    seen(Topic::Prices, row, y, Scatter::Guess),
                    seen(Topic::Bills, bill, y, Scatter::Bill),
                ],
                results: Vec::new(),
                not_counted: Vec::new(),
            }
        })
        .collect()
}

#[divan::bench(args = [30, 1_000])]
fn learn_from_closed_pieces(bencher: divan::Bencher, pieces: usize) {
    let evidence = closed_pieces(pieces);
    bencher.bench_local(|| Teaching::new(&evidence));
}
