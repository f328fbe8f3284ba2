//! How long a case takes: the answer a screen waits for, and the search for what would change it.
//!
//! `cargo bench -p leavewell-model`. Compare ratios within one run; machines are noisy.

use leavewell_model::counsel::{weigh_at_once, what_would_change};
use leavewell_model::{Case, Draft};

fn main() {
    divan::main();
}

const CASES: [(&str, &str); 3] = [
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

fn case(name: &str) -> Case {
    let text = CASES
        .iter()
        .find(|(n, _)| *n == name)
        .map_or("", |(_, text)| *text);
    Draft::parse(text).unwrap_or_default().read().0
}

#[divan::bench(args = ["basket", "teapot", "tray"])]
fn answer(bencher: divan::Bencher, name: &str) {
    let case = case(name);
    // The first call fills the shared columns; a screen pays that once.
    let _ = weigh_at_once(&case, Vec::new());
    bencher.bench(|| weigh_at_once(&case, Vec::new()));
}

#[divan::bench(args = ["basket", "teapot", "tray"], sample_count = 10)]
fn search_for_changes(bencher: divan::Bencher, name: &str) {
    let case = case(name);
    bencher.bench(|| what_would_change(&case));
}

/// A kernel with the arithmetic of one answer and nothing else, to set the others against.
#[divan::bench]
fn sixty_thousand_exponentials() -> f64 {
    (0..60_000).map(|i| libm::exp(f64::from(i) * 1e-5)).sum()
}
