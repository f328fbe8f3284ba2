//! How much each criterion counts, and how strongly a ranking depends on the weights.

use super::{expected, greatest};
use crate::maths::SobolBlock;

/// Rank-order centroid weights of `n` criteria, most important first: the mean of all weights that fall
/// in this order. The j-th weight is (1/n) times the sum of 1/k for k from j to n (Barron & Barrett 1996,
/// Management Science 42:1515).
#[must_use]
pub fn by_order(n: usize) -> Vec<f64> {
    (1..=n)
        .map(|j| (j..=n).map(|k| 1.0 / k as f64).sum::<f64>() / n as f64)
        .collect()
}

/// Swing points as weights that sum to 1, in proportion to the points (von Winterfeldt & Edwards 1986).
/// Negative or non-finite points count as 0; without any points the weights are equal. A weight is only valid
/// for the range that was swung; a different range needs a different weight.
#[must_use]
pub fn shares(points: &[f64]) -> Vec<f64> {
    let held: Vec<f64> = points
        .iter()
        .map(|p| if p.is_finite() { p.max(0.0) } else { 0.0 })
        .collect();
    let sum: f64 = held.iter().sum();
    if sum > 0.0 {
        held.iter().map(|p| p / sum).collect()
    } else {
        vec![1.0 / points.len().max(1) as f64; points.len()]
    }
}

/// How options rank over all weights (SMAA-2; Lahdelma & Salminen 2001, Oper. Res. 49:444).
#[derive(Clone, Debug, PartialEq)]
pub struct Acceptability {
    /// Share of the weights that give the option this rank: `[option][rank]`. Rows sum to 1; so do
    /// columns, except for ties.
    pub ranks: Vec<Vec<f64>>,
    /// Mean of the weights that rank the option first; `None` if no weights do.
    pub central: Vec<Option<Vec<f64>>>,
    /// Share of the weights under which the row is better than the column: `[option][other]`.
    pub beats: Vec<Vec<f64>>,
}

impl Acceptability {
    /// One score per option: ranks weighted evenly from 1 for the first down to 0 for the last.
    #[must_use]
    pub fn holistic(&self) -> Vec<f64> {
        self.ranks
            .iter()
            .map(|row| {
                let last = (row.len() as f64 - 1.0).max(1.0);
                row.iter()
                    .enumerate()
                    .map(|(r, b)| b * (1.0 - r as f64 / last))
                    .sum()
            })
            .collect()
    }
}

/// Which weights a sample covers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Order {
    /// All weights.
    Free,
    /// Only decreasing weights: the first criterion counts most.
    Falling,
}

/// Weights of `n` criteria, spread evenly: the gaps between the sorted coordinates of a scrambled net, sorted
/// in descending order for [`Order::Falling`]. `n` is clamped to 1 to 20, and the number of points is at most
/// 2^16.
#[must_use]
pub fn simplex(n: usize, log2_points: u32, order: Order, seed: u32) -> Vec<Vec<f64>> {
    let n = n.clamp(1, 20);
    let block = SobolBlock::new(log2_points.min(16), seed);
    let columns: Vec<Vec<f64>> = (0..n - 1).map(|d| block.column(d)).collect();
    (0..block.len())
        .map(|i| {
            let mut cuts: Vec<f64> = columns.iter().map(|c| c[i]).collect();
            cuts.push(0.0);
            cuts.push(1.0);
            cuts.sort_by(f64::total_cmp);
            let mut weights: Vec<f64> = cuts.windows(2).map(|w| w[1] - w[0]).collect();
            if order == Order::Falling {
                weights.sort_by(|a, b| b.total_cmp(a));
            }
            weights
        })
        .collect()
}

/// Acceptability over given weights, all counted equally. `values` is `[option][criterion]`. The rank of an
/// option is one more than the number of options that score higher.
#[must_use]
pub fn acceptability(values: &[Vec<f64>], weights: &[Vec<f64>]) -> Acceptability {
    let n = values.len();
    let criteria = values.first().map_or(0, Vec::len);
    let each = 1.0 / weights.len().max(1) as f64;
    let mut ranks = vec![vec![0.0; n]; n];
    let mut beats = vec![vec![0.0; n]; n];
    let mut sums = vec![vec![0.0; criteria]; n];
    for w in weights {
        let scores: Vec<f64> = values.iter().map(|v| expected(w, v)).collect();
        for i in 0..n {
            let mut better = 0;
            for j in 0..n {
                if scores[j] > scores[i] {
                    better += 1;
                } else if scores[i] > scores[j] {
                    beats[i][j] += each;
                }
            }
            ranks[i][better] += each;
            if better == 0 {
                for (s, w) in sums[i].iter_mut().zip(w) {
                    *s += w * each;
                }
            }
        }
    }
    let central = sums
        .into_iter()
        .zip(&ranks)
        .map(|(sum, row)| {
            let first = row.first().copied().unwrap_or(0.0);
            (first > 0.0).then(|| sum.into_iter().map(|s| s / first).collect())
        })
        .collect();
    Acceptability {
        ranks,
        central,
        beats,
    }
}

/// Confidence factors: the share of draws in which each option is first at its own central weights; 0 for an
/// option without central weights. `draws` is `[option][criterion]`, each entry holding the values of all
/// draws.
#[must_use]
pub fn confidence(draws: &[Vec<&[f64]>], central: &[Option<Vec<f64>>]) -> Vec<f64> {
    let n = draws
        .iter()
        .flat_map(|o| o.iter().map(|c| c.len()))
        .min()
        .unwrap_or(0);
    central
        .iter()
        .enumerate()
        .map(|(own, weights)| {
            let Some(weights) = weights else { return 0.0 };
            let first = (0..n)
                .filter(|i| {
                    let score = |o: &Vec<&[f64]>| -> f64 {
                        weights.iter().zip(o).map(|(w, c)| w * c[*i]).sum()
                    };
                    greatest(draws.iter().map(score)).0 == own
                })
                .count();
            first as f64 / n.max(1) as f64
        })
        .collect()
}
