//! The value of information before a choice is made.
//!
//! Every value here is "the mean of the best act minus the best of the mean acts", so it is never
//! negative on the numbers it was computed from. [`above_noise`] says when to believe a small one.

use super::{expected, greatest};

/// Value of the best act when nothing more is known. `pays` is `[act][state]`.
#[must_use]
pub fn now(chances: &[f64], pays: &[&[f64]]) -> f64 {
    greatest(pays.iter().map(|row| expected(chances, row))).1
}

fn best_in(pays: &[&[f64]], at: usize) -> f64 {
    pays.iter()
        .filter_map(|row| row.get(at).copied())
        .reduce(f64::max)
        .unwrap_or(0.0)
}

/// Value of choosing the best act after each answer, averaged over the answers: the sum over answers
/// of the greatest sum over states of p(state) p(answer given state) pay. No division is needed.
/// `answers` is `[answer][state]`.
#[must_use]
pub fn with_answers(chances: &[f64], pays: &[&[f64]], answers: &[Vec<f64>]) -> f64 {
    answers
        .iter()
        .map(|likelihood| {
            let weights: Vec<f64> = chances.iter().zip(likelihood).map(|(p, l)| p * l).collect();
            now(&weights, pays)
        })
        .sum()
}

/// Value of an answer before its fee (expected value of sample information; Raiffa & Schlaifer 1961,
/// Applied Statistical Decision Theory). Subtract the fee to get the net gain of asking. With one
/// certain answer for each state it is the expected value of perfect information.
#[must_use]
pub fn of_answers(chances: &[f64], pays: &[&[f64]], answers: &[Vec<f64>]) -> f64 {
    with_answers(chances, pays, answers) - now(chances, pays)
}

/// Value of knowing everything, from draws. `acts` holds the value of each act in every draw.
#[must_use]
pub fn of_everything(acts: &[&[f64]]) -> f64 {
    let n = length(acts);
    if n == 0 {
        return 0.0;
    }
    let with = (0..n).map(|i| best_in(acts, i)).sum::<f64>() / n as f64;
    with - best_mean(acts, n)
}

/// Value of knowing which group a draw falls in, from draws (expected value of partial perfect information).
/// Exact on the draws for an input with few distinct values. `group` holds the group of each draw, counted
/// from 0.
#[must_use]
pub fn of_group(acts: &[&[f64]], group: &[usize]) -> f64 {
    let n = length(acts).min(group.len());
    if n == 0 {
        return 0.0;
    }
    let groups = group.iter().max().map_or(0, |g| g + 1);
    let mut sums = vec![vec![0.0; groups]; acts.len()];
    for (row, act) in sums.iter_mut().zip(acts) {
        for (g, x) in group.iter().zip(*act).take(n) {
            row[*g] += x;
        }
    }
    let rows: Vec<&[f64]> = sums.iter().map(Vec::as_slice).collect();
    let with = (0..groups).map(|g| best_in(&rows, g)).sum::<f64>() / n as f64;
    with - best_mean(acts, n)
}

/// Value of knowing one continuous input, from draws. Draws are sorted by the input and cut into bins of
/// equal size; the mean of a bin estimates the mean given the input (the simplest regression of Strong,
/// Oakley & Brennan 2014, Med. Decis. Making 34:311). There are max(8, 2 n^(1/3)) bins. The estimate is
/// biased upward where the true value is small.
#[must_use]
pub fn of_input(acts: &[&[f64]], input: &[f64]) -> f64 {
    of_group(acts, &bins(input))
}

/// The bin of each draw. Bins hold equal numbers of draws in order of the input; ties keep the order
/// of the draws.
#[must_use]
pub fn bins(input: &[f64]) -> Vec<usize> {
    let n = input.len();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // small and positive
    let wanted = ((2.0 * libm::cbrt(n as f64) + 1e-9) as usize).max(8);
    let mut order: Vec<usize> = (0..n).collect();
    order.sort_by(|a, b| input[*a].total_cmp(&input[*b]).then(a.cmp(b)));
    let mut bin = vec![0; n];
    for (rank, i) in order.into_iter().enumerate() {
        bin[i] = rank * wanted / n.max(1);
    }
    bin
}

/// Value of an answer before its fee, from draws. `answers` holds the probability of each answer in
/// every draw. Exact on the draws.
#[must_use]
pub fn of_answers_on_draws(acts: &[&[f64]], answers: &[Vec<f64>]) -> f64 {
    let n = length(acts);
    if n == 0 {
        return 0.0;
    }
    let with: f64 = answers
        .iter()
        .map(|likelihood| greatest(acts.iter().map(|act| expected(likelihood, act) / n as f64)).1)
        .sum();
    with - best_mean(acts, n)
}

fn length(acts: &[&[f64]]) -> usize {
    acts.iter().map(|a| a.len()).min().unwrap_or(0)
}

fn best_mean(acts: &[&[f64]], n: usize) -> f64 {
    greatest(
        acts.iter()
            .map(|a| a.iter().take(n).sum::<f64>() / n as f64),
    )
    .1
}

/// Mean of the same estimate over independent scrambles. `None` when it does not exceed their standard
/// deviation, because it is then indistinguishable from noise.
#[must_use]
pub fn above_noise(estimates: &[f64]) -> Option<f64> {
    let n = estimates.len() as f64;
    let centre = crate::maths::mean(estimates);
    let squares: f64 = estimates.iter().map(|e| (e - centre) * (e - centre)).sum();
    let spread = (squares / (n - 1.0).max(1.0)).sqrt();
    (centre > spread).then_some(centre)
}
