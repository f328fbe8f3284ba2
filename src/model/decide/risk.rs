//! Attitude to risk: what an uncertain sum is worth for sure, the worst of it, and regret.
//!
//! `chances` may be empty: then every value is as likely as the next.

use super::greatest;

/// Probability of the `i`-th of `n` values.
fn chance(chances: &[f64], i: usize, n: usize) -> f64 {
    if chances.is_empty() {
        1.0 / n as f64
    } else {
        chances.get(i).copied().unwrap_or(0.0)
    }
}

/// Certainty equivalent at a constant risk tolerance R, in units of the values: -R ln E exp(-X/R)
/// (Pratt 1964, Econometrica 32:122). By log-sum-exp, so no value is too great. R must be above 0;
/// otherwise, and where R is infinite, the mean.
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
    // Only what can happen sets the scale.
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

/// Certainty equivalent at a constant relative aversion g, of wealth plus payoff: (E X^(1-g))^(1/(1-g)),
/// exp E ln X at g = 1 (Pratt 1964). Every X must be above 0; `None` otherwise.
#[must_use]
pub fn certain_of_wealth(values: &[f64], chances: &[f64], aversion: f64) -> Option<f64> {
    let n = values.len();
    if n == 0 || values.iter().any(|x| *x <= 0.0) {
        return None;
    }
    let weighed = |f: &dyn Fn(f64) -> f64| -> f64 {
        values
            .iter()
            .enumerate()
            .map(|(i, x)| chance(chances, i, n) * f(*x))
            .sum()
    };
    let power = 1.0 - aversion;
    Some(if power.abs() < 1e-9 {
        libm::exp(weighed(&libm::log))
    } else {
        libm::pow(weighed(&|x| libm::pow(x, power)), 1.0 / power)
    })
}

/// The risk tolerance of somebody who would just take an even chance to win `stake` or lose half of
/// it: stake/0.9624, the root of exp(-y) + exp(y/2) = 2 (Howard 1988, Management Science 34:679, gives
/// it as about the stake itself).
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

/// Value below which the worst share `alpha` lies, and the mean of that share with a value on the
/// boundary counted in part (value at risk and conditional value at risk; Rockafellar & Uryasev 2002,
/// J. Banking & Finance 26:1443). `alpha` in (0, 1].
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
        // What is left of the share is rounding.
        if left <= 1e-12 {
            break;
        }
    }
    (edge, sum / (alpha - left.max(0.0)).max(f64::MIN_POSITIVE))
}

/// How far each act falls short of the best in each state: `[act][state]`.
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

/// Place of the act whose greatest regret is least, with that regret (Savage 1951, JASA 46:55).
#[must_use]
pub fn least_regret(pays: &[&[f64]]) -> (usize, f64) {
    let (act, negative) = greatest(
        regrets(pays)
            .iter()
            .map(|row| -row.iter().copied().fold(0.0, f64::max)),
    );
    (act, -negative)
}

/// How one uncertain sum stands to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dominance {
    /// At least as good at every level (first order).
    pub first: bool,
    /// At least as good for everybody who minds risk (second order).
    pub second: bool,
    /// The share of the area between the two distributions that speaks against it: 0 when it dominates,
    /// below about 0.06 it nearly does (Leshno & Levy 2002, Management Science 48:1074).
    pub against: f64,
}

/// How `a` stands to `b`, both equally likely draws.
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

/// What each way of judging puts first.
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

/// Judges acts on draws in four ways.
#[must_use]
pub fn judged(acts: &[&[f64]], tolerance: f64, alpha: f64) -> Judged {
    Judged {
        mean: greatest(acts.iter().map(|a| crate::maths::mean(a))).0,
        certain: greatest(acts.iter().map(|a| certain(a, &[], tolerance))).0,
        worst: greatest(acts.iter().map(|a| worst(a, &[], alpha).1)).0,
        regret: least_regret(acts).0,
    }
}

impl Judged {
    /// All four agree.
    #[must_use]
    pub fn agree(&self) -> bool {
        [self.certain, self.worst, self.regret]
            .iter()
            .all(|i| *i == self.mean)
    }
}
