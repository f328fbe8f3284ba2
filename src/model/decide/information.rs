//! What knowing more before choosing would be worth.
//!
//! All of it is "the mean of the best, less the best of the means", so it is never below 0 on the
//! numbers it is worked out from; see [`above_noise`] for when to believe a small one.

use super::{expected, greatest};
use crate::maths::{phi, probability};

/// Worth of the best act before anything more is known. `pays` is `[act][state]`.
#[must_use]
pub fn now(chances: &[f64], pays: &[&[f64]]) -> f64 {
    greatest(pays.iter().map(|row| expected(chances, row))).1
}

/// Worth of knowing the state before acting (expected value of perfect information; Raiffa &
/// Schlaifer 1961, Applied Statistical Decision Theory). Equals the least mean regret.
#[must_use]
pub fn of_state(chances: &[f64], pays: &[&[f64]]) -> f64 {
    let with: f64 = chances
        .iter()
        .enumerate()
        .map(|(s, p)| p * best_in(pays, s))
        .sum();
    with - now(chances, pays)
}

fn best_in(pays: &[&[f64]], at: usize) -> f64 {
    pays.iter()
        .filter_map(|row| row.get(at).copied())
        .reduce(f64::max)
        .unwrap_or(0.0)
}

/// Worth of the best act after an answer, over the answers: sum over answers of the greatest sum over
/// states of p(state) p(answer given state) pay; no division. `answers` is `[answer][state]`.
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

/// Worth of an answer before its fee (expected value of sample information). Less its fee it is the
/// net gain of asking.
#[must_use]
pub fn of_answers(chances: &[f64], pays: &[&[f64]], answers: &[Vec<f64>]) -> f64 {
    with_answers(chances, pays, answers) - now(chances, pays)
}

/// Worth of knowing everything, on draws: `acts` holds, for each act, its worth in every draw.
#[must_use]
pub fn of_everything(acts: &[&[f64]]) -> f64 {
    let n = length(acts);
    if n == 0 {
        return 0.0;
    }
    let with = (0..n).map(|i| best_in(acts, i)).sum::<f64>() / n as f64;
    with - best_mean(acts, n)
}

/// Worth of knowing in which group a draw falls, on draws: exact for an input that takes few values
/// (expected value of partial perfect information). `group` holds each draw's group.
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

/// Worth of knowing one continuous input, on draws: draws sorted by the input, cut into bins of equal
/// number, each bin's mean standing for the mean given the input (the simplest regression of Strong,
/// Oakley & Brennan 2014, Med. Decis. Making 34:311). The bins are max(8, 2 n^(1/3)). Biased upward
/// where the true worth is small.
#[must_use]
pub fn of_input(acts: &[&[f64]], input: &[f64]) -> f64 {
    of_group(acts, &bins(input))
}

/// Each draw's bin: equal numbers of draws in order of the input, the draw's own order on a tie.
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

/// Worth of an answer before its fee, on draws: `answers` holds, for each answer, its probability in
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

/// Mean of the same worth over independent scrambles, or `None` when it is not above their spread
/// (the standard deviation of one): too small to be told from noise.
#[must_use]
pub fn above_noise(estimates: &[f64]) -> Option<f64> {
    let n = estimates.len() as f64;
    let centre = crate::maths::mean(estimates);
    let squares: f64 = estimates.iter().map(|e| (e - centre) * (e - centre)).sum();
    let spread = (squares / (n - 1.0).max(1.0)).sqrt();
    (centre > spread).then_some(centre)
}

/// Unit normal linear loss L(z) = phi(z) - z (1 - Phi(z)): the mean of max(Z - z, 0) (Raiffa &
/// Schlaifer 1961). Any finite z; below 0 it is -z more than L(-z).
#[must_use]
pub fn unit_normal_loss(z: f64) -> f64 {
    phi(z) - z * probability(-z)
}

/// Worth of resolving the difference between two acts when that difference is normal: sd L(|mean|/sd)
/// (Raiffa & Schlaifer 1961). `sd` is that of the part which would be resolved; 0 or less gives 0.
#[must_use]
pub fn of_normal_gap(mean: f64, sd: f64) -> f64 {
    if sd > 0.0 {
        sd * unit_normal_loss(mean.abs() / sd)
    } else {
        0.0
    }
}

/// Standard deviation of what the mean will be thought to be after `n` readings with noise `noise_sd`
/// of a thing known to `sd` (preposterior; Raiffa & Schlaifer 1961): sd^2/sqrt(sd^2 + noise^2/n).
#[must_use]
pub fn preposterior_sd(sd: f64, noise_sd: f64, n: f64) -> f64 {
    let variance = sd * sd;
    let total = variance + noise_sd * noise_sd / n;
    if total > 0.0 {
        variance / total.sqrt()
    } else {
        0.0
    }
}

/// A treatment that helps those who need it and harms those who do not, and a test for the need.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TreatOrTest {
    /// Gain of treating where it is needed.
    pub benefit: f64,
    /// Loss of treating where it is not.
    pub harm: f64,
    /// What testing costs, harm included.
    pub fee: f64,
    /// Probability that the test speaks where it is needed.
    pub sensitivity: f64,
    /// Probability that it is silent where it is not.
    pub specificity: f64,
}

impl TreatOrTest {
    /// Probability of need above which treating untested pays: harm/(benefit + harm) (Pauker & Kassirer
    /// 1980, NEJM 302:1109).
    #[must_use]
    pub fn treat_above(&self) -> f64 {
        self.harm / (self.benefit + self.harm)
    }

    /// Probabilities of need between which testing first pays (the same); the first above the second
    /// where it never does.
    #[must_use]
    pub fn test_between(&self) -> (f64, f64) {
        let (b, c, t) = (self.benefit, self.harm, self.fee);
        let (se, sp) = (self.sensitivity, self.specificity);
        (
            ((1.0 - sp) * c + t) / ((1.0 - sp) * c + se * b),
            (sp * c - t) / (sp * c + (1.0 - se) * b),
        )
    }
}
