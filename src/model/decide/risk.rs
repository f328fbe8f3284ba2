//! Attitude to risk: the certainty equivalent of an uncertain sum, its worst part, dominance and regret.
//!
//! An empty `chances` means that all values are equally likely.

use super::greatest;

/// Probability of the `i`-th of `n` values.
fn chance(chances: &[f64], i: usize, n: usize) -> f64 {
    if chances.is_empty() {
        1.0 / n as f64
    } else {
        chances.get(i).copied().unwrap_or(0.0)
    }
}

/// Certainty equivalent at a constant risk tolerance R: -R ln E exp(-X/R), in the units of the values
/// (Pratt 1964, Econometrica 32:122). Computed by log-sum-exp, so large values do not overflow. For R
/// at or below 0, or infinite, it is the mean.
#[must_use]
pub fn certain(values: &[f64], chances: &[f64], tolerance: f64) -> f64 {
    let n = values.len();
    let weighed = |f: &dyn Fn(f64) -> f64| -> f64 {
        values
            .iter()
            .enumerate()
            .map(|(i, x)| chance(chances, i, n) * f(*x))
            .sum()
    };
    if n == 0 || !(tolerance > 0.0 && tolerance.is_finite()) {
        return weighed(&|x| x);
    }
    // Only values that can occur set the scale.
    let least = values
        .iter()
        .enumerate()
        .filter(|(i, _)| chance(chances, *i, n) > 0.0)
        .map(|(_, x)| *x)
        .fold(f64::INFINITY, f64::min);
    if !least.is_finite() {
        return 0.0;
    }
    least - tolerance * libm::log(weighed(&|x| libm::exp((least - x) / tolerance)))
}

/// The risk tolerance of a decision maker who is just willing to take an even chance of winning `stake` or
/// losing half of it: stake / 0.9624, from the root of exp(-y) + exp(y/2) = 2. Howard 1988 (Management
/// Science 34:679) rounds it to the stake itself.
#[must_use]
pub fn tolerance_from_even_bet(stake: f64) -> f64 {
    let (mut low, mut high) = (0.5_f64, 2.0_f64);
    for _ in 0..60 {
        let y = 0.5 * (low + high);
        if libm::exp(-y) + libm::exp(0.5 * y) < 2.0 {
            low = y;
        } else {
            high = y;
        }
    }
    stake / low
}

/// Value at risk and conditional value at risk: the value below which the worst share `alpha` lies, and the
/// mean of that share. A value on the boundary is counted in part (Rockafellar & Uryasev 2002, J. Banking &
/// Finance 26:1443). `alpha` is in (0, 1].
#[must_use]
pub fn worst(values: &[f64], chances: &[f64], alpha: f64) -> (f64, f64) {
    let n = values.len();
    let alpha = alpha.clamp(f64::MIN_POSITIVE, 1.0);
    let mut order: Vec<usize> = (0..n).collect();
    order.sort_by(|a, b| values[*a].total_cmp(&values[*b]).then(a.cmp(b)));
    let (mut left, mut sum, mut edge) = (alpha, 0.0, 0.0);
    for i in order {
        let p = chance(chances, i, n).min(left);
        if p > 0.0 {
            edge = values[i];
        }
        sum += p * values[i];
        left -= p;
        // The rest of the share is rounding error.
        if left <= 1e-12 {
            break;
        }
    }
    (edge, sum / (alpha - left.max(0.0)).max(f64::MIN_POSITIVE))
}

/// Shortfall of each act against the best act in the same state. Input and result are `[act][state]`.
#[must_use]
pub fn regrets(pays: &[&[f64]]) -> Vec<Vec<f64>> {
    let states = pays.iter().map(|row| row.len()).min().unwrap_or(0);
    let best: Vec<f64> = (0..states)
        .map(|s| {
            pays.iter()
                .map(|row| row[s])
                .fold(f64::NEG_INFINITY, f64::max)
        })
        .collect();
    pays.iter()
        .map(|row| row.iter().zip(&best).map(|(x, b)| b - x).collect())
        .collect()
}

/// Index of the act whose greatest regret is smallest (Savage 1951, JASA 46:55).
fn least_regret(pays: &[&[f64]]) -> usize {
    greatest(
        regrets(pays)
            .iter()
            .map(|row| -row.iter().copied().fold(0.0, f64::max)),
    )
    .0
}

/// How one uncertain sum compares with another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dominance {
    /// First order: at least as good at every level.
    pub first: bool,
    /// Second order: at least as good for every risk-averse decision maker.
    pub second: bool,
    /// Share of the area between the two distributions that violates dominance: 0 when it dominates, below
    /// about 0.06 when it almost does (Leshno & Levy 2002, Management Science 48:1074).
    pub against: f64,
}

/// How `a` compares with `b`. Both are lists of equally likely draws.
#[must_use]
pub fn dominance(a: &[f64], b: &[f64]) -> Dominance {
    let (mut a, mut b) = (a.to_vec(), b.to_vec());
    a.sort_by(f64::total_cmp);
    b.sort_by(f64::total_cmp);
    let mut steps: Vec<f64> = a.iter().chain(&b).copied().collect();
    steps.sort_by(f64::total_cmp);
    let below = |list: &[f64], x: f64| {
        list.partition_point(|v| *v <= x) as f64 / (list.len() as f64).max(1.0)
    };
    let (mut first, mut second) = (true, true);
    let (mut area, mut worse, mut all) = (0.0, 0.0, 0.0);
    for pair in steps.windows(2) {
        let &[from, to] = pair else { continue };
        let gap = below(&a, from) - below(&b, from);
        let piece = gap * (to - from);
        area += piece;
        all += piece.abs();
        worse += piece.max(0.0);
        first &= gap <= 1e-12 || to <= from;
        second &= area <= 1e-9 * all.max(f64::MIN_POSITIVE);
    }
    Dominance {
        first,
        second,
        against: if all > 0.0 { worse / all } else { 0.0 },
    }
}

/// The index of the best act by each of four criteria.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Judged {
    /// By the mean.
    pub mean: usize,
    /// By the certainty equivalent.
    pub certain: usize,
    /// By the mean of the worst share.
    pub worst: usize,
    /// By the greatest regret.
    pub regret: usize,
}

/// Ranks acts by four criteria and returns the best by each. `acts` holds the value of each act in every
/// draw; `tolerance` is for [`certain`], `alpha` for [`worst`].
#[must_use]
pub fn judged(acts: &[&[f64]], tolerance: f64, alpha: f64) -> Judged {
    Judged {
        mean: greatest(acts.iter().map(|a| crate::maths::mean(a))).0,
        certain: greatest(acts.iter().map(|a| certain(a, &[], tolerance))).0,
        worst: greatest(acts.iter().map(|a| worst(a, &[], alpha).1)).0,
        regret: least_regret(acts),
    }
}
